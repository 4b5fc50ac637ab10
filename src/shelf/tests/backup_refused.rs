//! What is no backup, or a bad one, is refused with a sentence before anything is touched.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod backup_world;
mod world;

use std::io::{Cursor, Write as _};
use std::path::Path;

use backup_world::*;
use evenwall_shelf::backup::{BackupError, check, restore};
use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::FaultyDisk;
use world::*;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

const FILE: &str = "/media/stick/given.zip";

/// Restores these bytes; the shelf must be as before where it is refused.
fn given(bytes: &[u8]) -> Result<(), BackupError> {
    let disk = two_pieces();
    disk.write(Path::new(FILE), bytes).unwrap();
    let before = every_byte(&disk, Path::new("/"));
    let outcome = restore(&disk, Path::new(SHELF), Path::new(FILE), now());
    if outcome.is_err() {
        assert_eq!(
            every_byte(&disk, Path::new("/")),
            before,
            "nothing is touched"
        );
        // Nor is a new shelf begun.
        let fresh = Path::new("/home/turner/fresh");
        assert!(restore(&disk, fresh, Path::new(FILE), now()).is_err());
        assert!(!disk.exists(fresh).unwrap());
    }
    outcome.map(|_| ())
}

fn good() -> Vec<u8> {
    backup_of(&[
        ("shelf.json", br#"{"format":"evenwall-shelf","version":1}"#),
        ("pieces/k09/x.jsonl", LINE.as_bytes()),
    ])
}

#[test]
fn a_zip_made_by_hand_with_a_true_list_is_taken_so_that_the_others_are_refused_for_their_faults() {
    given(&good()).unwrap();
}

#[test]
fn what_is_no_backup_is_called_foreign() {
    let stranger = zip_of(&[("letter.txt", b"dear"), ("shelf.json", b"{}")]);
    let other_list = zip_of(&[("backup.json", br#"{"format":"other","version":1}"#)]);
    let other_shelf = backup_of(&[("shelf.json", br#"{"format":"other","version":1}"#)]);
    for bytes in [
        b"".as_slice(),
        b"PK\x03\x04",
        &[0; 5000],
        &stranger,
        &other_list,
        &other_shelf,
    ] {
        let error = given(bytes).unwrap_err();
        assert!(matches!(error, BackupError::Foreign { .. }), "{error}");
        assert!(
            error
                .to_string()
                .contains("choose a file named like evenwall-")
        );
    }
}

#[test]
fn a_newer_backup_or_a_newer_shelf_in_it_asks_for_an_update() {
    let newer = zip_of(&[(
        "backup.json",
        br#"{"format":"evenwall-backup","version":2,"files":"another way"}"#,
    )]);
    let newer_shelf = backup_of(&[("shelf.json", br#"{"format":"evenwall-shelf","version":7}"#)]);
    for bytes in [newer, newer_shelf] {
        let error = given(&bytes).unwrap_err();
        assert!(matches!(error, BackupError::Newer { .. }), "{error}");
        assert!(error.to_string().contains("update the program first"));
    }
}

#[test]
fn a_backup_cut_off_anywhere_is_refused() {
    let whole = good();
    for cut in 0..whole.len() {
        let error = given(&whole[..cut]).unwrap_err();
        assert!(
            matches!(
                error,
                BackupError::Foreign { .. } | BackupError::Damaged { .. }
            ),
            "cut at {cut}: {error}"
        );
    }
}

#[test]
fn one_changed_byte_is_found_out_or_makes_no_difference() {
    let whole = good();
    let disk = FaultyDisk::new();
    for folder in ["/media", STICK] {
        disk.create_folder(Path::new(folder)).unwrap();
    }
    disk.write(Path::new(FILE), &whole).unwrap();
    let sound = check(&disk, Path::new(FILE)).unwrap();
    for place in 0..whole.len() {
        for flip in [0x01, 0x80] {
            let mut bytes = whole.clone();
            bytes[place] ^= flip;
            disk.write(Path::new(FILE), &bytes).unwrap();
            if let Ok(checked) = check(&disk, Path::new(FILE)) {
                assert_eq!(
                    checked, sound,
                    "byte {place}: what is accepted is what was written"
                );
            }
        }
    }
}

#[test]
fn names_that_leave_the_folder_or_hide_are_refused() {
    for name in [
        "../../.bashrc",
        "/etc/passwd",
        "pieces/../../x.jsonl",
        "C:/windows/x",
        "pieces\\k07\\x.jsonl",
        ".hidden",
        "pieces/k07/../../../x.jsonl",
        "pieces//x.jsonl",
    ] {
        let error = given(&backup_of(&[(name, LINE.as_bytes())])).unwrap_err();
        assert!(
            matches!(error, BackupError::Harmful { .. }),
            "{name}: {error}"
        );
        assert!(
            error.to_string().contains("nothing was restored"),
            "{error}"
        );
    }
}

#[test]
fn links_folders_and_double_names_are_refused() {
    let mut link = ZipWriter::new(Cursor::new(Vec::new()));
    link.add_symlink(
        "pieces/k07/photos",
        "/home/turner",
        SimpleFileOptions::default(),
    )
    .unwrap();
    let mut folder = ZipWriter::new(Cursor::new(Vec::new()));
    folder
        .add_directory("pieces", SimpleFileOptions::default())
        .unwrap();
    let twice = backup_of(&[("shop/a.jsonl", b""), ("shop/A.JSONL", b"")]);
    for bytes in [
        link.finish().unwrap().into_inner(),
        folder.finish().unwrap().into_inner(),
        twice,
    ] {
        let error = given(&bytes).unwrap_err();
        assert!(matches!(error, BackupError::Harmful { .. }), "{error}");
    }
}

#[test]
fn a_file_squeezed_beyond_all_measure_is_refused_before_it_is_unpacked() {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    zip.start_file("shop/bomb.jsonl", options).unwrap();
    for _ in 0..64 {
        zip.write_all(&[0; 1 << 16]).unwrap();
    }
    let error = given(&zip.finish().unwrap().into_inner()).unwrap_err();
    assert!(error.to_string().contains("squeezed"), "{error}");
}

#[test]
fn a_file_that_says_it_is_short_is_not_unpacked_past_what_it_says() {
    // The length in the zip's directory is changed from 4 MB to 10 bytes.
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    zip.start_file("shop/bomb.jsonl", options).unwrap();
    zip.write_all(&vec![0; 4 << 20]).unwrap();
    let list = list_of(&[("shop/bomb.jsonl", &[0; 10])]);
    zip.start_file("backup.json", options).unwrap();
    zip.write_all(list.as_bytes()).unwrap();
    let mut bytes = zip.finish().unwrap().into_inner();
    let long = (4_u32 << 20).to_le_bytes();
    let places: Vec<usize> = (0..bytes.len() - 4)
        .filter(|i| bytes[*i..i + 4] == long)
        .collect();
    assert!(places.len() >= 2, "local and central header");
    for place in places {
        bytes[place..place + 4].copy_from_slice(&10_u32.to_le_bytes());
    }
    let error = given(&bytes).unwrap_err();
    assert!(matches!(error, BackupError::Damaged { .. }), "{error}");
}

#[test]
fn a_file_that_is_not_in_the_list_or_not_as_listed_is_refused() {
    let list = list_of(&[("shop/a.jsonl", b"a")]);
    let extra = zip_of(&[
        ("shop/a.jsonl", b"a"),
        ("shop/b.jsonl", b"b"),
        ("backup.json", list.as_bytes()),
    ]);
    let missing = zip_of(&[("backup.json", list.as_bytes())]);
    let changed = zip_of(&[("shop/a.jsonl", b"b"), ("backup.json", list.as_bytes())]);
    for bytes in [extra, missing, changed] {
        let error = given(&bytes).unwrap_err();
        assert!(matches!(error, BackupError::Damaged { .. }), "{error}");
        assert!(error.to_string().contains("take an older one"), "{error}");
    }
}

#[test]
fn a_shelf_of_a_newer_format_and_a_folder_with_other_things_take_no_backup() {
    let disk = two_pieces();
    let backup = back_up(&disk).unwrap().path;
    let file = Path::new(SHELF).join("shelf.json");
    disk.write(&file, br#"{"format":"evenwall-shelf","version":9}"#)
        .unwrap();
    let before = every_byte(&disk, Path::new("/"));
    for to in [SHELF, "/media"] {
        let error = restore(&disk, Path::new(to), &backup, now()).unwrap_err();
        assert!(matches!(error, BackupError::Shelf(_)), "{error}");
    }
    assert_eq!(every_byte(&disk, Path::new("/")), before);
}
