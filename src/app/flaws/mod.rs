//! Flaws: knots, bark inclusions, checks and what was done to them.

mod form;
mod form_parts;
mod form_view;
mod list;
mod one;
mod suggestion;
mod telling;
mod writing;

use evenwall_piece::fact::StationRef;
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::{Flaw, Moment, Piece};
use evenwall_piece::vocabulary::{Face, FlawChange, FlawKind, Treatment};

use crate::app::{App, AppError};
use crate::measured::Field;
use crate::route::Page;

pub use form::{AgainChoice, FlawForm};
pub use form_parts::{ClockView, FormView, OptionView, SpotView, TypedView};
pub use list::{ClockSpot, FlawCard, FlawGroup, FlawLetter, FlawsView};
pub use one::{FlawView, HistoryRow, LongerView, SeenView};
pub(crate) use telling::looks_due;
pub use writing::Writing;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum FlawsAction {
    /// Chose what it is.
    Kind(FlawKind),
    /// Touched a station on the drawing; touched again it is cleared.
    Station(StationRef),
    /// Touched the clock; an hour from 0 to 12.
    ClockAt(f64),
    /// Went on or back an hour.
    ClockStep(i8),
    /// Cleared how far round it is.
    ClearClock,
    /// Chose what was done; chosen again it is cleared.
    Treatment(Treatment),
    /// Opened or closed what is folded away.
    More,
    /// Typed its length.
    Size(String),
    /// It goes through the wall, or not.
    Through(bool),
    /// Chose the face; chosen again it is cleared.
    Face(Face),
    /// One go more (1) or less (-1).
    Goes(i8),
    /// Chose when to look again.
    Again(AgainChoice),
    /// Typed the day on which to look again.
    AgainDay(String),
    /// Typed own words.
    Note(String),
    /// Saved the form.
    Save,
    /// Began to treat it again, or to decide it.
    TreatAgain,
    /// Began to correct what was noted.
    Correct,
    /// Looked at it.
    Looked(FlawChange),
    /// Typed its new length.
    Length(String),
    /// Recorded that it is longer.
    SaveLonger,
    /// Closed the sheet.
    CloseSheet,
    /// Went back: from a form to the flaw, from the flaw to the page before.
    Leave,
    /// Asked whether to take it back.
    AskTakeBack,
    /// Recorded exactly this, without asking again.
    Write(Box<Writing>),
}

/// What the page of a flaw shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Mode {
    /// The flaw, or the form where it is a new one.
    #[default]
    See,
    /// Treating or deciding it.
    Treat,
    /// Correcting what was noted.
    Correct,
}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct FlawsState {
    pub(crate) of: Option<(PieceId, Option<FlawId>)>,
    pub(crate) mode: Mode,
    pub(crate) form: FlawForm,
    /// The sheet that asks for the new length.
    pub(crate) longer: Option<Field>,
}

impl App {
    pub(crate) fn enter_flaws(&mut self, page: Option<&Page>, _now: Moment) {
        let of = match page {
            Some(Page::Flaw(piece, flaw)) => Some((piece.clone(), flaw.clone())),
            _ => None,
        };
        if self.states.flaws.of != of {
            self.states.flaws = FlawsState {
                of,
                ..FlawsState::default()
            };
        }
    }

    /// The piece of the flaw pages.
    fn flaws_piece(&self) -> Option<&Piece> {
        self.piece(self.route().page()?.piece()?)
    }

    /// The flaw on the page; `None` for a new one.
    fn flaw_on_page(&self) -> Option<(&Piece, &Flaw)> {
        let Some(Page::Flaw(piece, Some(flaw))) = self.route().page() else {
            return None;
        };
        let piece = self.piece(piece)?;
        Some((piece, piece.flaw(flaw)?))
    }

    pub(crate) fn apply_flaws(&mut self, action: FlawsAction, now: Moment) -> Result<(), AppError> {
        let form = &mut self.states.flaws.form;
        match action {
            FlawsAction::Kind(kind) => form.kind = Some(kind),
            FlawsAction::Station(station) => {
                form.station = (form.station != Some(station)).then_some(station);
            }
            FlawsAction::ClockAt(hour) => form.set_clock(hour),
            FlawsAction::ClockStep(by) => form.step_clock(by),
            FlawsAction::ClearClock => form.clock = None,
            FlawsAction::Treatment(t) => {
                form.treatment = (form.treatment != Some(t)).then_some(t);
            }
            FlawsAction::More => form.more = !form.more,
            FlawsAction::Size(text) => form.size.type_in(text),
            FlawsAction::Through(on) => form.through = on,
            FlawsAction::Face(face) => form.face = (form.face != Some(face)).then_some(face),
            FlawsAction::Goes(by) => form.step_goes(by),
            FlawsAction::Again(again) => {
                form.again = again;
                form.again_day.error.clear();
            }
            FlawsAction::AgainDay(text) => form.again_day.type_in(text),
            FlawsAction::Note(text) => form.note = text,
            FlawsAction::Save => return self.save_flaw(now),
            FlawsAction::TreatAgain => {
                self.states.flaws.form = FlawForm::default();
                self.states.flaws.mode = Mode::Treat;
                self.undo.hide();
            }
            FlawsAction::Correct => self.begin_correcting(),
            FlawsAction::Looked(FlawChange::Longer) => {
                self.states.flaws.longer = Some(Field::default());
                // The bar would only take room from the sheet.
                self.undo.hide();
            }
            FlawsAction::Looked(change) => return self.flaw_looked(change, None, now),
            FlawsAction::Length(text) => {
                if let Some(field) = &mut self.states.flaws.longer {
                    field.type_in(text);
                }
            }
            FlawsAction::SaveLonger => return self.save_longer(now),
            FlawsAction::CloseSheet => self.states.flaws.longer = None,
            FlawsAction::Leave => match self.states.flaws.mode {
                Mode::See => self.back(now),
                Mode::Treat | Mode::Correct => self.states.flaws.mode = Mode::See,
            },
            FlawsAction::AskTakeBack => self.ask_take_back(),
            FlawsAction::Write(writing) => return self.write_flaw(*writing, now),
        }
        Ok(())
    }
}
