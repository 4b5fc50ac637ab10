//! What is foreseen of a drying piece, through its screens: ranges, moisture, thick against thin, and the agenda.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Room, Taken};

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("m02").unwrap()
}

fn mm(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

fn text(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    }
}

fn wall(station: StationRef, mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::Callipers,
    })
}

/// Weights of a slow, thick vessel, made with the drying model; invented.
const WEIGHTS: [(&str, f64); 11] = [
    ("2025-12-01", 1293.0),
    ("2025-12-08", 1250.0),
    ("2025-12-16", 1199.0),
    ("2025-12-20", 1174.0),
    ("2026-01-03", 881.0),
    ("2026-01-10", 860.0),
    ("2026-01-20", 845.0),
    ("2026-01-30", 838.0),
    ("2026-02-09", 834.0),
    ("2026-02-20", 831.0),
    ("2026-03-05", 829.0),
];

/// M02: bagged on 1 December, neck open on the 20th, in Settle since 10 January; the first so many weights.
fn store(weights: &[(&str, f64)], settings: &str) -> MemoryStore {
    let mut store = MemoryStore::default();
    let mut line = |day: &str, facts| {
        let at = moment(&format!("{day}T10:00:00+00:00"));
        store.append_piece(&id(), at, at, facts).map(drop).unwrap();
    };
    let mut made = vec![
        PieceFact::Created,
        text(DetailField::Mark, "M02"),
        text(DetailField::Wood, "ash-white"),
        mm(DetailField::Diameter, 150.0),
        mm(DetailField::Height, 160.0),
        PieceFact::Stations {
            count: 7,
            depths_mm: vec![8.0, 30.0, 52.0, 74.0, 96.0, 118.0, 140.0],
        },
        wall(StationRef::Floor, 12.0),
    ];
    let walls = [22.0, 23.0, 24.0, 24.0, 25.0, 24.0, 26.0];
    made.extend(
        (1..)
            .zip(walls)
            .map(|(n, mm)| wall(StationRef::Wall(n), mm)),
    );
    made.push(PieceFact::StageMoved(Stage::Bag));
    line("2025-12-01", made);
    for (day, feel) in [
        ("2025-12-03", BagFeel::Wet),
        ("2025-12-06", BagFeel::Wet),
        ("2025-12-09", BagFeel::Damp),
        ("2025-12-13", BagFeel::Damp),
        ("2025-12-16", BagFeel::Nothing),
    ] {
        let look = PieceFact::Look {
            feel: Some(feel),
            mould: false,
            crack: false,
        };
        line(day, vec![look]);
    }
    line("2025-12-20", vec![PieceFact::StageMoved(Stage::Air)]);
    line("2026-01-10", vec![PieceFact::StageMoved(Stage::Settle)]);
    for (day, g) in weights {
        let fact = PieceFact::Weighed {
            mass_g: Measure::plain(*g),
            tare_g: 0.0,
        };
        line(day, vec![fact]);
    }
    let read_on = [
        "2025-12-01",
        "2025-12-14",
        "2025-12-28",
        "2026-01-11",
        "2026-01-25",
        "2026-02-08",
        "2026-02-22",
        "2026-03-08",
    ];
    for day in read_on {
        let at = moment(&format!("{day}T11:00:00+00:00"));
        for (room, temp_c, rh_pct) in [(Room::Shop, 15.0, 62.0), (Room::House, 20.0, 47.0)] {
            let climate = Climate {
                room,
                temp_c,
                rh_pct,
            };
            store
                .append_shop(at, at, vec![ShopFact::Climate(climate)])
                .unwrap();
        }
    }
    store.save_device_settings(settings).unwrap();
    store
}

fn bench(weights: &[(&str, f64)], settings: &str) -> Bench {
    let bench = Bench::at(Box::new(store(weights, settings)), moment(START), false);
    bench.screens.act(Action::Open(Page::Drying(id())));
    bench
}

