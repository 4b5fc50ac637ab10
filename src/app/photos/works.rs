//! Works: what photos want done beside the screens, the most wanted first: an import, the newest pictures of the folder, small
//! pictures of those, and thumbnails that are missing.

use std::collections::BTreeSet;
use std::fmt;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::AtomicBool;

use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::thumbnail;
use evenwall_photo::watch::Watch;
use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::{PhotoHash, PhotoOn};
use evenwall_piece::piece::Moment;

use super::job::{ImportDone, ImportProgress, ThumbsDone};
use super::newest::{FoundPicture, PictureSource};
use crate::app::App;
use crate::route::Page;
use crate::work::{Outcome, Work};

/// Start of the keys of these works.
pub(crate) const KEYS: &str = "photos/";
const IMPORT: &str = "photos/import";
const NEWEST: &str = "photos/newest";
const PREVIEWS: &str = "photos/previews";
const THUMBS: &str = "photos/thumbs";

/// So many pictures are offered: whoever looks for an older one has a file dialog.
const MOST_OFFERED: usize = 60;
/// So many small pictures are made in one work, so that they come in little by little.
const AT_ONCE: usize = 4;
/// Steps of the progress of one file.
const STEPS: u32 = 1000;

/// What a work about photos came to.
#[derive(Debug)]
pub enum PhotosOutcome {
    /// An import.
    Imported(ImportDone),
    /// The newest pictures, or a sentence why there are none.
    Found(Result<Vec<FoundPicture>, String>),
    /// Small pictures of files that were found, JPEG; none of those that are no pictures.
    Previews(Vec<(PathBuf, Option<Vec<u8>>)>),
    /// Thumbnails rebuilt, and of which photos they were asked.
    Thumbs(Vec<PhotoHash>, ThumbsDone),
}

/// What this platform knows of pictures; nothing where pictures are no files.
#[derive(Clone, Default)]
pub(crate) struct Platform(pub(crate) Option<Arc<dyn PictureSource>>);

impl fmt::Debug for Platform {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(if self.0.is_some() {
            "Platform"
        } else {
            "no platform"
        })
    }
}

/// The small picture of a file; nothing where it is no picture.
fn preview(source: &dyn PictureSource, path: &std::path::Path) -> Option<Vec<u8>> {
    let limits = Limits::default();
    let bytes = source.read(path, limits.file_bytes).ok()?;
    let never = AtomicBool::new(false);
    let mut nobody = |_| {};
    thumbnail(&bytes, &limits, &mut Watch::new(&never, &mut nobody)).ok()
}

impl App {
    /// Gives the app what the platform knows of pictures; works about photos are handed out from then on.
    pub fn photos_use(&mut self, source: Arc<dyn PictureSource>) {
        self.states.photos.platform = Platform(Some(source));
    }

    /// The folders in which this device looks for the newest pictures; none where the platform has no pictures.
    #[must_use]
    pub(crate) fn photos_folders_now(&self) -> Vec<PathBuf> {
        let source = self.states.photos.platform.0.as_ref();
        source.map_or_else(Vec::new, |s| self.photos_folders(s.as_ref()))
    }

    /// The most wanted work about photos that is not under way.
    pub(crate) fn photos_work(&mut self) -> Option<Work> {
        let source = self.states.photos.platform.0.clone()?;
        if let Some(job) = self.photos_take_job() {
            let run = move |control: &crate::work::Control| {
                let files = u32::try_from(job.files.len()).unwrap_or(u32::MAX / STEPS);
                let done = job.run(source.as_ref(), &Limits::default(), &mut |p| {
                    control.progress(steps(p.part, files), files.saturating_mul(STEPS));
                });
                Outcome::Photos(Box::new(PhotosOutcome::Imported(done)))
            };
            return Some(self.work.begin(IMPORT.into(), Box::new(run)));
        }
        self.newest_work(&source)
            .or_else(|| self.previews_work(&source))
            .or_else(|| self.thumbs_work(&source))
    }

    fn newest_work(&mut self, source: &Arc<dyn PictureSource>) -> Option<Work> {
        let sheet = self.states.photos.newest.as_mut()?;
        if !std::mem::take(&mut sheet.wanted) {
            return None;
        }
        let folders = self.photos_folders(source.as_ref());
        let source = Arc::clone(source);
        let run = move |_: &crate::work::Control| {
            let found = source.newest(&folders, MOST_OFFERED);
            Outcome::Photos(Box::new(PhotosOutcome::Found(found)))
        };
        Some(self.work.begin(NEWEST.into(), Box::new(run)))
    }

    fn previews_work(&mut self, source: &Arc<dyn PictureSource>) -> Option<Work> {
        let sheet = self.states.photos.newest.as_ref()?;
        let paths: Vec<PathBuf> = sheet.without_preview().take(AT_ONCE).collect();
        if paths.is_empty() || self.work.is_running(PREVIEWS) {
            return None;
        }
        let source = Arc::clone(source);
        let run = move |_: &crate::work::Control| {
            let of = |path: PathBuf| {
                let small = preview(source.as_ref(), &path);
                (path, small)
            };
            let previews = paths.into_iter().map(of).collect();
            Outcome::Photos(Box::new(PhotosOutcome::Previews(previews)))
        };
        Some(self.work.begin(PREVIEWS.into(), Box::new(run)))
    }

