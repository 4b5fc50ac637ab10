//! Given: a plan's figures for the sums: what was entered, else what is usual, with the figures of the wood and the house.

use evenwall_piece::shop::Jaws;
use evenwall_piece::vocabulary::{Form, Pith, Room};
use evenwall_wood::rough_wall::{Wanted, practice_finish_mm, practice_rough_mm};
use evenwall_wood::shrinkage::shrinkage;
use evenwall_wood::spigot::USUAL_JAWS_MM;

use crate::app::App;
use crate::device::LengthChoice;
use crate::numbers::Quantity;
use crate::sums::{ALONG, WoodFigures, grain};

use super::PlanField;
use super::draft::{Draft, Home};
use super::reckon::Given;

/// A bar where none is said, mm. Common practice, no source.
const USUAL_BAR_MM: f64 = 16.0;

impl App {
    /// The moisture it settles at where it will live, fraction.
    pub(super) fn plan_moisture(&self) -> f64 {
        let draft = self.plan_draft();
        match draft.home() {
            Home::Own => draft.mm(PlanField::Moisture).map(|pct| pct / 100.0),
            Home::Shop => self.settles_in(Room::Shop),
            Home::House => None,
        }
        .unwrap_or_else(|| self.settles_at_home())
    }

    pub(super) fn plan_wood_figures(&self) -> WoodFigures {
        self.wood_figures(self.plan_draft().wood())
    }

    /// The jaws of the shop that the plan is for: those chosen, or the only ones there are; none where a circle was entered.
    pub(super) fn plan_jaws(&self) -> Option<&Jaws> {
        let draft = self.plan_draft();
        if draft.said(PlanField::Jaws).is_some() {
            return None;
        }
        let named = draft.chosen("jaws");
        match (named, self.shop().jaws.as_slice()) {
            (None, [only]) => Some(only),
            (None, _) => None,
            (Some(name), all) => all.iter().find(|j| j.name == name),
        }
    }

    /// A size as it is now: as entered, else as usual.
    pub(super) fn plan_now(&self, field: PlanField) -> f64 {
        let draft = self.plan_draft();
        if let Some(mm) = draft.mm(field) {
            return mm;
        }
        let diameter = || self.plan_now(PlanField::Diameter);
        match field {
            PlanField::Diameter => self.plan_usual_size().0,
            PlanField::Height => {
                let share = match draft.form() {
                    Form::Vessel => 1.1,
                    Form::HollowForm => 0.75,
                    Form::Bowl => 0.45,
                };
                let step = self.numbers().step(Quantity::Height);
                (diameter() * share / step).round() * step
            }
            PlanField::WallFinish => practice_finish_mm(grain(draft.grain()), diameter()),
            PlanField::Log | PlanField::PithDistance => self.plan_begin(field),
            PlanField::Jaws => self.plan_jaws().map_or(USUAL_JAWS_MM, |j| j.smallest_mm),
            PlanField::Bar => {
                let named = draft.chosen("bar");
                let bar = self
                    .shop()
                    .bars
                    .iter()
                    .find(|b| Some(b.name.as_str()) == named);
                bar.map_or(USUAL_BAR_MM, |b| b.diameter_mm)
            }
            PlanField::Moisture => self.plan_moisture() * 100.0,
        }
    }

    /// Where the steps of a size begin that nothing is assumed for: a log that holds the piece, a pith where it is said to lie.
    fn plan_begin(&self, field: PlanField) -> f64 {
        let draft = self.plan_draft();
        let diameter = self.plan_now(PlanField::Diameter);
        let round = match self.device().length {
            LengthChoice::Mm => 10.0,
            LengthChoice::InchDecimal | LengthChoice::InchFraction => 12.7,
        };
        match (field, draft.pith()) {
            (PlanField::Log, _) => ((diameter + 20.0) / round).ceil() * round,
            (_, Pith::Bore | Pith::Unknown) => 0.0,
            (_, Pith::Outside) => (0.5 * diameter / round + 1.0).floor() * round,
            (_, Pith::Wall) => {
                let wall = practice_rough_mm(grain(draft.grain()), diameter);
                0.5 * diameter - 0.5 * wall
            }
        }
    }

    /// A diameter in round figures of the unit where none is entered: 150 mm, 6 in.
    fn plan_usual_size(&self) -> (f64, LengthChoice) {
        let unit = self.device().length;
        match unit {
            LengthChoice::Mm => (150.0, unit),
            LengthChoice::InchDecimal | LengthChoice::InchFraction => (152.4, unit),
        }
    }

    /// What walls and spigots are rounded up to: a whole mm, 0.05 in, 1/16 in.
    pub(super) fn plan_up_to(&self) -> f64 {
        match self.plan_usual_size().1 {
            LengthChoice::Mm => 1.0,
            LengthChoice::InchDecimal => 0.05 * 25.4,
            LengthChoice::InchFraction => 25.4 / 16.0,
        }
    }

    /// All that the sums need.
    pub(super) fn plan_given(&self) -> Given {
        let draft: &Draft = self.plan_draft();
        let moisture = self.plan_moisture();
        let figures = self.plan_wood_figures();
        let settings = &self.shop().settings;
        Given {
            form: draft.form(),
            grain: grain(draft.grain()),
            pith: draft.pith(),
            pith_mm: draft.mm(PlanField::PithDistance),
            diameter: self.plan_now(PlanField::Diameter),
            height: self.plan_now(PlanField::Height),
            wanted: Wanted {
                finish_mm: self.plan_now(PlanField::WallFinish),
                margin_mm: settings.margin_mm,
                // The setting is what is left for remounting: twice what it is off.
                off_centre_mm: 0.5 * settings.remount_mm,
            },
            jaws: self.plan_now(PlanField::Jaws),
            jaws_open_to: self.plan_jaws().map(|j| j.largest_mm),
            cautious: figures.strains(moisture),
            usual: figures.usual_strains(moisture),
            along: shrinkage(ALONG, moisture).unwrap_or(ALONG),
            up_to: self.plan_up_to(),
        }
    }
}
