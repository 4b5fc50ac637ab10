//! Photos, touched as a turner touches them: from a folder of real picture files, with the works run on the spot.

use std::path::{Path, PathBuf};

use evenwall_app::action::Action;
use evenwall_app::device::DeviceSettings;
use evenwall_app::photos::PhotosAction;
use evenwall_app::route::{Page, Tab};
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::store::Store;
use evenwall_photo::drawing::{Drawing, Subject};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, FlawNote, Measure, PieceFact, StationRef};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::{FlawEvent, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, FlawChange, FlawKind};
use i_slint_backend_testing::AccessibleRole;
use slint::LogicalPosition;
use slint::platform::{PointerEventButton, WindowEvent};

use crate::bench::{Bench, START, moment};

/// A bench on a real shelf, with a folder in which a camera puts pictures.
struct Desk {
    folder: tempfile::TempDir,
    bench: Bench,
}

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn on_flaw() -> PhotoOn {
    PhotoOn::Flaw(FlawId::new("f1").unwrap())
}

fn drawing(subject: Subject) -> Vec<u8> {
    Drawing { subject, wood: 7 }.jpeg().unwrap()
}

impl Desk {
    /// A hollow form with a check of 20 mm, its flaw page open.
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let now = moment(START) - chrono::Duration::days(1);
        let mut bits = 7_u64;
        let random = Box::new(move || {
            bits = bits
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(99);
            bits
        });
        let (shelf, device) = (folder.path().join("shelf"), folder.path().join("device"));
        let mut store = ShelfStore::open(&shelf, &device, [3; 16], random).unwrap();
        let camera = folder.path().join("camera");
        std::fs::create_dir(&camera).unwrap();
        let settings = DeviceSettings {
            picture_folder: camera.display().to_string(),
            ..DeviceSettings::default()
        };
        store.save_device_settings(&settings.to_json()).unwrap();
        let text = |field, value: &str| PieceFact::Detail {
            field,
            value: Some(DetailValue::Text(value.into())),
        };
        let known = vec![
            PieceFact::Created,
            text(DetailField::Mark, "K07"),
            text(DetailField::Wood, "white-ash"),
            text(DetailField::Form, "hollow-form"),
            PieceFact::StageMoved(Stage::Bag),
        ];
        store.append_piece(&id(), now, now, known).unwrap();
        let flaw = PieceFact::FlawFound(FlawNote {
            flaw: FlawId::new("f1").unwrap(),
            kind: FlawKind::Check,
            station: Some(StationRef::Wall(2)),
            clock: Clock::new(1),
            size_mm: Some(Measure::plain(20.0)),
            through: false,
            note: String::new(),
        });
        store.append_piece(&id(), now, now, vec![flaw]).unwrap();
        let felt = PieceFact::Look {
            feel: Some(BagFeel::Damp),
            mould: false,
            crack: false,
        };
        store.append_piece(&id(), now, now, vec![felt]).unwrap();
        let read = ShopFact::Setting {
            key: "cautions_read".into(),
            value: "true".into(),
        };
        store.append_shop(now, now, vec![read]).unwrap();
        let bench = Bench::at(Box::new(store), moment(START), false);
        let desk = Self { folder, bench };
        desk.open(Page::Piece(id()));
        desk.open(Page::Flaw(id(), Some(FlawId::new("f1").unwrap())));
        desk.room();
        desk
    }

    fn open(&self, page: Page) {
        self.bench.screens.act(Action::Open(page));
    }

    /// Makes room for all of a long page, instead of scrolling.
    fn room(&self) {
        self.bench.resize(390.0, 2600.0, 1.0);
    }

    /// Puts a file into the camera's folder, so many minutes before now.
    fn takes(&self, name: &str, bytes: &[u8], minutes_ago: u64) -> PathBuf {
        let path = self.folder.path().join("camera").join(name);
        std::fs::write(&path, bytes).unwrap();
        let taken = std::time::SystemTime::from(self.bench.now())
            - std::time::Duration::from_secs(minutes_ago * 60);
        let file = std::fs::File::options().write(true).open(&path).unwrap();
        file.set_modified(taken).unwrap();
        path
    }

    /// Two photos of the crack, a day apart by the camera's file times.
    fn with_two() -> Self {
        let desk = Self::new();
        desk.takes("old.jpg", &drawing(Subject::Check(20.0)), 60);
        desk.add("old.jpg, 07:42");
        desk.bench.days(1);
        desk.takes("new.jpg", &drawing(Subject::Check(26.0)), 1);
        desk.add("new.jpg, 08:41");
        desk
    }

    /// Two touches.
    fn add(&self, label: &str) {
        self.bench.touch("Take from newest pictures");
        self.bench.settle();
        self.bench.touch_last(label);
        self.bench.settle();
    }

    fn piece<T>(&self, ask: impl FnOnce(&Piece) -> T) -> T {
        self.bench
            .screens
            .read(|app| ask(app.piece(&id()).unwrap()))
    }

    fn photos(&self) -> usize {
        self.piece(|p| p.photos_on(&on_flaw()).len())
    }

    /// The file of a photo in the shelf, by its place.
    fn stored(&self, place: usize) -> PathBuf {
        let name = self.piece(|p| p.photos_on(&on_flaw())[place].note.stored.to_string());
        let mut found = Vec::new();
        files(&self.folder.path().join("shelf"), &mut found);
        let named = |f: &&PathBuf| f.to_string_lossy().contains(&name);
        found
            .iter()
            .find(named)
            .expect("the photo is there")
            .clone()
    }

    /// Taps the photo on screen at fractions of its width and height.
    fn tap(&self, x: f32, y: f32) {
        let picture = self
            .bench
            .find_all(AccessibleRole::Image)
            .into_iter()
            .find(|e| e.accessible_label().is_some_and(|l| l.starts_with("Check")))
            .expect("a photo is on screen");
        let (at, size) = (picture.absolute_position(), picture.size());
        // As large as fits, in the middle: the drawings are 4 to 3.
        let width = size.width.min(size.height * 4.0 / 3.0);
        let height = width * 0.75;
        let position = LogicalPosition::new(
            at.x + (size.width - width) / 2.0 + x * width,
            at.y + (size.height - height) / 2.0 + y * height,
        );
        let window = self.bench.screens.window().window();
        let button = PointerEventButton::Left;
        window.dispatch_event(WindowEvent::PointerMoved { position });
        window.dispatch_event(WindowEvent::PointerPressed { position, button });
        window.dispatch_event(WindowEvent::PointerReleased { position, button });
        slint::platform::update_timers_and_animations();
    }
}

