//! Promises of going away, coming back, and catching up after a silence.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_today;

use evenwall_app::action::Action;
use evenwall_app::piece::PieceAction;
use evenwall_app::route::Page;
use evenwall_app::today::view::Shape;
use evenwall_app::today::{AwayAction, AwayView, BackChoice, TodayAction};
use evenwall_piece::agenda::next_look;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Method};
use support_today::{Hands, Shelf, id, look};

fn away(hands: &mut Hands, action: AwayAction) {
    hands.today(TodayAction::Away(action));
}

fn view(hands: &Hands) -> AwayView {
    hands.app.away_view(hands.now())
}

fn acts(hands: &Hands) -> Vec<(String, bool)> {
    view(hands)
        .act
        .into_iter()
        .map(|r| (r.text, r.done))
        .collect()
}

fn leaving() -> Hands {
    let shelf = Shelf::new();
    shelf.bag("K01", 9).line("K01", 1, vec![look(BagFeel::Wet)]);
    shelf
        .bag("K02", 9)
        .line("K02", 1, vec![look(BagFeel::Damp)]);
    shelf.piece("S01", "cherry", Stage::Settle, 30);
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::Away));
    hands
}

#[test]
fn before_leaving_what_was_done_is_ticked_recorded_and_can_be_undone() {
    let mut hands = leaving();
    assert_eq!(view(&hands).leave, "Away until Thu 19");
    let list = [
        ("K01: put it in paper".to_owned(), false),
        ("K02: open the neck".to_owned(), false),
    ];
    assert_eq!(acts(&hands), list);
    let before = view(&hands);
    away(&mut hands, AwayAction::Tick(id("K02")));
    assert_eq!(hands.piece("K02").stage(), Stage::Air);
    assert_eq!(acts(&hands)[1], ("K02: open the neck".to_owned(), true));
    away(&mut hands, AwayAction::Tick(id("K02")));
    away(&mut hands, AwayAction::Tick(id("K01")));
    assert_eq!(hands.piece("K01").method, Method::Paper);
    assert_eq!(acts(&hands).iter().filter(|a| a.1).count(), 2);
    hands.act(Action::Undo);
    hands.act(Action::Undo);
    assert_eq!(view(&hands), before);
    assert_eq!(hands.piece("K02").stage(), Stage::Bag);
    hands.no_word_is_absent();
}

#[test]
fn the_day_of_the_return_is_chosen_or_typed_and_nonsense_is_refused_in_a_sentence() {
    let mut hands = leaving();
    away(&mut hands, AwayAction::Choose(BackChoice::Three));
    assert_eq!(view(&hands).leave, "Away until Sun 15");
    away(&mut hands, AwayAction::Choose(BackChoice::Typed));
    assert!(view(&hands).typing);
    for text in ["", "soon", "11 Mar", "12 Mar", "31 Feb"] {
        away(&mut hands, AwayAction::Typed(text.into()));
        away(&mut hands, AwayAction::Leave);
        assert!(view(&hands).error.len() > 10, "{text}");
        assert_eq!(view(&hands).typed, text);
        assert!(hands.app.shop().away.is_none(), "{text}");
    }
    away(&mut hands, AwayAction::Typed("11 Mar".into()));
    away(&mut hands, AwayAction::Leave);
    assert_eq!(
        view(&hands).error,
        "Wed 11 Mar is not ahead. Type a day after today."
    );
    away(&mut hands, AwayAction::Typed("20 Mar".into()));
    assert_eq!(view(&hands).error, "");
    away(&mut hands, AwayAction::Leave);
    assert_eq!(hands.said(), "Away until Fri 20");
    let (_, back) = hands.app.shop().away.unwrap();
    assert_eq!(back.to_string(), "2026-03-20");
    assert_eq!(view(&hands).am_back, "I am back");
    assert_eq!(view(&hands).leave, "");
    hands.act(Action::Back);
    let notice = hands.view().notice.unwrap();
    assert_eq!(notice.text, "Away until Fri 20");
    hands.no_word_is_absent();
}

#[test]
fn a_return_too_far_ahead_is_refused_with_the_last_day_that_is_allowed() {
    let mut hands = leaving();
    away(&mut hands, AwayAction::Choose(BackChoice::Typed));
    away(&mut hands, AwayAction::Typed("17 Apr 2027".into()));
    away(&mut hands, AwayAction::Leave);
    assert!(hands.app.shop().away.is_none());
    assert_eq!(
        view(&hands).error,
        "Sat 17 Apr 2027 is more than 400 days ahead. Type a day up to Fri 16 Apr 2027."
    );
    away(&mut hands, AwayAction::Typed("16 Apr 2027".into()));
    away(&mut hands, AwayAction::Leave);
    let (_, back) = hands.app.shop().away.unwrap();
    assert_eq!(back.to_string(), "2027-04-16");
    hands.no_word_is_absent();
}

