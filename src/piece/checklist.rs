//! Checklist: what to think of in a stage, line by line, with what the turner ticked, measured and changed.
//!
//! The built-in lines are common practice, no source. Their words live in the catalogue under the ids that
//! [`LineText::Catalogue`] names; own lines carry their own words. Every tick is optional: nothing counts as missing.
//!
//! Changes are for pieces to come. A change to a stage's lines holds for a piece if it was made before the piece last
//! entered that stage, or if the piece has not been there yet. A ticked line always shows the text that was ticked, even
//! where the line was hidden, reworded or taken away since.

mod built_in;
mod changes;
mod measured;

use crate::piece::{Moment, Piece, Tick};
use crate::shop::{ChecklistChange, Shop};
use crate::stage::Stage;
use crate::vocabulary::{Form, Grain, keyed};

pub use built_in::{BUILT_IN, BuiltIn};
pub use measured::{Link, Measured};

keyed!(
    /// For which pieces a line is shown.
    LineWhen {
        /// For all.
        Always = "always",
        /// Fibres along the axis.
        EndGrain = "end-grain",
        /// Fibres across the axis.
        SideGrain = "side-grain",
        /// Vessels and hollow forms: worked through a small mouth.
        Closed = "closed",
        /// For turners who weigh, see [`WEIGHS`].
        Weighed = "weighed",
    }
);

/// The key of the stored setting that hides the lines about weighing: `false` hides them, all else shows them.
pub const WEIGHS: &str = "weighs";

/// The catalogue's ids of the general cautions, shown once at first use: lathe, dust, superglue, solvents, fire, and
/// whose rules come first.
pub const GENERAL_CAUTIONS: [&str; 6] = [
    "caution-general-1",
    "caution-general-2",
    "caution-general-3",
    "caution-general-4",
    "caution-general-5",
    "caution-general-6",
];

/// The catalogue's id of a stage's caution.
#[must_use]
pub fn caution_id(stage: Stage) -> String {
    format!("caution-{}", stage.key())
}

/// The id of an own line; `unique` is 1 or more of `a-z`, `0-9` and `-` and not used by another line of the shop.
#[must_use]
pub fn own_line_id(stage: Stage, unique: &str) -> String {
    format!("{OWN}{}-{unique}", stage.key())
}

const OWN: &str = "own-";

/// The words of a line, or of its why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LineText {
    /// A message of the catalogue.
    Catalogue(String),
    /// The turner's own words, or those that were ticked.
    Own(String),
}

/// A line of a piece's checklist.
#[derive(Debug, Clone, PartialEq)]
pub struct ChecklistLine {
    /// Stable id.
    pub id: String,
    /// A standing rule, repeated all through the stage: no box, never missing.
    pub standing: bool,
    /// True for a line that came with the program, reworded or not.
    pub builtin: bool,
    /// Its words; those that were ticked where it is ticked.
    pub text: LineText,
    /// The half-sentence behind it.
    pub why: Option<LineText>,
    /// True where it was hidden, or is not for such a piece, and is shown because it is ticked.
    pub hidden: bool,
    /// The turner's tick.
    pub ticked: Option<Tick>,
    /// The record that ticks it by itself, where it has one.
    pub link: Option<Link>,
    /// What that record says so far.
    pub measured: Option<Measured>,
}

impl ChecklistLine {
    /// True where it is ticked, by hand or by what was recorded.
    #[must_use]
    pub fn done(&self) -> bool {
        self.ticked.is_some() || self.measured.is_some_and(|m| m.complete())
    }
}

/// A line as the editor of a stage's checklist shows it, for pieces to come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EditorLine {
    /// Stable id.
    pub id: String,
    /// The stage it stands in.
    pub stage: Stage,
    /// A standing rule: no box.
    pub standing: bool,
    /// True for a line that came with the program, reworded or not.
    pub builtin: bool,
    /// For which pieces it is shown.
    pub when: LineWhen,
    /// Its words.
    pub text: LineText,
    /// The half-sentence behind it; `None` where there is none.
    pub why: Option<LineText>,
    /// Hidden for pieces to come.
    pub hidden: bool,
    /// Sort key: lines are shown by rising key.
    pub order: i64,
    /// True where resetting it would change something.
    pub changed: bool,
    /// The record that ticks it by itself.
    pub link: Option<Link>,
}

