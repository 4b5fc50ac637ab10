//! Promises of the bag round and the weigh round.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_today;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::numbers::keypad::Key;
use evenwall_app::route::Page;
use evenwall_app::today::{BagAction, Seen, TodayAction, WeighAction};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::BagFeel;
use support_today::{Hands, Shelf, id, look};

fn bags(n: usize) -> Hands {
    let shelf = Shelf::new();
    for n in 1..=n {
        shelf.bag(&format!("K{n:02}"), 3);
    }
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::BagRound));
    hands
}

fn bag(hands: &mut Hands, action: BagAction) {
    hands.today(TodayAction::Bag(action));
}

fn on_screen(hands: &Hands) -> (String, String) {
    let view = hands.app.bag_round_view(hands.now());
    (view.mark, view.progress)
}

fn shown(mark: &str, progress: &str) -> (String, String) {
    (mark.into(), progress.into())
}

#[test]
fn a_second_touch_never_lands_on_the_next_bag() {
    let mut hands = bags(3);
    assert_eq!(on_screen(&hands), shown("K01", "1 of 3"));
    bag(&mut hands, BagAction::Answer(BagFeel::Wet));
    assert_eq!(on_screen(&hands), shown("K02", "2 of 3"));
    hands.wait(Duration::milliseconds(699));
    bag(&mut hands, BagAction::Answer(BagFeel::Wet));
    bag(&mut hands, BagAction::Skip);
    bag(&mut hands, BagAction::CantFind);
    bag(&mut hands, BagAction::AskAllDamp);
    bag(&mut hands, BagAction::Tick(Seen::Mould));
    assert!(hands.app.question().is_none());
    assert_eq!(on_screen(&hands), shown("K02", "2 of 3"));
    assert!(hands.piece("K02").looks.is_empty());
    hands.wait(Duration::milliseconds(1));
    bag(&mut hands, BagAction::Answer(BagFeel::Damp));
    assert_eq!(on_screen(&hands), shown("K03", "3 of 3"));
    assert_eq!(hands.piece("K02").looks.len(), 1);
    // A clock set back never locks for long.
    hands.wait(Duration::hours(-1));
    bag(&mut hands, BagAction::Answer(BagFeel::Damp));
    assert!(hands.app.bag_round_view(hands.now()).ended);
}

#[test]
fn undo_goes_back_to_the_bag_and_a_second_touch_on_it_takes_nothing_more_back() {
    let mut hands = bags(4);
    bag(&mut hands, BagAction::Tick(Seen::Crack));
    let before = hands.app.bag_round_view(hands.now());
    bag(&mut hands, BagAction::Answer(BagFeel::Wet));
    hands.wait(Duration::seconds(1));
    let second = hands.app.bag_round_view(hands.now());
    bag(&mut hands, BagAction::Skip);
    assert_eq!(on_screen(&hands).0, "K03");
    bag(&mut hands, BagAction::Undo);
    assert_eq!(hands.app.bag_round_view(hands.now()), second);
    bag(&mut hands, BagAction::Undo);
    assert_eq!(on_screen(&hands).0, "K02", "a second touch is too soon");
    hands.wait(Duration::seconds(1));
    bag(&mut hands, BagAction::Undo);
    assert_eq!(hands.app.bag_round_view(hands.now()), before);
    assert!(hands.piece("K01").looks.is_empty());
    hands.wait(Duration::seconds(1));
    bag(&mut hands, BagAction::Undo);
    assert_eq!(on_screen(&hands).0, "K01", "there is no more to undo");
}

