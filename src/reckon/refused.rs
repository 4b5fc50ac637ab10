//! Why a question has no answer: one sentence with what was found, what is allowed and what to do.

use evenwall_wood::axis::AxisError;
use evenwall_wood::drill_depth::DrillError;
use evenwall_wood::drying::{ClimateError, DryingError};
use evenwall_wood::exponential::FinalWeightError;
use evenwall_wood::fitted::FitError;
use evenwall_wood::forecast::ForecastError;
use evenwall_wood::humidity::BulbError;
use evenwall_wood::own_shrinkage::MeasureError;
use evenwall_wood::profile::ProfileError;
use evenwall_wood::range::RangeError;
use evenwall_wood::section::SectionError;
use evenwall_wood::weight::WeightError;

use crate::key::{Count, Figure, Kind, Limits};

/// A question that cannot be answered; its text is the sentence.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Refused {
    /// The entry of the list is no object.
    #[error(
        "a question is {found}, but must be an object such as {{\"ask\": \"drill_depth\", \"height_mm\": 178, \"floor_mm\": 25}}; write it so"
    )]
    NotAnObject {
        /// What stood there.
        found: String,
    },
    /// `ask` is missing or no text.
    #[error("`ask` is {found}, but must name a question; the questions are {all}")]
    NoAsk {
        /// What stood there.
        found: String,
        /// Every question.
        all: String,
    },
    /// There is no such question.
    #[error("there is no question {found}; the questions are {all}")]
    Unknown {
        /// The name given.
        found: String,
        /// Every question.
        all: String,
    },
    /// Keys that do not belong there.
    #[error("{of} has no key {found}; allowed are {allowed}: take it out or correct it")]
    UnknownKeys {
        /// The question or the object within it.
        of: String,
        /// The keys found.
        found: String,
        /// The keys allowed.
        allowed: String,
    },
    /// Keys that are missing.
    #[error("{of} needs {missing}; add what is missing")]
    Missing {
        /// The question or the object within it.
        of: String,
        /// The keys missing, with what each is.
        missing: String,
    },
    /// Something else than what the key wants.
    #[error("`{key}` is {found}, but must be {wanted}; correct it")]
    WrongKind {
        /// The key.
        key: String,
        /// What stood there.
        found: String,
        /// What may stand there.
        wanted: Kind,
    },
    /// A number outside its range.
    #[error("`{key}` is {found}, but must lie between {limits}; check the figure")]
    OutOfRange {
        /// The key.
        key: String,
        /// The number.
        found: String,
        /// What is allowed.
        limits: Between,
    },
    /// A list too short or too long.
    #[error("`{key}` has {found} entries, but {allowed} are allowed; shorten or complete it")]
    Entries {
        /// The key.
        key: String,
        /// How many there are.
        found: usize,
        /// How many are allowed.
        allowed: Count,
    },
    /// Keys that do not go together, or none of several.
    #[error("{0}")]
    Together(String),
    /// The science layer refused; the sentence is its own.
    #[error("{0}")]
    Sum(String),
    /// The figures are each legal but the sum leads to no finite number.
    #[error("these figures together give no finite number; check each for a misplaced point")]
    NoNumber,
}

/// Limits in the words of a sentence: "0 and 400 %".
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Between(pub Limits);

impl std::fmt::Display for Between {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Limits { unit, min, max } = self.0;
        let space = if unit.is_empty() { "" } else { " " };
        write!(f, "{} and {}{space}{unit}", Figure(min), Figure(max))
    }
}

impl Refused {
    /// Keys that do not go together, said in `sentence`.
    pub fn together(sentence: impl Into<String>) -> Self {
        Refused::Together(sentence.into())
    }
}

macro_rules! from_the_science_layer {
    ($($error:ty),*) => {
        $(impl From<$error> for Refused {
            fn from(e: $error) -> Self {
                Refused::Sum(e.to_string())
            }
        })*
    };
}

from_the_science_layer!(
    AxisError,
    BulbError,
    ClimateError,
    DrillError,
    DryingError,
    FinalWeightError,
    FitError,
    ForecastError,
    MeasureError,
    ProfileError,
    RangeError,
    SectionError,
    WeightError
);
