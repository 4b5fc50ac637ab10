//! Room air: taking the room's changing humidity out of weights, by a log of the air or by a witness piece.
//!
//! Wood follows the air with a delay that grows with its wall. The settling moisture of the air (from
//! [`crate::moisture::settling_moisture`]) goes through a first-order lag; a weight is then set to what it would have been at
//! the mean of the lagged moistures. A witness is a dry offcut of the same wood and wall kept and weighed beside the piece.

use crate::range::{Range, RangeError};
use crate::weighings::{in_order, sound_step};

/// Wall thickness for the lag, mm.
pub const LAG_WALL: Range = Range::new("wall thickness", "mm", 1.0, 100.0);
/// Longest gap between two readings of the air that is bridged, days: weekly readings with one left out.
pub const LONGEST_GAP_DAYS: f64 = 15.0;
/// A witness weighed this many days apart from the piece still counts as weighed beside it.
pub const BESIDE_DAYS: f64 = 1.0;

/// Walls in mm and their lags in days: 63 % of the way after a step of the air, on an open shelf.
const LAGS: [(f64, f64); 3] = [(10.0, 3.0), (14.0, 6.0), (20.0, 12.0)];

/// Lag in days of a wall of `wall_mm` behind the air of an open shelf: 3 days at 10 mm, 6 at 14, 12 at 20, powers between,
/// with the square of the wall beyond. Own computation with the drying model of a wall, no measurement: out by a factor of two
/// either way for a real wood.
///
/// # Errors
/// [`RangeError`] when the wall is outside [`LAG_WALL`].
pub fn lag_days(wall_mm: f64) -> Result<f64, RangeError> {
    let wall = LAG_WALL.check(wall_mm)?;
    let [first, middle, last] = LAGS;
    let between = |a: (f64, f64), b: (f64, f64)| {
        let power = (b.1 / a.1).ln() / (b.0 / a.0).ln();
        a.1 * (wall / a.0).powf(power)
    };
    Ok(if wall <= first.0 {
        first.1 * (wall / first.0).powi(2)
    } else if wall <= middle.0 {
        between(first, middle)
    } else if wall <= last.0 {
        between(middle, last)
    } else {
        last.1 * (wall / last.0).powi(2)
    })
}

/// Weights set right, with what had to be left out.
#[derive(Debug, Clone, PartialEq)]
pub struct SetRight {
    /// (day, grams) by day, as it would have weighed in unchanging air.
    pub weighings: Vec<(f64, f64)>,
    /// Weighings for whose days the air, or the witness, is not known.
    pub left_out: usize,
    /// Step in g that the scatter of these weights stands for: that of the scale, with the witness's own on top.
    pub scale_step_g: f64,
}

/// Settling moistures passed through a first-order lag.
#[derive(Debug, Clone)]
pub struct LaggedAir {
    /// (day, settling moisture, lagged moisture), by day.
    knots: Vec<(f64, f64, f64)>,
    lag: f64,
}

impl LaggedAir {
    /// The lag of `lag_days` (above 0) over `air` of (day, settling moisture as a fraction), in any order; straight lines
    /// between the readings. It starts from the mean of the first `lag_days`, so weights within about two lags of the first
    /// reading are set right less well. Readings that are not finite or below 0 are left out. `None` when none is left or the
    /// lag is not above 0.
    #[must_use]
    pub fn new(air: &[(f64, f64)], lag_days: f64) -> Option<Self> {
        if !(lag_days.is_finite() && lag_days > 0.0) {
            return None;
        }
        let mut readings: Vec<(f64, f64)> = air
            .iter()
            .copied()
            .filter(|(d, m)| d.is_finite() && m.is_finite() && *m >= 0.0)
            .collect();
        readings.sort_by(|a, b| a.0.total_cmp(&b.0));
        readings.dedup_by(|later, kept| later.0 == kept.0);
        let first = readings.first()?.0;
        let early = readings.partition_point(|r| r.0 <= first + lag_days);
        let start = readings[..early].iter().map(|r| r.1).sum::<f64>() / early as f64;
        let mut air = LaggedAir {
            knots: vec![(first, readings[0].1, start)],
            lag: lag_days,
        };
        for &(day, settling) in &readings[1..] {
            let (d0, s0, l0) = air.knots[air.knots.len() - 1];
            let slope = (settling - s0) / (day - d0);
            let lagged = follow(s0, slope, l0, day - d0, lag_days);
            air.knots.push((day, settling, lagged));
        }
        Some(air)
    }

