//! Where the stations of a piece lie on its drawing.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::wanted;
use evenwall_wood::half_section::tick;
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

/// Depths of the stations of a piece, mm from the rim, with the keys of their names. Stations that were laid out stay as
/// many as they are; without depths, or before they are laid out, they stand where the height puts them.
pub(crate) fn station_places(piece: &Piece) -> Vec<(u8, f64, &'static str)> {
    let height = wanted::height(piece).mm;
    let floor = wanted::floor(piece).mm;
    let usual = place_stations(height, floor).unwrap_or_default();
    let laid = &piece.stations;
    let count = usize::from(laid.count);
    let depths: Vec<f64> = if count == 0 || usual.len() == count && laid.depths_mm.len() != count {
        usual.iter().map(|s| s.depth_mm).collect()
    } else if laid.depths_mm.len() == count {
        laid.depths_mm.clone()
    } else {
        spread(count, height, floor)
    };
    let names = names(depths.len());
    (1..=u8::MAX)
        .zip(depths)
        .enumerate()
        .map(|(i, (n, depth))| (n, depth, names.get(i).copied().unwrap_or("")))
        .collect()
}

/// How near an outside diameter may lie to one measured at another depth, mm: nearer, the later one stands for both. Common
/// practice, no source.
const ONE_PLACE_MM: f64 = 3.0;

/// The outside diameters measured, each at its depth below the rim, mm, depths rising. Those measured before the stations moved
/// count at the depth where they were measured, unless a later one lies there.
pub(crate) fn measured_diameters(piece: &Piece) -> Vec<(f64, f64)> {
    let mut measured: Vec<(f64, f64)> = station_places(piece)
        .into_iter()
        .filter_map(|(n, depth, _)| Some((depth, piece.diameters.get(&n)?.value)))
        .collect();
    let height = wanted::height(piece).mm;
    for (depth, measure) in piece.diameters_between.iter().rev() {
        let free = measured
            .iter()
            .all(|(d, _)| (d - depth).abs() > ONE_PLACE_MM);
        if free && *depth <= height {
            measured.push((*depth, measure.value));
        }
    }
    measured.sort_by(|a, b| a.0.total_cmp(&b.0));
    measured
}

/// Depths spread evenly over the wall, for a count that the height does not give by itself.
fn spread(count: usize, height: f64, floor: f64) -> Vec<f64> {
    let first = 0.05 * height;
    let last = (height - floor.clamp(0.0, 0.5 * height) - first).max(first);
    let step = (last - first) / (count.max(2) - 1) as f64;
    (0..count).map(|i| first + step * i as f64).collect()
}

/// The names of so many stations from mouth to corner; none for a count without names of its own.
fn names(count: usize) -> Vec<&'static str> {
    [100.0, 200.0, 300.0]
        .into_iter()
        .filter_map(|height| place_stations(height, 10.0).ok())
        .find(|placed| placed.len() == count)
        .unwrap_or_default()
        .iter()
        .map(|s| s.name.key())
        .collect()
}

/// The stations of the wall that are compared with each other, from mouth to corner. Once one of them was read in the
/// present part of the work the others join when they are read there too: a dried wall and the rough one it was are no
/// spread. Before that the readings of the part before still tell how even it is.
pub(crate) fn compared(piece: &Piece) -> Vec<StationRef> {
    let walls: Vec<StationRef> = station_places(piece)
        .into_iter()
        .map(|(n, ..)| StationRef::Wall(n))
        .collect();
    let read_now = |s: &StationRef| piece.read_in_this_part(*s);
    if walls.iter().any(read_now) {
        walls.into_iter().filter(read_now).collect()
    } else {
        walls
    }
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
            let [over, inner] = tick(outside, depth_mm, wall, 3.0);
            let bore = outside.inward(depth_mm, wall);
            let from = right((over.radius_mm, over.depth_mm));
            let to = right((inner.radius_mm.max(0.0), inner.depth_mm));
            let at = right((out.radius_mm, out.depth_mm));
            let line = Path::default().move_to(from).line_to(to).finish();
            let read = piece.last_reading(StationRef::Wall(number), None).is_some();
            StationSpot {
                number,
                depth_mm,
                name,
                x: at.0 / width,
                y: at.1 / height,
                tick: line,
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
