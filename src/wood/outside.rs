//! The outside of a vessel as a radius over the depth from the rim.
//!
//! A shape-keeping cubic through stations, going on straight beyond the first and the last. It cannot stand for a surface
//! square to the axis (a closed shoulder, the bottom of a ball): sums refuse slopes of 3 and more, drawings do not.

use crate::pchip::Pchip;
use crate::profile::ProfileError;
use crate::range::Range;

/// Depth from the rim along the axis, mm.
pub const DEPTH: Range = Range::new("depth from the rim", "mm", 0.0, 2000.0);
/// Radius of the outside, mm: half a diameter of 2 mm to 2 m.
pub const RADIUS: Range = Range::new("outside radius", "mm", 1.0, 1000.0);

/// A point of a half section: distance from the axis and depth from the rim, both mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Distance from the axis, mm.
    pub radius_mm: f64,
    /// Depth from the rim, mm, growing towards the foot.
    pub depth_mm: f64,
}

impl Point {
    /// Distance to `other`, mm.
    pub fn distance(&self, other: &Point) -> f64 {
        (self.radius_mm - other.radius_mm).hypot(self.depth_mm - other.depth_mm)
    }
}

/// The outside radius (mm) over the depth from the rim (mm).
#[derive(Debug, Clone, PartialEq)]
pub struct Outside {
    curve: Pchip,
}

impl Outside {
    /// The outside through stations at `depth_mm` (rising, from the rim) with radii `radius_mm`.
    ///
    /// # Errors
    /// [`ProfileError`] when a figure is out of [`DEPTH`] or [`RADIUS`], or the stations are out of order or fewer than two.
    pub fn through(depth_mm: &[f64], radius_mm: &[f64]) -> Result<Self, ProfileError> {
        for depth in depth_mm {
            DEPTH.check(*depth)?;
        }
        for radius in radius_mm {
            RADIUS.check(*radius)?;
        }
        Ok(Outside {
            curve: Pchip::through(depth_mm, radius_mm)?,
        })
    }

    /// Depths of the stations it goes through, mm.
    pub fn depths_mm(&self) -> &[f64] {
        self.curve.knots()
    }

    /// Radius at a depth, mm, never below 0.
    pub fn radius_mm(&self, depth_mm: f64) -> f64 {
        self.curve.value(depth_mm).max(0.0)
    }

    /// Slope of the radius at a depth, mm per mm.
    pub fn slope(&self, depth_mm: f64) -> f64 {
        self.curve.derivative(depth_mm)
    }

    /// The widest radius between the rim and `height_mm`, mm, looked for at 200 places and at the stations.
    pub fn widest_mm(&self, height_mm: f64) -> f64 {
        let grid = (0..=200).map(|i| self.radius_mm(height_mm * f64::from(i) / 200.0));
        grid.chain(self.curve.values().iter().copied())
            .fold(0.0, f64::max)
    }

    /// The point of the outside at a depth.
    pub fn point(&self, depth_mm: f64) -> Point {
        Point {
            radius_mm: self.radius_mm(depth_mm),
            depth_mm,
        }
    }

    /// The point `wall_mm` inward from the outside at `depth_mm`, square to the surface: where a calliper's inner tip is.
    pub fn inward(&self, depth_mm: f64, wall_mm: f64) -> Point {
        let m = self.slope(depth_mm);
        let q = m.hypot(1.0);
        Point {
            radius_mm: self.curve.value(depth_mm) - wall_mm / q,
            depth_mm: depth_mm + wall_mm * m / q,
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    #[test]
    fn inward_is_square_to_the_surface_and_as_long_as_the_wall() {
        let outside =
            Outside::through(&[0.0, 30.0, 70.0, 120.0], &[30.0, 55.0, 60.0, 35.0]).unwrap();
        for depth in [0.0, 12.0, 30.0, 66.0, 118.0] {
            let (out, inn) = (outside.point(depth), outside.inward(depth, 9.0));
            assert!((out.distance(&inn) - 9.0).abs() < 1e-12);
            let along =
                (inn.radius_mm - out.radius_mm) * outside.slope(depth) + (inn.depth_mm - depth);
            assert!(along.abs() < 1e-12);
        }
    }

    #[test]
    fn absurd_stations_are_refused() {
        assert!(matches!(
            Outside::through(&[0.0, -1.0], &[30.0, 30.0]),
            Err(ProfileError::Range(_))
        ));
        assert!(matches!(
            Outside::through(&[0.0, 10.0], &[30.0, 0.0]),
            Err(ProfileError::Range(_))
        ));
        assert!(matches!(
            Outside::through(&[10.0, 0.0], &[30.0, 30.0]),
            Err(ProfileError::Stations(_))
        ));
    }
}
