//! Climate log: a logger's file is chosen, looked through, thinned to means and recorded as one line of the shop.

use std::collections::HashSet;

use chrono::{NaiveDate, NaiveDateTime, TimeZone, Timelike};
use evenwall_piece::climate_log::{
    ClimateLog, DateOrder, LogError, LogReading, Per, Told, Unit, decode, means, read_climate_log,
};
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{LoggedAir, LoggedReading, ShopFact};
use evenwall_piece::vocabulary::Room;

use super::ShopAction;
use crate::app::{App, AppError};

/// Most means that are kept of one file: more than a year of hours, twenty-seven years of days. A line of the shelf holds
/// them with room to spare.
pub(super) const MOST_KEPT: usize = 10_000;
/// Up to so many days a file is kept by the hour unless the turner says otherwise. Wood follows no faster than a day or
/// two; common practice, no source.
const HOURS_UP_TO_DAYS: i64 = 14;

/// What the turner says about a file, one at a time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LogTold {
    /// In which room the logger stood.
    Room(Room),
    /// The unit of its temperatures.
    Unit(Unit),
    /// Which of two numbers is the day.
    Order(DateOrder),
    /// Over what means are taken.
    Per(Per),
}

/// A file as read, and what was said about it.
#[derive(Debug, Clone)]
pub(super) struct LogDraft {
    pub name: String,
    text: String,
    pub room: Room,
    pub told: Told,
    pub per: Per,
    pub read: Result<ClimateLog, LogError>,
    /// Its means by day and by hour: worked out once, not for every look at the page.
    days: Vec<LogReading>,
    hours: Vec<LogReading>,
}

/// What of a file would be kept.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct ToKeep {
    /// The new means.
    pub readings: Vec<LoggedReading>,
    /// Means that an earlier file of the same room gave already.
    pub there: usize,
    /// Means of an hour or day that is not over yet, or that lies ahead.
    pub unfinished: usize,
}

fn usual_per(log: &Result<ClimateLog, LogError>) -> Per {
    let span = log.as_ref().ok().and_then(|log| {
        let (first, last) = (log.readings.first()?, log.readings.last()?);
        Some((last.at - first.at).num_days())
    });
    match span {
        Some(days) if days < HOURS_UP_TO_DAYS => Per::Hour,
        _ => Per::Day,
    }
}

impl LogDraft {
    fn of(name: String, bytes: &[u8]) -> Self {
        let text = decode(bytes);
        let mut draft = Self {
            name,
            text,
            room: Room::Shop,
            told: Told::default(),
            per: Per::Day,
            read: Err(LogError::Empty),
            days: Vec::new(),
            hours: Vec::new(),
        };
        draft.read_again();
        draft.per = usual_per(&draft.read);
        draft
    }

    fn read_again(&mut self) {
        self.read = read_climate_log(&self.text, self.told);
        let readings = self.read.as_ref().map_or(&[][..], |log| &log.readings);
        (self.days, self.hours) = (means(readings, Per::Day), means(readings, Per::Hour));
    }

    fn tell(&mut self, said: LogTold) {
        match said {
            LogTold::Room(room) => self.room = room,
            LogTold::Per(per) => self.per = per,
            LogTold::Unit(unit) => {
                self.told.unit = Some(unit);
                self.read_again();
            }
            LogTold::Order(order) => {
                self.told.order = Some(order);
                self.read_again();
                self.per = usual_per(&self.read);
            }
        }
    }

    /// Its means, before any is left out; none where it could not be read.
    pub fn means(&self, per: Per) -> &[LogReading] {
        match per {
            Per::Day => &self.days,
            Per::Hour => &self.hours,
        }
    }
}

/// Hours and days that earlier files of a room covered, on the logger's clock.
#[derive(Default)]
struct Covered {
    hours: HashSet<(NaiveDate, u32)>,
    days: HashSet<NaiveDate>,
    whole_days: HashSet<NaiveDate>,
}

impl Covered {
    fn add(&mut self, at: NaiveDateTime) {
        self.days.insert(at.date());
        self.hours.insert((at.date(), at.hour()));
        // The middle of a day: its mean. The middle of an hour is half past.
        if at.hour() == 12 && at.minute() == 0 {
            self.whole_days.insert(at.date());
        }
    }

