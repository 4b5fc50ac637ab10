//! Changes: the turner's own lines, wordings, hiding and order put on the built-in checklist.

use std::collections::{BTreeMap, BTreeSet};

use crate::checklist::{BUILT_IN, BuiltIn, EditorLine, LineText, LineWhen, holds};
use crate::piece::Moment;
use crate::shop::{ChecklistChange, Shop};
use crate::stage::Stage;

/// Own lines stand after the built-in ones until they are moved.
const FIRST_OWN: i64 = 100_000;
const STEP: i64 = 100;

/// What the changes amount to; keys are line ids.
#[derive(Default)]
struct Changed<'a> {
    worded: BTreeMap<&'a str, (Stage, &'a str, &'a str)>,
    hidden: BTreeSet<&'a str>,
    placed: BTreeMap<&'a str, i64>,
    /// Own lines in the order in which they were first worded.
    own: Vec<&'a str>,
}

impl<'a> Changed<'a> {
    fn of(changes: impl Iterator<Item = &'a ChecklistChange>) -> Self {
        let mut all = Self::default();
        for change in changes {
            match change {
                // A line without words cannot be read or ticked: such a change is none.
                ChecklistChange::Worded { text, .. } if text.trim().is_empty() => {}
                ChecklistChange::Worded {
                    line,
                    stage,
                    text,
                    why,
                } => {
                    all.worded.insert(line, (*stage, text, why));
                    if built_in(line).is_none() && !all.own.contains(&line.as_str()) {
                        all.own.push(line);
                    }
                }
                ChecklistChange::Hidden { line, hidden: true } => {
                    all.hidden.insert(line);
                }
                ChecklistChange::Hidden {
                    line,
                    hidden: false,
                } => {
                    all.hidden.remove(line.as_str());
                }
                ChecklistChange::Placed { line, order } => {
                    all.placed.insert(line, *order);
                }
                ChecklistChange::Reset { line } => {
                    all.worded.remove(line.as_str());
                    all.hidden.remove(line.as_str());
                    all.placed.remove(line.as_str());
                    all.own.retain(|own| own != line);
                }
            }
        }
        all
    }

    fn built_in(&self, line: &BuiltIn) -> EditorLine {
        let words = match self.worded.get(line.id) {
            Some((_, text, why)) => own_words(text, why),
            None => (
                LineText::Catalogue(format!("line-{}", line.id)),
                Some(LineText::Catalogue(format!("line-{}-why", line.id))),
            ),
        };
        let changed = self.worded.contains_key(line.id)
            || self.hidden.contains(line.id)
            || self.placed.get(line.id).is_some_and(|o| *o != line.order);
        EditorLine {
            id: line.id.to_owned(),
            stage: line.stage,
            standing: line.standing,
            builtin: true,
            when: line.when,
            text: words.0,
            why: words.1,
            hidden: self.hidden.contains(line.id),
            order: self.placed.get(line.id).copied().unwrap_or(line.order),
            changed,
            link: line.link,
        }
    }

    fn own(&self, stage: Stage) -> impl Iterator<Item = EditorLine> {
        let orders = (0..).map(|i| FIRST_OWN + STEP * i);
        self.own.iter().zip(orders).filter_map(move |(id, usual)| {
            let (own_stage, text, why) = self.worded.get(id)?;
            let (text, why) = own_words(text, why);
            (*own_stage == stage).then(|| EditorLine {
                id: (*id).to_owned(),
                stage,
                standing: false,
                builtin: false,
                when: LineWhen::Always,
                text,
                why,
                hidden: self.hidden.contains(id),
                order: self.placed.get(id).copied().unwrap_or(usual),
                changed: true,
                link: None,
            })
        })
    }
}

fn own_words(text: &str, why: &str) -> (LineText, Option<LineText>) {
    let why = Some(why).filter(|w| !w.trim().is_empty());
    (
        LineText::Own(text.to_owned()),
        why.map(|w| LineText::Own(w.to_owned())),
    )
}

fn built_in(id: &str) -> Option<&'static BuiltIn> {
    BUILT_IN.iter().find(|b| b.id == id)
}

/// The lines of a stage, hidden ones too, with the changes that hold where it was entered at `entered`.
pub(super) fn lines_at(stage: Stage, shop: &Shop, entered: Option<Moment>) -> Vec<EditorLine> {
    let in_force = shop
        .checklist
        .iter()
        .filter(|(made, _)| holds(*made, entered));
    let changed = Changed::of(in_force.map(|(_, change)| change));
    let of_stage = BUILT_IN.iter().filter(|b| b.stage == stage);
    let mut lines: Vec<EditorLine> = of_stage.map(|b| changed.built_in(b)).collect();
    lines.extend(changed.own(stage));
    // A stable sort: lines with one key stay in the order above.
    lines.sort_by_key(|l| l.order);
    lines
}

/// See [`super::moved`].
pub(super) fn moved(lines: &[EditorLine], id: &str, to: usize) -> Vec<ChecklistChange> {
    let Some(from) = lines.iter().position(|l| l.id == id) else {
        return Vec::new();
    };
    let mut others: Vec<&EditorLine> = lines.iter().collect();
    let line = others.remove(from);
    let to = to.min(others.len());
    if to == from {
        return Vec::new();
    }
    let before = to
        .checked_sub(1)
        .and_then(|i| others.get(i))
        .map(|l| l.order);
    let after = others.get(to).map(|l| l.order);
    let order = match (before, after) {
        (None, None) => return Vec::new(),
        (None, Some(after)) => after.checked_sub(STEP),
        (Some(before), None) => before.checked_add(STEP),
        (Some(before), Some(after)) => {
            Some(before.midpoint(after)).filter(|o| *o > before && *o < after)
        }
    };
    let placed = |line: &EditorLine, order| ChecklistChange::Placed {
        line: line.id.clone(),
        order,
    };
    match order {
        Some(order) => vec![placed(line, order)],
        None => {
            others.insert(to, line);
            let orders = (1..).map(|i| STEP * i);
            others
                .into_iter()
                .zip(orders)
                .map(|(l, o)| placed(l, o))
                .collect()
        }
    }
}
