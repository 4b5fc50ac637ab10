//! Model: the nodes of the faulty disk, each as it is now and as it was synced.

use std::collections::{BTreeMap, BTreeSet};
use std::ffi::OsString;
use std::io::{self, ErrorKind};
use std::path::{Component, Path, PathBuf};

use super::{Left, Trouble};

#[derive(Debug, Clone)]
pub enum Node {
    File {
        now: Vec<u8>,
        synced: Vec<u8>,
        changed: u64,
    },
    Folder {
        now: BTreeMap<OsString, usize>,
        synced: BTreeMap<OsString, usize>,
    },
}

#[derive(Debug, Clone, Default)]
pub struct Model {
    pub nodes: Vec<Node>,
    pub steps: usize,
    pub crash_at: Option<usize>,
    pub crashed: bool,
    /// Each sync with its step.
    pub syncs: Vec<(String, usize)>,
    pub ignored_sync: Option<usize>,
    pub trouble: Option<Trouble>,
    /// What goes wrong once a step was taken.
    pub planned: Option<(usize, Trouble)>,
    /// File and its length before the last write, until that is synced.
    pub last_write: Option<(usize, usize)>,
    pub locks: BTreeSet<PathBuf>,
}

pub fn gone() -> io::Error {
    io::Error::other("the machine is down")
}

impl Model {
    pub fn find(&self, path: &Path) -> io::Result<usize> {
        if self.crashed {
            return Err(gone());
        }
        let mut at = 0;
        for part in path.components() {
            let Component::Normal(name) = part else {
                continue;
            };
            let Node::Folder { now, .. } = &self.nodes[at] else {
                return Err(ErrorKind::NotADirectory.into());
            };
            at = *now.get(name).ok_or(ErrorKind::NotFound)?;
        }
        Ok(at)
    }

    /// The folder above a path and the last part of its name.
    pub fn above(&self, path: &Path) -> io::Result<(usize, OsString)> {
        let name = path.file_name().ok_or(ErrorKind::InvalidInput)?;
        let folder = self.find(path.parent().ok_or(ErrorKind::InvalidInput)?)?;
        Ok((folder, name.to_owned()))
    }

    pub fn names(&mut self, folder: usize) -> io::Result<&mut BTreeMap<OsString, usize>> {
        match &mut self.nodes[folder] {
            Node::Folder { now, .. } => Ok(now),
            Node::File { .. } => Err(ErrorKind::NotADirectory.into()),
        }
    }

    /// Counts a step. True where the machine goes down at it.
    pub fn step(&mut self) -> bool {
        let down = self.crash_at == Some(self.steps);
        if let Some((_, trouble)) = self.planned.take_if(|(step, _)| *step == self.steps) {
            self.trouble = Some(trouble);
        }
        self.steps += 1;
        self.crashed |= down;
        down
    }

    pub fn may_change(&self) -> io::Result<()> {
        match self.trouble {
            _ if self.crashed => Err(gone()),
            Some(Trouble::Denied) => Err(ErrorKind::PermissionDenied.into()),
            Some(Trouble::ReadOnly) => Err(ErrorKind::ReadOnlyFilesystem.into()),
            _ => Ok(()),
        }
    }

    pub fn put(&mut self, path: &Path, bytes: &[u8], anew: bool) -> io::Result<()> {
        self.may_change()?;
        let id = match self.find(path) {
            Ok(id) => id,
            Err(e) if e.kind() == ErrorKind::NotFound => {
                let (folder, name) = self.above(path)?;
                let id = self.nodes.len();
                self.nodes.push(Node::File {
                    now: Vec::new(),
                    synced: Vec::new(),
                    changed: 0,
                });
                self.names(folder)?.insert(name, id);
                id
            }
            Err(e) => return Err(e),
        };
        let fits = match &mut self.trouble {
            Some(Trouble::Full(room)) => {
                let fits = bytes.len().min(*room);
                *room -= fits;
                fits
            }
            Some(Trouble::Interrupted(keep)) => bytes.len().min(*keep),
            _ => bytes.len(),
        };
        let interrupted = self
            .trouble
            .take_if(|t| matches!(t, Trouble::Interrupted(_)))
            .is_some();
        let time = self.steps as u64 + 1;
        let Node::File { now, changed, .. } = &mut self.nodes[id] else {
            return Err(ErrorKind::IsADirectory.into());
        };
        if anew {
            now.clear();
        }
        self.last_write = Some((id, now.len()));
        now.extend_from_slice(&bytes[..fits]);
        *changed = time;
        if self.step() {
            return Err(gone());
        }
        if interrupted {
            Err(io::Error::other("the write was interrupted"))
        } else if fits < bytes.len() {
            Err(ErrorKind::StorageFull.into())
        } else {
            Ok(())
        }
    }

    pub fn sync(&mut self, path: &Path, kind: &str) -> io::Result<()> {
        let id = self.find(path)?;
        if self.step() {
            return Err(gone());
        }
        if self.trouble == Some(Trouble::SyncFails) {
            return Err(io::Error::other("the disk did not take it"));
        }
        let number = self.syncs.len();
        self.syncs
            .push((format!("{kind} {}", path.display()), self.steps - 1));
        if self.ignored_sync == Some(number) {
            return Ok(());
        }
        if self.last_write.is_some_and(|(of, _)| of == id) {
            self.last_write = None;
        }
        match &mut self.nodes[id] {
            Node::File { now, synced, .. } => synced.clone_from(now),
            Node::Folder { now, synced } => synced.clone_from(now),
        }
        Ok(())
    }

    /// Comes up again with so much of the unsynced work left.
    pub fn restart(&mut self, left: Left) {
        let last_write = self.last_write.take();
        for (id, node) in self.nodes.iter_mut().enumerate() {
            match (node, left) {
                (_, Left::Killed) => {}
                (Node::File { now, synced, .. }, Left::OnlySynced | Left::Names) => {
                    now.clone_from(synced)
                }
                (Node::Folder { now, synced }, Left::OnlySynced) => now.clone_from(synced),
                (Node::Folder { now, synced }, _) => synced.clone_from(now),
                (Node::File { now, synced, .. }, Left::Torn(keep) | Left::Nuls(keep)) => {
                    if let Some((of, from)) = last_write
                        && of == id
                    {
                        let cut = (from + keep).min(now.len());
                        let lost = now.len() - cut;
                        now.truncate(cut);
                        if matches!(left, Left::Nuls(_)) {
                            now.extend(std::iter::repeat_n(0, lost));
                        }
                    }
                    synced.clone_from(now);
                }
            }
        }
        self.crash_at = None;
        self.crashed = false;
        self.ignored_sync = None;
        self.trouble = None;
        self.planned = None;
        self.locks.clear();
    }
}
