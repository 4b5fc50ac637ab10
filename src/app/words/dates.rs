//! Dates in words: weekday and month names, and how far a day lies from today.
//!
//! Only local calendar days come in; today is an argument. Every phrase comes from the catalogue.

use chrono::{Datelike, NaiveDate, Weekday};

use super::Words;

/// Phrases for days, seen from one given today.
#[derive(Debug, Clone)]
pub struct Dates {
    words: Words,
    today: NaiveDate,
}

/// Days up to this many away are counted in days, then in weeks.
const DAYS_UP_TO: i64 = 20;
/// Days up to this many away are counted in weeks, then in months.
const WEEKS_UP_TO: i64 = 69;
/// Days up to this many away are counted in months, then in years.
const MONTHS_UP_TO: i64 = 729;
/// Within this many days "Sat 14" can mean only one day.
const DAY_NUMBER_IS_ENOUGH: i64 = 20;

impl Dates {
    /// Phrases as read on the day `today`.
    #[must_use]
    pub fn new(words: &Words, today: NaiveDate) -> Self {
        Self {
            words: words.clone(),
            today,
        }
    }

    /// The day from which these phrases are read.
    #[must_use]
    pub fn today(&self) -> NaiveDate {
        self.today
    }

    /// "Sat 14".
    #[must_use]
    pub fn day(&self, date: NaiveDate) -> String {
        self.words.with(
            "date-weekday-day",
            &[
                ("weekday", weekday_short(&self.words, date.weekday()).into()),
                ("day", date.day().into()),
            ],
        )
    }

    /// "Sat 14 Mar", with the year when it is not this one: "Sun 14 Mar 2027".
    #[must_use]
    pub fn day_and_month(&self, date: NaiveDate) -> String {
        let weekday = weekday_short(&self.words, date.weekday());
        let month = month_short(&self.words, date.month());
        if date.year() == self.today.year() {
            self.words.with(
                "date-weekday-day-month",
                &[
                    ("weekday", weekday.into()),
                    ("day", date.day().into()),
                    ("month", month.into()),
                ],
            )
        } else {
            self.words.with(
                "date-weekday-day-month-year",
                &[
                    ("weekday", weekday.into()),
                    ("day", date.day().into()),
                    ("month", month.into()),
                    ("year", date.year().to_string().into()),
                ],
            )
        }
    }

    /// "14 March 2026", for reports and the story of a finished piece.
    #[must_use]
    pub fn full(&self, date: NaiveDate) -> String {
        self.words.with(
            "date-full",
            &[
                ("day", date.day().into()),
                ("month", month_long(&self.words, date.month()).into()),
                ("year", date.year().to_string().into()),
            ],
        )
    }

    /// "March 2026".
    #[must_use]
    pub fn month_and_year(&self, date: NaiveDate) -> String {
        self.words.with(
            "date-month-year",
            &[
                ("month", month_long(&self.words, date.month()).into()),
                ("year", date.year().to_string().into()),
            ],
        )
    }

    /// The shortest phrase that names the day: "today", "tomorrow", "yesterday", "Sat 14", "Sat 14 Mar", "Sun 14 Mar 2027".
    #[must_use]
    pub fn near(&self, date: NaiveDate) -> String {
        match self.ahead(date) {
            0 => self.words.text("date-today"),
            1 => self.words.text("date-tomorrow"),
            -1 => self.words.text("date-yesterday"),
            ahead if ahead.abs() <= DAY_NUMBER_IS_ENOUGH => self.day(date),
            _ => self.day_and_month(date),
        }
    }

    /// How long ago: "today", "yesterday", "3 days ago", "5 weeks ago". A future day reads "dated 3 days ahead".
    #[must_use]
    pub fn ago(&self, date: NaiveDate) -> String {
        match -self.ahead(date) {
            0 => self.words.text("date-today"),
            1 => self.words.text("date-yesterday"),
            gone if gone > 1 => {
                let (span, n) = span(gone);
                match span {
                    Span::Days => self.words.with("date-days-ago", &[("n", n.into())]),
                    Span::Weeks => self.words.with("date-weeks-ago", &[("n", n.into())]),
                    Span::Months => self.words.with("date-months-ago", &[("n", n.into())]),
                    Span::Years => self.words.with("date-years-ago", &[("n", n.into())]),
                }
            }
            gone => self
                .words
                .with("date-dated-ahead", &[("n", (-gone).into())]),
        }
    }

