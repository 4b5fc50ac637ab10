//! Water in the air: saturation pressure, vapour density, and humidity from a wet and a dry bulb.
//!
//! Good for bench thermometers between -20 and 60 C. The four common saturation formulas agree within 0.25 % from 0 to
//! 40 C; the reading of the wet bulb is the larger error (half a degree is about 4 points of humidity in a warm room).

use std::fmt;

use crate::range::{Range, RangeError};

/// Air temperature for the vapour formulas, degrees C.
pub const AIR_TEMPERATURE: Range = Range::new("air temperature", "C", -40.0, 100.0);
/// Wet bulb temperature, degrees C; below 0 C the wick freezes and the constant no longer holds.
pub const WET_BULB: Range = Range::new("wet bulb temperature", "C", 0.0, 60.0);
/// Air pressure, hPa: from a high mountain to a deep mine.
pub const PRESSURE: Range = Range::new("air pressure", "hPa", 500.0, 1100.0);
/// Psychrometer constant of an instrument, 1/K: from well ventilated to still air (from memory for the still end).
pub const PSYCHROMETER: Range = Range::new("psychrometer constant", "1/K", 5.0e-4, 1.3e-3);

/// Mean pressure at sea level, hPa.
pub const SEA_LEVEL_HPA: f64 = 1013.25;
/// Psychrometer constant 1/K of a ventilated instrument, WMO No. 8 (Assmann type, wet bulb at or above 0 C).
pub const VENTILATED: f64 = 6.62e-4;
/// Psychrometer constant 1/K of Fan (1987), the default of a much used weather library (MetPy).
pub const FAN_1987: f64 = 6.21e-4;

/// Why a pair of bulb readings gives no humidity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BulbError {
    /// A figure lies outside its range.
    Range(RangeError),
    /// The wet bulb reads above the dry one: swapped, or not wet.
    WetAboveDry {
        /// Dry bulb, degrees C.
        dry_c: f64,
        /// Wet bulb, degrees C.
        wet_c: f64,
    },
    /// The two are further apart than perfectly dry air could drive them.
    TooFarApart {
        /// Dry bulb, degrees C.
        dry_c: f64,
        /// Wet bulb, degrees C.
        wet_c: f64,
    },
}

impl fmt::Display for BulbError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            BulbError::Range(e) => e.fmt(f),
            BulbError::WetAboveDry { dry_c, wet_c } => write!(
                f,
                "the wet bulb reads {wet_c} C and the dry one {dry_c} C, but the wet one is never the warmer; swap them"
            ),
            BulbError::TooFarApart { dry_c, wet_c } => write!(
                f,
                "the wet bulb reads {wet_c} C and the dry one {dry_c} C, further apart than dry air allows; \
                 wait until both stand still and read again"
            ),
        }
    }
}

impl std::error::Error for BulbError {}

impl From<RangeError> for BulbError {
    fn from(e: RangeError) -> Self {
        BulbError::Range(e)
    }
}

/// Saturation vapour pressure over water, Pa, at `temp_c` degrees C.
///
/// Source: Sonntag (1990), recommended by WMO (2008, p. 1.4-29). Within 0.25 % of Magnus, Buck and Tetens from 0 to 40 C.
///
/// # Errors
/// [`RangeError`] outside [`AIR_TEMPERATURE`].
pub fn saturation_pressure_pa(temp_c: f64) -> Result<f64, RangeError> {
    let t = AIR_TEMPERATURE.check(temp_c)?;
    Ok(611.2 * (17.62 * t / (243.12 + t)).exp())
}

/// Density of saturated water vapour, kg/m3, at `temp_c` degrees C, as an ideal gas (461.5 J/kg K).
///
/// # Errors
/// [`RangeError`] outside [`AIR_TEMPERATURE`].
pub fn saturation_density_kg_m3(temp_c: f64) -> Result<f64, RangeError> {
    Ok(saturation_pressure_pa(temp_c)? / (461.5 * (temp_c + 273.15)))
}

/// Relative humidity (fraction) from a dry and a wet bulb in degrees C, at `pressure_hpa`, with the instrument's
/// `constant` in 1/K ([`VENTILATED`] when nothing is known, [`SEA_LEVEL_HPA`] for the pressure).
///
/// Source: WMO No. 8, e = es(Tw) - A p (T - Tw), RH = e / es(T).
///
/// # Errors
/// [`BulbError`] when a figure is out of range, the bulbs are swapped, or they are further apart than dry air allows.
pub fn humidity_from_bulbs(
    dry_c: f64,
    wet_c: f64,
    pressure_hpa: f64,
    constant: f64,
) -> Result<f64, BulbError> {
    let dry = AIR_TEMPERATURE.check(dry_c)?;
    let wet = WET_BULB.check(wet_c)?;
    let pressure_pa = 100.0 * PRESSURE.check(pressure_hpa)?;
    let a = PSYCHROMETER.check(constant)?;
    if wet > dry {
        return Err(BulbError::WetAboveDry { dry_c, wet_c });
    }
    let vapour = saturation_pressure_pa(wet)? - a * pressure_pa * (dry - wet);
    if vapour < 0.0 {
        return Err(BulbError::TooFarApart { dry_c, wet_c });
    }
    Ok(vapour / saturation_pressure_pa(dry)?)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Values worked out twice, independently, from the formula of Sonntag (1990).
    #[test]
    fn worked_values_of_pressure_and_density() {
        assert!((saturation_pressure_pa(20.0).unwrap() - 2332.5960).abs() < 3e-3);
        assert!((saturation_density_kg_m3(18.0).unwrap() - 0.015_324_81).abs() < 1.6e-8);
    }

    /// Published example (MetPy): 958 hPa, 25 C dry, 12 C wet, A = 6.21e-4 give 19.84 %.
    #[test]
    fn published_example_of_the_two_bulbs() {
        let rh = humidity_from_bulbs(25.0, 12.0, 958.0, FAN_1987).unwrap();
        assert!((rh - 0.1984).abs() < 0.0003, "{rh}");
    }

    #[test]
    fn equal_bulbs_mean_saturated_air_and_swapped_ones_are_refused() {
        assert_eq!(
            humidity_from_bulbs(15.0, 15.0, SEA_LEVEL_HPA, VENTILATED).unwrap(),
            1.0
        );
        let swapped = humidity_from_bulbs(15.0, 16.0, SEA_LEVEL_HPA, VENTILATED).unwrap_err();
        assert!(swapped.to_string().contains("swap them"));
        let absurd = humidity_from_bulbs(40.0, 2.0, SEA_LEVEL_HPA, VENTILATED).unwrap_err();
        assert!(matches!(absurd, BulbError::TooFarApart { .. }));
        assert!(matches!(
            humidity_from_bulbs(20.0, -3.0, SEA_LEVEL_HPA, VENTILATED),
            Err(BulbError::Range(_))
        ));
    }

    proptest! {
        #[test]
        fn a_colder_wet_bulb_means_drier_air(dry in 5.0..40.0_f64, drop in 0.1..4.0_f64) {
            let one = humidity_from_bulbs(dry, dry - drop, SEA_LEVEL_HPA, VENTILATED).unwrap();
            let two = humidity_from_bulbs(dry, dry - drop - 0.1, SEA_LEVEL_HPA, VENTILATED).unwrap();
            prop_assert!(two < one && one < 1.0);
        }
    }
}
