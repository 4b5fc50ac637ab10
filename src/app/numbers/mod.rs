//! Numbers and units: what the turner types becomes mm, g and °C, and those become text again.
//!
//! [`Numbers`] holds the chosen units and the words. Input takes every unit and both decimal signs whatever is chosen;
//! no point is ever put in for the turner: where a number can be meant in two ways, [`Parsed::Ask`] holds the readings
//! and the turner chooses. What was typed stays beside what was understood.

mod decimal;
mod fraction;
mod input_error;
pub mod keypad;
mod parsed;
pub mod ranges;
mod rounding;
mod show;
mod shown;
mod typed;
mod understand;
pub mod units;

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod keypad_tests;
#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod property_tests;
#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod shown_tests;
#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod understand_tests;

pub use input_error::InputError;
pub use parsed::{AskWhy, Entry, Parsed, Reading};
pub use ranges::{Quantity, Range};
pub use shown::Shown;
pub use typed::MOST_CHARACTERS;
pub use units::{Dimension, LengthUnit, MassUnit, TempUnit, Unit, Units};

use crate::words::Words;

/// Reads and shows numbers in the turner's units and words. Cloning is cheap.
#[derive(Debug, Clone)]
pub struct Numbers {
    units: Units,
    words: Words,
}

impl Numbers {
    /// Numbers in `units`, with the decimal sign and the words of `words`.
    #[must_use]
    pub fn new(units: Units, words: &Words) -> Self {
        Self {
            units,
            words: words.clone(),
        }
    }

    /// The chosen units.
    #[must_use]
    pub fn units(&self) -> Units {
        self.units
    }

    /// The words in which numbers are spoken of.
    #[must_use]
    pub fn words(&self) -> &Words {
        &self.words
    }

    /// What `quantity` is called inside a sentence: "wall wanted".
    #[must_use]
    pub fn name(&self, quantity: Quantity) -> String {
        self.words.text(&format!("quantity-{}", quantity.key()))
    }

    /// Reads what was typed as `quantity`.
    ///
    /// A bare number is in the chosen unit. A bare fraction such as `3/8` is inches even where mm are chosen, unless
    /// only mm make sense (`9 1/2`). A number that can be meant in two ways comes back as [`Parsed::Ask`].
    ///
    /// # Errors
    /// [`InputError`] when the text is empty, too long, not one number, in a unit that does not fit, or when no
    /// reading of it is legal.
    pub fn parse(&self, quantity: Quantity, text: &str) -> Result<Parsed, InputError> {
        understand::understand(self, quantity, text)
    }

    /// The question that goes with a [`Parsed::Ask`]: "11.8 or 118?"; with units where they differ: "1.2 g or 1.2 kg?".
    #[must_use]
    pub fn question(&self, readings: &[Reading]) -> String {
        let one_unit = readings.windows(2).all(|pair| pair[0].unit == pair[1].unit);
        let mut labels = readings.iter().map(|r| {
            if one_unit && readings.len() > 1 {
                self.figures(r)
            } else {
                self.label(r)
            }
        });
        match (labels.next(), labels.next(), labels.next()) {
            (Some(first), Some(second), Some(third)) => self.words.with(
                "ask-three",
                &[
                    ("first", first.into()),
                    ("second", second.into()),
                    ("third", third.into()),
                ],
            ),
            (Some(first), Some(second), None) => self.words.with(
                "ask-two",
                &[("first", first.into()), ("second", second.into())],
            ),
            (Some(first), None, _) => self.words.with("ask-one", &[("first", first.into())]),
            (None, ..) => String::new(),
        }
    }

    /// Why a [`Parsed::Ask`] asks, as a sentence above the question.
    #[must_use]
    pub fn reason(&self, quantity: Quantity, typed: &str, why: AskWhy) -> String {
        match why {
            AskWhy::Separator => self.words.with("ask-separator", &[("typed", typed.into())]),
            AskWhy::MissingPoint => self.words.with(
                "ask-missing-point",
                &[
                    ("typed", typed.into()),
                    ("what", self.name(quantity).into()),
                ],
            ),
            AskWhy::Unit => self.words.with("ask-unit", &[("typed", typed.into())]),
        }
    }

    /// One reading with its unit, for a button: "11.8 mm".
    #[must_use]
    pub fn label(&self, reading: &Reading) -> String {
        let number = self.figures(reading);
        match reading.unit {
            Unit::One => number,
            unit => Shown::new(number, self.unit_text(unit)).text(),
        }
    }

    fn figures(&self, reading: &Reading) -> String {
        self.with_decimal_sign(&reading.number)
    }
}
