//! Piece: the state of one piece as its diary tells it.

use std::collections::BTreeMap;

use chrono::{DateTime, FixedOffset, NaiveDate};

use crate::detail::{DetailField, Details};
use crate::diary::DiaryEntry;
use crate::fact::{Clock, End, FlawNote, Measure, Reading, RoundReading, StationRef};
use crate::ids::{EntryId, FlawId, PieceId};
use crate::photo::Photo;
use crate::stage::Stage;
use crate::vocabulary::{BagFeel, CrackAnswer, MassChange, Method, RoundHow, TrueDecision};

pub use crate::flaw::{Flaw, FlawEvent};

/// A moment with the offset of the place where it was noted.
pub type Moment = DateTime<FixedOffset>;

/// One stay in a stage.
#[derive(Debug, Clone, PartialEq)]
pub struct StageVisit {
    /// Which stage.
    pub stage: Stage,
    /// When it began.
    pub since: Moment,
    /// The entry that moved it; `None` for the stage in which every piece starts.
    pub entry: Option<EntryId>,
}

/// A reading with its place in the diary.
#[derive(Debug, Clone, PartialEq)]
pub struct StationReading {
    /// The entry.
    pub entry: EntryId,
    /// When it was taken.
    pub at: Moment,
    /// The stage in which it was taken.
    pub stage: Stage,
    /// The reading.
    pub reading: Reading,
}

/// How far a station may move and still be the same, mm: less than a pencil line shows. Common practice, no source.
pub(crate) const SAME_DEPTH_MM: f64 = 0.5;

/// The stations of a piece.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stations {
    /// How many, 0 where none were laid out yet.
    pub count: u8,
    /// Depth below the rim, mm; empty where the height is not known.
    pub depths_mm: Vec<f64>,
}

impl Stations {
    /// True where the numbers mean other places than before: another count, or a depth that moved by over half a
    /// millimetre. Stations laid out for the first time, and depths that become known, move nothing.
    #[must_use]
    pub fn moved_from(&self, before: &Self) -> bool {
        let near = |(a, b): (&f64, &f64)| (a - b).abs() <= SAME_DEPTH_MM;
        let known = |s: &Self| !s.depths_mm.is_empty();
        let depths_moved = known(self)
            && known(before)
            && (self.depths_mm.len() != before.depths_mm.len()
                || !self.depths_mm.iter().zip(&before.depths_mm).all(near));
        before.count > 0 && (self.count != before.count || depths_moved)
    }
}

/// One look at the bag or the piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    /// The entry.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// The stage in which it was.
    pub stage: Stage,
    /// How the bag felt; `None` where there was no bag to feel.
    pub feel: Option<BagFeel>,
    /// Mould was seen.
    pub mould: bool,
    /// A crack was seen.
    pub crack: bool,
}

/// One weighing.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighing {
    /// The entry.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// The stage in which it was.
    pub stage: Stage,
    /// What the scale said, g.
    pub mass_g: Measure,
    /// What stood on the scale with it, g.
    pub tare_g: f64,
}

impl Weighing {
    /// The weight of the wood alone, g.
    #[must_use]
    pub fn net_g(&self) -> f64 {
        self.mass_g.value - self.tare_g
    }
}

/// The oval as measured after drying.
#[derive(Debug, Clone, PartialEq)]
pub struct OvalMeasured {
    /// When.
    pub at: Moment,
    /// Longest diameter, mm.
    pub longest_mm: Measure,
    /// Shortest diameter, mm.
    pub shortest_mm: Measure,
}

/// A dried section as it was measured at a station.
#[derive(Debug, Clone, PartialEq)]
pub enum SectionMeasured {
    /// Longest and shortest diameter, mm.
    Two {
        /// The longest.
        longest_mm: Measure,
        /// The shortest.
        shortest_mm: Measure,
    },
    /// More readings round.
    Round {
        /// How they were taken.
        how: RoundHow,
        /// The readings.
        readings: Vec<RoundReading>,
    },
}

/// The oval of one station after drying.
#[derive(Debug, Clone, PartialEq)]
pub struct StationOval {
    /// When.
    pub at: Moment,
    /// What was measured.
    pub measured: SectionMeasured,
}

/// A tick on a checklist line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tick {
    /// The text that was shown.
    pub text: String,
    /// When.
    pub at: Moment,
}

/// What True and Finish recorded.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FinishRecord {
    /// The answer to the crack question, with its time.
    pub cracks: Option<(Moment, CrackAnswer)>,
    /// The oval as measured at the widest place.
    pub oval: Option<OvalMeasured>,
    /// Ovals measured at stations.
    pub ovals: BTreeMap<u8, StationOval>,
    /// The spigot's round size after truing, mm.
    pub spigot_mm: Option<Measure>,
    /// Go, fill or scrap with the reason.
    pub decision: Option<(Moment, TrueDecision, String)>,
    /// Grits used, in own words.
    pub grits: Vec<(Moment, String)>,
    /// Coats of finish.
    pub coats: Vec<(Moment, String)>,
    /// How it was signed.
    pub signed: Option<(Moment, String)>,
}

impl FinishRecord {
    /// True once an oval was measured anywhere.
    #[must_use]
    pub fn oval_measured(&self) -> bool {
        self.oval.is_some() || !self.ovals.is_empty()
    }
}

