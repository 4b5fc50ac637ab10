//! Files: what the app asks of the place outside the shelf where a logger's file lies. The desktop brings one; without it
//! no file can be chosen.

use evenwall_piece::piece::Moment;

use crate::app::App;

/// A file that could be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ListedFile {
    /// What [`Files::read`] wants to read it.
    pub path: String,
    /// Its name.
    pub name: String,
    /// The folder it lies in, by its own name.
    pub folder: String,
    /// When it was last written, where that is known.
    pub written: Option<Moment>,
}

/// Files outside the shelf; only ever read.
pub trait Files {
    /// Files that may be of a logger, the newest first; where nothing can be listed, none.
    fn listed(&self) -> Vec<ListedFile>;

    /// All bytes of a file.
    ///
    /// # Errors
    /// A sentence with what was found and what to do: no such file, not allowed, too large.
    fn read(&self, path: &str) -> Result<Vec<u8>, String>;
}

impl App {
    /// Brings the files of this device.
    pub fn bring_files(&mut self, files: Box<dyn Files>) {
        self.files = Some(files);
    }
}
