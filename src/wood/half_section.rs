//! The half section as a drawing: outer and inner outline as points in mm, ticks across the wall, one true scale.
//!
//! Unlike the sums of [`crate::profile`] it draws any outside, however steep: the inner outline is what is left when every
//! point of the outside keeps its wall's thickness all round, so it never crosses itself. The mouth is cut straight down,
//! and the wall runs into the floor in one easy curve.

use std::f64::consts::PI;

use crate::outside::{Outside, Point};
use crate::profile::{FLOOR_DEPTH, HEIGHT, ProfileError};
use crate::wall::Walls;

/// Points along the outside that keep their wall, however many are drawn.
const KEEPERS: usize = 320;

/// What is to be drawn, all mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sizes {
    /// Height from rim to foot line.
    pub height_mm: f64,
    /// Depth of the floor from the rim.
    pub floor_depth_mm: f64,
    /// Opening, when it is known.
    pub mouth_mm: Option<f64>,
}

/// The cut half of a vessel, right of its axis.
#[derive(Debug, Clone, PartialEq)]
pub struct HalfSection {
    /// Outside, from the rim down to the foot line.
    pub outer: Vec<Point>,
    /// Inside, from the rim down to the middle of the floor on the axis.
    pub inner: Vec<Point>,
}

impl HalfSection {
    /// The half section of `outside` with `walls`, with `points` (at least 8) on the outside and as many inside. Two half
    /// sections with the same sizes and points have their inner points at the same depths, down to where the wall turns
    /// into the floor.
    ///
    /// # Errors
    /// [`ProfileError`] when a size is out of range or the floor lies below the foot line.
    pub fn draw(
        outside: &Outside,
        walls: &Walls,
        sizes: Sizes,
        points: usize,
    ) -> Result<Self, ProfileError> {
        let height = HEIGHT.check(sizes.height_mm)?;
        let floor = FLOOR_DEPTH.check(sizes.floor_depth_mm)?;
        if floor >= height {
            return Err(ProfileError::NoFloor {
                floor_mm: floor,
                height_mm: height,
            });
        }
        let n = points.clamp(8, 1000);
        let outer: Vec<Point> = (0..n)
            .map(|i| outside.point(height * eased(i, n - 1)))
            .collect();
        let keepers: Vec<(Point, f64)> = (0..=KEEPERS)
            .map(|i| {
                let depth = height * eased(i, KEEPERS);
                (outside.point(depth), walls.at(depth))
            })
            .collect();
        // Only those no farther away along the axis than the thickest wall can keep anything.
        let reach = keepers.iter().map(|k| k.1).fold(0.0, f64::max);
        let bore = |depth: f64| {
            let from = keepers.partition_point(|k| k.0.depth_mm < depth - reach);
            let to = keepers.partition_point(|k| k.0.depth_mm <= depth + reach);
            bore_radius(outside, walls, &keepers[from..to], depth)
        };
        // The wall turns into the floor over a sixth of the depth, less where the vessel is narrow there, and below the
        // deepest reading: what was read is drawn as it was read.
        let turn = (floor / 6.0).min(0.6 * bore(floor)).min(30.0);
        let deepest = outside.inward(walls.deepest_mm(), walls.at(walls.deepest_mm()));
        let corner = (floor - turn).max(deepest.depth_mm.min(floor - 0.25 * turn));
        let wall_points = n - n / 4;
        let mut inner: Vec<Point> = (0..wall_points)
            .map(|i| {
                let depth_mm = corner * eased(i, wall_points - 1);
                Point {
                    radius_mm: bore(depth_mm),
                    depth_mm,
                }
            })
            .collect();
        cut_mouth(&mut inner, sizes.mouth_mm, outer[0].radius_mm);
        let last = inner[wall_points - 1];
        let before = inner[wall_points - 2];
        let lean =
            (last.radius_mm - before.radius_mm) / (last.depth_mm - before.depth_mm).max(1e-9);
        inner.extend(turn_into_floor(last, lean.clamp(-1.5, 0.5), floor, n / 4));
        Ok(HalfSection { outer, inner })
    }

