//! Due: what is due, overdue and coming up, for a job without a window: as text or JSON, with an exit status.

use std::path::Path;
use std::sync::Arc;

use chrono::{Days, SecondsFormat};
use evenwall_piece::agenda::{Task, agenda};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_shelf::disk::Disk;
use serde::Serialize;

use crate::app::App;
use crate::shelf_store::ShelfStore;

/// Nothing is due today and nothing overdue.
pub const NOTHING: u8 = 0;
/// The shelf could not be read.
pub const FAILED: u8 = 1;
/// Something is due today.
pub const DUE: u8 = 3;
/// Something is overdue.
pub const OVERDUE: u8 = 4;

/// One thing that wants a hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DueRow {
    /// The piece's id.
    pub piece: String,
    /// Its mark.
    pub mark: String,
    /// Its wood; may be empty.
    pub wood: String,
    /// `look`, `weigh`, `flaw-<id>`, `lathe`, `find`, `rename` or `came-back`.
    pub kind: String,
    /// What is to be done, in words.
    pub what: String,
    /// Where it is, in words.
    pub stands: String,
    /// Where it is kept; may be empty.
    pub place: String,
    /// The local day it is due, `2026-03-14`.
    pub due: String,
    /// Whole days past that day.
    pub days_late: i64,
    /// `serious`, `soon` or `when-you-like`.
    pub urgency: &'static str,
    /// True for the one next look of a drying piece.
    pub next_look: bool,
}

/// What is due.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Due {
    /// The moment it was asked for, RFC 3339.
    pub at: String,
    /// Past its day.
    pub overdue: Vec<DueRow>,
    /// Due today.
    pub today: Vec<DueRow>,
    /// Due within the days asked for.
    pub coming: Vec<DueRow>,
    /// A sentence that asks for a backup, where the last is old.
    pub backup: Option<String>,
    #[serde(skip)]
    text: String,
}

impl Due {
    /// [`NOTHING`], [`DUE`] or [`OVERDUE`].
    #[must_use]
    pub fn exit_status(&self) -> u8 {
        if !self.overdue.is_empty() {
            OVERDUE
        } else if !self.today.is_empty() {
            DUE
        } else {
            NOTHING
        }
    }

    /// Lines to read, one a task.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The same as JSON.
    #[must_use]
    pub fn json(&self) -> String {
        // Text, whole numbers and lists of them can always be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

fn kind(task: &Task) -> String {
    use evenwall_piece::agenda::TaskKind;
    super::calendar::kind_key(task).unwrap_or_else(|| {
        match task.kind {
            TaskKind::CameBack => "came-back",
            _ => "rename",
        }
        .to_owned()
    })
}

impl App {
    /// What is due now, and what will be within so many days.
    #[must_use]
    pub fn due(&self, now: Moment, within_days: u32) -> Due {
        let pieces: Vec<&Piece> = self.pieces().collect();
        let agenda = self.with_bench(now, |bench| agenda(&pieces, bench));
        let last = now
            .date_naive()
            .checked_add_days(Days::new(u64::from(within_days)));
        let rows = |tasks: &[Task]| -> Vec<DueRow> {
            tasks.iter().filter_map(|t| self.due_row(t, now)).collect()
        };
        let coming: Vec<Task> = agenda
            .coming
            .iter()
            .filter(|t| last.is_none_or(|last| t.due <= last))
            .cloned()
            .collect();
        let mut due = Due {
            at: now.to_rfc3339_opts(SecondsFormat::Secs, false),
            overdue: rows(&agenda.overdue),
            today: rows(&agenda.today),
            coming: rows(&coming),
            backup: self.backup_reminder(now),
            text: String::new(),
        };
        due.text = self.due_text(&due, &agenda.overdue, &agenda.today, &coming, now);
        due
    }

    fn due_row(&self, task: &Task, now: Moment) -> Option<DueRow> {
        let piece = self.piece(&task.piece)?;
        Some(DueRow {
            piece: piece.id.to_string(),
            mark: self.mark_of(&piece.id),
            wood: self.wood_of(piece),
            kind: kind(task),
            what: self.kind_words(&task.kind),
            stands: self.whereabouts(piece, now),
            place: piece
                .details
                .text(DetailField::Place)
                .unwrap_or("")
                .to_owned(),
            due: task.due.to_string(),
            days_late: task.days_late,
            urgency: task.urgency.key(),
            next_look: task.is_next_look,
        })
    }

    fn due_text(
        &self,
        due: &Due,
        overdue: &[Task],
        today: &[Task],
        coming: &[Task],
        now: Moment,
    ) -> String {
        let words = self.words();
        let dates = self.dates(now);
        let mut text = String::new();
        let mut line = |said: &str| {
            text.push_str(said);
            text.push('\n');
        };
        if overdue.is_empty() && today.is_empty() {
            line(&words.text("records-due-nothing"));
        }
        let groups = [
            ("records-due-overdue", overdue, &due.overdue),
            ("records-due-today", today, &due.today),
            ("records-due-coming", coming, &due.coming),
        ];
        for (title, tasks, rows) in groups {
            if rows.is_empty() {
                continue;
            }
            line(&words.text(title));
            for (task, row) in tasks.iter().zip(rows) {
                let parts = [
                    row.mark.clone(),
                    row.what.clone(),
                    dates.due(task.due),
                    row.wood.clone(),
                    row.place.clone(),
                ];
                let said: Vec<String> = parts.into_iter().filter(|p| !p.is_empty()).collect();
                line(&format!("  {}", said.join(" · ")));
            }
        }
        if let Some(backup) = &due.backup {
            line(backup);
        }
        text
    }
}

/// Reads a shelf without taking its lock and says what is due: what to print, and the exit status.
#[must_use]
pub fn run(
    disk: Arc<dyn Disk>,
    shelf: &Path,
    device: &Path,
    now: Moment,
    within_days: u32,
    json: bool,
) -> (String, u8) {
    let opened = ShelfStore::open_reader_on(disk, shelf, device)
        .and_then(|store| App::open(Box::new(store), false, now));
    match opened {
        Ok(app) => {
            let due = app.due(now, within_days);
            let text = if json {
                due.json() + "\n"
            } else {
                due.text().to_owned()
            };
            (text, due.exit_status())
        }
        Err(error) => (format!("{error}\n"), FAILED),
    }
}