/// So tall that all of the page is on screen.
fn tall(bench: &Bench) {
    bench.resize(390.0, 2600.0, 1.5);
}

#[test]
fn the_ranges_come_when_they_are_reckoned_and_the_page_never_waits() {
    let bench = bench(&WEIGHTS, "{}");
    assert!(bench.reads("Weighed 7 days ago"));
    assert!(bench.reads("Looking ahead"), "{:#?}", bench.labels());
    bench.settle();
    tall(&bench);
    assert!(!bench.reads("Looking ahead"));
    for part in [
        "Into the house: ",
        "To finish-turn: ",
        "If the room stays as it is",
        "about 12",
    ] {
        assert!(bench.reads(part), "{part}: {:#?}", bench.labels());
    }
    bench.pictures_of("forecast-ranges");
    bench.touch("Moisture");
    bench.pictures_of("forecast-moisture");
    bench.touch("30 days");
    bench.picture("forecast-30-days");
}

#[test]
fn the_whole_page_in_one_tall_picture() {
    let bench = bench(&WEIGHTS, "{}");
    bench.settle();
    tall(&bench);
    bench.picture("forecast-tall");
    bench.resize(360.0, 3600.0, 1.5);
    bench
        .screens
        .look(evenwall_app::device::ThemeChoice::Dark, 1.6);
    bench.picture("forecast-tall-huge-dark");
}

#[test]
fn numbers_of_thick_and_thin_are_one_tap_away() {
    let bench = bench(&WEIGHTS, "{}");
    bench.settle();
    tall(&bench);
    bench.touch("Show the numbers");
    assert!(
        bench.reads("It does not say whether a piece cracks"),
        "{:#?}",
        bench.labels()
    );
    bench.pictures_of("forecast-uneven");
    bench.touch_last("Close");
    assert!(!bench.reads("It does not say whether a piece cracks"));
}

#[test]
fn three_weights_say_too_early_and_the_road_in_weeks() {
    let bench = bench(&WEIGHTS[..3], "{}");
    bench.settle();
    assert!(
        bench.reads("Too early to say when"),
        "{:#?}",
        bench.labels()
    );
    assert!(bench.reads("The whole road: "), "{:#?}", bench.labels());
    assert!(!bench.reads("Into the house: "));
    bench.pictures_of("forecast-early");
}

#[test]
fn a_new_weight_is_taken_in_and_undo_brings_the_old_range_back() {
    let bench = bench(&WEIGHTS, "{}");
    bench.settle();
    let range = |bench: &Bench| {
        let labels = bench.labels();
        labels
            .into_iter()
            .find(|l| l.starts_with("Into the house"))
            .unwrap()
    };
    let before = range(&bench);
    bench.touch("Weigh now");
    bench.keys("828 g");
    bench.enter();
    bench.settle();
    assert!(bench.reads("Into the house: "), "{:#?}", bench.labels());
    bench.touch("Undo: M02: 828\u{a0}g, 1\u{a0}g less");
    bench.settle();
    assert_eq!(range(&bench), before);
}

#[test]
fn pounds_and_us_words_fit_too() {
    let settings = r#"{"mass":"pound-ounce","words":"en-US","temperature":"fahrenheit","length":"inch-fraction"}"#;
    let bench = bench(&WEIGHTS, settings);
    bench.settle();
    assert!(bench.reads("through "), "{:#?}", bench.labels());
    bench.pictures_of("forecast-pounds");
}

#[test]
fn the_verdict_with_the_room_taken_out_stands_beside_the_plain_rule() {
    let bench = bench(&WEIGHTS, "{}");
    bench.settle();
    tall(&bench);
    assert!(
        bench.reads("Staying put 0 of 60 days"),
        "{:#?}",
        bench.labels()
    );
    assert!(
        bench.reads("With the room taken out"),
        "{:#?}",
        bench.labels()
    );
    assert!(
        bench.reads("would make the range about"),
        "{:#?}",
        bench.labels()
    );
}
