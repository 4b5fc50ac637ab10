//! Folder: all journals of one folder, put together into one list of lines.
//!
//! Every `*.jsonl` is read whatever its name, so the conflict copies of sync programs are harmless. The result does not
//! depend on the order of the files.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fmt::Write as _;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use evenwall_piece::ids::{DeviceId, Scope};
use sha2::{Digest, Sha256};

use crate::disk::{Disk, Entry};
use crate::error::{Doing, ShelfError};
use crate::journal::{Journal, LONGEST_JOURNAL};
use crate::line::RawLine;
use crate::notice::Notice;

/// The folder of a scope, relative to the shelf, with `/`.
#[must_use]
pub fn folder_of(scope: &Scope) -> String {
    match scope {
        Scope::Shop => "shop".to_owned(),
        Scope::Piece(id) => format!("pieces/{id}"),
    }
}

/// The journal of a device in the folder of a scope, relative to the shelf, with `/`.
#[must_use]
pub fn journal_of(scope: &Scope, device: &DeviceId) -> String {
    format!("{}/{device}.jsonl", folder_of(scope))
}

/// A path of this system from one relative to the shelf.
pub(crate) fn under(root: &Path, relative: &str) -> PathBuf {
    relative
        .split('/')
        .fold(root.to_owned(), |path, part| path.join(part))
}

/// A file as it was when it was last listed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Seen {
    pub len: u64,
    pub modified: Option<SystemTime>,
}

/// The journals of a folder as listed.
pub(crate) type Files = BTreeMap<OsString, Seen>;

/// What a folder holds.
#[derive(Debug, Default)]
pub(crate) struct Folder {
    /// All lines in the order of the fold: `(seq, device, n)`.
    pub lines: Vec<RawLine>,
    /// What was odd.
    pub notices: Vec<Notice>,
    /// The journals as listed.
    pub files: Files,
    /// The bytes of this device's own journal, where there is one.
    pub own: Option<Vec<u8>>,
}

/// The names in a folder of a shelf; none where there is no such folder.
///
/// # Errors
/// As the file system says; also where the shelf itself is gone, which must not look like an empty one.
pub(crate) fn list_if_there(
    disk: &dyn Disk,
    root: &Path,
    folder: &Path,
) -> Result<Vec<Entry>, ShelfError> {
    match disk.list(folder) {
        Err(e) if e.kind() == ErrorKind::NotFound => {
            if disk.exists(root).doing("look for", root)? {
                Ok(Vec::new())
            } else {
                Err(e).doing("find the shelf", root)
            }
        }
        other => other.doing("list", folder),
    }
}

/// The journals in a folder; none where there is no such folder.
pub(crate) fn list_journals(
    disk: &dyn Disk,
    root: &Path,
    folder: &Path,
) -> Result<Files, ShelfError> {
    let entries = list_if_there(disk, root, folder)?;
    let is_journal = |name: &OsString| {
        let name = name.to_string_lossy();
        name.len() > 6 && name.as_bytes()[name.len() - 6..].eq_ignore_ascii_case(b".jsonl")
    };
    let journals = entries
        .into_iter()
        .filter(|e| !e.is_folder && is_journal(&e.name));
    Ok(journals
        .map(|e| {
            (
                e.name,
                Seen {
                    len: e.len,
                    modified: e.modified,
                },
            )
        })
        .collect())
}

/// Reads all journals of a folder. `own` is this device's id; a reader has none.
pub(crate) fn read_folder(
    disk: &dyn Disk,
    root: &Path,
    scope: &Scope,
    own: Option<&DeviceId>,
) -> Result<Folder, ShelfError> {
    let relative = folder_of(scope);
    let path = under(root, &relative);
    let own_name = own.map(|id| OsString::from(format!("{id}.jsonl")));
    let mut folder = Folder {
        files: list_journals(disk, root, &path)?,
        ..Folder::default()
    };
    for (name, seen) in &folder.files {
        let file = format!("{relative}/{}", name.to_string_lossy());
        let is_own = own_name.as_ref() == Some(name);
        if seen.len > LONGEST_JOURNAL {
            folder.notices.push(Notice::FileUnreadable {
                file,
                why: too_long(seen.len),
            });
            continue;
        }
        let bytes = match disk.read(&path.join(name)) {
            Ok(bytes) => bytes,
            // Renamed by a sync program since it was listed: the next refresh finds it.
            Err(e) if e.kind() == ErrorKind::NotFound => continue,
            Err(e) => {
                folder.notices.push(Notice::FileUnreadable {
                    file,
                    why: e.to_string(),
                });
                continue;
            }
        };
        let journal = Journal::read(&bytes);
        for bad in journal.bad {
            folder.notices.push(if bad.is_tail && !is_own {
                Notice::StillArriving {
                    file: file.clone(),
                    line: bad.line,
                }
            } else {
                Notice::Line {
                    file: file.clone(),
                    line: bad.line,
                    why: bad.why,
                }
            });
        }
        if journal.more_bad > 0 {
            folder.notices.push(Notice::MoreLines {
                file: file.clone(),
                count: journal.more_bad,
            });
        }
        if folder.lines.is_empty() {
            folder.lines = journal.lines;
        } else {
            folder.lines.extend(journal.lines);
        }
        if is_own {
            folder.own = Some(bytes);
        }
    }
    folder.lines = merge(
        std::mem::take(&mut folder.lines),
        &relative,
        &mut folder.notices,
    );
    Ok(folder)
}

/// What is said of a journal that is too long to be read.
pub(crate) fn too_long(found: u64) -> String {
    format!("it is {found} bytes long, {LONGEST_JOURNAL} are allowed")
}

