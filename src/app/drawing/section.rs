//! The half section of a piece.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::wanted;
use evenwall_wood::outline::{Outline as WoodOutline, bent_to};
use evenwall_wood::outside::Outside;
use evenwall_wood::profile::Profile;
use evenwall_wood::wall::{WallAt, Walls};

use super::path::{Path, dashed};
use super::spots::{StationSpot, spots, station_places, thinnest};

/// A half section as path strings; all in millimetres of the view box.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SectionDrawing {
    /// Width of the view box, mm.
    pub width: f64,
    /// Height of the view box, mm.
    pub height: f64,
    /// The axis as a fraction of the width.
    pub axis_x: f64,
    /// Outside half, closed.
    pub skin: String,
    /// Grain lines on the outside half.
    pub grain: String,
    /// The hollow of the cut half, closed.
    pub void: String,
    /// The cut wall and floor, closed.
    pub wall: String,
    /// Hatch lines on the cut wall.
    pub hatch: String,
    /// The outline of both halves and the rim.
    pub outline: String,
    /// The line of the bore.
    pub bore: String,
    /// The line at the wall wanted, dashed: short pieces.
    pub wanted: String,
    /// The axis, dashed: short pieces.
    pub axis: String,
    /// The same three for a cut half only, without the outside half: shift of the axis to the left edge.
    pub half_only: bool,
    /// The stations from mouth to corner, the floor last.
    pub stations: Vec<StationSpot>,
    /// True where at least one diameter was measured.
    pub measured: bool,
    /// True where no wall was read and the wall wanted is drawn.
    pub no_readings: bool,
}

pub(crate) fn outside_of(piece: &Piece) -> Option<Outside> {
    let outline = WoodOutline::from_key(wanted::outline(piece).key())?;
    let d = wanted::diameter(piece).mm;
    let h = wanted::height(piece).mm;
    let wall = wanted::wall_now(piece).mm.min(0.4 * d);
    let shape = outline
        .scaled(d, h, piece.details.mm(DetailField::Mouth), wall.max(0.5))
        .ok()?;
    let mut measured: Vec<(f64, f64)> = station_places(piece)
        .into_iter()
        .filter_map(|(n, depth, _)| piece.diameters.get(&n).map(|m| (depth, m.value)))
        .collect();
    measured.sort_by(|a, b| a.0.total_cmp(&b.0));
    Some(bent_to(&shape, &measured).unwrap_or(shape))
}

pub(super) const STEPS: usize = 64;

/// The drawing of a piece, both halves. Absurd sizes give an empty drawing and never a panic.
#[must_use]
pub fn section_of(piece: &Piece) -> SectionDrawing {
    section(piece, false)
}

