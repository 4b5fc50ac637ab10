//! Foresight: what the chart shows beyond the weights: the curve ahead with its band, where it will settle, the ready range.

use std::fmt::Write as _;

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::weights::run_at;
use evenwall_wood::forecast::BandPoint;

use super::axis::WeightAxis;
use super::chart::{Days, local_days};
use super::view::{DotView, ForesightView, LevelView};
use crate::app::App;
use crate::forecasting::{Foreseen, Stretch, Weighed};

/// How sure the oven-dry mass must be before a line says where it settles, standard deviation of its logarithm.
const SURE_OF_DRY: f64 = 0.04;
/// Share of the time so far that is shown ahead at most.
const AHEAD: f64 = 0.6;
/// Dots of the curve ahead.
const DOTS: usize = 36;

/// What is foreseen of a piece as far as its chart may show it.
pub(super) struct Foresight<'a> {
    pub seen: &'a Foreseen,
    pub weighed: &'a Weighed,
    /// Days may be told: it is not too early.
    pub told: bool,
}

impl Foresight<'_> {
    /// The local day of a day of the piece's count.
    fn day(&self, day: f64) -> f64 {
        self.seen.zero + day
    }

    /// The oven-dry mass, where it is sure enough to turn weights into moisture.
    pub fn dry_g(&self) -> Option<f64> {
        let fit = &self.weighed.outlook.fit;
        (fit.dry_sd < SURE_OF_DRY).then_some(fit.dry_g)
    }

    /// The points of the curve from today on.
    fn ahead(&self) -> impl Iterator<Item = &BandPoint> {
        let today = self.seen.today.max(self.weighed.last_day);
        self.weighed.band.iter().filter(move |p| p.day >= today)
    }

    /// How far ahead the chart looks, local days: to the end of the ready range, but never more than there was so far.
    pub fn until(&self, from: f64, now: f64) -> f64 {
        if !self.told {
            return now;
        }
        let outlook = &self.weighed.outlook;
        let late = [outlook.finish, Some(outlook.here)]
            .into_iter()
            .flatten()
            .find_map(|road| road.slowest)
            .map_or(now, |r| self.day(outlook.first_day() + r.late) + 2.0);
        let most = now + (AHEAD * (now - from)).max(14.0);
        late.clamp(now, most.max(now))
    }

    /// Weights, g, that should fit on the axis.
    pub fn levels(&self, indoors: bool) -> Vec<f64> {
        let mut levels = Vec::new();
        if self.dry_g().is_some() {
            let outlook = &self.weighed.outlook;
            levels.push(outlook.fit.dry_g * (1.0 + outlook.now.settling));
            if !indoors {
                levels.push(outlook.fit.dry_g * (1.0 + self.weighed.settles_in_house));
            }
        }
        levels
    }
}

