//! Stream: a file of a [`Disk`] as the zip library wants it: written piece by piece, read by place.

use std::io::{self, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use crate::disk::Disk;

/// How much is gathered before it goes to the disk, bytes.
const CHUNK: usize = 1 << 18;

/// Adds to a file of a disk, a good chunk at a time. What is left is written by [`Appending::finish`].
pub(super) struct Appending<'a> {
    disk: &'a dyn Disk,
    path: PathBuf,
    gathered: Vec<u8>,
}

impl<'a> Appending<'a> {
    /// Begins the file anew.
    pub fn begin(disk: &'a dyn Disk, path: &Path) -> io::Result<Self> {
        disk.write(path, b"")?;
        Ok(Self {
            disk,
            path: path.to_owned(),
            gathered: Vec::with_capacity(CHUNK),
        })
    }

    fn pass_on(&mut self) -> io::Result<()> {
        if self.gathered.is_empty() {
            return Ok(());
        }
        let bytes = std::mem::take(&mut self.gathered);
        self.disk.append(&self.path, &bytes)
    }

    /// Writes what is left.
    pub fn finish(mut self) -> io::Result<()> {
        self.pass_on()
    }
}

impl Write for Appending<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.gathered.extend_from_slice(bytes);
        if self.gathered.len() >= CHUNK {
            self.pass_on()?;
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        // Durable only by the sync at the end: chunks need not follow the library's flushes.
        Ok(())
    }
}

/// Reads a file of a disk, a good chunk at a time.
pub(super) struct Reading<'a> {
    disk: &'a dyn Disk,
    path: PathBuf,
    len: u64,
    at: u64,
    chunk: Vec<u8>,
    chunk_at: u64,
}

impl<'a> Reading<'a> {
    /// Opens a file.
    pub fn open(disk: &'a dyn Disk, path: &Path) -> io::Result<Self> {
        Ok(Self {
            disk,
            path: path.to_owned(),
            len: disk.len(path)?,
            at: 0,
            chunk: Vec::new(),
            chunk_at: 0,
        })
    }

    /// Its length, bytes.
    pub fn len(&self) -> u64 {
        self.len
    }
}

impl Read for Reading<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if self.at >= self.len || into.is_empty() {
            return Ok(0);
        }
        let held = self.chunk_at..self.chunk_at + self.chunk.len() as u64;
        if !held.contains(&self.at) {
            self.chunk = self.disk.read_part(&self.path, self.at, CHUNK)?;
            self.chunk_at = self.at;
        }
        // Within the chunk, so it fits.
        let from = usize::try_from(self.at - self.chunk_at).unwrap_or(usize::MAX);
        let part = self.chunk.get(from..).unwrap_or_default();
        let n = part.len().min(into.len());
        into[..n].copy_from_slice(&part[..n]);
        self.at += n as u64;
        Ok(n)
    }
}

impl Seek for Reading<'_> {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let at = match to {
            SeekFrom::Start(at) => Some(at),
            SeekFrom::End(by) => self.len.checked_add_signed(by),
            SeekFrom::Current(by) => self.at.checked_add_signed(by),
        };
        self.at = at.ok_or(io::ErrorKind::InvalidInput)?;
        Ok(self.at)
    }
}
