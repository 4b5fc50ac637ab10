//! Calendar: the coming checks of all pieces as a file for the turner's own calendar.
//!
//! | what | rule |
//! |---|---|
//! | an event's UID | `<piece>-<kind>@evenwall`; kind is `look` for the one next look, `weigh`, `flaw-<id>`, `find`, `lathe` |
//! | its time | the reminder time of this device, floating; a piece left half-turned in the evening or at eight |
//! | its day | the day it is due; where that day's time is past, the next time to come, so that it rings until answered |
//! | its SEQUENCE | lines of the piece's diary and of the workshop together; above that of the earlier file where it changed |
//! | asked for no longer | STATUS:CANCELLED while its day is less than 60 days past, where the earlier file had it |
//! | offers, one mark twice, a piece that came back | not in the calendar: they have no day of their own |
//!
//! The earlier file is its own memory: without it nothing is cancelled, and a program that was never given an event is
//! never told that it is off.

use std::collections::BTreeMap;

use chrono::{Days, NaiveDateTime, NaiveTime, Utc};
use evenwall_piece::agenda::{Nudge, Task, TaskKind, tasks_of};
use evenwall_piece::detail::DetailField;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_records::calendar::{self, Calendar, Earlier, Event};

use crate::app::{App, AppError};

/// How long what was cancelled stays in the file after its day, days: whoever imports once a month gets it.
const KEEP_CANCELLED_DAYS: u64 = 60;

/// The kind of a task as part of a UID; `None` for what has no day of its own.
pub(crate) fn kind_key(task: &Task) -> Option<String> {
    if task.is_next_look {
        return Some("look".into());
    }
    match &task.kind {
        TaskKind::Look | TaskKind::LookOver => Some("look".into()),
        TaskKind::Weigh => Some("weigh".into()),
        TaskKind::FlawLook(flaw) => Some(format!("flaw-{flaw}")),
        TaskKind::HalfTurned(_) => Some("lathe".into()),
        TaskKind::Find => Some("find".into()),
        TaskKind::OfferStage(_) | TaskKind::RenameMark | TaskKind::CameBack => None,
    }
}

/// The name for all time of a task's event; `None` for what has no day of its own.
#[must_use]
pub fn uid(task: &Task) -> Option<String> {
    kind_key(task).map(|kind| format!("{}-{kind}@evenwall", task.piece))
}

fn clock(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).unwrap_or(NaiveTime::MIN)
}

impl App {
    /// The local time of day at which reminders ring: that of the device's settings, nine where it cannot be read.
    #[must_use]
    pub fn reminder_time(&self) -> NaiveTime {
        NaiveTime::parse_from_str(&self.device().reminder_time, "%H:%M").unwrap_or(clock(9, 0))
    }

    fn rings_at(&self, task: &Task, now: Moment) -> NaiveDateTime {
        let time = match task.kind {
            TaskKind::HalfTurned(Nudge::Evening) => clock(19, 0),
            TaskKind::HalfTurned(Nudge::Morning) => clock(8, 0),
            _ => self.reminder_time(),
        };
        let local = now.naive_local();
        let today = local.date();
        let next = if local.time() <= time {
            today
        } else {
            today.checked_add_days(Days::new(1)).unwrap_or(today)
        };
        task.due.max(next).and_time(time)
    }

    fn event_of(&self, piece: &Piece, task: &Task, now: Moment) -> Option<Event> {
        let words = self.words();
        let what = self.kind_words(&task.kind);
        let mark = self.mark_of(&piece.id);
        let place = piece.details.text(DetailField::Place).unwrap_or("").trim();
        let due = crate::words::dates::Dates::new(words, task.due).full(task.due);
        let about: Vec<String> = [
            self.wood_of(piece),
            self.whereabouts(piece, now),
            place.to_owned(),
            words.with("records-event-due", &[("day", due.into())]),
        ]
        .into_iter()
        .filter(|l| !l.is_empty())
        .collect();
        let lines = piece.lines + self.shop_lines.len();
        Some(Event {
            uid: uid(task)?,
            start: self.rings_at(task, now),
            summary: words.with(
                "records-event",
                &[("mark", mark.into()), ("what", what.into())],
            ),
            description: about.join("\n"),
            sequence: u32::try_from(lines).unwrap_or(u32::MAX),
            cancelled: false,
            rings: true,
        })
    }

