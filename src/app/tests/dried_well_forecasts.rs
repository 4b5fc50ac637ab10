//! Promises of forecasts against outcome: only what was foreseen and came is counted, and few are only counted.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_dried;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::fact::{ForecastMade, Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::MassChange;
use support_dried::{ago, now, row, view};

/// Foreseen on day 10 as settled between `from` and `to`; the weight comes to rest on day 40, it goes indoors on day 60.
fn piece(store: &mut MemoryStore, n: u32, (from, to): (i64, i64), between: Option<PieceFact>) {
    let id = PieceId::new(&format!("p{n}")).unwrap();
    let mut note = |day: i64, facts: Vec<PieceFact>| {
        let at = ago(200 - day);
        store.append_piece(&id, at, at, facts).unwrap();
    };
    let weighed = |g| PieceFact::Weighed {
        mass_g: Measure::plain(g),
        tare_g: 0.0,
    };
    note(
        0,
        vec![PieceFact::Created, PieceFact::StageMoved(Stage::Bag)],
    );
    note(0, vec![weighed(600.0)]);
    note(10, vec![weighed(500.0)]);
    let day = |d: i64| ago(200 - d).date_naive();
    note(
        10,
        vec![PieceFact::ForecastMade(ForecastMade {
            into_house: Some((day(from), day(to))),
            to_finish: None,
            weighings: 2,
        })],
    );
    if let Some(fact) = between {
        note(20, vec![fact]);
    }
    for (d, g) in [(30, 430.0), (40, 402.0), (50, 400.0), (59, 399.0)] {
        note(d, vec![weighed(g)]);
    }
    note(60, vec![PieceFact::StageMoved(Stage::Indoors)]);
}

fn open(store: MemoryStore) -> App {
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    app.apply(Action::Open(Page::DriedWell), now());
    app
}

fn has(app: &App) -> bool {
    view(app).sections.iter().any(|s| s.key == "forecasts")
}

#[test]
fn nothing_is_said_until_something_foreseen_has_come() {
    let mut store = MemoryStore::default();
    let changed = PieceFact::MassChanged(MassChange::ALL[0]);
    piece(&mut store, 1, (30, 50), Some(changed));
    assert!(!has(&open(store)));
}

#[test]
fn the_day_it_came_to_rest_is_held_against_the_range() {
    let mut store = MemoryStore::default();
    // Day 40 lies in the first range and after the second.
    piece(&mut store, 1, (30, 50), None);
    piece(&mut store, 2, (20, 30), None);
    let app = open(store);
    assert_eq!(row(&view(&app), "forecasts-held"), "1 of 2");
    let said = format!("{:?}", view(&app).sections);
    assert!(said.contains("Too few to say whether they lean"), "{said}");
    assert!(!said.contains("forecasts-error"));
}

#[test]
fn from_five_on_the_lean_and_the_error_are_told() {
    let mut store = MemoryStore::default();
    // Foreseen for day 25 in the middle, 15 days ahead; it took 30: half too early.
    for n in 0..6 {
        piece(&mut store, n, (20, 30), None);
    }
    let app = open(store);
    assert_eq!(row(&view(&app), "forecasts-held"), "0 of 6");
    assert_eq!(row(&view(&app), "forecasts-error"), "50 %");
    let said = format!("{:?}", view(&app).sections);
    assert!(said.contains("They leaned early"), "{said}");
}
