//! Checking a backup: everything is looked at before anything is touched.

use std::collections::{BTreeMap, BTreeSet};
use std::io::Read;
use std::path::{Path, PathBuf};

use chrono::{DateTime, FixedOffset};
use evenwall_piece::ids::PieceId;
use serde::Deserialize;
use zip::{CompressionMethod, ZipArchive};

use super::names::{Part, fault, part};
use super::stream::Reading;
use super::{
    BackupError, CONTENTS, Contents, FORMAT, Head, LARGEST_FILE, LOOK_AT_RATIO_FROM, MOST_FILES,
    MOST_SQUEEZED, VERSION, sha256,
};
use crate::disk::Disk;
use crate::error::Doing;
use crate::line::moment;
use crate::opening;

/// A backup in which everything is as its list says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Checked {
    /// When it was made.
    pub made_at: DateTime<FixedOffset>,
    /// The pieces that have a journal in it.
    pub pieces: BTreeSet<PieceId>,
    /// How many journals.
    pub journals: usize,
    /// How many photos.
    pub photos: usize,
    /// Length of all files unpacked, bytes.
    pub bytes: u64,
    pub(super) contents: Contents,
}

pub(super) type Archive<'a> = ZipArchive<Reading<'a>>;

/// Looks a backup through to the last byte and changes nothing.
///
/// Refused are: what is no zip or has no `backup.json` of ours; a newer version of the backup's or the shelf's format; a
/// file that is missing, too many, or not as listed by length and SHA-256; names that leave the folder (`..`, a root, a
/// drive, `\`), hidden or double names, also by case; links, folders, passwords, other squeezing than deflate; more than
/// [`MOST_FILES`] files, one above [`LARGEST_FILE`], one squeezed more than [`MOST_SQUEEZED`] times, entries that share
/// bytes. No file is unpacked past the length that its list says.
///
/// # Errors
/// [`BackupError`] with a sentence.
pub fn check(disk: &dyn Disk, path: &Path) -> Result<Checked, BackupError> {
    let mut archive = open(disk, path)?;
    let contents = contents(&mut archive, path)?;
    let damaged = |what: String| BackupError::Damaged {
        path: path.to_owned(),
        what,
    };
    let made_at = moment(&contents.made_at).map_err(|e| damaged(format!("its time: {e}")))?;
    let mut checked = Checked {
        made_at,
        pieces: BTreeSet::new(),
        journals: 0,
        photos: 0,
        bytes: 0,
        contents: contents.clone(),
    };
    for file in &contents.files {
        let bytes = unpack(&mut archive, path, file)?;
        checked.bytes += bytes.len() as u64;
        match part(&file.name) {
            Part::Journal(scope) => {
                checked.journals += 1;
                if let evenwall_piece::ids::Scope::Piece(id) = scope {
                    checked.pieces.insert(id);
                }
            }
            Part::Photo(..) => checked.photos += 1,
            Part::ShelfFile => shelf_file(&bytes, path)?,
            Part::Other => {}
        }
    }
    Ok(checked)
}

/// The shelf in it must not be of a newer format. One whose `shelf.json` is damaged can be put into a sound shelf.
fn shelf_file(bytes: &[u8], path: &Path) -> Result<(), BackupError> {
    #[derive(Deserialize)]
    struct ShelfFile {
        format: String,
        version: u64,
    }
    match serde_json::from_slice::<ShelfFile>(bytes) {
        Ok(file) if file.format != opening::FORMAT => Err(BackupError::Foreign {
            path: path.to_owned(),
        }),
        Ok(file) if file.version > opening::VERSION => Err(BackupError::Newer {
            found: file.version,
            known: opening::VERSION,
        }),
        _ => Ok(()),
    }
}

