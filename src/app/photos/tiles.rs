//! Tiles: the photos of one thing as they are shown, their thumbnails, and one as a file to give away.

use std::path::PathBuf;

use evenwall_piece::ids::{PhotoId, PieceId};
use evenwall_piece::photo::{Photo, PhotoOn};
use evenwall_piece::piece::{Moment, Piece};

use super::job::{ThumbJob, ThumbsDone};
use crate::app::App;
use crate::numbers::Quantity;
use crate::words::dates::Dates;

/// A photo in a grid, and in the viewer.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoTile {
    /// Its id.
    pub id: String,
    /// The file of its thumbnail; empty while there is none.
    pub thumb: String,
    /// Its own file; empty where it is not here.
    pub path: String,
    /// "Wed 11 Mar, 09:12": when it was taken, else when it was added.
    pub when: String,
    /// "22 mm": the crack as measured on it; empty where it was not.
    pub length: String,
    /// "Photo not here yet", where its file is still on its way; that it is damaged; else empty.
    pub note: String,
    /// Width over height.
    pub shape: f32,
    /// The spot that matters: fractions from the top left.
    pub spot: Option<(f32, f32)>,
    /// The measured crack: fractions of both ends.
    pub crack: Option<[(f32, f32); 2]>,
}

/// A photo to be saved or shared as a plain file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoOut {
    /// The file to copy.
    pub from: PathBuf,
    /// A name that says what it is: "K07 2026-03-11 0912.jpg".
    pub name: String,
}

#[allow(clippy::cast_possible_truncation)] // pixels of a screen need no better
pub(super) fn place(spot: evenwall_piece::photo::Spot) -> (f32, f32) {
    (spot.x as f32, spot.y as f32)
}

impl App {
    /// The photos of one thing of a piece, in the order in which they were taken. Looks whether each file is there, reads
    /// none.
    #[must_use]
    pub fn photos_tiles(&self, piece: &PieceId, on: &PhotoOn, now: Moment) -> Vec<PhotoTile> {
        let Some(piece) = self.piece(piece) else {
            return Vec::new();
        };
        piece
            .photos_on(on)
            .into_iter()
            .map(|p| self.photo_tile(piece, p, now))
            .collect()
    }

    /// One photo, removed or not; `None` where there is none of this id.
    #[must_use]
    pub fn photos_tile(&self, piece: &PieceId, photo: &PhotoId, now: Moment) -> Option<PhotoTile> {
        let piece = self.piece(piece)?;
        Some(self.photo_tile(piece, piece.photo(photo)?, now))
    }

    /// The piece's portrait.
    #[must_use]
    pub fn photos_portrait(&self, piece: &PieceId, now: Moment) -> Option<PhotoTile> {
        let piece = self.piece(piece)?;
        Some(self.photo_tile(piece, piece.portrait()?, now))
    }

    fn photo_tile(&self, piece: &Piece, photo: &Photo, now: Moment) -> PhotoTile {
        let store = self.store.photos();
        let hash = &photo.note.stored;
        let here = store.is_some_and(|s| s.photo_is_here(&piece.id, hash));
        let shown = |path: Option<PathBuf>| {
            path.map_or_else(String::new, |p| p.to_string_lossy().into_owned())
        };
        let dates = Dates::new(self.words(), now.date_naive());
        let when = photo.when();
        #[allow(clippy::cast_possible_truncation)] // a layout needs no better
        let shape =
            (f64::from(photo.note.width_px.max(1)) / f64::from(photo.note.height_px.max(1))) as f32;
        let marks = photo.marks.as_ref();
        PhotoTile {
            id: photo.note.photo.to_string(),
            thumb: shown(store.and_then(|s| s.thumbnail_path(hash))),
            path: shown(
                store
                    .filter(|_| here)
                    .and_then(|s| s.photo_path(&piece.id, hash)),
            ),
            when: format!(
                "{}, {}",
                dates.day_and_month(when.date()),
                when.format("%H:%M")
            ),
            length: photo.crack_mm().map_or_else(String::new, |mm| {
                self.numbers().quantity(Quantity::FlawSize, mm).text()
            }),
            note: if !here {
                self.words().text("photos-not-here")
            } else if self.states.photos.tried.contains(hash)
                && store.is_some_and(|s| s.thumbnail_path(hash).is_none())
            {
                self.words().text("photos-damaged")
            } else {
                String::new()
            },
            shape,
            spot: marks.and_then(|m| m.spot).map(place),
            crack: marks
                .and_then(|m| m.crack)
                .map(|c| [place(c.span.from), place(c.span.to)]),
        }
    }

    /// The thumbnails that are missing of one thing's photos; `None` where none is. Deliver what comes of it by
    /// [`App::photos_thumbs_done`].
    #[must_use]
    pub fn photos_thumb_job(&self, piece: &PieceId, on: &PhotoOn) -> Option<ThumbJob> {
        let (piece, store) = (self.piece(piece)?, self.store.photos()?);
        let photos: Vec<_> = piece
            .photos_on(on)
            .into_iter()
            .map(|p| &p.note.stored)
            .filter(|hash| {
                store.thumbnail_path(hash).is_none() && store.photo_is_here(&piece.id, hash)
            })
            .filter_map(|hash| Some((hash.clone(), store.photo_path(&piece.id, hash)?)))
            .collect();
        (!photos.is_empty()).then_some(ThumbJob { photos })
    }

    /// Keeps thumbnails that were rebuilt.
    pub fn photos_thumbs_done(&mut self, done: &ThumbsDone) {
        if let Some(store) = self.store.photos_mut() {
            for (hash, jpeg) in &done.thumbnails {
                // A cache: one that is not kept is rebuilt the next time.
                store.save_thumbnail(hash, jpeg).unwrap_or_default();
            }
        }
    }

    /// A photo as a plain file to be saved or shared; `None` where it is not here.
    #[must_use]
    pub fn photos_out(&self, piece: &PieceId, photo: &PhotoId) -> Option<PhotoOut> {
        let (piece, store) = (self.piece(piece)?, self.store.photos()?);
        let photo = piece.photo(photo)?;
        let hash = &photo.note.stored;
        if !store.photo_is_here(&piece.id, hash) {
            return None;
        }
        let mark: String = piece
            .mark()
            .chars()
            .filter(|c| c.is_alphanumeric() || *c == '-')
            .collect();
        let when = photo.when().format("%Y-%m-%d %H%M");
        Some(PhotoOut {
            from: store.photo_path(&piece.id, hash)?,
            name: format!("{mark} {when}.jpg").trim_start().to_owned(),
        })
    }
}
