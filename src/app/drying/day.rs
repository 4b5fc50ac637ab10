//! Day: when a piece was weighed, if not now.

use chrono::{NaiveDate, NaiveTime, TimeZone};
use evenwall_piece::piece::Moment;

use crate::app::App;
use crate::piece::days::{DayFault, read_day};

/// When it was weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum When {
    /// Just now.
    #[default]
    Now,
    /// Yesterday.
    Yesterday,
    /// On a day that is typed.
    Typed,
}

impl When {
    /// All, the nearest first.
    pub const ALL: [Self; 3] = [Self::Now, Self::Yesterday, Self::Typed];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Now => "now",
            Self::Yesterday => "yesterday",
            Self::Typed => "typed",
        }
    }

    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|w| w.key() == key)
    }
}

/// Noon of a day at the place of `now`, never after now.
fn noon(day: NaiveDate, now: Moment) -> Moment {
    let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
    now.offset()
        .from_local_datetime(&day.and_time(noon))
        .single()
        .map_or(now, |m| m.min(now))
}

impl App {
    /// The moment chosen on the weighing page, or the sentence that says what is wrong with the day typed.
    pub(super) fn weighed_at(&self, now: Moment) -> Result<Moment, String> {
        let today = now.date_naive();
        match self.states.drying.weigh.when {
            When::Now => Ok(now),
            When::Yesterday => Ok(today.pred_opt().map_or(now, |d| noon(d, now))),
            When::Typed => self
                .typed_weigh_day(today)
                .map(|day| if day == today { now } else { noon(day, now) }),
        }
    }

    fn typed_weigh_day(&self, today: NaiveDate) -> Result<NaiveDate, String> {
        let words = self.words();
        let typed = &self.states.drying.weigh.day;
        match read_day(words, typed, today) {
            Ok(day) if day > today => {
                let day = crate::words::dates::Dates::new(words, today).day_and_month(day);
                Err(words.with("piece-day-ahead", &[("day", day.into())]))
            }
            Ok(day) => Ok(day),
            Err(DayFault::Empty) => Err(words.text("piece-day-empty")),
            Err(DayFault::NotADay) => {
                let found: String = typed.chars().take(30).collect();
                Err(words.with("piece-day-nonsense", &[("found", found.into())]))
            }
            Err(DayFault::TooEarly) => {
                let found: String = typed.chars().take(30).collect();
                Err(words.with("details-day-early", &[("found", found.into())]))
            }
        }
    }
}
