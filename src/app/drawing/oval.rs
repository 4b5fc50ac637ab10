//! The oval: a station seen from the mouth at one true scale: as it was turned, as it was to be expected, as it dried, and the
//! round wall that fits in. 12 o'clock, the pencil line, is up.

use std::f64::consts::TAU;

use evenwall_wood::section::Xy;

use super::path::{Path, dashed};

/// The oval as path strings, in millimetres of a square view box with the middle of the drawing in its middle.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OvalDrawing {
    /// Side of the view box, mm.
    pub size: f64,
    /// The circle as it was turned, dashed; empty where the diameter is not known.
    pub turned: String,
    /// The outline that was to be expected, dotted; empty where there is none.
    pub reckoned: String,
    /// The wall as it dried: the ring between outside and bore; empty where the wall is not known.
    pub dried: String,
    /// The round ring that fits into it; empty where none does or the wall is not known.
    pub finish: String,
    /// The outlines of what is there now.
    pub outline: String,
}

/// What is drawn; every part may be unknown.
#[derive(Debug, Clone, Copy, Default)]
pub struct OvalShapes<'a> {
    /// Diameter as turned, mm.
    pub turned_mm: Option<f64>,
    /// The outline to be expected; drawn about its own middle.
    pub reckoned: Option<&'a [Xy]>,
    /// The outside now.
    pub outer: Option<&'a [Xy]>,
    /// The bore now.
    pub inner: Option<&'a [Xy]>,
    /// The axis it is trued about, in the frame of the outlines.
    pub axis: Option<Xy>,
    /// What the finished ring is drawn thinner by, mm: what the sum takes off for doubt.
    pub doubt_mm: f64,
}

/// The most points of a drawn outline: at 340 pixels more cannot be told from fewer.
const POINTS: usize = 180;

fn fair(mm: f64) -> bool {
    mm.is_finite() && mm > 0.0 && mm < 10_000.0
}

/// An outline that can be drawn, thinned.
fn usable(outline: Option<&[Xy]>) -> Option<Vec<Xy>> {
    let outline = outline?;
    let sound = |p: &Xy| p.x.is_finite() && p.y.is_finite() && p.x.hypot(p.y) < 10_000.0;
    if outline.len() < 3 || !outline.iter().all(sound) {
        return None;
    }
    let step = (outline.len() / POINTS).max(1);
    Some(outline.iter().step_by(step).copied().collect())
}

fn about_its_middle(outline: &[Xy]) -> Vec<Xy> {
    let box_of = |of: fn(&Xy) -> f64| {
        let (low, high) = outline
            .iter()
            .map(of)
            .fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(v), h.max(v)));
        0.5 * (low + high)
    };
    let (x, y) = (box_of(|p| p.x), box_of(|p| p.y));
    outline.iter().map(|p| Xy::new(p.x - x, p.y - y)).collect()
}

fn circle(radius: f64, about: Xy) -> Vec<Xy> {
    (0..POINTS)
        .map(|i| {
            let p = Xy::polar(radius, TAU * i as f64 / POINTS as f64);
            Xy::new(about.x + p.x, about.y + p.y)
        })
        .collect()
}

/// Puts points of the section on the picture: the first axis, 12 o'clock, goes up, and angles go on with the clock.
struct Board {
    middle: f64,
}

impl Board {
    fn place(&self, p: &Xy) -> (f64, f64) {
        (self.middle + p.y, self.middle - p.x)
    }

    fn closed<'a>(&self, points: impl Iterator<Item = &'a Xy>) -> String {
        let mut placed = points.map(|p| self.place(p));
        let Some(first) = placed.next() else {
            return String::new();
        };
        let mut path = Path::default();
        path.move_to(first).through(placed).close().finish()
    }

    fn ring(&self, outer: &[Xy], inner: &[Xy]) -> String {
        // The inner edge runs the other way round, so that the middle stays open.
        [self.closed(outer.iter()), self.closed(inner.iter().rev())].join(" ")
    }

    fn pieces(&self, points: &[Xy], pattern: &[f64]) -> String {
        let round = points.iter().chain(points.first());
        let placed: Vec<_> = round.map(|p| self.place(p)).collect();
        dashed(&placed, pattern)
    }
}

