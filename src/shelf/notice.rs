//! Notices: what was found odd while reading. Nothing is lost by any of them, and none is swallowed.

use std::fmt;

use evenwall_piece::ids::DeviceId;

/// Why a line cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, thiserror::Error)]
pub enum Unreadable {
    /// Only NUL bytes: a crash lost what stood here.
    #[error("it is empty space that a crash left")]
    Nuls,
    /// Not UTF-8.
    #[error("it is not UTF-8 text")]
    Encoding,
    /// Longer than any line of a shelf.
    #[error("it is {found} bytes long, {allowed} are allowed")]
    TooLong {
        /// Its length in bytes.
        found: usize,
        /// The longest allowed.
        allowed: usize,
    },
    /// Not a line of a journal.
    #[error("{0}")]
    NotALine(String),
}

/// One odd thing found while reading. Paths are relative to the shelf, with `/`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Notice {
    /// A line cannot be read; it stays in the file and is skipped.
    Line {
        /// The file.
        file: String,
        /// The line, counted from 1.
        line: usize,
        /// Why.
        why: Unreadable,
    },
    /// More lines of a journal cannot be read than are reported one by one.
    MoreLines {
        /// The file.
        file: String,
        /// How many more.
        count: usize,
    },
    /// The end of another device's journal cannot be read: most likely the rest is on its way.
    StillArriving {
        /// The file.
        file: String,
        /// The line, counted from 1.
        line: usize,
    },
    /// Lines of a device are missing: lost, or still arriving.
    Missing {
        /// The folder.
        folder: String,
        /// Whose lines.
        device: DeviceId,
        /// The first missing.
        from: u64,
        /// The last missing.
        to: u64,
    },
    /// Two different lines carry one number (a disk that was copied, a phone that was restored); both are kept, the
    /// second under a device name of its own.
    Clash {
        /// The folder.
        folder: String,
        /// Whose line.
        device: DeviceId,
        /// Its number.
        n: u64,
    },
    /// A folder or file whose name is no id; it is left alone.
    IgnoredName {
        /// The path.
        path: String,
    },
    /// A journal that the file system would not give out.
    FileUnreadable {
        /// The file.
        file: String,
        /// What the file system said.
        why: String,
    },
    /// This device's own journal is not as this device left it, so it writes under a new id from now on and leaves the
    /// old journals alone.
    NewDeviceId {
        /// The journal that differs.
        file: String,
        /// The id so far.
        old: DeviceId,
        /// The id from now on.
        new: DeviceId,
    },
    /// The device's own record of its journals could not be written. Harmless, unless a disk is copied meanwhile.
    RecordNotWritten {
        /// What the file system said.
        why: String,
    },
}

impl fmt::Display for Notice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line { file, line, why } => write!(
                f,
                "{file}, line {line} cannot be read and is skipped: {why}"
            ),
            Self::MoreLines { file, count } => write!(
                f,
                "{file}: {count} more lines cannot be read and are skipped"
            ),
            Self::StillArriving { file, line } => {
                write!(f, "{file}, line {line} is still arriving")
            }
            Self::Missing {
                folder,
                device,
                from,
                to,
            } if from == to => {
                write!(
                    f,
                    "{folder}: line {from} of {device} is missing or still arriving"
                )
            }
            Self::Missing {
                folder,
                device,
                from,
                to,
            } => {
                write!(
                    f,
                    "{folder}: lines {from} to {to} of {device} are missing or still arriving"
                )
            }
            Self::Clash { folder, device, n } => {
                write!(
                    f,
                    "{folder}: two different lines are number {n} of {device}; both are kept"
                )
            }
            Self::IgnoredName { path } => {
                write!(
                    f,
                    "{path} is left alone: a piece is a folder whose name has only a-z, 0-9 and -"
                )
            }
            Self::FileUnreadable { file, why } => write!(f, "{file} cannot be read: {why}"),
            Self::NewDeviceId { file, old, new } => {
                write!(
                    f,
                    "{file} is not as this device left it: it writes as {new} from now on, no longer as {old}"
                )
            }
            Self::RecordNotWritten { why } => write!(
                f,
                "this device's record of its journals was not written: {why}"
            ),
        }
    }
}