#[test]
fn all_damp_is_asked_once_recorded_for_the_rest_and_undone_in_one_step() {
    let mut hands = bags(5);
    bag(&mut hands, BagAction::Answer(BagFeel::Nothing));
    hands.wait(Duration::seconds(1));
    let before = hands.app.bag_round_view(hands.now());
    assert_eq!(before.all_damp, "All damp (4)");
    bag(&mut hands, BagAction::AskAllDamp);
    assert_eq!(hands.app.question().unwrap().title, "4 bags damp?");
    assert_eq!(hands.app.bag_round_view(hands.now()), before);
    hands.choose("All damp");
    let view = hands.app.bag_round_view(hands.now());
    assert!(view.ended);
    let counts: Vec<_> = view
        .counts
        .iter()
        .map(|c| (c.text.as_str(), c.value.as_str()))
        .collect();
    assert_eq!(counts, [("Damp", "4"), ("Nothing", "1")]);
    let to_do: Vec<_> = view
        .to_do
        .iter()
        .map(|c| (c.text.as_str(), c.value.as_str()))
        .collect();
    assert_eq!(
        to_do,
        [
            ("Turn inside out, close", "K02, K03, K04, K05"),
            ("Open these necks", "K01")
        ]
    );
    assert_eq!(view.undo_said, "4 bags: damp");
    hands.wait(Duration::seconds(1));
    bag(&mut hands, BagAction::Undo);
    assert_eq!(hands.app.bag_round_view(hands.now()), before);
    for mark in ["K02", "K03", "K04", "K05"] {
        assert!(hands.piece(mark).looks.is_empty());
    }
    assert_eq!(hands.piece("K01").looks.len(), 1);
    hands.no_word_is_absent();
}

#[test]
fn all_damp_on_a_full_disk_is_tried_again_without_recording_twice() {
    let mut hands = bags(3);
    bag(&mut hands, BagAction::AskAllDamp);
    hands.fail(true);
    hands.choose("All damp");
    assert!(hands.app.save_error().is_some());
    assert_eq!(on_screen(&hands), shown("K01", "1 of 3"));
    hands.fail(false);
    hands.act(Action::TryAgain);
    hands.act(Action::TryAgain);
    for mark in ["K01", "K02", "K03"] {
        assert_eq!(hands.piece(mark).looks.len(), 1, "{mark}");
    }
    assert!(hands.app.bag_round_view(hands.now()).ended);
}

#[test]
fn what_is_missing_skipped_or_cracked_stands_at_the_end() {
    let shelf = Shelf::new();
    for mark in ["K01", "K02", "K03", "K04"] {
        shelf.bag(mark, 3);
    }
    shelf
        .bag("M01", 6)
        .line("M01", 2, vec![PieceFact::NotFound]);
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::BagRound));
    bag(&mut hands, BagAction::CantFind);
    hands.wait(Duration::seconds(1));
    bag(&mut hands, BagAction::Skip);
    hands.wait(Duration::seconds(1));
    bag(&mut hands, BagAction::Tick(Seen::Crack));
    bag(&mut hands, BagAction::Answer(BagFeel::Wet));
    hands.wait(Duration::seconds(1));
    bag(&mut hands, BagAction::Tick(Seen::Mould));
    bag(&mut hands, BagAction::Answer(BagFeel::Damp));
    hands.wait(Duration::seconds(1));
    let view = hands.app.bag_round_view(hands.now());
    let to_do: Vec<_> = view
        .to_do
        .iter()
        .map(|c| (c.text.as_str(), c.value.as_str(), c.piece.as_str()))
        .collect();
    assert_eq!(
        to_do,
        [
            ("Turn inside out, close", "K03", ""),
            ("Take out, brush, air", "K04", ""),
            ("Note the crack", "K03", "k03"),
            ("Look for these", "M01, K01", "")
        ]
    );
    assert!(hands.piece("K01").not_found.is_some());
    assert_eq!(view.again, "Look at those now");
    bag(&mut hands, BagAction::Again);
    assert_eq!(on_screen(&hands), shown("K02", "4 of 4"));
    hands.act(Action::Back);
    hands.act(Action::Open(Page::BagRound));
    assert_eq!(on_screen(&hands), shown("K02", "1 of 1"), "a new round");
    hands.no_word_is_absent();
}

