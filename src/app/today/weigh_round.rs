//! Weigh round: one row a piece, numbers from the keys on the screen, a keyboard, or a scale that types.

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::round::{WeighWhich, weigh_round};
use evenwall_piece::weights::{WeightQuestion, question_for};

use super::TodayAction;
pub(crate) use super::weigh_round_state::{WeighDone, WeighOf, WeighRoundState};
use crate::action::Action;
use crate::app::{App, AppError};
use crate::drying::Pad;
use crate::numbers::keypad::{Key, Outcome};
use crate::numbers::{Entry, Parsed, Quantity};
use crate::question::{Choice, ChoiceStyle, Question};

/// What can be done on the weigh round.
#[derive(Debug, Clone, PartialEq)]
pub enum WeighAction {
    /// Touched a piece: its weight is the next to be typed.
    Pick(PieceId),
    /// Pressed a key on the screen or a keyboard.
    Key(Key),
    /// Took the figures so far as pounds.
    Pounds,
    /// Leaves the piece whose turn it is for another time.
    Skip,
    /// Weighed with what stood on the scale last time, or bare.
    Tare,
    /// Goes on with what was meant by a number that reads in two ways.
    Meant {
        /// The piece.
        piece: PieceId,
        /// What the scale said, g.
        mass: Measure,
        /// What stood on the scale with it, g.
        tare_g: f64,
    },
    /// Records a weight.
    Record {
        /// The piece.
        piece: PieceId,
        /// What the scale said, g.
        mass: Measure,
        /// What stood on the scale with it, g.
        tare_g: f64,
    },
    /// Takes the last weight back and goes back to its piece.
    Undo,
}

impl App {
    pub(super) fn enter_weigh_round(&mut self, there: bool, now: Moment) {
        if !there {
            self.states.today.weigh = None;
        } else if self.states.today.weigh.is_none() {
            let pieces: Vec<&Piece> = self.pieces().collect();
            let rows = self.with_bench(now, |bench| weigh_round(&pieces, bench, WeighWhich::Due));
            self.states.today.weigh = Some(WeighRoundState {
                order: rows
                    .into_iter()
                    .map(|r| WeighOf {
                        piece: r.piece,
                        last: r.last,
                        tare_g: r.tare_g,
                    })
                    .collect(),
                done: Vec::new(),
                at: None,
                keypad: Pad::default(),
                error: String::new(),
                bare: false,
            });
        }
    }

    /// What was weighed or skipped and stands.
    pub(super) fn weighed(&self) -> Vec<&WeighDone> {
        self.states.today.weigh.as_ref().map_or_else(Vec::new, |w| {
            w.done
                .iter()
                .filter(|d| d.line.as_ref().is_none_or(|l| self.stands(&d.piece, l)))
                .collect()
        })
    }

    /// The piece whose turn it is: the one touched, else the next after it, else the first that is left.
    pub(super) fn to_weigh(&self) -> Option<&WeighOf> {
        let round = self.states.today.weigh.as_ref()?;
        let done = self.weighed();
        let open = |w: &&WeighOf| {
            done.iter().all(|d| d.piece != w.piece)
                && self.piece(&w.piece).is_some_and(Piece::living)
        };
        let from = round
            .at
            .as_ref()
            .and_then(|at| round.order.iter().position(|w| w.piece == *at))
            .unwrap_or(0);
        let (before, after) = round.order.split_at(from);
        after.iter().find(open).or_else(|| before.iter().find(open))
    }

    /// What is on the scale with the piece whose turn it is, g.
    pub(super) fn tare_now(&self) -> f64 {
        let bare = self.states.today.weigh.as_ref().is_some_and(|w| w.bare);
        self.to_weigh()
            .filter(|_| !bare)
            .map_or(0.0, |w| w.tare_g.max(0.0))
    }

