//! Check values of the profile sums, each worked out twice, independently, from the formulas.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use proptest::prelude::*;

use crate::outside::Outside;
use crate::profile::{Profile, ProfileError, Station};
use crate::wall::Walls;

/// Within the larger of one part in a million and half a unit of the last printed digit.
#[track_caller]
fn near(got: f64, want: f64, digit: f64) {
    assert!(
        (got - want).abs() <= (1e-6 * want.abs()).max(0.501 * digit),
        "got {got}, want {want}"
    );
}

fn stations(rows: &[(f64, f64, f64)]) -> Vec<Station> {
    rows.iter()
        .map(|&(depth_mm, diameter_mm, wall_mm)| Station {
            depth_mm,
            diameter_mm,
            wall_mm,
        })
        .collect()
}

const VESSEL: [(f64, f64, f64); 7] = [
    (0.0, 70.0, 9.0),
    (15.0, 88.0, 10.5),
    (35.0, 116.0, 11.0),
    (60.0, 134.0, 9.5),
    (85.0, 128.0, 10.0),
    (110.0, 104.0, 12.0),
    (130.0, 78.0, 14.0),
];

#[test]
fn cylinder() {
    for n in [2, 3, 7] {
        let rows: Vec<_> = (0..n)
            .map(|i| (120.0 * f64::from(i) / f64::from(n - 1), 120.0, 10.0))
            .collect();
        let cup = Profile::through(&stations(&rows), 120.0, 105.0).unwrap();
        near(cup.wood_cm3(), 532.499955, 1e-6);
        near(cup.capacity_ml(), 824.668072, 1e-6);
        near(cup.centre_of_mass_mm(), 71.615044, 1e-6);
        near(cup.outside_area_cm2(), 452.389342, 1e-6);
    }
}

#[test]
fn cone_with_any_number_of_stations() {
    for n in [2, 4, 5, 9] {
        let rows: Vec<_> = (0..n)
            .map(|i| {
                let z = 120.0 * f64::from(i) / f64::from(n - 1);
                (z, 2.0 * (70.0 - 0.3 * z), 10.0)
            })
            .collect();
        let cone = Profile::through(&stations(&rows), 120.0, 100.0).unwrap();
        near(
            cone.outside().radius_mm(50.0) - cone.bore_radius_mm(50.0),
            10.440307,
            1e-6,
        );
        near(cone.wood_cm3(), 412.753035, 1e-6);
        near(cone.capacity_ml(), 647.345990, 1e-6);
        near(cone.centre_of_mass_mm(), 58.445397, 1e-6);
        near(cone.outside_area_cm2(), 409.333894, 1e-6);
        near(cone.inside_area_cm2(), 319.754839, 1e-6);
    }
}

#[test]
fn zone_of_a_sphere_in_seven_stations() {
    let rows: Vec<_> = (0..7)
        .map(|i| {
            let z = 20.0 * f64::from(i);
            (
                z,
                2.0 * (75.0_f64.powi(2) - (z - 60.0).powi(2)).sqrt(),
                10.0,
            )
        })
        .collect();
    let ball = Profile::through(&stations(&rows), 120.0, 115.0).unwrap();
    near(ball.wood_cm3(), 538.0667, 1e-4);
    near(ball.capacity_ml(), 1126.7025, 1e-4);
    near(ball.centre_of_mass_mm(), 61.7720, 1e-4);
    near(ball.outside_area_cm2(), 564.7358, 1e-4);
    // The exact zone has 542.186532 cm3 of wood: seven stations miss it by less than one per cent.
    assert!((ball.wood_cm3() / 542.186532 - 1.0).abs() < 0.01);
}

#[test]
fn seven_station_vessel() {
    let vessel = Profile::through(&stations(&VESSEL), 130.0, 112.0).unwrap();
    let inner = [
        (4.380319, 27.137888),
        (20.683816, 35.171397),
        (39.769611, 48.087845),
        (60.0, 57.5),
        (83.114440, 54.179376),
        (104.174281, 41.509004),
        (121.778328, 27.668446),
    ];
    for (point, (depth, radius)) in vessel.bore_points().iter().zip(inner) {
        near(point.depth_mm, depth, 1e-6);
        near(point.radius_mm, radius, 1e-6);
    }
    near(vessel.outer_volume_cm3(), 1302.9864, 1e-4);
    near(vessel.capacity_ml(), 772.2453, 1e-4);
    near(vessel.wood_cm3(), 530.7412, 1e-4);
    near(vessel.centre_of_mass_mm(), 72.8942, 1e-4);
    near(vessel.outside_area_cm2(), 504.3195, 1e-4);
    near(vessel.inside_area_cm2(), 401.3521, 1e-4);
    near(vessel.expected_mass_g(550.0, 0.45).unwrap(), 423.2661, 1e-4);
    near(
        vessel.moisture_from_mass(400.0, 550.0).unwrap(),
        0.370296,
        1e-6,
    );
}

