//! Laying out: what becomes of what was noted at a station when the stations move.
//!
//! A station is a number for a depth. Nothing that was noted moves with the number: readings of the wall are of wood that is
//! measured anew, while outside diameters and flaws stay at the depth at which they were noted.

use crate::fact::{Measure, StationRef};
use crate::piece::{Piece, SAME_DEPTH_MM, Stations};

/// Lays the stations out as `to`.
pub(super) fn lay_out(piece: &mut Piece, to: Stations) {
    let moved = to.moved_from(&piece.stations);
    let from = std::mem::replace(&mut piece.stations, to);
    if !moved {
        return;
    }
    piece.readings_from = piece.readings.len();
    let depth_of = |n: u8| {
        let place = usize::from(n).checked_sub(1)?;
        from.depths_mm.get(place).copied()
    };
    for flaw in &mut piece.flaws {
        if let (Some(StationRef::Wall(n)), None) = (flaw.note.station, flaw.depth_mm) {
            flaw.depth_mm = depth_of(n);
        }
    }
    let at_stations = std::mem::take(&mut piece.diameters);
    // Those at the stations are the later ones: they win where both come to lie at one station.
    let all: Vec<(f64, Measure)> = std::mem::take(&mut piece.diameters_between)
        .into_iter()
        .chain(
            at_stations
                .into_iter()
                .filter_map(|(n, measure)| Some((depth_of(n)?, measure))),
        )
        .collect();
    for (depth, measure) in all {
        let mut places = (1..=u8::MAX).zip(&piece.stations.depths_mm);
        match places.find(|(_, d)| (*d - depth).abs() <= SAME_DEPTH_MM) {
            Some((n, _)) => {
                piece.diameters.insert(n, measure);
            }
            None => piece.diameters_between.push((depth, measure)),
        }
    }
}
