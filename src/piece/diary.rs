//! Diary: everything recorded about a piece, with corrections and what was taken back still visible.

use crate::fact::PieceFact;
use crate::ids::EntryId;
use crate::piece::Moment;
use crate::stage::Stage;

/// An earlier wording of an entry, shown struck through.
#[derive(Debug, Clone, PartialEq)]
pub struct Earlier {
    /// What it said.
    pub fact: PieceFact,
    /// When it was said to have happened.
    pub at: Moment,
}

/// One entry of the diary.
#[derive(Debug, Clone, PartialEq)]
pub struct DiaryEntry {
    /// Its id, for corrections.
    pub entry: EntryId,
    /// When it happened, as corrected.
    pub at: Moment,
    /// When it was written down.
    pub noted_at: Moment,
    /// What happened, as corrected.
    pub fact: PieceFact,
    /// What it said before, oldest first.
    pub earlier: Vec<Earlier>,
    /// The stage the piece was in.
    pub stage: Stage,
    /// True where the whole line was taken back: shown only on request, struck through.
    pub retracted: bool,
}

impl DiaryEntry {
    /// True where it was noted on another day than it happened.
    #[must_use]
    pub fn back_dated(&self) -> bool {
        self.at.date_naive() != self.noted_at.date_naive()
    }
}
