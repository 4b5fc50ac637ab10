//! Thin: stations below the wall wanted, whether that matters, and what can be done about it.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::WallFeel;
use evenwall_piece::wanted;
use evenwall_wood::evenness::Verdict;

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
