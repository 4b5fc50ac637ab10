//! Check values of trueing and roughing through the questions. Where no source is named, a second implementation gave the same.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;
use std::f64::consts::TAU;
use support::{ask, near, number, refusal, within};

const ASH_RING: &str = r#""diameter_mm": 140, "wall_mm": 10, "wood": "white-ash""#;

/// D7b.
#[test]
fn closed_forms_of_the_wall_left() {
    let far = ask(&format!(
        r#"{{"ask": "wall_left", {ASH_RING}, "pith": "far"}}"#
    ));
    near(&far, "wall_mm", 8.152, 1e-6);
    let near_by = ask(&format!(
        r#"{{"ask": "wall_left", {ASH_RING}, "pith_mm": 77}}"#
    ));
    near(&near_by, "wall_mm", 8.258416, 1e-6);
    near(&near_by, "outside_reach_mm", 66.102416, 1e-6);
    // The best axis is the lathe's own, carried along by the wood: d R.
    within(&near_by, "axis_x_mm", 77.0 * 0.049 * 22.0 / 30.0, 1e-3);
    let c = ask(r#"{"ask": "free_factor", "distance_ratio": 1.1}"#);
    near(&c, "factor", 0.926192, 1e-6);
    let needed = ask(
        r#"{"ask": "rough_wall", "diameter_mm": 140, "finish_mm": 5, "margin_mm": 1.5, "off_centre_mm": 0, "wood": "white-ash",
        "pith": "far"}"#,
    );
    near(&needed, "total_mm", 8.286426, 1e-6);
    let parts = ["finish_mm", "oval_mm", "in_hand_mm", "shrinks_mm"];
    let sum: f64 = parts.iter().map(|k| number(&needed, k)).sum();
    near(&needed, "total_mm", sum, 1e-9);
    near(&needed, "practice_mm", 10.0, 1e-9);
    near(&needed, "advised_mm", 10.0, 1e-9);
    near(&needed, "floor_mm", 12.0, 1e-9);
    let affine = ask(
        r#"{"ask": "affine_wall", "diameter_mm": 140, "wall_mm": 10, "least_pct": 3.593333333333, "most_pct": 5.72, "finish_mm": 5,
        "margin_mm": 1.5}"#,
    );
    near(&affine, "wall_mm", 8.152, 1e-6);
    near(&affine, "needed_mm", 8.286426, 1e-6);
}

/// What being off centre by 0.25, 0.5, 1 and 2 mm costs a far-pith ring, in the worst direction.
#[test]
fn off_centre_costs_once_to_twice_the_way() {
    for (e, left) in [(0.25, 7.79), (0.5, 7.40), (1.0, 6.59), (2.0, 4.85)] {
        let got = ask(&format!(
            r#"{{"ask": "wall_left", {ASH_RING}, "pith": "far", "off_centre_mm": {e}}}"#
        ));
        within(&got, "wall_off_centre_mm", left, 0.0051);
    }
}

/// D9 as ellipses.
#[test]
fn measured_ellipses() {
    let got = ask(
        r#"{"ask": "true_measured", "outer": {"semi_axes_mm": [67, 65]},
        "bore": {"semi_axes_mm": [57, 56], "centre_mm": [1, -0.5]}, "about_mm": [0, 0]}"#,
    );
    within(&got, "wall_mm", 7.8137, 0.002);
    within(&got, "/axis_mm/0", 1.0, 0.05);
    within(&got, "/axis_mm/1", 0.0, 0.05);
    within(&got, "/stations/0/wall_about_mm", 6.9582, 1e-4);
    // Turned and moved as a whole it leaves the same.
    let turned = ask(
        r#"{"ask": "true_measured", "outer": {"semi_axes_mm": [67, 65], "turn_deg": 90, "centre_mm": [10, 20]},
        "bore": {"semi_axes_mm": [57, 56], "turn_deg": 90, "centre_mm": [10.5, 21]}}"#,
    );
    within(&turned, "wall_mm", 7.8137, 0.002);
}

/// Distance from the origin to an ellipse about (x, y), along a ray.
fn ray(a: f64, b: f64, x: f64, y: f64, angle: f64) -> f64 {
    let (s, c) = angle.sin_cos();
    let p = (c / a).powi(2) + (s / b).powi(2);
    let q = x * c / (a * a) + y * s / (b * b);
    let r = (x / a).powi(2) + (y / b).powi(2) - 1.0;
    (q + (q * q - p * r).sqrt()) / p
}

