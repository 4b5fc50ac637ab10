//! Shelf: the data folder of one turner, opened for writing by one program or for reading by any.
//!
//! Nothing here is ever truncated, overwritten or removed, save a photo that no line names or that is tidied away. Every answer says which files it could not read.

use std::collections::{BTreeMap, BTreeSet};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use evenwall_piece::ids::{DeviceId, PieceId, Scope};

use crate::device::{Device, Own, folder_for};
use crate::disk::Disk;
use crate::error::{Doing, ReadOnly, ShelfError};
use crate::folder::{Files, list_if_there, under};
use crate::lock::WriterLock;
use crate::notice::Notice;
use crate::opening::{Found, create_folders, look, sync_above, write_shelf_file};

/// What is known of a folder that was read.
pub(crate) struct Known {
    pub files: Files,
    pub highest_seq: u64,
    pub own: Own,
    pub notices: Vec<Notice>,
}

/// What the writer of a shelf has.
pub(crate) struct Writer {
    pub device: Device,
    _lock: WriterLock,
}

/// A shelf that is open.
pub struct Shelf {
    pub(crate) disk: Arc<dyn Disk>,
    pub(crate) path: PathBuf,
    /// The writer, or why there is none.
    pub(crate) writer: Result<Writer, ReadOnly>,
    pub(crate) pieces: BTreeSet<PieceId>,
    pub(crate) known: BTreeMap<Scope, Known>,
    /// Folders and journals whose names are known to be durable, relative to the shelf.
    pub(crate) durable: BTreeSet<String>,
    /// Names under `pieces` that are no ids.
    pub(crate) ignored: Vec<Notice>,
    /// What happened to this device's id and record since opening.
    pub(crate) events: Vec<Notice>,
}

impl Shelf {
    /// Opens a shelf for writing; makes one where the folder is missing or empty. `device_data` is the device's own data
    /// folder; `seed` are fresh random bytes, used where the device needs a new id.
    ///
    /// A shelf of a newer format, or with a damaged `shelf.json`, opens all the same and can only be read:
    /// [`Shelf::read_only`].
    ///
    /// # Errors
    /// [`ShelfError`]: not a shelf and not empty, in use by another program, or refused by the file system.
    pub fn open(
        disk: Arc<dyn Disk>,
        path: &Path,
        device_data: &Path,
        seed: [u8; 16],
    ) -> Result<Self, ShelfError> {
        let found = look(&*disk, path)?;
        if let Found::ReadOnly(why) = found {
            return Self::for_reading(disk, path, why);
        }
        create_folders(&*disk, path)?;
        let path = disk.canonical(path).doing("find", path)?;
        let device_folder = folder_for(device_data, &path);
        create_folders(&*disk, &device_folder)?;
        let lock = WriterLock::take(&*disk, &device_folder, &path)?;
        let (mut device, is_new) =
            Device::open(Arc::clone(&disk), device_folder.clone(), &path, seed)?;
        if found == Found::Nothing {
            write_shelf_file(&*disk, &path)?;
        } else if is_new {
            // Perhaps made by a start that was killed before it could store it.
            let file = path.join("shelf.json");
            disk.sync_file(&file).doing("store", &file)?;
            disk.sync_folder(&path).doing("store", &path)?;
        }
        if is_new {
            sync_above(&*disk, [&path, &device_folder])?;
            device.store_id()?;
        }
        device.save()?;
        let mut shelf = Self::bare(disk, path, Err(ReadOnly::Reader));
        for (journal, _) in device.journals() {
            let mut name = String::new();
            for part in journal.split('/') {
                name.push_str(part);
                shelf.durable.insert(name.clone());
                name.push('/');
            }
        }
        shelf.writer = Ok(Writer {
            device,
            _lock: lock,
        });
        shelf.list_pieces()?;
        shelf.look_for_missing_journals()?;
        shelf.forget_unfinished_photos()?;
        Ok(shelf)
    }

