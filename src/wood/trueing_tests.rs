//! Check values of the wall that can be trued, each worked out twice, independently, and the properties it keeps.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::f64::consts::TAU;

use proptest::prelude::*;

use crate::axis::{AxisError, Station, best_axis, closed_ring_wall, wall_about_mm};
use crate::fitted::{FitError, bore_of, ellipse, from_angles, from_centre, from_diameters};
use crate::own_shrinkage::{MeasureError, own_shrinkage};
use crate::section::{Dried, Pith, Ring, Strains, Xy, dried};
use crate::shrinkage::shrinkage;
use crate::trueing::{affine_wall_mm, free_factor, outside_reach_mm, wall_left};

/// White ash from green to 8 %.
fn ash() -> Strains {
    Strains::new(
        shrinkage(0.049, 0.08).unwrap(),
        shrinkage(0.078, 0.08).unwrap(),
    )
    .unwrap()
}

#[track_caller]
fn near(got: f64, want: f64, within: f64) {
    assert!((got - want).abs() <= within, "got {got}, want {want}");
}

fn outlines(ring: &Ring, pith: Pith, n: usize) -> (Vec<Xy>, Vec<Xy>) {
    match dried(ring, ash(), pith, n).unwrap() {
        Dried::Shape { outer, inner } => (outer, inner),
        Dried::PithInWall => panic!("pith in the wall"),
    }
}

fn best(outer: &[Xy], inner: &[Xy]) -> (f64, Xy) {
    let axis = best_axis(&[Station {
        outer,
        inner,
        wanted_mm: 0.0,
    }])
    .unwrap();
    (axis.walls_mm[0], axis.centre)
}

#[test]
fn closed_forms_of_a_seventy_millimetre_ring() {
    let ring = Ring::new(70.0, 10.0).unwrap();
    near(
        wall_left(&ring, ash(), Pith::Far).unwrap().wall_mm,
        8.152,
        5e-7,
    );
    let beside = wall_left(&ring, ash(), Pith::At(77.0)).unwrap();
    near(beside.wall_mm, 8.258416, 1e-6 * 8.3);
    assert!(beside.exact);
    // First order in the strains: the exact share differs by a part in four hundred.
    near(beside.factor, 0.926192, 3e-3);
    // In the wall and not known: the allowance for the most oval shape.
    for pith in [Pith::At(65.0), Pith::Unknown] {
        let safe = wall_left(&ring, ash(), pith).unwrap();
        near(safe.wall_mm, 8.152, 5e-7);
        assert!(!safe.exact);
    }
}

#[test]
fn share_of_the_oval_for_a_pith_outside() {
    for (s, c) in [
        (1.0, 0.909853),
        (1.05, 0.918619),
        (1.1, 0.926192),
        (1.25, 0.943552),
        (1.5, 0.961399),
        (2.0, 0.978658),
        (3.0, 0.990639),
        (5.0, 0.996653),
    ] {
        near(free_factor(s).unwrap(), c, 0.91e-6);
    }
    near(free_factor(1.0e6).unwrap(), 1.0, 1e-6);
    assert!(free_factor(0.9).is_err());
}

#[test]
fn best_wall_of_a_closed_ring() {
    let ring = Ring::new(70.0, 10.0).unwrap();
    let (outer, inner) = outlines(&ring, Pith::At(30.0), 2880);
    let (wall, _) = best(&outer, &inner);
    near(wall, 9.3279, 2e-3);
    let c = (10.0 * (1.0 - ash().radial) - wall) / (70.0 * ash().difference());
    near(c, 0.2101, 1.4e-3);
    near(closed_ring_wall(&ring, ash(), 30.0).unwrap(), 9.3274, 2e-3);
    // The table for t / a = 0.143, and the bound that stands in for it.
    for (share, c) in [
        (0.2, 0.035),
        (0.4, 0.136),
        (0.6, 0.300),
        (0.8, 0.518),
        (0.95, 0.712),
    ] {
        let d = share * 60.0;
        let wall = closed_ring_wall(&ring, ash(), d).unwrap();
        near(
            (10.0 * (1.0 - ash().radial) - wall) / (70.0 * ash().difference()),
            c,
            1.5e-3,
        );
        assert!(wall_left(&ring, ash(), Pith::At(d)).unwrap().wall_mm <= wall + 1e-3);
    }
}

/// Two ellipses out of centre, sampled as a turner would.
fn shifted_ellipse(a: f64, b: f64, at: Xy, n: usize) -> Vec<Xy> {
    let angle = |i: usize| TAU * i as f64 / n as f64;
    (0..n)
        .map(|i| Xy::new(at.x + a * angle(i).cos(), at.y + b * angle(i).sin()))
        .collect()
}

