//! Oval entry: longest and shortest diameter, of the widest place or of a station.

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, SectionMeasured};

use super::recorded::Recorded;
use super::{TruingAction, TruingSheet, TruingState};
use crate::action::Action;
use crate::app::App;
use crate::measured::{Field, Refused};
use crate::numbers::Quantity;
use crate::question::{Choice, ChoiceStyle, Question};

impl App {
    /// Opens the sheet of two diameters: of a station, or of the widest place.
    pub(super) fn open_oval_sheet(&mut self, station: Option<u8>) {
        self.states.truing = TruingState {
            of: self.states.truing.of.clone(),
            shown: self.states.truing.shown,
            sheet: Some(TruingSheet::Oval),
            station,
            ..TruingState::default()
        };
        if let Some((longest_mm, shortest_mm)) = self.trueup_two_recorded() {
            let quantity = Quantity::OutsideDiameter;
            let (first, second) = (
                self.as_typed(quantity, &longest_mm),
                self.as_typed(quantity, &shortest_mm),
            );
            self.states.truing.first = Field::of(first);
            self.states.truing.second = Field::of(second);
        }
        self.undo.hide();
    }

    /// The two diameters that are recorded where the sheet asks for them.
    pub(super) fn trueup_two_recorded(&self) -> Option<(Measure, Measure)> {
        let finish = &self.truing_piece()?.finish;
        let Some(station) = self.states.truing.station else {
            let oval = finish.oval.as_ref()?;
            return Some((oval.longest_mm.clone(), oval.shortest_mm.clone()));
        };
        match &finish.ovals.get(&station)?.measured {
            SectionMeasured::Two {
                longest_mm,
                shortest_mm,
            } => Some((longest_mm.clone(), shortest_mm.clone())),
            SectionMeasured::Round { .. } => None,
        }
    }

    /// Longest and shortest; where the shortest is the longer one, whether they were swapped is asked.
    pub(super) fn read_oval(
        &mut self,
        piece: PieceId,
        now: Moment,
    ) -> Result<Option<Recorded>, Refused> {
        let quantity = Quantity::OutsideDiameter;
        let old = self.trueup_two_recorded();
        // What reads the same was not measured again: it keeps its figure.
        let kept = |measure: Option<Measure>, text: &str| {
            measure.filter(|m| self.still_reads(quantity, text, m))
        };
        let state = &self.states.truing;
        let (old_longest, old_shortest) = old.unzip();
        let longest = kept(old_longest, &state.first.text);
        let shortest = kept(old_shortest, &state.second.text);
        let longest = match longest {
            Some(longest) => Ok(longest),
            None => self.read_first(quantity),
        };
        let shortest = match shortest {
            Some(shortest) => Ok(shortest),
            None => {
                let mut field = self.states.truing.second.clone();
                let read = self.read_wanted_field(quantity, &mut field);
                self.states.truing.second = field;
                read
            }
        };
        let (longest, shortest) = (longest?, shortest?);
        if shortest.value > longest.value {
            let swapped = self.oval_recorded(piece, shortest.clone(), longest.clone(), now);
            let numbers = self.numbers();
            let question = Question {
                title: self.words().text("trueup-swapped-title"),
                text: self.words().with(
                    "trueup-swapped-text",
                    &[
                        (
                            "shortest",
                            numbers.length_fine(shortest.value).text().into(),
                        ),
                        ("longest", numbers.length_fine(longest.value).text().into()),
                    ],
                ),
                choices: vec![
                    Choice {
                        label: self.words().text("trueup-swapped-yes"),
                        style: ChoiceStyle::Primary,
                        action: Some(Action::Truing(TruingAction::Write(Box::new(swapped)))),
                    },
                    Choice {
                        label: self.words().text("trueup-swapped-no"),
                        style: ChoiceStyle::Plain,
                        action: None,
                    },
                ],
                caution: false,
            };
            self.ask(question);
            return Ok(None);
        }
        Ok(Some(self.oval_recorded(piece, longest, shortest, now)))
    }

    fn oval_recorded(
        &self,
        piece: PieceId,
        longest_mm: Measure,
        shortest_mm: Measure,
        now: Moment,
    ) -> Recorded {
        let numbers = self.numbers();
        let what = self.words().with(
            "piece-oval",
            &[
                (
                    "longest",
                    numbers.diameter_fine(longest_mm.value).number.into(),
                ),
                (
                    "shortest",
                    numbers.diameter_fine(shortest_mm.value).text().into(),
                ),
            ],
        );
        let said = self.said_about(&piece, "trueup-said-oval", &what);
        let fact = match self.states.truing.station {
            None => PieceFact::Oval {
                longest_mm,
                shortest_mm,
            },
            Some(station) => PieceFact::OvalAt {
                station,
                longest_mm,
                shortest_mm,
            },
        };
        self.recorded(piece, now, fact, said)
    }
}
