//! Two devices work on one shelf, apart and together: both end with the same state, nothing is lost, and it is shown.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // two folders on a real disk

mod support_two_devices;

use std::fs;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::diary::DiaryAction;
use evenwall_app::new_piece::NewPieceAction;
use evenwall_app::records::RecordsAction;
use evenwall_app::route::{Page, Tab};
use evenwall_piece::agenda::{Bench, TaskKind, agenda};
use evenwall_piece::detail::DetailField;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::vocabulary::BagFeel;
use support_two_devices::*;

#[test]
fn what_both_did_offline_is_on_both_afterwards() {
    for tool in Tool::all() {
        let mut two = Two::with(tool);
        let id = two.a.id("K07");
        two.a.note(&id, "from a");
        two.a.felt(&id, BagFeel::Damp);
        two.b.note(&id, "from b");
        two.b.new_piece("K12");
        two.a.new_piece("K08");
        two.sync();
        assert_eq!(two.a.notes(&id), ["from a", "from b"]);
        assert!(
            two.a
                .seen()
                .arrived()
                .unwrap()
                .starts_with("From another device: ")
        );
        // Both go on from there, and meet again.
        let theirs = two.a.id("K12");
        two.a.note(&theirs, "seen by a");
        two.b.felt(&id, BagFeel::Wet);
        two.sync();
        two.agree();
        assert_eq!(two.b.notes(&theirs), ["seen by a"]);
        assert_eq!(two.b.seen().pieces().count(), 3);
        assert_eq!(two.b.seen().problems(), [] as [String; 0]);
    }
}

#[test]
fn a_clock_that_is_a_day_wrong_on_one_changes_nothing_that_both_agree_on() {
    for tool in Tool::all() {
        for days in [-1, 1] {
            let mut two = Two::with(tool);
            let id = two.a.id("K07");
            two.b.now += Duration::days(days);
            two.a.setting("rough_tolerance_mm", "2");
            two.sync();
            two.b.setting("rough_tolerance_mm", "2.5");
            two.b.note(&id, "from b");
            two.sync();
            two.a.note(&id, "from a");
            two.a.setting("rough_tolerance_mm", "3");
            two.sync();
            two.agree();
            // The one who knew the others' setting was last, whatever the clocks say.
            assert!((two.b.seen().shop().settings.rough_tolerance_mm - 3.0).abs() < 1e-9);
            assert_eq!(two.a.notes(&id), ["from a", "from b"]);
        }
    }
}

#[test]
fn of_a_setting_changed_on_both_the_later_counts_and_the_earlier_is_in_the_history() {
    for tool in Tool::all() {
        let mut two = Two::with(tool);
        two.a.setting("rough_tolerance_mm", "2");
        two.b.setting("rough_tolerance_mm", "2.5");
        two.sync();
        two.agree();
        let told: Vec<String> = two
            .a
            .seen()
            .shop()
            .history
            .iter()
            .filter_map(|e| match &e.fact {
                ShopFact::Setting { key, value } if key == "rough_tolerance_mm" => {
                    Some(value.clone())
                }
                _ => None,
            })
            .collect();
        assert_eq!(told.len(), 2);
        let in_force = two.a.seen().shop().stored["rough_tolerance_mm"].clone();
        assert!(told.contains(&in_force));
        assert!(
            told.iter().any(|t| *t != in_force),
            "the earlier one can be read"
        );
    }
}

#[test]
fn a_file_that_has_only_arrived_in_part_is_shown_as_far_as_it_goes_and_whole_when_it_is_whole() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    two.sync();
    two.a.note(&id, "one");
    two.a.note(&id, "two");
    let whole = fs::read(two.a.own_journal(&id)).unwrap();
    let there = two
        .b
        .shelf
        .join("pieces")
        .join(id.as_str())
        .join(two.a.own_journal(&id).file_name().unwrap());
    let last_line = whole[..whole.len() - 1]
        .iter()
        .rposition(|b| *b == b'\n')
        .unwrap();
    fs::write(&there, &whole[..last_line + 40]).unwrap();
    assert!(two.b.refresh());
    assert_eq!(two.b.notes(&id), ["one"]);
    assert!(
        two.b
            .seen()
            .problems()
            .iter()
            .any(|p| p.contains("is still arriving")),
        "{:?}",
        two.b.seen().problems()
    );
    two.b.note(&id, "meanwhile");
    two.sync();
    two.agree();
    assert_eq!(two.b.notes(&id), ["meanwhile", "one", "two"]);
    assert_eq!(two.b.seen().problems(), [] as [String; 0]);
}

