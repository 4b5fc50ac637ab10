//! Promises of the rows of Today: how late they are called, where they lead, and how they are grouped.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_today;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::today::TodayAction;
use evenwall_app::today::view::Shape;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{FlawNote, FlawTreated, Measure, PieceFact};
use evenwall_piece::ids::FlawId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, FlawKind, Treatment};
use support_today::{Shelf, id, look, text};

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
fn lateness_is_graded() {
    let shelf = Shelf::new();
    shelf.bag("K07", 5);
    shelf.piece("A01", "beech", Stage::Air, 12);
    shelf
        .piece("S01", "cherry", Stage::Settle, 90)
        .line("S01", 20, vec![weighed(828.0)]);
    let hands = shelf.open();
    let bag = hands.row("K07", "look");
    assert_eq!((bag.late, bag.tag.as_str()), (true, "4 days late"));
    let air = hands.row("A01", "over");
    assert_eq!((air.late, air.tag.as_str()), (false, "9 days late"));
    assert_eq!(air.button.label, "Looked over: A01");
    let weigh = hands.row("S01", "weigh");
    assert_eq!((weigh.late, weigh.tag.as_str()), (false, "when you like"));
    assert_eq!(weigh.note, "Last 828\u{a0}g, 20 days ago");
    let order: Vec<String> = hands.rows().into_iter().map(|r| r.mark).collect();
    assert_eq!(&order[..4], ["Overdue", "K07", "A01", "S01"]);
    hands.no_word_is_absent();
}

#[test]
fn a_piece_looked_over_needs_one_touch_and_a_damp_bag_in_air_can_be_said() {
    let shelf = Shelf::new();
    shelf.piece("A01", "beech", Stage::Air, 12);
    let mut hands = shelf.open();
    let row = hands.row("A01", "over").id;
    hands.today(TodayAction::Row(row.clone()));
    let said: Vec<String> = notes(&hands).into_iter().map(|n| n.0).collect();
    assert_eq!(said, ["Looked over", "Damp again"]);
    hands.today(TodayAction::Button {
        row,
        key: "looked".into(),
    });
    assert_eq!(hands.row("A01", "over").shape, Shape::Done);
    assert_eq!(hands.piece("A01").looks.last().unwrap().feel, None);
    hands.act(Action::Undo);
    hands.answer("A01", "over", "damp");
    assert_eq!(
        hands.row("A01", "over").note,
        "Turned, closed again · next Sun 15"
    );
}

