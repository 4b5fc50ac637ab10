//! Files: those on this computer, in the downloads or anywhere the turner says, read; and any of them shown by its program.

use std::fs::{self, File};
use std::io::{ErrorKind, Read};
use std::path::Path;
use std::process::{Command, Stdio};

use chrono::{DateTime, Local};
use directories::UserDirs;
use evenwall_app::files::{FileError, Files, ListedFile};

/// Most files that are offered.
const MOST_LISTED: usize = 20;
/// The largest file that is read, bytes: the most lines of a log, each a hundred letters in UTF-16.
const MOST_BYTES: u64 = 40_000_000;

/// The folder that the desktop calls downloads, and any path that is typed.
pub struct Downloads;

/// True for what loggers and spreadsheets call their text files.
fn may_be_a_log(path: &Path) -> bool {
    let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase());
    ending.is_some_and(|e| ["csv", "tsv", "txt"].contains(&e.as_str()))
}

/// The files of a folder that may be of a logger, the newest first.
fn listed_in(folder: &Path) -> Vec<ListedFile> {
    let name_of = |path: &Path| path.file_name().map(|n| n.to_string_lossy().into_owned());
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut files: Vec<ListedFile> = entries
        .filter(|e| may_be_a_log(&e.path()))
        .filter_map(|e| {
            let about = e.metadata().ok().filter(fs::Metadata::is_file)?;
            let written = about.modified().ok();
            Some(ListedFile {
                path: e.path().to_str()?.to_owned(),
                name: name_of(&e.path())?,
                folder: name_of(folder).unwrap_or_default(),
                written: written.map(|at| DateTime::<Local>::from(at).fixed_offset()),
            })
        })
        .collect();
    files.sort_by(|a, b| b.written.cmp(&a.written).then_with(|| a.name.cmp(&b.name)));
    files.truncate(MOST_LISTED);
    files
}

impl Files for Downloads {
    fn listed(&self) -> Vec<ListedFile> {
        UserDirs::new()
            .and_then(|dirs| dirs.download_dir().map(listed_in))
            .unwrap_or_default()
    }

    fn read(&self, path: &str) -> Result<Vec<u8>, FileError> {
        if Path::new(path).is_dir() {
            return Err(FileError::Folder);
        }
        let mut bytes = Vec::new();
        // One byte more than is allowed tells a file that is too large, however large it says it is.
        File::open(path)
            .and_then(|file| file.take(MOST_BYTES + 1).read_to_end(&mut bytes))
            .map_err(|error| match error.kind() {
                ErrorKind::NotFound => FileError::NotThere,
                _ => FileError::Refused(error.to_string()),
            })?;
        if bytes.len() as u64 > MOST_BYTES {
            return Err(FileError::TooLarge { most: MOST_BYTES });
        }
        Ok(bytes)
    }

    fn documents(&self) -> Option<String> {
        let dirs = UserDirs::new()?;
        dirs.document_dir()?.to_str().map(str::to_owned)
    }

    fn show(&self, path: &str) -> Result<(), FileError> {
        let program = if cfg!(target_os = "macos") {
            "open"
        } else if cfg!(windows) {
            "explorer"
        } else {
            "xdg-open"
        };
        let mut shown = Command::new(program)
            .arg(path)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|e| FileError::Refused(format!("{program}: {e}")))?;
        // Waited for beside the screens, so that it leaves no dead process behind.
        std::thread::spawn(move || shown.wait());
        Ok(())
    }
}
