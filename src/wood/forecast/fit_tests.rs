//! The fit against worked values, and what it must find again.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use super::*;
use crate::drying::{Case, Climate, Phase, Tuning, Wall, Way, Wood, means};

/// Weights every second day of one 10 mm wall that weighs 300 g oven-dry and dries 1.4 times as fast as usual, from 45 %, on a
/// shelf at 18 C and 60 %; made by a stiff integrator on a fine mesh, not by the solver of this crate.
pub(super) const WEIGHTS: [f64; 10] = [
    435.0, 350.2, 339.8, 336.1, 334.5, 333.8, 333.5, 333.3, 333.2, 333.2,
];

pub(super) fn shelf(walls: Vec<Wall>) -> Case {
    Case {
        wood: Wood::of_density(550.0),
        walls,
        phases: vec![Phase {
            from_day: 0.0,
            way: Way::Open,
            climate: Climate::steady(18.0, 0.60).unwrap(),
        }],
    }
}

pub(super) fn one_wall() -> Case {
    shelf(vec![Wall::plain(10.0, 545.454_545)])
}

pub(super) fn record(weights: &[f64], every: f64, step_g: f64) -> Record {
    Record {
        weighings: weights
            .iter()
            .enumerate()
            .map(|(i, m)| Weighing {
                day: every * i as f64,
                mass_g: *m,
            })
            .collect(),
        resets: vec![],
        step_g,
    }
}

/// Weights of `case` by the model itself.
pub(super) fn weights(
    case: &Case,
    tuning: Tuning,
    dry_g: f64,
    start: f64,
    days: &[f64],
) -> Vec<f64> {
    means(case, tuning, 0.0, start, days)
        .unwrap()
        .iter()
        .map(|m| dry_g * (1.0 + m))
        .collect()
}

/// Worked twice, independently: two unknowns, nothing believed, 20 cells, an hour and three hours a step.
#[test]
fn two_unknowns_by_plain_least_squares() {
    let case = one_wall();
    assert!((case.dry_mass_g() - 300.0).abs() < 1e-6);
    for (n, dry, diffusion) in [(4, 299.86, 1.414), (6, 299.92, 1.422), (10, 299.96, 1.428)] {
        for guess in [270.0, 300.0, 325.0] {
            let got = plain_fit(&case, &record(&WEIGHTS[..n], 2.0, 0.1), guess).unwrap();
            assert!(
                (got.0 / dry - 1.0).abs() < 5e-3 && (got.0 - 300.0).abs() < 0.3,
                "{n} {got:?}"
            );
            assert!((1.33..1.50).contains(&got.1), "{n} {got:?}");
            assert!((got.1 / diffusion - 1.0).abs() < 0.02, "{n} {got:?}");
        }
    }
}

#[test]
fn the_full_fit_finds_what_made_the_weights_and_grows_surer() {
    let case = one_wall();
    let mut last = f64::INFINITY;
    for n in [1, 2, 4, 6, 10] {
        let fit = fit(
            &case,
            &record(&WEIGHTS[..n], 2.0, 0.1),
            Priors::usual(310.0),
        )
        .unwrap();
        assert_eq!(fit.weighings, n);
        // The model's own error is counted on the water still to go, so a late weighing may take a little back.
        assert!(fit.dry_sd <= 1.1 * last, "{n}");
        last = fit.dry_sd;
        if n >= 6 {
            assert!((fit.dry_g / 300.0 - 1.0).abs() < 0.02, "{n} {fit:?}");
            assert!((1.0..2.0).contains(&fit.tuning.diffusion), "{n} {fit:?}");
        }
        if n == 1 {
            assert!((fit.dry_g - 310.0).abs() < 1e-3 && (fit.dry_sd - 0.10).abs() < 1e-3);
        }
    }
    // Pinned by the settled weights; what is left is the humidity's five points.
    assert!(last < 0.015, "{last}");
}

#[test]
fn the_habit_of_the_bag_is_found_and_the_surface_left_alone() {
    let mut case = shelf(vec![Wall::plain(9.0, 300.0), Wall::plain(12.0, 250.0)]);
    case.phases[0].way = Way::Bag(1.5e-5);
    let truth = Tuning {
        diffusion: 0.8,
        habit: 0.5,
        ..Tuning::default()
    };
    let days: Vec<f64> = (0..16).map(|i| 4.0 * f64::from(i)).collect();
    let dry = case.dry_mass_g();
    let weights = weights(&case, truth, dry, 0.6, &days);
    let fit = fit(&case, &record(&weights, 4.0, 0.1), Priors::of(&case)).unwrap();
    assert_eq!(fit.loose, Loose::Habit);
    assert_eq!(fit.tuning.surface, 1.0);
    assert!((fit.tuning.habit / 0.5 - 1.0).abs() < 0.1, "{fit:?}");
    assert!((fit.dry_g / dry - 1.0).abs() < 0.01, "{fit:?}");
}

#[test]
fn only_what_was_weighed_since_the_last_reset_is_fitted() {
    let case = one_wall();
    let whole = record(&WEIGHTS, 2.0, 0.1);
    let sealed = Record {
        weighings: whole
            .weighings
            .iter()
            .map(|w| Weighing {
                mass_g: w.mass_g + if w.day < 3.0 { 60.0 } else { 0.0 },
                ..*w
            })
            .collect(),
        resets: vec![3.0],
        ..whole
    };
    assert_eq!(sealed.fitted().unwrap().len(), 8);
    let fit = fit(&case, &sealed, Priors::usual(310.0)).unwrap();
    assert_eq!((fit.weighings, fit.first_day), (8, 4.0));
    assert!((fit.dry_g / 300.0 - 1.0).abs() < 0.02, "{fit:?}");
    let none = Record {
        resets: vec![99.0],
        ..sealed
    };
    assert_eq!(none.fitted(), Err(ForecastError::NoWeighing));
}

#[test]
fn weighings_that_make_no_record_are_refused() {
    let mut mixed = record(&WEIGHTS, 2.0, 0.1);
    mixed.weighings.swap(2, 3);
    assert!(mixed.fitted().unwrap_err().to_string().contains("order"));
    assert!(record(&[435.0, -1.0], 2.0, 0.1).fitted().is_err());
    assert!(record(&WEIGHTS, 2.0, 500.0).fitted().is_err());
    assert!(
        fit(
            &one_wall(),
            &record(&WEIGHTS, 2.0, 0.1),
            Priors::usual(-4.0)
        )
        .is_err()
    );
}
