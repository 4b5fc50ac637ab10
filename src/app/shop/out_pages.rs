//! Out pages: tables, tags, and what leaves the app about one piece.

use evenwall_piece::ids::PieceId;

use super::device_fields::{DeviceField, mm_text};
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{App, ShopAction, WriteOut};
use crate::device::PaperChoice;
use crate::records::report::Version;

const PAPERS: [(PaperChoice, &str); 2] = [
    (PaperChoice::A4, "out-paper-a4"),
    (PaperChoice::Letter, "out-paper-letter"),
];

impl App {
    /// A row that writes something.
    fn write_row(&self, id: &str, icon: &'static str, what: WriteOut) -> RowView {
        let words = self.words();
        RowView::touching(
            RowKind::Add,
            id,
            words.text(&format!("out-write-{id}")),
            ShopAction::Write(what),
        )
        .icon(icon)
        .note(words.text(&format!("out-write-{id}-note")))
    }

    pub(super) fn tables_page(&self) -> ShopView {
        let words = self.words();
        let mut sections: Vec<SectionView> = self.outcome_section().into_iter().collect();
        let rows = [
            "pieces",
            "readings",
            "weighings",
            "checks",
            "climate",
            "flaws",
        ]
        .map(|table| RowView::text(table, words.text(&format!("out-table-{table}"))));
        sections.push(self.section("tables", "out-tables-which", rows.into()));
        sections.push(self.folder_section());
        ShopView {
            title: words.text("shop-tables"),
            intro: words.text("out-tables-intro"),
            sections,
            primary: Some(RowView::touching(
                RowKind::Add,
                "write",
                words.text("out-tables-write"),
                ShopAction::Write(WriteOut::Tables),
            )),
            ..ShopView::default()
        }
    }

    fn label_rows(&self) -> SectionView {
        let words = self.words();
        let device = self.device();
        let side = |field: DeviceField, mm: f64| {
            let value = format!("{}\u{a0}{}", mm_text(mm), words.text("out-mm"));
            RowView::touching(
                RowKind::Value,
                field.key(),
                words.text(&format!("out-field-{}", field.key())),
                ShopAction::Form(FormOf::Device(field)),
            )
            .value(value)
        };
        let rows = vec![
            side(DeviceField::TagWidth, device.tag_width_mm),
            side(DeviceField::TagHeight, device.tag_height_mm),
        ];
        self.section("label", "out-label", rows)
    }

    fn paper_section(&self) -> SectionView {
        let rows =
            PAPERS.map(|(choice, id)| self.radio(id, self.device_with(|d| d.paper = choice)));
        self.section("paper", "out-paper", rows.into())
    }

    pub(super) fn tags_page(&self) -> ShopView {
        let words = self.words();
        let living = self.pieces().filter(|p| p.living()).count();
        let mut sections: Vec<SectionView> = self.outcome_section().into_iter().collect();
        if living == 0 {
            sections.push(SectionView {
                key: "none",
                rows: vec![RowView::text("none", words.text("out-tags-none"))],
                ..SectionView::default()
            });
        }
        sections.extend([
            self.label_rows(),
            self.paper_section(),
            self.folder_section(),
        ]);
        ShopView {
            title: words.text("shop-tags"),
            intro: words.text("out-tags-intro"),
            sections,
            primary: (living > 0).then(|| {
                RowView::touching(
                    RowKind::Add,
                    "write",
                    words.with("out-tags-write", &[("n", living.into())]),
                    ShopAction::Write(WriteOut::Tags),
                )
            }),
            ..ShopView::default()
        }
    }

    pub(super) fn tags_in_words(&self) -> String {
        let device = self.device();
        self.words().with(
            "out-tags-size",
            &[
                ("width", mm_text(device.tag_width_mm).into()),
                ("height", mm_text(device.tag_height_mm).into()),
            ],
        )
    }

    /// What leaves the app about one piece.
    pub(super) fn out_page(&self, piece: &PieceId) -> ShopView {
        let words = self.words();
        let report = |version| WriteOut::Report(piece.clone(), version);
        let mut sections: Vec<SectionView> = self.outcome_section().into_iter().collect();
        sections.push(self.section(
            "report",
            "out-report",
            vec![
                self.write_row("report-buyer", "export", report(Version::Buyer)),
                self.write_row("report-shop", "export", report(Version::Shop)),
            ],
        ));
        sections.push(self.section(
            "tag",
            "out-tag",
            vec![self.write_row("tag", "tag", WriteOut::Tag(piece.clone()))],
        ));
        if self.piece(piece).is_some_and(|p| p.living()) {
            sections.push(self.section(
                "calendar",
                "out-calendar",
                vec![self.write_row("looks", "clock", WriteOut::PieceCalendar(piece.clone()))],
            ));
        }
        sections.extend([self.paper_section(), self.folder_section()]);
        ShopView {
            title: words.text("piece-way-out"),
            subtitle: self.mark_of(piece),
            sections,
            ..ShopView::default()
        }
    }
}
