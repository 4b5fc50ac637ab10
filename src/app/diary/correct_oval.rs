//! Correct an oval: all its figures stand in one field, parted by semicolons or crosses.

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::vocabulary::RoundHow;

use crate::app::App;
use crate::numbers::{Parsed, Quantity};

/// What the figures of an oval are, and the figures; `None` for any other fact.
fn figures(fact: &PieceFact) -> Option<(Quantity, Vec<&Measure>)> {
    match fact {
        PieceFact::Oval {
            longest_mm,
            shortest_mm,
        }
        | PieceFact::OvalAt {
            longest_mm,
            shortest_mm,
            ..
        } => Some((Quantity::OutsideDiameter, vec![longest_mm, shortest_mm])),
        PieceFact::OvalRound { how, readings, .. } => {
            let quantity = match how {
                RoundHow::Diameters => Quantity::OutsideDiameter,
                RoundHow::FromCentre => Quantity::FromCentre,
            };
            Some((quantity, readings.iter().map(|r| &r.mm).collect()))
        }
        _ => None,
    }
}

/// The same oval with other figures, as many as it has.
fn with_figures(fact: &PieceFact, mut new: Vec<Measure>) -> PieceFact {
    let mut fact = fact.clone();
    match &mut fact {
        PieceFact::Oval {
            longest_mm,
            shortest_mm,
        }
        | PieceFact::OvalAt {
            longest_mm,
            shortest_mm,
            ..
        } => {
            if let (Some(shortest), Some(longest)) = (new.pop(), new.pop()) {
                (*longest_mm, *shortest_mm) = (longest, shortest);
            }
        }
        PieceFact::OvalRound { readings, .. } => {
            for (reading, mm) in readings.iter_mut().zip(new) {
                reading.mm = mm;
            }
        }
        _ => {}
    }
    fact
}

impl App {
    /// The figures of an oval in one text with their unit; `None` for any other fact.
    pub(super) fn oval_to_type(&self, fact: &PieceFact) -> Option<(String, String)> {
        let (_, figures) = figures(fact)?;
        let shown: Vec<_> = figures
            .iter()
            .map(|m| self.numbers().diameter_fine(m.value))
            .collect();
        let unit = shown.first().map_or_else(String::new, |s| s.unit.clone());
        let all: Vec<String> = shown.into_iter().map(|s| s.number).collect();
        Some((all.join("; "), unit))
    }

    /// The oval with the figures that were typed; `None` where the fact is none, or nothing was changed. What reads as it was
    /// shown keeps its figure.
    ///
    /// # Errors
    /// A sentence: what was found, what is allowed, what to do.
    pub(super) fn corrected_oval(
        &self,
        fact: &PieceFact,
        typed: &str,
    ) -> Result<Option<PieceFact>, String> {
        let Some((quantity, old)) = figures(fact) else {
            return Ok(None);
        };
        let parts: Vec<&str> = typed
            .split([';', '×', 'x', '\n'])
            .map(str::trim)
            .filter(|p| !p.is_empty())
            .collect();
        let (words, numbers) = (self.words(), self.numbers());
        if parts.len() != old.len() {
            let count = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
            return Err(words.with(
                "diary-several",
                &[
                    ("found", count(parts.len()).into()),
                    ("wanted", count(old.len()).into()),
                ],
            ));
        }
        let mut new = Vec::with_capacity(old.len());
        for (part, old) in parts.into_iter().zip(old) {
            if numbers.diameter_fine(old.value).number == part {
                new.push(old.clone());
                continue;
            }
            new.push(match numbers.parse(quantity, part) {
                Ok(Parsed::Value(entry)) => Measure {
                    value: entry.value,
                    typed: entry.typed,
                },
                Ok(Parsed::Ask {
                    typed,
                    readings,
                    why,
                }) => {
                    return Err(format!(
                        "{} {}",
                        numbers.reason(quantity, &typed, why),
                        numbers.question(&readings)
                    ));
                }
                Err(error) => return Err(error.message(&numbers, quantity)),
            });
        }
        let two = !matches!(fact, PieceFact::OvalRound { .. });
        if two && new[1].value > new[0].value {
            return Err(words.text("diary-several-swapped"));
        }
        let corrected = with_figures(fact, new);
        Ok((corrected != *fact).then_some(corrected))
    }
}