#[test]
fn a_conflict_copy_left_by_the_tool_counts_once() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    two.a.note(&id, "one");
    let own = two.a.own_journal(&id);
    let copy = own.with_file_name("something.sync-conflict-20260312-084200.jsonl");
    fs::copy(&own, &copy).unwrap();
    two.a.note(&id, "two");
    two.sync();
    two.agree();
    assert_eq!(two.b.notes(&id), ["one", "two"]);
}

#[test]
fn a_cloned_device_loses_nothing_and_takes_a_name_of_its_own() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    two.a.act(RecordsAction::NameDevice("bench phone".into()));
    two.a.close();
    // The whole device is copied, as a phone restored from an image; then both go on at the same place of the disk.
    let (place, clone) = (two.temp.path().join("a"), two.temp.path().join("clone"));
    carry(&place, &clone);
    two.a.open();
    two.a.note(&id, "by the first");
    two.a.close();
    fs::rename(&place, two.temp.path().join("first")).unwrap();
    fs::rename(&clone, &place).unwrap();
    two.a.open();
    two.a.note(&id, "by the clone");
    // Everything meets on the clone.
    let theirs = two.temp.path().join("first/shelf/pieces").join(id.as_str());
    for entry in fs::read_dir(theirs).unwrap().map(Result::unwrap) {
        let name = format!("from-the-first-{}", entry.file_name().to_string_lossy());
        fs::copy(
            entry.path(),
            place.join("shelf/pieces").join(id.as_str()).join(name),
        )
        .unwrap();
    }
    two.a.refresh();
    assert_eq!(two.a.notes(&id), ["by the clone", "by the first"]);
    // Two different lines have one number: from now on it writes under an id of its own, with the same name.
    let before = two.a.journals(&id);
    two.a.note(&id, "afterwards");
    assert!(
        two.a.journals(&id).len() > before.len(),
        "the shared journal is left alone"
    );
    let own = two.a.seen().store().device().unwrap();
    assert_eq!(two.a.seen().device_words(&own), "bench phone");
    two.sync();
    two.agree();
    assert_eq!(
        two.b.notes(&id),
        ["afterwards", "by the clone", "by the first"]
    );
}

#[test]
fn a_journal_that_the_tool_rolled_back_comes_back_from_the_other_device() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    two.a.note(&id, "one");
    let older = fs::read(two.a.own_journal(&id)).unwrap();
    two.a.note(&id, "two");
    two.sync();
    let journal = two.a.own_journal(&id);
    fs::write(&journal, older).unwrap();
    two.a.refresh();
    assert_eq!(two.a.notes(&id), ["one"], "what is there is shown");
    two.a.note(&id, "three");
    assert_ne!(
        two.a.own_journal(&id),
        journal,
        "the old journal is never continued"
    );
    two.sync();
    two.agree();
    assert_eq!(two.a.notes(&id), ["one", "three", "two"]);
}

#[test]
fn an_older_journal_that_arrives_late_falls_into_its_place() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    // A third device worked on it long ago and was switched off.
    carry(&two.a.shelf, &two.temp.path().join("c/shelf"));
    let mut c = Device::new(two.temp.path(), "c", 3);
    c.now -= Duration::days(60);
    c.setting("rough_tolerance_mm", "4");
    c.note(&id, "long ago");
    for n in 0..5 {
        two.a.note(&id, &format!("a {n}"));
        two.b.note(&id, &format!("b {n}"));
        two.sync();
    }
    two.a.setting("rough_tolerance_mm", "2");
    two.a.setting("rough_tolerance_mm", "2.5");
    carry(&c.shelf, &two.b.shelf);
    two.b.refresh();
    two.sync();
    two.agree();
    assert_eq!(two.a.notes(&id).len(), 11);
    assert!(
        (two.b.seen().shop().settings.rough_tolerance_mm - 2.5).abs() < 1e-9,
        "late is not later"
    );
}

#[test]
fn two_pieces_with_one_mark_are_both_kept_and_one_is_to_be_renamed() {
    let mut two = Two::with(Tool::Copy);
    two.a.new_piece("K08");
    two.b.new_piece("K08");
    two.sync();
    two.agree();
    let app = two.b.seen();
    let pieces: Vec<_> = app.pieces().collect();
    assert_eq!(pieces.iter().filter(|p| p.mark() == "K08").count(), 2);
    let bench = Bench::new(app.shop(), two.b.now, &|_| false);
    let due = agenda(&pieces, &bench);
    assert_eq!(
        due.today
            .iter()
            .filter(|t| t.kind == TaskKind::RenameMark)
            .count(),
        1
    );
}

