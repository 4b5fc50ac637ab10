//! Away: before leaving a list of what to open or put in paper; away; and one list on the return.

use chrono::{Days, NaiveDate};
use evenwall_piece::away::BeforeLeaving;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use super::TodayAction;
use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::days::{DayFault, read_day};

/// When the turner is back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BackChoice {
    /// In three days.
    Three,
    /// In a week.
    #[default]
    Week,
    /// In two weeks.
    Fortnight,
    /// On a day that is typed.
    Typed,
}

impl BackChoice {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Three, Self::Week, Self::Fortnight, Self::Typed];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Three => "three",
            Self::Week => "week",
            Self::Fortnight => "fortnight",
            Self::Typed => "typed",
        }
    }

    /// The choice with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|c| c.key() == key)
    }

    const fn days(self) -> Option<u64> {
        match self {
            Self::Three => Some(3),
            Self::Week => Some(7),
            Self::Fortnight => Some(14),
            Self::Typed => None,
        }
    }
}

/// What can be done on Away.
#[derive(Debug, Clone, PartialEq)]
pub enum AwayAction {
    /// Chose when the turner is back.
    Choose(BackChoice),
    /// Typed the day.
    Typed(String),
    /// Ticked a piece of the list: that was done to it.
    Tick(PieceId),
    /// Records what was done to a piece.
    Record(PieceId, BeforeLeaving),
    /// Goes away.
    Leave,
    /// Records that the turner goes away.
    LeaveUntil(NaiveDate),
    /// Is back.
    Back,
    /// Opens a piece.
    Open(PieceId),
}

/// What was ticked before leaving.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct LeavingDone {
    pub piece: PieceId,
    pub act: BeforeLeaving,
    pub line: LineId,
    pub place: usize,
}

/// What the page remembers.
#[derive(Debug, Default, PartialEq)]
pub(crate) struct AwayState {
    pub choice: BackChoice,
    pub typed: String,
    pub error: String,
    pub done: Vec<LeavingDone>,
    /// The pieces of the one list on the return, in the order in which they came.
    pub order: Vec<PieceId>,
    /// True while that list is kept up.
    pub returned: bool,
}

/// Further ahead than this nobody plans to be back, days.
const LONGEST: u64 = 400;

impl App {
    pub(super) fn enter_away(&mut self, there: bool, now: Moment) {
        if !there {
            self.states.today.away = AwayState::default();
        } else if !self.states.today.away.returned {
            self.take_up_return(now);
        }
    }

    /// The day of the return as chosen; an error where it was typed and cannot be read.
    pub(super) fn back_on(&self, now: Moment) -> Result<NaiveDate, String> {
        let state = &self.states.today.away;
        let words = self.words();
        let today = now.date_naive();
        let Some(days) = state.choice.days() else {
            let found = &state.typed;
            let day = read_day(words, found, today).map_err(|fault| match fault {
                DayFault::Empty => words.text("piece-day-empty"),
                DayFault::NotADay => words.with(
                    "piece-day-nonsense",
                    &[("found", found.chars().take(40).collect::<String>().into())],
                ),
                DayFault::TooEarly => words.with(
                    "details-day-early",
                    &[("found", found.chars().take(40).collect::<String>().into())],
                ),
            })?;
            let dates = self.dates(now);
            let shown = dates.day_and_month(day);
            if day <= today {
                return Err(words.with("piece-day-past", &[("day", shown.into())]));
            }
            let last = today.checked_add_days(Days::new(LONGEST));
            return match last.filter(|last| day > *last) {
                None => Ok(day),
                Some(last) => Err(words.with(
                    "away-day-too-far",
                    &[
                        ("day", shown.into()),
                        ("most", LONGEST.into()),
                        ("last", dates.day_and_month(last).into()),
                    ],
                )),
            };
        };
        Ok(today.checked_add_days(Days::new(days)).unwrap_or(today))
    }

    pub(super) fn apply_away(&mut self, action: AwayAction, now: Moment) -> Result<(), AppError> {
        match action {
            AwayAction::Choose(choice) => {
                self.states.today.away.choice = choice;
                self.states.today.away.error.clear();
            }
            AwayAction::Typed(text) => {
                // Far more than any day takes; the rest of a slip of the clipboard is left out.
                self.states.today.away.typed = text.chars().take(80).collect();
                self.states.today.away.error.clear();
            }
            AwayAction::Tick(piece) => {
                let view = self.leaving(now);
                let found = view.act.iter().find(|r| r.piece == piece).map(|r| r.act);
                if let Some(act) = found {
                    return self.before_leaving(&piece, act, now);
                }
            }
            AwayAction::Record(piece, act) => return self.before_leaving(&piece, act, now),
            AwayAction::Leave => match self.back_on(now) {
                Ok(day) => return self.leave_until(day, now),
                Err(error) => self.states.today.away.error = error,
            },
            AwayAction::LeaveUntil(day) => return self.leave_until(day, now),
            AwayAction::Back => {
                self.record_shop(now, vec![ShopFact::Back], now)?;
                let said = self.words().text("away-said-back");
                self.say(said);
                self.take_up_return(now);
            }
            AwayAction::Open(piece) => {
                self.open_page(crate::route::Page::Piece(piece), now);
            }
        }
        Ok(())
    }

    fn leave_until(&mut self, day: NaiveDate, now: Moment) -> Result<(), AppError> {
        self.retry_with(Action::Today(TodayAction::Away(AwayAction::LeaveUntil(
            day,
        ))));
        self.record_shop(now, vec![ShopFact::Away { back_on: day }], now)?;
        self.states.today.away.error.clear();
        let day = self.dates(now).near(day);
        let said = self.words().with("away-said-leave", &[("day", day.into())]);
        self.say(said);
        Ok(())
    }

    fn before_leaving(
        &mut self,
        piece: &PieceId,
        act: BeforeLeaving,
        now: Moment,
    ) -> Result<(), AppError> {
        let fact = match act {
            BeforeLeaving::OpenNeck => PieceFact::StageMoved(Stage::Air),
            BeforeLeaving::PutInPaper => PieceFact::MethodChosen(Method::Paper),
            BeforeLeaving::FinishOrBag => {
                self.open_page(crate::route::Page::Piece(piece.clone()), now);
                return Ok(());
            }
        };
        self.retry_with(Action::Today(TodayAction::Away(AwayAction::Record(
            piece.clone(),
            act,
        ))));
        let place = self
            .leaving_rows(now)
            .iter()
            .position(|r| r.piece == *piece)
            .unwrap_or(0);
        let line = self.record(piece, now, vec![fact], now)?;
        self.states.today.away.done.push(LeavingDone {
            piece: piece.clone(),
            act,
            line,
            place,
        });
        let mark = self.mark_of(piece);
        let words = self.words();
        let said = match act {
            BeforeLeaving::OpenNeck => words.with("away-said-open-neck", &[("mark", mark.into())]),
            _ => words.with("away-said-put-in-paper", &[("mark", mark.into())]),
        };
        self.say(said);
        Ok(())
    }
}
