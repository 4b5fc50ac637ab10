//! A bench for the wall pages: an app on a store in memory that can be told to fail.
#![allow(dead_code)] // each test file uses a part of it

use std::cell::Cell;
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::piece::PieceAction;
use evenwall_app::route::Page;
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_app::wall::{Spot, SummaryView, WallAction, WallView, station_from_key};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;

/// A store in memory behind a switch.
struct Switched {
    inner: MemoryStore,
    failing: Rc<Cell<bool>>,
}

impl Store for Switched {
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
        self.inner.failing = self.failing.get();
        self.inner.append_piece(piece, at, noted_at, facts)
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

/// The bench.
pub struct Wall {
    pub app: App,
    pub now: Moment,
    failing: Rc<Cell<bool>>,
}

pub fn length(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

impl Wall {
    /// A vessel K07, 150 across and 200 high, in Hollow; wall wanted 10, finish wall 5.
    pub fn new() -> Self {
        Self::with(&[], "{}")
    }

    /// The same with more facts and with device settings.
    pub fn with(facts: &[PieceFact], settings: &str) -> Self {
        let mut all = vec![
            PieceFact::Created,
            PieceFact::Detail {
                field: DetailField::Mark,
                value: Some(DetailValue::Text("K07".into())),
            },
            length(DetailField::Diameter, 150.0),
            length(DetailField::Height, 200.0),
            PieceFact::StageMoved(Stage::Hollow),
        ];
        all.extend_from_slice(facts);
        Self::of(all, settings)
    }

    /// A piece with exactly these facts.
    pub fn of(facts: Vec<PieceFact>, settings: &str) -> Self {
        let now = chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap();
        let mut inner = MemoryStore::default();
        let id = PieceId::new("k07").unwrap();
        inner.append_piece(&id, now, now, facts).unwrap();
        inner.save_device_settings(settings).unwrap();
        let failing = Rc::new(Cell::new(false));
        let store = Switched {
            inner,
            failing: failing.clone(),
        };
        let app = App::open(Box::new(store), false, now).unwrap();
        let mut wall = Self { app, now, failing };
        wall.act(Action::Open(Page::Wall(id)));
        wall
    }

    pub fn id(&self) -> PieceId {
        PieceId::new("k07").unwrap()
    }

    pub fn fail(&self, failing: bool) {
        self.failing.set(failing);
    }

    pub fn wait(&mut self, minutes: i64) {
        self.now += chrono::Duration::minutes(minutes);
    }

    pub fn act(&mut self, action: Action) {
        self.app.apply(action, self.now);
        assert_eq!(self.app.words().problems(), [], "words are absent");
    }

    pub fn wall(&mut self, action: WallAction) {
        self.act(Action::Wall(action));
    }

    pub fn open(&mut self, page: fn(PieceId) -> Page) {
        self.act(Action::Open(page(self.id())));
    }

    /// Moves the piece to a stage, whatever advice says.
    pub fn move_to(&mut self, stage: Stage) {
        self.act(Action::Piece(PieceAction::MoveTo {
            piece: self.id(),
            stage,
            day: None,
            sure: true,
        }));
        assert_eq!(self.piece().stage(), stage);
    }

    pub fn view(&self) -> WallView {
        let view = self.app.wall_view(self.now).unwrap();
        assert_eq!(self.app.words().problems(), [], "words are absent");
        view
    }

    pub fn summary(&self) -> SummaryView {
        let view = self.app.wall_summary_view(self.now).unwrap();
        assert_eq!(self.app.words().problems(), [], "words are absent");
        view
    }

    pub fn piece(&self) -> &Piece {
        self.app.piece(&self.id()).unwrap()
    }

    fn spot(&self) -> Spot {
        Spot::from_key(&self.view().spot).unwrap()
    }

    /// Touches one of the eight keys where the page stands.
    pub fn tap(&mut self, key: &str) {
        assert!(
            self.view().quick.iter().any(|k| k == key),
            "no key {key} among {:?}",
            self.view().quick
        );
        let spot = self.spot();
        self.wall(WallAction::Quick(spot, key.into()));
    }

    pub fn feel(&mut self, feel: evenwall_piece::vocabulary::WallFeel) {
        let spot = self.spot();
        self.wall(WallAction::Feel(spot, feel));
    }

    pub fn cant_reach(&mut self) {
        let spot = self.spot();
        self.wall(WallAction::CantReach(spot));
    }

    /// Types on a hardware keyboard, as the screens hand it over: only keys that the page takes.
    pub fn types(&mut self, text: &str) {
        for c in text.chars() {
            let typing = self.view().typing;
            if let Some(action) = evenwall_app::wall::typed(&c.to_string(), typing) {
                self.wall(action);
            }
        }
    }

    pub fn jump(&mut self, key: &str) {
        self.wall(WallAction::Jump(station_from_key(key).unwrap()));
    }

    pub fn answer(&mut self, id: &str) {
        self.wall(WallAction::Answer(id.into()));
    }

    /// All readings of a station, in mm.
    pub fn read(&self, key: &str) -> Vec<f64> {
        let station: StationRef = station_from_key(key).unwrap();
        self.piece()
            .readings
            .iter()
            .filter(|r| r.reading.station == station)
            .filter_map(|r| r.reading.wall_mm.as_ref().map(|m| m.value))
            .collect()
    }

    /// Reads stations 1, 2, 3... with the keypad's hardware way.
    pub fn read_down(&mut self, walls: &[&str]) {
        for (i, wall) in walls.iter().enumerate() {
            self.wait(1);
            self.jump(&(i + 1).to_string());
            self.types(&format!("{wall}\n"));
        }
    }
}
