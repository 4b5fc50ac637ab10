//! Promises of True. Every rule here is common practice, no source.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::diary::DiaryEntry;
use evenwall_piece::fact::{
    Clock, FlawNote, FlawTreated, Measure, PieceFact as F, Reading, RoundReading, StationRef,
};
use evenwall_piece::ids::FlawId;
use evenwall_piece::piece::Piece;
use evenwall_piece::shop::{Jaws, Shop};
use evenwall_piece::stage::Stage;
use evenwall_piece::truing::{
    DoNotSpin, Fit, do_not_spin, first_to_look_at, most_left, ovality, spigot_fit, wall_to_true,
    walls_there,
};
use evenwall_piece::vocabulary::{
    CrackAnswer, FlawChange, FlawKind, RoundHow, Taken, Treatment, TrueDecision,
};
use support::{fold, line, line_id, retracts};

fn found(id: &str, kind: FlawKind, through: bool, station: Option<StationRef>) -> F {
    F::FlawFound(FlawNote {
        flaw: FlawId::new(id).unwrap(),
        kind,
        station,
        clock: None,
        size_mm: None,
        through,
        note: String::new(),
    })
}

fn glued(id: &str) -> F {
    F::FlawTreated(FlawTreated {
        flaw: FlawId::new(id).unwrap(),
        treatment: Treatment::Thin,
        face: None,
        goes: None,
        look_again: None,
    })
}

fn gone(id: &str) -> F {
    F::FlawLooked {
        flaw: FlawId::new(id).unwrap(),
        change: FlawChange::Gone,
        size_mm: None,
        look_again: None,
    }
}

fn piece(facts: Vec<F>) -> Piece {
    fold(&[line("a", 1, 1, [vec![F::Created], facts].concat())])
}

#[test]
fn a_crack_through_the_wall_speaks_against_spinning_also_once_it_is_glued() {
    let through = found("c", FlawKind::Check, true, None);
    assert_eq!(
        do_not_spin(&piece(vec![through.clone()])),
        Some(DoNotSpin::Through)
    );
    let filled = piece(vec![through.clone(), glued("c")]);
    assert_eq!(do_not_spin(&filled), Some(DoNotSpin::Through));
    assert_eq!(do_not_spin(&piece(vec![through, gone("c")])), None);
    // A knot that goes through is no crack.
    assert_eq!(
        do_not_spin(&piece(vec![found("k", FlawKind::Knot, true, None)])),
        None
    );
}

#[test]
fn rim_and_floor_speak_against_spinning() {
    let answer = |a| piece(vec![F::Cracks(a)]);
    assert_eq!(
        do_not_spin(&answer(CrackAnswer::RimOrFloor)),
        Some(DoNotSpin::RimOrFloor)
    );
    assert_eq!(do_not_spin(&answer(CrackAnswer::Hairline)), None);
    let floor = found("c", FlawKind::Check, false, Some(StationRef::Floor));
    assert_eq!(
        do_not_spin(&piece(vec![floor, F::Cracks(CrackAnswer::None)])),
        Some(DoNotSpin::InFloor)
    );
}

#[test]
fn cracks_come_first_then_what_was_glued_and_nothing_that_was_cut_away() {
    let piece = piece(vec![
        found("k", FlawKind::Knot, false, None),
        glued("k"),
        found("p", FlawKind::Pith, false, None),
        found("c", FlawKind::Check, false, None),
        found("g", FlawKind::RingShake, false, None),
        glued("g"),
        found("x", FlawKind::Check, false, None),
        gone("x"),
    ]);
    let ids: Vec<&str> = first_to_look_at(&piece)
        .iter()
        .map(|f| f.note.flaw.as_str())
        .collect();
    assert_eq!(ids, ["c", "g", "k"]);
}

fn read(station: StationRef, hour: u8, wall: f64) -> F {
    F::Reading(Reading {
        station,
        position: Clock::new(hour).unwrap(),
        wall_mm: Some(Measure::plain(wall)),
        feel: None,
        taken: Taken::Callipers,
    })
}

fn oval(longest: f64, shortest: f64) -> F {
    F::Oval {
        longest_mm: Measure::plain(longest),
        shortest_mm: Measure::plain(shortest),
    }
}

