//! Writing a backup: beside, synced, read back, and only then under its name.

use std::io::{self, ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use chrono::{DateTime, Datelike, FixedOffset, Timelike};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

use super::check::check;
use super::stream::Appending;
use super::{
    BackupError, CONTENTS, Contents, FORMAT, FileIn, LARGEST_FILE, MOST_FILES, VERSION, sha256,
};
use crate::disk::Disk;
use crate::error::{Doing, ShelfError};
use crate::folder::under;
use crate::line::written;
use crate::opening::{Found, look};

/// The folders of a shelf go no deeper than `pieces/<id>/photos`; a link that leads back up is not followed for ever.
const DEEPEST: usize = 6;

/// Called after each file with the bytes done and the bytes in all; false stops the backup.
pub type Progress<'a> = &'a mut dyn FnMut(u64, u64) -> bool;

/// A backup that was written and read back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// Where it is.
    pub path: PathBuf,
    /// How many files of the shelf are in it.
    pub files: usize,
    /// Its length, bytes.
    pub bytes: u64,
    /// Names that were left out because they are not UTF-8 text; nothing of Evenwall has such a name.
    pub left_out: usize,
}

/// The name of a backup made now: `evenwall-20260314-093000.zip`.
#[must_use]
pub fn file_name(now: DateTime<FixedOffset>) -> String {
    now.format("evenwall-%Y%m%d-%H%M%S.zip").to_string()
}

/// Every file of a folder that is not hidden, by its name in the shelf, with its length.
struct Listed {
    files: Vec<(String, u64)>,
    left_out: usize,
}

fn list(
    disk: &dyn Disk,
    folder: &Path,
    above: &str,
    depth: usize,
    into: &mut Listed,
) -> Result<(), BackupError> {
    let mut entries = match disk.list(folder) {
        // Gone since it was listed.
        Err(e) if e.kind() == ErrorKind::NotFound && depth > 0 => return Ok(()),
        other => other.doing("list", folder)?,
    };
    entries.sort_by(|a, b| a.name.cmp(&b.name));
    for entry in entries {
        let Some(name) = entry.name.to_str() else {
            into.left_out += 1;
            continue;
        };
        if name.starts_with('.') {
            continue;
        }
        let relative = format!("{above}{name}");
        if entry.is_folder {
            if depth < DEEPEST {
                list(
                    disk,
                    &folder.join(name),
                    &format!("{relative}/"),
                    depth + 1,
                    into,
                )?;
            }
            continue;
        }
        if super::names::fault(&relative).is_some() {
            into.left_out += 1;
            continue;
        }
        if entry.len > LARGEST_FILE {
            return Err(BackupError::FileTooLarge {
                name: relative,
                found: entry.len,
                allowed: LARGEST_FILE,
            });
        }
        into.files.push((relative, entry.len));
        if into.files.len() > MOST_FILES {
            return Err(BackupError::TooManyFiles {
                allowed: MOST_FILES,
            });
        }
    }
    Ok(())
}

/// Writes a backup of the shelf at `shelf` into `folder` under the name of [`file_name`]. It is written beside, synced,
/// read back and compared file by file, and only then gets its name: whatever has the name of a backup is whole. The
/// side file of a backup that failed is overwritten by the next.
///
/// # Errors
/// [`BackupError`] with a sentence; older backups stand as they are.
pub fn write(
    disk: &dyn Disk,
    shelf: &Path,
    folder: &Path,
    now: DateTime<FixedOffset>,
    progress: Progress<'_>,
) -> Result<Written, BackupError> {
    if look(disk, shelf)? == Found::Nothing {
        return Err(ShelfError::Nowhere {
            path: shelf.to_owned(),
        }
        .into());
    }
    let shelf = disk.canonical(shelf).doing("find", shelf)?;
    let folder = disk.canonical(folder).doing("find", folder)?;
    if folder.starts_with(&shelf) {
        return Err(BackupError::InsideTheShelf { path: folder });
    }
    let mut listed = Listed {
        files: Vec::new(),
        left_out: 0,
    };
    list(disk, &shelf, "", 0, &mut listed)?;
    let beside = folder.join(".evenwall-backup.new");
    let contents = pack(disk, &shelf, &listed, &beside, now, progress)?;
    disk.sync_file(&beside).doing("store", &beside)?;

    let read_back = check(disk, &beside).map_err(|e| match e {
        BackupError::Shelf(e) => BackupError::Shelf(e),
        other => BackupError::NotAsWritten {
            what: other.to_string(),
        },
    })?;
    if read_back.contents != contents {
        return Err(BackupError::NotAsWritten {
            what: "its list differs".into(),
        });
    }
    let path = folder.join(file_name(now));
    disk.rename(&beside, &path).doing("name", &path)?;
    disk.sync_folder(&folder).doing("store", &folder)?;
    Ok(Written {
        bytes: disk.len(&path).doing("look at", &path)?,
        path,
        files: contents.files.len(),
        left_out: listed.left_out,
    })
}

