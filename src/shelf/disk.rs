//! Disk: the few things that the shelf asks of a file system, so that a faulty one can stand in for it in tests.
//!
//! Nothing is durable before it is synced: a file's bytes by [`Disk::sync_file`], a name in a folder by
//! [`Disk::sync_folder`]. The shelf relies on nothing more than that.

use std::any::Any;
use std::ffi::OsString;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, ErrorKind, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use std::time::SystemTime;

/// One name in a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The name, without its folder.
    pub name: OsString,
    /// True for a folder, or a link to one.
    pub is_folder: bool,
    /// Length of a file in bytes; 0 for a folder.
    pub len: u64,
    /// When it was last changed, where the file system says so: only ever compared for being the same.
    pub modified: Option<SystemTime>,
}

/// What came of asking for a lock.
pub enum Lock {
    /// Held until this is dropped.
    Held(Box<dyn Any + Send + Sync>),
    /// Another holds it.
    Busy,
    /// This platform or file system has no locks.
    Unsupported,
}

/// What the shelf asks of a file system. Paths are absolute.
pub trait Disk: Send + Sync {
    /// All bytes of a file.
    ///
    /// # Errors
    /// As the file system says, `NotFound` where there is no such file.
    fn read(&self, path: &Path) -> io::Result<Vec<u8>>;

    /// So many bytes of a file from a place on; fewer where it ends before.
    ///
    /// # Errors
    /// As [`Disk::read`].
    fn read_part(&self, path: &Path, from: u64, len: usize) -> io::Result<Vec<u8>> {
        let whole = self.read(path)?;
        let from = usize::try_from(from).unwrap_or(usize::MAX).min(whole.len());
        let to = from.saturating_add(len).min(whole.len());
        Ok(whole[from..to].to_vec())
    }

    /// Adds bytes to the end of a file, which is made where it is missing. Not durable before [`Disk::sync_file`].
    ///
    /// # Errors
    /// As the file system says; a part of the bytes may have been written then.
    fn append(&self, path: &Path, bytes: &[u8]) -> io::Result<()>;

    /// Puts these bytes in place of a file's, not atomically: for side files and caches only, see [`Disk::replace`].
    ///
    /// # Errors
    /// As the file system says; the file may be cut short then.
    fn write(&self, path: &Path, bytes: &[u8]) -> io::Result<()>;

    /// Makes the bytes of a file durable.
    ///
    /// # Errors
    /// As the file system says; whether the bytes are durable is unknown then.
    fn sync_file(&self, path: &Path) -> io::Result<()>;

    /// Makes the names in a folder durable. Does nothing where the platform cannot sync a folder.
    ///
    /// # Errors
    /// As the file system says.
    fn sync_folder(&self, path: &Path) -> io::Result<()>;

    /// Renames a file, replacing one that has the new name. Not durable before [`Disk::sync_folder`].
    ///
    /// # Errors
    /// As the file system says.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Removes a file; one that is not there is fine. Not durable before [`Disk::sync_folder`].
    ///
    /// # Errors
    /// As the file system says.
    fn remove(&self, path: &Path) -> io::Result<()>;

    /// Makes one folder in an existing one; one that is there already is fine. Not durable before
    /// [`Disk::sync_folder`] of the folder above.
    ///
    /// # Errors
    /// As the file system says.
    fn create_folder(&self, path: &Path) -> io::Result<()>;

    /// The names in a folder, in no particular order.
    ///
    /// # Errors
    /// As the file system says, `NotFound` where there is no such folder.
    fn list(&self, path: &Path) -> io::Result<Vec<Entry>>;

    /// The length of a file in bytes.
    ///
    /// # Errors
    /// As the file system says, `NotFound` where there is no such file.
    fn len(&self, path: &Path) -> io::Result<u64>;

    /// True where there is a file or folder of this name.
    ///
    /// # Errors
    /// As the file system says, for example where the folder above may not be read.
    fn exists(&self, path: &Path) -> io::Result<bool>;

