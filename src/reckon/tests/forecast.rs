//! Check values of forecasts, slopes and intervals through the questions. Where no source is named, a second implementation gave
//! the same.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;
use support::{ask, near, number, refusal, within};

const MASSES: [f64; 10] = [
    435.0, 350.2, 339.8, 336.1, 334.5, 333.8, 333.5, 333.3, 333.2, 333.2,
];
const WALL: &str = r#""basic_density_kg_m3": 550, "wall_mm": 10, "area_cm2": 545.4545, "temp_c": 18, "rh_pct": 60, "every_days": 2,
    "step_g": 0.1"#;

/// D24: the truth is 300 g and 1.4 times the usual diffusivity.
#[test]
fn a_plain_fit_finds_dry_mass_and_diffusivity() {
    for (n, dry, scale) in [(4, 299.86, 1.414), (6, 299.92, 1.422), (10, 299.96, 1.428)] {
        let masses = &MASSES[..n];
        let got = ask(&format!(
            r#"{{"ask": "plain_fit", {WALL}, "masses_g": {masses:?}}}"#
        ));
        within(&got, "dry_mass_g", dry, 0.3);
        within(&got, "diffusion_ratio", scale, 0.07);
        assert!((1.33..=1.50).contains(&number(&got, "diffusion_ratio")));
        within(&got, "dry_mass_g", dry, 0.005 * dry);
    }
}

/// The first three points of D24 must give "too early".
#[test]
fn three_weighings_are_too_early_and_six_are_not() {
    let said = |n: usize, more: &str| {
        let masses = &MASSES[..n];
        ask(&format!(
            r#"{{"ask": "forecast", {WALL}, "masses_g": {masses:?}{more}}}"#
        ))
    };
    let early = said(3, "");
    assert_eq!(early["too_early"][0], "few_weighings");
    assert!(
        early["too_early_says"][0]
            .as_str()
            .unwrap()
            .contains("there are 3")
    );
    let six = said(
        6,
        r#", "today_day": 10, "house": {"temp_c": 20, "rh_pct": 45}, "show_days": [0, 5, 40]"#,
    );
    assert_eq!(six["too_early"], serde_json::json!([]));
    within(&six, "moisture_pct", 11.3, 1.0);
    let order = [
        number(&six, "/house_slowest/early_day"),
        number(&six, "/house_slowest/middle_day"),
        number(&six, "/house_slowest/late_day"),
    ];
    assert!(order[0] < order[1] && order[1] < order[2]);
    assert!(number(&six, "/here_slowest/middle_day") < order[1]);
    within(
        &six,
        "/house_slowest/ahead_early_day",
        order[0].max(10.0),
        1e-9,
    );
    within(&six, "/band/0/mass_g/1", 435.0, 3.0);
    // In the house it settles at 8.49 %.
    assert_eq!(six["band"].as_array().unwrap().len(), 3);
    // The range holds ln t +- 1.2816 sd with a floor of 0.30 in the open.
    let width = (order[2] / order[1]).ln();
    let sd = number(&six, "/house_slowest/spread_ratio").hypot(0.30);
    assert!((width - 1.281_551_565_545 * sd).abs() < 1e-9);
}

