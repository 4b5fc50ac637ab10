//! Verify: reads a whole shelf as it lies there and reports every problem with its file and line. Takes no lock, writes
//! nothing, repairs nothing.
//!
//! One folder is held in memory at a time, and of no file more than [`crate::journal::LONGEST_JOURNAL`].

use std::io::ErrorKind;
use std::ops::RangeInclusive;
use std::path::Path;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PieceId, Scope};
use evenwall_piece::shop::ShopFact;
use sha2::{Digest, Sha256};

use crate::disk::{Disk, Entry};
use crate::error::{Doing, ShelfError};
use crate::folder::{folder_of, too_long, under};
use crate::journal::LONGEST_JOURNAL;
use crate::opening::{Found, look};

mod diary;
mod problem;

pub use problem::{Problem, What};

/// Years in which an entry can have been made; others are the fault of a clock or a file.
pub const YEARS: RangeInclusive<i32> = 1970..=2199;

/// How much was looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Looked {
    /// Folders of pieces.
    pub pieces: usize,
    /// Journals.
    pub journals: usize,
    /// Lines that could be read, second copies among them.
    pub lines: usize,
    /// Photos.
    pub photos: usize,
    /// Problems that were said.
    pub problems: usize,
}

/// Reads the shelf in a folder and hands each problem to `say` as it is found.
///
/// # Errors
/// [`ShelfError`] where there is no shelf, or its folder cannot be listed. A file that cannot be read is a problem, no
/// error.
pub fn verify(
    disk: &dyn Disk,
    path: &Path,
    say: &mut dyn FnMut(Problem),
) -> Result<Looked, ShelfError> {
    let mut walk = Walk {
        disk,
        root: path,
        say,
        held: Vec::new(),
        looked: Looked::default(),
    };
    match look(disk, path) {
        Ok(Found::Shelf) => {}
        Ok(Found::ReadOnly(why)) => walk.say("shelf.json", None, What::ShelfFile(why)),
        Ok(Found::Nothing) => {
            return Err(ShelfError::Nowhere {
                path: path.to_owned(),
            });
        }
        Err(ShelfError::NoShelfFile { .. }) => walk.say("shelf.json", None, What::NoShelfFile),
        Err(other) => return Err(other),
    }
    let entries = disk.list(path).doing("list", path)?;
    for entry in sorted(entries) {
        let name = shown(&entry);
        match name.as_str() {
            "shelf.json" => walk.link(&name),
            "shop" if entry.is_folder => walk.link(&name),
            "pieces" if entry.is_folder => walk.link(&name),
            _ if is_nobodys(&name) => {}
            _ => walk.say(&name, None, What::Foreign),
        }
    }
    walk.hand_out();
    walk.folder::<ShopFact>(&Scope::Shop);
    walk.pieces();
    walk.hand_out();
    Ok(walk.looked)
}

/// Names of sync programs and desktops, and the side files of a crash.
fn is_nobodys(name: &str) -> bool {
    name.starts_with('.') || name.eq_ignore_ascii_case("desktop.ini") || name == "lost+found"
}

/// A name as it can be printed: a terminal must not take orders from it.
fn shown(entry: &Entry) -> String {
    let name = entry.name.to_string_lossy();
    name.replace(char::is_control, "\u{fffd}")
}

fn sorted(mut entries: Vec<Entry>) -> Vec<Entry> {
    entries.sort_by(|a, b| a.name.cmp(&b.name));
    entries
}

/// What goes through the shelf.
struct Walk<'a> {
    disk: &'a dyn Disk,
    root: &'a Path,
    say: &'a mut dyn FnMut(Problem),
    /// Found, and not handed out yet: those of one folder come file by file and line by line.
    held: Vec<Problem>,
    looked: Looked,
}

