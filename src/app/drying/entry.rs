//! Entry: the keypad of the weighing page, and a scale that types like a keyboard.

use evenwall_piece::fact::Measure;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::weights::last_weighing;

use super::DryingAction;
use super::asking::Asking;
use super::day::When;
use crate::app::{App, AppError};
use crate::numbers::keypad::{Key, Keypad, Outcome};
use crate::numbers::{Entry, MassUnit, Numbers, Parsed, Quantity};

/// What a key on a hardware keyboard does on the weighing page, or `None` where the key is not its own. A scale begins
/// with a figure, a point or a sign; what follows may be a unit or a blank. Enter, Tab and backspace are the page's only
/// while something is typed, so that the keyboard can walk over the keys otherwise.
#[must_use]
pub fn typed(text: &str, typing: bool) -> Option<DryingAction> {
    let mut characters = text.chars();
    let c = characters.next()?;
    if characters.next().is_some() {
        return None;
    }
    let ours = match c {
        '\n' | '\r' | '\t' | '\u{8}' => typing,
        '0'..='9' | '.' | ',' | '+' | '-' => true,
        // Keys without a character of their own come from the private use area.
        '\u{e000}'..='\u{f8ff}' => false,
        c => typing && !c.is_control(),
    };
    ours.then_some(DryingAction::Typed(c))
}

/// A keypad that takes pounds before ounces as well.
#[derive(Debug, Default)]
pub(crate) struct Pad {
    keypad: Option<Keypad>,
    /// Whole pounds, typed before the ounces on the screen's keys.
    pounds: Option<String>,
    by_screen: bool,
}

impl Pad {
    /// What was typed: "828", "1 lb 13.2".
    pub fn text(&self) -> String {
        let ounces = self.keypad.as_ref().map_or_else(String::new, Keypad::text);
        match &self.pounds {
            Some(pounds) => format!("{pounds} lb {ounces}").trim_end().to_owned(),
            None => ounces,
        }
    }

    pub fn is_empty(&self) -> bool {
        self.pounds.is_none() && self.keypad.as_ref().is_none_or(Keypad::is_empty)
    }

    pub fn clear(&mut self) {
        *self = Self::default();
    }

    /// True where the figures so far can be pounds.
    pub fn can_be_pounds(&self) -> bool {
        let text = self.keypad.as_ref().map_or_else(String::new, Keypad::text);
        self.by_screen
            && self.pounds.is_none()
            && !text.is_empty()
            && text.len() <= 2
            && text.bytes().all(|b| b.is_ascii_digit())
    }

    /// Takes the figures so far as pounds; ounces follow.
    pub fn take_pounds(&mut self) {
        if self.can_be_pounds() {
            self.pounds = self.keypad.take().map(|k| k.text());
        }
    }

    pub fn press(&mut self, key: Key, quantity: Quantity, numbers: &Numbers) -> Outcome {
        if self.keypad.is_none() {
            self.keypad = Some(Keypad::new(quantity, numbers));
        }
        let ends = matches!(key, Key::Enter | Key::Char('\n' | '\r' | '\t'));
        match key {
            Key::Char(c) if !c.is_control() => {
                // A scale begins anew after a key on the screen was touched.
                if self.by_screen {
                    self.pounds = None;
                }
                self.by_screen = false;
            }
            Key::Digit(_) | Key::Point => self.by_screen = true,
            Key::Backspace | Key::Char('\u{8}')
                if self.keypad.as_ref().is_some_and(Keypad::is_empty) =>
            {
                if let Some(pounds) = self.pounds.take() {
                    for digit in pounds.chars().filter_map(|c| c.to_digit(10)) {
                        let key = Key::Digit(u8::try_from(digit).unwrap_or(0));
                        self.press(key, quantity, numbers);
                    }
                    return Outcome::Editing;
                }
            }
            _ => {}
        }
        if ends && self.pounds.is_some() {
            let read = numbers.parse(quantity, &self.text());
            if matches!(read, Ok(Parsed::Value(_))) {
                self.clear();
            }
            return Outcome::Commit(read);
        }
        match &mut self.keypad {
            Some(keypad) => keypad.press(key, numbers),
            None => Outcome::Nothing,
        }
    }
}

