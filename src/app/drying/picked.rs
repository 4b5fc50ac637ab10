//! Picked: the weighing that was touched on the chart.

use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::weights::runs;

use super::chart::does_not_fit;
use super::view::PickedView;
use crate::app::App;

/// The chart is about half as high as it is wide.
const HEIGHT_BY_WIDTH: f64 = 0.6;

impl App {
    /// Picks the weighing nearest to a touch.
    pub(super) fn pick(&mut self, id: &PieceId, x: f64, y: f64, now: Moment) {
        let nearest = self
            .piece(id)
            .and_then(|p| self.chart(p, now))
            .and_then(|c| {
                let far = |px: f64, py: f64| (px - x).hypot((py - y) * HEIGHT_BY_WIDTH);
                c.plotted
                    .into_iter()
                    .min_by(|a, b| far(a.x, a.y).total_cmp(&far(b.x, b.y)))
            });
        if let Some(nearest) = nearest {
            self.states.drying.picked = Some(nearest.entry);
        }
    }

    /// Goes to the weighing before or after the one picked, among those shown.
    pub(super) fn step_picked(&mut self, id: &PieceId, by: i32, now: Moment) {
        let Some(chart) = self.piece(id).and_then(|p| self.chart(p, now)) else {
            return;
        };
        let picked = self.states.drying.picked.as_ref();
        let place = chart.plotted.iter().position(|p| Some(&p.entry) == picked);
        let next = place.and_then(|p| p.checked_add_signed(by as isize));
        if let Some(next) = next.and_then(|n| chart.plotted.get(n)) {
            self.states.drying.picked = Some(next.entry.clone());
        }
    }

    pub(super) fn picked_view(&self, piece: &Piece, now: Moment) -> Option<PickedView> {
        let picked = self.states.drying.picked.as_ref()?;
        let chart = self.chart(piece, now)?;
        let shown = chart.plotted.iter().position(|p| p.entry == *picked)?;
        let runs = runs(piece, self.shop());
        let run = runs
            .iter()
            .find(|r| r.weighings.iter().any(|w| w.entry == *picked))?;
        let place = run.weighings.iter().position(|w| w.entry == *picked)?;
        let w = run.weighings[place];
        let (words, numbers, dates) = (self.words(), self.numbers(), self.dates(now));
        let before = place.checked_sub(1).map(|p| run.weighings[p]);
        let day = w.at.date_naive();
        let mut notes = Vec::new();
        match before {
            Some(b) => {
                let difference = self.difference(b.net_g(), w.net_g(), run.step_g);
                let days = day.signed_duration_since(b.at.date_naive()).num_days();
                notes.push(words.with(
                    "drying-picked-note",
                    &[
                        ("difference", difference.into()),
                        ("length", dates.length(days).into()),
                    ],
                ));
            }
            None => notes.push(words.text("drying-picked-first")),
        }
        if w.tare_g > 0.0 {
            let tare = numbers.mass_by_scale(w.tare_g, run.step_g).text();
            notes.push(words.with("drying-picked-tare", &[("tare", tare.into())]));
        }
        // Weights before a change are of another piece of wood.
        let present = runs.last().is_some_and(|last| last.since == run.since);
        let dry_g = self.foresight(piece).and_then(|f| f.dry_g());
        if let Some(dry_g) = dry_g.filter(|_| present) {
            let moisture = numbers.percent(100.0 * (w.net_g() / dry_g - 1.0)).text();
            notes.push(words.with("drying-picked-moisture", &[("moisture", moisture.into())]));
        }
        let question = does_not_fit(run, w);
        if question {
            notes.push(words.text("drying-picked-question"));
        }
        Some(PickedView {
            weight: numbers.mass_by_scale(w.net_g(), run.step_g).text(),
            day: words.with(
                "drying-picked-day",
                &[
                    ("day", dates.day_and_month(day).into()),
                    ("ago", dates.ago(day).into()),
                ],
            ),
            note: notes.join(" "),
            question,
            has_before: shown > 0,
            has_after: shown + 1 < chart.plotted.len(),
        })
    }
}
