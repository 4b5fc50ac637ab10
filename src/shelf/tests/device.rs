//! Device: two disks never write one journal, and troubles of the disk are said, not swallowed.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod world;

use std::path::{Path, PathBuf};

use evenwall_piece::ids::Scope;
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::{FaultyDisk, Left, Trouble};
use evenwall_shelf::notice::Notice;
use world::{
    DATA, OTHER_DATA, SHELF, all_notes, content, journal, note, notes, open, open_as, piece,
};

/// A shelf with so many notes on k07; its device's id.
fn with_notes(count: usize) -> (FaultyDisk, String) {
    let disk = FaultyDisk::new();
    let mut shelf = open(&disk, 1).unwrap();
    for n in 0..count {
        note(&mut shelf, &piece("k07"), &format!("note {n}")).unwrap();
    }
    let id = shelf.device().unwrap().to_string();
    (disk, id)
}

/// Copies a folder with all below it.
fn copy(disk: &FaultyDisk, from: &Path, to: &Path) {
    disk.create_folder(to).unwrap();
    for entry in disk.list(from).unwrap() {
        let (from, to) = (from.join(&entry.name), to.join(&entry.name));
        if entry.is_folder {
            copy(disk, &from, &to);
        } else {
            disk.write(&to, &disk.read(&from).unwrap()).unwrap();
        }
    }
}

/// Opens, reads all, adds one note, and says under which id.
fn add(disk: &FaultyDisk, seed: u8) -> String {
    let mut shelf = open(disk, seed).unwrap();
    all_notes(&mut shelf).unwrap();
    note(&mut shelf, &piece("k07"), "later").unwrap();
    let id = shelf.device().unwrap().to_string();
    assert_eq!(notes(&mut shelf, &piece("k07")).last().unwrap(), "later");
    id
}

#[test]
fn an_untouched_shelf_keeps_its_device_and_goes_on_in_its_journal() {
    let (disk, id) = with_notes(3);
    let before = content(&disk, &journal("pieces/k07", &id));
    assert_eq!(add(&disk, 2), id);
    let after = content(&disk, &journal("pieces/k07", &id));
    assert!(after.starts_with(&before) && after.len() > before.len());
}

#[test]
fn a_journal_that_is_shorter_changed_or_gone_is_never_appended_to() {
    type Change = fn(&FaultyDisk, &Path);
    let cut: Change = |disk, path| {
        let bytes = content(disk, path);
        let end = bytes.iter().position(|b| *b == b'\n').unwrap() + 1;
        disk.write(path, &bytes[..end]).unwrap();
    };
    let changed: Change = |disk, path| {
        let mut bytes = content(disk, path);
        let place = bytes.len() / 2;
        bytes[place] ^= 1;
        disk.write(path, &bytes).unwrap();
    };
    let gone: Change = |disk, path| disk.rename(path, &path.with_extension("old")).unwrap();
    let emptied: Change = |disk, path| disk.write(path, b"").unwrap();
    let joined: Change = |disk, path| {
        let mut bytes = content(disk, path);
        let line = String::from_utf8(bytes.clone())
            .unwrap()
            .lines()
            .next()
            .unwrap()
            .to_owned();
        let id = path.file_stem().unwrap().to_str().unwrap();
        let foreign = line.replace(id, "stranger").replace("\"n\":1,", "\"n\":4,");
        bytes.extend(foreign.bytes());
        disk.write(path, &bytes).unwrap();
    };
    for (name, change) in [
        ("joined with another's", joined),
        ("cut", cut),
        ("changed", changed),
        ("gone", gone),
        ("emptied", emptied),
    ] {
        let (disk, id) = with_notes(3);
        let path = journal("pieces/k07", &id);
        change(&disk, &path);
        let before = disk.read(&path).ok();
        let new = add(&disk, 2);
        assert_ne!(new, id, "{name}");
        assert_eq!(
            disk.read(&path).ok(),
            before,
            "{name}: the old journal is left alone"
        );
        assert_eq!(add(&disk, 3), new, "{name}: and the new id stays");
    }
}

