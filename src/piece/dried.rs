//! Dried: how a piece fared in drying and what its wall was like before, so that pieces of a kind can be counted.
//!
//! | what became of it | how it counts |
//! |---|---|
//! | finished, or in Finish | kept |
//! | in True | neither yet: the first question there is whether it cracked |
//! | lost: cracked drying, too oval or too thin to true, mould, worm or rot | lost in drying |
//! | lost, not said how, while it dried | lost in drying |
//! | lost in any other way: on the lathe, dropped, spoiled, spigot too small, given up | neither, told apart |
//! | given away, left as it is, cannot be found | neither |
//!
//! The rules are the project's own; no source.

use std::collections::BTreeMap;

use crate::detail::DetailField;
use crate::fact::{Clock, End, StationRef};
use crate::piece::{Moment, Piece, StationReading};
use crate::stage::{Group, Stage};
use crate::vocabulary::LostHow;

/// What drying did to a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fate {
    /// It came through: trued or finished.
    Kept,
    /// Drying took it.
    Lost,
    /// It was lost, but not by drying.
    LostOtherwise,
    /// It dries.
    Drying,
    /// It is dry and not decided yet.
    Trueing,
    /// It went before it was decided: given away, left as it is, or not to be found.
    Gone,
}

impl Fate {
    /// All of them, in the order in which they are told.
    pub const ALL: [Self; 6] = [
        Self::Kept,
        Self::Lost,
        Self::Drying,
        Self::Trueing,
        Self::LostOtherwise,
        Self::Gone,
    ];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Kept => "kept",
            Self::Lost => "lost",
            Self::LostOtherwise => "lost-otherwise",
            Self::Drying => "drying",
            Self::Trueing => "trueing",
            Self::Gone => "gone",
        }
    }

    /// Kept or lost: drying has said its word.
    #[must_use]
    pub const fn decided(self) -> bool {
        matches!(self, Self::Kept | Self::Lost)
    }
}

/// A piece that was set to dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dried {
    /// When its drying began.
    pub since: Moment,
    /// Whole days from then until drying ended, it was lost or went; until now where it still dries.
    pub days: i64,
    /// What became of it.
    pub fate: Fate,
}

/// True where drying is to blame, see the table above.
const fn by_drying(how: LostHow, while_drying: bool) -> bool {
    match how {
        LostHow::CrackedDrying
        | LostHow::TooOval
        | LostHow::Mould
        | LostHow::Worm
        | LostHow::Rot => true,
        LostHow::Unknown => while_drying,
        _ => false,
    }
}

/// How a piece fared in drying; `None` where it was never set to dry, or was deleted.
#[must_use]
pub fn dried(piece: &Piece, now: Moment) -> Option<Dried> {
    if piece.deleted.is_some() {
        return None;
    }
    let dries = |stage: Stage| stage.group() == Group::Drying;
    let since = piece.visits.iter().find(|v| dries(v.stage))?.since;
    let drying_now = dries(piece.stage());
    // Where it went back into the bag from True, drying ended the last time.
    let last = piece.visits.iter().rposition(|v| dries(v.stage))?;
    let out = piece
        .visits
        .get(last + 1)
        .filter(|v| v.stage.group() == Group::Finishing);
    let (until, fate) = match (&piece.end, piece.stage()) {
        (Some((at, End::Finished)), _) => (out.map_or(*at, |v| v.since), Fate::Kept),
        (Some((at, End::Lost { how, .. })), _) if by_drying(*how, drying_now) => (*at, Fate::Lost),
        (Some((at, End::Lost { .. })), _) => (out.map_or(*at, |v| v.since), Fate::LostOtherwise),
        (Some((at, _)), _) => (out.map_or(*at, |v| v.since), Fate::Gone),
        (None, Stage::Finish) => (out.map_or(now, |v| v.since), Fate::Kept),
        (None, Stage::True) => (out.map_or(now, |v| v.since), Fate::Trueing),
        // Put back on the lathe half dry counts as drying: nobody has decided yet.
        (None, _) => (now, Fate::Drying),
    };
    Some(Dried {
        since,
        days: until.signed_duration_since(since).num_days().max(0),
        fate,
    })
}

/// The wall as it went to dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoughWall {
    /// Mean of the readings, or the wall wanted where none was taken, mm.
    pub wall_mm: f64,
    /// Thickest less thinnest reading, mm; `None` with fewer than [`STATIONS_FOR_SPREAD`] stations read.
    pub spread_mm: Option<f64>,
    /// True where it was read, not only wanted.
    pub read: bool,
}

/// Fewer stations say nothing about how even a wall is. Common practice, no source.
pub const STATIONS_FOR_SPREAD: usize = 3;

/// The wall of a piece before it was trued; `None` where it was neither read nor wanted.
#[must_use]
pub fn rough_wall(piece: &Piece) -> Option<RoughWall> {
    let mut last: BTreeMap<(StationRef, Clock), f64> = BTreeMap::new();
    let mut take = |readings: &[StationReading]| {
        for r in readings {
            if let (StationRef::Wall(_), Some(wall)) = (r.reading.station, &r.reading.wall_mm)
                && r.stage.group() != Group::Finishing
            {
                last.insert((r.reading.station, r.reading.position), wall.value);
            }
        }
        last.len()
    };
    // Readings of stations as they were laid out last; those of an earlier layout where it was laid out anew for the finish.
    let from = piece.readings_from.min(piece.readings.len());
    if take(&piece.readings[from..]) == 0 {
        take(&piece.readings[..from]);
    }
    if last.is_empty() {
        return piece
            .details
            .mm(DetailField::WallWanted)
            .map(|wall_mm| RoughWall {
                wall_mm,
                spread_mm: None,
                read: false,
            });
    }
    let stations: std::collections::BTreeSet<StationRef> = last.keys().map(|k| k.0).collect();
    let thickest = last.values().copied().fold(f64::NEG_INFINITY, f64::max);
    let thinnest = last.values().copied().fold(f64::INFINITY, f64::min);
    Some(RoughWall {
        wall_mm: last.values().sum::<f64>() / last.len() as f64, // a few readings
        spread_mm: (stations.len() >= STATIONS_FOR_SPREAD).then_some(thickest - thinnest),
        read: true,
    })
}