/// D9 as readings from the centre mark, as a list, at odd angles, and as points.
#[test]
fn measured_readings_are_fitted_before_they_are_used() {
    for n in [8, 16] {
        let row = |a: f64, b: f64, x: f64, y: f64| -> Vec<f64> {
            (0..n)
                .map(|i| ray(a, b, x, y, TAU * f64::from(i) / f64::from(n)))
                .collect()
        };
        let got = ask(&format!(
            r#"{{"ask": "true_measured", "outer": {{"radii_mm": {:?}}}, "bore": {{"radii_mm": {:?}}}}}"#,
            row(67.0, 65.0, 0.0, 0.0),
            row(57.0, 56.0, 1.0, -0.5)
        ));
        within(&got, "wall_mm", 7.8137, 0.02);
    }
    let readings = |a, b, x, y| -> Vec<String> {
        (0..15)
            .map(|i| {
                let deg = 24.0 * f64::from(i) + f64::from(i % 3);
                let mm = ray(a, b, x, y, deg.to_radians());
                format!(r#"{{"angle_deg": {deg}, "radius_mm": {mm}}}"#)
            })
            .collect()
    };
    let got = ask(&format!(
        r#"{{"ask": "true_measured", "outer": {{"readings": [{}]}}, "bore": {{"readings": [{}]}}}}"#,
        readings(67.0, 65.0, 0.0, 0.0).join(","),
        readings(57.0, 56.0, 1.0, -0.5).join(",")
    ));
    within(&got, "wall_mm", 7.8137, 0.02);
    for n in [16, 119, 720] {
        let points = |a: f64, b: f64, x: f64, y: f64| -> Vec<[f64; 2]> {
            (0..n)
                .map(|i| TAU * f64::from(i) / f64::from(n))
                .map(|t| [x + a * t.cos(), y + b * t.sin()])
                .collect()
        };
        let got = ask(&format!(
            r#"{{"ask": "true_measured", "outer": {{"points_mm": {:?}}}, "bore": {{"points_mm": {:?}}}}}"#,
            points(67.0, 65.0, 0.0, 0.0),
            points(57.0, 56.0, 1.0, -0.5)
        ));
        within(&got, "wall_mm", 7.8137, 0.02);
    }
}

#[test]
fn diameters_and_a_green_wall() {
    // A far-pith ash ring as it dries, measured by longest and shortest diameter: the closed form, 8.152.
    let (long, short) = (140.0 * (1.0 - 0.049 * 22.0 / 30.0), 140.0 * (1.0 - 0.0572));
    let bore = r#""bore": {"green_diameter_mm": 140, "green_walls_mm": 10}"#;
    let two = ask(&format!(
        r#"{{"ask": "true_measured", "outer": {{"diameters_mm": [{long}, {short}]}}, {bore}}}"#
    ));
    within(&two, "wall_mm", 8.152, 0.002);
    let own = ask(&format!(
        r#"{{"ask": "own_shrinkage", "green_diameter_mm": 140, "longest_mm": {long}, "shortest_mm": {short}, "wall_mm": 10,
        "wood": "white-ash", "moisture_pct": 8}}"#
    ));
    near(&own, "wall_left_mm", 8.152, 1e-6);
    near(&own, "total_radial_pct", 4.9, 1e-6);
    near(&own, "total_tangential_pct", 7.8, 1e-6);
    assert_eq!(own["moved"], "as the table");
    // 0.12 a (T - R).
    near(
        &own,
        "doubt_mm",
        0.12 * 70.0 * (0.0572 - 0.049 * 22.0 / 30.0),
        1e-6,
    );
    // The outside of an ellipse by four diameters is the same to a hundredth.
    let at = |deg: f64| 2.0 * ray(0.5 * long, 0.5 * short, 0.0, 0.0, deg.to_radians());
    let four = ask(&format!(
        r#"{{"ask": "true_measured", "outer": {{"diameters_mm": [{}, {}, {}, {}]}}, {bore}}}"#,
        at(0.0),
        at(45.0),
        at(90.0),
        at(135.0)
    ));
    within(&four, "wall_mm", 8.152, 0.01);
    let one_round = ask(
        r#"{"ask": "true_measured", "outer": {"diameters_mm": [130]}, "bore": {"diameters_mm": [110]}}"#,
    );
    within(&one_round, "wall_mm", 10.0, 2e-3);
}

#[test]
fn stations_share_one_axis() {
    let station = |x: f64, wanted: f64| {
        format!(
            r#"{{"outer": {{"semi_axes_mm": [60, 60], "centre_mm": [{x}, 0]}}, "bore": {{"semi_axes_mm": [50, 50], "centre_mm": [{x}, 0]}},
            "wanted_mm": {wanted}}}"#
        )
    };
    // Two round stations 2 mm apart: half way, each loses twice 1 mm. With 2 mm less wanted of one, the axis lies by the other.
    let got = ask(&format!(
        r#"{{"ask": "true_measured", "stations": [{}, {}]}}"#,
        station(0.0, 0.0),
        station(2.0, 0.0)
    ));
    within(&got, "wall_mm", 8.0, 2e-3);
    within(&got, "/axis_mm/0", 1.0, 2e-3);
    within(&got, "/stations/1/alone_mm", 10.0, 2e-3);
    let uneven = ask(&format!(
        r#"{{"ask": "true_measured", "stations": [{}, {}]}}"#,
        station(0.0, 9.0),
        station(2.0, 7.0)
    ));
    within(&uneven, "/axis_mm/0", 0.5, 2e-3);
    within(&uneven, "to_spare_mm", 0.0, 2e-3);
    let sentence = refusal(&format!(
        r#"{{"ask": "true_measured", "stations": [{}, {{"outer": {{"diameters_mm": [100]}}, "bore": {{}}}}]}}"#,
        station(0.0, 0.0)
    ));
    assert!(sentence.starts_with("station 2: "), "{sentence}");
}
