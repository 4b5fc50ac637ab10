//! Texts: cautions, where the data are, and about.

use evenwall_piece::checklist::{GENERAL_CAUTIONS, caution_id};
use evenwall_piece::stage::Stage;

use crate::app::App;

use super::view::{RowView, SectionView, ShopView};

impl App {
    fn paragraphs(&self, key: &'static str, title: &str, ids: &[&str]) -> SectionView {
        let words = self.words();
        SectionView {
            key,
            title: words.text(title),
            rows: ids
                .iter()
                .map(|id| RowView::text(*id, words.text(id)))
                .collect(),
            ..SectionView::default()
        }
    }

    pub(super) fn cautions_page(&self) -> ShopView {
        let words = self.words();
        let caution = |id: &str| RowView::caution(id, words.text(id));
        let general = GENERAL_CAUTIONS.iter().map(|id| caution(id)).collect();
        let mut sections = vec![SectionView {
            key: "cautions-general",
            title: words.text("shop-cautions-general"),
            rows: general,
            ..SectionView::default()
        }];
        sections.extend(Stage::ALL.iter().map(|stage| SectionView {
            key: "cautions-stage",
            title: words.text(&format!("stage-{}", stage.key())),
            rows: vec![caution(&caution_id(*stage))],
            ..SectionView::default()
        }));
        ShopView {
            title: words.text("shop-cautions"),
            intro: words.text("shop-cautions-intro"),
            sections,
            ..ShopView::default()
        }
    }

    pub(super) fn data_page(&self) -> ShopView {
        let words = self.words();
        let mut place = vec![RowView::text("place", self.store().place())];
        if let Some(reason) = self.store().read_only() {
            place.push(RowView::caution("read-only", reason));
        }
        let counted = |n: usize| words.with("count-pieces", &[("n", n.into())]);
        let deleted = self.deleted_pieces().count();
        let mut pieces = vec![RowView::plain(
            "pieces",
            words.text("shop-data-on-shelf"),
            counted(self.pieces().count()),
        )];
        if deleted > 0 {
            pieces.push(RowView::plain(
                "deleted",
                words.text("shop-data-deleted"),
                counted(deleted),
            ));
        }
        let mut unread: Vec<RowView> = self
            .problems()
            .iter()
            .enumerate()
            .map(|(place, problem)| RowView::caution(format!("problem-{place}"), problem.clone()))
            .collect();
        let newer = self.shop().unknown_facts;
        if newer > 0 {
            let text = words.with("shop-data-newer", &[("n", newer.into())]);
            unread.push(RowView::caution("newer", text));
        }
        if unread.is_empty() {
            unread.push(RowView::text("all-read", words.text("shop-data-all-read")));
        }
        let section = |key, title: &str, rows| SectionView {
            key,
            title: words.text(title),
            rows,
            ..SectionView::default()
        };
        ShopView {
            title: words.text("shop-data"),
            intro: words.text("shop-data-intro"),
            sections: vec![
                section("place", "shop-data-place", place),
                section("pieces", "shop-data-pieces", pieces),
                section("unread", "shop-data-unread", unread),
                self.paragraphs("sync", "shop-data-sync", &["shop-data-sync-how"]),
            ],
            ..ShopView::default()
        }
    }

    fn version_in_words(&self) -> String {
        let version = env!("CARGO_PKG_VERSION");
        self.words()
            .with("shop-version", &[("version", version.into())])
    }

    pub(super) fn about_page(&self) -> ShopView {
        let words = self.words();
        ShopView {
            title: words.text("app-name"),
            subtitle: self.version_in_words(),
            sections: vec![
                self.paragraphs(
                    "what",
                    "shop-about-what",
                    &["shop-about-job", "shop-about-never"],
                ),
                self.paragraphs(
                    "sources",
                    "shop-about-sources",
                    &["shop-about-figures", "shop-about-air", "shop-about-rules"],
                ),
                self.paragraphs(
                    "licence",
                    "shop-about-licence",
                    &["shop-about-ours", "shop-about-font", "shop-about-offline"],
                ),
                self.paragraphs("slint", "shop-about-made-with", &["shop-about-slint"]),
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn about_in_words(&self) -> String {
        self.version_in_words()
    }

    pub(super) fn data_in_words(&self) -> String {
        let problems = self.problems().len() + self.shop().unknown_facts;
        if problems > 0 {
            return self
                .words()
                .with("shop-data-problems", &[("n", problems.into())]);
        }
        self.words()
            .with("count-pieces", &[("n", self.pieces().count().into())])
    }
}
