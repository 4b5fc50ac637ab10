//! Plan: what wall to leave, before the tool touches wood; and what goes with it: spigot, depth to drill, speed, reach, weeks.
//!
//! Everything may be left out. The plan of the tab is kept with the settings of the device; a piece's own plan begins with what
//! the piece says and is written to it only when asked.

mod cells;
mod draft;
mod entering;
mod faults;
mod field;
mod given;
mod inputs;
mod lines;
mod others;
mod reckon;
mod results;
mod road;
mod rounding;
mod starting;
mod sums;
mod view;

use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};

use crate::action::Action;
use crate::app::{App, AppError};
use crate::measured::Field;
use crate::route::Page;

pub use cells::ResultView;
pub use draft::{Draft, Size};
pub use entering::{EntryView, WoodSheetView};
pub use field::PlanField;
pub use inputs::{ChoiceView, InputsView, StepperView};
pub use sums::SumView;
pub use view::{PlanView, WriteView};

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanAction {
    /// Chose something: which (form, grain, pith, place, jaws, bar), and the key chosen; the chosen one again takes it back.
    Chose(String, String),
    /// Chose diameter and height at once, by the place among the sizes offered.
    Size(usize),
    /// Stepped a size up (1) or down (-1); how many steps the key was held for.
    Step(PlanField, i32, i32),
    /// Opened a size to enter it.
    Enter(PlanField),
    /// Opened the choice of the wood.
    EnterWood,
    /// Opened the sum behind a result, by its key.
    Sum(String),
    /// Typed into the field of the sheet.
    Typed(String),
    /// Pressed a key of the keypad.
    Key(String),
    /// Takes what was typed.
    Set,
    /// Goes back to what is usual.
    Usual,
    /// Picked a wood by its name; empty for "don't know".
    Wood(String),
    /// Closed the sheet.
    Close,
    /// Starts the plan afresh.
    Afresh,
    /// Brings the plan back that was started afresh.
    BringBack,
    /// Reads the general cautions.
    Cautions,
    /// Starts a piece from the plan, or writes the plan to the piece it is of.
    Go,
    /// Keeps the plan on this device: tried again where that failed.
    Keep,
}

/// What lies over the page.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum PlanSheet {
    /// A size is entered.
    Field(PlanField, Field),
    /// A wood is looked for.
    Wood(String),
    /// The sum behind a result, by its key.
    Sum(String),
}

/// What the page remembers.
#[derive(Debug, Default)]
pub struct PlanState {
    /// True once the plan kept on the device was taken up.
    taken_up: bool,
    /// The plan of the tab.
    tab: Draft,
    /// The piece whose plan is open.
    of: Option<PieceId>,
    /// Its plan.
    own: Draft,
    /// The plan before it was started afresh, to bring back.
    before: Option<Draft>,
    sheet: Option<PlanSheet>,
    /// The id of a piece that could not be saved: trying again goes on with it.
    unsaved: Option<PieceId>,
}

impl App {
    pub(crate) fn enter_plan(&mut self, page: Option<&Page>, _now: Moment) {
        if !self.states.plan.taken_up {
            self.states.plan.taken_up = true;
            self.states.plan.tab = self.device().plan.clone();
        }
        let of = match page {
            Some(Page::PlanOf(id)) => Some(id.clone()),
            _ => None,
        };
        if of != self.states.plan.of {
            let piece = of.as_ref().and_then(|id| self.piece(id));
            self.states.plan.own = piece.map(Draft::of).unwrap_or_default();
            self.states.plan.of = of;
        }
        self.states.plan.before = None;
        self.states.plan.sheet = None;
    }

    /// The plan on screen: a piece's own, or that of the tab.
    pub(crate) fn plan_draft(&self) -> &Draft {
        let state = &self.states.plan;
        if state.of.is_some() {
            &state.own
        } else {
            &state.tab
        }
    }

    /// The piece whose plan is open.
    pub(crate) fn plan_piece(&self) -> Option<&Piece> {
        self.piece(self.states.plan.of.as_ref()?)
    }

