//! Any fact whatever: strategies over every kind of fact about a piece.

use chrono::NaiveDate;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, End, FlawNote, FlawTreated, ForecastMade, Measure, PieceFact, Reading, RoundReading,
    StationRef,
};
use evenwall_piece::ids::{EntryId, FlawId, LineId, PhotoId};
use evenwall_piece::line::Line;
use evenwall_piece::photo::{
    Measured, PhotoHash, PhotoMarks, PhotoNote, PhotoOn, PhotoTaken, Scale, Span, Spot,
};
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{
    BagFeel, CrackAnswer, Face, FlawChange, FlawKind, LostHow, LostWhere, LostWhy, MassChange,
    Method, RoundHow, Taken, Treatment, TrueDecision, WallFeel,
};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

use super::{line_id, minutes};

/// The devices of the invented workshops.
pub const DEVICES: [&str; 3] = ["bench", "phone", "tablet"];

/// A moment up to two years off the start, either way.
pub fn moment() -> impl Strategy<Value = Moment> {
    (-1_000_000_i64..1_000_000).prop_map(minutes)
}

fn day() -> impl Strategy<Value = NaiveDate> {
    moment().prop_map(|m| m.date_naive())
}

fn text() -> impl Strategy<Value = String> {
    select(vec!["", "beech", "ash", "Łódź", "9,5 mm", "two\nlines"]).prop_map(str::to_owned)
}

fn measure() -> impl Strategy<Value = Measure> {
    (-10.0..400.0_f64, text()).prop_map(|(value, typed)| Measure { value, typed })
}

fn station() -> impl Strategy<Value = StationRef> {
    prop_oneof![
        (0..10_u8).prop_map(StationRef::Wall),
        Just(StationRef::Floor)
    ]
}

fn clock() -> impl Strategy<Value = Clock> {
    (1..=12_u8).prop_map(|h| Clock::new(h).unwrap())
}

fn flaw() -> impl Strategy<Value = FlawId> {
    select(vec!["f1", "f2", "f3"]).prop_map(|id| FlawId::new(id).unwrap())
}

/// One of a few lines, so that lines meet.
pub fn some_line() -> impl Strategy<Value = LineId> {
    (select(&DEVICES[..]), 1..12_u64).prop_map(|(d, n)| line_id(d, n))
}

fn some_entry() -> impl Strategy<Value = EntryId> {
    (some_line(), 0..3_u16).prop_map(|(line, part)| EntryId { line, part })
}

fn reading() -> impl Strategy<Value = Reading> {
    let feel = of(select(WallFeel::ALL));
    (station(), clock(), of(measure()), feel, select(Taken::ALL)).prop_map(
        |(station, position, wall_mm, feel, taken)| Reading {
            station,
            position,
            wall_mm,
            feel,
            taken,
        },
    )
}

fn flaw_note() -> impl Strategy<Value = FlawNote> {
    let place = (of(station()), of(clock()));
    let rest = (of(measure()), any::<bool>(), text());
    (flaw(), select(FlawKind::ALL), place, rest).prop_map(
        |(flaw, kind, (station, clock), (size_mm, through, note))| FlawNote {
            flaw,
            kind,
            station,
            clock,
            size_mm,
            through,
            note,
        },
    )
}

fn flaw_treated() -> impl Strategy<Value = FlawTreated> {
    let face = of(select(Face::ALL));
    let goes = of(1..9_u8);
    (flaw(), select(Treatment::ALL), face, goes, of(day())).prop_map(
        |(flaw, treatment, face, goes, look_again)| FlawTreated {
            flaw,
            treatment,
            face,
            goes,
            look_again,
        },
    )
}

fn end() -> impl Strategy<Value = End> {
    let why = vec(select(LostWhy::ALL), 0..3);
    prop_oneof![
        Just(End::Finished),
        (select(LostWhere::ALL), select(LostHow::ALL), why, text()).prop_map(
            |(place, how, why, note)| End::Lost {
                place,
                how,
                why,
                note
            }
        ),
        Just(End::GivenAway),
        Just(End::LeftAsIs),
        Just(End::CantFind),
    ]
}

fn photo() -> impl Strategy<Value = PhotoId> {
    select(vec!["ph1", "ph2"]).prop_map(|id| PhotoId::new(id).unwrap())
}

fn hash() -> impl Strategy<Value = PhotoHash> {
    select(vec!["a", "b", "c"]).prop_map(|digit| PhotoHash::new(&digit.repeat(64)).unwrap())
}

