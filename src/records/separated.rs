//! Separated: a table that somebody else made, read from the bytes of a CSV file.
//!
//! Comma, semicolon or tab, with or without quotes; UTF-8, UTF-16 with its mark, or the one-byte letters of older Windows
//! spreadsheets. The first line holds the names of the columns.

use thiserror::Error;

/// The largest file that is read, bytes.
pub const LARGEST: usize = 5 << 20;
/// The most rows.
pub const MOST_ROWS: usize = 2000;
/// The most columns.
pub const MOST_COLUMNS: usize = 60;
/// The most characters of a cell.
pub const LONGEST_CELL: usize = 2000;

/// Why a table cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SeparatedError {
    /// Nothing in it.
    #[error(
        "the file is empty: the first line must hold the names of the columns, the next ones the pieces"
    )]
    Empty,
    /// Only the first line.
    #[error(
        "the file has only one line: the first holds the names of the columns, the pieces follow below it"
    )]
    NoRows,
    /// Too large.
    #[error(
        "the file is {found} bytes long, at most {LARGEST} are read: leave out columns, or split it"
    )]
    TooLarge {
        /// Its length, bytes.
        found: usize,
    },
    /// Too many rows.
    #[error("the file has more than {MOST_ROWS} rows: split it into several")]
    TooManyRows,
    /// Too many columns.
    #[error("line {line} has {found} columns, at most {MOST_COLUMNS} are read: leave some out")]
    TooManyColumns {
        /// Which line of the file.
        line: u64,
        /// How many it has.
        found: usize,
    },
    /// A cell is too long.
    #[error(
        "line {line} has a cell of {found} letters, at most {LONGEST_CELL} are read: is a quotation mark missing?"
    )]
    CellTooLong {
        /// Which line of the file.
        line: u64,
        /// How many letters.
        found: usize,
    },
    /// Not a text file.
    #[error(
        "this is not a text file: in the spreadsheet, save the sheet as CSV and choose that file"
    )]
    NotText,
}

/// One row with its place in the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The line of the file on which it begins, counted from 1.
    pub line: u64,
    /// Its cells, as many as there are columns: missing ones are empty.
    pub cells: Vec<String>,
}

/// A table as it was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Separated {
    /// The names of the columns as they stand in the file.
    pub columns: Vec<String>,
    /// The rows that are not blank.
    pub rows: Vec<Row>,
}

/// Reads the bytes of a file.
///
/// # Errors
/// [`SeparatedError`] with a sentence; never panics, whatever the bytes are.
pub fn read(bytes: &[u8]) -> Result<Separated, SeparatedError> {
    if bytes.len() > LARGEST {
        return Err(SeparatedError::TooLarge { found: bytes.len() });
    }
    let text = decoded(bytes)?;
    let first = text
        .lines()
        .find(|l| !l.trim().is_empty())
        .ok_or(SeparatedError::Empty)?;
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter(first))
        .has_headers(false)
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut columns: Vec<String> = Vec::new();
    let mut rows = Vec::new();
    let (mut counted, mut line) = (0, 1);
    for record in reader.records() {
        // The text is UTF-8 and rows may be of any length: nothing else can go wrong in memory.
        let record = record.map_err(|_| SeparatedError::NotText)?;
        // The reader's own count does not pass over blank lines before a row.
        let byte = record
            .position()
            .map_or(counted, |p| usize::try_from(p.byte()).unwrap_or(usize::MAX));
        let breaks = |text: &str| text.bytes().filter(|b| *b == b'\n').count() as u64;
        let before = text.get(counted..byte).unwrap_or_default();
        let blank = text.get(byte..).unwrap_or_default();
        let blank = &blank[..blank.len() - blank.trim_start_matches(['\r', '\n']).len()];
        line += breaks(before) + breaks(blank);
        counted = byte + blank.len();
        if record.len() > MOST_COLUMNS {
            return Err(SeparatedError::TooManyColumns {
                line,
                found: record.len(),
            });
        }
        let mut cells = Vec::with_capacity(record.len());
        for cell in &record {
            let found = cell.chars().count();
            if found > LONGEST_CELL {
                return Err(SeparatedError::CellTooLong { line, found });
            }
            cells.push(crate::table::plain(cell).to_owned());
        }
        if cells.iter().all(String::is_empty) {
            continue;
        }
        if columns.is_empty() {
            columns = cells;
            continue;
        }
        if rows.len() == MOST_ROWS {
            return Err(SeparatedError::TooManyRows);
        }
        rows.push(Row { line, cells });
    }
    let width = rows
        .iter()
        .map(|r| r.cells.len())
        .max()
        .unwrap_or(0)
        .max(columns.len());
    columns.resize(width, String::new());
    for row in &mut rows {
        row.cells.resize(width, String::new());
    }
    if rows.is_empty() {
        return Err(SeparatedError::NoRows);
    }
    Ok(Separated { columns, rows })
}

/// The sign that parts the cells: the one of `;`, tab and `,` that the first line has most of, outside quotes.
fn delimiter(first: &str) -> u8 {
    let mut counts = [0_usize; 3];
    let mut quoted = false;
    for c in first.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => counts[0] += 1,
            ';' if !quoted => counts[1] += 1,
            '\t' if !quoted => counts[2] += 1,
            _ => {}
        }
    }
    let [comma, semicolon, tab] = counts;
    if tab > comma && tab > semicolon {
        b'\t'
    } else if semicolon > comma {
        b';'
    } else {
        b','
    }
}

