//! Errors of the shelf: what could not be done, with the file, and what the turner can do about it.

use std::io;
use std::path::{Path, PathBuf};

/// Why the shelf cannot be opened, read or written.
#[derive(Debug, thiserror::Error)]
pub enum ShelfError {
    /// The file system refused.
    #[error("could not {doing} {}: {}", path.display(), plainly(source))]
    Io {
        /// What was being done, as in "read" or "write to".
        doing: &'static str,
        /// Where.
        path: PathBuf,
        /// What the file system said.
        source: io::Error,
    },
    /// A line was written but the disk did not confirm it.
    #[error(
        "the disk did not confirm that {} was stored ({}): look whether the entry is there before you make it again",
        path.display(), plainly(source)
    )]
    Unconfirmed {
        /// The journal.
        path: PathBuf,
        /// What the file system said.
        source: io::Error,
    },
    /// The folder holds other things.
    #[error("{} is not a shelf and not empty: choose a new or empty folder, or the folder of a shelf", path.display())]
    NotAShelf {
        /// The folder.
        path: PathBuf,
    },
    /// The folder has pieces in it but no `shelf.json` yet.
    #[error(
        "{} has pieces in it, but shelf.json is missing: if the folder is still being copied, wait until it is all there",
        path.display()
    )]
    NoShelfFile {
        /// The folder.
        path: PathBuf,
    },
    /// There is no folder to read.
    #[error("there is no shelf at {}", path.display())]
    Nowhere {
        /// The folder.
        path: PathBuf,
    },
    /// Another running program writes to the shelf.
    #[error("the shelf at {} is open in another window: close that one first", path.display())]
    InUse {
        /// The folder.
        path: PathBuf,
    },
    /// The shelf can be read only.
    #[error("nothing can be recorded: {why}")]
    ReadOnly {
        /// The reason.
        why: ReadOnly,
    },
    /// A fact that cannot be written.
    #[error("this cannot be recorded: {source}")]
    NotRecordable {
        /// The reason.
        source: crate::format::NotUnderstood,
    },
    /// An action without facts.
    #[error("there is nothing to record")]
    Nothing,
    /// An action too long for one line.
    #[error(
        "this is too long to record: {found} bytes, {allowed} are allowed; split it into two entries"
    )]
    TooLong {
        /// Length of the line in bytes.
        found: usize,
        /// Longest line in bytes.
        allowed: usize,
    },
}

/// Why a shelf can be read but not written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ReadOnly {
    /// A newer version of the program made it.
    #[error(
        "the shelf was made by a newer version of the program (format {found}, this one knows up to {known}): \
         everything can be read, update the program to record"
    )]
    NewerFormat {
        /// Its format version.
        found: u64,
        /// The newest version that this program writes.
        known: u64,
    },
    /// `shelf.json` cannot be understood.
    #[error(
        "the file shelf.json is damaged: everything can be read; put the file back from a backup to record"
    )]
    DamagedShelfFile,
    /// It was opened for reading.
    #[error("the shelf was opened for reading only")]
    Reader,
}

/// The file system's word in the turner's terms, where it is one of the common ones.
fn plainly(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
            "the disk is full, make room and try again".into()
        }
        io::ErrorKind::PermissionDenied => "the program may not write or read there".into(),
        io::ErrorKind::ReadOnlyFilesystem => "that disk is read-only".into(),
        io::ErrorKind::NotFound => "it is not there any more".into(),
        _ => error.to_string(),
    }
}

/// Adds what was being done and where to a file system's error.
pub(crate) trait Doing<T> {
    /// The error with its circumstances.
    fn doing(self, doing: &'static str, path: &Path) -> Result<T, ShelfError>;
}

impl<T> Doing<T> for io::Result<T> {
    fn doing(self, doing: &'static str, path: &Path) -> Result<T, ShelfError> {
        self.map_err(|source| ShelfError::Io {
            doing,
            path: path.to_owned(),
            source,
        })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    #[test]
    fn a_full_disk_reads_as_a_sentence_that_says_what_to_do() {
        let full: io::Result<()> = Err(io::ErrorKind::StorageFull.into());
        let error = full.doing("write to", Path::new("/s/a.jsonl")).unwrap_err();
        assert_eq!(
            error.to_string(),
            "could not write to /s/a.jsonl: the disk is full, make room and try again"
        );
    }
}
