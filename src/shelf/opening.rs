//! Opening: what kind of folder this is, and how a new shelf is laid so that a crash leaves all of it or none.

use std::collections::BTreeSet;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use crate::disk::Disk;
use crate::error::{Doing, ReadOnly, ShelfError};

/// The name of the format in `shelf.json`.
pub const FORMAT: &str = "evenwall-shelf";

/// The newest format version that this program writes.
pub const VERSION: u64 = 1;

/// The longest `shelf.json` that is read, in bytes.
const LONGEST_SHELF_FILE: u64 = 1 << 16;

#[derive(Serialize, Deserialize)]
struct ShelfFile {
    format: String,
    version: u64,
}

/// What a folder is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Found {
    /// Not there, or empty: a shelf can be made.
    Nothing,
    /// A shelf.
    Shelf,
    /// A shelf that can only be read.
    ReadOnly(ReadOnly),
}

/// Looks at a folder without changing anything.
pub(crate) fn look(disk: &dyn Disk, path: &Path) -> Result<Found, ShelfError> {
    let entries = match disk.list(path) {
        Err(e) if e.kind() == ErrorKind::NotFound => return Ok(Found::Nothing),
        other => other.doing("look into", path)?,
    };
    let names: Vec<String> = entries
        .iter()
        .map(|e| e.name.to_string_lossy().into_owned())
        .collect();
    let has = |name: &str| names.iter().any(|n| n == name);
    if has("shelf.json") {
        let file = path.join("shelf.json");
        let is_too_long = |e: &crate::disk::Entry| e.len > LONGEST_SHELF_FILE;
        if entries
            .iter()
            .any(|e| e.name == "shelf.json" && is_too_long(e))
        {
            return Ok(Found::ReadOnly(ReadOnly::DamagedShelfFile));
        }
        let bytes = disk.read(&file).doing("read", &file)?;
        return match serde_json::from_slice::<ShelfFile>(&bytes) {
            Err(_) => Ok(Found::ReadOnly(ReadOnly::DamagedShelfFile)),
            Ok(file) if file.format != FORMAT => Err(ShelfError::NotAShelf {
                path: path.to_owned(),
            }),
            Ok(file) if file.version > VERSION => Ok(Found::ReadOnly(ReadOnly::NewerFormat {
                found: file.version,
                known: VERSION,
            })),
            Ok(_) => Ok(Found::Shelf),
        };
    }
    if has("pieces") || has("shop") {
        return Err(ShelfError::NoShelfFile {
            path: path.to_owned(),
        });
    }
    // Hidden names are those of sync programs and desktops, or the side file of a crash.
    let is_nobodys = |n: &String| {
        n.starts_with('.') || n.eq_ignore_ascii_case("desktop.ini") || n == "lost+found"
    };
    if names.iter().all(is_nobodys) {
        Ok(Found::Nothing)
    } else {
        Err(ShelfError::NotAShelf {
            path: path.to_owned(),
        })
    }
}

/// Writes `shelf.json` of a new shelf, durable in its folder.
pub(crate) fn write_shelf_file(disk: &dyn Disk, path: &Path) -> Result<(), ShelfError> {
    let file = path.join("shelf.json");
    let content = ShelfFile {
        format: FORMAT.to_owned(),
        version: VERSION,
    };
    let bytes = serde_json::to_vec(&content)
        .map_err(std::io::Error::from)
        .doing("write", &file)?;
    disk.replace(&file, &bytes).doing("write", &file)
}

/// Makes a folder and all missing ones above it. Not durable before [`sync_above`].
pub(crate) fn create_folders(disk: &dyn Disk, path: &Path) -> Result<(), ShelfError> {
    let missing: Vec<&Path> = path
        .ancestors()
        .take_while(|p| !matches!(disk.exists(p), Ok(true)))
        .collect();
    for folder in missing.into_iter().rev() {
        disk.create_folder(folder)
            .doing("make the folder", folder)?;
    }
    Ok(())
}

/// Makes the names of these folders durable, with those of all folders above them. Done once for every shelf on a
/// device, for all folders and not only for those just made: an earlier start may have been killed after making them.
pub(crate) fn sync_above(disk: &dyn Disk, paths: [&Path; 2]) -> Result<(), ShelfError> {
    let above: BTreeSet<PathBuf> = paths
        .iter()
        .flat_map(|p| p.ancestors().skip(1))
        .map(Path::to_owned)
        .collect();
    for folder in above.iter().rev() {
        match disk.sync_folder(folder) {
            // A folder that the program may not even open is not one that it made.
            Err(e) if e.kind() == ErrorKind::PermissionDenied => {}
            other => other.doing("store", folder)?,
        }
    }
    Ok(())
}
