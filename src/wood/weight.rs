//! Moisture from weights, and weights from moisture.

use std::fmt;

use crate::moisture::MOISTURE;
use crate::profile::{DENSITY, MASS};
use crate::range::RangeError;

/// Density of the cell wall's substance over water, as the Handbook rounds it for the most a wood can hold.
const CELL_WALL: f64 = 1.54;

/// Why weights give no moisture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeightError {
    /// A figure lies outside its range.
    Range(RangeError),
    /// Oven-dry weight above the weight.
    DryAboveWet {
        /// Weight, g.
        mass_g: f64,
        /// Oven-dry weight, g.
        dry_g: f64,
    },
}

impl fmt::Display for WeightError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            WeightError::Range(e) => e.fmt(f),
            WeightError::DryAboveWet { mass_g, dry_g } => write!(
                f,
                "it weighs {mass_g} g, less than its oven-dry {dry_g} g; was it re-turned, or another scale used?"
            ),
        }
    }
}

impl std::error::Error for WeightError {}

impl From<RangeError> for WeightError {
    fn from(e: RangeError) -> Self {
        WeightError::Range(e)
    }
}

/// Moisture (fraction of the oven-dry mass) of wood that weighs `mass_g` and would weigh `dry_g` oven-dry: m / m_dry - 1, the
/// definition (Siau 1984 equation 1.1).
///
/// # Errors
/// [`WeightError`] when a weight is out of range or the oven-dry one is the larger.
pub fn moisture_from_masses(mass_g: f64, dry_g: f64) -> Result<f64, WeightError> {
    let (mass, dry) = (MASS.check(mass_g)?, MASS.check(dry_g)?);
    if dry > mass {
        return Err(WeightError::DryAboveWet { mass_g, dry_g });
    }
    Ok(mass / dry - 1.0)
}

/// Oven-dry weight (g) of wood that weighs `mass_g` at `moisture` (fraction): m / (1 + M). One point of error in the moisture is
/// about one per cent of error in the weight.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn dry_mass_g(mass_g: f64, moisture: f64) -> Result<f64, RangeError> {
    Ok(MASS.check(mass_g)? / (1.0 + MOISTURE.check(moisture)?))
}

/// Share of its weight that wood loses on its way from moisture `from` to `to` (fractions): (from - to) / (1 + from). Negative
/// when it takes water up.
///
/// # Errors
/// [`RangeError`] when a moisture is out of range.
pub fn share_lost(from: f64, to: f64) -> Result<f64, RangeError> {
    let (from, to) = (MOISTURE.check(from)?, MOISTURE.check(to)?);
    Ok((from - to) / (1.0 + from))
}

/// Moisture (fraction) at which wood began that has lost the share `lost` of its weight on its way to `to` (fraction). `None`
/// when the whole weight would be lost or a figure is out of range.
pub fn moisture_before(lost: f64, to: f64) -> Option<f64> {
    let to = MOISTURE.check(to).ok()?;
    let before = (1.0 + to) / (1.0 - lost) - 1.0;
    (lost < 1.0 && MOISTURE.holds(before)).then_some(before)
}

/// The most water wood of `basic_density` kg/m3 can hold, fraction: (1.54 - G) / (1.54 G). Source: Wood Handbook FPL-GTR-282
/// equation 4-3. At the dense end the printed text rounds differently, by 2 points.
///
/// # Errors
/// [`RangeError`] when the density is outside [`DENSITY`].
pub fn most_moisture(basic_density: f64) -> Result<f64, RangeError> {
    let g = DENSITY.check(basic_density)? / 1000.0;
    Ok((CELL_WALL - g) / (CELL_WALL * g))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Siau 1984: 0.59 kg of water to 1 kg of dry wood is 59 %. Wood Handbook FPL-GTR-282: 267 % at a specific gravity of 0.30,
    /// about 44 % at 0.90 (the formula gives 46.2).
    #[test]
    fn published_examples() {
        assert!((moisture_from_masses(1590.0, 1000.0).unwrap() - 0.59).abs() < 1e-12);
        assert!((100.0 * most_moisture(300.0).unwrap() - 267.0).abs() < 1.5);
        assert!((100.0 * most_moisture(900.0).unwrap() - 44.0).abs() < 2.5);
    }

    /// A loggers' table of weight lost from green to 20 %: beech 24 %, hickory 27, black cherry 28, soft maple 29, hard maple and
    /// yellow birch 30, red oak 31; the green moistures they imply are those of the Handbook's table 4-1 within its scatter.
    #[test]
    fn weight_lost_on_the_way_to_twenty_per_cent() {
        for (lost, green) in [
            (0.24, 0.58),
            (0.27, 0.64),
            (0.28, 0.67),
            (0.29, 0.69),
            (0.30, 0.71),
            (0.31, 0.74),
        ] {
            assert!((moisture_before(lost, 0.20).unwrap() - green).abs() <= 0.005);
        }
    }

    #[test]
    fn a_settled_weight_gives_the_dry_one() {
        let dry = dry_mass_g(333.2, 0.110591).unwrap();
        assert!((dry - 300.02).abs() < 0.01);
        assert!(matches!(
            moisture_from_masses(290.0, dry),
            Err(WeightError::DryAboveWet { .. })
        ));
        assert_eq!(moisture_before(1.0, 0.2), None);
        assert!(dry_mass_g(-1.0, 0.1).is_err());
    }

    proptest! {
        #[test]
        fn what_is_lost_leads_back(from in 0.2..1.5_f64, to in 0.0..0.2_f64) {
            let lost = share_lost(from, to).unwrap();
            prop_assert!((moisture_before(lost, to).unwrap() - from).abs() < 1e-9);
        }
    }
}
