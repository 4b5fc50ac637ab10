//! Strip: stages and days below the chart, and the chart in words.

use chrono::{DateTime, Datelike, NaiveDate};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;
use evenwall_piece::weights::{Run, last_weighing};

use super::chart::{Days, local_days};
use super::view::{PhaseView, TickView};
use crate::app::App;
use crate::words::dates::month_short;

/// Over more days than these the edge says the year instead of the day.
const YEARS_FROM_DAYS: f64 = 400.0;

fn tone(stage: Stage) -> Option<u8> {
    match stage {
        Stage::Bag => Some(4),
        Stage::Air => Some(3),
        Stage::Settle => Some(2),
        Stage::Indoors => Some(1),
        _ => None,
    }
}

fn date_of(day: f64) -> NaiveDate {
    // Days of the calendar since 1970, far inside what a date holds.
    DateTime::from_timestamp((day * 86_400.0) as i64, 0)
        .map(|m| m.date_naive())
        .unwrap_or_default()
}

impl App {
    /// The drying stages inside the time shown.
    pub(super) fn phases(&self, piece: &Piece, days: Days, now: Moment) -> Vec<PhaseView> {
        let words = self.words();
        let end = days.at(local_days(now)).clamp(0.0, 1.0);
        let mut phases: Vec<PhaseView> = Vec::new();
        for (i, visit) in piece.visits.iter().enumerate() {
            let Some(tone) = tone(visit.stage) else {
                continue;
            };
            let from = days.at(local_days(visit.since)).clamp(0.0, 1.0);
            let next = piece.visits.get(i + 1);
            let ended = piece.end.as_ref().map(|(at, _)| local_days(*at));
            let to = next.map(|v| local_days(v.since)).or(ended);
            let to = to.map_or(end, |d| days.at(d).clamp(0.0, 1.0));
            if to <= from {
                continue;
            }
            let by_method = matches!(visit.stage, Stage::Bag | Stage::Air)
                && piece.method != Method::Bag
                && next.is_none();
            let text = if by_method {
                words.text(&format!("method-{}", piece.method.key()))
            } else {
                words.text(&format!("stage-{}", visit.stage.key()))
            };
            match phases.last_mut() {
                Some(last) if last.text == text && last.to >= from - 1e-9 => last.to = to,
                _ => phases.push(PhaseView {
                    from,
                    to,
                    text,
                    tone,
                }),
            }
        }
        phases
    }

    /// Three days along the time shown: its first, its middle and today.
    pub(super) fn day_ticks(&self, days: Days, now: Moment) -> Vec<TickView> {
        let long = days.to - days.from > YEARS_FROM_DAYS;
        let today = local_days(now);
        let last = if today > days.from && today <= days.to {
            today
        } else {
            days.to
        };
        let mut ticks: Vec<TickView> = Vec::new();
        for day in [days.from, (days.from + last) / 2.0, last] {
            let text = self.axis_day(date_of(day), long);
            if ticks.last().is_none_or(|t| t.text != text) {
                ticks.push(TickView {
                    at: days.at(day).clamp(0.0, 1.0),
                    text,
                });
            }
        }
        ticks
    }

    pub(crate) fn axis_day(&self, day: NaiveDate, long: bool) -> String {
        let words = self.words();
        let month = month_short(words, day.month());
        if long {
            words.with(
                "drying-axis-month",
                &[
                    ("month", month.into()),
                    ("year", day.year().to_string().into()),
                ],
            )
        } else {
            words.with(
                "drying-axis-day",
                &[("day", day.day().into()), ("month", month.into())],
            )
        }
    }

    /// What a screen reader says instead of the picture.
    pub(super) fn chart_label(&self, piece: &Piece, runs: &[Run<'_>], now: Moment) -> String {
        let (words, numbers, dates) = (self.words(), self.numbers(), self.dates(now));
        let step_g = runs.last().map_or(1.0, |r| r.step_g);
        let mut weighed = runs.iter().flat_map(|r| r.weighings.iter());
        let count = runs.iter().map(|r| r.weighings.len()).sum::<usize>();
        let Some(first) = weighed.next() else {
            return String::new();
        };
        let last = last_weighing(piece, now).unwrap_or(first);
        let weight = |g: f64| numbers.mass_by_scale(g, step_g).text();
        words.with(
            "drying-chart-label",
            &[
                ("n", count.into()),
                ("first", weight(first.net_g()).into()),
                (
                    "first-day",
                    dates.day_and_month(first.at.date_naive()).into(),
                ),
                ("last", weight(last.net_g()).into()),
                ("last-day", dates.day_and_month(last.at.date_naive()).into()),
            ],
        )
    }
}
