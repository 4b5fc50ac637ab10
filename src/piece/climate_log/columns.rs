//! Columns: which delimiter a climate log has, and which of its columns are read.

use csv::StringRecord;

use super::fault::{Column, Fault, shown};
use super::number::{celsius, number};
use super::when::Written;
use super::{AIR_C, AIR_PCT, Unit};

/// Lines in which the headings are looked for.
pub(super) const FOR_HEADINGS: usize = 30;

/// The delimiter with which most of the first lines have three columns or more, and as many as each other; semicolon and tab
/// before comma, which may be a decimal comma.
pub(super) fn delimiter(text: &str) -> u8 {
    let lines: Vec<&str> = text
        .lines()
        .filter(|l| !l.trim().is_empty())
        .take(2 * FOR_HEADINGS)
        .collect();
    let first = lines.join("\n");
    let agreeing = |delimiter: &u8| -> usize {
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(*delimiter)
            .has_headers(false)
            .flexible(true)
            .from_reader(first.as_bytes());
        let counts: Vec<usize> = reader.records().flatten().map(|r| r.len()).collect();
        let agree = |n: &usize| counts.iter().filter(|c| *c == n).count();
        counts
            .iter()
            .filter(|n| **n >= 3)
            .map(agree)
            .max()
            .unwrap_or(0)
    };
    // Of equal ones the last counts, so the comma comes first.
    [b',', b'\t', b';']
        .into_iter()
        .max_by_key(agreeing)
        .unwrap_or(b',')
}

/// Where the values of a line stand.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Columns {
    /// Time, or day.
    time: usize,
    /// Time of day, where it has a column of its own.
    clock: Option<usize>,
    temperature: usize,
    humidity: usize,
    /// Unit that the heading names.
    pub(super) unit: Option<Unit>,
    /// Number of headings; `None` without.
    headings: Option<usize>,
}

/// What a heading names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Names {
    Time,
    Day,
    Clock,
    Temperature(Option<Unit>),
    Humidity,
}

/// Headings of columns that look alike but are something else.
const OTHERS: [&str; 14] = [
    "dew",
    "taupunkt",
    "wet",
    "feuchtkugel",
    "abs",
    "absolute",
    "vpd",
    "heat",
    "index",
    "feels",
    "min",
    "max",
    "ros\u{e9}e",
    "rosee",
];
const TIMES: [&str; 9] = [
    "timestamp",
    "datetime",
    "zeitstempel",
    "zeitpunkt",
    "datumzeit",
    "horodatage",
    "measured",
    "recorded",
    "when",
];
const DAYS: [&str; 4] = ["date", "datum", "day", "fecha"];
const CLOCKS: [&str; 6] = ["time", "zeit", "uhrzeit", "heure", "hora", "clock"];
/// Words for temperature that do not begin with "temp".
const TEMPERATURES: [&str; 5] = ["t", "celsius", "fahrenheit", "degc", "degf"];
const FAHRENHEITS: [&str; 5] = ["f", "degf", "fahrenheit", "tempf", "temperaturef"];
const CELSIUSES: [&str; 5] = ["c", "degc", "celsius", "tempc", "temperaturec"];
/// Words for humidity that do not begin with "humid" or end with "feuchte".
const HUMIDITIES: [&str; 9] = [
    "hum",
    "rh",
    "rf",
    "hr",
    "ur",
    "luftfeuchtigkeit",
    "feuchtigkeit",
    "humedad",
    "umidit\u{e0}",
];

fn names(heading: &str) -> Option<Names> {
    let lower = heading.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|w| !w.is_empty())
        .collect();
    let has = |of: &[&str]| words.iter().any(|w| of.contains(w));
    // "Timestamp, sampled every 5 min" is a time.
    if has(&TIMES) {
        return Some(Names::Time);
    }
    if has(&OTHERS) {
        return None;
    }
    let humid = |w: &&str| w.starts_with("humid") || w.ends_with("feuchte");
    if has(&HUMIDITIES) || words.iter().any(humid) || lower.contains("r.h.") {
        return Some(Names::Humidity);
    }
    if has(&TEMPERATURES) || words.iter().any(|w| w.starts_with("temp")) {
        let unit = if has(&FAHRENHEITS) || lower.contains('\u{2109}') {
            Some(Unit::Fahrenheit)
        } else if has(&CELSIUSES) || lower.contains('\u{2103}') {
            Some(Unit::Celsius)
        } else {
            None
        };
        return Some(Names::Temperature(unit));
    }
    match (has(&DAYS), has(&CLOCKS)) {
        (true, true) => Some(Names::Time),
        (true, false) => Some(Names::Day),
        (false, true) => Some(Names::Clock),
        (false, false) => None,
    }
}

