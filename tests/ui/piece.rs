//! The pages of one piece, touched as a turner touches them.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, FlawNote, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{FlawKind, Taken};

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn text(field: DetailField, value: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(value.into())),
    }
}

fn mm(field: DetailField, value: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(value))),
    }
}

fn read(station: StationRef, value: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(value)),
        feel: None,
        taken: Taken::Callipers,
    })
}

fn store(facts: Vec<PieceFact>, cautions_read: bool) -> Box<MemoryStore> {
    let now = moment(START) - chrono::Duration::days(2);
    let mut store = MemoryStore::default();
    let known = vec![
        PieceFact::Created,
        text(DetailField::Mark, "K07"),
        text(DetailField::Wood, "white-ash"),
        text(DetailField::Form, "hollow-form"),
        mm(DetailField::Diameter, 190.0),
        mm(DetailField::Height, 210.0),
        mm(DetailField::WallWanted, 10.0),
    ];
    store
        .append_piece(&id(), now, now, [known, facts].concat())
        .unwrap();
    if cautions_read {
        let fact = ShopFact::Setting {
            key: "cautions_read".into(),
            value: "true".into(),
        };
        store.append_shop(now, now, vec![fact]).unwrap();
    }
    Box::new(store)
}

fn bench(facts: Vec<PieceFact>) -> Bench {
    let bench = Bench::on(store(facts, true));
    bench.screens.act(Action::Open(Page::Piece(id())));
    room(&bench);
    bench
}

/// Makes room for all of a long page, instead of scrolling.
fn room(bench: &Bench) {
    bench.resize(390.0, 3000.0, 1.0);
}

/// Draws a page as it is, and all of it.
fn pictures(bench: &Bench, name: &str) {
    bench.pictures_of(name);
    bench.resize(390.0, 2000.0, 2.0);
    bench.picture(&format!("{name}-all"));
    room(bench);
}

fn undo(bench: &Bench) {
    let label = bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with("Undo: "))
        .expect("something to undo");
    bench.touch(&label);
}

fn hollowing() -> Bench {
    bench(vec![
        mm(DetailField::DepthDrilled, 195.0),
        PieceFact::StageMoved(Stage::Hollow),
        read(StationRef::Wall(1), 10.5),
        read(StationRef::Wall(2), 10.0),
        read(StationRef::Wall(3), 13.0),
        read(StationRef::Wall(4), 8.0),
        read(StationRef::Floor, 12.0),
    ])
}

#[test]
fn a_line_is_ticked_and_unticked_by_undo() {
    let bench = hollowing();
    let line = "Open the mouth and the middle to working size";
    let before = bench.labels();
    assert!(!before.is_empty());
    bench.touch(line);
    assert!(bench.reads(&format!("Ticked: {line}")));
    undo(&bench);
    let ticked = bench
        .screens
        .read(|app| app.piece(&id()).unwrap().ticks.len());
    assert_eq!(ticked, 0);
    // The undo bar says that it was taken back; all else is as before.
    for label in before {
        assert!(bench.sees(&label), "{label}");
    }
}

#[test]
fn the_why_of_a_line_is_one_touch_away() {
    let bench = hollowing();
    bench.touch("Why: Watch the reach past the rest; first chatter, change bars");
    assert!(bench.reads("eight times"), "{:#?}", bench.labels());
    bench.touch("Close");
    assert!(!bench.reads("eight times"));
}

#[test]
fn a_piece_is_moved_back_dated_from_the_stages_page() {
    let bench = hollowing();
    bench.touch("Stages: now in Hollow");
    bench.touch("Stabilise");
    bench.touch("Yesterday");
    bench.touch("Move to Stabilise");
    let since = bench
        .screens
        .read(|app| app.piece(&id()).unwrap().stage_since().unwrap());
    assert_eq!(since.date_naive().to_string(), "2026-03-11");
    bench.touch("Bag");
    bench.touch("Another day");
    bench.touch("Move to Bag");
    assert!(bench.reads("Type a day"), "{:#?}", bench.labels());
    bench.write("Day", "30 Feb");
    bench.touch("Move to Bag");
    assert!(bench.reads("cannot be read"), "{:#?}", bench.labels());
    bench.write("Day", "12 Mar");
    bench.touch("Move to Bag");
    let stage = bench.screens.read(|app| app.piece(&id()).unwrap().stage());
    assert_eq!(stage, Stage::Bag);
}

