//! Verify: every damage is found, by file and line, nothing is repaired, and the shelf opens all the same.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::path::Path;
use std::sync::Arc;

use evenwall_piece::ids::Scope;
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::{FaultyDisk, Trouble};
use evenwall_shelf::journal::{LONGEST_JOURNAL, MOST_BAD};
use evenwall_shelf::line::LONGEST_LINE;
use evenwall_shelf::notice::Notice;
use evenwall_shelf::shelf::Shelf;
use evenwall_shelf::verify::{Looked, verify};
use world::{OTHER_DATA, SHELF, note, open, open_as, piece};

/// A line of device `d` with a note.
fn line(n: u64, seq: u64) -> String {
    at(
        n,
        seq,
        "2026-01-01T00:00:00Z",
        r#"{"fact":"note","text":"x"}"#,
    )
}

fn at(n: u64, seq: u64, at: &str, fact: &str) -> String {
    format!(
        r#"{{"device":"d","n":{n},"seq":{seq},"at":"{at}","noted_at":"2026-01-01T00:00:00Z","v":1,"facts":[{fact}]}}"#
    )
}

fn shelf_with(files: &[(&str, Vec<u8>)]) -> FaultyDisk {
    let disk = FaultyDisk::new();
    drop(open(&disk, 1).unwrap());
    for (name, content) in files {
        let path = Path::new(SHELF).join(name);
        let above: Vec<_> = path.ancestors().skip(1).collect();
        for folder in above.into_iter().rev() {
            disk.create_folder(folder).ok();
        }
        disk.write(&path, content).unwrap();
    }
    disk
}

fn looked(disk: &FaultyDisk) -> (Vec<String>, Looked) {
    let mut said = Vec::new();
    let steps = disk.steps();
    let looked = verify(disk, Path::new(SHELF), &mut |p| said.push(p.to_string())).unwrap();
    assert_eq!(disk.steps(), steps, "nothing is written, not even a lock");
    assert_eq!(looked.problems, said.len());
    (said, looked)
}

/// What verify says of one journal of piece k07, after which the shelf opens and records as ever.
fn of_journal(content: impl Into<Vec<u8>>) -> Vec<String> {
    let disk = shelf_with(&[("pieces/k07/d.jsonl", content.into())]);
    let (said, _) = looked(&disk);
    let mut shelf = open(&disk, 2).unwrap();
    shelf.load_everything().unwrap();
    note(&mut shelf, &piece("k07"), "goes on").unwrap();
    said
}

fn lines(all: &[String]) -> String {
    all.iter().map(|l| format!("{l}\n")).collect()
}

#[test]
fn a_clean_shelf_has_no_problem_and_is_counted() {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    for id in ["k07", "k08"] {
        note(&mut shelf, &piece(id), "one").unwrap();
        note(&mut shelf, &piece(id), "two").unwrap();
    }
    note(&mut shelf, &Scope::Shop, "odd for a shop").unwrap();
    let (said, looked) = looked(&disk);
    // Found while it is open elsewhere. The shop knows no notes.
    assert_eq!(said.len(), 1, "{said:?}");
    assert!(
        said[0].contains(":1: its fact 1 ('note') is not understood"),
        "{said:?}"
    );
    assert_eq!((looked.pieces, looked.journals, looked.lines), (2, 3, 5));
}

#[test]
fn torn_lines_nuls_and_wrong_encodings_are_named_by_line() {
    let mut bytes = lines(&[line(1, 1), line(2, 2)[..40].to_owned()]).into_bytes();
    bytes.extend([0; 50]);
    bytes.push(b'\n');
    bytes.extend(b"\xff\xfed\x00\n");
    bytes.extend(lines(&[line(2, 2)]).into_bytes());
    bytes.extend(b"{\"device\":\"d\",\"n\"");
    let said = of_journal(bytes);
    let starts = [
        "pieces/k07/d.jsonl:2: it cannot be read and is skipped: EOF",
        "pieces/k07/d.jsonl:3: it cannot be read and is skipped: it is empty space",
        "pieces/k07/d.jsonl:4: it cannot be read and is skipped: it is not UTF-8",
        "pieces/k07/d.jsonl:6: it cannot be read, torn or still arriving",
    ];
    assert_eq!(said.len(), starts.len(), "{said:#?}");
    for (said, start) in said.iter().zip(starts) {
        assert!(said.starts_with(start), "{said} is not {start}");
    }
}

