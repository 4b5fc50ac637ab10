//! The flaws, touched as a turner touches them.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{FlawNote, Measure, PieceFact, StationRef};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::{FlawEvent, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Face, FlawChange, FlawKind, Treatment};

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

/// A hollow form in Stabilise, with a clock that stands on the Thursday.
fn bench(more: Vec<PieceFact>) -> Bench {
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
    let known = vec![
        PieceFact::Created,
        text(DetailField::Mark, "K07"),
        text(DetailField::Wood, "white-ash"),
        text(DetailField::Form, "hollow-form"),
        mm(DetailField::Diameter, 190.0),
        mm(DetailField::Height, 210.0),
        PieceFact::StageMoved(Stage::Stabilise),
    ];
    let line = |store: &mut MemoryStore, facts| store.append_piece(&id(), now, now, facts);
    line(&mut store, known).unwrap();
    for fact in more {
        line(&mut store, vec![fact]).unwrap();
    }
    let read = ShopFact::Setting {
        key: "cautions_read".into(),
        value: "true".into(),
    };
    store.append_shop(now, now, vec![read]).unwrap();
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::Open(Page::Piece(id())));
    bench.screens.act(Action::Open(Page::Flaws(id())));
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

fn found(flaw: &str, kind: FlawKind, station: u8, clock: u8, size: Option<f64>) -> PieceFact {
    PieceFact::FlawFound(FlawNote {
        flaw: FlawId::new(flaw).unwrap(),
        kind,
        station: Some(StationRef::Wall(station)),
        clock: evenwall_piece::fact::Clock::new(clock),
        size_mm: size.map(Measure::plain),
        through: kind == FlawKind::Check,
        note: String::new(),
    })
}

fn treated(flaw: &str, treatment: Treatment, again: Option<&str>) -> PieceFact {
    PieceFact::FlawTreated(evenwall_piece::fact::FlawTreated {
        flaw: FlawId::new(flaw).unwrap(),
        treatment,
        face: treatment.is_glue().then_some(Face::Outside),
        goes: treatment.is_glue().then_some(2),
        look_again: again.map(|d| d.parse().unwrap()),
    })
}

fn three() -> Vec<PieceFact> {
    vec![
        found("a", FlawKind::Knot, 3, 4, Some(14.0)),
        found("b", FlawKind::BarkInclusion, 5, 9, None),
        found("c", FlawKind::Check, 2, 1, Some(12.0)),
        treated("b", Treatment::Left, Some("2026-03-11")),
        treated("c", Treatment::Medium, None),
        PieceFact::FlawLooked {
            flaw: FlawId::new("c").unwrap(),
            change: FlawChange::Longer,
            size_mm: Some(Measure::plain(22.0)),
            look_again: None,
        },
    ]
}

#[test]
fn a_flaw_is_noted_with_four_touches() {
    let bench = bench(vec![]);
    assert!(bench.reads("Turn it once by hand"));
    bench.touch("Note a flaw");
    room(&bench);
    bench.touch("Knot");
    bench.touch("Station 3");
    bench.touch("Superglue thin");
    assert!(bench.reads("Leave it an hour or more"));
    bench.touch("Save");
    with_piece(&bench, |piece| {
        let flaw = &piece.flaws[0];
        assert_eq!(flaw.note.kind, FlawKind::Knot);
        assert_eq!(flaw.note.station, Some(StationRef::Wall(3)));
        assert_eq!(flaw.last_treatment().unwrap().1.treatment, Treatment::Thin);
    });
    assert!(bench.sees("A, Knot"));
    undo(&bench);
    assert!(bench.reads("Turn it once by hand"));
}

