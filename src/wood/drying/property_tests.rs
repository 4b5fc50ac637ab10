//! What must hold for every case: water is conserved, rest stays rest, the order of the step, and where drying ends.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use super::oracle_tests::{case, climate, phase, run};
use super::*;
use crate::moisture::settling_moisture;
use proptest::prelude::*;

fn wall() -> impl Strategy<Value = Wall> {
    (2.0..40.0_f64, 5.0..500.0_f64, 1.0..10.0_f64, 0.0..1.0_f64).prop_map(|(t, a, grain, inner)| {
        Wall {
            grain,
            faces: [1.0, inner],
            ..Wall::plain(t, a)
        }
    })
}

fn way() -> impl Strategy<Value = Way> {
    prop_oneof![
        Just(Way::Open),
        (1e-6..1e-4_f64).prop_map(Way::Bag),
        (0.01..1.0_f64).prop_map(Way::Cover)
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Water lost is the flux summed, to 1e-10; never wetter than it began or drier than its air, whatever is done to it.
    #[test]
    fn water_is_conserved_and_nothing_overshoots(
        walls in prop::collection::vec(wall(), 1..5), first in way(), second in way(),
        start in 0.02..1.2_f64, t in 2.0..30.0_f64, rh in 0.2..0.95_f64
    ) {
        let case = case(walls, vec![phase(0.0, first, t, rh), phase(6.3, second, t + 3.0, rh)]);
        let mut drier = Drier::new(&case, Tuning::default(), 0.0, start).unwrap();
        let ends = [settling_moisture(t, rh).unwrap(), settling_moisture(t + 3.0, rh).unwrap(), start];
        let (low, high) = (ends.iter().copied().fold(f64::INFINITY, f64::min), ends.iter().copied().fold(0.0, f64::max));
        while drier.day() < 14.0 {
            drier.step().unwrap();
            prop_assert!((start - drier.mean() - drier.let_out()).abs() < 1e-10);
            for [a, b] in drier.outer() {
                prop_assert!(a > low - 1e-6 && b > low - 1e-6 && a < high + 1e-6 && b < high + 1e-6, "{a} {b} {low} {high}");
            }
        }
    }

    /// Water that leaves the walls is water the bag lets out, to 1e-7 of it, unless the bag is saturated.
    #[test]
    fn a_bag_lets_out_what_its_walls_give_off(
        walls in prop::collection::vec(wall(), 1..4), g in 1e-6..1e-4_f64, start in 0.15..1.0_f64, rh in 0.3..0.9_f64
    ) {
        let case = case(walls, vec![phase(0.0, Way::Bag(g), 18.0, rh)]);
        let mut drier = Drier::new(&case, Tuning::default(), 0.0, start).unwrap();
        for _ in 0..80 {
            let (day, out) = (drier.day(), drier.let_out());
            drier.step().unwrap();
            let grams = 1e3 * g * 0.015_324_81 * (drier.bag_rh().unwrap() - rh) * 86_400.0 * (drier.day() - day);
            let lost = case.dry_mass_g() * (drier.let_out() - out);
            prop_assert!((grams - lost).abs() < 1e-6 + 1e-6 * grams.abs(), "{grams} {lost}");
        }
    }

    #[test]
    fn wood_at_rest_stays_at_rest(walls in prop::collection::vec(wall(), 1..4), way in way(), t in 2.0..30.0_f64, rh in 0.2..0.95_f64) {
        let rest = settling_moisture(t, rh).unwrap();
        let case = case(walls, vec![phase(0.0, way, t, rh)]);
        for m in run(&case, rest, &[1.0, 30.0]) {
            for w in &m.walls {
                prop_assert!((w - rest).abs() < 1e-8);
            }
        }
    }

    #[test]
    fn a_thicker_wall_a_worse_face_and_a_slower_wood_are_never_ready_sooner(t in 4.0..20.0_f64, more in 1.05..2.0_f64) {
        let days = |wall: Wall, tuning: Tuning| {
            let case = case(vec![wall], vec![phase(0.0, Way::Open, 18.0, 0.6)]);
            ready(&mut Drier::new(&case, tuning, 0.0, 0.5).unwrap(), 400.0).unwrap().mean_day.unwrap()
        };
        let plain = days(Wall::plain(t, 100.0), Tuning::default());
        prop_assert!(days(Wall::plain(t * more, 100.0), Tuning::default()) > plain);
        let half_free = Wall { faces: [1.0, 1.0 / more], ..Wall::plain(t, 100.0) };
        let worse_face = days(half_free, Tuning::default());
        let slower = days(Wall::plain(t, 100.0), Tuning { diffusion: 1.0 / more, ..Tuning::default() });
        prop_assert!(worse_face > plain && slower > plain);
    }
}

/// Long after, wood is where the Wood Handbook's table 4-2 (FPL-GTR-190) says, within the tenth the table is printed to.
#[test]
fn it_settles_where_the_handbook_says() {
    let mut rows = 0;
    for line in include_str!("../tables/emc.csv")
        .lines()
        .filter(|l| !l.starts_with('#'))
        .skip(1)
    {
        let c: Vec<f64> = line
            .split(',')
            .take(4)
            .map(|v| v.parse().unwrap())
            .collect();
        if (c[1] == 50.0 || c[1] == 70.0) && c[2] >= 20.0 && c[2] <= 90.0 {
            let case = case(
                vec![Wall::plain(6.0, 100.0)],
                vec![phase(0.0, Way::Open, (c[1] - 32.0) / 1.8, 0.01 * c[2])],
            );
            let m = &run(&case, 0.45, &[150.0])[0];
            assert!(
                (100.0 * m.mean - c[3]).abs() <= 0.12,
                "{line}: {}",
                100.0 * m.mean
            );
            assert!((100.0 * m.settling - c[3]).abs() <= 0.06);
            rows += 1;
        }
    }
    assert_eq!(rows, 30);
}

/// Halving the step by 2 halves the error: shown on the slab with the wood's own law, reference 1/64 of the longest step.
#[test]
fn halving_the_step_halves_the_error() {
    use super::slab::{Medium, Skin, Slab};
    struct Rising(Wood);
    impl Medium for Rising {
        fn diffusivity(&self, m: f64) -> f64 {
            self.0.diffusivity(m, 18.0)
        }
    }
    struct Air;
    impl Skin for Air {
        fn settling(&self) -> f64 {
            0.110_591
        }
        fn conductance(&self, _: usize, _: f64, _: &mut f64) -> f64 {
            4e-8
        }
    }
    let at = |steps: usize| {
        let mut slab = Slab::<20>::even(0.45);
        for _ in 0..steps {
            slab.attempt(
                4.0 * 86_400.0 / steps as f64,
                0.010,
                &Rising(Wood::of_density(550.0)),
                &Air,
            );
            slab.accept();
        }
        slab.mean()
    };
    let exact = at(96 * 64);
    let errors: Vec<f64> = [24, 48, 96].iter().map(|n| at(*n) - exact).collect();
    for pair in errors.windows(2) {
        let ratio = pair[0] / pair[1];
        assert!((1.8..2.3).contains(&ratio), "{errors:?}");
    }
}

#[test]
fn air_at_saturation_over_wet_wood_takes_nothing_and_wets_dry_wood() {
    let damp = case(
        vec![Wall::plain(10.0, 100.0)],
        vec![phase(0.0, Way::Open, 18.0, 1.0)],
    );
    let m = run(&damp, 0.45, &[20.0]);
    assert!((m[0].mean - 0.45).abs() < 1e-12);
    let m = run(&damp, 0.10, &[60.0]);
    assert!((0.25..0.2891).contains(&m[0].mean), "{m:?}");
    // In a bag in saturated air nothing moves either.
    let bag = case(
        vec![Wall::plain(10.0, 100.0)],
        vec![phase(0.0, Way::Bag(1e-5), 18.0, 1.0)],
    );
    assert!((run(&bag, 0.45, &[20.0])[0].mean - 0.45).abs() < 1e-9);
}

#[test]
fn a_season_is_followed_and_its_jump_is_stepped_with_care() {
    let readings = vec![
        Reading {
            day: 0.0,
            temp_c: 18.0,
            rh: 0.60,
        },
        Reading {
            day: 40.0,
            temp_c: 18.0,
            rh: 0.60,
        },
        Reading {
            day: 40.0,
            temp_c: 18.0,
            rh: 0.75,
        },
    ];
    let seasonal = Case {
        phases: vec![Phase {
            from_day: 0.0,
            way: Way::Open,
            climate: Climate::through(readings).unwrap(),
        }],
        ..case(
            vec![Wall::plain(8.0, 100.0)],
            vec![phase(0.0, Way::Open, 18.0, 0.6)],
        )
    };
    let days = [39.9, 40.5, 80.0];
    let m = run(&seasonal, 0.45, &days);
    assert!((m[0].mean - settling_moisture(18.0, 0.60).unwrap()).abs() < 1e-3);
    assert!(m[1].mean > m[0].mean && m[1].outer[0][0] > m[1].mean);
    assert!((m[2].mean - settling_moisture(18.0, 0.75).unwrap()).abs() < 2e-3);
    let mut drier = Drier::new(&seasonal, Tuning::default(), 0.0, 0.11).unwrap();
    let mut steps = 0;
    while drier.day() < 80.0 {
        drier.step().unwrap();
        steps += 1;
    }
    // Two days of hours twice, three hours otherwise.
    assert!((704..=706).contains(&steps), "{steps}");
}

#[test]
fn what_makes_no_case_is_refused_with_a_reason() {
    let good = case(
        vec![Wall::plain(10.0, 100.0)],
        vec![phase(0.0, Way::Open, 18.0, 0.6)],
    );
    let says = |case: &Case| {
        Drier::new(case, Tuning::default(), 0.0, 0.4)
            .err()
            .unwrap()
            .to_string()
    };
    assert!(
        says(&Case {
            walls: vec![],
            ..good.clone()
        })
        .contains("measure")
    );
    assert!(
        says(&Case {
            phases: vec![],
            ..good.clone()
        })
        .contains("how and where")
    );
    assert!(
        says(&Case {
            walls: vec![Wall::plain(0.0, 10.0)],
            ..good.clone()
        })
        .contains("thickness")
    );
    let two = vec![
        phase(5.0, Way::Open, 18.0, 0.6),
        phase(1.0, Way::Bag(1e-5), 18.0, 0.6),
    ];
    assert!(
        says(&Case {
            phases: two,
            ..good.clone()
        })
        .contains("order")
    );
    assert!(
        says(&Case {
            phases: vec![phase(0.0, Way::Bag(0.0), 18.0, 0.6)],
            ..good.clone()
        })
        .contains("bag")
    );
    assert!(course(&good, Tuning::default(), 0.0, 0.4, &[3.0, 1.0]).is_err());
    assert!(means(&good, Tuning::default(), 0.0, 0.4, &[f64::NAN]).is_err());
    assert!(Drier::new(&good, Tuning::default(), 0.0, 5.0).is_err());
    assert!(Drier::new(&good, Tuning::default(), f64::NAN, 0.4).is_err());
}

#[test]
fn the_mean_alone_is_the_mean_of_the_course_and_a_tried_future_leaves_the_past() {
    let case = case(
        vec![Wall::plain(8.0, 100.0), Wall::plain(14.0, 60.0)],
        vec![
            phase(0.0, Way::Bag(1e-5), 18.0, 0.6),
            phase(9.1, Way::Open, 18.0, 0.6),
        ],
    );
    let days = [-1.0, 0.0, 0.01, 2.2, 2.25, 2.3, 9.1, 15.0];
    let whole = run(&case, 0.5, &days);
    let alone = means(&case, Tuning::default(), 0.0, 0.5, &days).unwrap();
    for (m, a) in whole.iter().zip(alone) {
        assert!((m.mean - a).abs() < 1e-14, "{} {a}", m.mean);
    }
    let mut drier = Drier::new(&case, Tuning::default(), 0.0, 0.5).unwrap();
    while drier.day() < 12.0 {
        drier.step().unwrap();
    }
    let mut house = drier.clone();
    house.go_on(Way::Open, climate(21.0, 0.40));
    let here = ready(&mut drier, 300.0).unwrap();
    let there = ready(&mut house, 300.0).unwrap();
    assert!(house.settling().unwrap() < drier.settling().unwrap());
    assert!(there.slowest_day >= there.mean_day && here.mean_day.unwrap() > 12.0);
}