    /// How far ahead: "today", "tomorrow", "in 3 days", "in 5 weeks". A past day reads as [`Dates::ago`].
    #[must_use]
    pub fn until(&self, date: NaiveDate) -> String {
        match self.ahead(date) {
            0 => self.words.text("date-today"),
            1 => self.words.text("date-tomorrow"),
            ahead if ahead > 1 => {
                let (span, n) = span(ahead);
                match span {
                    Span::Days => self.words.with("date-in-days", &[("n", n.into())]),
                    Span::Weeks => self.words.with("date-in-weeks", &[("n", n.into())]),
                    Span::Months => self.words.with("date-in-months", &[("n", n.into())]),
                    Span::Years => self.words.with("date-in-years", &[("n", n.into())]),
                }
            }
            _ => self.ago(date),
        }
    }

    /// When something due on `due` is wanted: "2 days late", "today", "tomorrow", "Sat 14".
    #[must_use]
    pub fn due(&self, due: NaiveDate) -> String {
        match self.ahead(due) {
            ahead if ahead < 0 => {
                let (span, n) = span(-ahead);
                match span {
                    Span::Days => self.words.with("date-days-late", &[("n", n.into())]),
                    Span::Weeks => self.words.with("date-weeks-late", &[("n", n.into())]),
                    Span::Months => self.words.with("date-months-late", &[("n", n.into())]),
                    Span::Years => self.words.with("date-years-late", &[("n", n.into())]),
                }
            }
            _ => self.near(due),
        }
    }

    /// A length of time in days, in words: "1 day", "12 days", "5 weeks". Negative lengths read as none: "0 days".
    #[must_use]
    pub fn length(&self, days: i64) -> String {
        let (span, n) = span(days.max(0));
        match span {
            Span::Days => self.words.with("date-days", &[("n", n.into())]),
            Span::Weeks => self.words.with("date-weeks", &[("n", n.into())]),
            Span::Months => self.words.with("date-months", &[("n", n.into())]),
            Span::Years => self.words.with("date-years", &[("n", n.into())]),
        }
    }

