//! A bench for Plan: an app on a store in memory that can be told to fail, and whose settings outlive it.
#![allow(dead_code)] // each test file uses a part of it

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::plan::{PlanAction, PlanField, PlanView, ResultView, SumView};
use evenwall_app::route::{Page, Tab};
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;

/// A store in memory behind a switch, whose contents are shared with the next app.
#[derive(Clone)]
struct Shared {
    inner: Rc<RefCell<MemoryStore>>,
    failing: Rc<Cell<bool>>,
}

impl Shared {
    fn now(&self) -> std::cell::RefMut<'_, MemoryStore> {
        let mut inner = self.inner.borrow_mut();
        inner.failing = self.failing.get();
        inner
    }
}

impl Store for Shared {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        self.now().load()
    }
    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError> {
        self.now().load_piece(piece)
    }
    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError> {
        self.now().append_piece(piece, at, noted_at, facts)
    }
    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError> {
        self.now().append_shop(at, noted_at, facts)
    }
    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError> {
        self.now().save_device_settings(json)
    }
    fn device_settings(&self) -> Option<String> {
        self.now().device_settings()
    }
    fn random(&mut self) -> u64 {
        self.now().random()
    }
    fn place(&self) -> String {
        self.now().place()
    }
}

pub fn now() -> Moment {
    chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap()
}

pub fn setting(key: &str, value: &str) -> ShopFact {
    ShopFact::Setting {
        key: key.into(),
        value: value.into(),
    }
}

pub fn length(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

pub fn text(field: DetailField, value: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(value.into())),
    }
}

pub struct Bench {
    pub app: App,
    store: Shared,
}

impl Bench {
    /// An empty shelf, its cautions read, on the tab Plan.
    pub fn new() -> Self {
        Self::with(vec![], "{}")
    }

    /// The same with facts of the shop and settings of the device.
    pub fn with(mut shop: Vec<ShopFact>, settings: &str) -> Self {
        let mut inner = MemoryStore::default();
        shop.push(setting("cautions_read", "true"));
        inner.append_shop(now(), now(), shop).unwrap();
        inner.save_device_settings(settings).unwrap();
        let store = Shared {
            inner: Rc::new(RefCell::new(inner)),
            failing: Rc::new(Cell::new(false)),
        };
        let app = App::open(Box::new(store.clone()), false, now()).unwrap();
        let mut bench = Self { app, store };
        bench.act(Action::GoTab(Tab::Plan));
        bench
    }

    /// A piece K07 with these facts, its plan open.
    pub fn of(facts: Vec<PieceFact>) -> Self {
        let mut bench = Self::new();
        let mut all = vec![PieceFact::Created, text(DetailField::Mark, "K07")];
        all.extend(facts);
        let mut store = bench.store.clone();
        store.append_piece(&id(), now(), now(), all).unwrap();
        bench.restart();
        bench.act(Action::Open(Page::PlanOf(id())));
        bench
    }

    /// Closes the app and opens it again on what was kept.
    pub fn restart(&mut self) {
        self.app = App::open(Box::new(self.store.clone()), false, now()).unwrap();
        self.act(Action::GoTab(Tab::Plan));
    }

    pub fn fail(&self, failing: bool) {
        self.store.failing.set(failing);
    }

    pub fn act(&mut self, action: Action) {
        self.app.apply(action, now());
    }

    pub fn plan(&mut self, action: PlanAction) {
        self.act(Action::Plan(action));
    }

    pub fn choose(&mut self, what: &str, key: &str) {
        self.plan(PlanAction::Chose(what.into(), key.into()));
    }

    pub fn wood(&mut self, name: &str) {
        self.plan(PlanAction::Wood(name.into()));
    }

    pub fn enter(&mut self, field: PlanField, typed: &str) {
        self.plan(PlanAction::Enter(field));
        self.plan(PlanAction::Typed(typed.into()));
        self.plan(PlanAction::Set);
    }

    pub fn view(&self) -> PlanView {
        self.app.plan_view(now())
    }

    /// A result as text: "10 mm".
    pub fn result(&self, key: &str) -> String {
        shown(&self.cell(key))
    }

    pub fn cell(&self, key: &str) -> ResultView {
        let view = self.view();
        let mut all = view.cells;
        all.push(view.answer);
        all.extend(view.lines);
        let found = all.iter().find(|r| r.key == key);
        found.cloned().unwrap_or_else(|| panic!("no result {key}"))
    }

    pub fn sum(&mut self, key: &str) -> SumView {
        self.plan(PlanAction::Sum(key.into()));
        let sum = self.view().sum.expect("a sum is open");
        self.plan(PlanAction::Close);
        sum
    }

    /// The error below a size.
    pub fn error(&self, field: PlanField) -> String {
        let inputs = self.view().inputs;
        let mut all = inputs.size_fields;
        all.extend(inputs.pith_distance);
        all.extend([inputs.jaws_field, inputs.bar_field, inputs.moisture]);
        let found = all.iter().find(|s| s.key == field.key());
        found.map(|s| s.error.clone()).unwrap_or_default()
    }

    pub fn only(&self) -> &Piece {
        assert_eq!(self.app.pieces().count(), 1);
        self.app.pieces().next().unwrap()
    }
}

pub fn shown(result: &ResultView) -> String {
    format!("{} {}", result.value, result.unit)
}

pub fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}
