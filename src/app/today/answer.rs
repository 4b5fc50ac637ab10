//! Answer: a look is recorded from a list, and what follows from it is said in its place.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::BagFeel;

use super::back_day::BackDay;
use super::card::feel_icon;
use super::done::Done;
use super::row::parts;
use super::view::Shape;
use super::{LookNote, Said, TodayAction};
use crate::action::Action;
use crate::app::{App, AppError};
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;

impl App {
    /// An answer given on the open row.
    pub(super) fn answer_row(
        &mut self,
        row: &str,
        answer: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some((_, _, piece)) = parts(row) else {
            return Ok(());
        };
        let feel = match answer {
            "over" => None,
            key => match BagFeel::from_key(key) {
                Some(feel) => Some(feel),
                None => return Ok(()),
            },
        };
        let Said { mould, crack, day } = self.said_on(row, now);
        // A day that is no longer possible falls back to now, as it is shown.
        let possible = self
            .piece(&piece)
            .map(|p| self.with_bench(now, |bench| self.days_possible(p, bench)))
            .unwrap_or_default();
        let day = if possible.contains(&day) {
            day
        } else {
            BackDay::Today
        };
        self.note_look(
            LookNote {
                piece,
                feel,
                mould,
                crack,
                day,
                row: row.to_owned(),
            },
            now,
        )
    }

    /// Records a look and keeps its answer in the place of its row.
    pub(super) fn note_look(&mut self, note: LookNote, now: Moment) -> Result<(), AppError> {
        self.retry_with(Action::Today(TodayAction::Look(note.clone())));
        let place = self.place_of(&note.row, now);
        let (what, act) = self.look_words(&note, now);
        let fact = PieceFact::Look {
            feel: note.feel,
            mould: note.mould,
            crack: note.crack,
        };
        let line = self.record(&note.piece, note.day.moment(now), vec![fact], now)?;
        self.states.today.more = false;
        // It belonged to this look: the row of the next one starts without it.
        self.states.today.said.remove(&note.row);
        if let Some((group, place)) = place {
            self.states.today.done.push(Done {
                row: note.row.clone(),
                group,
                place,
                piece: note.piece.clone(),
                line,
                day: now.date_naive(),
                icon: note.feel.map_or("tick", feel_icon),
                what: what.clone(),
                act: act.clone(),
                said: Said {
                    mould: note.mould,
                    crack: note.crack,
                    day: note.day,
                },
            });
        }
        let mark = self.mark_of(&note.piece);
        let said = self.words().with(
            "today-said-looked",
            &[
                ("mark", mark.into()),
                ("what", what.into()),
                ("act", act.into()),
            ],
        );
        self.say(said);
        if note.crack {
            self.ask_flaw(&note.piece);
        }
        Ok(())
    }

    /// The answer in a word, and "Turned inside out · next Sat 14".
    pub(super) fn look_words(&self, note: &LookNote, now: Moment) -> (String, String) {
        let words = self.words();
        let mut seen = vec![match note.feel {
            Some(feel) => words.text(&format!("feel-{}", feel.key())),
            None => words.text("today-looked-over"),
        }];
        if note.mould {
            seen.push(words.text("today-mould"));
        }
        if note.crack {
            seen.push(words.text("today-crack"));
        }
        if note.day != BackDay::Today {
            seen.push(self.dates(now).near(note.day.date(now)));
        }
        let outcome = self
            .piece(&note.piece)
            .and_then(|p| self.outcome(p, note.feel, note.mould, note.day.moment(now)));
        let act = match outcome {
            None => String::new(),
            Some(outcome) => {
                let done = words.text(&format!("today-done-{}", outcome.act.key()));
                match outcome.next_look {
                    None => done,
                    Some(day) => words.with(
                        "today-done-next",
                        &[
                            ("done", done.into()),
                            ("day", self.dates(now).near(day).into()),
                        ],
                    ),
                }
            }
        };
        (seen.join(", "), act)
    }

    /// The group of a row and its place in it; `None` where it is not on its list.
    fn place_of(&self, row: &str, now: Moment) -> Option<(String, usize)> {
        let (group, ..) = parts(row)?;
        let list = match group {
            "catch-up" => self.catch_up_plain(now).list,
            "return" => self.away_plain(now).list,
            _ => self.today_list(now),
        };
        let of_group = |id: &str| parts(id).is_some_and(|(g, ..)| g == group);
        let place = list
            .rows
            .iter()
            .filter(|r| !matches!(r.shape, Shape::Head | Shape::More) && of_group(&r.id))
            .position(|r| r.id == row)?;
        Some((group.to_owned(), place))
    }

    /// A crack was seen: note it as a flaw now, or later.
    pub(super) fn ask_flaw(&mut self, piece: &PieceId) {
        let mark = self.mark_of(piece);
        let words = self.words();
        let question = Question {
            title: words.with("today-crack-title", &[("mark", mark.into())]),
            text: words.text("today-crack-text"),
            choices: vec![
                Choice {
                    label: words.text("today-crack-now"),
                    style: ChoiceStyle::Primary,
                    action: Some(Action::Open(Page::Flaw(piece.clone(), None))),
                },
                Choice {
                    label: words.text("today-crack-later"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.ask(question);
    }
}
