//! Links, pipes and odd names on the real disk: no panic, no waiting, no reading without end.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // this test lays traps on the real disk
#![cfg(unix)]

mod world;

use std::ffi::OsStr;
use std::fs;
use std::os::unix::ffi::OsStrExt;
use std::os::unix::fs::symlink;
use std::path::Path;
use std::sync::Arc;

use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::shelf::Shelf;
use evenwall_shelf::verify::verify;
use world::{note, notes, piece};

fn open(temp: &Path) -> Shelf {
    let disk: Arc<dyn Disk> = Arc::new(RealDisk::new());
    Shelf::open(disk, &temp.join("shelf"), &temp.join("data"), [1; 16]).unwrap()
}

#[test]
fn links_pipes_and_odd_names_are_said_and_the_rest_is_read_and_written() {
    let temp = tempfile::tempdir().unwrap();
    let shelf = temp.path().join("shelf");
    note(&mut open(temp.path()), &piece("k07"), "mine").unwrap();
    let outside = temp.path().join("outside");
    fs::create_dir(&outside).unwrap();
    fs::write(outside.join("letter.jsonl"), "a private letter\n").unwrap();
    let pieces = shelf.join("pieces");
    let k07 = pieces.join("k07");
    symlink(&outside, pieces.join("linked")).unwrap();
    symlink("round", pieces.join("round")).unwrap();
    symlink("nowhere", pieces.join("k99")).unwrap();
    symlink("/dev/zero", k07.join("endless.jsonl")).unwrap();
    symlink("circle.jsonl", k07.join("circle.jsonl")).unwrap();
    symlink("nothing.jsonl", k07.join("gone.jsonl")).unwrap();
    symlink("../../..", k07.join("up")).unwrap();
    let odd = OsStr::from_bytes(b"\xff\x1b;rm -rf.jsonl");
    fs::write(k07.join(odd), "x\n").unwrap();
    fs::write(k07.join("..%2f..%2fescape.jsonl"), "x\n").unwrap();
    let made = std::process::Command::new("mkfifo")
        .arg(k07.join("pipe.jsonl"))
        .status();
    assert!(made.unwrap().success());

    let mut said = Vec::new();
    verify(&RealDisk::new(), &shelf, &mut |p| said.push(p.to_string())).unwrap();
    for start in [
        "pieces/k07/circle.jsonl: it is a link",
        "pieces/k07/circle.jsonl: it cannot be read",
        "pieces/k07/endless.jsonl: it cannot be read: it is a pipe or device",
        "pieces/k07/gone.jsonl: it cannot be read",
        "pieces/k07/pipe.jsonl: it cannot be read: it is a pipe or device",
        "pieces/k07/up: it is not part of a shelf",
        "pieces/k07/\u{fffd}\u{fffd};rm -rf.jsonl:1: it cannot be read, torn or still arriving",
        "pieces/k07/..%2f..%2fescape.jsonl:1: ",
        "pieces/k99: it is no piece",
        "pieces/linked: it is a link",
        "pieces/round: it is no piece",
    ] {
        assert!(
            said.iter().any(|s| s.starts_with(start)),
            "{start} is not among {said:#?}"
        );
    }

    let mut again = open(temp.path());
    assert_eq!(notes(&mut again, &piece("k07")), ["mine"]);
    again.load_everything().unwrap();
    note(&mut again, &piece("k07"), "goes on").unwrap();
    assert!(
        again
            .notices()
            .any(|n| n.to_string().contains("pipe.jsonl cannot be read"))
    );
    assert_eq!(
        fs::read_dir(&outside).unwrap().count(),
        1,
        "nothing is written through a link unasked"
    );
}

#[test]
fn a_file_where_a_folder_belongs_is_a_sentence() {
    let temp = tempfile::tempdir().unwrap();
    drop(open(temp.path()));
    fs::write(temp.path().join("shelf/pieces"), "not a folder").unwrap();
    let mut said = Vec::new();
    verify(&RealDisk::new(), &temp.path().join("shelf"), &mut |p| {
        said.push(p.to_string())
    })
    .unwrap();
    assert!(
        said[0].starts_with("pieces: it is not part of a shelf"),
        "{said:?}"
    );
    assert!(said[1].starts_with("pieces: it cannot be read"), "{said:?}");
    let disk: Arc<dyn Disk> = Arc::new(RealDisk::new());
    let opened = Shelf::open(
        disk,
        &temp.path().join("shelf"),
        &temp.path().join("data"),
        [1; 16],
    );
    let error = opened.err().unwrap().to_string();
    assert!(error.starts_with("could not list "), "{error}");
}
