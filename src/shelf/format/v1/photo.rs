//! Photos of version 1: what one belongs to, and what is drawn on it. Frozen.

use chrono::{DateTime, NaiveDateTime};
use evenwall_piece::ids::{EntryId, PhotoId};
use evenwall_piece::photo::{Measured, PhotoHash, PhotoOn, PhotoTaken, Scale, Span, Spot};
use serde::{Deserialize, Serialize};

use super::{EntryV1, NotUnderstood, Number, flaw_id, line_id, measure, not, parts};

/// What a photo belongs to, as [`PhotoOn`] of the same name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "thing", rename_all = "snake_case", deny_unknown_fields)]
#[allow(missing_docs)] // The fields mirror the domain's, which are described there.
pub enum PhotoOnV1 {
    Flaw { flaw: String },
    Entry { entry: EntryV1 },
    Portrait {},
    BagCheck { entry: EntryV1 },
    Finished {},
}

/// A place: fractions of the width from the left and of the height from the top.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SpotV1(pub Number, pub Number);

/// A length that is known.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScaleV1 {
    /// The first tap.
    pub from: SpotV1,
    /// The second.
    pub to: SpotV1,
    /// How long it is.
    pub known_mm: Number,
    /// What was typed.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub known_typed: String,
}

/// A length that was measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredV1 {
    /// The first tap.
    pub from: SpotV1,
    /// The second.
    pub to: SpotV1,
    /// How long it is.
    pub length_mm: Number,
}

impl From<Spot> for SpotV1 {
    fn from(spot: Spot) -> Self {
        Self(Number(spot.x), Number(spot.y))
    }
}

impl From<SpotV1> for Spot {
    fn from(spot: SpotV1) -> Self {
        Self {
            x: spot.0.0,
            y: spot.1.0,
        }
    }
}

impl From<&Scale> for ScaleV1 {
    fn from(scale: &Scale) -> Self {
        let (known_mm, known_typed) = parts(&scale.known_mm);
        Self {
            from: scale.span.from.into(),
            to: scale.span.to.into(),
            known_mm,
            known_typed,
        }
    }
}

impl From<ScaleV1> for Scale {
    fn from(scale: ScaleV1) -> Self {
        let span = Span {
            from: scale.from.into(),
            to: scale.to.into(),
        };
        Self {
            span,
            known_mm: measure(scale.known_mm, scale.known_typed),
        }
    }
}

impl From<Measured> for MeasuredV1 {
    fn from(m: Measured) -> Self {
        Self {
            from: m.span.from.into(),
            to: m.span.to.into(),
            length_mm: Number(m.length_mm),
        }
    }
}

impl From<MeasuredV1> for Measured {
    fn from(m: MeasuredV1) -> Self {
        let span = Span {
            from: m.from.into(),
            to: m.to.into(),
        };
        Self {
            span,
            length_mm: m.length_mm.0,
        }
    }
}

impl From<&PhotoOn> for PhotoOnV1 {
    fn from(on: &PhotoOn) -> Self {
        match on {
            PhotoOn::Flaw(flaw) => Self::Flaw {
                flaw: flaw.to_string(),
            },
            PhotoOn::Entry(entry) => Self::Entry {
                entry: entry.into(),
            },
            PhotoOn::Portrait => Self::Portrait {},
            PhotoOn::BagCheck(entry) => Self::BagCheck {
                entry: entry.into(),
            },
            PhotoOn::Finished => Self::Finished {},
        }
    }
}

pub(super) fn read_on(on: PhotoOnV1) -> Result<PhotoOn, NotUnderstood> {
    let of = |entry: EntryV1| {
        Ok(EntryId {
            line: line_id(&entry.device, entry.n)?,
            part: entry.part,
        })
    };
    Ok(match on {
        PhotoOnV1::Flaw { flaw } => PhotoOn::Flaw(flaw_id(&flaw)?),
        PhotoOnV1::Entry { entry } => PhotoOn::Entry(of(entry)?),
        PhotoOnV1::Portrait {} => PhotoOn::Portrait,
        PhotoOnV1::BagCheck { entry } => PhotoOn::BagCheck(of(entry)?),
        PhotoOnV1::Finished {} => PhotoOn::Finished,
    })
}

pub(super) fn photo_id(text: &str) -> Result<PhotoId, NotUnderstood> {
    PhotoId::new(text).map_err(|e| NotUnderstood(e.to_string()))
}

pub(super) fn hash(text: &str) -> Result<PhotoHash, NotUnderstood> {
    PhotoHash::new(text).map_err(|e| NotUnderstood(e.to_string()))
}

const LOCAL: &str = "%Y-%m-%dT%H:%M:%S%.f";

pub(super) fn write_taken(taken: PhotoTaken) -> String {
    let local = taken.local.format(LOCAL);
    taken
        .offset
        .map_or_else(|| local.to_string(), |offset| format!("{local}{offset}"))
}

pub(super) fn read_taken(text: &str) -> Result<PhotoTaken, NotUnderstood> {
    if let Ok(with_offset) = DateTime::parse_from_rfc3339(text) {
        let (local, offset) = (with_offset.naive_local(), Some(*with_offset.offset()));
        return Ok(PhotoTaken { local, offset });
    }
    let local = NaiveDateTime::parse_from_str(text, LOCAL).map_err(|_| not("moment", text))?;
    Ok(PhotoTaken {
        local,
        offset: None,
    })
}
