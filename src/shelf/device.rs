//! Device: this device's id for one shelf, and its record of how it left its own journals.
//!
//! All of it lives in the device's own data folder, never in the shelf: a shelf that was copied, restored or opened at
//! another path meets no matching record, so its old journals are never continued by two writers.
//!
//! The record costs no sync on an append. It is a synced base, saved anew at every opening and every [`SAVE_EVERY`]
//! appends, and an unsynced list of what came since. After a power cut the record may lag, never lead; a journal that
//! is longer than its record by no more than that many whole own lines is accepted.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use evenwall_piece::ids::DeviceId;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::disk::Disk;
use crate::error::{Doing, ShelfError};
use crate::journal::{Journal, ends_cleanly};

/// After so many appends the record is saved with a sync; so many lines it may lag behind a journal.
pub const SAVE_EVERY: usize = 32;

/// How this device left one of its journals.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Mark {
    /// The last number.
    pub n: u64,
    /// Length in bytes.
    pub len: u64,
    /// Hash of the whole content.
    pub hash: String,
}

/// This device's journal in one folder, as it stands.
#[derive(Debug, Clone)]
pub(crate) struct Own {
    /// The highest number used.
    pub n: u64,
    /// Length in bytes.
    pub len: u64,
    /// True where the next line can be added without a newline first.
    pub clean: bool,
    /// Hash of the content so far, ready to go on.
    hash: Sha256,
    /// True where all of it is known to be durable, with its folders.
    pub durable: bool,
}

impl Own {
    /// A journal that was not begun.
    pub fn fresh() -> Self {
        Self {
            n: 0,
            len: 0,
            clean: true,
            hash: Sha256::new(),
            durable: false,
        }
    }

    /// Compares a journal with the record. `None` where it is not as this device left it.
    pub fn check(mark: Option<&Mark>, bytes: Option<&[u8]>, id: &DeviceId) -> Option<Self> {
        let bytes = bytes.unwrap_or_default();
        let (n, split) =
            mark.map_or(Some((0, 0)), |m| Some((m.n, usize::try_from(m.len).ok()?)))?;
        let (left, since) = bytes.split_at_checked(split)?;
        let mut hash = Sha256::new();
        hash.update(left);
        if mark.is_some_and(|m| m.hash != hex(&hash)) {
            return None;
        }
        let journal = Journal::read(since);
        let mut next = n;
        for line in &journal.lines {
            next += 1;
            if line.id.device != *id || line.id.n != next {
                return None;
            }
        }
        if journal.lines.len() > SAVE_EVERY {
            return None;
        }
        hash.update(since);
        let len = bytes.len() as u64;
        Some(Self {
            n: next,
            len,
            clean: ends_cleanly(bytes),
            hash,
            durable: since.is_empty() && mark.is_some(),
        })
    }

    /// Takes bytes that were appended and synced.
    pub fn grow(&mut self, bytes: &[u8], n: u64) {
        self.n = n;
        self.len += bytes.len() as u64;
        self.clean = ends_cleanly(bytes);
        self.hash.update(bytes);
        self.durable = true;
    }

    /// The record of it.
    pub fn mark(&self) -> Mark {
        Mark {
            n: self.n,
            len: self.len,
            hash: hex(&self.hash),
        }
    }
}

fn hex(hash: &Sha256) -> String {
    short_hex(&hash.clone().finalize())
}

