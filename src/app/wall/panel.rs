//! Panel: what is said about the station being read, and what is worth doing there.

use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::wanted;

use super::measure::Measuring;
use super::standing::{Judged, judge_mm, standings};
use super::view::FactRow;
use crate::app::App;
use crate::drawing::station_places;
use crate::numbers::Parsed;

impl App {
    /// "Station 4 of 7", "Floor".
    pub(super) fn station_of(&self, piece: &Piece, station: StationRef) -> String {
        match station {
            StationRef::Floor => self.station_name(station),
            StationRef::Wall(n) => self.words().with(
                "wall-station-of",
                &[
                    ("n", i64::from(n).into()),
                    ("count", station_places(piece).len().into()),
                ],
            ),
        }
    }

    pub(super) fn progress_text(&self) -> String {
        let cursor = self.wall_cursor();
        let words = self.words();
        let place = match (self.states.wall.places, cursor.at.position) {
            (1, _) => String::new(),
            (_, Clock::TWELVE) => words.text("wall-at-line"),
            (_, position) => words.with(
                "wall-at-hour",
                &[("hour", i64::from(position.hour()).into())],
            ),
        };
        if !cursor.round {
            return place;
        }
        let n = cursor.section.iter().position(|s| *s == cursor.at.station);
        let round = words.with(
            "wall-round-progress",
            &[
                ("n", n.map_or(1, |p| p + 1).into()),
                ("count", cursor.section.len().into()),
            ],
        );
        if place.is_empty() {
            round
        } else {
            format!("{round}, {place}")
        }
    }

    pub(super) fn meaning(&self, measuring: Measuring) -> String {
        let Measuring::Rod { height_mm } = measuring else {
            return String::new();
        };
        self.words().with(
            "wall-rod-meaning",
            &[("height", self.numbers().diameter(height_mm).text().into())],
        )
    }

    pub(super) fn fact_rows(
        &self,
        piece: &Piece,
        station: StationRef,
        wanted: String,
    ) -> Vec<FactRow> {
        let words = self.words();
        let mut rows = vec![FactRow {
            label: words.text("wall-wanted-short"),
            value: wanted,
        }];
        let position = self.wall_cursor().at.position;
        let mut numbers = piece
            .readings_now()
            .rev()
            .filter(|r| r.reading.station == station && r.reading.position == position)
            .filter_map(|r| r.reading.wall_mm.as_ref());
        if let (Some(last), Some(before)) = (numbers.next(), numbers.next())
            && before.value > last.value + 1e-3
        {
            let shown = self.numbers();
            rows.push(FactRow {
                label: words.text("wall-before"),
                value: shown.wall(before.value).number,
            });
            rows.push(FactRow {
                label: words.text("wall-came-off"),
                value: shown.wall(before.value - last.value).number,
            });
        }
        rows
    }

    pub(super) fn section_text(&self) -> String {
        let cursor = self.wall_cursor();
        let words = self.words();
        if cursor.round {
            return words.text("wall-whole-round");
        }
        match cursor.section.as_slice() {
            [one] => self.station_name(*one),
            several => {
                let names: Vec<String> = several
                    .iter()
                    .map(|s| match s {
                        StationRef::Wall(n) => n.to_string(),
                        StationRef::Floor => words.text("wall-floor-lower"),
                    })
                    .collect();
                words.with("wall-stations", &[("which", names.join(", ").into())])
            }
        }
    }

    pub(super) fn taken_text(&self, measuring: Measuring) -> String {
        let words = self.words();
        match measuring {
            Measuring::Rod { .. } => words.text("wall-tool-depth-rod"),
            Measuring::Wall | Measuring::Floor => {
                words.text(&format!("wall-tool-{}", self.states.wall.taken.key()))
            }
        }
    }

    /// What is worth doing here beside reading: more places round, or the whole round before moving on.
    pub(super) fn hint(&self, piece: &Piece) -> String {
        if self.states.wall.places == 1
            && let Some(id) = self.places_hint(piece)
        {
            return self.words().text(id);
        }
        if self.round_is_due(piece) {
            return self.words().text("wall-round-hint");
        }
        String::new()
    }

    /// True at the end of hollowing, once every station was read, and before the first reading of True.
    pub(super) fn round_is_due(&self, piece: &Piece) -> bool {
        let hollowed = piece.stage() == Stage::Hollow
            && standings(piece, &self.shop().settings)
                .iter()
                .filter(|s| s.station != StationRef::Floor)
                .all(|s| s.judged.verdict().is_some());
        let before_true = piece.stage().group() == Group::Finishing
            && !piece
                .readings_now()
                .any(|r| r.stage.group() == Group::Finishing);
        !self.wall_cursor().round && (hollowed || before_true)
    }

    /// How a wall of the number that is being typed would stand; nothing while it cannot be read.
    pub(super) fn typed_judged(
        &self,
        piece: &Piece,
        station: StationRef,
        measuring: Measuring,
        typed: &str,
    ) -> Judged {
        let read = self.numbers().parse(measuring.quantity(), typed);
        let Ok(Parsed::Value(entry)) = read else {
            return Judged::Never;
        };
        let mm = measuring.thickness(entry.value);
        if mm <= 0.0 {
            return Judged::Never;
        }
        judge_mm(piece, &self.shop().settings, station, mm)
    }

    pub(super) fn floor_ways(&self, piece: &Piece, station: StationRef) -> Vec<FactRow> {
        if station != StationRef::Floor || !wanted::height(piece).said {
            return Vec::new();
        }
        [
            ("depth", "wall-floor-by-depth"),
            ("floor", "wall-floor-itself"),
        ]
        .into_iter()
        .map(|(key, id)| FactRow {
            label: key.to_owned(),
            value: self.words().text(id),
        })
        .collect()
    }

    /// True where something done on this page can be taken back.
    pub(super) fn can_undo_here(&self) -> bool {
        self.undo().depth() > self.states.wall.done_before
    }
}
