//! Views of what is foreseen of a piece, with final text.

use super::view::FigureView;

/// A level across the chart.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelView {
    /// From the top, 0 to 1.
    pub at: f64,
    /// Its words.
    pub text: String,
}

/// What a chart shows beyond the weights.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ForesightView {
    /// The curve ahead as dots: very short pieces on a field of 1000 x 1000; empty where nothing is told.
    pub line: String,
    /// The outline of its band.
    pub band: String,
    /// Where it will settle as it stands.
    pub settles: Option<LevelView>,
    /// Where it will settle in the house.
    pub in_house: Option<LevelView>,
    /// The range in which it is ready where it stands, 0 to 1.
    pub ready: Option<(f64, f64)>,
    /// Its word.
    pub ready_text: String,
}

/// What is foreseen, in words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AheadView {
    /// Into the house, and to finish-turn; empty where it is too early to say.
    pub ready: Vec<FigureView>,
    /// "Too early to say"; empty otherwise.
    pub early: String,
    /// Why, one sentence each.
    pub reasons: Vec<String>,
    /// The whole road in weeks, where no days can be told.
    pub road: Option<FigureView>,
    /// Moisture now.
    pub moisture: Option<FigureView>,
    /// What had to be assumed, one sentence each.
    pub assumed: Vec<String>,
    /// Said while it is reckoned anew, or why that came to nothing.
    pub note: String,
}

/// Something that wants attention.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WarningView {
    /// What.
    pub text: String,
    /// What it means, and what to do.
    pub note: String,
}

/// Whether it stays put once the room is taken out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VerdictView {
    /// The verdict.
    pub text: String,
    /// Why, and what would decide it.
    pub why: String,
    /// It stays put.
    pub stable: bool,
}

/// Thick walls against thin ones.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnevenView {
    /// Its heading.
    pub title: String,
    /// What it comes to.
    pub text: String,
    /// The numbers are shown.
    pub open: bool,
    /// The numbers in one line.
    pub numbers: String,
    /// What they mean.
    pub meaning: String,
    /// Where they come from.
    pub source: String,
    /// The row that opens the numbers.
    pub more: String,
    /// Closes them.
    pub close: String,
}
