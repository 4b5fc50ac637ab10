//! True and Finish, touched as a turner touches them.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, End, FlawNote, FlawTreated, Measure, PieceFact, Reading, StationRef,
};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::{Piece, SectionMeasured};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, FlawKind, RoundHow, Taken, Treatment, TrueDecision};

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
        mm(DetailField::Height, 220.0),
        mm(DetailField::SpigotDiameter, 57.0),
        PieceFact::Stations {
            count: 5,
            depths_mm: vec![20.0, 55.0, 90.0, 140.0, 190.0],
        },
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
    bench.resize(390.0, 4000.0, 1.0);
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
    assert!(bench.reads("Not measured yet"), "what is to be expected");
    assert!(bench.reads("Mean figures of White ash"));
    bench.touch("Hairline");
    assert!(bench.reads("in doubt about a crack, do not spin it"));
    bench.touch("Measure the oval");
    bench.write("Longest diameter", "195");
    bench.write("Shortest diameter", "187");
    bench.touch("Record");
    assert!(bench.reads("1.5\u{a0}mm to spare"));
    assert!(bench.reads("moved far more than the table"));
    bench.touch("Station 3, the widest");
    assert!(bench.reads("Station 3, the widest: 195.0 by 187.0\u{a0}mm, oval by 8.0"));
    assert!(bench.reads("Dried 195.0 by 187.0"), "the drawing is told");
    assert!(bench.reads("once round: fits the jaws"));
    bench.touch("Round size once trued");
    bench.write("Round size once trued", "52");
    bench.touch("Record");
    assert!(bench.sees("Fits the jaws"));
    bench.touch("Decide");
    assert!(bench.reads("The sums see the oval and nothing else"));
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

/// Types readings round a station, one after the other.
fn go_round(bench: &Bench, places: &[(&str, &str)]) {
    let count = places.len();
    for (i, (place, value)) in places.iter().enumerate() {
        let label = format!("At {place}, reading {} of {count}", i + 1);
        bench.write(&label, value);
        bench.touch(if i + 1 < count {
            "Next reading"
        } else {
            "Record"
        });
    }
}

const CENTRE_8: [(&str, &str); 8] = [
    ("12:00", "95"),
    ("1:30", "96"),
    ("3:00", "97.5"),
    ("4:30", "96"),
    ("6:00", "94.5"),
    ("7:30", "95.5"),
    ("9:00", "97"),
    ("10:30", "96"),
];

fn begin(bench: &Bench, way: &str, station: &str) {
    bench.touch("Another station, or more readings");
    bench.touch(way);
    bench.touch_last(station);
    bench.touch("Go on");
}

#[test]
fn more_readings_round_are_typed_one_after_the_other_at_any_station() {
    let bench = bench(Stage::True);
    bench.touch("None found");
    begin(&bench, "8 from the centre mark", "Station 3, the widest");
    go_round(&bench, &CENTRE_8);
    with_piece(&bench, |piece| {
        let SectionMeasured::Round { how, readings } = &piece.finish.ovals[&3].measured else {
            panic!("readings round");
        };
        assert_eq!((*how, readings.len()), (RoundHow::FromCentre, 8));
    });
    begin(&bench, "Longest and shortest", "Station 2");
    bench.write("Longest diameter", "182");
    bench.write("Shortest diameter", "177");
    bench.touch("Record");
    bench.touch("Station 2");
    assert!(bench.reads("Station 2: 182.0 by 177.0"));
    bench.touch("Station 3, the widest");
    assert!(bench.reads("From 8 distances from the centre mark."));
    assert!(bench.sees("Decide"));
    undo(&bench);
    with_piece(&bench, |piece| assert_eq!(piece.finish.ovals.len(), 1));
}

#[test]
fn what_is_not_known_leads_to_where_it_is_read() {
    let now = moment(START) - chrono::Duration::days(1);
    let mut store = MemoryStore::default();
    let facts = vec![PieceFact::Created, PieceFact::StageMoved(Stage::True)];
    store.append_piece(&id(), now, now, facts).unwrap();
    let read = ShopFact::Setting {
        key: "cautions_read".into(),
        value: "true".into(),
    };
    store.append_shop(now, now, vec![read]).unwrap();
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::Open(Page::Piece(id())));
    bench.screens.act(Action::Open(Page::Truing(id())));
    room(&bench);
    assert!(bench.sees("The size as turned is not recorded"));
    bench.touch("No wall was read");
    bench
        .screens
        .read(|app| assert_eq!(app.route().page(), Some(&Page::Wall(id()))));
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
    room(&bench);
    bench.touch("Another station, or more readings");
    bench.touch("8 from the centre mark");
    bench.pictures_of("truing-where");
    room(&bench);
    bench.touch("Go on");
    for (place, value) in &CENTRE_8[..3] {
        let at = CENTRE_8.iter().position(|(p, _)| p == place).unwrap();
        bench.write(&format!("At {place}, reading {} of 8", at + 1), value);
        bench.touch("Next reading");
    }
    bench.pictures_of("truing-round");
    room(&bench);
    for (i, (place, value)) in CENTRE_8.iter().enumerate().skip(3) {
        bench.write(&format!("At {place}, reading {} of 8", i + 1), value);
        bench.touch(if i < 7 { "Next reading" } else { "Record" });
    }
    bench.touch("Station 3, the widest");
    bench.resize(390.0, 2700.0, 1.0);
    bench.picture("truing-whole");
    bench.resize(360.0, 4000.0, 1.0);
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
