//! Photos, touched as a turner touches them: from a folder of real picture files, with the works run on the spot.

use evenwall_app::action::Action;
use evenwall_app::photos::PhotosAction;
use evenwall_app::route::{Page, Tab};
use evenwall_photo::drawing::Subject;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::FlawEvent;
use evenwall_piece::vocabulary::FlawChange;

use crate::bench::Bench;
use crate::photos_desk::{Desk, drawing, files, id};

fn undo(bench: &Bench) {
    let label = bench.labels().into_iter().find(|l| l.starts_with("Undo: "));
    bench.touch(&label.expect("something to undo"));
}

#[test]
fn a_photo_is_on_the_flaw_with_two_touches_and_the_picture_stays_as_it_was() {
    let desk = Desk::new();
    assert!(desk.bench.reads("No photo yet"));
    let path = desk.takes("IMG_2.jpg", &drawing(Subject::Check(20.0)), 2);
    let before = std::fs::read(&path).unwrap();
    desk.bench.touch("Take from newest pictures");
    assert!(desk.bench.reads("Looking for pictures"));
    desk.bench.settle();
    assert!(desk.bench.sees("Taken in the last ten minutes"));
    desk.bench.touch("IMG_2.jpg, 08:40");
    assert!(desk.bench.reads("Photo 1 of 1"), "it says that it works");
    desk.bench.settle();
    assert!(!desk.bench.reads("Photo 1 of 1"));
    assert_eq!(desk.photos(), 1);
    assert!(desk.bench.reads("Photo added"));
    assert_eq!(std::fs::read(&path).unwrap(), before);
    undo(&desk.bench);
    assert_eq!(desk.photos(), 0);
}

#[test]
fn new_pictures_show_while_the_sheet_is_open_and_several_are_added_at_once() {
    let desk = Desk::new();
    desk.bench.touch("Take from newest pictures");
    desk.bench.settle();
    assert!(desk.bench.reads("No pictures in"));
    desk.takes("a.jpg", &drawing(Subject::Check(20.0)), 2);
    desk.takes("b.jpg", &drawing(Subject::Knot(12.0)), 30);
    desk.bench.look_for_new_pictures();
    desk.bench.touch("Several");
    assert!(desk.bench.reads("Touch some pictures"));
    desk.bench.touch("a.jpg, 08:40");
    desk.bench.touch("b.jpg, 08:12");
    desk.bench.touch("Add 2 photos");
    desk.bench.settle();
    assert_eq!(desk.photos(), 2);
    assert!(desk.bench.reads("2 photos added"));
}