#[test]
fn rows_lead_to_weighing_flaws_renaming_finding_and_going_on() {
    let shelf = Shelf::new();
    let flaw = FlawId::new("a").unwrap();
    shelf.piece("S01", "cherry", Stage::Settle, 30);
    shelf.piece("H01", "yew", Stage::Hollow, 3).line(
        "H01",
        3,
        vec![
            PieceFact::FlawFound(FlawNote {
                flaw: flaw.clone(),
                kind: FlawKind::Knot,
                station: None,
                clock: None,
                size_mm: None,
                through: false,
                note: String::new(),
            }),
            PieceFact::FlawTreated(FlawTreated {
                flaw: flaw.clone(),
                treatment: Treatment::Thin,
                face: None,
                goes: None,
                look_again: Some("2026-03-12".parse().unwrap()),
            }),
        ],
    );
    shelf
        .piece("T01", "oak", Stage::Hollow, 3)
        .line("T01", 1, vec![PieceFact::HalfTurned]);
    shelf
        .bag("M01", 8)
        .line("M01", 3, vec![PieceFact::NotFound]);
    shelf
        .bag("D01", 8)
        .line("D01", 4, vec![PieceFact::Deleted])
        .line("D01", 3, vec![look(BagFeel::Wet)]);
    shelf.piece("X1", "ash", Stage::Shape, 6);
    shelf
        .piece("X2", "elm", Stage::Shape, 5)
        .line("X2", 5, vec![text(DetailField::Mark, "x1")]);
    shelf
        .bag("N01", 12)
        .line("N01", 6, vec![look(BagFeel::Nothing)])
        .line("N01", 2, vec![look(BagFeel::Nothing)]);
    let mut hands = shelf.open();
    let press = |hands: &mut support_today::Hands, mark: &str, kind: &str, key: &str| {
        let row = hands.row(mark, kind).id;
        hands.today(TodayAction::Button {
            row,
            key: key.into(),
        });
    };
    press(&mut hands, "S01", "weigh", "weigh");
    assert_eq!(hands.app.route().page(), Some(&Page::Weigh(id("S01"))));
    hands.act(Action::Back);

    let row = hands.row("H01", "flaw-a");
    assert_eq!(row.note, "Knot: look again");
    hands.today(TodayAction::Row(row.id));
    assert_eq!(
        hands.app.route().page(),
        Some(&Page::Flaw(id("H01"), Some(flaw)))
    );
    hands.act(Action::Back);

    assert_eq!(
        hands.row("T01", "lathe").note,
        "Half-turned, left yesterday"
    );
    press(&mut hands, "T01", "lathe", "resume");
    assert!(hands.piece("T01").half_turned.is_none());

    press(&mut hands, "M01", "find", "found");
    assert!(hands.piece("M01").not_found.is_none());
    assert_eq!(hands.said(), "M01: found");
    hands.row("M01", "look");
    hands.act(Action::Undo);
    hands.row("M01", "find");

    press(&mut hands, "D01", "back", "delete");
    assert!(hands.piece("D01").deleted.is_some());
    hands.act(Action::Undo);
    press(&mut hands, "D01", "back", "keep");
    assert!(!hands.piece("D01").came_back);

    assert_eq!(
        hands.row("X2", "rename").note,
        "Same mark as another piece, Ash"
    );
    press(&mut hands, "X2", "rename", "rename");
    assert_eq!(hands.app.route().page(), Some(&Page::Details(id("X2"))));
    hands.act(Action::Back);

    let offer = hands.row("N01", "offer-air");
    assert_eq!(offer.button.text, "Open the neck for good");
    assert_eq!(offer.note, "Nothing on the bag twice running");
    press(&mut hands, "N01", "offer-air", "move");
    assert_eq!(hands.piece("N01").stage(), Stage::Air);
    hands.no_word_is_absent();
}

#[test]
fn long_groups_show_their_first_rows_until_asked_and_rounds_are_offered_where_several_are_due() {
    let shelf = Shelf::new();
    for n in 1..=12 {
        shelf.bag(&format!("K{n:02}"), 0);
    }
    let hands = shelf.open();
    assert!(
        hands.view().rounds.is_empty(),
        "nothing is due before tomorrow"
    );
    let coming = |hands: &support_today::Hands| {
        let rows = hands.rows();
        rows.iter().filter(|r| r.shape == Shape::Coming).count()
    };
    assert_eq!(coming(&hands), 6);
    let mut hands = hands;
    let more = hands
        .rows()
        .into_iter()
        .find(|r| r.shape == Shape::More)
        .unwrap();
    assert_eq!(more.mark, "Show all 12");
    hands.today(TodayAction::Row(more.id));
    assert_eq!(coming(&hands), 12);
    hands.wait(Duration::days(1));
    let rounds = hands.view().rounds;
    let words: Vec<_> = rounds.iter().map(|r| r.text.as_str()).collect();
    assert_eq!(words, ["Bag round (12)"]);
    let boxes: Vec<_> = hands
        .rows()
        .iter()
        .map(|r| (r.shape, r.first, r.last))
        .take(4)
        .collect();
    assert_eq!(
        boxes,
        [
            (Shape::Head, true, true),
            (Shape::Card, true, true),
            (Shape::Row, true, false),
            (Shape::Row, false, false)
        ]
    );
    hands.no_word_is_absent();
}
