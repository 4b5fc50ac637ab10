//! Throwaway: the real disk without its waiting, for copies that nobody keeps, such as the demo's.

use std::io;
use std::path::{Path, PathBuf};

use crate::disk::{Disk, Entry, Lock, RealDisk};

/// The real disk, but nothing is made durable: a crash may lose anything. Never for a shelf that somebody keeps.
#[derive(Default)]
pub struct ThrowawayDisk {
    disk: RealDisk,
}

impl Disk for ThrowawayDisk {
    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        self.disk.read(path)
    }

    fn read_part(&self, path: &Path, from: u64, len: usize) -> io::Result<Vec<u8>> {
        self.disk.read_part(path, from, len)
    }

    fn append(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        self.disk.append(path, bytes)
    }

    fn write(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
        self.disk.write(path, bytes)
    }

    fn sync_file(&self, _path: &Path) -> io::Result<()> {
        Ok(())
    }

    fn sync_folder(&self, _path: &Path) -> io::Result<()> {
        Ok(())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.disk.rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.disk.remove(path)
    }

    fn create_folder(&self, path: &Path) -> io::Result<()> {
        self.disk.create_folder(path)
    }

    fn list(&self, path: &Path) -> io::Result<Vec<Entry>> {
        self.disk.list(path)
    }

    fn len(&self, path: &Path) -> io::Result<u64> {
        self.disk.len(path)
    }

    fn exists(&self, path: &Path) -> io::Result<bool> {
        self.disk.exists(path)
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        self.disk.canonical(path)
    }

    fn is_link(&self, path: &Path) -> io::Result<bool> {
        self.disk.is_link(path)
    }

    fn lock(&self, path: &Path) -> io::Result<Lock> {
        self.disk.lock(path)
    }
}