/// The first 16 bytes in hexadecimal: against accidents, not against forgers.
fn short_hex(bytes: &[u8]) -> String {
    bytes.iter().take(16).fold(String::new(), |mut text, byte| {
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

#[derive(Serialize, Deserialize)]
struct IdFile {
    device: String,
    shelf: String,
}

#[derive(Serialize, Deserialize)]
struct Base {
    device: String,
    journals: BTreeMap<String, Mark>,
}

#[derive(Serialize, Deserialize)]
struct Since {
    journal: String,
    #[serde(flatten)]
    mark: Mark,
}

/// This device as the writer of one shelf.
pub(crate) struct Device {
    disk: Arc<dyn Disk>,
    /// Its folder for this shelf, in the device's data folder.
    folder: PathBuf,
    shelf: String,
    seed: [u8; 16],
    ids_taken: u32,
    id: DeviceId,
    marks: BTreeMap<String, Mark>,
    unsaved: usize,
}

/// The folder of the data folder that belongs to the shelf at this path.
pub(crate) fn folder_for(device_data: &Path, shelf: &Path) -> PathBuf {
    let key = short_hex(&Sha256::digest(shelf.as_os_str().as_encoded_bytes()));
    device_data.join("shelves").join(key)
}

fn read_if_there(disk: &dyn Disk, path: &Path) -> Result<Option<Vec<u8>>, ShelfError> {
    match disk.read(path) {
        Err(e) if e.kind() == ErrorKind::NotFound => Ok(None),
        other => other.doing("read", path).map(Some),
    }
}

impl Device {
    /// Reads the id and the record, where there are any: the second value is true where the id is new and still to be
    /// stored by [`Device::store_id`].
    pub fn open(
        disk: Arc<dyn Disk>,
        folder: PathBuf,
        shelf: &Path,
        seed: [u8; 16],
    ) -> Result<(Self, bool), ShelfError> {
        // A file that cannot be understood is as good as none: the device takes a new id, which is always harmless.
        let stored = read_if_there(&*disk, &folder.join("device.json"))?
            .and_then(|bytes| serde_json::from_slice::<IdFile>(&bytes).ok())
            .and_then(|file| DeviceId::new(&file.device).ok());
        let is_new = stored.is_none();
        let mut ids_taken = 0;
        let id = stored.unwrap_or_else(|| new_id(seed, &mut ids_taken));
        let mut device = Self {
            disk,
            folder,
            shelf: shelf.to_string_lossy().into_owned(),
            seed,
            ids_taken,
            id,
            marks: BTreeMap::new(),
            unsaved: 0,
        };
        if !is_new {
            device.read_marks()?;
        }
        Ok((device, is_new))
    }

    fn read_marks(&mut self) -> Result<(), ShelfError> {
        let base = read_if_there(&*self.disk, &self.folder.join("journals.json"))?;
        // Lost or damaged, the record is empty and the journals are judged without it.
        let base = base.and_then(|bytes| serde_json::from_slice::<Base>(&bytes).ok());
        if let Some(base) = base.filter(|b| b.device == self.id.as_str()) {
            self.marks = base.journals;
        }
        let since =
            read_if_there(&*self.disk, &self.folder.join("journals.log"))?.unwrap_or_default();
        for line in since.split(|b| *b == b'\n') {
            // Unsynced, so lines may be missing or torn: the journals themselves are the truth.
            let Ok(since) = serde_json::from_slice::<Since>(line) else {
                continue;
            };
            self.unsaved += 1;
            if self
                .marks
                .get(&since.journal)
                .is_none_or(|m| m.n < since.mark.n)
            {
                self.marks.insert(since.journal, since.mark);
            }
        }
        Ok(())
    }

    /// Its folder for this shelf.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The id.
    pub fn id(&self) -> &DeviceId {
        &self.id
    }

    /// How this device left a journal, named relative to the shelf.
    pub fn mark(&self, journal: &str) -> Option<&Mark> {
        self.marks.get(journal)
    }

    /// All journals of the record, named relative to the shelf.
    pub fn journals(&self) -> impl Iterator<Item = (&str, &Mark)> {
        self.marks
            .iter()
            .map(|(journal, mark)| (journal.as_str(), mark))
    }

    /// Stores the id, durable.
    pub fn store_id(&self) -> Result<(), ShelfError> {
        let path = self.folder.join("device.json");
        let file = IdFile {
            device: self.id.to_string(),
            shelf: self.shelf.clone(),
        };
        self.disk
            .replace(&path, &json(&file, &path)?)
            .doing("store", &path)
    }

    /// Takes a new id and forgets the record: the old journals are another's from now on.
    pub fn take_new_id(&mut self) -> Result<(), ShelfError> {
        let old = self.id.clone();
        // Another than the old one, also where a caller hands over the same seed twice.
        while self.id == old {
            self.id = new_id(self.seed, &mut self.ids_taken);
        }
        self.marks.clear();
        self.unsaved = 1;
        self.store_id()?;
        self.save()
    }

    /// Notes how a journal was left. Not synced, save every [`SAVE_EVERY`] times.
    pub fn note(&mut self, journal: &str, mark: Mark) -> Result<(), ShelfError> {
        self.marks.insert(journal.to_owned(), mark.clone());
        self.unsaved += 1;
        if self.unsaved >= SAVE_EVERY {
            return self.save();
        }
        let path = self.folder.join("journals.log");
        // A newline first, in case the last line was torn.
        let mut bytes = vec![b'\n'];
        bytes.extend(json(
            &Since {
                journal: journal.to_owned(),
                mark,
            },
            &path,
        )?);
        self.disk.append(&path, &bytes).doing("write to", &path)
    }

    /// Saves the record with a sync, where something came since the last time.
    pub fn save(&mut self) -> Result<(), ShelfError> {
        if self.unsaved == 0 {
            return Ok(());
        }
        let path = self.folder.join("journals.json");
        let base = Base {
            device: self.id.to_string(),
            journals: self.marks.clone(),
        };
        self.disk
            .replace(&path, &json(&base, &path)?)
            .doing("store", &path)?;
        self.unsaved = 0;
        let log = self.folder.join("journals.log");
        self.disk.write(&log, b"").doing("write to", &log)
    }
}

fn json<T: Serialize>(value: &T, path: &Path) -> Result<Vec<u8>, ShelfError> {
    serde_json::to_vec(value)
        .map_err(std::io::Error::from)
        .doing("write to", path)
}

/// Sixteen letters and digits from the seed and how many ids were made from it.
fn new_id(seed: [u8; 16], taken: &mut u32) -> DeviceId {
    const ALPHABET: &[u8; 32] = b"abcdefghijklmnopqrstuvwxyz234567";
    let digest = Sha256::new()
        .chain_update(seed)
        .chain_update(taken.to_le_bytes())
        .finalize();
    *taken += 1;
    let name: String = digest
        .iter()
        .take(16)
        .map(|b| char::from(ALPHABET[usize::from(b % 32)]))
        .collect();
    // Sixteen characters of the alphabet are a legal id; the other arm is never reached.
    DeviceId::new(&name).unwrap_or_else(|_| unreachable!("letters and digits are a legal id"))
}
