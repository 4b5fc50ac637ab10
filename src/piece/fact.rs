//! Facts: everything that can be recorded about a piece. A line of the diary holds one or more of them.

use chrono::{DateTime, FixedOffset, NaiveDate};

use crate::detail::{DetailField, DetailValue};
use crate::ids::{EntryId, FlawId, LineId, PhotoId};
use crate::photo::{PhotoMarks, PhotoNote};
use crate::stage::Stage;
use crate::vocabulary::{
    BagFeel, CrackAnswer, Face, FlawChange, FlawKind, LostHow, LostWhere, LostWhy, MassChange,
    Method, RoundHow, Taken, Treatment, TrueDecision, WallFeel,
};

/// A number that was understood, with what was typed beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct Measure {
    /// The value in the unit that the field's name gives (mm or g).
    pub value: f64,
    /// What the turner typed or tapped, empty where nothing was typed.
    pub typed: String,
}

impl Measure {
    /// A value that nobody typed, for example one taken from a key.
    #[must_use]
    pub const fn plain(value: f64) -> Self {
        Self {
            value,
            typed: String::new(),
        }
    }
}

/// Where on the section a reading was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum StationRef {
    /// Station 1, 2, 3... counted from the mouth.
    Wall(u8),
    /// The floor, on the axis.
    Floor,
}

/// Where round the piece: a clock, 12 at the pencil line, seen from the mouth. 1 to 12.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Clock(u8);

impl Clock {
    /// The pencil line.
    pub const TWELVE: Self = Self(12);

    /// An hour of 1 to 12; `None` for any other.
    #[must_use]
    pub const fn new(hour: u8) -> Option<Self> {
        if hour >= 1 && hour <= 12 {
            Some(Self(hour))
        } else {
            None
        }
    }

    /// The hour, 1 to 12.
    #[must_use]
    pub const fn hour(self) -> u8 {
        self.0
    }
}

/// One reading of the wall, square to its surface, or of the floor.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Which station.
    pub station: StationRef,
    /// Where round the piece.
    pub position: Clock,
    /// The thickness in mm, where a number was read.
    pub wall_mm: Option<Measure>,
    /// The judgement of the finger, where no number was read.
    pub feel: Option<WallFeel>,
    /// How it was taken.
    pub taken: Taken,
}

/// One of several readings round a dried section.
#[derive(Debug, Clone, PartialEq)]
pub struct RoundReading {
    /// How far round from the pencil line, clockwise as seen from the mouth, degrees.
    pub turn_deg: f64,
    /// The diameter there, or the distance from the centre mark, mm.
    pub mm: Measure,
}

/// A flaw as first noted.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawNote {
    /// The flaw's id within the piece.
    pub flaw: FlawId,
    /// What it is.
    pub kind: FlawKind,
    /// Nearest station, where said.
    pub station: Option<StationRef>,
    /// Where round the piece, where said.
    pub clock: Option<Clock>,
    /// Length or diameter in mm, where measured.
    pub size_mm: Option<Measure>,
    /// True where it goes through the wall.
    pub through: bool,
    /// Own words.
    pub note: String,
}

/// What was done to a flaw, or decided about it.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawTreated {
    /// Which flaw.
    pub flaw: FlawId,
    /// What was done.
    pub treatment: Treatment,
    /// On which side.
    pub face: Option<Face>,
    /// How many goes it took, 1 or more.
    pub goes: Option<u8>,
    /// A day on which to look again.
    pub look_again: Option<NaiveDate>,
}

/// A forecast as it was made; each range holds, if the forecast is good, four times of five.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct ForecastMade {
    /// Settled where it stands: into the house. First and last day.
    pub into_house: Option<(NaiveDate, NaiveDate)>,
    /// Settled in the house: to finish-turn. First and last day.
    pub to_finish: Option<(NaiveDate, NaiveDate)>,
    /// Weighings it was made from, 1 or more.
    pub weighings: u32,
}

/// How a piece ended.
#[derive(Debug, Clone, PartialEq)]
pub enum End {
    /// Finished.
    Finished,
    /// Lost; each part may stay unknown.
    Lost {
        /// Where it failed.
        place: LostWhere,
        /// How it was lost.
        how: LostHow,
        /// The turner's own guesses why.
        why: Vec<LostWhy>,
        /// Own words.
        note: String,
    },
    /// Given away or sold unturned.
    GivenAway,
    /// Left as it is.
    LeftAsIs,
    /// It cannot be found.
    CantFind,
}

