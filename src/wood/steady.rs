//! Staying put: the trade's plain rule on weights alone.
//!
//! Common practice, no source: over sixty days the weight is within the larger of two scale steps and one per cent, with
//! at least five weighings, and the last three weeks have not fallen by more than a step. The count starts when the fall
//! stops. It knows nothing of the season: a damp month can hide a fall and a dry one can feign it:
//! [`crate::staying`] reckons with the room.

use crate::weighings::{in_order, sound_step};

/// Days the weight must stay put.
pub const OF_DAYS: u32 = 60;
/// Weighings needed within the steady stretch.
pub const WEIGHINGS: usize = 5;
/// Share of the weight within which it counts as staying put.
pub const BAND: f64 = 0.01;
/// Days at the end that must not fall.
pub const LAST_DAYS: f64 = 21.0;

/// Why a piece is or is not called steady.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Reason {
    /// Fewer than two weighings: nothing can be said.
    NotWeighedTwice,
    /// It has stayed put for long enough.
    Steady,
    /// The weight fell by more than a step in the last three weeks.
    StillFalling,
    /// The weight rose by more than the band a short while ago.
    Rose,
    /// It stays put, but not for sixty days yet.
    NotLongEnough,
    /// It stays put for long enough, but on fewer than five weighings.
    TooFewWeighings,
}

/// What the plain rule says of a run of weighings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steadiness {
    /// Days from the weighing at which the fall stopped to the last one.
    pub days_steady: f64,
    /// Days it must stay put: [`OF_DAYS`].
    pub of_days: u32,
    /// Weighings within those days, ends included.
    pub weighings: usize,
    /// True when the rule holds.
    pub steady: bool,
    /// Why.
    pub reason: Reason,
}

/// The plain rule on `weighings` of (day, grams), in any order, all on one scale with steps of `scale_step_g` and since the
/// last change of mass. Entries that are not finite or not above 0 g are left out; a step that is not above 0 is taken as
/// 1 g. Of several weighings on one instant the later given counts.
pub fn steady_plain(weighings: &[(f64, f64)], scale_step_g: f64) -> Steadiness {
    let step = sound_step(scale_step_g);
    let run = in_order(weighings);
    let answer = |days_steady: f64, weighings: usize, reason: Reason| Steadiness {
        days_steady,
        of_days: OF_DAYS,
        weighings,
        steady: reason == Reason::Steady,
        reason,
    };
    let Some(&(last_day, last_mass)) = run.last() else {
        return answer(0.0, 0, Reason::NotWeighedTwice);
    };
    if run.len() < 2 {
        return answer(0.0, 1, Reason::NotWeighedTwice);
    }
    // A hair of slack, so that a change of exactly two steps does not fail on its binary form.
    let band = (2.0 * step).max(BAND * last_mass) + 1e-9 * last_mass;
    let start = run
        .iter()
        .rposition(|(_, m)| (m - last_mass).abs() > band)
        .map_or(0, |i| i + 1);
    let days = last_day - run[start].0;
    let count = run.len() - start;
    let falling = mass_at(&run, last_day - LAST_DAYS) - last_mass > step * (1.0 + 1e-9);
    let reason = if falling {
        Reason::StillFalling
    } else if days < f64::from(OF_DAYS) {
        match start.checked_sub(1) {
            Some(before) if run[before].1 < last_mass => Reason::Rose,
            _ => Reason::NotLongEnough,
        }
    } else if count < WEIGHINGS {
        Reason::TooFewWeighings
    } else {
        Reason::Steady
    };
    // While it still falls, no day counts.
    if falling {
        answer(0.0, count, reason)
    } else {
        answer(days, count, reason)
    }
}

