//! Flaw: a knot, check or other flaw of a piece with all that was done to it and seen of it.

use chrono::NaiveDate;

use crate::fact::{FlawNote, FlawTreated, Measure};
use crate::ids::EntryId;
use crate::piece::Moment;
use crate::stage::Stage;
use crate::vocabulary::FlawChange;

/// One look at a flaw, or one treatment.
#[derive(Debug, Clone, PartialEq)]
pub enum FlawEvent {
    /// It was treated or decided.
    Treated {
        /// When.
        at: Moment,
        /// What was done.
        treated: FlawTreated,
    },
    /// It was looked at.
    Looked {
        /// When.
        at: Moment,
        /// What was found.
        change: FlawChange,
        /// Its length then, mm.
        size_mm: Option<Measure>,
        /// The day on which to look again.
        look_again: Option<NaiveDate>,
    },
}

/// A flaw with all that was done and seen.
#[derive(Debug, Clone, PartialEq)]
pub struct Flaw {
    /// The entry that first noted it.
    pub entry: EntryId,
    /// When it was found.
    pub found_at: Moment,
    /// In which stage it was found.
    pub found_in: Stage,
    /// How it was noted.
    pub note: FlawNote,
    /// How deep below the rim its station lay, mm, once the stations were laid out anew; `None` while its number still means
    /// where it is.
    pub depth_mm: Option<f64>,
    /// What was done and seen since, in the order of the diary.
    pub events: Vec<FlawEvent>,
}

impl Flaw {
    /// The last treatment or decision.
    #[must_use]
    pub fn last_treatment(&self) -> Option<(&Moment, &FlawTreated)> {
        self.events.iter().rev().find_map(|e| match e {
            FlawEvent::Treated { at, treated } => Some((at, treated)),
            FlawEvent::Looked { .. } => None,
        })
    }

    /// True once something was done or decided; leaving it until dry is a sound decision.
    #[must_use]
    pub fn decided(&self) -> bool {
        self.last_treatment().is_some()
    }

    /// True where the last look found that it was cut away.
    #[must_use]
    pub fn gone(&self) -> bool {
        self.events
            .iter()
            .rev()
            .find_map(|e| match e {
                FlawEvent::Looked { change, .. } => Some(*change == FlawChange::Gone),
                FlawEvent::Treated { .. } => None,
            })
            .unwrap_or(false)
    }

    /// The day on which to look again, as said with the last treatment or look.
    #[must_use]
    pub fn look_again(&self) -> Option<NaiveDate> {
        match self.events.last() {
            Some(FlawEvent::Treated { treated, .. }) => treated.look_again,
            Some(FlawEvent::Looked { look_again, .. }) => *look_again,
            None => None,
        }
    }
}
