//! Today: what is due, the rounds, going away and catching up.

mod acting;
mod answer;
mod away;
mod away_view;
mod back_day;
mod bag_round;
mod bag_round_view;
mod card;
mod catch_up;
mod climate;
mod done;
mod list;
mod page;
mod row;
pub mod view;
mod weigh_round;
mod weigh_round_state;
mod weigh_round_view;

use std::collections::BTreeMap;

use evenwall_piece::agenda::agenda;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::BagFeel;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::route::Page;

pub use away::{AwayAction, BackChoice};
pub use away_view::{AwayView, LeavingView};
pub use back_day::BackDay;
pub use bag_round::BagAction;
pub use bag_round_view::{BagRoundView, CountView};
pub use catch_up::CatchUpView;
pub use weigh_round::WeighAction;
pub use weigh_round_view::{WeighRoundView, WeighRowView};

/// Mould or a crack, seen beside the answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seen {
    /// Mould.
    Mould,
    /// A crack.
    Crack,
}

impl Seen {
    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        match key {
            "mould" => Some(Self::Mould),
            "crack" => Some(Self::Crack),
            _ => None,
        }
    }
}

/// A look as it is recorded: everything said, so that trying again can record nothing else.
#[derive(Debug, Clone, PartialEq)]
pub struct LookNote {
    /// The piece.
    pub piece: PieceId,
    /// How the bag felt; `None` where it was looked over.
    pub feel: Option<BagFeel>,
    /// Mould was seen.
    pub mould: bool,
    /// A crack was seen.
    pub crack: bool,
    /// When it was.
    pub day: BackDay,
    /// The row of the list it was answered on.
    pub row: String,
}

/// What can be done there. Rows are named by their ids.
#[derive(Debug, Clone, PartialEq)]
pub enum TodayAction {
    /// Touched a row: a folded look is opened, anything else leads to its piece.
    Row(String),
    /// Gave an answer on the open row.
    Answer {
        /// The row.
        row: String,
        /// The answer's key.
        answer: String,
    },
    /// Records a look.
    Look(LookNote),
    /// Ticked or unticked mould or crack.
    Tick {
        /// The row.
        row: String,
        /// Which.
        seen: Seen,
    },
    /// Said on which day it was.
    Day {
        /// The row.
        row: String,
        /// The day.
        day: BackDay,
    },
    /// Opened or closed the rest of the open row.
    More,
    /// Touched a button of a row.
    Button {
        /// The row.
        row: String,
        /// The button's key.
        key: String,
    },
    /// Could not find a piece.
    NotFound(PieceId),
    /// Found it again.
    Found(PieceId),
    /// Opens a round, Away or Catch-up, a new piece or the shop's climate.
    Go(String),
    /// Something on the bag round.
    Bag(BagAction),
    /// Something on the weigh round.
    Weigh(WeighAction),
    /// Something on Away.
    Away(AwayAction),
}

/// What was ticked and chosen on a row before its answer.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) struct Said {
    pub mould: bool,
    pub crack: bool,
    pub day: BackDay,
}

/// What the pages remember between two touches.
#[derive(Debug, Default)]
pub struct TodayState {
    /// The row that was opened by hand.
    pub(crate) open: Option<String>,
    pub(crate) more: bool,
    pub(crate) said: BTreeMap<String, Said>,
    pub(crate) done: Vec<done::Done>,
    /// Groups that show all their rows.
    pub(crate) whole: Vec<String>,
    pub(crate) round: Option<bag_round::BagRoundState>,
    pub(crate) weigh: Option<weigh_round::WeighRoundState>,
    pub(crate) away: away::AwayState,
    /// The pieces of the one list after a silence, in the order in which they came.
    pub(crate) catch_up: Vec<PieceId>,
}

impl App {
    /// How many things are due today or overdue, for the tab.
    #[must_use]
    pub fn waiting_today(&self, now: Moment) -> usize {
        let pieces: Vec<&Piece> = self.pieces().collect();
        let agenda = self.with_bench(now, |bench| agenda(&pieces, bench));
        agenda.overdue.len() + agenda.today.len()
    }

    pub(crate) fn enter_today(&mut self, _page: Option<&Page>, now: Moment) {
        let there = |page: &Page| self.route.pages.contains(page);
        let (bag, weigh) = (there(&Page::BagRound), there(&Page::WeighRound));
        let (away, catch_up) = (there(&Page::Away), there(&Page::CatchUp));
        self.enter_bag_round(bag, now);
        self.enter_weigh_round(weigh, now);
        self.enter_away(away, now);
        self.enter_catch_up(catch_up, now);
        let today = now.date_naive();
        self.states.today.done.retain(|d| d.day == today);
    }

    pub(crate) fn apply_today(&mut self, action: TodayAction, now: Moment) -> Result<(), AppError> {
        match action {
            TodayAction::Row(row) => self.touch_row(&row, now),
            TodayAction::Answer { row, answer } => return self.answer_row(&row, &answer, now),
            TodayAction::Look(note) => return self.note_look(note, now),
            TodayAction::Tick { row, seen } => {
                let mut said = self.said_on(&row, now);
                match seen {
                    Seen::Mould => said.mould = !said.mould,
                    Seen::Crack => said.crack = !said.crack,
                }
                self.states.today.said.insert(row, said);
            }
            TodayAction::Day { row, day } => {
                let said = Said {
                    day,
                    ..self.said_on(&row, now)
                };
                self.states.today.said.insert(row, said);
            }
            TodayAction::More => self.states.today.more = !self.states.today.more,
            TodayAction::Button { row, key } => return self.touch_button(&row, &key, now),
            TodayAction::NotFound(piece) => {
                self.record(&piece, now, vec![PieceFact::NotFound], now)?;
                self.say_of(&piece, "today-said-not-found");
            }
            TodayAction::Found(piece) => return self.found(&piece, now),
            TodayAction::Go(key) => self.go(&key, now),
            TodayAction::Bag(action) => return self.apply_bag_round(action, now),
            TodayAction::Weigh(action) => return self.apply_weigh_round(action, now),
            TodayAction::Away(action) => return self.apply_away(action, now),
        }
        Ok(())
    }

    fn found(&mut self, piece: &PieceId, now: Moment) -> Result<(), AppError> {
        self.retry_with(Action::Today(TodayAction::Found(piece.clone())));
        let fact = PieceFact::Look {
            feel: None,
            mould: false,
            crack: false,
        };
        self.record(piece, now, vec![fact], now)?;
        self.say_of(piece, "today-said-found");
        Ok(())
    }

    fn go(&mut self, key: &str, now: Moment) {
        let page = match key {
            "bag-round" => Page::BagRound,
            "weigh-round" => Page::WeighRound,
            "away" => Page::Away,
            "catch-up" => Page::CatchUp,
            "new-piece" => Page::NewPiece,
            "climate" => Page::ShopPage("climate"),
            _ => return,
        };
        self.open_page(page, now);
    }
}
