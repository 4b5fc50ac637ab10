//! Day: a day, a month or a year as a turner writes it, and the text that is stored for it.

use std::fmt;

use chrono::{Datelike, Days, NaiveDate};

use crate::words::dates::{month_long, month_short};
use crate::words::{Language, Words};

/// A day, or as much of it as is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Day {
    /// Only the year.
    Year(i32),
    /// Year and month, 1 to 12.
    Month(i32, u32),
    /// The day.
    Day(NaiveDate),
}

/// Why a text is not a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum DayError {
    /// It is not written in any way that is read.
    #[error("it is not a day, a month or a year; write 14 Mar 2026, March 2026 or 2026")]
    NotADay,
    /// There is no such day, for example 30 February.
    #[error("there is no such day; look in a calendar")]
    NoSuchDay,
    /// It lies ahead.
    #[error("it lies ahead; write a day up to today")]
    Ahead,
    /// It is before 1900.
    #[error("it is before 1900; check the year")]
    TooEarly,
}

pub(crate) const FIRST_YEAR: i32 = 1900;

impl fmt::Display for Day {
    /// The text that is stored: `2026`, `2026-03`, `2026-03-14`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Year(year) => write!(f, "{year:04}"),
            Self::Month(year, month) => write!(f, "{year:04}-{month:02}"),
            Self::Day(day) => write!(f, "{day}"),
        }
    }
}

impl Day {
    /// The day of a stored text; `None` where it is none.
    #[must_use]
    pub fn from_stored(text: &str) -> Option<Self> {
        let parts: Vec<&str> = text.split('-').collect();
        match parts.as_slice() {
            [year] if year.len() == 4 => Some(Self::Year(year.parse().ok()?)),
            [year, month] if year.len() == 4 => {
                let (year, month) = (year.parse().ok()?, month.parse().ok()?);
                (1..=12)
                    .contains(&month)
                    .then_some(Self::Month(year, month))
            }
            [_, _, _] => text.parse().ok().map(Self::Day),
            _ => None,
        }
    }

    /// The day in words: "14 March 2026", "March 2026", "2026".
    #[must_use]
    pub fn text(self, words: &Words) -> String {
        match self {
            Self::Year(year) => year.to_string(),
            Self::Month(year, month) => words.with(
                "date-month-year",
                &[
                    ("month", month_long(words, month).into()),
                    ("year", year.to_string().into()),
                ],
            ),
            Self::Day(day) => words.with(
                "date-full",
                &[
                    ("day", day.day().into()),
                    ("month", month_long(words, day.month()).into()),
                    ("year", day.year().to_string().into()),
                ],
            ),
        }
    }

    /// The first day that it can mean.
    #[must_use]
    pub fn first(self) -> Option<NaiveDate> {
        match self {
            Self::Year(year) => NaiveDate::from_ymd_opt(year, 1, 1),
            Self::Month(year, month) => NaiveDate::from_ymd_opt(year, month, 1),
            Self::Day(day) => Some(day),
        }
    }

