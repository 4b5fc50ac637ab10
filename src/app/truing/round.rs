//! Round: a station and a way of measuring are chosen, then the readings are typed one after the other.

use evenwall_piece::fact::{Measure, PieceFact, RoundReading};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, SectionMeasured};
use evenwall_piece::vocabulary::RoundHow;

use super::place::places_of;
use super::recorded::Recorded;
use super::{TruingSheet, TruingState};
use crate::app::App;
use crate::measured::{Field, Refused};
use crate::numbers::Quantity;

/// A way of measuring a station.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Way {
    /// Longest and shortest diameter.
    #[default]
    Two,
    /// Four diameters.
    Diameters4,
    /// Eight diameters.
    Diameters8,
    /// Eight distances from the centre mark.
    Centre8,
    /// Sixteen distances from the centre mark.
    Centre16,
}

impl Way {
    pub(super) const ALL: [Self; 5] = [
        Self::Two,
        Self::Diameters4,
        Self::Diameters8,
        Self::Centre8,
        Self::Centre16,
    ];

    pub(super) const fn key(self) -> &'static str {
        match self {
            Self::Two => "two",
            Self::Diameters4 => "diameters-4",
            Self::Diameters8 => "diameters-8",
            Self::Centre8 => "centre-8",
            Self::Centre16 => "centre-16",
        }
    }

    /// How the readings round are taken, and how many; `None` for two diameters.
    pub(super) const fn round(self) -> Option<(RoundHow, usize)> {
        match self {
            Self::Two => None,
            Self::Diameters4 => Some((RoundHow::Diameters, 4)),
            Self::Diameters8 => Some((RoundHow::Diameters, 8)),
            Self::Centre8 => Some((RoundHow::FromCentre, 8)),
            Self::Centre16 => Some((RoundHow::FromCentre, 16)),
        }
    }

    fn of(measured: &SectionMeasured) -> Self {
        let SectionMeasured::Round { how, readings } = measured else {
            return Self::Two;
        };
        let same = |w: &&Self| w.round() == Some((*how, readings.len()));
        Self::ALL.iter().find(same).copied().unwrap_or_default()
    }
}

/// How far round reading `i` of `n` is taken, degrees: diameters over half a turn.
pub(super) fn turn_deg(how: RoundHow, i: usize, n: usize) -> f64 {
    let turn = match how {
        RoundHow::Diameters => 180.0,
        RoundHow::FromCentre => 360.0,
    };
    turn * i as f64 / n as f64
}

/// "12:00", "1:30": how far round on the face of a clock.
pub(super) fn clock_place(turn_deg: f64) -> String {
    let minutes = (2.0 * turn_deg.rem_euclid(360.0)).round() as u32 % 720;
    let hour = if minutes < 60 { 12 } else { minutes / 60 };
    format!("{hour}:{:02}", minutes % 60)
}

pub(super) const fn quantity(how: RoundHow) -> Quantity {
    match how {
        RoundHow::Diameters => Quantity::OutsideDiameter,
        RoundHow::FromCentre => Quantity::FromCentre,
    }
}

impl App {
    /// Opens the sheet in which station and way are chosen.
    pub(super) fn trueup_open_where(&mut self) {
        let Some(piece) = self.truing_piece() else {
            return;
        };
        let places = places_of(piece);
        let shown = self.states.truing.shown;
        let start = places
            .iter()
            .find(|p| shown == Some(p.number))
            .or_else(|| places.iter().find(|p| p.widest));
        let Some(start) = start else {
            return;
        };
        let (station, way) = (start.number, start.measured.as_ref().map(Way::of));
        self.states.truing = TruingState {
            of: self.states.truing.of.clone(),
            shown,
            sheet: Some(TruingSheet::Where),
            station: Some(station),
            way: way.unwrap_or_default(),
            ..TruingState::default()
        };
        self.undo.hide();
    }

    /// A station or a way by its key.
    pub(super) fn trueup_choose_where(&mut self, key: &str) {
        if let Some(way) = Way::ALL.into_iter().find(|w| w.key() == key) {
            self.states.truing.way = way;
        } else if let Ok(station) = key.parse::<u8>() {
            self.states.truing.station = Some(station);
        }
    }

    /// From the choice to the sheet of two diameters, or to the readings one after the other.
    pub(super) fn trueup_begin_readings(&mut self) {
        let Some(piece) = self.truing_piece() else {
            return;
        };
        let state = &self.states.truing;
        let Some(station) = state.station else {
            return;
        };
        let place = places_of(piece).into_iter().find(|p| p.number == station);
        let widest = place.as_ref().is_some_and(|p| p.widest);
        let Some((how, count)) = state.way.round() else {
            self.open_oval_sheet(Some(station).filter(|_| !widest));
            return;
        };
        // What was measured the same way can be gone over again.
        let readings = match place.and_then(|p| p.measured) {
            Some(SectionMeasured::Round {
                how: was,
                readings: old,
            }) if was == how && old.len() == count => old.into_iter().map(|r| Some(r.mm)).collect(),
            _ => vec![None; count],
        };
        let state = &mut self.states.truing;
        state.sheet = Some(TruingSheet::Round);
        state.readings = readings;
        self.trueup_go_to_reading(0);
    }

