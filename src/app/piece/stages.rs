//! Stages: moving a piece forward, back and past a stage, today or back-dated; half-turned; method; pauses.

use chrono::{Days, NaiveDate, NaiveTime, TimeZone};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Flaw, Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::PieceAction;
use crate::piece::days::{DayFault, read_day};
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;
use crate::words::dates::Dates;

/// The day on which a piece moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DayChoice {
    /// Today.
    #[default]
    Today,
    /// Yesterday.
    Yesterday,
    /// Two days ago.
    TwoDaysAgo,
    /// Another day, typed.
    Typed,
}

impl DayChoice {
    /// All choices in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Today, Self::Yesterday, Self::TwoDaysAgo, Self::Typed];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Today => "today",
            Self::Yesterday => "yesterday",
            Self::TwoDaysAgo => "two-days-ago",
            Self::Typed => "typed",
        }
    }
}

/// Until when there are no reminders.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PauseChoice {
    /// A week.
    #[default]
    Week,
    /// Four weeks.
    FourWeeks,
    /// Until the turner says.
    UntilISay,
    /// Until a day, typed.
    Typed,
}

impl PauseChoice {
    /// All choices in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Week, Self::FourWeeks, Self::UntilISay, Self::Typed];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Week => "week",
            Self::FourWeeks => "four-weeks",
            Self::UntilISay => "until-i-say",
            Self::Typed => "typed",
        }
    }
}

/// What can be done on the Stages page.
#[derive(Debug, Clone, PartialEq)]
pub enum StagesAction {
    /// Touched a stage.
    Open(Stage),
    /// Opened the pause sheet.
    OpenPause,
    /// Closed the sheet.
    Close,
    /// Chose the day of the move.
    Day(DayChoice),
    /// Chose until when to pause.
    Until(PauseChoice),
    /// Typed a day.
    Typed(String),
    /// Opened the page with the pause sheet, from elsewhere.
    PauseOf(PieceId),
    /// Pressed the button of the sheet.
    Confirm(PieceId),
}

/// A sheet of the Stages page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum StagesSheet {
    /// None.
    #[default]
    None,
    /// Moving to a stage.
    Move(Stage),
    /// Pausing reminders.
    Pause,
}

/// What the Stages page remembers between two touches.
#[derive(Debug, Default)]
pub struct StagesState {
    pub(crate) sheet: StagesSheet,
    pub(crate) day: DayChoice,
    pub(crate) until: PauseChoice,
    pub(crate) typed: String,
    pub(crate) error: Option<String>,
}

/// Noon of a day at the place of `now`, never after now.
fn noon(day: NaiveDate, now: Moment) -> Moment {
    let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
    now.offset()
        .from_local_datetime(&day.and_time(noon))
        .single()
        .map_or(now, |m| m.min(now))
}

impl App {
    pub(crate) fn apply_stages(&mut self, action: StagesAction, now: Moment) -> Result<(), AppError> {
        if let StagesAction::PauseOf(piece) = &action {
            self.open_page(Page::Stages(piece.clone()), now);
        }
        let state = &mut self.states.piece.stages;
        match action {
            StagesAction::Open(stage) => {
                *state = StagesState {
                    sheet: StagesSheet::Move(stage),
                    ..StagesState::default()
                };
            }
            StagesAction::OpenPause | StagesAction::PauseOf(_) => {
                *state = StagesState {
                    sheet: StagesSheet::Pause,
                    ..StagesState::default()
                };
            }
            StagesAction::Close => *state = StagesState::default(),
            StagesAction::Day(day) => {
                state.day = day;
                state.error = None;
            }
            StagesAction::Until(until) => {
                state.until = until;
                state.error = None;
            }
            StagesAction::Typed(text) => {
                state.typed = text;
                state.error = None;
            }
            StagesAction::Confirm(piece) => return self.confirm_stages(&piece, now),
        }
        Ok(())
    }

