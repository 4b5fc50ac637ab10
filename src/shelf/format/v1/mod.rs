//! Version 1: the shape of facts in journals. Frozen: once released, these files are never edited; a change is a new
//! version beside them.
//!
//! A fact is an object with its kind in `fact`. Field names carry the unit (`wall_mm`, `mass_g`, `rh_pct`); what was
//! typed stands beside what was understood (`wall_typed`). Closed lists are stored by key, days as `2026-03-14`, moments
//! as RFC 3339 with offset. A field that is not there was not said.

use std::fmt;

use chrono::NaiveDate;
use evenwall_piece::fact::{Measure, StationRef};
use evenwall_piece::ids::{DeviceId, EntryId, FlawId, LineId};
use serde::de::{self, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::NotUnderstood;

pub mod photo;
pub mod piece;
pub(super) mod piece_read;
pub(super) mod piece_write;
pub mod shop;

/// A finite number. One that is not is refused, not written as something else.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(transparent)]
pub struct Number(pub f64);

impl Serialize for Number {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if self.0.is_finite() {
            serializer.serialize_f64(self.0)
        } else {
            Err(serde::ser::Error::custom(
                "a number is missing or too large",
            ))
        }
    }
}

/// A station: its number counted from the mouth, or `"floor"`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StationV1 {
    /// 1, 2, 3... from the mouth.
    Wall(u8),
    /// The floor.
    Floor,
}

impl Serialize for StationV1 {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Wall(number) => serializer.serialize_u8(*number),
            Self::Floor => serializer.serialize_str("floor"),
        }
    }
}

impl<'de> Deserialize<'de> for StationV1 {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Station;
        impl Visitor<'_> for Station {
            type Value = StationV1;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("the number of a station or \"floor\"")
            }

            fn visit_u64<E: de::Error>(self, number: u64) -> Result<StationV1, E> {
                u8::try_from(number).map(StationV1::Wall).map_err(E::custom)
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<StationV1, E> {
                if text == "floor" {
                    Ok(StationV1::Floor)
                } else {
                    Err(E::invalid_value(de::Unexpected::Str(text), &self))
                }
            }
        }
        deserializer.deserialize_any(Station)
    }
}

impl From<StationRef> for StationV1 {
    fn from(station: StationRef) -> Self {
        match station {
            StationRef::Wall(number) => Self::Wall(number),
            StationRef::Floor => Self::Floor,
        }
    }
}

impl From<StationV1> for StationRef {
    fn from(station: StationV1) -> Self {
        match station {
            StationV1::Wall(number) => Self::Wall(number),
            StationV1::Floor => Self::Floor,
        }
    }
}

/// A line of a journal in the same folder.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LineV1 {
    /// Who wrote it.
    pub device: String,
    /// Its number in that device's file.
    pub n: u64,
}

impl From<&LineId> for LineV1 {
    fn from(id: &LineId) -> Self {
        Self {
            device: id.device.to_string(),
            n: id.n,
        }
    }
}

/// One fact of a line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EntryV1 {
    /// Who wrote it.
    pub device: String,
    /// The line's number in that device's file.
    pub n: u64,
    /// The fact's place in the line, counted from 0.
    pub part: u16,
}

impl From<&EntryId> for EntryV1 {
    fn from(entry: &EntryId) -> Self {
        Self {
            device: entry.line.device.to_string(),
            n: entry.line.n,
            part: entry.part,
        }
    }
}

fn not(what: &str, found: &str) -> NotUnderstood {
    NotUnderstood(format!("'{found}' is no {what} of this version"))
}

fn line_id(device: &str, n: u64) -> Result<LineId, NotUnderstood> {
    let device = DeviceId::new(device).map_err(|e| NotUnderstood(e.to_string()))?;
    Ok(LineId { device, n })
}

fn flaw_id(text: &str) -> Result<FlawId, NotUnderstood> {
    FlawId::new(text).map_err(|e| NotUnderstood(e.to_string()))
}

fn key<T>(
    what: &str,
    text: &str,
    from_key: impl Fn(&str) -> Option<T>,
) -> Result<T, NotUnderstood> {
    from_key(text).ok_or_else(|| not(what, text))
}

fn key_if<T>(
    what: &str,
    text: Option<String>,
    from_key: impl Fn(&str) -> Option<T>,
) -> Result<Option<T>, NotUnderstood> {
    text.map(|text| key(what, &text, from_key)).transpose()
}

fn day(text: &str) -> Result<NaiveDate, NotUnderstood> {
    text.parse().map_err(|_| not("day", text))
}

fn measure(value: Number, typed: String) -> Measure {
    Measure {
        value: value.0,
        typed,
    }
}

fn measure_if(value: Option<Number>, typed: String) -> Result<Option<Measure>, NotUnderstood> {
    match value {
        Some(value) => Ok(Some(measure(value, typed))),
        None if typed.is_empty() => Ok(None),
        None => Err(NotUnderstood(format!(
            "'{typed}' was typed, but no number stands beside it"
        ))),
    }
}

fn parts(measure: &Measure) -> (Number, String) {
    (Number(measure.value), measure.typed.clone())
}

fn parts_if(measure: Option<&Measure>) -> (Option<Number>, String) {
    measure.map_or((None, String::new()), |m| {
        (Some(Number(m.value)), m.typed.clone())
    })
}
