//! Prints figures: all forecasts of 100 living pieces made anew, that of one of them, and what it costs to find that nothing
//! changed. Run with `cargo bench -p evenwall-app --bench forecasts`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::disallowed_methods)]

use chrono::{DateTime, Duration};
use evenwall_app::app::App;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Room, Taken};
use evenwall_wood::drying::{Tuning, means};

const PIECES: i64 = 100;

fn main() {
    divan::main();
}

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
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

/// A shop of so many pieces in bag, air and settle, each of seven stations, floor and spigot, weighed every five days since it
/// was bagged 20 to 120 days ago: 5 to 24 weights.
fn shop(pieces: i64) -> App {
    let mut store = MemoryStore::default();
    let before = |days: i64| now() - Duration::days(days);
    for week in (0..40).rev() {
        for (room, temp_c, rh_pct) in [(Room::Shop, 14.0, 64.0), (Room::House, 20.0, 47.0)] {
            let sway = ((week % 5) - 2) as f64;
            let climate = Climate {
                room,
                temp_c,
                rh_pct: rh_pct + sway,
            };
            let at = before(7 * week);
            store
                .append_shop(at, at, vec![ShopFact::Climate(climate)])
                .unwrap();
        }
    }
    for p in 0..pieces {
        let id = PieceId::new(&format!("m{p}")).unwrap();
        let began = 20 + p % 101;
        let length = |field, mm| PieceFact::Detail {
            field,
            value: Some(DetailValue::Length(Measure::plain(mm))),
        };
        let mut line = |days: i64, facts| {
            let at = before(days);
            store.append_piece(&id, at, at, facts).map(drop).unwrap();
        };
        let mut made = vec![
            PieceFact::Created,
            PieceFact::Detail {
                field: DetailField::Wood,
                value: Some(DetailValue::Text("ash-white".into())),
            },
            length(DetailField::Diameter, 150.0),
            length(DetailField::Height, 160.0),
            length(DetailField::SpigotDiameter, 45.0),
            PieceFact::Stations {
                count: 7,
                depths_mm: vec![8.0, 30.0, 52.0, 74.0, 96.0, 118.0, 140.0],
            },
            wall(StationRef::Floor, 12.0),
        ];
        for n in 0..7_u8 {
            made.push(wall(StationRef::Wall(n + 1), 9.0 + 0.5 * f64::from(n % 5)));
        }
        made.push(PieceFact::StageMoved(Stage::Bag));
        line(began, made);
        if began > 25 {
            line(began - 25, vec![PieceFact::StageMoved(Stage::Air)]);
        }
        if began > 55 {
            line(began - 55, vec![PieceFact::StageMoved(Stage::Settle)]);
        }
    }
    let store = weighed(store, pieces);
    App::open(Box::new(store), false, now()).unwrap()
}

/// The same pieces with weights as the model gives them, each wood and bag a little different; they need the pieces first.
fn weighed(mut store: MemoryStore, pieces: i64) -> MemoryStore {
    let loaded = store.load().unwrap();
    let mut copy = MemoryStore::default();
    for line in &loaded.shop {
        copy.append_shop(line.at, line.noted_at, line.facts.clone())
            .unwrap();
    }
    for p in 0..pieces {
        let id = PieceId::new(&format!("m{p}")).unwrap();
        for line in store.load_piece(&id).unwrap() {
            copy.append_piece(&id, line.at, line.noted_at, line.facts)
                .unwrap();
        }
    }
    let app = App::open(Box::new(store), false, now()).unwrap();
    for p in 0..pieces {
        let id = PieceId::new(&format!("m{p}")).unwrap();
        let input = app.forecast_input(app.piece(&id).unwrap(), now()).unwrap();
        let tuning = Tuning {
            diffusion: 0.4 + 0.1 * (p % 9) as f64,
            habit: 0.5 + 0.2 * (p % 5) as f64,
            ..Tuning::default()
        };
        let began = 20 + p % 101;
        let ago: Vec<i64> = (0..=began).rev().step_by(5).collect();
        let days: Vec<f64> = ago.iter().map(|d| input.today - *d as f64).collect();
        let dry_g = (0.92 + 0.02 * (p % 8) as f64) * input.case.dry_mass_g();
        let moistures = means(&input.case, tuning, input.began, input.green, &days).unwrap();
        for (ago, m) in ago.iter().zip(moistures) {
            let weighed = PieceFact::Weighed {
                mass_g: Measure::plain((dry_g * (1.0 + m)).round()),
                tare_g: 0.0,
            };
            let at = now() - Duration::days(*ago);
            copy.append_piece(&id, at, at, vec![weighed]).unwrap();
        }
    }
    copy
}

fn settle(app: &mut App) -> usize {
    let mut works = 0;
    while let Some(work) = app.next_work(now()) {
        app.work_done(work.run(), now());
        works += 1;
    }
    works
}

#[divan::bench(sample_count = 3, sample_size = 1)]
fn all_forecasts_of_100_pieces(bencher: divan::Bencher) {
    bencher
        .with_inputs(|| shop(PIECES))
        .bench_local_values(|mut app| settle(&mut app));
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn forecast_of_one_piece(bencher: divan::Bencher) {
    // The piece bagged 120 days ago has 25 weights; one of 20 days has five.
    bencher
        .with_inputs(|| shop(PIECES))
        .bench_local_values(|mut app| app.next_work(now()).map(|w| w.run()));
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn nothing_changed_among_100_pieces(bencher: divan::Bencher) {
    let mut app = shop(PIECES);
    settle(&mut app);
    bencher.bench_local(|| app.next_work(now()).is_none());
}
