//! Lines for the tests: a few words to write a diary by hand, and strategies that invent whole ones.
// Each test binary uses its own part of this.
#![allow(dead_code, clippy::unwrap_used, clippy::expect_used)]

pub mod any;
pub mod history;
pub mod words;

use chrono::{DateTime, Duration, FixedOffset, TimeZone};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, EntryId, LineId, PieceId};
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};

/// The day on which the invented diaries begin.
pub fn start() -> DateTime<FixedOffset> {
    let zone = FixedOffset::east_opt(3600).unwrap();
    zone.with_ymd_and_hms(2026, 3, 2, 9, 0, 0).unwrap()
}

/// So many minutes after the start; may be negative.
pub fn minutes(n: i64) -> Moment {
    start() + Duration::minutes(n)
}

/// A line's id.
pub fn line_id(device: &str, n: u64) -> LineId {
    LineId {
        device: DeviceId::new(device).unwrap(),
        n,
    }
}

/// The first fact of a line.
pub fn entry(device: &str, n: u64) -> EntryId {
    EntryId {
        line: line_id(device, n),
        part: 0,
    }
}

/// A line written by `device` as its `n`th, with `seq` minutes after the start as its time.
pub fn line<F>(device: &str, n: u64, seq: u64, facts: Vec<F>) -> Line<F> {
    let at = minutes(i64::try_from(seq).unwrap());
    Line {
        id: line_id(device, n),
        seq,
        at,
        noted_at: at,
        facts,
    }
}

/// A line that takes another back.
pub fn retracts(device: &str, n: u64, seq: u64, target: LineId) -> Line<PieceFact> {
    line(device, n, seq, vec![PieceFact::Retracts(target)])
}

/// A line that corrects the first fact of another.
pub fn amends(device: &str, n: u64, seq: u64, entry: EntryId, fact: PieceFact) -> Line<PieceFact> {
    let fact = PieceFact::Amends {
        entry,
        at: None,
        fact: Some(Box::new(fact)),
    };
    line(device, n, seq, vec![fact])
}

/// The state of piece `k07`.
pub fn fold(lines: &[Line<PieceFact>]) -> Piece {
    fold_piece(PieceId::new("k07").unwrap(), lines.to_vec())
}

/// The state folded from the lines read forwards, which must be that of the lines read backwards.
pub fn fold_both_ways(lines: &[Line<PieceFact>]) -> Piece {
    let forwards = fold(lines);
    let backwards: Vec<_> = lines.iter().rev().cloned().collect();
    assert_eq!(fold(&backwards), forwards);
    forwards
}

/// The state without the entries that were taken back, and without the count of lines, which never goes down.
pub fn without_taken_back(mut piece: Piece) -> Piece {
    piece.diary.retain(|e| !e.retracted);
    piece.lines = 0;
    piece
}
