//! Import page: which spreadsheet, what its columns hold, what would come in, what is wrong with it, and taking it back.

use evenwall_piece::piece::Moment;

use super::device_fields::DeviceField;
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{App, ShopAction};
use crate::action::Action;
use crate::records::RecordsAction;
use crate::records::import::{ImportAction, ImportView};

/// The key of the page on which it is said what a column holds.
pub(super) const COLUMN_PAGE: &str = "import-column";

fn import(action: ImportAction) -> Action {
    RecordsAction::from(action).into()
}

impl App {
    /// What came of the last import, with a row that takes it back; nothing before there was one.
    fn import_last(&self, view: &ImportView) -> Option<SectionView> {
        let mut rows = Vec::new();
        if !view.outcome.is_empty() {
            rows.push(RowView::text("outcome", view.outcome.clone()));
        }
        if !view.take_back.is_empty() {
            rows.push(
                RowView::touching(
                    RowKind::Add,
                    "take-back",
                    view.take_back.clone(),
                    import(ImportAction::TakeBack),
                )
                .icon("undo"),
            );
        }
        (!rows.is_empty()).then(|| self.section("last", "out-import-last", rows))
    }

    fn import_choosing(&self, view: ImportView, now: Moment) -> ShopView {
        let words = self.words();
        let listed = self.files.as_ref().map(|f| f.listed()).unwrap_or_default();
        let mut rows: Vec<RowView> = listed
            .into_iter()
            .enumerate()
            .map(|(place, file)| {
                let note = match file.written.map(|at| self.time_in_words(at, now)) {
                    Some(when) => words.with(
                        "log-file-note",
                        &[("folder", file.folder.into()), ("when", when.into())],
                    ),
                    None => file.folder,
                };
                RowView::touching(
                    RowKind::Open,
                    format!("file-{place}"),
                    file.name,
                    import(ImportAction::Open(file.path)),
                )
                .icon("list")
                .note(note)
            })
            .collect();
        if rows.is_empty() {
            rows.push(RowView::text("none", words.text("log-none-found")));
        }
        rows.push(RowView::touching(
            RowKind::Add,
            "path",
            words.text("log-elsewhere"),
            ShopAction::Form(FormOf::Device(DeviceField::ImportFile)),
        ));
        let mut sections: Vec<SectionView> = self.import_last(&view).into_iter().collect();
        sections.push(self.section("files", "log-files", rows));
        ShopView {
            title: words.text("shop-import"),
            intro: view.intro,
            sections,
            ..ShopView::default()
        }
    }

    fn import_matching(&self, view: ImportView) -> ShopView {
        let words = self.words();
        let mut sections = vec![SectionView {
            key: "file",
            rows: vec![
                RowView::plain("name", words.text("log-file"), view.intro.clone()),
                RowView::touching(
                    RowKind::Add,
                    "another",
                    words.text("log-another"),
                    import(ImportAction::Close),
                ),
            ],
            ..SectionView::default()
        }];
        let columns = view.columns.into_iter().enumerate().map(|(place, column)| {
            RowView::touching(
                RowKind::Value,
                format!("column-{place}"),
                column.name,
                ShopAction::Column(place),
            )
            .value(column.text)
            .note(if column.example.is_empty() {
                words.text("out-import-blank")
            } else {
                column.example
            })
        });
        sections.push(SectionView {
            note: words.text("out-import-columns-note"),
            ..self.section("columns", "out-import-columns", columns.collect())
        });
        let mut rows = vec![RowView::text("summary", view.summary)];
        rows.extend(view.pieces.into_iter().enumerate().map(|(place, piece)| {
            RowView::plain(format!("piece-{place}"), piece.mark, piece.note)
        }));
        sections.push(self.section("preview", "out-import-preview", rows));
        if !view.faults.is_empty() {
            let faults = view.faults.into_iter().enumerate();
            let rows = faults.map(|(place, fault)| RowView::text(format!("fault-{place}"), fault));
            sections.push(SectionView {
                note: words.text("out-import-faults-note"),
                ..self.section("faults", "out-import-faults", rows.collect())
            });
        }
        ShopView {
            title: words.text("shop-import"),
            sections,
            primary: view.can_run.then(|| {
                RowView::touching(RowKind::Add, "run", view.run, import(ImportAction::Run))
            }),
            ..ShopView::default()
        }
    }

    pub(super) fn import_page(&self, now: Moment) -> ShopView {
        let view = self.import_view(now);
        if view.columns.is_empty() {
            self.import_choosing(view, now)
        } else {
            self.import_matching(view)
        }
    }

    /// What one column holds.
    pub(super) fn column_page(&self, now: Moment) -> ShopView {
        let words = self.words();
        let view = self.import_view(now);
        let place = self.states.shop.column;
        let Some(column) = view.columns.get(place) else {
            return ShopView {
                title: words.text("shop-import"),
                sections: vec![SectionView {
                    key: "none",
                    rows: vec![RowView::text("none", words.text("out-import-no-column"))],
                    ..SectionView::default()
                }],
                ..ShopView::default()
            };
        };
        let rows = view.targets.iter().map(|target| {
            RowView::touching(
                RowKind::Radio,
                target.key.clone(),
                target.text.clone(),
                ShopAction::ColumnHolds(place, target.key.clone()),
            )
            .selected(target.key == column.key)
        });
        ShopView {
            title: column.name.clone(),
            subtitle: column.example.clone(),
            sections: vec![self.section("targets", "out-import-holds", rows.collect())],
            ..ShopView::default()
        }
    }
}
