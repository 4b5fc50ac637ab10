//! The machine goes down at every step of a backup and of a restore: what has the name of a backup is whole, the shelf
//! loses nothing, and doing it again ends as if nothing had happened.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod backup_world;
mod world;

use std::path::Path;

use backup_world::*;
use evenwall_piece::ids::Scope;
use evenwall_shelf::backup::{check, restore};
use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::{FaultyDisk, Left};
use world::*;

const LEFTS: [Left; 5] = [
    Left::OnlySynced,
    Left::Names,
    Left::Torn(3),
    Left::Nuls(3),
    Left::Killed,
];

fn backups(disk: &FaultyDisk) -> Vec<std::path::PathBuf> {
    let names = disk.list(Path::new(STICK)).unwrap();
    let shown = names
        .iter()
        .filter(|e| !e.name.to_string_lossy().starts_with('.'));
    shown.map(|e| Path::new(STICK).join(&e.name)).collect()
}

#[test]
fn whatever_has_the_name_of_a_backup_is_whole_after_a_crash_at_any_step() {
    let ready = two_pieces();
    let old = back_up(&ready).unwrap().path;
    ready
        .rename(&old, &Path::new(STICK).join("evenwall-20260101-000000.zip"))
        .unwrap();
    ready.sync_folder(Path::new(STICK)).unwrap();
    let shelf = every_byte(&ready, Path::new(SHELF));
    let begun = ready.steps();
    let whole = ready.fork();
    back_up(&whole).unwrap();
    assert!(whole.steps() - begun >= 5);
    for step in begun..=whole.steps() {
        let down = ready.fork();
        down.crash_at(step);
        let told = back_up(&down).is_ok();
        for left in LEFTS {
            let disk = down.fork();
            disk.restart(left);
            let found = backups(&disk);
            assert_eq!(
                found.len(),
                if told { 2 } else { found.len() },
                "step {step}, {left:?}"
            );
            assert!(!found.is_empty());
            for path in found {
                check(&disk, &path).unwrap_or_else(|e| panic!("step {step}, {left:?}: {e}"));
            }
            assert_eq!(
                every_byte(&disk, Path::new(SHELF)),
                shelf,
                "a backup changes nothing"
            );
            back_up(&disk).unwrap();
        }
    }
}

/// A shelf with lines of its own, and a backup of another.
fn before_restoring() -> (FaultyDisk, std::path::PathBuf) {
    let disk = two_pieces();
    let backup = back_up(&disk).unwrap().path;
    let mut other = open_as(&disk, "/home/turner/other", OTHER_DATA, 9).unwrap();
    note(&mut other, &piece("k07"), "mine").unwrap();
    (disk, backup)
}

fn all(disk: &FaultyDisk, shelf: &str) -> Vec<String> {
    let mut reader = evenwall_shelf::shelf::Shelf::open_reader(
        std::sync::Arc::new(disk.clone()),
        Path::new(shelf),
    )
    .unwrap();
    let mut found = all_notes(&mut reader).unwrap();
    found.sort();
    found
}

#[test]
fn a_restore_that_was_cut_off_at_any_step_is_completed_by_the_next() {
    for to in ["/home/turner/other", "/home/turner/new"] {
        let (ready, backup) = before_restoring();
        let begun = ready.steps();
        let whole = ready.fork();
        restore(&whole, Path::new(to), &backup, now()).unwrap();
        let wanted = all(&whole, to);
        assert!(whole.steps() - begun > 15, "{}", whole.steps() - begun);
        for step in begun..=whole.steps() {
            let down = ready.fork();
            down.crash_at(step);
            let told = restore(&down, Path::new(to), &backup, now()).is_ok();
            for left in LEFTS {
                let disk = down.fork();
                disk.restart(left);
                if to.ends_with("other") {
                    assert!(
                        all(&disk, to).contains(&"mine".to_owned()),
                        "step {step}, {left:?}"
                    );
                }
                if told && left == Left::OnlySynced {
                    assert_eq!(all(&disk, to), wanted, "what was told is durable");
                }
                let later = at("2026-03-14T10:00:00+01:00");
                restore(&disk, Path::new(to), &backup, later)
                    .unwrap_or_else(|e| panic!("step {step}, {left:?}: {e}"));
                disk.restart(Left::OnlySynced);
                assert_eq!(all(&disk, to), wanted, "step {step}, {left:?}");
                let mut shelf = open_as(&disk, to, OTHER_DATA, 8).unwrap();
                note(&mut shelf, &Scope::Shop, "goes on").unwrap();
            }
        }
    }
}