/// A reset begins anew: what was weighed before has no part.
#[test]
fn a_change_of_mass_begins_anew() {
    let with = |weighings: &str| {
        ask(&format!(
            r#"{{"ask": "forecast", "wood": "white-ash", "dry_mass_g": 300, "wall_mm": 10, "temp_c": 18, "rh_pct": 60,
            "step_g": 0.1, "weighings": [{weighings}]}}"#
        ))
    };
    let rest = r#"{"day": 2, "mass_g": 355.2, "tare_g": 5, "reset": true}, {"day": 4, "mass_g": 339.8}, {"day": 6, "mass_g": 336.1},
        {"day": 8, "mass_g": 334.5}, {"day": 10, "mass_g": 333.8}"#;
    let whole = with(&format!(r#"{{"day": 0, "mass_g": 520}}, {rest}"#));
    let alone = with(rest);
    assert_eq!(whole, alone);
    assert_eq!(whole["weighings"], 5);
    near(&whole, "first_day", 2.0, 1e-9);
    assert!(
        refusal(
            r#"{"ask": "weight_trend", "masses_g": [3, 4], "days": [1, 2], "reset_days": [5]}"#
        )
        .contains("since the last change")
    );
}

/// In a bag the straight part has only its end told, and what the habit is.
#[test]
fn the_straight_part_of_a_bag() {
    let got = ask(
        r#"{"ask": "forecast", "wood": "white-ash", "wall_mm": 10, "area_cm2": 545, "way": "bag", "loses_g_day": 8, "temp_c": 18,
        "rh_pct": 60, "every_days": 3, "masses_g": [455, 431, 407, 384], "weigh_days": [12, 15, 18]}"#,
    );
    assert_eq!(got["loose"], "habit");
    assert_eq!(got["too_early"], serde_json::json!(["straight_in_bag"]));
    within(&got, "bag_loses_g_day", 7.9, 0.01);
    assert!(number(&got, "bag_bends_early_day") <= number(&got, "bag_bends_middle_day"));
    assert!(number(&got, "bag_bends_middle_day") < number(&got, "bag_bends_late_day"));
    // Before it bends, what was believed is all there is: the mass of 545 cm3 at white ash's density, to a tenth.
    let believed = number(&got, "believed_dry_mass_g");
    near(&got, "moisture_pct", 100.0 * (384.0 / believed - 1.0), 1e-6);
    near(
        &got,
        "moisture_sd_pct",
        0.10 * 100.0 * 384.0 / believed,
        1e-6,
    );
    assert!(number(&got, "settling_pct") > 9.0);
}

/// An unweighed piece has a road wider than a factor of two.
#[test]
fn the_whole_road_is_wide() {
    let got = ask(
        r#"{"ask": "whole_road", "basic_density_kg_m3": 550, "wall_mm": 10, "area_cm2": 500, "moisture_pct": 45, "temp_c": 18,
        "rh_pct": 60, "start_day": 3}"#,
    );
    within(&got, "/here_mean/middle_day", 3.0 + 8.4, 0.6);
    let early = number(&got, "/here_mean/early_day") - 3.0;
    let late = number(&got, "/here_mean/late_day") - 3.0;
    assert!(late / early > 2.0);
}

