//! Losing: what the weights of the present run say in figures.

use evenwall_piece::piece::{Moment, Piece, Weighing};
use evenwall_piece::weights::{Began, Run, last_weighing, run_at};

use super::view::FigureView;
use crate::app::App;

/// The present pace is taken over at least this many days. Common practice, no source.
const PACE_OVER_DAYS: i64 = 7;

fn days_apart(from: &Weighing, to: &Weighing) -> i64 {
    to.at
        .date_naive()
        .signed_duration_since(from.at.date_naive())
        .num_days()
}

/// What is lost in a week, g, at the pace of the last week or more of a run; `None` where it was not weighed twice, a
/// day apart.
fn loss_a_week(run: &Run<'_>) -> Option<f64> {
    let last = run.weighings.last()?;
    let long_before = run
        .weighings
        .iter()
        .rev()
        .find(|w| days_apart(w, last) >= PACE_OVER_DAYS);
    let before = long_before.or(run.weighings.first())?;
    let days = days_apart(before, last);
    let days = i32::try_from(days).ok().filter(|d| *d >= 1)?;
    Some((before.net_g() - last.net_g()) * 7.0 / f64::from(days))
}

impl App {
    /// "12 g less", "3 g more", "the same": a weight beside an earlier one, both net g.
    pub(crate) fn difference(&self, before_g: f64, after_g: f64, step_g: f64) -> String {
        let numbers = self.numbers();
        let words = self.words();
        let change = after_g - before_g;
        let shown = numbers.mass_by_scale(change.abs(), step_g).text();
        // Half the finest step shown is no difference at all.
        if shown == numbers.mass_by_scale(0.0, step_g).text() {
            words.text("weigh-same")
        } else if change < 0.0 {
            words.with("weigh-less", &[("weight", shown.into())])
        } else {
            words.with("weigh-more", &[("weight", shown.into())])
        }
    }

    /// The last weight with its day.
    pub(super) fn last_figure(&self, piece: &Piece, now: Moment) -> FigureView {
        let Some(last) = last_weighing(piece, now) else {
            return FigureView::default();
        };
        let (words, dates) = (self.words(), self.dates(now));
        let run = run_at(piece, self.shop(), now);
        let day = last.at.date_naive();
        let shown = self
            .numbers()
            .mass_by_scale(last.net_g(), self.shop().scale_step_at(last.at));
        let place = run.weighings.iter().position(|w| w.entry == last.entry);
        let before = place
            .and_then(|p| p.checked_sub(1))
            .map(|p| run.weighings[p]);
        let note = match (before, place) {
            (Some(b), _) => words.with(
                "drying-last-note",
                &[
                    (
                        "difference",
                        self.difference(b.net_g(), last.net_g(), run.step_g).into(),
                    ),
                    ("day", dates.day_and_month(b.at.date_naive()).into()),
                ],
            ),
            (None, Some(_)) if run.began == Began::First => words.text("drying-last-only"),
            (None, Some(_)) => words.text("drying-last-first-of-run"),
            (None, None) => words.text("drying-last-before-change"),
        };
        FigureView {
            label: words.with("drying-last-label", &[("ago", dates.ago(day).into())]),
            value: shown.number,
            unit: shown.unit,
            note,
        }
    }

    /// What was lost since the first weighing of the present run, and how fast.
    pub(super) fn loss_figures(&self, piece: &Piece, now: Moment) -> Vec<FigureView> {
        let run = run_at(piece, self.shop(), now);
        let (Some(first), Some(last)) = (run.weighings.first(), run.weighings.last()) else {
            return Vec::new();
        };
        if run.weighings.len() < 2 {
            return Vec::new();
        }
        let (words, numbers, dates) = (self.words(), self.numbers(), self.dates(now));
        let lost_g = first.net_g() - last.net_g();
        let lost = numbers.mass_by_scale(lost_g.abs(), run.step_g);
        let share = 100.0 * lost_g.abs() / first.net_g();
        let since = dates.day_and_month(first.at.date_naive());
        let mut figures = vec![FigureView {
            label: words.text(if lost_g >= 0.0 {
                "drying-lost"
            } else {
                "drying-gained"
            }),
            value: lost.number,
            unit: lost.unit,
            note: words.with(
                "drying-lost-note",
                &[("share", self.tenths(share).into()), ("day", since.into())],
            ),
        }];
        if let Some(week_g) = loss_a_week(&run) {
            let pace = numbers.mass_by_scale(week_g.abs(), run.step_g);
            let share = 100.0 * week_g.abs() / last.net_g();
            let still = pace.number == numbers.mass_by_scale(0.0, run.step_g).number;
            figures.push(FigureView {
                label: words.text(if week_g >= 0.0 || still {
                    "drying-a-week"
                } else {
                    "drying-a-week-gained"
                }),
                value: pace.number,
                unit: pace.unit,
                note: words.with(
                    "drying-a-week-note",
                    &[("share", self.tenths(share).into())],
                ),
            });
        }
        figures
    }

    /// Per cent to a tenth: weights are as fine as that, moisture is not.
    pub(super) fn tenths(&self, percent: f64) -> String {
        let plain = if percent >= 9.95 {
            format!("{percent:.0}")
        } else {
            format!("{percent:.1}")
        };
        let sign = match self.words().language().decimal_sign() {
            crate::words::DecimalSign::Point => plain,
            crate::words::DecimalSign::Comma => plain.replace('.', ","),
        };
        format!("{sign}\u{a0}{}", self.words().text("unit-percent"))
    }
}
