//! Done: what was answered in this session, for as long as its line stands: an answer that is undone was never given.

use chrono::NaiveDate;
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::Moment;

use super::Said;
use crate::app::App;

/// An answer that keeps its place in a list.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Done {
    /// The row that was answered.
    pub row: String,
    /// Its group.
    pub group: String,
    /// Its place in the group then, answered rows counted.
    pub place: usize,
    /// The piece.
    pub piece: PieceId,
    /// The line that holds the answer.
    pub line: LineId,
    /// The local day on which it was given.
    pub day: NaiveDate,
    /// The answer's icon.
    pub icon: &'static str,
    /// The answer in a word.
    pub what: String,
    /// What was done and what comes next.
    pub act: String,
    /// What was ticked and chosen on the row, for where the answer is taken back.
    pub said: Said,
}

impl App {
    /// True while a line of a piece stands: written and not taken back.
    pub(crate) fn stands(&self, piece: &PieceId, line: &LineId) -> bool {
        self.piece(piece).is_some_and(|p| {
            p.diary
                .iter()
                .any(|e| e.entry.line == *line && !e.retracted)
        })
    }

    /// What is ticked and chosen on a row; where its answer was taken back today, what that was given with.
    pub(super) fn said_on(&self, row: &str, now: Moment) -> Said {
        let today = &self.states.today;
        if let Some(said) = today.said.get(row) {
            return *said;
        }
        let last = today.done.iter().rev().find(|d| d.row == row);
        last.filter(|d| d.day == now.date_naive() && !self.stands(&d.piece, &d.line))
            .map(|d| d.said)
            .unwrap_or_default()
    }

    /// The answers of a group that stand and were given on this day, by their place.
    pub(super) fn done_in(&self, group: &str, today: NaiveDate) -> Vec<&Done> {
        let mut done: Vec<&Done> = self
            .states
            .today
            .done
            .iter()
            .filter(|d| d.group == group && d.day == today && self.stands(&d.piece, &d.line))
            .collect();
        done.sort_by_key(|d| d.place);
        done
    }
}
