//! Entering: sizes are stepped, or typed on the keypad of a sheet; the wood is looked for.

use crate::app::{App, AppError};
use crate::device::LengthChoice;
use crate::measured::{Field, Refused};
use crate::numbers::{Dimension, MOST_CHARACTERS};

use super::{ChoiceView, PlanField, PlanSheet};

/// A size being entered.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct EntryView {
    /// Its label.
    pub title: String,
    /// What was typed.
    pub text: String,
    /// What it is now.
    pub hint: String,
    /// Its unit.
    pub unit: String,
    /// What is wrong with it.
    pub error: String,
    /// Texts to put there instead.
    pub ways: Vec<String>,
    /// Keys for inch fractions instead of the point.
    pub fractions: bool,
    /// The sign of the point key.
    pub point: &'static str,
    /// The word for taking it.
    pub set: String,
    /// The word for going back to what is usual; empty where it was not entered.
    pub usual: String,
    /// The word for the key that takes back a digit.
    pub back: String,
    /// The word on the key between whole and fraction.
    pub whole: String,
    /// The word for closing.
    pub close: String,
}

/// The wood being looked for.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WoodSheetView {
    /// Its title.
    pub title: String,
    /// What was typed.
    pub text: String,
    /// What the field shows while it is empty.
    pub hint: String,
    /// Woods that answer to it.
    pub offers: Vec<ChoiceView>,
    /// The word for a wood that is not known.
    pub unknown: String,
    /// The word for closing.
    pub close: String,
}

/// Steps of a held key after which it goes faster.
const HELD: i32 = 4;

impl App {
    /// One step of a size: 1 mm or 1/8 in, held 5 mm or 1/2 in; walls and bars by what is felt.
    fn plan_step_of(&self, field: PlanField, repeats: i32) -> f64 {
        let held = repeats >= HELD;
        let mm = self.device().length == LengthChoice::Mm;
        match field {
            PlanField::Moisture => 1.0,
            PlanField::WallFinish => self.numbers().wall_step_mm(),
            PlanField::Bar if mm => 1.0,
            PlanField::Bar => 25.4 / 16.0,
            _ if mm => {
                if held {
                    5.0
                } else {
                    1.0
                }
            }
            _ => {
                if held {
                    12.7
                } else {
                    25.4 / 8.0
                }
            }
        }
    }

    pub(super) fn plan_step(
        &mut self,
        field: PlanField,
        direction: i32,
        repeats: i32,
    ) -> Result<(), AppError> {
        let begins = matches!(field, PlanField::Log | PlanField::PithDistance);
        if begins && self.plan_draft().said(field).is_none() {
            let value = self.plan_now(field);
            let typed = self.numbers().quantity(field.quantity(), value).number;
            return self.plan_put(field, value, typed);
        }
        let step = self.plan_step_of(field, repeats);
        let steps = self.plan_now(field) / step;
        let next = if direction > 0 {
            (steps + 1e-6).floor() + 1.0
        } else {
            (steps - 1e-6).ceil() - 1.0
        };
        let range = field.quantity().range();
        let value = (next * step).clamp(range.min, range.max);
        let typed = self.numbers().quantity(field.quantity(), value).number;
        self.plan_put(field, value, typed)
    }

    fn plan_put(&mut self, field: PlanField, value: f64, typed: String) -> Result<(), AppError> {
        self.plan_change(|draft| {
            draft.set(field, value, typed);
            match field {
                PlanField::Moisture => draft.choose("place", "own"),
                // A circle of one's own is not that of the jaws in the list.
                PlanField::Jaws => draft.choose("jaws", ""),
                PlanField::Bar => draft.choose("bar", ""),
                _ => {}
            }
        })
    }

