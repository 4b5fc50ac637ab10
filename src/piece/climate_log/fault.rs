//! Fault: what is wrong with a line of a climate log, or with the whole of it, and what to do.

use std::fmt;

use super::{AIR_C, AIR_PCT, MOST_LINES, Unit};

/// A column that is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Column {
    /// Temperature.
    Temperature,
    /// Humidity.
    Humidity,
}

impl fmt::Display for Column {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Column::Temperature => "temperature",
            Column::Humidity => "humidity",
        })
    }
}

/// What is wrong with one line.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Fault {
    /// Fewer columns than are needed.
    #[error(
        "found {found} columns, but {needed} are needed; is a value missing or the delimiter another?"
    )]
    TooFewColumns {
        /// Columns found.
        found: usize,
        /// Columns needed.
        needed: usize,
    },
    /// More columns than the heading, where a decimal comma may have split a number.
    #[error(
        "found {found} columns under {headings} headings; does a comma stand both in and between numbers?"
    )]
    TooManyColumns {
        /// Columns found.
        found: usize,
        /// Headings.
        headings: usize,
    },
    /// Not a time.
    #[error(
        "found \"{found}\" for the time; write it like 2026-01-31 14:00, 31/01/2026 14:00 or 1/31/2026 2:00 PM"
    )]
    NotATime {
        /// What was found.
        found: String,
    },
    /// Not a number.
    #[error("found \"{found}\" for the {column}, which must be a number")]
    NotANumber {
        /// Which column.
        column: Column,
        /// What was found.
        found: String,
    },
    /// A temperature that no room has.
    #[error("found a temperature of {found} {}, but {} to {} {} are allowed; is the unit right?", sign(*.unit), bound(AIR_C.min, *.unit), bound(AIR_C.max, *.unit), sign(*.unit))]
    Temperature {
        /// What was found, in `unit`.
        found: f64,
        /// The unit it was read in.
        unit: Unit,
    },
    /// A humidity that no air has.
    #[error("found a humidity of {found} %, but {} to {} % are allowed", AIR_PCT.min, AIR_PCT.max)]
    Humidity {
        /// What was found, per cent.
        found: f64,
    },
    /// A quotation mark that does not close.
    #[error("a quotation mark is not closed on this line; take it out or close it")]
    OpenQuote,
}

fn sign(unit: Unit) -> &'static str {
    match unit {
        Unit::Celsius => "C",
        Unit::Fahrenheit => "F",
    }
}

fn bound(celsius: f64, unit: Unit) -> f64 {
    match unit {
        Unit::Celsius => celsius,
        Unit::Fahrenheit => celsius * 1.8 + 32.0,
    }
}

/// A line that is wrong.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("line {line}: {fault}")]
pub struct LineFault {
    /// The line in the file, from 1.
    pub line: usize,
    /// What is wrong.
    pub fault: Fault,
}

/// Why a whole file is not read.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LogError {
    /// Nothing in it.
    #[error("the file is empty; choose the CSV file that the logger wrote")]
    Empty,
    /// Too many lines.
    #[error(
        "the file has {lines} lines, but {MOST_LINES} are the most that are read; cut it in parts"
    )]
    TooLong {
        /// Lines found.
        lines: usize,
    },
    /// No columns of time, temperature and humidity.
    #[error(
        "no columns of time, temperature and humidity were found; the file begins \"{found}\". Name them in a heading, or put \
         them in this order"
    )]
    NoColumns {
        /// How the file begins.
        found: String,
    },
    /// Day and month may stand either way round.
    #[error(
        "line {line}: \"{found}\" may have the day first or the month first, and no line shows which; say which it is"
    )]
    OrderUnknown {
        /// A line that shows the doubt.
        line: usize,
        /// Its time.
        found: String,
    },
    /// Some lines can only have the day first and some only the month.
    #[error(
        "line {day_first_line} can only have the day first and line {month_first_line} only the month; say which the other \
         lines have, or mend the file"
    )]
    OrdersMixed {
        /// A line with the day first.
        day_first_line: usize,
        /// A line with the month first.
        month_first_line: usize,
    },
    /// All humidities are 1 or less.
    #[error(
        "no humidity is above {most}, but per cent from 0 to 100 are wanted; multiply the column by 100"
    )]
    HumidityAsFraction {
        /// The largest.
        most: f64,
    },
    /// Every line is wrong.
    #[error("none of {lines} lines could be read{}", .first.as_ref().map(|f| format!("; {f}")).unwrap_or_default())]
    NothingRead {
        /// Lines that hold something.
        lines: usize,
        /// The first that is wrong, if any was.
        first: Option<LineFault>,
    },
}

/// The start of a cell, to be shown in a message.
pub(super) fn shown(cell: &str) -> String {
    const MOST: usize = 40;
    let cell = cell.trim();
    match cell.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}...", &cell[..end]),
        None => cell.to_owned(),
    }
}
