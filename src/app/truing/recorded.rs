//! Recorded: what True and Finish write down, named to the last fact so that it can be tried again from anywhere.

use evenwall_piece::fact::{End, Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{CrackAnswer, TrueDecision};

use super::{TruingAction, TruingSheet};
use crate::action::Action;
use crate::app::{App, AppError};
use crate::measured::Refused;
use crate::numbers::Quantity;
use crate::piece::{DayChoice, PieceAction};
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;

/// Where the turner is led afterwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leads {
    /// The page stays.
    Nowhere,
    /// To how the piece ended.
    Ending,
}

/// Facts to be recorded in one line, and what is said of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Recorded {
    /// The piece.
    pub piece: PieceId,
    /// When it happened.
    pub at: Moment,
    /// What happened.
    pub facts: Vec<PieceFact>,
    /// What was done, for the undo bar.
    pub said: String,
    /// Where the turner is led afterwards.
    pub leads: Leads,
}

/// The most characters of own words that are kept.
const MOST_WORDS: usize = 10_000;

pub(super) fn own_words(text: &str) -> String {
    text.trim().chars().take(MOST_WORDS).collect()
}

impl App {
    pub(super) fn write_truing(&mut self, recorded: Recorded, now: Moment) -> Result<(), AppError> {
        let Recorded {
            piece,
            at,
            facts,
            said,
            leads,
        } = recorded;
        self.record(&piece, at, facts, now)?;
        self.close_truing_sheet();
        if leads == Leads::Ending {
            self.open_page(Page::Ending(piece), now);
        }
        self.say(said);
        Ok(())
    }

    /// Records it now; should that fail, exactly this is tried again.
    pub(super) fn write_truing_now(
        &mut self,
        recorded: Recorded,
        now: Moment,
    ) -> Result<(), AppError> {
        self.retry_with(Action::Truing(TruingAction::Write(Box::new(
            recorded.clone(),
        ))));
        self.write_truing(recorded, now)
    }

    pub(super) fn answer_cracks(
        &mut self,
        piece: &PieceId,
        answer: CrackAnswer,
        now: Moment,
    ) -> Result<(), AppError> {
        let mark = self.mark_of(piece);
        let words = self.words();
        let text = words.text(&format!("crack-answer-{}", answer.key()));
        let said = words.with(
            "trueup-said-cracks",
            &[("mark", mark.into()), ("answer", text.into())],
        );
        let recorded = Recorded {
            piece: piece.clone(),
            at: now,
            facts: vec![PieceFact::Cracks(answer)],
            said,
            leads: Leads::Nowhere,
        };
        self.write_truing_now(recorded, now)
    }

    /// Reads what the sheet holds and records it. What cannot be read is said in the sheet.
    pub(super) fn save_truing(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(sheet) = self.states.truing.sheet else {
            return Ok(());
        };
        if self.says_the_same(sheet) {
            self.close_truing_sheet();
            return Ok(());
        }
        match self.read_sheet(sheet, now) {
            Ok(Some(recorded)) => self.write_truing_now(recorded, now),
            Ok(None) | Err(Refused) => Ok(()),
        }
    }

    /// True where the sheet holds what is recorded already: its figures are rounded, and would be recorded so.
    fn says_the_same(&self, sheet: TruingSheet) -> bool {
        let Some(finish) = self.truing_piece().map(|p| &p.finish) else {
            return false;
        };
        let state = &self.states.truing;
        let (first, second) = (&state.first.text, &state.second.text);
        match sheet {
            TruingSheet::Oval => {
                self.trueup_two_recorded()
                    .is_some_and(|(longest_mm, shortest_mm)| {
                        let quantity = Quantity::OutsideDiameter;
                        self.still_reads(quantity, first, &longest_mm)
                            && self.still_reads(quantity, second, &shortest_mm)
                    })
            }
            TruingSheet::Spigot => finish
                .spigot_mm
                .as_ref()
                .is_some_and(|size| self.still_reads(Quantity::SpigotDiameter, first, size)),
            TruingSheet::Decision => finish
                .decision
                .as_ref()
                .is_some_and(|(_, d, why)| state.decision == Some(*d) && own_words(first) == *why),
            TruingSheet::Signed => finish
                .signed
                .as_ref()
                .is_some_and(|(_, text)| own_words(first) == *text),
            TruingSheet::Where | TruingSheet::Round | TruingSheet::Grits | TruingSheet::Coat => {
                false
            }
        }
    }

    /// True where a field still reads as a measure was put into it.
    pub(super) fn still_reads(&self, quantity: Quantity, text: &str, measure: &Measure) -> bool {
        text.trim() == self.as_typed(quantity, measure).trim()
    }

