//! Crash tests: the machine goes down at every step, in every way; what was acknowledged is there afterwards.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::collections::BTreeSet;
use std::path::Path;

use evenwall_piece::ids::Scope;
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::{FaultyDisk, Left};
use world::{SHELF, all_notes, note, open, piece};

/// What the turner was told.
#[derive(Debug, Clone, Default)]
struct Told {
    device: Option<String>,
    stored: Vec<String>,
    /// Was being stored when the machine went down.
    under_way: Option<String>,
}

impl Told {
    fn open(
        &mut self,
        disk: &FaultyDisk,
        seed: u8,
    ) -> Result<evenwall_shelf::shelf::Shelf, ShelfError> {
        let shelf = open(disk, seed)?;
        self.device = shelf.device().map(ToString::to_string);
        Ok(shelf)
    }

    fn note(
        &mut self,
        shelf: &mut evenwall_shelf::shelf::Shelf,
        scope: &Scope,
        text: &str,
    ) -> Result<(), ShelfError> {
        self.under_way = Some(text.to_owned());
        note(shelf, scope, text)?;
        self.under_way = None;
        self.stored.push(text.to_owned());
        Ok(())
    }
}

/// A new shelf, two pieces, a shop fact, second lines.
fn first_day(disk: &FaultyDisk, told: &mut Told) -> Result<(), ShelfError> {
    let mut shelf = told.open(disk, 1)?;
    told.note(&mut shelf, &piece("k07"), "first")?;
    told.note(&mut shelf, &piece("k07"), "second")?;
    told.note(&mut shelf, &Scope::Shop, "climate")?;
    told.note(&mut shelf, &piece("k08"), "other piece")
}

/// Two sittings of many lines, so that the device's record is saved between.
fn two_sittings(disk: &FaultyDisk, told: &mut Told) -> Result<(), ShelfError> {
    for sitting in 0..2 {
        let mut shelf = told.open(disk, 1)?;
        all_notes(&mut shelf)?;
        for n in 0..30 {
            told.note(&mut shelf, &piece("k07"), &format!("{sitting}-{n}"))?;
        }
    }
    Ok(())
}

/// One sitting long enough for the record to be saved in the middle.
fn long_sitting(disk: &FaultyDisk, told: &mut Told) -> Result<(), ShelfError> {
    let mut shelf = told.open(disk, 1)?;
    for n in 0..40 {
        told.note(&mut shelf, &piece("k07"), &format!("{n}"))?;
    }
    Ok(())
}

/// Comes up again and compares with what was told. `same_id`: the id must have stayed.
fn look(disk: &FaultyDisk, told: &Told, same_id: bool) -> Result<(), String> {
    let say = |e: ShelfError| e.to_string();
    if told.device.is_some() && !disk.exists(&Path::new(SHELF).join("shelf.json")).unwrap() {
        return Err("the shelf that was opened is gone".into());
    }
    let mut shelf = open(disk, 2).map_err(say)?;
    if let Some(why) = shelf.read_only() {
        return Err(why.to_string());
    }
    if same_id && told.device.is_some() && shelf.device().map(ToString::to_string) != told.device {
        return Err("the device has another id".into());
    }
    let mut found = all_notes(&mut shelf).map_err(say)?;
    if same_id && told.device.is_some() && shelf.device().map(ToString::to_string) != told.device {
        return Err("the device took another id".into());
    }
    let shown = found.clone();
    if let Some(under_way) = &told.under_way {
        found.retain(|f| f != under_way);
    }
    let sorted = |list: &[String]| {
        let mut list = list.to_vec();
        list.sort();
        list
    };
    if sorted(&found) != sorted(&told.stored) {
        return Err(format!("told {:?}, found {found:?}", told.stored));
    }

    // What is shown is durable, and the next line joins it whatever the crash left behind.
    drop(shelf);
    disk.restart(Left::OnlySynced);
    let mut shelf = open(disk, 3).map_err(say)?;
    if all_notes(&mut shelf).map_err(say)? != shown {
        return Err("shown lines were lost".into());
    }
    for text in ["after one", "after two"] {
        note(&mut shelf, &piece("k07"), text).map_err(say)?;
    }
    drop(shelf);
    disk.restart(Left::OnlySynced);
    let mut shelf = open(disk, 4).map_err(say)?;
    let mut wanted = shown;
    wanted.extend(["after one".to_owned(), "after two".to_owned()]);
    let found = all_notes(&mut shelf).map_err(say)?;
    if sorted(&found) != sorted(&wanted) {
        return Err(format!("wanted {wanted:?}, found {found:?}"));
    }
    Ok(())
}

type Day = fn(&FaultyDisk, &mut Told) -> Result<(), ShelfError>;

