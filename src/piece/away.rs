//! Away: what to do with the bags before leaving, one list on the return, and one after months of silence.
//!
//! Common practice, no source. The lists say what to do and never how late it is.

use chrono::NaiveDate;

use crate::agenda::{
    Agenda, Bench, Task, TaskKind, by_mark, days_from_to, is_paused, next_look, standing,
};
use crate::bag::BagState;
use crate::ids::PieceId;
use crate::piece::Piece;
use crate::vocabulary::{BagFeel, keyed};

/// After more days than these without a record, what is overdue comes as one list.
pub const SILENCE_DAYS: i64 = 30;

keyed!(
    /// What to do with a piece before leaving.
    BeforeLeaving {
        /// The bag was damp or dry last time: open its neck.
        OpenNeck = "open-neck",
        /// The bag was wet, mould was seen, the wood moulds easily, or the bag was never felt: put it in paper.
        PutInPaper = "put-in-paper",
        /// Half-turned on the lathe: finish hollowing it, or bag it.
        FinishOrBag = "finish-or-bag",
    }
);

/// One piece that wants a hand before leaving.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeavingRow {
    /// Which piece.
    pub piece: PieceId,
    /// What to do.
    pub act: BeforeLeaving,
    /// The day on which its next look would fall due.
    pub due: NaiveDate,
}

/// What to do before leaving, until a day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Leaving {
    /// Pieces that want a hand, by mark.
    pub act: Vec<LeavingRow>,
    /// Drying pieces whose next look falls due meanwhile and may wait for the return, by mark.
    pub may_wait: Vec<PieceId>,
    /// Drying pieces that are not due before the return, by mark.
    pub fine: Vec<PieceId>,
}

/// What to do before leaving, if the turner is back on a day: closed bags whose next look falls due before it are opened
/// or put in paper.
#[must_use]
pub fn before_leaving(pieces: &[&Piece], bench: &Bench, back_on: NaiveDate) -> Leaving {
    let plain = bench.without_away();
    let mut living: Vec<&Piece> = pieces
        .iter()
        .copied()
        .filter(|p| p.living() && !is_paused(p, bench.today))
        .collect();
    living.sort_by(|a, b| by_mark(a.mark(), b.mark()).then_with(|| a.id.cmp(&b.id)));
    let mut leaving = Leaving::default();
    for piece in living {
        let id = piece.id.clone();
        if piece.half_turned.is_some() {
            leaving.act.push(LeavingRow {
                piece: id,
                act: BeforeLeaving::FinishOrBag,
                due: bench.today,
            });
            continue;
        }
        let Some((s, due)) = standing(piece, &plain).zip(next_look(piece, &plain)) else {
            continue;
        };
        if due >= back_on {
            leaving.fine.push(id);
        } else if s.state != BagState::Closed {
            leaving.may_wait.push(id);
        } else {
            let dry_enough = matches!(s.feel, Some(BagFeel::Damp | BagFeel::Nothing));
            let act = if dry_enough && !s.mouldy && !(bench.moulds_easily)(piece) {
                BeforeLeaving::OpenNeck
            } else {
                BeforeLeaving::PutInPaper
            };
            leaving.act.push(LeavingRow {
                piece: id,
                act,
                due,
            });
        }
    }
    leaving
}

/// One piece of a list, with all that waits for it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ListRow {
    /// Which piece.
    pub piece: PieceId,
    /// What is to be done, what matters most first.
    pub kinds: Vec<TaskKind>,
    /// The local day on which it was last looked at or weighed, where it was.
    pub last: Option<NaiveDate>,
}

/// Tasks as one row a piece, in the order in which the pieces first come. No lateness, no scolding.
#[must_use]
pub fn one_row_a_piece<'a>(tasks: impl Iterator<Item = &'a Task>) -> Vec<ListRow> {
    let mut rows: Vec<ListRow> = Vec::new();
    let mut place = std::collections::HashMap::new();
    for task in tasks {
        let at = *place.entry(&task.piece).or_insert_with(|| {
            rows.push(ListRow {
                piece: task.piece.clone(),
                kinds: Vec::new(),
                last: None,
            });
            rows.len() - 1
        });
        rows[at].kinds.push(task.kind.clone());
        rows[at].last = rows[at].last.max(task.last);
    }
    rows
}

/// The list on the return.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Return {
    /// The day on which the turner left.
    pub left: NaiveDate,
    /// The day of the return.
    pub back: NaiveDate,
    /// All that is due, one row a piece, what matters most first.
    pub rows: Vec<ListRow>,
}

/// The one list on the return from days away, for as long as something that fell due meanwhile waits; `None` otherwise.
#[must_use]
pub fn on_return(agenda: &Agenda, bench: &Bench) -> Option<Return> {
    let away = bench
        .days_away()
        .iter()
        .rev()
        .find(|a| a.back <= bench.today)?;
    let due = || agenda.overdue.iter().chain(&agenda.today);
    let waits = due().any(|t| t.fell_due_away && t.due == away.back);
    let lately = days_from_to(away.back, bench.today) <= SILENCE_DAYS;
    (waits && lately).then(|| Return {
        left: away.from,
        back: away.back,
        rows: one_row_a_piece(due()),
    })
}

/// The one list after a silence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CatchUp {
    /// Whole days since anything was recorded.
    pub silent_days: i64,
    /// All that is overdue, one row a piece, what matters most first.
    pub rows: Vec<ListRow>,
}

/// The one list after more than [`SILENCE_DAYS`] days without a record; `None` while records are made, or where nothing is
/// overdue. Once shown it is kept up by [`one_row_a_piece`], because the first answer ends the silence.
#[must_use]
pub fn catch_up(agenda: &Agenda) -> Option<CatchUp> {
    let silent_days = agenda.silent_days.filter(|d| *d > SILENCE_DAYS)?;
    (!agenda.overdue.is_empty()).then(|| CatchUp {
        silent_days,
        rows: one_row_a_piece(agenda.overdue.iter()),
    })
}