    fn confirm_stages(&mut self, piece: &PieceId, now: Moment) -> Result<(), AppError> {
        let today = now.date_naive();
        let back = |days: u64| today.checked_sub_days(Days::new(days));
        let ahead = |days: u64| today.checked_add_days(Days::new(days));
        let state = &self.states.piece.stages;
        match state.sheet {
            StagesSheet::None => Ok(()),
            StagesSheet::Move(stage) => {
                let day = match state.day {
                    DayChoice::Today => None,
                    DayChoice::Yesterday => back(1),
                    DayChoice::TwoDaysAgo => back(2),
                    DayChoice::Typed => match self.typed_day(now, false) {
                        Ok(day) => Some(day),
                        Err(sentence) => {
                            self.states.piece.stages.error = Some(sentence);
                            return Ok(());
                        }
                    },
                };
                self.move_to(piece, stage, day, false, now)
            }
            StagesSheet::Pause => {
                let until = match state.until {
                    PauseChoice::Week => ahead(7),
                    PauseChoice::FourWeeks => ahead(28),
                    PauseChoice::UntilISay => None,
                    PauseChoice::Typed => match self.typed_day(now, true) {
                        Ok(day) => Some(day),
                        Err(sentence) => {
                            self.states.piece.stages.error = Some(sentence);
                            return Ok(());
                        }
                    },
                };
                self.pause(piece, until, now)
            }
        }
    }

    /// The day typed on the Stages page, or the sentence that says what is wrong with it.
    fn typed_day(&self, now: Moment, ahead: bool) -> Result<NaiveDate, String> {
        let words = self.words();
        let today = now.date_naive();
        let typed = &self.states.piece.stages.typed;
        let found: String = typed.chars().take(30).collect();
        let dates = Dates::new(words, today);
        match read_day(words, typed, today) {
            Ok(day) if ahead && day <= today => Err(words.with(
                "piece-day-past",
                &[("day", dates.day_and_month(day).into())],
            )),
            Ok(day) if !ahead && day > today => Err(words.with(
                "piece-day-ahead",
                &[("day", dates.day_and_month(day).into())],
            )),
            Ok(day) => Ok(day),
            Err(DayFault::Empty) => Err(words.text("piece-day-empty")),
            Err(DayFault::NotADay) => Err(words.with("piece-day-nonsense", &[("found", found.into())])),
        }
    }

    pub(crate) fn move_to(
        &mut self,
        id: &PieceId,
        stage: Stage,
        day: Option<NaiveDate>,
        sure: bool,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(piece) = self.piece(id) else {
            return Ok(());
        };
        let open = undecided(piece);
        let leaves = piece.stage() == Stage::Stabilise && stage.index() > Stage::Stabilise.index();
        if leaves && open > 0 && !sure {
            self.ask_undecided(id, stage, day, open);
            return Ok(());
        }
        let glued = glued_cracks(piece).len();
        let at = day.map_or(now, |d| noon(d, now));
        self.retry_with(Action::Piece(PieceAction::MoveTo {
            piece: id.clone(),
            stage,
            day,
            sure: true,
        }));
        self.record(id, at, vec![PieceFact::StageMoved(stage)], now)?;
        self.states.piece.stages = StagesState::default();
        self.states.piece.earlier = false;
        self.states.piece.look_now = false;
        let mark = self.mark_of(id);
        let words = self.words();
        let name = words.text(&format!("stage-{}", stage.key()));
        let said = match day {
            Some(day) => words.with(
                "piece-said-moved-on",
                &[
                    ("mark", mark.into()),
                    ("stage", name.into()),
                    ("day", Dates::new(words, now.date_naive()).near(day).into()),
                ],
            ),
            None => words.with(
                "piece-said-moved",
                &[("mark", mark.into()), ("stage", name.into())],
            ),
        };
        self.say(said);
        if stage == Stage::True && glued > 0 {
            self.tell_glued(id, now);
        }
        Ok(())
    }

    fn ask_undecided(&mut self, id: &PieceId, stage: Stage, day: Option<NaiveDate>, open: usize) {
        let words = self.words();
        let name = words.text(&format!("stage-{}", stage.key()));
        let choice = |label: String, style, action| Choice {
            label,
            style,
            action,
        };
        let question = Question {
            title: words.with("piece-undecided-title", &[("n", open.into())]),
            text: words.text("piece-undecided-text"),
            choices: vec![
                choice(
                    words.text("piece-undecided-see"),
                    ChoiceStyle::Primary,
                    Some(Action::Open(Page::Flaws(id.clone()))),
                ),
                choice(
                    words.with("piece-undecided-go", &[("stage", name.into())]),
                    ChoiceStyle::Plain,
                    Some(Action::Piece(PieceAction::MoveTo {
                        piece: id.clone(),
                        stage,
                        day,
                        sure: true,
                    })),
                ),
            ],
            caution: false,
        };
        self.ask(question);
    }

