//! Reads questions, writes one list of answers: what the command `evenwall reckon` does.

use std::io::{Read, Write};

use serde_json::{Map, Value};

use crate::asked::{in_words, quoted};
use crate::refused::Refused;
use crate::registry;

/// Most bytes of questions that are read.
pub const MOST_BYTES: u64 = 16_000_000;
/// Most questions in one run.
pub const MOST_QUESTIONS: usize = 5000;

/// Why there are no answers at all.
#[derive(Debug, thiserror::Error)]
pub enum Unreadable {
    /// The questions cannot be read.
    #[error("the questions cannot be read: {0}")]
    Read(std::io::Error),
    /// The answers cannot be written.
    #[error("the answers cannot be written: {0}")]
    Write(std::io::Error),
    /// More bytes than are read.
    #[error(
        "the questions are longer than {MOST_BYTES} bytes, the most that is read; put them in several files"
    )]
    TooLong,
    /// No JSON.
    #[error("the questions are not JSON: {0}; correct that place")]
    NotJson(serde_json::Error),
    /// JSON, but no questions.
    #[error(
        "the input is {found}, but must be a question, a list of questions, or {{\"questions\": [...]}}; write it so"
    )]
    NotQuestions {
        /// What it is.
        found: String,
    },
    /// Too many.
    #[error(
        "there are {found} questions, but at most {MOST_QUESTIONS} are answered at once; put them in several files"
    )]
    TooMany {
        /// How many.
        found: usize,
    },
}

/// Answers the questions in `input` on `output`: a JSON list with one answer a line, in the order of the questions.
///
/// A question that cannot be answered has its sentence in the list and the rest are answered all the same; that is no error
/// here.
///
/// # Errors
/// [`Unreadable`] when the input holds no questions in JSON, or the answers cannot be written.
pub fn run(input: impl Read, mut output: impl Write) -> Result<(), Unreadable> {
    let mut text = Vec::new();
    let mut input = input.take(MOST_BYTES + 1);
    input.read_to_end(&mut text).map_err(Unreadable::Read)?;
    if text.len() as u64 > MOST_BYTES {
        return Err(Unreadable::TooLong);
    }
    let text = text.strip_prefix(b"\xef\xbb\xbf").unwrap_or(&text);
    let questions = questions(serde_json::from_slice(text).map_err(Unreadable::NotJson)?)?;
    let mut write = |text: &str| output.write_all(text.as_bytes()).map_err(Unreadable::Write);
    write("[")?;
    for (i, question) in questions.iter().enumerate() {
        write(if i == 0 { "\n" } else { ",\n" })?;
        write(&answer(question).to_string())?;
    }
    write("\n]\n")?;
    output.flush().map_err(Unreadable::Write)
}

/// The questions in what was read: a list, an object with `questions`, or one question.
fn questions(read: Value) -> Result<Vec<Value>, Unreadable> {
    let list = match read {
        Value::Array(list) => list,
        Value::Object(mut map) if map.contains_key("questions") && !map.contains_key("ask") => {
            match (map.remove("questions"), map.keys().next()) {
                (Some(Value::Array(list)), None) => list,
                (other, None) => {
                    return Err(Unreadable::NotQuestions {
                        found: format!(
                            "an object whose `questions` is {}",
                            in_words(other.as_ref())
                        ),
                    });
                }
                (_, Some(other)) => {
                    return Err(Unreadable::NotQuestions {
                        found: format!("an object with `questions` and also {}", quoted(other)),
                    });
                }
            }
        }
        one @ Value::Object(_) => vec![one],
        other => {
            return Err(Unreadable::NotQuestions {
                found: in_words(Some(&other)),
            });
        }
    };
    if list.len() > MOST_QUESTIONS {
        return Err(Unreadable::TooMany { found: list.len() });
    }
    Ok(list)
}

/// The answer to one question: `id` and `ask` as given, then `answer` or `error`.
#[must_use]
pub fn answer(question: &Value) -> Value {
    let mut whole = Map::new();
    for key in ["id", "ask"] {
        if let Some(given) = question.get(key) {
            whole.insert(key.to_owned(), given.clone());
        }
    }
    match answer_of(question) {
        Ok(answer) => whole.insert("answer".to_owned(), answer),
        Err(refused) => whole.insert("error".to_owned(), refused.to_string().into()),
    };
    Value::Object(whole)
}

fn answer_of(question: &Value) -> Result<Value, Refused> {
    let Value::Object(values) = question else {
        return Err(Refused::NotAnObject {
            found: in_words(Some(question)),
        });
    };
    let Some(name) = values.get("ask").and_then(Value::as_str) else {
        return Err(Refused::NoAsk {
            found: in_words(values.get("ask")),
            all: registry::names(),
        });
    };
    let question = registry::find(name).ok_or_else(|| Refused::Unknown {
        found: quoted(name),
        all: registry::names(),
    })?;
    question.answer(values)
}
