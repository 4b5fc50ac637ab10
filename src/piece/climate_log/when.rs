//! When: a time as loggers write it, with the order of day and month left open where the text leaves it open.

use chrono::{DateTime, FixedOffset, NaiveDate, NaiveDateTime, NaiveTime};

/// Which of two numbers is the day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum DateOrder {
    /// 31/01/2026.
    DayFirst,
    /// 1/31/2026.
    MonthFirst,
}

/// What a time tells of the order of its file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Clue {
    /// Only this order makes a day of it.
    Only(DateOrder),
    /// Both do, and give different days.
    Either,
}

/// A time as written.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Written {
    text: String,
    date: Date,
    time: NaiveTime,
    offset: Option<FixedOffset>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Date {
    Day(NaiveDate),
    TwoNumbers { first: u32, second: u32, year: i32 },
}

impl Written {
    /// Reads a time, `None` where it is none. Day and time of day may be two cells joined by a space.
    pub(super) fn read(text: &str) -> Option<Written> {
        let text = text.trim();
        let (date, time, offset) = instant(text)
            .or_else(|| epoch(text))
            .or_else(|| date_and_time(text))?;
        Some(Written {
            text: text.to_owned(),
            date,
            time,
            offset,
        })
    }

    /// The text it was read from.
    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// The offset, where written.
    pub(super) fn offset(&self) -> Option<FixedOffset> {
        self.offset
    }

    /// What it tells of the order; `None` where it needs none.
    pub(super) fn clue(&self) -> Option<Clue> {
        let Date::TwoNumbers { first, second, .. } = self.date else {
            return None;
        };
        match (first <= 12, second <= 12) {
            (true, true) if first == second => None,
            (true, true) => Some(Clue::Either),
            (false, _) => Some(Clue::Only(DateOrder::DayFirst)),
            (_, false) => Some(Clue::Only(DateOrder::MonthFirst)),
        }
    }

    /// The time, with the order of its file; a time that shows its own order keeps that. `None` where there is no such day or
    /// the order is open.
    pub(super) fn at(&self, order: Option<DateOrder>) -> Option<NaiveDateTime> {
        let day = match self.date {
            Date::Day(day) => day,
            Date::TwoNumbers {
                first,
                second,
                year,
            } => {
                let order = match self.clue() {
                    Some(Clue::Only(own)) => own,
                    Some(Clue::Either) => order?,
                    None => DateOrder::DayFirst,
                };
                let (day, month) = match order {
                    DateOrder::DayFirst => (first, second),
                    DateOrder::MonthFirst => (second, first),
                };
                NaiveDate::from_ymd_opt(year, month, day)?
            }
        };
        Some(day.and_time(self.time))
    }
}

type Parts = (Date, NaiveTime, Option<FixedOffset>);

/// ISO 8601 with its offset.
fn instant(text: &str) -> Option<Parts> {
    let at = DateTime::parse_from_rfc3339(text)
        .or_else(|_| DateTime::parse_from_str(text, "%Y-%m-%d %H:%M:%S%.f %z"))
        .or_else(|_| DateTime::parse_from_str(text, "%Y-%m-%dT%H:%M%z"))
        .ok()?;
    let local = at.naive_local();
    in_our_time(local.date())?;
    Some((Date::Day(local.date()), local.time(), Some(*at.offset())))
}

/// Seconds since 1970, ten digits.
fn epoch(text: &str) -> Option<Parts> {
    if text.len() != 10 || !text.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    let at = DateTime::from_timestamp(text.parse().ok()?, 0)?.naive_utc();
    let utc = FixedOffset::east_opt(0)?;
    in_our_time(at.date())?;
    Some((Date::Day(at.date()), at.time(), Some(utc)))
}

/// Loggers of turners write dates of these years.
fn in_our_time(day: NaiveDate) -> Option<NaiveDate> {
    use chrono::Datelike;
    (1990..=2100).contains(&day.year()).then_some(day)
}

fn date_and_time(text: &str) -> Option<Parts> {
    // The time of day is what holds a colon, with AM or PM after it; a day alone is its midnight.
    let words: Vec<&str> = text
        .split([' ', 'T', ',', '\u{202f}', '\u{a0}'])
        .filter(|w| !w.is_empty())
        .collect();
    let first_of_time = words.iter().position(|w| w.contains(':'));
    let (day_words, time_words) = words.split_at(first_of_time.unwrap_or(words.len()));
    let time = if time_words.is_empty() {
        NaiveTime::MIN
    } else {
        time_of_day(time_words)?
    };
    Some((date(&day_words.join(" "))?, time, None))
}

