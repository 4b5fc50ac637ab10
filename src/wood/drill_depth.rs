//! How deep to drill: rim to foot line less the floor, from the bit's point, the rim faced first.

use std::fmt;

use crate::profile::HEIGHT;
use crate::range::{Range, RangeError};

/// Thickness of the floor above the foot line, mm.
pub const FLOOR: Range = Range::new("floor", "mm", 1.0, 500.0);

/// The sum as it is written on the back of a sheet, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrillDepth {
    /// Height from the faced rim to the foot line.
    pub height_mm: f64,
    /// Floor to be left above the foot line.
    pub floor_mm: f64,
}

impl DrillDepth {
    /// Depth from the faced rim to the bit's point, mm.
    pub fn depth_mm(&self) -> f64 {
        self.height_mm - self.floor_mm
    }
}

/// Why there is no depth to drill.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DrillError {
    /// A figure lies outside its range.
    Range(RangeError),
    /// The floor is as thick as the piece is high.
    NothingToDrill {
        /// Height, mm.
        height_mm: f64,
        /// Floor, mm.
        floor_mm: f64,
    },
}

impl fmt::Display for DrillError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            DrillError::Range(e) => e.fmt(f),
            DrillError::NothingToDrill {
                height_mm,
                floor_mm,
            } => write!(
                f,
                "rim to foot line is {height_mm} mm and the floor {floor_mm} mm, which leaves nothing to drill; check both"
            ),
        }
    }
}

impl std::error::Error for DrillError {}

impl From<RangeError> for DrillError {
    fn from(e: RangeError) -> Self {
        DrillError::Range(e)
    }
}

/// The depth to drill for a piece `height_mm` from faced rim to foot line with a floor of `floor_mm`. Common practice.
///
/// # Errors
/// [`DrillError`] when a figure is out of range or the floor takes the whole height.
pub fn drill_depth(height_mm: f64, floor_mm: f64) -> Result<DrillDepth, DrillError> {
    let height_mm = HEIGHT.check(height_mm)?;
    let floor_mm = FLOOR.check(floor_mm)?;
    if floor_mm >= height_mm {
        return Err(DrillError::NothingToDrill {
            height_mm,
            floor_mm,
        });
    }
    Ok(DrillDepth {
        height_mm,
        floor_mm,
    })
}
