//! True and Finish, touched as a turner touches them.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, End, FlawNote, FlawTreated, Measure, PieceFact, Reading, StationRef,
};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::Piece;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, FlawKind, Taken, Treatment, TrueDecision};

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("k03").unwrap()
}

fn wall(station: u8, value: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station: StationRef::Wall(station),
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(value)),
        feel: None,
        taken: Taken::Callipers,
    })
}

/// A vessel of 200 mm, its walls read, with a glued check, in a stage, on that stage's page.
fn bench(stage: Stage) -> Bench {
    let now = moment(START) - chrono::Duration::days(1);
    let mut store = MemoryStore::default();
    let text = |field, value: &str| PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(value.into())),
    };
    let mm = |field, value| PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(value))),
    };
    let facts = vec![
        PieceFact::Created,
        text(DetailField::Mark, "K03"),
        text(DetailField::Wood, "white-ash"),
        mm(DetailField::Diameter, 200.0),
        wall(1, 13.0),
        wall(2, 12.0),
        wall(3, 12.5),
        PieceFact::FlawFound(FlawNote {
            flaw: FlawId::new("c").unwrap(),
            kind: FlawKind::Check,
            station: Some(StationRef::Wall(2)),
            clock: Clock::new(1),
            size_mm: Some(Measure::plain(22.0)),
            through: false,
            note: String::new(),
        }),
        PieceFact::FlawTreated(FlawTreated {
            flaw: FlawId::new("c").unwrap(),
            treatment: Treatment::Thin,
            face: None,
            goes: None,
            look_again: None,
        }),
        PieceFact::StageMoved(stage),
    ];
    store.append_piece(&id(), now, now, facts).unwrap();
    let read = ShopFact::Setting {
        key: "cautions_read".into(),
        value: "true".into(),
    };
    store.append_shop(now, now, vec![read]).unwrap();
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::Open(Page::Piece(id())));
    let page = match stage {
        Stage::Finish => Page::Finishing(id()),
        _ => Page::Truing(id()),
    };
    bench.screens.act(Action::Open(page));
    room(&bench);
    bench
}

/// Makes room for all of a long page, instead of scrolling.
fn room(bench: &Bench) {
    bench.resize(390.0, 3000.0, 1.0);
}

fn undo(bench: &Bench) {
    let label = bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with("Undo: "))
        .expect("something to undo");
    bench.touch(&label);
}

fn with_piece<T>(bench: &Bench, ask: impl FnOnce(&Piece) -> T) -> T {
    bench.screens.read(|app| ask(app.piece(&id()).unwrap()))
}

fn measure(bench: &Bench, longest: &str, shortest: &str) {
    bench.touch("Longest diameter");
    bench.write("Longest diameter", longest);
    bench.write("Shortest diameter", shortest);
    bench.touch("Record");
}

#[test]
fn true_is_walked_from_the_crack_question_to_finish() {
    let bench = bench(Stage::True);
    assert!(bench.sees("Check, station 2, 1 o'clock"));
    assert!(!bench.sees("Measure the oval"), "the cracks come first");
    bench.touch("Hairline");
    assert!(bench.reads("in doubt about a crack, do not spin it"));
    bench.touch("Measure the oval");
    bench.write("Longest diameter", "195");
    bench.write("Shortest diameter", "187");
    bench.touch("Record");
    assert!(bench.reads("Oval by 8.0"));
    assert!(bench.reads("2.0\u{a0}mm to spare"));
    bench.touch("Round size once trued");
    bench.write("Round size once trued", "52");
    bench.touch("Record");
    assert!(bench.sees("Fits the jaws"));
    bench.touch("Decide");
    bench.touch("Carry on");
    bench.write("Why", "dry, rings clear");
    bench.touch("Record");
    with_piece(&bench, |piece| {
        assert_eq!(
            piece.finish.cracks.as_ref().unwrap().1,
            CrackAnswer::Hairline
        );
        let (_, decision, reason) = piece.finish.decision.clone().unwrap();
        assert_eq!(
            (decision, reason.as_str()),
            (TrueDecision::Go, "dry, rings clear")
        );
    });
    bench.touch("Next stage: Finish");
    assert!(bench.sees("Add a coat"));
    with_piece(&bench, |piece| assert_eq!(piece.stage(), Stage::Finish));
}

