//! A question: its name, what it answers, its keys, and the sum behind it.

use serde_json::{Map, Value};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::Key;
use crate::refused::Refused;

/// A key of an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Output {
    /// Its name, the unit at its end; `[]` marks an entry of a list ("stations[].wall_mm").
    pub name: &'static str,
    /// What it means, and when it is there.
    pub says: &'static str,
}

/// A key of an answer, for short.
#[must_use]
pub const fn gives(name: &'static str, says: &'static str) -> Output {
    Output { name, says }
}

/// One kind of question.
pub struct Question {
    /// What stands at `ask`.
    pub name: &'static str,
    /// What it answers, with the source of the formula.
    pub answers: &'static str,
    /// Its keys, in groups so that questions can share them.
    pub inputs: &'static [&'static [Key]],
    /// The keys of its answer.
    pub outputs: &'static [&'static [Output]],
    /// Whole questions to try; the page prints them with their answers.
    pub examples: &'static [&'static str],
    /// The sum.
    pub sum: fn(&Asked<'_>) -> Result<Answer, Refused>,
}

impl Question {
    /// Every key it knows, besides `ask` and `id`.
    pub fn keys(&self) -> impl Iterator<Item = &'static Key> + use<> {
        self.inputs.iter().flat_map(|group| group.iter())
    }

    /// The answer to `values`, the whole question with `ask` and `id`.
    ///
    /// # Errors
    /// [`Refused`] with the sentence for the asker.
    pub fn answer(&self, values: &Map<String, Value>) -> Result<Value, Refused> {
        let keys: Vec<&'static Key> = self.keys().collect();
        let asked = Asked::check(values, keys, self.name)?;
        (self.sum)(&asked)?.finish()
    }
}
