//! Staying: "staying put 41 of 60 days", with the reason in words.

use chrono::Days;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::weights::{StayingPut, run_at, staying_put};
use evenwall_wood::scale_step::scale_fit;
use evenwall_wood::steady::{LAST_DAYS, Reason, WEIGHINGS};

use super::view::StayingView;
use crate::app::App;
use crate::numbers::Quantity;

/// Days between two weighings in Settle.
const FORTNIGHT: u32 = 14;
/// Most bars of the row of days.
const BARS: u32 = 60;

impl App {
    /// Whether the weight stays put; `None` where nothing was weighed in the present run.
    pub(super) fn staying_view(&self, piece: &Piece, now: Moment) -> Option<StayingView> {
        let run = run_at(piece, self.shop(), now);
        let last = run.weighings.last()?;
        let said = staying_put(piece, self.shop(), now);
        let (words, dates) = (self.words(), self.dates(now));
        let day = said.day.min(said.of);
        let since = last
            .at
            .date_naive()
            .checked_sub_days(Days::new(said.day.into()))
            .filter(|_| said.day > 0)
            .map(|d| words.with("drying-since", &[("day", dates.day_and_month(d).into())]));
        let count = said.of.clamp(1, BARS);
        Some(StayingView {
            title: words.with(
                "drying-staying",
                &[("n", day.into()), ("of", said.of.into())],
            ),
            since: since.unwrap_or_default(),
            done: (day * count).checked_div(said.of).unwrap_or(0),
            count,
            reason: self.staying_reason(&said, last.net_g(), run.step_g),
            steady: said.steady,
        })
    }

    fn staying_reason(&self, said: &StayingPut, last_g: f64, step_g: f64) -> String {
        let words = self.words();
        let numbers = self.numbers();
        let weight = |g: f64| numbers.mass_by_scale(g, step_g).text();
        let left = said.of.saturating_sub(said.day);
        match said.reason {
            Reason::NotWeighedTwice => words.text("drying-reason-once"),
            Reason::StillFalling => {
                let weeks = (LAST_DAYS / 7.0).round().to_string();
                words.with("drying-reason-falling", &[("n", weeks.into())])
            }
            Reason::Rose => words.with("drying-reason-rose", &[("n", left.into())]),
            Reason::NotLongEnough => {
                let band = (2.0 * step_g).max(evenwall_wood::steady::BAND * last_g);
                words.with(
                    "drying-reason-not-yet",
                    &[("band", weight(band).into()), ("n", left.into())],
                )
            }
            Reason::TooFewWeighings => words.with(
                "drying-reason-few",
                &[("n", said.weighings.into()), ("of", WEIGHINGS.into())],
            ),
            Reason::Steady => words.text("drying-reason-steady"),
        }
    }

    /// A finer scale is suggested; empty otherwise.
    pub(super) fn coarse_text(&self, piece: &Piece, now: Moment) -> String {
        let run = run_at(piece, self.shop(), now);
        let Some(last_g) = run.weighings.last().map(|w| w.net_g()) else {
            return String::new();
        };
        let fit = scale_fit(last_g, run.step_g, FORTNIGHT);
        if !fit.too_coarse {
            return String::new();
        }
        let numbers = self.numbers();
        let step = |g: f64| numbers.quantity(Quantity::ScaleStep, g).text();
        let days = fit.shortest_days.map(|d| self.dates(now).length(d.into()));
        let weight = numbers.mass_by_scale(last_g, run.step_g).text();
        let mut args = vec![("step", step(run.step_g).into()), ("weight", weight.into())];
        let id = match (days, fit.step_needed_g) {
            (Some(days), Some(finer)) => {
                args.extend([("time", days.into()), ("finer", step(finer).into())]);
                "drying-coarse"
            }
            _ => "drying-coarse-hopeless",
        };
        self.words().with(id, &args)
    }
}
