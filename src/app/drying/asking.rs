//! Asking: what the weighing page asks above the keys, which stay where they are.

use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::MassChange;
use evenwall_piece::weights::WeightQuestion;

use super::recording::NewWeight;
use super::view::{AskView, OptionView};
use crate::app::{App, AppError};
use crate::numbers::Parsed;

/// What the page asks, or says.
#[derive(Debug)]
pub(super) enum Asking {
    /// Which of several readings of what was typed is meant.
    Which(Parsed),
    /// The weight cannot be drying alone.
    Doubt {
        weight: NewWeight,
        question: WeightQuestion,
    },
    /// What changed the weight.
    Changed(NewWeight),
    /// A sentence about what was typed.
    Sentence(String),
}

fn answer(key: &str, text: String, likely: bool) -> OptionView {
    OptionView {
        key: key.to_owned(),
        text,
        chosen: likely,
    }
}

impl App {
    pub(super) fn weigh_ask_view(&self) -> Option<AskView> {
        let words = self.words();
        let numbers = self.numbers();
        Some(match self.states.drying.weigh.asking.as_ref()? {
            Asking::Which(parsed) => {
                let Parsed::Ask {
                    typed,
                    readings,
                    why,
                } = parsed
                else {
                    return None;
                };
                let quantity = if self.states.drying.weigh.entering_tare {
                    crate::numbers::Quantity::Tare
                } else {
                    crate::numbers::Quantity::Weight
                };
                let mut answers: Vec<OptionView> = readings
                    .iter()
                    .enumerate()
                    .filter(|(_, r)| r.allowed)
                    .map(|(i, r)| answer(&i.to_string(), numbers.label(r), true))
                    .collect();
                answers.push(answer("again", words.text("weigh-again"), false));
                AskView {
                    title: numbers.question(readings),
                    text: numbers.reason(quantity, typed, *why),
                    answers,
                }
            }
            Asking::Doubt { weight, question } => self.doubt_view(weight, *question),
            Asking::Changed(_) => {
                let mut answers: Vec<OptionView> = self
                    .mass_changes()
                    .into_iter()
                    .map(|c| answer(c.key, c.text, false))
                    .collect();
                answers.push(answer("again", words.text("weigh-again"), false));
                AskView {
                    title: words.text("weigh-changed-title"),
                    text: words.text("drying-changed-text"),
                    answers,
                }
            }
            Asking::Sentence(text) => AskView {
                title: words.text("refused-title"),
                text: text.clone(),
                answers: vec![answer("close", words.text("weigh-correct-it"), true)],
            },
        })
    }

    fn doubt_view(&self, weight: &NewWeight, question: WeightQuestion) -> AskView {
        let (words, numbers) = (self.words(), self.numbers());
        let step_g = self.shop().scale_step_at(weight.at);
        let (last_g, heavier) = match question {
            WeightQuestion::HeavierThanLast { last_g, .. } => (last_g, true),
            WeightQuestion::LighterThanLast { last_g, .. } => (last_g, false),
        };
        let args = [
            (
                "weight",
                numbers.mass_by_scale(weight.net_g(), step_g).text().into(),
            ),
            ("last", numbers.mass_by_scale(last_g, step_g).text().into()),
            (
                "difference",
                self.difference(last_g, weight.net_g(), step_g).into(),
            ),
        ];
        if heavier {
            AskView {
                title: words.with("weigh-heavier-title", &args),
                text: words.with("weigh-heavier-text", &args),
                answers: vec![
                    answer("again", words.text("weigh-bag-was-on"), true),
                    answer("right", words.text("weigh-is-right"), false),
                    answer("changed", words.text("weigh-something-changed"), false),
                ],
            }
        } else {
            AskView {
                title: words.with("weigh-lighter-title", &args),
                text: words.with("weigh-lighter-text", &args),
                answers: vec![
                    answer("again", words.text("weigh-again"), true),
                    answer("right", words.text("weigh-is-right"), false),
                    answer("changed", words.text("weigh-something-changed"), false),
                ],
            }
        }
    }

    /// Answers what the page asks. "Again" drops what was entered.
    pub(super) fn answer_weigh(
        &mut self,
        id: &PieceId,
        key: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let weigh = &mut self.states.drying.weigh;
        let asking = weigh.asking.take();
        if key == "again" {
            weigh.pad().0.clear();
            if !weigh.entering_tare {
                weigh.kept = None;
            }
            return Ok(());
        }
        match asking {
            Some(Asking::Which(parsed)) => match key.parse().ok().and_then(|i| parsed.choose(i)) {
                Some(entry) => self.weigh_read(id, entry, now),
                None => Ok(()),
            },
            Some(Asking::Doubt { weight, .. }) if key == "right" => self.record_weight(weight, now),
            Some(Asking::Doubt { weight, .. }) if key == "changed" => {
                weigh.asking = Some(Asking::Changed(weight));
                Ok(())
            }
            Some(Asking::Changed(weight)) => match MassChange::from_key(key) {
                Some(change) => {
                    let change = Some(change);
                    self.record_weight(NewWeight { change, ..weight }, now)
                }
                None => Ok(()),
            },
            _ => Ok(()),
        }
    }
}
