//! A shelf worth a backup, a stick to put it on, and zips made by hand.
#![allow(dead_code)] // Each test binary uses a part of it.

use std::collections::BTreeMap;
use std::io::{Cursor, Write as _};
use std::path::{Path, PathBuf};

use chrono::{DateTime, FixedOffset};
use evenwall_piece::ids::Scope;
use evenwall_shelf::backup::{BackupError, Written, write};
use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::FaultyDisk;
use sha2::{Digest, Sha256};
use zip::ZipWriter;
use zip::write::SimpleFileOptions;

use crate::world::{SHELF, at, note, open, piece};

pub const STICK: &str = "/media/stick";
/// Stands for a photo: a backup does not look into it.
pub const PHOTO: &[u8] = b"\xff\xd8 some picture \xff\xd9";

pub fn now() -> DateTime<FixedOffset> {
    at("2026-03-14T09:30:00+01:00")
}

/// A shop fact, two pieces, a photo and a file that is not Evenwall's; and an empty stick.
pub fn two_pieces() -> FaultyDisk {
    let disk = FaultyDisk::new();
    make_two_pieces(&disk, "first");
    disk
}

pub fn make_two_pieces(disk: &FaultyDisk, first: &str) {
    let mut shelf = open(disk, 1).unwrap();
    note(&mut shelf, &piece("k07"), first).unwrap();
    note(&mut shelf, &piece("k07"), "second").unwrap();
    note(&mut shelf, &piece("k08"), "other piece").unwrap();
    note(&mut shelf, &Scope::Shop, "climate").unwrap();
    drop(shelf);
    let photos = Path::new(SHELF).join("pieces/k07/photos");
    for folder in [photos.as_path(), Path::new("/media"), Path::new(STICK)] {
        disk.create_folder(folder).unwrap();
    }
    disk.write(&photos.join("0af3.jpg"), PHOTO).unwrap();
    disk.write(&Path::new(SHELF).join("shopping.txt"), b"sandpaper")
        .unwrap();
    disk.write(&Path::new(SHELF).join(".sync-state"), b"hidden")
        .unwrap();
    // What lies there before the test is durable.
    disk.restart(evenwall_shelf::faulty::Left::Names);
    disk.write(&photos.join("0af3.jpg"), PHOTO).unwrap();
    disk.sync_file(&photos.join("0af3.jpg")).unwrap();
    let txt = Path::new(SHELF).join("shopping.txt");
    disk.write(&txt, b"sandpaper").unwrap();
    disk.sync_file(&txt).unwrap();
}

pub fn back_up(disk: &FaultyDisk) -> Result<Written, BackupError> {
    write(
        disk,
        Path::new(SHELF),
        Path::new(STICK),
        now(),
        &mut |_, _| true,
    )
}

/// All files below a folder by their name in it.
pub fn every_byte(disk: &dyn Disk, root: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut folders: Vec<(PathBuf, String)> = vec![(root.to_owned(), String::new())];
    while let Some((folder, above)) = folders.pop() {
        for entry in disk.list(&folder).unwrap_or_default() {
            let name = format!("{above}{}", entry.name.to_string_lossy());
            let path = folder.join(&entry.name);
            if entry.is_folder {
                folders.push((path, format!("{name}/")));
            } else {
                found.insert(name, disk.read(&path).unwrap());
            }
        }
    }
    found
}

pub const LINE: &str = r#"{"device":"x","n":1,"seq":1,"at":"2026-01-01T00:00:00Z","noted_at":"2026-01-01T00:00:00Z","v":1,"facts":[{"fact":"note","text":"from the zip"}]}"#;

pub fn hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|b| format!("{b:02x}"))
        .collect()
}

/// The list of these files as a backup has it.
pub fn list_of(files: &[(&str, &[u8])]) -> String {
    let files: Vec<_> = files
        .iter()
        .map(|(name, bytes)| serde_json::json!({"name": name, "bytes": bytes.len(), "sha256": hex(bytes)}))
        .collect();
    serde_json::json!({"format": "evenwall-backup", "version": 1, "made_at": "2026-03-14T09:30:00+01:00", "files": files})
        .to_string()
}

/// A zip of these files, in this order, whatever their names are.
pub fn zip_of(files: &[(&str, &[u8])]) -> Vec<u8> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in files {
        zip.start_file(*name, SimpleFileOptions::default()).unwrap();
        zip.write_all(bytes).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

/// A zip with a true list of these files, as a backup would be.
pub fn backup_of(files: &[(&str, &[u8])]) -> Vec<u8> {
    let list = list_of(files);
    let mut all = files.to_vec();
    all.push(("backup.json", list.as_bytes()));
    zip_of(&all)
}
