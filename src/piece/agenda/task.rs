//! Task: one thing that wants a hand, with its day, how much it matters and why.

use chrono::NaiveDate;
use evenwall_wood::weighing_days::WorthBecause;

use crate::ids::{FlawId, PieceId};
use crate::stage::Stage;
use crate::vocabulary::{BagFeel, keyed};

keyed!(
    /// How much a task matters, the least first.
    Urgency {
        /// When you like: a weighing, an offer, anything that is not late.
        WhenYouLike = "when-you-like",
        /// Soon: a look that is late.
        Soon = "soon",
        /// Serious: a closed bag that is late.
        Serious = "serious",
    }
);
keyed!(
    /// The two nudges of a piece left half-turned.
    Nudge {
        /// The same evening.
        Evening = "evening",
        /// The next morning and after.
        Morning = "morning",
    }
);

/// What is to be done.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum TaskKind {
    /// Feel the bag: wet, damp or nothing.
    Look,
    /// Look the piece over: neck open in Air, Indoors, another method.
    LookOver,
    /// Weigh it.
    Weigh,
    /// Look at a flaw again.
    FlawLook(FlawId),
    /// It waits half-turned on the lathe.
    HalfTurned(Nudge),
    /// The next (or an earlier) stage is offered.
    OfferStage(Stage),
    /// It shares its mark with another living piece: rename one.
    RenameMark,
    /// It could not be found: look for it.
    Find,
    /// Something was recorded after it was deleted: keep it or delete it again.
    CameBack,
}

/// Why it is due.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// The first look after it was put in the bag.
    FirstLook,
    /// The bag felt so last time.
    After(BagFeel),
    /// Mould was seen last time.
    AfterMould,
    /// By the rhythm of its stage or method, every so many days now.
    Rhythm {
        /// Days between two.
        every: u32,
    },
    /// A weighing this many days after the last tells most: later than the rhythm alone would ask, never sooner.
    TellsMost {
        /// Days from the last weighing.
        days: u32,
        /// Why then.
        because: WorthBecause,
    },
    /// It came into this stage and is weighed at the start of it.
    StartOfStage,
    /// Never weighed yet: weigh it twice, a fortnight apart.
    NeverWeighed,
    /// All that is known is dated after now: the clock was ahead.
    DatedAhead,
    /// The look-again day of the flaw.
    LookAgainDay,
    /// It was left half-turned.
    LeftHalfTurned,
    /// It could not be found on this day.
    NotFoundOn(NaiveDate),
    /// Nothing on the bag twice running.
    NothingTwice,
    /// Damp on the bag again after it was opened.
    DampAgain,
    /// So many days of the stage have run.
    DaysRun {
        /// Days in the stage.
        days: u32,
        /// True where the weight is known to stay put as well; false where it was never weighed.
        weighed: bool,
        /// True where a thick floor asked for more days.
        thick_floor: bool,
    },
    /// The weight has stayed put.
    StayedPut {
        /// For so many days.
        days: u32,
    },
    /// By what is foreseen it has probably settled where it stands.
    Foretold {
        /// From so many weighings.
        weighings: u32,
    },
    /// It is wet and hardly loses water.
    Stuck {
        /// For so many days.
        days: u32,
    },
    /// The same mark as this piece.
    SameMarkAs(PieceId),
    /// Recorded after it was deleted.
    RecordedAfterDeletion,
}

/// One thing that wants a hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// Which piece.
    pub piece: PieceId,
    /// What is to be done.
    pub kind: TaskKind,
    /// The local day on which it is due.
    pub due: NaiveDate,
    /// Days past that day, 0 where it is not late.
    pub days_late: i64,
    /// How much it matters.
    pub urgency: Urgency,
    /// Why it is due.
    pub why: Why,
    /// The local day of the last look or weighing of this kind that counts, where there was one.
    pub last: Option<NaiveDate>,
    /// A look dated after now, to be shown; it does not count.
    pub dated_ahead: Option<NaiveDate>,
    /// True for the one next look of a drying piece.
    pub is_next_look: bool,
    /// True where a weighing is due or offered with it: one row for both.
    pub also_weigh: bool,
    /// True where it fell due while the turner was away.
    pub fell_due_away: bool,
}

impl Task {
    /// True where its day is past.
    #[must_use]
    pub const fn is_late(&self) -> bool {
        self.days_late > 0
    }
}
