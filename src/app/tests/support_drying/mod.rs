//! Loft: one drying piece on a shelf in memory, a clock that the test moves, and a disk that can be full.
#![allow(dead_code)] // each test file uses a part of it

pub mod truth;

use std::cell::RefCell;
use std::rc::Rc;

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::drying::view::{DryingView, WeighView};
use evenwall_app::drying::{DryingAction, typed};
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

/// Noon of a day.
pub fn noon(day: &str) -> Moment {
    moment(&format!("{day}T12:00:00+00:00"))
}

pub fn weighed(g: f64) -> PieceFact {
    PieceFact::Weighed {
        mass_g: Measure::plain(g),
        tare_g: 0.0,
    }
}

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

pub struct Loft {
    pub app: App,
    pub now: Moment,
    store: Rc<RefCell<MemoryStore>>,
}

impl Loft {
    /// K07, entered on 1 December 2025, in Settle since 10 January 2026, weighed on these days; today is Thursday 12
    /// March 2026.
    pub fn weighed(weights: &[(&str, f64)]) -> Self {
        let facts: Vec<_> = weights
            .iter()
            .map(|(day, g)| (noon(day), vec![weighed(*g)]))
            .collect();
        Self::with(facts, &[], "{}")
    }

    /// The same with any facts, facts of the shop, and device settings.
    pub fn with(
        facts: Vec<(Moment, Vec<PieceFact>)>,
        shop: &[(&str, ShopFact)],
        settings: &str,
    ) -> Self {
        let now = moment("2026-03-12T08:42:00+00:00");
        let mut store = MemoryStore::default();
        let mut line = |at: Moment, facts| {
            store.append_piece(&id(), at, at, facts).map(drop).unwrap();
        };
        line(
            noon("2025-12-01"),
            vec![
                PieceFact::Created,
                PieceFact::Detail {
                    field: DetailField::Mark,
                    value: Some(DetailValue::Text("K07".into())),
                },
                PieceFact::StageMoved(Stage::Bag),
            ],
        );
        line(noon("2025-12-20"), vec![PieceFact::StageMoved(Stage::Air)]);
        line(
            noon("2026-01-10"),
            vec![PieceFact::StageMoved(Stage::Settle)],
        );
        for (at, facts) in facts {
            line(at, facts);
        }
        for (day, fact) in shop {
            store
                .append_shop(noon(day), noon(day), vec![fact.clone()])
                .unwrap();
        }
        store.save_device_settings(settings).unwrap();
        let store = Rc::new(RefCell::new(store));
        let shared = Shared {
            inner: store.clone(),
        };
        let app = App::open(Box::new(shared), false, now).unwrap();
        let mut loft = Self { app, now, store };
        loft.act(Action::Open(Page::Drying(id())));
        loft
    }

    pub fn fail(&self, failing: bool) {
        self.store.borrow_mut().failing = failing;
    }

    pub fn days(&mut self, days: i64) {
        self.now += chrono::Duration::days(days);
    }

    pub fn act(&mut self, action: Action) {
        self.app.apply(action, self.now);
        assert_eq!(self.app.words().problems(), [], "words are absent");
    }

    /// Runs the works beside the screens until none is left.
    pub fn settle(&mut self) {
        while let Some(work) = self.app.next_work(self.now) {
            self.app.work_done(work.run(), self.now);
        }
    }

    pub fn drying(&mut self, action: DryingAction) {
        self.act(Action::Drying(action));
    }

    pub fn scale(&mut self) {
        self.act(Action::Open(Page::Weigh(id())));
    }

    pub fn view(&self) -> DryingView {
        let view = self.app.drying_view(self.now).unwrap();
        assert_eq!(self.app.words().problems(), [], "words are absent");
        view
    }

    pub fn weigh(&self) -> WeighView {
        let view = self.app.weigh_view(self.now).unwrap();
        assert_eq!(self.app.words().problems(), [], "words are absent");
        view
    }

    pub fn piece(&self) -> &Piece {
        self.app.piece(&id()).unwrap()
    }

    /// The weights recorded, net, in order.
    pub fn weights(&self) -> Vec<f64> {
        self.piece().weighings.iter().map(|w| w.net_g()).collect()
    }

    /// Keys of the screen: one each, `next` and `lb` by name.
    pub fn keys(&mut self, keys: &[&str]) {
        for key in keys {
            self.drying(DryingAction::Key((*key).into()));
        }
    }

    /// Types on a hardware keyboard, as the screens hand it over: only keys that the page takes.
    pub fn types(&mut self, text: &str) {
        for c in text.chars() {
            let Some(view) = self.app.weigh_view(self.now) else {
                return;
            };
            if let Some(action) = typed(&c.to_string(), view.typing) {
                self.drying(action);
            }
        }
    }

    pub fn answer(&mut self, key: &str) {
        let ask = self.weigh().ask.expect("the page asks something");
        assert!(ask.answers.iter().any(|a| a.key == key), "{ask:?}");
        self.drying(DryingAction::Answer(key.into()));
    }

    pub fn said(&self) -> String {
        self.app.undo().last_done().unwrap().said.clone()
    }

    /// The title of what the page asks; empty where it asks nothing.
    pub fn asked(&self) -> String {
        self.weigh().ask.map(|a| a.title).unwrap_or_default()
    }
}

/// Weighed every two weeks, the last time today.
pub fn fortnights(grams: &[f64]) -> Loft {
    let days = [
        "2025-11-06",
        "2025-11-20",
        "2025-12-04",
        "2025-12-18",
        "2026-01-01",
        "2026-01-15",
        "2026-01-29",
        "2026-02-12",
        "2026-02-26",
        "2026-03-12",
    ];
    let weights: Vec<(&str, f64)> = days[days.len() - grams.len()..]
        .iter()
        .copied()
        .zip(grams.iter().copied())
        .collect();
    let mut loft = Loft::weighed(&weights);
    loft.now = moment("2026-03-12T18:00:00+00:00");
    loft
}
