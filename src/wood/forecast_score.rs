//! Forecast score: how well forecasts held, once their outcomes are known.

use crate::kept::{Share, share_kept};

/// A forecast and what came of it, all in days from the day it was made, above 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// Early end of the range.
    pub early_days: f64,
    /// Middle of the forecast.
    pub middle_days: f64,
    /// Late end of the range.
    pub late_days: f64,
    /// When it came.
    pub true_days: f64,
}

/// The score of forecasts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Score {
    /// Forecasts that could be scored.
    pub forecasts: u32,
    /// Those whose range held what came, ends included.
    pub within: u32,
    /// That share with its Wilson interval.
    pub coverage: Share,
    /// Median of |middle - true| / true (fraction).
    pub median_error: f64,
    /// Ninetieth percentile of the same.
    pub ninetieth_error: f64,
    /// Median of (middle - true) / true: negative when forecasts come too early.
    pub median_bias: f64,
    /// Root mean square of ln(true / middle): the spread that a range on the logarithm of time ought to have.
    pub log_spread: f64,
    /// Median of (late - early) / true.
    pub median_width: f64,
}

impl Outcome {
    fn sound(&self) -> bool {
        let all = [
            self.early_days,
            self.middle_days,
            self.late_days,
            self.true_days,
        ];
        all.iter().all(|d| d.is_finite() && *d >= 0.0)
            && self.middle_days > 0.0
            && self.true_days > 0.0
            && self.early_days <= self.late_days
    }

    /// (middle - true) / true.
    #[must_use]
    pub fn relative_error(&self) -> f64 {
        (self.middle_days - self.true_days) / self.true_days
    }

    /// True when the range held what came, ends included.
    #[must_use]
    pub fn held(&self) -> bool {
        (self.early_days..=self.late_days).contains(&self.true_days)
    }
}

/// The score of `outcomes`, with the coverage's interval of `level` (a fraction). Those that are not finite, whose middle or
/// outcome is not above 0, or whose range is upside down are left out. `None` when none is left or the level is none.
#[must_use]
pub fn score(outcomes: &[Outcome], level: f64) -> Option<Score> {
    let sound: Vec<&Outcome> = outcomes.iter().filter(|o| o.sound()).collect();
    let forecasts = u32::try_from(sound.len()).ok()?;
    let within = u32::try_from(sound.iter().filter(|o| o.held()).count()).ok()?;
    let coverage = share_kept(within, forecasts, level)?;
    let each = |f: &dyn Fn(&Outcome) -> f64| -> Vec<f64> {
        let mut values: Vec<f64> = sound.iter().map(|o| f(o)).collect();
        values.sort_by(f64::total_cmp);
        values
    };
    let errors = each(&|o| o.relative_error().abs());
    let squares = each(&|o| (o.true_days / o.middle_days).ln().powi(2));
    Some(Score {
        forecasts,
        within,
        coverage,
        median_error: percentile(&errors, 0.5),
        ninetieth_error: percentile(&errors, 0.9),
        median_bias: percentile(&each(&Outcome::relative_error), 0.5),
        log_spread: (squares.iter().sum::<f64>() / squares.len() as f64).sqrt(),
        median_width: percentile(&each(&|o| (o.late_days - o.early_days) / o.true_days), 0.5),
    })
}

/// Percentile by straight lines between the sorted values. `sorted` is not empty.
fn percentile(sorted: &[f64], share: f64) -> f64 {
    let at = share * (sorted.len() - 1) as f64;
    let (below, part) = (at.floor() as usize, at.fract());
    match sorted.get(below + 1) {
        Some(above) => sorted[below] + part * (above - sorted[below]),
        None => sorted[below],
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn outcome(early: f64, middle: f64, late: f64, true_days: f64) -> Outcome {
        Outcome {
            early_days: early,
            middle_days: middle,
            late_days: late,
            true_days,
        }
    }

    #[test]
    fn a_score_counted_by_hand() {
        let s = score(
            &[
                outcome(8.0, 10.0, 14.0, 10.0),
                outcome(8.0, 12.0, 20.0, 10.0),
                outcome(5.0, 7.0, 9.0, 10.0),
                outcome(10.0, 20.0, 40.0, 10.0),
                outcome(3.0, f64::NAN, 9.0, 4.0),
                outcome(9.0, 5.0, 3.0, 4.0),
            ],
            0.8,
        )
        .unwrap();
        assert_eq!((s.forecasts, s.within), (4, 3));
        assert!((s.median_error - 0.25).abs() < 1e-12 && (s.median_bias - 0.10).abs() < 1e-12);
        assert!((s.ninetieth_error - 0.79).abs() < 1e-12);
        assert!((s.median_width - 0.9).abs() < 1e-12);
        assert_eq!(score(&[], 0.8), None);
        assert_eq!(score(&[outcome(1.0, 2.0, 3.0, 0.0)], 0.8), None);
    }

    proptest! {
        #[test]
        fn the_unit_of_time_does_not_matter(
            all in proptest::collection::vec((0.1..50.0_f64, 0.0..50.0_f64, 0.0..50.0_f64, 0.1..150.0_f64), 1..20)
        ) {
            let days: Vec<_> = all.iter().map(|(e, m, l, t)| outcome(*e, e + m, e + m + l, *t)).collect();
            let hours: Vec<_> = days.iter().map(|o| outcome(
                24.0 * o.early_days, 24.0 * o.middle_days, 24.0 * o.late_days, 24.0 * o.true_days)).collect();
            let (a, b) = (score(&days, 0.8).unwrap(), score(&hours, 0.8).unwrap());
            prop_assert!((a.log_spread - b.log_spread).abs() < 1e-9 && (a.median_error - b.median_error).abs() < 1e-9);
            prop_assert!(a.median_error <= a.ninetieth_error);
        }
    }
}
