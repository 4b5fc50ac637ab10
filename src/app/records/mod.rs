//! Records: what leaves the app and what comes in: calendar, list of what is due, report, tables, tags, backup, import,
//! and what other devices wrote.
//!
//! Documents are made here as data with final words; `evenwall-records` writes them as iCalendar, CSV, HTML and SVG; the
//! store puts the bytes where the turner wants them.

pub mod arriving;
pub mod backups;
pub mod calendar;
pub mod devices;
pub mod due;
pub mod import;
mod keeping;
pub mod reminding;
pub mod report;
pub mod tables;
pub mod tags;

use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_shelf::backup::Checked;

use crate::action::Action;
use crate::app::{App, AppError};

/// What can be done with records.
#[derive(Debug, Clone, PartialEq)]
pub enum RecordsAction {
    /// Put away the sentence that says what other devices wrote.
    HideArrived,
    /// Gave this device a name; an empty one takes the name away.
    NameDevice(String),
    /// Made a backup in the folder of the device's settings.
    BackUp,
    /// Looked into a backup, by its whole path; asks whether to restore it.
    LookIntoBackup(String),
    /// Restores a backup that was looked into.
    Restore(String),
    /// Brings the calendar file of the device's settings up to date.
    SaveCalendar,
    /// Something on the import page.
    Import(import::ImportAction),
    /// Writes the report of a piece into a file.
    SaveReport(Box<report::ReportOrder>),
    /// Chose how to care for finished pieces; `None`: the usual words, a blank text: none.
    CareWords(Option<String>),
    /// Writes all tables into a folder, by its whole path.
    SaveTables(String),
    /// Writes tags of pieces into a file, by its whole path.
    SaveTags(Vec<PieceId>, String),
    /// Writes the coming checks of one piece into a file of its own, by its whole path.
    SavePieceCalendar(PieceId, String),
}

impl From<RecordsAction> for Action {
    fn from(action: RecordsAction) -> Self {
        Self::Records(action)
    }
}

/// What these pages remember between two touches.
#[derive(Debug, Default)]
pub struct RecordsState {
    /// What other devices wrote, in a sentence.
    pub(crate) arrived: Option<String>,
    /// What the last backup or restore came to, in a sentence.
    pub(crate) outcome: Option<String>,
    /// The backup that was looked into.
    pub(crate) looked_into: Option<(String, Checked)>,
    /// The file that was written last, by its whole path.
    pub(crate) file: Option<String>,
    /// Why the calendar could not be kept up to date, in a sentence.
    pub(crate) calendar_fault: Option<String>,
    /// The sentence that asks for a backup was put away until the next start.
    pub(crate) backup_put_away: bool,
    /// What the computer has said already: what is due and on which day it was said.
    pub(crate) told: std::collections::BTreeSet<(String, chrono::NaiveDate)>,
    /// The import page.
    pub(crate) import: import::ImportState,
}

impl App {
    pub(crate) fn apply_records(
        &mut self,
        action: RecordsAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            RecordsAction::HideArrived => self.states.records.arrived = None,
            RecordsAction::NameDevice(name) => return self.name_device(&name, now),
            RecordsAction::BackUp => return self.make_backup(now),
            RecordsAction::LookIntoBackup(path) => return self.look_into_backup(path, now),
            RecordsAction::Restore(path) => return self.restore_backup(&path, now),
            RecordsAction::SaveCalendar => return self.save_calendar(now),
            RecordsAction::Import(action) => return self.apply_import(action, now),
            RecordsAction::SaveReport(order) => return self.save_report(&order, now),
            RecordsAction::CareWords(text) => return self.set_care_words(text, now),
            RecordsAction::SaveTables(folder) => return self.save_tables(&folder),
            RecordsAction::SaveTags(pieces, path) => return self.save_tags(&pieces, &path, now),
            RecordsAction::SavePieceCalendar(piece, path) => {
                let text = self.calendar_of_piece(&piece, now);
                return self.save_record(&path, text.as_bytes());
            }
        }
        Ok(())
    }

    /// Puts a document into a file the turner named and says so.
    pub(crate) fn save_record(&mut self, path: &str, bytes: &[u8]) -> Result<(), AppError> {
        self.states.records.outcome = None;
        self.states.records.file = None;
        if path.trim().is_empty() {
            return Err(AppError::Refused(self.words().text("records-no-place")));
        }
        self.store.save_outside(path, bytes)?;
        let said = self.words().with("records-saved", &[("path", path.into())]);
        self.states.records.outcome = Some(said);
        self.states.records.file = Some(path.to_owned());
        Ok(())
    }

    /// What the last backup, restore or file that was written came to, in a sentence; for the page that asked for it.
    #[must_use]
    pub fn records_outcome(&self) -> Option<&str> {
        self.states.records.outcome.as_deref()
    }
}
