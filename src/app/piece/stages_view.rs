//! Stages view: all nine stages as large rows in four groups, with dates, methods and pauses.

use evenwall_piece::agenda::is_paused;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::rhythm::{Rhythm, RhythmOf, Step};
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::Method;

use crate::app::App;
use crate::piece::page::stage_state;
use crate::piece::stages::{DayChoice, PauseChoice, StagesSheet};
use crate::piece::view::HeadView;
use crate::words::dates::Dates;

/// A stage as a large row.
#[derive(Debug, Clone, PartialEq)]
pub struct StageRow {
    /// Stable key.
    pub key: &'static str,
    /// Its name.
    pub name: String,
    /// What happens in it, or the dates of its stay.
    pub note: String,
    /// `done`, `now`, `later` or `skipped`.
    pub state: &'static str,
    /// "now", "skipped", or empty.
    pub tag: String,
}

/// A group of stages.
#[derive(Debug, Clone, PartialEq)]
pub struct GroupView {
    /// Its name.
    pub title: String,
    /// Its stages.
    pub rows: Vec<StageRow>,
}

/// A choice with a line below it.
#[derive(Debug, Clone, PartialEq)]
pub struct OptionView {
    /// Stable key.
    pub key: &'static str,
    /// Its words.
    pub text: String,
    /// A line below it.
    pub note: String,
    /// It is chosen.
    pub selected: bool,
}

/// The sheet over the page.
#[derive(Debug, Clone, PartialEq)]
pub struct StagesSheetView {
    /// `move` or `pause`.
    pub kind: &'static str,
    /// Its title.
    pub title: String,
    /// Lines above the choices.
    pub lines: Vec<String>,
    /// What the choices are about.
    pub choice_label: String,
    /// The choices.
    pub choices: Vec<OptionView>,
    /// True where a day is typed.
    pub typing: bool,
    /// The label of the field.
    pub field_label: String,
    /// An example in it.
    pub field_hint: String,
    /// What was typed.
    pub typed: String,
    /// What is wrong with it.
    pub error: String,
    /// The word on its button; empty where there is nothing to do.
    pub confirm: String,
}

/// The Stages page.
#[derive(Debug, Clone, PartialEq)]
pub struct StagesView {
    /// The head.
    pub head: HeadView,
    /// A line on how stages work.
    pub intro: String,
    /// The groups.
    pub groups: Vec<GroupView>,
    /// Heads the half-turned switch.
    pub waiting_title: String,
    /// The half-turned switch; hidden for a piece that ended.
    pub half_turned_shown: bool,
    /// Its words.
    pub half_turned_text: String,
    /// The line below it.
    pub half_turned_note: String,
    /// It is on.
    pub half_turned: bool,
    /// The words for on and off.
    pub on_off: (String, String),
    /// Heads the methods.
    pub method_title: String,
    /// The seven methods.
    pub methods: Vec<OptionView>,
    /// Heads the pause.
    pub pause_title: String,
    /// The line that says whether it is paused.
    pub pause_note: String,
    /// It is paused.
    pub paused: bool,
    /// The word on the button.
    pub pause_button: String,
    /// The sheet.
    pub sheet: Option<StagesSheetView>,
    /// The word for closing.
    pub close: String,
}

impl App {
    /// The Stages page of the piece on top; `None` where it is gone.
    #[must_use]
    pub fn stages_view(&self, now: Moment) -> Option<StagesView> {
        let piece = self.piece_on_page()?;
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let groups = Group::ALL
            .iter()
            .map(|group| GroupView {
                title: words.text(&format!("group-{}", group.key())),
                rows: Stage::ALL
                    .iter()
                    .filter(|s| s.group() == *group)
                    .map(|s| self.stage_row(piece, *s, now))
                    .collect(),
            })
            .collect();
        let paused = is_paused(piece, now.date_naive());
        let until = piece.paused.and_then(|(_, until)| until);
        Some(StagesView {
            head: self.inner_head(piece, "stages-title"),
            intro: words.text("stages-intro"),
            groups,
            waiting_title: words.text("stages-waiting"),
            half_turned_shown: piece.living(),
            half_turned_text: words.text("half-turned"),
            half_turned_note: match piece.half_turned {
                Some(since) => words.with(
                    "stages-half-turned-since",
                    &[("day", dates.near(since.date_naive()).into())],
                ),
                None => words.text("half-turned-wrapped"),
            },
            half_turned: piece.half_turned.is_some(),
            on_off: (words.text("stages-on"), words.text("stages-off")),
            method_title: words.text("stages-method"),
            methods: Method::ALL
                .iter()
                .map(|m| OptionView {
                    key: m.key(),
                    text: words.text(&format!("method-{}", m.key())),
                    note: self.rhythm_words(*m),
                    selected: *m == piece.method,
                })
                .collect(),
            pause_title: words.text("stages-pause"),
            pause_note: match (paused, until) {
                (true, Some(day)) => words.with(
                    "stages-paused-until",
                    &[("day", dates.day_and_month(day).into())],
                ),
                (true, None) => words.text("stages-paused"),
                (false, _) => words.text("stages-not-paused"),
            },
            paused,
            pause_button: words.text(if paused {
                "piece-unpause"
            } else {
                "piece-pause"
            }),
            sheet: self.stages_sheet(piece, now),
            close: words.text("action-close"),
        })
    }

