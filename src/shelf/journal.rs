//! Journal: the bytes of one `*.jsonl` file, split into lines that can be read and lines that cannot.
//!
//! Total: any bytes give an answer, and a bad line never takes a good one with it.

use crate::line::RawLine;
use crate::notice::Unreadable;

/// The longest journal that is read, in bytes: a file of a life's entries is a thousand times shorter.
pub const LONGEST_JOURNAL: u64 = 64 << 20;

/// So many lines that cannot be read are kept one by one for each journal, the others are counted.
pub const MOST_BAD: usize = 100;

/// A line that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadLine {
    /// Its number in the file, counted from 1.
    pub line: usize,
    /// Why it could not be read.
    pub why: Unreadable,
    /// True for the last line of the file: perhaps its rest is on its way.
    pub is_tail: bool,
}

/// What a journal holds.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Journal {
    /// The lines that can be read, in the order of the file.
    pub lines: Vec<RawLine>,
    /// The number of each of them in the file, counted from 1.
    pub numbers: Vec<usize>,
    /// The first [`MOST_BAD`] of the others.
    pub bad: Vec<BadLine>,
    /// How many more there are.
    pub more_bad: usize,
}

impl Journal {
    /// Splits the bytes of a journal. Blank lines count but are not reported; carriage returns and NULs round a line
    /// and a byte order mark are passed over; a last line without a newline is taken where it is whole.
    #[must_use]
    pub fn read(bytes: &[u8]) -> Self {
        let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
        let last_full = bytes
            .iter()
            .rposition(|b| !matches!(b, b'\n' | b'\r' | b' '))
            .unwrap_or(0);
        let mut journal = Self::default();
        let mut start = 0;
        for (index, part) in bytes.split(|b| *b == b'\n').enumerate() {
            let is_tail = start + part.len() > last_full;
            start += part.len() + 1;
            let line = trim(part);
            let read = if line.is_empty() {
                if !part.contains(&0) {
                    continue;
                }
                Err(Unreadable::Nuls)
            } else {
                RawLine::parse(line)
            };
            match read {
                Ok(line) => {
                    journal.lines.push(line);
                    journal.numbers.push(index + 1);
                }
                Err(_) if journal.bad.len() >= MOST_BAD => journal.more_bad += 1,
                Err(why) => journal.bad.push(BadLine {
                    line: index + 1,
                    why,
                    is_tail,
                }),
            }
        }
        journal
    }
}

/// A line without the NULs, blanks and carriage returns round it.
fn trim(mut line: &[u8]) -> &[u8] {
    let round = |b: &u8| matches!(b, 0 | b'\r' | b' ' | b'\t');
    while let [first, rest @ ..] = line
        && round(first)
    {
        line = rest;
    }
    while let [rest @ .., last] = line
        && round(last)
    {
        line = rest;
    }
    line
}

/// True where the next line can be added as it is: the file is empty or ends with a newline.
#[must_use]
pub fn ends_cleanly(bytes: &[u8]) -> bool {
    bytes.last().is_none_or(|b| *b == b'\n')
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    fn line(n: u64) -> String {
        format!(
            r#"{{"device":"a","n":{n},"seq":{n},"at":"2026-01-01T00:00:00Z","noted_at":"2026-01-01T00:00:00Z","v":1,"facts":[{{}}]}}"#
        )
    }

    fn numbers(bytes: &[u8]) -> Vec<u64> {
        Journal::read(bytes).lines.iter().map(|l| l.id.n).collect()
    }

    #[test]
    fn bad_lines_are_reported_by_number_and_good_ones_all_read() {
        let mut bytes = format!("\u{feff}{}\r\n\n", line(1)).into_bytes();
        bytes.extend(b"{\"device\":\"a\",\"n\":2,\"se\n");
        bytes.extend([0; 40]);
        bytes.extend(line(3).bytes());
        bytes.extend(b"\n\xff\xfe\x00{\n");
        bytes.extend([0; 7]);
        bytes.push(b'\n');
        bytes.extend(line(4).bytes());
        let journal = Journal::read(&bytes);
        assert_eq!(numbers(&bytes), [1, 3, 4]);
        let bad: Vec<_> = journal.bad.iter().map(|b| (b.line, b.is_tail)).collect();
        assert_eq!(bad, [(3, false), (5, false), (6, false)]);
        assert_eq!(journal.numbers, [1, 4, 7]);
        assert_eq!(journal.bad[2].why, Unreadable::Nuls);
    }

    #[test]
    fn a_line_torn_anywhere_is_a_bad_tail_and_takes_nothing_with_it() {
        let whole = format!("{}\n{}", line(1), line(2));
        let first = line(1).len() + 1;
        for cut in first + 1..whole.len() {
            let journal = Journal::read(&whole.as_bytes()[..cut]);
            assert_eq!(journal.lines.len(), 1, "cut at {cut}");
            assert!(journal.bad[0].is_tail);
        }
        assert_eq!(
            numbers(whole.as_bytes()),
            [1, 2],
            "only the newline is missing"
        );
    }

    #[test]
    fn of_very_many_bad_lines_the_first_are_kept_and_the_others_counted() {
        let mut bytes = "x\n".repeat(MOST_BAD + 5).into_bytes();
        bytes.extend(line(1).bytes());
        let journal = Journal::read(&bytes);
        assert_eq!((journal.bad.len(), journal.more_bad), (MOST_BAD, 5));
        assert_eq!(numbers(&bytes), [1]);
    }
}
