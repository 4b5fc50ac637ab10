//! Record: one reading becomes one line, and the turner moves on.

use evenwall_piece::fact::{Measure, PieceFact, Reading};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::{Taken, WallFeel};
use evenwall_piece::wanted;

use super::WallAction;
use super::asking::Asking;
use super::measure::wanted_at;
use super::spot::{Spot, stations_of};
use crate::action::Action;
use crate::app::{App, AppError};
use crate::drawing::station_places;

/// A reading as it is about to be recorded.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadingEntry {
    /// Of which piece.
    pub piece: PieceId,
    /// Where.
    pub spot: Spot,
    /// The thickness, where a number was read.
    pub wall_mm: Option<Measure>,
    /// The judgement, where no number was read.
    pub feel: Option<WallFeel>,
    /// How it was taken.
    pub taken: Taken,
    /// When.
    pub at: Moment,
}

/// The stations of a piece as they are laid out with its first reading. The depths are only known with the height.
pub(super) fn stations_fact(piece: &Piece) -> PieceFact {
    let places = station_places(piece);
    let said = wanted::height(piece).said;
    PieceFact::Stations {
        count: u8::try_from(places.len()).unwrap_or(u8::MAX),
        depths_mm: if said {
            places.iter().map(|(_, depth, _)| *depth).collect()
        } else {
            Vec::new()
        },
    }
}

impl App {
    /// Takes a reading: asks first where it is doubtful, else records it.
    pub(super) fn offer(&mut self, entry: ReadingEntry, now: Moment) -> Result<(), AppError> {
        self.states.wall.asking = self.doubt(&entry);
        if self.states.wall.asking.is_some() {
            return Ok(());
        }
        self.record_reading(entry, now)
    }

    /// What is doubtful about a reading: over three times what is wanted, or thicker than before. Wood does not grow.
    fn doubt(&self, entry: &ReadingEntry) -> Option<Asking> {
        let piece = self.piece(&entry.piece)?;
        let mm = entry.wall_mm.as_ref()?.value;
        let wanted = wanted_at(piece, entry.spot.station);
        let last = piece
            .last_reading(entry.spot.station, Some(entry.spot.position))
            .and_then(|r| r.reading.wall_mm.as_ref());
        let tolerance = wanted::tolerance(piece, &self.shop().settings);
        let thicker = last.filter(|l| mm > l.value + tolerance + 1e-3);
        if let Some(last) = thicker {
            return Some(Asking::Thicker {
                entry: Box::new(entry.clone()),
                last_mm: last.value,
            });
        }
        // A station read as thick before is not asked about again while it comes down.
        (mm > 3.0 * wanted + 1e-3 && last.is_none()).then(|| Asking::Thick {
            entry: Box::new(entry.clone()),
            wanted_mm: wanted,
        })
    }

    /// Records a reading and moves on.
    pub(super) fn record_reading(
        &mut self,
        entry: ReadingEntry,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(piece) = self.piece(&entry.piece) else {
            return Ok(());
        };
        if !stations_of(piece).contains(&entry.spot.station) {
            return Ok(());
        }
        let mut facts = Vec::new();
        if piece.stations.count == 0 {
            facts.push(stations_fact(piece));
        }
        facts.push(PieceFact::Reading(Reading {
            station: entry.spot.station,
            position: entry.spot.position,
            wall_mm: entry.wall_mm.clone(),
            feel: entry.feel,
            taken: entry.taken,
        }));
        let said = self.said_of(&entry);
        self.retry_with(Action::Wall(WallAction::Record(Box::new(entry.clone()))));
        let line = self.record(&entry.piece, entry.at, facts, now)?;
        self.say(said);
        let state = &mut self.states.wall;
        state.asking = None;
        if state.piece.as_ref() != Some(&entry.piece) {
            return Ok(());
        }
        self.remember_wall(line);
        let state = &mut self.states.wall;
        // A reading tried again later does not move a turner who has gone on.
        if state.cursor.at == entry.spot {
            state.keypad = None;
            if !state.cursor.move_on(state.places) {
                self.end_round(now);
            }
        }
        Ok(())
    }

    /// What the undo bar says: "Station 4: 11.5".
    fn said_of(&self, entry: &ReadingEntry) -> String {
        let words = self.words();
        let what = match (&entry.wall_mm, entry.feel, entry.taken) {
            (Some(m), ..) => self.numbers().wall(m.value).text(),
            (None, Some(feel), _) => words.text(&format!("wall-felt-{}", feel.key())),
            (None, None, taken) => words.text(&format!("taken-{}", taken.key())),
        };
        words.with(
            "wall-said",
            &[
                ("station", self.station_title(entry.spot).into()),
                ("what", what.into()),
            ],
        )
    }
}
