//! Walls: a piece as the drying model sees it: its stations with what each stands for, its floor and its spigot.
//!
//! Readings count where there are any, between and beyond them the nearest; without readings the wall wanted. What the outside
//! does between the stations follows the measured diameters, or the outline picked.

use std::f64::consts::PI;

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::Grain;
use evenwall_piece::wanted;
use evenwall_wood::drying::Wall;
use evenwall_wood::drying::wood::{SIDE_GRAIN, grain_factor};
use evenwall_wood::outside::Outside;
use evenwall_wood::wall::{WallAt, Walls};

use crate::drawing::{drawn_outside, station_places};

/// Freedom of the inside where the mouth is narrow: the air in there changes slowly. Own judgement, no source.
const NARROW_BORE: f64 = 0.5;
/// A mouth below this share of the diameter is narrow. Own judgement, no source.
const NARROW_MOUTH: f64 = 0.5;
/// Stretches over which the area of a station is summed.
const STRETCHES: u32 = 12;

/// How well the size of a piece is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sized {
    /// At least three diameters were measured.
    Measured,
    /// Diameter and height were said, the outline picked.
    Said,
    /// Neither: only the walls tell.
    Unsaid,
}

/// A piece's walls for the drying model.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// The stations from the mouth, then the floor round the spigot, then floor and spigot together.
    pub walls: Vec<Wall>,
    /// What each of them is.
    pub stations: Vec<StationRef>,
    /// How well the size is known.
    pub sized: Sized,
    /// True where at least one wall was read.
    pub read: bool,
}

/// The mean of the last readings at a station.
fn mean_read(piece: &Piece, station: StationRef) -> Option<f64> {
    let read: Vec<f64> = piece
        .readings_round(station)
        .iter()
        .filter_map(|r| r.reading.wall_mm.as_ref())
        .map(|m| m.value)
        .filter(|v| v.is_finite() && *v > 0.0)
        .collect();
    (!read.is_empty()).then(|| read.iter().sum::<f64>() / read.len() as f64)
}

/// Area of the middle of the wall between two depths, cm2.
fn area_cm2(outside: &Outside, from_mm: f64, to_mm: f64, wall_mm: f64) -> f64 {
    let step = (to_mm - from_mm).max(0.1) / f64::from(STRETCHES);
    let sum: f64 = (0..STRETCHES)
        .map(|i| {
            let depth = from_mm + step * (f64::from(i) + 0.5);
            let along = outside.slope(depth).hypot(1.0);
            let middle = (outside.radius_mm(depth) - 0.5 * wall_mm / along).max(1.0);
            2.0 * PI * middle * along * step
        })
        .sum();
    (0.01 * sum).max(0.1)
}

/// Most walls that a fit reckons with: more would cost time and change a forecast by less than its own error.
const MOST_WALLS: usize = 4;

/// How slowly a wall dries, as a logarithm: by the square of its thickness over its grain.
fn slowness(wall: &Wall) -> f64 {
    (wall.thickness_mm.powi(2) / wall.grain).ln()
}

/// The same wood in fewer walls: those nearest in how slowly they dry are taken together, their volume kept. The slowest stays
/// by itself as long as others are nearer to each other.
#[must_use]
pub fn taken_together(walls: &[Wall]) -> Vec<Wall> {
    let mut together = walls.to_vec();
    together.sort_by(|a, b| slowness(a).total_cmp(&slowness(b)));
    while together.len() > MOST_WALLS {
        let gap = |i: &usize| slowness(&together[i + 1]) - slowness(&together[*i]);
        let nearest = (0..together.len() - 1).min_by(|a, b| gap(a).total_cmp(&gap(b)));
        let Some(at) = nearest else { break };
        let (a, b) = (together[at], together.remove(at + 1));
        let area_cm2 = a.area_cm2 + b.area_cm2;
        let mean = |x: f64, y: f64| (x * a.area_cm2 + y * b.area_cm2) / area_cm2;
        together[at] = Wall {
            area_cm2,
            thickness_mm: mean(a.thickness_mm, b.thickness_mm),
            grain: mean(a.grain.ln(), b.grain.ln()).exp(),
            faces: [mean(a.faces[0], b.faces[0]), mean(a.faces[1], b.faces[1])],
        };
    }
    together
}