/// The drawing of a piece; `half_only` leaves the outside half away and puts the axis near the left edge.
#[must_use]
pub fn section(piece: &Piece, half_only: bool) -> SectionDrawing {
    let Some(outside) = outside_of(piece) else {
        return SectionDrawing::default();
    };
    let h = wanted::height(piece).mm;
    let widest = outside.widest_mm(h);
    let spigot_long = piece
        .details
        .mm(DetailField::SpigotLength)
        .unwrap_or(8.0)
        .clamp(0.0, 0.5 * h);
    let foot_r = outside.radius_mm(h);
    let spigot_r = piece
        .details
        .mm(DetailField::SpigotDiameter)
        .map_or(0.72 * foot_r, |d| 0.5 * d)
        .min(foot_r);
    let wall_wanted = wanted::wall_now(piece).mm.clamp(0.5, 0.9 * widest);
    let floor = thinnest(piece, StationRef::Floor)
        .unwrap_or(wanted::floor(piece).mm)
        .clamp(0.5, 0.9 * h);
    let places = station_places(piece);
    let readings: Vec<WallAt> = places
        .iter()
        .filter_map(|(n, depth_mm, _)| {
            let wall_mm =
                thinnest(piece, StationRef::Wall(*n))?.min(0.9 * outside.radius_mm(*depth_mm));
            Some(WallAt {
                depth_mm: *depth_mm,
                wall_mm,
            })
        })
        .collect();
    let no_readings = readings.is_empty();
    let mouth = piece.details.mm(DetailField::Mouth).unwrap_or_else(|| {
        let outline =
            WoodOutline::from_key(wanted::outline(piece).key()).unwrap_or(WoodOutline::Egg);
        outline.usual_mouth_mm(wanted::diameter(piece).mm)
    });
    let mouth_r = (0.5 * mouth).clamp(0.0, (outside.radius_mm(0.0) - 0.5).max(0.0));
    let bore_of = |walls: &Walls| bore_line(&outside, walls, mouth_r, h, floor);
    let wanted_line = Walls::even(wall_wanted)
        .map(|w| bore_of(&w))
        .unwrap_or_default();
    let bore = Walls::through(&readings)
        .map(|w| bore_of(&w))
        .unwrap_or_else(|_| wanted_line.clone());
    let margin = 0.02 * widest;
    let axis_x = if half_only {
        margin + 2.0
    } else {
        widest + margin
    };
    let width = axis_x + widest + margin;
    let height = h + spigot_long + 2.0 * margin;
    let right = |(r, z): (f64, f64)| (axis_x + r, z + margin);
    let left = |(r, z): (f64, f64)| (axis_x - r, z + margin);
    let outer: Vec<(f64, f64)> = (0..=STEPS)
        .map(|i| {
            let z = h * i as f64 / STEPS as f64;
            (outside.radius_mm(z), z)
        })
        .collect();
    let foot = [
        (foot_r, h),
        (spigot_r, h),
        (spigot_r, h + spigot_long),
        (0.0, h + spigot_long),
    ];
    let mut p = Path::default();
    let skin = if half_only {
        String::new()
    } else {
        p.move_to(left((0.0, 0.0)))
            .through(outer.iter().map(|q| left(*q)))
            .through(foot.iter().map(|q| left(*q)))
            .close()
            .finish()
    };
    let wall = p
        .move_to(right(bore.first().copied().unwrap_or((0.0, 0.0))))
        .through(outer.iter().map(|q| right(*q)))
        .through(foot.iter().map(|q| right(*q)))
        .line_to(right((0.0, h - floor)))
        .through(bore.iter().rev().map(|q| right(*q)))
        .close()
        .finish();
    let void = p
        .move_to(right((0.0, 0.0)))
        .through(bore.iter().map(|q| right(*q)))
        .line_to(right((0.0, h - floor)))
        .close()
        .finish();
    let line = |points: &[(f64, f64)], side: &dyn Fn((f64, f64)) -> (f64, f64)| {
        let mut p = Path::default();
        for (i, q) in points.iter().enumerate() {
            if i == 0 {
                p.move_to(side(*q));
            } else {
                p.line_to(side(*q));
            }
        }
        p.finish()
    };
    let whole: Vec<(f64, f64)> = outer.iter().chain(&foot).copied().collect();
    let rim_left = if half_only {
        (axis_x, margin)
    } else {
        left(outer[0])
    };
    let rim = p.move_to(rim_left).line_to(right(outer[0])).finish();
    let mut outline = vec![line(&whole, &right), rim];
    if !half_only {
        outline.push(line(&whole, &left));
    }
    // Dashes for a drawing about 300 pixels high.
    let dash = height / 300.0;
    let axis = dashed(
        &[(axis_x, 0.0), (axis_x, height)],
        &[14.0, 4.0, 3.0, 4.0].map(|d| d * dash),
    );
    let grain = if half_only {
        String::new()
    } else {
        grain_lines(&outside, h, &left)
    };
    let stations = spots(
        piece,
        &outside,
        &places,
        wall_wanted,
        floor,
        (width, height),
        &right,
        h,
    );
    SectionDrawing {
        width,
        height,
        axis_x: axis_x / width,
        skin,
        grain,
        void,
        hatch: String::new(),
        wall,
        outline: outline.join(" "),
        bore: line(
            &[
                &[(bore.first().map_or(0.0, |q| q.0), 0.0)],
                bore.as_slice(),
                &[(0.0, h - floor)],
            ]
            .concat(),
            &right,
        ),
        wanted: dashed(
            &wanted_line.iter().map(|q| right(*q)).collect::<Vec<_>>(),
            &[5.0, 3.0].map(|d| d * dash),
        ),
        axis,
        half_only,
        stations,
        measured: !piece.diameters.is_empty(),
        no_readings,
    }
}

