//! The answer to one question, its keys in the order in which they are put.

use serde_json::{Map, Value};

use crate::refused::Refused;

/// An answer in the making.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer(Map<String, Value>);

impl Answer {
    /// An answer without keys.
    #[must_use]
    pub fn new() -> Self {
        Answer::default()
    }

    /// With `value` at `key`.
    #[must_use]
    pub fn with(mut self, key: &str, value: impl Into<Value>) -> Self {
        self.0.insert(key.to_owned(), value.into());
        self
    }

    /// With `value` at `key` when there is one.
    #[must_use]
    pub fn with_some(self, key: &str, value: Option<impl Into<Value>>) -> Self {
        match value {
            Some(value) => self.with(key, value),
            None => self,
        }
    }

    /// With a fraction at `key`, in per cent.
    #[must_use]
    pub fn pct(self, key: &str, fraction: f64) -> Self {
        self.with(key, 100.0 * fraction)
    }

    /// The finished answer.
    ///
    /// # Errors
    /// [`Refused::NoNumber`] when a number in it is not finite: such a number would be lost in JSON.
    pub fn finish(self) -> Result<Value, Refused> {
        let value = Value::Object(self.0);
        if has_null(&value) {
            Err(Refused::NoNumber)
        } else {
            Ok(value)
        }
    }
}

impl From<Answer> for Value {
    fn from(answer: Answer) -> Value {
        Value::Object(answer.0)
    }
}

/// True when a null, which is what JSON makes of a number that is not finite, stands anywhere.
fn has_null(value: &Value) -> bool {
    match value {
        Value::Null => true,
        Value::Array(list) => list.iter().any(has_null),
        Value::Object(map) => map.values().any(has_null),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_that_is_none_is_refused_however_deep() {
        let deep = Answer::new().with("a", vec![Answer::new().with("b", f64::NAN)]);
        assert_eq!(deep.finish(), Err(Refused::NoNumber));
        assert!(Answer::new().with("a", 1.0).finish().is_ok());
    }
}
