//! Back day: the day on which something was done that is noted now.

use chrono::{Days, NaiveDate, NaiveTime, TimeZone};
use evenwall_piece::piece::Moment;

/// Today, or one of the two days before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum BackDay {
    /// Now.
    #[default]
    Today,
    /// Yesterday.
    Yesterday,
    /// Two days ago.
    TwoDaysAgo,
}

impl BackDay {
    /// All, the nearest first.
    pub const ALL: [Self; 3] = [Self::Today, Self::Yesterday, Self::TwoDaysAgo];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Today => "today",
            Self::Yesterday => "yesterday",
            Self::TwoDaysAgo => "two-days-ago",
        }
    }

    /// The day with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|d| d.key() == key)
    }

    const fn days(self) -> u64 {
        match self {
            Self::Today => 0,
            Self::Yesterday => 1,
            Self::TwoDaysAgo => 2,
        }
    }

    /// The local day, as seen from a moment.
    #[must_use]
    pub fn date(self, now: Moment) -> NaiveDate {
        let today = now.date_naive();
        today
            .checked_sub_days(Days::new(self.days()))
            .unwrap_or(today)
    }

    /// Now, or noon of the earlier day, never after now.
    #[must_use]
    pub fn moment(self, now: Moment) -> Moment {
        if self == Self::Today {
            return now;
        }
        let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
        now.offset()
            .from_local_datetime(&self.date(now).and_time(noon))
            .single()
            .map_or(now, |m| m.min(now))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn an_earlier_day_is_noted_at_its_noon_where_the_turner_is() {
        let now = chrono::DateTime::parse_from_rfc3339("2026-03-01T00:30:00+11:00").unwrap();
        let said: Vec<String> = BackDay::ALL
            .iter()
            .map(|d| d.moment(now).to_rfc3339())
            .collect();
        assert_eq!(
            said,
            [
                "2026-03-01T00:30:00+11:00",
                "2026-02-28T12:00:00+11:00",
                "2026-02-27T12:00:00+11:00"
            ]
        );
        for day in BackDay::ALL {
            assert_eq!(BackDay::from_key(day.key()), Some(day));
        }
    }
}
