//! Scale step: how soon a scale can tell that a piece stays put, and whether it is too coarse for the piece.
//!
//! Only rounding is counted here: a real run scatters more and takes longer. The limit is that of [`crate::staying`].

use crate::quantile::student_t;
use crate::staying::{LIMIT_A_WEEK, WINDOW_DAYS};
use crate::trend::{LEVEL, rounding_g, spread_of_days};
use crate::weighings::sound_step;

/// Steps that scales of a workshop have, g, coarse to fine (common practice, no source).
pub const USUAL_STEPS_G: [f64; 11] = [50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.01];

/// A scale that cannot tell within these days is called too coarse for the piece: six weeks of weights set right for the room
/// nearly always settle it on a scale that is fine enough (own simulation, see the example `verdicts`).
pub const TELLS_WITHIN_DAYS: u32 = 42;

/// Days after which nobody waits for a scale to tell.
const LONGEST_DAYS: u32 = 3650;

/// What a scale can tell of a piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScaleFit {
    /// Shortest span of weighings that could ever show that the piece stays put, days; `None` beyond ten years.
    pub shortest_days: Option<u32>,
    /// True when that is longer than [`TELLS_WITHIN_DAYS`].
    pub too_coarse: bool,
    /// Coarsest of [`USUAL_STEPS_G`] that could tell within [`TELLS_WITHIN_DAYS`], g; `None` where not even the finest could.
    pub step_needed_g: Option<f64>,
}

/// Shortest span in days over which weighings every `every_days` could show that a piece of `mass_g` stays put, were rounding
/// to steps of `scale_step_g` the only scatter. A whole number of intervals, three weighings at least. `None` when it is more
/// than ten years or a figure is not above 0.
#[must_use]
pub fn shortest_span_days(mass_g: f64, scale_step_g: f64, every_days: u32) -> Option<u32> {
    if !(mass_g.is_finite() && mass_g > 0.0) || every_days == 0 {
        return None;
    }
    let limit = LIMIT_A_WEEK * mass_g / 7.0;
    (2..=LONGEST_DAYS / every_days)
        .find(|intervals| half_width_g(scale_step_g, every_days, *intervals) < limit)
        .map(|intervals| intervals * every_days)
}

/// Half width of the slope's interval over `intervals` of `every_days`, g a day, with rounding alone.
fn half_width_g(scale_step_g: f64, every_days: u32, intervals: u32) -> f64 {
    let days = (0..=intervals).map(|i| f64::from(i * every_days));
    let t = student_t(LEVEL, intervals - 1).unwrap_or(f64::INFINITY);
    t * rounding_g(scale_step_g) / spread_of_days(days).sqrt()
}

/// Coarsest step in g, not rounded to a usual one, with which weighings every `every_days` over `within_days` could show that
/// a piece of `mass_g` stays put. `None` with fewer than three weighings in that time or a weight not above 0.
#[must_use]
pub fn step_needed_g(mass_g: f64, every_days: u32, within_days: u32) -> Option<f64> {
    let intervals = within_days.checked_div(every_days)?;
    if !(mass_g.is_finite() && mass_g > 0.0) || intervals < 2 {
        return None;
    }
    let limit = LIMIT_A_WEEK * mass_g / 7.0;
    Some(limit / half_width_g(1.0, every_days, intervals))
}

/// The coarsest usual step that is finer than `step_g`, g; `None` below the finest.
#[must_use]
pub fn usual_step_below_g(step_g: f64) -> Option<f64> {
    USUAL_STEPS_G.into_iter().find(|s| *s < step_g)
}

/// What a scale with steps of `scale_step_g` can tell of a piece of `mass_g` that is weighed every `every_days` (1 or more).
#[must_use]
pub fn scale_fit(mass_g: f64, scale_step_g: f64, every_days: u32) -> ScaleFit {
    let shortest_days = shortest_span_days(mass_g, scale_step_g, every_days);
    // A rhythm of three weeks or more has no three weighings in six weeks: the full window then.
    let within = TELLS_WITHIN_DAYS.max(2 * every_days);
    ScaleFit {
        shortest_days,
        too_coarse: shortest_days.is_none_or(|days| days > within),
        step_needed_g: step_needed_g(mass_g, every_days, within).and_then(usual_step_below_g),
    }
}

/// Points of moisture (fraction of the oven-dry mass) that one step of the scale stands for: step / dry mass. `None` when the
/// dry mass is not above 0 g.
#[must_use]
pub fn moisture_of_a_step(dry_g: f64, scale_step_g: f64) -> Option<f64> {
    (dry_g.is_finite() && dry_g > 0.0).then(|| sound_step(scale_step_g) / dry_g)
}

/// True when a rhythm of `every_days` leaves fewer than three weighings in the window of the verdict.
#[must_use]
pub fn rhythm_too_slow(every_days: u32) -> bool {
    2.0 * f64::from(every_days) > WINDOW_DAYS
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Own computation, done twice independently: days for weighings every 2 days, every 3 days and weekly.
    #[test]
    fn the_shortest_spans_with_rounding_alone() {
        for (mass, step, want) in [
            (150.0, 1.0, [24, 27, 35]),
            (300.0, 1.0, [16, 18, 28]),
            (600.0, 1.0, [10, 12, 21]),
        ] {
            let got = [2, 3, 7].map(|every| shortest_span_days(mass, step, every).unwrap());
            assert_eq!(got, want, "{mass} g on {step} g");
        }
        for mass in [150.0, 300.0, 600.0] {
            for every in [2, 3, 7] {
                let days = shortest_span_days(mass, 0.1, every).unwrap();
                assert!((4..=14).contains(&days), "{mass} {every} {days}");
            }
        }
    }

    #[test]
    fn a_small_piece_wants_a_finer_scale() {
        let small = scale_fit(60.0, 1.0, 7);
        assert!(small.too_coarse && small.shortest_days > Some(42));
        assert_eq!(small.step_needed_g, Some(0.5));
        let vessel = scale_fit(420.0, 1.0, 7);
        assert!(!vessel.too_coarse);
        assert_eq!(scale_fit(420.0, 5.0, 7).step_needed_g, Some(2.0));
        assert!(scale_fit(420.0, 5.0, 7).too_coarse);
        assert_eq!(moisture_of_a_step(140.0, 1.4), Some(0.01));
        assert_eq!(
            (
                shortest_span_days(0.0, 1.0, 7),
                shortest_span_days(9.0, 1.0, 0)
            ),
            (None, None)
        );
        assert!(rhythm_too_slow(30) && !rhythm_too_slow(14));
    }

    proptest! {
        #[test]
        fn the_step_that_is_needed_tells_in_time_and_a_coarser_one_does_not(
            mass in 20.0..3000.0_f64, every in 1_u32..21
        ) {
            let step = step_needed_g(mass, every, 42).unwrap();
            prop_assert!(shortest_span_days(mass, 0.999 * step, every).unwrap() <= 42);
            prop_assert!(shortest_span_days(mass, 1.001 * step, every).is_none_or(|d| d > 42 - every));
            let fit = scale_fit(mass, 1.0, every);
            if let (true, Some(finer)) = (fit.too_coarse, fit.step_needed_g) {
                prop_assert!(finer < 1.0 || !scale_fit(mass, finer, every).too_coarse);
            }
        }
    }
}