    /// Glued cracks come back first thing in True.
    fn tell_glued(&mut self, id: &PieceId, now: Moment) {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let Some(piece) = self.piece(id) else { return };
        let mut lines = vec![words.text("piece-glued-text")];
        for flaw in glued_cracks(piece) {
            let day = flaw
                .last_treatment()
                .map_or(flaw.found_at.date_naive(), |(at, _)| at.date_naive());
            lines.push(words.with(
                "piece-glued-line",
                &[
                    ("what", self.flaw_place(flaw).into()),
                    ("day", dates.day_and_month(day).into()),
                ],
            ));
        }
        let choice = |label: String, style, action| Choice {
            label,
            style,
            action,
        };
        let question = Question {
            title: words.text("piece-glued-title"),
            text: lines.join("\n"),
            choices: vec![
                choice(
                    words.text("piece-glued-look"),
                    ChoiceStyle::Primary,
                    Some(Action::Open(Page::Truing(id.clone()))),
                ),
                choice(words.text("action-close"), ChoiceStyle::Plain, None),
            ],
            caution: true,
        };
        self.ask(question);
    }

    /// A flaw with its place: "Check, station 3, 4 o'clock".
    pub(crate) fn flaw_place(&self, flaw: &Flaw) -> String {
        let words = self.words();
        let mut parts = vec![words.text(&format!("flaw-kind-{}", flaw.note.kind.key()))];
        match flaw.note.station {
            Some(evenwall_piece::fact::StationRef::Wall(n)) => {
                parts.push(words.with("piece-station-n", &[("n", n.into())]));
            }
            Some(evenwall_piece::fact::StationRef::Floor) => {
                parts.push(words.text("piece-station-floor"));
            }
            None => {}
        }
        if let Some(clock) = flaw.note.clock {
            parts.push(words.with("piece-clock", &[("n", clock.hour().into())]));
        }
        parts.join(", ")
    }

    pub(crate) fn half_turned(&mut self, id: &PieceId, on: bool, now: Moment) -> Result<(), AppError> {
        let fact = if on {
            PieceFact::HalfTurned
        } else {
            PieceFact::Resumed
        };
        self.record(id, now, vec![fact], now)?;
        self.say_of(
            id,
            if on {
                "piece-said-half-turned"
            } else {
                "piece-said-resumed"
            },
        );
        Ok(())
    }

    pub(crate) fn choose_method(&mut self, id: &PieceId, method: Method, now: Moment) -> Result<(), AppError> {
        if self.piece(id).is_none_or(|p| p.method == method) {
            return Ok(());
        }
        self.record(id, now, vec![PieceFact::MethodChosen(method)], now)?;
        let mark = self.mark_of(id);
        let words = self.words();
        let name = words.text(&format!("method-{}", method.key()));
        let said = words.with(
            "piece-said-method",
            &[("mark", mark.into()), ("method", name.into())],
        );
        self.say(said);
        Ok(())
    }

    pub(crate) fn pause(&mut self, id: &PieceId, until: Option<NaiveDate>, now: Moment) -> Result<(), AppError> {
        self.retry_with(Action::Piece(PieceAction::Pause {
            piece: id.clone(),
            until,
        }));
        self.record(id, now, vec![PieceFact::Paused { until }], now)?;
        self.states.piece.stages = StagesState::default();
        match until {
            Some(day) => {
                let mark = self.mark_of(id);
                let words = self.words();
                let day = Dates::new(words, now.date_naive()).day_and_month(day);
                let said = words.with(
                    "piece-said-paused-until",
                    &[("mark", mark.into()), ("day", day.into())],
                );
                self.say(said);
            }
            None => self.say_of(id, "piece-said-paused"),
        }
        Ok(())
    }
}

/// How many flaws are neither decided nor cut away.
pub(crate) fn undecided(piece: &Piece) -> usize {
    piece.flaws.iter().filter(|f| !f.decided() && !f.gone()).count()
}

/// The flaws that were glued and are not cut away: a glued crack stays a crack.
pub(crate) fn glued_cracks(piece: &Piece) -> Vec<&Flaw> {
    piece
        .flaws
        .iter()
        .filter(|f| !f.gone() && f.last_treatment().is_some_and(|(_, t)| t.treatment.is_glue()))
        .collect()
}
