//! Card: the answers of the row that is open, each saying what it does and when.

use chrono::NaiveDate;
use evenwall_piece::agenda::{Bench, Outcome, standing, what_if};
use evenwall_piece::bag::{BagAct, BagAnswer, BagState};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::BagFeel;

use super::Said;
use super::back_day::BackDay;
use super::row::parts;
use super::view::{AnswerView, ButtonView, CardView, TickView};
use crate::app::App;
use crate::words::dates::weekday_short;
use chrono::Datelike;

/// The icon of how a bag feels.
pub(super) const fn feel_icon(feel: BagFeel) -> &'static str {
    match feel {
        BagFeel::Wet => "drop-full",
        BagFeel::Damp => "drop-half",
        BagFeel::Nothing => "drop-empty",
    }
}

impl App {
    /// The answers of a row; `None` where it is no look, or its piece is gone.
    pub(super) fn card_of(&self, row: &str, bench: &Bench<'_>) -> Option<CardView> {
        let (_, _, id) = parts(row)?;
        let piece = self.piece(&id)?;
        let state = standing(piece, bench)?.state;
        let said = self.said_on(row, bench.now);
        let days = self.days_possible(piece, bench);
        let said = Said {
            day: if days.contains(&said.day) {
                said.day
            } else {
                BackDay::Today
            },
            ..said
        };
        let words = self.words();
        let more_open = self.states.today.more;
        let other = |key: &str, icon: &'static str| {
            let text = words.text(&format!("today-other-{key}"));
            ButtonView {
                key: key.to_owned(),
                label: text.clone(),
                text,
                icon,
            }
        };
        Some(CardView {
            question: words.text(match state {
                BagState::NoBag | BagState::Airing => "today-question-over",
                _ => "today-question-bag",
            }),
            answers: self.answers(piece, state, said, bench.now),
            ticks: self.ticks(said),
            more: words.text(if more_open {
                "today-less"
            } else {
                "action-more"
            }),
            more_open,
            when: if days.len() > 1 {
                words.text("today-when")
            } else {
                String::new()
            },
            days: if days.len() > 1 {
                days.into_iter()
                    .map(|d| TickView {
                        key: d.key(),
                        text: words.text(&format!("today-day-{}", d.key())),
                        on: d == said.day,
                    })
                    .collect()
            } else {
                Vec::new()
            },
            others: vec![
                other("weigh", "scale"),
                other("cant-find", "question"),
                other("open", "chevron-right"),
            ],
        })
    }

    /// Mould and crack.
    pub(super) fn ticks(&self, said: Said) -> Vec<TickView> {
        let words = self.words();
        vec![
            TickView {
                key: "mould",
                text: words.text("today-mould"),
                on: said.mould,
            },
            TickView {
                key: "crack",
                text: words.text("today-crack"),
                on: said.crack,
            },
        ]
    }

    /// The answers to a look in this state of the bag, with what was ticked beside them.
    pub(super) fn answers(
        &self,
        piece: &Piece,
        state: BagState,
        said: Said,
        now: Moment,
    ) -> Vec<AnswerView> {
        let words = self.words();
        let felt = |feel: BagFeel| AnswerView {
            key: feel.key(),
            text: words.text(&format!("feel-{}", feel.key())),
            note: self.leads(piece, Some(feel), said, now),
            icon: feel_icon(feel),
        };
        let over = || AnswerView {
            key: "over",
            text: words.text("today-looked-over"),
            note: self.leads(piece, None, said, now),
            icon: "tick",
        };
        match state {
            BagState::NoBag => vec![over()],
            BagState::Airing => {
                let mut damp = felt(BagFeel::Damp);
                damp.text = words.text("today-damp-again");
                vec![over(), damp]
            }
            _ => BagFeel::ALL.iter().map(|f| felt(*f)).collect(),
        }
    }

    /// What an answer leads to.
    pub(super) fn outcome(
        &self,
        piece: &Piece,
        feel: Option<BagFeel>,
        mould: bool,
        at: Moment,
    ) -> Option<Outcome> {
        let answer = BagAnswer::of_look(feel, mould);
        self.with_bench(at, |bench| what_if(piece, bench, answer, mould))
    }

    /// "turn it · Sat"
    fn leads(&self, piece: &Piece, feel: Option<BagFeel>, said: Said, now: Moment) -> String {
        let Some(outcome) = self.outcome(piece, feel, said.mould, said.day.moment(now)) else {
            return String::new();
        };
        let words = self.words();
        let act = match outcome.act {
            // To carry on is nothing to say beside the day.
            BagAct::CarryOn => words.text("today-act-carry-on"),
            act => words.text(&format!("today-act-{}", act.key())),
        };
        match outcome.next_look {
            None => act,
            Some(day) => words.with(
                "today-leads",
                &[
                    ("act", act.into()),
                    ("day", self.short_day(day, now).into()),
                ],
            ),
        }
    }

    /// The shortest word for a day close by: "Sat", else "Sat 21".
    pub(super) fn short_day(&self, day: NaiveDate, now: Moment) -> String {
        let ahead = day.signed_duration_since(now.date_naive()).num_days();
        if (1..=6).contains(&ahead) {
            weekday_short(self.words(), day.weekday())
        } else {
            self.dates(now).near(day)
        }
    }

    /// The days on which a look that is noted now may have been: after the last one and after the piece came there.
    pub(super) fn days_possible(&self, piece: &Piece, bench: &Bench<'_>) -> Vec<BackDay> {
        let after = standing(piece, bench)
            .and_then(|s| s.anchor)
            .map(|a| a.date_naive());
        BackDay::ALL
            .into_iter()
            .filter(|d| *d == BackDay::Today || after.is_none_or(|after| d.date(bench.now) > after))
            .collect()
    }
}
