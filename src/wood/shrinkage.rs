//! Shrinkage of wood from green to any moisture, and the Handbook's coefficients as a cross-check.
//!
//! Linear below the fibre saturation point. Table figures are species means: one piece lies 15 to 20 % either side (from
//! memory), reaction and juvenile wood further.

use crate::range::{Range, RangeError};

/// Moisture (fraction) below which wood begins to shrink, for every species not known better.
/// Source: Wood Handbook FPL-GTR-190 equation 4-7.
pub const SHRINKING_BEGINS: f64 = 0.30;
/// Total shrinkage from green to oven-dry as a fraction of the green size.
pub const TOTAL_SHRINKAGE: Range = Range::new("shrinkage from green to oven-dry", "", 0.0, 0.30);
/// Along the grain, green to oven-dry, as a fraction of the green length: ordinary wood is 0.001 to 0.002.
/// Source: Wood Handbook FPL-GTR-190 p. 4-5.
pub const ALONG_THE_GRAIN: f64 = 0.001;

/// Shrinkage (fraction of the green size) from green to `moisture` (fraction of oven-dry mass), for wood whose shrinkage
/// to oven-dry is `total` (fraction).
///
/// Source: Wood Handbook FPL-GTR-190 equation 4-7 (GTR-282 equation 4-9) with 30 % as the fibre saturation point. Wetter
/// wood has not shrunk: 0.
///
/// # Errors
/// [`RangeError`] when `total` is outside [`TOTAL_SHRINKAGE`] or the moisture outside [`crate::moisture::MOISTURE`].
pub fn shrinkage(total: f64, moisture: f64) -> Result<f64, RangeError> {
    let total = TOTAL_SHRINKAGE.check(total)?;
    let m = crate::moisture::MOISTURE.check(moisture)?;
    Ok(total * ((SHRINKING_BEGINS - m) / SHRINKING_BEGINS).clamp(0.0, 1.0))
}

/// Total shrinkage (fraction) of wood that has shrunk by `shrunk` (fraction of green) on its way to `moisture`.
///
/// The inverse of [`shrinkage`]. `None` when the wood has not begun to shrink at that moisture, or the result would lie
/// outside [`TOTAL_SHRINKAGE`].
pub fn total_from_partial(shrunk: f64, moisture: f64) -> Option<f64> {
    let share = (SHRINKING_BEGINS - moisture) / SHRINKING_BEGINS;
    if share <= 0.0 {
        return None;
    }
    TOTAL_SHRINKAGE.check(shrunk / share.min(1.0)).ok()
}

/// Dimensional change coefficient: change as a fraction of the size at 10 % moisture, per 1 % of moisture, from the
/// shrinkage `total_pct` (per cent, green to oven-dry).
///
/// Source: Wood Handbook FPL-GTR-190 equation 13-3 divided through at 10 %, C = S / (3000 - 20 S); it reproduces Table
/// 13-5. Meant for 6 to 14 % moisture.
///
/// # Errors
/// [`RangeError`] when `total_pct` is outside 0 to 30 per cent.
pub fn change_coefficient(total_pct: f64) -> Result<f64, RangeError> {
    let s = 100.0 * TOTAL_SHRINKAGE.check(total_pct / 100.0)?;
    Ok(s / (3000.0 - 20.0 * s))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Values worked out twice, independently, from equation 4-7.
    #[test]
    fn worked_values() {
        for (total, m, s) in [
            (0.078, 0.08, 0.057200),
            (0.049, 0.12, 0.029400),
            (0.119, 0.10, 0.079333),
        ] {
            assert!((shrinkage(total, m).unwrap() - s).abs() <= 0.5e-6);
        }
        assert_eq!(shrinkage(0.078, 0.35).unwrap(), 0.0);
    }

    /// Wood Handbook FPL-GTR-190 chapter 13 example: flat-grain white fir, 232 mm wide, 8 to 11 %, swells 1.7 mm.
    #[test]
    fn handbook_example_of_a_swelling_board() {
        let c = change_coefficient(7.0).unwrap();
        assert!((c - 0.00245).abs() < 0.000_01);
        assert!((232.0 * c * 3.0 - 1.7).abs() < 0.05);
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(shrinkage(0.4, 0.1).is_err());
        assert!(shrinkage(0.05, -0.1).is_err());
        assert!(change_coefficient(-1.0).is_err());
        assert_eq!(total_from_partial(0.01, 0.30), None);
        assert_eq!(total_from_partial(-0.01, 0.10), None);
    }

    proptest! {
        #[test]
        fn drier_wood_has_shrunk_more_and_the_total_can_be_had_back(total in 0.01..0.2_f64, m in 0.0..0.29_f64) {
            let s = shrinkage(total, m).unwrap();
            prop_assert!(s > shrinkage(total, m + 0.01).unwrap());
            prop_assert!((total_from_partial(s, m).unwrap() - total).abs() < 1e-12);
        }
    }
}