    fn trueup_go_to_reading(&mut self, at: usize) {
        let state = &self.states.truing;
        let Some((how, _)) = state.way.round() else {
            return;
        };
        let text = match state.readings.get(at) {
            Some(Some(measure)) => self.as_typed(quantity(how), measure),
            _ => String::new(),
        };
        let state = &mut self.states.truing;
        state.at = at;
        state.first = Field::of(text);
    }

    /// Another of the readings was touched; what stands in the field is kept where it reads as a number.
    pub(super) fn trueup_jump_to_reading(&mut self, key: &str) {
        let Ok(at) = key.parse::<usize>() else {
            return;
        };
        if at >= self.states.truing.readings.len() {
            return;
        }
        // A field that cannot be read is left as it is: nobody asked for it to be kept.
        if let Ok(Some(measure)) = self.trueup_reading_in_field() {
            self.trueup_keep_reading(measure);
        }
        self.trueup_go_to_reading(at);
    }

    fn trueup_reading_in_field(&self) -> Result<Option<Measure>, Refused> {
        let state = &self.states.truing;
        let Some((how, _)) = state.way.round() else {
            return Ok(None);
        };
        // What reads as it was put there keeps its figure.
        if let Some(Some(old)) = state.readings.get(state.at)
            && self.still_reads(quantity(how), &state.first.text, old)
        {
            return Ok(Some(old.clone()));
        }
        let mut field = state.first.clone();
        self.read_field(quantity(how), &mut field)
    }

    fn trueup_keep_reading(&mut self, measure: Measure) {
        let state = &mut self.states.truing;
        if let Some(place) = state.readings.get_mut(state.at) {
            *place = Some(measure);
        }
    }

    /// Takes the reading in the field and moves on to the next that is open; after the last of them all are recorded.
    pub(super) fn trueup_read_round(
        &mut self,
        piece: PieceId,
        now: Moment,
    ) -> Result<Option<Recorded>, Refused> {
        let state = &self.states.truing;
        let (Some((how, count)), Some(station)) = (state.way.round(), state.station) else {
            return Ok(None);
        };
        let measure = match self.trueup_reading_in_field() {
            Ok(Some(measure)) => measure,
            _ => self.read_first(quantity(how))?,
        };
        self.trueup_keep_reading(measure);
        let state = &self.states.truing;
        let from = state.at + 1;
        let open = (0..count)
            .map(|i| (from + i) % count)
            .find(|i| state.readings.get(*i).is_none_or(Option::is_none));
        if let Some(open) = open {
            self.trueup_go_to_reading(open);
            return Ok(None);
        }
        let readings: Vec<RoundReading> = state
            .readings
            .iter()
            .flatten()
            .enumerate()
            .map(|(i, mm)| RoundReading {
                turn_deg: turn_deg(how, i, count),
                mm: mm.clone(),
            })
            .collect();
        let fact = PieceFact::OvalRound {
            station,
            how,
            readings,
        };
        let what = self.words().with(
            "trueup-said-round",
            &[
                ("n", i64::from(station).into()),
                ("count", i64::try_from(count).unwrap_or(0).into()),
            ],
        );
        let said = self.said_about(&piece, "trueup-said-oval", &what);
        let same = self
            .truing_piece()
            .and_then(|p| Some(p.finish.ovals.get(&station)?.measured.clone()))
            .is_some_and(|old| match (&old, &fact) {
                (
                    SectionMeasured::Round {
                        how: a,
                        readings: b,
                    },
                    PieceFact::OvalRound { how, readings, .. },
                ) => a == how && b == readings,
                _ => false,
            });
        if same {
            self.close_truing_sheet();
            return Ok(None);
        }
        Ok(Some(self.recorded(piece, now, fact, said)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_round_are_told_by_the_clock() {
        let all: Vec<_> = (0..8)
            .map(|i| clock_place(turn_deg(RoundHow::FromCentre, i, 8)))
            .collect();
        assert_eq!(
            all,
            [
                "12:00", "1:30", "3:00", "4:30", "6:00", "7:30", "9:00", "10:30"
            ]
        );
        assert_eq!(clock_place(turn_deg(RoundHow::FromCentre, 1, 16)), "12:45");
        assert_eq!(clock_place(turn_deg(RoundHow::Diameters, 3, 4)), "4:30");
        assert_eq!(clock_place(359.9), "12:00");
    }
}
