//! Measured outlines as they are asked about: diameters, readings from the centre mark, points, ellipses, a green wall.

use std::f64::consts::TAU;

use evenwall_wood::fitted::{
    FROM_CENTRE, Periodic, bore_of, ellipse, from_angles, from_centre, from_diameters,
};
use evenwall_wood::own_shrinkage::MEASURED;
use evenwall_wood::section::{SECTION_RADIUS, Xy};
use evenwall_wood::wall::WALL;

use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must, usually};
use crate::refused::Refused;

/// Where a point or a centre may lie, mm.
pub const PLACE: Limits = Limits::new("mm", -2000.0, 2000.0);
/// Fewer points than this are joined by a smooth curve: chords between them would cut into the wood.
const FEW_POINTS: usize = 120;
/// Points of an ellipse, which is known exactly: 2880 are within 5e-5 mm of the curve.
const ELLIPSE_POINTS: usize = 2880;

const READING: &[Key] = &[
    must(
        "angle_deg",
        Kind::Number(Limits::new("deg", -3600.0, 3600.0)),
        "angle from the x axis",
    ),
    must(
        "radius_mm",
        Kind::Number(Limits::of(FROM_CENTRE)),
        "distance from the centre mark",
    ),
];

const DIAMETERS: Key = may(
    "diameters_mm",
    Kind::Numbers(Limits::of(MEASURED), Count::new(1, 64)),
    "diameters evenly spaced over half a turn, the first along x: one a circle, two an ellipse, more even harmonics",
);
const RADII: Key = may(
    "radii_mm",
    Kind::Numbers(Limits::of(FROM_CENTRE), Count::new(3, 360)),
    "distances from the centre mark evenly spaced once round, the first along x, counter-clockwise",
);
const READINGS: Key = may(
    "readings",
    Kind::Objects(READING, Count::new(3, 120)),
    "distances from the centre mark at any angles",
);
const POINTS: Key = may(
    "points_mm",
    Kind::Points(PLACE, Count::new(5, 2000)),
    "points once round; fewer than 120 are joined by a smooth curve about their middle, more are taken as they stand",
);
const SEMI_AXES: Key = may(
    "semi_axes_mm",
    Kind::Numbers(Limits::of(SECTION_RADIUS), Count::new(2, 2)),
    "an ellipse by its two half axes, the first along x",
);
const CENTRE: Key = may(
    "centre_mm",
    Kind::Point(PLACE),
    "moves the outline so that its mark or middle lies there; `[0, 0]` when left out",
);
const TURN: Key = usually(
    "turn_deg",
    Limits::new("deg", -3600.0, 3600.0),
    0.0,
    "turns the outline about its mark first, counter-clockwise",
);

/// The dried outside, one of five ways.
pub const OUTER: &[Key] = &[DIAMETERS, RADII, READINGS, POINTS, SEMI_AXES, CENTRE, TURN];

/// The dried bore, one of the same five ways or from the walls read green.
pub const BORE: &[Key] = &[
    DIAMETERS,
    RADII,
    READINGS,
    POINTS,
    SEMI_AXES,
    may(
        "green_walls_mm",
        Kind::OneOrMore(Limits::of(WALL), Count::new(1, 360)),
        "walls read green, evenly spaced once round the outside, the first along x: each goes the way of the wood; with \
         `green_diameter_mm`",
    ),
    may(
        "green_diameter_mm",
        Kind::Number(Limits::twice(SECTION_RADIUS)),
        "outside diameter as turned green",
    ),
    CENTRE,
    TURN,
];

const WAYS: [&str; 5] = [
    "diameters_mm",
    "radii_mm",
    "readings",
    "points_mm",
    "semi_axes_mm",
];