#[test]
fn a_new_id_is_told() {
    let (disk, id) = with_notes(2);
    disk.write(&journal("pieces/k07", &id), b"").unwrap();
    let shelf = open(&disk, 2).unwrap();
    let new = shelf.device().unwrap().to_string();
    let told: Vec<_> = shelf.notices().map(ToString::to_string).collect();
    assert_eq!(
        told,
        [format!(
            "pieces/k07/{id}.jsonl is not as this device left it: it writes as {new} from now on, no longer as {id}"
        )]
    );
}

#[test]
fn a_copy_of_the_shelf_elsewhere_is_written_under_another_id() {
    let (disk, id) = with_notes(3);
    copy(&disk, Path::new(SHELF), Path::new("/home/turner/copy"));
    let mut shelf = open_as(&disk, "/home/turner/copy", DATA, 2).unwrap();
    assert_eq!(notes(&mut shelf, &piece("k07")).len(), 3);
    assert_ne!(shelf.device().unwrap().to_string(), id);
}

#[test]
fn of_a_cloned_disk_both_lines_are_kept_and_the_clone_gets_an_id() {
    // Shelf and data folder were cloned together: both devices go on with number 4.
    let (disk, id) = with_notes(3);
    let clone = disk.fork();
    assert_eq!(add(&disk, 2), id);
    let mut shelf = open(&clone, 3).unwrap();
    note(&mut shelf, &piece("k07"), "on the clone").unwrap();
    drop(shelf);
    // A sync program brings the other's file as a conflict copy.
    let theirs = content(&disk, &journal("pieces/k07", &id));
    clone
        .write(&journal("pieces/k07", &format!("{id} (conflict)")), &theirs)
        .unwrap();
    let mut shelf = open(&clone, 4).unwrap();
    let all = all_notes(&mut shelf).unwrap();
    assert_eq!(all.len(), 5, "{all:?}");
    assert!(all.contains(&"later".into()) && all.contains(&"on the clone".into()));
    assert_ne!(shelf.device().unwrap().to_string(), id);
    let is_clash = |n: &Notice| matches!(n, Notice::Clash { n: 4, .. });
    assert!(shelf.notices().any(is_clash));
}

#[test]
fn a_journal_far_ahead_of_its_record_is_another_writers() {
    let (disk, id) = with_notes(3);
    let old = disk.fork();
    let mut shelf = open(&disk, 2).unwrap();
    for n in 0..33 {
        note(&mut shelf, &piece("k07"), &n.to_string()).unwrap();
    }
    // The old disk comes back, its sync program fetches what was written meanwhile.
    let path = journal("pieces/k07", &id);
    old.write(&path, &content(&disk, &path)).unwrap();
    assert_ne!(add(&old, 3), id);
    assert_eq!(content(&old, &path), content(&disk, &path));
}

#[test]
fn a_journal_changed_while_the_shelf_is_open_is_noticed_before_the_next_line() {
    let (disk, id) = with_notes(2);
    let mut shelf = open(&disk, 2).unwrap();
    note(&mut shelf, &piece("k07"), "mine").unwrap();
    let path = journal("pieces/k07", &id);
    let restored = content(&disk, &path)[..40].to_vec();
    disk.write(&path, &restored).unwrap();
    note(&mut shelf, &piece("k07"), "next").unwrap();
    assert_ne!(shelf.device().unwrap().to_string(), id);
    assert_eq!(content(&disk, &path), restored);
    assert_eq!(notes(&mut shelf, &piece("k07")), ["next"]);
}

#[test]
fn a_damaged_record_costs_at_most_a_new_id() {
    for file in ["device.json", "journals.json", "journals.log"] {
        let (disk, _) = with_notes(40);
        let folder = record_folder(&disk);
        for garbage in [&b""[..], b"{", b"\0\0\0\0", b"\xff\xfe"] {
            disk.write(&folder.join(file), garbage).unwrap();
            add(&disk, 9);
        }
        let mut shelf = open(&disk, 5).unwrap();
        let all = all_notes(&mut shelf).unwrap();
        assert_eq!(all.len(), 44, "{file}");
        assert_eq!(shelf.notices().count(), 0, "{file}");
    }
}

