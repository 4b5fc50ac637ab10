//! Promises of measuring the wall: one tap records and moves on, and nothing is lost.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_wall;

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::wall::{Spot, WallAction, WallSheet};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{FlawNote, PieceFact, StationRef};
use evenwall_piece::ids::FlawId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{FlawKind, Taken, WallFeel};
use support_wall::{Wall, length};

#[test]
fn eight_keys_lie_half_a_millimetre_apart_round_the_wall_wanted() {
    let w = Wall::new();
    let v = w.view();
    assert_eq!(
        v.quick,
        ["8.5", "9", "9.5", "10", "10.5", "11", "11.5", "12"]
    );
    assert_eq!(v.subtitle, "Wall wanted 10\u{a0}mm");
    assert_eq!(
        (v.station.as_str(), v.mark.as_str()),
        ("Station 1 of 7", "K07")
    );
    assert_eq!(v.marks.len(), 8, "seven stations and the floor");
    assert!(!v.known && !v.can_undo && v.verdict.is_empty());
}

#[test]
fn in_inches_the_keys_are_steps_of_the_chosen_unit() {
    let w = Wall::with(&[], r#"{"length":"inch-fraction"}"#);
    let v = w.view();
    assert_eq!(v.quick.len(), 8);
    assert_eq!(v.quick[0], "11/32");
    assert_eq!(v.quick[3], "25/64");
    assert!(v.fractions);
    let w = Wall::with(&[], r#"{"length":"inch-decimal"}"#);
    assert_eq!(w.view().quick[0], "0.34");
    assert!(!w.view().fractions);
}

#[test]
fn one_tap_records_with_the_stations_and_moves_on_round_the_section() {
    let mut w = Wall::new();
    w.wall(WallAction::ToggleSection(StationRef::Wall(3)));
    w.wall(WallAction::ToggleSection(StationRef::Wall(2)));
    assert_eq!(w.view().section, "Stations 1, 2, 3");
    w.tap("11.5");
    assert_eq!(
        w.piece().stations.count,
        7,
        "laid out with the first reading"
    );
    assert_eq!(w.piece().stations.depths_mm.len(), 7);
    let v = w.view();
    assert_eq!(v.station, "Station 2 of 7");
    assert_eq!(v.status.text, "Station 1: 11.5, even");
    w.tap("12");
    assert_eq!(w.view().status.text, "Station 2: 12.0, heavy by 2");
    assert_eq!(w.view().status.kind, "heavy");
    w.tap("10");
    assert_eq!(w.view().station, "Station 1 of 7", "then round again");
    let v = w.view();
    assert_eq!((v.number.as_str(), v.quick_now.as_str()), ("11.5", "11.5"));
    assert_eq!(v.when, "08:42, callipers");
    let last = &w.piece().readings[0].reading;
    assert_eq!(last.wall_mm.as_ref().unwrap().typed, "11.5");
    assert_eq!(last.taken, Taken::Callipers);
}

#[test]
fn a_section_of_one_stays_and_skip_goes_to_the_station_below() {
    let mut w = Wall::new();
    w.tap("11");
    assert_eq!(w.view().station, "Station 1 of 7");
    w.wall(WallAction::Skip);
    assert_eq!(w.view().station, "Station 2 of 7");
    assert_eq!(w.piece().readings.len(), 1);
    w.jump("7");
    assert_eq!(w.view().section, "Station 7");
    w.wall(WallAction::Step(1));
    assert_eq!(w.view().station, "Floor");
    w.wall(WallAction::Step(1));
    assert_eq!(w.view().station, "Floor");
}

#[test]
fn a_fourth_station_lets_go_of_the_farthest_and_the_last_cannot_go() {
    let mut w = Wall::new();
    for n in [2, 3, 4] {
        w.wall(WallAction::ToggleSection(StationRef::Wall(n)));
    }
    assert_eq!(w.view().section, "Stations 2, 3, 4");
    assert_eq!(w.view().station, "Station 2 of 7");
    for n in [2, 3, 4] {
        w.wall(WallAction::ToggleSection(StationRef::Wall(n)));
    }
    assert_eq!(w.view().section, "Station 4");
    w.wall(WallAction::ToggleSection(StationRef::Wall(40)));
    assert_eq!(w.view().section, "Station 4", "there is no station 40");
}

#[test]
fn the_finger_judges_without_a_number_and_cant_reach_is_never_even() {
    let mut w = Wall::new();
    w.feel(WallFeel::Even);
    let v = w.view();
    assert_eq!(
        (v.kind, v.verdict.as_str(), v.known),
        ("even", "even by feel", false)
    );
    assert_eq!(w.piece().readings[0].reading.taken, Taken::Fingers);
    w.jump("2");
    w.cant_reach();
    let v = w.view();
    assert_eq!((v.kind, v.verdict.as_str()), ("", "can't reach"));
    assert_eq!(v.marks[1].state, "now");
    assert_eq!(v.status.text, "Station 2: can't reach");
    w.wall(WallAction::HowTaken(Taken::Light));
    w.feel(WallFeel::Thin);
    assert_eq!(w.piece().readings[2].reading.taken, Taken::Light);
    w.wall(WallAction::HowTaken(Taken::WireGauge));
    w.tap("10");
    assert_eq!(w.piece().readings[3].reading.taken, Taken::WireGauge);
    assert_eq!(w.view().when, "08:42, wire gauge");
}

#[test]
fn the_floor_is_the_height_less_the_rod() {
    let mut w = Wall::new();
    w.jump("floor");
    let v = w.view();
    assert_eq!(v.floor_way, "depth");
    assert_eq!(v.quick[4], "188", "height 200 less floor 12");
    w.tap("188");
    assert_eq!(w.read("floor"), [12.0]);
    let r = &w.piece().readings[0].reading;
    assert_eq!(r.taken, Taken::DepthRod);
    assert_eq!(r.wall_mm.as_ref().unwrap().typed, "188");
    assert_eq!(w.view().quick_now, "188");
    w.types("205\n");
    assert!(w.view().ask.unwrap().text.contains("205"));
    w.answer("again");
    w.wall(WallAction::FloorByDepth(false));
    assert_eq!(w.view().quick[3], "12");
    w.types("13\n");
    assert_eq!(w.read("floor"), [12.0, 13.0]);
}

#[test]
fn the_floor_is_kept_as_taken_by_the_rod_only_where_the_rod_was_read() {
    let mut w = Wall::new();
    w.jump("floor");
    let v = w.view();
    assert_eq!((v.taken.as_str(), v.can_choose_taken), ("Depth rod", false));
    w.tap("188");
    w.feel(WallFeel::Heavy);
    assert_eq!(w.view().when, "08:42, fingers");
    w.wall(WallAction::FloorByDepth(false));
    let v = w.view();
    assert_eq!((v.taken.as_str(), v.can_choose_taken), ("Callipers", true));
    w.tap("12");
    w.wall(WallAction::HowTaken(Taken::WireGauge));
    w.types("12\n");
    w.wall(WallAction::HowTaken(Taken::Light));
    w.feel(WallFeel::Even);
    let taken: Vec<Taken> = w.piece().readings.iter().map(|r| r.reading.taken).collect();
    assert_eq!(
        taken,
        [
            Taken::DepthRod,
            Taken::Fingers,
            Taken::Callipers,
            Taken::WireGauge,
            Taken::Fingers,
        ]
    );
}

#[test]
fn without_a_height_the_floor_is_entered_itself() {
    let mut w = Wall::of(vec![PieceFact::Created], "{}");
    w.jump("floor");
    let v = w.view();
    assert_eq!(v.floor_way, "floor");
    assert!(v.floor_ways.is_empty());
    w.types("12\n");
    assert_eq!(w.read("floor"), [12.0]);
    assert!(w.piece().stations.depths_mm.is_empty());
}

#[test]
fn two_places_round_are_read_before_the_next_station() {
    let mut w = Wall::new();
    w.wall(WallAction::ToggleSection(StationRef::Wall(2)));
    w.wall(WallAction::Places(2));
    w.tap("10");
    assert_eq!(w.view().spot, "1@6");
    w.tap("11");
    assert_eq!(w.view().spot, "2@12");
    assert_eq!(w.view().marks[0].value, "10.0", "the thinnest place counts");
}

#[test]
fn more_places_are_suggested_beside_a_knot_and_after_drying() {
    let knot = PieceFact::FlawFound(FlawNote {
        flaw: FlawId::new("a").unwrap(),
        kind: FlawKind::Knot,
        station: Some(StationRef::Wall(2)),
        clock: None,
        size_mm: None,
        through: false,
        note: String::new(),
    });
    let mut w = Wall::with(&[knot], "{}");
    assert!(!w.view().places_hint);
    w.jump("2");
    assert!(w.view().places_hint && w.view().hint.contains("knot"));
    let w = Wall::with(&[PieceFact::StageMoved(Stage::True)], "{}");
    assert!(w.view().places_hint);
}

#[test]
fn a_whole_round_goes_from_the_mouth_to_the_floor_and_ends_with_the_result() {
    let mut w = Wall::new();
    w.wall(WallAction::WholeRound);
    assert_eq!(w.view().progress, "Whole round, 1 of 8");
    for n in 2..=8 {
        if n == 5 {
            w.wall(WallAction::Skip);
        } else {
            w.tap("10");
        }
        assert_eq!(w.view().progress, format!("Whole round, {n} of 8"));
    }
    w.tap("188");
    assert_eq!(w.app.route().page().unwrap().key(), "wall-summary");
    assert_eq!(w.summary().read, "6 of 7 read");
}

#[test]
fn undo_takes_back_the_reading_and_leads_back_to_its_station() {
    let mut w = Wall::new();
    w.wall(WallAction::ToggleSection(StationRef::Wall(2)));
    let empty = w.view();
    w.tap("10");
    let one = w.view();
    w.tap("11.5");
    let two = w.view();
    w.act(Action::Undo);
    assert!(w.view().redo == "Redo");
    let same = |a: &evenwall_app::wall::WallView, b: &evenwall_app::wall::WallView| {
        let mut a = a.clone();
        a.redo = b.redo.clone();
        assert!(&a == b, "the views differ");
    };
    same(&w.view(), &one);
    w.act(Action::Undo);
    same(&w.view(), &empty);
    assert!(
        !w.view().can_undo,
        "nothing of this page is left to take back"
    );
    w.act(Action::Redo);
    w.act(Action::Redo);
    same(&w.view(), &two);
    w.act(Action::Undo);
    w.tap("9.5");
    assert_eq!((w.read("1"), w.read("2")), (vec![10.0], vec![9.5]));
}

#[test]
fn a_reading_that_could_not_be_kept_is_kept_as_it_was_when_tried_again() {
    let mut w = Wall::new();
    w.fail(true);
    w.types("11.4\n");
    assert!(w.app.save_error().is_some());
    assert!(w.piece().readings.is_empty());
    assert_eq!(w.view().station, "Station 1 of 7");
    w.jump("5");
    w.wait(3);
    w.fail(false);
    w.act(Action::TryAgain);
    assert_eq!(w.read("1"), [11.4]);
    assert_eq!(
        w.piece().readings[0].at.format("%H:%M").to_string(),
        "08:42"
    );
    assert!(w.app.save_error().is_none());
    assert_eq!(
        w.view().station,
        "Station 5 of 7",
        "who has gone on is left there"
    );
}

#[test]
fn the_page_opens_where_the_last_reading_left_the_piece() {
    let mut w = Wall::new();
    w.jump("4");
    w.tap("12");
    w.act(Action::Back);
    w.open(Page::Wall);
    assert_eq!(w.view().station, "Station 4 of 7");
    w.wall(WallAction::OpenSheet(WallSheet::Section));
    let sheet = w.view().sheet.unwrap();
    assert_eq!(sheet.rows.len(), 8);
    assert!(sheet.rows[3].selected);
    w.wall(WallAction::CloseSheet);
    assert!(w.view().sheet.is_none());
}

#[test]
fn readings_of_stations_that_are_gone_are_kept() {
    let mut w = Wall::with(&[length(DetailField::Height, 300.0)], "{}");
    w.jump("9");
    w.types("12\n");
    w.open(Page::Outline);
    w.act(Action::Wall(WallAction::LayOut));
    assert_eq!(w.piece().stations.count, 9);
    assert_eq!(w.read("9"), [12.0]);
    let ghost = Spot::from_key("40@12").unwrap();
    w.open(Page::Wall);
    w.wall(WallAction::CantReach(ghost));
    assert_eq!(w.piece().readings.len(), 1, "there is no station 40");
}