impl Columns {
    /// The columns that a line of headings names; `None` where it does not name all that are needed. Of several columns of one
    /// kind the first counts.
    pub(super) fn of_heading(record: &StringRecord) -> Option<Columns> {
        let all: Vec<Option<Names>> = record.iter().map(names).collect();
        let at =
            |wanted: fn(&Names) -> bool| all.iter().position(|n| n.as_ref().is_some_and(wanted));
        let temperature = at(|n| matches!(n, Names::Temperature(_)))?;
        let humidity = at(|n| *n == Names::Humidity)?;
        let (whole, day, clock) = (
            at(|n| *n == Names::Time),
            at(|n| *n == Names::Day),
            at(|n| *n == Names::Clock),
        );
        let (time, clock) = match (whole, day, clock) {
            (Some(time), ..) => (time, None),
            (None, Some(day), clock) => (day, clock),
            (None, None, Some(time)) => (time, None),
            (None, None, None) => return None,
        };
        let unit = match all[temperature] {
            Some(Names::Temperature(unit)) => unit,
            _ => None,
        };
        Some(Columns {
            time,
            clock,
            temperature,
            humidity,
            unit,
            headings: Some(record.len()),
        })
    }

    /// The columns of a log without headings, by its first readable line: a time, or a day and a time of day, and then two
    /// numbers, temperature and humidity. A running number may stand before them.
    pub(super) fn without_heading<'a>(
        lines: impl Iterator<Item = &'a StringRecord>,
    ) -> Option<Columns> {
        let is_number = |cell: Option<&str>| cell.is_some_and(|c| number(c).is_some());
        let is_clock = |cell: Option<&str>| {
            cell.is_some_and(|c| {
                c.contains(':') && Written::read(&format!("2026-01-31 {c}")).is_some()
            })
        };
        for line in lines {
            let Some(time) = line.iter().take(2).position(|c| Written::read(c).is_some()) else {
                continue;
            };
            let clock = is_clock(line.get(time + 1)).then_some(time + 1);
            let next = clock.unwrap_or(time) + 1;
            if is_number(line.get(next)) && is_number(line.get(next + 1)) {
                return Some(Columns {
                    time,
                    clock,
                    temperature: next,
                    humidity: next + 1,
                    unit: None,
                    headings: None,
                });
            }
        }
        None
    }

    /// The values of a line: time, C and per cent.
    pub(super) fn read(
        &self,
        record: &StringRecord,
        told: Option<Unit>,
    ) -> Result<(Written, f64, f64), Fault> {
        let last = self
            .temperature
            .max(self.humidity)
            .max(self.time)
            .max(self.clock.unwrap_or(0));
        if record.len() <= last {
            return Err(Fault::TooFewColumns {
                found: record.len(),
                needed: last + 1,
            });
        }
        if let Some(headings) = self.headings {
            let more = record.iter().skip(headings).any(|c| !c.trim().is_empty());
            if more {
                return Err(Fault::TooManyColumns {
                    found: record.len(),
                    headings,
                });
            }
        }
        let mut time = record[self.time].trim().to_owned();
        if let Some(clock) = self.clock {
            time = format!("{time} {}", record[clock].trim());
        }
        let when = Written::read(&time).ok_or_else(|| Fault::NotATime {
            found: shown(&time),
        })?;
        let value = |at: usize, column: Column| {
            number(&record[at]).ok_or_else(|| Fault::NotANumber {
                column,
                found: shown(&record[at]),
            })
        };
        let (temp, own) = value(self.temperature, Column::Temperature)?;
        let unit = told.or(own).or(self.unit).unwrap_or(Unit::Celsius);
        let temp_c = celsius(temp, unit);
        if !AIR_C.holds(temp_c) {
            return Err(Fault::Temperature { found: temp, unit });
        }
        let (rh_pct, _) = value(self.humidity, Column::Humidity)?;
        if !AIR_PCT.holds(rh_pct) {
            return Err(Fault::Humidity { found: rh_pct });
        }
        Ok((when, temp_c, rh_pct))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_name_their_columns() {
        for (heading, want) in [
            (
                "Timestamp for sample frequency every 1 min",
                Some(Names::Time),
            ),
            ("Date Time, GMT+00:00", Some(Names::Time)),
            ("Datum", Some(Names::Day)),
            ("Uhrzeit", Some(Names::Clock)),
            (
                "Temp, \u{b0}F",
                Some(Names::Temperature(Some(Unit::Fahrenheit))),
            ),
            (
                "Temperature_C(\u{2103})",
                Some(Names::Temperature(Some(Unit::Celsius))),
            ),
            ("Temp\u{e9}rature", Some(Names::Temperature(None))),
            ("Relative_Humidity(%)", Some(Names::Humidity)),
            ("Luftfeuchte [%]", Some(Names::Humidity)),
            ("Dew point temperature", None),
            ("Abs. humidity", None),
            ("Battery", None),
        ] {
            assert_eq!(names(heading), want, "{heading}");
        }
    }

    #[test]
    fn the_comma_in_numbers_does_not_pass_for_a_delimiter() {
        assert_eq!(delimiter("t;c;rh\n1;18,5;60,5\n2;18,6;60,4\n"), b';');
        assert_eq!(delimiter("t\tc\trh\n1\t18,5\t60,5\n"), b'\t');
        assert_eq!(
            delimiter("a note; with, marks\nt,c,rh\n1,18.5,60.5\n"),
            b','
        );
        assert_eq!(delimiter(""), b';');
    }
}