    /// The lagged moisture on a day; `None` before the first reading, more than [`LONGEST_GAP_DAYS`] after the last, and in
    /// a longer gap between two.
    #[must_use]
    pub fn at(&self, day: f64) -> Option<f64> {
        let after = self.knots.partition_point(|k| k.0 <= day);
        let &(d0, s0, l0) = self.knots.get(after.checked_sub(1)?)?;
        let slope = match self.knots.get(after) {
            Some(&(d1, ..)) if d1 - d0 > LONGEST_GAP_DAYS && day > d0 => return None,
            Some(&(d1, s1, _)) => (s1 - s0) / (d1 - d0),
            None if day - d0 > LONGEST_GAP_DAYS => return None,
            None => 0.0,
        };
        Some(follow(s0, slope, l0, day - d0, self.lag))
    }

    /// Sets `weighings` of (day, grams), on a scale with steps of `scale_step_g`, right for the room: m (1 + mean L) / (1 + L).
    #[must_use]
    pub fn set_right(&self, weighings: &[(f64, f64)], scale_step_g: f64) -> SetRight {
        let run = in_order(weighings);
        let known: Vec<(f64, f64, f64)> = run
            .iter()
            .filter_map(|(day, mass)| Some((*day, *mass, self.at(*day)?)))
            .collect();
        let mean = known.iter().map(|k| k.2).sum::<f64>() / known.len().max(1) as f64;
        SetRight {
            left_out: run.len() - known.len(),
            weighings: known
                .into_iter()
                .map(|(day, mass, lagged)| (day, mass * (1.0 + mean) / (1.0 + lagged)))
                .collect(),
            scale_step_g: sound_step(scale_step_g),
        }
    }
}

/// A lag of `lag` that starts at `from`, `days` after its driver began at `driver` and to change by `slope` a day: the exact
/// answer of dL/dt = (driver + slope t - L) / lag.
fn follow(driver: f64, slope: f64, from: f64, days: f64, lag: f64) -> f64 {
    let settled = driver + slope * (days - lag);
    settled + (from - driver + slope * lag) * (-days / lag).exp()
}

