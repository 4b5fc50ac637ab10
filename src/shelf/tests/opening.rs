//! Opening: what is a shelf, what is refused, who may write.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::path::Path;
use std::sync::Arc;

use evenwall_piece::ids::Scope;
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::error::{ReadOnly, ShelfError};
use evenwall_shelf::faulty::{FaultyDisk, Trouble};
use evenwall_shelf::notice::Notice;
use evenwall_shelf::shelf::Shelf;
use world::{DATA, OTHER_DATA, SHELF, note, notes, open, open_as, piece};

fn with(files: &[(&str, &str)]) -> FaultyDisk {
    let disk = FaultyDisk::new();
    for folder in ["/home", "/home/turner", SHELF] {
        disk.create_folder(Path::new(folder)).unwrap();
    }
    for (name, content) in files {
        let path = Path::new(SHELF).join(name);
        let above: Vec<_> = path.ancestors().skip(1).collect();
        for folder in above.into_iter().rev() {
            disk.create_folder(folder).ok();
        }
        disk.write(&path, content.as_bytes()).unwrap();
    }
    disk
}

const SHELF_FILE: (&str, &str) = ("shelf.json", r#"{"format":"evenwall-shelf","version":1}"#);

#[test]
fn a_new_shelf_is_made_in_a_missing_folder_and_says_its_format_and_nothing_else() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    assert_eq!(notes(&mut shelf, &Scope::Shop), [] as [String; 0]);
    assert_eq!(
        disk.read(&Path::new(SHELF).join("shelf.json")).unwrap(),
        SHELF_FILE.1.as_bytes()
    );
    assert_eq!(shelf.read_only(), None);
}

