//! Walls read at depths, and the wall between them.

use crate::pchip::Pchip;
use crate::profile::ProfileError;
use crate::range::Range;

/// Thickness of a wall square to its surface, mm.
pub const WALL: Range = Range::new("wall", "mm", 0.1, 300.0);

/// A wall reading: how thick the wall is, square to its surface, where the outside is at that depth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallAt {
    /// Depth of the outer point from the rim along the axis, mm.
    pub depth_mm: f64,
    /// Thickness square to the surface, mm.
    pub wall_mm: f64,
}

/// Thickness (mm) over depth (mm): a shape-keeping cubic through the readings, constant beyond the first and the last.
#[derive(Debug, Clone, PartialEq)]
pub struct Walls {
    first: WallAt,
    last: WallAt,
    curve: Option<Pchip>,
}

impl Walls {
    /// The same wall all the way down.
    ///
    /// # Errors
    /// [`ProfileError::Range`] when the wall is outside [`WALL`].
    pub fn even(wall_mm: f64) -> Result<Self, ProfileError> {
        Walls::through(&[WallAt {
            depth_mm: 0.0,
            wall_mm,
        }])
    }

    /// The wall through one or more readings, depths rising.
    ///
    /// # Errors
    /// [`ProfileError`] when there is no reading, one is outside [`WALL`], or the depths are out of order.
    pub fn through(readings: &[WallAt]) -> Result<Self, ProfileError> {
        for reading in readings {
            WALL.check(reading.wall_mm)?;
            crate::outside::DEPTH.check(reading.depth_mm)?;
        }
        let (Some(first), Some(last)) = (readings.first(), readings.last()) else {
            return Err(ProfileError::NoWalls);
        };
        let curve = if readings.len() > 1 {
            let depths: Vec<f64> = readings.iter().map(|r| r.depth_mm).collect();
            let walls: Vec<f64> = readings.iter().map(|r| r.wall_mm).collect();
            Some(Pchip::through(&depths, &walls)?)
        } else {
            None
        };
        Ok(Walls {
            first: *first,
            last: *last,
            curve,
        })
    }

    /// Depth of the deepest reading, mm.
    pub fn deepest_mm(&self) -> f64 {
        self.last.depth_mm
    }

    /// The wall at a depth, mm.
    pub fn at(&self, depth_mm: f64) -> f64 {
        match &self.curve {
            Some(curve) => curve.value(depth_mm.clamp(self.first.depth_mm, self.last.depth_mm)),
            None => self.first.wall_mm,
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    #[test]
    fn one_reading_is_an_even_wall_and_several_are_met_and_held_beyond_the_ends() {
        assert_eq!(Walls::even(9.5).unwrap().at(500.0), 9.5);
        let readings = [(10.0, 9.0), (40.0, 12.0), (90.0, 8.0)];
        let walls =
            Walls::through(&readings.map(|(depth_mm, wall_mm)| WallAt { depth_mm, wall_mm }))
                .unwrap();
        for (depth, wall) in readings {
            assert_eq!(walls.at(depth), wall);
        }
        assert_eq!(walls.at(0.0), 9.0);
        assert_eq!(walls.at(200.0), 8.0);
    }

    #[test]
    fn no_reading_and_absurd_readings_are_refused() {
        assert_eq!(Walls::through(&[]), Err(ProfileError::NoWalls));
        assert!(matches!(Walls::even(0.0), Err(ProfileError::Range(_))));
        assert!(matches!(Walls::even(f64::NAN), Err(ProfileError::Range(_))));
    }
}
