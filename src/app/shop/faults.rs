//! Faults: what is wrong in a form, by field, collected to its end so that every field says its own.

use std::collections::BTreeMap;

use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;

/// What a form comes to: when, and what happened. The errors are by the key of the field.
pub(super) type Outcome = Result<(Option<Moment>, Vec<ShopFact>), BTreeMap<String, String>>;

/// What was wrong so far.
#[derive(Default)]
pub(super) struct Faults(BTreeMap<String, String>);

impl Faults {
    /// Takes what was read, or keeps what was wrong for below the field.
    pub fn take<T>(&mut self, key: &str, read: Result<T, String>) -> Option<T> {
        read.map_err(|fault| self.0.insert(key.to_owned(), fault))
            .ok()
    }

    /// Adds what is wrong with a field, unless something is already.
    pub fn add(&mut self, key: &str, fault: String) {
        self.0.entry(key.to_owned()).or_insert(fault);
    }

    /// The facts, unless anything was wrong.
    pub fn or(self, facts: Option<(Option<Moment>, Vec<ShopFact>)>) -> Outcome {
        match facts {
            Some(facts) if self.0.is_empty() => Ok(facts),
            _ => Err(self.0),
        }
    }
}
