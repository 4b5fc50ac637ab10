//! Promises of Today: what is due, answered in its place, back-dated, undone, and what the page says when nothing is.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_today;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::today::view::Shape;
use evenwall_app::today::{BackDay, Seen, TodayAction};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Room};
use support_today::{Shelf, id, ids, look};

fn weighed(g: f64) -> PieceFact {
    PieceFact::Weighed {
        mass_g: Measure::plain(g),
        tare_g: 0.0,
    }
}

fn notes(hands: &support_today::Hands) -> Vec<(String, String)> {
    let card = hands.view().list.card;
    card.answers.into_iter().map(|a| (a.text, a.note)).collect()
}

#[test]
fn the_first_bag_is_open_and_each_answer_says_what_it_does_and_when() {
    let shelf = Shelf::new();
    shelf.bag("K11", 9).line("K11", 4, vec![look(BagFeel::Wet)]);
    shelf.bag("K09", 1);
    let mut hands = shelf.open();
    let view = hands.view();
    assert_eq!(view.date, "Thursday 12 March");
    let rows = &view.list.rows;
    assert_eq!(
        ids(rows),
        [
            "overdue/head/overdue",
            "overdue/look/k11",
            "today/head/today",
            "today/look/k09"
        ]
    );
    assert_eq!(
        (rows[0].mark.as_str(), rows[0].tag.as_str()),
        ("Overdue", "1")
    );
    assert_eq!(rows[1].shape, Shape::Card);
    assert_eq!((rows[1].tag.as_str(), rows[1].late), ("2 days late", true));
    assert_eq!(rows[1].note, "In the bag, day 9");
    assert_eq!(rows[3].shape, Shape::Row);
    assert_eq!(view.list.card.question, "Inside of the bag feels");
    // Wet 2, damp 3, nothing 3 days from Thursday.
    let said = [
        ("Wet", "turn it · Sat"),
        ("Damp", "turn it · Sun"),
        ("Nothing", "neck open · Sun"),
    ]
    .map(|(a, b)| (a.to_owned(), b.to_owned()));
    assert_eq!(notes(&hands), said);
    assert_eq!(hands.app.waiting_today(hands.now()), 2);

    hands.answer("K11", "look", "wet");
    let row = hands.row("K11", "look");
    assert_eq!(row.shape, Shape::Done);
    assert_eq!(row.tag, "Wet");
    assert_eq!(row.note, "Turned inside out · next Sat 14");
    assert_eq!(
        ids(&hands.rows())[1],
        "overdue/look/k11",
        "it keeps its place"
    );
    assert_eq!(hands.open_mark(), "K09", "the next is open");
    assert_eq!(hands.said(), "K11: Wet. Turned inside out · next Sat 14");
    assert_eq!(hands.app.waiting_today(hands.now()), 1);
    hands.no_word_is_absent();
}

#[test]
fn an_answer_undone_was_never_given() {
    let shelf = Shelf::new();
    for mark in ["K07", "K09", "K11"] {
        shelf.bag(mark, 3);
    }
    let mut hands = shelf.open();
    let row = hands.row("K09", "look").id;
    hands.today(TodayAction::Row(row.clone()));
    assert_eq!(hands.open_mark(), "K09");
    hands.today(TodayAction::Tick {
        row,
        seen: Seen::Mould,
    });
    let before = hands.view();
    hands.answer("K09", "look", "damp");
    let after = hands.view();
    assert_eq!(hands.row("K09", "look").tag, "Damp, Mould");
    assert_eq!(hands.open_mark(), "K11", "the next after it");
    hands.act(Action::Undo);
    assert_eq!(hands.view(), before);
    hands.act(Action::Redo);
    assert_eq!(hands.view(), after);
    hands.act(Action::Undo);
    assert_eq!(hands.view(), before);
    assert!(hands.piece("K09").looks.is_empty());
}

#[test]
fn the_row_of_the_next_look_has_no_tick_and_no_day_of_the_look_before() {
    let shelf = Shelf::new();
    shelf.bag("K07", 3);
    let mut hands = shelf.open();
    let row = hands.row("K07", "look").id;
    hands.today(TodayAction::Tick {
        row: row.clone(),
        seen: Seen::Mould,
    });
    hands.today(TodayAction::Day {
        row: row.clone(),
        day: BackDay::Yesterday,
    });
    hands.answer("K07", "look", "damp");
    assert!(hands.piece("K07").looks.last().unwrap().mould);
    hands.wait(Duration::days(3));
    assert_eq!(hands.row("K07", "look").id, row, "late again: the same row");
    assert_eq!(hands.open_mark(), "K07");
    let card = hands.view().list.card;
    assert!(card.ticks.iter().all(|t| !t.on), "{:?}", card.ticks);
    let days: Vec<bool> = card.days.iter().map(|d| d.on).collect();
    assert!(days[0] && days[1..].iter().all(|on| !on), "{days:?}");
    hands.answer("K07", "look", "damp");
    let last = hands.piece("K07").looks.last().unwrap();
    assert!(!last.mould);
    assert_eq!(last.at.date_naive(), hands.now().date_naive());
}

#[test]
fn mould_changes_what_is_done_and_a_crack_offers_to_note_the_flaw() {
    let shelf = Shelf::new();
    shelf.bag("K07", 3);
    let mut hands = shelf.open();
    let row = hands.row("K07", "look").id;
    hands.today(TodayAction::Tick {
        row: row.clone(),
        seen: Seen::Mould,
    });
    assert_eq!(notes(&hands)[0].1, "brush it, air it · Fri");
    hands.today(TodayAction::Tick {
        row,
        seen: Seen::Crack,
    });
    hands.answer("K07", "look", "wet");
    let last = hands.piece("K07").looks.last().unwrap().clone();
    assert!(last.mould && last.crack);
    hands.choose("Note it now");
    assert_eq!(hands.app.route().page(), Some(&Page::Flaw(id("K07"), None)));
    hands.no_word_is_absent();
}

