//! Counting: which lines of a journal count, after retractions and retractions of retractions.

use std::collections::{HashMap, HashSet};

use crate::ids::LineId;
use crate::line::Line;

/// Lines that count: those not taken back by a later line that itself counts. `ordered` must stand in fold order.
#[must_use]
pub fn lines_that_count<F>(
    ordered: &[Line<F>],
    retracts: impl Fn(&F) -> Option<&LineId>,
) -> HashSet<LineId> {
    counting_places(ordered, retracts)
        .into_iter()
        .zip(ordered)
        .filter(|(counts, _)| *counts)
        .map(|(_, line)| line.id.clone())
        .collect()
}

/// For each line of `ordered`, in its place: whether it counts.
pub(crate) fn counting_places<F>(
    ordered: &[Line<F>],
    retracts: impl Fn(&F) -> Option<&LineId>,
) -> Vec<bool> {
    let mut counts = vec![true; ordered.len()];
    let takes_back = |line: &Line<F>| line.facts.iter().any(|f| retracts(f).is_some());
    if !ordered.iter().any(takes_back) {
        return counts;
    }
    let places = ordered.iter().enumerate().map(|(i, l)| (&l.id, i));
    let place: HashMap<&LineId, usize> = places.collect();
    // From the last to the first: when a line's turn comes, all that could take it back is settled.
    for (i, line) in ordered.iter().enumerate().rev() {
        if !counts[i] {
            continue;
        }
        for target in line.facts.iter().filter_map(&retracts) {
            if let Some(&t) = place.get(target)
                && t < i
            {
                counts[t] = false;
            }
        }
    }
    counts
}
