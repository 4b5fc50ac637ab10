//! Writing: what is recorded about a flaw, named to the last fact so that it can be tried again from anywhere.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::FlawChange;

use super::telling::looks_due;
use super::{AgainChoice, FlawForm, FlawsAction, FlawsState, Mode};
use crate::action::Action;
use crate::app::{App, AppError};
use crate::measured::Refused;
use crate::numbers::Quantity;
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;

/// Facts to be recorded in one line, and what is said of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Writing {
    /// The piece.
    pub piece: PieceId,
    /// What happened.
    pub facts: Vec<PieceFact>,
    /// What was done, for the undo bar.
    pub said: String,
    /// True where the list of flaws is shown afterwards, false where the flaw stays on screen.
    pub to_list: bool,
}

impl App {
    pub(super) fn write_flaw(&mut self, writing: Writing, now: Moment) -> Result<(), AppError> {
        let Writing {
            piece,
            facts,
            said,
            to_list,
        } = writing;
        self.record(&piece, now, facts, now)?;
        let on_top = matches!(self.route().page(), Some(Page::Flaw(id, _)) if *id == piece);
        if on_top {
            if to_list {
                self.route.replace(Page::Flaws(piece));
                self.entered(now);
            } else {
                let of = self.states.flaws.of.take();
                self.states.flaws = FlawsState {
                    of,
                    ..FlawsState::default()
                };
            }
        }
        self.say(said);
        Ok(())
    }

    /// Records it now; should that fail, exactly this is tried again.
    fn write_now(&mut self, writing: Writing, now: Moment) -> Result<(), AppError> {
        let action = FlawsAction::Write(Box::new(writing.clone()));
        self.retry_with(Action::Flaws(action));
        self.write_flaw(writing, now)
    }

    pub(super) fn save_flaw(&mut self, now: Moment) -> Result<(), AppError> {
        let mut form = self.states.flaws.form.clone();
        let size = self.read_field(Quantity::FlawSize, &mut form.size);
        let today = now.date_naive();
        let again = if form.treatment.is_some() && form.again == super::AgainChoice::Typed {
            self.read_day_field(&mut form.again_day, today, true)
                .map(Some)
        } else {
            Ok(form.again.day(today))
        };
        let (Ok(size), Ok(again)) = (size, again) else {
            // Where the fault is must be seen.
            form.more = true;
            self.states.flaws.form = form;
            return Ok(());
        };
        let Some(piece) = self.flaws_piece().map(|p| p.id.clone()) else {
            return Ok(());
        };
        let old = self
            .flaw_on_page()
            .map(|(_, f)| (f.entry.clone(), f.note.clone()));
        let writing = match (self.states.flaws.mode, old) {
            (Mode::See, None) => {
                let slug = self.new_slug("flaw");
                let flaw = FlawId::new(&slug).map_err(|e| AppError::Refused(e.to_string()))?;
                let Some(note) = form.note(flaw.clone(), size) else {
                    return Err(AppError::Refused(self.words().text("flaws-kind-wanted")));
                };
                let said = self.said_noted(&piece, &note, form.treatment);
                let mut facts = vec![PieceFact::FlawFound(note)];
                facts.extend(form.treated(flaw, again));
                Writing {
                    piece,
                    facts,
                    said,
                    to_list: true,
                }
            }
            (Mode::Treat, Some((_, note))) => {
                let Some(treatment) = form.treatment else {
                    return Err(AppError::Refused(
                        self.words().text("flaws-treatment-wanted"),
                    ));
                };
                Writing {
                    said: self.said_treated(&piece, &note, treatment),
                    facts: form.treated(note.flaw, again),
                    piece,
                    to_list: false,
                }
            }
            (Mode::Correct, Some((entry, old))) => {
                let Some(mut note) = form.note(old.flaw.clone(), size) else {
                    return Ok(());
                };
                // What reads the same was not changed: the figure keeps what was typed for it first.
                if form.size.text == self.size_text(&old) {
                    note.size_mm = old.size_mm.clone();
                }
                if note == old {
                    self.states.flaws.mode = Mode::See;
                    return Ok(());
                }
                Writing {
                    said: self.said_corrected(&piece, &note),
                    facts: vec![PieceFact::Amends {
                        entry,
                        at: None,
                        fact: Some(Box::new(PieceFact::FlawFound(note))),
                    }],
                    piece,
                    to_list: false,
                }
            }
            _ => return Ok(()),
        };
        self.write_now(writing, now)
    }

    pub(super) fn begin_correcting(&mut self) {
        let Some(note) = self.flaw_on_page().map(|(_, f)| f.note.clone()) else {
            return;
        };
        let size = self.size_text(&note);
        self.states.flaws.form = FlawForm::of(&note, size);
        self.states.flaws.mode = Mode::Correct;
        self.undo.hide();
    }

