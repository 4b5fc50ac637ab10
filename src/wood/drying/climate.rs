//! The climate of a place over time: readings of temperature and humidity, straight lines between them.
//!
//! Before the first and after the last reading the climate stays as it was read: "if the room stays as it is". Two readings
//! at one time make a jump.

use std::fmt;
use std::sync::Arc;

use crate::moisture::{HUMIDITY, settling_moisture};
use crate::range::{Range, RangeError};

/// Temperature of a place where wood dries, degrees C.
pub const PLACE_TEMPERATURE: Range = Range::new("temperature of the place", "C", -20.0, 60.0);
/// Days over which the climate is averaged for the moisture that a wall settles to: weather of a few days never reaches
/// the middle of a wall.
pub const SETTLING_DAYS: f64 = 14.0;

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// When, days on the piece's own count.
    pub day: f64,
    /// Degrees C, in [`PLACE_TEMPERATURE`].
    pub temp_c: f64,
    /// Relative humidity, fraction, in [`HUMIDITY`].
    pub rh: f64,
}

/// Why readings make no climate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ClimateError {
    /// There is no reading.
    Empty,
    /// A figure lies outside its range.
    Range(RangeError),
    /// A reading is earlier than the one before it.
    OutOfOrder {
        /// The day before.
        before: f64,
        /// The earlier day that follows.
        then: f64,
    },
}

impl fmt::Display for ClimateError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ClimateError::Empty => {
                write!(f, "there is no reading of the place; give at least one")
            }
            ClimateError::Range(e) => e.fmt(f),
            ClimateError::OutOfOrder { before, then } => write!(
                f,
                "the reading of day {then} follows that of day {before}; put the readings in order of time"
            ),
        }
    }
}

impl std::error::Error for ClimateError {}

impl From<RangeError> for ClimateError {
    fn from(e: RangeError) -> Self {
        ClimateError::Range(e)
    }
}

/// A place's climate. Cheap to clone.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    readings: Arc<[Reading]>,
    /// Integrals of temperature and humidity from the first reading to each.
    sums: Arc<[(f64, f64)]>,
}

impl Climate {
    /// One temperature (degrees C) and one humidity (fraction) for good.
    ///
    /// # Errors
    /// [`ClimateError::Range`] when a figure is outside its range.
    pub fn steady(temp_c: f64, rh: f64) -> Result<Self, ClimateError> {
        Climate::through(vec![Reading {
            day: 0.0,
            temp_c,
            rh,
        }])
    }

    /// Through `readings` in order of time.
    ///
    /// # Errors
    /// [`ClimateError`] when there is none, a figure is out of range, or the order is not that of time.
    pub fn through(readings: Vec<Reading>) -> Result<Self, ClimateError> {
        if readings.is_empty() {
            return Err(ClimateError::Empty);
        }
        let mut sums = Vec::with_capacity(readings.len());
        let (mut t, mut h) = (0.0, 0.0);
        for (i, r) in readings.iter().enumerate() {
            PLACE_TEMPERATURE.check(r.temp_c)?;
            HUMIDITY.check(r.rh)?;
            let last = readings[i.saturating_sub(1)];
            if !r.day.is_finite() || r.day < last.day {
                return Err(ClimateError::OutOfOrder {
                    before: last.day,
                    then: r.day,
                });
            }
            if i > 0 {
                t += 0.5 * (r.day - last.day) * (r.temp_c + last.temp_c);
                h += 0.5 * (r.day - last.day) * (r.rh + last.rh);
            }
            sums.push((t, h));
        }
        Ok(Climate {
            readings: readings.into(),
            sums: sums.into(),
        })
    }

    /// The readings.
    pub fn readings(&self) -> &[Reading] {
        &self.readings
    }

    /// Temperature (degrees C) and humidity (fraction) at `day`.
    pub fn at(&self, day: f64) -> (f64, f64) {
        let next = self.readings.partition_point(|r| r.day <= day);
        if next == 0 || next == self.readings.len() {
            let r = self.readings[next.saturating_sub(1)];
            return (r.temp_c, r.rh);
        }
        let (a, b) = (self.readings[next - 1], self.readings[next]);
        let share = (day - a.day) / (b.day - a.day);
        (
            a.temp_c + share * (b.temp_c - a.temp_c),
            a.rh + share * (b.rh - a.rh),
        )
    }

    /// Mean temperature and humidity from `from` to `to`; the climate at `to` when the span is empty.
    pub fn mean(&self, from: f64, to: f64) -> (f64, f64) {
        if self.readings.len() == 1 || to - from < 1e-9 {
            return self.at(to);
        }
        let (t1, h1) = self.sum_to(to);
        let (t0, h0) = self.sum_to(from);
        let span = to - from;
        (
            (t1 - t0) / span,
            ((h1 - h0) / span).clamp(HUMIDITY.min, HUMIDITY.max),
        )
    }

    /// Moisture (fraction) that wood here settles to: that of the mean climate of the fortnight before `day`, with the
    /// humidity moved by `shift` (fraction, see [`shifted`]).
    ///
    /// # Errors
    /// None in practice: the figures were checked when the climate was made.
    pub fn settling(&self, day: f64, shift: f64) -> Result<f64, RangeError> {
        let (t, h) = self.mean(day - SETTLING_DAYS, day);
        settling_moisture(t, shifted(h, shift))
    }

