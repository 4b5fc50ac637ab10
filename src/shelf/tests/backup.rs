//! Backup and restore: everything goes in, a merge comes out, nothing that is there changes.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod backup_world;
mod world;

use std::path::Path;

use backup_world::*;
use evenwall_piece::ids::Scope;
use evenwall_shelf::backup::{BackupError, check, file_name, restore, write};
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::faulty::{FaultyDisk, Trouble};
use world::*;

#[test]
fn a_backup_holds_every_file_of_the_shelf_and_is_named_by_its_time() {
    let disk = two_pieces();
    let written = back_up(&disk).unwrap();
    assert_eq!(
        written.path,
        Path::new("/media/stick/evenwall-20260314-093000.zip")
    );
    // shelf.json, the shop, two pieces, a photo and a stranger's note.
    assert_eq!(written.files, 6);
    let checked = check(&disk, &written.path).unwrap();
    assert_eq!(
        (checked.pieces.len(), checked.journals, checked.photos),
        (2, 3, 1)
    );
    assert_eq!(checked.made_at, now());
    assert_eq!(file_name(now()), "evenwall-20260314-093000.zip");
}

#[test]
fn a_backup_put_into_an_empty_folder_is_the_shelf_again_line_for_line() {
    let disk = two_pieces();
    let written = back_up(&disk).unwrap();
    let restored = restore(&disk, Path::new("/home/turner/new"), &written.path, now()).unwrap();
    assert_eq!(
        (restored.lines, restored.already, restored.new_pieces),
        (4, 0, 2)
    );
    assert_eq!(
        (restored.photos, restored.unreadable, restored.left_out),
        (1, 0, 1)
    );
    let (mut old, mut new) = (
        open(&disk, 2).unwrap(),
        open_as(&disk, "/home/turner/new", DATA, 3).unwrap(),
    );
    for scope in [Scope::Shop, piece("k07"), piece("k08")] {
        assert_eq!(
            old.load(&scope).unwrap(),
            new.load(&scope).unwrap(),
            "ids and order are kept"
        );
    }
    assert_eq!(
        disk.read(Path::new("/home/turner/new/pieces/k07/photos/0af3.jpg"))
            .unwrap(),
        PHOTO
    );
    // The device that restored goes on writing without a clash.
    note(&mut new, &piece("k07"), "after").unwrap();
    assert_eq!(notes(&mut new, &piece("k07")), ["first", "second", "after"]);
    assert_eq!(new.notices().count(), 0);
}

#[test]
fn a_restore_into_a_living_shelf_adds_what_is_missing_and_changes_no_byte() {
    let disk = two_pieces();
    let written = back_up(&disk).unwrap();
    // Since then: more lines here, and the journals of k08 were lost.
    let mut shelf = open(&disk, 2).unwrap();
    note(&mut shelf, &piece("k07"), "since").unwrap();
    let device = shelf.device().unwrap().to_string();
    drop(shelf);
    let lost = journal("pieces/k08", &device);
    disk.rename(&lost, Path::new("/home/turner/lost.txt"))
        .unwrap();
    let before = every_byte(&disk, Path::new(SHELF));

    let restored = restore(&disk, Path::new(SHELF), &written.path, now()).unwrap();
    assert_eq!(
        (restored.lines, restored.already, restored.new_pieces),
        (1, 3, 1)
    );
    let after = every_byte(&disk, Path::new(SHELF));
    for (name, bytes) in &before {
        assert_eq!(after.get(name), Some(bytes), "{name}");
    }
    let new: Vec<_> = after.keys().filter(|k| !before.contains_key(*k)).collect();
    assert_eq!(new, ["pieces/k08/restored-20260314T083000.jsonl"]);
    let mut shelf = open(&disk, 4).unwrap();
    assert_eq!(
        notes(&mut shelf, &piece("k07")),
        ["first", "second", "since"]
    );
    assert_eq!(notes(&mut shelf, &piece("k08")), ["other piece"]);
}

#[test]
fn restoring_twice_is_restoring_once() {
    let disk = two_pieces();
    let written = back_up(&disk).unwrap();
    let to = Path::new("/home/turner/new");
    restore(&disk, to, &written.path, now()).unwrap();
    let once = every_byte(&disk, to);
    let again = restore(&disk, to, &written.path, at("2026-03-15T10:00:00+01:00")).unwrap();
    assert_eq!((again.lines, again.already, again.photos), (0, 4, 0));
    assert_eq!(every_byte(&disk, to), once);
}

#[test]
fn an_open_shelf_finds_what_was_restored_by_its_refresh() {
    let disk = two_pieces();
    let written = back_up(&disk).unwrap();
    let mut other = open_as(&disk, "/home/turner/other", OTHER_DATA, 9).unwrap();
    note(&mut other, &piece("k07"), "mine").unwrap();
    restore(&disk, Path::new("/home/turner/other"), &written.path, now()).unwrap();
    let changed = other.refresh().unwrap();
    assert_eq!(changed, [Scope::Shop, piece("k07"), piece("k08")]);
    let mut found = notes(&mut other, &piece("k07"));
    found.sort();
    assert_eq!(found, ["first", "mine", "second"]);
}

