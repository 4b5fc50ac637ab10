//! Days: ranges of a forecast as days of the calendar, and in words.

use chrono::{DateTime, Datelike, NaiveDate};
use evenwall_wood::forecast::{ReadyRange, Road, SPREAD};

use super::Foreseen;
use crate::app::App;
use crate::words::dates::month_short;

/// Where a road has brought a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stretch {
    /// It is still to go: first and last day of four in five.
    Ahead(NaiveDate, NaiveDate),
    /// The whole range is behind: it has probably arrived.
    Behind,
    /// Not within two years as things are.
    Never,
    /// The weights leave a range too wide to be of use.
    Wide,
}

/// The day of the calendar of a local day counted since 1970.
fn date_of(day: f64) -> NaiveDate {
    // Days of the calendar since 1970, far inside what a date holds.
    DateTime::from_timestamp((day * 86_400.0) as i64, 0)
        .map(|m| m.date_naive())
        .unwrap_or_default()
}

impl Foreseen {
    /// The local day of a day on the count of the piece.
    #[must_use]
    pub fn date(&self, day: f64) -> NaiveDate {
        date_of(self.zero + day)
    }

    /// A road of the outlook as days, by the slowest wall; `None` where there is no outlook.
    #[must_use]
    pub fn stretch(&self, road: &Road) -> Option<Stretch> {
        let first = self.weighed.as_ref()?.outlook.first_day();
        let Some(range) = road.slowest else {
            return Some(Stretch::Never);
        };
        if range.spread > SPREAD || !range.late.is_finite() {
            return Some(Stretch::Wide);
        }
        Some(match range.ahead(self.today - first) {
            None => Stretch::Behind,
            // The last day whole: a range is never made narrower by rounding.
            Some((early, late)) => {
                Stretch::Ahead(self.date(first + early), self.date((first + late).ceil()))
            }
        })
    }
}

/// A range in whole weeks, rounded outward, at least one apart.
#[must_use]
pub fn weeks(range: &ReadyRange) -> (u32, u32) {
    let low = (range.early / 7.0).floor().clamp(0.0, 104.0) as u32; // within the horizon of two years
    let high = (range.late / 7.0).ceil().clamp(1.0, 105.0) as u32;
    (low, high.max(low + 1))
}

impl App {
    /// "10 to 18 Mar", "31 Mar to 9 Apr"; with the year where it is not that of `today`.
    #[must_use]
    pub fn day_range(
        &self,
        (from, to): (NaiveDate, NaiveDate),
        today: Option<NaiveDate>,
    ) -> String {
        let words = self.words();
        let (from_month, to_month) = (
            month_short(words, from.month()),
            month_short(words, to.month()),
        );
        let same_month = from.month() == to.month() && from.year() == to.year();
        let range = if from == to {
            words.with(
                "forecast-one-day",
                &[("day", from.day().into()), ("month", from_month.into())],
            )
        } else if same_month {
            words.with(
                "forecast-days",
                &[
                    ("from", from.day().into()),
                    ("to", to.day().into()),
                    ("month", from_month.into()),
                ],
            )
        } else {
            words.with(
                "forecast-days-months",
                &[
                    ("from", from.day().into()),
                    ("to", to.day().into()),
                    ("from-month", from_month.into()),
                    ("to-month", to_month.into()),
                ],
            )
        };
        if today.is_some_and(|t| t.year() == to.year()) {
            range
        } else {
            words.with(
                "forecast-days-year",
                &[
                    ("range", range.into()),
                    ("year", to.year().to_string().into()),
                ],
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weeks_are_rounded_outward() {
        let range = |early, late| ReadyRange {
            early,
            middle: 0.5 * (early + late),
            late,
            spread: 0.3,
        };
        assert_eq!(weeks(&range(8.0, 20.0)), (1, 3));
        assert_eq!(weeks(&range(0.4, 0.5)), (0, 1));
        assert_eq!(weeks(&range(14.0, 14.0)), (2, 3));
    }
}