#[test]
fn what_is_being_typed_stays_while_the_other_device_writes() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    // A note in the diary of the very piece that changes.
    two.a.act(Action::Open(Page::Diary(id.clone())));
    two.a.act(Action::Diary(DiaryAction::WriteNote(true)));
    two.a
        .act(Action::Diary(DiaryAction::EditNote("half a sent".into())));
    two.b.note(&id, "theirs");
    two.sync();
    let view = two.a.seen().diary_view(&id, two.a.now).unwrap();
    assert!(view.writing);
    assert_eq!(view.note, "half a sent");
    assert!(
        view.entries.iter().any(|e| e.title == "theirs"),
        "and theirs is on screen"
    );
    two.a.act(Action::Diary(DiaryAction::AddNote));
    // A form that is half filled in.
    two.a.act(Action::GoTab(Tab::Pieces));
    two.a.act(Action::Open(Page::NewPiece));
    two.a.act(Action::NewPiece(NewPieceAction::Typed(
        DetailField::Mark,
        "Z".into(),
    )));
    let before = two.a.seen().new_piece_view(two.a.now);
    two.b.note(&id, "more");
    two.sync();
    assert_eq!(two.a.seen().new_piece_view(two.a.now), before);
    assert_eq!(two.a.seen().route().page(), Some(&Page::NewPiece));
    two.agree();
}

#[test]
fn the_diary_says_which_device_wrote_what() {
    let mut two = Two::with(Tool::Copy);
    let id = two.a.id("K07");
    let alone = two.a.seen().diary_view(&id, two.a.now).unwrap();
    assert!(
        alone.entries.iter().all(|e| e.device.is_empty()),
        "one device needs no name"
    );
    two.b.act(RecordsAction::NameDevice("  tablet ".into()));
    two.b.note(&id, "theirs");
    two.sync();
    let view = two.a.seen().diary_view(&id, two.a.now).unwrap();
    let by = |title: &str| {
        view.entries
            .iter()
            .find(|e| e.title == title)
            .unwrap()
            .device
            .clone()
    };
    assert_eq!(by("theirs"), "tablet");
    assert_eq!(by("Entered"), "this device");
    let there = two.b.seen().diary_view(&id, two.b.now).unwrap();
    assert!(
        there
            .entries
            .iter()
            .any(|e| e.device.starts_with("another device ("))
    );
    let devices = two.a.seen().devices_view(two.a.now);
    assert_eq!(
        devices
            .devices
            .iter()
            .map(|d| (d.name.as_str(), d.this))
            .collect::<Vec<_>>(),
        [("this device", true), ("tablet", false)]
    );
    assert_eq!(devices.alone, "");
    // The name can be taken back like anything else.
    two.b.act(Action::Undo);
    two.b.act(Action::Undo);
    two.b.act(RecordsAction::NameDevice("x".repeat(41)));
    assert!(two.b.seen().question().unwrap().text.contains("Shorten it"));
}

#[test]
fn a_refresh_without_news_says_so_and_reads_nothing_anew() {
    let mut two = Two::with(Tool::Copy);
    assert!(!two.a.refresh());
    let id = two.a.id("K07");
    two.a.note(&id, "mine");
    assert!(!two.a.refresh(), "what it wrote itself is no news");
    two.b.note(&id, "theirs");
    two.sync();
    two.a.act(RecordsAction::HideArrived);
    assert_eq!(two.a.seen().arrived(), None);
    assert!(!two.a.refresh());
    assert_eq!(two.a.seen().arrived(), None);
}

#[test]
fn a_piece_whose_folder_went_away_leaves_the_screen_and_comes_back_with_it() {
    let mut two = Two::with(Tool::Copy);
    let id = two.b.id("K07");
    two.b.act(Action::Open(Page::Piece(id.clone())));
    let folder = two.b.shelf.join("pieces").join(id.as_str());
    fs::rename(&folder, two.temp.path().join("away")).unwrap();
    assert!(two.b.refresh());
    assert!(two.b.seen().piece(&id).is_none());
    assert_eq!(two.b.seen().route().page(), None);
    fs::rename(two.temp.path().join("away"), &folder).unwrap();
    assert!(two.b.refresh());
    assert_eq!(two.b.seen().piece(&id).unwrap().mark(), "K07");
}
