//! The wall to leave when roughing: the sum of what will be wanted and what drying takes, beside the trade's practice.

use crate::range::{Range, RangeError};
use crate::section::{Pith, Place, Ring, SECTION_RADIUS, SectionError, Strains};
use crate::trueing::{bore_factor, free_reach};

/// Wall wanted at the finish, mm.
pub const FINISH_WALL: Range = Range::new("wall wanted at the finish", "mm", 0.5, 100.0);
/// Margin, or off-centre on remounting, mm.
pub const MARGIN: Range = Range::new("margin", "mm", 0.0, 50.0);

/// Margin for bumps and clean-up, mm. Common practice, no source.
pub const USUAL_MARGIN_MM: f64 = 1.5;
/// Off-centre on remounting, mm. Common practice, no source.
pub const USUAL_OFF_CENTRE_MM: f64 = 0.5;

/// What is wanted in the end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Finish wall, mm.
    pub finish_mm: f64,
    /// Margin for bumps and clean-up, mm.
    pub margin_mm: f64,
    /// Off-centre on remounting, mm; twice this is left, because being off by e costs up to 1.7 e.
    pub off_centre_mm: f64,
}

impl Wanted {
    /// A finish wall with the usual margin and remounting.
    pub fn finish(finish_mm: f64) -> Self {
        Wanted {
            finish_mm,
            margin_mm: USUAL_MARGIN_MM,
            off_centre_mm: USUAL_OFF_CENTRE_MM,
        }
    }

    fn checked(&self) -> Result<(f64, f64), RangeError> {
        let finish = FINISH_WALL.check(self.finish_mm)?;
        Ok((
            finish,
            MARGIN.check(self.margin_mm)? + 2.0 * MARGIN.check(self.off_centre_mm)?,
        ))
    }
}

/// The rough wall as a sum; the parts add up to the total.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoughWall {
    /// Finish wall, mm.
    pub finish_mm: f64,
    /// Taken by the oval, mm.
    pub oval_mm: f64,
    /// In hand: margin and remounting, mm.
    pub in_hand_mm: f64,
    /// Taken by the wall's own shrinking, mm.
    pub shrinks_mm: f64,
}

impl RoughWall {
    /// The wall to leave, mm.
    pub fn total_mm(&self) -> f64 {
        self.finish_mm + self.oval_mm + self.in_hand_mm + self.shrinks_mm
    }
}

/// The rough wall of any section that shrinks by `least` one way and `most` square to it: t = (w + m + a (hi - lo)) / (1 - lo).
/// Exact for an affine change (end grain with a far pith, side grain).
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn affine_rough_wall(
    radius_mm: f64,
    least: f64,
    most: f64,
    wanted: Wanted,
) -> Result<RoughWall, RangeError> {
    let (finish_mm, in_hand_mm) = wanted.checked()?;
    let radius = SECTION_RADIUS.check(radius_mm)?;
    let (low, high) = (
        crate::section::STRAIN.check(least)?,
        crate::section::STRAIN.check(most)?,
    );
    Ok(parts(
        finish_mm,
        in_hand_mm,
        radius * (high.max(low) - low.min(high)),
        low.min(high),
    ))
}

fn parts(finish_mm: f64, in_hand_mm: f64, oval_mm: f64, least: f64) -> RoughWall {
    let before = finish_mm + in_hand_mm + oval_mm;
    RoughWall {
        finish_mm,
        oval_mm,
        in_hand_mm,
        shrinks_mm: before * least / (1.0 - least),
    }
}

/// The rough wall of an end-grain section of `radius_mm` with the pith at `pith`.
///
/// Far, not known or in the wall: the affine form, on the safe side. Outside: exact. In the bore: the safe bound of
/// [`crate::trueing::wall_left`], solved for the wall.
///
/// # Errors
/// [`SectionError`] when a figure is out of range or the wall needed would leave no hollow.
pub fn rough_wall(
    radius_mm: f64,
    strains: Strains,
    pith: Pith,
    wanted: Wanted,
) -> Result<RoughWall, SectionError> {
    let full = affine_rough_wall(radius_mm, strains.least(), strains.most(), wanted)?;
    // Raises the error when not even the full allowance leaves a hollow.
    let ring = Ring::new(radius_mm, full.total_mm())?;
    let Pith::At(d) = pith else { return Ok(full) };
    Ok(match pith.place(&ring)? {
        Place::Outside => {
            // Whatever the wall, the outside loses this much of its radius to the oval.
            let oval = (radius_mm * (1.0 - strains.least()) - free_reach(radius_mm, d, strains).0)
                .max(0.0);
            parts(full.finish_mm, full.in_hand_mm, oval, strains.least())
        }
        Place::InBore => in_bore(radius_mm, strains, d, full)?,
        Place::InWall | Place::Unknown => full,
    })
}

/// Solves t = (w + m + c(t) a (hi - lo)) / (1 - lo) from the thick side, where it never gives too little.
fn in_bore(
    radius_mm: f64,
    strains: Strains,
    d: f64,
    full: RoughWall,
) -> Result<RoughWall, SectionError> {
    let mut wall = full;
    for _ in 0..40 {
        let ring = Ring::new(radius_mm, wall.total_mm())?;
        let oval = bore_factor(&ring, d) * radius_mm * (strains.most() - strains.least());
        wall = parts(full.finish_mm, full.in_hand_mm, oval, strains.least());
    }
    Ok(wall)
}

/// Which way the grain runs in a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Grain {
    /// Along the lathe axis: vessels.
    End,
    /// Across it: bowls and wide hollow forms.
    Side,
}

/// Rough wall by practice, mm. End grain: 10 to 160 mm diameter, 12 to 220, 15 above; side grain: a tenth of the diameter, at
/// least 12. Common practice, no source.
pub fn practice_rough_mm(grain: Grain, diameter_mm: f64) -> f64 {
    match grain {
        Grain::End if diameter_mm <= 160.0 => 10.0,
        Grain::End if diameter_mm <= 220.0 => 12.0,
        Grain::End => 15.0,
        Grain::Side => (0.1 * diameter_mm).max(12.0),
    }
}

/// Finish wall by practice, mm. End grain: 5 to 150 mm diameter, 6 to 220, 8 above; side grain 8. Common practice, no source.
pub fn practice_finish_mm(grain: Grain, diameter_mm: f64) -> f64 {
    match grain {
        Grain::End if diameter_mm <= 150.0 => 5.0,
        Grain::End if diameter_mm <= 220.0 => 6.0,
        Grain::End | Grain::Side => 8.0,
    }
}

/// The wall to advise, whole mm: the larger of the sum and the practice, rounded up.
pub fn advised_mm(sum_mm: f64, practice_mm: f64) -> f64 {
    (sum_mm.max(practice_mm) - 1e-6).ceil()
}

/// Floor by practice, mm, above the foot line: the wall plus 2. Common practice, no source.
pub fn practice_floor_mm(wall_mm: f64) -> f64 {
    wall_mm + 2.0
}
