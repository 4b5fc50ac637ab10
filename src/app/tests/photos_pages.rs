//! The pages of photos: the newest pictures offered and taken, the viewer, two photos of a flaw, those of an entry; the works
//! beside the screens.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // these tests make picture files

mod support_photos;

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::photos::{FoundPicture, MarkTool, NewestView, PhotosAction as P, PictureSource};
use evenwall_app::route::Page;
use evenwall_piece::ids::FlawId;
use evenwall_piece::photo::PhotoOn;
use support_photos::{Shop, now, on_flaw};

/// A camera whose folder holds what the test says.
struct Camera {
    found: Mutex<Result<Vec<FoundPicture>, String>>,
}

impl PictureSource for Camera {
    fn usual_folders(&self) -> Vec<PathBuf> {
        vec![PathBuf::from("/usual/pictures")]
    }

    fn newest(&self, _: &[PathBuf], _: usize) -> Result<Vec<FoundPicture>, String> {
        self.found.lock().unwrap().clone()
    }

    fn read(&self, path: &Path, _: u64) -> Result<Vec<u8>, String> {
        std::fs::read(path).map_err(|_| "not there".to_owned())
    }
}

struct Desk {
    shop: Shop,
    camera: Arc<Camera>,
}

impl Desk {
    fn new() -> Self {
        let mut shop = Shop::new();
        let camera = Arc::new(Camera {
            found: Mutex::new(Ok(Vec::new())),
        });
        shop.app.photos_use(camera.clone());
        let flaw = Page::Flaw(shop.piece.clone(), Some(FlawId::new("f1").unwrap()));
        shop.act(Action::Open(flaw));
        Self { shop, camera }
    }

    /// A picture taken so many minutes ago.
    fn takes(&self, name: &str, number: u8, minutes_ago: i64) -> String {
        let path = self.shop.picture(name, number);
        let picture = FoundPicture {
            path: path.clone(),
            changed: now() - Duration::minutes(minutes_ago),
            bytes: 1,
        };
        self.camera
            .found
            .lock()
            .unwrap()
            .as_mut()
            .unwrap()
            .push(picture);
        path.display().to_string()
    }

    /// Runs all works, as the screens do.
    fn settle(&mut self) {
        while let Some(work) = self.shop.app.next_work(now()) {
            let done = work.run();
            self.shop.app.work_done(done, now());
        }
    }

    fn sheet(&self) -> NewestView {
        self.shop.app.photos_sheet_view(now()).unwrap()
    }

    fn open_sheet(&mut self) {
        let piece = self.shop.piece.clone();
        self.shop.act(Action::Photos(P::Newest(piece, on_flaw())));
    }

    /// Two photos of the flaw.
    fn with_two() -> Self {
        let mut desk = Self::new();
        for (name, number) in [("one.jpg", 1), ("two.jpg", 2)] {
            let path = desk.shop.picture(name, number);
            desk.shop.import(on_flaw(), &[&path]);
        }
        desk
    }

    fn open_photo(&mut self, place: usize) {
        let tile = self.shop.tiles(&on_flaw())[place].id.clone();
        let photo = evenwall_piece::ids::PhotoId::new(&tile).unwrap();
        let page = Page::Photo(self.shop.piece.clone(), photo);
        self.shop.act(Action::Open(page));
    }
}

#[test]
fn a_touch_adds_a_new_picture_and_the_sheet_closes() {
    let mut desk = Desk::new();
    let path = desk.takes("new.jpg", 1, 2);
    desk.takes("old.jpg", 2, 20);
    desk.open_sheet();
    assert!(desk.sheet().empty.contains("Looking"));
    desk.settle();
    let sheet = desk.sheet();
    assert_eq!(
        sheet.hint,
        "Touch a picture to add it to K07: Check, 20\u{a0}mm."
    );
    assert_eq!(sheet.groups.len(), 2);
    assert!(sheet.groups[0].pictures[0].shown);
    assert!(desk.shop.app.photos_preview(&path).is_some());
    desk.shop.act(Action::Photos(P::Pick(path)));
    assert!(desk.shop.app.photos_sheet_view(now()).is_none());
    assert!(desk.shop.app.photos_importing_view().is_some());
    desk.settle();
    assert!(desk.shop.app.photos_importing_view().is_none());
    assert_eq!(desk.shop.tiles(&on_flaw()).len(), 1);
}

