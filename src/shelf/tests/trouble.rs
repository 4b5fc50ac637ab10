//! Trouble: the disk refuses, fills up, is cut short, goes away or is slow, from every step of a sitting on. What was
//! acknowledged stays, what failed is said, and when the trouble is over it goes on.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

use evenwall_piece::ids::Scope;
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::{FaultyDisk, Left, Trouble};
use evenwall_shelf::shelf::Shelf;
use world::{SHELF, all_notes, note, notes, open, piece};

/// What came of a sitting.
#[derive(Default)]
struct Told {
    stored: Vec<String>,
    /// Refused with the disk not sure, or cut in the middle: may be there or not.
    unsure: Vec<String>,
    sentences: Vec<String>,
}

fn sitting(disk: &FaultyDisk, told: &mut Told) {
    let mut shelf = match open(disk, 1) {
        Ok(shelf) => shelf,
        Err(e) => return told.sentences.push(e.to_string()),
    };
    let scopes = [
        piece("k07"),
        piece("k07"),
        Scope::Shop,
        piece("k08"),
        piece("k07"),
    ];
    for (n, scope) in scopes.into_iter().enumerate() {
        let text = format!("entry {n}");
        match note(&mut shelf, &scope, &text) {
            Ok(()) => told.stored.push(text),
            Err(e) => {
                told.sentences.push(e.to_string());
                told.unsure.push(text);
            }
        }
        // Reading goes on whatever was refused.
        if let Err(e) = notes_of(&mut shelf, &piece("k07")) {
            told.sentences.push(e.to_string());
        }
    }
}

fn notes_of(shelf: &mut Shelf, scope: &Scope) -> Result<Vec<String>, ShelfError> {
    Ok(shelf.load(scope)?.iter().map(world::text_of).collect())
}

/// The acknowledged once each, of the others at most those that are unsure.
fn compare(disk: &FaultyDisk, told: &Told, case: &str) {
    let mut shelf = open(disk, 3).unwrap_or_else(|e| panic!("{case}: {e}"));
    let found = all_notes(&mut shelf).unwrap_or_else(|e| panic!("{case}: {e}"));
    let mut counted: BTreeMap<&str, usize> = BTreeMap::new();
    for note in &found {
        *counted.entry(note).or_default() += 1;
    }
    for text in &told.stored {
        assert_eq!(
            counted.remove(text.as_str()),
            Some(1),
            "{case}: {text} of {found:?}"
        );
    }
    for text in counted.keys() {
        assert!(
            told.unsure.iter().any(|u| u == text),
            "{case}: {text} came from nowhere"
        );
    }
    note(&mut shelf, &piece("k07"), "afterwards").unwrap_or_else(|e| panic!("{case}: {e}"));
    assert_eq!(
        notes(&mut shelf, &piece("k07")).last().unwrap(),
        "afterwards",
        "{case}"
    );
}

#[test]
fn trouble_from_any_step_on_loses_nothing_acknowledged_and_is_said() {
    let whole = FaultyDisk::new();
    sitting(&whole, &mut Told::default());
    let (mut cases, mut refused) = (0, 0);
    for trouble in [
        Trouble::Full(0),
        Trouble::Full(70),
        Trouble::Full(250),
        Trouble::Denied,
        Trouble::ReadOnly,
        Trouble::SyncFails,
        Trouble::Unreadable,
        Trouble::Interrupted(0),
        Trouble::Interrupted(1),
        Trouble::Interrupted(90),
    ] {
        for step in 0..whole.steps() {
            let disk = FaultyDisk::new();
            disk.trouble_after(step, trouble);
            let mut told = Told::default();
            sitting(&disk, &mut told);
            disk.trouble(None);
            let case = format!("{trouble:?} after step {step}");
            cases += 1;
            refused += usize::from(!told.sentences.is_empty());
            for sentence in &told.sentences {
                assert!(sentence.contains(" /"), "{case}: {sentence} names no place");
                assert!(!sentence.contains("os error"), "{case}: {sentence}");
            }
            // The trouble is over and the program starts again; or the power goes too.
            compare(&disk.fork(), &told, &case);
            for left in [Left::OnlySynced, Left::Names, Left::Torn(11)] {
                let after = disk.fork();
                after.restart(left);
                compare(&after, &told, &format!("{case}, then {left:?}"));
            }
        }
    }
    // An interrupted write of the device's own record is not an error of the entry, so not every case refuses.
    assert!(cases > 200 && refused * 2 > cases, "{refused} of {cases}");
}

