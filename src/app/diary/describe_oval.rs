//! Describe an oval: two diameters, or readings all round, in words of the diary.

use evenwall_piece::fact::{Measure, PieceFact, RoundReading, StationRef};

use super::describe::Described;
use super::filter::Filter;
use crate::app::App;

impl App {
    /// An oval in words; the readings round are the second line.
    pub(super) fn describe_oval(&self, fact: &PieceFact) -> Described {
        let words = self.words();
        let (title, note) = match fact {
            PieceFact::Oval {
                longest_mm,
                shortest_mm,
            } => (self.two_diameters(longest_mm, shortest_mm), String::new()),
            PieceFact::OvalAt {
                station,
                longest_mm,
                shortest_mm,
            } => {
                let title = words.with(
                    "diary-reading",
                    &[
                        (
                            "station",
                            self.station_ref_words(StationRef::Wall(*station)).into(),
                        ),
                        (
                            "value",
                            self.two_diameters(longest_mm, shortest_mm)
                                .to_lowercase()
                                .into(),
                        ),
                    ],
                );
                (title, String::new())
            }
            PieceFact::OvalRound {
                station,
                how,
                readings,
            } => {
                let title = words.with(
                    "diary-round",
                    &[
                        (
                            "station",
                            self.station_ref_words(StationRef::Wall(*station)).into(),
                        ),
                        ("how", how.key().into()),
                        ("n", i64::try_from(readings.len()).unwrap_or(0).into()),
                    ],
                );
                (title, self.round_readings(readings))
            }
            _ => (String::new(), String::new()),
        };
        self.line("oval", Filter::Finish, title, note)
    }

    fn two_diameters(&self, longest: &Measure, shortest: &Measure) -> String {
        let numbers = self.numbers();
        self.words().with(
            "diary-oval",
            &[
                (
                    "longest",
                    numbers.diameter_fine(longest.value).number.into(),
                ),
                (
                    "shortest",
                    numbers.diameter_fine(shortest.value).text().into(),
                ),
            ],
        )
    }

    /// "68.5 · 68 · 67.5 mm".
    fn round_readings(&self, readings: &[RoundReading]) -> String {
        let shown: Vec<_> = readings
            .iter()
            .map(|r| self.numbers().diameter_fine(r.mm.value))
            .collect();
        let unit = shown.first().map_or_else(String::new, |s| s.unit.clone());
        let all: Vec<&str> = shown.iter().map(|s| s.number.as_str()).collect();
        super::describe::join(&all.join(" · "), &unit)
    }
}
