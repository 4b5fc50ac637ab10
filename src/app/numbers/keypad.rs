//! The keypad: a state machine for keys on the screen, a keyboard, and callipers or scales that type like one.
//!
//! It gathers text, shows it, and reads it when Enter or Tab ends it. It knows no time: a burst from callipers that
//! begins after a key on the screen was touched starts the text anew, so that a stray touch never becomes a digit of
//! the reading. Where inch fractions are chosen the screen has keys for whole, over and under the stroke.

use super::fraction::LARGEST_DENOMINATOR;
use super::typed::MOST_CHARACTERS;
use super::units::{Dimension, LengthUnit};
use super::{InputError, Numbers, Parsed, Quantity};

/// Part of an inch fraction that the digit keys fill.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FractionPart {
    /// Whole inches.
    #[default]
    Whole,
    /// Over the stroke.
    Over,
    /// Under the stroke; left empty the fraction cannot be read.
    Under,
}

/// A key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// A digit key on the screen, 0 to 9; others do nothing.
    Digit(u8),
    /// The point key on the screen.
    Point,
    /// Takes back the last character, on the screen or a keyboard.
    Backspace,
    /// Takes back everything.
    Clear,
    /// Chooses the part of a fraction that the digit keys fill.
    Part(FractionPart),
    /// Sets what is under the stroke: 2, 4, 8, 16, 32 or 64; others do nothing.
    Under(u8),
    /// A character from a keyboard, from callipers or a scale. Line ends and tabs count as [`Key::Enter`].
    Char(char),
    /// Enter or Tab, or the key on the screen that moves on.
    Enter,
}

/// What came of a key.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// The key changed nothing; Enter with nothing typed is one.
    Nothing,
    /// The text changed.
    Editing,
    /// The text was ended and read.
    Commit(Result<Parsed, InputError>),
}

/// Where the text has come from so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Source {
    Screen,
    Keyboard,
}

/// A keypad for one quantity.
#[derive(Debug, Clone)]
pub struct Keypad {
    quantity: Quantity,
    fractions: bool,
    part: FractionPart,
    whole: String,
    over: String,
    under: String,
    text: String,
    overflow: usize,
    source: Source,
    ended: bool,
}

/// Digits that fit into whole inches.
const WHOLE_DIGITS: usize = 3;
/// Digits that fit over or under the stroke.
const STROKE_DIGITS: usize = 2;

impl Keypad {
    /// An empty keypad for `quantity`; lengths get fraction keys where inch fractions are chosen.
    #[must_use]
    pub fn new(quantity: Quantity, numbers: &Numbers) -> Self {
        let fractions = quantity.dimension() == Dimension::Length
            && numbers.units().length == LengthUnit::InchFraction;
        Self {
            quantity,
            fractions,
            part: FractionPart::Whole,
            whole: String::new(),
            over: String::new(),
            under: String::new(),
            text: String::new(),
            overflow: 0,
            source: Source::Screen,
            ended: false,
        }
    }

    /// What is being entered.
    #[must_use]
    pub fn quantity(&self) -> Quantity {
        self.quantity
    }

    /// True when the screen shows fraction keys instead of the point.
    #[must_use]
    pub fn has_fraction_keys(&self) -> bool {
        self.fractions
    }

    /// The part of a fraction that the digit keys fill.
    #[must_use]
    pub fn part(&self) -> FractionPart {
        self.part
    }

    /// The text so far, as it is shown: `10.8`, `1 3/8`, `1 3/` while the part under the stroke is awaited.
    #[must_use]
    pub fn text(&self) -> String {
        if !self.text.is_empty() {
            return self.text.clone();
        }
        let mut text = self.whole.clone();
        if !self.over.is_empty() || !self.under.is_empty() {
            if !text.is_empty() {
                text.push(' ');
            }
            text.push_str(&self.over);
            text.push('/');
            text.push_str(&self.under);
        }
        text
    }

