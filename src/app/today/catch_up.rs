//! Catch-up: after a long silence one list of all that is overdue, each answered in place. No lateness, no scolding.

use evenwall_piece::agenda::{Agenda, Bench, Task, agenda};
use evenwall_piece::away::{catch_up, one_row_a_piece};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};

use super::list::Group;
use super::row::Manner;
use super::view::{ListView, RowView};
use crate::app::App;

/// The one list after a silence.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct CatchUpView {
    /// Its title.
    pub title: String,
    /// What it is.
    pub intro: String,
    /// The list.
    pub list: ListView,
    /// Where all is answered.
    pub all_done: String,
    /// The word for going back.
    pub back: String,
}

/// A list of this many rows is shown whole.
const MOST: usize = 400;

impl App {
    pub(super) fn enter_catch_up(&mut self, there: bool, now: Moment) {
        if !there {
            self.states.today.catch_up.clear();
        } else if self.states.today.catch_up.is_empty() {
            let pieces: Vec<&Piece> = self.pieces().collect();
            self.states.today.catch_up = self.with_bench(now, |bench| {
                let agenda = agenda(&pieces, bench);
                let rows = match catch_up(&agenda) {
                    Some(silence) => silence.rows,
                    None => one_row_a_piece(agenda.overdue.iter()),
                };
                rows.into_iter().map(|r| r.piece).collect()
            });
        }
    }

    /// The one list after a silence.
    #[must_use]
    pub fn catch_up_view(&self, now: Moment) -> CatchUpView {
        let mut view = self.catch_up_plain(now);
        view.list = self.drawn(view.list);
        view
    }

    /// The same without drawings.
    pub(super) fn catch_up_plain(&self, now: Moment) -> CatchUpView {
        let words = self.words();
        let order = &self.states.today.catch_up;
        if order.is_empty() {
            return CatchUpView {
                title: words.text("catch-up-title"),
                all_done: words.text("catch-up-all-done"),
                back: words.text("action-back"),
                ..CatchUpView::default()
            };
        }
        let pieces: Vec<&Piece> = self.pieces().collect();
        self.with_bench(now, |bench| {
            let agenda = agenda(&pieces, bench);
            let due = Self::main_tasks(agenda.overdue.iter(), order);
            let left = due.len();
            let rows = self.kept_in_order("catch-up", order, &due, bench);
            let group = Group::of("catch-up", None, rows, MOST);
            CatchUpView {
                title: words.text("catch-up-title"),
                intro: if left == 0 {
                    String::new()
                } else {
                    words.with("catch-up-intro", &[("n", left.into())])
                },
                list: self.listed(vec![group], bench),
                all_done: if left == 0 {
                    words.text("catch-up-all-done")
                } else {
                    String::new()
                },
                back: words.text("action-back"),
            }
        })
    }

    /// The task of each piece that matters most, of those in the list.
    pub(super) fn main_tasks<'a>(
        due: impl Iterator<Item = &'a Task>,
        order: &[PieceId],
    ) -> Vec<Task> {
        let mut main: Vec<Task> = Vec::new();
        for task in due {
            if order.contains(&task.piece) && main.iter().all(|t| t.piece != task.piece) {
                main.push(task.clone());
            }
        }
        main
    }

    /// One row a piece in the order in which they first came: what is due, or what was answered.
    pub(super) fn kept_in_order(
        &self,
        group: &'static str,
        order: &[PieceId],
        due: &[Task],
        bench: &Bench<'_>,
    ) -> Vec<RowView> {
        let done = self.done_in(group, bench.today);
        order
            .iter()
            .filter_map(|id| {
                if let Some(task) = due.iter().find(|t| t.piece == *id) {
                    return self.task_row(group, task, Manner { mild: true }, bench);
                }
                let done = done.iter().rev().find(|d| d.piece == *id)?;
                self.done_row(done)
            })
            .collect()
    }

    /// All that is due by today, what is late first.
    pub(super) fn due_tasks(agenda: &Agenda) -> impl Iterator<Item = &Task> {
        agenda.overdue.iter().chain(&agenda.today)
    }
}
