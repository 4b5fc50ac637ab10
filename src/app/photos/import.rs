//! Import: files begin as a job, their outcomes become one line of the diary with its photos.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use evenwall_photo::prepare::Prepared;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PhotoId, PieceId};
use evenwall_piece::photo::{PhotoHash, PhotoNote, PhotoOn, PhotoTaken};
use evenwall_piece::piece::Moment;

use super::job::{ImportDone, ImportJob, ImportProgress};
use super::{PhotoWriting, PhotosAction};
use crate::action::Action;
use crate::app::{App, AppError};

/// The import that runs.
#[derive(Debug, Clone)]
pub struct Importing {
    pub(crate) generation: u64,
    pub(crate) files: usize,
    pub(crate) file: usize,
    pub(crate) part: f32,
    pub(crate) cancel: Arc<AtomicBool>,
}

/// What is shown of the import that runs.
#[derive(Debug, Clone, PartialEq)]
pub struct ImportingView {
    /// "Photo 2 of 5".
    pub text: String,
    /// How far it is, 0 to 1.
    pub part: f32,
    /// The word on the button that stops it.
    pub stop: String,
}

impl App {
    pub(super) fn photos_begin(
        &mut self,
        piece: PieceId,
        on: PhotoOn,
        files: Vec<String>,
    ) -> Result<(), AppError> {
        if self.store.photos().is_none() {
            return Err(self.photos_nowhere());
        }
        if let Some(why) = self.store.read_only() {
            return Err(AppError::Refused(why));
        }
        if files.is_empty() || self.piece(&piece).is_none() {
            return Ok(());
        }
        let state = &mut self.states.photos;
        if state.importing.is_some() {
            state.waiting.push((piece, on, files));
            return Ok(());
        }
        state.generation += 1;
        let cancel = Arc::new(AtomicBool::new(false));
        state.importing = Some(Importing {
            generation: state.generation,
            files: files.len(),
            file: 0,
            part: 0.0,
            cancel: Arc::clone(&cancel),
        });
        state.job = Some(ImportJob {
            generation: state.generation,
            piece,
            on,
            files: files.into_iter().map(PathBuf::from).collect(),
            cancel,
        });
        Ok(())
    }

    pub(super) fn photos_cancel(&mut self) {
        let state = &mut self.states.photos;
        state.waiting.clear();
        state.job = None;
        if let Some(importing) = state.importing.take() {
            importing.cancel.store(true, Ordering::Relaxed);
        }
    }

    /// The import to be run, handed out once: run it on another thread and deliver by [`App::photos_import_done`].
    pub fn photos_take_job(&mut self) -> Option<ImportJob> {
        self.states.photos.job.take()
    }

    /// Takes note of how far an import is; that of a stopped one is dropped.
    pub fn photos_import_progress(&mut self, progress: &ImportProgress) {
        if let Some(importing) = &mut self.states.photos.importing
            && importing.generation == progress.generation
        {
            importing.file = progress.file;
            importing.part = progress.part;
        }
    }

    /// What is shown of the import that runs, if one does.
    #[must_use]
    pub fn photos_importing_view(&self) -> Option<ImportingView> {
        let importing = self.states.photos.importing.as_ref()?;
        let count = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
        Some(ImportingView {
            text: self.words().with(
                "photos-importing",
                &[
                    ("n", count(importing.file + 1).into()),
                    ("of", count(importing.files).into()),
                ],
            ),
            part: importing.part,
            stop: self.words().text("photos-stop"),
        })
    }

    /// Records what came of an import as one action, and says which files were refused and why. The outcome of a stopped
    /// import is dropped.
    pub fn photos_import_done(&mut self, done: ImportDone, now: Moment) {
        let state = &mut self.states.photos;
        if state
            .importing
            .as_ref()
            .is_none_or(|i| i.generation != done.generation)
        {
            return;
        }
        state.importing = None;
        if !state.waiting.is_empty() {
            let (piece, on, files) = state.waiting.remove(0);
            self.apply(Action::Photos(PhotosAction::Import(piece, on, files)), now);
        }
        if done.cancelled {
            return;
        }
        let (writing, told) = self.photos_writing(done);
        if let Some(writing) = writing {
            self.apply(Action::Photos(PhotosAction::Write(Box::new(writing))), now);
        }
        if !told.is_empty() {
            self.inform(self.words().text("photos-refused-title"), told.join("\n"));
        }
    }

    /// What is to be recorded, and a sentence for each file that is not.
    fn photos_writing(&mut self, done: ImportDone) -> (Option<PhotoWriting>, Vec<String>) {
        let (mut facts, mut photos, mut thumbnails) = (Vec::new(), Vec::new(), Vec::new());
        let mut told = Vec::new();
        let mut sources = Vec::new();
        for file in done.files {
            let name = file.name;
            let photo = match file.photo {
                Ok(photo) => *photo,
                Err(why) => {
                    let args = [("name", name.into()), ("why", why.into())];
                    told.push(self.words().with("photos-refused", &args));
                    continue;
                }
            };
            let Some(note) = self.photos_note(&photo, &done.on) else {
                continue;
            };
            let again = sources.contains(&note.source)
                || self
                    .piece(&done.piece)
                    .is_some_and(|p| p.same_photo(&note.source, &done.on).is_some());
            if again {
                told.push(self.words().with("photos-again", &[("name", name.into())]));
                continue;
            }
            sources.push(note.source.clone());
            thumbnails.push((note.stored.clone(), photo.thumbnail));
            photos.push(photo.jpeg);
            facts.push(PieceFact::PhotoAdded(note));
        }
        if facts.is_empty() {
            return (None, told);
        }
        let n = i64::try_from(facts.len()).unwrap_or(i64::MAX);
        let writing = PhotoWriting {
            piece: done.piece,
            facts,
            photos: Arc::new(photos),
            thumbnails: Arc::new(thumbnails),
            said: self.words().with("photos-added", &[("n", n.into())]),
        };
        (Some(writing), told)
    }

    fn photos_note(&mut self, photo: &Prepared, on: &PhotoOn) -> Option<PhotoNote> {
        Some(PhotoNote {
            photo: PhotoId::new(&self.new_slug("ph")).ok()?,
            stored: PhotoHash::new(&photo.stored_sha256).ok()?,
            source: PhotoHash::new(&photo.source_sha256).ok()?,
            taken: photo.taken.map(|t| PhotoTaken {
                local: t.local,
                offset: t.offset,
            }),
            width_px: photo.width,
            height_px: photo.height,
            on: on.clone(),
        })
    }

    pub(super) fn photos_write(
        &mut self,
        writing: &PhotoWriting,
        now: Moment,
    ) -> Result<(), AppError> {
        let (facts, photos) = (writing.facts.clone(), &writing.photos);
        self.record_with_photos(&writing.piece, now, facts, photos, now)?;
        if let Some(store) = self.store.photos_mut() {
            for (hash, jpeg) in writing.thumbnails.iter() {
                // A cache: one that is not kept is rebuilt when it is shown.
                store.save_thumbnail(hash, jpeg).unwrap_or_default();
            }
        }
        self.say(writing.said.clone());
        Ok(())
    }
}
