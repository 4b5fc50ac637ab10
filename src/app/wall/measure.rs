//! Measure: what is entered at a station, what is wanted there, and the eight keys round it.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::wanted;

use crate::numbers::{Numbers, Quantity};

/// What the number typed at a station means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Measuring {
    /// The wall, square to its surface.
    Wall,
    /// The floor above the foot line.
    Floor,
    /// The depth of a rod from the rim, in a piece of this height in mm.
    Rod {
        /// Rim to foot line, mm.
        height_mm: f64,
    },
}

impl Measuring {
    /// What is measured at a station. The rod needs a height that was said.
    pub fn at(piece: &Piece, station: StationRef, by_depth: bool) -> Self {
        let height = wanted::height(piece);
        match station {
            StationRef::Wall(_) => Self::Wall,
            StationRef::Floor if by_depth && height.said => Self::Rod {
                height_mm: height.mm,
            },
            StationRef::Floor => Self::Floor,
        }
    }

    /// What is typed.
    pub const fn quantity(self) -> Quantity {
        match self {
            Self::Wall => Quantity::WallReading,
            Self::Floor => Quantity::FloorReading,
            Self::Rod { .. } => Quantity::RodDepth,
        }
    }

    /// The thickness in mm that a typed value means.
    pub fn thickness(self, value: f64) -> f64 {
        match self {
            Self::Wall | Self::Floor => value,
            Self::Rod { height_mm } => height_mm - value,
        }
    }
}

/// The wall or floor wanted at a station, mm.
pub(super) fn wanted_at(piece: &Piece, station: StationRef) -> f64 {
    match station {
        StationRef::Wall(_) => wanted::wall_now(piece).mm,
        StationRef::Floor => wanted::floor(piece).mm,
    }
}

/// One of the eight keys.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct QuickKey {
    /// What it says, and what counts as typed.
    pub text: String,
    /// The thickness it means, mm.
    pub thickness_mm: f64,
}

/// Eight keys a step apart round what is wanted; for the rod, depths round the depth wanted.
pub(super) fn quick_keys(
    piece: &Piece,
    station: StationRef,
    measuring: Measuring,
    numbers: &Numbers,
) -> Vec<QuickKey> {
    let wanted = wanted_at(piece, station);
    let range = measuring.quantity().range();
    let (step, middle, below) = match measuring {
        Measuring::Wall | Measuring::Floor => (numbers.wall_step_mm(), wanted, 3.0),
        // Two steps of the wall's keys: a millimetre, or 1/32 in.
        Measuring::Rod { height_mm } => (2.0 * numbers.wall_step_mm(), height_mm - wanted, 4.0),
    };
    let least = (range.min / step).ceil().max(1.0);
    let first = ((middle / step).round() - below).max(least);
    (0..8)
        .map(|i| {
            let value = (first + f64::from(i)) * step;
            let shown = match measuring {
                Measuring::Wall | Measuring::Floor => numbers.wall(value),
                Measuring::Rod { .. } => numbers.diameter(value),
            };
            QuickKey {
                text: shown.short().number,
                thickness_mm: measuring.thickness(value),
            }
        })
        .collect()
}
