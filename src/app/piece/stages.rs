//! Stages: moving a piece forward, back and past a stage, today or back-dated; half-turned; method; pauses.

use chrono::{Days, NaiveDate};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::PieceAction;
use crate::piece::days::{DayFault, read_day};
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

impl App {
    pub(crate) fn apply_stages(
        &mut self,
        action: StagesAction,
        now: Moment,
    ) -> Result<(), AppError> {
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
            Err(DayFault::NotADay) => {
                Err(words.with("piece-day-nonsense", &[("found", found.into())]))
            }
            Err(DayFault::TooEarly) => {
                Err(words.with("details-day-early", &[("found", found.into())]))
            }
        }
    }

    pub(crate) fn half_turned(
        &mut self,
        id: &PieceId,
        on: bool,
        now: Moment,
    ) -> Result<(), AppError> {
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

    pub(crate) fn choose_method(
        &mut self,
        id: &PieceId,
        method: Method,
        now: Moment,
    ) -> Result<(), AppError> {
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

    pub(crate) fn pause(
        &mut self,
        id: &PieceId,
        until: Option<NaiveDate>,
        now: Moment,
    ) -> Result<(), AppError> {
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
