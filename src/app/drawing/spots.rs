//! Where the stations of a piece lie on its drawing.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::wanted;
use evenwall_wood::outside::Outside;
use evenwall_wood::stations::place_stations;

use super::path::Path;

/// Where a station lies on the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct StationSpot {
    /// 1, 2, 3... from the mouth; 0 for the floor.
    pub number: u8,
    /// Its depth from the rim, mm.
    pub depth_mm: f64,
    /// Key of its name from mouth to corner, for example `shoulder`; empty where it has none.
    pub name: &'static str,
    /// The point on the outside, as fractions of the drawing's width and height.
    pub x: f64,
    /// See `x`.
    pub y: f64,
    /// The tick across the wall, in the drawing's units.
    pub tick: String,
    /// Where the tick meets the bore, mm in the view box.
    pub inner: (f64, f64),
    /// Where the tick meets the outside, mm in the view box.
    pub outer: (f64, f64),
    /// The outside diameter as drawn, mm.
    pub diameter_mm: f64,
    /// True where a wall was read here.
    pub read: bool,
}

/// Depths of the stations of a piece, mm from the rim, with the keys of their names.
pub(crate) fn station_places(piece: &Piece) -> Vec<(u8, f64, &'static str)> {
    let height = wanted::height(piece).mm;
    let laid = &piece.stations;
    if laid.count > 0 && laid.depths_mm.len() == usize::from(laid.count) {
        let usual = place_stations(height, wanted::floor(piece).mm).unwrap_or_default();
        let names = if usual.len() == laid.depths_mm.len() {
            usual
        } else {
            Vec::new()
        };
        return (1..=laid.count)
            .zip(&laid.depths_mm)
            .map(|(n, d)| {
                (
                    n,
                    *d,
                    names.get(usize::from(n) - 1).map_or("", |s| s.name.key()),
                )
            })
            .collect();
    }
    place_stations(height, wanted::floor(piece).mm)
        .unwrap_or_default()
        .iter()
        .zip(1_u8..)
        .map(|(s, n)| (n, s.depth_mm, s.name.key()))
        .collect()
}

/// The thinnest number read at a station, with nothing for one judged by finger or out of reach.
pub(crate) fn thinnest(piece: &Piece, station: StationRef) -> Option<f64> {
    piece
        .readings_round(station)
        .iter()
        .filter_map(|r| r.reading.wall_mm.as_ref())
        .map(|m| m.value)
        .filter(|v| v.is_finite() && *v > 0.0)
        .reduce(f64::min)
}

#[allow(clippy::too_many_arguments)] // one drawing's figures, used once
pub(super) fn spots(
    piece: &Piece,
    outside: &Outside,
    places: &[(u8, f64, &'static str)],
    wall_wanted: f64,
    floor: f64,
    (width, height): (f64, f64),
    right: &dyn Fn((f64, f64)) -> (f64, f64),
    h: f64,
) -> Vec<StationSpot> {
    let mut spots: Vec<StationSpot> = places
        .iter()
        .map(|&(number, depth_mm, name)| {
            let wall = thinnest(piece, StationRef::Wall(number)).unwrap_or(wall_wanted);
            let out = outside.point(depth_mm);
            let over = outside.inward(depth_mm, -3.0);
            let inner = outside.inward(depth_mm, wall + 3.0);
            let bore = outside.inward(depth_mm, wall);
            let from = right((over.radius_mm, over.depth_mm));
            let to = right((inner.radius_mm.max(0.0), inner.depth_mm));
            let at = right((out.radius_mm, out.depth_mm));
            let tick = Path::default().move_to(from).line_to(to).finish();
            let read = piece.last_reading(StationRef::Wall(number), None).is_some();
            StationSpot {
                number,
                depth_mm,
                name,
                x: at.0 / width,
                y: at.1 / height,
                tick,
                inner: right((bore.radius_mm.max(0.0), bore.depth_mm)),
                outer: at,
                diameter_mm: 2.0 * out.radius_mm,
                read,
            }
        })
        .collect();
    let at = right((0.0, h));
    let from = right((2.0, h - floor - 3.0));
    let to = right((2.0, h + 3.0));
    spots.push(StationSpot {
        number: 0,
        depth_mm: h - floor,
        name: "floor",
        x: at.0 / width,
        y: (at.1 - 0.5 * floor) / height,
        tick: Path::default().move_to(from).line_to(to).finish(),
        inner: right((2.0, h - floor)),
        outer: right((2.0, h)),
        diameter_mm: 2.0 * outside.radius_mm(h),
        read: piece.last_reading(StationRef::Floor, None).is_some(),
    });
    spots
}
