//! Checks of the verdict on staying put.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use proptest::prelude::*;

use crate::staying::{Because, Drift, Verdict, drift, staying};
use crate::trend::tests::{EIGHT_WEEKS, every};

/// Worked twice, independently: -0.0644 % a week, 90 % from -0.0905 to -0.0383, all within 0.1 %.
#[test]
fn the_worked_slope_is_stable() {
    let said = staying(&every(4.0, &EIGHT_WEEKS), 1.0);
    assert_eq!(
        (said.verdict, said.because),
        (Verdict::Stable, Because::WithinTheLimit)
    );
    assert_eq!((said.stretch_days, said.weighings), (56.0, 15));
    assert!((said.trend.unwrap().per_day_g + 0.030_357).abs() < 6e-7);
    assert_eq!(said.would_decide, None);
}

#[test]
fn a_green_piece_is_losing_from_its_third_weighing() {
    let masses = [520.0, 493.0, 473.0, 457.0, 444.0, 434.0];
    let two = staying(&every(3.0, &masses[..2]), 1.0);
    assert_eq!(
        (two.verdict, two.because),
        (Verdict::Undecided, Because::TooFewWeighings)
    );
    // 520 g on 1 g every three days: three weeks and five weighings, less the three days so far.
    assert_eq!(two.would_decide.unwrap().more_days, Some(18));
    for n in 4..=6 {
        let said = staying(&every(3.0, &masses[..n]), 1.0);
        assert_eq!(
            (said.verdict, said.because),
            (Verdict::Losing, Because::BeyondTheLimit),
            "{n}"
        );
    }
    let none = staying(&[], 1.0);
    assert_eq!(
        (none.weighings, none.would_decide.unwrap().more_days),
        (0, None)
    );
}

#[test]
fn three_weeks_of_a_small_piece_are_too_wide_and_more_weeks_or_a_finer_scale_would_tell() {
    // Rounding alone on 150 g every three days tells after 27 days; the last weighing is the 21st day.
    let said = staying(&every(3.0, &[150.0; 8]), 1.0);
    assert_eq!(
        (said.verdict, said.because),
        (Verdict::Undecided, Because::TooWide)
    );
    let would = said.would_decide.unwrap();
    assert_eq!((would.more_days, would.finer_step_g), (Some(6), Some(0.5)));
    assert_eq!(
        staying(&every(3.0, &[150.0; 10]), 1.0).verdict,
        Verdict::Stable
    );
    assert_eq!(
        staying(&every(3.0, &[150.0; 8]), 0.5).verdict,
        Verdict::Stable
    );
}

#[test]
fn a_fine_scale_does_not_make_a_fortnight_enough() {
    let said = staying(&every(2.0, &[330.0; 8]), 0.1);
    assert_eq!(
        (said.verdict, said.because),
        (Verdict::Undecided, Because::TooShort)
    );
    assert_eq!(said.would_decide.unwrap().more_days, Some(8));
}

#[test]
fn a_scale_that_can_never_tell_says_so() {
    // 40 g on 1 g weekly: even eight weeks are too short.
    let said = staying(&every(7.0, &[40.0; 9]), 1.0);
    let would = said.would_decide.unwrap();
    assert_eq!((would.more_days, would.finer_step_g), (None, Some(0.5)));
    // Scatter that is no rounding: a finer scale would not help.
    let wild = staying(
        &every(7.0, &[400.0, 403.0, 399.0, 403.0, 400.0, 403.0, 400.0]),
        1.0,
    );
    assert_eq!(wild.verdict, Verdict::Undecided);
    assert_eq!(wild.would_decide.unwrap().finer_step_g, None);
}

#[test]
fn a_fresh_fall_is_not_averaged_away() {
    // Five weeks at rest, then three of 0.2 % a week.
    let mass = |day: f64| 600.0 - 0.0286 * 6.0 * (day - 35.0).max(0.0);
    let run: Vec<_> = (0..=28)
        .map(|i| (2.0 * f64::from(i), mass(2.0 * f64::from(i))))
        .collect();
    let said = staying(&run, 0.1);
    assert_eq!(
        (said.verdict, said.because),
        (Verdict::Losing, Because::LastWeeksDiffer)
    );
    assert!(said.last_weeks.unwrap().per_day_g < said.trend.unwrap().per_day_g);
}

