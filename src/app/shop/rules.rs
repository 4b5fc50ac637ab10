//! Rules: tolerances and wood kept in hand, days of the bag, bag days and weigh day.

use chrono::Weekday;
use evenwall_piece::settings::weekday_key;
use evenwall_piece::shop::ShopFact;

use crate::app::App;
use crate::words::dates::{weekday_long, weekday_short};

use super::number_settings::number_setting;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{FormOf, ShopAction};

const WEEK: [Weekday; 7] = [
    Weekday::Mon,
    Weekday::Tue,
    Weekday::Wed,
    Weekday::Thu,
    Weekday::Fri,
    Weekday::Sat,
    Weekday::Sun,
];

/// Records one setting; an empty value goes back to the default.
pub(super) fn set(key: impl Into<String>, value: impl Into<String>) -> ShopAction {
    ShopAction::Record {
        at: None,
        facts: vec![ShopFact::Setting {
            key: key.into(),
            value: value.into(),
        }],
    }
}

impl App {
    /// The row of a rule that is one number.
    pub(super) fn number_row(&self, key: &'static str) -> Option<RowView> {
        let setting = number_setting(key)?;
        let words = self.words();
        let value = (setting.value)(&self.shop().settings);
        let row = RowView::touching(
            RowKind::Value,
            key,
            words.text(setting.label),
            ShopAction::Form(FormOf::Number(key)),
        )
        .value(setting.now_in_words(self));
        let usual = setting.usual();
        Some(if (value - usual).abs() < 1e-9 {
            row
        } else {
            let usual = setting.in_words(self, usual);
            row.note(words.with("shop-usual", &[("value", usual.into())]))
        })
    }

    fn number_rows(&self, keys: &[&'static str]) -> Vec<RowView> {
        keys.iter().filter_map(|key| self.number_row(key)).collect()
    }

    pub(super) fn walls_page(&self) -> ShopView {
        let words = self.words();
        ShopView {
            title: words.text("shop-walls"),
            sections: vec![
                SectionView {
                    chart: None,
                    key: "tolerance",
                    title: words.text("shop-tolerances"),
                    note: words.text("shop-tolerances-note"),
                    rows: self.number_rows(&["rough_tolerance_mm", "finish_tolerance_mm"]),
                },
                SectionView {
                    chart: None,
                    key: "allowance",
                    title: words.text("shop-allowances"),
                    note: words.text("shop-allowances-note"),
                    rows: self.number_rows(&["margin_mm", "remount_mm"]),
                },
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn bag_page(&self) -> ShopView {
        let words = self.words();
        ShopView {
            title: words.text("shop-bag"),
            intro: words.text("shop-bag-intro"),
            sections: vec![
                SectionView {
                    key: "bag",
                    title: words.text("shop-bag-felt-again"),
                    rows: self.number_rows(&[
                        "bag_first_days",
                        "bag_wet_days",
                        "bag_damp_days",
                        "bag_nothing_days",
                    ]),
                    ..SectionView::default()
                },
                SectionView {
                    chart: None,
                    key: "mould",
                    title: words.text("shop-bag-mouldy"),
                    note: words.text("shop-bag-mouldy-note"),
                    rows: self.number_rows(&["bag_wet_short_days", "bag_mould_days"]),
                },
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn days_page(&self) -> ShopView {
        let words = self.words();
        let chosen = &self.shop().settings.bag_days;
        let bag_rows = WEEK
            .iter()
            .map(|day| {
                let on = chosen.contains(day);
                let after: Vec<&str> = WEEK
                    .iter()
                    .filter(|d| chosen.contains(d) != (*d == day))
                    .map(|d| weekday_key(*d))
                    .collect();
                let id = format!("bag-{}", weekday_key(*day));
                let touch = set("bag_days", after.join(" "));
                RowView::touching(RowKind::Check, id, weekday_long(words, *day), touch).selected(on)
            })
            .collect();
        let weigh_day = self.shop().settings.weigh_day;
        let any = RowView::touching(
            RowKind::Radio,
            "weigh-any",
            words.text("shop-weigh-any"),
            set("weigh_day", ""),
        )
        .selected(weigh_day.is_none());
        let weigh_rows = WEEK.iter().map(|day| {
            let title = words.with(
                "shop-weigh-on",
                &[("day", weekday_long(words, *day).into())],
            );
            let id = format!("weigh-{}", weekday_key(*day));
            let touch = set("weigh_day", weekday_key(*day));
            RowView::touching(RowKind::Radio, id, title, touch).selected(weigh_day == Some(*day))
        });
        ShopView {
            title: words.text("shop-days"),
            sections: vec![
                SectionView {
                    chart: None,
                    key: "bag-days",
                    title: words.text("shop-bag-days"),
                    note: words.text("shop-bag-days-note"),
                    rows: bag_rows,
                },
                SectionView {
                    chart: None,
                    key: "weigh-day",
                    title: words.text("shop-weigh-day"),
                    note: words.text("shop-weigh-day-note"),
                    rows: std::iter::once(any).chain(weigh_rows).collect(),
                },
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn walls_in_words(&self) -> String {
        let settings = &self.shop().settings;
        let shown = |mm| {
            self.numbers()
                .quantity(crate::numbers::Quantity::Tolerance, mm)
                .text()
        };
        self.words().with(
            "shop-walls-now",
            &[
                ("rough", shown(settings.rough_tolerance_mm).into()),
                ("finish", shown(settings.finish_tolerance_mm).into()),
            ],
        )
    }

    pub(super) fn bag_in_words(&self) -> String {
        let after = self.shop().settings.bag_after;
        self.words().with(
            "shop-bag-now",
            &[
                ("wet", after.wet.into()),
                ("damp", after.damp.into()),
                ("nothing", self.days_in_words(after.nothing).into()),
            ],
        )
    }

    /// "Mon, Thu, Sat", or that any day will do.
    pub(super) fn bag_days_in_words(&self, days: &[Weekday]) -> String {
        let words = self.words();
        let names: Vec<String> = WEEK
            .iter()
            .filter(|d| days.contains(d))
            .map(|d| weekday_short(words, *d))
            .collect();
        if names.is_empty() {
            words.text("shop-any-day")
        } else {
            names.join(", ")
        }
    }

    pub(super) fn days_in_words_now(&self) -> String {
        let settings = &self.shop().settings;
        let weigh: Vec<Weekday> = settings.weigh_day.into_iter().collect();
        if settings.bag_days.is_empty() && weigh.is_empty() {
            return self.words().text("shop-any-day");
        }
        self.words().with(
            "shop-days-now",
            &[
                ("bag", self.bag_days_in_words(&settings.bag_days).into()),
                ("weigh", self.bag_days_in_words(&weigh).into()),
            ],
        )
    }
}
