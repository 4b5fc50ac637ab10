//! Asking: what the page asks beside the keys, which stay where they are.

use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;

use super::record::ReadingEntry;
use super::spot::Spot;
use crate::app::{App, AppError};
use crate::numbers::Parsed;

/// What the page asks, or says.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Asking {
    /// Which of several readings of what was typed is meant.
    Which {
        /// Where it was typed.
        spot: Spot,
        /// The readings.
        parsed: Parsed,
    },
    /// Thicker than before at this spot.
    Thicker {
        /// The reading.
        entry: Box<ReadingEntry>,
        /// What it was before, mm.
        last_mm: f64,
    },
    /// Over three times what is wanted.
    Thick {
        /// The reading.
        entry: Box<ReadingEntry>,
        /// What is wanted, mm.
        wanted_mm: f64,
    },
    /// A sentence about what was typed.
    Sentence(String),
}

/// One answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AnswerView {
    /// What comes back in [`super::WallAction::Answer`].
    pub id: String,
    /// Its text.
    pub text: String,
    /// The likely one.
    pub primary: bool,
}

/// What the page asks, with its answers.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AskView {
    /// The question.
    pub title: String,
    /// Why it is asked.
    pub text: String,
    /// The answers.
    pub answers: Vec<AnswerView>,
}

impl App {
    pub(super) fn ask_view(&self) -> Option<AskView> {
        let words = self.words();
        let numbers = self.numbers();
        let answer = |id: &str, text: String, primary| AnswerView {
            id: id.to_owned(),
            text,
            primary,
        };
        let keep_or_again = || {
            vec![
                answer("keep", words.text("wall-keep"), false),
                answer("again", words.text("wall-again"), true),
            ]
        };
        let shown = |entry: &ReadingEntry| {
            let mm = entry.wall_mm.as_ref().map_or(f64::NAN, |m| m.value);
            numbers.wall(mm).text()
        };
        Some(match self.states.wall.asking.as_ref()? {
            Asking::Which { parsed, .. } => {
                let Parsed::Ask {
                    typed,
                    readings,
                    why,
                } = parsed
                else {
                    return None;
                };
                let quantity = self.states.wall.keypad.as_ref()?.quantity();
                let mut answers: Vec<AnswerView> = readings
                    .iter()
                    .enumerate()
                    .filter(|(_, r)| r.allowed)
                    .map(|(i, r)| answer(&i.to_string(), numbers.label(r), true))
                    .collect();
                answers.push(answer("again", words.text("wall-again"), false));
                AskView {
                    title: numbers.question(readings),
                    text: numbers.reason(quantity, typed, *why),
                    answers,
                }
            }
            Asking::Thicker { entry, last_mm } => AskView {
                title: words.text("wall-thicker-title"),
                text: words.with(
                    "wall-thicker-text",
                    &[
                        ("now", shown(entry).into()),
                        ("before", numbers.wall(*last_mm).text().into()),
                    ],
                ),
                answers: keep_or_again(),
            },
            Asking::Thick { entry, wanted_mm } => AskView {
                title: words.with("wall-thick-title", &[("now", shown(entry).into())]),
                text: words.with(
                    "wall-thick-text",
                    &[("wanted", numbers.wall(*wanted_mm).text().into())],
                ),
                answers: keep_or_again(),
            },
            Asking::Sentence(text) => AskView {
                title: words.text("refused-title"),
                text: text.clone(),
                answers: vec![answer("again", words.text("wall-again"), true)],
            },
        })
    }

    /// Answers what the page asks. "Again" drops what was entered.
    pub(super) fn answer(
        &mut self,
        id: &PieceId,
        answer: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let asking = self.states.wall.asking.take();
        let diameter = self.states.wall.diameter;
        match (asking, answer) {
            (Some(Asking::Thicker { entry, .. } | Asking::Thick { entry, .. }), "keep") => {
                self.record_reading(*entry, now)
            }
            (Some(Asking::Which { spot, parsed }), answer) if answer != "again" => {
                let chosen = answer.parse().ok().and_then(|i| parsed.choose(i));
                self.states.wall.keypad = None;
                match (chosen, diameter) {
                    (Some(entry), Some(station)) => self.diameter_read(id, station, entry, now),
                    (Some(entry), None) => self.number_read(id, spot, entry, now),
                    (None, _) => Ok(()),
                }
            }
            _ => {
                self.states.wall.keypad = None;
                Ok(())
            }
        }
    }
}
