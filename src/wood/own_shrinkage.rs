//! A piece's own shrinkage, from what it measured green and what it measures dry at the same station.

use std::fmt;

use crate::range::{Range, RangeError};
use crate::section::Strains;

/// A diameter measured by calliper, mm.
pub const MEASURED: Range = Range::new("measured diameter", "mm", 2.0, 2000.0);

/// How a piece moved against its table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Moved {
    /// About as the table says, as far as callipers can tell.
    AsTheTable,
    /// Far less oval than the table says: the pith may lie in the bore.
    FarLess,
    /// Far more oval than the table says.
    FarMore,
}

/// Ovality over the table's beyond which a piece moved far more, and its inverse for far less. Pieces scatter by 15 to 20 % in
/// each shrinkage (from memory), which is about 35 % in their difference. Judgement, no source.
pub const FAR: f64 = 1.5;
/// Difference of diameters, mm, that blind callipers cannot tell from none.
pub const UNSEEN_MM: f64 = 1.0;

/// How far the oval of a section turned at `green_mm` moved against the table: longest less shortest diameter against the
/// table's, both by [`FAR`] and by more than [`UNSEEN_MM`].
pub fn moved(green_mm: f64, longest_mm: f64, shortest_mm: f64, table: Strains) -> Moved {
    let oval = longest_mm - shortest_mm;
    let expected = green_mm * table.difference().abs();
    if oval > FAR * expected && oval > expected + UNSEEN_MM {
        Moved::FarMore
    } else if oval < expected / FAR && oval < expected - UNSEEN_MM {
        Moved::FarLess
    } else {
        Moved::AsTheTable
    }
}

/// What to take off the wall reckoned from two calliper readings, mm, when the pith may lie close outside: up to 0.12 a (T - R),
/// because the shortest diameter then shows too little of the tangential shrinkage. Nothing for readings from the centre mark.
pub fn calliper_doubt_mm(radius_mm: f64, own: Strains) -> f64 {
    0.12 * radius_mm * own.difference().max(0.0)
}

/// A piece's own shrinkage from two readings after drying.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnShrinkage {
    /// From the longest diameter: along the rays, for a pith outside the section.
    pub radial: f64,
    /// From the shortest diameter. With a pith near the surface it reads low by up to 20 % of the difference.
    pub tangential: f64,
}

impl OwnShrinkage {
    /// As strains for the other sums; a section that swelled counts as not shrunk.
    pub fn strains(&self) -> Strains {
        Strains {
            radial: self.radial.max(0.0),
            tangential: self.tangential.max(0.0),
        }
    }
}

/// The shrinkage of this piece at a station turned round at `green_mm`, now `longest_mm` by `shortest_mm`: R = 1 - longest /
/// green, T = 1 - shortest / green. Not valid with the pith in the bore, where the ring stays nearly round.
///
/// # Errors
/// [`MeasureError`] when a diameter is out of range, the two are swapped, or the piece has shrunk by more than 30 %.
pub fn own_shrinkage(
    green_mm: f64,
    longest_mm: f64,
    shortest_mm: f64,
) -> Result<OwnShrinkage, MeasureError> {
    let green = MEASURED.check(green_mm)?;
    let longest = MEASURED.check(longest_mm)?;
    let shortest = MEASURED.check(shortest_mm)?;
    if shortest > longest {
        return Err(MeasureError::Swapped {
            longest_mm,
            shortest_mm,
        });
    }
    let tangential = 1.0 - shortest / green;
    let radial = 1.0 - longest / green;
    if tangential > crate::section::STRAIN.max || radial < -0.05 {
        return Err(MeasureError::NotThisPiece {
            green_mm,
            longest_mm,
            shortest_mm,
        });
    }
    Ok(OwnShrinkage { radial, tangential })
}

/// Why readings after drying do not fit together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MeasureError {
    /// A diameter is out of its range.
    Range(RangeError),
    /// The longest is shorter than the shortest.
    Swapped {
        /// Given as the longest, mm.
        longest_mm: f64,
        /// Given as the shortest, mm.
        shortest_mm: f64,
    },
    /// The piece would have shrunk by more than 30 % or swelled by more than 5 %.
    NotThisPiece {
        /// Turned green, mm.
        green_mm: f64,
        /// Longest now, mm.
        longest_mm: f64,
        /// Shortest now, mm.
        shortest_mm: f64,
    },
}

impl fmt::Display for MeasureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            MeasureError::Range(e) => e.fmt(f),
            MeasureError::Swapped {
                longest_mm,
                shortest_mm,
            } => write!(
                f,
                "the longest diameter is {longest_mm} mm and the shortest {shortest_mm} mm; were the two swapped?"
            ),
            MeasureError::NotThisPiece {
                green_mm,
                longest_mm,
                shortest_mm,
            } => write!(
                f,
                "{green_mm} mm green and {longest_mm} by {shortest_mm} mm dry is no shrinkage of wood (up to 30 %); \
                 measure at the same station again"
            ),
        }
    }
}

impl std::error::Error for MeasureError {}

impl From<RangeError> for MeasureError {
    fn from(e: RangeError) -> Self {
        MeasureError::Range(e)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use crate::section::{Dried, Pith, Ring, dried, widths_mm};
    use crate::trueing::{affine_wall_mm, wall_left};
    use proptest::prelude::*;

    #[test]
    fn far_more_and_far_less_than_the_table() {
        let ash = Strains::new(0.0359, 0.0572).unwrap();
        assert_eq!(moved(140.0, 135.0, 132.0, ash), Moved::AsTheTable);
        assert_eq!(moved(140.0, 136.0, 131.0, ash), Moved::FarMore);
        assert_eq!(moved(140.0, 133.0, 132.5, ash), Moved::FarLess);
        // On a small piece half a millimetre is no news.
        assert_eq!(moved(30.0, 29.5, 28.0, ash), Moved::AsTheTable);
    }

    proptest! {
        #[test]
        fn with_the_doubt_taken_off_two_readings_never_promise_too_much(ratio in 1.01..6.0_f64, t in 6.0..20.0_f64) {
            let strains = Strains::new(0.0359, 0.0572).unwrap();
            let ring = Ring::new(70.0, t).unwrap();
            let pith = Pith::At(70.0 * ratio);
            let Dried::Shape { outer, .. } = dried(&ring, strains, pith, 1440).unwrap() else { panic!() };
            let (longest, shortest) = widths_mm(&outer);
            let own = own_shrinkage(140.0, longest, shortest).unwrap().strains();
            let reckoned = affine_wall_mm(&ring, own.radial, own.tangential) - calliper_doubt_mm(70.0, own);
            let true_wall = wall_left(&ring, strains, pith).unwrap().wall_mm;
            prop_assert!(reckoned <= true_wall + 0.05, "{reckoned} {true_wall}");
            prop_assert!((own.radial - strains.radial).abs() < 1e-3);
        }
    }
}
