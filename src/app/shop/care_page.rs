//! Care page: the words about how to care for a finished piece, at the end of its report.

use super::device_fields::DeviceField;
use super::form::FormOf;
use super::view::{RowKind, RowView, ShopView};
use super::{App, ShopAction};
use crate::records::RecordsAction;
use crate::records::report::CARE_WORDS;

impl App {
    /// True where the turner has own care words, or wants none.
    fn care_is_own(&self) -> bool {
        self.shop()
            .stored
            .get(CARE_WORDS)
            .is_some_and(|t| !t.is_empty())
    }

    pub(super) fn care_page(&self) -> ShopView {
        let words = self.words();
        let said = self.care_words();
        let mut rows: Vec<RowView> = said
            .into_iter()
            .enumerate()
            .map(|(place, line)| RowView::text(format!("line-{place}"), line))
            .collect();
        if rows.is_empty() {
            rows.push(RowView::text("none", words.text("out-care-none")));
        }
        rows.push(
            RowView::touching(
                RowKind::Open,
                "change",
                words.text("out-care-change"),
                ShopAction::Form(FormOf::Device(DeviceField::Care)),
            )
            .icon("pencil"),
        );
        if self.care_is_own() {
            rows.push(
                RowView::touching(
                    RowKind::Add,
                    "usual",
                    words.text("out-care-usual"),
                    RecordsAction::CareWords(None),
                )
                .icon("undo"),
            );
        }
        ShopView {
            title: words.text("shop-care"),
            intro: words.text("out-care-intro"),
            sections: vec![self.section("care", "out-care-now", rows)],
            ..ShopView::default()
        }
    }

    pub(super) fn care_in_words(&self) -> String {
        let id = if self.care_is_own() {
            "out-care-own"
        } else {
            "shop-as-usual"
        };
        self.words().text(id)
    }
}
