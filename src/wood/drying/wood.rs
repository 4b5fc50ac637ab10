//! How fast water moves in the wood: diffusivity by moisture, temperature and direction of the grain.
//!
//! An order of magnitude and no more: one wood's figure lies a factor of 2 to 3 either side of the default, so times
//! worked out with it are compared with each other and not read off a calendar until weighings have pinned them. Measured
//! aspen rises 8 times from 2.5 to 18 % (Simpson 1974, Wood and Fiber), this default 4.7 times. Above 30 % the model lumps
//! free water into diffusion.

use crate::range::{Range, RangeError};
use crate::shrinkage::SHRINKING_BEGINS;

/// Oven-dry mass over green volume, kg/m3: from balsa to lignum vitae.
pub const DENSITY: Range = Range::new("basic density", "kg/m3", 80.0, 1400.0);
/// Diffusivity across the grain at 12 % moisture and 20 C, m2/s: two decades about the default.
pub const DIFFUSIVITY: Range = Range::new("diffusivity at 12 % moisture", "m2/s", 1.0e-12, 1.0e-9);
/// Exponent of the rise with moisture.
pub const RISE: Range = Range::new("rise of the diffusivity with moisture", "", 0.0, 30.0);
/// Angle of the wall's normal out of the plane across the grain, degrees.
pub const LEAN: Range = Range::new(
    "lean of the wall out of the cross-grain plane",
    "degrees",
    0.0,
    90.0,
);

/// Diffusivity across the grain at 12 % and 20 C, m2/s, for every wood not known better. A cell-wall estimate at
/// 550 kg/m3 gives 3.2e-11 at 10 % and 7.9e-11 at 20 % (constants from memory).
pub const USUAL_DIFFUSIVITY: f64 = 4.0e-11;
/// Usual exponent of the rise with moisture (form of Simpson 1993 for red oak, from memory).
pub const USUAL_RISE: f64 = 10.0;
/// How much faster water moves along the grain than across it. Longitudinal is about 13 times transverse in beech at 10 %
/// (published measurement, second hand); falls with moisture.
pub const ALONG: f64 = 10.0;
/// Grain factor of a side-grain wall, the mean of [`grain_factor`] over the round: rough, some of its wall is pure side
/// grain and some pure end grain.
pub const SIDE_GRAIN: f64 = 0.5 * (1.0 + ALONG);

/// Temperature of the Arrhenius term, K (Simpson 1993 for red oak, from memory).
const ACTIVATION_K: f64 = 5280.0;
/// 20 C in K.
const REFERENCE_K: f64 = 293.15;
/// Moisture the diffusivity is quoted at.
const REFERENCE_MOISTURE: f64 = 0.12;

/// Grain factor of a wall whose normal leans `lean_deg` degrees out of the plane across the grain: 1 for the wall of an
/// end-grain cylinder (0 degrees), [`ALONG`] for its flat floor (90 degrees).
///
/// cos2 + 10 sin2, the tensor rotated (any textbook of diffusion in anisotropic bodies, Crank 1975 chapter 1).
///
/// # Errors
/// [`RangeError`] outside [`LEAN`].
pub fn grain_factor(lean_deg: f64) -> Result<f64, RangeError> {
    let sine = LEAN.check(lean_deg)?.to_radians().sin();
    Ok(1.0 + (ALONG - 1.0) * sine * sine)
}

/// What the drying of a wall needs to know of its wood.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wood {
    /// Oven-dry mass over green volume, kg/m3, in [`DENSITY`].
    pub density: f64,
    /// Diffusivity across the grain at 12 % and 20 C, m2/s, in [`DIFFUSIVITY`].
    pub diffusivity_12: f64,
    /// Exponent b of exp(b (M - 0.12)), in [`RISE`].
    pub rise: f64,
}

impl Wood {
    /// Wood of `density` kg/m3 with the usual diffusivity and rise.
    pub fn of_density(density: f64) -> Self {
        Wood {
            density,
            diffusivity_12: USUAL_DIFFUSIVITY,
            rise: USUAL_RISE,
        }
    }

    /// Gives the wood back when every figure is legal.
    ///
    /// # Errors
    /// [`RangeError`] for the first figure outside its range.
    pub fn check(&self) -> Result<Self, RangeError> {
        DENSITY.check(self.density)?;
        DIFFUSIVITY.check(self.diffusivity_12)?;
        RISE.check(self.rise)?;
        Ok(*self)
    }

    /// Diffusivity across the grain, m2/s, at `moisture` (fraction) and `temp_c` degrees C. Constant above 30 %.
    pub fn diffusivity(&self, moisture: f64, temp_c: f64) -> f64 {
        self.diffusivity_12 * self.at_moisture(moisture) * warmth(temp_c)
    }

    /// The share of the diffusivity that follows the moisture; 1 at 12 %.
    fn at_moisture(&self, moisture: f64) -> f64 {
        (self.rise * (moisture.min(SHRINKING_BEGINS) - REFERENCE_MOISTURE)).exp()
    }
}