    pub(super) fn apply_weigh_round(
        &mut self,
        action: WeighAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            WeighAction::Record {
                piece,
                mass,
                tare_g,
            } => return self.round_record_weight(&piece, mass, tare_g, now),
            WeighAction::Meant {
                piece,
                mass,
                tare_g,
            } => return self.check_weight(&piece, mass, tare_g, now),
            WeighAction::Key(key) => return self.round_weigh_key(key, now),
            WeighAction::Undo => return self.undo_weight(now),
            WeighAction::Pick(piece) => self.round_pick(&piece),
            WeighAction::Pounds => {
                if let Some(round) = self.states.today.weigh.as_mut() {
                    round.keypad.take_pounds();
                }
            }
            WeighAction::Skip => self.skip_weighing(),
            WeighAction::Tare => {
                if let Some(round) = self.states.today.weigh.as_mut() {
                    round.bare = !round.bare;
                }
            }
        }
        Ok(())
    }

    /// A piece weighed already is weighed again: its earlier weight stays in the diary.
    fn round_pick(&mut self, piece: &PieceId) {
        if let Some(round) = self.states.today.weigh.as_mut() {
            round.at = Some(piece.clone());
            round.done.retain(|d| d.piece != *piece);
            round.keypad.clear();
            round.error.clear();
            round.bare = false;
        }
    }

    fn skip_weighing(&mut self) {
        let Some(piece) = self.to_weigh().map(|w| w.piece.clone()) else {
            return;
        };
        let mark = self.mark_of(&piece);
        let said = self
            .words()
            .with("weigh-round-said-skipped", &[("mark", mark.into())]);
        if let Some(round) = self.states.today.weigh.as_mut() {
            round.at = Some(piece.clone());
            round.keypad.clear();
            round.error.clear();
            round.done.push(WeighDone {
                piece,
                line: None,
                net_g: 0.0,
                said,
            });
        }
    }

    fn round_weigh_key(&mut self, key: Key, now: Moment) -> Result<(), AppError> {
        let Some(piece) = self.to_weigh().map(|w| w.piece.clone()) else {
            return Ok(());
        };
        let numbers = self.numbers();
        let tare_g = self.tare_now();
        let Some(round) = self.states.today.weigh.as_mut() else {
            return Ok(());
        };
        let typed = round.keypad.text();
        round.error.clear();
        match round.keypad.press(key, Quantity::Weight, &numbers) {
            Outcome::Nothing | Outcome::Editing => Ok(()),
            Outcome::Commit(Err(error)) => {
                round.error = error.message(&numbers, Quantity::Weight);
                Ok(())
            }
            Outcome::Commit(Ok(Parsed::Value(Entry { value, typed, .. }))) => {
                self.check_weight(&piece, Measure { value, typed }, tare_g, now)
            }
            Outcome::Commit(Ok(Parsed::Ask { readings, why, .. })) => {
                let choices = readings
                    .iter()
                    .filter(|r| r.allowed)
                    .map(|r| Choice {
                        label: numbers.label(r),
                        style: ChoiceStyle::Plain,
                        action: Some(Action::Today(TodayAction::Weigh(WeighAction::Meant {
                            piece: piece.clone(),
                            mass: Measure {
                                value: r.value,
                                typed: typed.trim().to_owned(),
                            },
                            tare_g,
                        }))),
                    })
                    .collect();
                let question = Question {
                    title: numbers.question(&readings),
                    text: numbers.reason(Quantity::Weight, typed.trim(), why),
                    choices,
                    caution: false,
                };
                self.ask(question);
                Ok(())
            }
        }
    }

    /// Records a weight, or asks about one that drying does not explain.
    fn check_weight(
        &mut self,
        id: &PieceId,
        mass: Measure,
        tare_g: f64,
        now: Moment,
    ) -> Result<(), AppError> {
        let net_g = mass.value - tare_g;
        let words = self.words();
        let numbers = self.numbers();
        if net_g <= 0.0 {
            let text = words.with(
                "weigh-round-under-tare",
                &[
                    ("mass", numbers.mass(mass.value).text().into()),
                    ("tare", numbers.mass(tare_g).text().into()),
                ],
            );
            if let Some(round) = self.states.today.weigh.as_mut() {
                round.error = text;
            }
            return Ok(());
        }
        let question = self
            .piece(id)
            .and_then(|p| question_for(p, self.shop(), now, net_g));
        let Some(question) = question else {
            return self.round_record_weight(id, mass, tare_g, now);
        };
        let new = numbers.mass(net_g).text();
        let mark = self.mark_of(id);
        let (title, text, pct, last_g) = match question {
            WeightQuestion::HeavierThanLast { gain_pct, last_g } => (
                "weigh-round-heavier",
                "weigh-round-heavier-text",
                gain_pct,
                last_g,
            ),
            WeightQuestion::LighterThanLast { loss_pct, last_g } => (
                "weigh-round-lighter",
                "weigh-round-lighter-text",
                loss_pct,
                last_g,
            ),
        };
        let question = Question {
            title: words.with(title, &[("mark", mark.into())]),
            text: words.with(
                text,
                &[
                    ("new", new.as_str().into()),
                    ("last", numbers.mass(last_g).text().into()),
                    ("part", numbers.percent(pct.max(1.0)).text().into()),
                ],
            ),
            choices: vec![
                Choice {
                    label: words.with("weigh-round-keep", &[("weight", new.as_str().into())]),
                    style: ChoiceStyle::Primary,
                    action: Some(Action::Today(TodayAction::Weigh(WeighAction::Record {
                        piece: id.clone(),
                        mass,
                        tare_g,
                    }))),
                },
                Choice {
                    label: words.text("weigh-round-again"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.ask(question);
        Ok(())
    }

    fn round_record_weight(
        &mut self,
        id: &PieceId,
        mass: Measure,
        tare_g: f64,
        now: Moment,
    ) -> Result<(), AppError> {
        self.retry_with(Action::Today(TodayAction::Weigh(WeighAction::Record {
            piece: id.clone(),
            mass: mass.clone(),
            tare_g,
        })));
        let net_g = mass.value - tare_g;
        let fact = PieceFact::Weighed {
            mass_g: mass,
            tare_g,
        };
        let line = self.record(id, now, vec![fact], now)?;
        let step = self.shop().scale_step_at(now);
        let weight = self.numbers().mass_by_scale(net_g, step).text();
        let mark = self.mark_of(id);
        let said = self.words().with(
            "weigh-round-said",
            &[("mark", mark.into()), ("weight", weight.into())],
        );
        if let Some(round) = self.states.today.weigh.as_mut() {
            round.at = Some(id.clone());
            round.keypad.clear();
            round.error.clear();
            round.bare = false;
            round.done.push(WeighDone {
                piece: id.clone(),
                line: Some(line),
                net_g,
                said: said.clone(),
            });
        }
        self.say(said);
        Ok(())
    }

    fn undo_weight(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(last) = self.weighed().last().map(|d| (*d).clone()) else {
            return Ok(());
        };
        match &last.line {
            None => {}
            Some(line) => {
                let ours = self
                    .undo
                    .last_done()
                    .is_some_and(|s| s.lines.iter().any(|(_, l)| l == line));
                if !ours {
                    return Ok(());
                }
                self.undo_last(now)?;
            }
        }
        if let Some(round) = self.states.today.weigh.as_mut() {
            round.at = Some(last.piece.clone());
            round.keypad.clear();
            round.error.clear();
            if last.line.is_none() {
                round.done.retain(|d| *d != last);
            }
        }
        Ok(())
    }
}