    /// The one path that leads to this folder without links.
    ///
    /// # Errors
    /// As the file system says, `NotFound` where there is no such folder.
    fn canonical(&self, path: &Path) -> io::Result<PathBuf>;

    /// True where the name is a link and not the file or folder itself. False where the file system knows no links.
    ///
    /// # Errors
    /// As the file system says, `NotFound` where there is no such name.
    fn is_link(&self, path: &Path) -> io::Result<bool> {
        self.exists(path).and_then(|there| {
            if there {
                Ok(false)
            } else {
                Err(ErrorKind::NotFound.into())
            }
        })
    }

    /// Asks for the lock on a file, which is made where it is missing. Never waits.
    ///
    /// # Errors
    /// As the file system says, where even asking failed.
    fn lock(&self, path: &Path) -> io::Result<Lock>;

    /// Puts these bytes in place of a file's so that a crash leaves the old ones or the new ones, whole: written beside,
    /// synced, renamed, folder synced.
    ///
    /// # Errors
    /// As the file system says; the old file stands then, unless only the last sync failed.
    fn replace(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        let folder = path.parent().ok_or(ErrorKind::InvalidInput)?;
        let beside = beside(path);
        self.write(&beside, bytes)?;
        self.sync_file(&beside)?;
        self.rename(&beside, path)?;
        self.sync_folder(folder)
    }
}

/// The side file of [`Disk::replace`]: hidden, in the same folder, of one fixed name so that none pile up.
pub(crate) fn beside(path: &Path) -> PathBuf {
    let mut name = OsString::from(".");
    name.push(path.file_name().unwrap_or_default());
    name.push(".new");
    path.with_file_name(name)
}

/// The file system of this machine.
#[derive(Debug, Default)]
pub struct RealDisk {
    /// The handle of the last append, kept for the sync that follows it.
    open: Mutex<Option<(PathBuf, File)>>,
}

impl RealDisk {
    /// The file system of this machine.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn kept(&self) -> std::sync::MutexGuard<'_, Option<(PathBuf, File)>> {
        // A panic elsewhere cannot leave the handle half set.
        self.open.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

// The one place where the shelf touches files.
#[allow(clippy::disallowed_methods)]
impl Disk for RealDisk {
    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        // A pipe would wait for ever, a device never end.
        let meta = fs::metadata(path)?;
        if !meta.is_file() && !meta.is_dir() {
            return Err(io::Error::new(
                ErrorKind::InvalidInput,
                "it is a pipe or device, not a file",
            ));
        }
        fs::read(path)
    }

    fn read_part(&self, path: &Path, from: u64, len: usize) -> io::Result<Vec<u8>> {
        let mut file = File::open(path)?;
        file.seek(SeekFrom::Start(from))?;
        let mut part = Vec::new();
        file.take(len as u64).read_to_end(&mut part)?;
        Ok(part)
    }

    fn append(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        let mut file = OpenOptions::new().append(true).create(true).open(path)?;
        file.write_all(bytes)?;
        *self.kept() = Some((path.to_owned(), file));
        Ok(())
    }

    fn write(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        fs::write(path, bytes)
    }

