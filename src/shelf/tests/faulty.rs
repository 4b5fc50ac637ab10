//! The faulty disk forgets and fails as it promises: the crash tests lean on it.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::io::ErrorKind;
use std::path::Path;

use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::{FaultyDisk, Left, Trouble};

#[test]
fn unsynced_bytes_and_names_are_lost_at_a_crash() {
    let disk = FaultyDisk::new();
    let (folder, file) = (Path::new("/a"), Path::new("/a/f"));
    disk.create_folder(folder).unwrap();
    disk.append(file, b"one").unwrap();
    disk.sync_file(file).unwrap();
    disk.sync_folder(folder).unwrap();
    disk.restart(Left::Killed);
    assert_eq!(disk.read(file).unwrap(), b"one");
    disk.restart(Left::OnlySynced);
    assert!(
        !disk.exists(folder).unwrap(),
        "the folder's own name was never synced"
    );

    disk.create_folder(folder).unwrap();
    disk.sync_folder(Path::new("/")).unwrap();
    disk.append(file, b"one").unwrap();
    disk.sync_file(file).unwrap();
    disk.sync_folder(folder).unwrap();
    disk.append(file, b"two").unwrap();
    disk.restart(Left::Torn(1));
    assert_eq!(disk.read(file).unwrap(), b"onet");
    disk.append(file, b"xy").unwrap();
    disk.restart(Left::Nuls(1));
    assert_eq!(disk.read(file).unwrap(), b"onetx\0");
}

#[test]
fn a_replacement_that_was_not_synced_is_empty_after_a_crash() {
    let disk = FaultyDisk::new();
    let file = Path::new("/f");
    disk.replace(file, b"old").unwrap();
    disk.ignore_sync(2);
    disk.replace(file, b"new").unwrap();
    let syncs: Vec<_> = disk.syncs().into_iter().map(|(label, _)| label).collect();
    assert_eq!(
        syncs,
        ["file /.f.new", "folder /", "file /.f.new", "folder /"]
    );
    disk.restart(Left::OnlySynced);
    assert_eq!(disk.read(file).unwrap(), b"");
}

#[test]
fn a_full_disk_takes_a_part_and_says_so() {
    let disk = FaultyDisk::new();
    disk.trouble(Some(Trouble::Full(2)));
    assert_eq!(
        disk.append(Path::new("/f"), b"abc").unwrap_err().kind(),
        ErrorKind::StorageFull
    );
    assert_eq!(disk.read(Path::new("/f")).unwrap(), b"ab");
}
