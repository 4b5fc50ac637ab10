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

/// Why a file could not be read. The app says it in its own words.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FileError {
    /// There is none there.
    #[error("there is no such file")]
    NotThere,
    /// A folder, not a file.
    #[error("it is a folder")]
    Folder,
    /// Larger than any log that is read.
    #[error("it is larger than {most} bytes")]
    TooLarge {
        /// The most that is read, bytes.
        most: u64,
    },
    /// The system refused it, in the system's words.
    #[error("{0}")]
    Refused(String),
}

/// Files outside the shelf: read here, and handed to whatever program of the system shows them.
pub trait Files {
    /// Files that may be of a logger, the newest first; where nothing can be listed, none.
    fn listed(&self) -> Vec<ListedFile>;

    /// All bytes of a file.
    ///
    /// # Errors
    /// [`FileError`]: no such file, a folder, too large, or refused by the system.
    fn read(&self, path: &str) -> Result<Vec<u8>, FileError>;

    /// The folder of the turner's documents, by its whole path; `None` where the system names none.
    fn documents(&self) -> Option<String> {
        None
    }

    /// Lets the system show a file in whatever program it has for it.
    ///
    /// # Errors
    /// [`FileError::Refused`] where it has none.
    fn show(&self, path: &str) -> Result<(), FileError> {
        Err(FileError::Refused(format!("nothing here shows {path}")))
    }
}

impl App {
    /// Brings the files of this device.
    pub fn bring_files(&mut self, files: Box<dyn Files>) {
        self.files = Some(files);
    }
}
