//! Line: one action of the turner as it stands in a journal.

use std::cmp::Ordering;
use std::collections::HashSet;
use std::fmt;

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
///
/// Two different lines with one id cannot both be placed: one of them is kept, the same one whatever the order in which
/// they were read.
#[must_use]
pub fn in_fold_order<F: fmt::Debug>(mut lines: Vec<Line<F>>) -> Vec<Line<F>> {
    lines.sort_by(|a, b| {
        (a.seq, &a.id)
            .cmp(&(b.seq, &b.id))
            .then_with(|| copies(a, b))
    });
    let mut seen = HashSet::with_capacity(lines.len());
    let first: Vec<bool> = lines.iter().map(|line| seen.insert(&line.id)).collect();
    if first.contains(&false) {
        let mut first = first.into_iter();
        lines.retain(|_| first.next().unwrap_or(false));
    }
    lines
}

/// Any order that depends on nothing but the two lines. Facts hold fractions, which have no order of their own.
fn copies<F: fmt::Debug>(a: &Line<F>, b: &Line<F>) -> Ordering {
    let written = |l: &Line<F>| (l.noted_at, l.at);
    written(a)
        .cmp(&written(b))
        .then_with(|| format!("{a:?}").cmp(&format!("{b:?}")))
}