fn decoded(bytes: &[u8]) -> Result<String, SeparatedError> {
    let wide = |pair: fn([u8; 2]) -> u16| -> Result<String, SeparatedError> {
        let units: Vec<u16> = bytes[2..]
            .chunks_exact(2)
            .map(|c| pair([c[0], c[1]]))
            .collect();
        String::from_utf16(&units).map_err(|_| SeparatedError::NotText)
    };
    let text = match bytes {
        [0xff, 0xfe, ..] => wide(u16::from_le_bytes)?,
        [0xfe, 0xff, ..] => wide(u16::from_be_bytes)?,
        _ => {
            let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
            match std::str::from_utf8(bytes) {
                Ok(text) => text.to_owned(),
                Err(_) => bytes.iter().map(|b| windows_1252(*b)).collect(),
            }
        }
    };
    // A spreadsheet's own file, a picture: never text.
    if text.starts_with("PK\u{3}\u{4}") || text.contains('\0') {
        return Err(SeparatedError::NotText);
    }
    Ok(text)
}

/// A letter of Windows-1252; the five bytes that mean nothing there stay what they are.
fn windows_1252(byte: u8) -> char {
    const HIGH: [char; 32] = [
        '\u{20ac}', '\u{81}', '\u{201a}', '\u{192}', '\u{201e}', '\u{2026}', '\u{2020}',
        '\u{2021}', '\u{2c6}', '\u{2030}', '\u{160}', '\u{2039}', '\u{152}', '\u{8d}', '\u{17d}',
        '\u{8f}', '\u{90}', '\u{2018}', '\u{2019}', '\u{201c}', '\u{201d}', '\u{2022}', '\u{2013}',
        '\u{2014}', '\u{2dc}', '\u{2122}', '\u{161}', '\u{203a}', '\u{153}', '\u{9d}', '\u{17e}',
        '\u{178}',
    ];
    match byte {
        0x80..=0x9f => HIGH[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn cells(bytes: &[u8]) -> Vec<Vec<String>> {
        let read = read(bytes).unwrap();
        std::iter::once(read.columns)
            .chain(read.rows.into_iter().map(|r| r.cells))
            .collect()
    }

    #[test]
    fn comma_semicolon_and_tab_are_told_apart() {
        let wanted = vec![vec!["mark", "weight"], vec!["K07", "1,5"]];
        for text in [
            "mark;weight\nK07;1,5\n",
            "mark\tweight\nK07\t1,5",
            "\"mark\",\"weight\"\r\n\"K07\",\"1,5\"\r\n",
        ] {
            assert_eq!(cells(text.as_bytes()), wanted, "{text}");
        }
    }

    #[test]
    fn letters_of_every_kind_of_spreadsheet_are_read() {
        let wanted = vec![
            vec!["Marke", "Gef\u{e4}\u{df}"],
            vec!["K07", "\u{20ac}\u{2013}"],
        ];
        let text = "Marke;Gef\u{e4}\u{df}\nK07;\u{20ac}\u{2013}\n";
        let wide: Vec<u8> = [0xff, 0xfe]
            .into_iter()
            .chain(text.encode_utf16().flat_map(u16::to_le_bytes))
            .collect();
        let big: Vec<u8> = [0xfe, 0xff]
            .into_iter()
            .chain(text.encode_utf16().flat_map(u16::to_be_bytes))
            .collect();
        let old = b"Marke;Gef\xe4\xdf\nK07;\x80\x96\n";
        for bytes in [
            text.as_bytes(),
            format!("\u{feff}{text}").as_bytes(),
            &wide,
            &big,
            old,
        ] {
            assert_eq!(cells(bytes), wanted);
        }
    }

    #[test]
    fn short_rows_are_filled_blank_ones_left_out_and_lines_counted() {
        let read =
            read(b"mark,wood\n\nK07\n,,\n\"K08\",\"elm\nsecond line\"\nK10,ash,extra\n").unwrap();
        assert_eq!(read.columns, ["mark", "wood", ""]);
        let rows: Vec<(u64, &str, &str)> = read
            .rows
            .iter()
            .map(|r| (r.line, r.cells[0].as_str(), r.cells[1].as_str()))
            .collect();
        assert_eq!(
            rows,
            [
                (3, "K07", ""),
                (5, "K08", "elm\nsecond line"),
                (7, "K10", "ash")
            ]
        );
    }

    #[test]
    fn our_own_guard_is_taken_away() {
        assert_eq!(
            cells(b"a\n'=1+1\n'twas\n")[1..],
            [vec!["=1+1"], vec!["'twas"]]
        );
    }

    #[test]
    fn what_is_no_table_is_refused_with_a_sentence() {
        let said = |bytes: &[u8]| read(bytes).unwrap_err().to_string();
        assert!(said(b"").contains("empty"));
        assert!(said(b" \n\n").contains("empty"));
        assert!(said(b"mark,wood\n").contains("only one line"));
        assert!(said(b"PK\x03\x04 rest").contains("save the sheet as CSV"));
        assert!(said(b"a,b\n\0\0,\0\n").contains("not a text file"));
        assert!(said(&vec![b'x'; LARGEST + 1]).contains("split it"));
        assert!(
            said(format!("m\n{}", "x\n".repeat(MOST_ROWS + 1)).as_bytes()).contains("split it")
        );
        assert!(
            said(format!("m\n{}", ",".repeat(99)).as_bytes()).contains("line 2 has 100 columns")
        );
        assert!(said(format!("m\n\"{}", "x\n".repeat(1500)).as_bytes()).contains("quotation mark"));
    }

    proptest! {
        #[test]
        fn any_bytes_are_read_without_a_panic(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
            if let Ok(read) = read(&bytes) {
                for row in &read.rows {
                    prop_assert_eq!(row.cells.len(), read.columns.len());
                }
            }
        }
    }
}
