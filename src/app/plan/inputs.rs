//! Inputs: what can be chosen and entered, as it is shown.

use evenwall_piece::detail::DetailField;
use evenwall_piece::vocabulary::{Grain, Pith, Room};

use crate::app::App;
use crate::details;

use super::PlanField;
use super::draft::Home;
use super::results::Results;

/// One of a few choices.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceView {
    /// Stable key.
    pub key: String,
    /// Its words.
    pub text: String,
    /// Chosen, or so where nothing is chosen.
    pub chosen: bool,
}

/// A size that is stepped.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepperView {
    /// Its key.
    pub key: &'static str,
    /// Its label.
    pub label: String,
    /// Its value.
    pub value: String,
    /// Its unit.
    pub unit: String,
    /// A line below it: that it is assumed; often empty.
    pub note: String,
    /// What is impossible about it.
    pub error: String,
    /// It can be stepped down.
    pub can_less: bool,
    /// It can be stepped up.
    pub can_more: bool,
}

/// All inputs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InputsView {
    /// Heading of what it is.
    pub what_title: String,
    /// Label and choices of the form.
    pub form: (String, Vec<ChoiceView>),
    /// Label and choices of the grain.
    pub grain: (String, Vec<ChoiceView>),
    /// Label and choices of the pith's place.
    pub pith: (String, Vec<ChoiceView>),
    /// How far off the pith lies; only where that counts.
    pub pith_distance: Option<StepperView>,
    /// Label and name of the wood.
    pub wood: (String, String),
    /// Heading of the sizes.
    pub size_title: String,
    /// Label and sizes often made.
    pub sizes: (String, Vec<ChoiceView>),
    /// Diameter, height, finish wall, log.
    pub size_fields: Vec<StepperView>,
    /// Heading of lathe and house.
    pub lathe_title: String,
    /// Label and jaws of the shop.
    pub jaws: (String, Vec<ChoiceView>),
    /// Their smallest circle.
    pub jaws_field: StepperView,
    /// Label and bars of the shop.
    pub bars: (String, Vec<ChoiceView>),
    /// The bar's diameter.
    pub bar_field: StepperView,
    /// Label and places where it may live.
    pub places: (String, Vec<ChoiceView>),
    /// What it settles at there.
    pub moisture: StepperView,
}

impl App {
    /// The label of a size.
    pub(super) fn plan_label(&self, field: PlanField) -> String {
        let words = self.words();
        match field {
            PlanField::Jaws => words.text("plan-jaws-circle"),
            PlanField::Moisture => words.text("plan-moisture"),
            PlanField::WallFinish => words.text("plan-finish-wall"),
            PlanField::Diameter
            | PlanField::Height
            | PlanField::Log
            | PlanField::Bar
            | PlanField::PithDistance => field
                .detail()
                .map_or_else(String::new, |detail| details::label(self, detail)),
        }
    }

    fn plan_stepper(&self, field: PlanField, results: &Results) -> StepperView {
        let words = self.words();
        let quantity = field.quantity();
        let said = self.plan_draft().said(field).is_some();
        let value = self.plan_now(field);
        let shown = self.numbers().quantity(quantity, value);
        let range = quantity.range();
        let unsaid = !said && matches!(field, PlanField::Log | PlanField::PithDistance);
        StepperView {
            key: field.key(),
            label: self.plan_label(field),
            value: if unsaid {
                self.numbers().unknown().number
            } else {
                shown.number
            },
            unit: shown.unit,
            note: match field {
                _ if said => String::new(),
                PlanField::Log | PlanField::PithDistance => words.text("plan-not-said"),
                PlanField::Moisture => self.plan_house_note(),
                PlanField::WallFinish => words.text("plan-as-usual"),
                PlanField::Jaws if self.plan_jaws().is_some() => String::new(),
                PlanField::Bar if self.plan_draft().chosen("bar").is_some() => String::new(),
                _ => words.text("plan-assumed"),
            },
            error: self.plan_fault(field, results),
            can_less: value > range.min && !unsaid,
            can_more: value < range.max,
        }
    }

    /// What the moisture rests on.
    fn plan_house_note(&self) -> String {
        let words = self.words();
        match self.plan_draft().home() {
            Home::Shop => words.text("plan-moisture-shop"),
            Home::House | Home::Own if self.shop().last_climate(Room::House).is_some() => {
                words.text("plan-moisture-house")
            }
            Home::House | Home::Own => words.text("plan-moisture-usual"),
        }
    }

