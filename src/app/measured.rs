//! Measured: what was typed into a field becomes a measure, nothing, or a doubt with the ways out of it; and days ahead.

use chrono::NaiveDate;
use evenwall_piece::fact::Measure;

use crate::app::App;
use crate::numbers::{Parsed, Quantity};
use crate::piece::days::{DayFault, read_day};
use crate::words::dates::Dates;

/// A field that is typed into: its text and what was wrong with it when it was read.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Field {
    /// What was typed.
    pub text: String,
    /// What is wrong with it; empty where nothing is.
    pub error: String,
    /// Texts to put into the field instead, each without any doubt.
    pub ways: Vec<String>,
}

impl Field {
    /// A field that holds this text.
    #[must_use]
    pub fn of(text: String) -> Self {
        Self {
            text,
            ..Self::default()
        }
    }

    /// Takes a new text; what was wrong with the old one is forgotten.
    pub fn type_in(&mut self, text: String) {
        *self = Self::of(text);
    }

    fn refuse(&mut self, error: String, ways: Vec<String>) {
        self.error = error;
        self.ways = ways;
    }
}

/// The field did not hold what was wanted; it says so itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Refused;

impl App {
    /// Reads a length out of a field; blank is nothing. What is wrong is put into the field.
    pub(crate) fn read_field(
        &self,
        quantity: Quantity,
        field: &mut Field,
    ) -> Result<Option<Measure>, Refused> {
        if field.text.trim().is_empty() {
            return Ok(None);
        }
        let numbers = self.numbers();
        match numbers.parse(quantity, &field.text) {
            Ok(Parsed::Value(entry)) => Ok(Some(Measure {
                value: entry.value,
                typed: entry.typed,
            })),
            Ok(Parsed::Ask {
                typed,
                readings,
                why,
            }) => {
                let reason = numbers.reason(quantity, &typed, why);
                let ways = readings
                    .iter()
                    .filter(|r| r.allowed)
                    .map(|r| numbers.label(r))
                    .collect();
                field.refuse(format!("{reason} {}", numbers.question(&readings)), ways);
                Err(Refused)
            }
            Err(error) => {
                field.refuse(error.message(&numbers, quantity), Vec::new());
                Err(Refused)
            }
        }
    }

    /// The same where nothing is not enough.
    pub(crate) fn read_wanted_field(
        &self,
        quantity: Quantity,
        field: &mut Field,
    ) -> Result<Measure, Refused> {
        match self.read_field(quantity, field)? {
            Some(measure) => Ok(measure),
            None => {
                let numbers = self.numbers();
                let empty = crate::numbers::InputError::Empty;
                field.refuse(empty.message(&numbers, quantity), Vec::new());
                Err(Refused)
            }
        }
    }

    /// Reads a day out of a field, after today where `ahead`, else up to today. What is wrong is put into the field.
    pub(crate) fn read_day_field(
        &self,
        field: &mut Field,
        today: NaiveDate,
        ahead: bool,
    ) -> Result<NaiveDate, Refused> {
        let words = self.words();
        let found: String = field.text.chars().take(30).collect();
        let name = |day| Dates::new(words, today).day_and_month(day);
        let error = match read_day(words, &field.text, today) {
            Ok(day) if ahead && day <= today => {
                words.with("piece-day-past", &[("day", name(day).into())])
            }
            Ok(day) if !ahead && day > today => {
                words.with("piece-day-ahead", &[("day", name(day).into())])
            }
            Ok(day) => return Ok(day),
            Err(DayFault::Empty) => words.text("piece-day-empty"),
            Err(DayFault::NotADay) => words.with("piece-day-nonsense", &[("found", found.into())]),
            Err(DayFault::TooEarly) => words.with("details-day-early", &[("found", found.into())]),
        };
        field.refuse(error, Vec::new());
        Err(Refused)
    }
}