#[test]
fn the_wall_is_the_thinnest_read_last_before_the_oval_and_never_the_floor() {
    let first = vec![
        F::Created,
        read(StationRef::Wall(1), 12, 9.0),
        read(StationRef::Wall(1), 12, 10.5),
        read(StationRef::Wall(2), 6, 10.0),
        read(StationRef::Floor, 12, 7.0),
    ];
    let before = fold(&[line("a", 1, 1, first.clone())]);
    assert_eq!(wall_to_true(&before), Some((StationRef::Wall(2), 10.0)));
    let after = fold(&[
        line("a", 1, 1, first),
        line("a", 2, 2, vec![oval(195.0, 187.0)]),
        line("a", 3, 3, vec![read(StationRef::Wall(2), 6, 6.5)]),
    ]);
    assert_eq!(wall_to_true(&after), Some((StationRef::Wall(2), 10.0)));
    assert!((ovality(after.finish.oval.as_ref().unwrap()) - 8.0).abs() < 1e-12);
    assert_eq!(wall_to_true(&piece(vec![])), None);
}

#[test]
fn half_the_difference_comes_off_the_wall() {
    // 10 - (195 - 187) / 2 = 6, and 10 - (200 - 176) / 2 = -2: common practice, no source.
    assert!((most_left(10.0, 195.0, 187.0) - 6.0).abs() < 1e-12);
    assert!((most_left(10.0, 200.0, 176.0) + 2.0).abs() < 1e-12);
}

fn jaws(id: &str, smallest: f64, largest: f64) -> Jaws {
    Jaws {
        id: id.into(),
        name: format!("{id} jaws"),
        smallest_mm: smallest,
        largest_mm: largest,
    }
}

#[test]
fn the_spigot_is_tried_against_the_jaws_of_the_piece_then_the_shops_then_50_mm() {
    let plain = piece(vec![]);
    let mut shop = Shop::default();
    let fit = spigot_fit(&plain, &shop, 52.0);
    assert_eq!((fit.jaws.is_none(), fit.fit), (true, Fit::Fits));
    assert_eq!(spigot_fit(&plain, &shop, 49.5).fit, Fit::TooSmall);

    shop.jaws = vec![jaws("small", 38.0, 46.0), jaws("large", 60.0, 75.0)];
    let fit = spigot_fit(&plain, &shop, 44.0);
    assert_eq!(
        (fit.jaws.unwrap().id.as_str(), fit.fit),
        ("small", Fit::Fits)
    );
    // Between the two, 48 is nearer to the small ones.
    let fit = spigot_fit(&plain, &shop, 48.0);
    assert_eq!(
        (fit.jaws.unwrap().id.as_str(), fit.fit),
        ("small", Fit::TooLarge)
    );

    let named = piece(vec![F::Detail {
        field: DetailField::Jaws,
        value: Some(DetailValue::Text("Large jaws".into())),
    }]);
    let fit = spigot_fit(&named, &shop, 44.0);
    assert_eq!(
        (fit.jaws.unwrap().id.as_str(), fit.fit),
        ("large", Fit::TooSmall)
    );
    // Jaws that the shop does not know have no sizes.
    let strange = piece(vec![F::Detail {
        field: DetailField::Jaws,
        value: Some(DetailValue::Text("somebody's".into())),
    }]);
    assert!(spigot_fit(&strange, &shop, 44.0).jaws.is_none());
}

