//! Flaws: knots, bark inclusions, checks and what was done to them.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum FlawsAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct FlawsState {}

impl App {
    pub(crate) fn enter_flaws(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_flaws(
        &mut self,
        action: FlawsAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