#[test]
fn two_backups_with_different_lines_of_one_number_both_come_back() {
    let disk = two_pieces();
    let one = back_up(&disk).unwrap().path;
    let twin = FaultyDisk::new();
    make_two_pieces(&twin, "elsewhere");
    let other = back_up(&twin).unwrap().path;
    disk.write(
        Path::new("/media/stick/other.zip"),
        &twin.read(&other).unwrap(),
    )
    .unwrap();
    let to = Path::new("/home/turner/new");
    restore(&disk, to, &one, now()).unwrap();
    let second = restore(&disk, to, Path::new("/media/stick/other.zip"), now()).unwrap();
    assert!(second.lines > 0);
    let mut shelf = open_as(&disk, "/home/turner/new", DATA, 5).unwrap();
    let mut found = notes(&mut shelf, &piece("k07"));
    found.sort();
    assert_eq!(found, ["elsewhere", "first", "second"]);
}

#[test]
fn a_backup_into_the_shelf_itself_is_refused() {
    let disk = two_pieces();
    let error = write(
        &disk,
        Path::new(SHELF),
        Path::new(SHELF),
        now(),
        &mut |_, _| true,
    )
    .unwrap_err();
    assert!(
        matches!(error, BackupError::InsideTheShelf { .. }),
        "{error}"
    );
    assert!(error.to_string().contains("choose another folder"));
}

#[test]
fn a_full_stick_and_a_stopped_backup_leave_no_file_that_looks_like_one() {
    let disk = two_pieces();
    let stopped = write(
        &disk,
        Path::new(SHELF),
        Path::new(STICK),
        now(),
        &mut |done, all| done * 2 < all,
    );
    assert!(matches!(stopped, Err(BackupError::Stopped)));
    disk.trouble(Some(Trouble::Full(100)));
    let full = back_up(&disk).unwrap_err();
    assert!(full.to_string().contains("the disk is full"), "{full}");
    disk.trouble(None);
    let names = disk.list(Path::new(STICK)).unwrap();
    assert!(
        names
            .iter()
            .all(|e| e.name.to_string_lossy().starts_with('.')),
        "{names:?}"
    );
    // The next one is whole, whatever the failed ones left behind.
    let written = back_up(&disk).unwrap();
    check(&disk, &written.path).unwrap();
}

#[test]
fn bad_lines_and_strangers_files_stay_in_the_backup_and_are_counted() {
    let disk = two_pieces();
    disk.append(
        &Path::new(SHELF).join("pieces/k07/torn.jsonl"),
        b"{\"device\":\"x\",\n\xff\n",
    )
    .unwrap();
    let written = back_up(&disk).unwrap();
    let restored = restore(&disk, Path::new("/home/turner/new"), &written.path, now()).unwrap();
    assert_eq!(
        (restored.lines, restored.unreadable, restored.left_out),
        (4, 2, 1)
    );
}

#[test]
fn the_real_disk_writes_and_restores_in_chunks() {
    let temp = tempfile::tempdir().unwrap();
    let disk = RealDisk::new();
    let (shelf, stick) = (temp.path().join("shelf"), temp.path().join("stick"));
    disk.create_folder(&stick).unwrap();
    let open = |path: &Path| {
        evenwall_shelf::shelf::Shelf::open(
            std::sync::Arc::new(RealDisk::new()),
            path,
            &temp.path().join("device"),
            [7; 16],
        )
        .unwrap()
    };
    let mut writer = open(&shelf);
    note(&mut writer, &piece("k07"), "kept").unwrap();
    drop(writer);
    // Bytes that cannot be squeezed, longer than a chunk.
    let noise: Vec<u8> = (0..700_000_u32)
        .map(|i| (i.wrapping_mul(2_654_435_761) >> 24) as u8)
        .collect();
    disk.create_folder(&shelf.join("pieces/k07/photos"))
        .unwrap();
    disk.write(&shelf.join("pieces/k07/photos/aa.jpg"), &noise)
        .unwrap();
    let mut told = Vec::new();
    let written = write(&disk, &shelf, &stick, now(), &mut |done, all| {
        told.push((done, all));
        true
    })
    .unwrap();
    assert_eq!(told.last().map(|(done, all)| done == all), Some(true));
    let new = temp.path().join("new");
    restore(&disk, &new, &written.path, now()).unwrap();
    assert_eq!(
        disk.read(&new.join("pieces/k07/photos/aa.jpg")).unwrap(),
        noise
    );
    assert_eq!(notes(&mut open(&new), &piece("k07")), ["kept"]);
}
