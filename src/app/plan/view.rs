//! View: Plan as it is shown.

use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::Form;
use evenwall_wood::rough_wall::Grain;

use crate::app::App;
use crate::drawing::{OvalDrawing, PlannedShape, SectionDrawing, plan_ring, plan_section};

use super::results::Results;
use super::{EntryView, InputsView, ResultView, SumView, WoodSheetView};

/// One detail that would be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WriteView {
    /// Which.
    pub label: String,
    /// Its value.
    pub value: String,
}

/// Plan as it is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanView {
    /// Its title.
    pub title: String,
    /// The piece's wood, where it is the plan of one.
    pub subtitle: String,
    /// The piece's mark, where it is the plan of one.
    pub mark: String,
    /// The word for going back.
    pub back: String,
    /// The wall to leave.
    pub answer: ResultView,
    /// The sum and the practice, side by side: what, and how much.
    pub beside: Vec<(String, crate::numbers::Shown)>,
    /// Whose figures these are.
    pub basis: String,
    /// Rough, and dried in dashes: the half section.
    pub section: SectionDrawing,
    /// It in words.
    pub section_label: String,
    /// The same from above.
    pub ring: OvalDrawing,
    /// It in words.
    pub ring_label: String,
    /// Heading of the drawing from above.
    pub ring_title: String,
    /// What line and dashes mean.
    pub legend: (String, String),
    /// Figures, each of which opens its sum.
    pub cells: Vec<ResultView>,
    /// Heading of the lines.
    pub lines_title: String,
    /// Results in words, each of which opens its sum.
    pub lines: Vec<ResultView>,
    /// Heading of what would change.
    pub others_title: String,
    /// What another pith or size would change.
    pub others: Vec<String>,
    /// The split to expect, with the pith in the wall; empty else.
    pub warning: String,
    /// What can be entered.
    pub inputs: InputsView,
    /// The caution by the lathe.
    pub caution: String,
    /// The word for all cautions.
    pub cautions: String,
    /// Heading of what would be written to the piece.
    pub writes_title: String,
    /// What would be written to the piece.
    pub writes: Vec<WriteView>,
    /// The word on the button: start a piece, or use it for this one.
    pub go: String,
    /// It can be pressed.
    pub go_active: bool,
    /// The word for starting the plan afresh; empty where there is nothing to clear.
    pub afresh: String,
    /// That it was started afresh, while the old one can be brought back; empty else.
    pub afresh_said: String,
    /// The word for bringing it back.
    pub undo: String,
    /// A size being entered.
    pub entry: Option<EntryView>,
    /// The wood being looked for.
    pub wood: Option<WoodSheetView>,
    /// The sum that is open.
    pub sum: Option<SumView>,
}

