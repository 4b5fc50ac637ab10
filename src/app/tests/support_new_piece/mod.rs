//! The form for a new piece on a store in memory that fails after so many lines.
#![allow(dead_code)] // each test file uses a part of it

use std::cell::Cell;
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::new_piece::NewPieceAction;
use evenwall_app::route::{Page, Tab};
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;

/// A store in memory that can be told how many more lines it keeps before it fails.
struct Flaky {
    inner: MemoryStore,
    left: Rc<Cell<usize>>,
}

impl Store for Flaky {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        self.inner.load()
    }
    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError> {
        self.inner.load_piece(piece)
    }
    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError> {
        self.inner.failing = self.left.get() == 0;
        let line = self.inner.append_piece(piece, at, noted_at, facts)?;
        self.left.set(self.left.get() - 1);
        Ok(line)
    }
    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError> {
        self.inner.append_shop(at, noted_at, facts)
    }
    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError> {
        self.inner.save_device_settings(json)
    }
    fn device_settings(&self) -> Option<String> {
        self.inner.device_settings()
    }
    fn random(&mut self) -> u64 {
        self.inner.random()
    }
    fn place(&self) -> String {
        self.inner.place()
    }
}

pub fn now() -> Moment {
    chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap()
}

pub struct Bench {
    pub app: App,
    pub left: Rc<Cell<usize>>,
}

impl Bench {
    pub fn new() -> Self {
        let left = Rc::new(Cell::new(1000));
        let store = Flaky {
            inner: MemoryStore::default(),
            left: left.clone(),
        };
        let mut app = App::open(Box::new(store), false, now()).unwrap();
        app.apply(Action::GoTab(Tab::Pieces), now());
        let mut bench = Self { app, left };
        bench.open();
        bench
    }
    pub fn open(&mut self) {
        self.app.apply(Action::Open(Page::NewPiece), now());
    }
    pub fn act(&mut self, action: NewPieceAction) {
        self.app.apply(Action::NewPiece(action), now());
    }
    pub fn write(&mut self, field: DetailField, text: &str) {
        self.act(NewPieceAction::Typed(field, text.into()));
    }
    pub fn save(&mut self) {
        self.act(NewPieceAction::Save);
    }
    pub fn only(&self) -> &Piece {
        assert_eq!(self.app.pieces().count(), 1);
        self.app.pieces().next().unwrap()
    }
    pub fn marks(&self) -> Vec<String> {
        let mut marks: Vec<String> = self.app.pieces().map(|p| p.mark().to_owned()).collect();
        marks.sort();
        marks
    }
    pub fn refusal(&self) -> &str {
        &self.app.question().expect("it was refused").text
    }
}
