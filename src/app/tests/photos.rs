//! Photos through the app: taken in on a job, stored once, shown, measured on, removed, brought back, tidied away.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::print_stdout)] // a figure to read
#![allow(clippy::disallowed_methods)] // these tests make picture files and look at what became of them

mod support_photos;

use std::path::{Path, PathBuf};
use std::time::Instant;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::photos::{
    FoundPicture, ImportProgress, MarkTool, PhotosAction as P, PictureSource,
};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::vocabulary::FlawChange;
use support_photos::{Desk, Shop, jpeg, now, on_flaw};

#[test]
fn photos_taken_in_are_one_step_and_leave_the_originals_as_they_were() {
    let mut shop = Shop::new();
    let (one, two) = (shop.picture("one.jpg", 1), shop.picture("two.jpg", 2));
    let before = (std::fs::read(&one).unwrap(), std::fs::read(&two).unwrap());
    shop.import(on_flaw(), &[&one, &two]);
    assert_eq!(shop.said(), "2 photos added");
    let tiles = shop.tiles(&on_flaw());
    assert_eq!(tiles.len(), 2);
    for tile in &tiles {
        assert!(Path::new(&tile.path).exists() && Path::new(&tile.thumb).exists());
        assert!(
            !tile.thumb.contains("/shelf/"),
            "thumbnails lie outside of the shelf"
        );
        assert_eq!((tile.note.as_str(), tile.shape), ("", 2.0));
    }
    assert_eq!(
        (std::fs::read(&one).unwrap(), std::fs::read(&two).unwrap()),
        before
    );
    shop.act(Action::Undo);
    assert!(shop.tiles(&on_flaw()).is_empty());
    shop.act(Action::Redo);
    assert_eq!(shop.tiles(&on_flaw()).len(), 2);
}

#[test]
fn a_file_that_is_refused_says_why_and_the_others_are_added() {
    let mut shop = Shop::new();
    let good = shop.picture("good.jpg", 1);
    let words = shop.file("IMG_7.jpg", b"just words");
    let empty = shop.file("empty.jpg", b"");
    let gone = shop.folder().join("gone.jpg");
    shop.import(PhotoOn::Portrait, &[&words, &good, &empty, &gone, &good]);
    let question = shop.app.question().unwrap();
    for says in [
        "IMG_7.jpg: the file is no picture",
        "empty.jpg: the file is empty",
        "gone.jpg: not there",
        "good.jpg is here already",
    ] {
        assert!(question.text.contains(says), "{}", question.text);
    }
    assert_eq!(shop.tiles(&PhotoOn::Portrait).len(), 1);
    assert!(shop.app.photos_portrait(&shop.piece, now()).is_some());
}

#[test]
fn the_same_picture_is_noticed_twice_on_one_thing_and_stored_once_for_two() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    shop.import(on_flaw(), &[&one]);
    shop.import(on_flaw(), &[&one]);
    assert!(
        shop.app
            .question()
            .unwrap()
            .text
            .contains("was not added again")
    );
    shop.act(Action::CloseQuestion);
    shop.import(PhotoOn::Portrait, &[&one]);
    assert_eq!(
        (
            shop.tiles(&on_flaw()).len(),
            shop.tiles(&PhotoOn::Portrait).len()
        ),
        (1, 1)
    );
    assert_eq!(shop.stored().len(), 1);
}