#[test]
fn two_diameters_the_wrong_way_round_are_asked_about() {
    let bench = bench(Stage::True);
    bench.touch("None found");
    measure(&bench, "186.4", "195.4");
    assert!(bench.sees("Were the two swapped?"));
    bench.touch("Yes, swap them");
    with_piece(&bench, |piece| {
        let oval = piece.finish.oval.as_ref().unwrap();
        assert!(oval.longest_mm.value > oval.shortest_mm.value);
    });
    undo(&bench);
    with_piece(&bench, |piece| assert_eq!(piece.finish.oval, None));
}

#[test]
fn rim_or_floor_and_scrap_lead_to_how_it_ended() {
    let bench = bench(Stage::True);
    bench.touch("Rim or floor");
    assert!(bench.reads("Do not spin it."));
    bench.touch("What I decided");
    bench.touch("Scrap it");
    bench.write("Why", "crack half way across");
    bench.touch("Record");
    bench
        .screens
        .read(|app| assert_eq!(app.route().page(), Some(&Page::Ending(id()))));
}

#[test]
fn finish_is_recorded_and_ends_the_piece() {
    let bench = bench(Stage::Finish);
    bench.touch("Add grits");
    bench.touch("120");
    bench.touch("240");
    bench.touch("Record");
    bench.touch("Add a coat");
    bench.write("What went on", "oil, first coat");
    bench.touch("Yesterday");
    bench.touch("Record");
    bench.touch("Signed");
    bench.touch("Record");
    with_piece(&bench, |piece| {
        assert_eq!(piece.finish.grits[0].1, "120, 240");
        let (at, coat) = &piece.finish.coats[0];
        assert_eq!(coat, "oil, first coat");
        assert_eq!(at.date_naive().to_string(), "2026-03-11");
        assert!(
            piece
                .finish
                .signed
                .as_ref()
                .unwrap()
                .1
                .ends_with("2026, K03")
        );
    });
    bench.touch("Finished");
    assert!(bench.reads("Not recorded: final wall, size, weight."));
    bench.touch_last("Finished");
    with_piece(&bench, |piece| {
        assert_eq!(piece.end.as_ref().unwrap().1, End::Finished)
    });
    bench
        .screens
        .read(|app| assert_eq!(app.route().page(), Some(&Page::Piece(id()))));
}

#[test]
fn pictures_of_true() {
    let bench = bench(Stage::True);
    bench.pictures_of("truing-first");
    room(&bench);
    bench.touch("Hairline");
    measure(&bench, "195", "189");
    bench.touch("Round size once trued");
    bench.write("Round size once trued", "48");
    bench.touch("Record");
    bench.pictures_of("truing");
    bench.resize(390.0, 1900.0, 1.0);
    bench.picture("truing-whole");
    bench.resize(360.0, 2900.0, 1.0);
    bench
        .screens
        .look(evenwall_app::device::ThemeChoice::Dark, 1.6);
    bench.picture("truing-whole-huge");
    bench.screens.refresh();
    room(&bench);
    bench.touch("Rim or floor");
    bench.touch("Decide");
    bench.pictures_of("truing-decide");
}

#[test]
fn pictures_of_finish() {
    let bench = bench(Stage::Finish);
    bench.touch("Add a coat");
    bench.write("What went on", "oil, first coat");
    bench.touch("Another day");
    bench.touch("Record");
    bench.pictures_of("finishing-coat-sheet");
    room(&bench);
    bench.write("Day", "9 Mar");
    bench.touch("Record");
    bench.touch("Add grits");
    bench.touch("120");
    bench.touch("240");
    bench.pictures_of("finishing-grits-sheet");
    room(&bench);
    bench.touch("Record");
    bench.pictures_of("finishing");
}
