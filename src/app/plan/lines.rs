//! Lines: the results that are words: the tenth rule, the side in tension, the rim of side grain, the bars.

use evenwall_wood::bar::ReachBand;
use evenwall_wood::rough_wall::Grain;
use evenwall_wood::section::Tension;

use crate::app::App;

use super::ResultView;
use super::results::{BarReach, Results, Tenth};

impl App {
    fn plan_line(&self, key: &'static str, note: String) -> ResultView {
        ResultView {
            key,
            label: self.words().text(&format!("plan-result-{key}")),
            note,
            ..ResultView::default()
        }
    }

    pub(super) fn plan_lines(&self, results: &Results) -> Vec<ResultView> {
        let mut lines = Vec::new();
        if let Some(text) = self.plan_tenth(results) {
            lines.push(self.plan_line("tenth", text));
        }
        if let Some(text) = self.plan_tension(results) {
            lines.push(self.plan_line("tension", text));
        }
        if let Some(text) = self.plan_rim(results) {
            lines.push(self.plan_line("rim", text));
        }
        if !results.bars.is_empty() {
            let bars: Vec<String> = results.bars.iter().map(|b| self.plan_bar(b)).collect();
            lines.push(self.plan_line("bars", bars.join("\n")));
        }
        lines
    }

    /// The rule of a tenth of the diameter against the sum.
    pub(super) fn plan_tenth(&self, results: &Results) -> Option<String> {
        let words = self.words();
        let (tenth, says) = results.tenth?;
        let sum = results.wall.as_ref().ok()?.sum.total_mm();
        let args = [
            ("tenth", self.plan_fine(tenth).text().into()),
            ("sum", self.plan_fine(sum).text().into()),
        ];
        Some(match says {
            Tenth::TooThin => words.with("plan-tenth-thin", &args),
            Tenth::AboutRight => words.with("plan-tenth-right", &args),
            Tenth::Thicker => words.with("plan-tenth-thick", &args),
        })
    }

    /// Which side the drying leaves in tension.
    pub(super) fn plan_tension(&self, results: &Results) -> Option<String> {
        let words = self.words();
        let in_wall = results.shape.is_none();
        Some(match (results.given.grain, results.tension?) {
            (Grain::Side, _) => words.text("plan-tension-side"),
            (Grain::End, Tension::None) => words.text("plan-tension-none"),
            (Grain::End, Tension::Outside) => words.text("plan-tension-outside"),
            (Grain::End, Tension::Bore) => words.text("plan-tension-bore"),
            (Grain::End, Tension::NotSaid) if in_wall => words.text("plan-tension-wall"),
            (Grain::End, Tension::NotSaid) => self.plan_tension_unsaid(results),
        })
    }

    /// In the bore, but how far off is not said: the closed ring is in tension outside wherever it lies there.
    fn plan_tension_unsaid(&self, results: &Results) -> String {
        use evenwall_piece::vocabulary::Pith;
        let words = self.words();
        match results.given.pith {
            Pith::Bore => words.text("plan-tension-outside"),
            Pith::Wall | Pith::Outside | Pith::Unknown => words.text("plan-tension-unsaid"),
        }
    }

    /// Side grain: the dried rim along and across the grain, and how far it leaves its plane.
    pub(super) fn plan_rim(&self, results: &Results) -> Option<String> {
        results.wall.as_ref().ok()?;
        let (rim, rise) = (results.given.rim()?, results.given.rim_rise()?);
        Some(self.words().with(
            "plan-rim",
            &[
                ("along", self.plan_across(rim.along_mm).text().into()),
                ("across", self.plan_across(rim.across_mm).text().into()),
                ("rise", self.plan_across(rise).text().into()),
            ],
        ))
    }

    /// How a bar reaches to the floor: "16 mm bar: about 13 times, change it".
    pub(super) fn plan_bar(&self, reach: &BarReach) -> String {
        let words = self.words();
        let bar = self.plan_across(reach.bar_mm).text();
        let name = if reach.name.is_empty() {
            words.with("plan-bar-of", &[("bar", bar.into())])
        } else {
            reach.name.clone()
        };
        let times = format!("{:.0}", reach.times);
        let args = [("bar", name.into()), ("times", times.into())];
        match reach.band {
            ReachBand::Usual => words.with("plan-bar-usual", &args),
            ReachBand::Long => words.with("plan-bar-long", &args),
            ReachBand::ChangeIt => words.with("plan-bar-change", &args),
        }
    }
}
