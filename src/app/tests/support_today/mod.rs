//! Shelf: several pieces in memory, a clock that the test moves, and a disk that can be full.
#![allow(dead_code)] // each test file uses a part of it

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use chrono::{DateTime, Duration};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_app::today::TodayAction;
use evenwall_app::today::view::{RowView, Shape, TodayView};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::BagFeel;

pub fn moment(text: &str) -> Moment {
    DateTime::parse_from_rfc3339(text).unwrap()
}

pub fn id(mark: &str) -> PieceId {
    PieceId::new(&mark.to_lowercase()).unwrap()
}

pub fn text(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    }
}

pub fn look(feel: BagFeel) -> PieceFact {
    PieceFact::Look {
        feel: Some(feel),
        mould: false,
        crack: false,
    }
}

struct Shared(Rc<RefCell<MemoryStore>>);

impl Store for Shared {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        self.0.borrow_mut().load()
    }
    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError> {
        self.0.borrow_mut().load_piece(piece)
    }
    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError> {
        self.0.borrow_mut().append_piece(piece, at, noted_at, facts)
    }
    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError> {
        self.0.borrow_mut().append_shop(at, noted_at, facts)
    }
    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError> {
        self.0.borrow_mut().save_device_settings(json)
    }
    fn device_settings(&self) -> Option<String> {
        self.0.borrow().device_settings()
    }
    fn random(&mut self) -> u64 {
        self.0.borrow_mut().random()
    }
    fn place(&self) -> String {
        self.0.borrow().place()
    }
}

/// Thursday 12 March 2026, in the morning.
pub const START: &str = "2026-03-12T08:42:00+00:00";

pub struct Shelf {
    store: Rc<RefCell<MemoryStore>>,
    start: Moment,
}

impl Shelf {
    pub fn new() -> Self {
        Self {
            store: Rc::new(RefCell::new(MemoryStore::default())),
            start: moment(START),
        }
    }

    pub fn days_ago(&self, days: i64) -> Moment {
        self.start - Duration::days(days)
    }

    /// A line in the diary of a piece, so many days ago.
    pub fn line(&self, mark: &str, days: i64, facts: Vec<PieceFact>) -> &Self {
        let at = self.days_ago(days);
        self.store
            .borrow_mut()
            .append_piece(&id(mark), at, at, facts)
            .unwrap();
        self
    }

    /// A piece that came into a stage so many days ago.
    pub fn piece(&self, mark: &str, wood: &str, stage: Stage, days: i64) -> &Self {
        self.line(
            mark,
            days,
            vec![
                PieceFact::Created,
                text(DetailField::Mark, mark),
                text(DetailField::Wood, wood),
                PieceFact::StageMoved(stage),
            ],
        )
    }

    /// A piece in a closed bag so many days ago.
    pub fn bag(&self, mark: &str, days: i64) -> &Self {
        self.piece(mark, "ash", Stage::Bag, days)
    }

    pub fn shop(&self, days: i64, fact: ShopFact) -> &Self {
        let at = self.days_ago(days);
        self.store
            .borrow_mut()
            .append_shop(at, at, vec![fact])
            .unwrap();
        self
    }

    /// Settings of the device.
    pub fn device(&self, json: &str) {
        self.store.borrow_mut().save_device_settings(json).unwrap();
    }

    pub fn open(&self) -> Hands {
        let app = App::open(Box::new(Shared(self.store.clone())), false, self.start).unwrap();
        Hands {
            app,
            store: self.store.clone(),
            now: Cell::new(self.start),
        }
    }
}

pub struct Hands {
    pub app: App,
    store: Rc<RefCell<MemoryStore>>,
    now: Cell<Moment>,
}

impl Hands {
    pub fn now(&self) -> Moment {
        self.now.get()
    }

    pub fn wait(&self, span: Duration) {
        self.now.set(self.now.get() + span);
    }

    pub fn fail(&self, failing: bool) {
        self.store.borrow_mut().failing = failing;
    }

    pub fn act(&mut self, action: Action) {
        self.app.apply(action, self.now.get());
    }

    pub fn today(&mut self, action: TodayAction) {
        self.act(Action::Today(action));
    }

    pub fn view(&self) -> TodayView {
        self.app.today_view(self.now())
    }

    pub fn piece(&self, mark: &str) -> &Piece {
        self.app.piece(&id(mark)).unwrap()
    }

    pub fn rows(&self) -> Vec<RowView> {
        self.view().list.rows
    }

    /// The row of a piece, of a kind such as `look`.
    pub fn row(&self, mark: &str, kind: &str) -> RowView {
        let rows = self.rows();
        let end = format!("/{kind}/{}", id(mark));
        rows.iter()
            .find(|r| r.id.ends_with(&end))
            .unwrap_or_else(|| panic!("no {end}; there is {:?}", ids(&rows)))
            .clone()
    }

    /// Gives an answer on the row of a piece.
    pub fn answer(&mut self, mark: &str, kind: &str, answer: &str) {
        let row = self.row(mark, kind).id;
        self.today(TodayAction::Answer {
            row,
            answer: answer.into(),
        });
    }

    /// The mark of the open row.
    pub fn open_mark(&self) -> String {
        self.rows()
            .into_iter()
            .find(|r| r.shape == Shape::Card)
            .map(|r| r.mark)
            .unwrap_or_default()
    }

    pub fn said(&self) -> String {
        self.app.undo().last_done().unwrap().said.clone()
    }

    pub fn choose(&mut self, label: &str) {
        let question = self.app.question().expect("a question");
        let place = question
            .choices
            .iter()
            .position(|c| c.label == label)
            .unwrap_or_else(|| panic!("no '{label}' in {question:?}"));
        self.act(Action::Choose(place));
    }

    pub fn no_word_is_absent(&self) {
        assert_eq!(self.app.words().problems(), []);
    }
}

pub fn ids(rows: &[RowView]) -> Vec<String> {
    rows.iter().map(|r| r.id.clone()).collect()
}
