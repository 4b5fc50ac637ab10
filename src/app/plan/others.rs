//! Others: what another place of the pith, or another size, would change. Each line is reckoned.

use evenwall_piece::vocabulary::Pith;
use evenwall_wood::rough_wall::{Grain, practice_finish_mm};

use crate::app::App;
use crate::device::LengthChoice;

use super::PlanField;
use super::reckon::{Given, Oval};
use super::results::Results;

impl App {
    /// Two or three lines: the pith elsewhere, the piece larger, the piece smaller.
    pub(super) fn plan_others(&self, results: &Results) -> Vec<String> {
        let given = &results.given;
        let mut lines: Vec<Option<String>> = Vec::new();
        if given.grain == Grain::End {
            let (pith, id) = match given.pith {
                Pith::Bore => (Pith::Outside, "plan-other-outside"),
                Pith::Outside | Pith::Wall | Pith::Unknown => (Pith::Bore, "plan-other-bore"),
            };
            let other = Given {
                pith,
                pith_mm: None,
                ..given.clone()
            };
            lines.push(self.plan_other(&self.words().text(id), &other));
        }
        let step = match self.device().length {
            LengthChoice::Mm => 50.0,
            LengthChoice::InchDecimal | LengthChoice::InchFraction => 50.8,
        };
        for step in [step, -step] {
            let diameter = given.diameter + step;
            if PlanField::Diameter.quantity().range().allows(diameter) {
                let across = self.numbers().diameter(diameter).text();
                let what = self
                    .words()
                    .with("plan-other-size", &[("diameter", across.into())]);
                lines.push(self.plan_other(&what, &self.plan_resized(given, diameter)));
            }
        }
        lines.into_iter().flatten().collect()
    }

    /// The same plan at another diameter; the finish wall goes with it where it was not entered.
    fn plan_resized(&self, given: &Given, diameter: f64) -> Given {
        let mut other = given.clone();
        other.diameter = diameter;
        other.height = given.height * diameter / given.diameter;
        // How far off the pith lies was said of the size planned.
        other.pith_mm = None;
        if self.plan_draft().said(PlanField::WallFinish).is_none() {
            other.wanted.finish_mm = practice_finish_mm(given.grain, diameter);
        }
        other
    }

    fn plan_other(&self, what: &str, given: &Given) -> Option<String> {
        let words = self.words();
        let wall = given.wall().ok()?;
        let shape = given.shape(&wall);
        let leave = self.plan_cut(wall.advised).text();
        let sum = self.plan_fine(wall.sum.total_mm()).text();
        let oval = match given.oval(&wall, shape.as_ref()) {
            Oval::Split => words.text("plan-oval-split"),
            Oval::UpTo(high) | Oval::Rounder(high) => words.with(
                "plan-other-up-to",
                &[("oval", self.plan_across(high).text().into())],
            ),
            Oval::About(low, high) => {
                let range = self
                    .numbers()
                    .range(&self.plan_across(low), &self.plan_across(high));
                words.with("plan-other-about", &[("oval", range.text().into())])
            }
        };
        Some(words.with(
            "plan-other",
            &[
                ("what", what.into()),
                ("leave", leave.into()),
                ("sum", sum.into()),
                ("oval", oval.into()),
            ],
        ))
    }
}
