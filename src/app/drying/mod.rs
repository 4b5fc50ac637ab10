//! Drying: weights over time and weighing.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum DryingAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct DryingState {}

impl App {
    pub(crate) fn enter_drying(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_drying(
        &mut self,
        action: DryingAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
