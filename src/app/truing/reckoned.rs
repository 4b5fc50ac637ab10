//! Reckoned: what is to be expected of each station, what its readings leave, and the axis that all of them share.

use evenwall_piece::piece::SectionMeasured;
use evenwall_piece::vocabulary::RoundHow;
use evenwall_wood::fitted::FitError;
use evenwall_wood::own_shrinkage::{Moved, OwnShrinkage};
use evenwall_wood::section::{Strains, Xy};

use super::place::Place;

/// What is expected of a section by the figures of its wood.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Foreseen {
    /// The pith is in the wall: no outline, and a split is to be expected.
    PithInWall,
    /// An outline.
    Shape {
        /// Longest diameter, mm.
        longest_mm: f64,
        /// Shortest diameter, mm.
        shortest_mm: f64,
        /// The outside.
        outer: Vec<Xy>,
    },
}

/// What a station's outline rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Basis {
    /// Longest and shortest diameter.
    Two,
    /// So many diameters.
    Diameters(usize),
    /// So many distances from the centre mark.
    FromCentre(usize),
    /// How this piece shrank where it was measured.
    OwnShrinkage,
    /// The oval of the widest place, which is more oval than this one.
    AsWidest,
}

impl Basis {
    pub fn of(measured: &SectionMeasured) -> Self {
        match measured {
            SectionMeasured::Two { .. } => Self::Two,
            SectionMeasured::Round { how, readings } => match how {
                RoundHow::Diameters => Self::Diameters(readings.len()),
                RoundHow::FromCentre => Self::FromCentre(readings.len()),
            },
        }
    }
}

/// A station's dried shape.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Shape {
    /// What it rests on.
    pub basis: Basis,
    /// Outside.
    pub outer: Vec<Xy>,
    /// Bore; `None` where no wall was read, or it does not go with the outside.
    pub inner: Option<Vec<Xy>>,
    /// Longest diameter, mm.
    pub longest_mm: f64,
    /// Shortest diameter, mm.
    pub shortest_mm: f64,
    /// Taken off what is left, because callipers may see too little, mm.
    pub doubt_mm: f64,
}

/// One station with its sums.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct PlaceSum {
    /// The station.
    pub place: Place,
    /// By the figures of the wood; `None` where its size is not known.
    pub foreseen: Option<Foreseen>,
    /// The wall that may be left by the figures of the wood, mm.
    pub foreseen_wall_mm: Option<f64>,
    /// By what was measured.
    pub shape: Option<Shape>,
    /// Why its readings give no outline.
    pub fault: Option<FitError>,
    /// The wall that can be trued about the shared axis, mm; below 0 for none.
    pub left_mm: Option<f64>,
}

/// How this piece moved against the table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Against {
    /// At which station.
    pub number: u8,
    /// Against the table.
    pub moved: Moved,
    /// Its own shrinkage so far; `None` where the pith may lie in the bore.
    pub own: Option<OwnShrinkage>,
}

/// All sums of a piece in True.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Reckoned {
    /// Its stations from mouth to corner.
    pub places: Vec<PlaceSum>,
    /// True once an oval was measured.
    pub measured: bool,
    /// Shrinkage from green until now by the figures of the wood: across the rings and along them; of side grain along and
    /// across the grain.
    pub strains: Strains,
    /// Whose figures they are.
    pub whose: String,
    /// The moisture they are taken to, fraction.
    pub moisture: f64,
    /// The axis all stations share, from the middle or the centre mark, mm.
    pub axis: Option<Xy>,
    /// True where every measured station was read from the centre mark.
    pub from_the_mark: bool,
    /// Index of the station with the least to spare.
    pub tightest: Option<usize>,
    /// The finish wall, mm.
    pub finish_mm: f64,
    /// How it moved.
    pub against: Option<Against>,
}

impl Reckoned {
    /// What the tightest station has over the finish wall, mm; below 0 where it is short.
    pub fn spare_mm(&self) -> Option<f64> {
        let left = self.places.get(self.tightest?)?.left_or_foreseen()?;
        Some(left - self.finish_mm)
    }
}

impl PlaceSum {
    /// The wall left by measure; before measuring what is expected.
    pub fn left_or_foreseen(&self) -> Option<f64> {
        self.left_mm.or(self.foreseen_wall_mm)
    }
}