#[test]
fn several_are_ticked_and_those_that_went_are_not_added() {
    let mut desk = Desk::new();
    let (one, two) = (desk.takes("a.jpg", 1, 2), desk.takes("b.jpg", 2, 3));
    desk.open_sheet();
    desk.settle();
    desk.shop.act(Action::Photos(P::Several));
    assert!(!desk.sheet().add_active);
    for path in [&one, &two] {
        desk.shop.act(Action::Photos(P::Pick(path.clone())));
    }
    assert_eq!(desk.sheet().add, "Add 2 photos");
    desk.camera
        .found
        .lock()
        .unwrap()
        .as_mut()
        .unwrap()
        .remove(0);
    assert!(desk.shop.app.photos_look_again());
    desk.settle();
    assert_eq!(desk.sheet().add, "Add 1 photo");
    desk.shop.act(Action::Photos(P::AddPicked));
    desk.settle();
    assert_eq!(desk.shop.tiles(&on_flaw()).len(), 1);
}

#[test]
fn a_folder_that_cannot_be_looked_into_says_so_and_one_without_pictures_is_named() {
    let mut desk = Desk::new();
    desk.open_sheet();
    desk.settle();
    assert!(
        desk.sheet()
            .empty
            .contains("No pictures in /usual/pictures.")
    );
    *desk.camera.found.lock().unwrap() = Err("It cannot be looked into.".into());
    desk.shop.app.photos_look_again();
    desk.settle();
    assert_eq!(desk.sheet().empty, "It cannot be looked into.");
}

#[test]
fn the_viewer_goes_through_the_photos_of_one_thing_the_newest_first() {
    let mut desk = Desk::with_two();
    let newest = desk.shop.tiles(&on_flaw())[1].id.clone();
    desk.open_photo(1);
    let view = desk.shop.app.viewer_view(now()).unwrap();
    assert!(view.has_next && !view.has_previous);
    assert_eq!(view.photo.id, newest);
    desk.shop.act(Action::Photos(P::Step(1)));
    desk.shop.act(Action::Photos(P::Step(1)));
    let view = desk.shop.app.viewer_view(now()).unwrap();
    assert!(view.has_previous && !view.has_next, "it stays at the end");
    // Back is the flaw, not the photo before.
    desk.shop.act(Action::Photos(P::Leave));
    assert!(matches!(desk.shop.app.route().page(), Some(Page::Flaw(..))));
}

#[test]
fn a_photo_that_was_removed_stays_on_screen_to_be_brought_back() {
    let mut desk = Desk::with_two();
    desk.open_photo(0);
    let Some(Page::Photo(piece, photo)) = desk.shop.app.route().page().cloned() else {
        panic!("a photo is open");
    };
    desk.shop
        .act(Action::Photos(P::Remove(piece.clone(), photo.clone())));
    let view = desk.shop.app.viewer_view(now()).unwrap();
    assert!(view.note.contains("90 days"), "{}", view.note);
    assert!(view.labels.mark.is_empty() && view.labels.remove.is_empty());
    desk.shop.act(Action::Photos(P::BringBack(piece, photo)));
    let view = desk.shop.app.viewer_view(now()).unwrap();
    assert!(view.labels.bring_back.is_empty() && view.note.is_empty());
}

