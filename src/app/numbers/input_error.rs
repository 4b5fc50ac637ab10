//! Why a typed number was refused, and the sentence that says so.

use thiserror::Error;

use super::Numbers;
use super::ranges::Quantity;
use super::rounding::Rounded;
use super::typed::MOST_CHARACTERS;
use super::units::Dimension;

/// Why a typed number was refused. [`InputError::message`] gives the sentence for the screen.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum InputError {
    /// Nothing but blanks.
    #[error("nothing was typed; type a number")]
    Empty,
    /// More characters than a number has.
    #[error(
        "{count} characters were typed, at most {MOST_CHARACTERS} are read; type the number alone"
    )]
    TooLong {
        /// How many characters there were.
        count: usize,
    },
    /// Not a number.
    #[error("{found:?} is not a number; type figures")]
    NotANumber {
        /// The start of what was typed.
        found: String,
    },
    /// More than one number.
    #[error("{found:?} holds several numbers; type one")]
    Several {
        /// The start of what was typed.
        found: String,
    },
    /// A minus sign where nothing below nought is legal.
    #[error("{found:?} is below nought; type it without the minus sign")]
    Negative {
        /// The start of what was typed.
        found: String,
    },
    /// A number outside the legal range.
    #[error("{found:?} is outside the legal range; check figure and unit")]
    OutOfRange {
        /// The start of what was typed.
        found: String,
    },
    /// A unit that is not known, or that measures something else.
    #[error("the unit {unit:?} does not fit; leave it out or type one that does")]
    WrongUnit {
        /// The unit as typed.
        unit: String,
    },
    /// A fraction that cannot be read without guessing.
    #[error("{found:?} is not a fraction that can be read; use whole numbers over 2 to 64")]
    BadFraction {
        /// The start of what was typed.
        found: String,
    },
    /// A fraction where only whole numbers count.
    #[error("{found:?} is not whole; type a whole number")]
    NotWhole {
        /// The start of what was typed.
        found: String,
    },
}

impl InputError {
    /// The sentence for the screen: what was found, what is allowed, what to do.
    #[must_use]
    pub fn message(&self, numbers: &Numbers, quantity: Quantity) -> String {
        let words = numbers.words();
        let range = quantity.range();
        let what = numbers.name(quantity);
        let example = numbers.quantity(quantity, range.example).text();
        let low = numbers
            .quantity_rounded(quantity, range.min, Rounded::Up)
            .text();
        let high = numbers
            .quantity_rounded(quantity, range.max, Rounded::Down)
            .text();
        match self {
            Self::Empty => words.with(
                "error-number-empty",
                &[("what", what.into()), ("example", example.into())],
            ),
            Self::TooLong { count } => words.with(
                "error-number-long",
                &[
                    ("count", (*count).into()),
                    ("what", what.into()),
                    ("most", MOST_CHARACTERS.into()),
                    ("example", example.into()),
                ],
            ),
            Self::NotANumber { found } => words.with(
                "error-number-nonsense",
                &[
                    ("found", found.into()),
                    ("what", what.into()),
                    ("example", example.into()),
                ],
            ),
            Self::Several { found } => words.with(
                "error-number-several",
                &[
                    ("found", found.into()),
                    ("what", what.into()),
                    ("example", example.into()),
                ],
            ),
            Self::Negative { found } => words.with(
                "error-number-negative",
                &[
                    ("found", found.into()),
                    ("what", what.into()),
                    ("low", low.into()),
                    ("high", high.into()),
                ],
            ),
            Self::OutOfRange { found } => words.with(
                "error-number-range",
                &[
                    ("found", found.into()),
                    ("what", what.into()),
                    ("low", low.into()),
                    ("high", high.into()),
                ],
            ),
            Self::WrongUnit { unit } => words.with(
                "error-number-unit",
                &[
                    ("unit", unit.into()),
                    ("what", what.into()),
                    ("units", units_of(numbers, quantity.dimension()).into()),
                    ("example", example.into()),
                ],
            ),
            Self::BadFraction { found } => {
                words.with("error-number-fraction", &[("found", found.into())])
            }
            Self::NotWhole { found } => words.with(
                "error-number-whole",
                &[
                    ("found", found.into()),
                    ("what", what.into()),
                    ("example", example.into()),
                ],
            ),
        }
    }
}

/// The units that may be typed, as they read in a sentence.
fn units_of(numbers: &Numbers, dimension: Dimension) -> String {
    numbers.words().text(match dimension {
        Dimension::Length => "error-units-length",
        Dimension::Mass => "error-units-mass",
        Dimension::Temperature => "error-units-temperature",
        Dimension::Percent => "error-units-percent",
        Dimension::Speed => "error-units-speed",
        Dimension::Count => "error-units-count",
    })
}