fn count_steps(day: Day) -> usize {
    let disk = FaultyDisk::new();
    day(&disk, &mut Told::default()).unwrap();
    disk.steps()
}

fn crash_at(day: Day, step: usize) -> (FaultyDisk, Told) {
    let disk = FaultyDisk::new();
    let mut told = Told::default();
    disk.crash_at(step);
    // A crash while the device's own record is written comes after the line was stored: no error then.
    day(&disk, &mut told).ok();
    (disk, told)
}

#[test]
fn a_crash_at_any_step_torn_at_any_byte_loses_nothing_that_was_acknowledged() {
    let steps = count_steps(first_day);
    assert!(steps > 25, "{steps}");
    for step in 0..=steps {
        let (disk, told) = crash_at(first_day, step);
        let len = disk.last_write_len();
        let torn = (0..=len).flat_map(|keep| [Left::Torn(keep), Left::Nuls(keep)]);
        for left in torn.chain([Left::OnlySynced, Left::Names, Left::Killed]) {
            let disk = disk.fork();
            disk.restart(left);
            // Killed before the id was stored for good, a new id is harmless.
            let same_id = left != Left::Killed;
            look(&disk, &told, same_id)
                .unwrap_or_else(|e| panic!("step {step}, {left:?}: {e}\n{told:?}"));
        }
    }
}

#[test]
fn a_long_diary_keeps_its_device_over_a_crash_at_any_step() {
    for day in [two_sittings as Day, long_sitting] {
        for step in 0..=count_steps(day) {
            let (disk, told) = crash_at(day, step);
            for left in [Left::OnlySynced, Left::Names, Left::Torn(7), Left::Nuls(7)] {
                let disk = disk.fork();
                disk.restart(left);
                look(&disk, &told, true).unwrap_or_else(|e| panic!("step {step}, {left:?}: {e}"));
            }
        }
    }
}

/// The syncs of a day whose removal no crash finds out.
fn needless_syncs(day: Day) -> Vec<String> {
    let disk = FaultyDisk::new();
    day(&disk, &mut Told::default()).unwrap();
    let (steps, syncs) = (disk.steps(), disk.syncs());
    assert!(syncs.len() > 10);
    let is_missed = |number: usize| {
        // A crash soon after the sync finds it out, if any does.
        let after = syncs[number].1 + 1;
        (after..=steps).chain(0..after).any(|step| {
            let disk = FaultyDisk::new();
            let mut told = Told::default();
            disk.ignore_sync(number);
            disk.crash_at(step);
            day(&disk, &mut told).ok();
            [Left::OnlySynced, Left::Names].into_iter().any(|left| {
                let disk = disk.fork();
                disk.restart(left);
                look(&disk, &told, true).is_err()
            })
        })
    };
    let needless = syncs
        .iter()
        .enumerate()
        .filter(|(number, _)| !is_missed(*number));
    needless
        .map(|(number, (sync, _))| format!("{number}: {sync}"))
        .collect()
}

#[test]
fn removing_any_one_sync_is_found_out() {
    for day in [first_day as Day, two_sittings, long_sitting] {
        assert_eq!(needless_syncs(day), [] as [String; 0]);
    }
}

#[test]
fn after_a_killed_start_every_kind_of_sync_is_made_up_for() {
    // The program is killed at each step (the power holds), started again, and then the power goes.
    let (mut made, mut missed) = (BTreeSet::new(), BTreeSet::new());
    for step in 0..count_steps(first_day) {
        let (killed, _) = crash_at(first_day, step);
        killed.restart(Left::Killed);
        let second = |disk: &FaultyDisk| {
            let mut told = Told::default();
            let mut shelf = told.open(disk, 2).unwrap();
            told.stored = all_notes(&mut shelf).unwrap();
            told.note(&mut shelf, &piece("k09"), "second start")
                .unwrap();
            told
        };
        let before = killed.syncs().len();
        let whole = killed.fork();
        let told = second(&whole);
        whole.restart(Left::OnlySynced);
        look(&whole, &told, false).unwrap_or_else(|e| panic!("killed at step {step}: {e}"));
        for (number, (label, _)) in whole.syncs().iter().enumerate().skip(before) {
            made.insert(label.clone());
            let disk = killed.fork();
            disk.ignore_sync(number);
            let told = second(&disk);
            disk.restart(Left::OnlySynced);
            if look(&disk, &told, true).is_err() {
                missed.insert(label.clone());
            }
        }
    }
    // The record of a short diary may be lost without harm: see the long ones above.
    made.retain(|label| !label.contains("journals.json"));
    assert_eq!(
        made.difference(&missed).collect::<Vec<_>>(),
        [] as [&String; 0]
    );
}
