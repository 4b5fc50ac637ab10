//! A value put into a sentence of the catalogue.

use std::borrow::Cow;

use fluent_bundle::FluentValue;

/// A value for a variable of a message: text as it stands, or a number that also chooses singular or plural.
///
/// A number with decimals or a unit is text: format it with `numbers` first.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg<'a> {
    /// Text, shown as it is.
    Text(Cow<'a, str>),
    /// A whole count; negative counts are shown with a hyphen, so format those first.
    Count(i64),
}

impl Arg<'_> {
    pub(super) fn to_fluent(&self) -> FluentValue<'_> {
        match self {
            Self::Text(text) => FluentValue::String(Cow::Borrowed(text)),
            Self::Count(count) => FluentValue::from(*count),
        }
    }
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl<'a> From<&'a String> for Arg<'a> {
    fn from(text: &'a String) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Arg<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

macro_rules! counts {
    ($($whole:ty),+) => { $(
        impl From<$whole> for Arg<'_> {
            fn from(count: $whole) -> Self {
                Self::Count(i64::from(count))
            }
        }
    )+ };
}
counts!(i8, i16, i32, i64, u8, u16, u32);

impl From<usize> for Arg<'_> {
    /// Counts above the largest `i64` cannot occur: nothing in memory is that long; they would be shown as that.
    fn from(count: usize) -> Self {
        Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}

impl From<u64> for Arg<'_> {
    /// Counts above the largest `i64` are shown as that.
    fn from(count: u64) -> Self {
        Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}
