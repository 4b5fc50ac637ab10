//! View: what the drying and weighing pages show, with final text.

pub use super::ahead_view::{
    AheadView, ForesightView, LevelView, UnevenView, VerdictView, WarningView,
};
pub use crate::piece::view::HeadView;

/// A mark at the edge of the chart, or a line across it.
#[derive(Debug, Clone, PartialEq)]
pub struct TickView {
    /// Where, 0 left or top to 1 right or bottom.
    pub at: f64,
    /// Its text.
    pub text: String,
}

/// A stage on the strip below the chart.
#[derive(Debug, Clone, PartialEq)]
pub struct PhaseView {
    /// Where it begins, 0 to 1.
    pub from: f64,
    /// Where it ends, 0 to 1.
    pub to: f64,
    /// Its name.
    pub text: String,
    /// Step of the moisture scale, 4 in the bag to 1 indoors.
    pub tone: u8,
}

/// A weighing on the chart.
#[derive(Debug, Clone, PartialEq)]
pub struct DotView {
    /// From the left, 0 to 1.
    pub x: f64,
    /// From the top, 0 to 1.
    pub y: f64,
    /// Empty, `last`, `question` (it does not fit the one before) or `picked`.
    pub kind: &'static str,
}

/// Weight against time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ChartView {
    /// The curve on a field of 1000 x 1000; it stops where weights are not compared.
    pub line: String,
    /// Weights at the edge.
    pub y_ticks: Vec<TickView>,
    /// Characters of the longest of them, four or more.
    pub tick_characters: usize,
    /// Days below.
    pub x_ticks: Vec<TickView>,
    /// Stages below.
    pub phases: Vec<PhaseView>,
    /// The weighings.
    pub dots: Vec<DotView>,
    /// Where something other than drying changed the weight, and where a new scale came.
    pub breaks: Vec<TickView>,
    /// Looks at the bag: `wet`, `damp`, `nothing`, `mould`, `look`.
    pub looks: Vec<DotView>,
    /// What is foreseen.
    pub ahead: ForesightView,
    /// The unit of the edge; empty where its marks carry their own.
    pub unit: String,
    /// Today, 0 to 1.
    pub today: f64,
    /// The word for today.
    pub today_text: String,
    /// The whole of it in words.
    pub label: String,
    /// Said instead of a curve where none falls into the time shown.
    pub note: String,
}

/// One choice out of a few.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OptionView {
    /// What comes back.
    pub key: String,
    /// Its text.
    pub text: String,
    /// Chosen.
    pub chosen: bool,
}

/// The weighing picked on the chart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PickedView {
    /// "828 g".
    pub weight: String,
    /// "Sat 28 Feb, 12 days ago".
    pub day: String,
    /// What it is beside the one before.
    pub note: String,
    /// It does not fit the one before.
    pub question: bool,
    /// There is one before.
    pub has_before: bool,
    /// There is one after.
    pub has_after: bool,
}

/// A large figure with its words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FigureView {
    /// What it is.
    pub label: String,
    /// Its figures.
    pub value: String,
    /// Its unit.
    pub unit: String,
    /// What it means.
    pub note: String,
}

/// "Staying put 41 of 60 days".
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StayingView {
    /// "Staying put 41 of 60 days".
    pub title: String,
    /// "since 30 Jan"; empty while it falls.
    pub since: String,
    /// Bars filled.
    pub done: u32,
    /// Bars, at most sixty.
    pub count: u32,
    /// Why, or what it means.
    pub reason: String,
    /// It has settled.
    pub steady: bool,
}

/// The answers given at the bag.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BagView {
    /// Its heading.
    pub title: String,
    /// How it went on: "neck open since 28 Nov".
    pub trailing: String,
    /// Icons of the answers, the oldest first.
    pub drops: Vec<&'static str>,
    /// The answers in words.
    pub label: String,
    /// Mould and cracks seen; empty where none were.
    pub note: String,
}

/// Something that comes next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ComingView {
    /// What.
    pub title: String,
    /// When.
    pub day: String,
    /// Why.
    pub why: String,
    /// It is late.
    pub late: bool,
}

/// A change of weight that is not drying.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangeView {
    /// Stable key.
    pub key: &'static str,
    /// Its text.
    pub text: String,
}