/// D17.
#[test]
fn a_single_exponential() {
    let got = ask(
        r#"{"ask": "final_weight", "every_days": 3, "masses_g": [520, 493, 473, 457, 444, 434, 427, 421, 416, 413]}"#,
    );
    near(&got, "final_g", 400.1830, 1e-4);
    near(&got, "final_sd_g", 0.5268, 1e-4);
    within(&got, "above_g", 119.7263, 2e-4);
    near(&got, "tau_days", 11.9757, 1e-4);
    near(&got, "tau_sd_days", 0.1317, 1e-4);
    assert!(
        refusal(r#"{"ask": "final_weight", "every_days": 3, "masses_g": [520, 493]}"#)
            .contains("2 weighings")
    );
}

const EIGHT_WEEKS: &str = r#""every_days": 4, "masses_g": [331, 331, 330, 331, 330, 330, 330, 330, 329, 330, 330, 329, 329, 330, 329]"#;

/// D18. Least squares and Student's t, any textbook of statistics.
#[test]
fn a_slope_and_its_verdict() {
    let got = ask(&format!(r#"{{"ask": "weight_trend", {EIGHT_WEEKS}}}"#));
    near(&got, "slope_g_day", -0.030357, 1e-6);
    near(&got, "slope_low_g_day", -0.042647, 1e-6);
    near(&got, "slope_high_g_day", -0.018067, 1e-6);
    near(&got, "scatter_g", 0.464490, 1e-6);
    near(&got, "week_pct", -0.0644, 1e-4);
    near(&got, "week_low_pct", -0.0905, 1e-4);
    near(&got, "week_high_pct", -0.0383, 1e-4);
    let said = ask(&format!(r#"{{"ask": "staying_put", {EIGHT_WEEKS}}}"#));
    assert_eq!(
        (&said["verdict"], &said["because"]),
        (&"stable".into(), &"within_the_limit".into())
    );
    let wide = ask(
        r#"{"ask": "staying_put", "every_days": 3, "masses_g": [150, 150, 150, 150, 150, 150, 150, 150]}"#,
    );
    assert_eq!(
        (&wide["verdict"], &wide["because"]),
        (&"undecided".into(), &"too_wide".into())
    );
    near(&wide, "decides_in_days", 6.0, 1e-9);
    near(&wide, "finer_step_g", 0.5, 1e-9);
}

/// A witness, and a room that never moves, which takes nothing out.
#[test]
fn the_room_taken_out() {
    let steady = ask(&format!(
        r#"{{"ask": "staying_put", {EIGHT_WEEKS}, "temp_c": 18, "rh_pct": 60, "wall_mm": 10}}"#
    ));
    near(&steady, "slope_g_day", -0.030357, 1e-6);
    near(&steady, "lag_days", 3.0, 1e-9);
    assert_eq!(steady["left_out"], 0);
    // The offcut loses in step: the piece itself stays put.
    let witness = ask(
        r#"{"ask": "staying_put", "step_g": 0.1, "every_days": 7, "masses_g": [330, 329.6, 329.1, 328.7, 328.2, 327.8, 327.4],
        "witness_every_days": 7, "witness_masses_g": [330, 329.6, 329.1, 328.7, 328.2, 327.8, 327.4], "witness_step_g": 0.1}"#,
    );
    assert_eq!(witness["verdict"], "stable");
    assert_eq!(
        (&witness["plain_verdict"], &witness["drift"]),
        (&"losing".into(), &"drier".into())
    );
    near(&witness, "slope_g_day", 0.0, 1e-9);
    for (wall, lag) in [(10, 3.0), (14, 6.0), (20, 12.0)] {
        near(
            &ask(&format!(r#"{{"ask": "room_lag", "wall_mm": {wall}}}"#)),
            "lag_days",
            lag,
            1e-9,
        );
    }
}

/// Shortest spans with rounding alone, by weight, scale and rhythm.
#[test]
fn the_shortest_span_a_scale_can_tell_in() {
    for (mass, spans) in [
        (150, [24, 27, 35]),
        (300, [16, 18, 28]),
        (600, [10, 12, 21]),
    ] {
        for (every, days) in [2, 3, 7].into_iter().zip(spans) {
            let got = ask(&format!(
                r#"{{"ask": "scale_fit", "mass_g": {mass}, "every_days": {every}}}"#
            ));
            assert_eq!(got["shortest_days"], days, "{mass} {every}");
        }
    }
    let next = ask(r#"{"ask": "next_weighing", "loses_g_day": 0.2, "every_days": 7}"#);
    assert_eq!(
        (&next["wait_days"], &next["because"]),
        (&10.into(), &"two_steps".into())
    );
    let rule = ask(
        r#"{"ask": "plain_rule", "every_days": 15, "masses_g": [360, 331, 330, 331, 330, 330]}"#,
    );
    assert_eq!(
        (&rule["steady"], &rule["steady_days"]),
        (&true.into(), &60.0.into())
    );
}

/// Wilson (1927): 9 of 10 at 95 % is 59.58 to 98.21 (any statistics package); Kaplan and Meier (1958), the paper's example, from
/// memory: 7/8, 7/10, 21/40, 21/80.
#[test]
fn shares_survival_and_scores() {
    let share = ask(r#"{"ask": "share_kept", "kept": 9, "all": 10}"#);
    within(&share, "low_pct", 59.585, 0.006);
    within(&share, "high_pct", 98.212, 0.006);
    assert_eq!(share["enough_for_per_cent"], false);
    let curve = ask(
        r#"{"ask": "survival", "pieces": [{"days": 0.8, "lost": true}, {"days": 1}, {"days": 2.7}, {"days": 3.1, "lost": true},
        {"days": 5.4, "lost": true}, {"days": 7}, {"days": 9.2, "lost": true}, {"days": 12.1}], "after_days": 6}"#,
    );
    for (i, pct) in [87.5, 70.0, 52.5, 26.25].into_iter().enumerate() {
        near(&curve, &format!("/steps/{i}/whole_pct"), pct, 1e-9);
    }
    near(&curve, "whole_after_pct", 52.5, 1e-9);
    near(&curve, "median_days", 9.2, 1e-9);
    assert!(refusal(r#"{"ask": "share_kept", "kept": 9, "all": 3}"#).contains("no more kept"));
    assert!(refusal(r#"{"ask": "share_kept", "kept": 2.5, "all": 3}"#).contains("whole"));
    let score = ask(
        r#"{"ask": "forecast_score", "forecasts": [{"early_days": 8, "middle_days": 10, "late_days": 14, "true_days": 10},
        {"early_days": 5, "middle_days": 8, "late_days": 9, "true_days": 10}]}"#,
    );
    near(&score, "median_error_pct", 10.0, 1e-9);
    near(&score, "coverage_pct", 50.0, 1e-9);
}
