//! Promises of the form for a new piece: a mark is enough, nothing typed is lost, and undo takes all of it back.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::cell::Cell;
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::new_piece::{FieldBox, NewPieceAction};
use evenwall_app::route::{Page, Tab};
use evenwall_app::store::{Loaded, MemoryStore, Store, StoreError};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

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

fn now() -> Moment {
    chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap()
}

struct Bench {
    app: App,
    left: Rc<Cell<usize>>,
}

impl Bench {
    fn new() -> Self {
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
    fn open(&mut self) {
        self.app.apply(Action::Open(Page::NewPiece), now());
    }
    fn act(&mut self, action: NewPieceAction) {
        self.app.apply(Action::NewPiece(action), now());
    }
    fn write(&mut self, field: DetailField, text: &str) {
        self.act(NewPieceAction::Typed(field, text.into()));
    }
    fn save(&mut self) {
        self.act(NewPieceAction::Save);
    }
    fn only(&self) -> &Piece {
        assert_eq!(self.app.pieces().count(), 1);
        self.app.pieces().next().unwrap()
    }
    fn marks(&self) -> Vec<String> {
        let mut marks: Vec<String> = self.app.pieces().map(|p| p.mark().to_owned()).collect();
        marks.sort();
        marks
    }
    fn refusal(&self) -> &str {
        &self.app.question().expect("it was refused").text
    }
}

#[test]
fn a_mark_alone_makes_a_piece_and_opens_it() {
    let mut b = Bench::new();
    assert_eq!(b.app.new_piece_view(now()).mark.text, "A01");
    b.save();
    let piece = b.only();
    assert_eq!(piece.mark(), "A01");
    assert_eq!(piece.stage(), Stage::Shape);
    assert_eq!(piece.created, Some(now()));
    let page = Page::Piece(piece.id.clone());
    assert_eq!(b.app.route().pages, [page]);
    assert_eq!(b.app.chrome_view(now()).undo.unwrap().said, "A01 entered");
    assert_eq!(b.app.words().problems(), []);
}

#[test]
fn everything_that_was_said_stands_in_one_line() {
    let mut b = Bench::new();
    for (field, text) in [
        (DetailField::Mark, "K07"),
        (DetailField::Wood, "white ash"),
        (DetailField::Felled, "feb 2026"),
        (DetailField::Source, "the hedge at Low Field"),
        (DetailField::Diameter, "180"),
        (DetailField::Height, "7 1/2 in"),
        (DetailField::WallWanted, "9,5"),
        (DetailField::Place, "top shelf"),
        (DetailField::Notes, "one\ntwo"),
    ] {
        b.write(field, text);
    }
    b.act(NewPieceAction::Chose(
        DetailField::Form,
        "hollow-form".into(),
    ));
    b.act(NewPieceAction::Chose(DetailField::Pith, "wall".into()));
    b.act(NewPieceAction::Chose(DetailField::Pith, "outside".into()));
    b.act(NewPieceAction::Chose(DetailField::Grain, "side".into()));
    b.act(NewPieceAction::Chose(DetailField::Grain, "side".into()));
    b.act(NewPieceAction::Stage(Stage::Bag));
    b.act(NewPieceAction::Method(Method::Paper));
    b.act(NewPieceAction::Since("1 March".into()));
    b.save();
    let piece = b.only();
    let d = &piece.details;
    assert_eq!(d.text(DetailField::Wood), Some("white-ash"));
    assert_eq!(d.text(DetailField::Felled), Some("2026-02"));
    assert_eq!(d.text(DetailField::Form), Some("hollow-form"));
    assert_eq!(d.text(DetailField::Pith), Some("outside"));
    assert_eq!(d.text(DetailField::Grain), None);
    assert_eq!(d.text(DetailField::Notes), Some("one\ntwo"));
    assert_eq!(d.mm(DetailField::Height), Some(190.5));
    assert_eq!(d.mm(DetailField::WallWanted), Some(9.5));
    match d.get(DetailField::WallWanted) {
        Some(DetailValue::Length(m)) => assert_eq!(m.typed, "9,5"),
        other => panic!("{other:?}"),
    }
    assert_eq!(piece.method, Method::Paper);
    assert_eq!(piece.visits.len(), 1);
    assert_eq!(piece.stage(), Stage::Bag);
    let since = piece.stage_since().unwrap();
    assert_eq!(since.date_naive().to_string(), "2026-03-01");
    let lines: std::collections::BTreeSet<_> =
        piece.diary.iter().map(|e| e.entry.line.clone()).collect();
    assert_eq!(lines.len(), 1);
    assert!(piece.diary.iter().all(|e| e.noted_at == now()));
}

#[test]
fn undo_takes_the_piece_back_and_redo_brings_it_again() {
    let mut b = Bench::new();
    let before = b.app.pieces_view(now());
    b.write(DetailField::Wood, "yew");
    b.save();
    let after = b.app.pieces_view(now());
    b.app.apply(Action::Undo, now());
    assert_eq!(b.app.pieces_view(now()), before);
    assert_eq!(b.app.route().pages, []);
    b.app.apply(Action::Redo, now());
    let mut again = b.app.pieces_view(now());
    // Its page was left when it was taken back.
    again.cards[0].open = true;
    assert_eq!(again, after);
}

#[test]
fn a_batch_counts_on_and_is_undone_together() {
    let mut b = Bench::new();
    b.write(DetailField::Mark, "K08");
    b.write(DetailField::Wood, "beech");
    for _ in 0..9 {
        b.act(NewPieceAction::Count(1));
    }
    let view = b.app.new_piece_view(now());
    assert_eq!(view.count, "10");
    assert!(view.count_note.starts_with("K08, K09, K10"));
    assert_eq!(view.save, "Save 10 pieces");
    b.save();
    assert_eq!(b.marks().len(), 10);
    assert_eq!(b.marks()[9], "K17");
    assert_eq!(
        b.app.chrome_view(now()).undo.unwrap().said,
        "10 pieces entered: K08 to K17"
    );
    b.app.apply(Action::Undo, now());
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn a_batch_is_never_less_than_one_nor_more_than_twenty() {
    let mut b = Bench::new();
    b.act(NewPieceAction::Count(-1));
    assert!(!b.app.new_piece_view(now()).can_less);
    b.act(NewPieceAction::Count(i32::MAX));
    let view = b.app.new_piece_view(now());
    assert_eq!((view.count.as_str(), view.can_more), ("20", false));
    b.write(DetailField::Mark, "999999999999");
    b.save();
    assert!(b.refusal().contains("20 marks"), "{}", b.refusal());
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn a_full_disk_loses_nothing_and_trying_again_enters_nothing_twice() {
    let mut b = Bench::new();
    b.write(DetailField::Mark, "K08");
    b.write(DetailField::Notes, "from the storm");
    b.act(NewPieceAction::Count(3));
    b.left.set(2);
    b.save();
    assert_eq!(b.marks(), ["K08", "K09"]);
    assert!(b.app.save_error().is_some());
    let view = b.app.new_piece_view(now());
    assert_eq!((view.mark.text.as_str(), view.count.as_str()), ("K10", "2"));
    assert_eq!(view.notes.text, "from the storm");
    // Still full.
    b.left.set(0);
    b.app.apply(Action::TryAgain, now());
    assert_eq!(b.marks(), ["K08", "K09"]);
    b.left.set(10);
    b.app.apply(Action::TryAgain, now());
    assert_eq!(b.marks(), ["K08", "K09", "K10", "K11"]);
    assert!(b.app.save_error().is_none());
    let noted = |p: &Piece| p.details.text(DetailField::Notes) == Some("from the storm");
    assert!(b.app.pieces().all(noted));
    b.app.apply(Action::Undo, now());
    assert_eq!(b.marks(), ["K08", "K09"]);
    b.app.apply(Action::Undo, now());
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn a_mark_in_use_is_refused_while_typing_and_one_upside_down_only_warned_of() {
    let mut b = Bench::new();
    b.write(DetailField::Mark, "K07");
    b.write(DetailField::Wood, "white ash");
    b.save();
    b.open();
    assert_eq!(b.app.new_piece_view(now()).mark.text, "K08");
    b.write(DetailField::Mark, "k07 ");
    let view = b.app.new_piece_view(now());
    assert_eq!(
        view.mark.error,
        "k07 is in use: White ash, Shape. Choose another mark."
    );
    b.save();
    assert_eq!(b.refusal(), view.mark.error);
    assert_eq!(b.app.pieces().count(), 1);
    b.app.apply(Action::CloseQuestion, now());
    b.write(DetailField::Mark, "");
    assert!(b.app.new_piece_view(now()).mark.error.contains("needed"));
    b.write(DetailField::Mark, "06");
    let view = b.app.new_piece_view(now());
    assert_eq!(view.mark.error, "");
    assert!(view.mark_warning.contains("90"), "{}", view.mark_warning);
    b.save();
    assert_eq!(b.marks(), ["06", "K07"]);
}

#[test]
fn bad_input_is_refused_with_a_sentence_and_nothing_is_recorded() {
    for (field, typed) in [
        (DetailField::Diameter, "wide"),
        (DetailField::Height, "-20"),
        (DetailField::WallWanted, "118"),
        (DetailField::Felled, "next spring"),
        (DetailField::Mouth, "1e9"),
    ] {
        let mut b = Bench::new();
        b.write(field, typed);
        let view = b.app.new_piece_view(now());
        let boxes: Vec<&FieldBox> = view
            .log_fields
            .iter()
            .chain(&view.size_fields)
            .chain(&view.wall_fields)
            .collect();
        let shown = boxes.iter().find(|f| f.key == field.key()).unwrap();
        assert!(!shown.error.is_empty(), "{typed}");
        assert_eq!(shown.text, typed);
        assert_eq!(shown.ways.is_empty(), typed != "118");
        b.save();
        assert!(b.refusal().contains(&shown.error), "{}", b.refusal());
        assert_eq!(b.app.pieces().count(), 0);
        assert!(b.app.new_piece_view(now()).more_open);
    }
    let mut b = Bench::new();
    b.act(NewPieceAction::Since("tomorrow week".into()));
    b.save();
    assert!(b.refusal().contains("cannot be read as a day"));
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn another_from_the_same_log_shares_wood_log_and_sizes_but_not_notes() {
    let mut b = Bench::new();
    b.write(DetailField::Mark, "K07");
    b.write(DetailField::Wood, "white ash");
    b.write(DetailField::Felled, "2026-02-20");
    b.write(DetailField::Diameter, "7 1/4 in");
    b.write(DetailField::Notes, "a knot low down");
    b.write(DetailField::Place, "bench");
    b.save();
    let first = b.only().id.clone();
    let before = b.app.pieces_view(now());
    b.act(NewPieceAction::AnotherLike(first.clone()));
    let view = b.app.new_piece_view(now());
    assert_eq!(view.subtitle, "From the same log as K07");
    assert_eq!(view.mark.text, "K08");
    assert_eq!(view.notes.text, "");
    assert_eq!(view.size_fields[0].text, "7 1/4 in");
    // Opening the form alone records nothing.
    assert_eq!(
        b.app.piece(&first).unwrap().details.text(DetailField::Log),
        None
    );
    b.save();
    let second = b.app.pieces().find(|p| p.id != first).unwrap();
    let first = b.app.piece(&first).unwrap();
    assert_eq!(second.mark(), "K08");
    for field in [
        DetailField::Wood,
        DetailField::Felled,
        DetailField::Log,
        DetailField::Diameter,
    ] {
        assert_eq!(second.details.get(field), first.details.get(field));
        assert!(first.details.get(field).is_some(), "{field:?}");
    }
    assert_eq!(first.details.text(DetailField::Log), Some("Log of K07"));
    assert_eq!(second.details.text(DetailField::Notes), None);
    assert_eq!(second.details.text(DetailField::Place), None);
    b.app.apply(Action::Undo, now());
    let mut undone = b.app.pieces_view(now());
    // The page of the first piece, from which the second was made, is still open.
    undone.cards[0].open = before.cards[0].open;
    assert_eq!(undone, before);
    let gone = PieceId::new("nowhere").unwrap();
    b.act(NewPieceAction::AnotherLike(gone));
    assert!(b.refusal().contains("no longer there"));
}

#[test]
fn leaving_asks_only_where_something_was_typed() {
    let mut b = Bench::new();
    b.act(NewPieceAction::Leave);
    assert!(b.app.question().is_none());
    assert_eq!(b.app.route().pages, []);
    b.open();
    b.write(DetailField::Notes, "half a thought");
    b.act(NewPieceAction::Leave);
    assert_eq!(b.app.question().unwrap().choices[0].label, "Keep editing");
    b.app.apply(Action::Choose(0), now());
    assert_eq!(b.app.route().page(), Some(&Page::NewPiece));
    // Gone off to another page by the rail: still there on coming back.
    b.app.apply(Action::GoTab(Tab::Today), now());
    b.open();
    assert_eq!(b.app.new_piece_view(now()).notes.text, "half a thought");
    b.act(NewPieceAction::Leave);
    b.app.apply(Action::Choose(1), now());
    assert_eq!(b.app.route().pages, []);
    b.open();
    assert_eq!(b.app.new_piece_view(now()).notes.text, "");
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn woods_are_offered_as_typed_and_the_last_used_first() {
    let mut b = Bench::new();
    let texts = |b: &Bench| -> Vec<String> {
        let view = b.app.new_piece_view(now());
        view.woods.into_iter().map(|w| w.text).collect()
    };
    assert_eq!(texts(&b), ["Don't know"]);
    b.write(DetailField::Wood, "frax");
    assert!(texts(&b).contains(&"White ash".to_owned()));
    b.act(NewPieceAction::Wood("white-ash".into()));
    let view = b.app.new_piece_view(now());
    assert_eq!(view.wood.text, "White ash");
    assert_eq!(view.wood.note, "Fraxinus americana");
    b.save();
    b.open();
    b.write(DetailField::Wood, "neighbour's plum");
    assert!(
        b.app
            .new_piece_view(now())
            .wood
            .note
            .contains("as you typed it")
    );
    b.save();
    b.open();
    let offered = texts(&b);
    assert!(offered.contains(&"White ash".to_owned()), "{offered:?}");
    assert!(offered.contains(&"Neighbour's plum".to_owned()));
    b.act(NewPieceAction::Wood("neighbour's plum".into()));
    b.act(NewPieceAction::Wood(String::new()));
    assert_eq!(b.app.new_piece_view(now()).wood.text, "");
}

#[test]
fn a_usual_size_fills_diameter_and_height_in_the_units_of_the_device() {
    for (settings, diameter) in [("{}", "130"), (r#"{"length":"inch-fraction"}"#, "5")] {
        let mut store = MemoryStore::default();
        store.save_device_settings(settings).unwrap();
        let mut app = App::open(Box::new(store), false, now()).unwrap();
        app.apply(Action::NewPiece(NewPieceAction::Size(1)), now());
        let view = app.new_piece_view(now());
        assert_eq!(view.size_fields[0].text, diameter);
        assert!(view.sizes.choices[1].chosen && !view.sizes.choices[0].chosen);
        assert_eq!(view.size_fields[0].error, "");
        app.apply(Action::NewPiece(NewPieceAction::Size(99)), now());
        assert_eq!(app.new_piece_view(now()).size_fields[0].text, diameter);
    }
}

#[test]
fn the_outlines_are_drawn_in_the_sizes_typed() {
    let mut b = Bench::new();
    let round = b.app.new_piece_view(now()).outlines;
    assert_eq!(round.len(), 5);
    assert!(round.iter().any(|o| o.usual) && round.iter().all(|o| !o.chosen));
    b.write(DetailField::Diameter, "120");
    b.write(DetailField::Height, "300");
    b.act(NewPieceAction::Chose(DetailField::Outline, "tall".into()));
    let tall = b.app.new_piece_view(now()).outlines;
    assert!(tall[4].chosen && tall.iter().all(|o| !o.usual));
    assert!(tall[0].drawing.height > round[0].drawing.height);
}
