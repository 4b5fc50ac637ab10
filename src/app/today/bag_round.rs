//! Bag round: one bag a screen. An answer closes the keys for a moment, so that a second touch never lands on the next
//! bag.

use evenwall_piece::agenda::{Bench, standing};
use evenwall_piece::bag::{BagAct, BagState};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::round::bag_round;
use evenwall_piece::vocabulary::BagFeel;

use super::{BackDay, LookNote, Said, Seen, TodayAction};
use crate::action::Action;
use crate::app::{App, AppError};
use crate::question::{Choice, ChoiceStyle, Question};

/// For so long after an answer no other is taken, milliseconds.
pub const LOCKED_MS: i64 = 700;

/// What can be done on the bag round.
#[derive(Debug, Clone, PartialEq)]
pub enum BagAction {
    /// Answered the bag on screen.
    Answer(BagFeel),
    /// Records the answer to a bag.
    Record {
        /// The piece.
        piece: PieceId,
        /// The answer.
        given: Given,
        /// What was seen beside it.
        mould: bool,
        /// A crack was seen.
        crack: bool,
    },
    /// Ticked or unticked mould or crack.
    Tick(Seen),
    /// Not looked at: it stays due.
    Skip,
    /// Cannot find it.
    CantFind,
    /// Asks whether all that are left are damp.
    AskAllDamp,
    /// Records damp for these.
    AllDamp(Vec<PieceId>),
    /// Takes the last answer back and goes back to its bag.
    Undo,
    /// Looks at the skipped bags after all.
    Again,
}

/// What was said of a bag.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Given {
    /// How it feels.
    Felt(BagFeel),
    /// Not looked at.
    Skipped,
    /// Cannot be found.
    NotThere,
}

/// One bag answered.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BagDone {
    pub piece: PieceId,
    pub given: Given,
    /// The line that holds the answer; `None` for a bag that was skipped.
    pub line: Option<LineId>,
    /// What is to be done with the bag.
    pub act: Option<BagAct>,
    pub crack: bool,
    /// What the undo line says.
    pub said: String,
}

/// A round on its way.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct BagRoundState {
    pub order: Vec<PieceId>,
    /// Bags that could not be found before the round.
    pub missing: Vec<PieceId>,
    pub done: Vec<BagDone>,
    pub said: Vec<(PieceId, Said)>,
    pub answered_at: Option<Moment>,
    pub undone_at: Option<Moment>,
    /// Rises with every answer and every undo.
    pub turn: usize,
}

fn within(since: Option<Moment>, now: Moment) -> bool {
    since.is_some_and(|at| {
        let gone = now.signed_duration_since(at).num_milliseconds();
        (0..LOCKED_MS).contains(&gone)
    })
}

impl App {
    pub(super) fn enter_bag_round(&mut self, there: bool, now: Moment) {
        if !there {
            self.states.today.round = None;
        } else if self.states.today.round.is_none() {
            let pieces: Vec<&Piece> = self.pieces().collect();
            let round = self.with_bench(now, |bench| bag_round(&pieces, bench));
            self.states.today.round = Some(BagRoundState {
                order: round.bags.into_iter().map(|b| b.look.piece).collect(),
                missing: round.missing,
                ..BagRoundState::default()
            });
        }
    }

    /// The answers that stand.
    pub(super) fn bags_done(&self) -> Vec<&BagDone> {
        self.states.today.round.as_ref().map_or_else(Vec::new, |r| {
            r.done
                .iter()
                .filter(|d| d.line.as_ref().is_none_or(|l| self.stands(&d.piece, l)))
                .collect()
        })
    }

    /// The bags still to be answered, the one on screen first.
    pub(super) fn bags_left(&self) -> Vec<PieceId> {
        let done = self.bags_done();
        self.states.today.round.as_ref().map_or_else(Vec::new, |r| {
            r.order
                .iter()
                .filter(|id| done.iter().all(|d| d.piece != **id))
                .filter(|id| self.piece(id).is_some_and(Piece::living))
                .cloned()
                .collect()
        })
    }

