//! Thin: stations below the wall wanted, whether that matters, and what can be done about it.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::{Taken, WallFeel};
use evenwall_piece::wanted;
use evenwall_wood::evenness::{Verdict, short_stations};

use super::measure::wanted_at;
use super::spot::station_key;
use super::standing::{Judged, Standing, alarming};
use crate::app::App;

/// The box about thin stations.
#[derive(Debug, Default)]
pub(super) struct ThinBox {
    pub title: String,
    pub text: String,
    pub alarming: bool,
    pub best_wall: String,
}

impl App {
    /// What is thin, whether it matters, and what can be done about it.
    pub(super) fn thin_box(&self, piece: &Piece, all: &[Standing<'_>]) -> ThinBox {
        let words = self.words();
        let numbers = self.numbers();
        let settings = &self.shop().settings;
        let thin: Vec<&Standing<'_>> = all
            .iter()
            .filter(|s| s.station != StationRef::Floor)
            .filter(|s| {
                matches!(
                    s.judged,
                    Judged::Read {
                        verdict: Verdict::Thin,
                        ..
                    }
                )
            })
            .collect();
        if thin.is_empty() || self.states.wall.thin_left {
            return ThinBox::default();
        }
        let worst = thin
            .iter()
            .copied()
            .filter(|s| alarming(piece, settings, s))
            .min_by(|a, b| {
                let mm = |s: &Standing<'_>| s.judged.mm().unwrap_or(f64::INFINITY);
                mm(a).total_cmp(&mm(b))
            });
        let names: Vec<String> = thin
            .iter()
            .map(|s| match s.station {
                StationRef::Wall(n) => n.to_string(),
                StationRef::Floor => String::new(),
            })
            .collect();
        let finish = numbers.wall(wanted::finish_wall(piece).mm).short().text();
        let best = self.best_wall_mm(piece);
        ThinBox {
            title: match worst {
                Some(worst) => words.with(
                    "wall-will-not-finish",
                    &[
                        ("station", self.station_name(worst.station).into()),
                        ("finish", finish.into()),
                    ],
                ),
                None => words.with(
                    "wall-short-title",
                    &[
                        ("n", names.len().into()),
                        ("which", names.join(", ").into()),
                    ],
                ),
            },
            text: words.text(if worst.is_some() {
                "wall-will-not-finish-text"
            } else {
                "wall-short-text"
            }),
            alarming: worst.is_some(),
            best_wall: best.map_or_else(String::new, |mm| {
                words.with(
                    "wall-take-best",
                    &[("wall", numbers.wall(mm).short().text().into())],
                )
            }),
        }
    }

    /// Stations that are even but below the wall wanted, and the even wall that all can still be brought to; empty for none.
    pub(super) fn short_text(&self, piece: &Piece, all: &[Standing<'_>]) -> String {
        let read: Vec<(StationRef, f64)> = all
            .iter()
            .filter(|s| s.station != StationRef::Floor && !s.before)
            .filter_map(|s| Some((s.station, s.judged.mm()?)))
            .collect();
        let walls: Vec<f64> = read.iter().map(|r| r.1).collect();
        let short = short_stations(&walls, wanted::wall_now(piece).mm);
        let Some(best) = self.best_wall_mm(piece).filter(|_| !short.is_empty()) else {
            return String::new();
        };
        let which: Vec<String> = short.iter().map(|i| station_key(read[*i].0)).collect();
        self.words().with(
            "wall-short-within",
            &[
                ("n", which.len().into()),
                ("which", which.join(", ").into()),
                ("wall", self.numbers().wall(best).short().text().into()),
            ],
        )
    }

    /// "floor left above the foot line, 12 mm wanted, rod 180 mm".
    pub(super) fn floor_text(&self, piece: &Piece, floor: &Standing<'_>) -> String {
        let words = self.words();
        let numbers = self.numbers();
        let wanted = numbers
            .wall(wanted_at(piece, StationRef::Floor))
            .short()
            .text();
        let height = wanted::height(piece);
        let rod = floor
            .shown
            .filter(|r| r.reading.taken == Taken::DepthRod && height.said)
            .and_then(|_| floor.judged.mm());
        match rod {
            Some(left) => words.with(
                "wall-floor-left-rod",
                &[
                    ("wanted", wanted.into()),
                    (
                        "rod",
                        numbers.diameter(height.mm - left).short().text().into(),
                    ),
                ],
            ),
            None => words.with("wall-floor-left", &[("wanted", wanted.into())]),
        }
    }

    pub(super) fn alone(&self, all: &[Standing<'_>]) -> Vec<String> {
        let words = self.words();
        all.iter()
            .filter_map(|s| match s.judged {
                Judged::Read {
                    verdict: Verdict::Thin,
                    off_mm,
                    ..
                } => Some(words.with(
                    "wall-alone-thin",
                    &[
                        ("station", self.the_station(s.station).into()),
                        ("off", self.off_text(off_mm).into()),
                    ],
                )),
                Judged::Read {
                    verdict: Verdict::Heavy,
                    ..
                }
                | Judged::Felt(WallFeel::Heavy)
                    if s.passed =>
                {
                    Some(words.with(
                        "wall-alone-passed",
                        &[("station", self.the_station(s.station).into())],
                    ))
                }
                _ => None,
            })
            .collect()
    }
}
