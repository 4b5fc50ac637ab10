//! The spigot: how oval it dries, and how large to cut it so that its round still reaches the jaws.
//!
//! Says the smallest diameter that leaves enough wood. Never how well it holds: a spigot that runs through the pith stays round
//! but carries E (T - R) / 2 at its rim, see [`crate::closed_ring::solid_disc_mpa`], and is likely to check.

use crate::range::{Range, RangeError};
use crate::section::STRAIN;

/// Diameter of a spigot or of the jaws, mm.
pub const SPIGOT: Range = Range::new("spigot diameter", "mm", 5.0, 1000.0);
/// Off-centre or clean-up per side, mm.
pub const ALLOWANCE: Range = Range::new("allowance per side", "mm", 0.0, 50.0);

/// The jaws assumed when none are said, smallest circle, mm. Common practice, no source.
pub const USUAL_JAWS_MM: f64 = 50.0;
/// Length of a spigot, mm. Common practice, no source.
pub const USUAL_LENGTH_MM: f64 = 8.0;
/// Clean-up per side when re-cut, mm. Common practice, no source.
pub const USUAL_CLEAN_UP_MM: f64 = 0.5;

/// A spigot after drying.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DriedSpigot {
    /// Longest diameter, mm.
    pub longest_mm: f64,
    /// Shortest diameter, mm.
    pub shortest_mm: f64,
    /// Largest round that can be cut from it, mm.
    pub trued_mm: f64,
}

/// A spigot cut green at `diameter_mm` that shrinks by `least` and `most` (fractions), re-trued `off_centre_mm` out of centre
/// with `clean_up_mm` taken per side: D (1 - most) - 2 e - 2 c.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn dried_spigot(
    diameter_mm: f64,
    least: f64,
    most: f64,
    off_centre_mm: f64,
    clean_up_mm: f64,
) -> Result<DriedSpigot, RangeError> {
    let d = SPIGOT.check(diameter_mm)?;
    let (a, b) = (STRAIN.check(least)?, STRAIN.check(most)?);
    let taken = 2.0 * (ALLOWANCE.check(off_centre_mm)? + ALLOWANCE.check(clean_up_mm)?);
    let (low, high) = (a.min(b), a.max(b));
    let shortest_mm = d * (1.0 - high);
    Ok(DriedSpigot {
        longest_mm: d * (1.0 - low),
        shortest_mm,
        trued_mm: shortest_mm - taken,
    })
}

/// The green spigot (mm) whose round still measures `jaws_mm` after drying: (jaws + 2 e + 2 c) / (1 - most).
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn spigot_needed_mm(
    jaws_mm: f64,
    most: f64,
    off_centre_mm: f64,
    clean_up_mm: f64,
) -> Result<f64, RangeError> {
    let taken = 2.0 * (ALLOWANCE.check(off_centre_mm)? + ALLOWANCE.check(clean_up_mm)?);
    Ok((SPIGOT.check(jaws_mm)? + taken) / (1.0 - STRAIN.check(most)?))
}

/// True when a round of `trued_mm` is not smaller than the smallest circle of the jaws. It fits; whether it holds is not said.
pub fn fits_the_jaws(trued_mm: f64, jaws_mm: f64) -> bool {
    trued_mm >= jaws_mm - 1e-6
}

/// Spigot by practice, mm: the jaws' smallest circle plus 7 for end grain, plus 10 for side grain. Common practice, no source.
pub fn practice_spigot_mm(grain: crate::rough_wall::Grain, jaws_mm: f64) -> f64 {
    match grain {
        crate::rough_wall::Grain::End => jaws_mm + 7.0,
        crate::rough_wall::Grain::Side => jaws_mm + 10.0,
    }
}
