//! Exponential: the final weight of a piece late in drying on an open shelf, by one falling exponential.
//!
//! m = m_final + A exp(-t / tau) by unweighted least squares. Good for the final weight late in an open run only (to about 1 %
//! from the sixth weighing in own simulations). It is no forecast of dates: wood dries ever more slowly, so the curve settles
//! 25 to 47 % too early on a shelf and several times too late in a bag.

use std::fmt;

use crate::weighings::in_order;

/// Weighings needed.
pub const LEAST_WEIGHINGS: usize = 6;
/// A time constant longer than this many spans of the weighings is a straight line: nothing has bent yet.
const LONGEST_SPANS: f64 = 3.0;
/// Steps of the first search for the time constant.
const STEPS: u32 = 120;

/// Why weights give no final weight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FinalWeightError {
    /// Fewer than [`LEAST_WEIGHINGS`].
    TooFew {
        /// Weighings that can be used.
        found: usize,
    },
    /// The weights do not fall towards a final one.
    NotFalling,
    /// They still fall along a straight line.
    NotBent,
}

impl fmt::Display for FinalWeightError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FinalWeightError::TooFew { found } => write!(
                f,
                "there are {found} weighings since the last change of mass, but a final weight needs \
                 {LEAST_WEIGHINGS}; weigh it again"
            ),
            FinalWeightError::NotFalling => f.write_str(
                "the weights do not fall towards a final weight; take those since the piece came out of its bag",
            ),
            FinalWeightError::NotBent => f.write_str(
                "the weights still fall along a straight line, but a final weight needs the fall to slow down; \
                 weigh it again later",
            ),
        }
    }
}

impl std::error::Error for FinalWeightError {}

/// A falling exponential through weights.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exponential {
    /// Final weight, g.
    pub final_g: f64,
    /// Its standard deviation, g, from the scatter alone: the shape of the curve is wrong by more.
    pub final_sd_g: f64,
    /// Weight above the final one at the first weighing, g.
    pub above_g: f64,
    /// Time constant, days.
    pub days: f64,
    /// Its standard deviation, days.
    pub days_sd: f64,
    /// Share of the fall that is still to come after the last weighing (fraction).
    pub share_left: f64,
}

/// The least-squares exponential through `weighings` of (day, grams), in any order, since the last change of mass or of place.
///
/// # Errors
/// [`FinalWeightError`] with too few weighings, or where they do not bend towards a final weight.
pub fn final_weight(weighings: &[(f64, f64)]) -> Result<Exponential, FinalWeightError> {
    let run = in_order(weighings);
    if run.len() < LEAST_WEIGHINGS {
        return Err(FinalWeightError::TooFew { found: run.len() });
    }
    let (first, last) = (run[0].0, run[run.len() - 1].0);
    let points: Vec<(f64, f64)> = run.iter().map(|(d, m)| (d - first, *m)).collect();
    let span = last - first;
    let (least, most) = ((span / 100.0).ln(), (20.0 * span).ln());
    let at = |i: u32| least + (most - least) * f64::from(i) / f64::from(STEPS);
    let squares = |ln_tau: f64| line_at(&points, ln_tau.exp()).2;
    let best = (0..=STEPS)
        .min_by(|a, b| squares(at(*a)).total_cmp(&squares(at(*b))))
        .unwrap_or(0);
    let tau = narrowed(
        squares,
        at(best.saturating_sub(1)),
        at((best + 1).min(STEPS)),
    )
    .exp();
    let (final_g, above_g, left) = line_at(&points, tau);
    if above_g <= 0.0 {
        return Err(FinalWeightError::NotFalling);
    }
    if tau > LONGEST_SPANS * span || final_g <= 0.0 {
        return Err(FinalWeightError::NotBent);
    }
    let variance = left / (points.len() - 3) as f64;
    let (final_sd_g, days_sd) = deviations(&points, above_g, tau, variance);
    Ok(Exponential {
        final_g,
        final_sd_g,
        above_g,
        days: tau,
        days_sd,
        share_left: (-span / tau).exp(),
    })
}

/// Final weight, weight above it and sum of squares for one time constant: a straight line in exp(-t / tau).
fn line_at(points: &[(f64, f64)], tau: f64) -> (f64, f64, f64) {
    let n = points.len() as f64;
    let x = |t: f64| (-t / tau).exp();
    let mean_x = points.iter().map(|p| x(p.0)).sum::<f64>() / n;
    let mean_m = points.iter().map(|p| p.1).sum::<f64>() / n;
    let (mut xx, mut xm) = (0.0, 0.0);
    for (t, m) in points {
        xx += (x(*t) - mean_x).powi(2);
        xm += (x(*t) - mean_x) * (m - mean_m);
    }
    let above = if xx > 0.0 { xm / xx } else { 0.0 };
    let last = mean_m - above * mean_x;
    let squares = points
        .iter()
        .map(|(t, m)| (m - last - above * x(*t)).powi(2))
        .sum();
    (last, above, squares)
}

