//! Truing: True and Finish, from the crack question to the signature.

mod finish_view;
mod finishing;
mod notes;
mod outline;
mod oval_entry;
mod oval_view;
mod place;
mod reckon;
#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod reckon_tests;
mod reckoned;
mod recorded;
mod round;
mod round_sheet;
mod sheet;
mod spigot;
mod true_view;

use evenwall_piece::fact::Measure;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, TrueDecision};

use crate::app::{App, AppError};
use crate::measured::Field;
use crate::piece::DayChoice;
use crate::route::Page;

pub use finish_view::{FinishRow, FinishView};
pub use oval_view::{OvalPart, PlaceRow};
pub use recorded::{Leads, Recorded};
pub use round::Way;
pub use sheet::{ChipView, SheetView};
pub use true_view::{CrackRow, LackRow, TrueView};

/// A sheet of these pages.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TruingSheet {
    /// Longest and shortest diameter.
    Oval,
    /// At which station, and how.
    Where,
    /// One reading of many round a station.
    Round,
    /// The spigot's round size.
    Spigot,
    /// Go, fill or scrap.
    Decision,
    /// Grits.
    Grits,
    /// A coat.
    Coat,
    /// The signature.
    Signed,
}

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum TruingAction {
    /// Answered the crack question.
    Cracks {
        /// The piece.
        piece: PieceId,
        /// The answer.
        answer: CrackAnswer,
    },
    /// Opened a sheet.
    Open(TruingSheet),
    /// Closed the sheet; nothing is recorded.
    Close,
    /// Typed into the first field of the sheet.
    First(String),
    /// Typed into the second field of the sheet.
    Second(String),
    /// Chose one of the sheet's choices, by its key.
    Choose(String),
    /// Pressed the button of the sheet.
    Save,
    /// Chose the station that is drawn.
    Show(u8),
    /// Pressed the button below True.
    Next,
    /// Pressed *Finished*.
    Finished,
    /// Recorded exactly this, without asking again.
    Write(Box<Recorded>),
}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct TruingState {
    pub(crate) of: Option<PieceId>,
    pub(crate) sheet: Option<TruingSheet>,
    pub(crate) first: Field,
    pub(crate) second: Field,
    pub(crate) decision: Option<TrueDecision>,
    pub(crate) grits: Vec<&'static str>,
    pub(crate) day: DayChoice,
    /// The station that is drawn; `None` for the one that matters most.
    pub(crate) shown: Option<u8>,
    /// The station of the sheet; `None` for the widest place.
    pub(crate) station: Option<u8>,
    pub(crate) way: Way,
    pub(crate) readings: Vec<Option<Measure>>,
    pub(crate) at: usize,
}

impl App {
    pub(crate) fn enter_truing(&mut self, page: Option<&Page>, _now: Moment) {
        let of = match page {
            Some(Page::Truing(id) | Page::Finishing(id)) => Some(id.clone()),
            _ => None,
        };
        self.states.truing = TruingState {
            of,
            ..TruingState::default()
        };
    }

    /// The piece of these pages.
    pub(super) fn truing_piece(&self) -> Option<&Piece> {
        self.piece(self.states.truing.of.as_ref()?)
    }

    pub(crate) fn apply_truing(
        &mut self,
        action: TruingAction,
        now: Moment,
    ) -> Result<(), AppError> {
        let state = &mut self.states.truing;
        match action {
            TruingAction::Cracks { piece, answer } => {
                return self.answer_cracks(&piece, answer, now);
            }
            TruingAction::Open(sheet) => self.open_truing_sheet(sheet),
            TruingAction::Close => self.close_truing_sheet(),
            TruingAction::First(text) => state.first.type_in(text),
            TruingAction::Second(text) => state.second.type_in(text),
            TruingAction::Choose(key) => self.choose_in_sheet(&key),
            TruingAction::Save => return self.save_truing(now),
            TruingAction::Show(station) => state.shown = Some(station),
            TruingAction::Next => return self.truing_next(now),
            TruingAction::Finished => return self.finished(now),
            TruingAction::Write(recorded) => return self.write_truing(*recorded, now),
        }
        Ok(())
    }

    fn close_truing_sheet(&mut self) {
        let of = self.states.truing.of.take();
        self.states.truing = TruingState {
            of,
            shown: self.states.truing.shown,
            ..TruingState::default()
        };
    }

    /// What the button below True does: measure, decide, or go where the decision leads.
    fn truing_next(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(piece) = self.truing_piece() else {
            return Ok(());
        };
        let id = piece.id.clone();
        match self.truing_step(piece) {
            Some("oval") => self.open_truing_sheet(TruingSheet::Oval),
            Some("decide") => self.open_truing_sheet(TruingSheet::Decision),
            Some("fill") => self.open_page(Page::Flaws(id), now),
            Some("scrap") => self.open_page(Page::Ending(id), now),
            Some("finish") => {
                self.move_to(&id, Stage::Finish, None, false, now)?;
                self.open_page(Page::Finishing(id), now);
            }
            _ => {}
        }
        Ok(())
    }
}
