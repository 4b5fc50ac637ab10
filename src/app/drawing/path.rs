//! Path: puts points together as SVG path commands.

use std::fmt::Write as _;

/// A growing path; coordinates in the units of the view box.
#[derive(Debug, Default)]
pub(super) struct Path {
    commands: String,
}

impl Path {
    fn command(&mut self, letter: char, x: f64, y: f64) {
        let gap = if self.commands.is_empty() { "" } else { " " };
        // Writing to a String cannot fail.
        let _ = write!(self.commands, "{gap}{letter} {x:.2} {y:.2}");
    }

    /// Starts a new line at a point.
    pub fn move_to(&mut self, (x, y): (f64, f64)) -> &mut Self {
        self.command('M', x, y);
        self
    }

    /// Draws to a point.
    pub fn line_to(&mut self, (x, y): (f64, f64)) -> &mut Self {
        self.command('L', x, y);
        self
    }

    /// Draws through points.
    pub fn through(&mut self, points: impl IntoIterator<Item = (f64, f64)>) -> &mut Self {
        for point in points {
            self.line_to(point);
        }
        self
    }

    /// Closes the line.
    pub fn close(&mut self) -> &mut Self {
        self.commands.push_str(" Z");
        self
    }

    /// The commands.
    pub fn finish(&mut self) -> String {
        std::mem::take(&mut self.commands)
    }
}

/// A line through points in dashes: `pattern` holds the lengths of dash, gap, dash, gap... in the units of the points.
pub(super) fn dashed(points: &[(f64, f64)], pattern: &[f64]) -> String {
    let mut path = Path::default();
    let usable = !pattern.is_empty() && pattern.iter().all(|l| l.is_finite() && *l > 1e-3);
    let Some(first) = points.first().filter(|_| usable) else {
        return String::new();
    };
    path.move_to(*first);
    let (mut place, mut left) = (0, pattern[0]);
    for pair in points.windows(2) {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        let length = (x1 - x0).hypot(y1 - y0);
        let mut gone = 0.0;
        while length - gone > left {
            gone += left;
            let at = (
                x0 + (x1 - x0) * gone / length,
                y0 + (y1 - y0) * gone / length,
            );
            if place % 2 == 0 {
                path.line_to(at);
            } else {
                path.move_to(at);
            }
            place = (place + 1) % pattern.len();
            left = pattern[place];
        }
        left -= length - gone;
        if place % 2 == 0 {
            path.line_to((x1, y1));
        }
    }
    path.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dashes_go_on_round_a_corner_and_absurd_lengths_draw_nothing() {
        let corner = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)];
        let drawn = dashed(&corner, &[4.0, 4.0]);
        assert_eq!(
            drawn,
            "M 0.00 0.00 L 4.00 0.00 M 8.00 0.00 L 10.00 0.00 L 10.00 2.00 M 10.00 6.00 L 10.00 10.00"
        );
        assert_eq!(dashed(&corner, &[0.0, 4.0]), "");
        assert_eq!(dashed(&corner, &[f64::NAN]), "");
        assert_eq!(dashed(&[], &[4.0, 4.0]), "");
    }
}