fn record_folder(disk: &FaultyDisk) -> PathBuf {
    let shelves = Path::new(DATA).join("shelves");
    let entries = disk.list(&shelves).unwrap();
    assert_eq!(entries.len(), 1);
    shelves.join(&entries[0].name)
}

#[test]
fn troubles_of_the_disk_are_said_and_the_next_line_is_whole() {
    let cases = [
        (
            Trouble::Full(40),
            "the disk is full, make room and try again",
        ),
        (Trouble::Denied, "may not write"),
        (Trouble::ReadOnly, "read-only"),
        (Trouble::SyncFails, "look whether the entry is there"),
    ];
    for (trouble, sentence) in cases {
        let (disk, id) = with_notes(1);
        let mut shelf = open(&disk, 2).unwrap();
        note(&mut shelf, &piece("k07"), "before").unwrap();
        disk.trouble(Some(trouble));
        let error = note(&mut shelf, &piece("k07"), "in trouble").unwrap_err();
        assert!(error.to_string().contains(sentence), "{error}");
        disk.trouble(None);
        note(&mut shelf, &piece("k07"), "after").unwrap();
        disk.restart(Left::OnlySynced);
        drop(shelf);
        let mut shelf = open(&disk, 3).unwrap();
        let mut found = notes(&mut shelf, &piece("k07"));
        // Where only the sync failed the line may stand there, as the error said.
        found.retain(|n| trouble != Trouble::SyncFails || n != "in trouble");
        assert_eq!(found, ["note 0", "before", "after"]);
        assert_eq!(shelf.device().unwrap().to_string(), id);
    }
}

#[test]
fn a_record_that_cannot_be_written_is_told_and_stops_nothing() {
    let (disk, _) = with_notes(1);
    let mut shelf = open(&disk, 2).unwrap();
    note(&mut shelf, &piece("k07"), "before").unwrap();
    // Room for the line but not for the record of it.
    disk.trouble(Some(Trouble::Full(220)));
    note(&mut shelf, &piece("k07"), "squeezed in").unwrap();
    assert!(
        shelf
            .notices()
            .any(|n| matches!(n, Notice::RecordNotWritten { .. }))
    );
    disk.trouble(None);
    note(&mut shelf, &piece("k07"), "after").unwrap();
    assert_eq!(shelf.notices().count(), 0);
}

#[test]
fn nothing_and_too_much_are_refused_before_anything_is_written() {
    let (disk, _) = with_notes(1);
    let mut shelf = open(&disk, 2).unwrap();
    let steps = disk.steps();
    let when = world::at("2026-03-14T09:30:00+01:00");
    assert!(matches!(
        shelf.append(&Scope::Shop, when, when, &[]),
        Err(ShelfError::Nothing)
    ));
    let long = "x".repeat(1 << 20);
    assert!(matches!(
        note(&mut shelf, &Scope::Shop, &long),
        Err(ShelfError::TooLong { .. })
    ));
    assert_eq!(disk.steps(), steps);
    note(&mut shelf, &Scope::Shop, &"ä".repeat(10_000)).unwrap();
}

#[test]
fn refresh_says_what_another_device_wrote() {
    let (disk, id) = with_notes(1);
    let mut mine = open(&disk, 2).unwrap();
    all_notes(&mut mine).unwrap();
    assert_eq!(mine.refresh().unwrap(), [] as [Scope; 0]);
    note(&mut mine, &piece("k07"), "mine").unwrap();
    assert_eq!(
        mine.refresh().unwrap(),
        [] as [Scope; 0],
        "own lines are no news"
    );

    let mut theirs = open_as(&disk, SHELF, OTHER_DATA, 7).unwrap();
    note(&mut theirs, &piece("k07"), "theirs").unwrap();
    note(&mut theirs, &piece("k09"), "new piece").unwrap();
    assert_eq!(mine.refresh().unwrap(), [piece("k07"), piece("k09")]);
    assert_eq!(
        notes(&mut mine, &piece("k07")),
        ["note 0", "mine", "theirs"]
    );
    assert_eq!(notes(&mut mine, &piece("k09")), ["new piece"]);
    assert_eq!(mine.refresh().unwrap(), [] as [Scope; 0]);
    note(&mut mine, &piece("k07"), "seen and answered").unwrap();
    assert_eq!(
        notes(&mut mine, &piece("k07")).last().unwrap(),
        "seen and answered"
    );
    assert_eq!(mine.device().unwrap().to_string(), id);
}

