//! A boring bar as a round steel cantilever: how far it bends over its reach, and the trade's bands of reach.
//!
//! Built in at the rest; a tool held in the hands also pivots there, a cranked one twists as well. 100 N is an assumed steady
//! cut, a catch is several times that. Stiffness and chatter govern, never strength. It never says that a reach is safe.

use std::f64::consts::PI;

use crate::range::{Range, RangeError};

/// Young's modulus of steel, MPa (textbook value).
pub const STEEL_MPA: f64 = 205_000.0;
/// The steady cut assumed, N.
pub const STEADY_CUT_N: f64 = 100.0;
/// Force at the tip, N.
pub const FORCE: Range = Range::new("force at the tip", "N", 0.1, 10_000.0);
/// Reach over the rest, mm.
pub const REACH: Range = Range::new("reach over the rest", "mm", 1.0, 2000.0);
/// Diameter of the bar, mm.
pub const BAR: Range = Range::new("bar diameter", "mm", 3.0, 100.0);
/// Bending at the tip, mm.
pub const BEND: Range = Range::new("bending at the tip", "mm", 0.001, 50.0);

/// Bending at the tip, mm, of a bar of `bar_mm` reaching `reach_mm` under `force_n`: 64 F L^3 / (3 pi E d^4).
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn bend_mm(force_n: f64, reach_mm: f64, bar_mm: f64) -> Result<f64, RangeError> {
    let (f, l, d) = (
        FORCE.check(force_n)?,
        REACH.check(reach_mm)?,
        BAR.check(bar_mm)?,
    );
    Ok(64.0 * f * l.powi(3) / (3.0 * PI * STEEL_MPA * d.powi(4)))
}

/// Stress at the rest, MPa: 32 F L / (pi d^3).
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn stress_mpa(force_n: f64, reach_mm: f64, bar_mm: f64) -> Result<f64, RangeError> {
    let (f, l, d) = (
        FORCE.check(force_n)?,
        REACH.check(reach_mm)?,
        BAR.check(bar_mm)?,
    );
    Ok(32.0 * f * l / (PI * d.powi(3)))
}

/// Reach, mm, at which a bar of `bar_mm` bends by `bend_mm` under `force_n`: (3 pi E d^4 x / (64 F))^(1/3). It grows as
/// d^(4/3), not as a fixed number of diameters.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn reach_mm(force_n: f64, bar_mm: f64, bend_mm: f64) -> Result<f64, RangeError> {
    let (f, d, x) = (
        FORCE.check(force_n)?,
        BAR.check(bar_mm)?,
        BEND.check(bend_mm)?,
    );
    Ok((3.0 * PI * STEEL_MPA * d.powi(4) * x / (64.0 * f)).cbrt())
}

/// Where a reach lies among the trade's bands. Common practice, no source; 7 to 10 diameters is 0.05 to 0.2 mm at 100 N for
/// bars of 16 to 25 mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ReachBand {
    /// Up to 7 diameters: usual.
    Usual,
    /// To 10: light cuts.
    Long,
    /// Above 10: change the bar.
    ChangeIt,
}

/// The band of a reach and how many diameters it is.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn reach_band(reach_mm: f64, bar_mm: f64) -> Result<(ReachBand, f64), RangeError> {
    let times = REACH.check(reach_mm)? / BAR.check(bar_mm)?;
    let band = if times <= 7.0 {
        ReachBand::Usual
    } else if times <= 10.0 {
        ReachBand::Long
    } else {
        ReachBand::ChangeIt
    };
    Ok((band, times))
}
