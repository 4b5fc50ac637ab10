//! Line: one action of the turner as it stands in a journal.

use chrono::{DateTime, FixedOffset};

use crate::ids::LineId;

/// One line of a diary: one action, holding one or more facts that stand or fall together.
#[derive(Debug, Clone, PartialEq)]
pub struct Line<F> {
    /// Who wrote it and its count in that file.
    pub id: LineId,
    /// 1 + the highest `seq` the writer had read in that folder: orders the fold without any clock.
    pub seq: u64,
    /// When it happened; the turner may change it.
    pub at: DateTime<FixedOffset>,
    /// When it was written down.
    pub noted_at: DateTime<FixedOffset>,
    /// What happened.
    pub facts: Vec<F>,
}

/// Puts lines into the order of the fold, `(seq, device, n)`, and drops second copies of a line.
#[must_use]
pub fn in_fold_order<F>(mut lines: Vec<Line<F>>) -> Vec<Line<F>> {
    lines.sort_by(|a, b| (a.seq, &a.id).cmp(&(b.seq, &b.id)));
    let mut seen = std::collections::HashSet::new();
    lines.retain(|line| seen.insert(line.id.clone()));
    lines
}