/// The lines of one stage for one piece, in the order in which they are shown.
#[must_use]
pub fn lines_for(piece: &Piece, stage: Stage, shop: &Shop) -> Vec<ChecklistLine> {
    let entered = piece.visits.iter().rev().find(|v| v.stage == stage);
    let mut lines: Vec<ChecklistLine> = changes::lines_at(stage, shop, entered.map(|v| v.since))
        .into_iter()
        .filter_map(|line| for_piece(line, piece, shop))
        .collect();
    for (id, tick) in &piece.ticks {
        if lines.iter().all(|l| l.id != *id) && stage_of(id, shop) == Some(stage) {
            lines.push(ChecklistLine {
                id: id.clone(),
                standing: false,
                builtin: false,
                text: LineText::Own(tick.text.clone()),
                why: None,
                hidden: true,
                ticked: Some(tick.clone()),
                link: None,
                measured: None,
            });
        }
    }
    lines
}

/// The lines of one stage as they are for pieces to come; hidden ones only on request.
#[must_use]
pub fn lines_of_stage(stage: Stage, shop: &Shop, show_hidden: bool) -> Vec<EditorLine> {
    let mut lines = changes::lines_at(stage, shop, None);
    lines.retain(|l| show_hidden || !l.hidden);
    lines
}

/// The changes that put the line `id` at place `to` (counted from 0) of `lines`, which are those of one stage in their
/// order. Usually one change; where the sort keys leave no room, one for each line. None where `id` is not among them.
#[must_use]
pub fn moved(lines: &[EditorLine], id: &str, to: usize) -> Vec<ChecklistChange> {
    changes::moved(lines, id, to)
}

/// The stage a line belongs to: built in, worded by the turner at any time, or as its id says. `None` for an id that
/// nobody knows.
#[must_use]
pub fn stage_of(id: &str, shop: &Shop) -> Option<Stage> {
    let built_in = BUILT_IN.iter().find(|b| b.id == id).map(|b| b.stage);
    let worded = || {
        shop.checklist.iter().rev().find_map(|(_, c)| match c {
            ChecklistChange::Worded { line, stage, .. } if line == id => Some(*stage),
            _ => None,
        })
    };
    let named = || {
        let name = id.strip_prefix(OWN).unwrap_or(id);
        name.split('-').next().and_then(Stage::from_key)
    };
    built_in.or_else(worded).or_else(named)
}

fn for_piece(line: EditorLine, piece: &Piece, shop: &Shop) -> Option<ChecklistLine> {
    let ticked = piece.ticks.get(&line.id).cloned();
    let hidden = line.hidden || !fits(line.when, piece, shop);
    if hidden && ticked.is_none() {
        return None;
    }
    let text = match &ticked {
        Some(tick) if !tick.text.trim().is_empty() => LineText::Own(tick.text.clone()),
        _ => line.text,
    };
    let measured = line.link.and_then(|l| l.measured(piece, line.stage, shop));
    Some(ChecklistLine {
        id: line.id,
        standing: line.standing,
        builtin: line.builtin,
        text,
        why: line.why,
        hidden,
        ticked,
        link: line.link,
        measured,
    })
}

fn fits(when: LineWhen, piece: &Piece, shop: &Shop) -> bool {
    match when {
        LineWhen::Always => true,
        LineWhen::EndGrain => piece.details.grain() == Grain::End,
        LineWhen::SideGrain => piece.details.grain() == Grain::Side,
        LineWhen::Closed => piece.details.form() != Form::Bowl,
        LineWhen::Weighed => shop.weighs(),
    }
}

/// True where a change made at `made` holds for a stage that was entered at `entered`, or was not entered yet.
fn holds(made: Moment, entered: Option<Moment>) -> bool {
    entered.is_none_or(|entered| made <= entered)
}
