//! Job: what runs off the screen's thread, as values: an import, and the rebuilding of thumbnails.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use evenwall_photo::error::PhotoError;
use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::{Prepared, prepare, thumbnail};
use evenwall_photo::watch::Watch;
use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::{PhotoHash, PhotoOn};

use super::newest::PictureSource;

/// How far an import is.
#[derive(Debug, Clone, PartialEq)]
pub struct ImportProgress {
    /// Of which import.
    pub generation: u64,
    /// The file that is being read, counted from 0.
    pub file: usize,
    /// How far the whole import is, 0 to 1.
    pub part: f32,
}

/// What became of one file.
#[derive(Debug, Clone, PartialEq)]
pub struct FileOutcome {
    /// The file's name, without its folder.
    pub name: String,
    /// The photo, or a sentence why there is none.
    pub photo: Result<Box<Prepared>, String>,
}

/// What came of an import.
#[derive(Debug, Clone, PartialEq)]
pub struct ImportDone {
    /// Of which import.
    pub generation: u64,
    /// The piece.
    pub piece: PieceId,
    /// What the photos belong to.
    pub on: PhotoOn,
    /// File by file; of a stopped import those before it was stopped.
    pub files: Vec<FileOutcome>,
    /// It was stopped: nothing of it is recorded.
    pub cancelled: bool,
}

/// An import to be run anywhere.
#[derive(Debug, Clone)]
pub struct ImportJob {
    /// Its number.
    pub generation: u64,
    /// The piece.
    pub piece: PieceId,
    /// What the photos belong to.
    pub on: PhotoOn,
    /// The files, in the order chosen.
    pub files: Vec<PathBuf>,
    /// Set from outside to stop it.
    pub cancel: Arc<AtomicBool>,
}

impl PartialEq for ImportJob {
    fn eq(&self, other: &Self) -> bool {
        self.generation == other.generation && self.files == other.files
    }
}

impl ImportJob {
    /// Reads and prepares file after file; holds one of them in memory at a time, and what is to be stored of all.
    /// `progress` is called a few dozen times a file, on the thread that runs this.
    #[must_use]
    pub fn run(
        &self,
        source: &dyn PictureSource,
        limits: &Limits,
        progress: &mut dyn FnMut(ImportProgress),
    ) -> ImportDone {
        let mut files = Vec::new();
        for (file, path) in self.files.iter().enumerate() {
            if self.cancel.load(Ordering::Relaxed) {
                break;
            }
            let name = path
                .file_name()
                .unwrap_or(path.as_os_str())
                .to_string_lossy()
                .into_owned();
            #[allow(clippy::cast_precision_loss)] // a share of a bar needs no better
            let part = |of_file: f32| (file as f32 + of_file) / self.files.len() as f32;
            let mut tell = |of_file: f32| {
                progress(ImportProgress {
                    generation: self.generation,
                    file,
                    part: part(of_file),
                });
            };
            let photo = match source.read(path, limits.file_bytes) {
                Err(sentence) => Err(sentence),
                Ok(bytes) => prepare(&bytes, limits, &mut Watch::new(&self.cancel, &mut tell))
                    .map(Box::new)
                    .map_err(|error| match error {
                        PhotoError::Cancelled => String::new(),
                        other => other.to_string(),
                    }),
            };
            files.push(FileOutcome { name, photo });
        }
        ImportDone {
            generation: self.generation,
            piece: self.piece.clone(),
            on: self.on.clone(),
            files,
            cancelled: self.cancel.load(Ordering::Relaxed),
        }
    }
}

/// Thumbnails to be rebuilt anywhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ThumbJob {
    /// The stored photos, each with its file.
    pub photos: Vec<(PhotoHash, PathBuf)>,
}

/// Thumbnails that were rebuilt; of photos that are damaged or still arriving there are none.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ThumbsDone {
    /// Each as JPEG.
    pub thumbnails: Vec<(PhotoHash, Vec<u8>)>,
}

impl ThumbJob {
    /// Rebuilds them one after the other.
    #[must_use]
    pub fn run(&self, source: &dyn PictureSource, limits: &Limits) -> ThumbsDone {
        let never = AtomicBool::new(false);
        let one = |(hash, path): &(PhotoHash, PathBuf)| {
            let bytes = source.read(path, limits.file_bytes).ok()?;
            let mut nobody = |_| {};
            let jpeg = thumbnail(&bytes, limits, &mut Watch::new(&never, &mut nobody)).ok()?;
            Some((hash.clone(), jpeg))
        };
        ThumbsDone {
            thumbnails: self.photos.iter().filter_map(one).collect(),
        }
    }
}
