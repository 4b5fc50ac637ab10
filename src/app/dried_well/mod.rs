//! Dried well: the turner's own pieces counted by what they were made of and how they dried. What was, never what will be.

mod bands;
mod curve;
mod forecasts;
mod histories;
mod losses;
mod shares;
mod view;

use chrono::Datelike;
use evenwall_piece::detail::DetailField;
use evenwall_piece::dried::{Dried, RoughWall, dried, rough_wall};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};

use crate::action::Action;
use crate::app::App;
use crate::route::Page;

pub use bands::Kind;
pub use curve::CurveView;
pub use shares::ShareView;
pub use view::{DriedWellView, OptionView};

/// Intervals of shares and of the curve hold this part of the truth in the long run. A convention, no source.
const LEVEL: f64 = 0.95;

/// What can be done there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum DriedWellAction {
    /// Chose by what the pieces are told apart.
    By(Kind),
    /// Chose the year in which drying began; `None`: all.
    Year(Option<i32>),
    /// Went to a piece.
    Open(PieceId),
}

impl From<DriedWellAction> for Action {
    fn from(action: DriedWellAction) -> Self {
        Self::DriedWell(action)
    }
}

/// What the page remembers between two touches.
#[derive(Debug, Default)]
pub struct DriedWellState {
    by: Kind,
    year: Option<i32>,
}

/// A piece with how it fared.
pub(crate) struct Fared<'a> {
    pub piece: &'a Piece,
    pub dried: Dried,
    pub wall: Option<RoughWall>,
}

impl Fared<'_> {
    /// The year in which its drying began.
    fn year(&self) -> i32 {
        self.dried.since.year()
    }

    fn log(&self) -> Option<&str> {
        self.piece.details.text(DetailField::Log)
    }
}

impl App {
    pub(crate) fn enter_dried_well(&mut self, page: Option<&Page>) {
        if page != Some(&Page::DriedWell) && !self.route.pages.contains(&Page::DriedWell) {
            self.states.dried_well = DriedWellState::default();
        }
    }

    pub(crate) fn apply_dried_well(&mut self, action: DriedWellAction, now: Moment) {
        match action {
            DriedWellAction::By(kind) => self.states.dried_well.by = kind,
            DriedWellAction::Year(year) => self.states.dried_well.year = year,
            DriedWellAction::Open(piece) => self.open_page(Page::Piece(piece), now),
        }
    }

    /// Every piece that was ever set to dry, with how it fared, the longest drying first begun first.
    pub(crate) fn dried_well_pieces(&self, now: Moment) -> Vec<Fared<'_>> {
        let mut all: Vec<Fared<'_>> = self
            .pieces()
            .filter_map(|piece| {
                Some(Fared {
                    piece,
                    dried: dried(piece, now)?,
                    wall: rough_wall(piece),
                })
            })
            .collect();
        all.sort_by_key(|f| f.dried.since);
        all
    }
}