/// Sets `weighings` of (day, grams) right by a dry `witness` weighed within a day of them: m (mean w) / w. Scale steps in g.
/// What both lose together is the room; what the piece loses beside the witness is drying.
#[must_use]
pub fn set_right_by_witness(
    weighings: &[(f64, f64)],
    scale_step_g: f64,
    witness: &[(f64, f64)],
    witness_step_g: f64,
) -> SetRight {
    let (run, beside) = (in_order(weighings), in_order(witness));
    let pairs: Vec<(f64, f64, f64)> = run
        .iter()
        .filter_map(|&(day, mass)| {
            let nearest = beside
                .iter()
                .min_by(|a, b| (a.0 - day).abs().total_cmp(&(b.0 - day).abs()))?;
            ((nearest.0 - day).abs() <= BESIDE_DAYS).then_some((day, mass, nearest.1))
        })
        .collect();
    let n = pairs.len().max(1) as f64;
    let mean_w = pairs.iter().map(|p| p.2).sum::<f64>() / n;
    let mean_m = pairs.iter().map(|p| p.1).sum::<f64>() / n;
    let own = sound_step(scale_step_g);
    let scale_step_g = if pairs.is_empty() {
        own
    } else {
        own.hypot(sound_step(witness_step_g) * mean_m / mean_w)
    };
    SetRight {
        left_out: run.len() - pairs.len(),
        weighings: pairs
            .into_iter()
            .map(|(day, mass, w)| (day, mass * mean_w / w))
            .collect(),
        scale_step_g,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::f64::consts::{E, PI};

    #[test]
    fn the_lag_goes_through_its_table_and_near_the_time_constant_of_a_slab() {
        for (wall, lag) in [
            (10.0, 3.0),
            (14.0, 6.0),
            (20.0, 12.0),
            (5.0, 0.75),
            (40.0, 48.0),
        ] {
            assert!((lag_days(wall).unwrap() - lag).abs() < 1e-9);
            // First term of the slab's series (Crank 1975, equation 4.18): l^2 / (pi^2 D) with D at 11 %, 3.6e-11 m2/s.
            let slab = (wall * 1e-3).powi(2) / (PI * PI * 3.6e-11) / 86_400.0;
            assert!((0.8..1.25).contains(&(lag / slab)), "{wall} {slab}");
        }
        assert!(lag_days(0.5).is_err() && lag_days(f64::NAN).is_err());
    }

    #[test]
    fn a_step_of_the_air_is_63_per_cent_there_after_one_lag() {
        let air = LaggedAir::new(
            &[
                (-8.0, 0.10),
                (-4.0, 0.10),
                (0.0, 0.10),
                (1e-9, 0.12),
                (14.0, 0.12),
            ],
            3.0,
        )
        .unwrap();
        let at = |d: f64| (air.at(d).unwrap() - 0.10) / 0.02;
        assert!((at(3.0) - (1.0 - 1.0 / E)).abs() < 1e-6);
        assert!((at(9.0) - (1.0 - E.powi(-3))).abs() < 1e-6);
        assert_eq!(air.at(-9.0), None);
        assert!(air.at(28.9).is_some() && air.at(29.1).is_none());
    }

    #[test]
    fn a_ramp_is_followed_one_lag_behind() {
        let ramp: Vec<_> = (0..40)
            .map(|d| (f64::from(d), 0.10 + 0.001 * f64::from(d)))
            .collect();
        let air = LaggedAir::new(&ramp, 3.0).unwrap();
        assert!((air.at(30.5).unwrap() - (0.10 + 0.0275)).abs() < 1e-6);
    }

    #[test]
    fn weighings_without_air_are_left_out_and_counted() {
        let air = LaggedAir::new(&[(0.0, 0.11), (7.0, 0.11), (40.0, 0.12)], 3.0).unwrap();
        let right = air.set_right(
            &[(-1.0, 400.0), (3.0, 400.0), (20.0, 400.0), (41.0, 400.0)],
            1.0,
        );
        assert_eq!(right.left_out, 2);
        assert_eq!(right.weighings.len(), 2);
        assert_eq!(LaggedAir::new(&[], 3.0).map(|a| a.lag), None);
        assert!(LaggedAir::new(&[(0.0, 0.1)], 0.0).is_none());
    }

    #[test]
    fn a_witness_takes_the_room_out_and_brings_its_own_rounding() {
        let room = |d: f64| 1.0 + 0.01 * (d / 9.0).sin();
        let days: Vec<f64> = (0..12).map(|i| 4.0 * f64::from(i)).collect();
        let piece: Vec<_> = days.iter().map(|d| (*d, 400.0 * room(*d))).collect();
        let witness: Vec<_> = days[..10]
            .iter()
            .map(|d| (d + 0.5, 100.0 * room(*d)))
            .collect();
        let right = set_right_by_witness(&piece, 1.0, &witness, 0.1);
        assert_eq!((right.left_out, right.weighings.len()), (2, 10));
        let first = right.weighings[0].1;
        assert!(
            right
                .weighings
                .iter()
                .all(|(_, m)| (m - first).abs() < 1e-9)
        );
        assert!((right.scale_step_g - 1.0_f64.hypot(0.4)).abs() < 0.01);
        let none = set_right_by_witness(&piece, 1.0, &[], 0.1);
        assert_eq!((none.left_out, none.scale_step_g), (12, 1.0));
    }

    proptest! {
        #[test]
        fn wood_that_follows_the_air_weighs_the_same_once_set_right(
            air in proptest::collection::vec(0.05..0.25_f64, 10..60), lag in 0.5..20.0_f64
        ) {
            let log: Vec<_> = air.iter().enumerate().map(|(i, m)| (2.0 * i as f64, *m)).collect();
            let lagged = LaggedAir::new(&log, lag).unwrap();
            let run: Vec<_> = log.iter().map(|(d, _)| (*d, 300.0 * (1.0 + lagged.at(*d).unwrap()))).collect();
            let right = lagged.set_right(&run, 0.1);
            prop_assert_eq!(right.left_out, 0);
            let first = right.weighings[0].1;
            prop_assert!(right.weighings.iter().all(|(_, m)| (m - first).abs() < 1e-9));
            let (least, most) = air.iter().fold((1.0_f64, 0.0_f64), |(a, b), m| (a.min(*m), b.max(*m)));
            prop_assert!(log.iter().all(|(d, _)| (least - 1e-12..=most + 1e-12).contains(&lagged.at(*d).unwrap())));
        }
    }
}
