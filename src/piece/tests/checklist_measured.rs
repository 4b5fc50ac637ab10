//! Promises of the checklist: what is recorded anyway ticks its line, and only in its stage.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::collections::HashSet;

use chrono::NaiveDate;
use evenwall_piece::checklist::{BUILT_IN, Link, Measured, lines_for};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, FlawNote, FlawTreated, Measure, PieceFact as F, Reading, StationRef,
};
use evenwall_piece::ids::FlawId;
use evenwall_piece::shop::{Climate, Shop, ShopFact, fold_shop};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, FlawKind, Pith, Room, Taken, Treatment};

use support::words::{in_stage, text};
use support::{fold, line};

fn length(field: DetailField, mm: f64) -> F {
    F::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

fn reading(station: StationRef, taken: Taken) -> F {
    F::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: (taken != Taken::CantReach).then(|| Measure::plain(9.5)),
        feel: None,
        taken,
    })
}

fn weighed(g: f64) -> F {
    F::Weighed {
        mass_g: Measure::plain(g),
        tare_g: 20.0,
    }
}

fn flaw(placed: bool) -> F {
    F::FlawFound(FlawNote {
        flaw: FlawId::new("f1").unwrap(),
        kind: FlawKind::Knot,
        station: placed.then_some(StationRef::Wall(2)),
        clock: placed.then_some(Clock::TWELVE),
        size_mm: None,
        through: false,
        note: String::new(),
    })
}

fn decided(look_again: bool) -> F {
    F::FlawTreated(FlawTreated {
        flaw: FlawId::new("f1").unwrap(),
        treatment: Treatment::Left,
        face: None,
        goes: None,
        look_again: NaiveDate::from_ymd_opt(2026, 7, 1).filter(|_| look_again),
    })
}

/// For each link: facts that do not complete it yet, facts that do, and what then shows.
fn records(link: Link) -> (Vec<F>, Vec<F>, Measured) {
    let stations = |count| F::Stations {
        count,
        depths_mm: Vec::new(),
    };
    let wall = |n, taken| reading(StationRef::Wall(n), taken);
    let half = vec![
        stations(2),
        wall(1, Taken::Callipers),
        wall(9, Taken::Callipers),
    ];
    match link {
        Link::Pith => (
            vec![text(DetailField::Pith, Pith::Unknown.key())],
            vec![text(DetailField::Pith, Pith::Bore.key())],
            Measured::Said,
        ),
        Link::SpigotCut => (
            vec![],
            vec![length(DetailField::SpigotDiameter, 57.0)],
            Measured::Mm(57.0),
        ),
        Link::Height => (
            vec![],
            vec![length(DetailField::Height, 190.0)],
            Measured::Mm(190.0),
        ),
        Link::DepthDrilled => (
            vec![],
            vec![length(DetailField::DepthDrilled, 153.0)],
            Measured::Mm(153.0),
        ),
        Link::Stations => (
            half.clone(),
            [half, vec![wall(2, Taken::CantReach)]].concat(),
            Measured::Of { done: 2, all: 2 },
        ),
        Link::Floor => (
            vec![reading(StationRef::Floor, Taken::CantReach)],
            vec![reading(StationRef::Floor, Taken::DepthRod)],
            Measured::Mm(9.5),
        ),
        Link::FlawsDecided => (
            vec![flaw(false)],
            vec![flaw(false), decided(false)],
            Measured::Of { done: 1, all: 1 },
        ),
        Link::FlawsPlaced => (
            vec![flaw(false)],
            vec![flaw(true)],
            Measured::Of { done: 1, all: 1 },
        ),
        Link::FlawsLookAgain => (
            vec![flaw(true), decided(false)],
            vec![flaw(true), decided(true)],
            Measured::Of { done: 1, all: 1 },
        ),
        Link::WeighedSoFar | Link::Weighed => {
            (vec![], vec![weighed(1270.0)], Measured::Grams(1250.0))
        }
        Link::WeighedThrice => (
            vec![weighed(900.0), weighed(890.0)],
            vec![
                weighed(900.0),
                weighed(890.0),
                weighed(885.0),
                weighed(885.0),
            ],
            Measured::Of { done: 3, all: 3 },
        ),
        // The shop's air is no fact of the piece: see the test below.
        Link::ShopAir => (vec![], vec![], Measured::Said),
        Link::Cracks => (
            vec![],
            vec![F::Cracks(CrackAnswer::Hairline)],
            Measured::Said,
        ),
        Link::Oval => (
            vec![],
            vec![F::Oval {
                longest_mm: Measure::plain(152.0),
                shortest_mm: Measure::plain(148.5),
            }],
            Measured::Oval {
                longest_mm: 152.0,
                shortest_mm: 148.5,
            },
        ),
        Link::SpigotTrued => (
            vec![],
            vec![F::SpigotTrued(Measure::plain(51.0))],
            Measured::Mm(51.0),
        ),
        Link::Coats => (vec![], vec![F::Coat("oil".into())], Measured::Said),
        Link::Signed => (
            vec![],
            vec![F::Signed("ash 2026 K07".into())],
            Measured::Said,
        ),
    }
}