    /// True when nothing has been typed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.text.is_empty()
            && self.whole.is_empty()
            && self.over.is_empty()
            && self.under.is_empty()
    }

    /// Empties the keypad.
    pub fn clear(&mut self) {
        self.whole.clear();
        self.over.clear();
        self.under.clear();
        self.text.clear();
        self.part = FractionPart::Whole;
        self.overflow = 0;
        self.source = Source::Screen;
        self.ended = false;
    }

    /// Takes a key. `numbers` reads the text when it ends.
    ///
    /// A commit that gives a value empties the keypad. One that asks or is refused leaves the text to be seen: the
    /// next digit starts anew, backspace corrects it.
    pub fn press(&mut self, key: Key, numbers: &Numbers) -> Outcome {
        match key {
            Key::Enter | Key::Char('\n' | '\r' | '\t') => self.enter(numbers),
            Key::Clear => self.edit(Self::clear),
            Key::Backspace | Key::Char('\u{8}') => self.edit(Self::backspace),
            Key::Char(c) if c.is_control() => Outcome::Nothing,
            Key::Char(c) => {
                if self.ended || self.source == Source::Screen {
                    self.clear();
                }
                self.source = Source::Keyboard;
                self.append(c);
                Outcome::Editing
            }
            Key::Digit(digit) => match char::from_digit(digit.into(), 10) {
                Some(c) => self.on_screen(|keypad| keypad.digit(c)),
                None => Outcome::Nothing,
            },
            Key::Point if self.fractions && self.text.is_empty() => Outcome::Nothing,
            Key::Point => self.on_screen(|keypad| keypad.append('.')),
            Key::Part(part) if self.fractions => self.edit(|keypad| keypad.part = part),
            Key::Under(under) if self.fractions && u32::from(under) <= LARGEST_DENOMINATOR => {
                if !under.is_power_of_two() || under < 2 {
                    return Outcome::Nothing;
                }
                // What was refused for want of this is completed by it and does not start anew.
                if self.text.is_empty() && !self.over.is_empty() && self.under.is_empty() {
                    self.ended = false;
                }
                self.on_screen(|keypad| {
                    keypad.text.clear();
                    keypad.under = under.to_string();
                    keypad.part = FractionPart::Over;
                })
            }
            Key::Part(_) | Key::Under(_) => Outcome::Nothing,
        }
    }

    fn enter(&mut self, numbers: &Numbers) -> Outcome {
        if self.is_empty() {
            return Outcome::Nothing;
        }
        let read = if self.overflow > 0 {
            Err(InputError::TooLong {
                count: self.text.chars().count() + self.overflow,
            })
        } else {
            numbers.parse(self.quantity, &self.text())
        };
        if matches!(read, Ok(Parsed::Value(_))) {
            self.clear();
        } else {
            self.ended = true;
        }
        Outcome::Commit(read)
    }

    fn edit(&mut self, change: impl FnOnce(&mut Self)) -> Outcome {
        let before = (self.text(), self.part, self.overflow);
        change(self);
        self.ended = false;
        if before == (self.text(), self.part, self.overflow) {
            Outcome::Nothing
        } else {
            Outcome::Editing
        }
    }

    /// A key on the screen that adds something: after an ended text it starts anew.
    fn on_screen(&mut self, change: impl FnOnce(&mut Self)) -> Outcome {
        if self.ended {
            self.clear();
        }
        if self.is_empty() {
            self.source = Source::Screen;
        }
        self.edit(change)
    }

    fn digit(&mut self, c: char) {
        if !self.fractions || !self.text.is_empty() {
            return self.append(c);
        }
        let (field, most) = match self.part {
            FractionPart::Whole => (&mut self.whole, WHOLE_DIGITS),
            FractionPart::Over => (&mut self.over, STROKE_DIGITS),
            FractionPart::Under => (&mut self.under, STROKE_DIGITS),
        };
        if field.len() < most {
            field.push(c);
        }
    }

    fn append(&mut self, c: char) {
        if self.text.chars().count() < MOST_CHARACTERS {
            self.text.push(c);
        } else {
            self.overflow += 1;
        }
    }

    fn backspace(&mut self) {
        if self.overflow > 0 {
            self.overflow -= 1;
        } else if !self.text.is_empty() {
            self.text.pop();
        } else {
            let parts = match self.part {
                FractionPart::Whole => {
                    [FractionPart::Whole, FractionPart::Under, FractionPart::Over]
                }
                FractionPart::Over => {
                    [FractionPart::Over, FractionPart::Whole, FractionPart::Under]
                }
                FractionPart::Under => {
                    [FractionPart::Under, FractionPart::Over, FractionPart::Whole]
                }
            };
            for part in parts {
                let field = match part {
                    FractionPart::Whole => &mut self.whole,
                    FractionPart::Over => &mut self.over,
                    FractionPart::Under => &mut self.under,
                };
                if field.pop().is_some() {
                    self.part = part;
                    break;
                }
            }
        }
    }
}
