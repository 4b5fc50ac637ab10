//! Settling moisture: the moisture wood comes to rest at in air of a given temperature and humidity.
//!
//! Hailwood-Horrobin isotherm with the constants of Simpson (1973), Wood Handbook FPL-GTR-190 equation 4-5. It is a mean
//! over woods: single species lie about 1 point either side, and green wood on its first drying settles perhaps 1 to 2
//! points higher (from memory). At a humidity of 1 it gives 28.8 % at 20 C and not the 30 % of the shrinkage law; the
//! two come from different sources and are left as they are.

use crate::range::{Range, RangeError};

/// Air temperature for which the isotherm is used, degrees C. The published table ends at 93 C.
pub const TEMPERATURE: Range = Range::new("temperature", "C", -20.0, 100.0);
/// Relative humidity as a fraction, 0 dry to 1 saturated.
pub const HUMIDITY: Range = Range::new("relative humidity", "", 0.0, 1.0);
/// Moisture of the wood as a fraction of its oven-dry mass.
pub const MOISTURE: Range = Range::new("moisture of the wood", "", 0.0, 4.0);

/// The four temperature-dependent constants of the isotherm, Celsius form.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Constants {
    pub(crate) w: f64,
    pub(crate) k: f64,
    pub(crate) k1: f64,
    pub(crate) k2: f64,
}

impl Constants {
    pub(crate) fn at(t: f64) -> Self {
        Constants {
            w: 349.0 + 1.29 * t + 0.0135 * t * t,
            k: 0.805 + 0.000736 * t - 0.000_002_73 * t * t,
            k1: 6.27 - 0.00938 * t - 0.000303 * t * t,
            k2: 1.91 + 0.0407 * t - 0.000293 * t * t,
        }
    }

    pub(crate) fn moisture(&self, h: f64) -> f64 {
        let kh = self.k * h;
        let one = self.k1 * kh;
        let two = self.k1 * self.k2 * kh * kh;
        18.0 / self.w * (kh / (1.0 - kh) + (one + 2.0 * two) / (1.0 + one + two))
    }
}

/// Settling moisture (fraction of oven-dry mass) at `temp_c` degrees C and relative humidity `rh_fraction` (0 to 1).
///
/// Source: Wood Handbook FPL-GTR-190 equation 4-5 (Simpson 1973). Reproduces every cell of its Table 4-2 within 0.06
/// points of moisture.
///
/// # Errors
/// [`RangeError`] when the temperature is outside [`TEMPERATURE`] or the humidity outside [`HUMIDITY`].
pub fn settling_moisture(temp_c: f64, rh_fraction: f64) -> Result<f64, RangeError> {
    let t = TEMPERATURE.check(temp_c)?;
    let h = HUMIDITY.check(rh_fraction)?;
    Ok(Constants::at(t).moisture(h))
}

