//! Table: rows of a spreadsheet as CSV (RFC 4180), in UTF-8 with a byte order mark so that spreadsheets read it as such.
//!
//! Numbers have a decimal point and no unit: the unit stands in the column's name. Days are `2026-03-14`, moments
//! `2026-03-14T09:30:00+01:00` (ISO 8601). A text that a spreadsheet would take for a formula gets an apostrophe before
//! it, as spreadsheets mark text themselves: `'=1+1`; [`plain`] takes it away again.

use chrono::{DateTime, FixedOffset, NaiveDate, SecondsFormat};

/// The byte order mark of UTF-8.
const MARK: &[u8] = b"\xef\xbb\xbf";

/// One cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Nothing known.
    Empty,
    /// Text as somebody typed it.
    Text(String),
    /// A number; one that is none is left empty.
    Number(f64),
    /// A whole number.
    Whole(i64),
    /// A day.
    Day(NaiveDate),
    /// A moment with its offset.
    Moment(DateTime<FixedOffset>),
    /// `yes` or `no`.
    YesNo(bool),
}

impl<T: Into<Cell>> From<Option<T>> for Cell {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Empty, Into::into)
    }
}
impl From<f64> for Cell {
    fn from(value: f64) -> Self {
        Self::Number(value)
    }
}
impl From<&str> for Cell {
    fn from(value: &str) -> Self {
        Self::Text(value.to_owned())
    }
}
impl From<String> for Cell {
    fn from(value: String) -> Self {
        Self::Text(value)
    }
}
impl From<DateTime<FixedOffset>> for Cell {
    fn from(value: DateTime<FixedOffset>) -> Self {
        Self::Moment(value)
    }
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Its name, for the file: `pieces`.
    pub name: &'static str,
    /// The names of its columns, with units: `wall_mm`.
    pub columns: Vec<&'static str>,
    /// Its rows, each as long as the columns.
    pub rows: Vec<Vec<Cell>>,
}

/// True where a spreadsheet would take a text for a formula: it begins, perhaps after blanks, with one of `= + - @` or
/// their wide forms, or with a tab or carriage return.
fn is_formula(text: &str) -> bool {
    if text.starts_with(['\t', '\r', '\n']) {
        return true;
    }
    text.trim_start().starts_with([
        '=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}',
    ])
}

/// A text as it stands in a cell: with an apostrophe before what would be taken for a formula, and before an apostrophe
/// that would be taken for ours.
#[must_use]
pub fn guarded(text: &str) -> String {
    if is_formula(text) || plain(text) != text {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

/// A text without the apostrophe that [`guarded`] put before it.
#[must_use]
pub fn plain(text: &str) -> &str {
    match text.strip_prefix('\'') {
        Some(rest) if is_formula(rest) || rest.starts_with('\'') => rest,
        _ => text,
    }
}

fn shown(cell: &Cell) -> String {
    match cell {
        Cell::Empty => String::new(),
        Cell::Text(text) => guarded(text),
        Cell::Number(n) if n.is_finite() => n.to_string(),
        Cell::Number(_) => String::new(),
        Cell::Whole(n) => n.to_string(),
        Cell::Day(day) => day.to_string(),
        Cell::Moment(at) => at.to_rfc3339_opts(SecondsFormat::Secs, false),
        Cell::YesNo(yes) => if *yes { "yes" } else { "no" }.to_owned(),
    }
}

/// The table as the bytes of a `.csv` file.
///
/// # Errors
/// Only where a row is not as long as the columns.
pub fn write(table: &Table) -> Result<Vec<u8>, csv::Error> {
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(MARK.to_vec());
    writer.write_record(&table.columns)?;
    for row in &table.rows {
        writer.write_record(row.iter().map(shown))?;
    }
    writer.into_inner().map_err(|e| e.into_error().into())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn written(texts: &[&str]) -> Vec<Vec<String>> {
        let table = Table {
            name: "t",
            columns: vec!["text", "wall_mm"],
            rows: texts
                .iter()
                .map(|t| vec![Cell::from(*t), Cell::Number(-9.5)])
                .collect(),
        };
        let bytes = write(&table).unwrap();
        let mut reader = csv::Reader::from_reader(bytes.as_slice());
        assert_eq!(
            reader.headers().unwrap(),
            vec!["text", "wall_mm"],
            "the mark is no part of the first name"
        );
        reader
            .records()
            .map(|r| r.unwrap().iter().map(str::to_owned).collect())
            .collect()
    }

    #[test]
    fn what_a_spreadsheet_would_run_gets_an_apostrophe_and_a_negative_number_does_not() {
        for text in [
            "=1+1",
            "+44 20",
            "-3",
            "@SUM(A1)",
            "\t=1",
            "\r=1",
            "  =1",
            "\u{ff1d}1+1",
            "=cmd|' /C calc'!A0",
        ] {
            let rows = written(&[text]);
            assert_eq!(rows[0][0], format!("'{text}"));
            assert_eq!(rows[0][1], "-9.5");
            assert_eq!(plain(&rows[0][0]), text);
        }
        assert_eq!(
            written(&["10 = ten", "'twas elm", "K07"]),
            [["10 = ten", "-9.5"], ["'twas elm", "-9.5"], ["K07", "-9.5"]]
        );
    }

    #[test]
    fn days_and_moments_are_iso_8601_and_numbers_have_a_point() {
        let at = DateTime::parse_from_rfc3339("2026-03-14T09:30:00.25+01:00").unwrap();
        let cells = [
            Cell::from(at),
            Cell::Day(at.date_naive()),
            Cell::Number(0.5),
            Cell::Number(f64::NAN),
            Cell::Whole(-3),
            Cell::YesNo(true),
            Cell::Empty,
        ];
        let said: Vec<String> = cells.iter().map(shown).collect();
        assert_eq!(
            said,
            [
                "2026-03-14T09:30:00+01:00",
                "2026-03-14",
                "0.5",
                "",
                "-3",
                "yes",
                ""
            ]
        );
    }

    #[test]
    fn a_row_of_another_length_is_an_error() {
        let table = Table {
            name: "t",
            columns: vec!["a", "b"],
            rows: vec![vec![Cell::Empty]],
        };
        assert!(write(&table).is_err());
    }

    proptest! {
        #[test]
        fn any_text_comes_back_and_none_begins_as_a_formula(text in ".{0,40}") {
            let rows = written(&[&text]);
            prop_assert_eq!(plain(&rows[0][0]), text.as_str());
            prop_assert!(!is_formula(&rows[0][0]));
        }
    }
}
