//! A shop with one piece and a crack in it, on a real folder, and picture files to take in.
#![allow(
    dead_code,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::disallowed_methods
)]

use std::path::{Path, PathBuf};

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::photos::{FoundPicture, PhotoTile, PhotosAction, PictureSource};
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::store::Store;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{FlawNote, Measure, PieceFact};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::FlawKind;

pub fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
}

pub fn on_flaw() -> PhotoOn {
    PhotoOn::Flaw(FlawId::new("f1").unwrap())
}

/// A picture of 400 by 200 pixels that differs by its number.
pub fn jpeg(number: u8) -> Vec<u8> {
    let mut bytes = Vec::new();
    let encoder = jpeg_encoder::Encoder::new(&mut bytes, 90);
    let rgb: Vec<u8> = (0..400 * 200)
        .flat_map(|i: usize| [(i % 256) as u8, number.wrapping_mul(60), (i / 400) as u8])
        .collect();
    encoder
        .encode(&rgb, 400, 200, jpeg_encoder::ColorType::Rgb)
        .unwrap();
    bytes
}

/// The platform of the tests.
pub struct Desk;

impl PictureSource for Desk {
    fn usual_folders(&self) -> Vec<PathBuf> {
        vec![PathBuf::from("/usual/pictures")]
    }

    fn newest(&self, _: &[PathBuf], _: usize) -> Result<Vec<FoundPicture>, String> {
        Ok(Vec::new())
    }

    fn read(&self, path: &Path, _: u64) -> Result<Vec<u8>, String> {
        std::fs::read(path).map_err(|_| "not there".to_owned())
    }
}

pub struct Shop {
    temp: tempfile::TempDir,
    pub app: App,
    pub piece: PieceId,
}

fn store(folder: &Path) -> ShelfStore {
    let mut n = 0_u64;
    let random = move || {
        n += 1;
        n.wrapping_mul(0x9E37_79B9_7F4A_7C15)
    };
    ShelfStore::open(
        &folder.join("shelf"),
        &folder.join("device"),
        [3; 16],
        Box::new(random),
    )
    .unwrap()
}

impl Shop {
    pub fn new() -> Self {
        let temp = tempfile::tempdir().unwrap();
        let piece = PieceId::new("k07").unwrap();
        let mut store = store(temp.path());
        let mark = PieceFact::Detail {
            field: DetailField::Mark,
            value: Some(DetailValue::Text("K07".into())),
        };
        let flaw = PieceFact::FlawFound(FlawNote {
            flaw: FlawId::new("f1").unwrap(),
            kind: FlawKind::Check,
            station: None,
            clock: None,
            size_mm: Some(Measure::plain(20.0)),
            through: false,
            note: String::new(),
        });
        store
            .append_piece(&piece, now(), now(), vec![PieceFact::Created, mark, flaw])
            .unwrap();
        let app = App::open(Box::new(store), false, now()).unwrap();
        Self { temp, app, piece }
    }

    /// The program started again.
    pub fn reopen(&mut self) {
        let nothing = evenwall_app::store::MemoryStore::default();
        self.app = App::open(Box::new(nothing), false, now()).unwrap();
        self.app = App::open(Box::new(store(self.temp.path())), false, now()).unwrap();
    }

    pub fn folder(&self) -> &Path {
        self.temp.path()
    }

    pub fn shelf(&self) -> PathBuf {
        self.temp.path().join("shelf")
    }

    pub fn file(&self, name: &str, bytes: &[u8]) -> PathBuf {
        let path = self.temp.path().join(name);
        std::fs::write(&path, bytes).unwrap();
        path
    }

    pub fn picture(&self, name: &str, number: u8) -> PathBuf {
        self.file(name, &jpeg(number))
    }

    pub fn act(&mut self, action: Action) {
        self.app.apply(action, now());
    }

    /// Takes files in as the screens do, with the job run here.
    pub fn import(&mut self, on: PhotoOn, files: &[&PathBuf]) {
        let files = files.iter().map(|f| f.display().to_string()).collect();
        self.act(Action::Photos(PhotosAction::Import(
            self.piece.clone(),
            on,
            files,
        )));
        let job = self.app.photos_take_job().unwrap();
        let mut told = Vec::new();
        let done = job.run(&Desk, &Default::default(), &mut |p| told.push(p.part));
        assert!(told.is_sorted(), "{told:?}");
        self.app.photos_import_done(done, now());
    }

    pub fn tiles(&self, on: &PhotoOn) -> Vec<PhotoTile> {
        self.app.photos_tiles(&self.piece, on, now())
    }

    pub fn said(&self) -> String {
        self.app.undo().last_done().unwrap().said.clone()
    }

    pub fn facts(&self) -> Vec<PieceFact> {
        let piece = self.app.piece(&self.piece).unwrap();
        piece
            .diary
            .iter()
            .filter(|e| !e.retracted)
            .map(|e| e.fact.clone())
            .collect()
    }

    /// Lines of the journal.
    pub fn lines(&self) -> usize {
        let folder = self.shelf().join("pieces").join(self.piece.as_str());
        let journals = std::fs::read_dir(folder)
            .unwrap()
            .map(|e| e.unwrap().path());
        journals
            .filter(|p| p.extension().is_some_and(|e| e == "jsonl"))
            .map(|p| std::fs::read_to_string(p).unwrap().lines().count())
            .sum()
    }

    /// The files beside the diary.
    pub fn stored(&self) -> Vec<PathBuf> {
        let folder = self
            .shelf()
            .join("pieces")
            .join(self.piece.as_str())
            .join("photos");
        let entries = std::fs::read_dir(folder).map(|d| d.map(|e| e.unwrap().path()).collect());
        entries.unwrap_or_default()
    }
}
