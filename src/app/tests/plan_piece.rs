//! A plan becomes a piece with one tap, or is written to the piece it is of; both can be undone, and a piece with a crack or in
//! True gets no speed.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_plan;

use evenwall_app::action::Action;
use evenwall_app::plan::{PlanAction, PlanField};
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, FlawNote, PieceFact};
use evenwall_piece::ids::FlawId;
use evenwall_piece::shop::{Jaws, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, FlawKind};
use support_plan::{Bench, id, length, text};

#[test]
fn one_tap_starts_a_piece_with_everything_that_was_entered() {
    let jaws = ShopFact::Jaws(Jaws {
        id: "j".into(),
        name: "Small jaws".into(),
        smallest_mm: 50.0,
        largest_mm: 75.0,
    });
    let mut bench = Bench::with(vec![jaws], "{}");
    bench.choose("pith", "outside");
    bench.wood("White ash");
    bench.enter(PlanField::Diameter, "150");
    bench.enter(PlanField::Height, "165");
    bench.enter(PlanField::Log, "220");
    bench.enter(PlanField::PithDistance, "110");
    bench.plan(PlanAction::Go);
    let piece = bench.only();
    let mm = |field| piece.details.mm(field);
    assert!(!piece.mark().is_empty());
    assert_eq!(piece.details.text(DetailField::Wood), Some("white-ash"));
    assert_eq!(piece.details.text(DetailField::Pith), Some("outside"));
    assert_eq!(piece.details.text(DetailField::Jaws), Some("Small jaws"));
    assert_eq!(mm(DetailField::Diameter), Some(150.0));
    assert_eq!(mm(DetailField::Height), Some(165.0));
    assert_eq!(mm(DetailField::LogDiameter), Some(220.0));
    assert_eq!(mm(DetailField::PithDistance), Some(110.0));
    assert_eq!(mm(DetailField::WallWanted), Some(10.0));
    assert_eq!(mm(DetailField::FloorWanted), Some(12.0));
    assert_eq!(mm(DetailField::SpigotDiameter), Some(57.0));
    // What was only assumed is not recorded as said, and a hole that was not drilled has no depth.
    assert_eq!(mm(DetailField::WallFinish), None);
    assert_eq!(mm(DetailField::DepthDrilled), None);
    let page = bench.app.route().page().cloned();
    assert_eq!(page, Some(Page::Piece(piece.id.clone())));
    let before = bench.view();
    bench.act(Action::Undo);
    assert_eq!(bench.app.pieces().count(), 0);
    assert_eq!(bench.app.route().page(), None);
    assert_eq!(bench.view().inputs, before.inputs);
    bench.act(Action::Redo);
    assert_eq!(bench.app.pieces().count(), 1);
}

#[test]
fn a_piece_from_nothing_records_nothing_but_its_mark() {
    let mut bench = Bench::new();
    bench.plan(PlanAction::Go);
    let said: Vec<_> = bench.only().details.iter().map(|(f, _)| f).collect();
    assert_eq!(said, [DetailField::Mark]);
}

#[test]
fn a_piece_that_could_not_be_saved_is_entered_once_when_tried_again() {
    let mut bench = Bench::new();
    bench.enter(PlanField::Diameter, "150");
    bench.fail(true);
    bench.plan(PlanAction::Go);
    assert!(bench.app.save_error().is_some());
    assert_eq!(bench.app.pieces().count(), 0);
    bench.fail(false);
    bench.act(Action::TryAgain);
    assert_eq!(bench.only().details.mm(DetailField::WallWanted), Some(10.0));
}

fn vessel() -> Vec<PieceFact> {
    vec![
        text(DetailField::Wood, "white-ash"),
        length(DetailField::Diameter, 200.0),
        length(DetailField::Height, 220.0),
        length(DetailField::LogDiameter, 250.0),
    ]
}

fn flaw(kind: FlawKind) -> PieceFact {
    PieceFact::FlawFound(FlawNote {
        flaw: FlawId::new("f").unwrap(),
        kind,
        station: None,
        clock: Some(Clock::TWELVE),
        size_mm: None,
        through: false,
        note: String::new(),
    })
}