#[test]
fn did_it_yesterday_is_noted_at_yesterday_and_reckoned_from_there() {
    let shelf = Shelf::new();
    shelf.bag("K07", 9).line("K07", 5, vec![look(BagFeel::Wet)]);
    let mut hands = shelf.open();
    let row = hands.row("K07", "look").id;
    hands.today(TodayAction::More);
    let card = hands.view().list.card;
    assert!(card.more_open);
    let days: Vec<_> = card.days.iter().map(|d| (d.text.as_str(), d.on)).collect();
    assert_eq!(
        days,
        [("Today", true), ("Yesterday", false), ("2 days ago", false)]
    );
    hands.today(TodayAction::Day {
        row,
        day: BackDay::Yesterday,
    });
    assert_eq!(notes(&hands)[1].1, "turn it · Sat");
    hands.answer("K07", "look", "damp");
    let last = hands.piece("K07").looks.last().unwrap().clone();
    assert_eq!(last.at.to_rfc3339(), "2026-03-11T12:00:00+00:00");
    assert_eq!(
        hands.said(),
        "K07: Damp, yesterday. Turned inside out · next Sat 14"
    );
    assert!(!hands.view().list.card.more_open);
}

#[test]
fn a_day_before_the_last_look_is_not_offered() {
    let shelf = Shelf::new();
    shelf.bag("K07", 9).line("K07", 2, vec![look(BagFeel::Wet)]);
    let hands = shelf.open();
    let days = hands.view().list.card.days;
    let keys: Vec<_> = days.iter().map(|d| d.key).collect();
    assert_eq!(keys, ["today", "yesterday"]);
    let shelf = Shelf::new();
    shelf.bag("K08", 1);
    assert!(shelf.open().view().list.card.days.is_empty());
}

#[test]
fn an_answer_that_could_not_be_kept_leaves_the_row_open_and_can_be_tried_again() {
    let shelf = Shelf::new();
    shelf.bag("K07", 3).bag("K09", 3);
    let mut hands = shelf.open();
    let row = hands.row("K07", "look").id;
    hands.today(TodayAction::Tick {
        row,
        seen: Seen::Mould,
    });
    let before = hands.view();
    hands.fail(true);
    hands.answer("K07", "look", "wet");
    assert_eq!(hands.view(), before);
    assert!(hands.app.save_error().is_some());
    hands.fail(false);
    hands.act(Action::TryAgain);
    assert_eq!(hands.app.save_error(), None);
    let looks = &hands.piece("K07").looks;
    assert_eq!(looks.len(), 1);
    assert!(looks[0].mould);
    assert_eq!(looks[0].feel, Some(BagFeel::Wet));
    assert_eq!(hands.open_mark(), "K09");
}

#[test]
fn nothing_due_says_what_is_next_and_an_empty_shelf_how_to_begin() {
    let hands = Shelf::new().open();
    let view = hands.view();
    assert_eq!(view.first_time.as_ref().unwrap().action, "New piece");
    assert_eq!((view.away.as_str(), view.nothing_due.as_str()), ("", ""));
    assert!(view.list.rows.is_empty() && view.climate.is_none());

    let shelf = Shelf::new();
    shelf
        .piece("B04", "beech", Stage::Settle, 60)
        .line("B04", 12, vec![weighed(700.0)]);
    let hands = shelf.open();
    let view = hands.view();
    assert_eq!(view.nothing_due, "Nothing due. Next: B04, weigh, Sat 14.");
    let coming = hands.row("B04", "weigh");
    assert_eq!(coming.shape, Shape::Coming);
    assert_eq!(
        (coming.weekday.as_str(), coming.day.as_str()),
        ("Sat", "14")
    );
    let shelf = Shelf::new();
    shelf.piece("B05", "beech", Stage::Shape, 60);
    assert_eq!(shelf.open().view().nothing_due, "Nothing due.");
    hands.no_word_is_absent();
}

#[test]
fn the_chip_shows_the_shops_air_only_where_it_is_kept_and_says_when_it_is_old() {
    let air = |room| {
        ShopFact::Climate(Climate {
            room,
            temp_c: 18.0,
            rh_pct: 62.0,
        })
    };
    let shelf = Shelf::new();
    shelf.bag("K07", 3).shop(2, air(Room::House));
    assert_eq!(shelf.open().view().climate, None);
    shelf.shop(14, air(Room::Shop));
    let chip = shelf.open().view().climate.unwrap();
    assert_eq!(chip.reading, "18\u{a0}°C, 62\u{a0}% RH");
    // Wood Handbook FPL-GTR-190, equation 4-5, gives 11.4 % there.
    assert_eq!(chip.settles, "settles at 11\u{a0}%");
    assert!(!chip.old);
    let mut hands = shelf.open();
    hands.wait(Duration::days(1));
    let chip = hands.view().climate.unwrap();
    assert_eq!(
        (chip.reading.as_str(), chip.old),
        ("Climate 15 d old", true)
    );
    hands.today(TodayAction::Go("climate".into()));
    assert_eq!(hands.app.route().page(), Some(&Page::ShopPage("climate")));
    hands.no_word_is_absent();
}
