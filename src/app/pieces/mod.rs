//! Pieces: all pieces, searched, filtered and sorted.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum PiecesAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct PiecesState {}

impl App {
    pub(crate) fn enter_pieces(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_pieces(
        &mut self,
        action: PiecesAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
