//! Survival: the share of pieces still whole after so many days of drying (Kaplan-Meier).
//!
//! A lost piece is an event; a piece that is still drying, or was finished whole, is censored on the day it was last known
//! whole. Source: Kaplan and Meier (1958), Journal of the American Statistical Association 53, 457; variance by Greenwood
//! (1926); interval on log(-log S), Kalbfleisch and Prentice (1980).

use crate::quantile::normal;

/// One piece: days of drying it was seen for, and whether it was lost on that day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// Days from the start of drying, 0 or more.
    pub days: f64,
    /// True when it was lost then, false when it was whole then.
    pub lost: bool,
}

/// The curve after one day on which pieces were lost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// The day.
    pub days: f64,
    /// Pieces drying and whole just before; those censored on the very day are among them.
    pub at_risk: u32,
    /// Pieces lost on it.
    pub lost: u32,
    /// Share still whole after it (fraction).
    pub whole: f64,
    /// Greenwood's standard error of that share; 0 when none is left whole.
    pub standard_error: f64,
    /// Interval of the share; `None` when none is left whole: no interval can be had there.
    pub between: Option<(f64, f64)>,
}

/// A survival curve: 1 until the first step, level between steps.
#[derive(Debug, Clone, PartialEq)]
pub struct Survival {
    /// The steps by day; empty when none was lost.
    pub steps: Vec<Step>,
    /// Pieces seen.
    pub pieces: u32,
    /// Pieces lost.
    pub lost: u32,
    /// The longest time a piece was seen for, days: the curve says nothing beyond.
    pub seen_days: f64,
}

impl Survival {
    /// Share still whole after `days` (fraction); `None` beyond [`Survival::seen_days`] and before day 0.
    #[must_use]
    pub fn whole_after(&self, days: f64) -> Option<f64> {
        if !(0.0..=self.seen_days).contains(&days) {
            return None;
        }
        let past = self.steps.partition_point(|s| s.days <= days);
        Some(past.checked_sub(1).map_or(1.0, |i| self.steps[i].whole))
    }

    /// The first day after which half or fewer are whole; `None` when more than half stayed whole throughout.
    #[must_use]
    pub fn median_days(&self) -> Option<f64> {
        self.first(|s| s.whole <= 0.5 + 1e-12)
    }

    /// The days between which the median lies: the first days on which the low and the high end of the interval are at half or
    /// below. `None` where an end never gets there.
    #[must_use]
    pub fn median_between(&self) -> (Option<f64>, Option<f64>) {
        (
            self.first(|s| s.between.is_none_or(|(low, _)| low <= 0.5)),
            self.first(|s| s.between.is_some_and(|(_, high)| high <= 0.5)),
        )
    }

    fn first(&self, holds: impl Fn(&Step) -> bool) -> Option<f64> {
        self.steps.iter().find(|s| holds(s)).map(|s| s.days)
    }
}

/// The curve of pieces `seen`, in any order, with intervals of `level` (a fraction). Pieces whose days are not finite or below 0
/// are left out. `None` when none is left or the level is none.
#[must_use]
pub fn survival(seen: &[Seen], level: f64) -> Option<Survival> {
    let z = normal(level)?;
    let mut seen: Vec<Seen> = seen
        .iter()
        .copied()
        .filter(|s| s.days.is_finite() && s.days >= 0.0)
        .collect();
    seen.sort_by(|a, b| a.days.total_cmp(&b.days));
    let seen_days = seen.last()?.days;
    let pieces = u32::try_from(seen.len()).ok()?;
    let mut steps = Vec::new();
    let (mut at_risk, mut whole, mut greenwood) = (pieces, 1.0, 0.0);
    for same_day in seen.chunk_by(|a, b| a.days == b.days) {
        let lost = same_day.iter().map(|s| u32::from(s.lost)).sum::<u32>();
        if lost > 0 {
            let (n, d) = (f64::from(at_risk), f64::from(lost));
            whole *= 1.0 - d / n;
            greenwood += d / (n * (n - d));
            let some_left = lost < at_risk;
            steps.push(Step {
                days: same_day[0].days,
                at_risk,
                lost,
                whole,
                standard_error: if some_left {
                    whole * greenwood.sqrt()
                } else {
                    0.0
                },
                between: some_left.then(|| between(whole, greenwood, z)),
            });
        }
        at_risk -= u32::try_from(same_day.len()).unwrap_or(at_risk);
    }
    Some(Survival {
        lost: steps.iter().map(|s| s.lost).sum(),
        steps,
        pieces,
        seen_days,
    })
}