    pub(crate) fn apply_plan(&mut self, action: PlanAction, now: Moment) -> Result<(), AppError> {
        match action {
            PlanAction::Chose(key, value) => self.plan_change(|d| choose(d, &key, &value)),
            PlanAction::Size(place) => self.plan_pick_size(place),
            PlanAction::Step(field, direction, repeats) => {
                self.plan_step(field, direction, repeats)
            }
            PlanAction::Enter(field) => {
                self.undo.hide();
                self.states.plan.sheet = Some(PlanSheet::Field(field, Field::default()));
                Ok(())
            }
            PlanAction::EnterWood => {
                self.undo.hide();
                self.states.plan.sheet = Some(PlanSheet::Wood(String::new()));
                Ok(())
            }
            PlanAction::Sum(key) => {
                self.undo.hide();
                self.states.plan.sheet = Some(PlanSheet::Sum(key));
                Ok(())
            }
            PlanAction::Typed(text) => {
                self.plan_typed(text);
                Ok(())
            }
            PlanAction::Key(key) => self.plan_key(&key),
            PlanAction::Set => self.plan_set(),
            PlanAction::Usual => {
                let sheet = self.states.plan.sheet.take();
                match sheet {
                    Some(PlanSheet::Field(field, _)) => self.plan_change(|d| d.clear(field)),
                    _ => Ok(()),
                }
            }
            PlanAction::Wood(name) => {
                self.states.plan.sheet = None;
                let stored = self
                    .known_wood(&name)
                    .map_or_else(|| name.trim().to_owned(), |w| w.key().to_owned());
                self.plan_change(|d| d.choose("wood", &stored))
            }
            PlanAction::Close => {
                self.states.plan.sheet = None;
                Ok(())
            }
            PlanAction::Afresh => {
                self.undo.hide();
                let fresh = match self.plan_piece() {
                    Some(piece) => Draft::of(piece),
                    None => Draft::default(),
                };
                let before = self.plan_draft().clone();
                let outcome = self.plan_change(|d| *d = fresh);
                self.states.plan.before = Some(before);
                outcome
            }
            PlanAction::BringBack => match self.states.plan.before.take() {
                Some(before) => self.plan_change(|d| *d = before),
                None => Ok(()),
            },
            PlanAction::Cautions => {
                self.show_general_cautions();
                Ok(())
            }
            PlanAction::Go => self.plan_go(now),
            PlanAction::Keep => self.plan_keep(),
        }
    }

    /// Changes the plan on screen. It stands changed also where it could not be kept: then keeping it can be tried again.
    fn plan_change(&mut self, change: impl FnOnce(&mut Draft)) -> Result<(), AppError> {
        let state = &mut self.states.plan;
        state.before = None;
        if state.of.is_some() {
            change(&mut state.own);
            return Ok(());
        }
        change(&mut state.tab);
        self.plan_keep()
    }

    fn plan_keep(&mut self) -> Result<(), AppError> {
        if self.device().plan == self.states.plan.tab {
            return Ok(());
        }
        let mut device = self.device().clone();
        device.plan = self.states.plan.tab.clone();
        self.retry_with(Action::Plan(PlanAction::Keep));
        self.set_device(device)
    }
}

fn choose(draft: &mut Draft, key: &str, value: &str) {
    let again = draft.chosen(key) == Some(value);
    match key {
        // One of them is always so: the same again changes nothing.
        "form" | "grain" | "pith" | "place" => draft.choose(key, value),
        "jaws" | "bar" => {
            draft.choose(key, if again { "" } else { value });
            let typed = if key == "jaws" {
                PlanField::Jaws
            } else {
                PlanField::Bar
            };
            draft.clear(typed);
        }
        _ => return,
    }
    // The grain follows the form until it is chosen again: a bowl is usually side grain.
    if key == "form" && !again {
        draft.choose("grain", "");
    }
    if key == "place" && value != "own" {
        draft.clear(PlanField::Moisture);
    }
}
