//! Details: one field at a time, changed in a sheet with the input that suits it.

use evenwall_piece::detail::{DetailField, DetailValue, FieldKind};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::mark::{MarkProblem, mark_problem};
use evenwall_piece::piece::Moment;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::details::{label, understand, value_text};
use crate::piece::PieceAction;
use crate::route::Page;

/// What can be done on the Details page.
#[derive(Debug, Clone, PartialEq)]
pub enum DetailsAction {
    /// Touched a field.
    Open(DetailField),
    /// Opened the page at a field, from elsewhere.
    OpenAt {
        /// The piece.
        piece: PieceId,
        /// The field.
        field: DetailField,
    },
    /// Closed the sheet; nothing changes.
    Close,
    /// Typed into the field.
    Typed(String),
    /// Chose a value of a closed list, a wood of the list, or a way to read a number.
    Chose(String),
    /// Saves what was typed.
    Save(PieceId),
    /// Clears the field.
    Clear(PieceId),
}

/// What the Details page remembers between two touches.
#[derive(Debug, Default)]
pub struct DetailsState {
    pub(crate) field: Option<DetailField>,
    pub(crate) typed: String,
    pub(crate) error: Option<String>,
}

impl App {
    pub(crate) fn apply_details(
        &mut self,
        action: DetailsAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            DetailsAction::Open(field) => self.open_field(field),
            DetailsAction::OpenAt { piece, field } => {
                self.open_page(Page::Details(piece), now);
                self.open_field(field);
            }
            DetailsAction::Close => self.states.piece.details = DetailsState::default(),
            DetailsAction::Typed(text) => {
                let state = &mut self.states.piece.details;
                state.typed = text;
                state.error = None;
            }
            DetailsAction::Chose(text) => {
                let state = &mut self.states.piece.details;
                state.typed = text;
                state.error = None;
            }
            DetailsAction::Save(piece) => return self.save_field(&piece, now),
            DetailsAction::Clear(piece) => {
                if let Some(field) = self.states.piece.details.field {
                    if let Some(sentence) = self.mark_fault(&piece, field, None) {
                        self.states.piece.details.error = Some(sentence);
                        return Ok(());
                    }
                    return self.set_detail(&piece, field, None, now);
                }
            }
        }
        Ok(())
    }

    fn open_field(&mut self, field: DetailField) {
        let typed = self
            .piece_on_page()
            .and_then(|p| p.details.get(field))
            .map(|value| match (value, field.kind()) {
                (DetailValue::Text(key), FieldKind::Choice) => key.clone(),
                (value, _) => value_text(self, field, value),
            })
            .unwrap_or_default();
        self.states.piece.details = DetailsState {
            field: Some(field),
            typed,
            error: None,
        };
    }

    fn save_field(&mut self, piece: &PieceId, now: Moment) -> Result<(), AppError> {
        let state = &self.states.piece.details;
        let Some(field) = state.field else {
            return Ok(());
        };
        let typed = state.typed.clone();
        let value = match understand(self, field, &typed, now) {
            Ok(value) => value,
            Err(sentence) => {
                self.states.piece.details.error = Some(sentence);
                return Ok(());
            }
        };
        // Nothing was changed: what is there was only looked at.
        let same = self.piece(piece).is_some_and(|p| {
            let now_text = p.details.get(field).map(|v| value_text(self, field, v));
            now_text.is_some_and(|t| t == typed) || p.details.get(field) == value.as_ref()
        });
        if same {
            self.states.piece.details = DetailsState::default();
            return Ok(());
        }
        if let Some(sentence) = self.mark_fault(piece, field, value.as_ref()) {
            self.states.piece.details.error = Some(sentence);
            return Ok(());
        }
        self.set_detail(piece, field, value, now)
    }

    /// The sentence for a mark that cannot be kept: blank, too long, or that of another living piece. One that reads upside
    /// down as another may be kept.
    fn mark_fault(
        &self,
        id: &PieceId,
        field: DetailField,
        value: Option<&DetailValue>,
    ) -> Option<String> {
        if field != DetailField::Mark {
            return None;
        }
        let mark = match value {
            Some(DetailValue::Text(mark)) => mark.as_str(),
            _ => "",
        };
        let others = self.pieces().filter(|p| p.id != *id);
        let problem = mark_problem(mark, others).filter(|p| !p.only_warns())?;
        let holder = match &problem {
            MarkProblem::InUse(holder) => self.piece(holder),
            _ => None,
        };
        let Some(other) = holder else {
            return Some(self.mark_problem_text(mark, &problem));
        };
        let head = self.head_of(other);
        Some(self.words().with(
            "piece-mark-taken",
            &[("mark", mark.into()), ("other", head.title.into())],
        ))
    }

    pub(crate) fn set_detail(
        &mut self,
        id: &PieceId,
        field: DetailField,
        value: Option<DetailValue>,
        now: Moment,
    ) -> Result<(), AppError> {
        let shown = value.as_ref().map(|v| value_text(self, field, v));
        // The sheet may be closed before it is tried again.
        self.retry_with(Action::Piece(PieceAction::SetDetail {
            piece: id.clone(),
            field,
            value: value.clone(),
        }));
        self.record(id, now, vec![PieceFact::Detail { field, value }], now)?;
        self.states.piece.details = DetailsState::default();
        let what = label(self, field);
        let said = match shown {
            Some(value) => {
                let short: String = value.chars().take(40).collect();
                self.words().with(
                    "piece-said-detail",
                    &[("what", what.into()), ("value", short.into())],
                )
            }
            None => self
                .words()
                .with("piece-said-cleared", &[("what", what.into())]),
        };
        self.say(said);
        Ok(())
    }
}