    fn thumbs_work(&mut self, source: &Arc<dyn PictureSource>) -> Option<Work> {
        if self.work.is_running(THUMBS) {
            return None;
        }
        let tried = &self.states.photos.tried;
        let jobs = self.photos_on_page();
        let jobs = jobs
            .iter()
            .filter_map(|(piece, on)| self.photos_thumb_job(piece, on));
        let mut job = jobs
            .map(|mut job| {
                job.photos.retain(|(hash, _)| !tried.contains(hash));
                job
            })
            .find(|job| !job.photos.is_empty())?;
        job.photos.truncate(AT_ONCE);
        let source = Arc::clone(source);
        let run = move |_: &crate::work::Control| {
            let asked = job.photos.iter().map(|(hash, _)| hash.clone()).collect();
            let done = job.run(source.as_ref(), &Limits::default());
            Outcome::Photos(Box::new(PhotosOutcome::Thumbs(asked, done)))
        };
        Some(self.work.begin(THUMBS.into(), Box::new(run)))
    }

    /// Whose photos the page on top shows.
    fn photos_on_page(&self) -> Vec<(PieceId, PhotoOn)> {
        match self.route().page() {
            Some(Page::Flaw(piece, Some(flaw)) | Page::Compare(piece, flaw)) => {
                vec![(piece.clone(), PhotoOn::Flaw(flaw.clone()))]
            }
            Some(Page::Photos(piece, on)) => vec![(piece.clone(), on.clone())],
            Some(Page::Piece(piece)) => vec![(piece.clone(), PhotoOn::Portrait)],
            Some(Page::Flaws(id)) => self.piece(id).map_or_else(Vec::new, |piece| {
                let of = |on| (id.clone(), on);
                let flaws = piece.flaws.iter();
                flaws
                    .map(|f| of(PhotoOn::Flaw(f.note.flaw.clone())))
                    .collect()
            }),
            _ => Vec::new(),
        }
    }

    /// Takes in what a work came to; true where the screen may have changed.
    pub(crate) fn photos_came(&mut self, outcome: PhotosOutcome, now: Moment) -> bool {
        match outcome {
            PhotosOutcome::Imported(done) => self.photos_import_done(done, now),
            PhotosOutcome::Found(found) => {
                let sheet = self.states.photos.newest.as_mut();
                return sheet.is_some_and(|s| s.take_found(found));
            }
            PhotosOutcome::Previews(previews) => {
                if let Some(sheet) = &mut self.states.photos.newest {
                    sheet.previews.extend(previews);
                }
            }
            PhotosOutcome::Thumbs(asked, done) => {
                self.photos_thumbs_done(&done);
                self.states.photos.tried.extend(asked);
            }
        }
        true
    }

    /// A work about photos broke off: by a fault of the program, as files that are no pictures are outcomes. What it was for is
    /// not tried again in this session, and an import that ran adds nothing.
    pub(crate) fn photos_failed(&mut self, key: &str) -> bool {
        let pending: BTreeSet<PhotoHash> = self
            .photos_on_page()
            .iter()
            .filter_map(|(piece, on)| self.photos_thumb_job(piece, on))
            .flat_map(|job| job.photos.into_iter().map(|(hash, _)| hash))
            .collect();
        let words = self.words();
        let (title, text) = (
            words.text("photos-refused-title"),
            words.text("photos-failed"),
        );
        let state = &mut self.states.photos;
        match key {
            IMPORT => {
                state.importing = None;
                self.inform(title, text);
            }
            NEWEST => {
                if let Some(sheet) = &mut state.newest {
                    sheet.take_found(Err(text));
                }
            }
            PREVIEWS => {
                if let Some(sheet) = &mut state.newest {
                    let none: Vec<_> = sheet.without_preview().map(|p| (p, None)).collect();
                    sheet.previews.extend(none);
                }
            }
            _ => state.tried.extend(pending),
        }
        true
    }

    /// Takes note of how far the import is that a work runs; the screen asks now and then. True where one runs.
    pub fn photos_look_how_far(&mut self) -> bool {
        let Some(generation) = self.states.photos.importing.as_ref().map(|i| i.generation) else {
            return false;
        };
        if let Some((done, of)) = self.work_progress(IMPORT)
            && of > 0
        {
            #[allow(clippy::cast_precision_loss)] // a share of a bar needs no better
            let part = done as f32 / of as f32;
            self.photos_import_progress(&ImportProgress {
                generation,
                file: usize::try_from((done / STEPS).min(of / STEPS - 1)).unwrap_or(0),
                part,
            });
        }
        true
    }

    /// Asks for the newest pictures anew, while their sheet is open; true where it is.
    pub fn photos_look_again(&mut self) -> bool {
        let sheet = self.states.photos.newest.as_mut();
        sheet.map(|s| s.wanted = true).is_some()
    }
}

#[allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)] // thousandths of a few files
fn steps(part: f32, files: u32) -> u32 {
    (part.clamp(0.0, 1.0) * files as f32 * STEPS as f32) as u32
}