    pub(super) fn plan_pick_size(&mut self, place: usize) -> Result<(), AppError> {
        let form = self.plan_draft().form();
        let Some((diameter, height)) = self.often_made(form).into_iter().nth(place) else {
            return Ok(());
        };
        let numbers = self.numbers();
        let text = |f: PlanField, mm: f64| numbers.quantity(f.quantity(), mm).number;
        let (d, h) = (
            text(PlanField::Diameter, diameter),
            text(PlanField::Height, height),
        );
        self.plan_change(|draft| {
            draft.set(PlanField::Diameter, diameter, d);
            draft.set(PlanField::Height, height, h);
        })
    }

    pub(super) fn plan_typed(&mut self, text: String) {
        match &mut self.states.plan.sheet {
            Some(PlanSheet::Field(_, field)) => field.type_in(text),
            Some(PlanSheet::Wood(typed)) => *typed = text,
            Some(PlanSheet::Sum(_)) | None => {}
        }
    }

    pub(super) fn plan_key(&mut self, key: &str) -> Result<(), AppError> {
        if key == "next" {
            return self.plan_set();
        }
        if let Some(PlanSheet::Field(_, field)) = &mut self.states.plan.sheet {
            let mut text = field.text.clone();
            if key == "back" {
                text.pop();
            } else {
                // A stroke takes the place of the one before it.
                if key.starts_with('/')
                    && let Some(stroke) = text.find('/')
                {
                    text.truncate(stroke);
                }
                text.push_str(key);
            }
            if text.chars().count() <= MOST_CHARACTERS {
                field.type_in(text);
            }
        }
        Ok(())
    }

    /// Takes what was typed: nothing changes nothing, what cannot be read is said in the sheet.
    pub(super) fn plan_set(&mut self) -> Result<(), AppError> {
        let Some(PlanSheet::Field(of, mut field)) = self.states.plan.sheet.clone() else {
            return Ok(());
        };
        match self.read_field(of.quantity(), &mut field) {
            Err(Refused) => {
                self.states.plan.sheet = Some(PlanSheet::Field(of, field));
                Ok(())
            }
            Ok(measure) => {
                self.states.plan.sheet = None;
                measure.map_or(Ok(()), |m| self.plan_put(of, m.value, m.typed))
            }
        }
    }

    pub(super) fn plan_entry_view(&self) -> Option<EntryView> {
        let Some(PlanSheet::Field(of, field)) = &self.states.plan.sheet else {
            return None;
        };
        let Field { text, error, ways } = field.clone();
        let words = self.words();
        let quantity = of.quantity();
        let now = self.numbers().quantity(quantity, self.plan_now(*of));
        let said = self.plan_draft().said(*of).is_some();
        let example = self.numbers().quantity(quantity, quantity.range().example);
        Some(EntryView {
            title: self.plan_label(*of),
            text,
            hint: match of {
                PlanField::Log | PlanField::PithDistance if !said => String::new(),
                _ => now.number,
            },
            unit: example.unit,
            error,
            ways,
            fractions: quantity.dimension() == Dimension::Length
                && self.device().length == LengthChoice::InchFraction,
            point: match words.language().decimal_sign() {
                crate::words::DecimalSign::Point => ".",
                crate::words::DecimalSign::Comma => ",",
            },
            set: words.text("plan-set"),
            usual: if said {
                words.text("plan-usual")
            } else {
                String::new()
            },
            back: words.text("plan-key-back"),
            whole: words.text("plan-key-whole"),
            close: words.text("action-close"),
        })
    }

    pub(super) fn plan_wood_view(&self) -> Option<WoodSheetView> {
        let Some(PlanSheet::Wood(typed)) = &self.states.plan.sheet else {
            return None;
        };
        let words = self.words();
        Some(WoodSheetView {
            title: words.text("detail-wood"),
            text: typed.clone(),
            hint: words.text("new-piece-wood-hint"),
            offers: self
                .woods_answering(typed)
                .into_iter()
                .map(|stored| ChoiceView {
                    text: self.wood_name(&stored),
                    chosen: self.plan_draft().wood() == Some(stored.as_str()),
                    key: stored,
                })
                .collect(),
            unknown: words.text("answer-unknown"),
            close: words.text("action-close"),
        })
    }
}
