//! View: what the page of a piece shows, with final text.

/// The head of every page about one piece.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeadView {
    /// The mark on its foot.
    pub mark: String,
    /// The wood, or the form where no wood was said; on inner pages the page's name.
    pub title: String,
    /// Form and size.
    pub subtitle: String,
    /// The word for going back.
    pub back: String,
    /// The word for the sheet behind the three dots.
    pub more: String,
}

/// A banner above the page.
#[derive(Debug, Clone, PartialEq)]
pub struct BannerView {
    /// Stable key: what its button does.
    pub key: &'static str,
    /// `info`, `error`, `thin` or `even`.
    pub kind: &'static str,
    /// Its text.
    pub text: String,
    /// The word on its button, empty for none.
    pub action: String,
}

/// A station beside the section.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StationView {
    /// "1", "2"... or the word for the floor.
    pub label: String,
    /// The whole of it in words.
    pub spoken: String,
    /// Where the tick meets the bore, mm in the drawing's view box.
    pub inner: (f64, f64),
    /// Where it meets the outside.
    pub outer: (f64, f64),
    /// Height of its number beside the drawing, 0 top to 1 bottom.
    pub slot: f64,
    /// A wall was read here.
    pub read: bool,
    /// The figures of the last reading, or a word; empty where none was taken.
    pub value: String,
    /// `heavy`, `even`, `thin` or empty.
    pub verdict: &'static str,
    /// The verdict in words: "1.8 heavy".
    pub verdict_text: String,
}

/// A stage of the path.
#[derive(Debug, Clone, PartialEq)]
pub struct StageView {
    /// Stable key.
    pub key: &'static str,
    /// Its name.
    pub name: String,
    /// `done`, `now`, `later` or `skipped`.
    pub state: &'static str,
}

/// A line of a checklist.
#[derive(Debug, Clone, PartialEq)]
pub struct LineView {
    /// Stable id.
    pub id: String,
    /// Its text.
    pub text: String,
    /// What was measured, where it ticks itself.
    pub trailing: String,
    /// Ticked.
    pub checked: bool,
    /// A standing rule without a box.
    pub boxless: bool,
    /// Of a stage that was passed.
    pub faded: bool,
    /// Ticked by what was recorded; cannot be unticked by hand.
    pub by_itself: bool,
    /// It has a why.
    pub has_why: bool,
}

/// The lines left of a stage that was passed.
#[derive(Debug, Clone, PartialEq)]
pub struct EarlierView {
    /// The stage's name.
    pub title: String,
    /// "3 of 8 done".
    pub count: String,
    /// Its lines.
    pub lines: Vec<LineView>,
}

/// One answer of a look.
#[derive(Debug, Clone, PartialEq)]
pub struct AnswerView {
    /// `wet`, `damp`, `nothing` or `fine`.
    pub key: &'static str,
    /// Its word.
    pub text: String,
    /// Its icon.
    pub icon: &'static str,
    /// What is done and when.
    pub note: String,
}

/// A look answered in place.
#[derive(Debug, Clone, PartialEq)]
pub struct LookView {
    /// The question.
    pub title: String,
    /// When it is due.
    pub due: String,
    /// It is late.
    pub late: bool,
    /// The answers.
    pub answers: Vec<AnswerView>,
    /// The word for mould.
    pub mould: String,
    /// The word for a crack.
    pub crack: String,
}

/// A way into another page about the piece.
#[derive(Debug, Clone, PartialEq)]
pub struct WayView {
    /// Stable key.
    pub key: &'static str,
    /// Its name.
    pub title: String,
    /// How it stands there.
    pub note: String,
    /// Its icon.
    pub icon: &'static str,
}

/// The one next action.
#[derive(Debug, Clone, PartialEq)]
pub struct NextView {
    /// Stable key.
    pub key: &'static str,
    /// Its words.
    pub text: String,
    /// Its icon.
    pub icon: &'static str,
}

/// How a piece ended.
#[derive(Debug, Clone, PartialEq)]
pub struct EndedView {
    /// "Finished", "Lost".
    pub title: String,
    /// The day.
    pub day: String,
    /// Where, how, why, own words: one line each.
    pub lines: Vec<String>,
    /// The word for putting it back.
    pub put_back: String,
}

/// The sheet that says why a line is there.
#[derive(Debug, Clone, PartialEq)]
pub struct WhyView {
    /// Its title.
    pub title: String,
    /// The line.
    pub line: String,
    /// The why.
    pub why: String,
    /// Where it comes from.
    pub source: String,
}

/// The page of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct PieceView {
    /// The head.
    pub head: HeadView,
    /// Banners.
    pub banners: Vec<BannerView>,
    /// Both halves or the cut half, as path strings.
    pub section: crate::drawing::SectionDrawing,
    /// What a screen reader says of the section.
    pub section_label: String,
    /// The stations, the floor last.
    pub stations: Vec<StationView>,
    /// What the drawing shows, below it.
    pub legend: String,
    /// The nine stages.
    pub stages: Vec<StageView>,
    /// What a screen reader says of the path.
    pub stages_label: String,
    /// Where it is in words: "In the bag, day 9".
    pub stage_in_words: String,
    /// The stage's safety line, its first sentence.
    pub caution: String,
    /// The rest of it.
    pub caution_note: String,
    /// The stage's name, heading its checklist.
    pub checklist_title: String,
    /// "2 of 4 done".
    pub checklist_count: String,
    /// The checklist of the stage.
    pub lines: Vec<LineView>,
    /// The word beside each why.
    pub why_label: String,
    /// Opens or closes the lines of stages passed; empty where there are none.
    pub earlier_text: String,
    /// Those lines, while open.
    pub earlier: Vec<EarlierView>,
    /// The look that is due or asked for.
    pub look: Option<LookView>,
    /// Its portrait, where there is one.
    pub portrait: Option<crate::photos::PhotoTile>,
    /// What a screen reader calls it.
    pub portrait_label: String,
    /// Said of a drawn one, in the demo; empty elsewhere.
    pub portrait_drawn: String,
    /// Heads the ways.
    pub ways_title: String,
    /// Ways into the other pages.
    pub ways: Vec<WayView>,
    /// The one next action.
    pub next: Option<NextView>,
    /// The quieter one: the next stage.
    pub then: Option<NextView>,
    /// How it ended.
    pub ended: Option<EndedView>,
    /// The sheet behind the three dots.
    pub more: Option<(String, Vec<WayView>)>,
    /// Why a line is there.
    pub why: Option<WhyView>,
    /// The word for closing.
    pub close: String,
}