    /// The length of a flaw as it can be typed again; empty where none was measured.
    fn size_text(&self, note: &evenwall_piece::fact::FlawNote) -> String {
        note.size_mm.as_ref().map_or_else(String::new, |m| {
            self.numbers().quantity(Quantity::FlawSize, m.value).number
        })
    }

    pub(super) fn flaw_looked(
        &mut self,
        change: FlawChange,
        size: Option<evenwall_piece::fact::Measure>,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some((piece, flaw)) = self.flaw_on_page() else {
            return Ok(());
        };
        let due = looks_due(flaw, now) && change != FlawChange::Gone;
        let (piece, note) = (piece.id.clone(), flaw.note.clone());
        let writing = Writing {
            said: self.said_looked(&piece, &note, change, size.as_ref()),
            facts: vec![PieceFact::FlawLooked {
                flaw: note.flaw.clone(),
                change,
                size_mm: size,
                look_again: None,
            }],
            piece: piece.clone(),
            to_list: false,
        };
        self.write_now(writing, now)?;
        if due {
            self.flaw_ask_again(&piece, &note.flaw, now);
        }
        Ok(())
    }

    /// When to look again at what was just looked at on its day; without an answer no day is kept. The answer becomes part of
    /// that look: glue is not put on again by a look, and what was left stays left.
    pub(crate) fn flaw_ask_again(&mut self, piece: &PieceId, flaw: &FlawId, now: Moment) {
        let looked = self.piece(piece).and_then(|p| {
            let note = p.flaw(flaw)?.note.clone();
            let last = p.diary.iter().rev().find_map(|e| match &e.fact {
                PieceFact::FlawLooked {
                    flaw: of,
                    change,
                    size_mm,
                    ..
                } if of == flaw && !e.retracted => {
                    Some((e.entry.clone(), *change, size_mm.clone()))
                }
                _ => None,
            })?;
            Some((note, last))
        });
        let Some((note, (entry, change, size_mm))) = looked else {
            return;
        };
        let offered = [
            AgainChoice::ThreeDays,
            AgainChoice::Week,
            AgainChoice::TwoWeeks,
            AgainChoice::NotSaid,
        ];
        let choices = offered
            .into_iter()
            .map(|again| {
                let day = again.day(now.date_naive());
                let writing = day.map(|day| Writing {
                    piece: piece.clone(),
                    facts: vec![PieceFact::Amends {
                        entry: entry.clone(),
                        at: None,
                        fact: Some(Box::new(PieceFact::FlawLooked {
                            flaw: flaw.clone(),
                            change,
                            size_mm: size_mm.clone(),
                            look_again: Some(day),
                        })),
                    }],
                    said: self.said_looked(piece, &note, change, size_mm.as_ref()),
                    to_list: false,
                });
                Choice {
                    label: self.words().text(&format!("flaws-again-{}", again.key())),
                    style: ChoiceStyle::Plain,
                    action: writing.map(|w| Action::Flaws(FlawsAction::Write(Box::new(w)))),
                }
            })
            .collect();
        let question = Question {
            title: self.words().text("flaws-again"),
            text: self.words().text("flaws-again-text"),
            choices,
            caution: false,
        };
        self.ask(question);
    }

    pub(super) fn save_longer(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(mut field) = self.states.flaws.longer.clone() else {
            return Ok(());
        };
        match self.read_field(Quantity::FlawSize, &mut field) {
            Ok(size) => self.flaw_looked(FlawChange::Longer, size, now),
            Err(Refused) => {
                self.states.flaws.longer = Some(field);
                Ok(())
            }
        }
    }

    pub(super) fn ask_take_back(&mut self) {
        let Some((piece, flaw)) = self.flaw_on_page() else {
            return;
        };
        let what = self.flaw_place(flaw);
        let writing = Writing {
            piece: piece.id.clone(),
            facts: vec![PieceFact::Retracts(flaw.entry.line.clone())],
            said: self
                .words()
                .with("flaws-said-taken-back", &[("what", what.as_str().into())]),
            to_list: true,
        };
        let words = self.words();
        let question = Question {
            title: words.with("flaws-take-back-title", &[("what", what.into())]),
            text: words.text("flaws-take-back-text"),
            choices: vec![
                Choice {
                    label: words.text("flaws-take-back"),
                    style: ChoiceStyle::Danger,
                    action: Some(Action::Flaws(FlawsAction::Write(Box::new(writing)))),
                },
                Choice {
                    label: words.text("flaws-keep"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.ask(question);
    }
}
