//! View: the list of pieces as it is shown.

use std::collections::BTreeMap;

use evenwall_piece::agenda::{Bench, by_mark};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};

use super::card::{CardView, card};
use super::due::due_of;
use super::filter::Filter;
use super::search::{Search, folded};
use super::sort::{Sort, sort};
use crate::app::App;

/// A chip of the filter, or a line of the order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChipView {
    /// Stable key.
    pub key: &'static str,
    /// Its word.
    pub text: String,
    /// How many pieces; empty for an order.
    pub count: String,
    /// Chosen.
    pub chosen: bool,
}

/// What stands in place of an empty list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EmptyView {
    /// Its title.
    pub title: String,
    /// What to do; may be empty.
    pub text: String,
    /// The word on the button that clears search and filter; empty for none.
    pub clear: String,
}

/// The list of pieces.
#[derive(Debug, Clone, PartialEq)]
pub struct PiecesView {
    /// Its title.
    pub title: String,
    /// "12 on the go, 31 done"; empty while there is no piece.
    pub counts: String,
    /// The search as typed.
    pub search: String,
    /// What the search field says while it is empty.
    pub search_hint: String,
    /// The word for clearing the search.
    pub clear: String,
    /// The chips; empty while there is no piece.
    pub filters: Vec<ChipView>,
    /// The order in force.
    pub sort: String,
    /// The title of the choice of the order.
    pub sort_title: String,
    /// The word for closing that choice.
    pub close: String,
    /// The orders.
    pub sorts: Vec<ChipView>,
    /// The pieces.
    pub cards: Vec<CardView>,
    /// In place of them, where there are none.
    pub empty: Option<EmptyView>,
    /// The word on the button for a new piece.
    pub new_piece: String,
    /// The word on the button that leads to what dried well; empty while there is no piece.
    pub dried_well: String,
}

impl App {
    /// The list of pieces.
    #[must_use]
    pub fn pieces_view(&self, now: Moment) -> PiecesView {
        let words = self.words();
        let state = &self.states.pieces;
        let all: Vec<&Piece> = self.pieces().chain(self.deleted_pieces()).collect();
        let search = Search::new(&state.search);
        let cards = self.with_bench(now, |bench| self.cards(&all, &search, bench));
        let empty = cards.is_empty().then(|| self.no_pieces(&all, &search));
        let count = |filter: Filter| all.iter().filter(|p| filter.holds(p)).count();
        let counts = if all.is_empty() {
            String::new()
        } else {
            words.with(
                "pieces-counts",
                &[
                    ("going", count(Filter::All).into()),
                    ("done", count(Filter::Finished).into()),
                ],
            )
        };
        PiecesView {
            title: words.text("pieces-title"),
            counts,
            search: state.search.clone(),
            search_hint: words.text("pieces-search"),
            clear: words.text("action-clear"),
            filters: if all.is_empty() {
                Vec::new()
            } else {
                self.filter_chips(&count)
            },
            sort: words.text(&format!("pieces-sort-{}", state.sort.key())),
            sort_title: words.text("pieces-sort-title"),
            close: words.text("action-close"),
            sorts: Sort::ALL
                .into_iter()
                .map(|s| ChipView {
                    key: s.key(),
                    text: words.text(&format!("pieces-sort-{}", s.key())),
                    count: String::new(),
                    chosen: s == state.sort,
                })
                .collect(),
            cards,
            empty,
            new_piece: words.text("pieces-new"),
            dried_well: if all.is_empty() {
                String::new()
            } else {
                words.text("dried-well-title")
            },
        }
    }

    /// Chips that hold something, and the one that is chosen.
    fn filter_chips(&self, count: &dyn Fn(Filter) -> usize) -> Vec<ChipView> {
        let chosen = self.states.pieces.filter;
        Filter::all()
            .map(|f| (f, count(f)))
            .filter(|(f, n)| *n > 0 || *f == chosen || *f == Filter::All)
            .map(|(f, n)| ChipView {
                key: f.key(),
                text: self.words().text(&match f {
                    Filter::Stage(stage) => format!("stage-{}", stage.key()),
                    other => format!("pieces-filter-{}", other.key()),
                }),
                count: n.to_string(),
                chosen: f == chosen,
            })
            .collect()
    }

    fn cards(&self, all: &[&Piece], search: &Search, bench: &Bench<'_>) -> Vec<CardView> {
        let state = &self.states.pieces;
        // Whoever searches among all looks for a piece, not for one on the go.
        let everywhere = state.filter == Filter::All && !search.is_empty();
        let shown = |p: &Piece| {
            if everywhere {
                p.deleted.is_none()
            } else {
                state.filter.holds(p)
            }
        };
        let mut rows: Vec<_> = all
            .iter()
            .filter(|p| shown(p) && search.finds(self, p))
            .map(|p| (*p, due_of(p, bench)))
            .collect();
        sort(&mut rows, state.sort, bench.now);
        let logs = logs_of(all);
        let mut cards: Vec<CardView> = rows
            .iter()
            .map(|(piece, due)| {
                let twins: Vec<&Piece> = log_of(piece)
                    .and_then(|log| logs.get(&log))
                    .into_iter()
                    .flatten()
                    .filter(|p| p.id != piece.id)
                    .copied()
                    .collect();
                card(self, piece, due.as_ref(), &twins, bench)
            })
            .collect();
        if state.sort == Sort::Log {
            let mut before = None;
            for (card, (piece, _)) in cards.iter_mut().zip(&rows) {
                let log = log_of(piece);
                if before.as_ref() != Some(&log) {
                    card.heading = piece
                        .details
                        .text(DetailField::Log)
                        .map_or_else(|| self.words().text("pieces-no-log"), str::to_owned);
                }
                before = Some(log);
            }
        }
        cards
    }

    fn no_pieces(&self, all: &[&Piece], search: &Search) -> EmptyView {
        let words = self.words();
        let state = &self.states.pieces;
        if all.is_empty() {
            return EmptyView {
                title: words.text("pieces-empty-title"),
                text: words.text("pieces-empty-text"),
                clear: String::new(),
            };
        }
        let title = if search.is_empty() {
            words.text("pieces-nothing-here")
        } else {
            let typed = state.search.trim();
            words.with("pieces-no-match", &[("typed", typed.into())])
        };
        let narrow = !search.is_empty() || state.filter != Filter::All;
        EmptyView {
            title,
            text: if search.is_empty() {
                String::new()
            } else {
                words.text("pieces-no-match-text")
            },
            clear: if narrow {
                words.text("action-clear")
            } else {
                String::new()
            },
        }
    }
}

/// The log of a piece as it is compared.
fn log_of(piece: &Piece) -> Option<String> {
    piece.details.text(DetailField::Log).map(folded)
}

/// Pieces by log, each by mark; deleted ones are left out.
fn logs_of<'a>(all: &[&'a Piece]) -> BTreeMap<String, Vec<&'a Piece>> {
    let mut logs: BTreeMap<String, Vec<&Piece>> = BTreeMap::new();
    for piece in all.iter().filter(|p| p.deleted.is_none()) {
        if let Some(log) = log_of(piece) {
            logs.entry(log).or_default().push(piece);
        }
    }
    for pieces in logs.values_mut() {
        pieces.sort_by(|a, b| by_mark(a.mark(), b.mark()));
    }
    logs
}
