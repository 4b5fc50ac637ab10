//! Sum: how a figure of the result comes about, on a sheet over the page.

use evenwall_piece::piece::Piece;

use crate::app::App;

/// Which sum is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallSum {
    /// What the unevenness means while it dries.
    Drying,
    /// The expected weight.
    Weight,
}

/// A sum in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SumView {
    /// The title.
    pub title: String,
    /// What it comes to.
    pub line: String,
    /// How it comes about.
    pub why: String,
    /// What it rests on.
    pub source: String,
}

impl App {
    pub(super) fn sum_view(&self, piece: &Piece) -> Option<SumView> {
        match self.states.wall.sum? {
            WallSum::Drying => self.drying_sum(piece, self.evenness(piece).as_ref()),
            WallSum::Weight => self.weight_sum(piece),
        }
    }
}
