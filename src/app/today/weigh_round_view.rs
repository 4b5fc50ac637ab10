//! Weigh round view: one row a piece, the weight being typed, and how far the round is.

use evenwall_piece::piece::Moment;

use super::view::ButtonView;
use crate::app::App;
use crate::device::MassChoice;
use crate::numbers::keypad::Key;

/// One piece of the weigh round.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeighRowView {
    /// The piece.
    pub piece: String,
    /// All that a screen reader says.
    pub label: String,
    /// Its mark.
    pub mark: String,
    /// Its wood.
    pub wood: String,
    /// "828 g, 7 days ago", or that it was never weighed.
    pub last: String,
    /// The weight just recorded; a word where it was skipped.
    pub weight: String,
    /// How much it lost since: "-12 g".
    pub change: String,
    /// `now`, `done`, `skipped` or `later`.
    pub state: &'static str,
}

/// The weigh round.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeighRoundView {
    /// Its title.
    pub title: String,
    /// The word for going back.
    pub back: String,
    /// "3 of 6".
    pub progress: String,
    /// The rows.
    pub rows: Vec<WeighRowView>,
    /// "K07, cherry": whose weight is being typed; empty at the end.
    pub of: String,
    /// Its last weight, above the one that is typed.
    pub of_last: String,
    /// What was typed so far.
    pub typed: String,
    /// The unit of a bare number.
    pub unit: String,
    /// What is wrong with it.
    pub error: String,
    /// "less 25 g tare", or weighed bare; empty where there never was one.
    pub tare: String,
    /// True while the tare is taken off.
    pub tare_on: bool,
    /// The words on the keys.
    pub next: String,
    /// Deletes the last digit.
    pub back_key: String,
    /// The decimal sign.
    pub point: String,
    /// The key that takes pounds; empty where weights are in grams.
    pub pounds: String,
    /// That key can be touched.
    pub can_pounds: bool,
    /// Leaves a piece for another time.
    pub skip: String,
    /// What was recorded last; empty where nothing can be taken back.
    pub undo_said: String,
    /// The word on the undo button.
    pub undo: String,
    /// Where all are weighed: "6 weighed".
    pub ended: String,
    /// The button at the end.
    pub done: ButtonView,
}

impl App {
    /// The weigh round as it stands.
    #[must_use]
    pub fn weigh_round_view(&self, now: Moment) -> WeighRoundView {
        let Some(round) = &self.states.today.weigh else {
            return WeighRoundView::default();
        };
        let words = self.words();
        let numbers = self.numbers();
        let dates = self.dates(now);
        let done = self.weighed();
        let turn = self.to_weigh();
        let step = self.shop().scale_step_at(now);
        let weight = |g: f64| numbers.mass_by_scale(g, step).text();
        let last = |last: Option<(Moment, f64)>| match last {
            None => words.text("today-never-weighed"),
            Some((at, net_g)) => words.with(
                "weigh-round-last",
                &[
                    ("weight", weight(net_g).into()),
                    ("ago", dates.ago(at.date_naive()).into()),
                ],
            ),
        };
        let rows: Vec<WeighRowView> = round
            .order
            .iter()
            .filter_map(|w| {
                let piece = self.piece(&w.piece)?;
                let (mark, wood) = (self.mark_of(&w.piece), self.wood_of(piece));
                let given = done.iter().rev().find(|d| d.piece == w.piece);
                let (state, shown, change) = match given {
                    Some(d) if d.line.is_none() => {
                        ("skipped", words.text("weigh-round-skipped"), String::new())
                    }
                    Some(d) => {
                        let change = w.last.map(|(_, before)| {
                            numbers
                                .mass_by_scale(d.net_g - before, step)
                                .with_plus()
                                .text()
                        });
                        ("done", weight(d.net_g), change.unwrap_or_default())
                    }
                    None if turn.is_some_and(|t| t.piece == w.piece) => {
                        ("now", String::new(), String::new())
                    }
                    None => ("later", String::new(), String::new()),
                };
                Some(WeighRowView {
                    piece: w.piece.as_str().to_owned(),
                    label: words.with("weigh-round-row-label", &[("mark", mark.as_str().into())]),
                    mark,
                    wood,
                    last: last(w.last),
                    weight: shown,
                    change,
                    state,
                })
            })
            .collect();
        let weighed = done.iter().filter(|d| d.line.is_some()).count();
        let tare_g = turn.map_or(0.0, |t| t.tare_g);
        let done_word = words.text("action-done");
        WeighRoundView {
            title: words.text("today-weigh-round"),
            back: words.text("action-back"),
            progress: words.with(
                "count-n-of-m",
                &[("n", weighed.into()), ("m", rows.len().into())],
            ),
            of: turn.map_or_else(String::new, |t| {
                let wood = self.piece(&t.piece).map(|p| self.wood_of(p));
                words.with(
                    "today-row-label",
                    &[
                        ("mark", self.mark_of(&t.piece).into()),
                        ("wood", wood.unwrap_or_default().into()),
                    ],
                )
            }),
            of_last: turn.map_or_else(String::new, |t| last(t.last)),
            typed: round.keypad.text(),
            unit: self.bare_mass_unit(),
            error: round.error.clone(),
            tare: if tare_g > 0.0 {
                words.with("weigh-round-tare", &[("tare", weight(tare_g).into())])
            } else {
                String::new()
            },
            tare_on: !round.bare,
            next: words.text("weigh-round-next"),
            back_key: words.text("weigh-round-back-key"),
            point: words.text("weigh-round-point"),
            pounds: match self.device().mass {
                MassChoice::PoundOunce => words.text("unit-lb"),
                MassChoice::Gram => String::new(),
            },
            can_pounds: round.keypad.can_be_pounds(),
            skip: words.text("action-skip"),
            undo_said: done.last().map_or_else(String::new, |d| d.said.clone()),
            undo: words.text("action-undo"),
            ended: match turn {
                Some(_) => String::new(),
                None if rows.is_empty() => words.text("weigh-round-none"),
                None => words.with("weigh-round-ended", &[("n", weighed.into())]),
            },
            done: ButtonView {
                key: "done".to_owned(),
                label: done_word.clone(),
                text: done_word,
                icon: "tick",
            },
            rows,
        }
    }

    /// What a key of a keyboard means on the weigh round; `None` for keys that are not for it: Enter, blanks and the
    /// like while nothing is typed, arrows and other keys that write nothing.
    #[must_use]
    pub fn weigh_key_typed(&self, text: &str) -> Option<Key> {
        let round = self.states.today.weigh.as_ref()?;
        self.to_weigh()?;
        let mut letters = text.chars();
        let (c, rest) = (letters.next()?, letters.next());
        if rest.is_some() {
            return None;
        }
        let empty = round.keypad.is_empty();
        match c {
            '\n' | '\r' | '\t' if !empty => Some(Key::Enter),
            '\u{8}' if !empty => Some(Key::Backspace),
            // Keys that write nothing come as private characters.
            '\u{e000}'..='\u{f8ff}' => None,
            c if c.is_control() || (c.is_whitespace() && empty) => None,
            c => Some(Key::Char(c)),
        }
    }

    /// The unit of a bare weight.
    fn bare_mass_unit(&self) -> String {
        self.words().text(match self.device().mass {
            MassChoice::Gram => "unit-g",
            MassChoice::PoundOunce => "unit-oz",
        })
    }
}
