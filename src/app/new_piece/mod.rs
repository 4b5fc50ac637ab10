//! New piece: entered in under a minute, from a mark alone.

mod boxes;
mod draft;
mod facts;
mod saving;
mod sizes;
mod view;
mod wood_search;

use evenwall_piece::detail::DetailField;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;

pub use draft::{Draft, MOST_AT_ONCE};
pub use view::{ChoiceGroup, ChoiceView, FieldBox, NewPieceView, OutlineView};

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum NewPieceAction {
    /// Opened the form for another piece from the same log as this one.
    AnotherLike(PieceId),
    /// Typed into a field.
    Typed(DetailField, String),
    /// Chose a value of a closed list by its key; the chosen one again takes it back.
    Chose(DetailField, String),
    /// Chose a wood from the list, by its key; empty for "don't know".
    Wood(String),
    /// Chose diameter and height at once, by the place among the sizes offered.
    Size(usize),
    /// One piece more or fewer in one go.
    Count(i32),
    /// Unfolded or folded the rest of the form.
    More(bool),
    /// Chose the stage in which it is entered.
    Stage(Stage),
    /// Chose how it dries.
    Method(Method),
    /// Typed since when it is in that stage.
    Since(String),
    /// Saved.
    Save,
    /// Wants to leave.
    Leave,
    /// Leaves, and what was typed goes.
    Discard,
}

/// What the page remembers: what was typed stays until it is saved or thrown away, also while another page is looked at.
#[derive(Debug, Default)]
pub struct NewPieceState {
    draft: Draft,
}

impl App {
    pub(crate) fn enter_new_piece(&mut self, page: Option<&Page>, _now: Moment) {
        // A form in which nothing was typed begins anew each time.
        if page != Some(&Page::NewPiece) && !self.states.new_piece.draft.touched() {
            self.states.new_piece.draft = Draft::default();
        }
    }

    pub(crate) fn apply_new_piece(
        &mut self,
        action: NewPieceAction,
        now: Moment,
    ) -> Result<(), AppError> {
        let draft = &mut self.states.new_piece.draft;
        match action {
            NewPieceAction::AnotherLike(id) => {
                self.another_like(&id)?;
                self.open_page(Page::NewPiece, now);
            }
            NewPieceAction::Typed(field, text) => draft.type_into(field, text),
            NewPieceAction::Chose(field, key) => draft.choose(field, key),
            NewPieceAction::Wood(key) => {
                let name = if key.is_empty() {
                    String::new()
                } else {
                    self.wood_name(&key)
                };
                self.states.new_piece.draft.pick_wood(name);
            }
            NewPieceAction::Size(place) => self.pick_size(place),
            NewPieceAction::Count(step) => draft.step_count(step),
            NewPieceAction::More(open) => draft.more = open,
            NewPieceAction::Stage(stage) => draft.set_stage(stage),
            NewPieceAction::Method(method) => draft.set_method(method),
            NewPieceAction::Since(text) => draft.set_since(text),
            NewPieceAction::Save => return self.save_new_piece(now),
            NewPieceAction::Leave => {
                if draft.touched() {
                    self.ask_before_leaving();
                } else {
                    self.back(now);
                }
            }
            NewPieceAction::Discard => {
                self.states.new_piece.draft = Draft::default();
                self.back(now);
            }
        }
        Ok(())
    }

    fn ask_before_leaving(&mut self) {
        let words = self.words();
        let question = Question {
            title: words.text("new-piece-leave-title"),
            text: words.text("new-piece-leave-text"),
            choices: vec![
                Choice {
                    label: words.text("new-piece-keep-editing"),
                    style: ChoiceStyle::Primary,
                    action: None,
                },
                Choice {
                    label: words.text("new-piece-leave"),
                    style: ChoiceStyle::Danger,
                    action: Some(Action::NewPiece(NewPieceAction::Discard)),
                },
            ],
            caution: false,
        };
        self.ask(question);
    }
}
