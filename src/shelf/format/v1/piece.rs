//! Piece facts of version 1. Frozen.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::photo::{MeasuredV1, PhotoOnV1, ScaleV1, SpotV1};
use super::{EntryV1, LineV1, Number, StationV1};

fn is_false(value: &bool) -> bool {
    !value
}

/// One of several readings round a dried section.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoundReadingV1 {
    /// From the pencil line, clockwise as seen from the mouth, degrees.
    pub turn_deg: Number,
    /// The diameter there, or the distance from the centre mark.
    pub mm: Number,
    /// What was typed.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub typed: String,
}

/// One fact of a piece's diary, as [`evenwall_piece::fact::PieceFact`] of the same name.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "fact", rename_all = "snake_case", deny_unknown_fields)]
#[allow(missing_docs)] // The fields mirror the domain's, which are described there.
pub enum PieceFactV1 {
    Created {},
    /// A detail: a length with what was typed, or a text; neither clears it.
    Detail {
        field: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        length_mm: Option<Number>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        length_typed: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        text: Option<String>,
    },
    StageMoved {
        stage: String,
    },
    MethodChosen {
        method: String,
    },
    HalfTurned {},
    Resumed {},
    Paused {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        until: Option<String>,
    },
    Unpaused {},
    Ticked {
        line: String,
        text: String,
        on: bool,
    },
    Stations {
        count: u8,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        depths_mm: Vec<Number>,
    },
    Reading {
        station: StationV1,
        /// 1 to 12.
        clock: u8,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        wall_mm: Option<Number>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        wall_typed: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feel: Option<String>,
        taken: String,
    },
    OutsideDiameter {
        station: u8,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        diameter_mm: Option<Number>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        diameter_typed: String,
    },
    FlawFound {
        flaw: String,
        kind: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        station: Option<StationV1>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        clock: Option<u8>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        size_mm: Option<Number>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        size_typed: String,
        #[serde(default, skip_serializing_if = "is_false")]
        through: bool,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    FlawTreated {
        flaw: String,
        treatment: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        face: Option<String>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        goes: Option<u8>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        look_again: Option<String>,
    },
    FlawLooked {
        flaw: String,
        change: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        size_mm: Option<Number>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        size_typed: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        look_again: Option<String>,
    },
    Look {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feel: Option<String>,
        #[serde(default, skip_serializing_if = "is_false")]
        mould: bool,
        #[serde(default, skip_serializing_if = "is_false")]
        crack: bool,
    },
    NotFound {},
    Weighed {
        mass_g: Number,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        mass_typed: String,
        tare_g: Number,
    },
    MassChanged {
        change: String,
    },
    /// Each range is its first and its last day.
    ForecastMade {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        into_house: Option<[String; 2]>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        to_finish: Option<[String; 2]>,
        weighings: u32,
    },
    Cracks {
        answer: String,
    },
    Oval {
        longest_mm: Number,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        longest_typed: String,
        shortest_mm: Number,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        shortest_typed: String,
    },
    OvalAt {
        station: u8,
        longest_mm: Number,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        longest_typed: String,
        shortest_mm: Number,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        shortest_typed: String,
    },
    OvalRound {
        station: u8,
        how: String,
        readings: Vec<RoundReadingV1>,
    },
    SpigotTrued {
        diameter_mm: Number,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        diameter_typed: String,
    },
    TrueDecided {
        decision: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        reason: String,
    },
    Grits {
        text: String,
    },
    Coat {
        text: String,
    },
    Signed {
        text: String,
    },
    Note {
        text: String,
    },
    PhotoAdded {
        photo: String,
        /// SHA-256, 64 hex digits, as `source`.
        stored: String,
        source: String,
        /// `2026-03-11T09:12:05`, with an offset where the camera wrote one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        taken: Option<String>,
        width_px: u32,
        height_px: u32,
        on: PhotoOnV1,
    },
    PhotoRemoved {
        photo: String,
    },
    PhotoBack {
        photo: String,
    },
    PhotoMarked {
        photo: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        spot: Option<SpotV1>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        scale: Option<ScaleV1>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        crack: Option<MeasuredV1>,
    },
    /// The end; the last four only for `lost`.
    Ended {
        end: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        place: Option<String>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        how: Option<String>,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        why: Vec<String>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    PutBack {},
    Deleted {},
    Undeleted {},
    Amends {
        entry: EntryV1,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<String>,
        /// The fact that takes its place, in the shape of any fact.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        amended: Option<Value>,
    },
    Retracts {
        line: LineV1,
    },
}