/// The share of the diffusivity that follows the temperature; 1 at 20 C.
pub(crate) fn warmth(temp_c: f64) -> f64 {
    (-ACTIVATION_K * (1.0 / (temp_c + 273.15) - 1.0 / REFERENCE_K)).exp()
}

/// Cells of the table of [`RiseTable`]; straight lines between give 1e-6 of the value at the usual rise.
const CELLS: usize = 1024;

/// The rise with moisture, tabled: the solver asks for it some hundred thousand times.
#[derive(Debug, Clone)]
pub(crate) struct RiseTable {
    at: Vec<f64>,
}

impl RiseTable {
    pub(crate) fn of(wood: &Wood) -> Self {
        RiseTable {
            at: (0..=CELLS + 1)
                .map(|i| wood.at_moisture(i as f64 * SHRINKING_BEGINS / CELLS as f64))
                .collect(),
        }
    }

    /// As [`Wood::diffusivity`] over the diffusivity at 12 % and 20 C; moisture below 0 counts as 0.
    #[inline]
    pub(crate) fn value(&self, moisture: f64) -> f64 {
        let x = (moisture.clamp(0.0, SHRINKING_BEGINS)) * (CELLS as f64 / SHRINKING_BEGINS);
        let i = x as usize;
        let (low, high) = (self.at[i], self.at[i + 1]);
        low + (x - i as f64) * (high - low)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    /// Worked out twice, independently, from the law above.
    #[test]
    fn worked_values_of_diffusivity_and_grain_factor() {
        let wood = Wood::of_density(550.0);
        for (m, t, d) in [
            (0.12, 20.0, 4.000000e-11),
            (0.25, 20.0, 1.467719e-10),
            (0.45, 18.0, 2.138243e-10),
            (0.10, 5.0, 1.239847e-11),
        ] {
            let got = wood.diffusivity(m, t);
            assert!((got / d - 1.0).abs() < 1e-6, "{m} {t}: {got:e}");
        }
        assert!((grain_factor(30.0).unwrap() - 3.25).abs() < 1e-12);
        assert_eq!(grain_factor(0.0).unwrap(), 1.0);
        assert!((grain_factor(90.0).unwrap() - 10.0).abs() < 1e-12);
        let mean = (0..90)
            .map(|d| grain_factor(f64::from(d) + 0.5).unwrap())
            .sum::<f64>()
            / 90.0;
        assert!((mean - SIDE_GRAIN).abs() < 1e-9);
    }

    #[test]
    fn the_table_is_the_law_to_two_millionths() {
        for rise in [6.0, 10.0, 12.0] {
            let wood = Wood {
                rise,
                ..Wood::of_density(550.0)
            };
            let table = RiseTable::of(&wood);
            for i in 0..5000 {
                let m = f64::from(i) * 1e-4;
                let exact = wood.diffusivity(m, 20.0) / wood.diffusivity_12;
                assert!((table.value(m) / exact - 1.0).abs() < 2e-6, "{m}");
            }
            assert_eq!(table.value(-0.1), table.value(0.0));
        }
    }

    /// Rough agreement only, and meant so: the net transverse diffusivity of Siau (1984, equations 6.11 to 6.22, second hand),
    /// 20 C, specific gravity 0.5: 5.5e-11 at 10 %, 9.8e-11 at 15 %, 1.65e-10 at 20 %, 2.25e-10 at 25 %. A factor of 2.5 either
    /// way passes; so does the spruce measured by vapour sorption across the grain, 0.94e-10 m2/s (Sanchez-Ferrer and
    /// Engelhardt) as a mean over the hygroscopic range.
    #[test]
    fn rough_agreement_with_siau_and_with_measured_spruce() {
        let wood = Wood::of_density(500.0);
        for (m, d) in [
            (0.10, 5.51e-11),
            (0.15, 9.84e-11),
            (0.20, 1.65e-10),
            (0.25, 2.25e-10),
        ] {
            let ratio = wood.diffusivity(m, 20.0) / d;
            assert!((0.4..2.5).contains(&ratio), "{m}: {ratio}");
        }
        let mean = (1..=28)
            .map(|m| wood.diffusivity(0.01 * f64::from(m), 20.0))
            .sum::<f64>()
            / 28.0;
        assert!((0.4..2.5).contains(&(mean / 0.94e-10)), "{mean:e}");
        // Aspen at 43 C, 2.5 to 18 %: measured 8 times (Simpson 1974), here 4.7.
        let rise = wood.diffusivity(0.18, 43.3) / wood.diffusivity(0.025, 43.3);
        assert!((4.0..8.0).contains(&rise), "{rise}");
    }

    #[test]
    fn what_is_outside_the_ranges_is_refused() {
        assert!(Wood::of_density(0.55).check().is_err());
        assert!(
            Wood {
                diffusivity_12: 4e-7,
                ..Wood::of_density(550.0)
            }
            .check()
            .is_err()
        );
        assert!(
            Wood {
                rise: -1.0,
                ..Wood::of_density(550.0)
            }
            .check()
            .is_err()
        );
        assert!(grain_factor(91.0).is_err());
    }
}