/// The drawing of a station. Absurd figures are left out; with nothing left it is empty.
#[must_use]
pub fn oval(shapes: &OvalShapes<'_>) -> OvalDrawing {
    let turned = shapes
        .turned_mm
        .filter(|d| fair(*d))
        .map(|d| circle(0.5 * d, Xy::new(0.0, 0.0)));
    let reckoned = usable(shapes.reckoned).map(|o| about_its_middle(&o));
    let outer = usable(shapes.outer);
    let inner = usable(shapes.inner).filter(|_| outer.is_some());
    let reach = [&turned, &reckoned, &outer]
        .into_iter()
        .flatten()
        .flatten()
        .map(|p| p.x.abs().max(p.y.abs()))
        .fold(0.0, f64::max);
    if reach <= 0.0 {
        return OvalDrawing::default();
    }
    let size = 2.06 * reach;
    let board = Board { middle: 0.5 * size };
    let dash = size / 300.0;
    let mut drawing = OvalDrawing {
        size,
        ..OvalDrawing::default()
    };
    if let Some(turned) = &turned {
        drawing.turned = board.pieces(turned, &[7.0 * dash, 5.0 * dash]);
    }
    if let Some(reckoned) = &reckoned {
        drawing.reckoned = board.pieces(reckoned, &[0.3 * dash, 5.2 * dash]);
    }
    let Some(outer) = outer else {
        return drawing;
    };
    drawing.outline = board.closed(outer.iter());
    let Some(inner) = inner else {
        return drawing;
    };
    drawing.outline = [drawing.outline, board.closed(inner.iter())].join(" ");
    drawing.dried = board.ring(&outer, &inner);
    if let Some(axis) = shapes.axis {
        let off = |p: &Xy| p.distance(&axis);
        let most = outer.iter().map(off).fold(f64::INFINITY, f64::min) - shapes.doubt_mm;
        let least = inner.iter().map(off).fold(0.0, f64::max);
        if most > least {
            drawing.finish = board.ring(&circle(most, axis), &circle(least, axis));
        }
    }
    drawing
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use evenwall_wood::fitted::ellipse;

    fn centre() -> Option<Xy> {
        Some(Xy::new(0.0, 0.0))
    }

    #[test]
    fn the_finished_ring_lies_between_the_nearest_outside_and_the_farthest_bore() {
        // 10 - (195 - 187) / 2 = 6: common practice, no source. Outer radius 93.5, inner 97.5 - 10 = 87.5.
        let outer = ellipse(195.0, 187.0).unwrap();
        let inner = ellipse(175.0, 167.0).unwrap();
        let shapes = OvalShapes {
            turned_mm: Some(200.0),
            reckoned: Some(&outer),
            outer: Some(&outer),
            inner: Some(&inner),
            axis: centre(),
            doubt_mm: 0.0,
        };
        let drawn = oval(&shapes);
        let middle = 0.5 * drawn.size;
        // The first point of each outline is at the pencil line, which is up.
        let starts = |path: &str, up: f64| {
            let wanted = format!("M {middle:.2} {:.2}", middle - up);
            assert!(path.contains(&wanted), "{wanted} in {path}");
        };
        starts(&drawn.finish, 93.5);
        starts(&drawn.dried, 97.5);
        starts(&drawn.turned, 100.0);
        starts(&drawn.reckoned, 97.5);
        assert!(drawn.finish.contains(&format!("{:.2}", middle - 87.5)));
        let doubted = oval(&OvalShapes {
            doubt_mm: 0.5,
            ..shapes
        });
        starts(&doubted.finish, 93.0);
    }

    #[test]
    fn no_ring_is_drawn_where_none_is_left_and_nothing_where_figures_are_absurd() {
        let outer = ellipse(195.0, 170.0).unwrap();
        let inner = ellipse(175.0, 150.0).unwrap();
        let none_left = oval(&OvalShapes {
            outer: Some(&outer),
            inner: Some(&inner),
            axis: centre(),
            ..OvalShapes::default()
        });
        assert_eq!(none_left.finish, "");
        assert!(!none_left.dried.is_empty());
        let unread = oval(&OvalShapes {
            outer: Some(&outer),
            ..OvalShapes::default()
        });
        assert_eq!((unread.dried.as_str(), unread.finish.as_str()), ("", ""));
        assert!(!unread.outline.is_empty() && unread.turned.is_empty());
        for bad in [f64::NAN, 0.0, -3.0, 1e9] {
            let drawn = oval(&OvalShapes {
                turned_mm: Some(bad),
                reckoned: Some(&[Xy::new(bad * 1e9, f64::NAN); 4]),
                ..OvalShapes::default()
            });
            assert_eq!(drawn, OvalDrawing::default());
        }
    }

    #[test]
    fn twelve_is_up_and_the_clock_goes_on_to_the_right() {
        let board = Board { middle: 100.0 };
        assert_eq!(board.place(&Xy::new(50.0, 0.0)), (100.0, 50.0));
        let three = board.place(&Xy::polar(50.0, TAU / 4.0));
        assert!((three.0 - 150.0).abs() < 1e-9 && (three.1 - 100.0).abs() < 1e-9);
    }
}
