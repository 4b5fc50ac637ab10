//! Is the wall even, and where does more come off: readings against the wall wanted.
//!
//! A station may have been read at several places round; what comes off goes by its thinnest place, because the tool
//! takes the same all round. Nothing here ever advises a cut below the wall wanted. The tolerances are common practice,
//! no source.

use crate::range::RangeError;
use crate::wall::WALL;

/// How far a wall may be from the wall wanted and still be called even.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance {
    /// Above the wall wanted, mm.
    pub heavy_mm: f64,
    /// Below the wall wanted, mm.
    pub thin_mm: f64,
}

impl Tolerance {
    /// For a rough wall: 1.5 mm either way. Common practice, no source.
    pub const ROUGH: Tolerance = Tolerance {
        heavy_mm: 1.5,
        thin_mm: 1.5,
    };
    /// For a finish wall: 1.0 mm either way. Common practice, no source.
    pub const FINISH: Tolerance = Tolerance {
        heavy_mm: 1.0,
        thin_mm: 1.0,
    };
}

/// What a wall is, against the wall wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// More than the tolerance above the wall wanted.
    Heavy,
    /// Within the tolerance, its ends included.
    Even,
    /// More than the tolerance below the wall wanted.
    Thin,
}

/// Heavy, even or thin: `wall_mm` (the thinnest place of a station) against `wanted_mm`.
pub fn verdict(wall_mm: f64, wanted_mm: f64, tolerance: Tolerance) -> Verdict {
    let off = wall_mm - wanted_mm;
    // A thousandth of a millimetre forgives the binary forms of decimal readings.
    if off > tolerance.heavy_mm + 1e-3 {
        Verdict::Heavy
    } else if off < -tolerance.thin_mm - 1e-3 {
        Verdict::Thin
    } else {
        Verdict::Even
    }
}

/// The walls of a whole round in a few figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Evenness {
    /// Thickest reading, mm.
    pub thickest_mm: f64,
    /// Thinnest reading, mm.
    pub thinnest_mm: f64,
    /// Mean of the readings, mm.
    pub mean_mm: f64,
    /// Population standard deviation over the mean, a plain ratio.
    pub variation: f64,
}

impl Evenness {
    /// The figures of `walls_mm`, one or more readings; `None` when there is none.
    ///
    /// # Errors
    /// [`RangeError`] when a reading is outside [`WALL`].
    pub fn of(walls_mm: &[f64]) -> Result<Option<Evenness>, RangeError> {
        for wall in walls_mm {
            WALL.check(*wall)?;
        }
        if walls_mm.is_empty() {
            return Ok(None);
        }
        let n = walls_mm.len() as f64;
        let mean_mm = walls_mm.iter().sum::<f64>() / n;
        let variance = walls_mm.iter().map(|w| (w - mean_mm).powi(2)).sum::<f64>() / n;
        Ok(Some(Evenness {
            thickest_mm: walls_mm.iter().copied().fold(f64::NEG_INFINITY, f64::max),
            thinnest_mm: walls_mm.iter().copied().fold(f64::INFINITY, f64::min),
            mean_mm,
            variation: variance.sqrt() / mean_mm,
        }))
    }

    /// Thickest less thinnest, mm.
    pub fn spread_mm(&self) -> f64 {
        self.thickest_mm - self.thinnest_mm
    }
}

/// The thinnest of the places read round a station, mm; `None` when none was read.
pub fn thinnest_mm(places_mm: &[f64]) -> Option<f64> {
    places_mm
        .iter()
        .copied()
        .filter(|w| w.is_finite())
        .reduce(f64::min)
}

/// What can come off a station whose thinnest place is `wall_mm` without going below `wanted_mm`: never less than 0.
pub fn take_off_mm(wall_mm: f64, wanted_mm: f64) -> f64 {
    (wall_mm - wanted_mm).max(0.0)
}

/// What to do at a station.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Advice {
    /// Even: leave it alone.
    LeaveAlone,
    /// Take about this much (mm, whole halves, rounded down), then measure.
    About(f64),
    /// More than 1.5 mm too heavy: take half of the excess (mm, whole halves, rounded down), then measure.
    HalfThenMeasure(f64),
    /// Thin by this much (mm): nothing comes off here.
    Short(f64),
}

/// Excess (mm) above which only half is taken before measuring again. Common practice, no source.
pub const TAKE_IT_AT_ONCE_MM: f64 = 1.5;

