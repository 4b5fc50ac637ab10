//! What dries, where and how: the walls, the wood, and the phases of its drying.

use std::fmt;

use super::climate::{Climate, ClimateError};
use super::wood::Wood;
use crate::moisture::MOISTURE;
use crate::range::{Range, RangeError};

/// Thickness of a wall or floor, mm.
pub const THICKNESS: Range = Range::new("thickness of the wall", "mm", 0.5, 200.0);
/// Area of one face of a wall, cm2.
pub const AREA: Range = Range::new("area of the wall's face", "cm2", 0.01, 100_000.0);
/// How freely a face gives off water, of the free air of the phase: 0 sealed, 1 free.
pub const FACE: Range = Range::new("freedom of a face", "", 0.0, 2.0);
/// Grain factor of a wall.
pub const GRAIN: Range = Range::new("grain factor", "", 0.1, 30.0);
/// Conductance of a bag: leakage and turning together, m3/s.
pub const BAG: Range = Range::new("conductance of the bag", "m3/s", 1.0e-9, 1.0e-1);
/// Share of the free air's exchange that a cover lets through.
pub const COVER: Range = Range::new("share a cover lets through", "", 1.0e-4, 2.0);

/// Exchange of a face with the air about it.
pub const EXCHANGE: Range = Range::new("exchange of a face with the air", "m/s", 1.0e-6, 0.1);

/// Exchange of a face with open air, m/s. Falls out of weighed pieces as an order of magnitude; no published number.
pub const OPEN_AIR: f64 = 2.5e-3;
/// Share of [`OPEN_AIR`] in still air, a cupboard: 1e-3 m/s. From memory, an order of magnitude.
pub const STILL: f64 = 0.4;
/// Share in a paper bag. From memory, an order of magnitude.
pub const PAPER: f64 = 0.25;
/// Share under shavings. From memory, an order of magnitude.
pub const SHAVINGS: f64 = 0.1;
/// Share through a coat of wax. From memory, an order of magnitude.
pub const WAX: f64 = 0.05;
/// A bag that loses 8 g a day at 18 C and a deficit of 0.4, m3/s: a habit of turning, not a property of the wood. Common
/// practice, no source.
pub const USUAL_BAG: f64 = 1.510_502e-5;

/// One wall: a station of the piece, its floor or its spigot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// Thickness green, mm, in [`THICKNESS`].
    pub thickness_mm: f64,
    /// Area of one face that this station stands for, cm2, in [`AREA`]; its share of the wood is area times thickness.
    pub area_cm2: f64,
    /// Grain factor, see [`super::wood::grain_factor`]; in [`GRAIN`].
    pub grain: f64,
    /// Freedom of outside and inside, in [`FACE`]: 1 free, 0 sealed, less than 1 for a bore the air hardly reaches.
    pub faces: [f64; 2],
}

impl Wall {
    /// A wall of a cylinder in end grain, both faces free.
    pub fn plain(thickness_mm: f64, area_cm2: f64) -> Self {
        Wall {
            thickness_mm,
            area_cm2,
            grain: 1.0,
            faces: [1.0, 1.0],
        }
    }

    /// Wood of this station, cm3 green.
    pub fn volume_cm3(&self) -> f64 {
        0.1 * self.thickness_mm * self.area_cm2
    }
}

/// How it dries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Way {
    /// Open to the room.
    Open,
    /// Together in one bag, whose air follows from the wood: conductance in m3/s, in [`BAG`].
    Bag(f64),
    /// Under paper, wax, shavings or a lid: this share of the free air's exchange, in [`COVER`].
    Cover(f64),
}

/// A stretch of drying in one way and place; it ends where the next begins.
#[derive(Debug, Clone, PartialEq)]
pub struct Phase {
    /// First day, on the piece's own count.
    pub from_day: f64,
    /// How.
    pub way: Way,
    /// Where: the climate of the room around piece or bag.
    pub climate: Climate,
}

/// A piece as the drying model sees it.
#[derive(Debug, Clone, PartialEq)]
pub struct Case {
    /// Its wood.
    pub wood: Wood,
    /// Its walls, floor and spigot; at least one.
    pub walls: Vec<Wall>,
    /// Phases in order of time, at least one. The first also holds before its day. Phases may lie in the future.
    pub phases: Vec<Phase>,
}