    /// True while the sheet of the Stages page asks until when to pause.
    #[must_use]
    pub fn stages_sheet_is_pause(&self) -> bool {
        self.states.piece.stages.sheet == StagesSheet::Pause
    }

    fn stage_row(&self, piece: &Piece, stage: Stage, now: Moment) -> StageRow {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let state = stage_state(piece, stage);
        let place = piece.visits.iter().rposition(|v| v.stage == stage);
        let since = place.map(|i| dates.near(piece.visits[i].since.date_naive()));
        let until = place
            .and_then(|i| piece.visits.get(i + 1))
            .map(|v| dates.near(v.since.date_naive()));
        let note = match (since, until) {
            (Some(since), Some(until)) if since != until => words.with(
                "stages-from-to",
                &[("from", since.into()), ("to", until.into())],
            ),
            (Some(since), Some(_)) => words.with("stages-on-day", &[("day", since.into())]),
            (Some(since), None) => words.with("stages-since", &[("day", since.into())]),
            (None, _) => words.text(&format!("stage-about-{}", stage.key())),
        };
        StageRow {
            key: stage.key(),
            name: words.text(&format!("stage-{}", stage.key())),
            note,
            state,
            tag: match state {
                "now" => words.text("stages-now"),
                "skipped" => words.text("stages-skipped"),
                _ => String::new(),
            },
        }
    }

    /// The rhythm of a method in one line: "Look after 3 days, then every 7. Weigh every 14".
    pub(crate) fn rhythm_words(&self, method: Method) -> String {
        let words = self.words();
        let settings = &self.shop().settings;
        if method == Method::Bag {
            let after = settings.bag_after;
            return words.with(
                "stages-rhythm-bag",
                &[
                    ("first", after.first.into()),
                    ("wet", after.wet.into()),
                    ("damp", after.damp.into()),
                ],
            );
        }
        let of = RhythmOf::from_key(method.key()).unwrap_or(RhythmOf::Paper);
        let Rhythm {
            looks, weighings, ..
        } = settings.rhythm(of);
        let mut parts = Vec::new();
        if let Some(text) = self.steps_words(&looks) {
            parts.push(words.with("stages-rhythm-look", &[("steps", text.into())]));
        }
        match self.steps_words(&weighings) {
            Some(text) => {
                parts.push(words.with("stages-rhythm-weigh", &[("steps", text.into())]));
            }
            None => parts.push(words.text("stages-rhythm-no-weigh")),
        }
        parts.join(" ")
    }

    /// "after 3 days, then every 7, every 14 from week 4".
    fn steps_words(&self, steps: &[Step]) -> Option<String> {
        let words = self.words();
        let mut parts = Vec::new();
        let mut from = 0;
        for step in steps {
            let once = step.until_day == Some(from + step.every);
            let id = match (parts.is_empty(), once) {
                (true, true) => "stages-step-after",
                (true, false) => "stages-step-every",
                (false, true) => "stages-step-then-after",
                (false, false) => "stages-step-then-every",
            };
            parts.push(words.with(id, &[("n", step.every.into())]));
            from = step.until_day.unwrap_or(from);
        }
        (!parts.is_empty()).then(|| parts.join(", "))
    }

    fn stages_sheet(&self, piece: &Piece, now: Moment) -> Option<StagesSheetView> {
        let words = self.words();
        let state = &self.states.piece.stages;
        let error = state.error.clone().unwrap_or_default();
        match state.sheet {
            StagesSheet::None => None,
            StagesSheet::Move(stage) => {
                let name = words.text(&format!("stage-{}", stage.key()));
                let here = piece.stage() == stage;
                let mut lines = vec![words.text(&format!("stage-about-{}", stage.key()))];
                lines.push(words.text(&format!("stage-leave-{}", stage.key())));
                if here {
                    lines.push(self.stage_in_words(piece, now));
                }
                let title = if here {
                    name.clone()
                } else {
                    words.with("piece-move-to", &[("stage", name.clone().into())])
                };
                let choices = if here { &[][..] } else { &DayChoice::ALL[..] };
                Some(StagesSheetView {
                    kind: "move",
                    title: title.clone(),
                    lines,
                    choice_label: if here {
                        String::new()
                    } else {
                        words.text("stages-when")
                    },
                    choices: choices
                        .iter()
                        .map(|d| OptionView {
                            key: d.key(),
                            text: words.text(&format!("stages-day-{}", d.key())),
                            note: String::new(),
                            selected: *d == state.day,
                        })
                        .collect(),
                    typing: !here && state.day == DayChoice::Typed,
                    field_label: words.text("stages-day-label"),
                    field_hint: words.text("stages-day-hint"),
                    typed: state.typed.clone(),
                    error,
                    confirm: if here { String::new() } else { title },
                })
            }
            StagesSheet::Pause => Some(StagesSheetView {
                kind: "pause",
                title: words.text("stages-pause"),
                lines: vec![words.text("stages-pause-about")],
                choice_label: words.text("stages-until"),
                choices: PauseChoice::ALL
                    .iter()
                    .map(|p| OptionView {
                        key: p.key(),
                        text: words.text(&format!("stages-until-{}", p.key())),
                        note: String::new(),
                        selected: *p == state.until,
                    })
                    .collect(),
                typing: state.until == PauseChoice::Typed,
                field_label: words.text("stages-day-label"),
                field_hint: words.text("stages-day-hint"),
                typed: state.typed.clone(),
                error,
                confirm: words.text("piece-pause"),
            }),
        }
    }
}
