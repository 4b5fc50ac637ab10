//! Status: stations, readings and verdicts in words.

use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::piece::{Moment, Piece, StationReading};
use evenwall_piece::vocabulary::Taken;
use evenwall_wood::evenness::Verdict;

use super::spot::Spot;
use super::standing::{Judged, judge, verdict_key};
use super::view::StatusView;
use crate::app::App;
use crate::drawing::station_places;
use crate::words::dates::Dates;

impl App {
    /// "Station 4", "Station 4 at 3 o'clock", "Floor".
    pub(super) fn station_title(&self, spot: Spot) -> String {
        let words = self.words();
        let station = self.station_name(spot.station);
        if spot.position == Clock::TWELVE {
            return station;
        }
        words.with(
            "wall-station-at",
            &[
                ("station", station.into()),
                ("hour", i64::from(spot.position.hour()).into()),
            ],
        )
    }

    /// "Station 4", "Floor".
    pub(super) fn station_name(&self, station: StationRef) -> String {
        match station {
            StationRef::Wall(n) => self
                .words()
                .with("wall-station", &[("n", i64::from(n).into())]),
            StationRef::Floor => self.words().text("part-floor"),
        }
    }

    /// "station 4", "the floor", inside a sentence.
    pub(super) fn the_station(&self, station: StationRef) -> String {
        match station {
            StationRef::Wall(n) => self
                .words()
                .with("wall-the-station", &[("n", i64::from(n).into())]),
            StationRef::Floor => self.words().text("wall-the-floor"),
        }
    }

    /// What the station is called from mouth to corner and how deep it lies: "shoulder, 42 mm down".
    pub(super) fn station_note(&self, piece: &Piece, station: StationRef) -> String {
        let words = self.words();
        let StationRef::Wall(n) = station else {
            return words.text("wall-floor-note");
        };
        let Some((_, depth, name)) = station_places(piece).into_iter().find(|p| p.0 == n) else {
            return String::new();
        };
        let depth = self.numbers().diameter(depth).text();
        if name.is_empty() {
            words.with("wall-depth", &[("depth", depth.into())])
        } else {
            words.with(
                "wall-name-depth",
                &[
                    ("name", words.text(&format!("wall-name-{name}")).into()),
                    ("depth", depth.into()),
                ],
            )
        }
    }

    /// "Station 4: lower middle, 104 mm down", "Floor: above the foot line".
    pub(super) fn station_row(&self, piece: &Piece, station: StationRef) -> String {
        self.words().with(
            "wall-said",
            &[
                ("station", self.station_name(station).into()),
                ("what", self.station_note(piece, station).into()),
            ],
        )
    }

    /// "heavy by 1.5", "even", "thin by 1", "can't reach", or empty.
    pub(super) fn verdict_text(&self, judged: Judged) -> String {
        let words = self.words();
        match judged {
            Judged::Never => String::new(),
            Judged::CantReach => words.text("taken-cant-reach"),
            Judged::Felt(feel) => words.text(&format!("wall-felt-{}", feel.key())),
            Judged::Read {
                verdict: Verdict::Even,
                ..
            } => words.text("wall-even"),
            Judged::Read {
                verdict, off_mm, ..
            } => {
                let off = self.off_text(off_mm);
                let id = match verdict {
                    Verdict::Heavy => "wall-heavy-by",
                    Verdict::Even | Verdict::Thin => "wall-thin-by",
                };
                words.with(id, &[("off", off.into())])
            }
        }
    }

    /// How far off, without its sign and unit; never nought.
    pub(super) fn off_text(&self, off_mm: f64) -> String {
        let numbers = self.numbers();
        numbers
            .wall(
                off_mm
                    .abs()
                    .max(numbers.step(crate::numbers::Quantity::WallReading)),
            )
            .short()
            .number
    }

    /// `heavy`, `even`, `thin`, or empty.
    pub(super) fn verdict_kind(judged: Judged) -> &'static str {
        judged.verdict().map_or("", verdict_key)
    }

    /// When and how a reading was taken: "09:12, callipers", "Thu 12, fingers".
    pub(super) fn when_and_how(&self, reading: &StationReading, now: Moment) -> String {
        let day = reading.at.date_naive();
        let when = if day == now.date_naive() {
            reading.at.format("%H:%M").to_string()
        } else {
            Dates::new(self.words(), now.date_naive()).near(day)
        };
        if reading.reading.taken == Taken::CantReach {
            return when;
        }
        let taken = reading.reading.taken.key();
        self.words().with(
            "wall-when-how",
            &[
                ("when", when.into()),
                ("how", self.words().text(&format!("taken-{taken}")).into()),
            ],
        )
    }

    /// What was recorded here last, with its verdict.
    pub(super) fn status_view(&self, piece: &Piece) -> StatusView {
        let words = self.words();
        let reading = self.last_here().and_then(|line| {
            let readings = piece.readings.iter().rev();
            readings.into_iter().find(|r| r.entry.line == *line)
        });
        let Some(reading) = reading else {
            return StatusView {
                kind: "",
                text: words.text("wall-status-none"),
            };
        };
        let spot = Spot {
            station: reading.reading.station,
            position: reading.reading.position,
        };
        let judged = judge(piece, &self.shop().settings, reading);
        let station = self.station_title(spot);
        let verdict = self.verdict_text(judged);
        let text = match judged {
            Judged::Read { mm, .. } => words.with(
                "wall-status-number",
                &[
                    ("station", station.into()),
                    ("number", self.numbers().wall(mm).number.into()),
                    ("verdict", verdict.into()),
                ],
            ),
            _ => words.with(
                "wall-status",
                &[("station", station.into()), ("verdict", verdict.into())],
            ),
        };
        StatusView {
            kind: Self::verdict_kind(judged),
            text,
        }
    }
}
