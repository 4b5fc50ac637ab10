//! Ending: finished, lost with where, how and my guess why, and the other ways in which a piece ends; put back; deleted.

use evenwall_piece::fact::{End, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{LostHow, LostWhere, LostWhy};

use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::PieceAction;
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;

/// A way in which a piece ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EndKind {
    /// Finished.
    Finished,
    /// Lost.
    Lost,
    /// Given away or sold unturned.
    GivenAway,
    /// Left as it is.
    LeftAsIs,
    /// It cannot be found.
    CantFind,
}

impl EndKind {
    /// All ways in the order in which they are offered.
    pub const ALL: [Self; 5] = [
        Self::Finished,
        Self::Lost,
        Self::GivenAway,
        Self::LeftAsIs,
        Self::CantFind,
    ];

    /// Stable key, as in the catalogue of words: `end-<key>`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Finished => "finished",
            Self::Lost => "lost",
            Self::GivenAway => "given-away",
            Self::LeftAsIs => "left-as-is",
            Self::CantFind => "cant-find",
        }
    }

    /// The way with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|k| k.key() == key)
    }

    /// The way in which a piece ended.
    #[must_use]
    pub const fn of(end: &End) -> Self {
        match end {
            End::Finished => Self::Finished,
            End::Lost { .. } => Self::Lost,
            End::GivenAway => Self::GivenAway,
            End::LeftAsIs => Self::LeftAsIs,
            End::CantFind => Self::CantFind,
        }
    }
}

/// What can be done on the Ending page.
#[derive(Debug, Clone, PartialEq)]
pub enum EndingAction {
    /// Chose how it ended.
    Kind(EndKind),
    /// Chose where it failed; the same again takes the choice away.
    Where(LostWhere),
    /// Chose how it was lost; the same again takes the choice away.
    How(LostHow),
    /// Chose a guess why, or took it away.
    Why(LostWhy),
    /// Typed own words.
    Note(String),
}

/// What the Ending page remembers between two touches.
#[derive(Debug, Default)]
pub struct EndingState {
    pub(crate) kind: Option<EndKind>,
    pub(crate) place: Option<LostWhere>,
    pub(crate) how: Option<LostHow>,
    pub(crate) why: Vec<LostWhy>,
    pub(crate) note: String,
}

/// The most characters of own words that are kept.
const MOST_WORDS: usize = 10_000;

impl EndingState {
    /// The end that the choices give; `None` while nothing is chosen.
    pub(crate) fn end(&self) -> Option<End> {
        Some(match self.kind? {
            EndKind::Finished => End::Finished,
            EndKind::Lost => End::Lost {
                place: self.place.unwrap_or(LostWhere::Unknown),
                how: self.how.unwrap_or(LostHow::Unknown),
                why: self.why.clone(),
                note: self.note.trim().to_owned(),
            },
            EndKind::GivenAway => End::GivenAway,
            EndKind::LeftAsIs => End::LeftAsIs,
            EndKind::CantFind => End::CantFind,
        })
    }
}

fn toggled<T: PartialEq>(now: Option<T>, chosen: T) -> Option<T> {
    (now.as_ref() != Some(&chosen)).then_some(chosen)
}

impl App {
    pub(crate) fn enter_ending(&mut self, _piece: &PieceId) {
        self.states.piece.ending = EndingState::default();
    }

    pub(crate) fn apply_ending(
        &mut self,
        action: EndingAction,
        _now: Moment,
    ) -> Result<(), AppError> {
        let state = &mut self.states.piece.ending;
        match action {
            EndingAction::Kind(kind) => state.kind = Some(kind),
            EndingAction::Where(place) => state.place = toggled(state.place, place),
            EndingAction::How(how) => state.how = toggled(state.how, how),
            EndingAction::Why(LostWhy::Unknown) => {
                state.why = if state.why == [LostWhy::Unknown] {
                    Vec::new()
                } else {
                    vec![LostWhy::Unknown]
                };
            }
            EndingAction::Why(why) => {
                let had = state.why.contains(&why);
                state.why.retain(|w| *w != why && *w != LostWhy::Unknown);
                if !had {
                    state.why.push(why);
                    state.why.sort_unstable();
                }
            }
            EndingAction::Note(text) => state.note = text.chars().take(MOST_WORDS).collect(),
        }
        Ok(())
    }

    pub(crate) fn end_piece(
        &mut self,
        id: &PieceId,
        end: End,
        now: Moment,
    ) -> Result<(), AppError> {
        let kind = EndKind::of(&end);
        self.record(id, now, vec![PieceFact::Ended(end)], now)?;
        self.states.piece.ending = EndingState::default();
        self.open_page(Page::Piece(id.clone()), now);
        let mark = self.mark_of(id);
        let words = self.words();
        let how = words.text(&format!("end-{}", kind.key()));
        let said = words.with(
            "piece-said-ended",
            &[("mark", mark.into()), ("how", how.into())],
        );
        self.say(said);
        Ok(())
    }

    pub(crate) fn ask_delete(&mut self, id: &PieceId) {
        let mark = self.mark_of(id);
        let words = self.words();
        let question = Question {
            title: words.with("piece-delete-title", &[("mark", mark.into())]),
            text: words.text("piece-delete-text"),
            choices: vec![
                Choice {
                    label: words.text("piece-delete-yes"),
                    style: ChoiceStyle::Danger,
                    action: Some(Action::Piece(PieceAction::Delete(id.clone()))),
                },
                Choice {
                    label: words.text("piece-delete-no"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.ask(question);
    }

    pub(crate) fn delete_piece(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        self.record(id, now, vec![PieceFact::Deleted], now)?;
        self.leave_piece(id, now);
        self.say_of(id, "piece-said-deleted");
        Ok(())
    }
}
