//! Cursor: the section being worked, and where in it the next reading goes.

use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::{Moment, Piece};

use super::spot::{Spot, hours, stations_of};
use crate::app::App;
use crate::route::Page;

/// The most stations that are worked as one section.
pub(super) const MOST_IN_SECTION: usize = 3;
/// How many readings back undo leads to the place where each was taken.
const MOST_REMEMBERED: usize = 64;

/// The section and the spot in it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cursor {
    /// The stations being worked, mouth to floor.
    pub section: Vec<StationRef>,
    /// Where the next reading goes.
    pub at: Spot,
    /// True on the way once round the whole piece.
    pub round: bool,
}

impl Default for Cursor {
    fn default() -> Self {
        Self::only(StationRef::Wall(1))
    }
}

impl Cursor {
    /// One station.
    pub fn only(station: StationRef) -> Self {
        Self {
            section: vec![station],
            at: Spot::at_line(station),
            round: false,
        }
    }

    /// Where the last reading of this part of the work left a piece; station 1 where there is none.
    pub fn of(piece: &Piece) -> Self {
        let there = stations_of(piece);
        piece
            .readings_now()
            .rev()
            .find(|r| r.stage.same_part(piece.stage()))
            .map(|r| r.reading.station)
            .filter(|s| there.contains(s))
            .map_or_else(Self::default, Self::only)
    }

    /// True where all its stations are there.
    pub fn fits(&self, piece: &Piece) -> bool {
        let there = stations_of(piece);
        self.section.iter().all(|s| there.contains(s)) && there.contains(&self.at.station)
    }

    /// Moves on: round the station, then to the next station of the section, then round again. False where a whole
    /// round has come to its end.
    pub fn move_on(&mut self, places: u8) -> bool {
        let hours = hours(places);
        let here = hours
            .iter()
            .position(|h| *h == self.at.position.hour())
            .unwrap_or(hours.len());
        if let Some(next) = hours.get(here + 1).copied().and_then(Clock::new) {
            self.at.position = next;
            return true;
        }
        self.next_station()
    }

    /// Moves to the next station of the section. False where a whole round has come to its end.
    pub fn next_station(&mut self) -> bool {
        let place = self.section.iter().position(|s| *s == self.at.station);
        let next = place.map_or(0, |p| p + 1);
        if self.round && next >= self.section.len() {
            return false;
        }
        let station = self.section.get(next).or_else(|| self.section.first());
        self.at = Spot::at_line(station.copied().unwrap_or(self.at.station));
        true
    }
}

impl App {
    /// Where the turner is: undo leads back to where the reading taken back was recorded, redo forward again.
    pub(super) fn wall_cursor(&self) -> &Cursor {
        let state = &self.states.wall;
        let mut cursor = &state.cursor;
        for (line, before) in state.history.iter().rev() {
            if !self.is_taken_back(line) {
                break;
            }
            cursor = before;
        }
        cursor
    }

    /// The newest line recorded here that still counts.
    pub(super) fn last_here(&self) -> Option<&LineId> {
        let lines = self.states.wall.history.iter().rev();
        lines.map(|(l, _)| l).find(|l| !self.is_taken_back(l))
    }

    fn is_taken_back(&self, line: &LineId) -> bool {
        let piece = self
            .states
            .wall
            .piece
            .as_ref()
            .and_then(|id| self.piece(id));
        piece.is_none_or(|p| {
            let entry = p.diary.iter().rev().find(|e| e.entry.line == *line);
            entry.is_none_or(|e| e.retracted)
        })
    }

    /// Makes the place to which undo led the place from which the turner goes on.
    pub(super) fn settle_wall(&mut self) {
        let cursor = self.wall_cursor().clone();
        while let Some((line, _)) = self.states.wall.history.last() {
            if !self.is_taken_back(&line.clone()) {
                break;
            }
            self.states.wall.history.pop();
        }
        self.states.wall.cursor = cursor;
    }

    pub(super) fn remember_wall(&mut self, line: LineId) {
        let state = &mut self.states.wall;
        if state.history.len() >= MOST_REMEMBERED {
            state.history.remove(0);
        }
        state.history.push((line, state.cursor.clone()));
    }

    /// Goes to a station: within the section, or to a new section of this station alone.
    pub(super) fn jump_to(&mut self, station: StationRef) {
        let Some(piece) = self.wall_piece() else {
            return;
        };
        if !stations_of(piece).contains(&station) {
            return;
        }
        let state = &mut self.states.wall;
        if state.cursor.section.contains(&station) {
            state.cursor.at = Spot::at_line(station);
        } else {
            state.cursor = Cursor::only(station);
        }
        state.keypad = None;
        state.asking = None;
    }

    pub(super) fn step_by(&mut self, by: i8) {
        let Some(piece) = self.wall_piece() else {
            return;
        };
        let there = stations_of(piece);
        let at = self.states.wall.cursor.at.station;
        let place = there.iter().position(|s| *s == at).unwrap_or(0);
        let next = place.saturating_add_signed(isize::from(by));
        if let Some(station) = there.get(next) {
            self.jump_to(*station);
        }
    }

    /// Takes a station into the section or out of it. One more than the most lets go of the one farthest away.
    pub(super) fn toggle_section(&mut self, station: StationRef) {
        let Some(piece) = self.wall_piece() else {
            return;
        };
        if !stations_of(piece).contains(&station) {
            return;
        }
        let cursor = &mut self.states.wall.cursor;
        if cursor.round {
            *cursor = Cursor::only(station);
            return;
        }
        if cursor.section.contains(&station) {
            if cursor.section.len() > 1 {
                cursor.section.retain(|s| *s != station);
            }
        } else {
            cursor.section.push(station);
            cursor.section.sort();
            if cursor.section.len() > MOST_IN_SECTION {
                let is_first = cursor.section.first() == Some(&station);
                let away = if is_first {
                    cursor.section.len() - 1
                } else {
                    0
                };
                cursor.section.remove(away);
            }
        }
        if !cursor.section.contains(&cursor.at.station)
            && let Some(first) = cursor.section.first()
        {
            cursor.at = Spot::at_line(*first);
        }
    }

    /// Begins a whole round: every station from the mouth to the corner, then the floor.
    pub(super) fn whole_round(&mut self, id: &PieceId, now: Moment) {
        self.take_up_wall(id);
        let Some(piece) = self.piece(id) else { return };
        let section = stations_of(piece);
        let first = section.first().copied().unwrap_or(StationRef::Floor);
        self.states.wall.cursor = Cursor {
            at: Spot::at_line(first),
            section,
            round: true,
        };
        self.open_page(Page::Wall(id.clone()), now);
    }

    pub(super) fn choose_places(&mut self, places: u8) {
        let state = &mut self.states.wall;
        state.places = places;
        state.sheet = None;
        state.cursor.at = Spot::at_line(state.cursor.at.station);
    }

    /// Goes on without a reading: to the next station of the section; from a section of one, to the station below.
    pub(super) fn skip(&mut self, now: Moment) {
        self.states.wall.asking = None;
        self.states.wall.keypad = None;
        if self.states.wall.cursor.section.len() == 1 {
            self.step_by(1);
        } else if !self.states.wall.cursor.next_station() {
            self.end_round(now);
        }
    }

    /// A whole round is done: its result.
    pub(super) fn end_round(&mut self, now: Moment) {
        let Some(id) = self.states.wall.piece.clone() else {
            return;
        };
        self.states.wall.cursor.round = false;
        self.states.wall.cursor = Cursor::only(self.states.wall.cursor.at.station);
        self.open_page(Page::WallSummary(id), now);
    }
}