    /// What was ticked for a bag.
    pub(super) fn bag_said(&self, piece: &PieceId) -> Said {
        let round = self.states.today.round.as_ref();
        round
            .and_then(|r| r.said.iter().find(|(id, _)| id == piece))
            .map(|(_, s)| *s)
            .unwrap_or_default()
    }

    pub(super) fn apply_bag_round(
        &mut self,
        action: BagAction,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(round) = self.states.today.round.as_ref() else {
            return Ok(());
        };
        let (answered_at, undone_at) = (round.answered_at, round.undone_at);
        let locked = within(answered_at, now) || within(undone_at, now);
        let current = self.bags_left().first().cloned();
        match (action, current) {
            (
                BagAction::Record {
                    piece,
                    given,
                    mould,
                    crack,
                },
                _,
            ) => self.record_bag(
                &piece,
                given,
                Said {
                    mould,
                    crack,
                    day: BackDay::Today,
                },
                now,
            ),
            (BagAction::AllDamp(pieces), _) => self.all_damp(&pieces, now),
            (BagAction::Undo, _) if within(undone_at, now) => Ok(()),
            (BagAction::Undo, _) => self.undo_bag(now),
            (BagAction::Again, _) => {
                if let Some(round) = self.states.today.round.as_mut() {
                    round.done.retain(|d| d.given != Given::Skipped);
                }
                Ok(())
            }
            (_, _) if locked => Ok(()),
            (BagAction::Answer(feel), Some(piece)) => {
                let said = self.bag_said(&piece);
                self.record_bag(&piece, Given::Felt(feel), said, now)
            }
            (BagAction::Skip, Some(piece)) => {
                let said = self.bag_said(&piece);
                self.record_bag(&piece, Given::Skipped, said, now)
            }
            (BagAction::CantFind, Some(piece)) => {
                let said = self.bag_said(&piece);
                self.record_bag(&piece, Given::NotThere, said, now)
            }
            (BagAction::Tick(seen), Some(piece)) => {
                self.tick_bag(&piece, seen);
                Ok(())
            }
            (BagAction::AskAllDamp, Some(_)) => {
                self.ask_all_damp();
                Ok(())
            }
            (_, None) => Ok(()),
        }
    }

    fn tick_bag(&mut self, piece: &PieceId, seen: Seen) {
        let mut said = self.bag_said(piece);
        match seen {
            Seen::Mould => said.mould = !said.mould,
            Seen::Crack => said.crack = !said.crack,
        }
        if let Some(round) = self.states.today.round.as_mut() {
            round.said.retain(|(id, _)| id != piece);
            round.said.push((piece.clone(), said));
        }
    }

    fn record_bag(
        &mut self,
        piece: &PieceId,
        given: Given,
        said: Said,
        now: Moment,
    ) -> Result<(), AppError> {
        let Said { mould, crack, .. } = said;
        self.retry_with(Action::Today(TodayAction::Bag(BagAction::Record {
            piece: piece.clone(),
            given,
            mould,
            crack,
        })));
        let mark = self.mark_of(piece);
        let words = self.words();
        let (fact, text, act) = match given {
            Given::Skipped => {
                let text = words.with("bag-round-said-skipped", &[("mark", mark.into())]);
                (None, text, None)
            }
            Given::NotThere => {
                let text = words.with("today-said-not-found", &[("mark", mark.into())]);
                (Some(PieceFact::NotFound), text, None)
            }
            Given::Felt(feel) => {
                let note = LookNote {
                    piece: piece.clone(),
                    feel: Some(feel),
                    mould,
                    crack,
                    day: BackDay::Today,
                    row: String::new(),
                };
                let (what, act) = self.look_words(&note, now);
                let text = words.with(
                    "today-said-looked",
                    &[
                        ("mark", mark.into()),
                        ("what", what.into()),
                        ("act", act.into()),
                    ],
                );
                let outcome = self
                    .piece(piece)
                    .and_then(|p| self.outcome(p, Some(feel), mould, now));
                let fact = PieceFact::Look {
                    feel: Some(feel),
                    mould,
                    crack,
                };
                (Some(fact), text, outcome.map(|o| o.act))
            }
        };
        let line = match fact {
            Some(fact) => Some(self.record(piece, now, vec![fact], now)?),
            None => None,
        };
        if line.is_some() {
            self.say(text.clone());
        }
        let done = BagDone {
            piece: piece.clone(),
            given,
            line,
            act,
            crack: crack && matches!(given, Given::Felt(_)),
            said: text,
        };
        if let Some(round) = self.states.today.round.as_mut() {
            round.done.push(done);
            round.answered_at = Some(now);
            round.turn += 1;
        }
        Ok(())
    }