#[test]
fn a_folder_with_other_things_is_refused_and_left_alone() {
    let disk = with(&[("holiday.jpg", "x")]);
    let error = open(&disk, 1).err().unwrap();
    assert!(
        error.to_string().contains("is not a shelf and not empty"),
        "{error}"
    );
    assert_eq!(disk.list(Path::new(SHELF)).unwrap().len(), 1);
    let disk = with(&[("shelf.json", r#"{"format":"other","version":1}"#)]);
    assert!(matches!(open(&disk, 1), Err(ShelfError::NotAShelf { .. })));
}

#[test]
fn hidden_names_do_not_make_a_folder_occupied() {
    let disk = with(&[
        (".marker", ""),
        (".shelf.json.new", "{\"form"),
        ("desktop.ini", ""),
    ]);
    assert!(open(&disk, 1).is_ok());
}

#[test]
fn pieces_without_the_shelf_file_are_waited_for() {
    let disk = with(&[("pieces/k07/a.jsonl", "")]);
    let error = open(&disk, 1).err().unwrap();
    assert!(
        error.to_string().contains("wait until it is all there"),
        "{error}"
    );
    assert!(!disk.exists(&Path::new(SHELF).join("shelf.json")).unwrap());
}

#[test]
fn a_newer_or_damaged_shelf_opens_for_reading_and_says_why() {
    let line = r#"{"device":"a","n":1,"seq":1,"at":"2026-01-01T00:00:00Z","noted_at":"2026-01-01T00:00:00Z","v":2,"facts":[{"fact":"note","text":"hello"}]}"#;
    let newer = r#"{"format":"evenwall-shelf","version":2,"hint":1}"#;
    for (content, why) in [
        (newer, "newer version of the program (format 2"),
        ("{\"form", "shelf.json is damaged"),
    ] {
        let disk = with(&[("shelf.json", content), ("pieces/k07/a.jsonl", line)]);
        let steps = disk.steps();
        let mut shelf = open(&disk, 1).unwrap();
        assert_eq!(notes(&mut shelf, &piece("k07")), ["hello"]);
        let error = note(&mut shelf, &piece("k07"), "x").unwrap_err();
        assert!(error.to_string().contains(why), "{error}");
        assert_eq!(disk.steps(), steps, "nothing is changed");
    }
}

#[test]
fn a_second_writer_is_told_and_a_reader_is_let_in() {
    let disk = FaultyDisk::new();
    let mut first = open(&disk, 1).unwrap();
    note(&mut first, &piece("k07"), "one").unwrap();
    let error = open(&disk, 2).err().unwrap();
    assert!(
        error.to_string().contains("open in another window"),
        "{error}"
    );

    let steps = disk.steps();
    let mut reader = Shelf::open_reader(Arc::new(disk.clone()), Path::new(SHELF)).unwrap();
    assert_eq!(notes(&mut reader, &piece("k07")), ["one"]);
    assert_eq!(reader.read_only(), Some(ReadOnly::Reader));
    assert!(note(&mut reader, &piece("k07"), "x").is_err());
    assert_eq!(disk.steps(), steps, "a reader changes nothing");

    drop(first);
    assert!(open(&disk, 3).is_ok());
}

#[test]
fn two_shelves_on_one_device_do_not_lock_each_other_out_nor_share_an_id() {
    let disk = FaultyDisk::new();
    let one = open(&disk, 1).unwrap();
    let two = open_as(&disk, "/home/turner/demo", DATA, 2).unwrap();
    assert_ne!(one.device(), two.device());
}

#[test]
fn without_locks_it_goes_on_without() {
    let disk = FaultyDisk::new();
    disk.trouble(Some(Trouble::NoLocks));
    let first = open(&disk, 1).unwrap();
    let second = open(&disk, 2).unwrap();
    drop((first, second));
}

#[test]
fn names_that_are_no_ids_are_reported_and_left_alone() {
    let disk = with(&[
        SHELF_FILE,
        ("pieces/K07 (copy)/a.jsonl", ""),
        ("pieces/.x/a", ""),
        ("pieces/k07/a.jsonl", ""),
    ]);
    let mut shelf = open(&disk, 1).unwrap();
    let all = shelf.load_all(|scope, _| scope.clone()).unwrap();
    assert_eq!(
        all.into_iter().map(|(s, _)| s).collect::<Vec<_>>(),
        [Scope::Shop, piece("k07")]
    );
    let notices: Vec<_> = shelf.notices().cloned().collect();
    assert_eq!(
        notices,
        [Notice::IgnoredName {
            path: "pieces/K07 (copy)".into()
        }]
    );
}

#[test]
fn a_reader_of_nothing_is_told_so() {
    let disk = FaultyDisk::new();
    assert!(matches!(
        Shelf::open_reader(Arc::new(disk), Path::new(OTHER_DATA)),
        Err(ShelfError::Nowhere { .. })
    ));
}

#[test]
fn on_the_real_disk_a_shelf_is_made_written_closed_and_read_again() {
    let temp = tempfile::tempdir().unwrap();
    let (path, data) = (temp.path().join("my shelf"), temp.path().join("data"));
    let disk: Arc<dyn Disk> = Arc::new(RealDisk::new());
    let mut shelf = Shelf::open(Arc::clone(&disk), &path, &data, [1; 16]).unwrap();
    assert!(matches!(
        Shelf::open(Arc::clone(&disk), &path, &data, [2; 16]),
        Err(ShelfError::InUse { .. })
    ));
    for n in 0..40 {
        note(&mut shelf, &piece("k07"), &n.to_string()).unwrap();
    }
    let device = shelf.device().cloned();
    drop(shelf);
    let mut shelf = Shelf::open(disk, &path, &data, [3; 16]).unwrap();
    assert_eq!(shelf.device().cloned(), device);
    let read = notes(&mut shelf, &piece("k07"));
    assert_eq!(read, (0..40).map(|n| n.to_string()).collect::<Vec<_>>());
    assert_eq!(shelf.refresh().unwrap(), [] as [Scope; 0]);
    assert_eq!(shelf.notices().count(), 0);
}

#[test]
fn a_shelf_can_be_handed_to_another_thread() {
    fn may_move<T: Send + Sync>() {}
    may_move::<Shelf>();
}