#[test]
fn a_stopped_import_leaves_no_trace_and_its_outcome_is_dropped() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    let lines = shop.lines();
    shop.act(Action::Photos(P::Import(
        shop.piece.clone(),
        on_flaw(),
        vec![one.display().to_string()],
    )));
    let job = shop.app.photos_take_job().unwrap();
    assert!(shop.app.photos_take_job().is_none(), "handed out once");
    let progress = ImportProgress {
        generation: job.generation,
        file: 0,
        part: 0.5,
    };
    shop.app.photos_import_progress(&progress);
    let view = shop.app.photos_importing_view().unwrap();
    assert_eq!((view.text.as_str(), view.part), ("Photo 1 of 1", 0.5));
    // It was finished just before it was stopped.
    let finished = job.run(&Desk, &Default::default(), &mut |_| {});
    assert!(finished.files[0].photo.is_ok());
    shop.act(Action::Photos(P::Cancel));
    assert!(shop.app.photos_importing_view().is_none());
    shop.app.photos_import_done(finished, now());
    let stopped = job.run(&Desk, &Default::default(), &mut |_| {});
    assert!(stopped.cancelled && stopped.files.is_empty());
    shop.app.photos_import_done(stopped, now());
    assert_eq!((shop.lines(), shop.stored().len()), (lines, 0));
    // And the next one goes on as ever.
    shop.import(on_flaw(), &[&one]);
    assert_eq!(shop.tiles(&on_flaw()).len(), 1);
}

#[test]
fn an_import_begun_while_one_runs_waits_its_turn() {
    let mut shop = Shop::new();
    let (one, two) = (shop.picture("one.jpg", 1), shop.picture("two.jpg", 2));
    let begin = |file: &PathBuf| {
        P::Import(
            shop.piece.clone(),
            on_flaw(),
            vec![file.display().to_string()],
        )
    };
    let (first, second) = (begin(&one), begin(&two));
    shop.act(Action::Photos(first));
    let job = shop.app.photos_take_job().unwrap();
    shop.act(Action::Photos(second));
    assert!(shop.app.photos_take_job().is_none());
    shop.app
        .photos_import_done(job.run(&Desk, &Default::default(), &mut |_| {}), now());
    let next = shop.app.photos_take_job().unwrap();
    shop.app
        .photos_import_done(next.run(&Desk, &Default::default(), &mut |_| {}), now());
    assert_eq!(shop.tiles(&on_flaw()).len(), 2);
}

#[test]
fn a_photo_that_has_not_arrived_says_so_and_a_missing_thumbnail_is_rebuilt() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    shop.import(on_flaw(), &[&one]);
    let tile = shop.tiles(&on_flaw()).remove(0);
    std::fs::remove_file(&tile.thumb).unwrap();
    assert_eq!(shop.tiles(&on_flaw())[0].thumb, "");
    let job = shop.app.photos_thumb_job(&shop.piece, &on_flaw()).unwrap();
    shop.app
        .photos_thumbs_done(&job.run(&Desk, &Default::default()));
    assert_eq!(shop.tiles(&on_flaw())[0].thumb, tile.thumb);
    assert!(shop.app.photos_thumb_job(&shop.piece, &on_flaw()).is_none());
    let away = shop.folder().join("away.jpg");
    std::fs::rename(&tile.path, &away).unwrap();
    let waiting = shop.tiles(&on_flaw()).remove(0);
    assert_eq!(
        (waiting.note.as_str(), waiting.path.as_str()),
        ("Photo not here yet", "")
    );
    std::fs::rename(&away, &tile.path).unwrap();
    assert_eq!(shop.tiles(&on_flaw())[0].note, "");
}

