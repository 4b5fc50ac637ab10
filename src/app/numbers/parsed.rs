//! What came of reading a typed number: a value, or a question.

use super::units::Unit;

/// A value that was understood.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// In mm, g, °C, per cent, turns a minute or a plain count.
    pub value: f64,
    /// What was typed, without blanks at the ends; kept beside the value in the diary.
    pub typed: String,
    /// False when the value is legal but outside the usual range.
    pub usual: bool,
}

/// One way in which a typed number can be meant.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// In mm, g, °C, per cent, turns a minute or a plain count.
    pub value: f64,
    /// Its figures, with a point for the decimals, in `unit`.
    pub number: String,
    /// The unit of `number`.
    pub unit: Unit,
    /// True when the value is legal; a reading that is not is shown but cannot be chosen.
    pub allowed: bool,
    /// True when the value is usual as well.
    pub usual: bool,
}

/// Why a number has to be asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AskWhy {
    /// A comma or point may part decimals or thousands: `1,250`.
    Separator,
    /// A point may have been lost: `118` for a wall.
    MissingPoint,
    /// The number fits another unit than the one that is set.
    Unit,
}

/// What came of reading a typed number.
#[derive(Debug, Clone, PartialEq)]
pub enum Parsed {
    /// It was understood.
    Value(Entry),
    /// It can be meant in several ways; the turner chooses once with [`Parsed::choose`].
    Ask {
        /// What was typed, without blanks at the ends.
        typed: String,
        /// The readings, in the order in which they are offered; at least one is allowed.
        readings: Vec<Reading>,
        /// Why this is asked.
        why: AskWhy,
    },
}

impl Parsed {
    /// The entry, when there was no doubt.
    #[must_use]
    pub fn value(&self) -> Option<&Entry> {
        match self {
            Self::Value(entry) => Some(entry),
            Self::Ask { .. } => None,
        }
    }

    /// The entry when the turner chooses the reading at `index`; `None` for a reading that is absent or not allowed.
    #[must_use]
    pub fn choose(&self, index: usize) -> Option<Entry> {
        match self {
            Self::Value(entry) => (index == 0).then(|| entry.clone()),
            Self::Ask {
                typed, readings, ..
            } => {
                let reading = readings.get(index).filter(|reading| reading.allowed)?;
                Some(Entry {
                    value: reading.value,
                    typed: typed.clone(),
                    usual: reading.usual,
                })
            }
        }
    }
}