/// The outside and the bore of one station, as closed rows of points.
///
/// # Errors
/// [`Refused`] when an outline is given no way or more than one, or its readings give none.
pub fn pair(outer: &Asked<'_>, bore: &Asked<'_>) -> Result<(Vec<Xy>, Vec<Xy>), Refused> {
    let fitted = outline(outer)?;
    if !bore.has("green_walls_mm") {
        if bore.has("green_diameter_mm") {
            return Err(bore.missing("green_walls_mm"));
        }
        return Ok((placed(fitted, outer), placed(outline(bore)?, bore)));
    }
    let too_much = WAYS.into_iter().chain(["centre_mm"]).find(|k| bore.has(k));
    if let Some(key) = too_much.or_else(|| bore.has("turn_deg").then_some("turn_deg")) {
        return Err(Refused::together(format!(
            "`bore` has `green_walls_mm`, which follow the outside, and also `{key}`; leave one of them out"
        )));
    }
    let radius = 0.5 * bore.need("green_diameter_mm")?;
    let inner = bore_of(&fitted, radius, &bore.numbers("green_walls_mm"))?;
    // What follows the outside moves and turns with it.
    Ok((placed(fitted, outer), placed(inner, outer)))
}

/// The outline about its own mark, before it is turned and moved.
fn outline(asked: &Asked<'_>) -> Result<Vec<Xy>, Refused> {
    let ways: Vec<&str> = WAYS.into_iter().filter(|k| asked.has(k)).collect();
    let [way] = ways.as_slice() else {
        let also = if ways.is_empty() { "none" } else { "several" };
        return Err(Refused::together(format!(
            "{} needs its outline one way, but has {also}; give one of `{}`{}",
            asked.of(),
            WAYS.join("`, `"),
            if asked.of() == "`bore`" {
                ", or `green_walls_mm` with `green_diameter_mm`"
            } else {
                ""
            }
        )));
    };
    Ok(match *way {
        "diameters_mm" => match asked.numbers("diameters_mm").as_slice() {
            [one] => ellipse(*one, *one)?,
            [first, second] => ellipse(*first, *second)?,
            more => from_diameters(more)?.outline(),
        },
        "radii_mm" => from_centre(&asked.numbers("radii_mm"))?.outline(),
        "readings" => {
            let mut readings = Vec::new();
            for reading in asked.objects("readings") {
                readings.push((
                    reading.need("angle_deg")?.to_radians(),
                    reading.need("radius_mm")?,
                ));
            }
            from_angles(&readings)?.outline()
        }
        "points_mm" => through(&asked.points("points_mm"))?,
        _ => {
            let axes = asked.numbers("semi_axes_mm");
            let (a, b) = (axes[0], axes[1]);
            let angle = |i: usize| TAU * i as f64 / ELLIPSE_POINTS as f64;
            (0..ELLIPSE_POINTS)
                .map(|i| Xy::new(a * angle(i).cos(), b * angle(i).sin()))
                .collect()
        }
    })
}

/// The outline through points: as they stand when there are many, a smooth curve about their middle when there are few.
fn through(points: &[(f64, f64)]) -> Result<Vec<Xy>, Refused> {
    if points.len() >= FEW_POINTS {
        return Ok(points.iter().map(|&(x, y)| Xy::new(x, y)).collect());
    }
    let ends = |of: fn(&(f64, f64)) -> f64| {
        let (low, high) = points
            .iter()
            .map(of)
            .fold((f64::MAX, f64::MIN), |m, v| (m.0.min(v), m.1.max(v)));
        0.5 * (low + high)
    };
    let middle = Xy::new(ends(|p| p.0), ends(|p| p.1));
    let readings: Vec<(f64, f64)> = points
        .iter()
        .map(|&(x, y)| {
            let (x, y) = (x - middle.x, y - middle.y);
            (y.atan2(x), x.hypot(y))
        })
        .collect();
    let curve: Periodic = from_angles(&readings)?;
    Ok(moved(curve.outline(), 0.0, (middle.x, middle.y)))
}

fn placed(points: Vec<Xy>, asked: &Asked<'_>) -> Vec<Xy> {
    let turn = asked.number("turn_deg").unwrap_or(0.0).to_radians();
    moved(points, turn, asked.point("centre_mm").unwrap_or((0.0, 0.0)))
}

fn moved(points: Vec<Xy>, turn: f64, by: (f64, f64)) -> Vec<Xy> {
    let (s, c) = turn.sin_cos();
    points
        .into_iter()
        .map(|p| Xy::new(c * p.x - s * p.y + by.0, s * p.x + c * p.y + by.1))
        .collect()
}
