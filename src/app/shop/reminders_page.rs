//! Reminders page: the calendar file and its hour, and what the computer says of its own accord.

use super::device_fields::DeviceField;
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{App, ShopAction};
use crate::records::RecordsAction;

impl App {
    fn device_value(&self, field: DeviceField, value: String) -> RowView {
        RowView::touching(
            RowKind::Value,
            field.key(),
            self.words().text(&format!("out-field-{}", field.key())),
            ShopAction::Form(FormOf::Device(field)),
        )
        .value(value)
    }

    pub(super) fn reminders_page(&self) -> ShopView {
        let words = self.words();
        let device = self.device();
        let has_file = !device.calendar_file.is_empty();
        let mut sections: Vec<SectionView> = Vec::new();
        if let Some(fault) = self.calendar_fault() {
            let text = words.with("out-calendar-fault", &[("why", fault.into())]);
            sections.push(SectionView {
                key: "fault",
                rows: vec![RowView::caution("fault", text)],
                ..SectionView::default()
            });
        }
        sections.extend(self.outcome_section());
        let file = RowView::touching(
            RowKind::Open,
            "calendar-file",
            words.text("out-field-calendar-file"),
            ShopAction::Form(FormOf::Device(DeviceField::CalendarFile)),
        )
        .icon("today")
        .note(if has_file {
            device.calendar_file.clone()
        } else {
            words.text("out-calendar-none")
        });
        sections.push(SectionView {
            note: words.text("out-calendar-how"),
            ..self.section(
                "calendar",
                "out-calendar",
                vec![
                    file,
                    self.device_value(DeviceField::ReminderTime, device.reminder_time.clone()),
                ],
            )
        });
        let on = device.notify;
        let mut rows = vec![
            RowView::touching(
                RowKind::Toggle,
                "notify",
                words.text("out-notify"),
                ShopAction::Device(self.device_with(|d| d.notify = !on)),
            )
            .note(words.text("out-notify-note"))
            .selected(on)
            .button(words.text(if on { "shop-on" } else { "shop-off" })),
        ];
        if on {
            rows.push(self.device_value(DeviceField::QuietFrom, device.quiet_from.clone()));
            rows.push(self.device_value(DeviceField::QuietUntil, device.quiet_until.clone()));
        }
        sections.push(self.section("notify", "out-notify-title", rows));
        ShopView {
            title: words.text("shop-reminders"),
            intro: words.text("out-reminders-intro"),
            sections,
            primary: has_file.then(|| {
                RowView::touching(
                    RowKind::Add,
                    "save",
                    words.text("out-calendar-save"),
                    RecordsAction::SaveCalendar,
                )
            }),
            ..ShopView::default()
        }
    }

    pub(super) fn reminders_in_words(&self) -> String {
        let words = self.words();
        if self.calendar_fault().is_some() {
            return words.text("out-calendar-stuck");
        }
        words.text(
            match (self.device().calendar_file.is_empty(), self.device().notify) {
                (false, true) => "out-reminders-both",
                (false, false) => "out-reminders-calendar",
                (true, true) => "out-reminders-computer",
                (true, false) => "out-reminders-none",
            },
        )
    }
}
