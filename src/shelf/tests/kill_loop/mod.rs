//! Kill loop: a process that records is killed at a random moment, again and again on one shelf; after each kill all that
//! it had acknowledged must be there. Used by a short test and a long command.
#![allow(dead_code)] // The command prints the counts as they are, the test reads some.

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::Duration;

use chrono::DateTime;
use evenwall_piece::ids::{PieceId, Scope};
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::notice::Notice;
use evenwall_shelf::shelf::Shelf;
use serde_json::json;

/// Where the child finds its folder; it is the child where this is set.
pub const FOLDER: &str = "EVENWALL_KILL_LOOP_FOLDER";
const ROUND: &str = "EVENWALL_KILL_LOOP_ROUND";

/// Numbers that look random, the same for one seed.
pub struct Dice(pub u64);

impl Dice {
    pub fn below(&mut self, end: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) % end
    }
}

/// What came of it.
#[derive(Debug, Default)]
pub struct Counts {
    pub rounds: usize,
    /// Entries whose storing was acknowledged.
    pub acknowledged: usize,
    /// Entries found that were stored but killed before they could be acknowledged.
    pub stored_unsaid: usize,
    /// Rounds killed before the first acknowledgement of the round: while starting, opening or with the first entry.
    pub before_the_first: usize,
    /// Lines that a kill tore, reported and set aside.
    pub torn: usize,
    /// Times that the device took a new id.
    pub new_ids: usize,
    /// Lines of the shelf in the end.
    pub lines: usize,
}

fn open(folder: &Path, seed: u8) -> Shelf {
    let disk: Arc<dyn Disk> = Arc::new(RealDisk::new());
    let (shelf, data) = (folder.join("shelf"), folder.join("data"));
    Shelf::open(disk, &shelf, &data, [seed; 16]).expect("the shelf opens after every kill")
}

/// The child: opens the shelf, reads it and records for ever, saying each entry that is stored on standard output.
pub fn child() -> ! {
    let folder = std::env::var_os(FOLDER).unwrap();
    let round: u64 = std::env::var(ROUND).unwrap().parse().unwrap();
    let mut dice = Dice(round.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
    let mut shelf = open(Path::new(&folder), 1);
    shelf.load_all(|_, _| ()).unwrap();
    let when = DateTime::parse_from_rfc3339("2026-03-14T09:30:00+01:00").unwrap();
    let mut out = std::io::stdout();
    for entry in 0_u64.. {
        let scope = match dice.below(12) {
            0 => Scope::Shop,
            1 => Scope::Piece(PieceId::new(&format!("new-{round}-{entry}")).unwrap()),
            n => Scope::Piece(PieceId::new(&format!("k{n:02}")).unwrap()),
        };
        // A long one now and then: its write takes long enough to be cut in the middle.
        let length = if dice.below(4) == 0 { 400_000 } else { 40 };
        let text = format!("{round}-{entry} {}", "x".repeat(length));
        let fact = json!({ "fact": "note", "text": text });
        shelf.append(&scope, when, when, &[fact]).unwrap();
        out.write_all(format!("stored {round}-{entry}\n").as_bytes())
            .unwrap();
        out.flush().unwrap();
    }
    unreachable!("it is killed")
}

/// Runs so many rounds on a fresh shelf in `folder`. `command` makes the child.
///
/// # Panics
/// Where anything acknowledged is missing, doubled, or the shelf does not open.
pub fn rounds(folder: &Path, command: &dyn Fn() -> Command, rounds: usize, seed: u64) -> Counts {
    let mut dice = Dice(seed | 1);
    let mut counts = Counts {
        rounds,
        ..Counts::default()
    };
    let mut acknowledged: Vec<String> = Vec::new();
    let mut device: Option<String> = None;
    for round in 0..rounds {
        let mut child = command()
            .env(FOLDER, folder)
            .env(ROUND, round.to_string())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut said = String::new();
        // Two rounds of three are killed some time after the first entry, the third at any time from the start on.
        if dice.below(3) > 0 {
            while !said.contains("stored ") {
                assert!(
                    out.read_line(&mut said).unwrap() > 0,
                    "the child stopped by itself: {said}"
                );
            }
        }
        std::thread::sleep(Duration::from_micros(dice.below(30_000)));
        child.kill().unwrap();
        child.wait().unwrap();
        out.read_to_string(&mut said).unwrap();
        let stored: Vec<String> = said
            .lines()
            .filter_map(|l| l.rsplit_once("stored ").map(|(_, id)| id.to_owned()))
            .collect();
        counts.before_the_first += usize::from(stored.is_empty());
        acknowledged.extend(stored);
        look(folder, round, &acknowledged, &mut device, &mut counts);
    }
    counts.acknowledged = acknowledged.len();
    counts
}

/// Opens the shelf as the program would and compares.
fn look(
    folder: &Path,
    round: usize,
    acknowledged: &[String],
    device: &mut Option<String>,
    counts: &mut Counts,
) {
    let mut shelf = open(folder, 2);
    let all = shelf
        .load_all(|_, lines| {
            let text = |l: &evenwall_shelf::line::RawLine| {
                let fact: serde_json::Value = serde_json::from_str(l.facts[0].get()).unwrap();
                let text = fact["text"].as_str().unwrap();
                text.split(' ').next().unwrap().to_owned()
            };
            lines.iter().map(text).collect::<Vec<_>>()
        })
        .unwrap();
    let mut found: BTreeMap<String, usize> = BTreeMap::new();
    for note in all.into_iter().flat_map(|(_, notes)| notes) {
        *found.entry(note).or_default() += 1;
    }
    for id in acknowledged {
        assert_eq!(
            found.get(id),
            Some(&1),
            "round {round}: {id} was acknowledged"
        );
    }
    counts.lines = found.len();
    counts.stored_unsaid = found.len() - acknowledged.len();
    assert!(
        counts.stored_unsaid <= round + 1,
        "round {round}: at most one entry a round is under way"
    );
    counts.torn = 0;
    for notice in shelf.notices() {
        match notice {
            Notice::Line { .. } | Notice::StillArriving { .. } => counts.torn += 1,
            Notice::NewDeviceId { .. } => counts.new_ids += 1,
            other => panic!("round {round}: {other}"),
        }
    }
    let id = shelf.device().map(ToString::to_string);
    if round > 0 && device.is_some() && *device != id {
        counts.new_ids += 1;
    }
    *device = id;
}