    /// Inside radius of the drawing at a depth, mm; 0 below the floor.
    pub fn inside_radius_mm(&self, depth_mm: f64) -> f64 {
        let after = self.inner.partition_point(|p| p.depth_mm < depth_mm);
        match (
            after.checked_sub(1).and_then(|i| self.inner.get(i)),
            self.inner.get(after),
        ) {
            (_, None) => 0.0,
            (None, Some(first)) => first.radius_mm,
            (Some(a), Some(b)) => {
                let span = b.depth_mm - a.depth_mm;
                let t = if span > 0.0 {
                    (depth_mm - a.depth_mm) / span
                } else {
                    1.0
                };
                a.radius_mm + t * (b.radius_mm - a.radius_mm)
            }
        }
    }
}

/// A tick across the wall at a station: from `over_mm` outside the outside to `over_mm` beyond the inner end of a wall of
/// `wall_mm`, square to the surface.
pub fn tick(outside: &Outside, depth_mm: f64, wall_mm: f64, over_mm: f64) -> [Point; 2] {
    [
        outside.inward(depth_mm, -over_mm),
        outside.inward(depth_mm, wall_mm + over_mm),
    ]
}

/// 0 to 1 in `n` steps, closer together at both ends.
fn eased(i: usize, n: usize) -> f64 {
    0.5 - 0.5 * (PI * i as f64 / n as f64).cos()
}

/// Radius at `depth` of what is left when each of the outside's points keeps its wall all round.
fn bore_radius(outside: &Outside, walls: &Walls, keepers: &[(Point, f64)], depth: f64) -> f64 {
    let own = outside.radius_mm(depth) - walls.at(depth);
    let kept = keepers.iter().filter_map(|(point, wall)| {
        let away = depth - point.depth_mm;
        (away.abs() < *wall).then(|| point.radius_mm - (wall * wall - away * away).sqrt())
    });
    kept.fold(own, f64::min).max(0.0)
}

/// Cuts the mouth straight down through what lies over the hollow.
fn cut_mouth(inner: &mut [Point], mouth_mm: Option<f64>, rim_radius: f64) {
    let Some(mouth) = mouth_mm else { return };
    let radius = (0.5 * mouth).min(rim_radius);
    // Only where the vessel opens out below the mouth: a mouth wider than the whole bore is not cut down to the floor.
    let Some(through) = inner.iter().position(|p| p.radius_mm >= radius) else {
        return;
    };
    for point in &mut inner[..through] {
        point.radius_mm = radius;
    }
}