#[test]
fn the_bad_tail_of_another_device_is_still_arriving_until_it_changes() {
    let (disk, _) = with_notes(1);
    let mut theirs = open_as(&disk, SHELF, OTHER_DATA, 7).unwrap();
    note(&mut theirs, &piece("k07"), "one").unwrap();
    note(&mut theirs, &piece("k07"), "two").unwrap();
    let path = journal("pieces/k07", theirs.device().unwrap().as_str());
    let whole = content(&disk, &path);
    disk.write(&path, &whole[..whole.len() - 9]).unwrap();

    let mut mine = open(&disk, 2).unwrap();
    assert_eq!(notes(&mut mine, &piece("k07")), ["note 0", "one"]);
    let told: Vec<_> = mine.notices().map(ToString::to_string).collect();
    assert_eq!(told.len(), 1);
    assert!(told[0].ends_with("line 2 is still arriving"), "{told:?}");

    let mut stuck = whole[..whole.len() - 9].to_vec();
    stuck.extend(b"\n");
    stuck.extend(&whole[..whole.iter().position(|b| *b == b'\n').unwrap() + 1]);
    disk.write(&path, &stuck).unwrap();
    assert_eq!(mine.refresh().unwrap(), [piece("k07")]);
    mine.load(&piece("k07")).unwrap();
    assert!(
        mine.notices()
            .any(|n| matches!(n, Notice::Line { line: 2, .. }))
    );

    disk.write(&path, &whole).unwrap();
    assert_eq!(mine.refresh().unwrap(), [piece("k07")]);
    assert_eq!(notes(&mut mine, &piece("k07")), ["note 0", "one", "two"]);
    assert_eq!(mine.notices().count(), 0);
}

#[test]
fn refresh_notices_that_the_own_journal_was_changed_by_another() {
    let (disk, id) = with_notes(2);
    let mut shelf = open(&disk, 2).unwrap();
    all_notes(&mut shelf).unwrap();
    let path = journal("pieces/k07", &id);
    let bytes = content(&disk, &path);
    disk.write(&path, &bytes[..bytes.len() / 2]).unwrap();
    assert_eq!(shelf.refresh().unwrap(), [piece("k07")]);
    assert_eq!(notes(&mut shelf, &piece("k07")), ["note 0"]);
    assert_ne!(shelf.device().unwrap().to_string(), id);
}

#[test]
fn a_number_of_this_device_seen_in_a_conflict_copy_is_not_used_again() {
    let (disk, id) = with_notes(3);
    let clone = disk.fork();
    add(&clone, 2);
    let theirs = content(&clone, &journal("pieces/k07", &id));
    disk.write(&journal("pieces/k07", "copy"), &theirs).unwrap();
    assert_eq!(add(&disk, 3), id);
    let mut shelf = open(&disk, 4).unwrap();
    assert_eq!(
        notes(&mut shelf, &piece("k07")),
        ["note 0", "note 1", "note 2", "later", "later"]
    );
    assert_eq!(shelf.notices().count(), 0);
}

#[test]
fn a_journal_that_may_not_be_read_is_told_and_never_appended_to() {
    let (disk, id) = with_notes(1);
    let mut writer = open(&disk, 2).unwrap();
    disk.trouble(Some(Trouble::Unreadable));
    all_notes(&mut writer).unwrap();
    let file = format!("pieces/k07/{id}.jsonl");
    let is_told = |n: &Notice| matches!(n, Notice::FileUnreadable { file: f, .. } if *f == file);
    assert!(writer.notices().any(is_told));
    let before = disk.len(&journal("pieces/k07", &id)).unwrap();
    note(&mut writer, &piece("k07"), "recorded all the same").unwrap();
    assert_ne!(writer.device().unwrap().to_string(), id);
    assert_eq!(disk.len(&journal("pieces/k07", &id)).unwrap(), before);
    disk.trouble(None);
    let mut found = notes(&mut writer, &piece("k07"));
    found.sort();
    assert_eq!(found, ["note 0", "recorded all the same"]);
}
