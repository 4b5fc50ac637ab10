//! Folders: where the shelf and the device's own data are, unless the turner says otherwise.

use std::path::PathBuf;

use directories::ProjectDirs;

/// The folders of this device.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Folders {
    /// The shelf: may be carried by a file-sync service.
    pub shelf: PathBuf,
    /// The device's own data: id, lock, settings. Never carried.
    pub device: PathBuf,
}

/// The platform's usual folders; `None` where it names no home.
#[must_use]
pub fn usual() -> Option<Folders> {
    let dirs = ProjectDirs::from("", "", "evenwall")?;
    Some(Folders {
        shelf: dirs.data_dir().join("shelf"),
        device: dirs.data_local_dir().join("device"),
    })
}
