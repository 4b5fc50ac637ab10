//! Diary: everything recorded about a piece as a timeline that can be filtered, corrected, back-dated and taken back.

mod choices;
mod correct;
mod correct_oval;
mod describe;
mod describe_flaw;
mod describe_flaw_look;
mod describe_forecast;
mod describe_oval;
mod describe_photo;
mod filter;
mod photos;
mod view;

pub use describe::Described;
pub use filter::Filter;
pub use view::{DiaryView, EntryView};

use chrono::NaiveDate;
use evenwall_piece::diary::DiaryEntry;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{DeviceId, EntryId, LineId, PieceId};
use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::details;
use crate::route::Page;

/// What can be done on the diary. Entries go by their text id `device:n:part`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum DiaryAction {
    /// Showed only some entries.
    SetFilter(Filter),
    /// Opened an entry for correcting, or closed it.
    Toggle(String),
    /// Edited the corrected value.
    EditValue(String),
    /// Chose a corrected value out of a list, by its key.
    Pick(String),
    /// Edited the day.
    EditDay(String),
    /// Saved the corrected value and day.
    Save,
    /// Took the entry's line back.
    TakeBack(String),
    /// Brought a line back that was taken back.
    BringBack(String),
    /// Began a new note, or left it.
    WriteNote(bool),
    /// Edited the new note.
    EditNote(String),
    /// Added the note.
    AddNote,
}

/// What the page remembers.
#[derive(Debug, Default)]
pub struct DiaryState {
    pub(super) filter: Filter,
    pub(super) open: Option<String>,
    pub(super) value: String,
    pub(super) day: String,
    pub(super) problem: String,
    pub(super) writing: bool,
    pub(super) note: String,
    pub(super) note_problem: String,
}

/// The text id of an entry.
#[must_use]
pub(crate) fn entry_text(entry: &EntryId) -> String {
    format!("{}:{}:{}", entry.line.device, entry.line.n, entry.part)
}

/// The entry of a text id.
#[must_use]
pub(super) fn entry_of(text: &str) -> Option<EntryId> {
    let mut parts = text.split(':');
    let device = DeviceId::new(parts.next()?).ok()?;
    let n = parts.next()?.parse().ok()?;
    let part = parts.next()?.parse().ok()?;
    Some(EntryId {
        line: LineId { device, n },
        part,
    })
}

impl App {
    pub(crate) fn enter_diary(&mut self, page: Option<&Page>, _now: Moment) {
        if !matches!(page, Some(Page::Diary(_))) {
            self.states.diary = DiaryState::default();
        }
    }

    fn diary_piece(&self) -> Option<PieceId> {
        match self.route.page() {
            Some(Page::Diary(id)) => Some(id.clone()),
            _ => None,
        }
    }

    fn diary_entry(&self, piece: &PieceId, text: &str) -> Option<DiaryEntry> {
        let entry = entry_of(text)?;
        self.piece(piece)?
            .diary
            .iter()
            .find(|e| e.entry == entry)
            .cloned()
    }

    pub(crate) fn apply_diary(&mut self, action: DiaryAction, now: Moment) -> Result<(), AppError> {
        let Some(id) = self.diary_piece() else {
            return Ok(());
        };
        match action {
            DiaryAction::SetFilter(filter) => {
                self.states.diary.filter = filter;
                self.states.diary.open = None;
            }
            DiaryAction::Toggle(entry) => self.toggle_entry(&id, entry),
            DiaryAction::EditValue(text) | DiaryAction::Pick(text) => {
                self.states.diary.value = text;
                self.states.diary.problem.clear();
            }
            DiaryAction::EditDay(text) => {
                self.states.diary.day = text;
                self.states.diary.problem.clear();
            }
            DiaryAction::Save => return self.save_correction(&id, now),
            DiaryAction::TakeBack(entry) => return self.take_back(&id, &entry, now),
            DiaryAction::BringBack(entry) => return self.bring_back(&id, &entry, now),
            DiaryAction::WriteNote(on) => {
                // Left and taken up again, the words are still there.
                self.states.diary.writing = on;
                self.states.diary.note_problem.clear();
            }
            DiaryAction::EditNote(text) => {
                self.states.diary.note = text;
                self.states.diary.note_problem.clear();
            }
            DiaryAction::AddNote => return self.add_note(&id, now),
        }
        Ok(())
    }

    fn toggle_entry(&mut self, id: &PieceId, text: String) {
        let state = &self.states.diary;
        if state.open.as_ref() == Some(&text) {
            self.states.diary.open = None;
            return;
        }
        let Some(entry) = self.diary_entry(id, &text) else {
            return;
        };
        let value = self
            .correctable(&entry.fact)
            .map(|c| c.text)
            .unwrap_or_default();
        let day = entry.at.date_naive().to_string();
        let state = &mut self.states.diary;
        state.open = Some(text);
        state.value = value;
        state.day = day;
        state.problem.clear();
    }

