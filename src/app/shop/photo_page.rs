//! Photo page: in which folder this device looks for the newest pictures, and tidying away what was removed long ago.

use evenwall_piece::tidying::TIDY_AFTER_DAYS;

use crate::action::Action;
use crate::app::App;
use crate::photos::PhotosAction;

use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{FormOf, ShopAction};

impl App {
    /// "/home/me/Pictures", or that none is known.
    pub(super) fn photo_folder_in_words(&self) -> String {
        self.photos_folders_in_words()
    }

    pub(super) fn photo_page(&self) -> ShopView {
        let words = self.words();
        let own = !self.device().picture_folder.is_empty();
        let folder = RowView::touching(
            RowKind::Open,
            "picture-folder",
            words.text("shop-picture-folder"),
            ShopAction::Form(FormOf::PictureFolder),
        )
        .note(self.photos_folders_in_words())
        .icon("camera");
        let usual = RowView::touching(
            RowKind::Radio,
            "usual-folder",
            words.text("shop-picture-folder-usual"),
            Action::Photos(PhotosAction::PictureFolder(String::new())),
        )
        .selected(!own);
        let tidy = RowView::touching(
            RowKind::Open,
            "tidy",
            words.text("photos-tidy-title"),
            Action::Photos(PhotosAction::AskTidy),
        )
        .note(words.with("shop-photos-tidy-note", &[("days", TIDY_AFTER_DAYS.into())]))
        .icon("bin");
        let mut sections = vec![
            SectionView {
                key: "folder",
                title: words.text("shop-picture-folder-title"),
                rows: vec![folder, usual],
                ..SectionView::default()
            },
            SectionView {
                key: "kept",
                title: words.text("shop-photos-kept"),
                rows: vec![
                    RowView::text("kept", words.text("shop-photos-kept-text")),
                    tidy,
                ],
                ..SectionView::default()
            },
        ];
        if self.is_demo() {
            sections.push(SectionView {
                key: "drawn",
                rows: vec![RowView::text("drawn", words.text("photos-drawn-all"))],
                ..SectionView::default()
            });
        }
        ShopView {
            title: words.text("shop-photos"),
            intro: words.text("shop-photos-intro"),
            sections,
            ..ShopView::default()
        }
    }
}