impl Walk<'_> {
    fn say(&mut self, path: &str, line: Option<usize>, what: What) {
        self.looked.problems += 1;
        self.held.push(Problem {
            path: path.to_owned(),
            line,
            what,
        });
    }

    /// Hands out what was found since the last time.
    fn hand_out(&mut self) {
        self.held.drain(..).for_each(&mut *self.say);
    }

    fn link(&mut self, path: &str) {
        if let Ok(true) = self.disk.is_link(&under(self.root, path)) {
            self.say(path, None, What::Link);
        }
    }

    /// The same for a file, whose name may be no text.
    fn link_in(&mut self, folder: &str, path: &str, entry: &Entry) {
        let file = under(self.root, folder).join(&entry.name);
        if let Ok(true) = self.disk.is_link(&file) {
            self.say(path, None, What::Link);
        }
    }

    /// The names in a folder of the shelf; one that is not there has none.
    fn list(&mut self, path: &str) -> Vec<Entry> {
        match self.disk.list(&under(self.root, path)) {
            Ok(entries) => sorted(entries),
            Err(e) if e.kind() == ErrorKind::NotFound => Vec::new(),
            Err(e) => {
                self.say(path, None, What::NotGiven(e.to_string()));
                Vec::new()
            }
        }
    }

    fn pieces(&mut self) {
        for entry in self.list("pieces") {
            let name = shown(&entry);
            let path = format!("pieces/{name}");
            match PieceId::new(&name) {
                Ok(id) if entry.is_folder => {
                    self.looked.pieces += 1;
                    self.link(&path);
                    self.hand_out();
                    self.folder::<PieceFact>(&Scope::Piece(id));
                }
                _ if is_nobodys(&name) => {}
                _ => self.say(&path, None, What::NoPiece),
            }
        }
    }

    /// One folder with journals: its files first, then what they say together.
    fn folder<F: diary::Points>(&mut self, scope: &Scope) {
        let folder = folder_of(scope);
        let mut diary = diary::Diary::default();
        let mut journals = 0;
        for entry in self.list(&folder) {
            let name = shown(&entry);
            let path = format!("{folder}/{name}");
            if !entry.is_folder && name.to_ascii_lowercase().ends_with(".jsonl") && name.len() > 6 {
                journals += 1;
                self.link_in(&folder, &path, &entry);
                self.journal::<F>(&folder, &path, &entry, &mut diary);
            } else if entry.is_folder && name == "photos" && matches!(scope, Scope::Piece(_)) {
                self.link(&path);
                self.photos(&path);
            } else if !is_nobodys(&name) {
                self.say(&path, None, What::Foreign);
            }
        }
        self.looked.journals += journals;
        if journals == 0 && *scope != Scope::Shop {
            self.say(&folder, None, What::NoJournal);
        }
        diary.together(&mut |path, line, what| self.say(path, Some(line), what));
        self.held
            .sort_by(|a, b| (&a.path, a.line).cmp(&(&b.path, b.line)));
        self.hand_out();
    }

    fn journal<F: diary::Points>(
        &mut self,
        folder: &str,
        path: &str,
        entry: &Entry,
        diary: &mut diary::Diary,
    ) {
        if let Some(bytes) = self.bytes(folder, path, entry) {
            self.looked.lines +=
                diary.take::<F>(path, &bytes, &mut |line, what| self.say(path, line, what));
        }
    }

    fn bytes(&mut self, folder: &str, path: &str, entry: &Entry) -> Option<Vec<u8>> {
        let why = if entry.len > LONGEST_JOURNAL {
            too_long(entry.len)
        } else {
            match self.disk.read(&under(self.root, folder).join(&entry.name)) {
                Ok(bytes) => return Some(bytes),
                Err(e) => e.to_string(),
            }
        };
        self.say(path, None, What::NotGiven(why));
        None
    }

    /// A photo's name is the hash of its bytes.
    fn photos(&mut self, folder: &str) {
        for entry in self.list(folder) {
            let name = shown(&entry);
            let path = format!("{folder}/{name}");
            let hash = name.strip_suffix(".jpg").filter(|h| {
                h.len() == 64 && h.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
            });
            let (Some(hash), false) = (hash, entry.is_folder) else {
                if !is_nobodys(&name) {
                    self.say(&path, None, What::Foreign);
                }
                continue;
            };
            self.looked.photos += 1;
            self.link_in(folder, &path, &entry);
            if let Some(bytes) = self.bytes(folder, &path, &entry) {
                let found: String = Sha256::digest(&bytes)
                    .iter()
                    .flat_map(|b| [b >> 4, b & 15])
                    .filter_map(|d| char::from_digit(u32::from(d), 16))
                    .collect();
                if found != hash {
                    self.say(&path, None, What::PhotoNotWhole);
                }
            }
        }
    }
}
