//! New piece: entered in under a minute, from a mark alone.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum NewPieceAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct NewPieceState {}

impl App {
    pub(crate) fn enter_new_piece(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_new_piece(
        &mut self,
        action: NewPieceAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
