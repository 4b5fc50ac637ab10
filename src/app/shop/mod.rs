//! Shop: climate, units, rules, jaws, bars, cautions and about.

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum ShopAction {}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct ShopState {}

impl App {
    pub(crate) fn enter_shop(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_shop(&mut self, action: ShopAction, _now: Moment) -> Result<(), AppError> {
        match action {}
    }
}
