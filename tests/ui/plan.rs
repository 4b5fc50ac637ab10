//! Plan, touched as a turner touches it.

use evenwall_app::action::Action;
use evenwall_app::device::ThemeChoice;
use evenwall_app::route::{Page, Tab};
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::shop::{Bar, Jaws, ShopFact};

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

/// A shop with jaws and bars, its cautions read, on the tab Plan.
fn bench(facts: Vec<PieceFact>, settings: &str) -> Bench {
    let now = moment(START) - chrono::Duration::days(1);
    let mut store = MemoryStore::default();
    let shop = vec![
        ShopFact::Setting {
            key: "cautions_read".into(),
            value: "true".into(),
        },
        ShopFact::Jaws(Jaws {
            id: "a".into(),
            name: "50 mm jaws".into(),
            smallest_mm: 50.0,
            largest_mm: 75.0,
        }),
        ShopFact::Jaws(Jaws {
            id: "b".into(),
            name: "Small jaws".into(),
            smallest_mm: 35.0,
            largest_mm: 41.0,
        }),
        ShopFact::Bar(Bar {
            id: "c".into(),
            name: "16 mm straight".into(),
            diameter_mm: 16.0,
        }),
        ShopFact::Bar(Bar {
            id: "d".into(),
            name: "25 mm swan neck".into(),
            diameter_mm: 25.0,
        }),
    ];
    store.append_shop(now, now, shop).unwrap();
    if !facts.is_empty() {
        store.append_piece(&id(), now, now, facts).unwrap();
    }
    store.save_device_settings(settings).unwrap();
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::GoTab(Tab::Plan));
    room(&bench);
    bench
}

/// Makes room for all of a long page, instead of scrolling.
fn room(bench: &Bench) {
    bench.resize(390.0, 4200.0, 1.0);
}

fn vessel() -> Vec<PieceFact> {
    let text = |field, value: &str| PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(value.into())),
    };
    let mm = |field, value| PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(value))),
    };
    vec![
        PieceFact::Created,
        text(DetailField::Mark, "K07"),
        text(DetailField::Wood, "white-ash"),
        text(DetailField::Pith, "outside"),
        mm(DetailField::Diameter, 200.0),
        mm(DetailField::Height, 220.0),
    ]
}

fn undo(bench: &Bench) {
    let label = bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with("Undo: "))
        .expect("something to undo");
    bench.touch(&label);
}

fn pick_ash(bench: &Bench) {
    bench.touch("Wood");
    bench.write("Wood", "white a");
    bench.touch("White ash");
}

#[test]
fn from_nothing_to_a_piece_that_was_planned() {
    let bench = bench(Vec::new(), "{}");
    bench.touch("Today");
    bench.touch("Plan");
    bench.touch("Outside the piece");
    pick_ash(&bench);
    bench.touch("200 × 230");
    assert!(bench.sees("Leave this wall: 12 mm"));
    bench.touch("Leave this wall: 12 mm");
    assert!(bench.reads("to finish +"), "{:#?}", bench.labels());
    bench.touch_last("Close");
    bench.touch("Log diameter more");
    assert!(
        bench.reads("Not above about: 650 rpm"),
        "{:#?}",
        bench.labels()
    );
    bench.touch("Start this piece");
    bench.screens.read(|app| {
        let piece = app.pieces().next().expect("a piece");
        assert_eq!(piece.details.mm(DetailField::WallWanted), Some(12.0));
        assert_eq!(app.route().page(), Some(&Page::Piece(piece.id.clone())));
    });
    undo(&bench);
    bench.screens.read(|app| {
        assert_eq!(app.pieces().count(), 0);
        assert_eq!(app.tab(), Tab::Plan);
    });
    assert!(
        bench.sees("Leave this wall: 12 mm"),
        "the plan is still there"
    );
}