/// Multipliers on the usual figures, as a fit of weighings finds them. All 1 and shift 0: nothing known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tuning {
    /// On the diffusivity.
    pub diffusion: f64,
    /// On the exchange of the faces with the air, in every phase; an exchange of h m/s is h over [`OPEN_AIR`].
    pub surface: f64,
    /// On the conductance of the bag, or on what a cover lets through.
    pub habit: f64,
    /// Added to every humidity read, fraction.
    pub humidity: f64,
}

impl Default for Tuning {
    fn default() -> Self {
        Tuning {
            diffusion: 1.0,
            surface: 1.0,
            habit: 1.0,
            humidity: 0.0,
        }
    }
}

/// Why a case cannot be worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DryingError {
    /// A figure lies outside its range.
    Range(RangeError),
    /// The readings make no climate.
    Climate(ClimateError),
    /// There is no wall.
    NoWall,
    /// There is no phase.
    NoPhase,
    /// A phase begins before the one it follows.
    PhasesOutOfOrder {
        /// The day before.
        before: f64,
        /// The earlier day that follows.
        then: f64,
    },
    /// A day asked for is no number, or lies before the one asked for before it.
    Days {
        /// The day.
        day: f64,
    },
}

impl fmt::Display for DryingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            DryingError::Range(e) => e.fmt(f),
            DryingError::Climate(e) => e.fmt(f),
            DryingError::NoWall => write!(f, "the piece has no wall to dry; measure at least one"),
            DryingError::NoPhase => {
                write!(f, "no way of drying is given; say how and where it dries")
            }
            DryingError::PhasesOutOfOrder { before, then } => write!(
                f,
                "the phase of day {then} follows that of day {before}; put the phases in order of time"
            ),
            DryingError::Days { day } => write!(
                f,
                "day {day} is asked for out of order or is no number; ask for days in order of time"
            ),
        }
    }
}

impl std::error::Error for DryingError {}

impl From<RangeError> for DryingError {
    fn from(e: RangeError) -> Self {
        DryingError::Range(e)
    }
}

impl From<ClimateError> for DryingError {
    fn from(e: ClimateError) -> Self {
        DryingError::Climate(e)
    }
}

impl Case {
    /// Says whether every figure is legal.
    ///
    /// # Errors
    /// [`DryingError`] for the first that is not.
    pub fn check(&self) -> Result<(), DryingError> {
        self.wood.check()?;
        if self.walls.is_empty() {
            return Err(DryingError::NoWall);
        }
        for wall in &self.walls {
            THICKNESS.check(wall.thickness_mm)?;
            AREA.check(wall.area_cm2)?;
            GRAIN.check(wall.grain)?;
            FACE.check(wall.faces[0])?;
            FACE.check(wall.faces[1])?;
        }
        if self.phases.is_empty() {
            return Err(DryingError::NoPhase);
        }
        for pair in self.phases.windows(2) {
            if pair[1].from_day.is_nan() || pair[1].from_day < pair[0].from_day {
                return Err(DryingError::PhasesOutOfOrder {
                    before: pair[0].from_day,
                    then: pair[1].from_day,
                });
            }
        }
        for phase in &self.phases {
            phase.way.check()?;
        }
        Ok(())
    }

    /// Oven-dry mass of all walls, g, from green volume and density: good to about a tenth, as density is.
    pub fn dry_mass_g(&self) -> f64 {
        let volume: f64 = self.walls.iter().map(Wall::volume_cm3).sum();
        1e-3 * self.wood.density * volume
    }

    /// The phase that holds at `day`.
    pub fn phase_at(&self, day: f64) -> Option<&Phase> {
        self.phases.get(self.phase_index(day))
    }

    /// Index of the phase that holds at `day`.
    pub(crate) fn phase_index(&self, day: f64) -> usize {
        self.phases
            .partition_point(|p| p.from_day <= day)
            .saturating_sub(1)
    }

    /// Starting moisture in its range.
    pub(crate) fn check_start(moisture: f64) -> Result<f64, DryingError> {
        Ok(MOISTURE.check(moisture)?)
    }
}

impl Way {
    fn check(self) -> Result<(), RangeError> {
        match self {
            Way::Open => Ok(()),
            Way::Bag(conductance) => BAG.check(conductance).map(|_| ()),
            Way::Cover(share) => COVER.check(share).map(|_| ()),
        }
    }
}