/// One cubic from the wall's end to the middle of the floor, `n` points, the start left out.
fn turn_into_floor(from: Point, lean: f64, floor: f64, n: usize) -> Vec<Point> {
    let drop = floor - from.depth_mm;
    let first = (from.radius_mm + 0.8 * drop * lean).max(0.0);
    let radius = [from.radius_mm, first, 0.62 * from.radius_mm, 0.0];
    let depth = [from.depth_mm, from.depth_mm + 0.8 * drop, floor, floor];
    let at = |c: &[f64; 4], t: f64| {
        let u = 1.0 - t;
        u * u * u * c[0] + 3.0 * u * u * t * c[1] + 3.0 * u * t * t * c[2] + t * t * t * c[3]
    };
    (1..=n)
        .map(|i| {
            let t = i as f64 / n as f64;
            Point {
                radius_mm: at(&radius, t),
                depth_mm: at(&depth, t),
            }
        })
        .collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use crate::outline::Outline;
    use crate::wall::WallAt;
    use proptest::prelude::*;

    fn sizes(height_mm: f64, floor_mm: f64, mouth_mm: f64) -> Sizes {
        Sizes {
            height_mm,
            floor_depth_mm: height_mm - floor_mm,
            mouth_mm: Some(mouth_mm),
        }
    }

    #[test]
    fn a_cylinder_is_drawn_as_a_cylinder() {
        let outside = Outside::through(&[0.0, 120.0], &[60.0, 60.0]).unwrap();
        let section = HalfSection::draw(
            &outside,
            &Walls::even(10.0).unwrap(),
            sizes(120.0, 15.0, 100.0),
            64,
        )
        .unwrap();
        for depth in [0.0, 20.0, 55.0, 80.0] {
            assert!((section.inside_radius_mm(depth) - 50.0).abs() < 1e-9);
        }
        assert_eq!(
            section.inner.last(),
            Some(&Point {
                radius_mm: 0.0,
                depth_mm: 105.0
            })
        );
    }

    #[test]
    fn a_tick_crosses_the_wall_square() {
        let outside = Outline::Pear.scaled(140.0, 180.0, None, 10.0).unwrap();
        let [out, inn] = tick(&outside, 60.0, 10.0, 3.0);
        assert!((out.distance(&inn) - 16.0).abs() < 1e-9);
        assert!(out.radius_mm > inn.radius_mm);
    }

    #[test]
    fn a_wall_read_close_to_the_floor_is_drawn_as_it_was_read() {
        let outside = Outside::through(&[0.0, 120.0], &[60.0, 60.0]).unwrap();
        let read = [(10.0, 10.0), (60.0, 9.0), (98.0, 14.0)];
        let walls =
            Walls::through(&read.map(|(depth_mm, wall_mm)| WallAt { depth_mm, wall_mm })).unwrap();
        let section = HalfSection::draw(&outside, &walls, sizes(120.0, 15.0, 90.0), 400).unwrap();
        assert!((section.inside_radius_mm(98.0) - 46.0).abs() < 0.05);
        // The floor keeps a turn, however deep a wall is said to be read.
        let deeper = [(10.0, 10.0), (60.0, 10.0), (104.9, 10.0)];
        let walls = Walls::through(&deeper.map(|(depth_mm, wall_mm)| WallAt { depth_mm, wall_mm }))
            .unwrap();
        let section = HalfSection::draw(&outside, &walls, sizes(120.0, 15.0, 90.0), 400).unwrap();
        assert!(section.inside_radius_mm(103.0) < 49.0);
    }

    #[test]
    fn a_floor_below_the_foot_is_refused() {
        let outside = Outline::Ball.scaled(140.0, 140.0, None, 10.0).unwrap();
        let drawn = HalfSection::draw(
            &outside,
            &Walls::even(10.0).unwrap(),
            sizes(140.0, -2.0, 40.0),
            64,
        );
        assert!(matches!(drawn, Err(ProfileError::NoFloor { .. })));
    }

    proptest! {
        #[test]
        fn any_outline_and_size_draws_without_crossing_itself(
            which in 0usize..5, d in 60.0..350.0_f64, h in 60.0..400.0_f64, share in 0.04..0.12_f64
        ) {
            let wall = share * d.min(h);
            let outline = Outline::ALL[which];
            let outside = outline.scaled(d, h, None, wall).unwrap();
            let mouth = outline.usual_mouth_mm(d);
            let section =
                HalfSection::draw(&outside, &Walls::even(wall).unwrap(), sizes(h, wall + 2.0, mouth), 96).unwrap();
            for pair in section.inner.windows(2) {
                prop_assert!(pair[1].depth_mm >= pair[0].depth_mm - 1e-9);
            }
            for point in &section.inner {
                prop_assert!(point.radius_mm <= outside.radius_mm(point.depth_mm) + 1e-9);
                prop_assert!(point.radius_mm >= 0.0);
            }
        }

        #[test]
        fn the_wall_drawn_is_the_wall_read(which in 0usize..5, wall in 6.0..12.0_f64) {
            let outside = Outline::ALL[which].scaled(150.0, 180.0, None, wall).unwrap();
            let section =
                HalfSection::draw(&outside, &Walls::even(wall).unwrap(), sizes(180.0, 14.0, 50.0), 400).unwrap();
            for depth in [70.0, 90.0, 110.0] {
                let foot = outside.inward(depth, wall);
                prop_assert!((section.inside_radius_mm(foot.depth_mm) - foot.radius_mm).abs() < 0.05);
            }
        }
    }
}
