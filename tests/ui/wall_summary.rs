//! The result of measuring: what comes off, volume and weight from what was measured, and the reasons a touch away.

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Taken;
use slint::ComponentHandle as _;

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn text(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    }
}

fn length(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

fn read(station: StationRef, mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: match station {
            StationRef::Floor => Taken::DepthRod,
            StationRef::Wall(_) => Taken::Callipers,
        },
    })
}

/// A vessel in Hollow, read all over; with its outside diameters where asked for. Its result is open.
fn opened(diameters: &[f64], walls: &[f64], more: &[PieceFact]) -> Bench {
    let mut facts = vec![
        PieceFact::Created,
        text(DetailField::Mark, "K07"),
        text(DetailField::Wood, "european-ash"),
        length(DetailField::Diameter, 150.0),
        length(DetailField::Height, 170.0),
        PieceFact::StageMoved(Stage::Hollow),
        PieceFact::Stations {
            count: 7,
            depths_mm: vec![9.0, 33.0, 56.0, 80.0, 104.0, 127.0, 149.0],
        },
    ];
    facts.extend(
        (1..)
            .zip(diameters)
            .map(|(n, d)| PieceFact::OutsideDiameter {
                station: n,
                diameter_mm: Some(Measure::plain(*d)),
            }),
    );
    facts.extend((1..).zip(walls).map(|(n, w)| read(StationRef::Wall(n), *w)));
    facts.extend_from_slice(more);
    let mut store = MemoryStore::default();
    let start = moment(START);
    store.append_piece(&id(), start, start, facts).unwrap();
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::Open(Page::WallSummary(id())));
    bench
}

const DIAMETERS: [f64; 7] = [82.0, 124.0, 144.0, 150.0, 143.0, 122.0, 92.0];
const WALLS: [f64; 7] = [9.0, 10.5, 11.0, 12.0, 10.0, 13.0, 14.0];

fn measured() -> Bench {
    opened(&DIAMETERS, &WALLS, &[read(StationRef::Floor, 14.0)])
}

/// The whole page at once, as well as what fits on each screen.
fn pictures(bench: &Bench, name: &str) {
    bench.pictures_of(name);
    let scroll = |height| {
        bench.resize(390.0, height, 1.0);
        i_slint_backend_testing::mock_elapsed_time(std::time::Duration::from_millis(50));
        slint::platform::update_timers_and_animations();
    };
    scroll(1900.0);
    bench.picture(&format!("{name}-whole"));
    scroll(844.0);
}

#[test]
fn volume_weight_and_what_unevenness_means_open_their_sums() {
    let bench = measured();
    pictures(&bench, "wall-result");
    bench.resize(390.0, 1900.0, 1.0);
    assert!(bench.sees("Station 6, half of it, about 1.5\u{a0}mm, then measure"));
    assert!(bench.reads("floor left above the foot line, 12\u{a0}mm wanted, rod 156\u{a0}mm"));
    assert!(bench.reads("Wood, spigot not counted"));
    bench.touch("Expected weight, green");
    assert!(bench.reads("kg of dry wood to the m³"));
    pictures(&bench, "wall-weight-sum");
    bench.resize(390.0, 1900.0, 1.0);
    bench.touch_last("Close");
    bench.touch("What it means for drying");
    assert!(bench.reads("both sayings hold"));
    pictures(&bench, "wall-drying-sum");
    bench.resize(390.0, 1900.0, 1.0);
    bench.touch_last("Close");
    assert!(!bench.reads("both sayings hold"));
}

#[test]
fn without_diameters_it_says_what_is_lacking_and_leads_there() {
    let bench = opened(&[], &WALLS, &[read(StationRef::Floor, 14.0)]);
    bench.resize(390.0, 1900.0, 1.0);
    assert!(bench.reads("only a picture") && !bench.reads("Expected weight"));
    bench.picture("wall-lacking-whole");
    // The first is the way to what is lacking, the second stands among the links in any case.
    bench.touch("Outline and stations");
    let page = bench.screens.read(|a: &App| a.route().page().cloned());
    assert_eq!(page, Some(Page::Outline(id())));
}

#[test]
fn walls_that_make_no_vessel_get_a_sentence_and_the_drawing_stays_whole() {
    let mut walls = WALLS;
    walls[1] = 58.0;
    let bench = opened(&DIAMETERS, &walls, &[read(StationRef::Floor, 14.0)]);
    bench.resize(390.0, 1900.0, 1.0);
    assert!(bench.reads("station") && bench.reads("Volume and weight"));
    assert!(!bench.reads("Expected weight"));
    bench.picture("wall-impossible-whole");
}

#[test]
fn an_empty_result_speaks_of_no_figures() {
    let bench = opened(&[], &[], &[]);
    assert!(bench.reads("No readings yet"));
    assert!(!bench.reads("Volume and weight") && !bench.reads("What it means for drying"));
    bench.pictures_of("wall-result-empty");
}

#[test]
fn diameters_from_before_the_stations_moved_stand_on_the_outline_page() {
    let moved = PieceFact::Stations {
        count: 5,
        depths_mm: vec![9.0, 44.0, 80.0, 115.0, 149.0],
    };
    let bench = opened(&DIAMETERS, &[], &[moved]);
    bench.screens.act(Action::Open(Page::Outline(id())));
    bench.resize(390.0, 1900.0, 1.0);
    assert!(bench.reads("124\u{a0}mm at 33\u{a0}mm down"));
    bench.picture("wall-outline-kept-whole");
}

/// Prints how long the wall page takes to be made and drawn: `cargo test --test ui -- --ignored --nocapture redraw`.
#[test]
#[ignore = "prints figures, never a verdict"]
fn redraw_of_the_wall_pages() {
    let bench = measured();
    for (name, page) in [
        ("wall", Page::Wall(id())),
        ("result", Page::WallSummary(id())),
    ] {
        bench.screens.act(Action::Open(page));
        bench.resize(390.0, 844.0, 2.0);
        let (mut shown, mut drawn) = (Vec::new(), Vec::new());
        for _ in 0..40 {
            let began = std::time::Instant::now();
            bench.screens.refresh();
            shown.push(began.elapsed());
            let began = std::time::Instant::now();
            let pixels = bench.screens.window().window().take_snapshot();
            drawn.push(began.elapsed());
            assert!(pixels.is_ok());
        }
        shown.sort_unstable();
        drawn.sort_unstable();
        println!(
            "{name}: view and models {:.2?}, whole window drawn at 780 x 1688 {:.2?} (medians of 40)",
            shown[20], drawn[20]
        );
    }
}
