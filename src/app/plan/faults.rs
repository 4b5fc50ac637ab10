//! Faults: what is impossible says so at its field, in a sentence; what rests on it is hidden.

use evenwall_piece::vocabulary::Pith;

use crate::app::App;

use super::PlanField;
use super::reckon::Fault;
use super::results::{Results, Speed};

impl Fault {
    /// The field that is the culprit.
    fn field(&self) -> PlanField {
        match self {
            Self::NoHollow(..) => PlanField::WallFinish,
            Self::NoDepth(_) => PlanField::Height,
            Self::PithElsewhere(_) => PlanField::PithDistance,
            Self::PastTheJaws(_) => PlanField::Jaws,
        }
    }
}

impl App {
    /// What is wrong with a field; empty where nothing is.
    pub(super) fn plan_fault(&self, field: PlanField, results: &Results) -> String {
        if field == PlanField::Log && results.speed == Speed::LogSmall {
            let across = self.numbers().diameter(results.given.diameter).text();
            return self
                .words()
                .with("plan-fault-log", &[("diameter", across.into())]);
        }
        [
            results.wall.as_ref().err(),
            results.spigot.as_ref().err(),
            results.depth.as_ref().and_then(|d| d.as_ref().err()),
        ]
        .into_iter()
        .flatten()
        .find(|fault| fault.field() == field)
        .map(|fault| self.plan_sentence(fault, results))
        .unwrap_or_default()
    }

    /// A fault in a sentence.
    pub(super) fn plan_sentence(&self, fault: &Fault, results: &Results) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let size = |mm: f64| numbers.diameter(mm).text();
        match *fault {
            Fault::NoHollow(wall, radius) => words.with(
                "plan-fault-hollow",
                &[
                    ("wall", numbers.wall(wall).short().text().into()),
                    (
                        "radius",
                        numbers.diameter_fine(radius).short().text().into(),
                    ),
                ],
            ),
            Fault::NoDepth(floor) => words.with(
                "plan-fault-depth",
                &[("floor", numbers.wall(floor).short().text().into())],
            ),
            Fault::PithElsewhere(by) => match results.given.pith {
                Pith::Outside => words.with("plan-fault-pith-outside", &[("by", size(by).into())]),
                Pith::Bore | Pith::Unknown => {
                    words.with("plan-fault-pith-bore", &[("by", size(by).into())])
                }
                Pith::Wall => {
                    let outside = size(0.5 * results.given.diameter);
                    words.with(
                        "plan-fault-pith-wall",
                        &[("from", size(by).into()), ("to", outside.into())],
                    )
                }
            },
            Fault::PastTheJaws(open) => {
                words.with("plan-fault-jaws", &[("open", size(open).into())])
            }
        }
    }
}