/// The state of one piece, derived from its diary and from nothing else.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Its id.
    pub id: PieceId,
    /// When it was entered; `None` while the line that says so has not arrived.
    pub created: Option<Moment>,
    /// What is known about it.
    pub details: Details,
    /// The stages walked, the last is the present one. Empty only where every line was taken back.
    pub visits: Vec<StageVisit>,
    /// How it dries.
    pub method: Method,
    /// Since when it waits half-turned on the lathe.
    pub half_turned: Option<Moment>,
    /// Since when it is paused, and until which day.
    pub paused: Option<(Moment, Option<NaiveDate>)>,
    /// Since when it could not be found.
    pub not_found: Option<Moment>,
    /// Ticks by the stable id of the line.
    pub ticks: BTreeMap<String, Tick>,
    /// Its stations.
    pub stations: Stations,
    /// All readings in the order of the fold.
    pub readings: Vec<StationReading>,
    /// How many of the readings, from the first, were taken before the stations were laid out anew: those at the wall are
    /// of other places than their numbers mean now.
    pub readings_from: usize,
    /// Outside diameters measured, by station as it is laid out now, mm.
    pub diameters: BTreeMap<u8, Measure>,
    /// Outside diameters measured where no station lies any more: depth below the rim and diameter, mm, the latest last.
    pub diameters_between: Vec<(f64, Measure)>,
    /// Its flaws in the order found.
    pub flaws: Vec<Flaw>,
    /// Its photos in the order of the fold, those removed too.
    pub photos: Vec<Photo>,
    /// Looks in the order in which they happened.
    pub looks: Vec<Look>,
    /// Weighings in the order in which they happened.
    pub weighings: Vec<Weighing>,
    /// Moments at which something other than drying changed its weight.
    pub mass_changes: Vec<(Moment, MassChange)>,
    /// What True and Finish recorded.
    pub finish: FinishRecord,
    /// How and when it ended.
    pub end: Option<(Moment, End)>,
    /// Since when it is deleted.
    pub deleted: Option<Moment>,
    /// True where something was recorded after it was deleted: it comes back with a note.
    pub came_back: bool,
    /// Everything recorded, in the order in which it happened.
    pub diary: Vec<DiaryEntry>,
    /// Facts that a newer version recorded.
    pub unknown_facts: usize,
    /// How many lines its diary has, those that take others back included: counts up with whatever is recorded.
    pub lines: usize,
}

impl Piece {
    /// Its mark; empty where none has arrived.
    #[must_use]
    pub fn mark(&self) -> &str {
        self.details.text(DetailField::Mark).unwrap_or("")
    }

    /// The present stage.
    #[must_use]
    pub fn stage(&self) -> Stage {
        self.visits.last().map_or(Stage::Shape, |v| v.stage)
    }

    /// Since when it is in the present stage.
    #[must_use]
    pub fn stage_since(&self) -> Option<Moment> {
        self.visits.last().map(|v| v.since)
    }

    /// True while it is neither ended nor deleted.
    #[must_use]
    pub fn living(&self) -> bool {
        self.end.is_none() && self.deleted.is_none()
    }

    /// The readings at the stations as they are laid out now, in the order of the fold. Those from before the stations moved
    /// are left out, but for the floor, which stays where it is.
    pub fn readings_now(&self) -> impl DoubleEndedIterator<Item = &StationReading> {
        let from = self.readings_from;
        self.readings
            .iter()
            .enumerate()
            .filter(move |(i, r)| *i >= from || r.reading.station == StationRef::Floor)
            .map(|(_, r)| r)
    }

    /// The last reading of a station as it is laid out now at a position, of whatever part of the work; later in the fold wins.
    #[must_use]
    pub fn last_reading(
        &self,
        station: StationRef,
        position: Option<Clock>,
    ) -> Option<&StationReading> {
        self.readings_now().rev().find(|r| {
            r.reading.station == station && position.is_none_or(|p| r.reading.position == p)
        })
    }

    /// True where a station was read in the present part of the work: in True and Finish, or before them.
    #[must_use]
    pub fn read_in_this_part(&self, station: StationRef) -> bool {
        let present = self.stage();
        self.readings_now()
            .any(|r| r.reading.station == station && r.stage.same_part(present))
    }

    /// The last reading at each position of a station, for the thinnest and the mean. Once it was read in the present part
    /// of the work only readings of that part count: the wall of another part is not there any more.
    #[must_use]
    pub fn readings_round(&self, station: StationRef) -> Vec<&StationReading> {
        let present = self.stage();
        let read_now = self.read_in_this_part(station);
        let mut by_position: BTreeMap<Clock, &StationReading> = BTreeMap::new();
        for r in self
            .readings_now()
            .filter(|r| r.reading.station == station && (!read_now || r.stage.same_part(present)))
        {
            by_position.insert(r.reading.position, r);
        }
        by_position.into_values().collect()
    }

    /// The station of a flaw as the stations are laid out now: the one it was noted at, or the nearest to where that lay.
    #[must_use]
    pub fn station_of(&self, flaw: &Flaw) -> Option<StationRef> {
        let Some(depth) = flaw.depth_mm else {
            return flaw.note.station;
        };
        let away = |d: &f64| (d - depth).abs();
        (1..=u8::MAX)
            .zip(&self.stations.depths_mm)
            .min_by(|a, b| away(a.1).total_cmp(&away(b.1)))
            .map(|(n, _)| StationRef::Wall(n))
    }

    /// The note of a flaw with its station as the stations are laid out now.
    #[must_use]
    pub fn note_now(&self, flaw: &Flaw) -> FlawNote {
        FlawNote {
            station: self.station_of(flaw),
            ..flaw.note.clone()
        }
    }

    /// A flaw by its id.
    #[must_use]
    pub fn flaw(&self, id: &FlawId) -> Option<&Flaw> {
        self.flaws.iter().find(|f| f.note.flaw == *id)
    }
}
