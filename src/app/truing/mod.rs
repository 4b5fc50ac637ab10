//! Truing: True and Finish, from the crack question to the signature.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum TruingAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct TruingState {}

impl App {
    pub(crate) fn enter_truing(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_truing(
        &mut self,
        action: TruingAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
