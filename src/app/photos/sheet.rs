//! Sheet: the newest pictures over a page, to take from: one with a touch, or several.

use std::collections::BTreeMap;
use std::path::PathBuf;

use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Moment;

use super::PhotosAction;
use super::newest::FoundPicture;
use crate::app::{App, AppError};
use crate::route::Page;

/// The sheet while it is open.
#[derive(Debug, Clone)]
pub struct NewestSheet {
    pub(crate) piece: PieceId,
    pub(crate) on: PhotoOn,
    /// To be listed, or listed anew.
    pub(crate) wanted: bool,
    listed: bool,
    found: Vec<FoundPicture>,
    problem: String,
    several: bool,
    picked: Vec<String>,
    /// Small pictures, JPEG; none of files that are no pictures.
    pub(crate) previews: BTreeMap<PathBuf, Option<Vec<u8>>>,
}

impl NewestSheet {
    /// Takes the pictures that were found; true where they are others than before.
    pub(super) fn take_found(&mut self, found: Result<Vec<FoundPicture>, String>) -> bool {
        let (found, problem) = match found {
            Ok(found) => (found, String::new()),
            Err(sentence) => (Vec::new(), sentence),
        };
        let changed = !self.listed || found != self.found || problem != self.problem;
        self.listed = true;
        self.found = found;
        self.problem = problem;
        let there = |path: &String| self.found.iter().any(|f| f.path.to_string_lossy() == *path);
        self.picked.retain(there);
        changed
    }

    /// Pictures of which no small one was made yet, newest first.
    pub(super) fn without_preview(&self) -> impl Iterator<Item = PathBuf> {
        let all = self.found.iter().map(|f| &f.path);
        all.filter(|p| !self.previews.contains_key(*p)).cloned()
    }

    fn pick(&mut self, path: String) {
        match self.picked.iter().position(|p| *p == path) {
            Some(place) => drop(self.picked.remove(place)),
            None => self.picked.push(path),
        }
    }
}

/// A picture to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PickView {
    /// Its file.
    pub path: String,
    /// "IMG_0012.jpg, 09:12", for a screen reader.
    pub label: String,
    /// "09:12".
    pub when: String,
    /// Chosen, of several.
    pub picked: bool,
    /// Its small picture, JPEG, is there to be asked for.
    pub shown: bool,
    /// Said in its place where it cannot be shown; empty while it is being made.
    pub note: String,
}

/// Pictures under a heading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PickGroup {
    /// "Taken in the last ten minutes".
    pub title: String,
    /// Newest first.
    pub pictures: Vec<PickView>,
}

/// The sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewestView {
    /// Heads it.
    pub title: String,
    /// Whose photos they become, and what a touch does.
    pub hint: String,
    /// The groups that hold pictures.
    pub groups: Vec<PickGroup>,
    /// Said where nothing was found, or while it is being looked.
    pub empty: String,
    /// The word for choosing several.
    pub several: String,
    /// Several are being chosen.
    pub several_on: bool,
    /// The words for on and off.
    pub on_off: (String, String),
    /// The button that adds those chosen; empty while one touch adds.
    pub add: String,
    /// It can be pressed.
    pub add_active: bool,
    /// The button for a file.
    pub file: String,
    /// The word for closing.
    pub close: String,
}

impl App {
    pub(super) fn newest_open(&mut self, piece: PieceId, on: PhotoOn) -> Result<(), AppError> {
        if self.store.photos().is_none() {
            return Err(self.photos_nowhere());
        }
        if let Some(why) = self.store.read_only() {
            return Err(AppError::Refused(why));
        }
        self.undo.hide();
        self.states.photos.newest = Some(NewestSheet {
            piece,
            on,
            wanted: true,
            listed: false,
            found: Vec::new(),
            problem: String::new(),
            several: false,
            picked: Vec::new(),
            previews: BTreeMap::new(),
        });
        Ok(())
    }

    pub(super) fn newest_several(&mut self) {
        if let Some(sheet) = &mut self.states.photos.newest {
            sheet.several = !sheet.several;
            sheet.picked.clear();
        }
    }

    /// A picture was touched: it is added at once, or chosen where several are.
    pub(super) fn newest_pick(&mut self, path: String) -> Result<(), AppError> {
        match &mut self.states.photos.newest {
            Some(sheet) if sheet.several => {
                sheet.pick(path);
                Ok(())
            }
            Some(_) => self.newest_take(vec![path]),
            None => Ok(()),
        }
    }

    pub(super) fn newest_add(&mut self) -> Result<(), AppError> {
        let sheet = self.states.photos.newest.as_ref();
        let picked = sheet.map(|s| s.picked.clone()).unwrap_or_default();
        if picked.is_empty() {
            return Ok(());
        }
        self.newest_take(picked)
    }

