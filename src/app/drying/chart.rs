//! Chart: weight against time as paths and fractions; the curve stops where weights are not compared.

use std::fmt::Write as _;

use evenwall_piece::ids::EntryId;
use evenwall_piece::piece::{Moment, Piece, Weighing};
use evenwall_piece::stage::Group;
use evenwall_piece::weights::{Began, Run, last_weighing, question, runs};

use super::axis::{WeightAxis, tick_text};
use super::view::{ChartView, DotView, OptionView, TickView};
use crate::app::App;
use crate::numbers::MassUnit;

/// How much of the time is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Span {
    /// From the first weighing or the first day of drying.
    #[default]
    All,
    /// The last 90 days.
    Days90,
    /// The last 30 days.
    Days30,
}

impl Span {
    /// All, the longest first.
    pub const ALL: [Self; 3] = [Self::All, Self::Days90, Self::Days30];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::Days90 => "90-days",
            Self::Days30 => "30-days",
        }
    }

    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|s| s.key() == key)
    }

    const fn days(self) -> Option<f64> {
        match self {
            Self::All => None,
            Self::Days90 => Some(90.0),
            Self::Days30 => Some(30.0),
        }
    }
}

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

/// The whole time from the first day of drying, or the first weighing, to now.
fn whole(piece: &Piece, weighed: &[&Weighing], now: Moment) -> Option<Days> {
    let first = weighed.first()?;
    let last = weighed.last()?;
    let drying = piece
        .visits
        .iter()
        .find(|v| v.stage.group() == Group::Drying)
        .map(|v| local_days(v.since));
    let from = drying.map_or(local_days(first.at), |d| d.min(local_days(first.at)));
    let to = local_days(now).max(local_days(last.at));
    Some(Days {
        from,
        to: to.max(from + 7.0),
    })
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
    /// The chart of a piece; `None` where it was never weighed.
    pub(super) fn chart(&self, piece: &Piece, now: Moment) -> Option<Chart> {
        let runs = runs(piece, self.shop());
        let weighed: Vec<&Weighing> = runs.iter().flat_map(|r| r.weighings.clone()).collect();
        let whole = whole(piece, &weighed, now)?;
        let mut days = match self.states.drying.span.days() {
            Some(span) if whole.to - whole.from > span => Days {
                from: whole.to - span,
                to: whole.to,
            },
            _ => whole,
        };
        // Room at the right for the last dot and the line of today.
        days.to += 0.04 * (days.to - days.from);
        let points: Vec<_> = runs.iter().map(|r| inside(r, days)).collect();
        let words = self.words();
        let label = self.chart_label(piece, &runs, now);
        let today = days.at(local_days(now)).min(1.0);
        let base = ChartView {
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
        let axis = WeightAxis::over(low, high, step_g, &numbers);
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
        let y_ticks: Vec<TickView> = axis
            .ticks_g
            .iter()
            .map(|g| TickView {
                at: axis.at(*g),
                text: tick_text(*g, step_g, &numbers),
            })
            .collect();
        let longest = y_ticks.iter().map(|t| t.text.chars().count()).max();
        let unit = match numbers.units().mass {
            MassUnit::Gram => words.text("unit-g"),
            MassUnit::OunceAndPound => String::new(),
        };
        Some(Chart {
            view: ChartView {
                line: line.trim_end().to_owned(),
                tick_characters: longest.unwrap_or(4).max(4),
                y_ticks,
                dots,
                unit,
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
                chosen: s == self.states.drying.span,
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