fn pack(
    disk: &dyn Disk,
    shelf: &Path,
    listed: &Listed,
    beside: &Path,
    now: DateTime<FixedOffset>,
    progress: Progress<'_>,
) -> Result<Contents, BackupError> {
    let zip_error = |e: zip::result::ZipError| -> BackupError {
        let source = match e {
            zip::result::ZipError::Io(e) => e,
            other => io::Error::other(other.to_string()),
        };
        ShelfError::Io {
            doing: "write to",
            path: beside.to_owned(),
            source,
        }
        .into()
    };
    let options = options(now);
    let mut zip = ZipWriter::new_stream(Appending::begin(disk, beside).doing("write to", beside)?);
    let total: u64 = listed.files.iter().map(|(_, len)| len).sum();
    let (mut done, mut files) = (0, Vec::with_capacity(listed.files.len()));
    for (name, len) in &listed.files {
        let path = under(shelf, name);
        let bytes = match disk.read(&path) {
            Ok(bytes) => bytes,
            // Renamed by a sync program since it was listed: the next backup has it.
            Err(e) if e.kind() == ErrorKind::NotFound => continue,
            Err(e) => return Err(e).doing("read", &path).map_err(Into::into),
        };
        // Photos are squeezed already.
        let method = if name.ends_with(".jpg") {
            CompressionMethod::Stored
        } else {
            CompressionMethod::Deflated
        };
        zip.start_file(name.as_str(), options.compression_method(method))
            .map_err(zip_error)?;
        zip.write_all(&bytes).doing("write to", beside)?;
        files.push(FileIn {
            name: name.clone(),
            bytes: bytes.len() as u64,
            sha256: sha256(&bytes),
        });
        done += len;
        if !progress(done, total) {
            // The library may say what it likes about a zip that is not finished: it is thrown away.
            drop(zip);
            return Err(BackupError::Stopped);
        }
    }
    let contents = Contents {
        format: FORMAT.to_owned(),
        version: VERSION,
        made_at: written(now),
        files,
    };
    let text = serde_json::to_vec(&contents)
        .map_err(io::Error::from)
        .doing("write to", beside)?;
    zip.start_file(CONTENTS, options).map_err(zip_error)?;
    zip.write_all(&text).doing("write to", beside)?;
    let stream = zip.finish().map_err(zip_error)?;
    stream.into_inner().finish().doing("write to", beside)?;
    Ok(contents)
}

/// A zip holds local times from 1980 to 2107; outside them it says nothing.
fn options(now: DateTime<FixedOffset>) -> SimpleFileOptions {
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .unix_permissions(0o644);
    let small = |n: u32| u8::try_from(n).unwrap_or(0);
    let time = u16::try_from(now.year()).ok().and_then(|year| {
        zip::DateTime::from_date_and_time(
            year,
            small(now.month()),
            small(now.day()),
            small(now.hour()),
            small(now.minute()),
            small(now.second().min(58)),
        )
        .ok()
    });
    time.map_or(options, |time| options.last_modified_time(time))
}
