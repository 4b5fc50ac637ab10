//! Photos: the files beside a diary, each under the hash of its bytes.
//!
//! Opening a shelf, and reading or writing a diary, never look at them. A photo is looked at when it is shown.

use std::io::ErrorKind;
use std::path::PathBuf;

use chrono::{DateTime, FixedOffset};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PieceId, Scope};
use evenwall_piece::line::Line;
use evenwall_piece::photo::PhotoHash;
use sha2::{Digest, Sha256};

use crate::error::{Doing, ShelfError};
use crate::folder::under;
use crate::shelf::Shelf;

/// What is found where a photo belongs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PhotoFile {
    /// Its bytes.
    Here(Vec<u8>),
    /// Nothing yet: it is on its way from another device.
    NotHere,
    /// Other bytes than its name says: a part of it has arrived, or it was damaged.
    NotWhole,
}

/// The hash of some bytes: the name under which they are kept.
#[must_use]
pub fn hash_of(bytes: &[u8]) -> Option<PhotoHash> {
    use std::fmt::Write as _;
    let mut text = String::with_capacity(64);
    for byte in Sha256::digest(bytes) {
        write!(text, "{byte:02x}").ok()?;
    }
    PhotoHash::new(&text).ok()
}

/// The folder of a piece's photos, relative to the shelf, with `/`.
pub(crate) fn photos_of(piece: &PieceId) -> String {
    format!("pieces/{piece}/photos")
}

/// A photo, relative to the shelf, with `/`.
pub(crate) fn file_of(piece: &PieceId, photo: &PhotoHash) -> String {
    format!("pieces/{piece}/photos/{photo}.jpg")
}

impl Shelf {
    /// Records one action as one line together with the photos that it names, all durable when this returns. A photo
    /// that is there already is stored once. Where it fails, a photo that no line names does not stay.
    ///
    /// # Errors
    /// As [`Shelf::append_piece`].
    pub fn append_with_photos(
        &mut self,
        piece: &PieceId,
        at: DateTime<FixedOffset>,
        noted_at: DateTime<FixedOffset>,
        facts: Vec<PieceFact>,
        photos: &[Vec<u8>],
    ) -> Result<Line<PieceFact>, ShelfError> {
        if let Some(why) = self.read_only() {
            return Err(ShelfError::ReadOnly { why });
        }
        let mut wanted: Vec<(PhotoHash, &[u8])> = Vec::new();
        for bytes in photos {
            let hash = hash_of(bytes).ok_or(ShelfError::Nothing)?;
            if !wanted.iter().any(|(h, _)| *h == hash) && !self.is_whole(piece, &hash, bytes)? {
                wanted.push((hash, bytes));
            }
        }
        self.begin_photos(piece, wanted.iter().map(|(hash, _)| hash))?;
        let outcome = self.store_photos(piece, &wanted, photos);
        let outcome = outcome.and_then(|()| self.append_piece(piece, at, noted_at, facts));
        match &outcome {
            // The line may stand there all the same: its photos must.
            Err(ShelfError::Unconfirmed { .. }) => {}
            // Also where a full disk took the line but not its newline: only what no line names goes.
            Err(_) => {
                let hashes: Vec<PhotoHash> = wanted.into_iter().map(|(hash, _)| hash).collect();
                // Where even looking fails, the next start looks again.
                self.forget_unnamed_photos(piece, &hashes)
                    .unwrap_or_default();
            }
            Ok(_) if wanted.is_empty() => {}
            Ok(_) => self.photos_are_recorded(),
        }
        outcome
    }

    /// True where these very bytes are there.
    fn is_whole(
        &self,
        piece: &PieceId,
        hash: &PhotoHash,
        bytes: &[u8],
    ) -> Result<bool, ShelfError> {
        let path = self.photo_path(piece, hash);
        match self.disk.len(&path) {
            Err(e) if e.kind() == ErrorKind::NotFound => Ok(false),
            Ok(len) if len != bytes.len() as u64 => Ok(false),
            Ok(_) => Ok(self.disk.read(&path).doing("read", &path)? == bytes),
            Err(e) => Err(e).doing("look at", &path),
        }
    }

