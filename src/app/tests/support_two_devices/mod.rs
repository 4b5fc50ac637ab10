//! Two turners' devices, each with its own copy of one shelf, kept in step by whatever sync tool this machine has.
#![allow(dead_code)] // each test file uses a part of it
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // two folders on a real disk

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use chrono::{DateTime, Duration};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::diary::DiaryAction;
use evenwall_app::new_piece::NewPieceAction;
use evenwall_app::piece::PieceAction;
use evenwall_app::route::{Page, Tab};
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::shop::ShopAction;
use evenwall_piece::detail::DetailField;
use evenwall_piece::diary::DiaryEntry;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::{Shop, ShopFact};
use evenwall_piece::vocabulary::BagFeel;

pub fn moment(text: &str) -> Moment {
    DateTime::parse_from_rfc3339(text).unwrap()
}

/// A program that carries files from one folder to another and back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tool {
    /// The longer of two files wins: what any sync service does with files that only grow.
    Copy,
    /// rsync, both directions, the newer file wins.
    Rsync,
    /// unison, as it comes.
    Unison,
}

fn is_there(program: &str) -> bool {
    Command::new(program).arg("-version").output().is_ok()
}

impl Tool {
    /// Those that this machine has; the plain copy always.
    pub fn all() -> Vec<Self> {
        let mut tools = vec![Self::Copy];
        if is_there("rsync") {
            tools.push(Self::Rsync);
        }
        if is_there("unison") {
            tools.push(Self::Unison);
        }
        tools
    }

    pub fn run(self, a: &Path, b: &Path, temp: &Path) {
        match self {
            Self::Copy => {
                carry(a, b);
                carry(b, a);
            }
            Self::Rsync => {
                for (from, to) in [(a, b), (b, a)] {
                    let from = format!("{}/", from.display());
                    let done = Command::new("rsync")
                        .args(["-a", "--update", &from])
                        .arg(to)
                        .output()
                        .unwrap();
                    assert!(done.status.success(), "{done:?}");
                }
            }
            Self::Unison => {
                let done = Command::new("unison")
                    .args([
                        "-batch",
                        "-silent",
                        "-confirmbigdel=false",
                        "-ignore",
                        "Name .*.new",
                    ])
                    .args([a, b])
                    .env("UNISON", temp.join("unison"))
                    .env("HOME", temp)
                    .output()
                    .unwrap();
                // 1: some files were left alone because both sides changed, for example side files.
                assert!(matches!(done.status.code(), Some(0 | 1)), "{done:?}");
            }
        }
    }
}

/// Copies what is missing or longer.
pub fn carry(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap().map(Result::unwrap) {
        let (source, target) = (entry.path(), to.join(entry.file_name()));
        if source.is_dir() {
            carry(&source, &target);
        } else if fs::metadata(&target).map_or(0, |m| m.len())
            < fs::metadata(&source).unwrap().len()
            || !target.exists()
        {
            fs::copy(&source, &target).unwrap();
        }
    }
}

/// A device with the app open on its copy of the shelf.
pub struct Device {
    pub app: Option<App>,
    pub shelf: PathBuf,
    pub data: PathBuf,
    pub now: Moment,
    seed: u8,
}

impl Device {
    pub fn new(temp: &Path, name: &str, seed: u8) -> Self {
        let mut device = Self {
            app: None,
            shelf: temp.join(name).join("shelf"),
            data: temp.join(name).join("data"),
            now: moment("2026-03-12T08:42:00+00:00"),
            seed,
        };
        device.open();
        device
    }

    pub fn open(&mut self) {
        // Fresh random bytes at each start.
        self.seed += 16;
        let mut counter = u64::from(self.seed) << 32;
        let random = move || {
            counter += 1;
            counter.wrapping_mul(0x9E37_79B9_7F4A_7C15)
        };
        let open = || {
            let random = Box::new(random);
            ShelfStore::open(&self.shelf, &self.data, [self.seed; 16], random)
        };
        // A sync tool that another test starts holds this lock for the moment between its fork and its start.
        let mut store = open();
        for _ in 0..100 {
            if store.is_ok() {
                break;
            }
            std::thread::sleep(std::time::Duration::from_millis(10));
            store = open();
        }
        let store = store.unwrap();
        self.app = Some(App::open(Box::new(store), false, self.now).unwrap());
    }

    pub fn close(&mut self) {
        self.app = None;
    }

    pub fn app(&mut self) -> &mut App {
        self.app.as_mut().unwrap()
    }

    pub fn seen(&self) -> &App {
        self.app.as_ref().unwrap()
    }