    fn read_sheet(&mut self, sheet: TruingSheet, now: Moment) -> Result<Option<Recorded>, Refused> {
        let Some(piece) = self.truing_piece().map(|p| p.id.clone()) else {
            return Ok(None);
        };
        let text = own_words(&self.states.truing.first.text);
        let recorded = match sheet {
            TruingSheet::Oval => return self.read_oval(piece, now),
            TruingSheet::Round => return self.trueup_read_round(piece, now),
            TruingSheet::Where => {
                self.trueup_begin_readings();
                return Ok(None);
            }
            TruingSheet::Spigot => {
                let size = self.read_first(Quantity::SpigotDiameter)?;
                let shown = self.numbers().diameter_fine(size.value).text();
                let said = self.said_about(&piece, "trueup-said-spigot", &shown);
                self.recorded(piece, now, PieceFact::SpigotTrued(size), said)
            }
            TruingSheet::Decision => {
                let Some(decision) = self.states.truing.decision else {
                    return Ok(None);
                };
                let what = self
                    .words()
                    .text(&format!("true-decision-{}", decision.key()));
                let said = self.said_about(&piece, "trueup-said-decided", &what);
                let fact = PieceFact::TrueDecided {
                    decision,
                    reason: text,
                };
                Recorded {
                    leads: if decision == TrueDecision::Scrap {
                        Leads::Ending
                    } else {
                        Leads::Nowhere
                    },
                    ..self.recorded(piece, now, fact, said)
                }
            }
            TruingSheet::Grits => {
                let grits = self.grits_in_sheet();
                if grits.is_empty() {
                    return Ok(None);
                }
                let said = self.said_about(&piece, "finish-said-grits", &grits);
                self.recorded(piece, now, PieceFact::Grits(grits), said)
            }
            TruingSheet::Coat => {
                if text.is_empty() {
                    self.states.truing.first.error = self.words().text("finish-coat-wanted");
                    return Err(Refused);
                }
                let at = self.coat_moment(now)?;
                let said = self.said_about(&piece, "finish-said-coat", &text);
                Recorded {
                    at,
                    ..self.recorded(piece, now, PieceFact::Coat(text), said)
                }
            }
            TruingSheet::Signed => {
                if text.is_empty() {
                    self.states.truing.first.error = self.words().text("finish-signed-wanted");
                    return Err(Refused);
                }
                let said = self.said_about(&piece, "finish-said-signed", &text);
                self.recorded(piece, now, PieceFact::Signed(text), said)
            }
        };
        Ok(Some(recorded))
    }

    pub(super) fn recorded(
        &self,
        piece: PieceId,
        at: Moment,
        fact: PieceFact,
        said: String,
    ) -> Recorded {
        Recorded {
            piece,
            at,
            facts: vec![fact],
            said,
            leads: Leads::Nowhere,
        }
    }

    /// For words that want the mark and one thing more.
    pub(super) fn said_about(&self, piece: &PieceId, id: &str, what: &str) -> String {
        let what: String = what.chars().take(60).collect();
        let args = [("mark", self.mark_of(piece).into()), ("what", what.into())];
        self.words().with(id, &args)
    }

    pub(super) fn read_first(&mut self, quantity: Quantity) -> Result<Measure, Refused> {
        let mut field = self.states.truing.first.clone();
        let read = self.read_wanted_field(quantity, &mut field);
        self.states.truing.first = field;
        read
    }

    /// When the coat of the sheet went on: now, or noon of another day.
    fn coat_moment(&mut self, now: Moment) -> Result<Moment, Refused> {
        let today = now.date_naive();
        let back = |days| today.checked_sub_days(chrono::Days::new(days));
        let day = match self.states.truing.day {
            DayChoice::Today => return Ok(now),
            DayChoice::Yesterday => back(1),
            DayChoice::TwoDaysAgo => back(2),
            DayChoice::Typed => {
                let mut field = self.states.truing.second.clone();
                let read = self.read_day_field(&mut field, today, false);
                self.states.truing.second = field;
                Some(read?)
            }
        };
        Ok(match day {
            Some(day) if day != today => crate::piece::moving::noon(day, now),
            _ => now,
        })
    }

    /// Ends the piece as finished; where something is not recorded, that is said first.
    pub(super) fn finished(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(piece) = self.truing_piece() else {
            return Ok(());
        };
        let (id, missing) = (piece.id.clone(), self.not_recorded(piece));
        let end = Action::Piece(PieceAction::End {
            piece: id.clone(),
            end: End::Finished,
        });
        if missing.is_empty() {
            self.retry_with(end);
            return self.end_piece(&id, End::Finished, now);
        }
        let mark = self.mark_of(&id);
        let words = self.words();
        let question = Question {
            title: words.with("finish-ask-title", &[("mark", mark.into())]),
            text: words.with("finish-ask-text", &[("missing", missing.join(", ").into())]),
            choices: vec![
                Choice {
                    label: words.text("finish-ask-yes"),
                    style: ChoiceStyle::Primary,
                    action: Some(end),
                },
                Choice {
                    label: words.text("finish-ask-no"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.ask(question);
        Ok(())
    }
}