#[test]
fn leaving_ends_the_drawing_first_and_another_page_drops_it() {
    let mut desk = Desk::with_two();
    desk.open_photo(0);
    let Some(Page::Photo(piece, photo)) = desk.shop.app.route().page().cloned() else {
        panic!("a photo is open");
    };
    desk.shop
        .act(Action::Photos(P::Mark(piece.clone(), photo.clone())));
    desk.shop.act(Action::Photos(P::Tool(MarkTool::Scale)));
    let tools = desk.shop.app.viewer_view(now()).unwrap().tools.unwrap();
    assert_eq!((tools.tools.len(), tools.known.unit.as_str()), (3, "mm"));
    desk.shop.act(Action::Photos(P::Leave));
    assert!(desk.shop.app.viewer_view(now()).unwrap().tools.is_none());
    desk.shop.act(Action::Photos(P::Mark(piece, photo)));
    desk.shop.act(Action::Back);
    assert!(desk.shop.app.photos_marking_view().is_none());
}

#[test]
fn two_photos_say_how_far_apart_and_how_much_longer() {
    let mut desk = Desk::with_two();
    for (place, to) in [(0, 0.5), (1, 0.6)] {
        desk.open_photo(place);
        let Some(Page::Photo(piece, photo)) = desk.shop.app.route().page().cloned() else {
            panic!("a photo is open");
        };
        desk.shop.act(Action::Photos(P::Mark(piece, photo)));
        for (tool, from, to) in [(MarkTool::Scale, 0.0, 1.0), (MarkTool::Crack, 0.1, to)] {
            desk.shop.act(Action::Photos(P::Tool(tool)));
            desk.shop.act(Action::Photos(P::Tap(from, 0.5)));
            desk.shop.act(Action::Photos(P::Tap(to, 0.5)));
        }
        desk.shop.act(Action::Photos(P::Known("100".into())));
        desk.shop.act(Action::Photos(P::SaveMarks));
        desk.shop.act(Action::Back);
    }
    let flaw = FlawId::new("f1").unwrap();
    let piece = desk.shop.piece.clone();
    desk.shop.act(Action::Open(Page::Compare(piece, flaw)));
    let view = desk.shop.app.compare_view(now()).unwrap();
    assert_eq!(
        view.verdict,
        "Both of one day. 40\u{a0}mm, then 50\u{a0}mm: 10\u{a0}mm longer."
    );
    assert!(view.sides[0].has_newer && !view.sides[0].has_older);
    desk.shop.act(Action::Photos(P::CompareStep(false, 1)));
    desk.shop.act(Action::Photos(P::CompareStep(false, 1)));
    let view = desk.shop.app.compare_view(now()).unwrap();
    assert_eq!(view.sides[0].photo.id, view.sides[1].photo.id);
    assert!(view.verdict.contains("on both"), "{}", view.verdict);
}

#[test]
fn an_entry_of_the_diary_opens_its_photos_and_one_about_a_photo_opens_that() {
    let mut desk = Desk::with_two();
    let piece = desk.shop.piece.clone();
    desk.shop.act(Action::Open(Page::Diary(piece)));
    let Some(Page::Diary(id)) = desk.shop.app.route().page().cloned() else {
        panic!("the diary is open");
    };
    let entries = desk.shop.app.diary_view(&id, now()).unwrap().entries;
    let opens = |title: &str| {
        let entry = entries.iter().find(|e| e.title.starts_with(title)).unwrap();
        desk.shop.app.diary_photos_action(&entry.id).unwrap()
    };
    let photo = opens("Photo:");
    assert!(matches!(photo, Action::Open(Page::Photo(..))), "{photo:?}");
    let entry = opens("Check");
    assert!(
        matches!(entry, Action::Open(Page::Photos(_, PhotoOn::Entry(_)))),
        "{entry:?}"
    );
}

#[test]
fn a_store_that_keeps_no_photos_says_so_before_a_picture_is_chosen() {
    let nothing = evenwall_app::store::MemoryStore::default();
    let mut app = evenwall_app::app::App::open(Box::new(nothing), false, now()).unwrap();
    app.apply(Action::Photos(P::TakeFiles(vec!["a.jpg".into()])), now());
    assert!(
        app.question()
            .unwrap()
            .text
            .contains("drop the pictures there")
    );
}
