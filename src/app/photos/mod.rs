//! Photos: pictures of a piece taken in, shown, measured on, removed, brought back and tidied away.
//!
//! Reading and decoding run off the screen's thread, without this layer knowing threads: an action leaves an
//! [`ImportJob`] that [`App::photos_take_job`] hands out once; whoever takes it runs [`ImportJob::run`] wherever it
//! likes and delivers what comes out by [`App::photos_import_done`]. Outcomes of a job that was stopped are dropped.

mod compare;
mod grid;
mod import;
mod job;
mod marking;
mod newest;
mod sheet;
mod tidy;
mod tiles;
mod viewer;
mod works;

use std::collections::BTreeSet;
use std::sync::Arc;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PhotoId, PieceId};
use evenwall_piece::photo::{PhotoHash, PhotoOn};
use evenwall_piece::piece::Moment;

use crate::app::{App, AppError};
use crate::route::Page;

pub use compare::{CompareView, Side};
pub use grid::{PhotoSection, PhotosView};
pub use import::{Importing, ImportingView};
pub use job::{FileOutcome, ImportDone, ImportJob, ImportProgress, ThumbJob, ThumbsDone};
pub use marking::{MarkTool, Marking, MarkingView};
pub use newest::{FoundPicture, NewestGroup, NewestRow, PictureSource};
pub use sheet::{NewestSheet, NewestView, PickGroup, PickView};
pub use tiles::{PhotoOut, PhotoTile};
pub use viewer::{ToolsView, ViewerLabels, ViewerView};
pub use works::PhotosOutcome;
pub(crate) use works::{KEYS, Platform};

/// What can be done with photos.
#[derive(Debug, Clone, PartialEq)]
pub enum PhotosAction {
    /// Began to take in these files for something of a piece. One import runs at a time; the files of a second wait.
    Import(PieceId, PhotoOn, Vec<String>),
    /// Stopped the import: nothing more is added.
    Cancel,
    /// Recorded exactly this.
    Write(Box<PhotoWriting>),
    /// Removed a photo, and every copy of the same picture on the same thing; it can be brought back.
    Remove(PieceId, PhotoId),
    /// Brought a removed photo back.
    BringBack(PieceId, PhotoId),
    /// Began to draw on a photo.
    Mark(PieceId, PhotoId),
    /// Chose what the next taps mean.
    Tool(MarkTool),
    /// Tapped the photo: fractions of its width and height from the top left.
    Tap(f64, f64),
    /// Typed the known length.
    Known(String),
    /// Cleared what the tool drew.
    Clear,
    /// Recorded what was drawn; a new length of a crack goes into its history.
    SaveMarks,
    /// Left without recording.
    LeaveMarks,
    /// Asked what tidying would free.
    AskTidy,
    /// Tidied: removed the files of photos that were deleted 90 days ago or more.
    Tidy,
    /// Set the folder of the newest pictures; blank means the platform's usual ones.
    PictureFolder(String),
    /// Opened the sheet of the newest pictures, for something of a piece.
    Newest(PieceId, PhotoOn),
    /// Began or ended to choose several.
    Several,
    /// Touched a picture of the sheet, by its file.
    Pick(String),
    /// Added those chosen.
    AddPicked,
    /// Chose files in a dialog, or dropped them on the window, while the sheet was open.
    TakeFiles(Vec<String>),
    /// Closed the sheet.
    CloseNewest,
    /// Went so many photos on in the viewer.
    Step(i8),
    /// Showed another photo on one side (true: the right or lower one), older (-1) or newer (1).
    CompareStep(bool, i8),
    /// Went back: from drawing to the photo, from the photo to the page before.
    Leave,
    /// Saved a photo out: where it went, or why it did not.
    Out(Result<String, String>),
}

/// Facts to be recorded in one line with the photos they name.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotoWriting {
    /// The piece.
    pub piece: PieceId,
    /// What is recorded.
    pub facts: Vec<PieceFact>,
    /// The photos, JPEG; shared, as an action is copied on its way.
    pub photos: Arc<Vec<Vec<u8>>>,
    /// Their thumbnails.
    pub thumbnails: Arc<Vec<(PhotoHash, Vec<u8>)>>,
    /// What was done, for the undo bar.
    pub said: String,
}

