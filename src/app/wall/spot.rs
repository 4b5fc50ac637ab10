//! Spot: a station at a place round the piece.

use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::piece::Piece;

use crate::drawing::station_places;

/// A station at a place round the piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spot {
    /// Which station.
    pub station: StationRef,
    /// Where round the piece.
    pub position: Clock,
}

/// The key of a station on the screens: its number, or `floor`.
#[must_use]
pub fn station_key(station: StationRef) -> String {
    match station {
        StationRef::Wall(n) => n.to_string(),
        StationRef::Floor => "floor".to_owned(),
    }
}

/// The station with a key of [`station_key`].
#[must_use]
pub fn station_from_key(key: &str) -> Option<StationRef> {
    match key {
        "floor" => Some(StationRef::Floor),
        _ => key.parse().ok().filter(|n| *n > 0).map(StationRef::Wall),
    }
}

impl Spot {
    /// A station at the pencil line.
    #[must_use]
    pub const fn at_line(station: StationRef) -> Self {
        Self {
            station,
            position: Clock::TWELVE,
        }
    }

    /// Its key on the screens: `4@12`, `floor@12`.
    #[must_use]
    pub fn key(self) -> String {
        format!("{}@{}", station_key(self.station), self.position.hour())
    }

    /// The spot with a key of [`Spot::key`].
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        let (station, position) = key.split_once('@')?;
        Some(Self {
            station: station_from_key(station)?,
            position: position.parse().ok().and_then(Clock::new)?,
        })
    }
}

/// The stations of a piece from mouth to corner, the floor last.
pub(super) fn stations_of(piece: &Piece) -> Vec<StationRef> {
    station_places(piece)
        .into_iter()
        .map(|(n, ..)| StationRef::Wall(n))
        .chain([StationRef::Floor])
        .collect()
}

/// The hours at which a station is read for so many places round, from the pencil line on.
pub(super) fn hours(places: u8) -> &'static [u8] {
    match places {
        2 => &[12, 6],
        4 => &[12, 3, 6, 9],
        _ => &[12],
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn keys_lead_back_and_nonsense_leads_nowhere() {
        for station in [StationRef::Wall(1), StationRef::Wall(9), StationRef::Floor] {
            for hour in [12, 3, 6, 9] {
                let spot = Spot {
                    station,
                    position: Clock::new(hour).unwrap(),
                };
                assert_eq!(Spot::from_key(&spot.key()), Some(spot));
            }
        }
        for bad in ["", "4", "@12", "0@12", "4@13", "4@0", "x@12", "400@12"] {
            assert_eq!(Spot::from_key(bad), None, "{bad}");
        }
    }
}
