//! The list of pieces and the form of a new one, touched as a turner would.

use chrono::Duration;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Stage;
use i_slint_backend_testing::AccessibleRole;
use slint::ComponentHandle;

use crate::bench::{Bench, START, moment};

fn text(field: DetailField, value: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(value.to_owned())),
    }
}

fn length(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

/// Mark, wood, outline, diameter and height in mm, stage entered, and how many days ago.
type Row = (
    &'static str,
    &'static str,
    &'static str,
    f64,
    f64,
    Option<Stage>,
    i64,
);

/// Invented pieces in many stages.
fn shelf() -> MemoryStore {
    let mut store = MemoryStore::default();
    let rows: [Row; 12] = [
        ("K11", "sycamore", "pear", 160.0, 150.0, Some(Stage::Bag), 9),
        ("K12", "sycamore", "egg", 150.0, 160.0, Some(Stage::Bag), 3),
        (
            "M02",
            "black-cherry",
            "egg",
            140.0,
            170.0,
            Some(Stage::Settle),
            41,
        ),
        (
            "K07",
            "white-ash",
            "ball",
            180.0,
            160.0,
            Some(Stage::Hollow),
            1,
        ),
        (
            "B04",
            "european-beech",
            "tall",
            110.0,
            220.0,
            Some(Stage::Air),
            12,
        ),
        ("K09", "", "high-shoulder", 150.0, 180.0, None, 0),
        (
            "K03",
            "european-walnut",
            "ball",
            200.0,
            110.0,
            Some(Stage::Indoors),
            6,
        ),
        ("C01", "yew", "pear", 120.0, 140.0, Some(Stage::True), 2),
        (
            "C02",
            "neighbour's plum",
            "egg",
            130.0,
            150.0,
            Some(Stage::Finish),
            1,
        ),
        (
            "C03",
            "english-holly",
            "tall",
            90.0,
            170.0,
            Some(Stage::Stabilise),
            1,
        ),
        (
            "A01",
            "field-maple",
            "ball",
            140.0,
            120.0,
            Some(Stage::Finish),
            200,
        ),
        (
            "A02",
            "silver-birch",
            "egg",
            150.0,
            160.0,
            Some(Stage::Bag),
            300,
        ),
    ];
    for (mark, wood, outline, diameter, height, stage, days) in rows {
        let at = moment(START) - Duration::days(days);
        let mut facts = vec![
            PieceFact::Created,
            text(DetailField::Mark, mark),
            text(DetailField::Outline, outline),
            length(DetailField::Diameter, diameter),
            length(DetailField::Height, height),
        ];
        if !wood.is_empty() {
            facts.push(text(DetailField::Wood, wood));
        }
        if wood == "sycamore" {
            facts.push(text(DetailField::Log, "Sycamore from the churchyard"));
            facts.push(text(DetailField::Place, "Top shelf"));
        }
        facts.extend(stage.map(PieceFact::StageMoved));
        match mark {
            "A01" => facts.push(PieceFact::Ended(End::Finished)),
            "A02" => facts.push(PieceFact::Ended(End::GivenAway)),
            _ => {}
        }
        let id = PieceId::new(&mark.to_lowercase()).unwrap();
        store.append_piece(&id, at, at, facts).unwrap();
    }
    store
}

fn full() -> Bench {
    let bench = Bench::on(Box::new(shelf()));
    bench.touch("Pieces");
    bench
}

fn marks(bench: &Bench) -> Vec<String> {
    bench.screens.read(|app| {
        let view = app.pieces_view(bench.now());
        view.cards.into_iter().map(|c| c.mark).collect()
    })
}

/// Makes room for all of a long page, instead of scrolling, and draws it.
fn unroll(bench: &Bench) {
    bench.resize(390.0, 4000.0, 1.0);
    bench.screens.window().window().take_snapshot().unwrap();
}

/// The label of a card on screen that begins with this.
fn card(bench: &Bench, start: &str) -> String {
    bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with(start))
        .unwrap_or_else(|| panic!("no card begins with {start}: {:#?}", bench.labels()))
}

#[test]
fn a_piece_is_entered_with_two_touches_and_opens() {
    let bench = Bench::empty();
    bench.touch("Pieces");
    assert!(bench.sees("No pieces yet"));
    bench.pictures_of("pieces-empty");
    bench.touch("New piece");
    bench.touch("Save A01");
    let page = bench
        .screens
        .read(|app| app.route().page().map(|p| p.key()));
    assert_eq!(page, Some("piece"));
    assert!(bench.reads("A01 entered"));
    bench.touch("Undo: A01 entered");
    assert_eq!(bench.screens.read(|app| app.pieces().count()), 0);
}

#[test]
fn the_list_is_searched_filtered_and_sorted_by_touch() {
    let bench = full();
    assert_eq!(marks(&bench)[..3], ["B04", "K11", "K03"]);
    bench.pictures_of("pieces-list");
    bench.write("Find a piece", "churchyard");
    assert_eq!(marks(&bench), ["K11", "K12"]);
    bench.write("Find a piece", "zebrano");
    assert!(bench.sees("Nothing like “zebrano”"));
    bench.pictures_of("pieces-no-match");
    bench.touch("Clear");
    assert_eq!(marks(&bench).len(), 10);
    // Chips further right are reached by scrolling; here by a wide window.
    bench.resize(890.0, 844.0, 1.0);
    bench.touch("Bag 2");
    assert_eq!(marks(&bench), ["K11", "K12"]);
    bench.touch("All 10");
    bench.resize(390.0, 844.0, 1.0);
    bench.touch("Next due first");
    bench.pictures_of("pieces-order");
    bench.touch("By log, twins together");
    bench.screens.window().window().take_snapshot().unwrap();
    assert_eq!(marks(&bench)[..2], ["K11", "K12"]);
    assert!(bench.sees("Sycamore from the churchyard"));
    bench.pictures_of("pieces-by-log");
    bench.touch(&card(&bench, "K12, Sycamore"));
    let open = bench
        .screens
        .read(|app| app.route().page().and_then(|p| p.piece().cloned()));
    assert_eq!(open.unwrap().as_str(), "k12");
}

