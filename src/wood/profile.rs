//! A vessel as a body of revolution: outside, bore, and what follows from them (volume, capacity, area, centre, weight).
//!
//! The bore goes through the points a wall's thickness inward from the outside, square to the surface; the floor is a
//! flat disc at its measured depth. With seven stations the wood of a round vessel comes out about 1 % low, which is far
//! less than the 8 to 10 % by which a table's density misses a given piece: an expected weight is good to about 10 %.

use std::f64::consts::PI;
use std::fmt;

use crate::outside::Outside;
use crate::pchip::{Pchip, PchipError};
use crate::quadrature::piecewise;
use crate::range::{Range, RangeError};
use crate::wall::{WallAt, Walls};

/// Height from the rim to the foot line, mm, the spigot not counted.
pub const HEIGHT: Range = Range::new("height from rim to foot line", "mm", 5.0, 2000.0);
/// Depth of the floor from the rim, mm.
pub const FLOOR_DEPTH: Range = Range::new("depth of the floor from the rim", "mm", 1.0, 2000.0);
/// Slope of the outside (mm of radius per mm of depth) from which a radius over depth no longer tells the surface.
pub const STEEPEST: f64 = 3.0;
/// Basic density, kg of oven-dry wood per m3 of green wood.
pub const DENSITY: Range = Range::new("basic density", "kg/m3", 80.0, 1300.0);
/// A mass on the scale, g.
pub const MASS: Range = Range::new("weight", "g", 0.1, 1.0e6);

/// Why figures make no vessel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ProfileError {
    /// A figure lies outside its range.
    Range(RangeError),
    /// The stations make no curve.
    Stations(PchipError),
    /// There is no wall reading at all.
    NoWalls,
    /// A station lies below the foot line.
    BelowFoot {
        /// Depth of the station, mm.
        depth_mm: f64,
        /// Height from rim to foot line, mm.
        height_mm: f64,
    },
    /// The floor lies at or below the foot line.
    NoFloor {
        /// Depth of the floor, mm.
        floor_mm: f64,
        /// Height from rim to foot line, mm.
        height_mm: f64,
    },
    /// The outside is too near square to the axis for these sums.
    TooSteep {
        /// Where, mm from the rim.
        depth_mm: f64,
        /// The slope found there, mm per mm.
        slope: f64,
    },
    /// The outside closes on the axis above the foot line.
    OutsideCloses {
        /// Where, mm from the rim.
        depth_mm: f64,
    },
    /// The wall leaves no bore.
    NoBore {
        /// Where, mm from the rim.
        depth_mm: f64,
    },
    /// The wall is thicker than the curve of the outside allows: the inner points pass one another.
    TighterThanWall {
        /// Where on the outside, mm from the rim.
        depth_mm: f64,
    },
    /// The bore breaks through the outside.
    ThroughTheSide {
        /// Where, mm from the rim.
        depth_mm: f64,
    },
}

impl fmt::Display for ProfileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ProfileError::Range(e) => e.fmt(f),
            ProfileError::Stations(e) => e.fmt(f),
            ProfileError::NoWalls => write!(
                f,
                "no wall has been read, and one at least is needed; measure a station"
            ),
            ProfileError::BelowFoot {
                depth_mm,
                height_mm,
            } => write!(
                f,
                "a station lies {depth_mm:.1} mm deep, but the foot line is at {height_mm:.1} mm; check depth and height"
            ),
            ProfileError::NoFloor {
                floor_mm,
                height_mm,
            } => write!(
                f,
                "the floor is {floor_mm:.1} mm deep, but must lie above the foot line at {height_mm:.1} mm; \
                 measure the depth again"
            ),
            ProfileError::TooSteep { depth_mm, slope } => write!(
                f,
                "at {depth_mm:.1} mm the outside changes {slope:.1} mm in radius for each mm of depth, and these sums hold \
                 to 3; leave that station out"
            ),
            ProfileError::OutsideCloses { depth_mm } => write!(
                f,
                "the outside would close at {depth_mm:.1} mm, above the foot line; measure a diameter nearer the foot"
            ),
            ProfileError::NoBore { depth_mm } => write!(
                f,
                "at {depth_mm:.1} mm the wall is as thick as the radius and leaves no hollow; check wall and diameter"
            ),
            ProfileError::TighterThanWall { depth_mm } => write!(
                f,
                "at {depth_mm:.1} mm the wall is thicker than the curve of the outside allows; check that wall, \
                 or measure more diameters there"
            ),
            ProfileError::ThroughTheSide { depth_mm } => write!(
                f,
                "at {depth_mm:.1} mm the hollow would come through the outside; check the walls and diameters there"
            ),
        }
    }
}

