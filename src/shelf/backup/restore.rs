//! Restoring a backup: a merge into whatever shelf is there, that overwrites nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::io::ErrorKind;
use std::path::Path;

use chrono::{DateTime, FixedOffset, Utc};
use evenwall_piece::ids::Scope;

use super::check::{check, open, unpack};
use super::names::{Part, part};
use super::{BackupError, FileIn};
use crate::disk::Disk;
use crate::error::{Doing, ShelfError};
use crate::folder::{folder_of, list_journals, under};
use crate::journal::Journal;
use crate::opening::{Found, create_folders, look, sync_above, write_shelf_file};

/// What restoring did.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Restored {
    /// Lines that were missing and are there now.
    pub lines: usize,
    /// Lines that were there already.
    pub already: usize,
    /// Pieces that had no journal before.
    pub new_pieces: usize,
    /// Photos that were missing and are there now.
    pub photos: usize,
    /// Lines of the backup that cannot be read; they stay in the backup.
    pub unreadable: usize,
    /// Files of the backup that are not Evenwall's; they stay in the backup.
    pub left_out: usize,
}

/// Puts a backup into a shelf, or into an empty or missing folder, which becomes one. Lines that are not there yet go to
/// a new journal `restored-<time>.jsonl` beside the others, each with its own id, so that the fold is the same as if
/// they had never been lost; photos that are not there yet are put back. Nothing that is there is changed. Interrupted,
/// it is simply done again.
///
/// # Errors
/// [`BackupError`]; nothing was touched, save where the file system refused in the middle.
pub fn restore(
    disk: &dyn Disk,
    shelf: &Path,
    backup: &Path,
    now: DateTime<FixedOffset>,
) -> Result<Restored, BackupError> {
    let checked = check(disk, backup)?;
    match look(disk, shelf)? {
        Found::ReadOnly(why) => return Err(ShelfError::ReadOnly { why }.into()),
        Found::Shelf => {
            // Perhaps begun by a restore that was killed before it could store it.
            let file = shelf.join("shelf.json");
            disk.sync_file(&file).doing("store", &file)?;
            disk.sync_folder(shelf).doing("store", shelf)?;
        }
        Found::Nothing => {
            create_folders(disk, shelf)?;
            write_shelf_file(disk, shelf)?;
        }
    }
    sync_above(disk, [shelf, shelf])?;
    let mut archive = open(disk, backup)?;
    let mut restored = Restored::default();
    let mut journals: BTreeMap<Scope, Vec<&FileIn>> = BTreeMap::new();
    let mut photos = Vec::new();
    for file in &checked.contents.files {
        match part(&file.name) {
            Part::Journal(scope) => journals.entry(scope).or_default().push(file),
            Part::Photo(..) => photos.push(file),
            Part::Other => restored.left_out += 1,
            Part::ShelfFile => {}
        }
    }
    for (scope, files) in journals {
        let mut lines = Vec::new();
        for file in files {
            let journal = Journal::read(&unpack(&mut archive, backup, file)?);
            restored.unreadable += journal.bad.len();
            lines.extend(journal.lines);
        }
        let have = lines_there(disk, shelf, &scope)?;
        let had_any = !list_journals(disk, shelf, &under(shelf, &folder_of(&scope)))?.is_empty();
        let mut given = BTreeSet::new();
        let mut bytes = Vec::new();
        for line in lines {
            // A line that was read can always be written.
            let text = line
                .to_bytes()
                .map_err(std::io::Error::from)
                .doing("read", backup)?;
            if have.contains(&text) {
                restored.already += 1;
            } else if given.insert(text.clone()) {
                bytes.extend_from_slice(&text);
            }
        }
        if bytes.is_empty() {
            settle(disk, shelf, &scope)?;
            continue;
        }
        restored.lines += given.len();
        restored.new_pieces += usize::from(!had_any && scope != Scope::Shop);
        let folder = make_folder(disk, shelf, &folder_of(&scope))?;
        let path = folder.join(free_name(disk, &folder, now)?);
        disk.replace(&path, &bytes).doing("write to", &path)?;
        sync_up(disk, shelf, &folder_of(&scope))?;
    }
    for file in photos {
        let path = under(shelf, &file.name);
        if disk.exists(&path).doing("look at", &path)? {
            continue;
        }
        let bytes = unpack(&mut archive, backup, file)?;
        let relative = file.name.rsplit_once('/').map_or("", |(above, _)| above);
        make_folder(disk, shelf, relative)?;
        disk.replace(&path, &bytes).doing("write to", &path)?;
        sync_up(disk, shelf, relative)?;
        restored.photos += 1;
    }
    Ok(restored)
}