#[test]
fn a_bag_shows_where_it_is_and_how_it_felt() {
    let shelf = Shelf::new();
    shelf.bag("K01", 9).line("K01", 4, vec![look(BagFeel::Wet)]);
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::BagRound));
    let view = hands.app.bag_round_view(hands.now());
    assert_eq!(view.wood, "Ash");
    assert_eq!(view.stands, "In the bag, day 9. Last wet, 4 days ago");
    assert_eq!(view.late, "2 days late");
    assert_eq!(view.all_damp, "", "one bag is no rest");
    assert_eq!(view.answers[0].note, "turn it · Sat");
    hands.no_word_is_absent();
}

fn scale() -> Hands {
    let shelf = Shelf::new();
    for (mark, g) in [("S01", 828.0), ("S02", 640.0), ("S03", 910.0)] {
        shelf.piece(mark, "cherry", Stage::Settle, 60).line(
            mark,
            14,
            vec![PieceFact::Weighed {
                mass_g: Measure::plain(g),
                tare_g: if mark == "S02" { 25.0 } else { 0.0 },
            }],
        );
    }
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::WeighRound));
    hands
}

fn key(hands: &mut Hands, key: Key) {
    hands.today(TodayAction::Weigh(WeighAction::Key(key)));
}

fn types(hands: &mut Hands, text: &str) {
    for c in text.chars() {
        key(hands, Key::Char(c));
    }
    key(hands, Key::Enter);
}

fn states(hands: &Hands) -> Vec<(String, &'static str, String)> {
    let view = hands.app.weigh_round_view(hands.now());
    view.rows
        .into_iter()
        .map(|r| (r.mark, r.state, r.weight))
        .collect()
}

#[test]
fn a_scale_that_types_moves_from_row_to_row() {
    let mut hands = scale();
    let view = hands.app.weigh_round_view(hands.now());
    assert_eq!(view.of, "S01 Cherry");
    assert_eq!(view.of_last, "828\u{a0}g, 14 days ago");
    types(&mut hands, "820 g");
    assert_eq!(hands.said(), "S01: 820\u{a0}g");
    assert_eq!(
        states(&hands)[..2],
        [
            ("S01".into(), "done", "820\u{a0}g".into()),
            ("S02".into(), "now", String::new())
        ]
    );
    let row = &hands.app.weigh_round_view(hands.now()).rows[0];
    assert_eq!(row.change, "\u{2212}8\u{a0}g");
    // Weighed with the tare of last time: 638 less 25, after 640 less 25.
    let view = hands.app.weigh_round_view(hands.now());
    assert_eq!(
        (view.tare.as_str(), view.tare_on),
        ("less 25\u{a0}g tare", true)
    );
    types(&mut hands, "638");
    let w = hands.piece("S02").weighings.last().unwrap().clone();
    assert_eq!(
        (w.mass_g.value, w.tare_g, w.mass_g.typed.as_str()),
        (638.0, 25.0, "638")
    );
    hands.today(TodayAction::Weigh(WeighAction::Skip));
    let view = hands.app.weigh_round_view(hands.now());
    assert_eq!(
        (view.ended.as_str(), view.progress.as_str()),
        ("2 pieces weighed", "2 of 3")
    );
    hands.no_word_is_absent();
}

#[test]
fn a_weight_that_drying_does_not_explain_is_asked_about_before_it_is_recorded() {
    let mut hands = scale();
    types(&mut hands, "880");
    let question = hands.app.question().unwrap().clone();
    assert_eq!(question.title, "S01 is heavier than last time");
    assert!(
        question.text.contains("Is the bag still on?"),
        "{question:?}"
    );
    assert_eq!(hands.piece("S01").weighings.len(), 1);
    hands.choose("Type it again");
    assert_eq!(states(&hands)[0].1, "now");
    types(&mut hands, "880");
    hands.choose("Record 880\u{a0}g");
    assert_eq!(hands.piece("S01").weighings.len(), 2);
    assert_eq!(states(&hands)[1].1, "now");
    hands.no_word_is_absent();
}