#[test]
fn what_is_recorded_ticks_its_line_and_half_of_it_does_not() {
    for built_in in BUILT_IN {
        let Some(link) = built_in.link.filter(|l| *l != Link::ShopAir) else {
            continue;
        };
        let (not_yet, recorded, shows) = records(link);
        let seen = |facts: Vec<F>| {
            let piece = in_stage(built_in.stage, facts);
            let lines = lines_for(&piece, built_in.stage, &Shop::default());
            lines.into_iter().find(|l| l.id == built_in.id).unwrap()
        };
        assert!(!seen(not_yet).done(), "{}", built_in.id);
        let line = seen(recorded);
        assert_eq!(
            (line.measured, line.done()),
            (Some(shows), true),
            "{}",
            built_in.id
        );
    }
    let linked: HashSet<Link> = BUILT_IN.iter().filter_map(|b| b.link).collect();
    assert_eq!(linked.len(), Link::ALL.len(), "every link has a line");
}

#[test]
fn readings_and_weights_of_another_stage_do_not_tick_this_one() {
    let piece = fold(&[
        line(
            "bench",
            1,
            1,
            vec![F::Created, F::StageMoved(Stage::Hollow)],
        ),
        line("bench", 2, 2, records(Link::Stations).1),
        line("bench", 3, 3, vec![weighed(1300.0)]),
        line("bench", 4, 4, vec![F::StageMoved(Stage::True)]),
    ]);
    let done = |stage, id: &str| {
        let lines = lines_for(&piece, stage, &Shop::default());
        lines.iter().find(|l| l.id == id).unwrap().done()
    };
    assert!(done(Stage::Hollow, "hollow-callipers"));
    assert!(!done(Stage::True, "true-outside"));
    assert!(
        done(Stage::Bag, "bag-weigh"),
        "the weight before the bag is the first"
    );
    assert!(!done(Stage::Air, "air-weigh"));
}

#[test]
fn the_shops_air_read_since_the_stage_began_notes_the_weather() {
    let shop = |seq, room| {
        let climate = ShopFact::Climate(Climate {
            room,
            temp_c: 14.0,
            rh_pct: 72.0,
        });
        fold_shop(vec![line("bench", 1, seq, vec![climate])])
    };
    let piece = fold(&[line(
        "bench",
        1,
        5,
        vec![F::Created, F::StageMoved(Stage::Settle)],
    )]);
    let done = |shop: &Shop| {
        let lines = lines_for(&piece, Stage::Settle, shop);
        lines
            .iter()
            .find(|l| l.id == "settle-weather")
            .unwrap()
            .done()
    };
    assert!(done(&shop(6, Room::Shop)));
    assert!(
        !done(&shop(4, Room::Shop)),
        "read before it came on the shelf"
    );
    assert!(!done(&shop(6, Room::House)));
}
