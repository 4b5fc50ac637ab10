//! How long the drying sums take. `cargo bench -p evenwall-wood --bench drying`
//!
//! Aims on a two-core machine: one piece of twelve stations over 180 days 20 ms open and 30 ms with a bag phase; fit and forecast
//! of one piece with twenty weighings 500 ms. The same simulation by a general-purpose stiff integrator is timed by
//! `fixtures/make_drying.py`.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use divan::{Bencher, black_box};
use evenwall_wood::drying::case::USUAL_BAG;
use evenwall_wood::drying::{Case, Climate, Phase, Reading, Tuning, Wall, Way, Wood, means};
use evenwall_wood::forecast::{Priors, Record, Weighing, outlook};

fn main() {
    divan::main();
}

fn phase(from_day: f64, way: Way) -> Phase {
    Phase {
        from_day,
        way,
        climate: Climate::steady(18.0, 0.60).unwrap(),
    }
}

fn twelve(phases: Vec<Phase>) -> Case {
    Case {
        wood: Wood::of_density(550.0),
        walls: (0..12)
            .map(|i| Wall {
                grain: 1.0 + 0.5 * f64::from(i),
                ..Wall::plain(7.0 + f64::from(i), 45.0)
            })
            .collect(),
        phases,
    }
}

/// 180 days on a shelf.
#[divan::bench]
fn twelve_stations_open(bencher: Bencher) {
    let case = twelve(vec![phase(0.0, Way::Open)]);
    bencher.bench(|| means(black_box(&case), Tuning::default(), 0.0, 0.45, &[180.0]).unwrap());
}

/// 180 days, the first 24 in a bag.
#[divan::bench]
fn twelve_stations_bag_then_open(bencher: Bencher) {
    let case = twelve(vec![
        phase(0.0, Way::Bag(USUAL_BAG)),
        phase(24.0, Way::Open),
    ]);
    bencher.bench(|| means(black_box(&case), Tuning::default(), 0.0, 0.45, &[180.0]).unwrap());
}

/// 180 days on a shelf, with the climate read every day: every step has its own temperature.
#[divan::bench]
fn twelve_stations_open_climate_read_daily(bencher: Bencher) {
    let readings = (0..180)
        .map(|d| Reading {
            day: f64::from(d),
            temp_c: 17.0 + f64::from(d * 7 % 5),
            rh: 0.55 + 0.02 * f64::from(d * 3 % 6),
        })
        .collect();
    let case = twelve(vec![Phase {
        climate: Climate::through(readings).unwrap(),
        ..phase(0.0, Way::Open)
    }]);
    bencher.bench(|| means(black_box(&case), Tuning::default(), 0.0, 0.45, &[180.0]).unwrap());
}

/// Fit and forecast of one piece with twenty weighings, in a bag, then open, the house to come.
#[divan::bench(args = [4, 12])]
fn fit_and_forecast_twenty_weighings(bencher: Bencher, stations: usize) {
    let mut case = twelve(vec![
        phase(0.0, Way::Bag(USUAL_BAG)),
        phase(24.0, Way::Open),
    ]);
    case.walls.truncate(stations);
    let days: Vec<f64> = (0..20).map(|i| 3.0 * f64::from(i)).collect();
    let truth = Tuning {
        diffusion: 0.7,
        habit: 0.8,
        ..Tuning::default()
    };
    let dry_g = case.dry_mass_g();
    let record = Record {
        weighings: means(&case, truth, 0.0, 0.55, &days)
            .unwrap()
            .iter()
            .zip(&days)
            .map(|(m, day)| Weighing {
                day: *day,
                mass_g: (1.05 * dry_g * (1.0 + m)).round(),
            })
            .collect(),
        resets: vec![],
        step_g: 1.0,
    };
    let house = Climate::steady(20.0, 0.45).unwrap();
    bencher.bench(|| {
        outlook(
            black_box(&case),
            &record,
            Priors::of(&case),
            57.0,
            Some(&house),
        )
        .unwrap()
    });
}