    fn ahead(&self, date: NaiveDate) -> i64 {
        date.signed_duration_since(self.today).num_days()
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Span {
    Days,
    Weeks,
    Months,
    Years,
}

/// The unit in which a number of days is told, and the number, rounded down so that time is never made longer.
fn span(days: i64) -> (Span, i64) {
    if days <= DAYS_UP_TO {
        (Span::Days, days)
    } else if days <= WEEKS_UP_TO {
        (Span::Weeks, days / 7)
    } else if days <= MONTHS_UP_TO {
        // A month is 365.25 / 12 = 30.4375 days, in ten-thousandths so that the sum stays whole.
        (Span::Months, days * 10_000 / 304_375)
    } else {
        (Span::Years, days * 100 / 36_525)
    }
}

/// "Sat".
#[must_use]
pub fn weekday_short(words: &Words, weekday: Weekday) -> String {
    words.text(match weekday {
        Weekday::Mon => "weekday-mon-short",
        Weekday::Tue => "weekday-tue-short",
        Weekday::Wed => "weekday-wed-short",
        Weekday::Thu => "weekday-thu-short",
        Weekday::Fri => "weekday-fri-short",
        Weekday::Sat => "weekday-sat-short",
        Weekday::Sun => "weekday-sun-short",
    })
}

/// "Saturday".
#[must_use]
pub fn weekday_long(words: &Words, weekday: Weekday) -> String {
    words.text(match weekday {
        Weekday::Mon => "weekday-mon",
        Weekday::Tue => "weekday-tue",
        Weekday::Wed => "weekday-wed",
        Weekday::Thu => "weekday-thu",
        Weekday::Fri => "weekday-fri",
        Weekday::Sat => "weekday-sat",
        Weekday::Sun => "weekday-sun",
    })
}

/// "Mar" for 3; months run from 1 to 12, another number gives its id in brackets.
#[must_use]
pub fn month_short(words: &Words, month: u32) -> String {
    words.text(&format!("month-{month}-short"))
}

/// "March" for 3; months run from 1 to 12, another number gives its id in brackets.
#[must_use]
pub fn month_long(words: &Words, month: u32) -> String {
    words.text(&format!("month-{month}"))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::super::Language;
    use super::*;

    fn date(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    /// Saturday 14 March 2026.
    fn dates(language: Language) -> Dates {
        Dates::new(&Words::new(language), date("2026-03-14"))
    }

    #[test]
    fn near_days_are_named_by_the_shortest_clear_phrase() {
        let dates = dates(Language::EnGb);
        for (day, phrase) in [
            ("2026-03-14", "today"),
            ("2026-03-15", "tomorrow"),
            ("2026-03-13", "yesterday"),
            ("2026-03-17", "Tue 17"),
            ("2026-03-01", "Sun 1"),
            ("2026-04-03", "Fri 3"),
            ("2026-04-04", "Sat 4 Apr"),
            ("2027-03-14", "Sun 14 Mar 2027"),
            ("2025-12-31", "Wed 31 Dec 2025"),
        ] {
            assert_eq!(dates.near(date(day)), phrase, "{day}");
        }
        assert_eq!(dates.day(date("2026-03-14")), "Sat 14");
        assert_eq!(dates.day_and_month(date("2026-03-14")), "Sat 14 Mar");
        assert_eq!(dates.full(date("2026-03-14")), "14 March 2026");
        assert_eq!(dates.month_and_year(date("2026-03-14")), "March 2026");
    }

    #[test]
    fn past_and_late_days_are_counted() {
        let dates = dates(Language::EnGb);
        for (day, ago, due) in [
            ("2026-03-13", "yesterday", "1 day late"),
            ("2026-03-12", "2 days ago", "2 days late"),
            ("2026-02-22", "20 days ago", "20 days late"),
            ("2026-02-21", "3 weeks ago", "3 weeks late"),
            ("2026-01-03", "2 months ago", "2 months late"),
            ("2024-01-03", "2 years ago", "2 years late"),
            ("2026-03-14", "today", "today"),
            ("2026-03-17", "dated 3 days ahead", "Tue 17"),
        ] {
            assert_eq!(dates.ago(date(day)), ago, "{day}");
            assert_eq!(dates.due(date(day)), due, "{day}");
        }
    }

    #[test]
    fn coming_days_and_lengths_are_counted() {
        let dates = dates(Language::EnGb);
        assert_eq!(dates.until(date("2026-03-15")), "tomorrow");
        assert_eq!(dates.until(date("2026-03-17")), "in 3 days");
        assert_eq!(dates.until(date("2026-04-18")), "in 5 weeks");
        assert_eq!(dates.until(date("2026-03-12")), "2 days ago");
        assert_eq!(dates.length(1), "1 day");
        assert_eq!(dates.length(60), "8 weeks");
        assert_eq!(dates.length(-4), "0 days");
    }

    #[test]
    fn us_dates_put_the_month_first() {
        let dates = dates(Language::EnUs);
        assert_eq!(dates.day_and_month(date("2026-03-14")), "Sat, Mar 14");
        assert_eq!(dates.full(date("2026-03-14")), "March 14, 2026");
        assert_eq!(dates.day(date("2026-03-14")), "Sat 14");
    }

    #[test]
    fn every_weekday_and_month_has_its_names() {
        let words = Words::new(Language::EnGb);
        let mut day = date("2026-01-05");
        let mut names = std::collections::BTreeSet::new();
        for _ in 0..7 {
            let (long, short) = (
                weekday_long(&words, day.weekday()),
                weekday_short(&words, day.weekday()),
            );
            assert!(long.starts_with(&short), "{long} {short}");
            assert_eq!(day.format("%A").to_string(), long);
            names.insert(long);
            day = day.succ_opt().expect("in range");
        }
        for month in 1..=12 {
            let first = NaiveDate::from_ymd_opt(2026, month, 1).expect("a month");
            let (long, short) = (month_long(&words, month), month_short(&words, month));
            assert_eq!(first.format("%B").to_string(), long);
            assert!(long.starts_with(&short), "{long} {short}");
            names.insert(long);
        }
        assert_eq!(names.len(), 19);
        assert_eq!(words.problems(), []);
    }

    #[test]
    fn no_span_is_told_longer_than_it_is_and_all_are_told() {
        for days in 0..4000 {
            let (span, n) = span(days);
            let told = match span {
                Span::Days => n as f64,
                Span::Weeks => n as f64 * 7.0,
                Span::Months => n as f64 * 30.4375,
                Span::Years => n as f64 * 365.25,
            };
            assert!(
                told <= days as f64 && (days == 0 || n >= 1),
                "{days} days told as {n} {span:?}"
            );
        }
    }
}
