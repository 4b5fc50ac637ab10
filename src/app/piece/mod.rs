//! Piece: where it stands, its details, stages, checklist and ending.

mod banners;
pub mod cautions;
pub(crate) mod days;
pub mod details;
pub mod details_view;
pub mod ending;
pub mod ending_view;
mod lines;
mod look;
pub(crate) mod moving;
mod next_step;
mod page;
mod stages;
pub mod stages_view;
pub mod view;
mod ways;

use chrono::NaiveDate;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Method};

use crate::app::{App, AppError};
use crate::route::Page;

pub use details::{DetailsAction, DetailsState};
pub use ending::{EndingAction, EndingState};
pub use stages::{DayChoice, PauseChoice, StagesAction, StagesState};

/// What can be done there. What is recorded names its piece, so that trying again after a failure can never write to
/// another one.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceAction {
    /// Ticked or unticked a line of the checklist.
    Tick {
        /// The piece.
        piece: PieceId,
        /// The line's stable id.
        line: String,
        /// Ticked or not.
        on: bool,
    },
    /// Asked why a line is there.
    Why(String),
    /// Closed the why, or any sheet of the page.
    CloseSheet,
    /// Opened or closed the lines left over from stages already passed.
    Earlier,
    /// Opened the sheet behind the three dots.
    More,
    /// Opened or closed the answers of a look although none is due.
    LookNow,
    /// Answered a look.
    Looked {
        /// The piece.
        piece: PieceId,
        /// How the bag feels; `None` where there is no bag to feel.
        feel: Option<BagFeel>,
        /// Mould was seen.
        mould: bool,
        /// A crack was seen.
        crack: bool,
    },
    /// Moved it to a stage, now or on an earlier day.
    MoveTo {
        /// The piece.
        piece: PieceId,
        /// The stage.
        stage: Stage,
        /// The day on which it really moved; `None`: now.
        day: Option<NaiveDate>,
        /// True once the advice was read.
        sure: bool,
    },
    /// Left it half-turned on the lathe, or took it up again.
    HalfTurned {
        /// The piece.
        piece: PieceId,
        /// Left or taken up.
        on: bool,
    },
    /// Chose how it dries.
    Method {
        /// The piece.
        piece: PieceId,
        /// The method.
        method: Method,
    },
    /// No reminders until a day, or until taken up again.
    Pause {
        /// The piece.
        piece: PieceId,
        /// The day.
        until: Option<NaiveDate>,
    },
    /// Reminders again.
    Unpause(PieceId),
    /// It ended.
    End {
        /// The piece.
        piece: PieceId,
        /// How.
        end: End,
    },
    /// Put it back among the living.
    PutBack(PieceId),
    /// Asked whether to delete it.
    AskDelete(PieceId),
    /// Deleted it; it can be brought back.
    Delete(PieceId),
    /// Brought it back.
    Undelete(PieceId),
    /// Kept a piece that came back by itself.
    Keep(PieceId),
    /// Set a detail, or cleared it with `None`.
    SetDetail {
        /// The piece.
        piece: PieceId,
        /// Which detail.
        field: DetailField,
        /// Its value.
        value: Option<DetailValue>,
    },
    /// Read the general cautions.
    CautionsRead,
    /// Something on the Stages page.
    Stages(StagesAction),
    /// Something on the Details page.
    Details(DetailsAction),
    /// Something on the Ending page.
    Ending(EndingAction),
}

/// A sheet of the piece page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) enum PieceSheet {
    /// None.
    #[default]
    None,
    /// Behind the three dots.
    More,
    /// Why a line is there.
    Why(String),
}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct PieceState {
    pub(crate) of: Option<PieceId>,
    pub(crate) sheet: PieceSheet,
    pub(crate) earlier: bool,
    pub(crate) look_now: bool,
    pub(crate) stages: StagesState,
    pub(crate) details: DetailsState,
    pub(crate) ending: EndingState,
}

