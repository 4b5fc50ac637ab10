//! Sums: what the science layer needs of a piece and of the shop, in its own terms. No words but those that say what a figure
//! rests on.

mod figures;
mod pith;
mod shape;

pub use figures::WoodFigures;
pub use pith::pith_of;
pub use shape::{NoShape, profile_of};

use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::{Grain, Room};
use evenwall_wood::moisture::settling_moisture;
use evenwall_wood::rough_wall::Grain as WoodGrain;

use crate::app::App;
use crate::shop::climate::{HOUSE_RH_PCT, HOUSE_TEMP_C};

/// Shrinkage along the grain, green to oven-dry, fraction: 0.1 to 0.2 %. Wood Handbook FPL-GTR-190, chapter 4.
pub const ALONG: f64 = 0.001;

/// The grain of a piece, as the sums name it.
#[must_use]
pub fn grain_of(piece: &Piece) -> WoodGrain {
    grain(piece.details.grain())
}

/// A grain, as the sums name it.
#[must_use]
pub const fn grain(grain: Grain) -> WoodGrain {
    match grain {
        Grain::End => WoodGrain::End,
        Grain::Side => WoodGrain::Side,
    }
}

impl App {
    /// The moisture at which wood settles in a room by its last reading, fraction; the house as usual where it was not read,
    /// `None` for a shop that was not.
    #[must_use]
    pub fn settles_in(&self, room: Room) -> Option<f64> {
        let (temp_c, rh_pct) = match (self.shop().last_climate(room), room) {
            (Some((_, c)), _) => (c.temp_c, c.rh_pct),
            (None, Room::House) => (HOUSE_TEMP_C, 0.5 * (HOUSE_RH_PCT.0 + HOUSE_RH_PCT.1)),
            (None, Room::Shop) => return None,
        };
        settling_moisture(temp_c, rh_pct / 100.0).ok()
    }

    /// The moisture a finished piece settles at where it will live, fraction: that of the house.
    #[must_use]
    pub fn settles_at_home(&self) -> f64 {
        // A reading outside what the equation knows leaves the usual house, about 9 %.
        self.settles_in(Room::House).unwrap_or(0.09)
    }
}
