//! Days: a day as a turner types it, read without guessing.

use chrono::{Datelike, NaiveDate};

use crate::details::FIRST_YEAR;
use crate::words::{Language, Words};

/// Why a typed day could not be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum DayFault {
    /// Nothing was typed.
    Empty,
    /// It is not a day of the calendar.
    NotADay,
    /// It is before 1900: a slip in the year.
    TooEarly,
}

/// Reads a day: `14 Mar`, `14 March 2026`, `Mar 14`, `2026-03-14`, `14.3.`, `14/3` (US words: `3/14`). Without a year
/// the nearest such day to `today` is meant.
pub(crate) fn read_day(words: &Words, text: &str, today: NaiveDate) -> Result<NaiveDate, DayFault> {
    let text = text.trim().to_lowercase();
    if text.is_empty() {
        return Err(DayFault::Empty);
    }
    if text.chars().count() > 40 {
        return Err(DayFault::NotADay);
    }
    let parts: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || matches!(c, '.' | '/' | ',' | '-'))
        .filter(|p| !p.is_empty())
        .collect();
    let named = parts.iter().position(|p| month_named(words, p).is_some());
    let (day, month, year) = match (parts.as_slice(), named) {
        ([_, _] | [_, _, _], Some(place @ (0 | 1))) => {
            let month = month_named(words, parts[place]).ok_or(DayFault::NotADay)?;
            (number(parts[1 - place])?, month, parts.get(2))
        }
        ([year, month, day], None) if year.len() == 4 => {
            (number(day)?, number(month)?, parts.first())
        }
        ([first, second] | [first, second, _], None) => {
            let (a, b) = (number(first)?, number(second)?);
            match words.language() {
                Language::EnGb => (a, b, parts.get(2)),
                Language::EnUs => (b, a, parts.get(2)),
            }
        }
        _ => return Err(DayFault::NotADay),
    };
    let read = match year {
        Some(year) => {
            let full = match year.len() {
                2 => 2000 + number(year)?,
                4 => number(year)?,
                _ => return Err(DayFault::NotADay),
            };
            i32::try_from(full)
                .ok()
                .and_then(|y| NaiveDate::from_ymd_opt(y, month, day))
                .ok_or(DayFault::NotADay)
        }
        None => (today.year() - 1..=today.year() + 1)
            .filter_map(|y| NaiveDate::from_ymd_opt(y, month, day))
            .min_by_key(|d| d.signed_duration_since(today).num_days().abs())
            .ok_or(DayFault::NotADay),
    }?;
    if read.year() < FIRST_YEAR {
        return Err(DayFault::TooEarly);
    }
    Ok(read)
}

fn number(text: &str) -> Result<u32, DayFault> {
    // "14th" is a day as well.
    let digits = text
        .trim_end_matches("st")
        .trim_end_matches("nd")
        .trim_end_matches("rd")
        .trim_end_matches("th");
    digits.parse().map_err(|_| DayFault::NotADay)
}

fn month_named(words: &Words, text: &str) -> Option<u32> {
    (text.chars().count() >= 3)
        .then(|| {
            (1..=12).find(|m| {
                words
                    .text(&format!("month-{m}"))
                    .to_lowercase()
                    .starts_with(text)
            })
        })
        .flatten()
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn a_day_is_read_in_the_ways_people_write_it() {
        let words = Words::new(Language::EnGb);
        let today = day("2026-03-14");
        for text in [
            "12 Mar",
            "12 march",
            "Mar 12",
            "12.3.",
            "12/3",
            "12/3/2026",
            "12-03-26",
            " 12th March, 2026 ",
            "2026-03-12",
        ] {
            assert_eq!(
                read_day(&words, text, today),
                Ok(day("2026-03-12")),
                "{text}"
            );
        }
        // Without a year the nearest is meant, also across the turn of the year.
        assert_eq!(
            read_day(&words, "30 Dec", day("2026-01-02")),
            Ok(day("2025-12-30"))
        );
        assert_eq!(
            read_day(&words, "2 Jan", day("2025-12-30")),
            Ok(day("2026-01-02"))
        );
        let us = Words::new(Language::EnUs);
        assert_eq!(read_day(&us, "3/12", today), Ok(day("2026-03-12")));
    }

    #[test]
    fn a_slip_in_the_year_is_no_day_of_this_workshop() {
        let words = Words::new(Language::EnGb);
        let today = day("2026-03-14");
        for text in ["12 Mar 0026", "31.12.1899", "1026-03-12"] {
            assert_eq!(
                read_day(&words, text, today),
                Err(DayFault::TooEarly),
                "{text}"
            );
        }
        assert_eq!(read_day(&words, "1 Jan 1900", today), Ok(day("1900-01-01")));
    }

    #[test]
    fn nonsense_is_never_a_day() {
        let words = Words::new(Language::EnGb);
        let today = day("2026-03-14");
        assert_eq!(read_day(&words, "  ", today), Err(DayFault::Empty));
        let long = "1".repeat(10_000);
        for text in [
            "x",
            "31 Feb",
            "32/1",
            "0 Mar",
            "12",
            "12 Mar 20266",
            "-5",
            "ma 12",
            "1 2 3 4",
            &long,
        ] {
            assert_eq!(
                read_day(&words, text, today),
                Err(DayFault::NotADay),
                "{text}"
            );
        }
    }
}