#[test]
fn what_an_earlier_true_was_told_does_not_count_for_a_later_one() {
    let told = || {
        vec![
            F::StageMoved(Stage::True),
            F::Cracks(CrackAnswer::RimOrFloor),
            F::Oval {
                longest_mm: Measure::plain(195.0),
                shortest_mm: Measure::plain(188.0),
            },
            F::OvalAt {
                station: 2,
                longest_mm: Measure::plain(180.0),
                shortest_mm: Measure::plain(175.0),
            },
            F::SpigotTrued(Measure::plain(52.0)),
            F::TrueDecided {
                decision: TrueDecision::Fill,
                reason: String::new(),
            },
            F::Grits("120".into()),
        ]
    };
    let asked_anew = |stages: &[Stage]| {
        let moves = stages.iter().map(|s| F::StageMoved(*s)).collect();
        let piece = piece([told(), moves].concat());
        let finish = &piece.finish;
        let gone = finish.cracks.is_none();
        assert_eq!(finish.oval.is_none(), gone);
        assert_eq!(finish.ovals.is_empty(), gone);
        assert_ne!(finish.oval_measured(), gone);
        assert_eq!(finish.spigot_mm.is_none(), gone);
        assert_eq!(finish.decision.is_none(), gone);
        assert_eq!(do_not_spin(&piece).is_none(), gone);
        // Sanding is no answer of True, and the diary tells all of it.
        assert_eq!(finish.grits.len(), 1);
        let cracks = |e: &&DiaryEntry| matches!(e.fact, F::Cracks(_)) && !e.retracted;
        assert_eq!(piece.diary.iter().filter(cracks).count(), 1);
        gone
    };
    use Stage::{Air, Bag, Finish, Indoors, Stabilise, True};
    assert!(asked_anew(&[Indoors, True]));
    assert!(asked_anew(&[Bag, Air, True]));
    assert!(asked_anew(&[Bag, Stabilise, True]));
    // Without drying between it is the same True.
    assert!(!asked_anew(&[]));
    assert!(!asked_anew(&[Stabilise, True]));
    assert!(!asked_anew(&[Finish, True]));
    assert!(!asked_anew(&[Indoors]), "not before it is in True again");
}

#[test]
fn taking_back_the_way_into_a_later_true_brings_its_answers_back() {
    let lines = [
        line(
            "a",
            1,
            1,
            vec![
                F::Created,
                F::StageMoved(Stage::True),
                F::Cracks(CrackAnswer::Hairline),
                F::StageMoved(Stage::Indoors),
            ],
        ),
        line("a", 2, 2, vec![F::StageMoved(Stage::True)]),
    ];
    assert_eq!(fold(&lines).finish.cracks, None);
    let undone = [&lines[..], &[retracts("a", 3, 3, line_id("a", 2))]].concat();
    let answer = fold(&undone).finish.cracks.map(|(_, a)| a);
    assert_eq!(answer, Some(CrackAnswer::Hairline));
}

#[test]
fn walls_read_dry_stand_for_the_station_once_there_is_one() {
    let walls = |facts: Vec<F>| walls_there(&piece(facts), 2);
    let green = vec![
        read(StationRef::Wall(2), 12, 10.0),
        read(StationRef::Wall(2), 6, 11.0),
        read(StationRef::Wall(1), 12, 9.0),
    ];
    let seen: Vec<_> = walls(green.clone())
        .iter()
        .map(|w| (w.position.hour(), w.mm, w.dry))
        .collect();
    assert_eq!(seen, [(12, 10.0, false), (6, 11.0, false)]);
    let dry = vec![
        F::StageMoved(Stage::True),
        read(StationRef::Wall(2), 3, 9.5),
        F::OvalAt {
            station: 2,
            longest_mm: Measure::plain(195.0),
            shortest_mm: Measure::plain(188.0),
        },
    ];
    let seen = walls([green, dry].concat());
    assert_eq!(seen.len(), 1);
    assert_eq!((seen[0].mm, seen[0].dry), (9.5, true));
}

#[test]
fn an_oval_at_a_station_counts_until_the_stations_move() {
    let laid = |count, depths: &[f64]| F::Stations {
        count,
        depths_mm: depths.to_vec(),
    };
    let round = |how, values: &[f64]| F::OvalRound {
        station: 1,
        how,
        readings: values
            .iter()
            .enumerate()
            .map(|(i, v)| RoundReading {
                turn_deg: 45.0 * i as f64,
                mm: Measure::plain(*v),
            })
            .collect(),
    };
    let from_centre = [70.0, 69.0, 68.0, 69.5, 70.5, 69.0, 67.5, 69.5];
    let facts = vec![
        laid(2, &[20.0, 80.0]),
        round(RoundHow::FromCentre, &from_centre),
    ];
    let kept = piece(facts.clone());
    // Opposite distances make a diameter: 70 + 70.5 and 68 + 67.5.
    let span = kept.finish.ovals[&1].measured.span_mm();
    assert_eq!(span, Some((140.5, 135.5)));
    let moved = piece([facts, vec![laid(2, &[30.0, 80.0])]].concat());
    assert!(moved.finish.ovals.is_empty());
    let across = piece(vec![round(RoundHow::Diameters, &[140.0, 138.0, 136.0])]);
    let span = across.finish.ovals[&1].measured.span_mm();
    assert_eq!(span, Some((140.0, 136.0)));
}
