//! Place: what is known of each station of a dried piece: its size as turned, its walls, its oval.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece, SectionMeasured};
use evenwall_piece::truing::{WallThere, walls_there};

use crate::drawing::section_of;

/// A diameter as turned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Green {
    /// The diameter, mm.
    pub mm: f64,
    /// True where it was not measured, but taken from the outline drawn to the sizes that were.
    pub drawn: bool,
}

/// One station.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Place {
    /// Counted from the mouth.
    pub number: u8,
    /// Key of its name from mouth to corner; empty where it has none.
    pub name: &'static str,
    /// True for the widest of them.
    pub widest: bool,
    /// Its diameter as turned, where it is known or can be drawn.
    pub green: Option<Green>,
    /// Its walls by position.
    pub walls: Vec<WallThere>,
    /// Its oval, where it was measured.
    pub measured: Option<SectionMeasured>,
}

impl Place {
    /// The thinnest wall, mm.
    pub fn thinnest_mm(&self) -> Option<f64> {
        self.walls.iter().map(|w| w.mm).reduce(f64::min)
    }
}

/// The stations of a piece from mouth to corner. The oval that was measured without a station is that of the widest.
pub(super) fn places_of(piece: &Piece) -> Vec<Place> {
    let drawn = section_of(piece);
    let spots: Vec<_> = drawn.stations.iter().filter(|s| s.number > 0).collect();
    let widest = spots
        .iter()
        .rev()
        .max_by(|a, b| a.diameter_mm.total_cmp(&b.diameter_mm))
        .map(|s| s.number);
    let diameter = piece.details.mm(DetailField::Diameter);
    let sized = diameter.is_some() || !piece.diameters.is_empty();
    spots
        .iter()
        .map(|spot| {
            let number = spot.number;
            let is_widest = widest == Some(number);
            let measured = |mm| Green { mm, drawn: false };
            let at_station = piece.diameters.get(&number).map(|m| measured(m.value));
            let whole = diameter.filter(|_| is_widest).map(measured);
            let from_outline = sized.then_some(Green {
                mm: spot.diameter_mm,
                drawn: true,
            });
            Place {
                number,
                name: spot.name,
                widest: is_widest,
                green: whole
                    .or(at_station)
                    .or(from_outline)
                    .filter(|g| g.mm.is_finite() && g.mm > 0.0),
                walls: walls_there(piece, number),
                measured: measured_at(piece, number, is_widest),
            }
        })
        .collect()
}

/// The oval of a station, the later one where the widest place has two.
fn measured_at(piece: &Piece, number: u8, widest: bool) -> Option<SectionMeasured> {
    let finish = &piece.finish;
    let at_station = finish.ovals.get(&number).map(|o| (o.at, &o.measured));
    let without = finish.oval.as_ref().filter(|_| widest).map(|o| {
        let two = SectionMeasured::Two {
            longest_mm: o.longest_mm.clone(),
            shortest_mm: o.shortest_mm.clone(),
        };
        (o.at, two)
    });
    let later = |at: Moment| without.as_ref().is_some_and(|(other, _)| *other > at);
    match at_station {
        Some((at, measured)) if !later(at) => Some(measured.clone()),
        _ => without.map(|(_, two)| two),
    }
}
