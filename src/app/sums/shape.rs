//! The shape of a piece from what was measured on it: outside diameters, walls, floor.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_wood::outside::Outside;
use evenwall_wood::profile::{Profile, ProfileError};
use evenwall_wood::wall::{WallAt, Walls};

use crate::drawing::{compared, measured_diameters, station_places, thinnest};

/// Why a piece has no shape to reckon with.
#[derive(Debug, Clone, PartialEq)]
pub enum NoShape {
    /// The height was not said.
    NoHeight,
    /// Fewer than three outside diameters were measured; this many were.
    FewDiameters(usize),
    /// Fewer than two stations have a wall; this many have.
    FewWalls(usize),
    /// The floor was not measured.
    NoFloor,
    /// The figures make no vessel.
    Impossible(ProfileError),
}

/// The vessel as measured: nothing is assumed, so volume and weight can be told from it.
///
/// # Errors
/// [`NoShape`] says what is lacking.
pub fn profile_of(piece: &Piece) -> Result<Profile, NoShape> {
    let height = piece
        .details
        .mm(DetailField::Height)
        .ok_or(NoShape::NoHeight)?;
    let measured = measured_diameters(piece);
    if measured.len() < 3 {
        return Err(NoShape::FewDiameters(measured.len()));
    }
    // A rough wall and a trued one are not put together.
    let compared = compared(piece);
    let walls: Vec<WallAt> = station_places(piece)
        .into_iter()
        .filter(|(n, ..)| compared.contains(&StationRef::Wall(*n)))
        .filter_map(|(n, depth_mm, _)| {
            Some(WallAt {
                depth_mm,
                wall_mm: thinnest(piece, StationRef::Wall(n))?,
            })
        })
        .collect();
    if walls.len() < 2 {
        return Err(NoShape::FewWalls(walls.len()));
    }
    let floor = thinnest(piece, StationRef::Floor).ok_or(NoShape::NoFloor)?;
    let impossible = |e: ProfileError| NoShape::Impossible(e);
    let depths: Vec<f64> = measured.iter().map(|m| m.0).collect();
    let radii: Vec<f64> = measured.iter().map(|m| 0.5 * m.1).collect();
    let outside = Outside::through(&depths, &radii).map_err(impossible)?;
    let walls = Walls::through(&walls).map_err(impossible)?;
    Profile::new(outside, &walls, height, height - floor).map_err(impossible)
}
