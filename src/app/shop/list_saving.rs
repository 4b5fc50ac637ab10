//! List saving: filled-in jaws, bars and woods become facts, or sentences below their fields.

use evenwall_piece::shop::{Bar, Jaws, OwnWood, ShopFact};

use crate::app::App;
use crate::numbers::Quantity;

use super::faults::{Faults, Outcome};
use super::form::Draft;

impl App {
    pub(super) fn jaws_facts(&mut self, id: Option<String>, draft: &Draft) -> Outcome {
        let mut faults = Faults::default();
        let name = faults.take("name", self.read_name(draft.typed("name")));
        let old = self.shop().jaws.iter().find(|j| Some(&j.id) == id.as_ref());
        let (old_smallest, old_largest) = (old.map(|j| j.smallest_mm), old.map(|j| j.largest_mm));
        let mut circle = |key, old| {
            let read = self.read_again(Quantity::JawCircle, draft.typed(key), old);
            faults.take(key, read)
        };
        let smallest = circle("smallest", old_smallest);
        let largest = circle("largest", old_largest);
        let shown = |mm| self.numbers().quantity(Quantity::JawCircle, mm).text();
        if let (Some(smallest), Some(largest)) = (smallest, largest)
            && smallest >= largest
        {
            let fault = self.words().with(
                "shop-jaws-swapped",
                &[
                    ("smallest", shown(smallest).into()),
                    ("largest", shown(largest).into()),
                ],
            );
            faults.add("largest", fault);
        }
        let facts = name.zip(smallest.zip(largest));
        let facts = facts.map(|(name, (smallest_mm, largest_mm))| {
            let name = if name.is_empty() {
                self.circles_in_words(smallest_mm, largest_mm)
            } else {
                name
            };
            let id = id.unwrap_or_else(|| self.new_slug(&name));
            let jaws = Jaws {
                id,
                name,
                smallest_mm,
                largest_mm,
            };
            (None, vec![ShopFact::Jaws(jaws)])
        });
        faults.or(facts)
    }

    pub(super) fn bar_facts(&mut self, id: Option<String>, draft: &Draft) -> Outcome {
        let mut faults = Faults::default();
        let name = faults.take("name", self.read_name(draft.typed("name")));
        let old = self.shop().bars.iter().find(|b| Some(&b.id) == id.as_ref());
        let old = old.map(|b| b.diameter_mm);
        let read = self.read_again(Quantity::BarDiameter, draft.typed("diameter"), old);
        let diameter = faults.take("diameter", read);
        let facts = name.zip(diameter).map(|(name, diameter_mm)| {
            let shown = self
                .numbers()
                .quantity(Quantity::BarDiameter, diameter_mm)
                .text();
            let name = if name.is_empty() {
                self.words()
                    .with("shop-bar-unnamed", &[("diameter", shown.into())])
            } else {
                name
            };
            let id = id.unwrap_or_else(|| self.new_slug(&name));
            let bar = Bar {
                id,
                name,
                diameter_mm,
            };
            (None, vec![ShopFact::Bar(bar)])
        });
        faults.or(facts)
    }

    pub(super) fn wood_facts(&mut self, id: Option<String>, draft: &Draft) -> Outcome {
        let mut faults = Faults::default();
        let name = faults.take("name", self.read_name(draft.typed("name")));
        let taken = name.as_ref().is_some_and(|name| {
            let same = |w: &OwnWood| w.name.to_lowercase() == name.to_lowercase();
            let others = self
                .shop()
                .woods
                .iter()
                .filter(|w| Some(&w.id) != id.as_ref());
            others.into_iter().any(same)
        });
        match &name {
            Some(name) if name.is_empty() => {
                faults.add("name", self.words().text("shop-wood-unnamed"));
            }
            Some(name) if taken => {
                let fault = self
                    .words()
                    .with("shop-wood-taken", &[("name", name.as_str().into())]);
                faults.add("name", fault);
            }
            _ => {}
        }
        let mut figure = |key, quantity| {
            let read = self.read_blank_or_number(quantity, draft.typed(key));
            faults.take(key, read)
        };
        let radial = figure("radial", Quantity::Shrinkage);
        let tangential = figure("tangential", Quantity::Shrinkage);
        let green = figure("green", Quantity::GreenMoisture);
        let density = faults.take("density", self.read_density(draft.typed("density")));
        if let (Some(Some(radial)), Some(Some(tangential))) = (radial, tangential)
            && radial > tangential
        {
            faults.add("tangential", self.words().text("shop-wood-swapped"));
        }
        let figures = radial.zip(tangential).zip(green.zip(density));
        let facts = name
            .zip(figures)
            .map(|(name, ((radial, tangential), (green, density)))| {
                let wood = OwnWood {
                    id: id.unwrap_or_else(|| self.new_slug(&name)),
                    name,
                    radial_pct: radial,
                    tangential_pct: tangential,
                    density_kg_m3: density,
                    green_mc_pct: green,
                    moulds_easily: draft.typed("moulds") == "true",
                };
                (None, vec![ShopFact::Wood(wood)])
            });
        faults.or(facts)
    }
}
