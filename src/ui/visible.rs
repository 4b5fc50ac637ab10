//! Visible: text as the bundled face can draw it. A glyph that it lacks would draw nothing, and a note could vanish
//! without a trace; here it becomes a box. Only for showing: fields keep what was typed.

use std::sync::OnceLock;

use slint::SharedString;

/// Ranges of code points that the face covers, one `0020-007E` a line.
const COVERAGE: &str = include_str!("../../ui/fonts/coverage.txt");

/// What stands for a glyph that the face lacks.
const BOX: char = '\u{25a1}';

fn ranges() -> &'static [(u32, u32)] {
    static RANGES: OnceLock<Vec<(u32, u32)>> = OnceLock::new();
    RANGES.get_or_init(|| {
        let hex = |text: &str| u32::from_str_radix(text.trim(), 16).ok();
        COVERAGE
            .lines()
            .filter_map(|line| {
                let (from, to) = line.split_once('-').unwrap_or((line, line));
                Some((hex(from)?, hex(to)?))
            })
            .collect()
    })
}

fn covered(c: char) -> bool {
    let code = u32::from(c);
    c == '\n'
        || c == '\t'
        || ranges()
            .iter()
            .any(|(from, to)| (*from..=*to).contains(&code))
}

/// Joins and modifiers that only change the sign before them: that sign's box stands for all.
fn only_modifies(c: char) -> bool {
    matches!(c, '\u{200b}'..='\u{200f}' | '\u{fe00}'..='\u{fe0f}' | '\u{1f3fb}'..='\u{1f3ff}' | '\u{300}'..='\u{36f}')
}

/// Text for the screen.
pub trait Shown {
    /// The same text with a box for each sign that the face lacks.
    fn shown(self) -> SharedString;
}

impl Shown for &str {
    fn shown(self) -> SharedString {
        if self.is_ascii() || self.chars().all(covered) {
            return self.into();
        }
        let text: String = self
            .chars()
            .filter(|c| covered(*c) || !only_modifies(*c))
            .map(|c| if covered(c) { c } else { BOX })
            .collect();
        text.into()
    }
}

impl Shown for String {
    fn shown(self) -> SharedString {
        self.as_str().shown()
    }
}

impl Shown for &String {
    fn shown(self) -> SharedString {
        self.as_str().shown()
    }
}
