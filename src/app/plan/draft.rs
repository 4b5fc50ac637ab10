//! Draft: what was chosen and entered for a plan. Everything may be left out.

use std::collections::BTreeMap;

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::{Form, Grain, Pith, Room};
use serde::{Deserialize, Serialize};

use super::field::PlanField;

/// A size that was entered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Size {
    /// In mm; the moisture in per cent.
    pub value: f64,
    /// As it was typed.
    pub typed: String,
}

/// Where a piece will live.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Home {
    /// The heated house, as last read or as usual.
    #[default]
    House,
    /// The shop, as last read.
    Shop,
    /// A moisture of the turner's own.
    Own,
}

impl Home {
    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::House => "house",
            Self::Shop => "shop",
            Self::Own => "own",
        }
    }
}

/// What was chosen and entered for a plan; kept with the settings of the device.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Draft {
    /// Choices by key: form, grain, pith, wood, place, jaws, bar.
    choices: BTreeMap<String, String>,
    /// Sizes by the key of their field.
    sizes: BTreeMap<String, Size>,
}

impl Draft {
    /// What a piece says of itself, as a plan for it.
    pub(super) fn of(piece: &Piece) -> Self {
        let mut draft = Self::default();
        for (field, value) in piece.details.iter() {
            match value {
                DetailValue::Length(m) if m.value.is_finite() => {
                    if let Some(of) = PlanField::ALL.iter().find(|f| f.detail() == Some(field)) {
                        draft.set(*of, m.value, m.typed.clone());
                    }
                }
                DetailValue::Length(_) => {}
                DetailValue::Text(text) => {
                    let key = match field {
                        DetailField::Form => "form",
                        DetailField::Grain => "grain",
                        DetailField::Pith => "pith",
                        DetailField::Wood => "wood",
                        DetailField::Jaws => "jaws",
                        _ => continue,
                    };
                    draft.choose(key, text);
                }
            }
        }
        draft
    }

    /// True where nothing was chosen or entered.
    pub(super) fn is_blank(&self) -> bool {
        self.choices.is_empty() && self.sizes.is_empty()
    }

    pub(super) fn chosen(&self, key: &str) -> Option<&str> {
        self.choices.get(key).map(String::as_str)
    }

    /// Chooses; an empty value takes the choice back.
    pub(super) fn choose(&mut self, key: &str, value: &str) {
        if value.trim().is_empty() {
            self.choices.remove(key);
        } else {
            self.choices.insert(key.to_owned(), value.to_owned());
        }
    }

    pub(super) fn set(&mut self, field: PlanField, value: f64, typed: String) {
        let key = field.key().to_owned();
        self.sizes.insert(key, Size { value, typed });
    }

    pub(super) fn clear(&mut self, field: PlanField) {
        self.sizes.remove(field.key());
    }

    /// A size where it was entered and is legal: what was kept by another version may be anything.
    pub(super) fn said(&self, field: PlanField) -> Option<&Size> {
        let legal = |s: &&Size| field.quantity().range().allows(s.value);
        self.sizes.get(field.key()).filter(legal)
    }

    pub(super) fn mm(&self, field: PlanField) -> Option<f64> {
        self.said(field).map(|s| s.value)
    }

    pub(super) fn form(&self) -> Form {
        let said = self.chosen("form").and_then(Form::from_key);
        said.unwrap_or(Form::Vessel)
    }

    /// The grain; end grain where not said, side grain for a bowl.
    pub(super) fn grain(&self) -> Grain {
        let usual = match self.form() {
            Form::Bowl => Grain::Side,
            Form::Vessel | Form::HollowForm => Grain::End,
        };
        let said = self.chosen("grain").and_then(Grain::from_key);
        said.unwrap_or(usual)
    }

    pub(super) fn pith(&self) -> Pith {
        let said = self.chosen("pith").and_then(Pith::from_key);
        said.unwrap_or(Pith::Unknown)
    }

    pub(super) fn wood(&self) -> Option<&str> {
        self.chosen("wood")
    }

    pub(super) fn home(&self) -> Home {
        match self.chosen("place") {
            Some("own") => Home::Own,
            Some(key) if Room::from_key(key) == Some(Room::Shop) => Home::Shop,
            _ => Home::House,
        }
    }
}
