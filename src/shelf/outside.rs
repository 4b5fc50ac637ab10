//! Outside: files that leave the shelf for a place the turner chose: a calendar, a report, tables, tags.

use std::io::ErrorKind;
use std::path::Path;

use crate::disk::Disk;
use crate::error::{Doing, ShelfError};

/// Why a file cannot be put into the place that was named.
#[derive(Debug, thiserror::Error)]
pub enum OutsideError {
    /// It does not begin at a root, so it would depend on where the program was started.
    #[error("'{found}' does not say where it is: write the whole path, beginning with / (or C:\\)")]
    NotWhole {
        /// What was named.
        found: String,
    },
    /// It lies in the shelf, where only the program's own journals belong.
    #[error("'{found}' lies in the shelf itself: choose a place outside it")]
    InTheShelf {
        /// What was named.
        found: String,
    },
    /// There is no such folder.
    #[error("there is no folder '{found}': make it first, or choose another")]
    NoFolder {
        /// The folder.
        found: String,
    },
    /// The file system refused.
    #[error(transparent)]
    Shelf(#[from] ShelfError),
}

/// Puts bytes into a file outside the shelf, whole or not at all, replacing what has that name.
///
/// # Errors
/// [`OutsideError`] with a sentence; an older file stands then.
pub fn save(disk: &dyn Disk, shelf: &Path, path: &Path, bytes: &[u8]) -> Result<(), OutsideError> {
    let found = || path.display().to_string();
    let (true, Some(folder), Some(name)) = (path.is_absolute(), path.parent(), path.file_name())
    else {
        return Err(OutsideError::NotWhole { found: found() });
    };
    let folder = match disk.canonical(folder) {
        Err(e) if e.kind() == ErrorKind::NotFound => {
            return Err(OutsideError::NoFolder {
                found: folder.display().to_string(),
            });
        }
        other => other.doing("find", folder)?,
    };
    if folder.starts_with(disk.canonical(shelf).doing("find", shelf)?) {
        return Err(OutsideError::InTheShelf { found: found() });
    }
    let path = folder.join(name);
    disk.replace(&path, bytes).doing("write to", &path)?;
    Ok(())
}

/// The bytes of a file outside the shelf; `None` where there is none.
///
/// # Errors
/// [`OutsideError`] where it cannot be read, or the path is not whole.
pub fn read(disk: &dyn Disk, path: &Path) -> Result<Option<Vec<u8>>, OutsideError> {
    if !path.is_absolute() {
        return Err(OutsideError::NotWhole {
            found: path.display().to_string(),
        });
    }
    match disk.read(path) {
        Err(e) if e.kind() == ErrorKind::NotFound => Ok(None),
        other => Ok(Some(other.doing("read", path)?)),
    }
}

/// The backups in a folder by their names, the newest first; none where there is no such folder.
///
/// # Errors
/// [`OutsideError`] where the folder cannot be listed.
pub fn backups_in(disk: &dyn Disk, folder: &Path) -> Result<Vec<String>, OutsideError> {
    let entries = match disk.list(folder) {
        Err(e) if e.kind() == ErrorKind::NotFound => Vec::new(),
        other => other.doing("look into", folder)?,
    };
    let is_backup = |name: &String| name.starts_with("evenwall-") && name.ends_with(".zip");
    let mut names: Vec<String> = entries
        .into_iter()
        .filter(|e| !e.is_folder)
        .filter_map(|e| e.name.into_string().ok())
        .filter(is_backup)
        .collect();
    // The name begins with the time.
    names.sort_unstable_by(|a, b| b.cmp(a));
    Ok(names)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use crate::faulty::FaultyDisk;

    #[test]
    fn a_file_goes_to_a_folder_that_is_there_and_never_into_the_shelf() {
        let disk = FaultyDisk::new();
        for folder in ["/shelf", "/shelf/pieces", "/out"] {
            disk.create_folder(Path::new(folder)).unwrap();
        }
        let shelf = Path::new("/shelf");
        let said = |path: &str| {
            save(&disk, shelf, Path::new(path), b"x")
                .unwrap_err()
                .to_string()
        };
        assert!(said("calendar.ics").contains("write the whole path"));
        assert!(said("/shelf/pieces/a.ics").contains("outside it"));
        assert!(said("/nowhere/a.ics").contains("make it first"));
        save(&disk, shelf, Path::new("/out/a.ics"), b"one").unwrap();
        save(&disk, shelf, Path::new("/out/a.ics"), b"two").unwrap();
        assert_eq!(
            read(&disk, Path::new("/out/a.ics")).unwrap().unwrap(),
            b"two"
        );
        assert_eq!(read(&disk, Path::new("/out/b.ics")).unwrap(), None);
    }

    #[test]
    fn backups_are_listed_newest_first_and_nothing_else_is() {
        let disk = FaultyDisk::new();
        disk.create_folder(Path::new("/out")).unwrap();
        for name in [
            "evenwall-20250101-080000.zip",
            "evenwall-20260101-080000.zip",
            ".evenwall-backup.new",
            "x.zip",
        ] {
            disk.write(&Path::new("/out").join(name), b"").unwrap();
        }
        let found = backups_in(&disk, Path::new("/out")).unwrap();
        assert_eq!(
            found,
            [
                "evenwall-20260101-080000.zip",
                "evenwall-20250101-080000.zip"
            ]
        );
        assert!(backups_in(&disk, Path::new("/none")).unwrap().is_empty());
    }
}
