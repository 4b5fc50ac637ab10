//! Outside checks: the same sums done by general-purpose libraries, see `fixtures/make_fixtures.py`, which names them.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::axis::{Station, best_axis};
use crate::closed_ring::ClosedRing;
use crate::fitted::from_centre;
use crate::pchip::Pchip;
use crate::profile::{self, Profile};
use crate::section::{Ring, Strains};

fn rows(text: &str) -> Vec<Vec<&str>> {
    text.lines()
        .skip(2)
        .map(|line| line.split(',').collect())
        .collect()
}

fn numbers(cell: &str) -> Vec<f64> {
    cell.split(' ').map(|v| v.parse().unwrap()).collect()
}

fn number(cell: &str) -> f64 {
    cell.parse().unwrap()
}

#[test]
fn the_shape_keeping_cubic_is_scipys() {
    let rows = rows(include_str!("fixtures/pchip.csv"));
    assert_eq!(rows.len(), 72);
    for row in rows {
        let curve = Pchip::through(&numbers(row[0]), &numbers(row[1])).unwrap();
        let at = number(row[2]);
        assert!((curve.value(at) - number(row[3])).abs() < 1e-7, "{row:?}");
        assert!(
            (curve.derivative(at) - number(row[4])).abs() < 1e-7,
            "{row:?}"
        );
    }
}

#[test]
fn volume_centre_and_area_are_those_of_adaptive_quadrature() {
    let depths = [0.0, 15.0, 35.0, 60.0, 85.0, 110.0, 130.0];
    let diameters = [70.0, 88.0, 116.0, 134.0, 128.0, 104.0, 78.0];
    let walls = [9.0, 10.5, 11.0, 9.5, 10.0, 12.0, 14.0];
    let stations: Vec<profile::Station> = (0..7)
        .map(|i| profile::Station {
            depth_mm: depths[i],
            diameter_mm: diameters[i],
            wall_mm: walls[i],
        })
        .collect();
    let vessel = Profile::through(&stations, 130.0, 112.0).unwrap();
    let got = [
        vessel.outer_volume_cm3(),
        vessel.capacity_ml(),
        vessel.wood_cm3(),
        vessel.centre_of_mass_mm(),
        vessel.outside_area_cm2(),
        vessel.inside_area_cm2(),
    ];
    let rows = rows(include_str!("fixtures/profile.csv"));
    assert_eq!(rows.len(), got.len());
    for (row, got) in rows.iter().zip(got) {
        assert!((got / number(row[1]) - 1.0).abs() < 1e-7, "{row:?} {got}");
    }
}

#[test]
fn the_best_axis_is_that_of_differential_evolution() {
    let rows = rows(include_str!("fixtures/optimum.csv"));
    assert_eq!(rows.len(), 10);
    for row in rows {
        let outer = from_centre(&numbers(row[0])).unwrap().outline();
        let inner = from_centre(&numbers(row[1])).unwrap().outline();
        let axis = best_axis(&[Station {
            outer: &outer,
            inner: &inner,
            wanted_mm: 0.0,
        }])
        .unwrap();
        assert!(
            (axis.walls_mm[0] - number(row[4])).abs() < 1e-4,
            "{row:?} {axis:?}"
        );
        let away = (axis.centre.x - number(row[2])).hypot(axis.centre.y - number(row[3]));
        assert!(away < 1e-3, "{row:?} {axis:?}");
    }
}

/// Eight-node elements, ten through the wall: within 0.01 MPa for stresses of up to 6 MPa.
#[test]
fn the_stress_of_a_closed_ring_is_that_of_finite_elements() {
    let rows = rows(include_str!("fixtures/ring.csv"));
    assert_eq!(rows.len(), 48);
    for row in rows {
        let v: Vec<f64> = row.iter().map(|c| number(c)).collect();
        let closed = ClosedRing::new(
            Ring::new(v[0], v[1]).unwrap(),
            Strains::new(v[4], v[5]).unwrap(),
            v[2],
        )
        .unwrap();
        let s = closed.stress(v[6], v[7], v[3]).unwrap();
        for (got, want) in [(s.radial, v[8]), (s.hoop, v[9]), (s.shear, v[10])] {
            assert!((got - want).abs() < 1e-2, "{row:?} {s:?}");
        }
    }
}
