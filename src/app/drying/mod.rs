//! Drying: weights over time, what they say, and weighing.

mod ahead;
pub mod ahead_view;
mod air;
mod asking;
mod axis;
mod chart;
mod coming;
mod day;
mod entry;
mod foresight;
mod losing;
mod page;
mod picked;
mod recording;
mod span;
mod staying;
mod strip;
mod uneven;
mod verdict;
pub mod view;
mod warnings;
mod weigh_page;

use evenwall_piece::ids::{EntryId, PieceId};
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::MassChange;

use crate::app::{App, AppError};
use crate::diary::{DiaryAction, Filter, entry_text};
use crate::route::Page;

pub(crate) use chart::local_days;
pub use day::When;
pub(crate) use entry::Pad;
pub use entry::typed;
pub use recording::NewWeight;
pub use span::{Measured, Span};

/// What can be done on these pages. What is recorded names its piece, so that trying again after a failure can never
/// write to another one.
#[derive(Debug, Clone, PartialEq)]
pub enum DryingAction {
    /// Chose how much of the time is shown.
    Show(Span),
    /// Chose weight or moisture.
    Measure(Measured),
    /// Spread the chart so many times about a place, 0 left to 1 right.
    Zoom(f64, f64),
    /// Opened the numbers of thick against thin, or closed them.
    Uneven(bool),
    /// Touched the chart, as fractions from the left and from the top.
    Pick(f64, f64),
    /// Went to the weighing before or after the one picked.
    Step(i32),
    /// Put the picked weighing away.
    Unpick,
    /// Opened the picked weighing in the diary, for correcting.
    Correct,
    /// Opened the sheet behind the three dots, or closed it.
    More(bool),
    /// Noted that something other than drying changed the weight.
    MassChanged(PieceId, MassChange),
    /// A key of the keypad on the screen.
    Key(String),
    /// A key of a keyboard, or a scale that types like one.
    Typed(char),
    /// Chose what stands on the scale with the piece: `bare`, `last` or `other`.
    Tare(String),
    /// Unfolded the tare.
    ShowTare,
    /// Chose when it was weighed.
    When(When),
    /// Typed the day.
    Day(String),
    /// Answered what the page asks.
    Answer(String),
    /// Recorded a weight.
    Weighed(NewWeight),
}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct DryingState {
    span: Span,
    measured: Measured,
    /// The days that two fingers spread over the chart.
    window: Option<chart::Days>,
    uneven: bool,
    picked: Option<EntryId>,
    more: bool,
    weigh: entry::Weigh,
}

impl App {
    pub(crate) fn enter_drying(&mut self, page: Option<&Page>, _now: Moment) {
        let state = &mut self.states.drying;
        state.more = false;
        state.uneven = false;
        // Back from weighing or correcting the chart stands as it was left.
        if !matches!(
            page,
            Some(Page::Drying(_) | Page::Weigh(_) | Page::Diary(_))
        ) {
            state.span = Span::default();
            state.measured = Measured::default();
            state.window = None;
            state.picked = None;
        }
        state.weigh = entry::Weigh::default();
    }

    pub(crate) fn apply_drying(
        &mut self,
        action: DryingAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            DryingAction::MassChanged(piece, change) => {
                return self.mass_changed(&piece, change, now);
            }
            DryingAction::Weighed(weight) => return self.record_weight(weight, now),
            _ => {}
        }
        let Some(id) = self.route().page().and_then(Page::piece).cloned() else {
            return Ok(());
        };
        match action {
            DryingAction::Show(span) => {
                self.states.drying.span = span;
                self.states.drying.window = None;
                self.states.drying.picked = None;
            }
            DryingAction::Measure(measured) => self.states.drying.measured = measured,
            DryingAction::Zoom(by, x) => self.zoom(&id, by, x, now),
            DryingAction::Uneven(open) => self.states.drying.uneven = open,
            DryingAction::Pick(x, y) => self.pick(&id, x, y, now),
            DryingAction::Step(by) => self.step_picked(&id, by, now),
            DryingAction::Unpick => self.states.drying.picked = None,
            DryingAction::Correct => return self.correct_picked(id, now),
            DryingAction::More(open) => self.states.drying.more = open,
            DryingAction::Key(key) => return self.weigh_key(&id, &key, now),
            DryingAction::Typed(c) => return self.weigh_typed(&id, c, now),
            DryingAction::Tare(choice) => self.choose_tare(&id, &choice, now),
            DryingAction::ShowTare => self.states.drying.weigh.tare_shown = true,
            DryingAction::When(when) => {
                self.states.drying.weigh.when = when;
                self.states.drying.weigh.day_wrong.clear();
            }
            DryingAction::Day(text) => {
                self.states.drying.weigh.day = text;
                self.states.drying.weigh.day_wrong.clear();
            }
            DryingAction::Answer(answer) => return self.answer_weigh(&id, &answer, now),
            DryingAction::MassChanged(..) | DryingAction::Weighed(_) => {}
        }
        Ok(())
    }

    fn correct_picked(&mut self, id: PieceId, now: Moment) -> Result<(), AppError> {
        let Some(entry) = self.states.drying.picked.clone() else {
            return Ok(());
        };
        self.open_page(Page::Diary(id), now);
        self.apply_diary(DiaryAction::SetFilter(Filter::Weights), now)?;
        self.apply_diary(DiaryAction::Toggle(entry_text(&entry)), now)
    }
}
