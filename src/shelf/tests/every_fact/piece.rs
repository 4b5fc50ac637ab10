//! Any fact of a piece.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, End, FlawNote, FlawTreated, ForecastMade, Measure, PieceFact, Reading, RoundReading,
    StationRef,
};
use evenwall_piece::ids::{EntryId, FlawId};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{
    BagFeel, CrackAnswer, Face, FlawChange, FlawKind, LostHow, LostWhere, LostWhy, MassChange,
    Method, RoundHow, Taken, Treatment, TrueDecision, WallFeel,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

use super::{any_of, date, line, moment, number, text};

/// How many kinds [`piece_kind`] tells apart.
pub const PIECE_KINDS: usize = 44;

/// A number for each kind of fact.
pub fn piece_kind(fact: &PieceFact) -> usize {
    match fact {
        PieceFact::Created => 0,
        PieceFact::Detail { .. } => 1,
        PieceFact::StageMoved(_) => 2,
        PieceFact::MethodChosen(_) => 3,
        PieceFact::HalfTurned => 4,
        PieceFact::Resumed => 5,
        PieceFact::Paused { .. } => 6,
        PieceFact::Unpaused => 7,
        PieceFact::Ticked { .. } => 8,
        PieceFact::Stations { .. } => 9,
        PieceFact::Reading(_) => 10,
        PieceFact::OutsideDiameter { .. } => 11,
        PieceFact::FlawFound(_) => 12,
        PieceFact::FlawTreated(_) => 13,
        PieceFact::FlawLooked { .. } => 14,
        PieceFact::Look { .. } => 15,
        PieceFact::NotFound => 16,
        PieceFact::Weighed { .. } => 17,
        PieceFact::MassChanged(_) => 18,
        PieceFact::Cracks(_) => 19,
        PieceFact::Oval { .. } => 20,
        PieceFact::SpigotTrued(_) => 21,
        PieceFact::TrueDecided { .. } => 22,
        PieceFact::Grits(_) => 23,
        PieceFact::Coat(_) => 24,
        PieceFact::Signed(_) => 25,
        PieceFact::Note(_) => 26,
        PieceFact::Ended(End::Finished) => 27,
        PieceFact::Ended(End::Lost { .. }) => 28,
        PieceFact::Ended(End::GivenAway) => 29,
        PieceFact::Ended(End::LeftAsIs) => 30,
        PieceFact::Ended(End::CantFind) => 31,
        PieceFact::PutBack => 32,
        PieceFact::Deleted => 33,
        PieceFact::Undeleted => 34,
        PieceFact::Amends { .. } | PieceFact::Retracts(_) => 35,
        PieceFact::OvalAt { .. } => 36,
        PieceFact::OvalRound { .. } => 37,
        PieceFact::ForecastMade(_) => 38,
        PieceFact::PhotoAdded(_) => 39,
        PieceFact::PhotoRemoved(_) => 40,
        PieceFact::PhotoBack(_) => 41,
        PieceFact::PhotoMarked(_) => 42,
        PieceFact::Unknown { .. } => 43,
    }
}

fn measure() -> BoxedStrategy<Measure> {
    (number(), text())
        .prop_map(|(value, typed)| Measure { value, typed })
        .boxed()
}

fn station() -> BoxedStrategy<StationRef> {
    prop_oneof![
        any::<u8>().prop_map(StationRef::Wall),
        Just(StationRef::Floor)
    ]
    .boxed()
}

fn clock() -> BoxedStrategy<Clock> {
    (1..=12_u8).prop_map(|h| Clock::new(h).unwrap()).boxed()
}

fn flaw() -> BoxedStrategy<FlawId> {
    "[a-z0-9-]{1,12}"
        .prop_map(|t| FlawId::new(&t).unwrap())
        .boxed()
}

fn detail() -> impl Strategy<Value = PieceFact> {
    let value = prop_oneof![
        measure().prop_map(DetailValue::Length),
        text().prop_map(DetailValue::Text)
    ];
    (any_of(DetailField::ALL), option::of(value))
        .prop_map(|(field, value)| PieceFact::Detail { field, value })
}

fn reading() -> impl Strategy<Value = PieceFact> {
    (
        station(),
        clock(),
        option::of(measure()),
        option::of(any_of(WallFeel::ALL)),
        any_of(Taken::ALL),
    )
        .prop_map(|(station, position, wall_mm, feel, taken)| {
            PieceFact::Reading(Reading {
                station,
                position,
                wall_mm,
                feel,
                taken,
            })
        })
}

fn flaws() -> impl Strategy<Value = PieceFact> {
    prop_oneof![
        (
            flaw(),
            any_of(FlawKind::ALL),
            option::of(station()),
            option::of(clock()),
            option::of(measure()),
            any::<bool>(),
            text()
        )
            .prop_map(|(flaw, kind, station, clock, size_mm, through, note)| {
                PieceFact::FlawFound(FlawNote {
                    flaw,
                    kind,
                    station,
                    clock,
                    size_mm,
                    through,
                    note,
                })
            }),
        (
            flaw(),
            any_of(Treatment::ALL),
            option::of(any_of(Face::ALL)),
            option::of(any::<u8>()),
            option::of(date())
        )
            .prop_map(|(flaw, treatment, face, goes, look_again)| {
                PieceFact::FlawTreated(FlawTreated {
                    flaw,
                    treatment,
                    face,
                    goes,
                    look_again,
                })
            }),
        (
            flaw(),
            any_of(FlawChange::ALL),
            option::of(measure()),
            option::of(date()),
        )
            .prop_map(|(flaw, change, size_mm, look_again)| {
                PieceFact::FlawLooked {
                    flaw,
                    change,
                    size_mm,
                    look_again,
                }
            }),
    ]
}

fn ended() -> impl Strategy<Value = PieceFact> {
    prop_oneof![
        Just(End::Finished),
        Just(End::GivenAway),
        Just(End::LeftAsIs),
        Just(End::CantFind),
        (
            any_of(LostWhere::ALL),
            any_of(LostHow::ALL),
            vec(any_of(LostWhy::ALL), 0..3),
            text()
        )
            .prop_map(|(place, how, why, note)| End::Lost {
                place,
                how,
                why,
                note
            }),
    ]
    .prop_map(PieceFact::Ended)
}

fn numbers() -> impl Strategy<Value = PieceFact> {
    prop_oneof![
        (any::<u8>(), vec(number(), 0..5))
            .prop_map(|(count, depths_mm)| PieceFact::Stations { count, depths_mm }),
        (any::<u8>(), option::of(measure())).prop_map(|(station, diameter_mm)| {
            PieceFact::OutsideDiameter {
                station,
                diameter_mm,
            }
        }),
        (measure(), number()).prop_map(|(mass_g, tare_g)| PieceFact::Weighed { mass_g, tare_g }),
        (measure(), measure()).prop_map(|(longest_mm, shortest_mm)| PieceFact::Oval {
            longest_mm,
            shortest_mm
        }),
        (any::<u8>(), measure(), measure()).prop_map(|(station, longest_mm, shortest_mm)| {
            PieceFact::OvalAt {
                station,
                longest_mm,
                shortest_mm,
            }
        }),
        (
            any::<u8>(),
            any_of(RoundHow::ALL),
            vec((number(), measure()), 0..5)
        )
            .prop_map(|(station, how, readings)| PieceFact::OvalRound {
                station,
                how,
                readings: readings
                    .into_iter()
                    .map(|(turn_deg, mm)| RoundReading { turn_deg, mm })
                    .collect()
            }),
        measure().prop_map(PieceFact::SpigotTrued),
    ]
}

fn words() -> impl Strategy<Value = PieceFact> {
    prop_oneof![
        any_of(Stage::ALL).prop_map(PieceFact::StageMoved),
        any_of(Method::ALL).prop_map(PieceFact::MethodChosen),
        option::of(date()).prop_map(|until| PieceFact::Paused { until }),
        (text(), text(), any::<bool>()).prop_map(|(line, text, on)| PieceFact::Ticked {
            line,
            text,
            on
        }),
        (
            option::of(any_of(BagFeel::ALL)),
            any::<bool>(),
            any::<bool>()
        )
            .prop_map(|(feel, mould, crack)| PieceFact::Look { feel, mould, crack }),
        any_of(MassChange::ALL).prop_map(PieceFact::MassChanged),
        (
            option::of((date(), date())),
            option::of((date(), date())),
            0..1000_u32
        )
            .prop_map(|(into_house, to_finish, weighings)| {
                PieceFact::ForecastMade(ForecastMade {
                    into_house,
                    to_finish,
                    weighings,
                })
            }),
        any_of(CrackAnswer::ALL).prop_map(PieceFact::Cracks),
        (any_of(TrueDecision::ALL), text())
            .prop_map(|(decision, reason)| PieceFact::TrueDecided { decision, reason }),
        text().prop_map(PieceFact::Grits),
        text().prop_map(PieceFact::Coat),
        text().prop_map(PieceFact::Signed),
        text().prop_map(PieceFact::Note),
    ]
}

fn bare() -> impl Strategy<Value = PieceFact> {
    prop_oneof![
        Just(PieceFact::Created),
        Just(PieceFact::HalfTurned),
        Just(PieceFact::Resumed),
        Just(PieceFact::Unpaused),
        Just(PieceFact::NotFound),
        Just(PieceFact::PutBack),
        Just(PieceFact::Deleted),
        Just(PieceFact::Undeleted),
        Just(PieceFact::Unknown {
            kind: "scanned".into(),
            raw: r#"{"fact":"scanned","points":[1.5,2]}"#.into()
        }),
    ]
}

/// Any fact of a piece, corrections with any fact inside them.
pub fn piece_facts() -> impl Strategy<Value = PieceFact> {
    let plain = prop_oneof![
        super::photo::photo_facts(),
        detail(),
        reading(),
        flaws(),
        ended(),
        numbers(),
        words(),
        bare()
    ]
    .boxed();
    let amends = (
        line(),
        any::<u16>(),
        option::of(moment()),
        option::of(plain.clone()),
    )
        .prop_map(|(line, part, at, fact)| PieceFact::Amends {
            entry: EntryId { line, part },
            at,
            fact: fact.map(Box::new),
        });
    prop_oneof![7 => plain, 1 => amends, 1 => line().prop_map(PieceFact::Retracts)]
}
