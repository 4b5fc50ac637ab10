//! Faulty disk: a file system in memory that forgets whatever was not synced, and fails when told to.
//!
//! It is stricter than most: the bytes of a file live only after its sync, a name only after the sync of its folder.
//! A test runs once to count the steps, then crashes at each one and looks at what [`FaultyDisk::restart`] leaves.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, SystemTime};

use crate::disk::{Disk, Entry, Lock};

mod model;
use model::{Model, Node, gone};

/// What is left of unsynced work when the machine comes up again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Left {
    /// Only what was synced.
    OnlySynced,
    /// All names, but only synced bytes: new files are empty.
    Names,
    /// Everything but the last write, of which only so many bytes are left.
    Torn(usize),
    /// As `Torn`, with NULs in place of the lost bytes: the length was stored, the bytes were not.
    Nuls(usize),
    /// Everything: the power held, only the program was killed. Unsynced work stays unsynced.
    Killed,
}

/// What goes wrong from now on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    /// So many more bytes fit; a write that does not fit leaves a part behind.
    Full(usize),
    /// Every change is refused: no permission.
    Denied,
    /// Every change is refused: mounted read-only.
    ReadOnly,
    /// Every sync reports an error and makes nothing durable.
    SyncFails,
    /// No file can be read: no permission.
    Unreadable,
    /// The next write is cut short after so many bytes and refused; then all is well again.
    Interrupted(usize),
    /// Every write and sync takes so long, and a line that is added lies there by half meanwhile.
    Slow(Duration),
    /// Locks are not supported.
    NoLocks,
}

/// A disk in memory that can crash, tear, fill up and refuse. Clones are the same disk.
#[derive(Debug, Clone)]
pub struct FaultyDisk {
    model: Arc<Mutex<Model>>,
}

impl Default for FaultyDisk {
    fn default() -> Self {
        Self::new()
    }
}

impl FaultyDisk {
    /// An empty, well-behaved disk that has only the folder `/`.
    #[must_use]
    pub fn new() -> Self {
        let root = Node::Folder {
            now: BTreeMap::new(),
            synced: BTreeMap::new(),
        };
        Self {
            model: Arc::new(Mutex::new(Model {
                nodes: vec![root],
                ..Model::default()
            })),
        }
    }

    fn model(&self) -> MutexGuard<'_, Model> {
        // A test that panicked while holding the model has failed already.
        self.model.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// How many changing steps were taken so far: writes, syncs, renames, removals, new folders.
    #[must_use]
    pub fn steps(&self) -> usize {
        self.model().steps
    }

    /// The machine goes down at this step, counted from 0 like [`FaultyDisk::steps`]: a write has reached memory but
    /// not the disk, a sync has done nothing.
    pub fn crash_at(&self, step: usize) {
        self.model().crash_at = Some(step);
    }

    /// True once the machine is down.
    #[must_use]
    pub fn is_down(&self) -> bool {
        self.model().crashed
    }

    /// What was synced so far, in order, as `file /path` or `folder /path`, each with the step at which it was.
    #[must_use]
    pub fn syncs(&self) -> Vec<(String, usize)> {
        self.model().syncs.clone()
    }

    /// The sync of this number, counted from 0 like [`FaultyDisk::syncs`], will do nothing and report success.
    pub fn ignore_sync(&self, number: usize) {
        self.model().ignored_sync = Some(number);
    }

    /// Something goes wrong from now on, or nothing any more.
    pub fn trouble(&self, trouble: Option<Trouble>) {
        self.model().trouble = trouble;
    }

    /// Something goes wrong once this step was taken, counted from 0 like [`FaultyDisk::steps`].
    pub fn trouble_after(&self, step: usize, trouble: Trouble) {
        self.model().planned = Some((step, trouble));
    }

    fn wait(&self) -> bool {
        let trouble = self.model().trouble;
        if let Some(Trouble::Slow(time)) = trouble {
            std::thread::sleep(time);
            return true;
        }
        false
    }

    /// Length of the last write in bytes; 0 where it was synced since.
    #[must_use]
    pub fn last_write_len(&self) -> usize {
        let model = self.model();
        match model.last_write.map(|(id, from)| (&model.nodes[id], from)) {
            Some((Node::File { now, .. }, from)) => now.len().saturating_sub(from),
            _ => 0,
        }
    }

    /// The machine comes up again, with so much of its unsynced work left. Locks are gone, plans and troubles too.
    pub fn restart(&self, left: Left) {
        self.model().restart(left);
    }