/// Distance from the origin to an ellipse along a ray.
fn ray(a: f64, b: f64, at: Xy, angle: f64) -> f64 {
    let (s, c) = angle.sin_cos();
    let p = (c / a).powi(2) + (s / b).powi(2);
    let q = -(c * at.x / (a * a) + s * at.y / (b * b));
    let r = (at.x / a).powi(2) + (at.y / b).powi(2) - 1.0;
    (-q + (q * q - p * r).sqrt()) / p
}

#[test]
fn measured_outlines() {
    let shift = Xy::new(1.0, -0.5);
    let outer = shifted_ellipse(67.0, 65.0, Xy::new(0.0, 0.0), 2880);
    let inner = shifted_ellipse(57.0, 56.0, shift, 2880);
    let (wall, centre) = best(&outer, &inner);
    near(wall, 7.8137, 2e-3);
    near(centre.x, 1.0, 1e-3);
    near(centre.y, 0.0, 1e-3);
    near(
        wall_about_mm(&outer, &inner, Xy::new(0.0, 0.0)),
        6.9582,
        2e-3,
    );
    for n in [8, 16] {
        let sample = |a: f64, b: f64, at: Xy| -> Vec<f64> {
            (0..n)
                .map(|i| ray(a, b, at, TAU * f64::from(i) / f64::from(n)))
                .collect()
        };
        let outer = from_centre(&sample(67.0, 65.0, Xy::new(0.0, 0.0)))
            .unwrap()
            .outline();
        let inner = from_centre(&sample(57.0, 56.0, shift)).unwrap().outline();
        near(best(&outer, &inner).0, 7.8137, 0.02);
    }
    // Readings at odd angles, and diameters alone for the outside.
    let odd: Vec<(f64, f64)> = [0.0, 0.5, 1.3, 2.0, 2.9, 3.3, 4.1, 5.0, 5.6]
        .map(|angle| (angle, ray(57.0, 56.0, shift, angle)))
        .to_vec();
    let inner = from_angles(&odd).unwrap().outline();
    let diameters: Vec<f64> = (0..4)
        .map(|i| 2.0 * ray(67.0, 65.0, Xy::new(0.0, 0.0), TAU * f64::from(i) / 8.0))
        .collect();
    let outer = from_diameters(&diameters).unwrap().outline();
    near(best(&outer, &inner).0, 7.8137, 0.02);
}

#[test]
fn two_diameters_and_the_green_wall_give_the_affine_wall() {
    let (a, t) = (70.0, 10.0);
    let outer = ellipse(
        140.0 * (1.0 - ash().radial),
        140.0 * (1.0 - ash().tangential),
    )
    .unwrap();
    let inner = bore_of(&outer, a, &[t; 4]).unwrap();
    near(best(&outer, &inner).0, 8.152, 2e-3);
    let own = own_shrinkage(
        140.0,
        140.0 * (1.0 - ash().radial),
        140.0 * (1.0 - ash().tangential),
    )
    .unwrap();
    near(
        affine_wall_mm(&Ring::new(a, t).unwrap(), own.radial, own.tangential),
        8.152,
        1e-9,
    );
}

#[test]
fn readings_that_do_not_fit_together_are_refused() {
    assert!(matches!(
        own_shrinkage(140.0, 130.0, 132.0),
        Err(MeasureError::Swapped { .. })
    ));
    assert!(matches!(
        own_shrinkage(140.0, 130.0, 80.0),
        Err(MeasureError::NotThisPiece { .. })
    ));
    assert!(matches!(
        own_shrinkage(0.0, 130.0, 120.0),
        Err(MeasureError::Range(_))
    ));
    assert!(matches!(
        from_centre(&[60.0, 61.0]),
        Err(FitError::TooFew { .. })
    ));
    assert!(matches!(
        from_diameters(&[60.0, 61.0, f64::NAN]),
        Err(FitError::Range(_))
    ));
    assert_eq!(
        from_angles(&[(1.0, 60.0), (1.0, 60.0), (1.0, 60.0)]),
        Err(FitError::TooClose)
    );
    let outer = ellipse(130.0, 128.0).unwrap();
    assert!(matches!(
        bore_of(&outer, 65.0, &[70.0]),
        Err(FitError::NoBore { .. })
    ));
    assert_eq!(best_axis(&[]), Err(AxisError::NoStations));
    let flat = [Xy::new(0.0, 0.0), Xy::new(1.0, 0.0)];
    let station = Station {
        outer: &outer,
        inner: &flat,
        wanted_mm: 5.0,
    };
    assert_eq!(
        best_axis(&[station]),
        Err(AxisError::BadOutline { station: 0 })
    );
}