#[test]
fn two_taps_set_the_scale_two_more_measure_the_crack_and_its_history_knows() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    shop.import(on_flaw(), &[&one]);
    let id = shop.app.piece(&shop.piece).unwrap().photos[0]
        .note
        .photo
        .clone();
    shop.act(Action::Photos(P::Mark(shop.piece.clone(), id.clone())));
    shop.act(Action::Photos(P::Tap(0.5, 0.5)));
    shop.act(Action::Photos(P::Tool(MarkTool::Crack)));
    assert!(
        shop.app
            .photos_marking_view()
            .unwrap()
            .hint
            .contains("Set the scale first")
    );
    shop.act(Action::Photos(P::Tool(MarkTool::Scale)));
    shop.act(Action::Photos(P::Tap(0.1, 0.9)));
    shop.act(Action::Photos(P::Tap(0.6, 0.9)));
    shop.act(Action::Photos(P::Known("100".into())));
    shop.act(Action::Photos(P::Tool(MarkTool::Crack)));
    shop.act(Action::Photos(P::Tap(0.1, 0.1)));
    shop.act(Action::Photos(P::Tap(0.1, 0.4)));
    // 400 by 200 pixels: 200 across are 100 mm, so that 60 down are 30.
    assert_eq!(shop.app.photos_marking_view().unwrap().length, "30\u{a0}mm");
    shop.act(Action::Photos(P::Tap(1.5, 0.4)));
    assert_eq!(
        shop.app.photos_marking_view().unwrap().crack.len(),
        2,
        "beside the photo is no tap"
    );
    shop.act(Action::Photos(P::SaveMarks));
    assert!(shop.app.photos_marking_view().is_none());
    assert_eq!(shop.tiles(&on_flaw())[0].length, "30\u{a0}mm");
    let looked = shop.facts().into_iter().rev().find_map(|f| match f {
        PieceFact::FlawLooked {
            change, size_mm, ..
        } => Some((change, size_mm.unwrap().value)),
        _ => None,
    });
    assert_eq!(
        looked,
        Some((FlawChange::Longer, 30.0)),
        "it was noted as 20 mm"
    );
    // Saved again without a new length nothing is recorded; one undo takes all of it back.
    let lines = shop.lines();
    shop.act(Action::Photos(P::Mark(shop.piece.clone(), id)));
    shop.act(Action::Photos(P::SaveMarks));
    assert_eq!(shop.lines(), lines);
    shop.act(Action::Undo);
    assert_eq!(shop.tiles(&on_flaw())[0].length, "");
}

#[test]
fn a_removed_photo_comes_back_and_only_after_90_days_its_file_may_go() {
    let mut shop = Shop::new();
    let (one, two) = (shop.picture("one.jpg", 1), shop.picture("two.jpg", 2));
    shop.import(on_flaw(), &[&one, &two]);
    let id = shop.app.piece(&shop.piece).unwrap().photos[0]
        .note
        .photo
        .clone();
    shop.act(Action::Photos(P::Remove(shop.piece.clone(), id.clone())));
    assert_eq!((shop.tiles(&on_flaw()).len(), shop.stored().len()), (1, 2));
    shop.act(Action::Photos(P::BringBack(shop.piece.clone(), id.clone())));
    assert_eq!(shop.tiles(&on_flaw()).len(), 2);
    shop.act(Action::Photos(P::Remove(shop.piece.clone(), id)));
    shop.act(Action::Photos(P::AskTidy));
    assert!(
        shop.app
            .question()
            .unwrap()
            .text
            .contains("No photo was deleted 90 days ago")
    );
    let later = now() + Duration::days(90);
    let (n, bytes) = shop.app.photos_tidy_frees(later).unwrap();
    assert!(n == 1 && bytes > 500, "{n} {bytes}");
    shop.app.apply(Action::Photos(P::AskTidy), later);
    shop.app.apply(Action::Choose(0), later);
    assert!(shop.app.question().unwrap().text.contains("MB freed"));
    assert_eq!(shop.stored().len(), 1);
    assert_eq!(shop.tiles(&on_flaw()).len(), 1);
}

#[test]
fn a_photo_goes_out_under_a_name_that_says_what_it_is() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    shop.import(PhotoOn::Finished, &[&one]);
    let id = shop.app.piece(&shop.piece).unwrap().photos[0]
        .note
        .photo
        .clone();
    let out = shop.app.photos_out(&shop.piece, &id).unwrap();
    assert_eq!(out.name, "K07 2026-03-12 0900.jpg");
    assert!(std::fs::read(&out.from).unwrap().starts_with(&[0xff, 0xd8]));
}