fn photo_note() -> impl Strategy<Value = PhotoNote> {
    let taken = moment().prop_map(|m| PhotoTaken {
        local: m.naive_local(),
        offset: None,
    });
    let on = prop_oneof![
        flaw().prop_map(PhotoOn::Flaw),
        some_entry().prop_map(PhotoOn::Entry),
        Just(PhotoOn::Portrait),
        some_entry().prop_map(PhotoOn::BagCheck),
        Just(PhotoOn::Finished),
    ];
    (photo(), hash(), hash(), of(taken), 0..2560_u32, on).prop_map(
        |(photo, stored, source, taken, width_px, on)| PhotoNote {
            photo,
            stored,
            source,
            taken,
            width_px,
            height_px: 1920,
            on,
        },
    )
}

fn photo_marks() -> impl Strategy<Value = PhotoMarks> {
    let spot = || (-0.5..1.5_f64, 0.0..1.0_f64).prop_map(|(x, y)| Spot { x, y });
    let span = move || (spot(), spot()).prop_map(|(from, to)| Span { from, to });
    let scale = (span(), measure()).prop_map(|(span, known_mm)| Scale { span, known_mm });
    let crack = (span(), 0.0..90.0_f64).prop_map(|(span, length_mm)| Measured { span, length_mm });
    (photo(), of(spot()), of(scale), of(crack)).prop_map(|(photo, spot, scale, crack)| PhotoMarks {
        photo,
        spot,
        scale,
        crack,
    })
}

fn detail() -> impl Strategy<Value = PieceFact> {
    let value = prop_oneof![
        measure().prop_map(DetailValue::Length),
        text().prop_map(DetailValue::Text)
    ];
    (select(DetailField::ALL), of(value))
        .prop_map(|(field, value)| PieceFact::Detail { field, value })
}

/// Any fact but a correction or a retraction.
pub fn plain_fact() -> BoxedStrategy<PieceFact> {
    use PieceFact as F;
    let steps = prop_oneof![
        Just(F::Created),
        select(Stage::ALL).prop_map(F::StageMoved),
        select(Method::ALL).prop_map(F::MethodChosen),
        Just(F::HalfTurned),
        Just(F::Resumed),
        of(day()).prop_map(|until| F::Paused { until }),
        Just(F::Unpaused),
        Just(F::NotFound),
        end().prop_map(F::Ended),
        Just(F::PutBack),
        Just(F::Deleted),
        Just(F::Undeleted),
    ];
    let tick = (
        select(vec!["shape-drill", "own-bag-1"]),
        text(),
        any::<bool>(),
    );
    let outside = (0..10_u8, of(measure()));
    let shape = prop_oneof![
        detail(),
        tick.prop_map(|(line, text, on)| F::Ticked {
            line: line.to_owned(),
            text,
            on
        }),
        (0..10_u8, vec(0.0..300.0_f64, 0..9))
            .prop_map(|(count, depths_mm)| F::Stations { count, depths_mm }),
        reading().prop_map(F::Reading),
        outside.prop_map(|(station, diameter_mm)| F::OutsideDiameter {
            station,
            diameter_mm
        }),
    ];
    let looked = (flaw(), select(FlawChange::ALL), of(measure()), of(day()));
    let flaws = prop_oneof![
        flaw_note().prop_map(F::FlawFound),
        flaw_treated().prop_map(F::FlawTreated),
        looked.prop_map(|(flaw, change, size_mm, look_again)| F::FlawLooked {
            flaw,
            change,
            size_mm,
            look_again,
        }),
    ];
    let look = (of(select(BagFeel::ALL)), any::<bool>(), any::<bool>());
    let drying = prop_oneof![
        look.prop_map(|(feel, mould, crack)| F::Look { feel, mould, crack }),
        (measure(), 0.0..90.0_f64).prop_map(|(mass_g, tare_g)| F::Weighed { mass_g, tare_g }),
        select(MassChange::ALL).prop_map(F::MassChanged),
        (of((day(), day())), of((day(), day())), 1..40_u32).prop_map(
            |(into_house, to_finish, weighings)| {
                F::ForecastMade(ForecastMade {
                    into_house,
                    to_finish,
                    weighings,
                })
            }
        ),
    ];
    let truing = prop_oneof![
        select(CrackAnswer::ALL).prop_map(F::Cracks),
        (measure(), measure()).prop_map(|(longest_mm, shortest_mm)| F::Oval {
            longest_mm,
            shortest_mm
        }),
        (0..10_u8, measure(), measure()).prop_map(|(station, longest_mm, shortest_mm)| F::OvalAt {
            station,
            longest_mm,
            shortest_mm
        }),
        (
            0..10_u8,
            select(RoundHow::ALL),
            vec((0.0..360.0_f64, measure()), 0..9)
        )
            .prop_map(|(station, how, readings)| F::OvalRound {
                station,
                how,
                readings: readings
                    .into_iter()
                    .map(|(turn_deg, mm)| RoundReading { turn_deg, mm })
                    .collect()
            }),
        measure().prop_map(F::SpigotTrued),
        (select(TrueDecision::ALL), text())
            .prop_map(|(decision, reason)| F::TrueDecided { decision, reason }),
    ];
    let words = prop_oneof![
        text().prop_map(F::Grits),
        text().prop_map(F::Coat),
        text().prop_map(F::Signed),
        text().prop_map(F::Note),
        (text(), text()).prop_map(|(kind, raw)| F::Unknown { kind, raw }),
    ];
    let photos = prop_oneof![
        3 => photo_note().prop_map(F::PhotoAdded),
        1 => photo().prop_map(F::PhotoRemoved),
        1 => photo().prop_map(F::PhotoBack),
        1 => photo_marks().prop_map(F::PhotoMarked),
    ];
    prop_oneof![2 => photos, 4 => steps, 3 => shape, 3 => flaws, 3 => drying, 2 => truing, 2 => words].boxed()
}