#[test]
fn impossible_walls_are_refused_with_their_reason() {
    let with = |row: usize, wall: f64| {
        let mut rows = VESSEL;
        rows[row].2 = wall;
        Profile::through(&stations(&rows), 130.0, 112.0)
    };
    assert_eq!(with(3, 70.0), Err(ProfileError::NoBore { depth_mm: 60.0 }));
    assert!(matches!(with(3, -1.0), Err(ProfileError::Range(_))));
    assert!(matches!(
        with(1, 46.0),
        Err(ProfileError::TighterThanWall { .. })
    ));
    let all = stations(&VESSEL);
    assert!(matches!(
        Profile::through(&all, 130.0, 130.0),
        Err(ProfileError::NoFloor { .. })
    ));
    assert!(matches!(
        Profile::through(&all, 120.0, 100.0),
        Err(ProfileError::BelowFoot { .. })
    ));
    assert!(matches!(
        Profile::through(&[], 120.0, 100.0),
        Err(ProfileError::Stations(_) | ProfileError::NoWalls)
    ));
    let shoulder = stations(&[(0.0, 40.0, 5.0), (10.0, 140.0, 5.0), (60.0, 150.0, 5.0)]);
    assert!(matches!(
        Profile::through(&shoulder, 70.0, 50.0),
        Err(ProfileError::TooSteep { .. })
    ));
    let closing = stations(&[(0.0, 60.0, 5.0), (20.0, 60.0, 5.0), (40.0, 20.0, 5.0)]);
    assert!(matches!(
        Profile::through(&closing, 70.0, 30.0),
        Err(ProfileError::OutsideCloses { .. })
    ));
}

proptest! {
    #[test]
    fn scaling_every_length_scales_volume_area_and_centre(factor in 0.3..3.0_f64) {
        let one = Profile::through(&stations(&VESSEL), 130.0, 112.0).unwrap();
        let rows: Vec<_> = VESSEL.iter().map(|r| (r.0 * factor, r.1 * factor, r.2 * factor)).collect();
        let two = Profile::through(&stations(&rows), 130.0 * factor, 112.0 * factor).unwrap();
        prop_assert!((two.wood_cm3() / one.wood_cm3() / factor.powi(3) - 1.0).abs() < 1e-9);
        prop_assert!((two.inside_area_cm2() / one.inside_area_cm2() / factor.powi(2) - 1.0).abs() < 1e-9);
        prop_assert!((two.centre_of_mass_mm() / one.centre_of_mass_mm() / factor - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_thicker_wall_means_more_wood_and_holds_less(wall in 3.0..12.0_f64) {
        let outside = || Outside::through(&[0.0, 40.0, 80.0, 120.0], &[30.0, 55.0, 58.0, 35.0]).unwrap();
        let thin = Profile::new(outside(), &Walls::even(wall).unwrap(), 120.0, 105.0).unwrap();
        let thick = Profile::new(outside(), &Walls::even(wall + 0.5).unwrap(), 120.0, 105.0).unwrap();
        prop_assert!(thick.wood_cm3() > thin.wood_cm3());
        prop_assert!(thick.capacity_ml() < thin.capacity_ml());
    }

    #[test]
    fn any_figures_give_a_vessel_or_a_reason(
        rows in proptest::collection::vec((-5.0..400.0_f64, -10.0..400.0_f64, -2.0..60.0_f64), 0..8),
        height in -10.0..400.0_f64, floor in -10.0..400.0_f64
    ) {
        match Profile::through(&stations(&rows), height, floor) {
            Ok(vessel) => prop_assert!(vessel.wood_cm3().is_finite() && vessel.capacity_ml() > 0.0),
            Err(reason) => prop_assert!(!reason.to_string().is_empty()),
        }
    }
}
