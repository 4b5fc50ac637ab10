//! List: groups of rows with what was answered kept in its place, and the one row that is open.

use evenwall_piece::agenda::{Bench, Task};

use super::done::Done;
use super::row::{Manner, parts};
use super::view::{CardView, ListView, RowView, Shape};
use crate::app::App;
use crate::drawing::section_of;

/// A group of a list: its key, its rows, and the most of them that are shown at first.
pub(super) struct Group {
    pub key: &'static str,
    pub head: Option<RowView>,
    pub rows: Vec<RowView>,
    /// How many rows there are with those that were not made because they are not shown.
    pub all: usize,
    pub most: usize,
}

impl Group {
    /// A group whose rows are all made.
    pub fn of(key: &'static str, head: Option<RowView>, rows: Vec<RowView>, most: usize) -> Self {
        Self {
            key,
            head,
            all: rows.len(),
            rows,
            most,
        }
    }
}

/// True for a row whose look can be answered in place.
pub(super) fn opens(row: &RowView) -> bool {
    row.shape == Shape::Row
        && parts(&row.id).is_some_and(|(_, kind, _)| matches!(kind, "look" | "over"))
}

fn is_bag(row: &RowView) -> bool {
    row.shape == Shape::Row && parts(&row.id).is_some_and(|(_, kind, _)| kind == "look")
}

impl App {
    /// A group of tasks that are due, with those answered today in their places. Where only `most` are shown the rows after
    /// them are counted and not made: with a thousand bags due they would be most of the waiting.
    pub(super) fn due_group(
        &self,
        key: &'static str,
        head: RowView,
        tasks: &[Task],
        most: usize,
        bench: &Bench<'_>,
    ) -> Group {
        let answered = self.done_in(key, bench.today).len();
        let few = tasks.len() + answered <= most + 1;
        let made = if few || self.shows_whole(key) {
            tasks
        } else {
            &tasks[..most.min(tasks.len())]
        };
        let rows = self.due_rows(key, made, Manner::default(), bench);
        Group {
            key,
            head: Some(head),
            all: rows.len() + tasks.len() - made.len(),
            rows,
            most,
        }
    }

    fn shows_whole(&self, key: &str) -> bool {
        self.states.today.whole.iter().any(|g| g == key)
    }

    /// The rows of tasks that are due, with those answered today in their places.
    fn due_rows(
        &self,
        group: &'static str,
        tasks: &[Task],
        manner: Manner,
        bench: &Bench<'_>,
    ) -> Vec<RowView> {
        let mut rows: Vec<RowView> = tasks
            .iter()
            .filter_map(|t| self.task_row(group, t, manner, bench))
            .collect();
        for done in self.done_in(group, bench.today) {
            let place = done.place.min(rows.len());
            if let Some(row) = self.done_row(done) {
                rows.insert(place, row);
            }
        }
        rows
    }

    /// An answered row.
    pub(super) fn done_row(&self, done: &Done) -> Option<RowView> {
        let piece = self.piece(&done.piece)?;
        let words = self.words();
        let (mark, wood) = (self.mark_of(&piece.id), self.wood_of(piece));
        Some(RowView {
            id: done.row.clone(),
            shape: Shape::Done,
            label: words.with(
                "today-row-label",
                &[
                    ("mark", mark.as_str().into()),
                    ("wood", wood.as_str().into()),
                ],
            ),
            note: done.act.clone(),
            tag: done.what.clone(),
            icon: done.icon,
            mark,
            wood,
            ..RowView::default()
        })
    }

    /// The list of these groups, the open row with its answers. A group that holds nothing is left out.
    pub(super) fn listed(&self, groups: Vec<Group>, bench: &Bench<'_>) -> ListView {
        let mut rows = Vec::new();
        for group in groups.into_iter().filter(|g| !g.rows.is_empty()) {
            let all = group.all;
            let whole = self.shows_whole(group.key);
            // One row more is no reason for a row that says so.
            let shown = if whole || all <= group.most + 1 {
                all
            } else {
                group.most
            };
            rows.extend(group.head);
            rows.extend(group.rows.into_iter().take(shown));
            if shown < all {
                let text = self.words().with("today-show-all", &[("n", all.into())]);
                rows.push(RowView {
                    id: format!("{}/more/{}", group.key, group.key),
                    shape: Shape::More,
                    label: text.clone(),
                    mark: text,
                    ..RowView::default()
                });
            }
        }
        let open = self.open_row(&rows);
        let mut card = CardView::default();
        if let Some(place) = open
            && let Some(view) = self.card_of(&rows[place].id, bench)
        {
            rows[place].shape = Shape::Card;
            card = view;
        }
        boxes(&mut rows);
        ListView { rows, card }
    }

    /// Draws the pieces of the rows that have room for it.
    pub(super) fn drawn(&self, mut list: ListView) -> ListView {
        for row in &mut list.rows {
            let room = matches!(row.shape, Shape::Row | Shape::Card | Shape::Done);
            if let Some((_, _, id)) = parts(&row.id).filter(|_| room) {
                row.drawing = self.piece(&id).map(section_of);
            }
        }
        list
    }

    /// The row that is open: the one opened by hand; once that is answered the next bag after it; else the first bag.
    fn open_row(&self, rows: &[RowView]) -> Option<usize> {
        let by_hand = self
            .states
            .today
            .open
            .as_ref()
            .and_then(|id| rows.iter().position(|r| r.id == *id));
        match by_hand {
            Some(place) if opens(&rows[place]) => Some(place),
            Some(place) => (place..rows.len())
                .find(|i| is_bag(&rows[*i]))
                .or_else(|| rows.iter().position(is_bag)),
            None => rows.iter().position(is_bag),
        }
    }
}

/// Says of each row whether it begins or ends a box. Cards and what is serious stand alone.
fn boxes(rows: &mut [RowView]) {
    let alone = |r: &RowView| match r.shape {
        Shape::Head | Shape::More => true,
        Shape::Card => true,
        _ => r.late,
    };
    let ends: Vec<(bool, bool)> = (0..rows.len())
        .map(|i| {
            let before = i.checked_sub(1).map(|b| &rows[b]);
            let after = rows.get(i + 1);
            let this = alone(&rows[i]);
            (
                this || before.is_none_or(alone),
                this || after.is_none_or(alone),
            )
        })
        .collect();
    for (row, (first, last)) in rows.iter_mut().zip(ends) {
        row.first = first;
        row.last = last;
    }
}
