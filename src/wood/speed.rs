//! Lathe speed by the trade's rule, as an upper bound and never as a safe one.
//!
//! Revolutions times diameter in inches between 6000 and 9000: common practice, published in many turning texts. The lower
//! figure is for wet, unbalanced or out-of-round work. No figure belongs to cracked or bark-included wood.

use std::f64::consts::PI;

use crate::range::{Range, RangeError};

/// Diameter of what turns, mm.
pub const TURNING: Range = Range::new("diameter", "mm", 5.0, 2000.0);
/// Revolutions a minute.
pub const REVOLUTIONS: Range = Range::new("speed", "rpm", 1.0, 10_000.0);
/// Revolutions times diameter in mm, lower figure of the trade's rule: 6000 with the diameter in inches.
pub const RULE_LOW: f64 = 6000.0 * 25.4;
/// The upper figure: 9000 with the diameter in inches.
pub const RULE_HIGH: f64 = 9000.0 * 25.4;

/// Speed of the rim, m/s, of a piece of `diameter_mm` at `rpm`.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn rim_speed_m_s(diameter_mm: f64, rpm: f64) -> Result<f64, RangeError> {
    Ok(PI * TURNING.check(diameter_mm)? * REVOLUTIONS.check(rpm)? / 60_000.0)
}

/// The trade's band of revolutions a minute for a piece of `diameter_mm`: lower and upper. Common practice, never a safe limit.
///
/// # Errors
/// [`RangeError`] when the diameter is out of range.
pub fn practice_band_rpm(diameter_mm: f64) -> Result<(f64, f64), RangeError> {
    let d = TURNING.check(diameter_mm)?;
    Ok((RULE_LOW / d, RULE_HIGH / d))
}

/// "Not above about N": the lower figure of the rule for green work from the log's diameter, rounded down to 50 rpm (to 10
/// below 500). Common practice, never a safe limit; start at the lathe's lowest.
///
/// # Errors
/// [`RangeError`] when the diameter is out of range.
pub fn not_above_rpm(log_diameter_mm: f64) -> Result<f64, RangeError> {
    let (low, _) = practice_band_rpm(log_diameter_mm)?;
    let step = if low < 500.0 { 10.0 } else { 50.0 };
    Ok((low / step + 1e-9).floor() * step)
}