#[test]
fn a_piece_brings_its_details_and_takes_what_is_listed_as_one_step() {
    let mut bench = Bench::of(vessel());
    assert_eq!(bench.result("depth"), "206 mm");
    assert_eq!(bench.result("speed"), "600 rpm");
    let listed: Vec<String> = bench
        .view()
        .writes
        .iter()
        .map(|w| format!("{}: {}", w.label, w.value))
        .collect();
    assert_eq!(
        listed,
        [
            "Wall wanted now: 12\u{a0}mm",
            "Floor wanted: 14\u{a0}mm",
            "Spigot diameter: 57\u{a0}mm"
        ]
    );
    let before = bench.app.piece(&id()).unwrap().details.clone();
    let tab_plan = bench.app.device().plan.clone();
    bench.plan(PlanAction::Go);
    let piece = bench.app.piece(&id()).unwrap();
    assert_eq!(piece.details.mm(DetailField::WallWanted), Some(12.0));
    assert!(bench.view().writes.is_empty() && !bench.view().go_active);
    bench.act(Action::Undo);
    assert_eq!(bench.app.piece(&id()).unwrap().details, before);
    assert_eq!(bench.view().writes.len(), 3);
    // The plan of the tab is another matter.
    assert_eq!(bench.app.device().plan, tab_plan);
}

#[test]
fn what_could_not_be_written_is_written_when_tried_again() {
    let mut bench = Bench::of(vessel());
    bench.fail(true);
    bench.plan(PlanAction::Go);
    assert!(bench.app.save_error().is_some());
    assert_eq!(
        bench
            .app
            .piece(&id())
            .unwrap()
            .details
            .mm(DetailField::WallWanted),
        None
    );
    bench.fail(false);
    bench.act(Action::TryAgain);
    assert_eq!(
        bench
            .app
            .piece(&id())
            .unwrap()
            .details
            .mm(DetailField::WallWanted),
        Some(12.0)
    );
}

#[test]
fn no_speed_once_a_crack_or_a_bark_inclusion_is_noted_nor_in_true() {
    for (kind, said) in [
        (FlawKind::Check, "noted"),
        (FlawKind::RingShake, "noted"),
        (FlawKind::BarkInclusion, "noted"),
    ] {
        let mut facts = vessel();
        facts.push(flaw(kind));
        let mut bench = Bench::of(facts);
        assert_eq!(bench.result("speed"), "– ");
        assert!(bench.cell("speed").note.contains(said), "{kind:?}");
        assert!(!bench.sum("speed").line.contains("rpm"));
    }
    // A crack answered in True stays one, also where the piece goes back a stage.
    let mut facts = vessel();
    facts.push(PieceFact::Cracks(CrackAnswer::Hairline));
    assert_eq!(Bench::of(facts).result("speed"), "– ");
    let mut facts = vessel();
    facts.push(flaw(FlawKind::Knot));
    assert_eq!(Bench::of(facts).result("speed"), "600 rpm");
    for stage in [Stage::True, Stage::Finish] {
        let mut facts = vessel();
        facts.push(PieceFact::StageMoved(stage));
        let bench = Bench::of(facts);
        assert_eq!(bench.result("speed"), "– ");
        assert!(bench.cell("speed").note.starts_with("In True"));
    }
}

#[test]
fn a_piece_that_dries_already_is_not_told_what_wall_to_leave() {
    let mut facts = vessel();
    facts.push(PieceFact::StageMoved(Stage::Bag));
    let mut bench = Bench::of(facts);
    assert!(bench.view().writes.is_empty());
    // What is changed on the page can still be written.
    bench.enter(PlanField::WallFinish, "7");
    let writes = bench.view().writes;
    assert_eq!(writes.len(), 1);
    assert_eq!(writes[0].value, "7\u{a0}mm");
}

#[test]
fn the_way_from_a_piece_leads_to_its_plan() {
    let mut bench = Bench::of(vessel());
    bench.act(Action::Open(Page::Piece(id())));
    let way = bench.app.way_action("plan").unwrap();
    assert_eq!(way, Action::Open(Page::PlanOf(id())));
    bench.act(way);
    assert_eq!(bench.view().mark, "K07");
}