/// One thing recorded about a piece.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceFact {
    /// The piece was entered.
    Created,
    /// A detail was set, or cleared with `None`.
    Detail {
        /// Which detail.
        field: DetailField,
        /// Its value; `None` clears it.
        value: Option<DetailValue>,
    },
    /// It moved to a stage, forward or back.
    StageMoved(Stage),
    /// How it dries was chosen.
    MethodChosen(Method),
    /// Left half-turned on the lathe, wrapped.
    HalfTurned,
    /// Taken up again.
    Resumed,
    /// No reminders until a day, or until taken up again.
    Paused {
        /// The day on which reminders start again; `None`: not said.
        until: Option<NaiveDate>,
    },
    /// Reminders again.
    Unpaused,
    /// A checklist line was ticked or unticked.
    Ticked {
        /// The line's stable id.
        line: String,
        /// The text that was shown.
        text: String,
        /// Ticked or not.
        on: bool,
    },
    /// The stations were laid out, counted from the mouth.
    Stations {
        /// How many.
        count: u8,
        /// Depth of each below the rim in mm; empty where the height is not known.
        depths_mm: Vec<f64>,
    },
    /// A wall or floor reading.
    Reading(Reading),
    /// The outside diameter at a station was measured, mm.
    OutsideDiameter {
        /// Which station.
        station: u8,
        /// The diameter in mm; `None` goes back to the shape.
        diameter_mm: Option<Measure>,
    },
    /// A flaw was found.
    FlawFound(FlawNote),
    /// A flaw was treated or decided.
    FlawTreated(FlawTreated),
    /// A flaw was looked at again.
    FlawLooked {
        /// Which flaw.
        flaw: FlawId,
        /// What was found.
        change: FlawChange,
        /// Its length now, mm.
        size_mm: Option<Measure>,
        /// The day on which to look again.
        look_again: Option<NaiveDate>,
    },
    /// The bag was felt, or the piece was looked over.
    Look {
        /// How the bag feels; `None` where there is no bag to feel.
        feel: Option<BagFeel>,
        /// Mould was seen.
        mould: bool,
        /// A crack was seen.
        crack: bool,
    },
    /// It could not be found when its turn came.
    NotFound,
    /// It was weighed.
    Weighed {
        /// What the scale said, g.
        mass_g: Measure,
        /// What stood on the scale with it, g; 0 when weighed bare.
        tare_g: f64,
    },
    /// Something other than drying changed its weight: weights before and after are not compared.
    MassChanged(MassChange),
    /// What was foreseen once it was weighed, to be compared with what came of it. The program writes it, nobody's work.
    ForecastMade(ForecastMade),
    /// Cracks were looked for before remounting.
    Cracks(CrackAnswer),
    /// Longest and shortest diameter after drying, mm.
    Oval {
        /// The longest.
        longest_mm: Measure,
        /// The shortest.
        shortest_mm: Measure,
    },
    /// The same at one station; [`PieceFact::Oval`] is that of the widest place.
    OvalAt {
        /// Which station.
        station: u8,
        /// The longest.
        longest_mm: Measure,
        /// The shortest.
        shortest_mm: Measure,
    },
    /// More readings round one station after drying.
    OvalRound {
        /// Which station.
        station: u8,
        /// How they were taken.
        how: RoundHow,
        /// The readings.
        readings: Vec<RoundReading>,
    },
    /// The spigot was cut round again, mm.
    SpigotTrued(Measure),
    /// Go, fill or scrap, with the reason.
    TrueDecided {
        /// The decision.
        decision: TrueDecision,
        /// The reason in own words.
        reason: String,
    },
    /// Sanded with these grits.
    Grits(String),
    /// A coat of finish.
    Coat(String),
    /// Signed with these words.
    Signed(String),
    /// A note.
    Note(String),
    /// A photo was added.
    PhotoAdded(PhotoNote),
    /// A photo was removed; it can be brought back.
    PhotoRemoved(PhotoId),
    /// A photo was brought back.
    PhotoBack(PhotoId),
    /// A spot or a length was drawn on a photo, in place of what was drawn before.
    PhotoMarked(PhotoMarks),
    /// It ended.
    Ended(End),
    /// It was put back among the living.
    PutBack,
    /// It was deleted; it can be brought back.
    Deleted,
    /// It was brought back.
    Undeleted,
    /// An earlier entry is corrected: the new one shows, the old stays visible.
    Amends {
        /// The entry.
        entry: EntryId,
        /// When it really happened, where that changes.
        at: Option<DateTime<FixedOffset>>,
        /// What really happened, where that changes.
        fact: Option<Box<PieceFact>>,
    },
    /// A whole line is taken back; taking back this line brings it back.
    Retracts(LineId),
    /// Recorded by a newer version; kept and shown as such.
    Unknown {
        /// Its kind as found.
        kind: String,
        /// The whole fact as found, JSON text.
        raw: String,
    },
}
