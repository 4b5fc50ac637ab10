//! Check values of rough wall, side grain, spigot, bar, speed and drilling, each worked out twice, independently.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use proptest::prelude::*;

use crate::bar::{ReachBand, bend_mm, reach_band, reach_mm, stress_mpa};
use crate::drill_depth::{DrillError, drill_depth};
use crate::rough_wall::{
    Grain, Wanted, advised_mm, affine_rough_wall, practice_finish_mm, practice_rough_mm, rough_wall,
};
use crate::section::{Pith, Ring, Strains};
use crate::shrinkage::{ALONG_THE_GRAIN, shrinkage};
use crate::side_grain::{Sawn, dried_rim, rim_rise_mm};
use crate::speed::{not_above_rpm, practice_band_rpm, rim_speed_m_s};
use crate::spigot::{dried_spigot, fits_the_jaws, spigot_needed_mm};
use crate::trueing::{affine_wall_mm, wall_left};

fn to(radial: f64, tangential: f64, moisture: f64) -> Strains {
    Strains::new(
        shrinkage(radial, moisture).unwrap(),
        shrinkage(tangential, moisture).unwrap(),
    )
    .unwrap()
}

/// White ash from green to 8 %.
fn ash() -> Strains {
    to(0.049, 0.078, 0.08)
}

/// Within the larger of one part in a million and half a unit of the last printed digit.
#[track_caller]
fn near(got: f64, want: f64, digit: f64) {
    assert!(
        (got - want).abs() <= (1e-6 * want.abs()).max(0.501 * digit),
        "got {got}, want {want}"
    );
}

const NO_REMOUNT: Wanted = Wanted {
    finish_mm: 5.0,
    margin_mm: 1.5,
    off_centre_mm: 0.0,
};

#[test]
fn rough_wall_for_a_seventy_millimetre_ash_ring() {
    let wall = rough_wall(70.0, ash(), Pith::Far, NO_REMOUNT).unwrap();
    near(wall.total_mm(), 8.286426, 1e-6);
    let ring = Ring::new(70.0, wall.total_mm()).unwrap();
    near(
        wall_left(&ring, ash(), Pith::Far).unwrap().wall_mm,
        6.5,
        1e-9,
    );
}

/// Six woods at six diameters: finish wall from 10 mm rough, rough wall for 5 mm with 1.5 mm margin, end grain to 8 %.
#[test]
fn the_whole_table_of_six_woods() {
    let woods = [
        (
            0.049,
            0.078,
            [8.79, 8.58, 8.36, 8.05, 7.51, 6.45],
            [7.62, 7.85, 8.07, 8.40, 8.95, 10.05],
        ),
        (
            0.050,
            0.080,
            [8.75, 8.53, 8.31, 7.98, 7.43, 6.33],
            [7.66, 7.89, 8.12, 8.46, 9.03, 10.17],
        ),
        (
            0.045,
            0.078,
            [8.70, 8.46, 8.22, 7.86, 7.25, 6.04],
            [7.72, 7.97, 8.22, 8.60, 9.22, 10.48],
        ),
        (
            0.056,
            0.105,
            [8.15, 7.79, 7.43, 6.89, 6.00, 4.20],
            [8.28, 8.65, 9.03, 9.59, 10.53, 12.40],
        ),
        (
            0.055,
            0.119,
            [7.72, 7.25, 6.78, 6.08, 4.90, 2.56],
            [8.73, 9.22, 9.71, 10.44, 11.66, 14.11],
        ),
        (
            0.037,
            0.071,
            [8.73, 8.48, 8.23, 7.86, 7.24, 5.99],
            [7.71, 7.96, 8.22, 8.60, 9.24, 10.53],
        ),
    ];
    for (r, t, left, needed) in woods {
        let strains = to(r, t, 0.08);
        for (i, d) in [80.0, 100.0, 120.0, 150.0, 200.0, 300.0]
            .into_iter()
            .enumerate()
        {
            let ring = Ring::new(0.5 * d, 10.0).unwrap();
            near(
                affine_wall_mm(&ring, strains.least(), strains.most()),
                left[i],
                1.02e-2,
            );
            near(
                rough_wall(0.5 * d, strains, Pith::Far, NO_REMOUNT)
                    .unwrap()
                    .total_mm(),
                needed[i],
                1.02e-2,
            );
        }
    }
}

