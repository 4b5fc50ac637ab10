//! Entry: the eight keys, the finger, the keypad, and callipers that type like a keyboard.

use evenwall_piece::fact::{Measure, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{Taken, WallFeel};

use super::WallAction;
use super::asking::Asking;
use super::measure::{Measuring, quick_keys};
use super::record::ReadingEntry;
use super::spot::Spot;
use crate::app::{App, AppError};
use crate::numbers::keypad::{FractionPart, Key, Keypad, Outcome};
use crate::numbers::{Entry, Parsed};

/// What a key on a hardware keyboard does on these pages, or `None` where the key is not theirs. Callipers begin with a
/// figure or a point; what follows may be a unit, a blank, a stroke. Enter, Tab and backspace are theirs only while
/// something is typed, so that the keyboard can walk over the keys otherwise.
#[must_use]
pub fn typed(text: &str, typing: bool) -> Option<WallAction> {
    let mut characters = text.chars();
    let c = characters.next()?;
    if characters.next().is_some() {
        return None;
    }
    let ours = match c {
        '\n' | '\r' | '\t' | '\u{8}' => typing,
        '0'..='9' | '.' | ',' => true,
        // Keys without a character of their own come from the private use area.
        '\u{e000}'..='\u{f8ff}' => false,
        c => typing && !c.is_control(),
    };
    ours.then_some(WallAction::Typed(c))
}

impl App {
    /// How a number at a station is taken: by the rod where its depth is typed, else as chosen.
    fn taken_at(&self, id: &PieceId, station: StationRef) -> Taken {
        match self.measuring(id, station) {
            Some(Measuring::Rod { .. }) => Taken::DepthRod,
            Some(Measuring::Wall | Measuring::Floor) | None => self.states.wall.taken,
        }
    }

    pub(super) fn measuring(&self, id: &PieceId, station: StationRef) -> Option<Measuring> {
        let piece = self.piece(id)?;
        Some(Measuring::at(piece, station, self.states.wall.by_depth))
    }

    pub(super) fn quick(
        &mut self,
        id: &PieceId,
        spot: Spot,
        text: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let (Some(piece), Some(measuring)) = (self.piece(id), self.measuring(id, spot.station))
        else {
            return Ok(());
        };
        let keys = quick_keys(piece, spot.station, measuring, &self.numbers());
        let Some(key) = keys.into_iter().find(|k| k.text == text) else {
            return Ok(());
        };
        self.states.wall.keypad = None;
        self.thickness(id, spot, key.thickness_mm, key.text, now)
    }

    fn thickness(
        &mut self,
        id: &PieceId,
        spot: Spot,
        mm: f64,
        typed: String,
        now: Moment,
    ) -> Result<(), AppError> {
        let taken = self.taken_at(id, spot.station);
        let entry = ReadingEntry {
            piece: id.clone(),
            spot,
            wall_mm: Some(Measure { value: mm, typed }),
            feel: None,
            taken,
            at: now,
        };
        self.offer(entry, now)
    }

    pub(super) fn feel(
        &mut self,
        id: &PieceId,
        spot: Spot,
        feel: WallFeel,
        now: Moment,
    ) -> Result<(), AppError> {
        let taken = match (spot.station, self.states.wall.taken) {
            // Light through a wet wall is judged by eye as well. No light comes through a floor.
            (StationRef::Wall(_), Taken::Light) => Taken::Light,
            _ => Taken::Fingers,
        };
        let entry = ReadingEntry {
            piece: id.clone(),
            spot,
            wall_mm: None,
            feel: Some(feel),
            taken,
            at: now,
        };
        self.offer(entry, now)
    }

    pub(super) fn cant_reach(
        &mut self,
        id: &PieceId,
        spot: Spot,
        now: Moment,
    ) -> Result<(), AppError> {
        let entry = ReadingEntry {
            piece: id.clone(),
            spot,
            wall_mm: None,
            feel: None,
            taken: Taken::CantReach,
            at: now,
        };
        self.offer(entry, now)
    }

    /// A key of the keypad on the screen: digits, the point, `/2` to `/64`, a blank after the whole, `back`, `next`.
    pub(super) fn keypad_key(
        &mut self,
        id: &PieceId,
        key: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        if key.starts_with('/') {
            self.whole_is_over(id, now)?;
        }
        let key = match key {
            "back" => Key::Backspace,
            "next" => Key::Enter,
            " " => Key::Part(FractionPart::Over),
            "." | "," => Key::Point,
            _ => match (key.strip_prefix('/'), key.parse()) {
                (Some(under), _) => Key::Under(under.parse().unwrap_or(0)),
                (None, Ok(digit)) => Key::Digit(digit),
                (None, Err(_)) => return Ok(()),
            },
        };
        self.press(id, key, now)
    }

    /// Figures followed at once by what is under the stroke are what is over it: 3, /8 is 3/8.
    fn whole_is_over(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        let figures = match &self.states.wall.keypad {
            Some(keypad) if keypad.part() == FractionPart::Whole => keypad.text(),
            _ => return Ok(()),
        };
        if figures.is_empty() || !figures.bytes().all(|b| b.is_ascii_digit()) {
            return Ok(());
        }
        self.press(id, Key::Clear, now)?;
        self.press(id, Key::Part(FractionPart::Over), now)?;
        for figure in figures.bytes() {
            self.press(id, Key::Digit(figure - b'0'), now)?;
        }
        Ok(())
    }

    pub(super) fn typed_char(
        &mut self,
        id: &PieceId,
        c: char,
        now: Moment,
    ) -> Result<(), AppError> {
        self.press(id, Key::Char(c), now)
    }

    fn press(&mut self, id: &PieceId, key: Key, now: Moment) -> Result<(), AppError> {
        let numbers = self.numbers();
        let spot = self.states.wall.cursor.at;
        let station = self.states.wall.diameter;
        let quantity = match station {
            Some(_) => crate::numbers::Quantity::OutsideDiameter,
            None => match self.measuring(id, spot.station) {
                Some(measuring) => measuring.quantity(),
                None => return Ok(()),
            },
        };
        // Enter with nothing typed at a station is a skip only on the screen's own key, never from callipers.
        let keypad = match &mut self.states.wall.keypad {
            Some(keypad) if keypad.quantity() == quantity => keypad,
            other => other.insert(Keypad::new(quantity, &numbers)),
        };
        let outcome = keypad.press(key, &numbers);
        match outcome {
            Outcome::Nothing => Ok(()),
            Outcome::Editing => {
                self.states.wall.asking = None;
                Ok(())
            }
            Outcome::Commit(Ok(Parsed::Value(entry))) => match station {
                Some(station) => self.diameter_read(id, station, entry, now),
                None => self.number_read(id, spot, entry, now),
            },
            Outcome::Commit(Ok(parsed)) => {
                self.states.wall.asking = Some(Asking::Which { spot, parsed });
                Ok(())
            }
            Outcome::Commit(Err(error)) => {
                let sentence = error.message(&numbers, quantity);
                self.states.wall.asking = Some(Asking::Sentence(sentence));
                Ok(())
            }
        }
    }

    /// A number was understood.
    pub(super) fn number_read(
        &mut self,
        id: &PieceId,
        spot: Spot,
        entry: Entry,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(measuring) = self.measuring(id, spot.station) else {
            return Ok(());
        };
        let mm = measuring.thickness(entry.value);
        if let Measuring::Rod { height_mm } = measuring
            && !crate::numbers::Quantity::FloorReading.range().allows(mm)
        {
            let numbers = self.numbers();
            let sentence = self.words().with(
                "wall-rod-impossible",
                &[
                    ("depth", numbers.diameter(entry.value).text().into()),
                    ("height", numbers.diameter(height_mm).text().into()),
                ],
            );
            self.states.wall.asking = Some(Asking::Sentence(sentence));
            return Ok(());
        }
        self.thickness(id, spot, mm, entry.typed, now)
    }
}