    fn plan_group(&self, field: DetailField, now: &str) -> (String, Vec<ChoiceView>) {
        let choices = details::choices(self, field).into_iter();
        let choices = choices.map(|(key, text)| ChoiceView {
            chosen: key == now,
            key: key.to_owned(),
            text,
        });
        (details::label(self, field), choices.collect())
    }

    fn plan_places(&self) -> (String, Vec<ChoiceView>) {
        let words = self.words();
        let now = self.plan_draft().home();
        let percent = |m: f64| self.numbers().percent(100.0 * m).text();
        let mut places = vec![ChoiceView {
            key: Home::House.key().to_owned(),
            text: words.with(
                "plan-place-house",
                &[("moisture", percent(self.settles_at_home()).into())],
            ),
            chosen: now == Home::House,
        }];
        if let Some(m) = self.settles_in(Room::Shop) {
            places.push(ChoiceView {
                key: Home::Shop.key().to_owned(),
                text: words.with("plan-place-shop", &[("moisture", percent(m).into())]),
                chosen: now == Home::Shop,
            });
        }
        if now == Home::Own {
            places.push(ChoiceView {
                key: Home::Own.key().to_owned(),
                text: words.text("plan-place-own"),
                chosen: true,
            });
        }
        (words.text("plan-place"), places)
    }

    pub(super) fn plan_inputs(&self, results: &Results) -> InputsView {
        let words = self.words();
        let draft = self.plan_draft();
        let stepper = |field| self.plan_stepper(field, results);
        let listed = |name: &str, text: String, chosen: bool| ChoiceView {
            key: name.to_owned(),
            text,
            chosen,
        };
        let size_now = (
            self.plan_now(PlanField::Diameter),
            self.plan_now(PlanField::Height),
        );
        let both = draft.said(PlanField::Diameter).is_some();
        let same = |a: f64, b: f64| (a - b).abs() < 1e-6;
        let sizes = self.often_made(draft.form()).into_iter().enumerate();
        let sizes = sizes.map(|(place, (d, h))| ChoiceView {
            key: place.to_string(),
            chosen: both && same(size_now.0, d) && same(size_now.1, h),
            text: words.with(
                "new-piece-size",
                &[
                    ("diameter", self.numbers().diameter(d).number.into()),
                    ("height", self.numbers().diameter(h).number.into()),
                ],
            ),
        });
        let counts = draft.grain() == Grain::End && draft.pith() != Pith::Unknown;
        let jaws_now = self.plan_jaws().map(|j| j.name.clone());
        InputsView {
            what_title: words.text("plan-what"),
            form: self.plan_group(DetailField::Form, draft.form().key()),
            grain: self.plan_group(DetailField::Grain, draft.grain().key()),
            pith: self.plan_group(DetailField::Pith, draft.pith().key()),
            pith_distance: counts.then(|| stepper(PlanField::PithDistance)),
            wood: (
                details::label(self, DetailField::Wood),
                draft
                    .wood()
                    .map_or_else(|| words.text("answer-unknown"), |w| self.wood_name(w)),
            ),
            size_title: words.text("plan-size"),
            sizes: (words.text("new-piece-sizes"), sizes.collect()),
            size_fields: [
                PlanField::Diameter,
                PlanField::Height,
                PlanField::WallFinish,
                PlanField::Log,
            ]
            .map(stepper)
            .into(),
            lathe_title: words.text("plan-lathe"),
            jaws: (
                if self.shop().jaws.is_empty() {
                    words.text("plan-jaws-none")
                } else {
                    details::label(self, DetailField::Jaws)
                },
                self.shop()
                    .jaws
                    .iter()
                    .map(|j| listed(&j.name, j.name.clone(), jaws_now.as_ref() == Some(&j.name)))
                    .collect(),
            ),
            jaws_field: stepper(PlanField::Jaws),
            bars: (
                words.text(if self.shop().bars.is_empty() {
                    "plan-bars-none"
                } else {
                    "plan-bars"
                }),
                self.shop()
                    .bars
                    .iter()
                    .map(|b| {
                        let chosen = draft.chosen("bar") == Some(b.name.as_str());
                        listed(&b.name, b.name.clone(), chosen)
                    })
                    .collect(),
            ),
            bar_field: stepper(PlanField::Bar),
            places: self.plan_places(),
            moisture: stepper(PlanField::Moisture),
        }
    }
}