/// Mass on a straight line between weighings, the first or last one beyond the ends. `run` is not empty.
fn mass_at(run: &[(f64, f64)], day: f64) -> f64 {
    let after = run.partition_point(|(d, _)| *d < day);
    if after == 0 {
        return run[0].1;
    }
    if after == run.len() {
        return run[after - 1].1;
    }
    let ((d0, m0), (d1, m1)) = (run[after - 1], run[after]);
    m0 + (m1 - m0) * (day - d0) / (d1 - d0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn every(days: f64, masses: &[f64]) -> Vec<(f64, f64)> {
        masses
            .iter()
            .enumerate()
            .map(|(i, m)| (days * i as f64, *m))
            .collect()
    }

    #[test]
    fn a_weight_that_stays_put_for_sixty_days_on_five_weighings_is_steady() {
        let s = steady_plain(&every(15.0, &[420.0, 419.0, 420.0, 419.0, 419.0]), 1.0);
        assert_eq!(
            (s.days_steady, s.weighings, s.steady, s.reason),
            (60.0, 5, true, Reason::Steady)
        );
        let short = steady_plain(&every(14.0, &[420.0, 419.0, 420.0, 419.0, 419.0]), 1.0);
        assert_eq!(
            (short.days_steady, short.steady, short.reason),
            (56.0, false, Reason::NotLongEnough)
        );
        let few = steady_plain(&every(20.0, &[420.0, 419.0, 420.0, 420.0]), 1.0);
        assert_eq!((few.steady, few.reason), (false, Reason::TooFewWeighings));
    }

    #[test]
    fn the_count_starts_when_the_fall_stops() {
        let falling = every(
            10.0,
            &[
                600.0, 520.0, 470.0, 440.0, 425.0, 420.0, 419.0, 419.0, 418.0, 419.0,
            ],
        );
        let s = steady_plain(&falling, 1.0);
        // 1 % of 419 g is 4.19 g: 420 is within, 425 is not.
        assert_eq!((s.days_steady, s.reason), (40.0, Reason::NotLongEnough));
    }

    #[test]
    fn a_fall_in_the_last_three_weeks_is_no_steadiness_however_small_the_band() {
        let s = steady_plain(
            &every(
                10.0,
                &[422.0, 422.0, 422.0, 421.0, 421.0, 421.0, 420.0, 419.0],
            ),
            1.0,
        );
        assert_eq!(
            (s.days_steady, s.steady, s.reason),
            (0.0, false, Reason::StillFalling)
        );
        // One step is what a scale of 1 g shows of nothing at all.
        let one_step = steady_plain(
            &every(10.0, &[422.0, 422.0, 421.0, 421.0, 421.0, 420.0, 420.0]),
            1.0,
        );
        assert_eq!(one_step.reason, Reason::Steady);
    }

    #[test]
    fn a_coarse_scale_widens_the_band_to_two_steps() {
        let s = steady_plain(&every(15.0, &[200.0, 205.0, 200.0, 205.0, 205.0]), 5.0);
        assert!(s.steady);
        assert!(!steady_plain(&every(15.0, &[200.0, 205.0, 200.0, 205.0, 205.0]), 1.0).steady);
    }

    #[test]
    fn a_rise_starts_the_count_again_and_says_so() {
        let s = steady_plain(
            &every(15.0, &[400.0, 400.0, 400.0, 400.0, 412.0, 412.0]),
            1.0,
        );
        assert_eq!((s.days_steady, s.reason), (15.0, Reason::Rose));
    }

    #[test]
    fn too_little_and_nonsense_say_nothing() {
        assert_eq!(steady_plain(&[], 1.0).reason, Reason::NotWeighedTwice);
        assert_eq!(
            steady_plain(&[(0.0, 400.0)], 1.0).reason,
            Reason::NotWeighedTwice
        );
        assert_eq!(
            steady_plain(&[(0.0, f64::NAN), (9.0, -3.0)], 0.0).weighings,
            0
        );
    }

    proptest! {
        #[test]
        fn order_and_units_do_not_matter(
            masses in proptest::collection::vec(380.0..420.0_f64, 2..12), turn in 0usize..12
        ) {
            let run = every(9.0, &masses);
            let mut turned = run.clone();
            turned.rotate_left(turn % run.len());
            prop_assert_eq!(steady_plain(&run, 1.0), steady_plain(&turned, 1.0));
            let doubled: Vec<_> = run.iter().map(|(d, m)| (d + 100.0, 2.0 * m)).collect();
            prop_assert_eq!(steady_plain(&run, 1.0).reason, steady_plain(&doubled, 2.0).reason);
        }

        #[test]
        fn a_piece_losing_half_a_per_cent_a_week_is_never_steady(start in 200.0..900.0_f64, gap in 3.0..14.0_f64) {
            let run: Vec<_> = (0..30)
                .map(|i| {
                    let day = gap * f64::from(i);
                    (day, (start * (1.0 - 0.005 * day / 7.0)).round())
                })
                .collect();
            prop_assert!(!steady_plain(&run, 1.0).steady);
        }
    }
}
