//! Hub: the list of the pages of Shop, each with what holds there now.

use evenwall_piece::piece::Moment;

use crate::action::Action;
use crate::app::App;
use crate::route::Page;
use crate::words::dates::Dates;

use super::ShopAction;
use super::view::{RowKind, RowView, SectionView};

impl App {
    fn hub_row(&self, key: &'static str, icon: &'static str, now: String) -> RowView {
        let title = self.words().text(&format!("shop-{key}"));
        RowView::touching(RowKind::Open, key, title, ShopAction::Go(key))
            .icon(icon)
            .note(now)
    }

    fn away_row(&self, now: Moment) -> RowView {
        let words = self.words();
        let note = match self.back_day(now) {
            Some(back_on) => {
                let day = Dates::new(words, now.date_naive()).near(back_on);
                words.with("shop-away-until", &[("day", day.into())])
            }
            None => words.text("shop-away-none"),
        };
        RowView::touching(
            RowKind::Open,
            "away",
            words.text("shop-away"),
            Action::Open(Page::Away),
        )
        .icon("pause")
        .note(note)
    }

    /// What leaves the app and what comes in.
    fn records_rows(&self, now: Moment) -> Vec<RowView> {
        let words = self.words();
        let backup = self
            .backup_reminder(now)
            .unwrap_or_else(|| self.backups_view(now).last);
        vec![
            self.hub_row("backup", "export", backup),
            self.hub_row("reminders", "clock", self.reminders_in_words()),
            self.hub_row("devices", "swap", self.devices_in_words(now)),
            self.hub_row("tables", "list", words.text("out-tables-note")),
            self.hub_row("tags", "tag", self.tags_in_words()),
            self.hub_row("care", "pencil", self.care_in_words()),
            self.hub_row("import", "import", words.text("out-import-note")),
        ]
    }

    fn checklists_in_words(&self) -> String {
        let changes = self.shop().checklist.len();
        if changes == 0 {
            self.words().text("shop-checklists-built-in")
        } else {
            self.words()
                .with("shop-checklists-changed", &[("n", changes.into())])
        }
    }

    /// The cards of Shop: what is in the workshop, its rules, this device, and what can be read.
    pub(super) fn hub_sections(&self, now: Moment) -> Vec<SectionView> {
        let words = self.words();
        let section = |key, title: &str, rows| SectionView {
            key,
            title: words.text(title),
            rows,
            ..SectionView::default()
        };
        vec![
            SectionView {
                key: "now",
                rows: vec![
                    self.hub_row("climate", "indoors", self.climate_in_words()),
                    self.away_row(now),
                ],
                ..SectionView::default()
            },
            section(
                "tools",
                "shop-group-tools",
                vec![
                    self.hub_row("jaws", "oval", self.jaws_in_words()),
                    self.hub_row("bars", "minus", self.bars_in_words()),
                    self.hub_row("scale", "scale", self.scale_in_words()),
                    self.hub_row("woods", "log", self.woods_in_words()),
                ],
            ),
            section(
                "rules",
                "shop-group-rules",
                vec![
                    self.hub_row("walls", "callipers", self.walls_in_words()),
                    self.hub_row("bag", "bag-closed", self.bag_in_words()),
                    self.hub_row("days", "today", self.days_in_words_now()),
                    self.hub_row("rhythms", "clock", self.rhythms_in_words()),
                    self.hub_row("checklists", "list", self.checklists_in_words()),
                ],
            ),
            section("records", "shop-group-records", self.records_rows(now)),
            section(
                "device",
                "shop-group-device",
                vec![
                    self.hub_row("units", "swap", self.units_in_words()),
                    self.hub_row("words", "pencil", self.words_choice_in_words()),
                    self.hub_row("look", "eye", self.look_in_words()),
                    self.hub_row("photos", "camera", self.photo_folder_in_words()),
                ],
            ),
            section(
                "read",
                "shop-group-read",
                vec![
                    self.dried_well_row(now),
                    self.hub_row("cautions", "caution", words.text("shop-cautions-note")),
                    self.hub_row("history", "undo", self.history_in_words()),
                    self.hub_row("data", "settings", self.data_in_words()),
                    self.hub_row("about", "info", self.about_in_words()),
                ],
            ),
        ]
    }
}
