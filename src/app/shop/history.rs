//! History: what was changed in the workshop and when, each in words, and the way to take it back.

use evenwall_piece::ids::LineId;
use evenwall_piece::piece::Moment;
use evenwall_piece::rhythm::{Rhythm, RhythmOf};
use evenwall_piece::settings::{Settings, weekday_from_key};
use evenwall_piece::shop::{ChecklistChange, ShopEntry, ShopFact};

use crate::app::App;
use crate::numbers::Quantity;
use crate::words::dates::{Dates, weekday_long};

use super::ShopAction;
use super::number_settings::number_setting;
use super::view::{RowKind, RowView, SectionView, ShopView};

/// Names a line on its page.
fn line_key(line: &LineId) -> String {
    format!("{}-{}", line.device, line.n)
}

impl App {
    /// An entry with the button that takes it back.
    pub(super) fn entry_row(&self, entry: &ShopEntry, what: String, note: String) -> RowView {
        let touch = ShopAction::Record {
            at: None,
            facts: vec![ShopFact::Retracts(entry.line.clone())],
        };
        let button = self
            .words()
            .with("shop-take-back", &[("what", what.as_str().into())]);
        RowView::touching(RowKind::Entry, line_key(&entry.line), what, touch)
            .note(note)
            .button(button)
    }

    /// What these facts say, in words, for the undo bar: the first, and that there are more.
    pub(super) fn facts_in_words(&self, facts: &[ShopFact]) -> String {
        if let [ShopFact::Retracts(line)] = facts {
            let what = self.line_in_words(line);
            return self
                .words()
                .with("undo-taken-back", &[("what", what.into())]);
        }
        let said: Vec<String> = facts
            .iter()
            .filter(|f| !matches!(f, ShopFact::Retracts(_)))
            .map(|f| self.fact_in_words(f))
            .collect();
        match said.as_slice() {
            [] => self.words().text("recorded"),
            [one] => one.clone(),
            [first, rest @ ..] => self.words().with(
                "shop-and-more",
                &[("first", first.into()), ("n", rest.len().into())],
            ),
        }
    }

    fn line_in_words(&self, line: &LineId) -> String {
        let history = self.shop().history.iter();
        let facts: Vec<ShopFact> = history
            .filter(|e| e.line == *line)
            .map(|e| e.fact.clone())
            .collect();
        self.facts_in_words(&facts)
    }

    fn setting_in_words(&self, key: &str, value: &str) -> String {
        let words = self.words();
        let says = |label: String, value: String| {
            words.with(
                "shop-said",
                &[("label", label.into()), ("value", value.into())],
            )
        };
        let as_usual = value.is_empty();
        if let Some(number) = number_setting(key) {
            let mut settings = Settings::default();
            settings.apply(key, value);
            let shown = number.in_words(self, (number.value)(&settings));
            return says(words.text(number.label), shown);
        }
        if let Some(of) = key.strip_prefix("rhythm_").and_then(RhythmOf::from_key) {
            let name = words.text(&format!("rhythm-{}", of.key()));
            let shown = match Rhythm::parse(value) {
                Some(rhythm) => self.rhythm_in_words(of, &rhythm),
                None => words.text("shop-as-usual"),
            };
            return says(name, shown);
        }
        match key {
            "bag_days" => {
                let days: Vec<_> = value
                    .split_whitespace()
                    .filter_map(weekday_from_key)
                    .collect();
                says(words.text("shop-bag-days"), self.bag_days_in_words(&days))
            }
            "weigh_day" => {
                let day = weekday_from_key(value)
                    .map_or_else(|| words.text("shop-any-day"), |d| weekday_long(words, d));
                says(words.text("shop-weigh-day"), day)
            }
            "weighs" => {
                let on = if value == "false" {
                    "shop-off"
                } else {
                    "shop-on"
                };
                says(words.text("shop-weighs"), words.text(on))
            }
            "scale_step_g" => {
                let step = value.parse().ok().map_or_else(
                    || words.text("shop-as-usual"),
                    |g| self.numbers().quantity(Quantity::ScaleStep, g).text(),
                );
                says(words.text("shop-scale-step"), step)
            }
            "cautions_read" => words.text("shop-said-cautions"),
            _ if self.devices_setting_in_words(key, value).is_some() => self
                .devices_setting_in_words(key, value)
                .unwrap_or_default(),
            _ if as_usual => says(key.to_owned(), words.text("shop-as-usual")),
            _ => says(key.to_owned(), value.to_owned()),
        }
    }

    /// The name that a thing on a list had last.
    fn last_name(&self, name: impl Fn(&ShopFact) -> Option<&str>) -> String {
        let named = self.shop().history.iter().rev().find_map(|e| name(&e.fact));
        named.unwrap_or_default().to_owned()
    }

