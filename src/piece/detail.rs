//! Details: what is known about a piece, each optional, each correctable.

use std::collections::BTreeMap;

use crate::fact::Measure;
use crate::vocabulary::{Form, Grain, Outline, Pith, keyed};

keyed!(
    /// A detail of a piece; lengths carry their unit in the key.
    DetailField {
        /// The short mark pencilled on the spigot end.
        Mark = "mark",
        /// What is being made.
        Form = "form",
        /// The wood: a key of the woods table, an own wood, or a name as typed.
        Wood = "wood",
        /// End or side grain.
        Grain = "grain",
        /// Where the pith lies.
        Pith = "pith",
        /// How far the pith lies from the axis.
        PithDistance = "pith_distance_mm",
        /// When the tree was felled: `2026`, `2026-03` or `2026-03-14`.
        Felled = "felled",
        /// Where the wood came from.
        Source = "source",
        /// Which log it was cut from; pieces that share it are twins.
        Log = "log",
        /// Diameter of the log or blank before turning.
        LogDiameter = "log_diameter_mm",
        /// Largest outside diameter.
        Diameter = "diameter_mm",
        /// Rim to foot line, without the spigot.
        Height = "height_mm",
        /// Length of the spigot below the foot line.
        SpigotLength = "spigot_length_mm",
        /// Diameter of the spigot as cut.
        SpigotDiameter = "spigot_diameter_mm",
        /// Diameter of the mouth.
        Mouth = "mouth_mm",
        /// Wall wanted now.
        WallWanted = "wall_wanted_mm",
        /// Wall wanted at the finish.
        WallFinish = "wall_finish_mm",
        /// Floor wanted, above the foot line.
        FloorWanted = "floor_wanted_mm",
        /// Depth drilled, from the faced rim to the bit's point.
        DepthDrilled = "depth_drilled_mm",
        /// Diameter of the hollowing bar.
        BarDiameter = "bar_diameter_mm",
        /// Greatest reach past the rest.
        BarReach = "bar_reach_mm",
        /// The outline picked.
        Outline = "outline",
        /// Where it stands.
        Place = "place",
        /// Own notes.
        Notes = "notes",
        /// Its size when finished, in own words.
        FinishedSize = "finished_size",
        /// The lathe's jaws it was cut for.
        Jaws = "jaws",
    }
);

/// What kind of value a detail takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FieldKind {
    /// A length in mm.
    Length,
    /// Free text.
    Text,
    /// A key of a closed list.
    Choice,
}

impl DetailField {
    /// What kind of value it takes.
    #[must_use]
    pub const fn kind(self) -> FieldKind {
        match self {
            Self::Form | Self::Grain | Self::Pith | Self::Outline => FieldKind::Choice,
            Self::Mark
            | Self::Wood
            | Self::Felled
            | Self::Source
            | Self::Log
            | Self::Place
            | Self::Notes
            | Self::FinishedSize
            | Self::Jaws => FieldKind::Text,
            _ => FieldKind::Length,
        }
    }
}

/// The value of a detail.
#[derive(Debug, Clone, PartialEq)]
pub enum DetailValue {
    /// A length in mm with what was typed.
    Length(Measure),
    /// Free text, or the key of a closed list.
    Text(String),
}

/// All details of a piece that have a value.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Details(BTreeMap<DetailField, DetailValue>);

impl Details {
    /// Sets a detail, or clears it with `None`.
    pub fn set(&mut self, field: DetailField, value: Option<DetailValue>) {
        match value {
            Some(value) => self.0.insert(field, value),
            None => self.0.remove(&field),
        };
    }

    /// The value of a detail.
    #[must_use]
    pub fn get(&self, field: DetailField) -> Option<&DetailValue> {
        self.0.get(&field)
    }

    /// A length in mm, where the detail holds a finite one.
    #[must_use]
    pub fn mm(&self, field: DetailField) -> Option<f64> {
        match self.0.get(&field) {
            Some(DetailValue::Length(m)) if m.value.is_finite() => Some(m.value),
            _ => None,
        }
    }

    /// A text that is not blank.
    #[must_use]
    pub fn text(&self, field: DetailField) -> Option<&str> {
        match self.0.get(&field) {
            Some(DetailValue::Text(t)) if !t.trim().is_empty() => Some(t.as_str()),
            _ => None,
        }
    }

    /// All details with a value, in the order of the fields.
    pub fn iter(&self) -> impl Iterator<Item = (DetailField, &DetailValue)> {
        self.0.iter().map(|(f, v)| (*f, v))
    }

    /// The form; a vessel where not said.
    #[must_use]
    pub fn form(&self) -> Form {
        self.text(DetailField::Form)
            .and_then(Form::from_key)
            .unwrap_or(Form::Vessel)
    }

    /// The grain; end grain where not said, side grain for a bowl.
    #[must_use]
    pub fn grain(&self) -> Grain {
        let usual = if self.form() == Form::Bowl {
            Grain::Side
        } else {
            Grain::End
        };
        self.text(DetailField::Grain)
            .and_then(Grain::from_key)
            .unwrap_or(usual)
    }

    /// Where the pith lies; unknown where not said.
    #[must_use]
    pub fn pith(&self) -> Pith {
        self.text(DetailField::Pith)
            .and_then(Pith::from_key)
            .unwrap_or(Pith::Unknown)
    }

    /// The outline picked, where one was.
    #[must_use]
    pub fn outline(&self) -> Option<Outline> {
        self.text(DetailField::Outline).and_then(Outline::from_key)
    }
}
