//! Trend: how fast a run of weights falls or rises, with its interval.
//!
//! Ordinary least squares with Student's t, as in any textbook of statistics; the scatter is never taken for less than the
//! rounding of the scale. Errors that hang together over days (weather the log missed) make the true interval wider.

use crate::quantile::student_t;
use crate::weighings::{in_order, sound_step};

/// Level of the interval that the verdict on staying put uses.
pub const LEVEL: f64 = 0.90;

/// A straight line through weights.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trend {
    /// Slope, g a day; negative while it loses weight.
    pub per_day_g: f64,
    /// Low end of the slope's interval, g a day.
    pub low_g: f64,
    /// High end of the slope's interval, g a day.
    pub high_g: f64,
    /// Scatter about the line, g: the larger of the residual standard deviation and the scale's rounding, step / sqrt 12.
    pub scatter_g: f64,
    /// Mean weight, g.
    pub mean_g: f64,
    /// Weighings used.
    pub weighings: usize,
    /// Days from the first to the last of them.
    pub span_days: f64,
}

impl Trend {
    /// Slope and the ends of its interval as shares of the mean weight a week (fraction).
    #[must_use]
    pub fn a_week(&self) -> (f64, f64, f64) {
        let share = |g: f64| 7.0 * g / self.mean_g;
        (share(self.per_day_g), share(self.low_g), share(self.high_g))
    }

    /// Half width of the slope's interval, g a day.
    #[must_use]
    pub fn half_width_g(&self) -> f64 {
        0.5 * (self.high_g - self.low_g)
    }
}

/// The line through `weighings` of (day, grams), in any order, on a scale with steps of `scale_step_g`, with the interval of
/// `level` (a fraction, [`LEVEL`]). `None` with fewer than three weighings, or a level that is none.
#[must_use]
pub fn trend(weighings: &[(f64, f64)], scale_step_g: f64, level: f64) -> Option<Trend> {
    let run = in_order(weighings);
    let freedom = u32::try_from(run.len()).ok()?.checked_sub(2)?;
    let t = student_t(level, freedom)?;
    let n = run.len() as f64;
    let mean_day = run.iter().map(|(d, _)| d).sum::<f64>() / n;
    let mean_g = run.iter().map(|(_, m)| m).sum::<f64>() / n;
    let spread = spread_of_days(run.iter().map(|(d, _)| *d));
    let per_day_g = run
        .iter()
        .map(|(d, m)| (d - mean_day) * (m - mean_g))
        .sum::<f64>()
        / spread;
    let squares: f64 = run
        .iter()
        .map(|(d, m)| (m - mean_g - per_day_g * (d - mean_day)).powi(2))
        .sum();
    let scatter_g = (squares / f64::from(freedom))
        .sqrt()
        .max(rounding_g(scale_step_g));
    let half = t * scatter_g / spread.sqrt();
    let sound = per_day_g.is_finite() && half.is_finite();
    sound.then(|| Trend {
        per_day_g,
        low_g: per_day_g - half,
        high_g: per_day_g + half,
        scatter_g,
        mean_g,
        weighings: run.len(),
        span_days: run[run.len() - 1].0 - run[0].0,
    })
}

/// Standard deviation of rounding to steps of `scale_step_g`, g: step / sqrt 12, that of an even spread over one step.
#[must_use]
pub fn rounding_g(scale_step_g: f64) -> f64 {
    sound_step(scale_step_g) / 12.0_f64.sqrt()
}

/// Sum of the squared distances of days from their mean, days squared.
pub(crate) fn spread_of_days(days: impl Iterator<Item = f64> + Clone) -> f64 {
    let n = days.clone().count() as f64;
    let mean = days.clone().sum::<f64>() / n;
    days.map(|d| (d - mean).powi(2)).sum()
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
pub(crate) mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A vessel of 330 g weighed every four days over eight weeks on a scale of 1 g.
    pub(crate) const EIGHT_WEEKS: [f64; 15] = [
        331.0, 331.0, 330.0, 331.0, 330.0, 330.0, 330.0, 330.0, 329.0, 330.0, 330.0, 329.0, 329.0,
        330.0, 329.0,
    ];

    pub(crate) fn every(days: f64, masses: &[f64]) -> Vec<(f64, f64)> {
        let at = |(i, m): (usize, &f64)| (days * i as f64, *m);
        masses.iter().enumerate().map(at).collect()
    }

    /// Worked twice, independently, from the textbook formula: slope -0.030357 g a day, 90 % from -0.042647 to -0.018067,
    /// scatter 0.464490 g; -0.0644 % a week (-0.0905 to -0.0383).
    #[test]
    fn a_worked_slope() {
        let t = trend(&every(4.0, &EIGHT_WEEKS), 1.0, LEVEL).unwrap();
        for (got, want) in [
            (t.per_day_g, -0.030_357),
            (t.low_g, -0.042_647),
            (t.high_g, -0.018_067),
            (t.scatter_g, 0.464_490),
        ] {
            assert!((got - want).abs() < 6e-7, "{got} {want}");
        }
        let (week, low, high) = t.a_week();
        assert!((100.0 * week + 0.0644).abs() < 6e-5);
        assert!((100.0 * low + 0.0905).abs() < 6e-5 && (100.0 * high + 0.0383).abs() < 6e-5);
    }

    #[test]
    fn weights_that_never_change_keep_the_rounding_of_the_scale() {
        let t = trend(&every(7.0, &[150.0; 6]), 1.0, LEVEL).unwrap();
        assert_eq!(t.per_day_g, 0.0);
        assert!((t.scatter_g - 0.288_675).abs() < 1e-6);
        assert_eq!(trend(&every(7.0, &[150.0; 2]), 1.0, LEVEL), None);
        assert_eq!(trend(&[(1.0, 9.0); 5], 1.0, LEVEL), None);
        assert_eq!(trend(&every(7.0, &[150.0; 6]), 1.0, 1.0), None);
    }

    proptest! {
        #[test]
        fn the_zero_of_days_does_not_matter_and_a_wider_level_is_wider(
            masses in proptest::collection::vec(100.0..500.0_f64, 3..15), shift in -500.0..500.0_f64
        ) {
            let run = every(3.0, &masses);
            let moved: Vec<_> = run.iter().map(|(d, m)| (d + shift, *m)).collect();
            let (a, b) = (trend(&run, 1.0, LEVEL).unwrap(), trend(&moved, 1.0, LEVEL).unwrap());
            prop_assert!((a.per_day_g - b.per_day_g).abs() < 1e-7 && (a.low_g - b.low_g).abs() < 1e-6);
            prop_assert!(trend(&run, 1.0, 0.95).unwrap().half_width_g() > a.half_width_g());
        }
    }
}