    pub fn act(&mut self, action: impl Into<Action>) {
        self.now += Duration::seconds(20);
        let now = self.now;
        self.app().apply(action.into(), now);
        assert_eq!(self.seen().save_error(), None);
    }

    pub fn refresh(&mut self) -> bool {
        let now = self.now;
        self.app().refresh(now).unwrap()
    }

    pub fn new_piece(&mut self, mark: &str) {
        self.act(Action::GoTab(Tab::Pieces));
        self.act(Action::Open(Page::NewPiece));
        self.act(Action::NewPiece(NewPieceAction::Typed(
            DetailField::Mark,
            mark.into(),
        )));
        self.act(Action::NewPiece(NewPieceAction::Save));
        assert!(
            self.seen().question().is_none(),
            "{:?}",
            self.seen().question()
        );
    }

    pub fn id(&self, mark: &str) -> PieceId {
        let found: Vec<_> = self.seen().pieces().filter(|p| p.mark() == mark).collect();
        assert_eq!(found.len(), 1, "{mark}");
        found[0].id.clone()
    }

    pub fn note(&mut self, piece: &PieceId, text: &str) {
        self.act(Action::Open(Page::Diary(piece.clone())));
        self.act(Action::Diary(DiaryAction::WriteNote(true)));
        self.act(Action::Diary(DiaryAction::EditNote(text.into())));
        self.act(Action::Diary(DiaryAction::AddNote));
    }

    pub fn felt(&mut self, piece: &PieceId, feel: BagFeel) {
        self.act(Action::Piece(PieceAction::Looked {
            piece: piece.clone(),
            feel: Some(feel),
            mould: false,
            crack: false,
        }));
    }

    pub fn setting(&mut self, key: &str, value: &str) {
        self.act(ShopAction::Record {
            at: None,
            facts: vec![ShopFact::Setting {
                key: key.into(),
                value: value.into(),
            }],
        });
    }

    pub fn notes(&self, piece: &PieceId) -> Vec<String> {
        let diary = &self.seen().piece(piece).unwrap().diary;
        let note = |e: &DiaryEntry| match &e.fact {
            PieceFact::Note(text) => Some(text.clone()),
            _ => None,
        };
        let mut notes: Vec<String> = diary.iter().filter_map(note).collect();
        notes.sort();
        notes
    }

    /// All that the shelf says.
    pub fn state(&self) -> (Vec<Piece>, Shop) {
        let app = self.seen();
        (
            app.pieces().chain(app.deleted_pieces()).cloned().collect(),
            app.shop().clone(),
        )
    }

    pub fn journals(&self, piece: &PieceId) -> Vec<PathBuf> {
        let folder = self.shelf.join("pieces").join(piece.as_str());
        let mut found: Vec<_> = fs::read_dir(folder)
            .unwrap()
            .map(|e| e.unwrap().path())
            .collect();
        found.sort();
        found
    }

    pub fn own_journal(&self, piece: &PieceId) -> PathBuf {
        let id = self.seen().store().device().unwrap();
        self.shelf
            .join("pieces")
            .join(piece.as_str())
            .join(format!("{id}.jsonl"))
    }
}

/// Two devices that never met, a folder that goes with the test, and the tool between them.
pub struct Two {
    pub temp: tempfile::TempDir,
    pub tool: Tool,
    pub a: Device,
    pub b: Device,
}

impl Two {
    pub fn with(tool: Tool) -> Self {
        let temp = tempfile::tempdir().unwrap();
        let mut a = Device::new(temp.path(), "a", 1);
        a.setting("cautions_read", "true");
        a.new_piece("K07");
        // The other begins with what the tool carries over.
        fs::create_dir_all(temp.path().join("b/shelf")).unwrap();
        tool.run(&a.shelf, &temp.path().join("b/shelf"), temp.path());
        let b = Device::new(temp.path(), "b", 2);
        Self { temp, tool, a, b }
    }

    pub fn sync(&mut self) {
        // A sync tool goes by whole seconds of time at worst: lengths differ, so none is missed.
        self.tool
            .run(&self.a.shelf, &self.b.shelf, self.temp.path());
        self.a.refresh();
        self.b.refresh();
    }

    /// Both say the same, shown now and after a new start.
    pub fn agree(&mut self) {
        assert_eq!(self.a.state(), self.b.state(), "{:?}", self.tool);
        let shown = self.a.state();
        for device in [&mut self.a, &mut self.b] {
            device.close();
            device.open();
            assert_eq!(device.state(), shown, "after a new start");
        }
    }
}
