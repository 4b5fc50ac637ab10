//! Devices page: what this device is called, and the others that wrote to the shelf.

use evenwall_piece::piece::Moment;

use super::device_fields::DeviceField;
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{App, ShopAction};

impl App {
    pub(super) fn devices_page(&self, now: Moment) -> ShopView {
        let words = self.words();
        let view = self.devices_view(now);
        let name = RowView::touching(
            RowKind::Value,
            "name",
            view.label,
            ShopAction::Form(FormOf::Device(DeviceField::Name)),
        )
        .value(if view.name.is_empty() {
            words.text("out-no-name")
        } else {
            view.name
        });
        let others = view.devices.into_iter().filter(|d| !d.this);
        let mut rows: Vec<RowView> = others
            .map(|d| RowView::plain(format!("device-{}", d.id), d.name, d.note))
            .collect();
        if !view.alone.is_empty() {
            rows.push(RowView::text("alone", view.alone));
        }
        ShopView {
            title: words.text("shop-devices"),
            intro: words.text("out-devices-intro"),
            sections: vec![
                SectionView {
                    key: "name",
                    rows: vec![name],
                    ..SectionView::default()
                },
                self.section("others", "out-devices-others", rows),
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn devices_in_words(&self, now: Moment) -> String {
        let words = self.words();
        let others = self
            .devices_view(now)
            .devices
            .iter()
            .filter(|d| !d.this)
            .count();
        match (self.device().name.as_str(), others) {
            ("", 0) => words.text("out-devices-alone"),
            (name, 0) => name.to_owned(),
            (_, n) => words.with("out-devices-now", &[("n", n.into())]),
        }
    }
}