    fn events_of<'a>(&self, pieces: impl Iterator<Item = &'a Piece>, now: Moment) -> Vec<Event> {
        self.with_bench(now, |bench| {
            pieces
                .flat_map(|piece| {
                    tasks_of(piece, bench)
                        .into_iter()
                        .filter_map(|task| self.event_of(piece, &task, now))
                        .collect::<Vec<_>>()
                })
                .collect()
        })
    }

    fn file_of(&self, mut events: Vec<Event>, now: Moment) -> String {
        events.sort_by(|a, b| (a.start, &a.uid).cmp(&(b.start, &b.uid)));
        calendar::write(&Calendar {
            name: self.words().text("records-calendar-name"),
            made_at: now.with_timezone(&Utc),
            events,
        })
    }

    /// All coming checks as the text of an `.ics` file; `earlier` is the text of the file as it was written last.
    #[must_use]
    pub fn calendar(&self, earlier: Option<&str>, now: Moment) -> String {
        let earlier = earlier.map(calendar::read).unwrap_or_default();
        let mut events = self.events_of(self.pieces(), now);
        for event in &mut events {
            if let Some(before) = earlier.get(&event.uid) {
                let same = before.start == event.start
                    && before.summary == event.summary
                    && !before.cancelled;
                let least = before.sequence.saturating_add(u32::from(!same));
                event.sequence = event.sequence.max(least);
            }
        }
        let mut gone: BTreeMap<String, Earlier> = earlier;
        gone.retain(|uid, _| uid.ends_with("@evenwall"));
        for event in &events {
            gone.remove(&event.uid);
        }
        let oldest = now
            .date_naive()
            .checked_sub_days(Days::new(KEEP_CANCELLED_DAYS));
        for (uid, before) in gone {
            if oldest.is_some_and(|day| before.start.date() >= day) {
                events.push(Event {
                    uid,
                    start: before.start,
                    summary: before.summary,
                    description: String::new(),
                    sequence: before.sequence.saturating_add(u32::from(!before.cancelled)),
                    cancelled: true,
                    rings: false,
                });
            }
        }
        self.file_of(events, now)
    }

    /// The coming checks of one piece as the text of an `.ics` file, to be imported by hand.
    #[must_use]
    pub fn calendar_of_piece(&self, piece: &PieceId, now: Moment) -> String {
        let events = self.events_of(self.piece(piece).into_iter(), now);
        self.file_of(events, now)
    }

    /// The calendar file as it is and as it should be now: path, earlier text, text.
    pub(crate) fn calendar_file_text(
        &self,
        now: Moment,
    ) -> Result<(String, Option<String>, String), AppError> {
        let path = self.device().calendar_file.clone();
        if path.is_empty() {
            return Err(AppError::Refused(
                self.words().text("records-calendar-no-file"),
            ));
        }
        let earlier = self.store.read_outside(&path)?;
        let earlier = earlier.map(|bytes| String::from_utf8_lossy(&bytes).into_owned());
        // Another calendar's file must not be replaced.
        let foreign = |text: &String| !text.trim().is_empty() && !text.contains("-//Evenwall//");
        if earlier.as_ref().is_some_and(foreign) {
            return Err(AppError::Refused(
                self.words()
                    .with("records-calendar-foreign", &[("path", path.into())]),
            ));
        }
        let text = self.calendar(earlier.as_deref(), now);
        Ok((path, earlier, text))
    }

    pub(crate) fn save_calendar(&mut self, now: Moment) -> Result<(), AppError> {
        let (path, _, text) = self.calendar_file_text(now)?;
        self.save_record(&path, text.as_bytes())?;
        self.states.records.calendar_fault = None;
        Ok(())
    }
}