/// The sheet behind the three dots.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MoreView {
    /// Its title.
    pub title: String,
    /// Its text.
    pub text: String,
    /// The changes that can be noted.
    pub changes: Vec<ChangeView>,
}

/// Fixed words of the drying page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DryingWords {
    /// The primary button.
    pub weigh: String,
    /// Corrects the picked weighing.
    pub correct: String,
    /// The picked weighing before.
    pub before: String,
    /// The picked weighing after.
    pub after: String,
    /// Closes.
    pub close: String,
    /// Leads to the stages.
    pub stages: String,
    /// What is found there.
    pub stages_note: String,
    /// Leads to the diary.
    pub diary: String,
}

/// The page Drying of one piece.
#[derive(Debug, Clone, PartialEq)]
pub struct DryingView {
    /// Its head.
    pub head: HeadView,
    /// The last weight; empty where it was never weighed.
    pub last: FigureView,
    /// Title and text where it was never weighed.
    pub empty: Option<(String, String)>,
    /// What is foreseen, in words.
    pub ahead: AheadView,
    /// What wants attention.
    pub warnings: Vec<WarningView>,
    /// The curve.
    pub chart: Option<ChartView>,
    /// Weight or moisture; empty where only weights are known.
    pub measures: Vec<OptionView>,
    /// How much of the time is shown; empty where all fits.
    pub spans: Vec<OptionView>,
    /// The weighing picked.
    pub picked: Option<PickedView>,
    /// What changed the weight otherwise, one sentence each.
    pub breaks: Vec<String>,
    /// What it lost in the present run, and how fast.
    pub figures: Vec<FigureView>,
    /// Whether it stays put.
    pub staying: Option<StayingView>,
    /// The same with the room taken out, where its air is kept.
    pub verdict: Option<VerdictView>,
    /// Thick walls against thin ones.
    pub uneven: Option<UnevenView>,
    /// A finer scale is suggested; empty otherwise.
    pub coarse: String,
    /// The bag.
    pub bag: Option<BagView>,
    /// The next look and weighing.
    pub coming: Vec<ComingView>,
    /// The moisture at which wood settles in shop and house, one sentence each.
    pub air: Vec<String>,
    /// The sheet behind the three dots.
    pub more: Option<MoreView>,
    /// Fixed words.
    pub words: DryingWords,
}

/// What the weighing page asks, with its answers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AskView {
    /// The question.
    pub title: String,
    /// Why it is asked.
    pub text: String,
    /// The answers; `chosen` marks the likely one.
    pub answers: Vec<OptionView>,
}

/// The page Weigh of one piece.
#[derive(Debug, Clone, PartialEq)]
pub struct WeighView {
    /// Its head.
    pub head: HeadView,
    /// What is entered: the weight, or the tare.
    pub what: String,
    /// What was typed, or a dash.
    pub number: String,
    /// Its unit; empty where what was typed carries it.
    pub unit: String,
    /// Something is typed.
    pub typing: bool,
    /// The tare is entered.
    pub entering_tare: bool,
    /// The last weight, or that there is none.
    pub last: String,
    /// The difference from it while typing.
    pub difference: String,
    /// The difference will be asked about.
    pub doubtful: bool,
    /// The weight of the wood, where something else stands on the scale.
    pub net: String,
    /// "Tare: none, weighed bare".
    pub tare: String,
    /// The ways to give a tare; empty while folded.
    pub tares: Vec<OptionView>,
    /// When it was weighed.
    pub whens: Vec<OptionView>,
    /// A day is typed.
    pub typing_day: bool,
    /// The day typed.
    pub day: String,
    /// The day as understood.
    pub day_note: String,
    /// What is wrong with the day.
    pub day_wrong: String,
    /// What the page asks.
    pub ask: Option<AskView>,
    /// The key that records.
    pub next: String,
    /// That key can be touched.
    pub can_next: bool,
    /// The key that takes pounds; empty where weights are in grams.
    pub pounds: String,
    /// That key can be touched.
    pub can_pounds: bool,
    /// Fixed words.
    pub words: WeighWords,
}

/// Fixed words of the weighing page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeighWords {
    /// What stands on the scale with the piece.
    pub tare: String,
    /// The field for the day.
    pub day: String,
    /// An example of a day.
    pub day_hint: String,
    /// The key that deletes.
    pub delete: String,
    /// The point key.
    pub point: String,
    /// Clears a field.
    pub clear: String,
}