    /// Reads what a turner writes: `14 Mar 2026`, `March 2026`, `2026`, `2026-03-14`, `14/3/26`, `14 March` (this year
    /// or the last), `yesterday`. Between figures alone the day stands before the month, in US words after it, unless
    /// only the other way round makes a day.
    ///
    /// # Errors
    /// [`DayError`] where it cannot be read, does not exist, lies after `today` or before 1900.
    pub fn read(text: &str, today: NaiveDate, words: &Words) -> Result<Self, DayError> {
        let text = text.trim().to_lowercase();
        let near = [("date-today", 0), ("date-yesterday", 1)];
        for (id, back) in near {
            if text == words.text(id).to_lowercase() {
                let day = today.checked_sub_days(Days::new(back));
                return day.map(Self::Day).ok_or(DayError::NoSuchDay);
            }
        }
        let month_first = words.language() == Language::EnUs;
        let day = assemble(&parts_of(&text, words)?, today, month_first)?;
        match day.first() {
            None => Err(DayError::NoSuchDay),
            Some(first) if first > today => Err(DayError::Ahead),
            Some(first) if first.year() < FIRST_YEAR => Err(DayError::TooEarly),
            Some(_) => Ok(day),
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Part {
    /// Figures: their value and how many there are.
    Figures(u32, usize),
    /// A month by its name.
    Named(u32),
}

fn parts_of(text: &str, words: &Words) -> Result<Vec<Part>, DayError> {
    let is_between = |c: char| c.is_whitespace() || matches!(c, '/' | '-' | '.' | ',' | '–');
    let found: Vec<Part> = text
        .split(is_between)
        .filter(|p| !p.is_empty())
        .map(|p| part(p, words).ok_or(DayError::NotADay))
        .collect::<Result<_, _>>()?;
    if found.is_empty() || found.len() > 3 {
        return Err(DayError::NotADay);
    }
    Ok(found)
}

fn part(text: &str, words: &Words) -> Option<Part> {
    let bare = ["st", "nd", "rd", "th"]
        .iter()
        .find_map(|end| text.strip_suffix(end))
        .filter(|rest| rest.bytes().all(|b| b.is_ascii_digit()) && !rest.is_empty())
        .unwrap_or(text);
    if bare.bytes().all(|b| b.is_ascii_digit()) {
        return bare
            .parse()
            .ok()
            .filter(|_| bare.len() <= 4)
            .map(|n| Part::Figures(n, bare.len()));
    }
    // Three letters are enough, and more are read as long as they go on as the name does.
    (1..=12)
        .find(|m| {
            let long = month_long(words, *m).to_lowercase();
            let short = month_short(words, *m).to_lowercase();
            text.chars().count() >= 3 && (long.starts_with(text) || text == short)
                || (*m == 9 && text == "sept")
        })
        .map(Part::Named)
}

/// A year of two figures is of this century, or of the last where this would lie ahead.
fn year_of(value: u32, figures: usize, today: NaiveDate) -> Option<i32> {
    let value = i32::try_from(value).ok()?;
    match figures {
        4 => Some(value),
        2 if 2000 + value > today.year() => Some(1900 + value),
        2 => Some(2000 + value),
        _ => None,
    }
}

fn assemble(parts: &[Part], today: NaiveDate, month_first: bool) -> Result<Day, DayError> {
    use Part::{Figures, Named};
    let day_in = |y: i32, m: u32, d: u32| {
        NaiveDate::from_ymd_opt(y, m, d)
            .map(Day::Day)
            .ok_or(DayError::NoSuchDay)
    };
    let year = |n: u32, figures: usize| year_of(n, figures, today).ok_or(DayError::NotADay);
    let month_in = |y: i32, m: u32| {
        if (1..=12).contains(&m) {
            Ok(Day::Month(y, m))
        } else {
            Err(DayError::NoSuchDay)
        }
    };
    match *parts {
        [Figures(y, 4)] => Ok(Day::Year(year(y, 4)?)),
        [Named(m)] => month_in(last_year_with(today, m, 1), m),
        [Named(m), Figures(y, 4)] | [Figures(y, 4), Named(m)] => month_in(year(y, 4)?, m),
        [Figures(y, 4), Figures(m, _)] | [Figures(m, _), Figures(y, 4)] => month_in(year(y, 4)?, m),
        [Figures(d, _), Named(m)] | [Named(m), Figures(d, _)] => {
            day_in(last_year_with(today, m, d), m, d)
        }
        [Figures(y, 4), Named(m), Figures(d, _)]
        | [Figures(y, 4), Figures(m, _), Figures(d, _)] => day_in(year(y, 4)?, m, d),
        [Figures(d, _), Named(m), Figures(y, n)] | [Named(m), Figures(d, _), Figures(y, n)] => {
            day_in(year(y, n)?, m, d)
        }
        [Figures(a, _), Figures(b, _), Figures(y, n)] => {
            let y = year(y, n)?;
            let (usual, other) = if month_first {
                ((a, b), (b, a))
            } else {
                ((b, a), (a, b))
            };
            day_in(y, usual.0, usual.1).or_else(|_| day_in(y, other.0, other.1))
        }
        _ => Err(DayError::NotADay),
    }
}

/// The year in which this day was last.
fn last_year_with(today: NaiveDate, month: u32, day: u32) -> i32 {
    if (month, day) <= (today.month(), today.day()) {
        today.year()
    } else {
        today.year() - 1
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    fn today() -> NaiveDate {
        "2026-03-14".parse().unwrap()
    }

    fn read(text: &str, language: Language) -> Result<String, DayError> {
        Day::read(text, today(), &Words::new(language)).map(|d| d.to_string())
    }

    #[test]
    fn a_day_is_read_however_it_is_written() {
        for (text, stored) in [
            ("14 Mar 2026", "2026-03-14"),
            ("14 march 2026", "2026-03-14"),
            ("14th March, 2026", "2026-03-14"),
            ("March 2 2026", "2026-03-02"),
            ("March 2026", "2026-03"),
            ("sept 2025", "2025-09"),
            ("2026", "2026"),
            ("2026-03-14", "2026-03-14"),
            ("2026-03", "2026-03"),
            ("3/2026", "2026-03"),
            ("2.3.2026", "2026-03-02"),
            ("14/3/26", "2026-03-14"),
            ("1/12/98", "1998-12-01"),
            ("3/14/2026", "2026-03-14"),
            ("14 Mar", "2026-03-14"),
            ("15 Mar", "2025-03-15"),
            ("December", "2025-12"),
            ("  Yesterday ", "2026-03-13"),
        ] {
            assert_eq!(read(text, Language::EnGb).as_deref(), Ok(stored), "{text}");
        }
        assert_eq!(
            read("3/2/2026", Language::EnUs).as_deref(),
            Ok("2026-03-02")
        );
    }

    #[test]
    fn what_is_no_day_is_refused_and_says_why() {
        for (text, error) in [
            ("", DayError::NotADay),
            ("soon", DayError::NotADay),
            ("14", DayError::NotADay),
            ("ma 2026", DayError::NotADay),
            ("30 Feb 2026", DayError::NoSuchDay),
            ("2026-13", DayError::NoSuchDay),
            ("15 Mar 2026", DayError::Ahead),
            ("2027", DayError::Ahead),
            ("1426", DayError::TooEarly),
            ("1 2 3 4", DayError::NotADay),
            ("99999999999999", DayError::NotADay),
        ] {
            assert_eq!(read(text, Language::EnGb), Err(error), "{text}");
        }
    }

    #[test]
    fn what_is_stored_is_shown_and_the_shown_is_read_back() {
        for language in Language::ALL {
            let words = Words::new(language);
            for stored in ["2026", "2025-09", "2026-03-14", "2025-05-06"] {
                let day = Day::from_stored(stored).unwrap();
                assert_eq!(day.to_string(), stored);
                assert_eq!(Day::read(&day.text(&words), today(), &words), Ok(day));
            }
        }
        assert_eq!(Day::from_stored("last winter"), None);
        assert_eq!(Day::from_stored("2026-14"), None);
    }
}
