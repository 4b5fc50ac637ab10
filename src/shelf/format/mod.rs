//! Format: from the facts of the domain to the frozen shape of a version in a journal, and back.
//!
//! What a newer version recorded is never dropped. A fact that cannot be understood becomes `Unknown` with its whole
//! text; of a fact that is understood but has fields of a newer version, the known part counts and the rest follows at
//! the end of the line as an `Unknown` of the same kind, so that the places of the others stay as they were.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::shop::ShopFact;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use crate::line::RawLine;

pub mod v1;

/// Version of the facts that this program writes, the `v` of a line. A version that adds a fact, a field or a word to a
/// closed list counts it up.
pub const LINE_VERSION: u64 = 1;

/// With more fields of a newer version than this a fact is shown as unknown as a whole.
const MOST_NEWER_FIELDS: usize = 64;

/// Why a fact cannot be understood, or not be written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct NotUnderstood(pub String);

/// What is written of a fact.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape<'a, V> {
    /// The shape of this version.
    Known(V),
    /// The JSON text in which it was found: a newer version's.
    AsFound(&'a str),
}

/// A fact of the domain that journals can hold.
pub trait Recorded: Sized {
    /// Its shape in version 1.
    type V1: Serialize + DeserializeOwned;

    /// From the shape of version 1. Fields of a newer version inside it go to `rest`.
    ///
    /// # Errors
    /// [`NotUnderstood`] for a word or number outside the lists and ranges of this version.
    fn from_v1(v1: Self::V1, rest: &mut Vec<Self>) -> Result<Self, NotUnderstood>;

    /// To the shape of version 1, or its own text for one that was recorded by a newer version.
    ///
    /// # Errors
    /// [`NotUnderstood`] where it holds what cannot be written.
    fn to_v1(&self) -> Result<Shape<'_, Self::V1>, NotUnderstood>;

    /// A fact recorded by a newer version.
    fn unknown(kind: String, raw: String) -> Self;
}

/// Reads one fact. What of it is of a newer version goes to `rest`.
pub fn read<F: Recorded>(raw: &str, rest: &mut Vec<F>) -> F {
    if let Ok(v1) = serde_json::from_str::<F::V1>(raw) {
        return F::from_v1(v1, rest).unwrap_or_else(|_| unknown(raw));
    }
    let Ok(mut value) = serde_json::from_str::<Value>(raw) else {
        return unknown(raw);
    };
    let mut newer = Map::new();
    // Each turn takes one field away.
    for _ in 0..MOST_NEWER_FIELDS {
        match serde_json::from_value::<F::V1>(value.clone()) {
            Ok(v1) => {
                let Ok(fact) = F::from_v1(v1, rest) else {
                    return unknown(raw);
                };
                rest.push(F::unknown(
                    kind_of(&value),
                    Value::Object(newer).to_string(),
                ));
                return fact;
            }
            Err(error) => {
                let taken = unknown_field(&error.to_string())
                    .and_then(|name| take_field(&mut value, &name));
                let Some((name, field)) = taken else {
                    return unknown(raw);
                };
                newer.insert(name, field);
            }
        }
    }
    unknown(raw)
}

/// Writes one fact as JSON text in one line.
///
/// # Errors
/// [`NotUnderstood`] where it holds a number that is none.
pub fn write<F: Recorded>(fact: &F) -> Result<Box<RawValue>, NotUnderstood> {
    let written = match fact.to_v1()? {
        Shape::Known(v1) => serde_json::value::to_raw_value(&v1),
        // Through a value, so that it stands in one line.
        Shape::AsFound(raw) => {
            serde_json::from_str::<Value>(raw).and_then(|v| serde_json::value::to_raw_value(&v))
        }
    };
    written.map_err(|e| NotUnderstood(e.to_string()))
}

/// All facts of a line; fields of the line that this version does not know come last.
#[must_use]
pub fn facts<F: Recorded>(line: &RawLine) -> Vec<F> {
    let mut rest = Vec::new();
    let mut facts: Vec<F> = line
        .facts
        .iter()
        .map(|raw| read(raw.get(), &mut rest))
        .collect();
    facts.append(&mut rest);
    if !line.extra.is_empty() {
        facts.push(F::unknown(
            "line".to_owned(),
            Value::Object(line.extra.clone()).to_string(),
        ));
    }
    facts
}

fn unknown<F: Recorded>(raw: &str) -> F {
    let kind = serde_json::from_str::<Value>(raw)
        .map(|v| kind_of(&v))
        .unwrap_or_default();
    F::unknown(kind, raw.to_owned())
}

fn kind_of(value: &Value) -> String {
    value
        .get("fact")
        .and_then(Value::as_str)
        .unwrap_or_default()
        .to_owned()
}

/// The name in serde's "unknown field `name`, expected ...".
fn unknown_field(message: &str) -> Option<String> {
    message
        .strip_prefix("unknown field `")?
        .split_once('`')
        .map(|(name, _)| name.to_owned())
}

/// Takes a field away where it stands highest: in the fact itself, else in an object inside it.
fn take_field(value: &mut Value, name: &str) -> Option<(String, Value)> {
    let object = value.as_object_mut()?;
    if let Some(field) = object.shift_remove(name) {
        return Some((name.to_owned(), field));
    }
    object.iter_mut().find_map(|(outer, inner)| {
        take_field(inner, name).map(|(n, f)| (format!("{outer}.{n}"), f))
    })
}

impl Recorded for PieceFact {
    type V1 = v1::piece::PieceFactV1;

    fn from_v1(v1: Self::V1, rest: &mut Vec<Self>) -> Result<Self, NotUnderstood> {
        v1::piece_read::fact(v1, rest)
    }

    fn to_v1(&self) -> Result<Shape<'_, Self::V1>, NotUnderstood> {
        v1::piece_write::fact(self)
    }

    fn unknown(kind: String, raw: String) -> Self {
        Self::Unknown { kind, raw }
    }
}

impl Recorded for ShopFact {
    type V1 = v1::shop::ShopFactV1;

    fn from_v1(v1: Self::V1, _rest: &mut Vec<Self>) -> Result<Self, NotUnderstood> {
        v1::shop::read(v1)
    }

    fn to_v1(&self) -> Result<Shape<'_, Self::V1>, NotUnderstood> {
        Ok(v1::shop::write(self))
    }

    fn unknown(kind: String, raw: String) -> Self {
        Self::Unknown { kind, raw }
    }
}