impl App {
    pub(crate) fn enter_piece(&mut self, page: Option<&Page>, _now: Moment) {
        let of = page.and_then(Page::piece).cloned();
        if self.states.piece.of != of {
            self.states.piece = PieceState {
                of,
                ..PieceState::default()
            };
        }
        let state = &mut self.states.piece;
        state.sheet = PieceSheet::None;
        state.stages = StagesState::default();
        match page {
            Some(Page::Details(_)) => {}
            _ => state.details = DetailsState::default(),
        }
        match page {
            Some(Page::Ending(id)) => {
                let id = id.clone();
                self.enter_ending(&id);
            }
            Some(Page::Piece(_)) => self.cautions_at_first_use(),
            _ => {}
        }
    }

    pub(crate) fn apply_piece(&mut self, action: PieceAction, now: Moment) -> Result<(), AppError> {
        match action {
            PieceAction::Tick { piece, line, on } => self.tick(&piece, line, on, now),
            PieceAction::Why(line) => {
                self.states.piece.sheet = PieceSheet::Why(line);
                Ok(())
            }
            PieceAction::CloseSheet => {
                self.states.piece.sheet = PieceSheet::None;
                Ok(())
            }
            PieceAction::Earlier => {
                self.states.piece.earlier = !self.states.piece.earlier;
                Ok(())
            }
            PieceAction::More => {
                self.states.piece.sheet = PieceSheet::More;
                Ok(())
            }
            PieceAction::LookNow => {
                self.states.piece.look_now = !self.states.piece.look_now;
                Ok(())
            }
            PieceAction::Looked {
                piece,
                feel,
                mould,
                crack,
            } => self.looked(&piece, feel, mould, crack, now),
            PieceAction::MoveTo {
                piece,
                stage,
                day,
                sure,
            } => self.move_to(&piece, stage, day, sure, now),
            PieceAction::HalfTurned { piece, on } => self.half_turned(&piece, on, now),
            PieceAction::Method { piece, method } => self.choose_method(&piece, method, now),
            PieceAction::Pause { piece, until } => self.pause(&piece, until, now),
            PieceAction::Unpause(piece) => {
                self.record(&piece, now, vec![PieceFact::Unpaused], now)?;
                self.say_of(&piece, "piece-said-unpaused");
                Ok(())
            }
            PieceAction::End { piece, end } => self.end_piece(&piece, end, now),
            PieceAction::PutBack(piece) => {
                self.record(&piece, now, vec![PieceFact::PutBack], now)?;
                self.say_of(&piece, "piece-said-put-back");
                Ok(())
            }
            PieceAction::AskDelete(piece) => {
                self.ask_delete(&piece);
                Ok(())
            }
            PieceAction::Delete(piece) => self.delete_piece(&piece, now),
            PieceAction::Undelete(piece) => {
                self.record(&piece, now, vec![PieceFact::Undeleted], now)?;
                self.say_of(&piece, "piece-said-undeleted");
                Ok(())
            }
            PieceAction::Keep(piece) => {
                self.record(&piece, now, vec![PieceFact::Undeleted], now)?;
                self.say_of(&piece, "piece-said-kept");
                Ok(())
            }
            PieceAction::SetDetail {
                piece,
                field,
                value,
            } => self.set_detail(&piece, field, value, now),
            PieceAction::CautionsRead => self.cautions_read(now),
            PieceAction::Stages(action) => self.apply_stages(action, now),
            PieceAction::Details(action) => self.apply_details(action, now),
            PieceAction::Ending(action) => self.apply_ending(action, now),
        }
    }

    /// The piece that the page on top is about.
    pub(crate) fn piece_on_page(&self) -> Option<&Piece> {
        self.piece(self.route().page()?.piece()?)
    }

    /// Says something about a piece, with its mark: for words that want `$mark` only.
    pub(crate) fn say_of(&mut self, piece: &PieceId, id: &str) {
        let mark = self.mark_of(piece);
        let said = self.words().with(id, &[("mark", mark.into())]);
        self.say(said);
    }

    /// The mark of a piece, or the words for a piece that has none.
    pub(crate) fn mark_of(&self, piece: &PieceId) -> String {
        match self.piece(piece).map(|p| p.mark().to_owned()) {
            Some(mark) if !mark.is_empty() => mark,
            _ => self.words().text("piece-no-mark"),
        }
    }
}