#[test]
fn one_axis_serves_all_stations_and_the_tightest_is_named() {
    let mut rows = Vec::new();
    for (a, t) in [(40.0, 9.0), (70.0, 10.0), (55.0, 8.0)] {
        rows.push(outlines(&Ring::new(a, t).unwrap(), Pith::At(90.0), 720));
    }
    let stations: Vec<Station<'_>> = rows
        .iter()
        .map(|(outer, inner)| Station {
            outer,
            inner,
            wanted_mm: 5.0,
        })
        .collect();
    let axis = best_axis(&stations).unwrap();
    // All stations agree on the wood's own old axis.
    near(axis.centre.x, 90.0 * ash().radial, 5e-3);
    near(axis.centre.y, 0.0, 5e-3);
    assert_eq!(axis.tightest, 2);
    for (wall, (a, t)) in axis
        .walls_mm
        .iter()
        .zip([(40.0, 9.0), (70.0, 10.0), (55.0, 8.0)])
    {
        let alone = wall_left(&Ring::new(a, t).unwrap(), ash(), Pith::At(90.0)).unwrap();
        near(*wall, alone.wall_mm, 1e-2);
    }
    near(axis.to_spare_mm, axis.walls_mm[2] - 5.0, 1e-12);
}

#[test]
fn an_outside_that_is_not_convex_is_still_trued() {
    let dented = |r: f64, dent: f64| -> Vec<Xy> {
        (0..720)
            .map(|i| {
                let angle = TAU * f64::from(i) / 720.0;
                Xy::polar(r - dent * (-(angle - 1.0).powi(2) / 0.01).exp(), angle)
            })
            .collect()
    };
    let (outer, inner) = (dented(70.0, 4.0), dented(60.0, 0.0));
    let (wall, centre) = best(&outer, &inner);
    // A brute grid finds the same.
    let mut grid = f64::MIN;
    for i in -40..=40 {
        for j in -40..=40 {
            let c = Xy::new(f64::from(i) * 0.1, f64::from(j) * 0.1);
            grid = grid.max(wall_about_mm(&outer, &inner, c));
        }
    }
    assert!(wall >= grid - 1e-3, "{wall} {grid} {centre:?}");
    near(wall_about_mm(&outer, &inner, centre), wall, 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn for_a_pith_outside_the_best_axis_is_the_old_one(ratio in 1.02..20.0_f64, t in 4.0..20.0_f64) {
        let d = 70.0 * ratio;
        let ring = Ring::new(70.0, t).unwrap();
        let (outer, inner) = outlines(&ring, Pith::At(d), 2880);
        let (wall, centre) = best(&outer, &inner);
        prop_assert!((wall - wall_left(&ring, ash(), Pith::At(d)).unwrap().wall_mm).abs() < 2e-3);
        prop_assert!(centre.distance(&Xy::new(d * ash().radial, 0.0)) < 5e-3);
    }

    #[test]
    fn turning_and_shifting_both_outlines_changes_nothing(
        angle in 0.0..TAU, dx in -20.0..20.0_f64, dy in -20.0..20.0_f64
    ) {
        let outer = shifted_ellipse(67.0, 65.0, Xy::new(0.0, 0.0), 720);
        let inner = shifted_ellipse(57.0, 56.0, Xy::new(1.0, -0.5), 720);
        let (s, c) = angle.sin_cos();
        let moved = |row: &[Xy]| -> Vec<Xy> {
            row.iter().map(|p| Xy::new(c * p.x - s * p.y + dx, s * p.x + c * p.y + dy)).collect()
        };
        let (one, two) = (best(&outer, &inner).0, best(&moved(&outer), &moved(&inner)).0);
        prop_assert!((one - two).abs() < 1e-4);
    }

    #[test]
    fn off_centre_costs_between_once_and_twice_the_way(e in 0.1..2.0_f64, way in 0.0..TAU) {
        let ring = Ring::new(70.0, 10.0).unwrap();
        let (outer, inner) = outlines(&ring, Pith::Far, 720);
        let (wall, centre) = best(&outer, &inner);
        let at = |e: f64| wall_about_mm(&outer, &inner, Xy::new(centre.x + e * way.cos(), centre.y + e * way.sin()));
        let lost = wall - at(e);
        prop_assert!(lost >= 0.9 * e && lost <= 2.0 * e, "{lost}");
        prop_assert!(at(e) > at(1.1 * e));
    }

    #[test]
    fn the_share_of_the_oval_rises_with_the_distance(s in 1.0..50.0_f64) {
        prop_assert!(free_factor(s * 1.01).unwrap() > free_factor(s).unwrap());
    }
}

/// Least radius of the dried outside for a pith at 1.1 of the radius: worked out twice, independently.
#[test]
fn the_outside_reaches_as_far_as_its_nearest_point() {
    let reach = outside_reach_mm(70.0, 77.0, ash()).unwrap();
    assert!((reach - 66.102416).abs() < 1e-6, "{reach}");
    assert!(outside_reach_mm(70.0, 60.0, ash()).is_err());
}
