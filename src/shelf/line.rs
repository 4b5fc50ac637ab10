//! Raw line: one line of a journal with its facts still as text.
//!
//! `{"device":"…","n":1,"seq":1,"at":"…","noted_at":"…","v":1,"facts":[…]}`: one action. Fields that this version does
//! not know are kept beside; the facts are kept letter for letter.

use std::borrow::Cow;
use std::fmt;

use chrono::{DateTime, FixedOffset, SecondsFormat};
use evenwall_piece::ids::{DeviceId, LineId};
use serde::de::{self, IgnoredAny, MapAccess, Visitor};
use serde::ser::{Serialize, SerializeMap, Serializer};
use serde::{Deserialize, Deserializer};
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use crate::notice::Unreadable;

/// The longest line in bytes, without its newline. A note of 10,000 characters fits many times over.
pub const LONGEST_LINE: usize = 1 << 20;

/// The largest `n` and `seq`: whole numbers up to here survive every JSON reader.
pub const LARGEST_NUMBER: u64 = (1 << 53) - 1;

/// One line of a journal: one action with one or more facts.
#[derive(Debug, Clone)]
pub struct RawLine {
    /// Who wrote it and its count in that file.
    pub id: LineId,
    /// 1 + the highest `seq` that the writer had read in the folder.
    pub seq: u64,
    /// When it happened.
    pub at: DateTime<FixedOffset>,
    /// When it was written down.
    pub noted_at: DateTime<FixedOffset>,
    /// Version of the facts.
    pub v: u64,
    /// The facts, each as its JSON text.
    pub facts: Vec<Box<RawValue>>,
    /// Fields of the line that this version does not know.
    pub extra: Map<String, Value>,
}

impl RawLine {
    /// Reads one line of a journal, without its newline.
    ///
    /// # Errors
    /// [`Unreadable`] with the reason; never panics, whatever the bytes are.
    pub fn parse(bytes: &[u8]) -> Result<Self, Unreadable> {
        if bytes.len() > LONGEST_LINE {
            return Err(Unreadable::TooLong {
                found: bytes.len(),
                allowed: LONGEST_LINE,
            });
        }
        let text = std::str::from_utf8(bytes).map_err(|_| Unreadable::Encoding)?;
        serde_json::from_str(text).map_err(|e| Unreadable::NotALine(e.to_string()))
    }

    /// The line as it is written, with its newline.
    ///
    /// # Errors
    /// Only where a fact could not be written as JSON, which a fact read or made as JSON always can.
    pub fn to_bytes(&self) -> serde_json::Result<Vec<u8>> {
        let mut bytes = serde_json::to_vec(self)?;
        bytes.push(b'\n');
        Ok(bytes)
    }
}

impl PartialEq for RawLine {
    fn eq(&self, other: &Self) -> bool {
        let facts = |l: &Self| {
            l.facts
                .iter()
                .map(|f| f.get().to_owned())
                .collect::<Vec<_>>()
        };
        let head = |l: &Self| {
            (
                l.id.clone(),
                l.seq,
                l.at,
                l.at.offset().local_minus_utc(),
                l.noted_at,
                l.v,
            )
        };
        head(self) == head(other) && facts(self) == facts(other) && self.extra == other.extra
    }
}

impl Serialize for RawLine {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("device", self.id.device.as_str())?;
        map.serialize_entry("n", &self.id.n)?;
        map.serialize_entry("seq", &self.seq)?;
        map.serialize_entry("at", &written(self.at))?;
        map.serialize_entry("noted_at", &written(self.noted_at))?;
        map.serialize_entry("v", &self.v)?;
        map.serialize_entry("facts", &self.facts)?;
        for (key, value) in &self.extra {
            map.serialize_entry(key, value)?;
        }
        map.end()
    }
}

/// A moment as journals hold it: RFC 3339 with its offset, fractions of a second where there are any.
pub(crate) fn written(at: DateTime<FixedOffset>) -> String {
    at.to_rfc3339_opts(SecondsFormat::AutoSi, false)
}

/// A moment as journals hold it, read.
pub(crate) fn moment(text: &str) -> Result<DateTime<FixedOffset>, String> {
    DateTime::parse_from_rfc3339(text)
        .map_err(|e| format!("'{text}' is no time with an offset: {e}"))
}

impl<'de> Deserialize<'de> for RawLine {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(LineVisitor)
    }
}

struct LineVisitor;

