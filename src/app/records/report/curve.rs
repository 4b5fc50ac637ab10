//! Curve: weight over time as a drawing for paper; the line stops where weights are not compared.

use std::fmt::Write as _;

use chrono::{Days, NaiveDate};
use evenwall_piece::piece::{Moment, Piece, Weighing};
use evenwall_piece::stage::Group;
use evenwall_piece::weights::runs;
use evenwall_records::report::{Anchor, Drawing, DrawnText, Stroke};

use crate::app::App;

/// The sheet of the drawing; letters of 13 read on a phone as well as on paper.
const WIDTH: f64 = 640.0;
const HEIGHT: f64 = 260.0;
const LEFT: f64 = 66.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 34.0;
const LETTER: f64 = 13.0;

/// A round step of which three to six lie between low and high.
fn step(span: f64) -> f64 {
    let rough = (span / 4.0).max(0.1);
    let ten = 10_f64.powf(rough.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|s| s * ten)
        .find(|s| *s >= rough - 1e-9)
        .unwrap_or(10.0 * ten)
}

impl App {
    /// The drying curve; `None` where it was not weighed twice.
    pub(super) fn report_curve(&self, piece: &Piece, now: Moment) -> Option<Drawing> {
        let runs = runs(piece, self.shop());
        let points: Vec<Vec<(NaiveDate, f64)>> = runs
            .iter()
            .map(|r| {
                // What is weighed while it is trued and finished is no drying.
                let drying = |w: &&&Weighing| w.stage.group() != Group::Finishing;
                let past = r.weighings.iter().filter(|w| w.at <= now).filter(drying);
                past.map(|w| (w.at.date_naive(), w.net_g())).collect()
            })
            .collect();
        let all = || points.iter().flatten();
        if all().count() < 2 {
            return None;
        }
        let (first, last) = (all().map(|p| p.0).min()?, all().map(|p| p.0).max()?);
        let days = last.signed_duration_since(first).num_days().max(1);
        let low = all().map(|p| p.1).fold(f64::INFINITY, f64::min);
        let high = all().map(|p| p.1).fold(f64::NEG_INFINITY, f64::max);
        let room = (0.08 * (high - low)).max(0.01 * high).max(1.0);
        let (low, high) = ((low - room).max(0.0), high + room);
        let x = |day: NaiveDate| {
            let gone = day.signed_duration_since(first).num_days();
            LEFT + (WIDTH - LEFT - RIGHT) * gone as f64 / days as f64
        };
        let y = |g: f64| TOP + (HEIGHT - TOP - BOTTOM) * (high - g) / (high - low);
        let (mut grid, mut line, mut dots) = (String::new(), String::new(), String::new());
        let mut texts = Vec::new();
        let numbers = self.numbers();
        let step = step(high - low);
        let mut g = (low / step).ceil() * step;
        while g <= high {
            // Writing to a string cannot fail, here and below.
            let _ = write!(
                grid,
                "M {LEFT} {:.1} L {} {:.1} ",
                y(g),
                WIDTH - RIGHT,
                y(g)
            );
            texts.push(DrawnText {
                x: LEFT - 6.0,
                y: y(g) + 0.35 * LETTER,
                anchor: Anchor::End,
                text: numbers.mass_by_scale(g, step.min(1.0)).text(),
            });
            g += step;
        }
        let ticks = days.min(4);
        for n in 0..=ticks {
            let day = first.checked_add_days(Days::new((days * n / ticks).unsigned_abs()))?;
            let _ = write!(
                grid,
                "M {:.1} {} L {:.1} {} ",
                x(day),
                HEIGHT - BOTTOM,
                x(day),
                HEIGHT - BOTTOM + 5.0
            );
            let anchor = if n == 0 {
                Anchor::Start
            } else if n == ticks {
                Anchor::End
            } else {
                Anchor::Middle
            };
            texts.push(DrawnText {
                x: x(day),
                y: HEIGHT - BOTTOM + 20.0,
                anchor,
                text: self.report_curve_day(day),
            });
        }
        for run in &points {
            for (n, (day, g)) in run.iter().enumerate() {
                let (px, py) = (x(*day), y(*g));
                let letter = if n == 0 { 'M' } else { 'L' };
                let _ = write!(line, "{letter} {px:.1} {py:.1} ");
                let _ = write!(
                    dots,
                    "M {:.1} {py:.1} a 3 3 0 1 0 6 0 a 3 3 0 1 0 -6 0 ",
                    px - 3.0
                );
            }
        }
        let said = |g: f64| numbers.mass(g).text();
        let start = all().next().map_or(0.0, |p| p.1);
        let end = all().next_back().map_or(0.0, |p| p.1);
        let dates = self.dates(now);
        let says = self.words().with(
            "records-curve-says",
            &[
                ("from", said(start).into()),
                ("first", dates.full(first).into()),
                ("to", said(end).into()),
                ("last", dates.full(last).into()),
            ],
        );
        Some(Drawing {
            class: "curve",
            width: WIDTH,
            height: HEIGHT,
            paths: vec![
                (Stroke::Thin, grid),
                (Stroke::Curve, line),
                (Stroke::Dot, dots),
            ],
            texts,
            letter: LETTER,
            caption: says.clone(),
            says,
        })
    }

    /// "14 Mar 26".
    fn report_curve_day(&self, day: NaiveDate) -> String {
        use chrono::Datelike;
        let month = crate::words::dates::month_short(self.words(), day.month());
        self.words().with(
            "records-curve-day",
            &[
                ("day", day.day().into()),
                ("month", month.into()),
                ("year", format!("{:02}", day.year().rem_euclid(100)).into()),
            ],
        )
    }
}