#[test]
fn an_import_is_stopped_and_files_that_are_no_pictures_get_a_sentence() {
    let desk = Desk::new();
    desk.takes("a.jpg", &drawing(Subject::Check(20.0)), 2);
    desk.takes("b.jpg", b"not a picture", 3);
    desk.takes("c.heic", b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", 4);
    desk.bench.touch("Take from newest pictures");
    desk.bench.settle();
    desk.bench.touch("a.jpg, 08:40");
    desk.bench.touch("Stop");
    desk.bench.settle();
    assert_eq!(desk.photos(), 0);
    for (file, says) in [("b.jpg, 08:39", "no picture"), ("c.heic, 08:38", "HEIC")] {
        desk.add(file);
        assert!(desk.bench.reads(says), "{file}: {:#?}", desk.bench.labels());
        desk.bench.touch_last("Close");
    }
    assert_eq!(desk.photos(), 0);
}

#[test]
fn two_taps_set_the_scale_two_more_measure_the_crack_and_its_history_knows() {
    let desk = Desk::with_two();
    desk.bench.resize(390.0, 844.0, 1.0);
    desk.bench.touch("Fri 13 Mar, 08:42");
    desk.bench.touch("Mark and measure");
    desk.bench.touch("Known length");
    // The rule of the drawing: 100 mm from 120 to 520 of 640 pixels across, 440 of 480 down.
    desk.tap(120.0 / 640.0, 440.0 / 480.0);
    desk.tap(520.0 / 640.0, 440.0 / 480.0);
    desk.bench.write("Known length", "100");
    desk.bench.touch("Crack");
    // 26 mm of 4 pixels round the middle, 215 down.
    desk.tap(0.5, (215.0 - 52.0) / 480.0);
    desk.tap(0.5, (215.0 + 52.0) / 480.0);
    assert!(desk.bench.reads("Crack 26"), "{:#?}", desk.bench.labels());
    desk.bench.touch("Save what is drawn");
    let (change, mm) = desk.piece(|p| match p.flaws[0].events.last().unwrap() {
        FlawEvent::Looked {
            change, size_mm, ..
        } => (*change, size_mm.as_ref().unwrap().value),
        other => panic!("{other:?}"),
    });
    assert_eq!(change, FlawChange::Longer);
    assert!((mm - 26.0).abs() < 0.7, "{mm}");
    undo(&desk.bench);
    desk.piece(|p| assert!(p.flaws[0].events.is_empty()));
}

#[test]
fn the_viewer_goes_on_and_back_enlarges_removes_and_brings_back() {
    let desk = Desk::with_two();
    desk.bench.resize(390.0, 844.0, 1.0);
    desk.bench.touch("Fri 13 Mar, 08:42");
    assert!(desk.bench.reads("1 of 2"));
    desk.bench.touch("Photo after");
    assert!(desk.bench.reads("2 of 2"));
    desk.bench.touch("Larger");
    desk.bench.touch("Larger");
    slint::platform::update_timers_and_animations();
    desk.bench.touch("Smaller");
    desk.bench.touch("Photo before");
    desk.bench.touch("More");
    desk.bench.touch("Remove photo");
    assert_eq!(desk.photos(), 1);
    assert!(desk.bench.reads("can be brought back"));
    desk.bench.touch("Bring back");
    assert_eq!(desk.photos(), 2);
    let out = desk.folder.path().join("out");
    std::fs::create_dir(&out).unwrap();
    desk.bench.screens.save_photos_to(out.clone());
    desk.bench.touch("More");
    desk.bench.touch("Save as a file");
    assert!(desk.bench.reads("is now a file of its own"));
    let saved: Vec<_> = std::fs::read_dir(&out).unwrap().flatten().collect();
    assert_eq!(saved.len(), 1);
    let name = saved[0].file_name().to_string_lossy().into_owned();
    assert!(name.starts_with("K07 2026-03-13"), "{name}");
    assert_eq!(
        std::fs::read(saved[0].path()).unwrap(),
        std::fs::read(desk.stored(1)).unwrap()
    );
}

#[test]
fn two_photos_stand_side_by_side() {
    let desk = Desk::with_two();
    desk.bench.touch("Compare two");
    assert!(
        desk.bench.reads("1 day apart"),
        "{:#?}",
        desk.bench.labels()
    );
    desk.bench.touch("Newer photo, first");
    assert!(desk.bench.reads("Both of one day"));
}

#[test]
fn a_photo_that_has_not_arrived_or_is_damaged_says_so() {
    let desk = Desk::with_two();
    let (gone, broken) = (desk.stored(0), desk.stored(1));
    std::fs::remove_file(gone).unwrap();
    let bytes = std::fs::read(&broken).unwrap();
    std::fs::write(&broken, &bytes[..bytes.len() / 2]).unwrap();
    // The thumbnails are a cache, and lost.
    let mut cached = Vec::new();
    files(&desk.folder.path().join("device"), &mut cached);
    for file in cached
        .iter()
        .filter(|f| f.extension().is_some_and(|e| e == "jpg"))
    {
        std::fs::remove_file(file).unwrap();
    }
    desk.bench.screens.refresh();
    desk.bench.settle();
    assert!(desk.bench.reads("Photo not here yet"));
    assert!(desk.bench.reads("This photo is damaged"));
    desk.bench.picture("photos-broken");
    desk.bench.touch("Fri 13 Mar, 08:42");
    assert!(desk.bench.reads("This photo is damaged"));
}

#[test]
fn lost_thumbnails_are_made_again() {
    let desk = Desk::with_two();
    let thumbs = |desk: &Desk| {
        let mut found = Vec::new();
        files(&desk.folder.path().join("device"), &mut found);
        found.retain(|f| f.extension().is_some_and(|e| e == "jpg"));
        found
    };
    for file in thumbs(&desk) {
        std::fs::remove_file(file).unwrap();
    }
    desk.bench.screens.refresh();
    desk.bench.settle();
    assert_eq!(thumbs(&desk).len(), 2);
}

#[test]
fn photos_go_to_the_portrait_an_entry_a_bag_check_and_the_finished_piece() {
    let desk = Desk::new();
    desk.takes("a.jpg", &drawing(Subject::Portrait), 2);
    desk.bench.touch("Back");
    desk.room();
    desk.bench.touch("Portrait");
    desk.add("a.jpg, 08:40");
    desk.bench.touch("Back");
    assert!(
        desk.bench.reads("Portrait, Thu 12 Mar, 08:42") || desk.bench.reads("Portrait, Thu 12 Mar")
    );
    desk.bench.touch("Diary");
    desk.room();
    for (entry, on_bag) in [("Bag felt: Damp", true), ("Found: Check", false)] {
        let label = desk
            .bench
            .labels()
            .into_iter()
            .find(|l| l.starts_with(entry) || (!on_bag && l.starts_with("Check")));
        desk.bench
            .touch(&label.unwrap_or_else(|| panic!("{:#?}", desk.bench.labels())));
        desk.bench.touch("Photos of this entry");
        desk.add("a.jpg, 08:40");
        desk.bench.touch("Back");
        let of = desk.piece(|p| p.photos.last().unwrap().note.on.clone());
        assert_eq!(matches!(of, PhotoOn::BagCheck(_)), on_bag, "{of:?}");
    }
    desk.open(Page::Finishing(id()));
    desk.room();
    desk.bench.touch("Photos of it finished");
    desk.add("a.jpg, 08:40");
    desk.piece(|p| assert_eq!(p.photos_on(&PhotoOn::Finished).len(), 1));
}

#[test]
fn a_bag_that_was_just_felt_is_photographed_from_the_round() {
    let desk = Desk::new();
    desk.takes("a.jpg", &drawing(Subject::Portrait), 2);
    desk.bench.days(9);
    desk.takes("b.jpg", &drawing(Subject::Portrait), 2);
    desk.bench.screens.act(Action::GoTab(Tab::Today));
    desk.open(Page::BagRound);
    desk.bench.touch("Damp");
    desk.bench.touch("Photo of this bag");
    desk.bench.settle();
    desk.bench.touch("b.jpg, 08:40");
    desk.bench.settle();
    let of = desk.piece(|p| p.photos.last().map(|p| p.note.on.clone()));
    assert!(matches!(of, Some(PhotoOn::BagCheck(_))), "{of:?}");
}

#[test]
fn the_folder_is_set_in_shop_and_tidying_says_what_it_frees() {
    let desk = Desk::with_two();
    desk.bench.screens.act(Action::GoTab(Tab::Shop));
    desk.bench.resize(390.0, 2600.0, 1.0);
    desk.bench.touch("Photos");
    desk.bench.touch("Look in this folder");
    desk.bench.write("Look in this folder", "/somewhere/else");
    desk.bench.touch("Save");
    desk.bench
        .screens
        .read(|app| assert_eq!(app.device().picture_folder, "/somewhere/else"));
    desk.bench.touch("Tidy photos");
    assert!(desk.bench.reads("No photo was deleted"));
    desk.bench.touch_last("Close");
    let photo = desk.piece(|p| p.photos[0].note.photo.clone());
    let remove = PhotosAction::Remove(id(), photo);
    desk.bench.screens.act(Action::Photos(remove));
    desk.bench.days(91);
    desk.bench.touch("Tidy photos");
    assert!(
        desk.bench.reads("frees 0.1 MB"),
        "{:#?}",
        desk.bench.labels()
    );
    desk.bench.touch("Remove for good");
    assert!(desk.bench.reads("MB freed"));
}

#[test]
fn files_dropped_or_chosen_go_where_the_page_shows_photos() {
    let desk = Desk::new();
    let file = desk.takes("a.jpg", &drawing(Subject::Check(20.0)), 2);
    let file = file.display().to_string();
    let drop = |desk: &Desk| {
        let action = desk
            .bench
            .screens
            .read(|app| app.photos_for(vec![file.clone()]));
        desk.bench.screens.act(Action::Photos(action));
        desk.bench.settle();
    };
    drop(&desk);
    assert_eq!(desk.photos(), 1);
    desk.bench.screens.act(Action::GoTab(Tab::Plan));
    drop(&desk);
    assert!(desk.bench.reads("then drop the pictures there"));
}