#[test]
fn utf_16_and_nothing_but_nuls_are_said_and_take_nothing_with_them() {
    let utf16: Vec<u8> = line(1, 1)
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    assert_eq!(of_journal(utf16).len(), 1);
    assert_eq!(of_journal(vec![0; 4096]).len(), 1);
}

#[test]
fn gaps_duplicates_clashes_and_a_falling_order_are_said() {
    let other = at(
        2,
        2,
        "2026-01-02T00:00:00Z",
        r#"{"fact":"note","text":"y"}"#,
    );
    let said = of_journal(lines(&[
        line(2, 2),
        line(2, 2),
        other,
        line(5, 1),
        line(9, 9),
    ]));
    assert_eq!(
        said,
        [
            "pieces/k07/d.jsonl:1: line 1 of d missing before it, lost or still arriving",
            "pieces/k07/d.jsonl:3: it is number 2 of d, and so is a different line at pieces/k07/d.jsonl:1: both are kept",
            "pieces/k07/d.jsonl:4: lines 3 to 4 of d missing before it, lost or still arriving",
            "pieces/k07/d.jsonl:4: its seq is 1, and the line before it of d has 2: it must grow",
            "pieces/k07/d.jsonl:5: lines 6 to 8 of d missing before it, lost or still arriving",
        ]
    );
}

