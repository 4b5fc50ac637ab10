//! Backup page: when the last was made, where they go, how often it is asked for, and the backups that can be restored.

use chrono::NaiveDateTime;
use evenwall_piece::piece::Moment;

use super::device_fields::DeviceField;
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{App, ShopAction, WriteOut};
use crate::records::RecordsAction;

/// Backups that are listed; older ones are restored by their path.
const LISTED: usize = 12;
/// After how many days a backup is asked for; 0 never.
const EVERY: [(u32, &str); 4] = [
    (7, "out-every-week"),
    (30, "out-every-month"),
    (90, "out-every-quarter"),
    (0, "out-every-never"),
];

impl App {
    /// "12 March 2026, 08:47", as the name of the file says; `None` where it says no such time.
    fn backup_made(&self, name: &str, now: Moment) -> Option<String> {
        let made = NaiveDateTime::parse_from_str(name, "evenwall-%Y%m%d-%H%M%S.zip").ok()?;
        let day = self.dates(now).full(made.date());
        let time = made.format("%H:%M").to_string();
        let parts = [("day", day.into()), ("time", time.into())];
        Some(self.words().with("shop-day-time", &parts))
    }

    pub(super) fn backup_page(&self, now: Moment) -> ShopView {
        let words = self.words();
        let view = self.backups_view(now);
        let mut last = vec![match self.backup_reminder(now) {
            Some(old) => RowView::caution("last", old),
            None => RowView::text("last", view.last),
        }];
        if !view.outcome.is_empty() {
            last.push(RowView::text("outcome", view.outcome));
        }
        // A caution stands by itself.
        let mut sections: Vec<SectionView> = last
            .into_iter()
            .map(|row| SectionView {
                key: if row.kind == RowKind::Caution {
                    "old"
                } else {
                    "last"
                },
                rows: vec![row],
                ..SectionView::default()
            })
            .collect();
        sections.push(self.folder_section());
        let mut rows: Vec<RowView> = view
            .backups
            .into_iter()
            .take(LISTED)
            .enumerate()
            .map(|(place, (path, name))| {
                RowView::touching(
                    RowKind::Open,
                    format!("backup-{place}"),
                    self.backup_made(&name, now).unwrap_or_else(|| name.clone()),
                    RecordsAction::LookIntoBackup(path),
                )
                .icon("undo")
                .note(name)
            })
            .collect();
        if rows.is_empty() {
            rows.push(RowView::text("empty", view.empty));
        }
        rows.push(RowView::touching(
            RowKind::Add,
            "elsewhere",
            words.text("out-restore-elsewhere"),
            ShopAction::Form(FormOf::Device(DeviceField::RestoreFile)),
        ));
        sections.push(SectionView {
            note: words.text("out-restore-intro"),
            ..self.section("restore", "out-restore", rows)
        });
        let every = EVERY
            .map(|(days, id)| self.radio(id, self.device_with(|d| d.backup_every_days = days)));
        sections.push(self.section("every", "out-every", every.into()));
        ShopView {
            title: words.text("shop-backup"),
            intro: words.text("out-backup-intro"),
            sections,
            primary: Some(RowView::touching(
                RowKind::Add,
                "back-up",
                words.text("out-back-up"),
                ShopAction::Write(WriteOut::Backup),
            )),
            ..ShopView::default()
        }
    }
}
