//! Photo: a picture of a piece, what it shows, and what was measured on it.
//!
//! The diary holds the hash of the stored bytes, under which the file lies beside it, and that of the file it came from,
//! so that the same picture is noticed twice. The file itself may still be arriving; nothing here asks.

use std::collections::BTreeSet;
use std::fmt;

use chrono::{FixedOffset, NaiveDateTime};

use crate::fact::Measure;
use crate::ids::{EntryId, FlawId, PhotoId};
use crate::piece::{Moment, Piece};
use crate::stage::Stage;

/// A text that cannot be a hash.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("'{found}' cannot be the hash of a photo: 64 of 0-9 and a-f are allowed")]
pub struct HashError {
    /// The text as it was found.
    pub found: String,
}

/// SHA-256 of a file, 64 lower-case hex digits.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct PhotoHash(String);

impl PhotoHash {
    /// Takes 64 of `0-9` and `a-f`.
    ///
    /// # Errors
    /// [`HashError`] for anything else.
    pub fn new(text: &str) -> Result<Self, HashError> {
        let hex = |b: u8| b.is_ascii_digit() || (b'a'..=b'f').contains(&b);
        if text.len() == 64 && text.bytes().all(hex) {
            Ok(Self(text.to_owned()))
        } else {
            Err(HashError {
                found: text.chars().take(80).collect(),
            })
        }
    }

    /// The digits.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for PhotoHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// What a photo belongs to.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum PhotoOn {
    /// A flaw.
    Flaw(FlawId),
    /// Any entry of the diary.
    Entry(EntryId),
    /// The piece: its portrait is the last of these.
    Portrait,
    /// A look at the bag.
    BagCheck(EntryId),
    /// The finished record.
    Finished,
}

/// When a picture was taken, by the camera's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PhotoTaken {
    /// What the camera's clock said.
    pub local: NaiveDateTime,
    /// East of UTC, where the camera wrote it.
    pub offset: Option<FixedOffset>,
}

/// A photo as it was added.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoNote {
    /// Its id within the piece.
    pub photo: PhotoId,
    /// Hash of the stored bytes: the name of its file.
    pub stored: PhotoHash,
    /// Hash of the file it came from.
    pub source: PhotoHash,
    /// When it was taken, where the file said so.
    pub taken: Option<PhotoTaken>,
    /// Width of what is stored, pixels.
    pub width_px: u32,
    /// Height of what is stored, pixels.
    pub height_px: u32,
    /// What it belongs to.
    pub on: PhotoOn,
}

/// A place on a photo, as fractions of its width and height, 0 to 1 from the top left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// From the left edge, 0 to 1.
    pub x: f64,
    /// From the top edge, 0 to 1.
    pub y: f64,
}

impl Spot {
    /// True where it lies on the photo.
    #[must_use]
    pub fn is_on(self) -> bool {
        let within = |n: f64| (0.0..=1.0).contains(&n);
        within(self.x) && within(self.y)
    }
}

/// A line between two taps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// The first tap.
    pub from: Spot,
    /// The second.
    pub to: Spot,
}

impl Span {
    /// Its length on a photo of this size, pixels.
    #[must_use]
    pub fn px(self, width_px: u32, height_px: u32) -> f64 {
        let across = (self.to.x - self.from.x) * f64::from(width_px);
        let down = (self.to.y - self.from.y) * f64::from(height_px);
        across.hypot(down)
    }
}

/// A length that is known, laid on a photo: a rule, the blade of a tool, the diameter.
#[derive(Debug, Clone, PartialEq)]
pub struct Scale {
    /// Where it lies.
    pub span: Span,
    /// How long it is, mm.
    pub known_mm: Measure,
}

/// A length measured on a photo by its scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// Where it lies.
    pub span: Span,
    /// How long it is, mm, by the scale as it was then.
    pub length_mm: f64,
}

/// What is drawn on a photo; set as a whole, so that what is not there was cleared.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoMarks {
    /// Which photo.
    pub photo: PhotoId,
    /// The spot that matters.
    pub spot: Option<Spot>,
    /// The length that is known.
    pub scale: Option<Scale>,
    /// The crack.
    pub crack: Option<Measured>,
}

/// Taps closer than this cannot carry a scale, pixels: a finger's error would be most of it. Common practice, no source.
pub const SHORTEST_SCALE_PX: f64 = 20.0;

/// The length of a line on a photo by its scale, mm: as its pixels to those of the known length. Exact where both lie in
/// one plane square to the camera, as on a rule laid along the crack; `None` where the scale is too short to carry it.
#[must_use]
pub fn length_by_scale(scale: &Scale, span: Span, width_px: u32, height_px: u32) -> Option<f64> {
    let known_px = scale.span.px(width_px, height_px);
    let length = span.px(width_px, height_px) * scale.known_mm.value / known_px;
    (known_px >= SHORTEST_SCALE_PX && scale.known_mm.value > 0.0 && length.is_finite())
        .then_some(length)
}

/// A photo of a piece, with what was drawn on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Photo {
    /// The entry that added it.
    pub entry: EntryId,
    /// When it was added.
    pub at: Moment,
    /// The stage in which it was added.
    pub stage: Stage,
    /// How it was added.
    pub note: PhotoNote,
    /// What is drawn on it.
    pub marks: Option<PhotoMarks>,
    /// Since when it is removed; it can be brought back.
    pub removed: Option<Moment>,
}

impl Photo {
    /// When it was taken, else when it was added, in local time: photos are shown in this order.
    #[must_use]
    pub fn when(&self) -> NaiveDateTime {
        let added = self.at.naive_local();
        self.note.taken.map_or(added, |t| t.local)
    }

    /// The crack as measured on it, mm.
    #[must_use]
    pub fn crack_mm(&self) -> Option<f64> {
        Some(self.marks.as_ref()?.crack?.length_mm)
    }
}

impl Piece {
    /// A photo by its id, removed or not.
    #[must_use]
    pub fn photo(&self, id: &PhotoId) -> Option<&Photo> {
        self.photos.iter().find(|p| p.note.photo == *id)
    }

    /// The photos of one thing in the order in which they were taken, each picture once, without those removed.
    #[must_use]
    pub fn photos_on(&self, on: &PhotoOn) -> Vec<&Photo> {
        let mut seen = BTreeSet::new();
        let mut found: Vec<&Photo> = self
            .photos
            .iter()
            .filter(|p| p.removed.is_none() && p.note.on == *on)
            .filter(|p| seen.insert(&p.note.stored))
            .collect();
        found.sort_by_key(|p| p.when());
        found
    }

    /// The last portrait.
    #[must_use]
    pub fn portrait(&self) -> Option<&Photo> {
        self.photos_on(&PhotoOn::Portrait).pop()
    }

    /// The same picture on the same thing, added before and not removed.
    #[must_use]
    pub fn same_photo(&self, source: &PhotoHash, on: &PhotoOn) -> Option<&Photo> {
        self.photos
            .iter()
            .find(|p| p.removed.is_none() && p.note.source == *source && p.note.on == *on)
    }
}