/// The bore from the rim to the corner at the floor: points (radius, depth). The wall is laid off square to the
/// surface; the mouth is cut straight down.
fn bore_line(
    outside: &Outside,
    walls: &Walls,
    mouth_r: f64,
    h: f64,
    floor: f64,
) -> Vec<(f64, f64)> {
    let floor_depth = h - floor;
    let mut points: Vec<(f64, f64)> = Vec::with_capacity(STEPS + 2);
    // A profile that the sums accept is drawn by the same curve as the sums use.
    if let Ok(profile) = Profile::new(outside.clone(), walls, h, floor_depth) {
        for i in 0..=STEPS {
            let z = floor_depth * i as f64 / STEPS as f64;
            points.push((profile.bore_radius_mm(z), z));
        }
    } else {
        for i in 0..=STEPS {
            let z = h * i as f64 / STEPS as f64;
            let q = outside.inward(z, walls.at(z));
            if q.depth_mm >= 0.0
                && q.depth_mm <= floor_depth
                && points.last().is_none_or(|l| q.depth_mm > l.1)
            {
                points.push((q.radius_mm.max(0.0), q.depth_mm));
            }
        }
    }
    round_corner(&mut points, floor_depth);
    // The mouth is cut straight down through the shoulder.
    for point in points.iter_mut().take_while(|q| q.1 < 0.5 * floor_depth) {
        point.0 = point.0.max(mouth_r);
    }
    if let Some(first) = points.first().map(|q| q.0) {
        points.insert(0, (first, 0.0));
    }
    points
}

/// The corner at the floor is turned round, not square: the last stretch of the bore bends to the floor.
fn round_corner(points: &mut Vec<(f64, f64)>, floor_depth: f64) {
    let Some(&(corner_r, _)) = points.last() else {
        return;
    };
    let bend = (0.35 * corner_r).min(0.16 * floor_depth);
    if bend < 1.0 {
        return;
    }
    points.retain(|q| q.1 < floor_depth - bend);
    let start = points
        .last()
        .copied()
        .unwrap_or((corner_r, floor_depth - bend));
    let end = (corner_r - bend, floor_depth);
    for i in 1..=8 {
        let t = f64::from(i) / 8.0;
        let u = 1.0 - t;
        let control = (corner_r, floor_depth);
        points.push((
            u * u * start.0 + 2.0 * u * t * control.0 + t * t * end.0,
            u * u * start.1 + 2.0 * u * t * control.1 + t * t * end.1,
        ));
    }
}

/// Growth lines on the outside half: the outline drawn in towards the axis, as a turned log shows them.
pub(super) fn grain_lines(
    outside: &Outside,
    h: f64,
    left: &dyn Fn((f64, f64)) -> (f64, f64),
) -> String {
    let mut p = Path::default();
    for share in [0.18, 0.36, 0.54, 0.72] {
        let top = 0.08 * h + 0.12 * h * share;
        for i in 0..=24 {
            let t = f64::from(i) / 24.0;
            let z = top + (0.94 * h - top) * t;
            // Opens from the axis like the cut of a cone.
            let r = outside.radius_mm(z) * share * (0.25 + 0.75 * t.sqrt());
            if i == 0 {
                p.move_to(left((r, z)));
            } else {
                p.line_to(left((r, z)));
            }
        }
    }
    p.finish()
}
