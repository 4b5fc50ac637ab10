//! Outside checks of the statistics by general-purpose libraries, see `fixtures/make_statistics_fixtures.py`.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::exponential::final_weight;
use crate::kept::share_kept;
use crate::quantile::{normal, student_t};
use crate::room_air::LaggedAir;
use crate::survival::{Seen, survival};
use crate::trend::{LEVEL, trend};

fn rows(text: &str) -> Vec<Vec<&str>> {
    let of = |line| -> Vec<&str> { str::split(line, ',').collect() };
    text.lines().skip(2).map(of).collect()
}

fn number(cell: &str) -> f64 {
    cell.parse().unwrap()
}

fn numbers(cell: &str) -> Vec<f64> {
    cell.split(' ').map(number).collect()
}

fn pairs(days: &str, grams: &str) -> Vec<(f64, f64)> {
    numbers(days).into_iter().zip(numbers(grams)).collect()
}

fn near(got: f64, want: f64, relative: f64) -> bool {
    (got - want).abs() <= relative * want.abs().max(1e-3)
}

#[test]
fn quantiles_are_those_of_scipy() {
    let rows = rows(include_str!("fixtures/quantiles.csv"));
    assert_eq!(rows.len(), 60);
    for row in rows {
        let (level, freedom) = (number(row[0]), number(row[1]) as u32);
        let got = match freedom {
            0 => normal(level),
            _ => student_t(level, freedom),
        };
        assert!(near(got.unwrap(), number(row[2]), 1e-8), "{row:?} {got:?}");
    }
}

#[test]
fn slopes_and_their_intervals_are_those_of_scipy() {
    let rows = rows(include_str!("fixtures/trends.csv"));
    assert_eq!(rows.len(), 20);
    for row in rows {
        // A step so fine that the scatter is never taken for rounding.
        let t = trend(&pairs(row[0], row[1]), 1e-6, LEVEL).unwrap();
        for (got, cell) in [t.per_day_g, t.low_g, t.high_g].into_iter().zip(&row[2..]) {
            assert!(near(got, number(cell), 1e-8), "{row:?} {got}");
        }
    }
}

#[test]
fn falling_exponentials_are_those_of_scipy() {
    let rows = rows(include_str!("fixtures/exponentials.csv"));
    assert_eq!(rows.len(), 15);
    for row in rows {
        let e = final_weight(&pairs(row[0], row[1])).unwrap();
        for (got, cell) in [e.final_g, e.above_g, e.days].into_iter().zip(&row[2..]) {
            assert!(near(got, number(cell), 1e-5), "{row:?} {got}");
        }
        for (got, cell) in [e.final_sd_g, e.days_sd].into_iter().zip(&row[5..]) {
            assert!(near(got, number(cell), 1e-3), "{row:?} {got}");
        }
    }
}

#[test]
fn intervals_of_what_was_kept_are_those_of_statsmodels() {
    let rows = rows(include_str!("fixtures/kept.csv"));
    assert_eq!(rows.len(), 78);
    for row in rows {
        let (kept, all) = (number(row[1]) as u32, number(row[2]) as u32);
        let s = share_kept(kept, all, number(row[0])).unwrap();
        assert!((s.low - number(row[3])).abs() < 1e-10, "{row:?} {s:?}");
        assert!((s.high - number(row[4])).abs() < 1e-10, "{row:?} {s:?}");
    }
}

#[test]
fn survival_curves_are_those_of_lifelines() {
    let rows = rows(include_str!("fixtures/survival.csv"));
    assert_eq!(rows.len(), 12);
    for row in rows {
        let seen: Vec<Seen> = pairs(row[1], row[2])
            .into_iter()
            .map(|(days, lost)| Seen {
                days,
                lost: lost == 1.0,
            })
            .collect();
        let curve = survival(&seen, number(row[0])).unwrap();
        let steps: Vec<&str> = row[3].split(' ').filter(|s| !s.is_empty()).collect();
        assert_eq!(curve.steps.len(), steps.len(), "{row:?}");
        for (step, cell) in curve.steps.iter().zip(steps) {
            let want: Vec<f64> = cell.split(':').map(number).collect();
            assert_eq!(
                (step.days, f64::from(step.at_risk), f64::from(step.lost)),
                (want[0], want[1], want[2])
            );
            assert!((step.whole - want[3]).abs() < 1e-9);
            assert!((step.standard_error - want[4]).abs() < 1e-9, "{cell}");
            if let Some((low, high)) = step.between {
                assert!((low - want[5]).abs() < 1e-8, "{cell} {low}");
                assert!((high - want[6]).abs() < 1e-8, "{cell} {high}");
            }
        }
        let days = |cell| Some(number(cell)).filter(|d| d.is_finite());
        assert_eq!(curve.median_days(), days(row[4]), "{row:?}");
        let (low, high) = curve.median_between();
        assert_eq!(low, days(row[5]), "{row:?}");
        // Where the last piece is lost, the library takes the interval for closed at 0.
        let open = curve.steps.iter().any(|s| s.between.is_none());
        assert!(high == days(row[6]) || open && high.is_none(), "{row:?}");
    }
}

#[test]
fn the_lag_behind_the_air_is_that_of_a_stiff_integrator() {
    let rows = rows(include_str!("fixtures/lagged.csv"));
    assert_eq!(rows.len(), 3);
    for row in rows {
        let air = LaggedAir::new(&pairs(row[1], row[2]), number(row[0])).unwrap();
        for (at, want) in pairs(row[3], row[4]) {
            assert!((air.at(at).unwrap() - want).abs() < 1e-8, "{at}");
        }
    }
}