#[test]
fn the_clock_is_touched_or_stepped_and_what_is_folded_opens() {
    let bench = bench(vec![]);
    bench.touch("Note a flaw");
    room(&bench);
    bench.touch("Check");
    bench.touch("How far round an hour on");
    bench.touch("How far round an hour on");
    bench.touch("Size, through the wall, face, look again");
    room(&bench);
    bench.write("Length", "twelve");
    bench.touch("Through the wall");
    bench.touch("Superglue medium");
    bench.touch("Both faces");
    bench.touch("In a week");
    bench.write("In your own words", "runs up from the knot");
    bench.touch("Save");
    assert!(bench.reads("cannot be read as the length of the flaw"));
    bench.write("Length", "12,5");
    bench.touch("Save");
    with_piece(&bench, |piece| {
        let flaw = &piece.flaws[0];
        assert_eq!(flaw.note.clock.unwrap().hour(), 1);
        assert!(flaw.note.through);
        assert_eq!(flaw.note.note, "runs up from the knot");
        assert!((flaw.note.size_mm.as_ref().unwrap().value - 12.5).abs() < 1e-9);
        let treated = flaw.last_treatment().unwrap().1;
        assert_eq!(treated.face, Some(Face::Both));
        assert_eq!(treated.look_again.unwrap().to_string(), "2026-03-19");
    });
}

#[test]
fn a_crack_is_looked_at_again_with_its_new_length() {
    let bench = bench(three());
    bench.touch("C, Check, 22\u{a0}mm");
    room(&bench);
    assert!(bench.reads("still a crack"));
    bench.touch("Longer");
    bench.write("Length now", "25");
    bench.touch("Record: longer");
    assert!(bench.reads("Length: 12, then 22, then 25"));
    with_piece(&bench, |piece| {
        let last = piece.flaws[2].events.last().unwrap().clone();
        assert!(matches!(
            last,
            FlawEvent::Looked {
                change: FlawChange::Longer,
                ..
            }
        ));
    });
    bench.touch("Treat it again");
    room(&bench);
    bench.touch("Superglue medium");
    bench.touch("Face, goes, look again");
    room(&bench);
    bench.touch("Inside");
    bench.touch("Record it");
    assert!(!bench.reads("treat the inside too"));
    bench.touch("Back");
    assert!(bench.sees("Note a flaw"));
}

#[test]
fn what_was_noted_is_corrected_and_taken_back() {
    let bench = bench(three());
    bench.touch("A, Knot, 14\u{a0}mm");
    room(&bench);
    bench.touch("Correct what was noted");
    room(&bench);
    bench.touch("Pith");
    bench.touch("Save the correction");
    with_piece(&bench, |piece| {
        assert_eq!(piece.flaws[0].note.kind, FlawKind::Pith)
    });
    room(&bench);
    bench.touch("Take it back");
    bench.touch_last("Take it back");
    with_piece(&bench, |piece| assert_eq!(piece.flaws.len(), 2));
    undo(&bench);
    with_piece(&bench, |piece| assert_eq!(piece.flaws.len(), 3));
}

#[test]
fn pictures_of_the_list() {
    bench(three()).pictures_of("flaws");
}

#[test]
fn pictures_of_one_flaw() {
    let bench = bench(three());
    bench.touch("C, Check, 22\u{a0}mm");
    bench.pictures_of("flaws-one");
}

#[test]
fn pictures_of_the_sheet_for_a_new_length() {
    let bench = bench(three());
    bench.touch("C, Check, 22\u{a0}mm");
    bench.touch("Longer");
    bench.write("Length now", "long");
    bench.touch("Record: longer");
    bench.resize(390.0, 844.0, 2.0);
    bench.picture("flaws-longer-sheet");
}

/// A knot with station, hour and what was done.
fn noted_half() -> Bench {
    let bench = bench(three());
    bench.touch("Note a flaw");
    bench.touch("Knot");
    bench.touch("Station 3");
    bench.touch("How far round an hour back");
    bench.touch("Superglue thin");
    bench
}

#[test]
fn pictures_of_a_new_flaw() {
    noted_half().pictures_of("flaws-new");
}

#[test]
fn pictures_of_all_that_is_folded_away() {
    let bench = noted_half();
    bench.touch("Size, through the wall, face, look again");
    whole(&bench, "flaws-new-whole", 2300.0, 1.0);
    bench.resize(360.0, 3400.0, 1.0);
    bench
        .screens
        .look(evenwall_app::device::ThemeChoice::Dark, 1.6);
    bench.picture("flaws-new-whole-huge");
}

fn whole(bench: &Bench, name: &str, height: f32, scale: f32) {
    bench.resize(390.0, height, scale);
    bench.picture(name);
}

#[test]
fn pictures_of_an_empty_page() {
    let bench = bench(vec![]);
    bench.pictures_of("flaws-empty");
}
