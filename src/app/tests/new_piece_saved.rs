//! Promises of entering a new piece: a mark is enough, a full disk enters nothing twice, and undo takes all of it back.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_new_piece;

use evenwall_app::action::Action;
use evenwall_app::new_piece::NewPieceAction;
use evenwall_app::route::Page;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;
use support_new_piece::{Bench, now};

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
