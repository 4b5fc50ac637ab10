//! What surrounds the pages says when the shelf can only be read, or not all of it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::disallowed_methods)]

use std::path::Path;

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_piece::piece::Moment;

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
}

fn open(folder: &Path) -> App {
    let store = ShelfStore::open(
        &folder.join("shelf"),
        &folder.join("device"),
        [3; 16],
        Box::new(|| 7),
    )
    .unwrap();
    App::open(Box::new(store), false, now()).unwrap()
}

#[test]
fn a_sound_shelf_gets_no_notice() {
    let folder = tempfile::tempdir().unwrap();
    assert_eq!(open(folder.path()).chrome_view(now()).notice, None);
}

#[test]
fn a_line_that_cannot_be_read_is_told_until_the_notice_is_put_away() {
    let folder = tempfile::tempdir().unwrap();
    drop(open(folder.path()));
    let piece = folder.path().join("shelf/pieces/k07");
    std::fs::create_dir_all(&piece).unwrap();
    std::fs::write(piece.join("other.jsonl"), "this is no line\nnor this\n").unwrap();
    let mut app = open(folder.path());
    let notice = app.chrome_view(now()).notice.expect("it is told");
    assert!(notice.contains("could not be read"), "{notice}");
    app.apply(Action::HideNotice, now());
    assert_eq!(app.chrome_view(now()).notice, None);
}

#[test]
fn a_shelf_of_a_newer_format_says_that_it_can_only_be_read() {
    let folder = tempfile::tempdir().unwrap();
    drop(open(folder.path()));
    let file = folder.path().join("shelf/shelf.json");
    let newer = std::fs::read_to_string(&file).unwrap().replace('1', "99");
    std::fs::write(&file, newer).unwrap();
    let notice = open(folder.path())
        .chrome_view(now())
        .notice
        .expect("it is told");
    assert!(notice.contains("newer"), "{notice}");
}
