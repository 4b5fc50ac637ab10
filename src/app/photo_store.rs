//! Photo store: what the app asks of the place where photos lie, beside [`crate::store::Store`].

use std::path::PathBuf;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::photo::PhotoHash;
use evenwall_piece::piece::Moment;

use crate::store::{MemoryStore, Store, StoreError};

/// A place where photos are kept beside the diaries, and their thumbnails outside of the shelf. Nothing here is asked
/// when a shelf is opened.
pub trait PhotoStore {
    /// Appends one action to the diary of a piece together with the photos that it names: JPEG bytes, each kept once
    /// under its hash. On disk, synced, before this returns; where it fails, neither line nor photos stay.
    ///
    /// # Errors
    /// [`StoreError`] where it is not certain that all was kept.
    fn append_with_photos(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
        photos: &[Vec<u8>],
    ) -> Result<Line<PieceFact>, StoreError>;

    /// True where a file lies where the photo belongs; false while it is still on its way from another device.
    fn photo_is_here(&self, piece: &PieceId, photo: &PhotoHash) -> bool;

    /// Where the photo's file belongs; `None` where photos are no files.
    fn photo_path(&self, piece: &PieceId, photo: &PhotoHash) -> Option<PathBuf>;

    /// The bytes of a photo; `None` where it has not arrived as a whole.
    ///
    /// # Errors
    /// [`StoreError`] where it cannot be read.
    fn photo_bytes(
        &self,
        piece: &PieceId,
        photo: &PhotoHash,
    ) -> Result<Option<Vec<u8>>, StoreError>;

    /// Where the thumbnail lies, where there is one.
    fn thumbnail_path(&self, photo: &PhotoHash) -> Option<PathBuf>;

    /// Keeps a thumbnail. It can be lost at any time and is rebuilt then.
    ///
    /// # Errors
    /// [`StoreError`] where it was not kept.
    fn save_thumbnail(&mut self, photo: &PhotoHash, jpeg: &[u8]) -> Result<(), StoreError>;

    /// How many bytes of these photos lie beside the piece's diary.
    ///
    /// # Errors
    /// [`StoreError`] where that cannot be told.
    fn photos_len(&self, piece: &PieceId, photos: &[PhotoHash]) -> Result<u64, StoreError>;

    /// Removes these photos and tells how many bytes that freed.
    ///
    /// # Errors
    /// [`StoreError`] where not all of them went.
    fn tidy_photos(&mut self, piece: &PieceId, photos: &[PhotoHash]) -> Result<u64, StoreError>;
}

impl PhotoStore for MemoryStore {
    fn append_with_photos(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
        photos: &[Vec<u8>],
    ) -> Result<Line<PieceFact>, StoreError> {
        let line = self.append_piece(piece, at, noted_at, facts)?;
        for jpeg in photos {
            let hash = evenwall_shelf::photos::hash_of(jpeg);
            let hash = hash.ok_or_else(|| StoreError("The photo has no hash.".into()))?;
            self.photos.insert((piece.clone(), hash), jpeg.clone());
        }
        Ok(line)
    }

    fn photo_is_here(&self, piece: &PieceId, photo: &PhotoHash) -> bool {
        self.photos.contains_key(&(piece.clone(), photo.clone()))
    }

    fn photo_path(&self, _piece: &PieceId, _photo: &PhotoHash) -> Option<PathBuf> {
        None
    }

    fn photo_bytes(
        &self,
        piece: &PieceId,
        photo: &PhotoHash,
    ) -> Result<Option<Vec<u8>>, StoreError> {
        Ok(self.photos.get(&(piece.clone(), photo.clone())).cloned())
    }

    fn thumbnail_path(&self, _photo: &PhotoHash) -> Option<PathBuf> {
        None
    }

    fn save_thumbnail(&mut self, _photo: &PhotoHash, _jpeg: &[u8]) -> Result<(), StoreError> {
        Err(StoreError("Memory keeps no thumbnails.".into()))
    }

    fn photos_len(&self, piece: &PieceId, photos: &[PhotoHash]) -> Result<u64, StoreError> {
        let len = |photo: &PhotoHash| {
            self.photos
                .get(&(piece.clone(), photo.clone()))
                .map_or(0, Vec::len)
        };
        Ok(photos.iter().map(|p| len(p) as u64).sum())
    }

    fn tidy_photos(&mut self, piece: &PieceId, photos: &[PhotoHash]) -> Result<u64, StoreError> {
        let freed = self.photos_len(piece, photos)?;
        self.photos
            .retain(|(of, hash), _| of != piece || !photos.contains(hash));
        Ok(freed)
    }
}