#[test]
fn what_cannot_be_kept_can_be_tried_again() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    // A file where the folder of the photos should be.
    let folder = shop
        .shelf()
        .join("pieces")
        .join(shop.piece.as_str())
        .join("photos");
    std::fs::write(&folder, b"in the way").unwrap();
    shop.import(on_flaw(), &[&one]);
    assert!(shop.app.save_error().is_some());
    assert!(shop.tiles(&on_flaw()).is_empty());
    std::fs::remove_file(&folder).unwrap();
    shop.act(Action::TryAgain);
    assert_eq!(shop.tiles(&on_flaw()).len(), 1);
}

#[test]
fn pictures_of_the_last_ten_minutes_come_first() {
    let shop = Shop::new();
    let found = |name: &str, minutes: i64| FoundPicture {
        path: PathBuf::from(name),
        changed: now() - Duration::minutes(minutes),
        bytes: 1,
    };
    let groups = shop.app.photos_newest_view(
        &[
            found("/p/old.jpg", 3000),
            found("/p/new.jpg", 3),
            found("/p/ahead.jpg", -5),
            found("/p/mid.jpg", 11),
        ],
        now(),
    );
    let names = |i: usize| {
        groups[i]
            .pictures
            .iter()
            .map(|p| p.name.as_str())
            .collect::<Vec<_>>()
    };
    assert_eq!(groups.len(), 2);
    assert_eq!(
        (names(0), names(1)),
        (vec!["ahead.jpg", "new.jpg"], vec!["mid.jpg", "old.jpg"])
    );
    assert_eq!(groups[0].title, "Taken in the last ten minutes");
    assert_eq!(groups[0].pictures[1].when, "08:57");
    assert!(
        groups[1].pictures[1].when.contains(','),
        "{}",
        groups[1].pictures[1].when
    );
}

#[test]
fn the_picture_folder_is_the_turner_s_own_where_one_is_set() {
    let mut shop = Shop::new();
    assert_eq!(shop.app.photos_folders(&Desk), Desk.usual_folders());
    shop.act(Action::Photos(P::PictureFolder(" /my/pictures ".into())));
    assert_eq!(
        shop.app.photos_folders(&Desk),
        [PathBuf::from("/my/pictures")]
    );
    shop.act(Action::Photos(P::PictureFolder(String::new())));
    assert_eq!(shop.app.photos_folders(&Desk), Desk.usual_folders());
}

#[test]
fn ten_thousand_photos_are_not_read_when_a_shelf_opens_or_a_flaw_shows() {
    let mut shop = Shop::new();
    let one = shop.picture("one.jpg", 1);
    shop.import(on_flaw(), &[&one]);
    let read_at = |path: &Path| std::fs::metadata(path).unwrap().accessed().unwrap();
    // Named in the diary but unreadable: whoever reads one fails.
    let folder = shop
        .shelf()
        .join("pieces")
        .join(shop.piece.as_str())
        .join("photos");
    for n in 0..10_000 {
        std::fs::write(folder.join(format!("{n:064x}.jpg")), b"not a photo").unwrap();
    }
    let before = read_at(&folder.join(format!("{:064x}.jpg", 77)));
    let began = Instant::now();
    shop.reopen();
    let opened = began.elapsed();
    let began = Instant::now();
    assert_eq!(shop.tiles(&on_flaw()).len(), 1);
    let shown = began.elapsed();
    println!(
        "10,000 photos beside one diary: opened in {opened:?}, the flaw's photos in {shown:?}"
    );
    assert_eq!(read_at(&folder.join(format!("{:064x}.jpg", 77))), before);
    assert!(
        opened.as_millis() < 500 && shown.as_millis() < 100,
        "{opened:?} {shown:?}"
    );
}

#[test]
fn the_test_pictures_differ() {
    assert_ne!(jpeg(1), jpeg(2));
}