    fn save_correction(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        let Some(text) = self.states.diary.open.clone() else {
            return Ok(());
        };
        let Some(entry) = self.diary_entry(id, &text) else {
            return Ok(());
        };
        let corrected = match self.corrected(&entry.fact, &self.states.diary.value, now) {
            Ok(fact) => fact.filter(|f| *f != entry.fact),
            Err(sentence) => {
                self.states.diary.problem = sentence;
                return Ok(());
            }
        };
        let day = match self.corrected_day(&self.states.diary.day, now) {
            Ok(day) => day,
            Err(sentence) => {
                self.states.diary.problem = sentence;
                return Ok(());
            }
        };
        // The time of day stays, but what happened today did not happen later than now.
        let at = moved_to(entry.at, day).map(|at| if entry.at <= now { at.min(now) } else { at });
        let at = at.filter(|at| *at != entry.at);
        if corrected.is_none() && at.is_none() {
            self.states.diary.open = None;
            return Ok(());
        }
        let mut facts = vec![PieceFact::Amends {
            entry: entry.entry.clone(),
            at,
            fact: corrected.map(Box::new),
        }];
        // What was noted in one go happened in one go: the other facts of the line move with it.
        if at.is_some()
            && let Some(piece) = self.piece(id)
        {
            let others = piece
                .diary
                .iter()
                .filter(|e| e.entry.line == entry.entry.line && e.entry != entry.entry);
            facts.extend(others.map(|e| PieceFact::Amends {
                entry: e.entry.clone(),
                at,
                fact: None,
            }));
        }
        self.record(id, now, facts, now)?;
        self.states.diary.open = None;
        let said = self.words().text("diary-said-corrected");
        self.say(said);
        Ok(())
    }

    fn corrected_day(&self, text: &str, now: Moment) -> Result<NaiveDate, String> {
        match details::read_day(self, text, now.date_naive())? {
            details::Day::Day(day) => Ok(day),
            _ => Err(self
                .words()
                .with("diary-day-whole", &[("found", text.into())])),
        }
    }

    fn take_back(&mut self, id: &PieceId, entry: &str, now: Moment) -> Result<(), AppError> {
        let Some(entry) = entry_of(entry) else {
            return Ok(());
        };
        let created = |e: &DiaryEntry| e.entry.line == entry.line && e.fact == PieceFact::Created;
        if self.piece(id).is_some_and(|p| p.diary.iter().any(created)) {
            return Err(AppError::Refused(self.words().text("diary-created-stays")));
        }
        self.record(id, now, vec![PieceFact::Retracts(entry.line)], now)?;
        self.states.diary.open = None;
        let said = self.words().text("diary-said-taken-back");
        self.say(said);
        Ok(())
    }

    fn bring_back(&mut self, id: &PieceId, entry: &str, now: Moment) -> Result<(), AppError> {
        let Some(entry) = entry_of(entry) else {
            return Ok(());
        };
        let retractions = self.retractions_of(id, &entry.line)?;
        if retractions.is_empty() {
            return Ok(());
        }
        let facts = retractions.into_iter().map(PieceFact::Retracts).collect();
        self.record(id, now, facts, now)?;
        self.states.diary.open = None;
        let said = self.words().text("diary-said-brought-back");
        self.say(said);
        Ok(())
    }

    fn add_note(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        let text = self.states.diary.note.trim().to_owned();
        if text.is_empty() {
            self.states.diary.note_problem = self.words().text("diary-note-empty");
            return Ok(());
        }
        let count = text.chars().count();
        if count > details::LONGEST_NOTE {
            self.states.diary.note_problem = self.words().with(
                "diary-note-long",
                &[
                    ("found", i64::try_from(count).unwrap_or(i64::MAX).into()),
                    (
                        "most",
                        i64::try_from(details::LONGEST_NOTE)
                            .unwrap_or(i64::MAX)
                            .into(),
                    ),
                ],
            );
            return Ok(());
        }
        self.record(id, now, vec![PieceFact::Note(text)], now)?;
        self.states.diary.note.clear();
        self.states.diary.writing = false;
        let said = self.words().text("diary-said-note");
        self.say(said);
        Ok(())
    }
}

/// The same time of day on another day; `None` where that day has no such time.
fn moved_to(at: Moment, day: NaiveDate) -> Option<Moment> {
    use chrono::TimeZone;
    at.offset()
        .from_local_datetime(&day.and_time(at.time()))
        .single()
}
