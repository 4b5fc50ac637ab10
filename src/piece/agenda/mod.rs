//! Agenda: what is due when, and why, for all pieces: a pure function of pieces, workshop and a given now.
//!
//! [`Bench`] is the workshop at a moment; [`agenda`] asks every piece for its tasks ([`tasks_of`]) and sorts them.

mod bench;
mod calendar;
mod due;
mod foretold;
mod offer;
mod order;
mod standing;
mod task;
mod unseen;
mod weighing;
mod what_if;

use std::collections::HashMap;

pub use bench::{Bench, WARM_SHOP_C};
pub use calendar::DaysAway;
pub(crate) use calendar::days_from_to;
pub(crate) use due::settled;
pub use due::{is_paused, tasks_of};
pub use foretold::{Foretold, ForetoldOf};
pub use offer::{THICK_FLOOR_MM, offer, thick_floor};
pub use order::by_mark;
pub(crate) use order::{by_day, by_need};
pub use standing::{Standing, standing};
pub use task::{Nudge, Task, TaskKind, Urgency, Why};
pub use unseen::Unseen;
pub use weighing::{DueWeighing, weighing};
pub use what_if::{Outcome, next_look, what_if};

use crate::mark::compared;
use crate::piece::Piece;

/// What wants a hand, for the page Today.
#[derive(Debug, Clone, PartialEq)]
pub struct Agenda {
    /// Past its day: what matters most first, then the latest.
    pub overdue: Vec<Task>,
    /// Due today, and what has no day of its own (a piece that came back, one mark twice).
    pub today: Vec<Task>,
    /// Due on a later day, the nearest first.
    pub coming: Vec<Task>,
    /// Offers of a stage: the pieces that are probably ready for it.
    pub probably_ready: Vec<Task>,
    /// Drying pieces by the days since anybody looked at them, the longest first.
    pub longest_without_look: Vec<Unseen>,
    /// The next task on a later day.
    pub next: Option<Task>,
    /// Whole days since anything was recorded, days away left out; `None` where nothing ever was.
    pub silent_days: Option<i64>,
}

/// The agenda of all pieces; those that ended, are deleted or are paused ask for nothing.
#[must_use]
pub fn agenda(pieces: &[&Piece], bench: &Bench) -> Agenda {
    let mut overdue = Vec::new();
    let mut today = Vec::new();
    let mut coming = Vec::new();
    let mut ready = Vec::new();
    let mut unseen_pieces = Vec::new();
    for piece in pieces.iter().filter(|p| p.living()) {
        for task in tasks_of(piece, bench) {
            let row = (task, piece.mark());
            match row.0.kind {
                TaskKind::OfferStage(_) => ready.push(row),
                _ if row.0.due < bench.today => overdue.push(row),
                _ if row.0.due == bench.today => today.push(row),
                _ => coming.push(row),
            }
        }
        if !is_paused(piece, bench.today)
            && let Some(u) = unseen::unseen(piece, bench)
        {
            unseen_pieces.push((u, piece.mark()));
        }
    }
    today.extend(same_marks(pieces, bench));
    for rows in [&mut overdue, &mut today, &mut ready] {
        rows.sort_by(|a, b| by_need((&a.0, a.1), (&b.0, b.1)));
    }
    coming.sort_by(|a, b| by_day((&a.0, a.1), (&b.0, b.1)));
    unseen_pieces.sort_by(|(a, m), (b, n)| {
        b.days
            .cmp(&a.days)
            .then_with(|| by_mark(m, n))
            .then_with(|| a.piece.cmp(&b.piece))
    });
    let coming = tasks(coming);
    Agenda {
        overdue: tasks(overdue),
        today: tasks(today),
        next: coming.first().cloned(),
        coming,
        probably_ready: tasks(ready),
        longest_without_look: unseen_pieces.into_iter().map(|(u, _)| u).collect(),
        silent_days: unseen::silent_days(pieces.iter().copied(), bench),
    }
}

fn tasks(rows: Vec<(Task, &str)>) -> Vec<Task> {
    rows.into_iter().map(|(task, _)| task).collect()
}

/// One task for every living piece that shares its mark with an earlier one, however it is written.
fn same_marks<'a>(pieces: &[&'a Piece], bench: &Bench) -> Vec<(Task, &'a str)> {
    let mut by_mark: HashMap<String, Vec<&'a Piece>> = HashMap::with_capacity(pieces.len());
    for &piece in pieces.iter().filter(|p| p.living()) {
        let mark = compared(piece.mark());
        if !mark.is_empty() {
            by_mark.entry(mark).or_default().push(piece);
        }
    }
    let mut rows = Vec::new();
    for mut sharing in by_mark.into_values().filter(|s| s.len() > 1) {
        // The one entered first keeps its mark.
        sharing.sort_by_key(|p| (p.created.is_none(), p.created, &p.id));
        for &later in &sharing[1..] {
            let task = Task {
                piece: later.id.clone(),
                kind: TaskKind::RenameMark,
                due: bench.today,
                days_late: 0,
                urgency: Urgency::WhenYouLike,
                why: Why::SameMarkAs(sharing[0].id.clone()),
                last: None,
                dated_ahead: None,
                is_next_look: false,
                also_weigh: false,
                fell_due_away: false,
            };
            rows.push((task, later.mark()));
        }
    }
    rows
}
