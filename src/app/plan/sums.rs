//! Sums: what a result is made of, one tap away, in words.

use evenwall_wood::rough_wall::practice_floor_mm;

use crate::app::App;

use super::PlanSheet;
use super::results::{Results, Speed};
use super::road::{weeks, whole};
use super::rounding::parts_that_add_up;

/// A sum in words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SumView {
    /// Its title.
    pub title: String,
    /// The sum in one line: "5 to finish + 1.6 for the oval + ... = 9.4 mm".
    pub line: String,
    /// Its parts: what, and how much.
    pub rows: Vec<(String, String)>,
    /// What it rests on and what it does not say, one paragraph each.
    pub text: Vec<String>,
    /// Where it comes from.
    pub source: String,
    /// The word for closing.
    pub close: String,
}

impl App {
    pub(super) fn plan_sum_view(&self, results: &Results) -> Option<SumView> {
        let Some(PlanSheet::Sum(key)) = &self.states.plan.sheet else {
            return None;
        };
        let words = self.words();
        let mut view = SumView {
            title: words.text(&format!("plan-result-{key}")),
            close: words.text("action-close"),
            source: words.text("plan-practice-source"),
            ..SumView::default()
        };
        match key.as_str() {
            "wall" => self.plan_wall_sum(results, &mut view),
            "floor" => self.plan_floor_sum(results, &mut view),
            "oval" => self.plan_oval_sum(results, &mut view),
            "spigot" => self.plan_spigot_sum(results, &mut view),
            "depth" => self.plan_depth_sum(results, &mut view),
            "speed" => self.plan_speed_sum(results, &mut view),
            "road" => self.plan_road_sum(results, &mut view),
            "bars" => self.plan_bars_sum(results, &mut view),
            "tenth" => {
                view.line = self.plan_tenth(results)?;
                view.text = vec![words.text("plan-tenth-why")];
            }
            "tension" => {
                view.line = self.plan_tension(results)?;
                view.text = vec![words.text("plan-tension-why")];
                view.source = words.text("plan-tension-source");
            }
            "rim" => {
                view.line = self.plan_rim(results)?;
                view.text = vec![words.text("plan-rim-why"), self.plan_basis(results)];
                view.source = words.text("plan-shrinkage-source");
            }
            _ => return None,
        }
        Some(view)
    }

    /// Whose figures these are, and what it is dried to.
    fn plan_basis(&self, results: &Results) -> String {
        let dried = self.numbers().percent(100.0 * self.plan_moisture()).text();
        let dried = self
            .words()
            .with("plan-dried-to", &[("moisture", dried.into())]);
        format!("{dried} {}", results.figures.whose)
    }

