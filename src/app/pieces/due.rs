//! Due: the one thing that a card says is due next on a piece.

use chrono::NaiveDate;
use evenwall_piece::agenda::{Bench, Task, TaskKind, Urgency, tasks_of};
use evenwall_piece::piece::Piece;

use crate::app::App;

/// What is due next on a piece.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Due {
    /// When.
    pub day: NaiveDate,
    /// What.
    pub task: Task,
}

/// What is due next: what is due by today, else an offer to go on, else what comes first. `None` for pieces that ended.
pub(super) fn due_of(piece: &Piece, bench: &Bench<'_>) -> Option<Due> {
    if !piece.living() {
        return None;
    }
    let rank = |t: &Task| match t.kind {
        TaskKind::OfferStage(_) => 1,
        _ if t.due <= bench.today => 0,
        _ => 2,
    };
    let task = tasks_of(piece, bench)
        .into_iter()
        .min_by_key(|t| (rank(t), t.due))?;
    Some(Due {
        day: task.due,
        task,
    })
}

impl Due {
    /// True where it is late and waiting longer does harm.
    pub(super) fn late(&self) -> bool {
        self.task.days_late > 0 && self.task.urgency > Urgency::WhenYouLike
    }

    /// In words: "2 days late", "Weigh today", "Check Sun 15", "Weigh when you like", "Ready for Air".
    pub(super) fn text(&self, app: &App, bench: &Bench<'_>) -> String {
        let words = app.words();
        let dates = app.dates(bench.now);
        if self.late() {
            return dates.due(self.day);
        }
        let when = if self.task.days_late > 0 {
            words.text("pieces-when-you-like")
        } else {
            dates.due(self.day)
        };
        let when = [("when", when.into())];
        match &self.task.kind {
            TaskKind::Look => words.with("pieces-due-check", &when),
            TaskKind::LookOver => words.with("pieces-due-look", &when),
            TaskKind::Weigh => words.with("pieces-due-weigh", &when),
            TaskKind::FlawLook(_) => words.with("pieces-due-flaw", &when),
            TaskKind::HalfTurned(_) => words.with("pieces-due-lathe", &when),
            TaskKind::OfferStage(stage) => {
                let stage = words.text(&format!("stage-{}", stage.key()));
                words.with("pieces-due-offer", &[("stage", stage.into())])
            }
            TaskKind::RenameMark => words.text("pieces-due-rename"),
            TaskKind::Find => words.text("pieces-due-find"),
            TaskKind::CameBack => words.text("pieces-due-came-back"),
        }
    }
}