    /// One fact in words: "Wall, rough: 2 mm", "Jaws: 50 mm set, 50 to 64 mm".
    pub(super) fn fact_in_words(&self, fact: &ShopFact) -> String {
        let words = self.words();
        let numbers = self.numbers();
        let named = |id: &str, name: String| words.with(id, &[("name", name.into())]);
        match fact {
            ShopFact::Setting { key, value } => self.setting_in_words(key, value),
            ShopFact::Climate(c) => words.with(
                "shop-said",
                &[
                    (
                        "label",
                        words.text(&format!("room-{}", c.room.key())).into(),
                    ),
                    ("value", self.air_in_words(c).into()),
                ],
            ),
            ShopFact::ClimateLog(log) => {
                let room = words.text(&format!("room-{}", log.room.key()));
                words.with(
                    "log-said",
                    &[("room", room.into()), ("n", log.readings.len().into())],
                )
            }
            ShopFact::Jaws(j) => named("shop-said-jaws", j.name.clone()),
            ShopFact::JawsRemoved(id) => named(
                "shop-said-jaws-removed",
                self.last_name(|f| match f {
                    ShopFact::Jaws(j) if j.id == *id => Some(&j.name),
                    _ => None,
                }),
            ),
            ShopFact::Bar(b) => named("shop-said-bar", b.name.clone()),
            ShopFact::BarRemoved(id) => named(
                "shop-said-bar-removed",
                self.last_name(|f| match f {
                    ShopFact::Bar(b) if b.id == *id => Some(&b.name),
                    _ => None,
                }),
            ),
            ShopFact::Wood(w) => named("shop-said-wood", w.name.clone()),
            ShopFact::WoodRemoved(id) => named(
                "shop-said-wood-removed",
                self.last_name(|f| match f {
                    ShopFact::Wood(w) if w.id == *id => Some(&w.name),
                    _ => None,
                }),
            ),
            ShopFact::Checklist(change) => words.text(match change {
                ChecklistChange::Worded { .. } => "shop-said-line-worded",
                ChecklistChange::Hidden { hidden: true, .. } => "shop-said-line-hidden",
                ChecklistChange::Hidden { .. } => "shop-said-line-shown",
                ChecklistChange::Placed { .. } => "shop-said-line-moved",
                ChecklistChange::Reset { .. } => "shop-said-line-reset",
            }),
            ShopFact::NewScale { step_g } => {
                let step = numbers.quantity(Quantity::ScaleStep, *step_g).text();
                words.with("shop-said-scale", &[("step", step.into())])
            }
            ShopFact::Away { back_on } => {
                let day = Dates::new(words, *back_on).full(*back_on);
                words.with("shop-said-away", &[("day", day.into())])
            }
            ShopFact::Back => words.text("shop-said-back"),
            ShopFact::Retracts(line) => self.line_in_words(line),
            ShopFact::Unknown { .. } => words.text("shop-said-unknown"),
        }
    }

    /// The lines of the history, newest first, each with its facts.
    fn lines_newest_first(&self) -> Vec<(&ShopEntry, Vec<ShopFact>)> {
        let mut lines: Vec<(&ShopEntry, Vec<ShopFact>)> = Vec::new();
        for entry in self.shop().history.iter().rev() {
            match lines.iter_mut().find(|(e, _)| e.line == entry.line) {
                // Within a line the order is that in which it was written.
                Some((_, facts)) => facts.insert(0, entry.fact.clone()),
                None => lines.push((entry, vec![entry.fact.clone()])),
            }
        }
        lines
    }

    pub(super) fn history_page(&self, now: Moment) -> ShopView {
        let words = self.words();
        let lines = self.lines_newest_first();
        let shown = self.states.shop.shown;
        let mut rows: Vec<RowView> = lines
            .iter()
            .take(shown)
            .map(|(entry, facts)| {
                let what = self.facts_in_words(facts);
                self.entry_row(entry, what, self.time_in_words(entry.at, now))
            })
            .collect();
        if lines.len() > shown {
            rows.push(self.older_row());
        }
        if rows.is_empty() {
            rows.push(RowView::text("none", words.text("shop-history-none")));
        }
        ShopView {
            title: words.text("shop-history"),
            intro: words.text("shop-history-intro"),
            sections: vec![SectionView {
                key: "history",
                rows,
                ..SectionView::default()
            }],
            ..ShopView::default()
        }
    }

    pub(super) fn history_in_words(&self) -> String {
        let count = self.lines_newest_first().len();
        self.words()
            .with("shop-history-now", &[("n", count.into())])
    }
}