    fn plan_wall_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        let wall = match &results.wall {
            Ok(wall) => wall,
            Err(fault) => {
                view.line = self.plan_sentence(fault, results);
                return;
            }
        };
        let sum = wall.sum;
        let step = self.numbers().step(crate::numbers::Quantity::Allowance);
        let ([finish, oval, hand, shrinks], total) = parts_that_add_up(
            [sum.finish_mm, sum.oval_mm, sum.in_hand_mm, sum.shrinks_mm],
            step,
        );
        let bare = |mm: f64| self.plan_fine(mm).number;
        view.line = words.with(
            "plan-wall-sum",
            &[
                ("finish", bare(finish).into()),
                ("oval", bare(oval).into()),
                ("hand", bare(hand).into()),
                ("shrinks", bare(shrinks).into()),
                ("total", self.plan_fine(total).text().into()),
            ],
        );
        let row = |id: &str, mm: f64| (words.text(id), self.plan_fine(mm).text());
        view.rows = vec![
            row("plan-part-finish", finish),
            row("plan-part-oval", oval),
            row("plan-part-hand", hand),
            row("plan-part-shrinks", shrinks),
            row("plan-part-sum", total),
            (
                words.text("plan-part-practice"),
                self.plan_cut(wall.practice).text(),
            ),
            (
                words.text("plan-part-leave"),
                self.plan_cut(wall.advised).text(),
            ),
        ];
        let settings = &self.shop().settings;
        let in_hand = words.with(
            "plan-hand-why",
            &[
                ("margin", self.plan_fine(settings.margin_mm).text().into()),
                ("remount", self.plan_fine(settings.remount_mm).text().into()),
            ],
        );
        view.text = vec![words.text("plan-wall-why"), in_hand];
        if results.shape.is_none() {
            view.text.insert(0, words.text("plan-wall-split"));
        }
        view.text.push(self.plan_basis(results));
        view.source = words.text("plan-wall-source");
    }

    fn plan_floor_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        if let (Some(floor), Ok(wall)) = (results.floor, &results.wall) {
            let more = practice_floor_mm(wall.advised) - wall.advised;
            view.line = words.with(
                "plan-floor-sum",
                &[
                    ("wall", self.plan_cut(wall.advised).number.into()),
                    ("more", self.plan_cut(more).number.into()),
                    ("floor", self.plan_cut(floor).text().into()),
                ],
            );
            view.text = vec![words.text("plan-floor-why")];
        } else {
            view.line = words.text("plan-none-wall");
        }
    }

    fn plan_oval_sum(&self, results: &Results, view: &mut SumView) {
        use super::reckon::Oval;
        let words = self.words();
        view.source = words.text("plan-shrinkage-source");
        let strains = results.given.usual;
        let percent = |strain: f64| {
            let tenths = (1000.0 * strain).round() / 10.0;
            words.with(
                "plan-percent",
                &[("value", self.plan_decimal(tenths).into())],
            )
        };
        view.rows = vec![
            (words.text("plan-oval-across"), percent(strains.radial)),
            (words.text("plan-oval-along"), percent(strains.tangential)),
        ];
        let id = match results.oval {
            None => {
                view.line = words.text("plan-none-wall");
                return;
            }
            Some(Oval::Split) => "plan-oval-why-split",
            Some(Oval::UpTo(_)) => "plan-oval-why-unsaid",
            Some(Oval::Rounder(_)) => "plan-oval-why-rounder",
            Some(Oval::About(..)) if results.given.rim().is_some() => "plan-oval-why-side",
            Some(Oval::About(..)) => "plan-oval-why",
        };
        view.line = words.text(id);
        view.text = vec![words.text("plan-oval-honest"), self.plan_basis(results)];
    }

    /// A plain figure with the decimal sign of the language.
    fn plan_decimal(&self, value: f64) -> String {
        let plain = format!("{value:.1}");
        match self.words().language().decimal_sign() {
            crate::words::DecimalSign::Point => plain,
            crate::words::DecimalSign::Comma => plain.replace('.', ","),
        }
    }

    fn plan_spigot_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        let spigot = match &results.spigot {
            Ok(spigot) => spigot,
            Err(fault) => {
                view.line = self.plan_sentence(fault, results);
                return;
            }
        };
        let settings = &self.shop().settings;
        let taken = settings.remount_mm + 2.0 * evenwall_wood::spigot::USUAL_CLEAN_UP_MM;
        let shrinks = spigot.sum - results.given.jaws - taken;
        let step = self.numbers().step(crate::numbers::Quantity::Allowance);
        let ([jaws, taken, shrinks], total) =
            parts_that_add_up([results.given.jaws, taken, shrinks], step);
        view.line = words.with(
            "plan-spigot-sum",
            &[
                ("jaws", self.plan_fine(jaws).number.into()),
                ("taken", self.plan_fine(taken).number.into()),
                ("shrinks", self.plan_fine(shrinks).number.into()),
                ("total", self.plan_fine(total).text().into()),
            ],
        );
        view.rows = vec![
            (words.text("plan-part-sum"), self.plan_fine(total).text()),
            (
                words.text("plan-part-practice"),
                self.plan_cut(spigot.practice).text(),
            ),
            (
                words.text("plan-part-cut"),
                self.plan_cut(spigot.advised).text(),
            ),
        ];
        view.text = vec![
            self.plan_jaws_words(results),
            words.text("plan-spigot-why"),
            self.plan_basis(results),
        ];
        view.source = words.text("plan-wall-source");
    }

    fn plan_depth_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        match &results.depth {
            Some(Ok(depth)) => {
                view.line = words.with(
                    "plan-depth-sum",
                    &[
                        ("height", self.plan_cut(depth.height_mm).number.into()),
                        ("floor", self.plan_cut(depth.floor_mm).number.into()),
                        ("depth", self.plan_cut(depth.depth_mm()).text().into()),
                    ],
                );
                view.text = vec![words.text("plan-depth-why")];
            }
            Some(Err(fault)) => view.line = self.plan_sentence(fault, results),
            None => view.line = words.text("plan-none-wall"),
        }
    }

    fn plan_speed_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        match results.speed {
            Speed::About(rpm) => {
                let log = self.plan_now(super::PlanField::Log);
                view.line = words.with(
                    "plan-speed-sum",
                    &[
                        ("speed", self.numbers().speed(rpm).text().into()),
                        ("log", self.numbers().diameter(log).text().into()),
                    ],
                );
            }
            none => view.line = self.plan_no_speed(none),
        }
        view.text = vec![words.text("plan-speed-why"), words.text("plan-speed-defer")];
    }

    fn plan_road_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        let Some(road) = results.road else {
            view.line = words.text("plan-none-wall");
            return;
        };
        let text = |(low, high): (u32, u32)| {
            if low == high {
                words.with("date-weeks", &[("n", low.into())])
            } else {
                words.with(
                    "plan-weeks-range",
                    &[
                        ("low", low.to_string().into()),
                        ("high", high.to_string().into()),
                    ],
                )
            }
        };
        view.line = words.with("plan-road-sum", &[("weeks", text(whole(&road)).into())]);
        view.rows = road
            .iter()
            .map(|s| {
                let stage = words.text(&format!("stage-{}", s.stage));
                (stage, text(weeks(s.days)))
            })
            .collect();
        view.text = vec![words.text("plan-road-why")];
    }

    fn plan_bars_sum(&self, results: &Results, view: &mut SumView) {
        let words = self.words();
        view.rows = results
            .bars
            .iter()
            .map(|bar| {
                let bend = self.plan_fine(bar.bend_mm).text();
                (
                    self.plan_bar(bar),
                    words.with("plan-bar-bends", &[("bend", bend.into())]),
                )
            })
            .collect();
        if let Some(Ok(depth)) = &results.depth {
            let reach = self.plan_cut(depth.depth_mm()).text();
            view.line = words.with("plan-bars-reach", &[("reach", reach.into())]);
        }
        view.text = vec![words.text("plan-bars-why")];
    }
}
