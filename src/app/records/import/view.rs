//! The view of the import page: match, look, bring in.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Moment;

use super::Target;
use super::reading::{Fault, Planned};
use crate::app::App;
use crate::details;

/// The most pieces and faults that are listed.
const MOST_ROWS: usize = 50;
/// The most letters of an example.
const EXAMPLE: usize = 40;

/// Something that a column can hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TargetView {
    /// Its key.
    pub key: String,
    /// Its words.
    pub text: String,
}

/// One column of the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColumnView {
    /// Its name in the file.
    pub name: String,
    /// The first cell that is not blank.
    pub example: String,
    /// The key of what it is matched with; `-` where it is left out.
    pub key: String,
    /// The same in words.
    pub text: String,
}

/// A piece that would come in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlannedView {
    /// Its mark.
    pub mark: String,
    /// Wood, stage and weights, or that only its weights are taken.
    pub note: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ImportView {
    /// The title.
    pub title: String,
    /// What it does, or the name of the file.
    pub intro: String,
    /// The columns, empty while no file is open.
    pub columns: Vec<ColumnView>,
    /// What a column can hold, `-` first.
    pub targets: Vec<TargetView>,
    /// "12 pieces, 30 weights; 2 lines are left out".
    pub summary: String,
    /// The first pieces.
    pub pieces: Vec<PlannedView>,
    /// The first faults: "Line 4, Wall: ...".
    pub faults: Vec<String>,
    /// The words of the button that brings it in.
    pub run: String,
    /// True where there is something to bring in.
    pub can_run: bool,
    /// What came of the last import; empty where there is nothing to say.
    pub outcome: String,
    /// The words of the button that takes the last import back; empty where there is none.
    pub take_back: String,
}

impl App {
    /// The import page.
    #[must_use]
    pub fn import_view(&self, now: Moment) -> ImportView {
        let words = self.words();
        let state = &self.states.records.import;
        let mut view = ImportView {
            title: words.text("records-import-title"),
            intro: words.text("records-import-intro"),
            outcome: state.outcome.clone().unwrap_or_default(),
            take_back: if self.import_can_be_taken_back() {
                words.text("records-import-take-back")
            } else {
                String::new()
            },
            ..ImportView::default()
        };
        let Some(matched) = &state.matched else {
            return view;
        };
        let none = TargetView {
            key: "-".into(),
            text: words.text("records-import-left-out"),
        };
        view.intro.clone_from(&matched.path);
        view.columns = matched
            .table
            .columns
            .iter()
            .enumerate()
            .map(|(place, name)| {
                let example = matched
                    .table
                    .rows
                    .iter()
                    .map(|r| r.cells[place].as_str())
                    .find(|c| !c.is_empty())
                    .unwrap_or_default();
                let target = matched.targets[place];
                ColumnView {
                    name: name.clone(),
                    example: example.chars().take(EXAMPLE).collect(),
                    key: target.map_or_else(|| none.key.clone(), Target::key),
                    text: target.map_or_else(|| none.text.clone(), |t| self.import_target_words(t)),
                }
            })
            .collect();
        let days = matched
            .targets
            .iter()
            .flatten()
            .filter(|t| matches!(t, Target::WeightOn(_)));
        let offered = Target::offered().into_iter().chain(days.copied());
        view.targets = std::iter::once(none)
            .chain(offered.map(|t| TargetView {
                key: t.key(),
                text: self.import_target_words(t),
            }))
            .collect();
        if !matched
            .targets
            .contains(&Some(Target::Detail(DetailField::Mark)))
        {
            view.summary = words.text("records-import-which-mark");
            return view;
        }
        let (planned, faults) = self.import_read(matched, now);
        let new = planned.iter().filter(|p| p.existing.is_none()).count();
        let weights: usize = planned.iter().map(|p| p.weights.len()).sum();
        let lines: std::collections::BTreeSet<u64> = faults.iter().map(|f| f.line).collect();
        view.summary = words.with(
            "records-import-summary",
            &[
                ("pieces", new.into()),
                ("weights", weights.into()),
                ("out", lines.len().into()),
            ],
        );
        view.pieces = planned
            .iter()
            .take(MOST_ROWS)
            .map(|p| self.planned_view(p))
            .collect();
        view.faults = faults
            .iter()
            .take(MOST_ROWS)
            .map(|f| self.import_fault_words(f))
            .collect();
        view.can_run = !planned.is_empty();
        view.run = words.with("records-import-run", &[("n", planned.len().into())]);
        view
    }

    fn planned_view(&self, piece: &Planned) -> PlannedView {
        let words = self.words();
        let weights = words.with(
            "records-import-weights",
            &[("n", piece.weights.len().into())],
        );
        let note = if piece.existing.is_some() {
            words.with("records-import-existing", &[("weights", weights.into())])
        } else {
            let wood = piece
                .details
                .iter()
                .find(|(f, _)| *f == DetailField::Wood)
                .map(|(f, v)| details::value_text(self, *f, v));
            let stage = piece
                .stage
                .map(|s| words.text(&format!("stage-{}", s.key())));
            let weights = (!piece.weights.is_empty()).then_some(weights);
            let parts: Vec<String> = [wood, stage, weights].into_iter().flatten().collect();
            parts.join(" · ")
        };
        PlannedView {
            mark: piece.mark.clone(),
            note,
        }
    }

    fn import_fault_words(&self, fault: &Fault) -> String {
        let words = self.words();
        if fault.column.is_empty() {
            words.with(
                "records-import-fault-row",
                &[
                    ("line", fault.line.into()),
                    ("what", fault.text.as_str().into()),
                ],
            )
        } else {
            words.with(
                "records-import-fault",
                &[
                    ("line", fault.line.into()),
                    ("column", fault.column.as_str().into()),
                    ("what", fault.text.as_str().into()),
                ],
            )
        }
    }
}