/// Common practice: about 10 mm rough on an ash vessel of 120 to 150 mm finishes at about half, with margin.
#[test]
fn the_trades_ten_millimetres_leave_half_and_some_in_hand() {
    for d in [120.0, 135.0, 150.0] {
        let ring = Ring::new(0.5 * d, 10.0).unwrap();
        let left = wall_left(&ring, ash(), Pith::Far).unwrap().wall_mm;
        assert!(left - 5.0 >= 3.0 && left - 5.0 <= 3.4, "{left}");
        let wanted = Wanted::finish(practice_finish_mm(Grain::End, d));
        let sum = rough_wall(0.5 * d, ash(), Pith::Far, wanted)
            .unwrap()
            .total_mm();
        assert_eq!(advised_mm(sum, practice_rough_mm(Grain::End, d)), 10.0);
    }
}

#[test]
fn the_sum_wins_where_practice_is_too_thin() {
    let beech = to(0.055, 0.119, 0.08);
    let sum = rough_wall(150.0, beech, Pith::Far, Wanted::finish(8.0)).unwrap();
    let total = sum.total_mm();
    assert!(total > practice_rough_mm(Grain::End, 300.0));
    assert_eq!(
        advised_mm(total, practice_rough_mm(Grain::End, 300.0)),
        total.ceil()
    );
    near(sum.in_hand_mm, 2.5, 1e-9);
}

#[test]
fn side_grain_beech() {
    let beech = to(0.055, 0.119, 0.10);
    let along = shrinkage(ALONG_THE_GRAIN, 0.10).unwrap();
    let rim = dried_rim(300.0, 100.0, beech, along, Sawn::Flat).unwrap();
    near(rim.along_mm, 299.8, 1e-4);
    near(rim.across_mm, 276.2, 1e-4);
    near(
        affine_wall_mm(&Ring::new(150.0, 30.0).unwrap(), rim.least, rim.most),
        18.18,
        1e-6,
    );
    let wanted = Wanted {
        finish_mm: 8.0,
        margin_mm: 2.0,
        off_centre_mm: 0.0,
    };
    near(
        affine_rough_wall(150.0, rim.least, rim.most, wanted)
            .unwrap()
            .total_mm(),
        21.814543,
        1e-6,
    );
    let quarter = dried_rim(300.0, 100.0, beech, along, Sawn::Quarter).unwrap();
    assert!(quarter.across_mm > rim.across_mm && quarter.height_mm < rim.height_mm);
}

#[test]
fn rim_out_of_its_plane() {
    let rise = rim_rise_mm(150.0, 100.0, ash()).unwrap();
    near(rise, 3.112211, 1e-6);
    // First order: (T - R) a f.
    near(
        rise,
        ash().difference() * 150.0 * 150.0_f64.atan2(100.0),
        0.1,
    );
    assert!(rim_rise_mm(150.0, -1.0, ash()).is_err());
}

#[test]
fn spigot_of_sixty() {
    let spigot = dried_spigot(60.0, ash().radial, ash().tangential, 0.5, 0.5).unwrap();
    near(spigot.shortest_mm, 56.568, 1e-6);
    near(spigot.longest_mm, 57.844, 1e-6);
    near(spigot.trued_mm, 54.568, 1e-6);
    assert!(fits_the_jaws(spigot.trued_mm, 50.0) && !fits_the_jaws(spigot.trued_mm, 55.0));
    near(
        spigot_needed_mm(50.0, ash().tangential, 0.0, 0.5).unwrap(),
        54.094188,
        1e-6,
    );
    near(
        spigot_needed_mm(50.0, ash().tangential, 0.5, 0.5).unwrap(),
        55.154858,
        1e-6,
    );
    for (r, t, needed) in [
        (0.045, 0.078, 54.09),
        (0.056, 0.105, 55.26),
        (0.055, 0.119, 55.88),
        (0.037, 0.071, 53.80),
    ] {
        near(
            spigot_needed_mm(50.0, to(r, t, 0.08).tangential, 0.0, 0.5).unwrap(),
            needed,
            1.1e-2,
        );
    }
    for (r, t, oval) in [
        (0.049, 0.078, 1.28),
        (0.056, 0.105, 2.16),
        (0.055, 0.119, 2.82),
    ] {
        let s = to(r, t, 0.08);
        let dry = dried_spigot(60.0, s.radial, s.tangential, 0.0, 0.0).unwrap();
        near(dry.longest_mm - dry.shortest_mm, oval, 1e-2);
    }
}

