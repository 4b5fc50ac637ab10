//! Verdict: whether a weight stays put once the room's own changes are taken out, why, and what would decide it.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_wood::staying::{Because, Staying, Verdict};

use super::ahead_view::VerdictView;
use crate::app::App;
use crate::numbers::Quantity;

impl App {
    /// The verdict where the air of its room is kept; `None` elsewhere: the plain rule of the trade stands alone.
    pub(super) fn verdict_view(&self, piece: &Piece, now: Moment) -> Option<VerdictView> {
        let judged = self.judged_weights(piece, now).in_its_air?;
        let said = &judged.staying;
        let words = self.words();
        let key = match said.verdict {
            Verdict::Stable => "stable",
            Verdict::Losing => "losing",
            Verdict::Gaining => "gaining",
            Verdict::Undecided => "undecided",
        };
        let mut why = Vec::new();
        match (said.verdict, &said.trend) {
            (Verdict::Losing | Verdict::Gaining, Some(trend)) => {
                let share = 100.0 * trend.a_week().0.abs();
                why.push(words.with(
                    "drying-verdict-rate",
                    &[("share", self.tenths(share).into())],
                ));
            }
            (Verdict::Stable, _) => why.push(words.text("drying-verdict-within")),
            _ => why.push(self.undecided_text(said)),
        }
        why.extend(self.would_decide_text(said, now));
        if judged.left_out > 0 {
            why.push(words.with("drying-verdict-left-out", &[("n", judged.left_out.into())]));
        }
        Some(VerdictView {
            text: words.text(&format!("drying-verdict-{key}")),
            why: why.join(" "),
            stable: said.verdict == Verdict::Stable,
        })
    }

    fn undecided_text(&self, said: &Staying) -> String {
        self.words().text(match said.because {
            Because::TooFewWeighings => "drying-verdict-few",
            Because::TooShort => "drying-verdict-short",
            Because::NearTheLimit => "drying-verdict-near",
            Because::LastWeeksDiffer => "drying-verdict-differ",
            Because::TooWide | Because::WithinTheLimit | Because::BeyondTheLimit => {
                "drying-verdict-wide"
            }
        })
    }

    fn would_decide_text(&self, said: &Staying, now: Moment) -> Option<String> {
        let would = said.would_decide?;
        let words = self.words();
        if let Some(step) = would.finer_step_g {
            let step = self.numbers().quantity(Quantity::ScaleStep, step).text();
            return Some(words.with("drying-verdict-finer", &[("step", step.into())]));
        }
        let days = would.more_days?;
        let time = self.dates(now).length(days.into());
        Some(words.with("drying-verdict-more", &[("time", time.into())]))
    }
}
