//! Curve: the share still whole against the days of drying, as a staircase with its band, and day by day in words.

use std::fmt::Write as _;

use evenwall_piece::dried::Fate;
use evenwall_wood::kept::PER_CENT_FROM;
use evenwall_wood::survival::{Seen, Survival, survival};

use super::{Fared, LEVEL};
use crate::app::App;
use crate::drying::view::TickView;
use crate::shop::view::RowView;

/// With fewer pieces there is no curve to draw. Common practice, no source.
const ENOUGH: u32 = 5;

/// The curve: paths on a field of 1000 x 1000, everything else as fractions, 0 left or top to 1 right or bottom.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct CurveView {
    /// The staircase.
    pub line: String,
    /// The outline of its band.
    pub band: String,
    /// Marks at the side.
    pub y_ticks: Vec<TickView>,
    /// Marks below.
    pub x_ticks: Vec<TickView>,
    /// What a screen reader says instead of the picture.
    pub label: String,
}

/// What is said of the curve.
pub(super) struct Curve {
    /// The drawing; `None` with too few pieces or no loss.
    pub view: Option<CurveView>,
    /// A sentence below the title.
    pub note: String,
    /// Day by day.
    pub rows: Vec<RowView>,
}

fn seen(fared: &[Fared<'_>]) -> Vec<Seen> {
    fared
        .iter()
        .map(|f| Seen {
            days: f.dried.days as f64, // some thousands
            lost: f.dried.fate == Fate::Lost,
        })
        .collect()
}

/// Days between two marks, so that there are at most five.
fn tick_days(most: f64) -> u32 {
    const STEPS: [u32; 9] = [7, 14, 30, 60, 90, 180, 360, 720, 1800];
    let fits = |step: &&u32| most / f64::from(**step) <= 5.0;
    STEPS.iter().find(fits).copied().unwrap_or(3600)
}

/// The staircase through these corners, each level until the next.
fn stairs(path: &mut String, corners: &[(f64, f64)]) {
    let mut before: Option<f64> = None;
    for (x, y) in corners {
        // Writing to a String cannot fail.
        let _ = match before {
            None if path.is_empty() => write!(path, "M{x:.1} {y:.1}"),
            None => write!(path, "L{x:.1} {y:.1}"),
            Some(level) => write!(path, "L{x:.1} {level:.1}L{x:.1} {y:.1}"),
        };
        before = Some(*y);
    }
}

/// The staircase and its band. Where none is left whole no interval can be had: the band ends there.
fn paths(curve: &Survival) -> (String, String) {
    let end = curve.seen_days.max(1.0);
    let at = |days: f64, whole: f64| (1000.0 * days / end, 1000.0 * (1.0 - whole));
    let mut corners = vec![at(0.0, 1.0)];
    corners.extend(curve.steps.iter().map(|s| at(s.days, s.whole)));
    corners.push(at(end, curve.steps.last().map_or(1.0, |s| s.whole)));
    let mut line = String::new();
    stairs(&mut line, &corners);
    let sure: Vec<_> = curve
        .steps
        .iter()
        .map_while(|s| s.between.map(|(low, high)| (s.days, low, high)))
        .collect();
    let (Some(first), Some(last)) = (sure.first(), sure.last()) else {
        return (line, String::new());
    };
    let until = curve
        .steps
        .get(sure.len())
        .map_or(end, |unsure| unsure.days);
    let side = |of: fn(&(f64, f64, f64)) -> f64| -> Vec<(f64, f64)> {
        let mut side: Vec<_> = sure.iter().map(|s| at(s.0, of(s))).collect();
        side.push(at(until, of(last)));
        side
    };
    let mut band = String::new();
    stairs(&mut band, &side(|s| s.2));
    // Back along the low side: its corners turned round, each level held towards the left.
    let low = side(|s| s.1);
    for pair in low.windows(2).rev() {
        let _ = write!(
            band,
            "L{:.1} {:.1}L{:.1} {:.1}",
            pair[1].0, pair[0].1, pair[0].0, pair[0].1
        );
    }
    let (x, _) = at(first.0, 1.0);
    let _ = write!(band, "L{x:.1} {:.1}Z", at(0.0, first.2).1);
    (line, band)
}

impl App {
    /// The days of a piece in words: "59 days".
    fn dried_well_days(&self, days: f64) -> String {
        #[allow(clippy::cast_possible_truncation)] // whole days, some thousands
        let n = days.round() as i64;
        self.words().with("date-days", &[("n", n.into())])
    }

    fn curve_drawn(&self, curve: &Survival) -> CurveView {
        let (line, band) = paths(curve);
        let words = self.words();
        let per_cent = curve.pieces >= PER_CENT_FROM;
        let side = |at: f64, part: f64, id: &str| TickView {
            at,
            text: if per_cent {
                self.numbers().percent(part * 100.0).text()
            } else {
                words.text(id)
            },
        };
        let step = tick_days(curve.seen_days);
        let x_ticks = (0..=5_u32)
            .map(|n| n * step)
            .filter(|day| f64::from(*day) <= curve.seen_days)
            .map(|day| TickView {
                at: f64::from(day) / curve.seen_days.max(1.0),
                // The first says what is counted.
                text: match day {
                    0 => words.with("dried-well-tick-day", &[("day", day.into())]),
                    _ => day.to_string(),
                },
            });
        CurveView {
            line,
            band,
            y_ticks: vec![
                side(0.0, 1.0, "dried-well-all"),
                side(0.5, 0.5, "dried-well-half"),
                side(1.0, 0.0, "dried-well-none"),
            ],
            x_ticks: x_ticks.collect(),
            label: words.with(
                "dried-well-curve-label",
                &[
                    ("n", curve.pieces.into()),
                    ("lost", curve.lost.into()),
                    ("days", self.dried_well_days(curve.seen_days).into()),
                ],
            ),
        }
    }

    pub(super) fn dried_well_curve(&self, fared: &[Fared<'_>]) -> Curve {
        let words = self.words();
        let nothing = |note| Curve {
            view: None,
            note,
            rows: Vec::new(),
        };
        let Some(curve) = survival(&seen(fared), LEVEL) else {
            return nothing(String::new());
        };
        if curve.lost == 0 {
            return nothing(words.with("dried-well-none-lost", &[("n", curve.pieces.into())]));
        }
        let rows = curve.steps.iter().map(|step| {
            #[allow(clippy::cast_possible_truncation)] // whole days, some thousands
            let day = words.with("dried-well-after", &[("day", (step.days as i64).into())]);
            let lost = words.with(
                "dried-well-lost-then",
                &[("lost", step.lost.into()), ("risk", step.at_risk.into())],
            );
            let value = if curve.pieces >= PER_CENT_FROM {
                let whole = self.numbers().percent(step.whole * 100.0).text();
                words.with(
                    "dried-well-whole-then",
                    &[("lost", lost.into()), ("whole", whole.into())],
                )
            } else {
                lost
            };
            RowView::plain(format!("step-{}", step.days), day, value)
        });
        let rows = rows.collect();
        if curve.pieces < ENOUGH {
            return Curve {
                rows,
                ..nothing(words.text("dried-well-no-curve"))
            };
        }
        Curve {
            view: Some(self.curve_drawn(&curve)),
            note: words.with("dried-well-curve-note", &[("n", curve.pieces.into())]),
            rows,
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_staircase_holds_its_level_and_the_band_goes_round_it() {
        let all = [(10.0, true), (10.0, false), (20.0, true), (40.0, false)];
        let all = all.map(|(days, lost)| Seen { days, lost });
        let curve = survival(&all, LEVEL).unwrap();
        let (line, band) = paths(&curve);
        assert_eq!(
            line,
            "M0.0 0.0L250.0 0.0L250.0 250.0L500.0 250.0L500.0 625.0L1000.0 625.0L1000.0 625.0"
        );
        let (start, end) = (band.find('M').unwrap(), band.find('Z').unwrap());
        assert_eq!((start, end), (0, band.len() - 1));
        assert!(band.starts_with("M250.0 "));
    }

    #[test]
    fn where_none_is_left_the_band_ends_and_marks_stay_few() {
        let all = [5.0, 9.0].map(|days| Seen { days, lost: true });
        let (line, band) = paths(&survival(&all, LEVEL).unwrap());
        assert!(line.ends_with("1000.0 1000.0"), "{line}");
        assert!(!band.contains("1000.0 1000.0"), "{band}");
        let gone = [Seen {
            days: 3.0,
            lost: true,
        }];
        assert_eq!(paths(&survival(&gone, LEVEL).unwrap()).1, "");
        for most in [1.0, 30.0, 71.0, 400.0, 3000.0, 17_000.0] {
            assert!(most / f64::from(tick_days(most)) <= 5.0, "{most}");
        }
    }
}
