//! Newest: the newest pictures of a folder, those of the last ten minutes first, as the platform lists them.

use std::path::{Path, PathBuf};

use chrono::Duration;
use evenwall_piece::piece::Moment;

use crate::app::App;
use crate::words::dates::Dates;

/// Pictures this young come first: whoever takes a photo for the piece takes it now. Common practice, no source.
const JUST_TAKEN_MINUTES: i64 = 10;

/// A picture in a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoundPicture {
    /// The file.
    pub path: PathBuf,
    /// When it was last changed, which for a camera's file is when it was taken.
    pub changed: Moment,
    /// Its length, bytes.
    pub bytes: u64,
}

/// What the platform knows of pictures. Implemented where files may be touched; shared with the thread that imports.
pub trait PictureSource: Send + Sync {
    /// The folders in which this platform's cameras and programs put pictures, those that are there.
    fn usual_folders(&self) -> Vec<PathBuf>;

    /// The newest pictures in these folders and those below, newest first, told by the ends of their names; as many as
    /// asked for. Folders that cannot be listed are passed over.
    ///
    /// # Errors
    /// A sentence where none of the folders can be listed.
    fn newest(&self, folders: &[PathBuf], most: usize) -> Result<Vec<FoundPicture>, String>;

    /// The bytes of a file of at most so many.
    ///
    /// # Errors
    /// A sentence where it is longer or cannot be read.
    fn read(&self, path: &Path, at_most: u64) -> Result<Vec<u8>, String>;
}

/// One picture to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewestRow {
    /// Its file.
    pub path: String,
    /// Its name.
    pub name: String,
    /// "09:12", or the day before it.
    pub when: String,
}

/// Pictures under one heading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewestGroup {
    /// "Taken in the last ten minutes", "Before that".
    pub title: String,
    /// Newest first.
    pub pictures: Vec<NewestRow>,
}

impl App {
    /// The folders in which to look for the newest pictures: the turner's own, else the platform's.
    #[must_use]
    pub fn photos_folders(&self, source: &dyn PictureSource) -> Vec<PathBuf> {
        match self.device().picture_folder.as_str() {
            "" => source.usual_folders(),
            own => vec![PathBuf::from(own)],
        }
    }

    /// Pictures found, in their groups; a group without pictures is left out. A clock that is ahead counts as now.
    #[must_use]
    pub fn photos_newest_view(&self, found: &[FoundPicture], now: Moment) -> Vec<NewestGroup> {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let just = |p: &&FoundPicture| now - p.changed <= Duration::minutes(JUST_TAKEN_MINUTES);
        let mut sorted: Vec<&FoundPicture> = found.iter().collect();
        sorted.sort_by(|a, b| b.changed.cmp(&a.changed).then_with(|| a.path.cmp(&b.path)));
        let row = |p: &FoundPicture| {
            let local = p.changed.with_timezone(now.offset());
            let time = local.format("%H:%M").to_string();
            let when = if local.date_naive() == now.date_naive() {
                time
            } else {
                format!("{}, {time}", dates.day_and_month(local.date_naive()))
            };
            NewestRow {
                path: p.path.to_string_lossy().into_owned(),
                name: p
                    .path
                    .file_name()
                    .unwrap_or_default()
                    .to_string_lossy()
                    .into_owned(),
                when,
            }
        };
        let group = |title: &str, pictures: Vec<NewestRow>| NewestGroup {
            title: words.text(title),
            pictures,
        };
        let (young, old): (Vec<_>, Vec<_>) = sorted.into_iter().partition(just);
        let mut groups = vec![
            group("photos-just-taken", young.into_iter().map(row).collect()),
            group("photos-before", old.into_iter().map(row).collect()),
        ];
        groups.retain(|g| !g.pictures.is_empty());
        groups
    }
}