/// What is remembered between two touches.
#[derive(Debug, Default)]
pub struct PhotosState {
    /// Counts imports, so that the outcome of a stopped one is known.
    pub(crate) generation: u64,
    pub(crate) importing: Option<Importing>,
    /// Handed out once.
    pub(crate) job: Option<ImportJob>,
    /// Imports that wait for the one that runs.
    pub(crate) waiting: Vec<(PieceId, PhotoOn, Vec<String>)>,
    pub(crate) marking: Option<Marking>,
    /// What the platform knows of pictures.
    pub(crate) platform: Platform,
    /// The sheet of the newest pictures.
    pub(crate) newest: Option<NewestSheet>,
    /// Photos whose thumbnails were tried to be made.
    pub(crate) tried: BTreeSet<PhotoHash>,
    /// The two photos beside each other.
    pub(crate) compared: [Option<PhotoId>; 2],
}

impl App {
    pub(crate) fn enter_photos(&mut self, page: Option<&Page>) {
        let state = &mut self.states.photos;
        state.newest = None;
        // What is being drawn stays with its photo.
        let stays = |m: &Marking| matches!(page, Some(Page::Photo(piece, photo)) if *piece == m.piece && *photo == m.photo);
        if !state.marking.as_ref().is_some_and(stays) {
            state.marking = None;
        }
        if !matches!(page, Some(Page::Compare(..) | Page::Photo(..))) {
            state.compared = [None, None];
        }
    }

    pub(crate) fn apply_photos(
        &mut self,
        action: PhotosAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            PhotosAction::Import(piece, on, files) => return self.photos_begin(piece, on, files),
            PhotosAction::Cancel => self.photos_cancel(),
            PhotosAction::Write(writing) => return self.photos_write(&writing, now),
            PhotosAction::Remove(piece, photo) => return self.photos_remove(&piece, &photo, now),
            PhotosAction::BringBack(piece, photo) => {
                self.record(&piece, now, vec![PieceFact::PhotoBack(photo)], now)?;
                self.say(self.words().text("photos-brought-back"));
            }
            PhotosAction::Mark(piece, photo) => self.marks_begin(&piece, &photo),
            PhotosAction::Tool(tool) => self.marks_with(|m| m.tool = tool),
            PhotosAction::Tap(x, y) => self.marks_with(|m| m.tap(x, y)),
            PhotosAction::Known(text) => self.marks_with(|m| m.known.type_in(text)),
            PhotosAction::Clear => self.marks_with(Marking::clear),
            PhotosAction::SaveMarks => return self.marks_save(now),
            PhotosAction::LeaveMarks => self.states.photos.marking = None,
            PhotosAction::AskTidy => return self.photos_ask_tidy(now),
            PhotosAction::Tidy => return self.photos_tidy(now),
            PhotosAction::PictureFolder(folder) => {
                let mut device = self.device().clone();
                device.picture_folder = folder.trim().to_owned();
                return self.set_device(device);
            }
            PhotosAction::Newest(piece, on) => return self.newest_open(piece, on),
            PhotosAction::Several => self.newest_several(),
            PhotosAction::Pick(path) => return self.newest_pick(path),
            PhotosAction::AddPicked => return self.newest_add(),
            PhotosAction::TakeFiles(files) => return self.newest_take(files),
            PhotosAction::CloseNewest => self.states.photos.newest = None,
            PhotosAction::Step(by) => self.viewer_step(by, now),
            PhotosAction::CompareStep(right, by) => self.compare_step(right, by),
            PhotosAction::Leave if self.states.photos.marking.is_some() => {
                self.states.photos.marking = None;
            }
            PhotosAction::Leave => self.back(now),
            PhotosAction::Out(went) => {
                let words = self.words();
                let text = went.map_or_else(
                    |sentence| sentence,
                    |file| words.with("photos-went", &[("file", file.into())]),
                );
                self.inform(words.text("photos-save-out"), text);
            }
        }
        Ok(())
    }

    /// A sentence where this store keeps no photos.
    pub(crate) fn photos_nowhere(&self) -> AppError {
        AppError::Refused(self.words().text("photos-nowhere"))
    }

    fn photos_remove(
        &mut self,
        piece: &PieceId,
        photo: &PhotoId,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(found) = self
            .piece(piece)
            .and_then(|p| p.photo(photo).map(|f| (p, f)))
        else {
            return Ok(());
        };
        let (of, photo) = found;
        let copies = of.photos.iter().filter(|p| {
            p.removed.is_none() && p.note.stored == photo.note.stored && p.note.on == photo.note.on
        });
        let facts: Vec<PieceFact> = copies
            .map(|p| PieceFact::PhotoRemoved(p.note.photo.clone()))
            .collect();
        if facts.is_empty() {
            return Ok(());
        }
        self.record(piece, now, facts, now)?;
        self.say(self.words().text("photos-removed"));
        Ok(())
    }
}