/// Opens the zip and looks at its list of entries.
pub(super) fn open<'a>(disk: &'a dyn Disk, path: &Path) -> Result<Archive<'a>, BackupError> {
    let reading = Reading::open(disk, path).doing("read", path)?;
    let len = reading.len();
    let harmful = |what: String| BackupError::Harmful {
        path: path.to_owned(),
        what,
    };
    let mut archive = ZipArchive::new(reading).map_err(|e| zip_fault(e, path, true))?;
    if archive.len() > MOST_FILES + 1 {
        return Err(harmful(format!("more than {MOST_FILES} files")));
    }
    if archive.has_duplicate_names() {
        return Err(harmful("one name twice".into()));
    }
    let (mut names, mut squeezed) = (BTreeSet::new(), 0_u64);
    for place in 0..archive.len() {
        let entry = archive
            .by_index_data(place)
            .map_err(|e| zip_fault(e, path, false))?;
        let name = String::from_utf8_lossy(entry.name_raw()).into_owned();
        let short: String = name.chars().take(60).collect();
        if let Some(what) = fault(&name) {
            return Err(harmful(format!("{what}: {}", short.escape_debug())));
        }
        if !names.insert(name.to_lowercase()) {
            return Err(harmful(format!("one name twice: {short}")));
        }
        if entry.is_symlink() || entry.is_dir() || !entry.is_file() {
            return Err(harmful(format!("a link or a folder: {short}")));
        }
        if entry.encrypted() {
            return Err(harmful(format!("a file with a password: {short}")));
        }
        if !matches!(
            entry.compression(),
            CompressionMethod::Stored | CompressionMethod::Deflated
        ) {
            return Err(harmful(format!("an unknown way of squeezing: {short}")));
        }
        let (size, small) = (entry.size(), entry.compressed_size());
        if size > LARGEST_FILE {
            return Err(harmful(format!("a file of {size} bytes: {short}")));
        }
        if size > LOOK_AT_RATIO_FROM && size / MOST_SQUEEZED > small {
            return Err(harmful(format!(
                "{size} bytes squeezed into {small}: {short}"
            )));
        }
        squeezed = squeezed.saturating_add(small);
    }
    let overlaps = archive
        .has_overlapping_entries()
        .map_err(|e| zip_fault(e, path, false))?;
    if squeezed > len || overlaps {
        return Err(harmful("files that share their bytes".into()));
    }
    Ok(archive)
}

/// The list in the backup, which must name the very files that are there.
fn contents(archive: &mut Archive<'_>, path: &Path) -> Result<Contents, BackupError> {
    let foreign = || BackupError::Foreign {
        path: path.to_owned(),
    };
    let damaged = |what: &str| BackupError::Damaged {
        path: path.to_owned(),
        what: what.to_owned(),
    };
    let place = archive.index_for_name(CONTENTS).ok_or_else(foreign)?;
    let bytes = unpack_at(archive, path, place)?;
    let head: Head = serde_json::from_slice(&bytes).map_err(|_| foreign())?;
    if head.format != FORMAT {
        return Err(foreign());
    }
    if head.version > VERSION {
        return Err(BackupError::Newer {
            found: head.version,
            known: VERSION,
        });
    }
    let contents: Contents =
        serde_json::from_slice(&bytes).map_err(|_| damaged("its list cannot be read"))?;
    let listed: BTreeMap<&str, ()> = contents
        .files
        .iter()
        .map(|f| (f.name.as_str(), ()))
        .collect();
    let there = (0..archive.len())
        .filter_map(|i| archive.name_for_index(i)?.ok())
        .filter(|n| n != CONTENTS);
    let (mut count, mut unlisted) = (0, false);
    for name in there {
        count += 1;
        unlisted |= !listed.contains_key(name.as_ref());
    }
    if unlisted || count != contents.files.len() || listed.len() != count {
        return Err(damaged("the files are not those of its list"));
    }
    Ok(contents)
}

/// The bytes of a listed file, compared with the list.
pub(super) fn unpack(
    archive: &mut Archive<'_>,
    path: &Path,
    file: &super::FileIn,
) -> Result<Vec<u8>, BackupError> {
    let damaged = || BackupError::Damaged {
        path: path.to_owned(),
        what: format!("{} is not as it was", file.name),
    };
    let place = archive.index_for_name(&file.name).ok_or_else(damaged)?;
    let bytes = unpack_at(archive, path, place)?;
    if bytes.len() as u64 != file.bytes || sha256(&bytes) != file.sha256 {
        return Err(damaged());
    }
    Ok(bytes)
}

fn unpack_at(archive: &mut Archive<'_>, path: &Path, place: usize) -> Result<Vec<u8>, BackupError> {
    let size = archive
        .by_index_data(place)
        .map_err(|e| zip_fault(e, path, false))?
        .size();
    let file = archive
        .by_index(place)
        .map_err(|e| zip_fault(e, path, false))?;
    let mut bytes = Vec::new();
    // One byte more than it says shows that it lies.
    let read = file.take(size + 1).read_to_end(&mut bytes);
    if read.is_err() || bytes.len() as u64 != size {
        return Err(BackupError::Damaged {
            path: path.to_owned(),
            what: "a file in it cannot be unpacked".into(),
        });
    }
    Ok(bytes)
}

fn zip_fault(error: zip::result::ZipError, path: &Path, opening: bool) -> BackupError {
    use zip::result::ZipError;
    let path: PathBuf = path.to_owned();
    match error {
        ZipError::InvalidPassword => BackupError::Harmful {
            path,
            what: "a file with a password".into(),
        },
        _ if opening => BackupError::Foreign { path },
        other => BackupError::Damaged {
            path,
            what: other.to_string(),
        },
    }
}
