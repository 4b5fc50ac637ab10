//! Order: marks as a turner reads them (K7 before K10), and tasks by what matters most.

use std::cmp::Ordering;

use super::task::{Task, TaskKind};

/// Two marks in the order in which a turner reads them: figures by value, letters without regard to case.
#[must_use]
pub fn by_mark(a: &str, b: &str) -> Ordering {
    let (mut x, mut y) = (a, b);
    loop {
        match (x.chars().next(), y.chars().next()) {
            (None, None) => return a.cmp(b),
            (None, Some(_)) => return Ordering::Less,
            (Some(_), None) => return Ordering::Greater,
            (Some(c), Some(d)) if c.is_ascii_digit() && d.is_ascii_digit() => {
                let (m, n) = (figures(&mut x), figures(&mut y));
                let order = m.len().cmp(&n.len()).then_with(|| m.cmp(n));
                if order != Ordering::Equal {
                    return order;
                }
            }
            (Some(c), Some(d)) => {
                let order = c.to_lowercase().cmp(d.to_lowercase());
                if order != Ordering::Equal {
                    return order;
                }
                x = &x[c.len_utf8()..];
                y = &y[d.len_utf8()..];
            }
        }
    }
}

/// Takes the figures at the start of a text, without leading noughts.
fn figures<'a>(text: &mut &'a str) -> &'a str {
    let end = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    let (run, rest) = text.split_at(end);
    *text = rest;
    run.trim_start_matches('0')
}

fn rank(kind: &TaskKind) -> u8 {
    match kind {
        TaskKind::HalfTurned(_) => 0,
        TaskKind::Look => 1,
        TaskKind::LookOver => 2,
        TaskKind::Find => 3,
        TaskKind::FlawLook(_) => 4,
        TaskKind::Weigh => 5,
        TaskKind::CameBack => 6,
        TaskKind::RenameMark => 7,
        TaskKind::OfferStage(_) => 8,
    }
}

/// What matters most first, then the latest, then by kind, mark and id.
pub(crate) fn by_need(a: (&Task, &str), b: (&Task, &str)) -> Ordering {
    b.0.urgency
        .cmp(&a.0.urgency)
        .then_with(|| b.0.days_late.cmp(&a.0.days_late))
        .then_with(|| rank(&a.0.kind).cmp(&rank(&b.0.kind)))
        .then_with(|| by_mark(a.1, b.1))
        .then_with(|| a.0.piece.cmp(&b.0.piece))
}

/// The nearest day first, then by kind, mark and id.
pub(crate) fn by_day(a: (&Task, &str), b: (&Task, &str)) -> Ordering {
    a.0.due
        .cmp(&b.0.due)
        .then_with(|| rank(&a.0.kind).cmp(&rank(&b.0.kind)))
        .then_with(|| by_mark(a.1, b.1))
        .then_with(|| a.0.piece.cmp(&b.0.piece))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_read_by_the_value_of_their_figures() {
        let mut marks = ["k10", "K9", "B04", "K07", "K7a", "", "K7", "Ä1"];
        marks.sort_by(|a, b| by_mark(a, b));
        assert_eq!(marks, ["", "B04", "K07", "K7", "K7a", "K9", "k10", "Ä1"]);
    }
}
