//! Backup: a whole shelf in one zip file, and its way back as a merge.
//!
//! The zip holds every file of the shelf that is not hidden, under its name in the shelf, and last `backup.json`: the
//! format, the time, and every file with its length and SHA-256. The device's own data is not part of a shelf and is not
//! in it. Written with [`write()`], looked through with [`check`], put back with [`restore()`]: these take a
//! [`crate::disk::Disk`] and paths, so that a worker can run them while the shelf is open elsewhere; after a restore the
//! open shelf finds the new journals by its refresh.
//!
//! Nothing that comes out of a backup is believed: see [`check`] for what is refused.

mod check;
mod error;
mod names;
mod restore;
mod stream;
mod write;

use serde::{Deserialize, Serialize};

pub use check::{Checked, check};
pub use error::BackupError;
pub use restore::{Restored, restore};
pub use write::{Progress, Written, file_name, write};

/// The name of the format in `backup.json`.
pub const FORMAT: &str = "evenwall-backup";

/// The newest version of the format that this program writes and reads.
pub const VERSION: u64 = 1;

/// The entry that lists the others.
pub(crate) const CONTENTS: &str = "backup.json";

/// The most files of a backup: a hundred pieces a year with twenty photos each for a working life fit.
pub const MOST_FILES: usize = 200_000;

/// The largest single file, bytes: a journal of a million lines fits.
pub const LARGEST_FILE: u64 = 256 << 20;

/// From this length on a file that was squeezed to less than a [`MOST_SQUEEZED`]th is refused, bytes.
pub const LOOK_AT_RATIO_FROM: u64 = 1 << 20;

/// How many times smaller a file may be in the zip. Journals reach about 30; files made to fill a disk 1000.
pub const MOST_SQUEEZED: u64 = 200;

/// `backup.json`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Contents {
    pub format: String,
    pub version: u64,
    /// When it was made, RFC 3339.
    pub made_at: String,
    pub files: Vec<FileIn>,
}

/// One file of a backup.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct FileIn {
    /// Its name in the shelf, with `/`.
    pub name: String,
    /// Its length, bytes.
    pub bytes: u64,
    /// Its SHA-256, hexadecimal.
    pub sha256: String,
}

/// Format and version alone, for a backup whose rest is of a newer version.
#[derive(Deserialize)]
pub(crate) struct Head {
    pub format: String,
    pub version: u64,
}

/// SHA-256 in hexadecimal.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    use sha2::{Digest, Sha256};
    use std::fmt::Write as _;
    Sha256::digest(bytes)
        .iter()
        .fold(String::with_capacity(64), |mut text, byte| {
            // Writing to a string cannot fail.
            let _ = write!(text, "{byte:02x}");
            text
        })
}
