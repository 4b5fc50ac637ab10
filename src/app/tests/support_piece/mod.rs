//! Hands: one piece on a shelf in memory, a clock that the test moves, and a disk that can be full.
#![allow(dead_code)] // each test file uses a part of it

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::piece::PieceAction;
use evenwall_app::piece::view::PieceView;
use evenwall_app::route::Page;
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;

pub fn moment(text: &str) -> Moment {
    DateTime::parse_from_rfc3339(text).unwrap()
}

pub fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

pub fn detail(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    }
}

pub fn mm(value: f64) -> DetailValue {
    DetailValue::Length(Measure::plain(value))
}

/// A store that the test can fill and let fail while the app holds it.
struct Shared {
    inner: Rc<RefCell<MemoryStore>>,
}

impl Store for Shared {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        self.inner.borrow_mut().load()
    }
    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError> {
        self.inner.borrow_mut().load_piece(piece)
    }
    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError> {
        self.inner
            .borrow_mut()
            .append_piece(piece, at, noted_at, facts)
    }
    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError> {
        self.inner.borrow_mut().append_shop(at, noted_at, facts)
    }
    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError> {
        self.inner.borrow_mut().save_device_settings(json)
    }
    fn device_settings(&self) -> Option<String> {
        self.inner.borrow().device_settings()
    }
    fn random(&mut self) -> u64 {
        self.inner.borrow_mut().random()
    }
    fn place(&self) -> String {
        self.inner.borrow().place()
    }
}

pub struct Hands {
    pub app: App,
    store: Rc<RefCell<MemoryStore>>,
    now: Cell<Moment>,
}

impl Hands {
    /// One piece made of these facts; the general cautions were read.
    pub fn with(facts: Vec<PieceFact>) -> Self {
        Self::made(facts, true)
    }

    /// The same before the general cautions were read.
    pub fn unread(facts: Vec<PieceFact>) -> Self {
        Self::made(facts, false)
    }

    fn made(facts: Vec<PieceFact>, read: bool) -> Self {
        // A Thursday.
        let now = moment("2026-03-12T08:42:00+00:00");
        let mut store = MemoryStore::default();
        let all = [vec![PieceFact::Created], facts].concat();
        store.append_piece(&id(), now, now, all).unwrap();
        if read {
            let fact = ShopFact::Setting {
                key: "cautions_read".into(),
                value: "true".into(),
            };
            store.append_shop(now, now, vec![fact]).unwrap();
        }
        let store = Rc::new(RefCell::new(store));
        let shared = Shared {
            inner: store.clone(),
        };
        let app = App::open(Box::new(shared), false, now).unwrap();
        Self {
            app,
            store,
            now: Cell::new(now),
        }
    }

    pub fn now(&self) -> Moment {
        self.now.get()
    }

    pub fn days(&self, days: i64) {
        self.now.set(self.now.get() + chrono::Duration::days(days));
    }

    pub fn fail(&self, failing: bool) {
        self.store.borrow_mut().failing = failing;
    }

    pub fn act(&mut self, action: Action) {
        self.app.apply(action, self.now.get());
    }

    pub fn open(&mut self) {
        self.act(Action::Open(Page::Piece(id())));
    }

    /// Puts a fact on disk as another page would, and opens the app anew on the piece's page.
    pub fn fact(&mut self, fact: PieceFact) {
        let now = self.now.get();
        self.store
            .borrow_mut()
            .append_piece(&id(), now, now, vec![fact])
            .unwrap();
        let shared = Shared {
            inner: self.store.clone(),
        };
        self.app = App::open(Box::new(shared), false, now).unwrap();
        self.open();
    }

    pub fn moved(&mut self, stage: Stage) {
        self.act(Action::Piece(PieceAction::MoveTo {
            piece: id(),
            stage,
            day: None,
            sure: true,
        }));
    }

    pub fn touch_next(&mut self) {
        let key = self.page().next.unwrap().key;
        let action = self.app.step_action(key).unwrap();
        self.act(action);
    }

    pub fn touch_then(&mut self) {
        let key = self.page().then.unwrap().key;
        let action = self.app.step_action(key).unwrap();
        self.act(action);
    }

    pub fn piece(&self) -> &Piece {
        self.app.piece(&id()).unwrap()
    }

    pub fn page(&self) -> PieceView {
        self.app
            .piece_view(self.now.get())
            .expect("the page of a piece")
    }

    pub fn said(&self) -> String {
        self.app.undo().last_done().unwrap().said.clone()
    }

    /// Undo and redo: what was there before is there again, and then what was done.
    pub fn undo_brings_back_the_page(&mut self) {
        let after = self.page();
        self.act(Action::Undo);
        let before = self.page();
        assert_ne!(before, after);
        self.act(Action::Redo);
        assert_eq!(self.page(), after);
        self.act(Action::Undo);
        assert_eq!(self.page(), before);
    }

    pub fn no_word_is_absent(&self) {
        assert_eq!(self.app.words().problems(), []);
    }
}