#[test]
fn what_cannot_be_a_weight_is_said_in_a_sentence_and_nothing_is_recorded() {
    let mut hands = scale();
    for text in ["nonsense", "-4", "0", "99999999", "12 mm", "1 2 3 4"] {
        types(&mut hands, text);
        let view = hands.app.weigh_round_view(hands.now());
        assert!(view.error.len() > 20, "{text}: {}", view.error);
        assert!(hands.app.question().is_none(), "{text}");
        assert_eq!(view.typed, text, "what was typed is kept");
        key(&mut hands, Key::Clear);
    }
    // A comma may part thousands.
    types(&mut hands, "1,250");
    assert!(hands.app.question().is_some());
    hands.act(Action::CloseQuestion);
    assert_eq!(hands.piece("S01").weighings.len(), 1);
    hands.today(TodayAction::Weigh(WeighAction::Pick(id("S02"))));
    types(&mut hands, "24");
    let error = hands.app.weigh_round_view(hands.now()).error;
    assert!(error.contains("25\u{a0}g"), "{error}");
    hands.today(TodayAction::Weigh(WeighAction::Tare));
    assert!(!hands.app.weigh_round_view(hands.now()).tare_on);
    hands.no_word_is_absent();
}

#[test]
fn undo_in_the_weigh_round_goes_back_to_the_piece() {
    let mut hands = scale();
    let before = hands.app.weigh_round_view(hands.now());
    types(&mut hands, "820");
    let after = hands.app.weigh_round_view(hands.now());
    hands.today(TodayAction::Weigh(WeighAction::Undo));
    assert_eq!(hands.app.weigh_round_view(hands.now()), before);
    hands.act(Action::Redo);
    assert_eq!(hands.app.weigh_round_view(hands.now()), after);
    hands.act(Action::Undo);
    assert_eq!(hands.app.weigh_round_view(hands.now()), before);
    hands.today(TodayAction::Weigh(WeighAction::Skip));
    hands.today(TodayAction::Weigh(WeighAction::Undo));
    assert_eq!(hands.app.weigh_round_view(hands.now()), before);
}

#[test]
fn a_weight_that_could_not_be_kept_is_tried_again_as_it_was_meant() {
    let mut hands = scale();
    hands.fail(true);
    types(&mut hands, "820");
    assert!(hands.app.save_error().is_some());
    hands.fail(false);
    hands.act(Action::TryAgain);
    assert_eq!(hands.app.save_error(), None);
    assert_eq!(hands.piece("S01").weighings.len(), 2);
    assert_eq!(hands.piece("S01").weighings[1].mass_g.typed, "820");
    assert_eq!(states(&hands)[0].1, "done");
}

#[test]
fn pounds_have_their_key_in_the_weigh_round_too() {
    let shelf = Shelf::new();
    shelf.piece("S01", "cherry", Stage::Settle, 60).line(
        "S01",
        14,
        vec![PieceFact::Weighed {
            mass_g: Measure::plain(828.0),
            tare_g: 0.0,
        }],
    );
    let grams = shelf.open();
    assert_eq!(grams.app.weigh_round_view(grams.now()).pounds, "");
    shelf.device(r#"{"mass":"pound-ounce"}"#);
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::WeighRound));
    let view = hands.app.weigh_round_view(hands.now());
    assert_eq!((view.pounds.as_str(), view.can_pounds), ("lb", false));
    key(&mut hands, Key::Digit(1));
    assert!(hands.app.weigh_round_view(hands.now()).can_pounds);
    hands.today(TodayAction::Weigh(WeighAction::Pounds));
    for digit in [1, 3] {
        key(&mut hands, Key::Digit(digit));
    }
    assert_eq!(hands.app.weigh_round_view(hands.now()).typed, "1 lb 13");
    key(&mut hands, Key::Enter);
    // 1 lb 13 oz is 822.1 g.
    let weights = &hands.piece("S01").weighings;
    assert!((weights[1].net_g() - 822.14).abs() < 0.01, "{weights:?}");
}
