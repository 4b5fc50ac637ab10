//! A number as the screen prints it: figures and unit apart.

use super::ranges::Quantity;

/// A number as it is shown: the screen prints the unit smaller than the figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shown {
    /// The figures: "9.5", "1 3/8", "500 to 750", "1 lb 3".
    pub number: String,
    /// The unit: "mm"; empty for a plain count.
    pub unit: String,
}

/// The blank that keeps a number and its unit on one line.
const NO_BREAK: char = '\u{a0}';

impl Shown {
    pub(super) fn new(number: String, unit: String) -> Self {
        Self { number, unit }
    }

    /// Figures and unit as running text, held together by no-break spaces (U+00A0): "9.5 mm".
    #[must_use]
    pub fn text(&self) -> String {
        let mut text = self.number.clone();
        if !self.unit.is_empty() {
            text.push(NO_BREAK);
            text.push_str(&self.unit);
        }
        text.replace(' ', &NO_BREAK.to_string())
    }

    /// The same with a plus sign unless it is nought, below nought, or not known: for differences.
    #[must_use]
    pub fn with_plus(mut self) -> Self {
        if self.number.starts_with(|c: char| c.is_ascii_digit())
            && self.number.contains(|c| matches!(c, '1'..='9'))
        {
            self.number.insert(0, '+');
        }
        self
    }

    /// The same without decimals that are nought: "10" for "10.0", for keys and sentences.
    #[must_use]
    pub fn short(mut self) -> Self {
        if let Some((whole, decimals)) = self.number.split_once(['.', ','])
            && decimals.bytes().all(|b| b == b'0')
        {
            self.number = whole.to_owned();
        }
        self
    }

    /// Walls keep their decimals so that columns of them line up; other lengths go without decimals that are nought.
    pub(super) fn short_unless(self, quantity: Quantity) -> Self {
        match quantity {
            Quantity::WallReading | Quantity::FloorReading => self,
            _ => self.short(),
        }
    }
}