/// What the weighing page remembers between two touches.
#[derive(Debug, Default)]
pub(super) struct Weigh {
    pub weight: Pad,
    pub tare: Pad,
    pub entering_tare: bool,
    /// A weight that was understood and is not recorded yet.
    pub kept: Option<Measure>,
    /// What stands on the scale with the piece, g.
    pub tare_g: f64,
    pub tare_shown: bool,
    pub when: When,
    pub day: String,
    pub day_wrong: String,
    pub asking: Option<Asking>,
}

impl Weigh {
    /// The pad that keys go to, and what it takes.
    pub fn pad(&mut self) -> (&mut Pad, Quantity) {
        if self.entering_tare {
            (&mut self.tare, Quantity::Tare)
        } else {
            (&mut self.weight, Quantity::Weight)
        }
    }
}

impl App {
    /// A key of the keypad on the screen: digits, the point, `lb`, `back`, `next`.
    pub(super) fn weigh_key(
        &mut self,
        id: &PieceId,
        key: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let key = match key {
            "back" => Key::Backspace,
            "next" => Key::Enter,
            "." | "," => Key::Point,
            "lb" => {
                if self.numbers().units().mass == MassUnit::OunceAndPound {
                    self.states.drying.weigh.pad().0.take_pounds();
                }
                return Ok(());
            }
            _ => match key.parse() {
                Ok(digit) => Key::Digit(digit),
                Err(_) => return Ok(()),
            },
        };
        self.weigh_press(id, key, now)
    }

    pub(super) fn weigh_typed(
        &mut self,
        id: &PieceId,
        c: char,
        now: Moment,
    ) -> Result<(), AppError> {
        self.weigh_press(id, Key::Char(c), now)
    }

    fn weigh_press(&mut self, id: &PieceId, key: Key, now: Moment) -> Result<(), AppError> {
        let numbers = self.numbers();
        let weigh = &mut self.states.drying.weigh;
        let tare = weigh.entering_tare;
        // Backspace takes a weight that was kept back into the hand.
        let kept = weigh.kept.clone();
        let (pad, quantity) = weigh.pad();
        match pad.press(key, quantity, &numbers) {
            Outcome::Nothing => match (key, kept) {
                (Key::Enter, Some(kept)) if !tare => self.offer_weight(id, kept, now),
                (Key::Enter, _) if tare => {
                    self.states.drying.weigh.entering_tare = false;
                    Ok(())
                }
                (Key::Backspace, Some(_)) if !tare => {
                    self.states.drying.weigh.kept = None;
                    Ok(())
                }
                _ => Ok(()),
            },
            Outcome::Editing => {
                weigh.asking = None;
                if !tare {
                    weigh.kept = None;
                }
                Ok(())
            }
            Outcome::Commit(Ok(Parsed::Value(entry))) => self.weigh_read(id, entry, now),
            Outcome::Commit(Ok(parsed)) => {
                weigh.asking = Some(Asking::Which(parsed));
                Ok(())
            }
            Outcome::Commit(Err(error)) => {
                weigh.asking = Some(Asking::Sentence(error.message(&numbers, quantity)));
                Ok(())
            }
        }
    }

    /// A number was understood.
    pub(super) fn weigh_read(
        &mut self,
        id: &PieceId,
        entry: Entry,
        now: Moment,
    ) -> Result<(), AppError> {
        let weigh = &mut self.states.drying.weigh;
        weigh.asking = None;
        if weigh.entering_tare {
            weigh.tare_g = entry.value;
            weigh.entering_tare = false;
            weigh.tare.clear();
            return Ok(());
        }
        let measure = Measure {
            value: entry.value,
            typed: entry.typed,
        };
        weigh.weight.clear();
        weigh.kept = Some(measure.clone());
        self.offer_weight(id, measure, now)
    }

    /// Chooses what stands on the scale with the piece.
    pub(super) fn choose_tare(&mut self, id: &PieceId, choice: &str, now: Moment) {
        let last = self.last_tare(id, now);
        let weigh = &mut self.states.drying.weigh;
        weigh.asking = None;
        match (choice, last) {
            ("bare", _) => weigh.tare_g = 0.0,
            ("last", Some(last_g)) => weigh.tare_g = last_g,
            _ => {}
        }
        weigh.entering_tare = choice == "other";
        weigh.tare.clear();
    }

    /// The tare of the last weighing, where there was one.
    pub(super) fn last_tare(&self, id: &PieceId, now: Moment) -> Option<f64> {
        let last = last_weighing(self.piece(id)?, now)?;
        (last.tare_g > 0.0).then_some(last.tare_g)
    }
}