fn files(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files(&path, into);
        } else {
            into.push(path);
        }
    }
}

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

#[test]
fn pictures_of_photos_on_a_flaw() {
    let desk = Desk::with_two();
    desk.bench.pictures_of("photos-flaw");
    desk.bench.touch("Back");
    desk.open(Page::Flaws(id()));
    desk.bench.pictures_of("photos-flaws-list");
    desk.open(Page::Photos(id(), on_flaw()));
    desk.bench.pictures_of("photos-page");
    desk.open(Page::Photos(id(), PhotoOn::Finished));
    desk.bench.pictures_of("photos-empty");
}

#[test]
fn pictures_of_the_newest_pictures_and_of_an_import() {
    let desk = Desk::new();
    desk.takes("IMG_3.jpg", &drawing(Subject::Check(20.0)), 1);
    desk.takes("IMG_2.jpg", &drawing(Subject::Knot(14.0)), 4);
    desk.takes("IMG_1.heic", b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", 60);
    desk.takes("IMG_0.jpg", &drawing(Subject::Bark(20.0)), 3000);
    desk.bench.touch("Take from newest pictures");
    desk.bench.settle();
    desk.bench.pictures_of("photos-newest");
    desk.bench.touch("Several");
    desk.bench.touch("IMG_3.jpg, 08:41");
    desk.bench.touch("IMG_2.jpg, 08:38");
    desk.bench.pictures_of("photos-newest-several");
    desk.bench.touch("Add 2 photos");
    desk.bench.pictures_of("photos-importing");
}

#[test]
fn pictures_of_one_photo_and_of_two() {
    let desk = Desk::with_two();
    desk.bench.resize(390.0, 844.0, 1.0);
    desk.bench.touch("Compare two");
    desk.bench.pictures_of("photos-compare");
    desk.bench.touch("Back");
    desk.bench.touch("Fri 13 Mar, 08:42");
    desk.bench.pictures_of("photos-one");
    desk.bench.touch("Mark and measure");
    desk.tap(0.45, 0.3);
    desk.bench.touch("Known length");
    desk.tap(120.0 / 640.0, 440.0 / 480.0);
    desk.tap(520.0 / 640.0, 440.0 / 480.0);
    desk.bench.write("Known length", "100");
    desk.bench.pictures_of("photos-marking-scale");
    desk.bench.touch("Crack");
    desk.tap(0.5, 0.34);
    desk.tap(0.5, 0.556);
    desk.bench.pictures_of("photos-marking");
    desk.bench.touch("Save what is drawn");
    desk.bench.pictures_of("photos-measured");
    desk.bench.touch("More");
    desk.bench.pictures_of("photos-more");
}