impl App {
    /// Plan as it is shown: of the tab, or of the piece whose plan is open.
    #[must_use]
    pub fn plan_view(&self, _now: Moment) -> PlanView {
        let words = self.words();
        let results = self.plan_results();
        let piece = self.plan_piece();
        let writes = self.plan_writes(&results);
        let section = self.plan_section_drawing(&results);
        let ring = results.wall.as_ref().ok().map(|wall| {
            let pairs = |points: &[evenwall_wood::section::Xy]| {
                points.iter().map(|p| (p.x, p.y)).collect::<Vec<_>>()
            };
            let dried = results
                .shape
                .as_ref()
                .map(|s| (pairs(&s.outer), pairs(&s.inner)));
            plan_ring(
                wall.ring.radius_mm(),
                wall.ring.bore_mm(),
                dried.as_ref().map(|(o, i)| (o.as_slice(), i.as_slice())),
            )
        });
        let in_wall = results.wall.is_ok() && results.shape.is_none();
        let untouched = match piece {
            Some(piece) => *self.plan_draft() == super::Draft::of(piece),
            None => self.plan_draft().is_blank(),
        };
        PlanView {
            title: words.text("plan-title"),
            subtitle: piece.map(|p| self.wood_of(p)).unwrap_or_default(),
            mark: piece.map(|p| p.mark().to_owned()).unwrap_or_default(),
            back: words.text("action-back"),
            answer: self.plan_answer(&results),
            beside: self.plan_beside(&results),
            basis: results.figures.whose.clone(),
            section,
            section_label: self.plan_drawn(&results),
            ring: ring.unwrap_or_default(),
            ring_label: self.plan_drawn_ring(&results),
            ring_title: words.text("plan-from-above"),
            legend: (
                words.text("plan-legend-rough"),
                if results.shape.is_some() {
                    words.text("plan-legend-dried")
                } else {
                    String::new()
                },
            ),
            cells: self.plan_cells(&results),
            lines_title: words.text("plan-lines"),
            lines: self.plan_lines(&results),
            others_title: words.text("plan-others"),
            others: self.plan_others(&results),
            warning: if in_wall {
                words.text("plan-wall-split")
            } else {
                String::new()
            },
            inputs: self.plan_inputs(&results),
            caution: words.text("caution-shape"),
            cautions: words.text("plan-cautions"),
            writes_title: words.text(if writes.is_empty() {
                "plan-writes-none"
            } else {
                "plan-writes"
            }),
            go: words.text(if piece.is_some() {
                "plan-use"
            } else {
                "plan-start"
            }),
            go_active: piece.is_none() || !writes.is_empty(),
            writes,
            afresh: if untouched {
                String::new()
            } else {
                words.text("plan-afresh")
            },
            afresh_said: if self.states.plan.before.is_some() {
                words.text("plan-afresh-said")
            } else {
                String::new()
            },
            undo: words.text("action-undo"),
            entry: self.plan_entry_view(),
            wood: self.plan_wood_view(),
            sum: self.plan_sum_view(&results),
        }
    }

    fn plan_section_drawing(&self, results: &Results) -> SectionDrawing {
        let (Ok(wall), Some(floor)) = (&results.wall, results.floor) else {
            return SectionDrawing::default();
        };
        let given = &results.given;
        let up = match given.grain {
            Grain::End => given.along,
            Grain::Side => given.usual.radial,
        };
        plan_section(&PlannedShape {
            outline: match given.form {
                Form::Vessel => Some(evenwall_wood::outline::Outline::Egg),
                Form::HollowForm => Some(evenwall_wood::outline::Outline::Ball),
                Form::Bowl => None,
            },
            diameter: given.diameter,
            height: given.height,
            wall: wall.advised,
            floor,
            spigot: results.spigot.as_ref().ok().map(|s| s.advised),
            left: results
                .shape
                .as_ref()
                .map(|s| (s.longest, s.shortest, 1.0 - up)),
        })
    }

    /// The half section in words, for who cannot see it.
    fn plan_drawn(&self, results: &Results) -> String {
        let words = self.words();
        let numbers = self.numbers();
        let (Ok(wall), Some(floor)) = (&results.wall, results.floor) else {
            return words.text("plan-drawn-nothing");
        };
        let rough = words.with(
            "plan-drawn",
            &[
                (
                    "diameter",
                    numbers.diameter(results.given.diameter).text().into(),
                ),
                (
                    "height",
                    numbers.diameter(results.given.height).text().into(),
                ),
                ("wall", self.plan_cut(wall.advised).text().into()),
                ("floor", self.plan_cut(floor).text().into()),
            ],
        );
        let dried = match &results.shape {
            Some(_) => words.text("plan-drawn-dried"),
            None => words.text("plan-drawn-no-dried"),
        };
        format!("{rough} {dried}")
    }

    fn plan_drawn_ring(&self, results: &Results) -> String {
        let words = self.words();
        if results.wall.is_err() {
            return words.text("plan-drawn-nothing");
        }
        let across = results.given.diameter;
        match &results.shape {
            None => words.text("plan-drawn-no-dried"),
            Some(shape) => words.with(
                "plan-drawn-ring",
                &[
                    ("diameter", self.plan_across(across).text().into()),
                    (
                        "longest",
                        self.plan_across(shape.longest * across).text().into(),
                    ),
                    (
                        "shortest",
                        self.plan_across(shape.shortest * across).text().into(),
                    ),
                ],
            ),
        }
    }
}