#[test]
fn a_folder_that_goes_away_while_open_is_no_empty_shelf_and_may_come_back() {
    let elsewhere = Path::new("/home/turner/unplugged");
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    note(&mut shelf, &piece("k07"), "before").unwrap();
    let id = shelf.device().cloned();

    disk.rename(Path::new(SHELF), elsewhere).unwrap();
    let gone = "could not find the shelf /home/turner/shelf: it is not there any more";
    assert_eq!(shelf.load(&piece("k07")).unwrap_err().to_string(), gone);
    assert_eq!(
        note(&mut shelf, &piece("k07"), "x")
            .unwrap_err()
            .to_string(),
        gone
    );
    assert_eq!(
        note(&mut shelf, &piece("k08"), "x")
            .unwrap_err()
            .to_string(),
        gone
    );
    assert_eq!(shelf.refresh().unwrap_err().to_string(), gone);
    assert_eq!(shelf.load_everything().unwrap_err().to_string(), gone);
    assert!(
        !disk.exists(Path::new(SHELF)).unwrap(),
        "none is made in its place"
    );

    disk.rename(elsewhere, Path::new(SHELF)).unwrap();
    note(&mut shelf, &piece("k07"), "after").unwrap();
    assert_eq!(notes(&mut shelf, &piece("k07")), ["before", "after"]);
    assert_eq!(shelf.device().cloned(), id, "the device keeps its id");
}

#[test]
fn a_piece_whose_folder_goes_away_is_told_apart_from_the_shelf() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    note(&mut shelf, &piece("k07"), "before").unwrap();
    note(&mut shelf, &piece("k08"), "other").unwrap();
    let (here, away) = (
        Path::new("/home/turner/shelf/pieces/k07"),
        Path::new("/home/away"),
    );
    disk.rename(here, away).unwrap();
    assert_eq!(notes(&mut shelf, &piece("k07")), [] as [String; 0]);
    assert!(
        shelf
            .notices()
            .any(|n| n.to_string().contains("is not as this device left it"))
    );
    // A new entry fails or stands; it never takes the other with it.
    let outcome = note(&mut shelf, &piece("k07"), "meanwhile");
    assert!(outcome.is_err(), "its folder was known to be there");
    assert_eq!(notes(&mut shelf, &piece("k08")), ["other"]);
    disk.rename(away, here).unwrap();
    note(&mut shelf, &piece("k07"), "after").unwrap();
    assert_eq!(notes(&mut shelf, &piece("k07")), ["before", "after"]);
}

#[test]
fn on_a_slow_disk_a_reader_sees_whole_lines_and_the_writer_waits() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    note(&mut shelf, &piece("k07"), "0").unwrap();
    disk.trouble(Some(Trouble::Slow(Duration::from_millis(3))));
    let mut torn = 0;
    std::thread::scope(|s| {
        let writer = s.spawn(|| {
            for n in 1..12 {
                note(&mut shelf, &piece("k07"), &n.to_string()).unwrap();
            }
        });
        let mut last = 0;
        while !writer.is_finished() {
            let mut reader = Shelf::open_reader(Arc::new(disk.clone()), Path::new(SHELF)).unwrap();
            let seen = notes(&mut reader, &piece("k07"));
            let whole: Vec<String> = (0..seen.len()).map(|n| n.to_string()).collect();
            assert_eq!(
                seen, whole,
                "a prefix of what was written, never half a line"
            );
            assert!(seen.len() >= last, "and never less than before");
            last = seen.len();
            torn += usize::from(reader.notices().next().is_some());
        }
        writer.join().unwrap();
    });
    assert!(
        torn > 0,
        "the reader came in the middle of a line at least once"
    );
    assert_eq!(notes(&mut shelf, &piece("k07")).len(), 12);
}