    /// The same climate up to `day`, and from then on its mean over [`SETTLING_DAYS`] before (since the first reading, if that
    /// is later): "if the room stays as it is".
    pub fn held_from(&self, day: f64) -> Climate {
        let first = self.readings[0].day;
        if self.readings.len() == 1 || day <= first {
            return self.clone();
        }
        let (temp_c, rh) = self.mean((day - SETTLING_DAYS).max(first), day);
        let known = self.readings.partition_point(|r| r.day < day);
        let mut readings = self.readings[..known].to_vec();
        let (t, h) = self.at(day);
        readings.push(Reading {
            day,
            temp_c: t,
            rh: h,
        });
        readings.push(Reading { day, temp_c, rh });
        // Readings that were in order and in range stay so.
        Climate::through(readings).unwrap_or_else(|_| self.clone())
    }

    /// Integrals from the first reading to `day`, constant beyond the ends.
    fn sum_to(&self, day: f64) -> (f64, f64) {
        let next = self.readings.partition_point(|r| r.day <= day);
        let (t, h) = self.at(day);
        if next == 0 {
            let span = day - self.readings[0].day;
            return (span * t, span * h);
        }
        let (from, (ts, hs)) = (self.readings[next - 1], self.sums[next - 1]);
        let span = day - from.day;
        (
            ts + 0.5 * span * (from.temp_c + t),
            hs + 0.5 * span * (from.rh + h),
        )
    }
}

/// A humidity moved by `shift`, kept within 1 to 99 %; as it is when nothing is moved.
pub fn shifted(rh: f64, shift: f64) -> f64 {
    if shift == 0.0 {
        rh
    } else {
        (rh + shift).clamp(0.01, 0.99)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(rows: &[(f64, f64, f64)]) -> Result<Climate, ClimateError> {
        Climate::through(
            rows.iter()
                .map(|&(day, temp_c, rh)| Reading { day, temp_c, rh })
                .collect(),
        )
    }

    #[test]
    fn straight_between_readings_and_as_read_beyond_them() {
        let climate = read(&[(0.0, 10.0, 0.5), (10.0, 20.0, 0.7), (10.0, 15.0, 0.6)]).unwrap();
        assert_eq!(climate.at(-3.0), (10.0, 0.5));
        let (t, h) = climate.at(5.0);
        assert!((t - 15.0).abs() < 1e-12 && (h - 0.6).abs() < 1e-12);
        assert_eq!(climate.at(10.0), (15.0, 0.6));
        assert_eq!(climate.at(99.0), (15.0, 0.6));
        let (t, h) = climate.mean(0.0, 20.0);
        assert!((t - 15.0).abs() < 1e-9 && (h - 0.6).abs() < 1e-9);
        let (t, _) = climate.mean(-10.0, 0.0);
        assert!((t - 10.0).abs() < 1e-9);
    }

    #[test]
    fn a_room_that_stays_as_it_is_stays_at_the_mean_of_its_last_fortnight() {
        let climate = read(&[(0.0, 10.0, 0.5), (20.0, 20.0, 0.7), (40.0, 0.0, 0.9)]).unwrap();
        let held = climate.held_from(20.0);
        assert_eq!(held.at(10.0), climate.at(10.0));
        let (t, h) = held.at(300.0);
        assert!(
            (t - 16.5).abs() < 1e-9 && (h - 0.63).abs() < 1e-9,
            "{t} {h}"
        );
        assert_eq!(climate.held_from(-5.0), climate);
        let young = climate.held_from(4.0).at(50.0);
        assert!((young.0 - 11.0).abs() < 1e-9);
    }

    #[test]
    fn readings_that_make_no_climate_are_refused() {
        assert_eq!(read(&[]), Err(ClimateError::Empty));
        assert!(matches!(
            read(&[(0.0, 18.0, 60.0)]),
            Err(ClimateError::Range(_))
        ));
        let error = read(&[(3.0, 18.0, 0.6), (1.0, 18.0, 0.6)]).unwrap_err();
        assert!(error.to_string().contains("in order of time"));
        assert!(read(&[(3.0, 18.0, 0.6), (f64::NAN, 18.0, 0.6)]).is_err());
    }

    proptest! {
        #[test]
        fn the_mean_is_that_of_many_samples(
            rows in prop::collection::vec((0.1..9.0_f64, 0.0..30.0_f64, 0.1..0.9_f64), 2..8),
            from in -5.0..20.0_f64, span in 1.0..30.0_f64
        ) {
            let mut day = 0.0;
            let rows: Vec<_> = rows.into_iter().map(|(d, t, h)| { day += d; (day, t, h) }).collect();
            let climate = read(&rows).unwrap();
            let n = 4000;
            let sampled = (0..n)
                .map(|i| climate.at(from + span * (f64::from(i) + 0.5) / f64::from(n)).0)
                .sum::<f64>() / f64::from(n);
            prop_assert!((climate.mean(from, from + span).0 - sampled).abs() < 0.01);
        }
    }
}
