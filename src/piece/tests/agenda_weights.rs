//! Weights: runs that may be compared, staying put, and which weights are questioned.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::shop::{Shop, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::MassChange;
use evenwall_piece::weights::{
    Began, WeightQuestion, question, question_for, run_at, runs, scale_too_coarse, staying_put,
};
use evenwall_wood::steady::Reason;
use proptest::prelude::*;

/// One piece over ten months on a scale with steps of 5 g, as a turner recorded it: day, g. A flat month, then 5 g less.
const TEN_MONTHS: [(i64, f64); 10] = [
    (0, 1080.0),
    (43, 960.0),
    (63, 895.0),
    (92, 820.0),
    (123, 775.0),
    (154, 760.0),
    (183, 745.0),
    (216, 740.0),
    (245, 740.0),
    (273, 735.0),
];

#[test]
fn weights_before_and_after_a_change_of_mass_or_a_new_scale_are_not_compared() {
    let mut h = History::new("K07", Stage::Settle);
    h.weighed(day(0), 500.0).weighed(day(7), 490.0);
    h.tell(day(8), vec![PieceFact::MassChanged(MassChange::Wax)]);
    h.weighed(day(14), 505.0);
    let s = shop(&[
        setting("scale_step_g", "5"),
        (day(20), ShopFact::NewScale { step_g: 0.1 }),
    ]);
    h.weighed(day(21), 498.3);
    let piece = h.piece();
    let all = runs(&piece, &s);
    let seen: Vec<_> = all
        .iter()
        .map(|r| (r.began, r.step_g, r.weighings.len()))
        .collect();
    assert_eq!(
        seen,
        [
            (Began::First, 5.0, 2),
            (Began::MassChanged(MassChange::Wax), 5.0, 1),
            (Began::NewScale, 0.1, 1),
        ]
    );
    assert_eq!(run_at(&piece, &s, day(15)).weighings.len(), 1);
    assert_eq!(run_at(&piece, &s, day(8)).weighings.len(), 0);
    assert_eq!(
        run_at(&piece, &s, day(7)).by_day(),
        [(0.0, 500.0), (7.0, 490.0)]
    );
}

#[test]
fn a_scale_bought_before_the_first_weighing_parts_nothing() {
    let mut h = History::new("K07", Stage::Settle);
    h.weighed(day(3), 500.0);
    let s = shop(&[(day(0), ShopFact::NewScale { step_g: 0.5 })]);
    let piece = h.piece();
    let all = runs(&piece, &s);
    assert_eq!(
        (all.len(), all[0].began, all[0].step_g),
        (1, Began::First, 0.5)
    );
}

#[test]
fn a_mass_change_noted_with_its_weighing_comes_before_it() {
    let mut h = History::new("K07", Stage::Settle);
    h.weighed(day(0), 500.0);
    h.tell(
        day(7),
        vec![weight(512.0), PieceFact::MassChanged(MassChange::Glue)],
    );
    let piece = h.piece();
    let all = runs(&piece, &Shop::default());
    assert_eq!(all.len(), 2);
    assert_eq!(all[1].weighings[0].net_g(), 512.0);
}

#[test]
fn weights_are_net_of_tare_and_nonsense_is_left_out() {
    let mut h = History::new("K07", Stage::Settle);
    let tared = |mass, tare_g| PieceFact::Weighed {
        mass_g: Measure::plain(mass),
        tare_g,
    };
    h.tell(day(0), vec![tared(520.0, 20.0)]);
    h.tell(day(1), vec![tared(10.0, 20.0)]);
    h.tell(day(2), vec![tared(f64::NAN, 0.0)]);
    assert_eq!(
        run_at(&h.piece(), &Shop::default(), day(9)).by_day(),
        [(0.0, 500.0)]
    );
}

#[test]
fn staying_put_counts_n_of_m_from_when_the_fall_stopped() {
    let mut h = History::new("K07", Stage::Settle);
    for (n, g) in [
        (0, 600.0),
        (14, 520.0),
        (28, 470.0),
        (42, 466.0),
        (56, 466.0),
        (70, 465.0),
    ] {
        h.weighed(day(n), g);
    }
    let put = staying_put(&h.piece(), &Shop::default(), day(71));
    assert_eq!((put.day, put.of, put.steady), (28, 60, false));
    assert_eq!(put.reason, Reason::NotLongEnough);
    h.weighed(day(84), 465.0).weighed(day(102), 465.0);
    let put = staying_put(&h.piece(), &Shop::default(), day(102));
    assert_eq!((put.day, put.steady), (60, true));
    // The turner may ask for more, or for less.
    let more = staying_put(&h.piece(), &shop(&[setting("steady_days", "90")]), day(102));
    assert_eq!(
        (more.of, more.steady, more.reason),
        (90, false, Reason::NotLongEnough)
    );
    let less = shop(&[setting("steady_days", "30")]);
    assert!(staying_put(&h.piece(), &less, day(84)).reason == Reason::TooFewWeighings);
    h.weighed(day(90), 466.0);
    assert!(staying_put(&h.piece(), &less, day(90)).steady);
    // Weighings dated after now say nothing yet.
    assert!(!staying_put(&h.piece(), &Shop::default(), day(89)).steady);
}

