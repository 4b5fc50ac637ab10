//! Unfinished: the photos that this device is adding, so that a start after a crash can take away those that no line
//! names. Kept in the device's own folder; what another device adds is never touched.

use std::path::PathBuf;

use evenwall_piece::ids::{PieceId, Scope};
use evenwall_piece::photo::PhotoHash;
use serde::{Deserialize, Serialize};

use crate::disk::beside;
use crate::error::{Doing, ShelfError};
use crate::folder::journal_of;
use crate::notice::Notice;
use crate::photos::file_of;
use crate::shelf::Shelf;

#[derive(Debug, Default, Serialize, Deserialize)]
struct Unfinished {
    piece: String,
    photos: Vec<String>,
}

impl Shelf {
    fn unfinished_file(&self) -> Option<PathBuf> {
        let writer = self.writer.as_ref().ok()?;
        Some(writer.device.folder().join("photos.json"))
    }

    /// Notes, durably, which photos are about to be written.
    pub(crate) fn begin_photos<'a>(
        &self,
        piece: &PieceId,
        photos: impl Iterator<Item = &'a PhotoHash>,
    ) -> Result<(), ShelfError> {
        let note = Unfinished {
            piece: piece.to_string(),
            photos: photos.map(ToString::to_string).collect(),
        };
        let (false, Some(file)) = (note.photos.is_empty(), self.unfinished_file()) else {
            return Ok(());
        };
        let bytes = serde_json::to_vec(&note)
            .map_err(std::io::Error::from)
            .doing("write", &file)?;
        self.disk.replace(&file, &bytes).doing("write", &file)
    }

    /// The line that names them stands: nothing is unfinished. Should this be lost, the next start finds the line.
    pub(crate) fn photos_are_recorded(&self) {
        if let Some(file) = self.unfinished_file() {
            // Refused, the note stays, and the next start finds the line.
            self.disk
                .write(&file, b"{\"piece\":\"\",\"photos\":[]}")
                .unwrap_or_default();
        }
    }

    /// Takes a photo away that no line names; a failure leaves it to the next start.
    fn forget_photo(&mut self, piece: &PieceId, photo: &PhotoHash) {
        let path = self.photo_path(piece, photo);
        self.durable.remove(&file_of(piece, photo));
        for file in [beside(&path), path] {
            self.disk.remove(&file).unwrap_or_default();
        }
    }

    /// Where lines of another device are missing or cannot be read, one that names the same photo may be among them.
    fn others_may_name_it(&self, scope: &Scope) -> bool {
        let own = self.device().map(|device| journal_of(scope, device));
        self.notices_of(scope).iter().any(|notice| match notice {
            Notice::Line { file, .. } => Some(file) != own.as_ref(),
            _ => true,
        })
    }

    /// Takes away what a crash left of photos being added. The note stays: a crash right after this must not bring the
    /// files back unnoted.
    pub(crate) fn forget_unfinished_photos(&mut self) -> Result<(), ShelfError> {
        let bytes = self
            .unfinished_file()
            .and_then(|file| self.disk.read(&file).ok());
        let Some(note) = bytes.and_then(|b| serde_json::from_slice::<Unfinished>(&b).ok()) else {
            return Ok(());
        };
        let Ok(piece) = PieceId::new(&note.piece) else {
            return Ok(());
        };
        let photos: Vec<PhotoHash> = note
            .photos
            .iter()
            .filter_map(|p| PhotoHash::new(p).ok())
            .collect();
        self.forget_unnamed_photos(&piece, &photos)
    }

    /// Takes those of these photos away that no line names, and all their side files.
    pub(crate) fn forget_unnamed_photos(
        &mut self,
        piece: &PieceId,
        photos: &[PhotoHash],
    ) -> Result<(), ShelfError> {
        for photo in photos {
            let path = self.photo_path(piece, photo);
            self.disk.remove(&beside(&path)).unwrap_or_default();
            if !matches!(self.disk.exists(&path), Ok(true)) {
                continue;
            }
            let scope = Scope::Piece(piece.clone());
            let lines = self.load(&scope)?;
            let mut facts = lines.iter().flat_map(|l| &l.facts);
            let named = facts.any(|f| f.get().contains(photo.as_str()));
            if !named && !self.others_may_name_it(&scope) {
                self.forget_photo(piece, photo);
            }
        }
        Ok(())
    }
}