/// Any fact at all; corrections may hold corrections.
pub fn any_fact() -> BoxedStrategy<PieceFact> {
    let retracts = some_line().prop_map(PieceFact::Retracts);
    let leaf = prop_oneof![5 => plain_fact(), 1 => retracts];
    leaf.prop_recursive(2, 4, 1, |inner| {
        let amends = (some_entry(), of(moment()), of(inner.clone()));
        let amends = amends.prop_map(|(entry, at, fact)| PieceFact::Amends {
            entry,
            at,
            fact: fact.map(Box::new),
        });
        prop_oneof![3 => inner, 1 => amends]
    })
    .boxed()
}

/// Any lines at all: ids and places in the fold that clash, times that mean nothing.
pub fn any_lines() -> impl Strategy<Value = Vec<Line<PieceFact>>> {
    let one = (some_line(), 0..15_u64, moment(), moment());
    let one = (one, vec(any_fact(), 0..4)).prop_map(|((id, seq, at, noted_at), facts)| Line {
        id,
        seq,
        at,
        noted_at,
        facts,
    });
    vec(one, 0..25)
}

/// The place of a fact's kind among all kinds. A new kind does not compile here until it is named, and fails the test
/// of the strategies until they invent it.
pub fn kind_index(fact: &PieceFact) -> usize {
    use PieceFact as F;
    match fact {
        F::Created => 0,
        F::Detail { .. } => 1,
        F::StageMoved(_) => 2,
        F::MethodChosen(_) => 3,
        F::HalfTurned => 4,
        F::Resumed => 5,
        F::Paused { .. } => 6,
        F::Unpaused => 7,
        F::Ticked { .. } => 8,
        F::Stations { .. } => 9,
        F::Reading(_) => 10,
        F::OutsideDiameter { .. } => 11,
        F::FlawFound(_) => 12,
        F::FlawTreated(_) => 13,
        F::FlawLooked { .. } => 14,
        F::Look { .. } => 15,
        F::NotFound => 16,
        F::Weighed { .. } => 17,
        F::MassChanged(_) => 18,
        F::Cracks(_) => 19,
        F::Oval { .. } => 20,
        F::SpigotTrued(_) => 21,
        F::TrueDecided { .. } => 22,
        F::Grits(_) => 23,
        F::Coat(_) => 24,
        F::Signed(_) => 25,
        F::Note(_) => 26,
        F::Ended(_) => 27,
        F::PutBack => 28,
        F::Deleted => 29,
        F::Undeleted => 30,
        F::Amends { .. } => 31,
        F::Retracts(_) => 32,
        F::OvalAt { .. } => 33,
        F::OvalRound { .. } => 34,
        F::ForecastMade(_) => 35,
        F::Unknown { .. } => 36,
        F::PhotoAdded(_) => 37,
        F::PhotoRemoved(_) => 38,
        F::PhotoBack(_) => 39,
        F::PhotoMarked(_) => 40,
    }
}

/// How many kinds there are.
pub const KINDS: usize = 41;