/// Golden section search of a least value between `low` and `high`.
fn narrowed(f: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
    for _ in 0..60 {
        let (a, b) = (high - golden * (high - low), low + golden * (high - low));
        if f(a) < f(b) {
            high = b;
        } else {
            low = a;
        }
    }
    0.5 * (low + high)
}

/// Standard deviations of the final weight and of the time constant: variance (J^T J)^-1 with the three slopes 1,
/// exp(-t / tau) and A t exp(-t / tau) / tau^2.
fn deviations(points: &[(f64, f64)], above: f64, tau: f64, variance: f64) -> (f64, f64) {
    let mut a = [[0.0; 3]; 3];
    for (t, _) in points {
        let x = (-t / tau).exp();
        let j = [1.0, x, above * t * x / (tau * tau)];
        for (row, ji) in a.iter_mut().zip(j) {
            for (cell, jk) in row.iter_mut().zip(j) {
                *cell += ji * jk;
            }
        }
    }
    let minor = |r: [usize; 2], c: [usize; 2]| {
        a[r[0]][c[0]] * a[r[1]][c[1]] - a[r[0]][c[1]] * a[r[1]][c[0]]
    };
    let determinant = a[0][0] * minor([1, 2], [1, 2]) - a[0][1] * minor([1, 2], [0, 2])
        + a[0][2] * minor([1, 2], [0, 1]);
    let sd = |cofactor: f64| (variance * cofactor / determinant).max(0.0).sqrt();
    (sd(minor([1, 2], [1, 2])), sd(minor([0, 1], [0, 1])))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::trend::tests::every;
    use proptest::prelude::*;

    /// Worked twice, independently: final 400.1830 g (sd 0.5268), 119.7263 g above it, 11.9757 days (sd 0.1317).
    #[test]
    fn a_worked_curve() {
        let masses = [
            520.0, 493.0, 473.0, 457.0, 444.0, 434.0, 427.0, 421.0, 416.0, 413.0,
        ];
        let e = final_weight(&every(3.0, &masses)).unwrap();
        for (got, want, tolerance) in [
            (e.final_g, 400.1830, 5e-5 * 400.0),
            (e.final_sd_g, 0.5268, 6e-5),
            (e.above_g, 119.7263, 1e-3),
            (e.days, 11.9757, 1e-3),
            (e.days_sd, 0.1317, 6e-5),
        ] {
            assert!((got - want).abs() <= tolerance, "{got} {want}");
        }
        assert!((e.final_g - 400.1830).abs() < 6e-4);
        assert!((e.share_left - (-27.0 / 11.9757_f64).exp()).abs() < 1e-4);
    }

    #[test]
    fn too_few_straight_and_rising_weights_are_refused_with_reasons() {
        let few = final_weight(&every(3.0, &[520.0, 493.0, 473.0])).unwrap_err();
        assert!(few.to_string().contains("there are 3 weighings"));
        let straight = final_weight(&every(3.0, &[520.0, 510.0, 500.0, 490.0, 480.0, 470.0]));
        assert_eq!(straight, Err(FinalWeightError::NotBent));
        let rising = final_weight(&every(3.0, &[400.0, 410.0, 415.0, 418.0, 419.0, 420.0]));
        assert_eq!(rising, Err(FinalWeightError::NotFalling));
        for e in [FinalWeightError::NotBent, FinalWeightError::NotFalling] {
            assert!(e.to_string().contains("weights"));
        }
        assert!(final_weight(&every(3.0, &[400.0; 8])).is_err());
    }

    proptest! {
        #[test]
        fn an_exact_curve_is_found(end in 100.0..900.0_f64, above in 5.0..400.0_f64, tau in 4.0..40.0_f64) {
            let run: Vec<_> = (0..12).map(|i| {
                let t = 3.0 * f64::from(i);
                (t + 50.0, end + above * (-t / tau).exp())
            }).collect();
            let e = final_weight(&run).unwrap();
            prop_assert!((e.final_g / end - 1.0).abs() < 1e-4 && (e.days / tau - 1.0).abs() < 1e-3);
        }

        #[test]
        fn any_weights_give_numbers_or_a_reason(
            run in proptest::collection::vec((-1e3..1e3_f64, -10.0..1e4_f64), 0..20)
        ) {
            if let Ok(e) = final_weight(&run) {
                prop_assert!(e.final_g > 0.0 && e.days > 0.0 && !e.final_sd_g.is_nan());
            }
        }
    }
}