#[test]
fn huge_and_deep_lines_are_a_sentence() {
    let deep = "[".repeat(100_000) + &"]".repeat(100_000);
    let amends = |inner: &str| {
        format!(r#"{{"fact":"amends","entry":{{"device":"d","n":1,"part":0}},"amended":{inner}}}"#)
    };
    let nested = (0..2_000).fold(r#"{"fact":"note","text":"x"}"#.to_owned(), |f, _| {
        amends(&f)
    });
    let said = of_journal(lines(&[
        "x".repeat(LONGEST_LINE + 1),
        at(1, 1, "2026-01-01T00:00:00Z", &deep),
        at(2, 2, "2026-01-01T00:00:00Z", &nested),
        format!(r#"{{"extra":{deep},{}"#, &line(3, 3)[1..]),
        line(4, 4),
    ]));
    assert!(
        said[0].contains(":1: it cannot be read and is skipped: it is 1048577 bytes"),
        "{said:#?}"
    );
    assert!(
        said[1].contains(":2: its fact 1 is not understood"),
        "{said:#?}"
    );
    assert!(
        said[2].contains(":3: its fact 1 is not understood"),
        "{said:#?}"
    );
    assert!(said[3].contains(":4: it cannot be read"), "{said:#?}");
    assert!(
        said.iter().all(|s| s.len() < 400),
        "a sentence, not the line again"
    );
}

#[test]
fn a_journal_past_all_measure_is_not_read_and_many_bad_lines_are_counted() {
    let mut long = line(1, 1).into_bytes();
    long.resize(usize::try_from(LONGEST_JOURNAL).unwrap() + 1, b'\n');
    let said = of_journal(long);
    assert_eq!(
        said,
        [format!(
            "pieces/k07/d.jsonl: it cannot be read: it is {} bytes long, {LONGEST_JOURNAL} are allowed",
            LONGEST_JOURNAL + 1
        )]
    );
    let said = of_journal("x\n".repeat(200_000));
    assert_eq!(said.len(), MOST_BAD + 1);
    assert!(
        said[0].ends_with("d.jsonl: 199900 more lines cannot be read and are skipped"),
        "{}",
        said[0]
    );
}

#[test]
fn days_at_the_ends_of_the_calendar_are_said_and_break_nothing() {
    let looked = r#"{"fact":"note","text":"x"}"#;
    let paused = r#"{"fact":"paused","until":"9999-12-31"}"#;
    let said = of_journal(lines(&[
        at(1, 1, "0000-01-01T00:00:00+23:59", looked),
        at(2, 2, "9999-12-31T23:59:59-23:59", looked),
        at(3, 3, "0000-12-31T23:59:59-12:00", paused),
        at(
            4,
            4,
            "2026-01-01T00:00:00Z",
            r#"{"fact":"paused","until":"0000-01-01"}"#,
        ),
        at(5, 5, "+12026-01-01T00:00:00Z", looked),
    ]));
    let short: Vec<_> = said
        .iter()
        .map(|s| &s["pieces/k07/d.jsonl:".len()..])
        .collect();
    assert_eq!(short.len(), 4, "{short:?}");
    assert_eq!(
        short[0],
        "1: its at is 0000-01-01T00:00:00+23:59, years 1970 to 2199 are expected"
    );
    assert!(short[1].starts_with("2: its at is 9999-12-31"), "{short:?}");
    assert!(short[2].starts_with("3: its at is 0000-12-31"), "{short:?}");
    assert!(short[3].starts_with("5: it cannot be read"), "{short:?}");
}

#[test]
fn what_points_at_nothing_and_what_nobody_understands_is_said() {
    let said = of_journal(lines(&[
        at(
            1,
            1,
            "2026-01-01T00:00:00Z",
            r#"{"fact":"retracts","line":{"device":"d","n":7}}"#,
        ),
        at(
            2,
            2,
            "2026-01-01T00:00:00Z",
            r#"{"fact":"from_tomorrow"},{"fact":"note","text":"x","colour":1}"#,
        ),
        at(3, 3, "2026-01-01T00:00:00Z", "17"),
    ]));
    assert_eq!(
        said,
        [
            "pieces/k07/d.jsonl:1: it changes line 7 of d, which is not here",
            "pieces/k07/d.jsonl:2: its fact 1 ('from_tomorrow') is not understood by this version: it is kept and shown as unknown",
            "pieces/k07/d.jsonl:2: its fact 2 ('note') is not understood by this version: it is kept and shown as unknown",
            "pieces/k07/d.jsonl:3: its fact 1 is not understood by this version: it is kept and shown as unknown",
        ]
    );
}

#[test]
fn foreign_names_empty_pieces_and_photos_that_are_not_whole_are_said() {
    let photo = |hash: &str| format!("pieces/k07/photos/{hash}.jpg");
    // SHA-256 of no bytes at all, as published with the standard (FIPS 180-4 example vectors).
    let empty = photo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    let other = photo("f3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    let disk = shelf_with(&[
        ("budget.ods", vec![1]),
        (".sync/x", vec![]),
        ("shop/notes.txt", vec![]),
        ("pieces/K07 (2)/d.jsonl", vec![]),
        ("pieces/loose.jsonl", vec![]),
        ("pieces/k08/.keep", vec![]),
        ("pieces/k07/d.jsonl", lines(&[line(1, 1)]).into_bytes()),
        (
            "pieces/k07/d (conflict of a desktop).jsonl",
            lines(&[line(1, 1)]).into_bytes(),
        ),
        (&empty, vec![]),
        (&other, vec![]),
        ("pieces/k07/photos/holiday.png", vec![]),
    ]);
    let (said, looked) = looked(&disk);
    let no_piece = "it is no piece and is left alone: a piece is a folder whose name has 1 to 64 of a-z, 0-9 and -";
    assert_eq!(
        said,
        [
            "budget.ods: it is not part of a shelf and is left alone".to_owned(),
            "shop/notes.txt: it is not part of a shelf and is left alone".to_owned(),
            format!("pieces/K07 (2): {no_piece}"),
            format!("pieces/{}: its content is not what its name says: a part has not arrived, or it was damaged", &other["pieces/".len()..]),
            "pieces/k07/photos/holiday.png: it is not part of a shelf and is left alone".to_owned(),
            "pieces/k08: the piece has no journal: the folder of a crash, or its entries are still arriving".to_owned(),
            format!("pieces/loose.jsonl: {no_piece}"),
        ]
    );
    assert_eq!((looked.photos, looked.journals), (2, 2));
}

