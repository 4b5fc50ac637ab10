//! The planned ring seen from above at one true scale: rough as full lines, dried in dashes.

use std::f64::consts::TAU;

use super::oval::OvalDrawing;
use super::path::{Path, dashed};

const STEPS: usize = 96;

fn circle(middle: f64, radius: f64, backwards: bool) -> Vec<(f64, f64)> {
    let way = if backwards { -1.0 } else { 1.0 };
    (0..=STEPS)
        .map(|i| {
            let turn = way * TAU * i as f64 / STEPS as f64;
            (middle + radius * turn.cos(), middle + radius * turn.sin())
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

/// Outside and bore as points about the axis, mm.
pub type Outlines<'a> = (&'a [(f64, f64)], &'a [(f64, f64)]);

/// The rough ring of radius and bore (mm), and the dried outlines (outside and bore, mm, about the axis) where they are known.
/// The dried ring is laid on the middle of the rough one. Absurd figures give an empty drawing.
#[must_use]
pub fn plan_ring(radius_mm: f64, bore_mm: f64, dried: Option<Outlines<'_>>) -> OvalDrawing {
    let fair = |mm: f64| mm.is_finite() && mm > 0.0 && mm < 10_000.0;
    if !fair(radius_mm) || !fair(bore_mm) || bore_mm >= radius_mm {
        return OvalDrawing::default();
    }
    let size = 2.06 * radius_mm;
    let middle = 0.5 * size;
    let dash = size / 300.0;
    let broken = |points: &[(f64, f64)], shift: (f64, f64)| {
        let mut round: Vec<(f64, f64)> = points
            .iter()
            .map(|p| (middle + p.0 - shift.0, middle + p.1 - shift.1))
            .collect();
        round.extend(round.first().copied());
        dashed(&round, &[7.0 * dash, 5.0 * dash])
    };
    let turned = dried.map_or_else(String::new, |(outer, inner)| {
        let n = outer.len().max(1) as f64;
        let mean = outer
            .iter()
            .fold((0.0, 0.0), |m, p| (m.0 + p.0 / n, m.1 + p.1 / n));
        [broken(outer, mean), broken(inner, mean)].join(" ")
    });
    OvalDrawing {
        size,
        reckoned: String::new(),
        turned,
        dried: [
            closed(&circle(middle, radius_mm, false)),
            closed(&circle(middle, bore_mm, true)),
        ]
        .join(" "),
        finish: String::new(),
        outline: [
            closed(&circle(middle, radius_mm, false)),
            closed(&circle(middle, bore_mm, false)),
        ]
        .join(" "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rough_is_drawn_full_and_dried_in_dashes_at_the_same_scale() {
        let dried = circle(3.0, 72.0, false);
        let inner = circle(3.0, 62.0, false);
        let drawn = plan_ring(75.0, 65.0, Some((&dried, &inner)));
        // 2.06 times 75 across; the rough circle starts at 75 right of the middle.
        assert!((drawn.size - 154.5).abs() < 1e-9);
        assert!(
            drawn.outline.starts_with("M 152.25 77.25"),
            "{}",
            drawn.outline
        );
        // The dried ring is laid on the middle again: it starts about 72 right of it.
        let x: f64 = drawn
            .turned
            .split(' ')
            .nth(1)
            .and_then(|x| x.parse().ok())
            .unwrap_or(0.0);
        assert!((x - 149.25).abs() < 1.0, "{x}");
        assert_eq!(plan_ring(75.0, 65.0, None).turned, "");
        for (r, b) in [(f64::NAN, 1.0), (10.0, 10.0), (-1.0, 2.0), (5.0, 0.0)] {
            assert_eq!(plan_ring(r, b, None), OvalDrawing::default());
        }
    }
}
