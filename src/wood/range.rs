//! A legal range, declared once and used by checks, messages and generators alike.
//!
//! Every physical input of this crate names its [`Range`] as a constant beside the formula that needs it. A value that
//! is not a number is outside every range.

use std::fmt;

/// A closed interval of legal values with the words for it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// What is measured, as it reads in a sentence ("temperature").
    pub quantity: &'static str,
    /// The unit as printed after a number ("mm"); empty for a plain ratio.
    pub unit: &'static str,
    /// Smallest legal value, in the unit.
    pub min: f64,
    /// Largest legal value, in the unit.
    pub max: f64,
}

impl Range {
    /// A range named `quantity`, from `min` to `max` inclusive, in `unit`.
    pub const fn new(quantity: &'static str, unit: &'static str, min: f64, max: f64) -> Self {
        Range {
            quantity,
            unit,
            min,
            max,
        }
    }

    /// True when `value` is a number within the range, ends included.
    pub fn holds(&self, value: f64) -> bool {
        value >= self.min && value <= self.max
    }

    /// Gives `value` back when it is legal.
    ///
    /// # Errors
    /// [`RangeError`] with what was found and what is allowed.
    pub fn check(&self, value: f64) -> Result<f64, RangeError> {
        if self.holds(value) {
            Ok(value)
        } else {
            Err(RangeError {
                range: *self,
                found: value,
            })
        }
    }
}

/// A value outside its [`Range`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RangeError {
    /// The range that was missed.
    pub range: Range,
    /// The value that was given, in the unit of the range.
    pub found: f64,
}

impl fmt::Display for RangeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Range {
            quantity,
            unit,
            min,
            max,
        } = self.range;
        let space = if unit.is_empty() { "" } else { " " };
        write!(
            f,
            "{quantity} is {}{space}{unit}, but must lie between {min} and {max}{space}{unit}; check the figure",
            self.found
        )
    }
}

impl std::error::Error for RangeError {}

#[cfg(test)]
mod tests {
    use super::*;

    const LENGTH: Range = Range::new("length", "mm", 1.0, 10.0);

    #[test]
    fn ends_belong_to_the_range_and_nothing_beyond_does() {
        assert_eq!(LENGTH.check(1.0), Ok(1.0));
        assert_eq!(LENGTH.check(10.0), Ok(10.0));
        assert!(LENGTH.check(0.999).is_err());
        assert!(LENGTH.check(10.001).is_err());
        assert!(LENGTH.check(f64::NAN).is_err());
        assert!(LENGTH.check(f64::INFINITY).is_err());
    }

    #[test]
    fn the_message_says_what_was_found_and_what_is_legal() {
        let text = LENGTH.check(12.5).map_err(|e| e.to_string());
        assert_eq!(
            text,
            Err("length is 12.5 mm, but must lie between 1 and 10 mm; check the figure".to_owned())
        );
    }
}
