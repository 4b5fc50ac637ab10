//! Lock: one writer at a time for one shelf on one device. Readers take none.
//!
//! The lock file is in the device's data folder, so that no sync program ever carries it.

use std::any::Any;
use std::path::Path;

use crate::disk::{Disk, Lock};
use crate::error::{Doing, ShelfError};

/// Held while the shelf is open for writing.
pub(crate) struct WriterLock {
    _held: Option<Box<dyn Any + Send + Sync>>,
}

impl WriterLock {
    /// Takes the lock in this device's folder for the shelf. Where locks are not supported it goes on without.
    ///
    /// # Errors
    /// [`ShelfError::InUse`] where another program writes to the shelf.
    pub fn take(disk: &dyn Disk, device_folder: &Path, shelf: &Path) -> Result<Self, ShelfError> {
        let path = device_folder.join("lock");
        match disk.lock(&path).doing("lock", &path)? {
            Lock::Held(held) => Ok(Self { _held: Some(held) }),
            Lock::Unsupported => Ok(Self { _held: None }),
            Lock::Busy => Err(ShelfError::InUse {
                path: shelf.to_owned(),
            }),
        }
    }
}
