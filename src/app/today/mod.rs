//! Today: what is due, the rounds, going away and catching up.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum TodayAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct TodayState {}

impl App {
    /// How many things are due today or overdue, for the tab.
    #[must_use]
    pub fn waiting_today(&self, _now: Moment) -> usize {
        0
    }

    pub(crate) fn enter_today(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_today(
        &mut self,
        action: TodayAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