/// All lines that a folder holds, each as it would be written.
fn lines_there(
    disk: &dyn Disk,
    shelf: &Path,
    scope: &Scope,
) -> Result<BTreeSet<Vec<u8>>, BackupError> {
    let folder = under(shelf, &folder_of(scope));
    let mut there = BTreeSet::new();
    for name in list_journals(disk, shelf, &folder)?.into_keys() {
        let path = folder.join(name);
        let bytes = match disk.read(&path) {
            Err(e) if e.kind() == ErrorKind::NotFound => continue,
            other => other.doing("read", &path)?,
        };
        let lines = Journal::read(&bytes).lines;
        there.extend(lines.iter().filter_map(|l| l.to_bytes().ok()));
    }
    Ok(there)
}

/// Makes durable what an earlier restore may have written and was killed before it could sync.
fn settle(disk: &dyn Disk, shelf: &Path, scope: &Scope) -> Result<(), BackupError> {
    let relative = folder_of(scope);
    let folder = under(shelf, &relative);
    let names = list_journals(disk, shelf, &folder)?;
    let is_restored = |name: &&std::ffi::OsString| name.to_string_lossy().starts_with("restored-");
    let mut any = false;
    for name in names.keys().filter(is_restored) {
        let path = folder.join(name);
        disk.sync_file(&path).doing("store", &path)?;
        any = true;
    }
    if any {
        disk.sync_folder(&folder).doing("store", &folder)?;
        sync_up(disk, shelf, &relative)?;
    }
    Ok(())
}

/// Makes a folder of the shelf with those above it.
fn make_folder(
    disk: &dyn Disk,
    shelf: &Path,
    relative: &str,
) -> Result<std::path::PathBuf, BackupError> {
    let folder = under(shelf, relative);
    create_folders(disk, &folder)?;
    Ok(folder)
}

/// Makes the names of a folder and of those above it in the shelf durable.
fn sync_up(disk: &dyn Disk, shelf: &Path, relative: &str) -> Result<(), BackupError> {
    let mut name = relative;
    while !name.is_empty() {
        name = name.rsplit_once('/').map_or("", |(above, _)| above);
        let folder = under_or_root(shelf, name);
        disk.sync_folder(&folder).doing("store", &folder)?;
    }
    Ok(())
}

fn under_or_root(shelf: &Path, relative: &str) -> std::path::PathBuf {
    if relative.is_empty() {
        shelf.to_owned()
    } else {
        under(shelf, relative)
    }
}

/// `restored-20260314T083000.jsonl`, in universal time so that two devices read it alike, or with a number behind it.
fn free_name(
    disk: &dyn Disk,
    folder: &Path,
    now: DateTime<FixedOffset>,
) -> Result<String, BackupError> {
    let stem = now
        .with_timezone(&Utc)
        .format("restored-%Y%m%dT%H%M%S")
        .to_string();
    let mut name = format!("{stem}.jsonl");
    let mut number = 2;
    while disk
        .exists(&folder.join(&name))
        .doing("look into", folder)?
    {
        name = format!("{stem}-{number}.jsonl");
        number += 1;
    }
    Ok(name)
}
