//! Photos beside a diary: stored once under their hash, arriving, replaced where half arrived, tidied away, and never
//! looked at when a shelf opens.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::path::Path;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PhotoId, PieceId};
use evenwall_piece::photo::{PhotoHash, PhotoNote, PhotoOn};
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::{FaultyDisk, Trouble};
use evenwall_shelf::photos::{PhotoFile, hash_of};
use evenwall_shelf::shelf::Shelf;
use world::{SHELF, at, open};

fn k07() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn fact(id: &str, bytes: &[u8]) -> PieceFact {
    PieceFact::PhotoAdded(PhotoNote {
        photo: PhotoId::new(id).unwrap(),
        stored: hash_of(bytes).unwrap(),
        source: hash_of(bytes).unwrap(),
        taken: None,
        width_px: 4,
        height_px: 3,
        on: PhotoOn::Portrait,
    })
}

fn add(shelf: &mut Shelf, id: &str, bytes: &[u8]) -> Result<PhotoHash, ShelfError> {
    let when = at("2026-03-14T09:30:00+01:00");
    let photos = [bytes.to_vec()];
    shelf.append_with_photos(&k07(), when, when, vec![fact(id, bytes)], &photos)?;
    Ok(hash_of(bytes).unwrap())
}

fn names(disk: &FaultyDisk) -> Vec<String> {
    let folder = Path::new(SHELF).join("pieces/k07/photos");
    let entries = disk.list(&folder).unwrap_or_default();
    let mut names: Vec<_> = entries
        .into_iter()
        .map(|e| e.name.into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn a_photo_lies_under_its_hash_and_is_stored_once() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    let hash = add(&mut shelf, "ph1", b"picture").unwrap();
    add(&mut shelf, "ph2", b"picture").unwrap();
    assert_eq!(names(&disk), [format!("{hash}.jpg")]);
    assert_eq!(
        shelf.photo(&k07(), &hash).unwrap(),
        PhotoFile::Here(b"picture".to_vec())
    );
    assert!(shelf.photo_is_here(&k07(), &hash));
    assert_eq!(shelf.photos(&k07()).unwrap(), [(hash, 7)]);
    assert_eq!(shelf.load_piece(&k07()).unwrap().len(), 2);
}

#[test]
fn a_photo_that_has_not_arrived_or_not_as_a_whole_says_so() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    let hash = add(&mut shelf, "ph1", b"picture").unwrap();
    let path = shelf.photo_path(&k07(), &hash);
    let other = hash_of(b"other").unwrap();
    assert_eq!(shelf.photo(&k07(), &other).unwrap(), PhotoFile::NotHere);
    assert!(!shelf.photo_is_here(&k07(), &other));
    assert!(
        shelf
            .photos(&PieceId::new("k99").unwrap())
            .unwrap()
            .is_empty()
    );
    disk.write(&path, b"pict").unwrap();
    assert_eq!(shelf.photo(&k07(), &hash).unwrap(), PhotoFile::NotWhole);
    // Added again, the half that arrived gives way to the whole.
    add(&mut shelf, "ph2", b"picture").unwrap();
    assert_eq!(
        shelf.photo(&k07(), &hash).unwrap(),
        PhotoFile::Here(b"picture".to_vec())
    );
}

#[test]
fn what_cannot_be_stored_leaves_a_photo_with_its_line_or_neither() {
    for room in 0..3000 {
        let disk = FaultyDisk::new();
        let mut shelf = open(&disk, 1).unwrap();
        add(&mut shelf, "ph0", b"before").unwrap();
        let before = names(&disk);
        disk.trouble(Some(Trouble::Full(room)));
        let outcome = add(&mut shelf, "ph1", &[7; 50]);
        disk.trouble(None);
        let lines = shelf.load_piece(&k07()).unwrap().len();
        match outcome {
            Ok(_) => {
                assert_eq!((lines, names(&disk).len()), (2, 2));
                return;
            }
            Err(error) => {
                assert!(error.to_string().contains("the disk is full"), "{error}");
                // A line that wants no more than its newline stands, and its photo with it.
                let neither = lines == 1 && names(&disk) == before;
                let both = lines == 2 && names(&disk).len() == 2;
                assert!(
                    neither || both,
                    "room for {room}: {lines} lines, {:?}",
                    names(&disk)
                );
            }
        }
    }
    panic!("never room enough");
}

#[test]
fn a_reader_stores_and_removes_nothing() {
    let disk = FaultyDisk::new();
    let hash = add(&mut open(&disk, 1).unwrap(), "ph1", b"picture").unwrap();
    let mut reader =
        Shelf::open_reader(std::sync::Arc::new(disk.clone()), Path::new(SHELF)).unwrap();
    let steps = disk.steps();
    assert!(matches!(
        add(&mut reader, "ph2", b"other"),
        Err(ShelfError::ReadOnly { .. })
    ));
    assert!(matches!(
        reader.tidy_photos(&k07(), &[hash]),
        Err(ShelfError::ReadOnly { .. })
    ));
    assert_eq!(disk.steps(), steps);
}

#[test]
fn tidying_removes_what_it_names_and_nothing_else_and_tells_what_it_freed() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    let one = add(&mut shelf, "ph1", b"one").unwrap();
    let two = add(&mut shelf, "ph2", b"twoo").unwrap();
    let odd = Path::new(SHELF).join("pieces/k07/photos/holiday.jpg");
    disk.write(&odd, b"mine").unwrap();
    let gone = hash_of(b"never here").unwrap();
    assert_eq!(shelf.tidy_photos(&k07(), &[one.clone(), gone]).unwrap(), 3);
    assert_eq!(shelf.photo(&k07(), &one).unwrap(), PhotoFile::NotHere);
    assert_eq!(shelf.photos(&k07()).unwrap(), [(two, 4)]);
    assert_eq!(disk.read(&odd).unwrap(), b"mine");
    // Brought back by adding it again.
    add(&mut shelf, "ph3", b"one").unwrap();
    assert_eq!(
        shelf.photo(&k07(), &one).unwrap(),
        PhotoFile::Here(b"one".to_vec())
    );
}