fn time_of_day(words: &[&str]) -> Option<NaiveTime> {
    let joined = words.concat().to_uppercase().replace('.', "");
    let (clock, half) = match joined.strip_suffix("AM") {
        Some(rest) => (rest, Some(0)),
        None => match joined.strip_suffix("PM") {
            Some(rest) => (rest, Some(12)),
            None => (joined.as_str(), None),
        },
    };
    // Parts of a second after a point were joined to the seconds above: cut them off.
    let mut parts = clock.split(':');
    let two = |p: &str| -> Option<u32> {
        let sound = (1..=2).contains(&p.len()) && p.bytes().all(|b| b.is_ascii_digit());
        sound.then(|| p.parse().ok()).flatten()
    };
    let (hour, minute) = (two(parts.next()?)?, two(parts.next()?)?);
    let second = match parts.next() {
        Some(s) if s.bytes().all(|b| b.is_ascii_digit()) => two(s.get(..2.min(s.len()))?)?,
        Some(_) => return None,
        None => 0,
    };
    if parts.next().is_some() {
        return None;
    }
    let hour = match half {
        Some(after) if (1..=12).contains(&hour) => hour % 12 + after,
        Some(_) => return None,
        None => hour,
    };
    NaiveTime::from_hms_opt(hour, minute, second)
}

fn date(text: &str) -> Option<Date> {
    for form in [
        "%Y-%m-%d", "%Y/%m/%d", "%Y.%m.%d", "%Y%m%d", "%d %b %Y", "%d-%b-%Y", "%d-%b-%y",
        "%b %d %Y",
    ] {
        if let Some(day) = NaiveDate::parse_from_str(text, form)
            .ok()
            .and_then(in_our_time)
        {
            return Some(Date::Day(day));
        }
    }
    let between = ['/', '.', '-'].into_iter().find(|c| text.contains(*c))?;
    let parts: Vec<&str> = text.split(between).collect();
    let [first, second, year] = parts[..] else {
        return None;
    };
    let small = |p: &str| p.parse::<u32>().ok().filter(|n| (1..=31).contains(n));
    let (first, second) = (small(first)?, small(second)?);
    let year = match (year.len(), year.parse::<i32>().ok()?) {
        (2, y) => 2000 + y,
        (4, y) => y,
        _ => return None,
    };
    // Points are written in countries that put the day first.
    if between == '.' {
        let day = NaiveDate::from_ymd_opt(year, second, first)?;
        return in_our_time(day).map(Date::Day);
    }
    in_our_time(NaiveDate::from_ymd_opt(year, 1, 1)?)?;
    (first <= 12 || second <= 12).then_some(Date::TwoNumbers {
        first,
        second,
        year,
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn read(text: &str, order: Option<DateOrder>) -> Option<String> {
        let at = Written::read(text)?.at(order)?;
        Some(at.format("%Y-%m-%d %H:%M:%S").to_string())
    }

    #[test]
    fn times_as_loggers_write_them() {
        let want = "2026-01-31 14:05:00";
        for text in [
            "2026-01-31T14:05:00",
            "2026-01-31 14:05",
            "2026-01-31T14:05:00.000",
            "2026-01-31T14:05:00Z",
            "2026-01-31T14:05:00+01:00",
            "2026-01-31 14:05:00 +0100",
            "2026/01/31 14:05",
            "31/01/2026 14:05",
            "1/31/2026 2:05 PM",
            "01/31/26 02:05:00 pm",
            "31.01.2026 14:05:00",
            "31.1.26 14:05",
            "31-01-2026 14:05",
            "31-Jan-2026 14:05",
            "31 Jan 2026, 14:05",
            "Jan 31, 2026 2:05:00 p.m.",
        ] {
            assert_eq!(read(text, None).as_deref(), Some(want), "{text}");
        }
        assert_eq!(read("1769868300", None).as_deref(), Some(want));
        assert_eq!(read("2026-01-31", None).unwrap(), "2026-01-31 00:00:00");
        assert_eq!(
            read("1/31/2026 12:30 AM", None).unwrap(),
            "2026-01-31 00:30:00"
        );
        let hour = Written::read("2026-01-31T14:05:00+01:00").unwrap().offset();
        assert_eq!(hour.unwrap().local_minus_utc(), 3600);
    }

    #[test]
    fn day_and_month_stay_open_where_they_are() {
        let open = Written::read("03/04/2026 10:00").unwrap();
        assert_eq!((open.clue(), open.at(None)), (Some(Clue::Either), None));
        let day = |order| read("03/04/2026", Some(order)).unwrap();
        assert!(day(DateOrder::DayFirst).starts_with("2026-04-03"));
        assert!(day(DateOrder::MonthFirst).starts_with("2026-03-04"));
        assert_eq!(Written::read("04/04/2026").unwrap().clue(), None);
        assert_eq!(
            Written::read("4/13/2026").unwrap().clue(),
            Some(Clue::Only(DateOrder::MonthFirst))
        );
    }

    #[test]
    fn nonsense_is_no_time() {
        for text in [
            "",
            "time",
            "21.5",
            "25:00",
            "2026-13-01",
            "32/01/2026",
            "13/13/2026",
            "31/02/2026",
            "2026-01-31 24:30",
            "1/31/2026 13:00 PM",
            "31/01/26/1",
            "2026-01-31 1:2:3:4",
            "1/2/12345",
        ] {
            assert_eq!(read(text, Some(DateOrder::DayFirst)), None, "{text}");
        }
    }
}