#[test]
fn a_fresh_rest_is_not_called_losing_and_says_how_long_still() {
    // A fall of 12 g over four weeks, then four weeks at rest, every three days.
    let run: Vec<_> = (0..=18)
        .map(|i| 3.0 * f64::from(i))
        .map(|day| (day, 600.0 + 0.4 * (27.0 - day).max(0.0)))
        .collect();
    let said = staying(&run, 0.1);
    assert_eq!(
        (said.verdict, said.because),
        (Verdict::Undecided, Because::LastWeeksDiffer)
    );
    let more = said.would_decide.unwrap().more_days.unwrap();
    assert!((12..=30).contains(&more), "{more}");
    let rested = |days: u32| {
        let on = (1..=days / 3).map(|i| (54.0 + 3.0 * f64::from(i), 600.0));
        staying(&run.iter().copied().chain(on).collect::<Vec<_>>(), 0.1).verdict
    };
    assert_eq!(rested(more + 6), Verdict::Stable);
    assert_ne!(rested(more - 6), Verdict::Stable);
    // While it still falls, it is losing.
    assert_eq!(staying(&run[..9], 0.1).verdict, Verdict::Losing);
}

#[test]
fn a_piece_at_rest_in_a_drying_room_shows_the_rooms_drift() {
    let resting = staying(&every(4.0, &[400.0; 15]), 1.0);
    let falling: Vec<f64> = (0..15)
        .map(|i| (400.0 - 0.6 * f64::from(i)).round())
        .collect();
    let losing = staying(&every(4.0, &falling), 1.0);
    assert_eq!(losing.verdict, Verdict::Losing);
    assert_eq!(drift(&losing, &resting), Some(Drift::Drier));
    assert_eq!(drift(&resting, &resting), None);
    assert_eq!(drift(&resting, &losing), None);
}

proptest! {
    #[test]
    fn half_a_per_cent_a_week_is_never_stable_and_double_the_units_say_the_same(
        start in 200.0..900.0_f64, gap in 1.0..14.0_f64, weeks in 3.0..20.0_f64
    ) {
        let count = (7.0 * weeks / gap) as u32;
        let run: Vec<_> = (0..=count)
            .map(|i| (gap * f64::from(i), (start * (1.0 - 0.005 * gap * f64::from(i) / 7.0)).round()))
            .collect();
        let said = staying(&run, 1.0);
        prop_assert!(said.verdict == Verdict::Losing || said.verdict == Verdict::Undecided);
        let doubled: Vec<_> = run.iter().map(|(d, m)| (d + 64.0, 2.0 * m)).collect();
        prop_assert_eq!(staying(&doubled, 2.0).because, said.because);
    }

    #[test]
    fn the_days_that_would_decide_do_decide_a_piece_at_rest(
        mass in 30.0..400.0_f64, gap in 1_u32..8, count in 3_usize..10
    ) {
        let mass = mass.round();
        let run = every(f64::from(gap), &vec![mass; count]);
        let said = staying(&run, 1.0);
        if let Some(more) = said.would_decide.and_then(|w| w.more_days) {
            let all = count + (more / gap) as usize;
            prop_assert_eq!(staying(&every(f64::from(gap), &vec![mass; all]), 1.0).verdict, Verdict::Stable);
            let sooner = staying(&every(f64::from(gap), &vec![mass; all - 1]), 1.0);
            prop_assert_eq!(sooner.verdict, Verdict::Undecided);
        }
    }

    #[test]
    fn any_weights_give_a_verdict(
        run in proptest::collection::vec((-1e3..1e3_f64, -10.0..1e4_f64), 0..30), step in -1.0..10.0_f64
    ) {
        let said = staying(&run, step);
        prop_assert_eq!(said.verdict == Verdict::Undecided, said.would_decide.is_some());
    }
}