    fn ask_all_damp(&mut self) {
        let left = self.bags_left();
        let words = self.words();
        let question = Question {
            title: words.with("bag-round-all-title", &[("n", left.len().into())]),
            text: words.text("bag-round-all-text"),
            choices: vec![
                Choice {
                    label: words.text("bag-round-all-yes"),
                    style: ChoiceStyle::Primary,
                    action: Some(Action::Today(TodayAction::Bag(BagAction::AllDamp(left)))),
                },
                Choice {
                    label: words.text("action-cancel"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.ask(question);
    }

    /// Damp for all these, in one step. What was kept before a failure is not recorded twice.
    fn all_damp(&mut self, pieces: &[PieceId], now: Moment) -> Result<(), AppError> {
        let left = self.bags_left();
        let mut n = 0_usize;
        let mut failed = None;
        for piece in pieces.iter().filter(|p| left.contains(p)) {
            let given = Given::Felt(BagFeel::Damp);
            let said = self.bag_said(piece);
            match self.record_bag(piece, given, said, now) {
                Ok(()) => n += 1,
                Err(error) => {
                    failed = Some(error);
                    break;
                }
            }
        }
        self.retry_with(Action::Today(TodayAction::Bag(BagAction::AllDamp(
            pieces.to_vec(),
        ))));
        if n > 0 {
            let said = self.words().with("bag-round-said-all", &[("n", n.into())]);
            if let Some(round) = self.states.today.round.as_mut() {
                for done in round.done.iter_mut().rev().take(n) {
                    done.said.clone_from(&said);
                }
            }
            self.say(said);
        }
        failed.map_or(Ok(()), Err)
    }

    /// Takes the last answer back. A skipped bag wrote nothing: it only comes back.
    fn undo_bag(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(last) = self.bags_done().last().map(|d| (*d).clone()) else {
            return Ok(());
        };
        match &last.line {
            None => {
                if let Some(round) = self.states.today.round.as_mut() {
                    round.done.retain(|d| *d != last);
                }
            }
            Some(line) => {
                // Only what this round wrote: an answer of another page stays.
                let ours = self
                    .undo
                    .last_done()
                    .is_some_and(|s| s.lines.iter().any(|(_, l)| l == line));
                if ours {
                    self.undo_last(now)?;
                }
            }
        }
        if let Some(round) = self.states.today.round.as_mut() {
            round.undone_at = Some(now);
            round.answered_at = None;
            round.turn += 1;
        }
        Ok(())
    }

    /// Rises with every answer and every undo of the round: the keys rest for a moment whenever it changes.
    #[must_use]
    pub fn bag_round_turn(&self) -> usize {
        self.states.today.round.as_ref().map_or(0, |r| r.turn)
    }

    /// The state of a piece's bag.
    pub(super) fn bag_state(&self, piece: &Piece, bench: &Bench<'_>) -> BagState {
        standing(piece, bench).map_or(BagState::Closed, |s| s.state)
    }
}