#[test]
fn a_detail_is_typed_corrected_and_undone() {
    let bench = hollowing();
    bench.touch("Details");
    bench.touch("Mouth");
    bench.write("Mouth", "lots");
    bench.touch("Save");
    assert!(bench.reads("cannot be read"), "{:#?}", bench.labels());
    bench.write("Mouth", "2 1/4 in");
    bench.touch("Save");
    let mouth = |bench: &Bench| {
        bench
            .screens
            .read(|app| app.piece(&id()).unwrap().details.mm(DetailField::Mouth))
    };
    assert!((mouth(&bench).unwrap() - 57.15).abs() < 1e-9);
    undo(&bench);
    assert_eq!(mouth(&bench), None);
    bench.touch("Wood");
    bench.write("Wood", "beech");
    bench.touch("American beech");
    bench.touch("Save");
    let title = bench
        .screens
        .read(|app| app.wood_of(app.piece(&id()).unwrap()));
    assert_eq!(title, "American beech");
}

#[test]
fn a_piece_is_lost_in_its_parts_and_put_back() {
    let bench = hollowing();
    bench.touch("More");
    bench.touch("How it ended");
    bench.touch("Lost");
    bench.touch("Beside a knot");
    bench.touch("Cracked on the lathe");
    bench.touch("Pith");
    bench.touch("Wall uneven");
    bench.write("In your own words", "Rushed it.");
    pictures(&bench, "piece-ending");
    bench.touch("Record: Lost");
    assert!(bench.reads("Where: Beside a knot"), "{:#?}", bench.labels());
    assert!(bench.reads("Rushed it."));
    pictures(&bench, "piece-lost");
    bench.touch("Put back");
    let living = bench.screens.read(|app| app.piece(&id()).unwrap().living());
    assert!(living);
}

#[test]
fn a_deleted_piece_asks_first_and_leaves_the_screen() {
    let bench = hollowing();
    bench.touch("More");
    bench.touch("Delete");
    bench.touch("Delete it");
    assert!(bench.screens.read(|app| app.route().page().is_none()));
    undo(&bench);
    assert!(bench.screens.read(|app| app.pieces().count() == 1));
}

#[test]
fn the_general_cautions_are_read_once() {
    let bench = Bench::on(store(Vec::new(), false));
    bench.screens.act(Action::Open(Page::Piece(id())));
    bench.pictures_of("piece-cautions");
    room(&bench);
    bench.touch("I have read them");
    assert!(bench.screens.read(|app| app.shop().settings.cautions_read));
    assert!(!bench.reads("Undo"));
}

#[test]
fn the_checklist_is_changed_for_pieces_to_come() {
    let bench = hollowing();
    bench
        .screens
        .act(Action::Open(Page::ShopPage("checklists")));
    assert!(
        bench
            .screens
            .read(|app| app.checklist_editor_view().lines.len())
            > 5
    );
}

#[test]
fn pictures_of_the_pages_of_a_piece() {
    let hollow = hollowing();
    pictures(&hollow, "piece-hollow");
    hollow.touch("More");
    pictures(&hollow, "piece-more");
    hollow.touch("Close");
    hollow.touch("Details");
    pictures(&hollow, "piece-details");
    hollow.touch("Outside diameter");
    pictures(&hollow, "piece-field");
    let bag = bench(vec![
        PieceFact::StageMoved(Stage::Bag),
        PieceFact::FlawFound(FlawNote {
            flaw: FlawId::new("a").unwrap(),
            kind: FlawKind::Knot,
            station: None,
            clock: None,
            size_mm: None,
            through: false,
            note: String::new(),
        }),
    ]);
    pictures(&bag, "piece-bag");
    bag.touch("Stages: now in Bag");
    pictures(&bag, "piece-stages");
    bag.touch("Air");
    pictures(&bag, "piece-move");
}
