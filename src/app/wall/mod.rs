//! Wall: measuring by station, the result, the outline.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum WallAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct WallState {}

impl App {
    pub(crate) fn enter_wall(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_wall(&mut self, action: WallAction, _now: Moment) -> Result<(), AppError> {
        match action {}
    }
}