/// Interval of a share between 0 and 1 on log(-log S).
fn between(whole: f64, greenwood: f64, z: f64) -> (f64, f64) {
    let reach = z * greenwood.sqrt() / whole.ln().abs();
    (whole.powf(reach.exp()), whole.powf((-reach).exp()))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn seen(days: &[f64], lost: &[bool]) -> Vec<Seen> {
        let one = |(d, l): (&f64, &bool)| Seen { days: *d, lost: *l };
        days.iter().zip(lost).map(one).collect()
    }

    /// The example of the 1958 paper (from memory): eight objects, deaths at 0.8, 3.1, 5.4 and 9.2, losses at 1.0, 2.7, 7.0 and 12.1; the
    /// product-limit estimate steps to 7/8, 7/10, 21/40 and 21/80.
    #[test]
    fn the_example_of_the_paper() {
        let days = [0.8, 1.0, 2.7, 3.1, 5.4, 7.0, 9.2, 12.1];
        let lost = [true, false, false, true, true, false, true, false];
        let s = survival(&seen(&days, &lost), 0.95).unwrap();
        let got: Vec<_> = s
            .steps
            .iter()
            .map(|s| (s.days, s.at_risk, s.whole))
            .collect();
        let want = [
            (0.8, 8, 7.0 / 8.0),
            (3.1, 5, 0.7),
            (5.4, 4, 0.525),
            (9.2, 2, 0.2625),
        ];
        assert!(
            got.iter()
                .zip(want)
                .all(|(g, w)| (g.0, g.1) == (w.0, w.1) && (g.2 - w.2).abs() < 1e-12)
        );
        assert_eq!((s.median_days(), s.pieces, s.lost), (Some(9.2), 8, 4));
        assert_eq!(
            (s.whole_after(0.5), s.whole_after(4.0), s.whole_after(13.0)),
            (Some(1.0), Some(s.steps[1].whole), None)
        );
    }

    #[test]
    fn none_seen_none_lost_and_all_lost() {
        assert_eq!(survival(&[], 0.95), None);
        assert_eq!(
            survival(&seen(&[f64::NAN, -1.0], &[true, true]), 0.95),
            None
        );
        let living = survival(&seen(&[10.0, 40.0, 90.0], &[false; 3]), 0.95).unwrap();
        assert_eq!(
            (
                living.steps.len(),
                living.median_days(),
                living.whole_after(90.0)
            ),
            (0, None, Some(1.0))
        );
        assert_eq!(living.median_between(), (None, None));
        let gone = survival(&seen(&[10.0, 10.0, 10.0], &[true; 3]), 0.95).unwrap();
        assert_eq!(
            (
                gone.steps[0].whole,
                gone.steps[0].between,
                gone.median_days()
            ),
            (0.0, None, Some(10.0))
        );
    }

    proptest! {
        #[test]
        fn without_censoring_it_is_the_plain_share_and_it_only_falls(
            pieces in proptest::collection::vec((0_u32..30, any::<bool>()), 1..40)
        ) {
            let all_lost: Vec<_> = pieces.iter().map(|(d, _)| Seen { days: f64::from(*d), lost: true }).collect();
            for step in &survival(&all_lost, 0.8).unwrap().steps {
                let left = all_lost.iter().filter(|s| s.days > step.days).count() as f64;
                prop_assert!((step.whole - left / all_lost.len() as f64).abs() < 1e-12);
            }
            let some: Vec<_> = pieces.iter().map(|(d, l)| Seen { days: f64::from(*d), lost: *l }).collect();
            let curve = survival(&some, 0.8).unwrap();
            prop_assert!(curve.steps.windows(2).all(|w| w[1].whole < w[0].whole && w[1].days > w[0].days));
            prop_assert!(curve.steps.iter().all(|s| s.between.is_none_or(|(l, h)| l <= s.whole && s.whole <= h)));
        }
    }
}