#[test]
fn boring_bars() {
    near(bend_mm(100.0, 200.0, 16.0).unwrap(), 0.404357, 1e-6);
    near(reach_mm(100.0, 19.0, 0.5).unwrap(), 269.9457, 1e-4);
    near(stress_mpa(100.0, 200.0, 16.0).unwrap(), 49.73592, 1e-5);
    let bars = [10.0, 12.0, 16.0, 19.0, 22.0, 25.0, 30.0];
    for (reach, row) in [
        (100.0, [0.331, 0.160, 0.051, 0.025, 0.014, 0.008, 0.004]),
        (150.0, [1.118, 0.539, 0.171, 0.086, 0.048, 0.029, 0.014]),
        (200.0, [2.650, 1.278, 0.404, 0.203, 0.113, 0.068, 0.033]),
        (300.0, [8.944, 4.313, 1.365, 0.686, 0.382, 0.229, 0.110]),
    ] {
        for (d, bend) in bars.into_iter().zip(row) {
            near(bend_mm(100.0, reach, d).unwrap(), bend, 1e-3);
        }
    }
    for (bend, row) in [
        (0.5, [115.0, 146.0, 215.0, 270.0, 328.0, 389.0, 496.0]),
        (0.1, [67.0, 86.0, 126.0, 158.0, 192.0, 228.0, 290.0]),
    ] {
        for (d, reach) in bars.into_iter().zip(row) {
            near(reach_mm(100.0, d, bend).unwrap(), reach, 1.0);
        }
    }
    assert_eq!(
        reach_band(176.0, 16.0).unwrap(),
        (ReachBand::ChangeIt, 11.0)
    );
    assert_eq!(reach_band(112.0, 16.0).unwrap(), (ReachBand::Usual, 7.0));
    assert_eq!(reach_band(150.0, 16.0).unwrap().0, ReachBand::Long);
}

#[test]
fn speeds() {
    near(rim_speed_m_s(120.0, 1500.0).unwrap(), 9.424778, 1e-6);
    let (low, high) = practice_band_rpm(150.0).unwrap();
    near(low, 1016.0, 1e-4);
    near(high, 1524.0, 1e-4);
    near(rim_speed_m_s(150.0, low).unwrap(), 7.98, 1e-2);
    near(rim_speed_m_s(150.0, high).unwrap(), 11.97, 1e-2);
    for (d, low, high) in [(120.0, 1270.0, 1905.0), (300.0, 508.0, 762.0)] {
        let band = practice_band_rpm(d).unwrap();
        near(band.0, low, 1.0);
        near(band.1, high, 1.0);
    }
    assert_eq!(not_above_rpm(150.0).unwrap(), 1000.0);
    assert_eq!(not_above_rpm(400.0).unwrap(), 380.0);
}

#[test]
fn depth_to_drill_as_on_the_back_of_a_sheet() {
    let sum = drill_depth(178.0, 25.0).unwrap();
    assert_eq!(sum.depth_mm(), 153.0);
    assert!(matches!(
        drill_depth(25.0, 25.0),
        Err(DrillError::NothingToDrill { .. })
    ));
    assert!(matches!(
        drill_depth(f64::NAN, 25.0),
        Err(DrillError::Range(_))
    ));
}

proptest! {
    #[test]
    fn the_rough_wall_trues_to_what_was_wanted_wherever_the_pith(
        a in 25.0..200.0_f64, where_ in 0.0..3.0_f64, finish in 3.0..8.0_f64
    ) {
        let wanted = Wanted::finish(finish);
        let pith = Pith::At(where_ * a);
        if let Ok(wall) = rough_wall(a, ash(), pith, wanted) {
            let ring = Ring::new(a, wall.total_mm()).unwrap();
            let left = wall_left(&ring, ash(), pith).unwrap().wall_mm;
            prop_assert!(left >= finish + 2.5 - 1e-6, "{left}");
            let far = rough_wall(a, ash(), Pith::Unknown, wanted).unwrap().total_mm();
            prop_assert!(wall.total_mm() <= far + 1e-9);
        }
    }

    #[test]
    fn more_reach_bends_more_and_a_thicker_bar_less(l in 10.0..500.0_f64, d in 6.0..40.0_f64) {
        let one = bend_mm(100.0, l, d).unwrap();
        prop_assert!(bend_mm(100.0, 1.01 * l, d).unwrap() > one);
        prop_assert!(bend_mm(100.0, l, 1.01 * d).unwrap() < one);
        if (0.001..50.0).contains(&one) {
            prop_assert!((reach_mm(100.0, d, one).unwrap() - l).abs() < 1e-9 * l);
        }
    }

    #[test]
    fn the_speed_named_is_within_the_trades_lower_figure(d in 20.0..1500.0_f64) {
        let n = not_above_rpm(d).unwrap();
        prop_assert!(n > 0.0 && n * d <= 6000.0 * 25.4 + 1e-3);
    }
}