/// Drops second copies of a line, reports numbers that are missing, keeps both of two different lines with one number,
/// and sorts into the order of the fold.
pub(crate) fn merge(
    mut lines: Vec<RawLine>,
    folder: &str,
    notices: &mut Vec<Notice>,
) -> Vec<RawLine> {
    lines.sort_by(|a, b| a.id.cmp(&b.id));
    if lines.windows(2).any(|w| w[0].id == w[1].id) {
        lines = part_copies(lines, folder, notices);
    }
    let mut last: Option<&RawLine> = None;
    for line in &lines {
        let before = last
            .filter(|l| l.id.device == line.id.device)
            .map_or(0, |l| l.id.n);
        if line.id.n > before + 1 && !is_parted(&line.id.device) {
            notices.push(Notice::Missing {
                folder: folder.to_owned(),
                device: line.id.device.clone(),
                from: before + 1,
                to: line.id.n - 1,
            });
        }
        last = Some(line);
    }
    lines.sort_by(|a, b| (a.seq, &a.id).cmp(&(b.seq, &b.id)));
    lines
}

const PARTED: &str = "-clash-";

/// True for the made-up device name of a line that shares its number with another.
pub(crate) fn is_parted(device: &DeviceId) -> bool {
    device.as_str().contains(PARTED)
}

/// Takes lines sorted by id. Of equal lines one stays; of different ones with one number the first by its text keeps the
/// number, the others get a device name made from their text, the same on every device that reads them.
fn part_copies(lines: Vec<RawLine>, folder: &str, notices: &mut Vec<Notice>) -> Vec<RawLine> {
    let mut kept: Vec<RawLine> = Vec::with_capacity(lines.len());
    let mut group: Vec<(Vec<u8>, RawLine)> = Vec::new();
    let mut close = |group: &mut Vec<(Vec<u8>, RawLine)>, kept: &mut Vec<RawLine>| {
        group.sort_by(|a, b| a.0.cmp(&b.0));
        group.dedup_by(|a, b| a.0 == b.0);
        for (place, (text, mut line)) in group.drain(..).enumerate() {
            if place > 0 {
                let (device, n) = (line.id.device.clone(), line.id.n);
                notices.push(Notice::Clash {
                    folder: folder.to_owned(),
                    device,
                    n,
                });
                line.id.device = parted_name(&line.id.device, &text);
            }
            kept.push(line);
        }
    };
    for line in lines {
        if group.last().is_some_and(|(_, l)| l.id != line.id) {
            close(&mut group, &mut kept);
        }
        // A line that was read can always be written; were it not so, it would still be kept.
        let text = line.to_bytes().unwrap_or_default();
        group.push((text, line));
    }
    close(&mut group, &mut kept);
    kept.sort_by(|a, b| a.id.cmp(&b.id));
    kept
}

fn parted_name(device: &DeviceId, text: &[u8]) -> DeviceId {
    let mut name: String = device.as_str().chars().take(44).collect();
    name.push_str(PARTED);
    for byte in &Sha256::digest(text)[..6] {
        // Writing to a string cannot fail.
        let _ = write!(name, "{byte:02x}");
    }
    // 44 + 7 + 12 legal characters are a legal id.
    DeviceId::new(&name).unwrap_or_else(|_| device.clone())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    fn line(device: &str, n: u64, seq: u64, text: &str) -> RawLine {
        let text = format!(
            r#"{{"device":"{device}","n":{n},"seq":{seq},"at":"2026-01-01T00:00:00Z","noted_at":"2026-01-01T00:00:00Z","v":1,"facts":["{text}"]}}"#
        );
        RawLine::parse(text.as_bytes()).unwrap()
    }

    fn merged(lines: Vec<RawLine>) -> (Vec<String>, Vec<Notice>) {
        let mut notices = Vec::new();
        let lines = merge(lines, "shop", &mut notices);
        (
            lines
                .iter()
                .map(|l| l.facts[0].get().trim_matches('"').to_owned())
                .collect(),
            notices,
        )
    }

    #[test]
    fn a_missing_number_is_said_once() {
        let (_, notices) = merged(vec![
            line("a", 2, 1, "x"),
            line("a", 7, 2, "y"),
            line("b", 1, 1, "z"),
        ]);
        let said: Vec<_> = notices.iter().map(ToString::to_string).collect();
        assert_eq!(
            said,
            [
                "shop: line 1 of a is missing or still arriving",
                "shop: lines 3 to 6 of a are missing or still arriving"
            ]
        );
    }

    #[test]
    fn two_lines_with_one_number_are_both_kept_the_same_way_round_in_any_order() {
        let (x, y, z) = (
            line("a", 1, 1, "x"),
            line("a", 1, 1, "y"),
            line("a", 2, 2, "z"),
        );
        let one = merge(
            vec![x.clone(), y.clone(), z.clone(), x.clone()],
            "shop",
            &mut Vec::new(),
        );
        let other = merge(vec![y, z, x.clone(), x], "shop", &mut Vec::new());
        assert_eq!(one.len(), 3);
        assert_eq!(one, other);
        let ids: std::collections::BTreeSet<_> = one.iter().map(|l| l.id.clone()).collect();
        assert_eq!(ids.len(), 3, "every line has an id of its own");
    }

    #[test]
    fn the_order_is_seq_then_device_then_number() {
        let (texts, notices) = merged(vec![
            line("b", 1, 1, "2"),
            line("a", 2, 2, "3"),
            line("a", 1, 1, "1"),
            line("b", 2, 3, "4"),
        ]);
        assert_eq!(texts, ["1", "2", "3", "4"]);
        assert_eq!(notices, []);
    }
}