/// Humidity (fraction, 0 to 1) of the air that is in balance with wood of `moisture` (fraction) at `temp_c` degrees C.
///
/// The inverse of [`settling_moisture`] by 60 halvings, exact to rounding. Wood wetter than the isotherm's end at
/// saturated air gives 1.
///
/// # Errors
/// [`RangeError`] when the moisture is outside [`MOISTURE`] or the temperature outside [`TEMPERATURE`].
pub fn activity(moisture: f64, temp_c: f64) -> Result<f64, RangeError> {
    let m = MOISTURE.check(moisture)?;
    let constants = Constants::at(TEMPERATURE.check(temp_c)?);
    if m >= constants.moisture(1.0) {
        return Ok(1.0);
    }
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if constants.moisture(middle) < m {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(0.5 * (low + high))
}

/// How steeply settling moisture rises with humidity: change of moisture (fraction) per unit of relative humidity
/// (fraction), by central difference, error below 1e-6.
///
/// # Errors
/// [`RangeError`] as [`settling_moisture`].
pub fn settling_slope(temp_c: f64, rh_fraction: f64) -> Result<f64, RangeError> {
    let constants = Constants::at(TEMPERATURE.check(temp_c)?);
    let h = HUMIDITY.check(rh_fraction)?;
    let low = (h - 1e-5).max(0.0);
    let high = (h + 1e-5).min(1.0);
    Ok((constants.moisture(high) - constants.moisture(low)) / (high - low))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Wood Handbook FPL-GTR-190 Table 4-2: every cell within 0.06 points.
    #[test]
    fn every_cell_of_the_handbook_table_is_met_within_six_hundredths_of_a_point() {
        let mut rows = 0;
        for line in include_str!("tables/emc.csv")
            .lines()
            .filter(|l| !l.starts_with('#'))
            .skip(1)
        {
            let cells: Vec<&str> = line.split(',').collect();
            // The table is printed in Fahrenheit; its Celsius column is rounded to a tenth.
            let temp_c = (cells[1].parse::<f64>().unwrap() - 32.0) / 1.8;
            let rh = cells[2].parse::<f64>().unwrap() / 100.0;
            let printed: f64 = cells[3].parse().unwrap();
            let got = 100.0 * settling_moisture(temp_c, rh).unwrap();
            assert!((got - printed).abs() <= 0.06, "{line}: computed {got:.3}");
            rows += 1;
        }
        assert_eq!(rows, 342);
    }

    /// Values worked out twice, independently, from equation 4-5.
    #[test]
    fn worked_values_of_the_isotherm_and_its_inverse() {
        for (t, h, m) in [
            (21.1, 0.50, 0.092426),
            (21.1, 0.65, 0.119585),
            (21.1, 0.80, 0.159896),
            (18.0, 0.60, 0.110591),
            (20.0, 0.45, 0.084852),
            (10.0, 0.99, 0.279443),
        ] {
            assert!(
                (settling_moisture(t, h).unwrap() - m).abs() <= 0.6e-6,
                "{t} {h}"
            );
        }
        for (m, t, a) in [
            (0.12, 20.0, 0.650176),
            (0.08, 20.0, 0.418291),
            (0.20, 10.0, 0.883814),
            (0.30, 20.0, 1.0),
        ] {
            assert!((activity(m, t).unwrap() - a).abs() <= 0.6e-6, "{m} {t}");
        }
    }

    /// Published software example of the Celsius form: 20 C and 50 % give 9.271141 % (ConSciR `calcEMC_wood`).
    #[test]
    fn published_examples_of_the_celsius_form() {
        assert!((settling_moisture(20.0, 0.50).unwrap() - 0.09271141).abs() < 1e-8);
        // 140 F and 55 %: Wood Handbook FPL-GTR-190 Table 4-2 prints 8.4 %.
        assert!((settling_moisture(60.0, 0.55).unwrap() - 0.084).abs() < 0.0005);
    }

    /// Rules of thumb at room temperature, published by a wood-drying teacher, rounded to whole per cent.
    #[test]
    fn rules_of_thumb_for_a_warm_room_agree_to_a_point() {
        for (rh, m) in [
            (0.30, 6.0),
            (0.50, 9.0),
            (0.65, 12.0),
            (0.80, 16.0),
            (0.99, 28.0),
        ] {
            assert!(
                (100.0 * settling_moisture(21.0, rh).unwrap() - m).abs() < 1.0,
                "{rh}"
            );
        }
    }

    #[test]
    fn what_is_outside_the_ranges_is_refused() {
        assert!(settling_moisture(-20.1, 0.5).is_err());
        assert!(settling_moisture(100.1, 0.5).is_err());
        assert!(settling_moisture(20.0, 55.0).is_err());
        assert!(settling_moisture(f64::NAN, 0.5).is_err());
        assert!(activity(-0.01, 20.0).is_err());
    }

    proptest! {
        #[test]
        fn moisture_rises_with_humidity_and_the_inverse_brings_it_back(
            t in TEMPERATURE.min..=TEMPERATURE.max, h in 0.001..0.999_f64
        ) {
            let m = settling_moisture(t, h).unwrap();
            prop_assert!(m > settling_moisture(t, h - 0.001).unwrap());
            prop_assert!((activity(m, t).unwrap() - h).abs() < 1e-9);
            prop_assert!(settling_slope(t, h).unwrap() > 0.0);
        }

        #[test]
        fn every_legal_input_gives_a_finite_moisture(
            t in TEMPERATURE.min..=TEMPERATURE.max, h in HUMIDITY.min..=HUMIDITY.max
        ) {
            let m = settling_moisture(t, h).unwrap();
            prop_assert!(m.is_finite() && (0.0..0.4).contains(&m));
        }
    }
}
