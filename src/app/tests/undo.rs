//! Undo and trying again on a disk that fails half way: nothing is recorded twice, nothing is left half done.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::cell::Cell;
use std::rc::Rc;

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::diary::DiaryAction;
use evenwall_app::route::Page;
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;

/// What the next appends do.
#[derive(Clone, Copy, PartialEq)]
enum Next {
    Work,
    /// Fails, and nothing is on disk.
    Fail,
    /// Fails, but the line is on disk: a sync that failed.
    FailAfter,
}

struct Shaky {
    inner: MemoryStore,
    next: Rc<Cell<Next>>,
    /// Appends that still work before `next` counts.
    good: Rc<Cell<usize>>,
}

impl Store for Shaky {
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
        if self.good.get() > 0 {
            self.good.set(self.good.get() - 1);
            return self.inner.append_piece(piece, at, noted_at, facts);
        }
        match self.next.get() {
            Next::Work => self.inner.append_piece(piece, at, noted_at, facts),
            Next::Fail => Err(StoreError("The disk is full.".into())),
            Next::FailAfter => {
                self.inner.append_piece(piece, at, noted_at, facts)?;
                Err(StoreError("The disk did not confirm.".into()))
            }
        }
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

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
}

fn id(n: usize) -> PieceId {
    PieceId::new(&format!("k{n}")).unwrap()
}

struct Shop {
    app: App,
    next: Rc<Cell<Next>>,
    good: Rc<Cell<usize>>,
}

fn shop() -> Shop {
    let mut inner = MemoryStore::default();
    for n in 0..3 {
        inner
            .append_piece(&id(n), now(), now(), vec![PieceFact::Created])
            .unwrap();
    }
    let (next, good) = (Rc::new(Cell::new(Next::Work)), Rc::new(Cell::new(0)));
    let store = Shaky {
        inner,
        next: next.clone(),
        good: good.clone(),
    };
    let app = App::open(Box::new(store), false, now()).unwrap();
    Shop { app, next, good }
}

fn note(app: &mut App, text: &str) {
    app.apply(Action::Open(Page::Diary(id(0))), now());
    app.apply(Action::Diary(DiaryAction::EditNote(text.into())), now());
    app.apply(Action::Diary(DiaryAction::AddNote), now());
}

fn notes(app: &App, n: usize) -> usize {
    let piece = app.piece(&id(n)).unwrap();
    let counts = |e: &&evenwall_piece::diary::DiaryEntry| {
        !e.retracted && matches!(e.fact, PieceFact::Note(_))
    };
    piece.diary.iter().filter(counts).count()
}

#[test]
fn what_stands_on_disk_after_a_failed_sync_is_not_written_twice() {
    let mut s = shop();
    s.next.set(Next::FailAfter);
    note(&mut s.app, "Rim looks sound");
    assert!(s.app.save_error().is_some());
    assert_eq!(notes(&s.app, 0), 1, "what is on disk is shown");
    s.next.set(Next::Work);
    s.app.apply(Action::TryAgain, now());
    assert!(s.app.save_error().is_none());
    assert_eq!(notes(&s.app, 0), 1);
    s.app.apply(Action::Undo, now());
    assert_eq!(notes(&s.app, 0), 0, "and it can be undone");
}

#[test]
fn a_failed_write_that_left_nothing_is_written_once_when_tried_again() {
    let mut s = shop();
    s.next.set(Next::Fail);
    note(&mut s.app, "Rim looks sound");
    assert_eq!(notes(&s.app, 0), 0);
    s.next.set(Next::Work);
    s.app.apply(Action::TryAgain, now());
    assert_eq!(notes(&s.app, 0), 1);
}

#[test]
fn an_undo_that_failed_goes_on_when_tried_again() {
    let mut s = shop();
    note(&mut s.app, "one");
    s.next.set(Next::Fail);
    s.app.apply(Action::Undo, now());
    assert!(s.app.save_error().is_some());
    assert_eq!(notes(&s.app, 0), 1);
    s.next.set(Next::Work);
    s.app.apply(Action::TryAgain, now());
    assert_eq!(notes(&s.app, 0), 0);
    s.good.set(0);
    s.app.apply(Action::Redo, now());
    assert_eq!(notes(&s.app, 0), 1);
}