    /// Opens a shelf for reading only: no lock, no id, nothing written.
    ///
    /// # Errors
    /// [`ShelfError`]: no shelf there, or refused by the file system.
    pub fn open_reader(disk: Arc<dyn Disk>, path: &Path) -> Result<Self, ShelfError> {
        match look(&*disk, path)? {
            Found::Nothing => Err(ShelfError::Nowhere {
                path: path.to_owned(),
            }),
            Found::Shelf => Self::for_reading(disk, path, ReadOnly::Reader),
            Found::ReadOnly(why) => Self::for_reading(disk, path, why),
        }
    }

    fn for_reading(disk: Arc<dyn Disk>, path: &Path, why: ReadOnly) -> Result<Self, ShelfError> {
        let mut shelf = Self::bare(disk, path.to_owned(), Err(why));
        shelf.list_pieces()?;
        Ok(shelf)
    }

    fn bare(disk: Arc<dyn Disk>, path: PathBuf, writer: Result<Writer, ReadOnly>) -> Self {
        Self {
            disk,
            path,
            writer,
            pieces: BTreeSet::new(),
            known: BTreeMap::new(),
            durable: BTreeSet::new(),
            ignored: Vec::new(),
            events: Vec::new(),
        }
    }

    /// The shelf's folder.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Why nothing can be recorded; `None` where it can.
    #[must_use]
    pub fn read_only(&self) -> Option<ReadOnly> {
        self.writer.as_ref().err().copied()
    }

    /// The id under which this device writes now; `None` for a reader.
    #[must_use]
    pub fn device(&self) -> Option<&DeviceId> {
        self.writer.as_ref().ok().map(|w| w.device.id())
    }

    /// The pieces that have a folder, by id.
    pub fn pieces(&self) -> impl Iterator<Item = &PieceId> {
        self.pieces.iter()
    }

    /// Everything odd about the shelf and the folders read so far.
    pub fn notices(&self) -> impl Iterator<Item = &Notice> {
        self.events
            .iter()
            .chain(&self.ignored)
            .chain(self.known.values().flat_map(|k| &k.notices))
    }

    /// What was odd in one folder; empty where it was not read yet.
    #[must_use]
    pub fn notices_of(&self, scope: &Scope) -> &[Notice] {
        self.known.get(scope).map_or(&[], |k| &k.notices)
    }

    /// A journal of the record that is gone or shorter means that this is not the shelf as it was left.
    fn look_for_missing_journals(&mut self) -> Result<(), ShelfError> {
        let Ok(writer) = &self.writer else {
            return Ok(());
        };
        let mut differs = None;
        for (journal, mark) in writer.device.journals() {
            let path = under(&self.path, journal);
            let len = match self.disk.len(&path) {
                Err(e) if e.kind() == ErrorKind::NotFound => 0,
                other => other.doing("look at", &path)?,
            };
            if len < mark.len {
                let piece = journal
                    .split('/')
                    .nth(1)
                    .and_then(|id| PieceId::new(id).ok());
                let is_piece = journal.starts_with("pieces/");
                differs = Some(piece.filter(|_| is_piece).map_or(Scope::Shop, Scope::Piece));
                break;
            }
        }
        differs.map_or(Ok(()), |scope| self.take_new_id(&scope))
    }

    /// Lists the pieces; names that are no ids are noted and left alone.
    pub(crate) fn list_pieces(&mut self) -> Result<(), ShelfError> {
        let folder = self.path.join("pieces");
        let entries = list_if_there(&*self.disk, &self.path, &folder)?;
        self.ignored.clear();
        self.pieces.clear();
        for entry in entries {
            let name = entry.name.to_string_lossy();
            match PieceId::new(&name) {
                Ok(id) if entry.is_folder => {
                    self.pieces.insert(id);
                }
                _ if name.starts_with('.') => {}
                _ => self.ignored.push(Notice::IgnoredName {
                    path: format!("pieces/{name}"),
                }),
            }
        }
        self.ignored.sort();
        Ok(())
    }
}
