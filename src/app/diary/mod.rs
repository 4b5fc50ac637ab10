//! Diary: everything recorded about a piece.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum DiaryAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct DiaryState {}

impl App {
    pub(crate) fn enter_diary(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_diary(
        &mut self,
        action: DiaryAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        match action {}
    }
}