#[test]
fn one_flat_month_is_not_steady_and_ten_months_of_drying_raise_no_question() {
    let s = shop(&[setting("scale_step_g", "5")]);
    let mut h = History::new("K07", Stage::Settle);
    for (n, g) in TEN_MONTHS {
        assert_eq!(question_for(&h.piece(), &s, day(n), g), None, "day {n}");
        h.weighed(day(n), g);
        assert!(!staying_put(&h.piece(), &s, day(n)).steady, "day {n}");
    }
}

#[test]
fn heavier_by_above_one_per_cent_in_a_week_or_three_at_once_is_questioned() {
    let ask = |days: i64, grams: f64| question((day(0), 1000.0), (day(days), grams), 1.0);
    let heavier = |q| matches!(q, Some(WeightQuestion::HeavierThanLast { .. }));
    assert!(!heavier(ask(3, 1010.0)));
    assert!(heavier(ask(3, 1011.0)));
    assert!(!heavier(ask(14, 1020.0)), "two weeks allow two per cent");
    assert!(heavier(ask(14, 1021.0)));
    assert!(!heavier(ask(60, 1030.0)));
    assert!(
        heavier(ask(60, 1031.0)),
        "three per cent at once, however long"
    );
    assert_eq!(
        ask(7, 1050.0),
        Some(WeightQuestion::HeavierThanLast {
            gain_pct: 5.0,
            last_g: 1000.0
        })
    );
}

#[test]
fn a_loss_is_questioned_only_where_no_drying_explains_it() {
    let ask = |hours: i64, grams: f64| {
        let new = day(0) + chrono::Duration::hours(hours);
        question((day(0), 1000.0), (new, grams), 1.0)
    };
    assert_eq!(ask(2, 970.0), None);
    assert!(matches!(
        ask(2, 960.0),
        Some(WeightQuestion::LighterThanLast { .. })
    ));
    assert_eq!(ask(48, 940.0), None, "green wood loses as much in two days");
    assert_eq!(ask(24 * 60, 600.0), None);
    assert!(ask(24 * 60, 100.0).is_some(), "a digit short");
}

#[test]
fn one_step_of_a_coarse_scale_is_never_questioned() {
    assert_eq!(question((day(0), 150.0), (day(7), 155.0), 5.0), None);
    assert!(question((day(0), 150.0), (day(7), 155.0), 1.0).is_some());
}

#[test]
fn no_question_is_asked_across_glue_or_for_the_first_weight() {
    let s = Shop::default();
    let mut h = History::new("K07", Stage::Settle);
    assert_eq!(question_for(&h.piece(), &s, day(0), 500.0), None);
    h.weighed(day(0), 500.0);
    assert!(question_for(&h.piece(), &s, day(7), 560.0).is_some());
    h.tell(day(7), vec![PieceFact::MassChanged(MassChange::Glue)]);
    assert_eq!(question_for(&h.piece(), &s, day(7), 560.0), None);
}

#[test]
fn under_200_grams_a_finer_scale_is_suggested() {
    assert!(scale_too_coarse(199.0, 1.0));
    assert!(!scale_too_coarse(200.0, 1.0));
    assert!(!scale_too_coarse(150.0, 0.1));
}

proptest! {
    #[test]
    fn every_sound_weighing_is_in_exactly_one_run_and_runs_follow_each_other(
        told in prop::collection::vec((0i64..100, 0u8..4), 0..40), now in 0i64..100,
    ) {
        let mut h = History::new("K07", Stage::Settle);
        let mut scales = Vec::new();
        for (n, what) in &told {
            match what {
                0 => { h.tell(day(*n), vec![PieceFact::MassChanged(MassChange::Recut)]); }
                1 => scales.push((day(*n), ShopFact::NewScale { step_g: 1.0 + *n as f64 })),
                _ => { h.weighed(day(*n), 500.0 + *n as f64); }
            }
        }
        let s = shop(&scales);
        let piece = h.piece();
        let all = runs(&piece, &s);
        let together: Vec<_> = all.iter().flat_map(|r| r.weighings.iter().map(|w| w.entry.clone())).collect();
        let told: Vec<_> = piece.weighings.iter().map(|w| w.entry.clone()).collect();
        prop_assert_eq!(together, told);
        let (last, before) = all.split_last().unwrap();
        prop_assert!(before.iter().all(|r| !r.weighings.is_empty()));
        for pair in all.windows(2) {
            let ends = pair[0].weighings.last().unwrap().at;
            prop_assert!(pair[1].since.unwrap() > ends);
        }
        // The run in force at the end of all is the last one.
        let late = run_at(&piece, &s, day(1000));
        prop_assert_eq!(&late.weighings, &last.weighings);
        prop_assert!(late.weighings.is_empty() || late.step_g == last.step_g);
        prop_assert!(run_at(&piece, &s, day(now)).weighings.iter().all(|w| w.at <= day(now)));
    }
}
