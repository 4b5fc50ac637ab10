//! View: Today and its lists as they are shown.

use crate::drawing::SectionDrawing;

/// A button with its stable key.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ButtonView {
    /// Stable key; empty where there is no button.
    pub key: String,
    /// Its word.
    pub text: String,
    /// All that a screen reader says.
    pub label: String,
    /// Its icon.
    pub icon: &'static str,
}

/// How a row is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shape {
    /// Heads a group.
    #[default]
    Head,
    /// One thing to do, folded.
    Row,
    /// The one that is open, with its answers.
    Card,
    /// Answered a moment ago.
    Done,
    /// On a later day.
    Coming,
    /// Opens the rest of its group.
    More,
}

impl Shape {
    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Head => "head",
            Self::Row => "row",
            Self::Card => "card",
            Self::Done => "done",
            Self::Coming => "coming",
            Self::More => "more",
        }
    }
}

/// One row of a list, the heads of its groups among them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RowView {
    /// Comes back with a touch; unique within the list.
    pub id: String,
    /// How it is drawn.
    pub shape: Shape,
    /// All that a screen reader says of the touch on it.
    pub label: String,
    /// The piece's mark; the title of a group.
    pub mark: String,
    /// The piece's wood.
    pub wood: String,
    /// What is to be done or was done, and where the piece stands.
    pub note: String,
    /// A second line, seldom needed.
    pub remark: String,
    /// A short word at the right end: "2 days late", the answer given, how many.
    pub tag: String,
    /// True where waiting longer does harm: rust, with the flag.
    pub late: bool,
    /// The weekday at the left of what is coming.
    pub weekday: String,
    /// The day of the month below it.
    pub day: String,
    /// The icon of the answer given or of what is coming.
    pub icon: &'static str,
    /// Its small drawing, where there is room for one.
    pub drawing: Option<SectionDrawing>,
    /// The first button.
    pub button: ButtonView,
    /// The second one.
    pub second: ButtonView,
    /// True where the buttons stand below the words.
    pub wide_buttons: bool,
    /// True for the first of rows that stand in one box.
    pub first: bool,
    /// True for the last of them.
    pub last: bool,
}

/// One of the answers of a look.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AnswerView {
    /// Stable key.
    pub key: &'static str,
    /// Its word.
    pub text: String,
    /// What giving it does and when: "turn it · Sat".
    pub note: String,
    /// Its icon.
    pub icon: &'static str,
}

/// A small thing to tick or to choose beside the answers.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TickView {
    /// Stable key.
    pub key: &'static str,
    /// Its word.
    pub text: String,
    /// Ticked or chosen.
    pub on: bool,
}

/// The answers of the row that is open.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CardView {
    /// The question.
    pub question: String,
    /// The answers.
    pub answers: Vec<AnswerView>,
    /// Mould and crack.
    pub ticks: Vec<TickView>,
    /// The word that opens the rest.
    pub more: String,
    /// True while it is open.
    pub more_open: bool,
    /// "When was it?"
    pub when: String,
    /// The days it may have been.
    pub days: Vec<TickView>,
    /// What else can be done with it.
    pub others: Vec<ButtonView>,
}

/// A list with the answers of the one row that is open.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ListView {
    /// The rows.
    pub rows: Vec<RowView>,
    /// The answers of the row of shape [`Shape::Card`]; empty where none is open.
    pub card: CardView,
}

/// The chip that shows the shop's air.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClimateView {
    /// "18 °C, 62 % RH", or how old the reading is.
    pub reading: String,
    /// "settles at 11 %"; empty where it cannot be reckoned.
    pub settles: String,
    /// True where the reading is old: shown with the triangle.
    pub old: bool,
    /// All that a screen reader says.
    pub label: String,
}

/// Something that concerns the whole page, with a way to act on it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct NoticeView {
    /// Its text; empty where there is none.
    pub text: String,
    /// A line below it.
    pub note: String,
    /// The word on its button.
    pub action: String,
    /// Stable key of what the button opens.
    pub key: &'static str,
}

/// What stands in place of an empty list.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct NothingView {
    /// Its title.
    pub title: String,
    /// What to know.
    pub text: String,
    /// The word on its button; empty for none.
    pub action: String,
}

/// Today.
#[derive(Debug, Clone, PartialEq)]
pub struct TodayView {
    /// Its title.
    pub title: String,
    /// The date in full: "Thursday 12 March".
    pub date: String,
    /// The shop's air, where it is kept.
    pub climate: Option<ClimateView>,
    /// Away, just back, or silent for long.
    pub notice: Option<NoticeView>,
    /// The rounds, where several are due.
    pub rounds: Vec<ButtonView>,
    /// All that is due, coming, ready and unseen.
    pub list: ListView,
    /// Where there is no piece at all.
    pub first_time: Option<NothingView>,
    /// Where nothing is due: what is next and when.
    pub nothing_due: String,
    /// The way to Away; empty where there is no piece.
    pub away: String,
}