    fn holds(&self, at: NaiveDateTime, per: Per) -> bool {
        match per {
            Per::Day => self.days.contains(&at.date()),
            Per::Hour => {
                self.whole_days.contains(&at.date()) || self.hours.contains(&(at.date(), at.hour()))
            }
        }
    }
}

/// To a tenth: no logger tells more, and the line stays short.
fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

impl App {
    fn log_covered(&self, room: Room) -> Covered {
        let mut covered = Covered::default();
        for entry in &self.shop().history {
            if let ShopFact::ClimateLog(log) = &entry.fact
                && log.room == room
            {
                log.readings
                    .iter()
                    .for_each(|r| covered.add(r.at.naive_local()));
            }
        }
        covered
    }

    /// The means of a file that are finished and not there yet.
    pub(super) fn log_to_keep(&self, draft: &LogDraft, now: Moment) -> ToKeep {
        let covered = self.log_covered(draft.room);
        let mut keep = ToKeep::default();
        let half = match draft.per {
            Per::Day => chrono::Duration::hours(12),
            Per::Hour => chrono::Duration::minutes(30),
        };
        for LogReading {
            at,
            offset,
            temp_c,
            rh_pct,
        } in draft.means(draft.per).iter().copied()
        {
            // A logger that does not say its offset stands where the turner is.
            let offset = offset.unwrap_or(*now.offset());
            let Some(moment) = offset.from_local_datetime(&at).single() else {
                continue;
            };
            if moment + half > now {
                keep.unfinished += 1;
            } else if covered.holds(at, draft.per) {
                keep.there += 1;
            } else {
                keep.readings.push(LoggedReading {
                    at: moment,
                    temp_c: tenth(temp_c),
                    rh_pct: tenth(rh_pct),
                });
            }
        }
        let over = keep.readings.len().saturating_sub(MOST_KEPT);
        keep.readings.drain(..over);
        keep
    }

    /// Reads a file of this device; the sentence says why it could not be read.
    fn log_file(&self, path: &str) -> Result<LogDraft, String> {
        let words = self.words();
        let path = path.trim();
        if path.is_empty() {
            return Err(words.text("log-path-wanted"));
        }
        let Some(files) = &self.files else {
            return Err(words.text("log-no-files"));
        };
        let bytes = files
            .read(path)
            .map_err(|error| self.file_error_in_words(path, &error))?;
        let name = path.rsplit(['/', '\\']).next().unwrap_or(path);
        Ok(LogDraft::of(name.to_owned(), &bytes))
    }

    pub(super) fn log_open(&mut self, path: &str) -> Result<(), AppError> {
        let draft = self.log_file(path).map_err(AppError::Refused)?;
        self.states.shop.log = Some(draft);
        Ok(())
    }

    /// Reads the file whose path was typed; what is wrong stands below the field.
    pub(super) fn log_open_typed(&mut self, path: &str) {
        match self.log_file(path) {
            Ok(draft) => {
                self.states.shop.log = Some(draft);
                self.states.shop.draft = None;
            }
            Err(sentence) => {
                if let Some(form) = &mut self.states.shop.draft {
                    form.errors.insert("path".into(), sentence);
                }
            }
        }
    }

    pub(super) fn log_told(&mut self, said: LogTold) {
        if let Some(draft) = &mut self.states.shop.log {
            draft.tell(said);
        }
    }

    /// Records what is new in the file, in one line, and goes back to the climate.
    pub(super) fn log_keep(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(draft) = &self.states.shop.log else {
            return Ok(());
        };
        let room = draft.room;
        let readings = self.log_to_keep(draft, now).readings;
        // Happened when its last reading was taken; nothing is recorded ahead of now.
        let Some(last) = readings.last().map(|r| r.at) else {
            return Ok(());
        };
        let fact = ShopFact::ClimateLog(LoggedAir { room, readings });
        self.keep_shop(Some(last.min(now)), vec![fact], now)?;
        self.states.shop.log = None;
        self.route.replace(crate::route::Page::ShopPage("climate"));
        self.entered(now);
        Ok(())
    }

    /// A file that is looked at.
    pub(super) fn log_draft(&self) -> Option<&LogDraft> {
        self.states.shop.log.as_ref()
    }
}

impl From<LogTold> for ShopAction {
    fn from(said: LogTold) -> Self {
        Self::LogTold(said)
    }
}
