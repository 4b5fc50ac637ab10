//! How long the shape sums take. `cargo bench -p evenwall-wood`
//!
//! Aims on a two-core machine: all results of Plan under 1 ms, True-up over 12 stations with 16 readings each under 10 ms. Beside
//! them the same optimum by a general-purpose library, argmin's Nelder-Mead; scipy's differential evolution is timed by
//! `fixtures/make_fixtures.py`.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::f64::consts::TAU;

use argmin::core::{CostFunction, Executor};
use argmin::solver::neldermead::NelderMead;
use divan::{Bencher, black_box};
use evenwall_wood::axis::{Station, best_axis, wall_about_mm};
use evenwall_wood::fitted::{bore_of, from_centre};
use evenwall_wood::half_section::{HalfSection, Sizes};
use evenwall_wood::outline::Outline;
use evenwall_wood::rough_wall::{Grain, Wanted, advised_mm, practice_rough_mm, rough_wall};
use evenwall_wood::section::{Pith, Ring, Strains, Xy, dried};
use evenwall_wood::spigot::spigot_needed_mm;
use evenwall_wood::trueing::wall_left;
use evenwall_wood::wall::Walls;
use evenwall_wood::woods_search::search;

fn main() {
    divan::main();
}

fn ash() -> Strains {
    Strains::new(0.035_933_3, 0.0572).unwrap()
}

/// Twelve stations read at sixteen places round, as from callipers.
fn readings() -> Vec<(f64, Vec<f64>)> {
    (0..12)
        .map(|k| {
            let radius = 40.0 + 3.0 * f64::from(k);
            let read = |i: u32| {
                let angle = TAU * f64::from(i) / 16.0;
                let oval = 1.0
                    - ash().radial * angle.cos().powi(2)
                    - ash().tangential * angle.sin().powi(2);
                radius * oval + 0.05 * f64::from((7 * i + k) % 5)
            };
            (radius, (0..16).map(read).collect())
        })
        .collect()
}

/// Everything Plan shows for one choice: walls for every place of the pith, spigot, dried outline.
#[divan::bench]
fn plan(bencher: Bencher) {
    bencher.bench(|| {
        let piths = [Pith::Far, Pith::Unknown, Pith::At(77.0), Pith::At(20.0)];
        let sums: f64 = piths
            .iter()
            .map(|pith| {
                let wall = rough_wall(black_box(70.0), ash(), *pith, Wanted::finish(5.0))
                    .unwrap()
                    .total_mm();
                let wall = advised_mm(wall, practice_rough_mm(Grain::End, 140.0));
                wall_left(&Ring::new(70.0, wall).unwrap(), ash(), *pith)
                    .unwrap()
                    .wall_mm
            })
            .sum();
        let shape = dried(&Ring::new(70.0, 10.0).unwrap(), ash(), Pith::At(77.0), 180).unwrap();
        (
            sums,
            shape,
            spigot_needed_mm(50.0, 0.0572, 0.5, 0.5).unwrap(),
        )
    });
}

/// Twelve stations of sixteen readings: fitted, and one axis for all.
#[divan::bench]
fn true_up(bencher: Bencher) {
    bencher.bench(|| {
        let rows = outlines();
        best_axis(&stations(&rows)).unwrap()
    });
}

/// The optimum of True-up as a general-purpose library is given it: a function of the axis, to be made least.
struct Axis<'a>(&'a [Station<'a>]);

impl CostFunction for Axis<'_> {
    type Param = Vec<f64>;
    type Output = f64;

    fn cost(&self, c: &Vec<f64>) -> Result<f64, argmin::core::Error> {
        let spare = self
            .0
            .iter()
            .map(|s| wall_about_mm(s.outer, s.inner, Xy { x: c[0], y: c[1] }) - s.wanted_mm)
            .fold(f64::INFINITY, f64::min);
        Ok(-spare)
    }
}

/// The least wall to spare about the best axis, mm, by argmin's Nelder-Mead to a spread of 1e-6 mm.
fn by_nelder_mead(stations: &[Station<'_>]) -> f64 {
    let corners = vec![vec![0.0, 0.0], vec![1.0, 0.0], vec![0.0, 1.0]];
    let solver = NelderMead::new(corners).with_sd_tolerance(1e-6).unwrap();
    let found = Executor::new(Axis(stations), solver)
        .configure(|state| state.max_iters(300))
        .run()
        .unwrap();
    -found.state().get_best_cost()
}

/// Outlines of the twelve stations.
fn outlines() -> Vec<(Vec<Xy>, Vec<Xy>)> {
    readings()
        .iter()
        .map(|(radius, read)| {
            let outer = from_centre(read).unwrap().outline();
            let inner = bore_of(&outer, *radius, &[10.0, 10.5, 9.5, 10.0]).unwrap();
            (outer, inner)
        })
        .collect()
}

fn stations(rows: &[(Vec<Xy>, Vec<Xy>)]) -> Vec<Station<'_>> {
    rows.iter()
        .map(|(outer, inner)| Station {
            outer,
            inner,
            wanted_mm: 5.0,
        })
        .collect()
}

/// The shared axis of the twelve stations, the optimum alone.
#[divan::bench]
fn shared_axis(bencher: Bencher) {
    let rows = outlines();
    let stations = stations(&rows);
    bencher.bench(|| best_axis(black_box(&stations)).unwrap());
}

/// The same optimum by a general-purpose library.
#[divan::bench]
fn shared_axis_by_argmin_nelder_mead(bencher: Bencher) {
    let rows = outlines();
    let stations = stations(&rows);
    let ours = best_axis(&stations).unwrap().to_spare_mm;
    let theirs = by_nelder_mead(&stations);
    assert!((ours - theirs).abs() < 2e-3, "{ours} {theirs}");
    bencher.bench(|| by_nelder_mead(black_box(&stations)));
}

/// One station, the optimum alone.
#[divan::bench]
fn one_optimum(bencher: Bencher) {
    let (radius, read) = readings().swap_remove(0);
    let outer = from_centre(&read).unwrap().outline();
    let inner = bore_of(&outer, radius, &[10.0]).unwrap();
    bencher.bench(|| {
        best_axis(&[Station {
            outer: &outer,
            inner: &inner,
            wanted_mm: 0.0,
        }])
        .unwrap()
    });
}

/// The half section of the wall screen.
#[divan::bench]
fn draw_half_section(bencher: Bencher) {
    let outside = Outline::Ball.scaled(150.0, 170.0, None, 10.0).unwrap();
    let walls = Walls::even(10.0).unwrap();
    let sizes = Sizes {
        height_mm: 170.0,
        floor_depth_mm: 158.0,
        mouth_mm: Some(50.0),
    };
    bencher.bench(|| HalfSection::draw(black_box(&outside), &walls, sizes, 96).unwrap());
}

/// A search while typing.
#[divan::bench]
fn search_woods() -> usize {
    search(black_box("ash"), &[]).len()
}
