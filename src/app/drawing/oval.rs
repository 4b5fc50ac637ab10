//! The oval: the rim seen from above at one true scale: as it was turned, as it dried, and the round wall that fits in.

use std::f64::consts::TAU;

use super::path::{Path, dashed};

/// The oval as path strings, in millimetres of a square view box with the centre in the middle.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OvalDrawing {
    /// Side of the view box, mm.
    pub size: f64,
    /// The circle as it was turned, dashed; empty where the diameter is not known.
    pub turned: String,
    /// The wall as it dried: the ring between outside and bore; empty where the wall is not known.
    pub dried: String,
    /// The round ring that fits into it; empty where none does or the wall is not known.
    pub finish: String,
    /// The outlines of what is there now.
    pub outline: String,
}

const STEPS: usize = 96;

fn ellipse(middle: f64, across: f64, down: f64, backwards: bool) -> Vec<(f64, f64)> {
    (0..=STEPS)
        .map(|i| {
            let turn = TAU * i as f64 / STEPS as f64;
            let turn = if backwards { -turn } else { turn };
            (middle + across * turn.cos(), middle + down * turn.sin())
        })
        .collect()
}

fn closed(points: &[(f64, f64)]) -> String {
    let mut path = Path::default();
    let Some(first) = points.first() else {
        return String::new();
    };
    path.move_to(*first)
        .through(points.iter().skip(1).copied())
        .close()
        .finish()
}

fn ring(middle: f64, outer: (f64, f64), inner: (f64, f64)) -> String {
    // The inner edge runs the other way round, so that the middle stays open.
    [
        closed(&ellipse(middle, outer.0, outer.1, false)),
        closed(&ellipse(middle, inner.0, inner.1, true)),
    ]
    .join(" ")
}

/// The drawing of an oval, all in mm: the diameter as turned where known, longest and shortest now, the wall where known.
/// Absurd figures give an empty drawing.
#[must_use]
pub fn oval(
    turned_mm: Option<f64>,
    longest_mm: f64,
    shortest_mm: f64,
    wall_mm: Option<f64>,
) -> OvalDrawing {
    let fair = |mm: f64| mm.is_finite() && mm > 0.0 && mm < 10_000.0;
    if !fair(longest_mm) || !fair(shortest_mm) {
        return OvalDrawing::default();
    }
    let turned_mm = turned_mm.filter(|d| fair(*d));
    let widest = turned_mm.unwrap_or(0.0).max(longest_mm).max(shortest_mm);
    let size = 1.03 * widest;
    let middle = 0.5 * size;
    let (a, b) = (0.5 * longest_mm, 0.5 * shortest_mm);
    let wall = wall_mm.filter(|t| fair(*t) && *t < a.min(b));
    let mut outline = closed(&ellipse(middle, a, b, false));
    let (mut dried, mut finish) = (String::new(), String::new());
    if let Some(t) = wall {
        dried = ring(middle, (a, b), (a - t, b - t));
        outline = [outline, closed(&ellipse(middle, a - t, b - t, false))].join(" ");
        let (outer, inner) = (a.min(b), a.max(b) - t);
        if outer > inner {
            finish = ring(middle, (outer, outer), (inner, inner));
        }
    }
    let turned = turned_mm.map_or_else(String::new, |d| {
        let dash = size / 300.0;
        dashed(
            &ellipse(middle, 0.5 * d, 0.5 * d, false),
            &[7.0 * dash, 5.0 * dash],
        )
    });
    OvalDrawing {
        size,
        turned,
        dried,
        finish,
        outline,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_finished_ring_is_the_wall_less_half_the_difference() {
        // 10 - (195 - 187) / 2 = 6: common practice, no source. Outer radius 93.5, inner 97.5 - 10 = 87.5.
        let drawn = oval(Some(200.0), 195.0, 187.0, Some(10.0));
        let middle = 0.5 * drawn.size;
        let starts = |path: &str, x: f64| {
            let wanted = format!("M {:.2} {middle:.2}", middle + x);
            assert!(path.contains(&wanted), "{wanted} in {path}");
        };
        starts(&drawn.finish, 93.5);
        starts(&drawn.finish, 87.5);
        starts(&drawn.dried, 97.5);
        starts(&drawn.turned, 100.0);
    }

    #[test]
    fn no_ring_is_drawn_where_none_is_left_and_nothing_where_figures_are_absurd() {
        assert_eq!(oval(None, 195.0, 170.0, Some(10.0)).finish, "");
        let unread = oval(None, 195.0, 187.0, None);
        assert_eq!((unread.dried.as_str(), unread.finish.as_str()), ("", ""));
        assert!(!unread.outline.is_empty() && unread.turned.is_empty());
        for bad in [f64::NAN, 0.0, -3.0, 1e9] {
            assert_eq!(oval(None, bad, 100.0, None), OvalDrawing::default());
        }
    }
}
