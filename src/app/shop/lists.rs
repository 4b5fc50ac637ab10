//! Lists: jaws, bars, scale and own woods.

use evenwall_piece::checklist::WEIGHS;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{OwnWood, ShopFact};
use evenwall_wood::woods_table::table;

use crate::app::App;
use crate::numbers::Quantity;

use super::ShopAction;
use super::form::FormOf;
use super::rules::set;
use super::view::{RowKind, RowView, SectionView, ShopView};

impl App {
    /// "50 mm to 64 mm".
    pub(super) fn circles_in_words(&self, smallest_mm: f64, largest_mm: f64) -> String {
        let numbers = self.numbers();
        let shown = |mm| numbers.quantity(Quantity::JawCircle, mm);
        numbers
            .range(&shown(smallest_mm), &shown(largest_mm))
            .text()
    }

    fn list_page(&self, title: &str, intro: String, rows: Vec<RowView>, add: RowView) -> ShopView {
        let words = self.words();
        let section = SectionView {
            key: "list",
            rows,
            ..SectionView::default()
        };
        ShopView {
            title: words.text(title),
            intro,
            sections: (!section.rows.is_empty())
                .then_some(section)
                .into_iter()
                .collect(),
            primary: Some(add),
            ..ShopView::default()
        }
    }

    fn add_row(&self, id: &str, form: FormOf) -> RowView {
        RowView::touching(
            RowKind::Add,
            "add",
            self.words().text(id),
            ShopAction::Form(form),
        )
    }

    pub(super) fn jaws_page(&self) -> ShopView {
        let rows = self.shop().jaws.iter().map(|j| {
            let form = ShopAction::Form(FormOf::Jaws(Some(j.id.clone())));
            RowView::touching(RowKind::Open, j.id.as_str(), j.name.clone(), form)
                .note(self.circles_in_words(j.smallest_mm, j.largest_mm))
        });
        let add = self.add_row("shop-jaws-new", FormOf::Jaws(None));
        self.list_page(
            "shop-jaws",
            self.words().text("shop-jaws-intro"),
            rows.collect(),
            add,
        )
    }

    pub(super) fn bars_page(&self) -> ShopView {
        let numbers = self.numbers();
        let rows = self.shop().bars.iter().map(|b| {
            let form = ShopAction::Form(FormOf::Bar(Some(b.id.clone())));
            let diameter = numbers.quantity(Quantity::BarDiameter, b.diameter_mm);
            RowView::touching(RowKind::Open, b.id.as_str(), b.name.clone(), form)
                .note(diameter.text())
        });
        let add = self.add_row("shop-bar-new", FormOf::Bar(None));
        self.list_page(
            "shop-bars",
            self.words().text("shop-bars-intro"),
            rows.collect(),
            add,
        )
    }

    /// What is known of an own wood: "shrinks 5 % and 8 %, 560 kg/m³, 75 % when green, moulds easily".
    fn wood_in_words(&self, wood: &OwnWood) -> String {
        let words = self.words();
        let numbers = self.numbers();
        let shown = |quantity, value: f64| numbers.quantity(quantity, value).text();
        let mut parts = Vec::new();
        if let Some(radial) = wood.radial_pct {
            let value = shown(Quantity::Shrinkage, radial);
            parts.push(words.with("shop-wood-radial", &[("value", value.into())]));
        }
        if let Some(tangential) = wood.tangential_pct {
            let value = shown(Quantity::Shrinkage, tangential);
            parts.push(words.with("shop-wood-tangential", &[("value", value.into())]));
        }
        if let Some(density) = wood.density_kg_m3 {
            let value = shown(Quantity::BasicDensity, density);
            parts.push(words.with("shop-wood-density", &[("value", value.into())]));
        }
        if let Some(green) = wood.green_mc_pct {
            let value = shown(Quantity::GreenMoisture, green);
            parts.push(words.with("shop-wood-green", &[("value", value.into())]));
        }
        if wood.moulds_easily {
            parts.push(words.text("shop-wood-moulds"));
        }
        if parts.is_empty() {
            words.text("shop-wood-bare")
        } else {
            parts.join(", ")
        }
    }

