//! Cells: the results as figures, each with what opens its sum.

use evenwall_wood::rough_wall::Grain;

use crate::app::App;
use crate::numbers::Shown;

use super::reckon::Oval;
use super::results::{Results, Speed};
use super::road::whole;

/// A result.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ResultView {
    /// Its key; opens its sum.
    pub key: &'static str,
    /// What it is.
    pub label: String,
    /// The figure; a dash where there is none.
    pub value: String,
    /// Its unit.
    pub unit: String,
    /// A line below it.
    pub note: String,
}

impl App {
    /// A thickness as it is cut: whole mm, without decimals that are nought.
    pub(super) fn plan_cut(&self, mm: f64) -> Shown {
        self.numbers().wall(mm).short()
    }

    /// A reckoned thickness, to a tenth of a millimetre.
    pub(super) fn plan_fine(&self, mm: f64) -> Shown {
        self.numbers().length_fine(mm).short()
    }

    pub(super) fn plan_across(&self, mm: f64) -> Shown {
        self.numbers().diameter_fine(mm).short()
    }

    fn plan_cell(&self, key: &'static str, shown: Option<Shown>, note: String) -> ResultView {
        let shown = shown.unwrap_or_else(|| self.numbers().unknown());
        ResultView {
            key,
            label: self.words().text(&format!("plan-result-{key}")),
            value: shown.number,
            unit: shown.unit,
            note,
        }
    }

    /// The wall to leave, the answer of the page.
    pub(super) fn plan_answer(&self, results: &Results) -> ResultView {
        let words = self.words();
        match &results.wall {
            Err(_) => self.plan_cell("wall", None, words.text("plan-none-wall")),
            Ok(wall) => {
                let shown = self.plan_cut(wall.advised);
                self.plan_cell("wall", Some(shown), words.text("plan-larger"))
            }
        }
    }

    /// The sum and the practice, side by side: what, and how much.
    pub(super) fn plan_beside(&self, results: &Results) -> Vec<(String, Shown)> {
        let words = self.words();
        let Ok(wall) = &results.wall else {
            return Vec::new();
        };
        vec![
            (
                words.text("plan-part-sum"),
                self.plan_fine(wall.sum.total_mm()),
            ),
            (
                words.text("plan-part-practice"),
                self.plan_cut(wall.practice),
            ),
        ]
    }

    pub(super) fn plan_cells(&self, results: &Results) -> Vec<ResultView> {
        vec![
            self.plan_floor_cell(results),
            self.plan_oval_cell(results),
            self.plan_spigot_cell(results),
            self.plan_depth_cell(results),
            self.plan_speed_cell(results),
            self.plan_road_cell(results),
        ]
    }

    fn plan_floor_cell(&self, results: &Results) -> ResultView {
        let note = self.words().text("plan-floor-note");
        self.plan_cell("floor", results.floor.map(|mm| self.plan_cut(mm)), note)
    }

    fn plan_oval_cell(&self, results: &Results) -> ResultView {
        let words = self.words();
        let shown = |mm: f64| self.plan_across(mm);
        let up_to = |mm: f64| {
            let mut high = shown(mm);
            high.number = words.with("plan-up-to", &[("high", high.number.into())]);
            Some(high)
        };
        match results.oval {
            None => self.plan_cell("oval", None, String::new()),
            Some(Oval::Split) => self.plan_cell("oval", None, words.text("plan-oval-split")),
            Some(Oval::UpTo(high)) => {
                self.plan_cell("oval", up_to(high), words.text("plan-oval-unsaid"))
            }
            Some(Oval::Rounder(high)) => {
                self.plan_cell("oval", up_to(high), words.text("plan-oval-rounder"))
            }
            Some(Oval::About(low, high)) => {
                let range = self.numbers().range(&shown(low), &shown(high));
                let note = match results.given.grain {
                    Grain::End => String::new(),
                    Grain::Side => words.text("plan-oval-side"),
                };
                self.plan_cell("oval", Some(range), note)
            }
        }
    }

    fn plan_spigot_cell(&self, results: &Results) -> ResultView {
        let words = self.words();
        let jaws = self.plan_jaws_words(results);
        match results.spigot {
            Ok(spigot) => self.plan_cell("spigot", Some(self.plan_cut(spigot.advised)), jaws),
            Err(_) => self.plan_cell("spigot", None, words.text("plan-none-spigot")),
        }
    }

    /// Which jaws the spigot is for.
    pub(super) fn plan_jaws_words(&self, results: &Results) -> String {
        let words = self.words();
        let circle = self.plan_across(results.given.jaws).text();
        match self.plan_jaws() {
            Some(jaws) => words.with("plan-jaws-named", &[("jaws", (&jaws.name).into())]),
            None if self.plan_draft().said(super::PlanField::Jaws).is_some() => {
                words.with("plan-jaws-said", &[("circle", circle.into())])
            }
            None => words.with("plan-jaws-assumed", &[("circle", circle.into())]),
        }
    }

    fn plan_depth_cell(&self, results: &Results) -> ResultView {
        let words = self.words();
        match results.depth {
            Some(Ok(depth)) => {
                let shown = self.plan_cut(depth.depth_mm());
                self.plan_cell("depth", Some(shown), words.text("plan-depth-note"))
            }
            Some(Err(_)) | None => self.plan_cell("depth", None, String::new()),
        }
    }

    fn plan_speed_cell(&self, results: &Results) -> ResultView {
        let words = self.words();
        match results.speed {
            Speed::About(rpm) => {
                let shown = self.numbers().speed(rpm);
                self.plan_cell("speed", Some(shown), words.text("plan-speed-note"))
            }
            none => self.plan_cell("speed", None, self.plan_no_speed(none)),
        }
    }

    /// Why there is no figure for the speed; empty where there is one.
    pub(super) fn plan_no_speed(&self, speed: Speed) -> String {
        let words = self.words();
        match speed {
            Speed::About(_) => String::new(),
            Speed::LogUnsaid => words.text("plan-speed-unsaid"),
            Speed::LogSmall => words.text("plan-speed-log-small"),
            Speed::InTrue => words.text("plan-speed-true"),
            Speed::Flawed(kind) => {
                let kind = words.text(&format!("flaw-kind-{}", kind.key()));
                words.with("plan-speed-flawed", &[("flaw", kind.into())])
            }
        }
    }

    fn plan_road_cell(&self, results: &Results) -> ResultView {
        let words = self.words();
        let shown = results.road.map(|road| {
            let (low, high) = whole(&road);
            let range = words.with(
                "number-range",
                &[
                    ("low", low.to_string().into()),
                    ("high", high.to_string().into()),
                ],
            );
            Shown {
                number: range,
                unit: words.text("plan-weeks"),
            }
        });
        self.plan_cell("road", shown, words.text("plan-road-note"))
    }
}
