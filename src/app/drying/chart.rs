//! Chart: weight against time as paths and fractions; the curve stops where weights are not compared.

use std::fmt::Write as _;

use evenwall_piece::ids::EntryId;
use evenwall_piece::piece::{Moment, Piece, Weighing};
use evenwall_piece::stage::Stage;
use evenwall_piece::weights::{Began, Run, last_weighing, question, runs};

use super::axis::{WeightAxis, moisture_marks, tick_text};
use super::span::{Measured, Span, whole};
use super::view::{ChartView, DotView, OptionView, TickView};
use crate::app::App;
use crate::numbers::MassUnit;

/// A moment as days of the local calendar, with the time of day as their fraction.
pub(crate) fn local_days(at: Moment) -> f64 {
    at.naive_local().and_utc().timestamp() as f64 / 86_400.0 // seconds since 1970 are exact in a double
}

/// The time that a chart shows, in local days.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Days {
    pub from: f64,
    pub to: f64,
}

impl Days {
    /// Where a day lies, 0 left to 1 right; beyond for days that are not shown.
    pub fn at(self, day: f64) -> f64 {
        (day - self.from) / (self.to - self.from)
    }
}

/// A weighing on the chart.
pub(super) struct Plotted {
    pub entry: EntryId,
    pub x: f64,
    pub y: f64,
}

/// A chart, and which weighing stands where.
pub(super) struct Chart {
    pub view: ChartView,
    pub plotted: Vec<Plotted>,
}

/// The points of a run inside the time shown; the curve is cut at the left edge. The flag tells weighings from the cut.
fn inside(run: &Run<'_>, days: Days) -> Vec<(f64, f64, Option<usize>)> {
    let all: Vec<(f64, f64)> = run
        .weighings
        .iter()
        .map(|w| (local_days(w.at), w.net_g()))
        .collect();
    let first = all.partition_point(|(d, _)| *d < days.from);
    let mut points = Vec::with_capacity(all.len() - first + 1);
    if let (Some(before), Some(after)) = (first.checked_sub(1).map(|i| all[i]), all.get(first))
        && after.0 > before.0
    {
        let share = (days.from - before.0) / (after.0 - before.0);
        points.push((days.from, before.1 + share * (after.1 - before.1), None));
    }
    points.extend((first..all.len()).map(|i| (all[i].0, all[i].1, Some(i))));
    points
}

impl App {
    /// The time that the chart shows.
    fn shown_days(&self, piece: &Piece, weighed: &[&Weighing], now: Moment) -> Option<Days> {
        let all = self.all_days(piece, weighed, now)?;
        let state = &self.states.drying;
        if let Some(window) = state.window {
            return Some(window.zoomed(1.0, 0.5, all));
        }
        let past = whole(piece, weighed, now)?;
        Some(match state.span.days() {
            // Room at the right for what is foreseen, or at least for the last dot and the line of today.
            Some(span) if past.to - past.from > span => Days {
                from: past.to - span,
                to: all.to.min(past.to + 0.5 * span),
            },
            _ => all,
        })
    }

    /// The whole time, with what is foreseen.
    pub(super) fn all_days(
        &self,
        piece: &Piece,
        weighed: &[&Weighing],
        now: Moment,
    ) -> Option<Days> {
        let whole = whole(piece, weighed, now)?;
        let until = self
            .foresight(piece)
            .map_or(whole.to, |f| f.until(whole.from, whole.to));
        let room = 0.04 * (whole.to - whole.from);
        Some(Days {
            to: until.max(whole.to + room),
            ..whole
        })
    }

    /// Spreads the chart `by` times about the place `x`.
    pub(super) fn zoom(&mut self, id: &evenwall_piece::ids::PieceId, by: f64, x: f64, now: Moment) {
        let window = self.piece(id).and_then(|piece| {
            let runs = runs(piece, self.shop());
            let weighed: Vec<&Weighing> = runs.iter().flat_map(|r| r.weighings.clone()).collect();
            let all = self.all_days(piece, &weighed, now)?;
            Some(self.shown_days(piece, &weighed, now)?.zoomed(by, x, all))
        });
        if window.is_some() {
            self.states.drying.window = window;
            self.states.drying.picked = None;
        }
    }

    /// Weight or moisture, where the oven-dry mass is known well enough for both.
    pub(super) fn measures(&self, piece: &Piece) -> Vec<OptionView> {
        let sure = self.foresight(piece).and_then(|f| f.dry_g()).is_some();
        let all: &[Measured] = if sure { &Measured::ALL } else { &[] };
        all.iter()
            .map(|m| OptionView {
                key: m.key().into(),
                text: self.words().text(&format!("drying-measured-{}", m.key())),
                chosen: *m == self.states.drying.measured,
            })
            .collect()
    }

