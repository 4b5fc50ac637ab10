//! Piece: where it stands, its details, stages, checklist and ending.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct PieceState {}

impl App {
    pub(crate) fn enter_piece(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_piece(
        &mut self,
        action: PieceAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