    /// A second disk with the same content and the same unsynced work, to try another outcome on.
    #[must_use]
    pub fn fork(&self) -> Self {
        let model = self.model().clone();
        Self {
            model: Arc::new(Mutex::new(model)),
        }
    }
}

impl Disk for FaultyDisk {
    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        let model = self.model();
        match &model.nodes[model.find(path)?] {
            Node::File { .. } if model.trouble == Some(Trouble::Unreadable) => {
                Err(ErrorKind::PermissionDenied.into())
            }
            Node::File { now, .. } => Ok(now.clone()),
            Node::Folder { .. } => Err(ErrorKind::IsADirectory.into()),
        }
    }

    fn append(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        let half = bytes.len() / 2;
        if self.wait() && half > 0 {
            self.model().put(path, &bytes[..half], false)?;
            self.wait();
            return self.model().put(path, &bytes[half..], false);
        }
        self.model().put(path, bytes, false)
    }

    fn write(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        self.model().put(path, bytes, true)
    }

    fn sync_file(&self, path: &Path) -> io::Result<()> {
        self.wait();
        self.model().sync(path, "file")
    }

    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        self.wait();
        self.model().sync(path, "folder")
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        let mut model = self.model();
        model.may_change()?;
        let id = model.find(from)?;
        let (old_folder, old_name) = model.above(from)?;
        let (new_folder, new_name) = model.above(to)?;
        model.names(old_folder)?.remove(&old_name);
        model.names(new_folder)?.insert(new_name, id);
        if model.step() { Err(gone()) } else { Ok(()) }
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        let mut model = self.model();
        model.may_change()?;
        if model.find(path).is_err() {
            return Ok(());
        }
        let (folder, name) = model.above(path)?;
        model.names(folder)?.remove(&name);
        if model.step() { Err(gone()) } else { Ok(()) }
    }

    fn create_folder(&self, path: &Path) -> io::Result<()> {
        let mut model = self.model();
        model.may_change()?;
        if let Ok(id) = model.find(path) {
            return match model.nodes[id] {
                Node::Folder { .. } => Ok(()),
                Node::File { .. } => Err(ErrorKind::AlreadyExists.into()),
            };
        }
        let (folder, name) = model.above(path)?;
        let id = model.nodes.len();
        model.nodes.push(Node::Folder {
            now: BTreeMap::new(),
            synced: BTreeMap::new(),
        });
        model.names(folder)?.insert(name, id);
        if model.step() { Err(gone()) } else { Ok(()) }
    }

    fn list(&self, path: &Path) -> io::Result<Vec<Entry>> {
        let model = self.model();
        let Node::Folder { now, .. } = &model.nodes[model.find(path)?] else {
            return Err(ErrorKind::NotADirectory.into());
        };
        let entry = |(name, id): (&OsString, &usize)| match &model.nodes[*id] {
            Node::File { now, changed, .. } => Entry {
                name: name.clone(),
                is_folder: false,
                len: now.len() as u64,
                modified: Some(SystemTime::UNIX_EPOCH + Duration::from_secs(*changed)),
            },
            Node::Folder { .. } => Entry {
                name: name.clone(),
                is_folder: true,
                len: 0,
                modified: None,
            },
        };
        Ok(now.iter().map(entry).collect())
    }

    fn len(&self, path: &Path) -> io::Result<u64> {
        let model = self.model();
        match &model.nodes[model.find(path)?] {
            Node::File { now, .. } => Ok(now.len() as u64),
            Node::Folder { .. } => Ok(0),
        }
    }

    fn exists(&self, path: &Path) -> io::Result<bool> {
        match self.model().find(path) {
            Ok(_) => Ok(true),
            Err(e) if e.kind() == ErrorKind::NotFound => Ok(false),
            Err(e) => Err(e),
        }
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        self.model().find(path).map(|_| path.to_owned())
    }

    fn lock(&self, path: &Path) -> io::Result<Lock> {
        let mut model = self.model();
        model.may_change()?;
        if model.trouble == Some(Trouble::NoLocks) {
            return Ok(Lock::Unsupported);
        }
        if !model.locks.insert(path.to_owned()) {
            return Ok(Lock::Busy);
        }
        Ok(Lock::Held(Box::new(Held {
            model: Arc::clone(&self.model),
            path: path.to_owned(),
        })))
    }
}

struct Held {
    model: Arc<Mutex<Model>>,
    path: PathBuf,
}

impl Drop for Held {
    fn drop(&mut self) {
        self.model
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .locks
            .remove(&self.path);
    }
}
