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
