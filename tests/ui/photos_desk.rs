//! Desk: a bench on a real shelf with a camera's folder of real picture files, for the tests of photos.

use std::path::{Path, PathBuf};

use evenwall_app::action::Action;
use evenwall_app::device::DeviceSettings;
use evenwall_app::route::Page;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::store::Store;
use evenwall_photo::drawing::{Drawing, Subject};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, FlawNote, Measure, PieceFact, StationRef};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Piece;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, FlawKind};
use i_slint_backend_testing::AccessibleRole;
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalPosition};

use crate::bench::{Bench, START, moment};

/// A bench on a real shelf, with a folder in which a camera puts pictures.
pub struct Desk {
    pub folder: tempfile::TempDir,
    pub bench: Bench,
}

pub fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

pub fn on_flaw() -> PhotoOn {
    PhotoOn::Flaw(FlawId::new("f1").unwrap())
}

pub fn drawing(subject: Subject) -> Vec<u8> {
    Drawing { subject, wood: 7 }.jpeg().unwrap()
}

impl Desk {
    /// A hollow form with a check of 20 mm, its flaw page open.
    pub fn new() -> Self {
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

    pub fn open(&self, page: Page) {
        self.bench.screens.act(Action::Open(page));
    }

    /// Makes room for all of a long page, instead of scrolling.
    pub fn room(&self) {
        self.bench.resize(390.0, 2600.0, 1.0);
    }

    /// Puts a file into the camera's folder, so many minutes before now.
    pub fn takes(&self, name: &str, bytes: &[u8], minutes_ago: u64) -> PathBuf {
        let path = self.folder.path().join("camera").join(name);
        std::fs::write(&path, bytes).unwrap();
        let taken = std::time::SystemTime::from(self.bench.now())
            - std::time::Duration::from_secs(minutes_ago * 60);
        let file = std::fs::File::options().write(true).open(&path).unwrap();
        file.set_modified(taken).unwrap();
        path
    }

    /// Two photos of the crack, a day apart by the camera's file times.
    pub fn with_two() -> Self {
        let desk = Self::new();
        desk.takes("old.jpg", &drawing(Subject::Check(20.0)), 60);
        desk.add("old.jpg, 07:42");
        desk.bench.days(1);
        desk.takes("new.jpg", &drawing(Subject::Check(26.0)), 1);
        desk.add("new.jpg, 08:41");
        desk
    }

    /// Two touches.
    pub fn add(&self, label: &str) {
        self.bench.touch("Take from newest pictures");
        self.bench.settle();
        self.bench.touch_last(label);
        self.bench.settle();
    }

    pub fn piece<T>(&self, ask: impl FnOnce(&Piece) -> T) -> T {
        self.bench
            .screens
            .read(|app| ask(app.piece(&id()).unwrap()))
    }

    pub fn photos(&self) -> usize {
        self.piece(|p| p.photos_on(&on_flaw()).len())
    }

    /// The file of a photo in the shelf, by its place.
    pub fn stored(&self, place: usize) -> PathBuf {
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
    pub fn tap(&self, x: f32, y: f32) {
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

pub fn files(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files(&path, into);
        } else {
            into.push(path);
        }
    }
}
