//! Errors of a backup: what was found, what is allowed, what to do.

use std::path::PathBuf;

use crate::error::ShelfError;

/// Why a backup cannot be written or put back. Nothing of the shelf has changed, save where restoring itself met a
/// [`BackupError::Shelf`]: then what was put back so far stays, and restoring again goes on with the rest.
#[derive(Debug, thiserror::Error)]
pub enum BackupError {
    /// The file system refused.
    #[error(transparent)]
    Shelf(#[from] ShelfError),
    /// It is no backup of ours.
    #[error("{} is not a backup of Evenwall: choose a file named like evenwall-20260314-0930.zip", path.display())]
    Foreign {
        /// The file.
        path: PathBuf,
    },
    /// A part of it is gone or changed.
    #[error("the backup {} is damaged ({what}): nothing was restored; take an older one", path.display())]
    Damaged {
        /// The file.
        path: PathBuf,
        /// What was found.
        what: String,
    },
    /// A newer version of the program made it.
    #[error(
        "the backup was made by a newer version of the program (version {found}, this one knows up to {known}): \
         nothing was restored; update the program first"
    )]
    Newer {
        /// Its version.
        found: u64,
        /// The newest that this program reads.
        known: u64,
    },
    /// It holds what no backup of ours holds, and what could do harm.
    #[error("the backup {} holds what no backup has ({what}): nothing was restored", path.display())]
    Harmful {
        /// The file.
        path: PathBuf,
        /// What was found.
        what: String,
    },
    /// The folder for backups lies in the shelf.
    #[error(
        "{} lies in the shelf itself, so a backup there would be lost with it: choose another folder",
        path.display()
    )]
    InsideTheShelf {
        /// The folder.
        path: PathBuf,
    },
    /// A file of the shelf is larger than a backup takes.
    #[error("{name} is {found} bytes long, a backup takes {allowed}: move it out of the shelf")]
    FileTooLarge {
        /// The file, in the shelf.
        name: String,
        /// Its length, bytes.
        found: u64,
        /// The most, bytes.
        allowed: u64,
    },
    /// The shelf has more files than a backup takes.
    #[error(
        "the shelf has more than {allowed} files, a backup takes no more: move what is not Evenwall's out of it"
    )]
    TooManyFiles {
        /// The most.
        allowed: usize,
    },
    /// What was written does not read back as it was.
    #[error(
        "the backup does not read back as it was written ({what}): try again on another disk; an older backup is untouched"
    )]
    NotAsWritten {
        /// What was found.
        what: String,
    },
    /// The turner stopped it.
    #[error("stopped: no backup was made")]
    Stopped,
}