/// Takes a field that may come only once.
fn once<'de, A: MapAccess<'de>, T: Deserialize<'de>>(
    map: &mut A,
    place: &mut Option<T>,
    name: &'static str,
) -> Result<(), A::Error> {
    if place.is_some() {
        map.next_value::<IgnoredAny>()?;
        return Err(de::Error::duplicate_field(name));
    }
    *place = Some(map.next_value()?);
    Ok(())
}

fn have<T, E: de::Error>(place: Option<T>, name: &'static str) -> Result<T, E> {
    place.ok_or_else(|| E::missing_field(name))
}

fn count<E: de::Error>(place: Option<u64>, name: &'static str) -> Result<u64, E> {
    let number = have(place, name)?;
    if (1..=LARGEST_NUMBER).contains(&number) {
        Ok(number)
    } else {
        Err(E::custom(format_args!(
            "{name} is {number}, 1 to {LARGEST_NUMBER} are allowed"
        )))
    }
}

impl<'de> Visitor<'de> for LineVisitor {
    type Value = RawLine;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a line of a journal")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<RawLine, A::Error> {
        let (mut device, mut at, mut noted_at) = (
            None::<Cow<'de, str>>,
            None::<Cow<'de, str>>,
            None::<Cow<'de, str>>,
        );
        let (mut n, mut seq, mut v) = (None, None, None);
        let mut facts = None;
        let mut extra = Map::new();
        while let Some(key) = map.next_key::<Cow<'de, str>>()? {
            match key.as_ref() {
                "device" => once(&mut map, &mut device, "device")?,
                "n" => once(&mut map, &mut n, "n")?,
                "seq" => once(&mut map, &mut seq, "seq")?,
                "at" => once(&mut map, &mut at, "at")?,
                "noted_at" => once(&mut map, &mut noted_at, "noted_at")?,
                "v" => once(&mut map, &mut v, "v")?,
                "facts" => once(&mut map, &mut facts, "facts")?,
                _ => {
                    let value = map.next_value()?;
                    extra.insert(key.into_owned(), value);
                }
            }
        }
        let device = DeviceId::new(&have(device, "device")?).map_err(de::Error::custom)?;
        let time = |text: Option<Cow<'de, str>>, name| {
            moment(&have(text, name)?).map_err(de::Error::custom)
        };
        Ok(RawLine {
            id: LineId {
                device,
                n: count(n, "n")?,
            },
            seq: count(seq, "seq")?,
            at: time(at, "at")?,
            noted_at: time(noted_at, "noted_at")?,
            v: have(v, "v")?,
            facts: have(facts, "facts")?,
            extra,
        })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    const LINE: &str = r#"{"device":"ab","n":3,"seq":9,"at":"2026-03-29T01:30:00+01:00","noted_at":"2026-03-29T03:00:00+02:00","v":1,"facts":[{"fact":"note","text":"a\nb","x":1.50}],"later":{"a":[1]}}"#;

    #[test]
    fn a_line_is_written_as_it_was_read_to_the_letter() {
        let line = RawLine::parse(LINE.as_bytes()).unwrap();
        assert_eq!(line.id.n, 3);
        assert_eq!(
            line.facts[0].get(),
            r#"{"fact":"note","text":"a\nb","x":1.50}"#
        );
        assert_eq!(line.extra["later"]["a"][0], 1);
        assert_eq!(
            String::from_utf8(line.to_bytes().unwrap()).unwrap(),
            format!("{LINE}\n")
        );
    }

    #[test]
    fn what_is_no_line_is_refused_with_a_reason() {
        let refused = |from: &str, to: &str| {
            let text = LINE.replace(from, to);
            assert_ne!(text, LINE);
            RawLine::parse(text.as_bytes()).unwrap_err().to_string()
        };
        assert!(refused("\"n\":3", "\"n\":0").contains("n is 0"));
        assert!(refused("\"seq\":9", "\"seq\":18446744073709551615").contains("allowed"));
        assert!(refused("\"seq\":9,", "").contains("missing field `seq`"));
        assert!(refused("\"n\":3", "\"n\":3,\"n\":4").contains("duplicate field `n`"));
        assert!(refused("2026-03-29T01:30:00+01:00", "yesterday").contains("yesterday"));
        assert!(refused("\"device\":\"ab\"", "\"device\":\"../AB\"").contains("cannot be an id"));
        assert_eq!(
            RawLine::parse(b"\xff\xfe{").unwrap_err(),
            Unreadable::Encoding
        );
        let long = vec![b' '; LONGEST_LINE + 1];
        assert!(matches!(
            RawLine::parse(&long),
            Err(Unreadable::TooLong { .. })
        ));
    }
}