impl App {
    /// What is foreseen of a piece, where its weights say anything.
    pub(super) fn foresight(&self, piece: &Piece) -> Option<Foresight<'_>> {
        let seen = self.foreseen(&piece.id)?;
        let weighed = seen.weighed.as_ref()?;
        Some(Foresight {
            seen,
            weighed,
            told: self.days_may_be_told(seen, weighed),
        })
    }

    /// True where a range of days may be shown.
    pub(super) fn days_may_be_told(&self, seen: &Foreseen, weighed: &Weighed) -> bool {
        weighed.outlook.too_early.is_empty() && seen.weighed_lately() && weighed.odd().is_none()
    }

    /// What the chart shows beyond the weights.
    pub(super) fn foresight_view(
        &self,
        piece: &Piece,
        days: Days,
        axis: &WeightAxis,
        now: Moment,
    ) -> ForesightView {
        let mut view = ForesightView::default();
        let Some(f) = self.foresight(piece) else {
            return view;
        };
        let words = self.words();
        let indoors = piece.stage() == Stage::Indoors;
        let outlook = &f.weighed.outlook;
        let step_g = run_at(piece, self.shop(), now).step_g;
        if f.dry_g().is_some() {
            let level = |id: &str, moisture: f64| {
                let g = outlook.fit.dry_g * (1.0 + moisture);
                let numbers = self.numbers();
                LevelView {
                    at: axis.at(g),
                    text: words.with(
                        id,
                        &[
                            ("weight", numbers.mass_by_scale(g, step_g).text().into()),
                            ("moisture", numbers.percent(100.0 * moisture).text().into()),
                        ],
                    ),
                }
            };
            view.settles = Some(level("forecast-settles-line", outlook.now.settling));
            let house = f.weighed.settles_in_house;
            let apart = (outlook.now.settling - house).abs() >= 0.005;
            if !indoors && apart {
                view.in_house = Some(level("forecast-house-line", house));
            }
        }
        if !f.told {
            return view;
        }
        (view.line, view.band) = ahead_paths(&f, days, axis);
        if let Some(Stretch::Ahead(from, to)) = f.seen.stretch(&outlook.here) {
            let at = |day: chrono::NaiveDate| {
                let day = chrono::NaiveDateTime::from(day).and_utc().timestamp() as f64 / 86_400.0;
                days.at(day)
            };
            let (from, to) = (at(from), at(to) + 1.0 / (days.to - days.from));
            if from < 1.0 {
                view.ready = Some((from.clamp(0.0, 1.0), to.clamp(0.0, 1.0)));
                view.ready_text = words.text("forecast-ready-word");
            }
        }
        view
    }

    /// The looks at the bag inside the time shown.
    pub(super) fn look_marks(&self, piece: &Piece, days: Days) -> Vec<DotView> {
        piece
            .looks
            .iter()
            .map(|l| (days.at(local_days(l.at)), l))
            .filter(|(x, _)| (0.0..=1.0).contains(x))
            .map(|(x, l)| DotView {
                x,
                y: 1.0,
                kind: match l.feel {
                    _ if l.mould => "mould",
                    Some(feel) => feel.key(),
                    None => "look",
                },
            })
            .collect()
    }
}

/// The curve ahead as dots, and the outline of its band, on a field of 1000 x 1000.
fn ahead_paths(f: &Foresight<'_>, days: Days, axis: &WeightAxis) -> (String, String) {
    let points: Vec<(f64, [f64; 3])> = f
        .ahead()
        .map(|p| {
            let [low, middle, high] = p.mass_g;
            (
                days.at(f.day(p.day)),
                [axis.at(high), axis.at(middle), axis.at(low)],
            )
        })
        .filter(|(x, _)| (0.0..=1.0).contains(x))
        .collect();
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        return Default::default();
    };
    if points.len() < 2 {
        return Default::default();
    }
    let mut line = String::new();
    let count = ((last.0 - first.0) * DOTS as f64 * 1.6).clamp(3.0, DOTS as f64) as usize;
    for i in 0..=count {
        let x = first.0 + (last.0 - first.0) * i as f64 / count as f64;
        let after = points
            .partition_point(|p| p.0 < x)
            .clamp(1, points.len() - 1);
        let (a, b) = (&points[after - 1], &points[after]);
        let share = ((x - a.0) / (b.0 - a.0).max(1e-9)).clamp(0.0, 1.0);
        let y = a.1[1] + share * (b.1[1] - a.1[1]);
        // Writing to a String cannot fail.
        let _ = write!(line, "M{:.1} {:.1}h1 ", x * 1000.0, y * 1000.0);
    }
    let mut band = String::new();
    let upper = points.iter().map(|(x, y)| (x, y[0]));
    let lower = points.iter().rev().map(|(x, y)| (x, y[2]));
    for (n, (x, y)) in upper.chain(lower).enumerate() {
        let letter = if n == 0 { 'M' } else { 'L' };
        let _ = write!(band, "{letter}{:.1} {:.1} ", x * 1000.0, y * 1000.0);
    }
    (line.trim_end().to_owned(), format!("{band}Z"))
}
