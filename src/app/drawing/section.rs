//! The half section of a piece.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::wanted;
use evenwall_wood::half_section::{HalfSection, Sizes};
use evenwall_wood::outline::{Outline as WoodOutline, bent_to};
use evenwall_wood::outside::Outside;
use evenwall_wood::wall::{WallAt, Walls};

use super::path::{Path, dashed};
use super::spots::{StationSpot, measured_diameters, spots, station_places, thinnest};

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

/// The outside of a piece as it is drawn: through the diameters measured from three on, as the sums take it; with fewer the
/// outline picked, scaled to the size and bent to them. `None` for absurd sizes.
pub(crate) fn drawn_outside(piece: &Piece) -> Option<Outside> {
    let h = wanted::height(piece).mm;
    let measured = measured_diameters(piece);
    if let Some(outside) = through(&measured, h) {
        return Some(outside);
    }
    let outline = WoodOutline::from_key(wanted::outline(piece).key())?;
    let d = wanted::diameter(piece).mm;
    let wall = wanted::wall_now(piece).mm.min(0.4 * d);
    let shape = outline
        .scaled(d, h, piece.details.mm(DetailField::Mouth), wall.max(0.5))
        .ok()?;
    Some(bent_to(&shape, &measured).unwrap_or(shape))
}

/// The measured outside; `None` below three diameters, or where they make no outside from the rim to the foot line.
fn through(measured: &[(f64, f64)], height: f64) -> Option<Outside> {
    if measured.len() < LEAST_DIAMETERS {
        return None;
    }
    let depths: Vec<f64> = measured.iter().map(|m| m.0).collect();
    let radii: Vec<f64> = measured.iter().map(|m| 0.5 * m.1).collect();
    let outside = Outside::through(&depths, &radii).ok()?;
    let least = 0.05 * outside.widest_mm(height);
    (outside.radius_mm(0.0) > least && outside.radius_mm(height) > least).then_some(outside)
}

/// From how many measured diameters on the outside is told by them alone.
const LEAST_DIAMETERS: usize = 3;

pub(super) const STEPS: usize = 64;

/// The drawing of a piece, both halves. Absurd sizes give an empty drawing and never a panic.
#[must_use]
pub fn section_of(piece: &Piece) -> SectionDrawing {
    section(piece, false)
}

/// The drawing of a piece; `half_only` leaves the outside half away and puts the axis near the left edge.
#[must_use]
pub fn section(piece: &Piece, half_only: bool) -> SectionDrawing {
    let Some(outside) = drawn_outside(piece) else {
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
    let floor_wanted = wanted::floor(piece).mm.clamp(0.5, 0.9 * h);
    let floor = thinnest(piece, StationRef::Floor)
        .unwrap_or(floor_wanted)
        .clamp(0.5, 0.9 * h);
    let places = station_places(piece);
    let readings: Vec<WallAt> = places
        .iter()
        .filter_map(|(n, depth_mm, _)| {
            Some(WallAt {
                depth_mm: *depth_mm,
                wall_mm: thinnest(piece, StationRef::Wall(*n))?,
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
    let bore_of = |walls: &Walls, floor: f64| -> Vec<(f64, f64)> {
        let sizes = Sizes {
            height_mm: h,
            floor_depth_mm: h - floor,
            mouth_mm: Some(2.0 * mouth_r),
        };
        HalfSection::draw(&outside, walls, sizes, STEPS).map_or_else(
            |_| Vec::new(),
            |s| s.inner.iter().map(|p| (p.radius_mm, p.depth_mm)).collect(),
        )
    };
    // At the depth of the lowest reading, so that both turn into the floor alike.
    let wanted_walls = Walls::through(&[WallAt {
        depth_mm: readings.last().map_or(0.0, |r| r.depth_mm),
        wall_mm: wall_wanted,
    }]);
    let wanted_line = wanted_walls
        .map(|w| bore_of(&w, floor_wanted))
        .unwrap_or_default();
    let read = Walls::through(&readings).or_else(|_| Walls::even(wall_wanted));
    let bore = read.map(|w| bore_of(&w, floor)).unwrap_or_default();
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
        .through(bore.iter().rev().map(|q| right(*q)))
        .close()
        .finish();
    let void = p
        .move_to(right((0.0, 0.0)))
        .through(bore.iter().map(|q| right(*q)))
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
        bore: line(&bore, &right),
        wanted: dashed(
            &wanted_line.iter().map(|q| right(*q)).collect::<Vec<_>>(),
            &[5.0, 3.0].map(|d| d * dash),
        ),
        axis,
        half_only,
        stations,
        measured: !measured_diameters(piece).is_empty(),
        no_readings,
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
