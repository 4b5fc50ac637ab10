//! Side grain: a rim that goes oval between end grain and cross grain, and rises or falls out of its plane.

use crate::range::{Range, RangeError};
use crate::section::{SECTION_RADIUS, STRAIN, Strains};

/// Height of the rim above or below the plane of the pith, mm.
pub const RIM_HEIGHT: Range = Range::new("height of the rim over the pith", "mm", 0.0, 2000.0);

/// How the blank was sawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sawn {
    /// Flat-sawn: rings lie with the rim, the height is radial. The usual bowl blank.
    Flat,
    /// Quarter-sawn: rings stand up, the height is tangential.
    Quarter,
}

/// A side-grain rim after drying.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DriedRim {
    /// Diameter along the grain, mm: the longer one.
    pub along_mm: f64,
    /// Diameter across the grain, mm.
    pub across_mm: f64,
    /// Height, mm.
    pub height_mm: f64,
    /// Smallest shrinkage in the rim's plane: along the grain.
    pub least: f64,
    /// Largest shrinkage in the rim's plane.
    pub most: f64,
}

/// A rim of `diameter_mm` on a piece `height_mm` high, dried by `strains` across and `along` (fraction) along the grain. Exact
/// for straight grain; the largest even wall follows from [`crate::trueing::affine_wall_mm`] with `least` and `most`.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn dried_rim(
    diameter_mm: f64,
    height_mm: f64,
    strains: Strains,
    along: f64,
    sawn: Sawn,
) -> Result<DriedRim, RangeError> {
    let diameter = 2.0 * SECTION_RADIUS.check(0.5 * diameter_mm)?;
    let height = crate::profile::HEIGHT.check(height_mm)?;
    let along = STRAIN.check(along)?;
    let (across, up) = match sawn {
        Sawn::Flat => (strains.tangential, strains.radial),
        Sawn::Quarter => (strains.radial, strains.tangential),
    };
    Ok(DriedRim {
        along_mm: diameter * (1.0 - along),
        across_mm: diameter * (1.0 - across),
        height_mm: height * (1.0 - up),
        least: along.min(across),
        most: along.max(across),
    })
}

/// By how much (mm) the two cross-grain sides of a flat-sawn rim move away from the pith, against its end-grain ends, for a rim
/// of `radius_mm` at `height_mm` from the plane of the pith: dz = (1 - R) [r cos(k f) - h]. They stand high when the rim faces
/// the bark and low when it faces the pith.
///
/// # Errors
/// [`RangeError`] when radius or height are out of range.
pub fn rim_rise_mm(radius_mm: f64, height_mm: f64, strains: Strains) -> Result<f64, RangeError> {
    let a = SECTION_RADIUS.check(radius_mm)?;
    let h = RIM_HEIGHT.check(height_mm)?;
    let k = (1.0 - strains.tangential) / (1.0 - strains.radial);
    Ok((1.0 - strains.radial) * (a.hypot(h) * (k * a.atan2(h)).cos() - h))
}