/// The walls of a piece; `None` where its sizes give no outside at all.
#[must_use]
pub fn shape_of(piece: &Piece) -> Option<Shape> {
    let outside = drawn_outside(piece)?;
    let height = wanted::height(piece).mm;
    let places = station_places(piece);
    let readings: Vec<WallAt> = places
        .iter()
        .filter_map(|(n, depth_mm, _)| {
            Some(WallAt {
                depth_mm: *depth_mm,
                wall_mm: mean_read(piece, StationRef::Wall(*n))?,
            })
        })
        .collect();
    let read = !readings.is_empty();
    let walls = Walls::through(&readings)
        .or_else(|_| Walls::even(wanted::rough_wall(piece).mm))
        .ok()?;
    let floor = mean_read(piece, StationRef::Floor)
        .unwrap_or(wanted::floor(piece).mm)
        .clamp(1.0, 0.8 * height);
    let side = piece.details.grain() == Grain::Side;
    let diameter = wanted::diameter(piece).mm;
    let narrow = piece
        .details
        .mm(DetailField::Mouth)
        .is_some_and(|m| m < NARROW_MOUTH * diameter);
    let faces = [1.0, if narrow { NARROW_BORE } else { 1.0 }];
    let floor_depth = height - floor;
    let mut shape = Shape {
        walls: Vec::with_capacity(places.len() + 2),
        stations: Vec::with_capacity(places.len() + 2),
        sized: sized(piece),
        read,
    };
    for (i, (n, depth, _)) in places.iter().enumerate() {
        let before = i
            .checked_sub(1)
            .map_or(0.0, |b| 0.5 * (places[b].1 + depth));
        let after = places
            .get(i + 1)
            .map_or(floor_depth, |a| 0.5 * (a.1 + depth))
            .min(floor_depth);
        let thickness_mm = walls.at(*depth).clamp(0.5, 200.0);
        let lean = outside.slope(*depth).abs().atan().to_degrees();
        shape.walls.push(Wall {
            thickness_mm,
            area_cm2: area_cm2(&outside, before.min(after), after, thickness_mm),
            grain: if side {
                SIDE_GRAIN
            } else {
                grain_factor(lean).unwrap_or(1.0)
            },
            faces,
        });
        shape.stations.push(StationRef::Wall(*n));
    }
    // The floor of an end-grain piece gives water off along the grain, that of a side-grain one across it.
    let grain = if side {
        1.0
    } else {
        grain_factor(90.0).unwrap_or(1.0)
    };
    let foot = outside.radius_mm(0.5 * (floor_depth + height)).max(2.0);
    let spigot = spigot_of(piece, foot);
    for (inner, outer, thickness_mm) in [
        (spigot.map_or(0.0, |s| s.0), foot, floor),
        (
            0.0,
            spigot.map_or(0.0, |s| s.0),
            floor + spigot.map_or(0.0, |s| s.1),
        ),
    ] {
        let area_cm2 = 0.01 * PI * (outer * outer - inner * inner);
        if area_cm2 > 0.5 {
            shape.walls.push(Wall {
                thickness_mm: thickness_mm.clamp(0.5, 200.0),
                area_cm2,
                grain,
                faces,
            });
            shape.stations.push(StationRef::Floor);
        }
    }
    Some(shape)
}

/// Radius and length of the spigot, where one was cut.
fn spigot_of(piece: &Piece, foot_mm: f64) -> Option<(f64, f64)> {
    let radius = 0.5 * piece.details.mm(DetailField::SpigotDiameter)?;
    let length = piece
        .details
        .mm(DetailField::SpigotLength)
        .unwrap_or(evenwall_wood::spigot::USUAL_LENGTH_MM);
    Some((radius.clamp(1.0, foot_mm), length.clamp(0.0, 100.0)))
}

fn sized(piece: &Piece) -> Sized {
    if piece.diameters.len() >= 3 && piece.details.mm(DetailField::Height).is_some() {
        Sized::Measured
    } else if piece.details.mm(DetailField::Diameter).is_some()
        && piece.details.mm(DetailField::Height).is_some()
    {
        Sized::Said
    } else {
        Sized::Unsaid
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn walls_taken_together_are_as_much_wood_and_the_slowest_stays() {
        let mut walls: Vec<Wall> = (0..7)
            .map(|i| Wall::plain(9.0 + 0.5 * f64::from(i), 60.0 + f64::from(i)))
            .collect();
        walls.push(Wall {
            grain: 10.0,
            ..Wall::plain(12.0, 40.0)
        });
        walls.push(Wall::plain(24.0, 12.0));
        let together = taken_together(&walls);
        assert_eq!(together.len(), MOST_WALLS);
        let volume = |walls: &[Wall]| walls.iter().map(Wall::volume_cm3).sum::<f64>();
        assert!((volume(&together) / volume(&walls) - 1.0).abs() < 1e-12);
        assert_eq!(together.last(), walls.last());
        assert_eq!(taken_together(&walls[..3]), walls[..3]);
    }
}