    /// Stores the photos that are not there, and makes all of them durable with their names.
    fn store_photos(
        &mut self,
        piece: &PieceId,
        wanted: &[(PhotoHash, &[u8])],
        all: &[Vec<u8>],
    ) -> Result<(), ShelfError> {
        if all.is_empty() {
            return Ok(());
        }
        self.make_folders(&Scope::Piece(piece.clone()))?;
        let relative = photos_of(piece);
        let folder = under(&self.path, &relative);
        if !self.durable.contains(&relative) {
            self.disk
                .create_folder(&folder)
                .doing("make the folder", &folder)?;
            let above = under(&self.path, &format!("pieces/{piece}"));
            self.disk.sync_folder(&above).doing("store", &above)?;
            self.durable.insert(relative);
        }
        for (hash, bytes) in wanted {
            let path = self.photo_path(piece, hash);
            self.disk.replace(&path, bytes).doing("write", &path)?;
            self.durable.insert(file_of(piece, hash));
        }
        // One that was there already may be from a start that was killed before it could store it.
        for hash in all.iter().filter_map(|bytes| hash_of(bytes)) {
            let relative = file_of(piece, &hash);
            if self.durable.contains(&relative) {
                continue;
            }
            let path = under(&self.path, &relative);
            self.disk.sync_file(&path).doing("store", &path)?;
            self.disk.sync_folder(&folder).doing("store", &folder)?;
            self.durable.insert(relative);
        }
        Ok(())
    }

    /// Where a photo belongs.
    #[must_use]
    pub fn photo_path(&self, piece: &PieceId, photo: &PhotoHash) -> PathBuf {
        under(&self.path, &file_of(piece, photo))
    }

    /// True where a file lies where the photo belongs; its bytes are not read.
    #[must_use]
    pub fn photo_is_here(&self, piece: &PieceId, photo: &PhotoHash) -> bool {
        matches!(self.disk.len(&self.photo_path(piece, photo)), Ok(len) if len > 0)
    }

    /// The bytes of a photo, compared with its name.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn photo(&self, piece: &PieceId, photo: &PhotoHash) -> Result<PhotoFile, ShelfError> {
        let path = self.photo_path(piece, photo);
        match self.disk.read(&path) {
            Ok(bytes) if hash_of(&bytes).as_ref() == Some(photo) => Ok(PhotoFile::Here(bytes)),
            Ok(_) => Ok(PhotoFile::NotWhole),
            Err(e) if e.kind() == ErrorKind::NotFound => Ok(PhotoFile::NotHere),
            Err(e) => Err(e).doing("read", &path),
        }
    }

    /// The photos that lie beside a piece's diary, each with its length in bytes; other files are passed over.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn photos(&self, piece: &PieceId) -> Result<Vec<(PhotoHash, u64)>, ShelfError> {
        let folder = under(&self.path, &photos_of(piece));
        let entries = match self.disk.list(&folder) {
            Err(e) if e.kind() == ErrorKind::NotFound => Vec::new(),
            other => other.doing("list", &folder)?,
        };
        let mut found: Vec<(PhotoHash, u64)> = entries
            .into_iter()
            .filter(|e| !e.is_folder)
            .filter_map(|e| {
                let name = e.name.to_str()?.strip_suffix(".jpg")?;
                Some((PhotoHash::new(name).ok()?, e.len))
            })
            .collect();
        found.sort();
        Ok(found)
    }

    /// Removes these photos of a piece and tells how many bytes that freed. Which may go is for the domain to say:
    /// [`evenwall_piece::tidying`].
    ///
    /// # Errors
    /// [`ShelfError`] where the shelf is read-only or the file system refuses; what was removed before stays removed.
    pub fn tidy_photos(
        &mut self,
        piece: &PieceId,
        photos: &[PhotoHash],
    ) -> Result<u64, ShelfError> {
        if let Some(why) = self.read_only() {
            return Err(ShelfError::ReadOnly { why });
        }
        let mut freed = 0;
        for photo in photos {
            let path = self.photo_path(piece, photo);
            let Ok(len) = self.disk.len(&path) else {
                continue;
            };
            self.disk.remove(&path).doing("remove", &path)?;
            self.durable.remove(&file_of(piece, photo));
            freed += len;
        }
        Ok(freed)
    }
}
