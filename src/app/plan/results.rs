//! Results: everything that is reckoned for a plan, each hidden where what it rests on is impossible.

use evenwall_piece::glue::is_crack;
use evenwall_piece::stage::Group;
use evenwall_piece::vocabulary::{CrackAnswer, FlawKind};
use evenwall_wood::bar::{ReachBand, STEADY_CUT_N, bend_mm, reach_band};
use evenwall_wood::drill_depth::DrillDepth;
use evenwall_wood::rough_wall::practice_floor_mm;
use evenwall_wood::section::Tension;
use evenwall_wood::speed::not_above_rpm;

use crate::app::App;
use crate::sums::WoodFigures;

use super::PlanField;
use super::reckon::{Fault, Given, Oval, Shape, Spigot, Wall};
use super::road::{Stretch, road};

/// The speed not to go above.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Speed {
    /// Not above about this, turns a minute.
    About(f64),
    /// The log's diameter is not said.
    LogUnsaid,
    /// The log is said to be smaller than the piece.
    LogSmall,
    /// A crack or a bark inclusion was noted: no figure.
    Flawed(FlawKind),
    /// In True and after it no figure is given.
    InTrue,
}

/// The tenth-of-the-diameter rule against the sum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Tenth {
    TooThin,
    AboutRight,
    Thicker,
}

/// How a bar reaches to the floor.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BarReach {
    /// Its name in the shop's list; empty for the one that is entered or assumed.
    pub name: String,
    pub bar_mm: f64,
    pub band: ReachBand,
    pub times: f64,
    /// Bending at the tip under a steady cut.
    pub bend_mm: f64,
}

/// All of it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Results {
    pub given: Given,
    pub figures: WoodFigures,
    pub wall: Result<Wall, Fault>,
    pub shape: Option<Shape>,
    pub oval: Option<Oval>,
    pub tension: Option<Tension>,
    pub floor: Option<f64>,
    pub depth: Option<Result<DrillDepth, Fault>>,
    pub spigot: Result<Spigot, Fault>,
    pub speed: Speed,
    pub tenth: Option<(f64, Tenth)>,
    pub bars: Vec<BarReach>,
    pub road: Option<[Stretch; 4]>,
}

impl App {
    /// Everything that is reckoned for the plan on screen.
    pub(super) fn plan_results(&self) -> Results {
        let given = self.plan_given();
        let wall = given.wall();
        let known = wall.as_ref().ok();
        let shape = known.and_then(|w| given.shape(w));
        let floor = known.map(|w| given.floor(w));
        let depth = known.map(|w| given.depth(w));
        let reach = depth.and_then(Result::ok).map(|d| d.depth_mm());
        Results {
            oval: known.map(|w| given.oval(w, shape.as_ref())),
            tension: known.map(|w| given.tension(w)),
            tenth: known.map(|w| {
                let tenth = 0.1 * given.diameter;
                let over = tenth / w.sum.total_mm();
                let says = match over {
                    r if r < 0.95 => Tenth::TooThin,
                    r if r <= 1.25 => Tenth::AboutRight,
                    _ => Tenth::Thicker,
                };
                (tenth, says)
            }),
            bars: reach.map_or_else(Vec::new, |reach| self.plan_bars(reach)),
            road: known.map(|w| {
                // Whether it is thick is no matter of what it was rounded up to.
                road(&self.shop().settings, practice_floor_mm(w.advised))
            }),
            spigot: given.spigot(),
            speed: self.plan_speed(given.diameter),
            figures: self.plan_wood_figures(),
            wall,
            shape,
            floor,
            depth,
            given,
        }
    }

    fn plan_speed(&self, diameter: f64) -> Speed {
        if let Some(piece) = self.plan_piece() {
            if piece.stage().group() == Group::Finishing {
                return Speed::InTrue;
            }
            let speaks_against = |kind| is_crack(kind) || kind == FlawKind::BarkInclusion;
            let flaw = piece
                .flaws
                .iter()
                .find(|f| speaks_against(f.note.kind) && !f.gone());
            if let Some(flaw) = flaw {
                return Speed::Flawed(flaw.note.kind);
            }
            // Answered in True, also where the piece went back a stage since.
            if matches!(&piece.finish.cracks, Some((_, a)) if *a != CrackAnswer::None) {
                return Speed::Flawed(FlawKind::Check);
            }
        }
        match self.plan_draft().mm(PlanField::Log) {
            None => Speed::LogUnsaid,
            Some(log) if log < diameter => Speed::LogSmall,
            Some(log) => not_above_rpm(log).map_or(Speed::LogUnsaid, Speed::About),
        }
    }

    /// The bar entered or chosen first, then the others of the shop; the usual one where there is none.
    fn plan_bars(&self, reach_mm: f64) -> Vec<BarReach> {
        let draft = self.plan_draft();
        let mut bars: Vec<(String, f64)> = self
            .shop()
            .bars
            .iter()
            .map(|b| (b.name.clone(), b.diameter_mm))
            .collect();
        if let Some(chosen) = draft.chosen("bar") {
            bars.sort_by_key(|(name, _)| name != chosen);
        }
        if draft.said(PlanField::Bar).is_some() || bars.is_empty() {
            bars.insert(0, (String::new(), self.plan_now(PlanField::Bar)));
        }
        bars.into_iter()
            .filter_map(|(name, bar_mm)| {
                let (band, times) = reach_band(reach_mm, bar_mm).ok()?;
                Some(BarReach {
                    name,
                    bar_mm,
                    band,
                    times,
                    bend_mm: bend_mm(STEADY_CUT_N, reach_mm, bar_mm).ok()?,
                })
            })
            .collect()
    }
}
