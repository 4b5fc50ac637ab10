//! Check values of shrinkage, dried section and closed ring through the questions. Sources: the shrinkage law is Wood Handbook
//! FPL-GTR-190 equation 4-7, white ash 4.9 and 7.8 % its table 4-3; where nothing else is named, a second implementation gave
//! the same number.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;
use support::{ask, near, number, refusal, within};

/// D1.
#[test]
fn shrinkage_to_four_moistures() {
    for (total, moisture, want) in [
        (7.8, 8.0, 5.72),
        (4.9, 12.0, 2.94),
        (11.9, 10.0, 7.9333),
        (7.8, 35.0, 0.0),
    ] {
        let got = ask(&format!(
            r#"{{"ask": "shrinkage", "total_pct": {total}, "moisture_pct": {moisture}}}"#
        ));
        near(&got, "shrinkage_pct", want, 1e-4);
    }
}

/// Wood Handbook FPL-GTR-190 chapter 13, worked example: 232 mm from 8 to 11 % grows 1.7 mm. Mesquite of a published reprint: 5 in,
/// 3 points, 0.019 in.
#[test]
fn the_handbooks_change_of_a_width() {
    let got = ask(
        r#"{"ask": "dimension_change", "size_mm": 232, "total_pct": 7, "from_moisture_pct": 8, "to_moisture_pct": 11}"#,
    );
    within(&got, "change_by_coefficient_mm", 1.7, 0.05);
    within(&got, "coefficient_per_pct", 0.00245, 5e-6);
    let beyond = ask(
        r#"{"ask": "dimension_change", "size_mm": 232, "total_pct": 7, "from_moisture_pct": 8, "to_moisture_pct": 25}"#,
    );
    assert!(beyond.get("change_by_coefficient_mm").is_none());
    let there_and_back =
        ask(r#"{"ask": "total_shrinkage", "shrunk_pct": 5.72, "moisture_pct": 8}"#);
    near(&there_and_back, "total_pct", 7.8, 1e-6);
}

/// D2.
#[test]
fn free_map_of_six_points() {
    let got = ask(
        r#"{"ask": "free_map", "wood": "white-ash", "pith_mm": 90, "points_mm":
        [[0, 60], [-70, 0], [70, 0], [0, 70], [49.497475, 49.497475], [-65, 10]]}"#,
    );
    let want = [
        (2.491029, 56.713729),
        (-64.250667, 0.0),
        (70.718667, 0.0),
        (2.259187, 66.212300),
        (50.028762, 46.947513),
        (-59.443884, 9.428285),
    ];
    for (i, (x, y)) in want.into_iter().enumerate() {
        near(&got, &format!("/points_mm/{i}/0"), x, 1e-6);
        near(&got, &format!("/points_mm/{i}/1"), y, 1e-6);
    }
    let section = ask(
        r#"{"ask": "section", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith_mm": 90, "points_mm": [[0, 60]]}"#,
    );
    near(&section, "/points_mm/0/0", 2.491029, 1e-6);
}

/// D3.
#[test]
fn concentric_rings() {
    for (wall, middle, outer, bore, radial) in [
        (10, 65, 1.555044, -1.723227, -0.062826),
        (20, 60, 3.179539, -3.976104, -0.293312),
    ] {
        let got = ask(&format!(
            r#"{{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": {wall}, "stiffness_mpa": 1000, "wood": "white-ash",
            "at": [{{"radius_mm": 70}}, {{"radius_mm": {}}}, {{"radius_mm": {middle}}}]}}"#,
            70 - wall
        ));
        near(&got, "/at/0/sigma_theta_mpa", outer, 1e-6);
        near(&got, "/at/1/sigma_theta_mpa", bore, 1e-6);
        near(&got, "/at/2/sigma_r_mpa", radial, 1e-6);
        assert_eq!(got["tension_side"], "outside");
    }
}

/// D4.
#[test]
fn stress_with_the_pith_off_the_axis() {
    let got = ask(
        r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "pith_mm": 30, "stiffness_mpa": 960, "wood": "white-ash",
        "at": [{"radius_mm": 70, "angle_deg": 0}, {"radius_mm": 70, "angle_deg": 180}, {"radius_mm": 60}, {"radius_mm": 65, "angle_deg": 90}]}"#,
    );
    near(&got, "/at/0/sigma_theta_mpa", 2.831034, 1e-6);
    near(&got, "/at/1/sigma_theta_mpa", 0.154651, 1e-6);
    near(&got, "/at/2/sigma_theta_mpa", -3.215522, 1e-6);
    near(&got, "/at/3/sigma_theta_mpa", 0.040167, 1e-6);
    near(&got, "/at/3/tau_mpa", -0.055346, 1e-6);
    near(&got, "peak_outside_mpa", 2.831034, 1e-6);
}

