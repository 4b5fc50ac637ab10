//! Promises of the suggestion of thin or medium. Every figure here is common practice, no source.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, FlawNote, FlawTreated, Measure, PieceFact as F, Reading, StationRef,
};
use evenwall_piece::glue::{GlueWhy, comes_off, face_to_treat, is_crack, suggest};
use evenwall_piece::ids::FlawId;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Face, FlawChange, FlawKind, Taken, Treatment};
use support::{fold, line};

fn mm(field: DetailField, value: f64) -> F {
    F::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(value))),
    }
}

fn read(station: StationRef, wall: f64) -> F {
    F::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(wall)),
        feel: None,
        taken: Taken::Callipers,
    })
}

fn stations(count: u8) -> F {
    F::Stations {
        count,
        depths_mm: Vec::new(),
    }
}

/// A vessel of 140 mm in end grain: rough wall 10, finish wall 5.
fn vessel(more: Vec<F>) -> Piece {
    let facts = [vec![F::Created, mm(DetailField::Diameter, 140.0)], more].concat();
    fold(&[line("a", 1, 1, facts)])
}

fn flaw(kind: FlawKind) -> FlawNote {
    FlawNote {
        flaw: FlawId::new("f1").unwrap(),
        kind,
        station: Some(StationRef::Wall(3)),
        clock: None,
        size_mm: None,
        through: false,
        note: String::new(),
    }
}

#[test]
fn thin_for_a_knot_where_half_the_wall_still_comes_off() {
    let piece = vessel(vec![]);
    let s = suggest(&piece, &flaw(FlawKind::Knot));
    assert_eq!(s.grade, Treatment::Thin);
    assert_eq!(s.why, GlueWhy::Soaks { comes_off_mm: 2.5 });
    assert!(!s.stain_stays());
}

#[test]
fn medium_where_it_runs_through_whatever_it_is() {
    let piece = vessel(vec![]);
    for kind in FlawKind::ALL {
        let through = FlawNote {
            through: true,
            ..flaw(*kind)
        };
        let s = suggest(&piece, &through);
        assert_eq!(
            (s.grade, s.why),
            (Treatment::Medium, GlueWhy::RunsThrough),
            "{kind:?}"
        );
    }
}

#[test]
fn medium_on_a_wall_under_8_mm_at_that_station_only() {
    let piece = vessel(vec![
        stations(5),
        read(StationRef::Wall(3), 7.5),
        read(StationRef::Wall(4), 10.0),
    ]);
    let s = suggest(&piece, &flaw(FlawKind::Check));
    assert_eq!(s.grade, Treatment::Medium);
    assert_eq!(s.why, GlueWhy::ThinWall { wall_mm: 7.5 });
    let elsewhere = FlawNote {
        station: Some(StationRef::Wall(4)),
        ..flaw(FlawKind::Check)
    };
    assert_eq!(suggest(&piece, &elsewhere).grade, Treatment::Thin);
    // Without a station the thinnest place is taken.
    let anywhere = FlawNote {
        station: None,
        ..flaw(FlawKind::Check)
    };
    assert_eq!(suggest(&piece, &anywhere).grade, Treatment::Medium);
}

#[test]
fn medium_where_little_still_comes_off_that_face() {
    let piece = vessel(vec![stations(5), read(StationRef::Wall(3), 8.5)]);
    let s = suggest(&piece, &flaw(FlawKind::Knot));
    assert_eq!(s.grade, Treatment::Medium);
    assert_eq!(s.why, GlueWhy::LittleComesOff { comes_off_mm: 1.75 });
}

#[test]
fn nothing_comes_off_in_finish() {
    let piece = vessel(vec![
        F::StageMoved(Stage::Finish),
        mm(DetailField::WallFinish, 9.0),
    ]);
    let s = suggest(&piece, &flaw(FlawKind::Knot));
    assert_eq!(s.grade, Treatment::Medium);
    assert_eq!(s.why, GlueWhy::LittleComesOff { comes_off_mm: 0.0 });
    // A hairline takes nothing thicker, and that its stain stays is said.
    let s = suggest(&piece, &flaw(FlawKind::Check));
    assert_eq!(s.grade, Treatment::Thin);
    assert!(s.stain_stays());
}

#[test]
fn medium_bridges_the_gaps_of_bark_and_thin_goes_into_a_hairline() {
    let piece = vessel(vec![]);
    assert_eq!(
        suggest(&piece, &flaw(FlawKind::BarkInclusion)).why,
        GlueWhy::Gap
    );
    for kind in [FlawKind::Check, FlawKind::RingShake] {
        let s = suggest(&piece, &flaw(kind));
        assert_eq!(s.grade, Treatment::Thin);
        assert_eq!(s.why, GlueWhy::Hairline { comes_off_mm: 2.5 });
        assert!(is_crack(kind));
    }
    assert!(!is_crack(FlawKind::Knot));
}

#[test]
fn the_floor_goes_by_the_floor() {
    // Floor wanted 12 rough, 7 at the finish.
    let piece = vessel(vec![read(StationRef::Floor, 13.0)]);
    assert!((comes_off(&piece, Some(StationRef::Floor)) - 3.0).abs() < 1e-9);
    // A wall thinner than the finish wall loses nothing more, never less than nothing.
    let thin = vessel(vec![stations(5), read(StationRef::Wall(1), 3.0)]);
    assert!(comes_off(&thin, Some(StationRef::Wall(1))).abs() < 1e-9);
}

fn treated(treatment: Treatment, face: Option<Face>) -> F {
    F::FlawTreated(FlawTreated {
        flaw: FlawId::new("f1").unwrap(),
        treatment,
        face,
        goes: None,
        look_again: None,
    })
}

fn left_to_treat(through: bool, more: Vec<F>) -> Option<Face> {
    let note = FlawNote {
        through,
        ..flaw(FlawKind::Knot)
    };
    let piece = vessel([vec![F::FlawFound(note)], more].concat());
    face_to_treat(&piece.flaws[0])
}

#[test]
fn what_goes_through_is_treated_on_both_faces() {
    let thin = |face| treated(Treatment::Thin, face);
    let (outside, inside) = (Some(Face::Outside), Some(Face::Inside));
    assert_eq!(left_to_treat(true, vec![]), Some(Face::Both));
    assert_eq!(left_to_treat(true, vec![thin(outside)]), inside);
    assert_eq!(left_to_treat(true, vec![thin(inside)]), outside);
    assert_eq!(
        left_to_treat(true, vec![thin(inside), treated(Treatment::Wax, outside)]),
        None
    );
    assert_eq!(left_to_treat(true, vec![thin(Some(Face::Both))]), None);
    // A face that was not said is not counted.
    assert_eq!(left_to_treat(true, vec![thin(None)]), Some(Face::Both));
    assert_eq!(left_to_treat(false, vec![]), None);
    // Leaving it until dry is a decision, and what is gone wants nothing.
    assert_eq!(
        left_to_treat(true, vec![treated(Treatment::Left, None)]),
        None
    );
    let gone = F::FlawLooked {
        flaw: FlawId::new("f1").unwrap(),
        change: FlawChange::Gone,
        size_mm: None,
        look_again: None,
    };
    assert_eq!(left_to_treat(true, vec![gone]), None);
}
