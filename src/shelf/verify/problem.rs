//! Problem: one thing that is wrong in a shelf, with its file and line.

use std::fmt;

use evenwall_piece::ids::{DeviceId, LineId};

use crate::error::ReadOnly;
use crate::notice::Unreadable;

/// One thing that is wrong. Nothing of it was repaired.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// The file or folder, relative to the shelf, with `/`.
    pub path: String,
    /// The line of the file, counted from 1, where it is one line.
    pub line: Option<usize>,
    /// What is wrong.
    pub what: What,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            Some(line) => write!(f, "{}:{line}: {}", self.path, self.what),
            None => write!(f, "{}: {}", self.path, self.what),
        }
    }
}

/// What is wrong with a file, folder or line.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[allow(missing_docs)] // The fields are named in the sentences.
pub enum What {
    /// `shelf.json` cannot be understood, or is of a newer version.
    #[error("{0}")]
    ShelfFile(ReadOnly),
    /// There is no `shelf.json`.
    #[error("it is missing; put it back from a backup, or wait until the folder is all there")]
    NoShelfFile,
    /// A name that the shelf does not use.
    #[error("it is not part of a shelf and is left alone")]
    Foreign,
    /// A name in the folder of the pieces that cannot be a piece.
    #[error(
        "it is no piece and is left alone: a piece is a folder whose name has 1 to 64 of a-z, 0-9 and -"
    )]
    NoPiece,
    /// A link in place of a file or folder.
    #[error(
        "it is a link: what it leads to is read, but it lies outside the shelf and a backup may miss it"
    )]
    Link,
    /// The file system would not give it out.
    #[error("it cannot be read: {0}")]
    NotGiven(String),
    /// The folder of a piece without any journal.
    #[error("the piece has no journal: the folder of a crash, or its entries are still arriving")]
    NoJournal,
    /// A line that cannot be read.
    #[error("it cannot be read and is skipped: {0}")]
    Line(Unreadable),
    /// The same at the end of a journal.
    #[error("it cannot be read, torn or still arriving: {0}")]
    Tail(Unreadable),
    /// More lines that cannot be read than are named.
    #[error("{0} more lines cannot be read and are skipped")]
    MoreLines(usize),
    /// Lines of a device are missing before this one.
    #[error("line{} of {device} missing before it, lost or still arriving", numbers(*.from, *.to))]
    Missing {
        device: DeviceId,
        from: u64,
        to: u64,
    },
    /// Two different lines carry one number.
    #[error("it is number {} of {}, and so is a different line at {other}: both are kept", .id.n, .id.device)]
    Clash { id: LineId, other: String },
    /// The order of a device's lines does not grow with their numbers.
    #[error("its seq is {seq}, and the line before it of {device} has {before}: it must grow")]
    Backwards {
        device: DeviceId,
        seq: u64,
        before: u64,
    },
    /// A time that no entry can have.
    #[error("its {field} is {found}, years {} to {} are expected", super::YEARS.start(), super::YEARS.end())]
    Time { field: &'static str, found: String },
    /// A fact of a newer version, or one that was damaged.
    #[error("its fact {place}{} is not understood by this version: it is kept and shown as unknown", of_kind(.kind))]
    NotUnderstood { place: usize, kind: String },
    /// A correction of something that is not there.
    #[error("it changes line {} of {}, which is not here", .0.n, .0.device)]
    PointsNowhere(LineId),
    /// A photo whose bytes are not those that its name says.
    #[error("its content is not what its name says: a part has not arrived, or it was damaged")]
    PhotoNotWhole,
}

fn numbers(from: u64, to: u64) -> String {
    if from == to {
        format!(" {from}")
    } else {
        format!("s {from} to {to}")
    }
}

fn of_kind(kind: &str) -> String {
    if kind.is_empty() {
        String::new()
    } else {
        format!(" ('{}')", kind.escape_debug().take(60).collect::<String>())
    }
}