/// D5: shapes by 2880 points; the axis by search.
#[test]
fn shape_with_the_pith_off_the_axis() {
    let got = ask(
        r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "pith_mm": 30, "wood": "white-ash"}"#,
    );
    near(&got, "along_mm", 132.2097, 1e-4);
    near(&got, "across_mm", 132.7271, 1e-4);
    near(&got, "bore_along_mm", 112.9292, 1e-4);
    near(&got, "bore_across_mm", 113.5209, 1e-4);
    within(&got, "best_wall_mm", 9.3279, 0.002);
    within(&got, "best_factor", 0.2101, 0.0014);
    let same = ask(
        r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 10, "pith_mm": 30, "wood": "white-ash"}"#,
    );
    within(&same, "best_wall_mm", 9.3279, 0.002);
    // The closed form is a bound that is never too much.
    assert!(number(&same, "wall_mm") <= number(&same, "best_wall_mm"));
    assert_eq!(same["exact"], false);
}

/// D6.
#[test]
fn orthotropic_ring_and_disc() {
    let got = ask(
        r#"{"ask": "orthotropic_ring", "diameter_mm": 140, "wall_mm": 10, "stiffness_radial_mpa": 1500,
        "stiffness_tangential_mpa": 960, "wood": "white-ash"}"#,
    );
    near(&got, "/at/0/sigma_theta_mpa", 1.493883, 1e-6);
    near(&got, "/at/1/sigma_theta_mpa", -1.655499, 1e-6);
    let disc = ask(r#"{"ask": "solid_disc", "stiffness_mpa": 960, "wood": "white-ash"}"#);
    near(&disc, "rim_tension_mpa", 10.208, 1e-6);
    let thin = ask(
        r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "stiffness_mpa": 1000, "wood": "white-ash"}"#,
    );
    near(&thin, "thin_ring_mpa", 1.6359, 1e-4);
}

/// D7.
#[test]
fn a_pith_in_the_wall_is_a_state_without_numbers() {
    let ring = r#""diameter_mm": 140, "wall_mm": 10, "pith_mm": 65, "wood": "white-ash""#;
    let closed = ask(&format!(
        r#"{{"ask": "closed_ring", {ring}, "at": [{{"radius_mm": 65}}]}}"#
    ));
    let section = ask(&format!(
        r#"{{"ask": "section", {ring}, "outline_points": 90, "points_mm": [[65, 0]]}}"#
    ));
    for got in [&closed, &section] {
        assert_eq!(got["place"], "in the wall");
        assert_eq!(got["tension_side"], "not said");
        near(got, "allowance_wall_mm", 8.152, 1e-6);
        for key in [
            "at",
            "along_mm",
            "outer_mm",
            "points_mm",
            "peak_outside_mpa",
            "longest_mm",
        ] {
            assert!(got.get(key).is_none(), "{key}");
        }
    }
    let left = ask(&format!(r#"{{"ask": "wall_left", {ring}}}"#));
    near(&left, "wall_mm", 8.152, 1e-6);
    assert_eq!(left["exact"], false);
}

/// D8.
#[test]
fn side_grain_beech() {
    let got = ask(
        r#"{"ask": "side_grain", "diameter_mm": 300, "wall_mm": 30, "finish_mm": 8, "margin_mm": 2, "wood": "american-beech",
        "moisture_pct": 10}"#,
    );
    near(&got, "shrunk_along_pct", 0.0667, 1e-4);
    near(&got, "shrunk_tangential_pct", 7.9333, 1e-4);
    near(&got, "along_mm", 299.8, 1e-6);
    near(&got, "across_mm", 276.2, 1e-6);
    near(&got, "wall_left_mm", 18.18, 1e-6);
    near(&got, "needed_mm", 21.814543, 1e-6);
    let rough = ask(
        r#"{"ask": "rough_wall", "grain": "side", "diameter_mm": 300, "finish_mm": 8, "margin_mm": 2, "off_centre_mm": 0,
        "wood": "american-beech", "moisture_pct": 10}"#,
    );
    near(&rough, "total_mm", 21.814543, 1e-6);
}

/// D10.
#[test]
fn rim_out_of_its_plane() {
    let got =
        ask(r#"{"ask": "rim_rise", "diameter_mm": 300, "height_mm": 100, "wood": "white-ash"}"#);
    near(&got, "rise_mm", 3.112211, 1e-6);
}

#[test]
fn a_far_pith_dries_to_an_ellipse() {
    let got = ask(
        r#"{"ask": "section", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith": "far", "outline_points": 8}"#,
    );
    near(
        &got,
        "longest_mm",
        140.0 * (1.0 - 0.049 * 22.0 / 30.0),
        1e-6,
    );
    near(&got, "shortest_mm", 140.0 * (1.0 - 0.0572), 1e-6);
    assert_eq!(got["tension_side"], "neither");
    assert_eq!(got["outer_mm"].as_array().unwrap().len(), 8);
    let sentence = refusal(
        r#"{"ask": "section", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "points_mm": [[1, 2]]}"#,
    );
    assert!(sentence.contains("pith_mm"), "{sentence}");
}