impl std::error::Error for ProfileError {}

impl From<RangeError> for ProfileError {
    fn from(e: RangeError) -> Self {
        ProfileError::Range(e)
    }
}

impl From<PchipError> for ProfileError {
    fn from(e: PchipError) -> Self {
        ProfileError::Stations(e)
    }
}

/// One station measured in full.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Depth from the rim along the axis, mm.
    pub depth_mm: f64,
    /// Outside diameter there, mm.
    pub diameter_mm: f64,
    /// Wall square to the surface there, mm.
    pub wall_mm: f64,
}

/// A hollow vessel: outside and bore as radii over the depth.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    outside: Outside,
    bore: Pchip,
    height_mm: f64,
    floor_mm: f64,
}

impl Profile {
    /// A vessel from stations measured in full, its height from rim to foot line and the depth of its floor, all mm.
    ///
    /// # Errors
    /// [`ProfileError`] with the reason why the figures make no vessel.
    pub fn through(
        stations: &[Station],
        height_mm: f64,
        floor_depth_mm: f64,
    ) -> Result<Self, ProfileError> {
        let depths: Vec<f64> = stations.iter().map(|s| s.depth_mm).collect();
        let radii: Vec<f64> = stations.iter().map(|s| 0.5 * s.diameter_mm).collect();
        let walls: Vec<WallAt> = stations
            .iter()
            .map(|s| WallAt {
                depth_mm: s.depth_mm,
                wall_mm: s.wall_mm,
            })
            .collect();
        let outside = Outside::through(&depths, &radii)?;
        Profile::new(outside, &Walls::through(&walls)?, height_mm, floor_depth_mm)
    }

    /// A vessel from an outside and its walls, its height from rim to foot line and the depth of its floor, all mm.
    ///
    /// # Errors
    /// [`ProfileError`] with the reason why the figures make no vessel.
    pub fn new(
        outside: Outside,
        walls: &Walls,
        height_mm: f64,
        floor_depth_mm: f64,
    ) -> Result<Self, ProfileError> {
        HEIGHT.check(height_mm)?;
        FLOOR_DEPTH.check(floor_depth_mm)?;
        if floor_depth_mm >= height_mm {
            return Err(ProfileError::NoFloor {
                floor_mm: floor_depth_mm,
                height_mm,
            });
        }
        let mut inner_depth = Vec::new();
        let mut inner_radius = Vec::new();
        for &depth_mm in outside.depths_mm() {
            if depth_mm > height_mm {
                return Err(ProfileError::BelowFoot {
                    depth_mm,
                    height_mm,
                });
            }
            let slope = outside.slope(depth_mm);
            if slope.abs() >= STEEPEST {
                return Err(ProfileError::TooSteep { depth_mm, slope });
            }
            let point = outside.inward(depth_mm, walls.at(depth_mm));
            if point.radius_mm <= 0.0 {
                return Err(ProfileError::NoBore { depth_mm });
            }
            if inner_depth
                .last()
                .is_some_and(|last| point.depth_mm <= *last)
            {
                return Err(ProfileError::TighterThanWall { depth_mm });
            }
            inner_depth.push(point.depth_mm);
            inner_radius.push(point.radius_mm);
        }
        let bore = Pchip::through(&inner_depth, &inner_radius)?;
        let profile = Profile {
            outside,
            bore,
            height_mm,
            floor_mm: floor_depth_mm,
        };
        profile.check_between()?;
        Ok(profile)
    }

    /// The checks that need the whole length and not only the stations.
    fn check_between(&self) -> Result<(), ProfileError> {
        for i in 0..=200 {
            let depth_mm = self.height_mm * f64::from(i) / 200.0;
            let outer = self.outside.radius_mm(depth_mm);
            if outer <= 0.0 {
                return Err(ProfileError::OutsideCloses { depth_mm });
            }
            if depth_mm > self.floor_mm {
                continue;
            }
            let inner = self.bore.value(depth_mm);
            if inner <= 0.0 {
                return Err(ProfileError::NoBore { depth_mm });
            }
            if inner >= outer {
                return Err(ProfileError::ThroughTheSide { depth_mm });
            }
        }
        Ok(())
    }