#[test]
fn a_newer_damaged_or_missing_shelf_file_is_a_problem_and_the_rest_is_read() {
    let newer = r#"{"format":"evenwall-shelf","version":9}"#;
    let deep = format!("{{\"format\":{}", "[".repeat(50_000));
    let long = format!(
        r#"{{"format":"evenwall-shelf","version":1}}{}"#,
        " ".repeat(1 << 17)
    );
    for (content, says) in [
        (newer, "newer version of the program (format 9"),
        (r#"{"format":"evenwall-sh"#, "is damaged"),
        (deep.as_str(), "is damaged"),
        (long.as_str(), "is damaged"),
    ] {
        let disk = shelf_with(&[
            ("shelf.json", content.into()),
            ("pieces/k07/d.jsonl", b"torn\n".to_vec()),
        ]);
        let (said, _) = looked(&disk);
        assert!(
            said[0].starts_with("shelf.json: ") && said[0].contains(says),
            "{said:?}"
        );
        assert!(said[1].starts_with("pieces/k07/d.jsonl:1: "), "{said:?}");
    }
    let disk = FaultyDisk::new();
    let mut shelf = open_as(&disk, "/shelf", OTHER_DATA, 1).unwrap();
    note(&mut shelf, &piece("k07"), "x").unwrap();
    disk.rename(Path::new("/shelf/shelf.json"), Path::new("/elsewhere"))
        .unwrap();
    let mut said = Vec::new();
    verify(&disk, Path::new("/shelf"), &mut |p| {
        said.push(p.to_string())
    })
    .unwrap();
    assert!(said[0].starts_with("shelf.json: it is missing"), "{said:?}");
}

#[test]
fn no_shelf_is_an_error_and_unreadable_files_are_problems() {
    let disk = FaultyDisk::new();
    let answer = verify(&disk, Path::new("/nowhere"), &mut |_| {});
    assert!(matches!(answer, Err(ShelfError::Nowhere { .. })));
    let disk = shelf_with(&[("pieces/k07/d.jsonl", lines(&[line(1, 1)]).into_bytes())]);
    disk.trouble(Some(Trouble::Unreadable));
    let answer = verify(&disk, Path::new(SHELF), &mut |_| {});
    assert!(
        matches!(answer, Err(ShelfError::Io { .. })),
        "shelf.json itself"
    );
}

/// Whatever the shelf says of itself while it is read is among what verify says.
#[test]
fn verify_knows_all_that_loading_notices() {
    let other = at(
        1,
        1,
        "2026-01-02T00:00:00Z",
        r#"{"fact":"note","text":"y"}"#,
    );
    let disk = shelf_with(&[
        ("pieces/no piece/x", vec![]),
        (
            "pieces/k07/d.jsonl",
            lines(&[line(1, 1), "torn".into(), line(4, 4), "tail".into()]).into_bytes(),
        ),
        ("pieces/k07/copy.jsonl", lines(&[other]).into_bytes()),
        ("pieces/k08/d.jsonl", "x\n".repeat(300).into_bytes()),
    ]);
    let mut reader = Shelf::open_reader(Arc::new(disk.clone()), Path::new(SHELF)).unwrap();
    reader.load_everything().unwrap();
    let (said, _) = looked(&disk);
    let mut kinds = std::collections::BTreeSet::new();
    for notice in reader.notices() {
        let start = match notice {
            Notice::Line { file, line, .. } | Notice::StillArriving { file, line } => {
                format!("{file}:{line}: ")
            }
            Notice::Missing { from, to, .. } => format!("lines {from} to {to} of d missing"),
            Notice::Clash { n, .. } => format!("it is number {n} of d"),
            Notice::IgnoredName { path } | Notice::FileUnreadable { file: path, .. } => {
                format!("{path}: ")
            }
            Notice::MoreLines { file, count } => format!("{file}: {count} more lines"),
            other => panic!("not expected of a reader: {other}"),
        };
        assert!(
            said.iter().any(|s| s.contains(&start)),
            "{notice} is not among {said:#?}"
        );
        kinds.insert(format!("{:?}", std::mem::discriminant(notice)));
    }
    assert_eq!(kinds.len(), 6, "every kind of notice was there: {kinds:?}");
}
