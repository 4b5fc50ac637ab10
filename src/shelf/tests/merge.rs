//! Merge, as properties: whatever lies in a folder, no good line is lost and the order of files does not matter.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::collections::BTreeSet;
use std::path::Path;
use std::sync::Arc;

use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::FaultyDisk;
use evenwall_shelf::journal::Journal;
use evenwall_shelf::shelf::Shelf;
use proptest::prelude::*;
use world::{SHELF, note, open, piece, text_of};

/// Lines of three devices with clocks that jump a year either way.
fn lines() -> impl Strategy<Value = Vec<String>> {
    let one = (0..3_usize, 1..400_i64, any::<bool>());
    proptest::collection::vec(one, 0..24).prop_map(|parts| {
        let mut counts = [0_u64; 3];
        let mut seq = 0;
        let mut lines = Vec::new();
        for (device, days, saw_all) in parts {
            counts[device] += 1;
            // A device that had not read the newest lines uses a number twice.
            seq += u64::from(saw_all || seq == 0);
            let at = chrono::DateTime::from_timestamp(1_767_225_600 + (days - 200) * 172_800, 0).unwrap().to_rfc3339();
            lines.push(format!(
                r#"{{"device":"{}","n":{},"seq":{seq},"at":"{at}","noted_at":"{at}","v":1,"facts":[{{"fact":"note","text":"{}"}}]}}"#,
                ["anna", "ben", "cleo"][device],
                counts[device],
                lines.len(),
            ));
        }
        lines
    })
}

fn shelf_with(files: &[(String, Vec<u8>)]) -> FaultyDisk {
    let disk = FaultyDisk::new();
    drop(open(&disk, 1).unwrap());
    let folder = Path::new(SHELF).join("pieces/k07");
    for path in [Path::new(SHELF).join("pieces"), folder.clone()] {
        disk.create_folder(&path).unwrap();
    }
    for (name, bytes) in files {
        disk.write(&folder.join(name), bytes).unwrap();
    }
    disk
}

fn read(disk: &FaultyDisk) -> Vec<String> {
    let mut shelf = Shelf::open_reader(Arc::new(disk.clone()), Path::new(SHELF)).unwrap();
    shelf
        .load(&piece("k07"))
        .unwrap()
        .iter()
        .map(|l| format!("{:?} {} {}", l.id, l.seq, text_of(l)))
        .collect()
}

fn joined<'a>(lines: impl IntoIterator<Item = &'a String>) -> Vec<u8> {
    lines
        .into_iter()
        .flat_map(|l| format!("{l}\n").into_bytes())
        .collect()
}

fn texts(read: &[String]) -> BTreeSet<String> {
    read.iter()
        .map(|l| l.rsplit(' ').next().unwrap().to_owned())
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn reading_does_not_depend_on_which_file_a_line_is_in(
        lines in lines(),
        places in proptest::collection::vec(0..4_usize, 24),
        names in Just(["a.jsonl", "b (2).jsonl", "c.conflict-20260101.jsonl", "Z.JSONL"]).prop_shuffle(),
    ) {
        let together = shelf_with(&[("all.jsonl".into(), joined(&lines))]);
        let apart: Vec<_> = (0..4)
            .map(|file| {
                let its = lines.iter().zip(&places).filter(|(_, p)| **p == file).map(|(l, _)| l);
                (names[file].to_owned(), joined(its))
            })
            .collect();
        let apart = shelf_with(&apart);
        prop_assert_eq!(read(&together).len(), lines.len());
        prop_assert_eq!(read(&together), read(&apart));
    }

    #[test]
    fn conflict_copies_are_harmless(lines in lines(), cut in 0..25_usize, torn in 0..200_usize) {
        let plain = shelf_with(&[("all.jsonl".into(), joined(&lines))]);
        let mut copy = joined(lines.iter().take(cut));
        copy.truncate(copy.len().saturating_sub(torn));
        let copied = shelf_with(&[("all.jsonl".into(), joined(&lines)), ("all (copy).jsonl".into(), copy)]);
        prop_assert_eq!(read(&plain), read(&copied));
    }

    #[test]
    fn garbage_between_lines_never_panics_and_never_loses_a_good_line(
        lines in lines(),
        garbage in proptest::collection::vec(
            prop_oneof![
                proptest::collection::vec(any::<u8>(), 0..60),
                Just(vec![0; 40]),
                Just(b"{\"device\":\"anna\",\"n\":1,\"seq\"".to_vec()),
                Just("\u{feff}[]".as_bytes().to_vec()),
            ],
            25,
        ),
    ) {
        let mut bytes = Vec::new();
        for (line, bad) in lines.iter().zip(&garbage) {
            bytes.extend(bad.iter().copied());
            bytes.push(b'\n');
            bytes.extend(line.bytes());
            bytes.push(b'\n');
        }
        bytes.extend(&garbage[24]);
        let disk = shelf_with(&[("all.jsonl".into(), bytes)]);
        let found = texts(&read(&disk));
        for number in 0..lines.len() {
            prop_assert!(found.contains(&number.to_string()));
        }
    }

    #[test]
    fn any_bytes_are_read_without_a_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let journal = Journal::read(&bytes);
        prop_assert!(journal.lines.len() + journal.bad.len() <= bytes.len());
    }

    #[test]
    fn an_append_changes_no_byte_that_was_there(
        lines in lines(),
        tail in proptest::collection::vec(any::<u8>(), 0..30),
    ) {
        let mut bytes = joined(&lines);
        bytes.extend(tail);
        let disk = shelf_with(&[("anna.jsonl".into(), bytes.clone())]);
        let before = texts(&read(&disk));
        let mut shelf = open(&disk, 1).unwrap();
        note(&mut shelf, &piece("k07"), "mine").unwrap();
        note(&mut shelf, &piece("k07"), "mine-too").unwrap();
        let path = Path::new(SHELF).join("pieces/k07/anna.jsonl");
        prop_assert_eq!(disk.read(&path).unwrap(), bytes);
        let order: Vec<_> = read(&disk);
        prop_assert!(order[order.len() - 2].ends_with(" mine"), "the newest seq comes last");
        let mut wanted = before;
        wanted.extend(["mine".to_owned(), "mine-too".to_owned()]);
        prop_assert_eq!(texts(&order), wanted);
    }
}
