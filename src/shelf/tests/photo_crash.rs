//! Crash tests of photos: the machine goes down at every step; a photo that was acknowledged is there, whole, with its
//! line; one that was not leaves neither.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::collections::BTreeSet;
use std::path::Path;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PhotoId, PieceId};
use evenwall_piece::photo::{PhotoNote, PhotoOn};
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::{FaultyDisk, Left};
use evenwall_shelf::photos::{PhotoFile, hash_of};
use evenwall_shelf::shelf::Shelf;
use world::{SHELF, at, note, open, piece};

fn k07() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn add(
    shelf: &mut Shelf,
    told: &mut Vec<String>,
    id: &str,
    photos: &[&str],
) -> Result<(), ShelfError> {
    let when = at("2026-03-14T09:30:00+01:00");
    let bytes: Vec<Vec<u8>> = photos.iter().map(|p| p.as_bytes().to_vec()).collect();
    let facts = bytes.iter().enumerate().map(|(i, bytes)| {
        PieceFact::PhotoAdded(PhotoNote {
            photo: PhotoId::new(&format!("{id}-{i}")).unwrap(),
            stored: hash_of(bytes).unwrap(),
            source: hash_of(bytes).unwrap(),
            taken: None,
            width_px: 4,
            height_px: 3,
            on: PhotoOn::Portrait,
        })
    });
    shelf.append_with_photos(&k07(), when, when, facts.collect(), &bytes)?;
    told.extend(photos.iter().map(ToString::to_string));
    Ok(())
}

/// A diary, a photo, two at once, one of them there already.
fn day(disk: &FaultyDisk, told: &mut Vec<String>) -> Result<(), ShelfError> {
    let mut shelf = open(disk, 1)?;
    note(&mut shelf, &piece("k07"), "a note")?;
    add(&mut shelf, told, "a", &["first"])?;
    add(&mut shelf, told, "b", &["first", "second picture"])
}

/// Comes up again: each photo of a line is whole, each file has its line, and all that was told is there.
fn look(disk: &FaultyDisk, told: &[String]) -> Result<(), String> {
    let mut shelf = open(disk, 2).map_err(|e| e.to_string())?;
    let lines = shelf.load_piece(&k07()).map_err(|e| e.to_string())?;
    let named: BTreeSet<_> = lines
        .iter()
        .flat_map(|l| &l.facts)
        .filter_map(|f| match f {
            PieceFact::PhotoAdded(note) => Some(note.stored.clone()),
            _ => None,
        })
        .collect();
    for hash in &named {
        match shelf.photo(&k07(), hash).map_err(|e| e.to_string())? {
            PhotoFile::Here(_) => {}
            other => return Err(format!("a line names a photo that is {other:?}")),
        }
    }
    for text in told {
        if !named.contains(&hash_of(text.as_bytes()).unwrap()) {
            return Err(format!("'{text}' was told and is gone"));
        }
    }
    let folder = Path::new(SHELF).join("pieces/k07/photos");
    for entry in disk.list(&folder).unwrap_or_default() {
        let name = entry.name.to_string_lossy().into_owned();
        if !named.iter().any(|hash| name == format!("{hash}.jpg")) {
            return Err(format!("{name} has no line"));
        }
    }
    // What is shown is durable, and it goes on.
    drop(shelf);
    disk.restart(Left::OnlySynced);
    let mut shelf = open(disk, 3).map_err(|e| e.to_string())?;
    for hash in &named {
        if !matches!(shelf.photo(&k07(), hash), Ok(PhotoFile::Here(_))) {
            return Err("a photo that was shown was lost".into());
        }
    }
    let mut after = Vec::new();
    add(&mut shelf, &mut after, "after", &["after", "first"]).map_err(|e| e.to_string())
}

fn steps() -> usize {
    let disk = FaultyDisk::new();
    day(&disk, &mut Vec::new()).unwrap();
    disk.steps()
}

fn crash_at(step: usize) -> (FaultyDisk, Vec<String>) {
    let disk = FaultyDisk::new();
    let mut told = Vec::new();
    disk.crash_at(step);
    day(&disk, &mut told).ok();
    (disk, told)
}

#[test]
fn a_crash_at_any_step_torn_at_any_byte_leaves_a_photo_with_its_line_or_neither() {
    assert!(steps() > 30);
    for step in 0..=steps() {
        let (disk, told) = crash_at(step);
        let torn =
            (0..=disk.last_write_len()).flat_map(|keep| [Left::Torn(keep), Left::Nuls(keep)]);
        for left in torn.chain([Left::OnlySynced, Left::Names, Left::Killed]) {
            let disk = disk.fork();
            disk.restart(left);
            look(&disk, &told).unwrap_or_else(|e| panic!("step {step}, {left:?}: {e}"));
        }
    }
}

#[test]
fn removing_any_one_sync_is_found_out() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    note(&mut shelf, &piece("k07"), "a note").unwrap();
    drop(shelf);
    let before = disk.syncs().len();
    let whole = FaultyDisk::new();
    day(&whole, &mut Vec::new()).unwrap();
    let (steps, syncs) = (whole.steps(), whole.syncs());
    let needless: Vec<_> = syncs
        .iter()
        .enumerate()
        .skip(before)
        .filter(|(number, (_, at))| {
            !(at + 1..=steps).chain(0..at + 1).any(|step| {
                let disk = FaultyDisk::new();
                let mut told = Vec::new();
                disk.ignore_sync(*number);
                disk.crash_at(step);
                day(&disk, &mut told).ok();
                [Left::OnlySynced, Left::Names].into_iter().any(|left| {
                    let disk = disk.fork();
                    disk.restart(left);
                    look(&disk, &told).is_err()
                })
            })
        })
        .collect();
    assert!(syncs.len() > before + 8, "{syncs:?}");
    assert_eq!(needless, [] as [(usize, &(String, usize)); 0]);
}

#[test]
fn after_a_killed_start_what_was_not_synced_is_made_up_for() {
    for step in 0..steps() {
        let (killed, _) = crash_at(step);
        killed.restart(Left::Killed);
        let mut told = Vec::new();
        let mut shelf = open(&killed, 2).unwrap();
        note(&mut shelf, &piece("k07"), "second start").unwrap();
        add(&mut shelf, &mut told, "c", &["first", "second picture"]).unwrap();
        drop(shelf);
        killed.restart(Left::OnlySynced);
        look(&killed, &told).unwrap_or_else(|e| panic!("killed at step {step}: {e}"));
    }
}
