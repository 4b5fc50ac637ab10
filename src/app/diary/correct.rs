//! Correct: which entries can be given another value, and how what was typed becomes one.

use evenwall_piece::fact::{Measure, PieceFact, StationRef};
use evenwall_piece::fold::lines_that_count;
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::line::in_fold_order;
use evenwall_piece::piece::Moment;

use super::choices::{closed, picked};
use crate::app::{App, AppError};
use crate::details;
use crate::numbers::{Parsed, Quantity};

/// How an entry is corrected.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Correctable {
    /// The present value as it can be typed again, or the key of the present choice.
    pub text: String,
    /// The unit beside the field.
    pub unit: String,
    /// Choices with key and words; empty where it is typed.
    pub choices: Vec<(&'static str, String)>,
    /// True for text of several lines.
    pub long: bool,
}

fn quantity_of(fact: &PieceFact) -> Option<(Quantity, f64)> {
    match fact {
        PieceFact::Reading(r) => {
            let quantity = match r.station {
                StationRef::Wall(_) => Quantity::WallReading,
                StationRef::Floor => Quantity::FloorReading,
            };
            r.wall_mm.as_ref().map(|m| (quantity, m.value))
        }
        PieceFact::Weighed { mass_g, .. } => Some((Quantity::Weight, mass_g.value)),
        PieceFact::OutsideDiameter {
            diameter_mm: Some(m),
            ..
        } => Some((Quantity::OutsideDiameter, m.value)),
        PieceFact::SpigotTrued(m) => Some((Quantity::SpigotDiameter, m.value)),
        _ => None,
    }
}

fn with_measure(fact: &PieceFact, measure: Measure) -> PieceFact {
    match fact.clone() {
        PieceFact::Reading(mut r) => {
            r.wall_mm = Some(measure);
            PieceFact::Reading(r)
        }
        PieceFact::Weighed { tare_g, .. } => PieceFact::Weighed {
            mass_g: measure,
            tare_g,
        },
        PieceFact::OutsideDiameter { station, .. } => PieceFact::OutsideDiameter {
            station,
            diameter_mm: Some(measure),
        },
        PieceFact::SpigotTrued(_) => PieceFact::SpigotTrued(measure),
        other => other,
    }
}

impl App {
    /// How a fact can be given another value; `None` where only its day can change.
    pub(super) fn correctable(&self, fact: &PieceFact) -> Option<Correctable> {
        if let Some((quantity, value)) = quantity_of(fact) {
            let shown = self.numbers().quantity(quantity, value);
            return Some(Correctable {
                text: shown.number,
                unit: shown.unit,
                choices: Vec::new(),
                long: false,
            });
        }
        let typed = |text: String, unit: String, long: bool| Correctable {
            text,
            unit,
            choices: Vec::new(),
            long,
        };
        if let Some((text, unit)) = self.oval_to_type(fact) {
            let long = matches!(fact, PieceFact::OvalRound { .. });
            return Some(typed(text, unit, long));
        }
        if let Some(list) = closed(fact) {
            let word = |key: &&'static str| {
                let text = self.words().text(&format!("{}-{key}", list.prefix));
                (*key, text)
            };
            return Some(Correctable {
                text: list.now.to_owned(),
                unit: String::new(),
                choices: list.keys.iter().map(word).collect(),
                long: false,
            });
        }
        match fact {
            PieceFact::Detail {
                field,
                value: Some(value),
            } => {
                let choices = details::choices(self, *field);
                let text = match value {
                    evenwall_piece::detail::DetailValue::Text(key) if !choices.is_empty() => {
                        key.clone()
                    }
                    _ => details::value_text(self, *field, value),
                };
                Some(Correctable {
                    text,
                    unit: details::unit(self, *field),
                    choices,
                    long: *field == evenwall_piece::detail::DetailField::Notes,
                })
            }
            PieceFact::Note(text) => Some(typed(text.clone(), String::new(), true)),
            PieceFact::Grits(text) | PieceFact::Coat(text) | PieceFact::Signed(text) => {
                Some(typed(text.clone(), String::new(), false))
            }
            _ => None,
        }
    }

    /// The fact with the value that was typed or picked; `None` where the fact takes no other value.
    ///
    /// # Errors
    /// A sentence: what was found, what is allowed, what to do.
    pub(super) fn corrected(
        &self,
        fact: &PieceFact,
        typed: &str,
        now: Moment,
    ) -> Result<Option<PieceFact>, String> {
        if let Some((quantity, value)) = quantity_of(fact) {
            // What is shown is rounded: left as it is, the value stays as fine as it was recorded.
            if typed.trim() == self.numbers().quantity(quantity, value).number {
                return Ok(None);
            }
            let numbers = self.numbers();
            return match numbers.parse(quantity, typed) {
                Ok(Parsed::Value(entry)) => {
                    let measure = Measure {
                        value: entry.value,
                        typed: entry.typed,
                    };
                    Ok(Some(with_measure(fact, measure)))
                }
                Ok(Parsed::Ask {
                    typed,
                    readings,
                    why,
                }) => Err(format!(
                    "{} {}",
                    numbers.reason(quantity, &typed, why),
                    numbers.question(&readings)
                )),
                Err(error) => Err(error.message(&numbers, quantity)),
            };
        }
        if self.oval_to_type(fact).is_some() {
            return self.corrected_oval(fact, typed);
        }
        if closed(fact).is_some() {
            return Ok(picked(fact, typed));
        }
        Ok(match fact {
            PieceFact::Detail {
                field,
                value: Some(value),
            } => {
                if typed == details::value_text(self, *field, value) {
                    return Ok(None);
                }
                let value = details::understand(self, *field, typed, now)?;
                Some(PieceFact::Detail {
                    field: *field,
                    value,
                })
            }
            PieceFact::Note(_) => Some(PieceFact::Note(self.some_text(typed)?)),
            PieceFact::Grits(_) => Some(PieceFact::Grits(self.some_text(typed)?)),
            PieceFact::Coat(_) => Some(PieceFact::Coat(self.some_text(typed)?)),
            PieceFact::Signed(_) => Some(PieceFact::Signed(self.some_text(typed)?)),
            _ => None,
        })
    }

    fn some_text(&self, typed: &str) -> Result<String, String> {
        let text = typed.trim();
        if text.is_empty() {
            Err(self.words().text("diary-text-empty"))
        } else {
            Ok(text.to_owned())
        }
    }

    /// The lines that take a line back and count themselves.
    pub(super) fn retractions_of(
        &mut self,
        id: &PieceId,
        line: &LineId,
    ) -> Result<Vec<LineId>, AppError> {
        let ordered = in_fold_order(self.lines_of(id)?.clone());
        let retracts = |f: &PieceFact| match f {
            PieceFact::Retracts(target) => Some(target.clone()),
            _ => None,
        };
        let counting = lines_that_count(&ordered, |f| match f {
            PieceFact::Retracts(target) => Some(target),
            _ => None,
        });
        Ok(ordered
            .into_iter()
            .filter(|l| counting.contains(&l.id))
            .filter(|l| l.facts.iter().filter_map(retracts).any(|t| t == *line))
            .map(|l| l.id)
            .collect())
    }
}