    /// Files for what the sheet is open for, also chosen in a dialog; the sheet closes.
    pub(super) fn newest_take(&mut self, files: Vec<String>) -> Result<(), AppError> {
        let Some(sheet) = self.states.photos.newest.take() else {
            return Err(AppError::Refused(self.words().text("photos-drop-where")));
        };
        self.photos_begin(sheet.piece, sheet.on, files)
    }

    /// What the page on top shows photos of, or takes them for.
    #[must_use]
    pub fn photos_here(&self) -> Option<(PieceId, PhotoOn)> {
        let (piece, on) = match self.route().page()? {
            Page::Flaw(piece, Some(flaw)) | Page::Compare(piece, flaw) => {
                (piece, PhotoOn::Flaw(flaw.clone()))
            }
            Page::Photos(piece, on) => (piece, on.clone()),
            Page::Photo(piece, photo) => {
                let found = self.piece(piece)?.photo(photo)?;
                (piece, found.note.on.clone())
            }
            Page::Piece(piece) => (piece, PhotoOn::Portrait),
            Page::Finishing(piece) => (piece, PhotoOn::Finished),
            _ => return None,
        };
        Some((piece.clone(), on))
    }

    /// What becomes of files that were chosen in a dialog or dropped on the window: photos of what the open sheet is for,
    /// else of what the page shows photos of; elsewhere a sentence says where they can be dropped.
    #[must_use]
    pub fn photos_for(&self, files: Vec<String>) -> PhotosAction {
        match self.photos_here() {
            Some((piece, on)) if self.states.photos.newest.is_none() => {
                PhotosAction::Import(piece, on, files)
            }
            _ => PhotosAction::TakeFiles(files),
        }
    }

    /// The small picture of a file in the sheet, JPEG.
    #[must_use]
    pub fn photos_preview(&self, path: &str) -> Option<&[u8]> {
        let sheet = self.states.photos.newest.as_ref()?;
        sheet.previews.get(std::path::Path::new(path))?.as_deref()
    }

    /// The sheet of the newest pictures, while it is open.
    #[must_use]
    pub fn photos_sheet_view(&self, now: Moment) -> Option<NewestView> {
        let sheet = self.states.photos.newest.as_ref()?;
        let words = self.words();
        let groups = self.photos_newest_view(&sheet.found, now);
        let pick = |row: super::NewestRow| {
            let preview = sheet.previews.get(std::path::Path::new(&row.path));
            PickView {
                label: format!("{}, {}", row.name, row.when),
                picked: sheet.picked.contains(&row.path),
                shown: matches!(preview, Some(Some(_))),
                note: match preview {
                    Some(None) => row.name,
                    _ => String::new(),
                },
                when: row.when,
                path: row.path,
            }
        };
        let groups: Vec<PickGroup> = groups
            .into_iter()
            .map(|g| PickGroup {
                title: g.title,
                pictures: g.pictures.into_iter().map(pick).collect(),
            })
            .collect();
        let piece = self.piece(&sheet.piece);
        let of = piece.map_or_else(String::new, |p| self.photo_on_title(p, &sheet.on));
        let mark = self.mark_of(&sheet.piece);
        let hint = if sheet.several {
            "photos-newest-several-hint"
        } else {
            "photos-newest-hint"
        };
        Some(NewestView {
            title: words.text("photos-newest-title"),
            hint: words.with(hint, &[("mark", mark.into()), ("of", of.into())]),
            empty: if !groups.is_empty() {
                String::new()
            } else if !sheet.problem.is_empty() {
                sheet.problem.clone()
            } else if sheet.listed {
                let folders = self.photos_folders_in_words();
                words.with("photos-newest-none", &[("folders", folders.into())])
            } else {
                words.text("photos-newest-looking")
            },
            groups,
            several: words.text("photos-several"),
            several_on: sheet.several,
            on_off: (words.text("answer-yes"), words.text("answer-no")),
            add: if sheet.several {
                words.with("photos-add-picked", &[("n", sheet.picked.len().into())])
            } else {
                String::new()
            },
            add_active: !sheet.picked.is_empty(),
            file: words.text("photos-choose-file"),
            close: words.text("action-close"),
        })
    }

    /// The folders that are looked into, by name.
    pub(crate) fn photos_folders_in_words(&self) -> String {
        let folders = self.photos_folders_now();
        if folders.is_empty() {
            return self.words().text("photos-no-folders");
        }
        let names = folders.iter().map(|f| f.display().to_string());
        names.collect::<Vec<_>>().join(", ")
    }
}