    /// The chart of a piece; `None` where it was never weighed.
    pub(super) fn chart(&self, piece: &Piece, now: Moment) -> Option<Chart> {
        let runs = runs(piece, self.shop());
        let weighed: Vec<&Weighing> = runs.iter().flat_map(|r| r.weighings.clone()).collect();
        let days = self.shown_days(piece, &weighed, now)?;
        let points: Vec<_> = runs.iter().map(|r| inside(r, days)).collect();
        let words = self.words();
        let label = self.chart_label(piece, &runs, now);
        let today = days.at(local_days(now)).min(1.0);
        let base = ChartView {
            looks: self.look_marks(piece, days),
            phases: self.phases(piece, days, now),
            x_ticks: self.day_ticks(days, now),
            breaks: self.break_marks(&runs, days),
            today,
            today_text: words.text("drying-today"),
            label,
            ..ChartView::default()
        };
        let weights = || points.iter().flatten().map(|p| p.1);
        let (low, high) = (
            weights().fold(f64::INFINITY, f64::min),
            weights().fold(f64::NEG_INFINITY, f64::max),
        );
        if !low.is_finite() {
            let note = words.text("drying-none-in-span");
            return Some(Chart {
                view: ChartView { note, ..base },
                plotted: Vec::new(),
            });
        }
        let numbers = self.numbers();
        let step_g = runs.last().map_or(1.0, |r| r.step_g);
        let foresight = self.foresight(piece);
        let indoors = piece.stage() == Stage::Indoors;
        let levels = foresight.as_ref().map_or(Vec::new(), |f| f.levels(indoors));
        let (low, high) = levels
            .iter()
            .fold((low, high), |(a, b), g| (a.min(*g), b.max(*g)));
        let axis = WeightAxis::over(low, high, step_g, &numbers);
        let dry_g = foresight.as_ref().and_then(|f| f.dry_g());
        let as_moisture = dry_g.filter(|_| self.states.drying.measured == Measured::Moisture);
        let last = last_weighing(piece, now).map(|w| w.entry.clone());
        let mut line = String::new();
        let (mut dots, mut plotted) = (Vec::new(), Vec::new());
        for (run, points) in runs.iter().zip(&points) {
            for (n, (day, g, weighing)) in points.iter().enumerate() {
                let (x, y) = (days.at(*day), axis.at(*g));
                let letter = if n == 0 { 'M' } else { 'L' };
                // Writing to a String cannot fail.
                let _ = write!(line, "{letter}{:.1} {:.1} ", x * 1000.0, y * 1000.0);
                let Some(w) = weighing.and_then(|i| run.weighings.get(i)) else {
                    continue;
                };
                dots.push(DotView {
                    x,
                    y,
                    kind: self.dot_kind(run, w, last.as_ref()),
                });
                plotted.push(Plotted {
                    entry: w.entry.clone(),
                    x,
                    y,
                });
            }
        }
        let tick = |g: f64, text: String| TickView {
            at: axis.at(g),
            text,
        };
        let y_ticks: Vec<TickView> = match as_moisture {
            Some(dry_g) => moisture_marks(&axis, dry_g)
                .into_iter()
                .map(|m| {
                    let percent = numbers.percent(f64::from(m)).number;
                    tick(dry_g * (1.0 + 0.01 * f64::from(m)), percent)
                })
                .collect(),
            None => axis
                .ticks_g
                .iter()
                .map(|g| tick(*g, tick_text(*g, step_g, &numbers)))
                .collect(),
        };
        let longest = y_ticks.iter().map(|t| t.text.chars().count()).max();
        let unit = match (as_moisture, numbers.units().mass) {
            (Some(_), _) => words.text("unit-percent"),
            (None, MassUnit::Gram) => words.text("unit-g"),
            (None, MassUnit::OunceAndPound) => String::new(),
        };
        Some(Chart {
            view: ChartView {
                line: line.trim_end().to_owned(),
                tick_characters: longest.unwrap_or(4).max(4),
                y_ticks,
                dots,
                unit,
                ahead: self.foresight_view(piece, days, &axis, now),
                ..base
            },
            plotted,
        })
    }

    fn dot_kind(&self, run: &Run<'_>, w: &Weighing, last: Option<&EntryId>) -> &'static str {
        if self.states.drying.picked.as_ref() == Some(&w.entry) {
            "picked"
        } else if does_not_fit(run, w) {
            "question"
        } else if last == Some(&w.entry) {
            "last"
        } else {
            ""
        }
    }

    /// The spans that are worth choosing; none where all of it is short.
    pub(super) fn spans(&self, piece: &Piece, now: Moment) -> Vec<OptionView> {
        let runs = runs(piece, self.shop());
        let weighed: Vec<&Weighing> = runs.iter().flat_map(|r| r.weighings.clone()).collect();
        let Some(whole) = whole(piece, &weighed, now) else {
            return Vec::new();
        };
        // Of one or two weighings there is no end to look at closer.
        if weighed.len() < 3 {
            return Vec::new();
        }
        let shown = |span: &Span| span.days().is_none_or(|d| whole.to - whole.from > d + 1.0);
        let spans: Vec<Span> = Span::ALL.into_iter().filter(shown).collect();
        if spans.len() < 2 {
            return Vec::new();
        }
        let words = self.words();
        spans
            .into_iter()
            .map(|s| OptionView {
                key: s.key().into(),
                text: words.text(&format!("drying-span-{}", s.key())),
                chosen: s == self.states.drying.span && self.states.drying.window.is_none(),
            })
            .collect()
    }

    fn break_marks(&self, runs: &[Run<'_>], days: Days) -> Vec<TickView> {
        runs.iter()
            .filter_map(|r| Some((local_days(r.since?), r.began)))
            .filter(|(day, _)| *day >= days.from && *day <= days.to)
            .map(|(day, began)| TickView {
                at: days.at(day),
                text: self.break_word(began),
            })
            .collect()
    }

    fn break_word(&self, began: Began) -> String {
        let words = self.words();
        match began {
            Began::First => String::new(),
            Began::NewScale => words.text("drying-break-new-scale"),
            Began::MassChanged(change) => words.text(&format!("drying-break-{}", change.key())),
        }
    }
}

/// True where a weighing is one that would have been asked about, beside the one before it in its run.
pub(super) fn does_not_fit(run: &Run<'_>, w: &Weighing) -> bool {
    let place = run.weighings.iter().position(|o| o.entry == w.entry);
    let before = place
        .and_then(|p| p.checked_sub(1))
        .map(|p| run.weighings[p]);
    before.is_some_and(|b| question((b.at, b.net_g()), (w.at, w.net_g()), run.step_g).is_some())
}