#[test]
fn the_search_keeps_the_keyboard_while_letters_are_typed() {
    let bench = full();
    let field = bench
        .find("Find a piece")
        .into_iter()
        .find(|e| e.accessible_role() == Some(AccessibleRole::TextInput))
        .unwrap();
    field.mock_single_click(slint::platform::PointerEventButton::Left);
    bench.keys("k1");
    assert_eq!(marks(&bench), ["K11", "K12"]);
    bench.keys("2");
    assert_eq!(marks(&bench), ["K12"]);
}

#[test]
fn a_list_of_three_hundred_shows_only_what_fits_and_the_rest_on_scrolling() {
    let mut store = MemoryStore::default();
    for n in 1..=300 {
        let id = PieceId::new(&format!("p{n}")).unwrap();
        let facts = vec![
            PieceFact::Created,
            text(DetailField::Mark, &format!("P{n:03}")),
        ];
        store
            .append_piece(&id, moment(START), moment(START), facts)
            .unwrap();
    }
    let bench = Bench::on(Box::new(store));
    bench.touch("Pieces");
    assert_eq!(marks(&bench).len(), 300);
    let drawn = |bench: &Bench| bench.labels().iter().filter(|l| l.starts_with('P')).count();
    assert!(drawn(&bench) < 60, "{} cards are drawn", drawn(&bench));
    assert!(bench.reads("P001"));
    bench.write("Find a piece", "p300");
    assert!(bench.reads("P300"));
}

#[test]
fn the_form_takes_all_that_is_typed_and_says_what_is_wrong_below_the_field() {
    let bench = full();
    bench.touch("New piece");
    bench.pictures_of("new-piece-short");
    bench.write("Mark", "K07");
    assert!(bench.reads("K07 is in use"));
    bench.pictures_of("new-piece-in-use");
    bench.write("Mark", "N06");
    assert!(bench.reads("upside down as 90N"));
    bench.pictures_of("new-piece-upside-down");
    bench.write("Mark", "K20");
    bench.write("Wood", "frax");
    bench.touch("White ash");
    assert!(bench.reads("Fraxinus americana"));
    bench.touch("Hollow form");
    bench.touch("More about it");
    unroll(&bench);
    bench.write("Outside diameter", "wide");
    assert!(bench.reads("“wide” cannot be read"));
    bench.touch("200 × 150");
    assert!(!bench.reads("cannot be read"));
    bench.write("Wall wanted now", "118");
    bench.touch("11.8");
    bench.write("Felled", "feb 2026");
    bench.touch("Bag");
    bench.write("Since when", "1 March");
    assert!(bench.reads("Taken as Sun 1 Mar"));
    bench.touch("Pear");
    bench.write("Notes", "one\ntwo");
    bench.picture("new-piece-more-unrolled");
    bench.pictures_of("new-piece-more");
    bench.touch("Save K20");
    bench.screens.read(|app| {
        let piece = app.pieces().find(|p| p.mark() == "K20").unwrap();
        let d = &piece.details;
        assert_eq!(d.text(DetailField::Wood), Some("white-ash"));
        assert_eq!(d.text(DetailField::Form), Some("hollow-form"));
        assert_eq!(d.text(DetailField::Outline), Some("pear"));
        assert_eq!(d.text(DetailField::Felled), Some("2026-02"));
        assert_eq!(d.text(DetailField::Notes), Some("one\ntwo"));
        assert_eq!(d.mm(DetailField::Diameter), Some(200.0));
        assert_eq!(d.mm(DetailField::Height), Some(150.0));
        assert_eq!(d.mm(DetailField::WallWanted), Some(11.8));
        assert_eq!(piece.stage(), Stage::Bag);
        assert_eq!(
            piece.stage_since().unwrap().date_naive().to_string(),
            "2026-03-01"
        );
        assert_eq!(app.words().problems(), []);
    });
}

#[test]
fn a_batch_is_stepped_up_saved_and_undone_at_once() {
    let bench = full();
    bench.touch("New piece");
    for _ in 0..4 {
        bench.touch("How many more");
    }
    assert!(bench.reads("K13, K14"), "{:#?}", bench.labels());
    bench.touch("Save 5 pieces");
    assert_eq!(bench.screens.read(|app| app.pieces().count()), 17);
    bench.touch("Undo: 5 pieces entered: K10 to K16");
    assert_eq!(bench.screens.read(|app| app.pieces().count()), 12);
}

#[test]
fn leaving_a_form_with_something_in_it_asks() {
    let bench = full();
    bench.touch("New piece");
    bench.write("Wood", "yew");
    bench.touch("Back");
    assert!(bench.sees("Leave without saving?"));
    bench.touch("Keep editing");
    assert!(bench.reads("Taxus baccata"));
    bench.touch("Back");
    bench.touch("Leave");
    assert_eq!(
        bench
            .screens
            .read(|app| app.route().page().map(|p| p.key())),
        None
    );
}