#[test]
fn a_size_is_typed_on_the_keypad_and_stepped() {
    let bench = bench(Vec::new(), "{}");
    bench.touch("Outside diameter 150 mm");
    for key in ["1", "8", "0", "Set"] {
        bench.touch(key);
    }
    assert!(bench.sees("Outside diameter 180 mm"));
    bench.press("Outside diameter more");
    assert!(bench.sees("Outside diameter 181 mm"));
    bench.touch("Finish wall 6 mm");
    bench.write("Finish wall", "thick");
    bench.touch("Set");
    assert!(bench.reads("cannot be read"));
    bench.touch("Close");
    // What is impossible is said at its row, and the answer is a dash.
    bench.touch("Outside diameter 181 mm");
    bench.write("Outside diameter", "40");
    bench.enter();
    bench.touch("Set");
    bench.touch("Finish wall 5 mm");
    bench.write("Finish wall", "18");
    bench.touch("Set");
    assert!(bench.reads("leaves no hollow"));
    assert!(bench.sees("Leave this wall: – "));
    bench.touch("Start afresh");
    assert!(bench.sees("Outside diameter 150 mm"));
    bench.touch("Undo: Plan started afresh");
    assert!(bench.sees("Outside diameter 40 mm"));
}

#[test]
fn the_plan_of_a_piece_is_used_for_it_and_undone() {
    let bench = bench(vessel(), "{}");
    bench.screens.act(Action::Open(Page::Piece(id())));
    room(&bench);
    bench.touch("Plan");
    assert!(bench.sees("Leave this wall: 12 mm"));
    assert!(bench.sees("Wall wanted now 12\u{a0}mm"));
    bench.touch("Use for this piece");
    let wall = || {
        bench.screens.read(|app| {
            let piece = app.piece(&id()).unwrap();
            piece.details.mm(DetailField::WallWanted)
        })
    };
    assert_eq!(wall(), Some(12.0));
    assert!(bench.reads("The piece says all of this already"));
    undo(&bench);
    assert_eq!(wall(), None);
    bench.touch("Back");
    bench
        .screens
        .read(|app| assert_eq!(app.route().page(), Some(&Page::Piece(id()))));
}

#[test]
fn pictures_of_plan() {
    let bench = bench(Vec::new(), "{}");
    bench.pictures_of("plan-nothing");
    room(&bench);
    bench.touch("Outside the piece");
    pick_ash(&bench);
    bench.touch("200 × 230");
    bench.touch("Log diameter more");
    bench.pictures_of("plan");
    bench.resize(390.0, 3300.0, 1.0);
    bench.picture("plan-whole");
    bench.resize(360.0, 5200.0, 1.0);
    bench.screens.look(ThemeChoice::Dark, 1.6);
    bench.picture("plan-whole-huge");
    bench.screens.refresh();
    room(&bench);
    bench.touch("Leave this wall: 12 mm");
    bench.pictures_of("plan-sum");
    room(&bench);
    bench.touch_last("Close");
    bench.touch("Wood");
    bench.pictures_of("plan-wood");
    room(&bench);
    bench.touch("Close");
    bench.touch("Finish wall 6 mm");
    bench.touch("5");
    bench.pictures_of("plan-entry");
    room(&bench);
    bench.touch("Close");
    bench.touch("In the wall");
    bench.resize(390.0, 3300.0, 1.0);
    bench.picture("plan-pith-in-wall");
    room(&bench);
    bench.touch("Bowl");
    bench.resize(390.0, 3300.0, 1.0);
    bench.picture("plan-bowl");
}

#[test]
fn pictures_of_the_plan_of_a_piece_and_in_inches() {
    let bench = bench(vessel(), r#"{"length":"inch-fraction"}"#);
    bench.screens.act(Action::Open(Page::Piece(id())));
    bench.screens.act(Action::Open(Page::PlanOf(id())));
    bench.pictures_of("plan-of");
    room(&bench);
    bench.touch("Finish wall 15/64 in");
    bench.pictures_of("plan-entry-inch");
}