    /// The outside.
    pub fn outside(&self) -> &Outside {
        &self.outside
    }

    /// Radius of the bore at a depth, mm.
    pub fn bore_radius_mm(&self, depth_mm: f64) -> f64 {
        self.bore.value(depth_mm).max(0.0)
    }

    /// Height from rim to foot line, mm.
    pub fn height_mm(&self) -> f64 {
        self.height_mm
    }

    /// Depth of the floor from the rim, mm.
    pub fn floor_depth_mm(&self) -> f64 {
        self.floor_mm
    }

    /// The points of the bore that belong to the stations, rim to foot.
    pub fn bore_points(&self) -> Vec<crate::outside::Point> {
        let pairs = self.bore.knots().iter().zip(self.bore.values());
        pairs
            .map(|(&depth_mm, &radius_mm)| crate::outside::Point {
                radius_mm,
                depth_mm,
            })
            .collect()
    }

    /// Integral of depth^`power` pi r^2 over the outside or the bore, in powers of mm. Exact for these curves.
    fn moment(&self, bore: bool, power: i32) -> f64 {
        let (knots, to) = if bore {
            (self.bore.knots(), self.floor_mm)
        } else {
            (self.outside.depths_mm(), self.height_mm)
        };
        piecewise(0.0, to, knots, 1, |z| {
            let r = if bore {
                self.bore.value(z)
            } else {
                self.outside.radius_mm(z)
            };
            PI * r * r * z.powi(power)
        })
    }

    /// Volume inside the outside, rim to foot line, cm3.
    pub fn outer_volume_cm3(&self) -> f64 {
        self.moment(false, 0) / 1000.0
    }

    /// What the hollow holds to the rim, ml.
    pub fn capacity_ml(&self) -> f64 {
        self.moment(true, 0) / 1000.0
    }

    /// Volume of the wood without the spigot, cm3.
    pub fn wood_cm3(&self) -> f64 {
        self.outer_volume_cm3() - self.capacity_ml()
    }

    /// Depth of the centre of mass of the wood below the rim, mm.
    pub fn centre_of_mass_mm(&self) -> f64 {
        (self.moment(false, 1) - self.moment(true, 1)) / (1000.0 * self.wood_cm3())
    }

    /// Area of the outside without rim and base, cm2.
    pub fn outside_area_cm2(&self) -> f64 {
        let area = piecewise(0.0, self.height_mm, self.outside.depths_mm(), 8, |z| {
            2.0 * PI * self.outside.radius_mm(z) * self.outside.slope(z).hypot(1.0)
        });
        area / 100.0
    }

    /// Area of the bore with its floor disc, cm2.
    pub fn inside_area_cm2(&self) -> f64 {
        let side = piecewise(0.0, self.floor_mm, self.bore.knots(), 8, |z| {
            2.0 * PI * self.bore.value(z) * self.bore.derivative(z).hypot(1.0)
        });
        (side + PI * self.bore.value(self.floor_mm).powi(2)) / 100.0
    }

    /// Expected weight (g) at `moisture` (fraction), for wood of `basic_density` kg/m3: green volume times density times
    /// (1 + moisture). Good to about 10 %, because a piece differs from its table.
    ///
    /// # Errors
    /// [`RangeError`] outside [`DENSITY`] or [`crate::moisture::MOISTURE`].
    pub fn expected_mass_g(&self, basic_density: f64, moisture: f64) -> Result<f64, RangeError> {
        let density = DENSITY.check(basic_density)?;
        let moisture = crate::moisture::MOISTURE.check(moisture)?;
        Ok(self.wood_cm3() * density / 1000.0 * (1.0 + moisture))
    }

    /// Moisture (fraction) at which the vessel weighs `mass_g`, for wood of `basic_density` kg/m3; below 0 when the wood
    /// is lighter than its table. The density's 10 % is 14 points of moisture in green wood: only a late weighing pins it.
    ///
    /// # Errors
    /// [`RangeError`] outside [`DENSITY`] or [`MASS`].
    pub fn moisture_from_mass(&self, mass_g: f64, basic_density: f64) -> Result<f64, RangeError> {
        let density = DENSITY.check(basic_density)?;
        Ok(MASS.check(mass_g)? / (self.wood_cm3() * density / 1000.0) - 1.0)
    }
}