/// What to do at a station whose thinnest place is `wall_mm`. A cut advised never reaches below the wall wanted.
pub fn advice(wall_mm: f64, wanted_mm: f64, tolerance: Tolerance) -> Advice {
    match verdict(wall_mm, wanted_mm, tolerance) {
        Verdict::Even => Advice::LeaveAlone,
        Verdict::Thin => Advice::Short(wanted_mm - wall_mm),
        Verdict::Heavy => {
            let excess = take_off_mm(wall_mm, wanted_mm);
            let halves = |mm: f64| (2.0 * mm + 1e-9).floor() / 2.0;
            if excess > TAKE_IT_AT_ONCE_MM + 1e-3 {
                // Half of a small excess would round to nothing: half a millimetre is the least worth setting up for.
                Advice::HalfThenMeasure(halves(0.5 * excess).max(0.5))
            } else {
                Advice::About(halves(excess).max(excess.min(0.5)))
            }
        }
    }
}

/// Indices of the stations whose thinnest place lies below the wall wanted, rim to foot.
pub fn short_stations(walls_mm: &[f64], wanted_mm: f64) -> Vec<usize> {
    (0..walls_mm.len())
        .filter(|&i| walls_mm[i] < wanted_mm - 1e-3)
        .collect()
}

/// The thickest wall that every station can still be brought to, mm: the thinnest of the thinnest places.
pub fn best_even_wall_mm(walls_mm: &[f64]) -> Option<f64> {
    thinnest_mm(walls_mm)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const WALLS: [f64; 7] = [9.0, 10.5, 11.0, 9.5, 10.0, 12.0, 14.0];

    /// Values worked out twice, independently.
    #[test]
    fn seven_station_vessel() {
        let even = Evenness::of(&WALLS).unwrap().unwrap();
        assert!((even.mean_mm - 10.857143).abs() < 0.6e-6);
        assert_eq!(even.spread_mm(), 5.0);
        assert!((even.variation - 0.145036).abs() < 0.6e-6);
        let off: Vec<f64> = WALLS.iter().map(|w| take_off_mm(*w, 9.5)).collect();
        assert_eq!(off, [0.0, 1.0, 1.5, 0.0, 0.5, 2.5, 4.5]);
        assert_eq!(short_stations(&WALLS, 9.5), [0]);
        assert_eq!(best_even_wall_mm(&WALLS), Some(9.0));
    }

    #[test]
    fn the_tolerance_itself_is_still_even() {
        let rough = Tolerance::ROUGH;
        assert_eq!(verdict(11.5, 10.0, rough), Verdict::Even);
        assert_eq!(verdict(11.6, 10.0, rough), Verdict::Heavy);
        assert_eq!(verdict(8.5, 10.0, rough), Verdict::Even);
        assert_eq!(verdict(8.4, 10.0, rough), Verdict::Thin);
        assert_eq!(verdict(10.0 + 0.1 + 0.2 + 1.2, 10.0, rough), Verdict::Even);
    }

    #[test]
    fn advice_in_the_three_ways() {
        assert_eq!(advice(10.4, 10.0, Tolerance::FINISH), Advice::LeaveAlone);
        assert_eq!(advice(11.2, 10.0, Tolerance::FINISH), Advice::About(1.0));
        assert_eq!(
            advice(14.0, 10.0, Tolerance::FINISH),
            Advice::HalfThenMeasure(2.0)
        );
        assert_eq!(advice(8.0, 10.0, Tolerance::FINISH), Advice::Short(2.0));
    }

    #[test]
    fn nothing_read_is_no_figure_and_absurd_readings_are_refused() {
        assert_eq!(Evenness::of(&[]), Ok(None));
        assert_eq!(thinnest_mm(&[]), None);
        assert!(Evenness::of(&[10.0, -1.0]).is_err());
    }

    proptest! {
        #[test]
        fn no_advice_ever_cuts_below_the_wall_wanted(
            wall in 0.5..60.0_f64, wanted in 0.5..40.0_f64, heavy_mm in 0.0..3.0_f64
        ) {
            let tolerance = Tolerance { heavy_mm, thin_mm: 1.0 };
            let cut = match advice(wall, wanted, tolerance) {
                Advice::About(mm) | Advice::HalfThenMeasure(mm) => mm,
                Advice::LeaveAlone | Advice::Short(_) => 0.0,
            };
            prop_assert!(cut >= 0.0);
            prop_assert!(cut == 0.0 || wall - cut >= wanted - 1e-9);
            prop_assert!(take_off_mm(wall, wanted) >= cut - 1e-9);
        }
    }
}
