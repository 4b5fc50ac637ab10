//! Pieces: all pieces, searched, filtered and sorted.

mod card;
mod due;
mod filter;
mod search;
mod sort;
mod view;

use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

pub use card::CardView;
pub use filter::Filter;
pub(crate) use search::folded;
pub use sort::Sort;
pub use view::{ChipView, EmptyView, PiecesView};

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum PiecesAction {
    /// Typed into the search field.
    Search(String),
    /// Chose which pieces are shown.
    Filter(Filter),
    /// Chose their order.
    Sort(Sort),
    /// Cleared search and filter.
    Clear,
}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct PiecesState {
    search: String,
    filter: Filter,
    sort: Sort,
}

/// More than this is no search but a pasted text.
const LONGEST_SEARCH: usize = 100;

impl App {
    pub(crate) fn enter_pieces(&mut self, _page: Option<&Page>, _now: Moment) {}

    pub(crate) fn apply_pieces(
        &mut self,
        action: PiecesAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        let state = &mut self.states.pieces;
        match action {
            PiecesAction::Search(text) => {
                state.search = text.chars().take(LONGEST_SEARCH).collect();
            }
            PiecesAction::Filter(filter) => state.filter = filter,
            PiecesAction::Sort(sort) => state.sort = sort,
            PiecesAction::Clear => {
                state.search.clear();
                state.filter = Filter::All;
            }
        }
        Ok(())
    }
}
