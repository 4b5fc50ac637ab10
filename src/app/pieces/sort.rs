//! Sort: in which order pieces are listed.

use std::cmp::{Ordering, Reverse};

use chrono::NaiveDate;
use evenwall_piece::agenda::by_mark;
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};

use super::due::Due;
use super::search::folded;

/// In which order pieces are listed; those alike stand by their marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sort {
    /// What is due first comes first.
    #[default]
    Due,
    /// By mark.
    Mark,
    /// The newest first.
    Newest,
    /// What was left alone longest first.
    Untouched,
    /// By log, so that twins stand together.
    Log,
}

impl Sort {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 5] = [
        Self::Due,
        Self::Mark,
        Self::Newest,
        Self::Untouched,
        Self::Log,
    ];

    /// Stable key, used by the screens and, behind `pieces-sort-`, by the words.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Due => "due",
            Self::Mark => "mark",
            Self::Newest => "newest",
            Self::Untouched => "untouched",
            Self::Log => "log",
        }
    }

    /// The order with this key, or `None`.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|s| s.key() == key)
    }
}

/// When something was last recorded about a piece; what is dated ahead counts as now.
pub(super) fn last_touched(piece: &Piece, now: Moment) -> Option<Moment> {
    let entries = piece.diary.iter().filter(|e| !e.retracted);
    entries.map(|e| e.at.min(now)).max()
}

/// Puts rows of a piece and what is due on it into order.
pub(super) fn sort(rows: &mut [(&Piece, Option<Due>)], sort: Sort, now: Moment) {
    type Row<'a> = (&'a Piece, Option<Due>);
    let today = now.date_naive();
    let marks = |a: &Row<'_>, b: &Row<'_>| by_mark(a.0.mark(), b.0.mark());
    match sort {
        Sort::Due => {
            // What may wait counts as due today, however late it is.
            let key = |(piece, due): &Row<'_>| {
                let due = due.as_ref();
                (
                    piece.end.is_some(),
                    !due.is_some_and(Due::late),
                    due.map_or(NaiveDate::MAX, |d| {
                        if d.late() { d.day } else { d.day.max(today) }
                    }),
                    Reverse(due.map(|d| d.task.urgency)),
                )
            };
            rows.sort_by(|a, b| key(a).cmp(&key(b)).then_with(|| marks(a, b)));
        }
        Sort::Mark => rows.sort_by(marks),
        Sort::Newest => {
            let key = |(piece, _): &Row<'_>| Reverse(piece.created);
            rows.sort_by(|a, b| key(a).cmp(&key(b)).then_with(|| marks(a, b)));
        }
        Sort::Untouched => {
            rows.sort_by_cached_key(|(piece, _)| (last_touched(piece, now), piece.id.clone()));
        }
        Sort::Log => rows.sort_by(|a, b| by_log(a.0, b.0).then_with(|| marks(a, b))),
    }
}

/// Pieces whose log is not said come last.
fn by_log(a: &Piece, b: &Piece) -> Ordering {
    let key = |p: &Piece| {
        let log = p.details.text(DetailField::Log).map(folded);
        (log.is_none(), log)
    };
    key(a).cmp(&key(b))
}
