//! Out: writes documents into the folder of the device's settings, and lets the system show them.

use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;

use super::device_fields::DeviceField;
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView};
use super::{App, AppError, ShopAction};
use crate::records::RecordsAction;
use crate::records::backups::whole;
use crate::records::report::{ReportOrder, Version};

/// What can be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WriteOut {
    /// The report of a piece.
    Report(PieceId, Version),
    /// The tag of a piece.
    Tag(PieceId),
    /// The coming checks of a piece.
    PieceCalendar(PieceId),
    /// The tags of all living pieces.
    Tags,
    /// All tables.
    Tables,
    /// A backup.
    Backup,
}

impl App {
    fn open_device_form(&mut self, field: DeviceField) {
        let draft = self.draft_of(FormOf::Device(field));
        self.states.shop.draft = Some(draft);
    }

    /// Living pieces in the order of their marks.
    fn living_by_mark(&self) -> Vec<PieceId> {
        let mut living: Vec<_> = self.pieces().filter(|p| p.living()).collect();
        living.sort_by(|a, b| {
            evenwall_piece::agenda::by_mark(a.mark(), b.mark()).then_with(|| a.id.cmp(&b.id))
        });
        living.into_iter().map(|p| p.id.clone()).collect()
    }

    /// Writes a document. Where no folder was chosen yet, the folder is asked for first.
    pub(super) fn write_out(&mut self, what: &WriteOut, now: Moment) -> Result<(), AppError> {
        let folder = self.device().backup_folder.clone();
        if folder.is_empty() {
            self.open_device_form(DeviceField::Folder);
            return Ok(());
        }
        let in_folder = |name: &str| whole(&folder, name);
        let action = match what {
            WriteOut::Report(piece, version) => {
                let name = self.report_file_name(piece);
                let name = match version {
                    Version::Buyer => name,
                    Version::Shop => name.replace("-report.html", "-shop-report.html"),
                };
                let images = self
                    .piece(piece)
                    .map(|p| self.report_images(p, now))
                    .unwrap_or_default();
                RecordsAction::SaveReport(Box::new(ReportOrder {
                    piece: piece.clone(),
                    version: *version,
                    path: in_folder(&name),
                    images,
                }))
            }
            WriteOut::Tag(piece) => {
                let name = self.report_file_name(piece).replace("-report.", "-tag.");
                RecordsAction::SaveTags(vec![piece.clone()], in_folder(&name))
            }
            WriteOut::PieceCalendar(piece) => {
                let name = self
                    .report_file_name(piece)
                    .replace("-report.html", "-looks.ics");
                RecordsAction::SavePieceCalendar(piece.clone(), in_folder(&name))
            }
            WriteOut::Tags => {
                RecordsAction::SaveTags(self.living_by_mark(), in_folder("evenwall-tags.html"))
            }
            WriteOut::Tables => RecordsAction::SaveTables(folder),
            WriteOut::Backup => RecordsAction::BackUp,
        };
        self.apply_records(action, now)
    }

    /// Lets the system show a file.
    pub(super) fn show_file(&mut self, path: &str) -> Result<(), AppError> {
        let shown = match &self.files {
            Some(files) => files.show(path).map_err(|e| e.to_string()),
            None => Err(String::new()),
        };
        shown.map_err(|why| {
            AppError::Refused(self.words().with(
                "out-not-shown",
                &[("path", path.into()), ("why", why.into())],
            ))
        })
    }

    /// The folder that documents go to, as a row that changes it.
    pub(super) fn folder_section(&self) -> SectionView {
        let words = self.words();
        let folder = &self.device().backup_folder;
        let row = RowView::touching(
            RowKind::Open,
            "folder",
            words.text("out-field-folder"),
            ShopAction::Form(FormOf::Device(DeviceField::Folder)),
        )
        .icon("settings")
        .note(if folder.is_empty() {
            words.text("out-no-folder")
        } else {
            folder.clone()
        });
        SectionView {
            key: "folder",
            rows: vec![row],
            ..SectionView::default()
        }
    }

    /// What the last of them came to, with a row that shows the file; nothing where nothing was done yet.
    pub(super) fn outcome_section(&self) -> Option<SectionView> {
        let words = self.words();
        let said = self.records_outcome()?;
        let mut rows = vec![RowView::text("outcome", said.to_owned())];
        if let Some(path) = &self.states.records.file
            && self.files.is_some()
        {
            rows.push(
                RowView::touching(
                    RowKind::Add,
                    "show",
                    words.text("out-show"),
                    ShopAction::ShowFile(path.clone()),
                )
                .icon("eye"),
            );
        }
        Some(SectionView {
            key: "outcome",
            title: words.text("out-done"),
            rows,
            ..SectionView::default()
        })
    }
}