    pub(super) fn woods_page(&self) -> ShopView {
        let rows = self.shop().woods.iter().map(|w| {
            let form = ShopAction::Form(FormOf::Wood(Some(w.id.clone())));
            RowView::touching(RowKind::Open, w.id.as_str(), w.name.clone(), form)
                .note(self.wood_in_words(w))
        });
        let add = self.add_row("shop-wood-new", FormOf::Wood(None));
        let count = table().len();
        let intro = self
            .words()
            .with("shop-woods-intro", &[("n", count.into())]);
        self.list_page("shop-woods", intro, rows.collect(), add)
    }

    pub(super) fn weighs(&self) -> bool {
        self.shop().weighs()
    }

    pub(super) fn scale_page(&self, now: Moment) -> ShopView {
        let words = self.words();
        let step = self
            .numbers()
            .quantity(Quantity::ScaleStep, self.scale_step());
        let weighs = self.weighs();
        let switch = RowView::touching(
            RowKind::Toggle,
            "weighs",
            words.text("shop-weighs"),
            set(WEIGHS, if weighs { "false" } else { "" }),
        )
        .note(words.text("shop-weighs-note"))
        .selected(weighs)
        .button(words.text(if weighs { "shop-on" } else { "shop-off" }));
        let scale = vec![
            RowView::touching(
                RowKind::Value,
                "step",
                words.text("shop-scale-step"),
                ShopAction::Form(FormOf::ScaleStep),
            )
            .value(step.text()),
            RowView::touching(
                RowKind::Add,
                "new-scale",
                words.text("shop-scale-new"),
                ShopAction::Form(FormOf::NewScale),
            ),
        ];
        let entries = self.shop().history.iter().rev();
        let scales: Vec<RowView> = entries
            .filter_map(|entry| match entry.fact {
                ShopFact::NewScale { step_g } => {
                    let step = self.numbers().quantity(Quantity::ScaleStep, step_g).text();
                    let what = words.with("shop-scale-steps", &[("step", step.into())]);
                    let when = self.time_in_words(entry.at, now);
                    let note = words.with("shop-since", &[("when", when.into())]);
                    Some(self.entry_row(entry, what, note))
                }
                _ => None,
            })
            .collect();
        let mut sections = vec![
            SectionView {
                key: "weighs",
                rows: vec![switch],
                ..SectionView::default()
            },
            SectionView {
                chart: None,
                key: "scale",
                title: words.text("shop-scale-one"),
                note: words.text("shop-scale-intro"),
                rows: scale,
            },
        ];
        if !scales.is_empty() {
            sections.push(SectionView {
                key: "scales",
                title: words.text("shop-scales"),
                rows: scales,
                ..SectionView::default()
            });
        }
        ShopView {
            title: words.text("shop-scale"),
            sections,
            ..ShopView::default()
        }
    }

    fn names_in_words(&self, names: Vec<&str>, none: &str) -> String {
        if names.is_empty() {
            self.words().text(none)
        } else {
            names.join(", ")
        }
    }

    pub(super) fn jaws_in_words(&self) -> String {
        let names = self.shop().jaws.iter().map(|j| j.name.as_str()).collect();
        self.names_in_words(names, "shop-jaws-none")
    }

    pub(super) fn bars_in_words(&self) -> String {
        let names = self.shop().bars.iter().map(|b| b.name.as_str()).collect();
        self.names_in_words(names, "shop-bars-none")
    }

    pub(super) fn woods_in_words(&self) -> String {
        let names = self.shop().woods.iter().map(|w| w.name.as_str()).collect();
        self.names_in_words(names, "shop-woods-none")
    }

    pub(super) fn scale_in_words(&self) -> String {
        if !self.weighs() {
            return self.words().text("shop-weighs-not");
        }
        let step = self
            .numbers()
            .quantity(Quantity::ScaleStep, self.scale_step());
        self.words()
            .with("shop-scale-steps", &[("step", step.text().into())])
    }
}
