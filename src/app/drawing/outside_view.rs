//! The outside of a piece seen from the side, and where a place round it lies on that view.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::piece::{Flaw, Piece};
use evenwall_piece::wanted;
use evenwall_wood::outside::Outside;

use super::path::Path;
use super::section::{STEPS, drawn_outside, grain_lines};
use super::spots::station_places;

/// The outside as path strings, all in millimetres of the view box.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OutsideDrawing {
    /// Width of the view box, mm.
    pub width: f64,
    /// Height of the view box, mm.
    pub height: f64,
    /// The whole outside, closed.
    pub skin: String,
    /// Growth lines on it.
    pub grain: String,
    /// Its outline.
    pub outline: String,
    /// The mouth as a part of the greatest diameter, for the view from the mouth.
    pub mouth: f64,
}

/// A place on the outside: on the view from the side, and how far out on the view from the mouth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutsidePlace {
    /// Across, mm of the view box; 3 o'clock lies at the right on both views.
    pub x: f64,
    /// Down, mm of the view box.
    pub y: f64,
    /// How far out from the mouth's view, 0 the axis to 1 the greatest diameter.
    pub out: f64,
}

struct Frame {
    outside: Outside,
    height: f64,
    widest: f64,
    margin: f64,
}

fn frame(piece: &Piece) -> Option<Frame> {
    let outside = drawn_outside(piece)?;
    let height = wanted::height(piece).mm;
    let widest = outside.widest_mm(height);
    (widest.is_finite() && widest > 0.0).then_some(Frame {
        outside,
        height,
        widest,
        margin: 0.02 * widest,
    })
}

impl Frame {
    fn axis(&self) -> f64 {
        self.widest + self.margin
    }

    /// Where something `across` mm from the axis lies on the view.
    fn x(&self, across: f64) -> f64 {
        self.axis() + across
    }
}

/// The outside of a piece. Absurd sizes give an empty drawing and never a panic.
#[must_use]
pub fn outside_view(piece: &Piece) -> OutsideDrawing {
    let Some(frame) = frame(piece) else {
        return OutsideDrawing::default();
    };
    let frame = &frame;
    let h = frame.height;
    let long = piece
        .details
        .mm(DetailField::SpigotLength)
        .unwrap_or(8.0)
        .clamp(0.0, 0.5 * h);
    let foot_r = frame.outside.radius_mm(h);
    let spigot_r = piece
        .details
        .mm(DetailField::SpigotDiameter)
        .map_or(0.72 * foot_r, |d| 0.5 * d)
        .min(foot_r);
    let side = |sign: f64| move |(r, z): (f64, f64)| (frame.x(sign * r), z + frame.margin);
    let half: Vec<(f64, f64)> = (0..=STEPS)
        .map(|i| h * i as f64 / STEPS as f64)
        .map(|z| (frame.outside.radius_mm(z), z))
        .chain([(foot_r, h), (spigot_r, h), (spigot_r, h + long)])
        .collect();
    let (right, left) = (side(1.0), side(-1.0));
    let mut p = Path::default();
    let first = half.first().copied().unwrap_or((0.0, 0.0));
    let outline = p
        .move_to(left(first))
        .through(half.iter().map(|q| right(*q)))
        .through(half.iter().rev().map(|q| left(*q)))
        .close()
        .finish();
    let grain = [
        grain_lines(&frame.outside, h, &left),
        grain_lines(&frame.outside, h, &right),
    ]
    .join(" ");
    let mouth = piece
        .details
        .mm(DetailField::Mouth)
        .map_or(frame.outside.radius_mm(0.0), |d| 0.5 * d);
    OutsideDrawing {
        width: 2.0 * frame.axis(),
        height: h + long + 2.0 * frame.margin,
        skin: outline.clone(),
        grain,
        outline,
        mouth: (mouth / frame.widest).clamp(0.0, 0.95),
    }
}

/// Where a flaw lies: at its station, or at the depth where that lay before the stations were laid out anew. `None` where its
/// station is not known.
#[must_use]
pub fn flaw_on_outside(piece: &Piece, flaw: &Flaw) -> Option<OutsidePlace> {
    match flaw.depth_mm {
        Some(depth) => Some(place_at(&frame(piece)?, depth, None, flaw.note.clock)),
        None => place_on_outside(piece, flaw.note.station, flaw.note.clock),
    }
}

/// Where a station and an hour lie; without an hour on the axis. `None` where the station is not known or has no place.
#[must_use]
pub fn place_on_outside(
    piece: &Piece,
    station: Option<StationRef>,
    clock: Option<Clock>,
) -> Option<OutsidePlace> {
    let frame = frame(piece)?;
    match station? {
        StationRef::Wall(n) => {
            let depth = station_places(piece)
                .into_iter()
                .find(|(number, ..)| *number == n)
                .map(|(_, depth, _)| depth)?;
            Some(place_at(&frame, depth, None, clock))
        }
        // Close to the axis, over the foot.
        StationRef::Floor => {
            let radius = 0.3 * frame.outside.radius_mm(frame.height);
            Some(place_at(&frame, frame.height, Some(radius), clock))
        }
    }
}

/// A place at a depth and an hour, on the outside unless a radius is given.
fn place_at(frame: &Frame, depth: f64, radius: Option<f64>, clock: Option<Clock>) -> OutsidePlace {
    let radius = radius.unwrap_or_else(|| frame.outside.radius_mm(depth));
    let across = clock.map_or(0.0, |c| {
        radius * (f64::from(c.hour()) * std::f64::consts::PI / 6.0).sin()
    });
    OutsidePlace {
        x: frame.x(across),
        y: depth + frame.margin,
        out: (radius / frame.widest).clamp(0.0, 1.0),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use evenwall_piece::fact::PieceFact;
    use evenwall_piece::fold::fold_piece;
    use evenwall_piece::ids::{DeviceId, LineId, PieceId};
    use evenwall_piece::line::Line;

    use super::*;

    fn piece() -> Piece {
        let at = chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap();
        let line = Line {
            id: LineId {
                device: DeviceId::new("a").unwrap(),
                n: 1,
            },
            seq: 1,
            at,
            noted_at: at,
            facts: vec![PieceFact::Created],
        };
        fold_piece(PieceId::new("k07").unwrap(), vec![line])
    }

    #[test]
    fn three_o_clock_lies_right_and_nine_left_of_the_axis_by_the_radius() {
        let piece = piece();
        let view = outside_view(&piece);
        let at =
            |hour| place_on_outside(&piece, Some(StationRef::Wall(2)), Clock::new(hour)).unwrap();
        let middle = view.width / 2.0;
        assert!((at(3).x - middle - (middle - at(9).x)).abs() < 1e-6);
        assert!(at(3).x > middle + 10.0);
        assert!((at(12).x - middle).abs() < 1e-6 && (at(6).x - middle).abs() < 1e-6);
        let none = place_on_outside(&piece, Some(StationRef::Wall(2)), None).unwrap();
        assert!((none.x - middle).abs() < 1e-9);
        assert!(view.skin.starts_with("M ") && view.skin.ends_with(" Z"));
    }

    #[test]
    fn a_place_that_is_not_known_is_not_drawn() {
        let piece = piece();
        assert_eq!(place_on_outside(&piece, None, Clock::new(3)), None);
        assert_eq!(
            place_on_outside(&piece, Some(StationRef::Wall(99)), None),
            None
        );
    }
}