#[test]
fn on_the_return_there_is_one_list_answered_in_place_and_nothing_is_called_late() {
    let mut hands = leaving();
    away(&mut hands, AwayAction::Choose(BackChoice::Week));
    away(&mut hands, AwayAction::Leave);
    hands.act(Action::Back);
    hands.wait(chrono::Duration::days(9));
    let notice = hands.view().notice.unwrap();
    assert_eq!(notice.text, "You are back");
    hands.act(Action::Open(Page::Away));
    away(&mut hands, AwayAction::Back);
    let rows = view(&hands).list.rows;
    assert!(rows.len() >= 2, "{rows:?}");
    assert!(rows.iter().all(|r| !r.late && r.tag.is_empty()), "{rows:?}");
    let open = rows.iter().find(|r| r.shape == Shape::Card).unwrap();
    let before = view(&hands);
    hands.today(TodayAction::Answer {
        row: open.id.clone(),
        answer: "nothing".into(),
    });
    let after = view(&hands);
    let answered = after.list.rows.iter().find(|r| r.id == open.id).unwrap();
    assert_eq!(answered.shape, Shape::Done);
    hands.act(Action::Undo);
    assert_eq!(view(&hands), before);
    hands.no_word_is_absent();
}

#[test]
fn a_bag_answered_while_away_is_next_due_by_its_rhythm_and_the_rest_is_asked_for() {
    let mut hands = leaving();
    away(&mut hands, AwayAction::Choose(BackChoice::Fortnight));
    away(&mut hands, AwayAction::Leave);
    hands.act(Action::Back);
    hands.wait(chrono::Duration::days(10));
    assert_eq!(hands.view().notice.unwrap().text, "Away until Thu 26");
    hands.act(Action::Piece(PieceAction::Looked {
        piece: id("K01"),
        feel: Some(BagFeel::Wet),
        mould: false,
        crack: false,
    }));
    let (due, other) = hands.app.with_bench(hands.now(), |bench| {
        let due = |mark| next_look(hands.piece(mark), bench).unwrap().to_string();
        (due("K01"), due("K02"))
    });
    assert_eq!((due.as_str(), other.as_str()), ("2026-03-24", "2026-03-22"));
    assert_eq!(hands.view().notice.unwrap().text, "You are back");
    hands.act(Action::Undo);
    assert_eq!(hands.view().notice.unwrap().text, "Away until Thu 26");
    hands.no_word_is_absent();
}

#[test]
fn after_months_of_silence_one_list_and_no_scolding() {
    let shelf = Shelf::new();
    shelf
        .bag("K01", 80)
        .line("K01", 70, vec![look(BagFeel::Wet)]);
    shelf.piece("A01", "beech", Stage::Air, 75);
    shelf.piece("S01", "cherry", Stage::Settle, 72);
    let mut hands = shelf.open();
    let notice = hands.view().notice.unwrap();
    assert_eq!(
        (notice.text.as_str(), notice.note.as_str(), notice.key),
        (
            "Pick up where you left off",
            "3 pieces to look at, in one list.",
            "catch-up"
        )
    );
    hands.today(TodayAction::Go("catch-up".into()));
    let page = |hands: &Hands| hands.app.catch_up_view(hands.now());
    let before = page(&hands);
    assert!(before.list.rows.iter().all(|r| r.tag.is_empty() && !r.late));
    let row = before.list.rows[0].id.clone();
    assert_eq!(row, "catch-up/look/k01");
    hands.today(TodayAction::Answer {
        row,
        answer: "nothing".into(),
    });
    // The first answer ends the silence; the list is kept up all the same.
    assert_eq!(page(&hands).list.rows.len(), 3);
    assert_eq!(page(&hands).list.rows[0].shape, Shape::Done);
    let over = page(&hands).list.rows[1].clone();
    assert_eq!(over.button.text, "Looked over");
    hands.today(TodayAction::Button {
        row: over.id,
        key: "looked".into(),
    });
    assert_eq!(page(&hands).list.rows[1].shape, Shape::Done);
    assert_eq!(hands.piece("A01").looks.len(), 1);
    hands.act(Action::Undo);
    hands.act(Action::Undo);
    assert_eq!(page(&hands), before);
    hands.no_word_is_absent();
}

#[test]
fn leaving_on_a_full_disk_can_be_tried_again() {
    let mut hands = leaving();
    let before = view(&hands);
    hands.fail(true);
    away(&mut hands, AwayAction::Leave);
    away(&mut hands, AwayAction::Tick(id("K01")));
    assert_eq!(view(&hands), before);
    assert!(hands.app.save_error().is_some());
    hands.fail(false);
    hands.act(Action::TryAgain);
    assert_eq!(hands.piece("K01").method, Method::Paper);
}