    fn sync_file(&self, path: &Path) -> io::Result<()> {
        let kept = self.kept().take();
        match kept {
            Some((of, file)) if of == path => file.sync_data(),
            _ => OpenOptions::new().append(true).open(path)?.sync_data(),
        }
    }

    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        if !cfg!(unix) {
            // A folder cannot be opened for syncing there; the file system's own journal orders its names.
            return Ok(());
        }
        match File::open(path)?.sync_all() {
            // Some file systems (shared storage of phones, network folders) know no sync of a folder.
            Err(e) if matches!(e.kind(), ErrorKind::InvalidInput | ErrorKind::Unsupported) => {
                Ok(())
            }
            other => other,
        }
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        match fs::remove_file(path) {
            Err(e) if e.kind() == ErrorKind::NotFound => Ok(()),
            other => other,
        }
    }

    fn create_folder(&self, path: &Path) -> io::Result<()> {
        match fs::create_dir(path) {
            Err(e) if e.kind() == ErrorKind::AlreadyExists && path.is_dir() => Ok(()),
            other => other,
        }
    }

    fn list(&self, path: &Path) -> io::Result<Vec<Entry>> {
        let mut entries = Vec::new();
        for entry in fs::read_dir(path)? {
            let entry = entry?;
            let meta = match fs::metadata(entry.path()) {
                Ok(meta) => meta,
                // Gone since it was listed.
                Err(_) if fs::symlink_metadata(entry.path()).is_err() => continue,
                // A link to nowhere or in a circle: one bad name must not hide the others. Who reads it is told why.
                Err(_) => {
                    entries.push(Entry {
                        name: entry.file_name(),
                        is_folder: false,
                        len: 0,
                        modified: None,
                    });
                    continue;
                }
            };
            entries.push(Entry {
                name: entry.file_name(),
                is_folder: meta.is_dir(),
                len: if meta.is_dir() { 0 } else { meta.len() },
                modified: meta.modified().ok(),
            });
        }
        Ok(entries)
    }

    fn len(&self, path: &Path) -> io::Result<u64> {
        fs::metadata(path).map(|m| m.len())
    }

    fn exists(&self, path: &Path) -> io::Result<bool> {
        path.try_exists()
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        fs::canonicalize(path)
    }

    fn is_link(&self, path: &Path) -> io::Result<bool> {
        fs::symlink_metadata(path).map(|meta| meta.is_symlink())
    }

    fn lock(&self, path: &Path) -> io::Result<Lock> {
        let file = OpenOptions::new().append(true).create(true).open(path)?;
        match file.try_lock() {
            Ok(()) => Ok(Lock::Held(Box::new(file))),
            Err(TryLockError::WouldBlock) => Ok(Lock::Busy),
            Err(TryLockError::Error(e)) if e.kind() == ErrorKind::Unsupported => {
                Ok(Lock::Unsupported)
            }
            Err(TryLockError::Error(e)) => Err(e),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    #[test]
    fn the_real_disk_appends_replaces_lists_and_locks() {
        let temp = tempfile::tempdir().unwrap();
        let disk = RealDisk::new();
        let folder = temp.path().join("a");
        disk.create_folder(&folder).unwrap();
        disk.create_folder(&folder).unwrap();
        let file = folder.join("f");
        disk.append(&file, b"one").unwrap();
        disk.append(&file, b"two").unwrap();
        disk.sync_file(&file).unwrap();
        disk.sync_file(&file).unwrap();
        assert_eq!(disk.read(&file).unwrap(), b"onetwo");
        assert_eq!(disk.len(&file).unwrap(), 6);
        assert_eq!(disk.read_part(&file, 2, 3).unwrap(), b"etw");
        assert_eq!(disk.read_part(&file, 4, 30).unwrap(), b"wo");
        assert_eq!(disk.read_part(&file, 9, 3).unwrap(), b"");
        disk.replace(&file, b"three").unwrap();
        assert_eq!(disk.read(&file).unwrap(), b"three");
        let names: Vec<_> = disk
            .list(&folder)
            .unwrap()
            .into_iter()
            .map(|e| (e.name, e.len))
            .collect();
        assert_eq!(names, [(OsString::from("f"), 5)], "no side file stays");
        disk.append(&folder.join("g"), b"x").unwrap();
        disk.remove(&folder.join("g")).unwrap();
        disk.remove(&folder.join("g")).unwrap();
        assert!(!disk.exists(&folder.join("g")).unwrap());
        assert_eq!(
            disk.read(&folder.join("g")).unwrap_err().kind(),
            ErrorKind::NotFound
        );

        let lock = disk.lock(&folder.join("lock")).unwrap();
        assert!(matches!(lock, Lock::Held(_)));
        assert!(matches!(
            disk.lock(&folder.join("lock")).unwrap(),
            Lock::Busy
        ));
        drop(lock);
        assert!(matches!(
            disk.lock(&folder.join("lock")).unwrap(),
            Lock::Held(_)
        ));
    }
}
