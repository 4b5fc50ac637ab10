//! The slab's step against Crank's series, with and without resistance at the surface, and what any such step must keep.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use super::slab::{Medium, Skin, Slab};

/// The same diffusivity everywhere.
struct Even(f64);

impl Medium for Even {
    fn diffusivity(&self, _: f64) -> f64 {
        self.0
    }
}

/// A linear surface resistance, the same at both faces.
struct Linear {
    settling: f64,
    conductance: f64,
}

impl Skin for Linear {
    fn settling(&self) -> f64 {
        self.settling
    }
    fn conductance(&self, _: usize, _: f64, _: &mut f64) -> f64 {
        self.conductance
    }
}

/// Mean fraction still to go at Fourier number `fo` (half thickness 1, diffusivity 1) after `steps` even steps.
fn left<const N: usize>(biot: f64, fo: f64, steps: usize) -> f64 {
    let mut slab = Slab::<N>::even(1.0);
    let skin = Linear {
        settling: 0.0,
        conductance: biot,
    };
    for _ in 0..steps {
        slab.attempt(fo / steps as f64, 2.0, &Even(1.0), &skin);
        slab.accept();
    }
    slab.mean()
}

/// Of Crank's series, one row: Biot, Fourier, mean fraction still to go.
fn series() -> Vec<(f64, f64, f64)> {
    include_str!("../tables/crank_slab.csv")
        .lines()
        .filter(|l| !l.starts_with('#'))
        .skip(1)
        .map(|l| {
            let c: Vec<f64> = l.split(',').map(|v| v.parse().unwrap()).collect();
            (c[0], c[1], c[3])
        })
        .collect()
}

/// Crank 1975 p. 48, no surface resistance. The errors halve twice for every halving of the cells and quartering of the steps:
/// second order in the cells, first in time. Table: cells and steps, then errors at Fo = .05 .1 .2 .5 1 2.
#[test]
fn without_surface_resistance_the_series_is_met_at_the_stated_order() {
    let rows: Vec<_> = series()
        .into_iter()
        .filter(|r| r.0.is_infinite() && r.1 >= 0.05 && r.1 != 0.125)
        .collect();
    assert_eq!(rows.len(), 6);
    let allowed = [
        [2.7e-2, 1.8e-2, 1.3e-2, 1.1e-2, 6.1e-3, 1.0e-3],
        [6.5e-3, 4.5e-3, 3.4e-3, 2.9e-3, 1.5e-3, 2.5e-4],
        [1.6e-3, 1.1e-3, 8.5e-4, 7.2e-4, 3.8e-4, 6.2e-5],
        [4.0e-4, 2.8e-4, 2.1e-4, 1.8e-4, 9.6e-5, 1.6e-5],
    ];
    let mut last = [f64::NAN; 6];
    for (mesh, allowed) in allowed.iter().enumerate() {
        for (i, (_, fo, exact)) in rows.iter().enumerate() {
            let got = match mesh {
                0 => left::<10>(f64::INFINITY, *fo, 100),
                1 => left::<20>(f64::INFINITY, *fo, 400),
                2 => left::<40>(f64::INFINITY, *fo, 1600),
                _ => left::<80>(f64::INFINITY, *fo, 6400),
            };
            let error = (got - exact).abs();
            assert!(
                error <= 1.06 * allowed[i] + 5e-7,
                "mesh {mesh} Fo {fo}: {error:e}"
            );
            if mesh > 1 {
                assert!(
                    (3.5..4.6).contains(&(last[i] / error)),
                    "mesh {mesh} Fo {fo}"
                );
            }
            last[i] = error;
        }
    }
}

/// Crank 1975 p. 60, every Biot number of the table, held to the mesh of the app (20 cells, 400 steps) and to a fine one.
#[test]
fn with_surface_resistance_the_series_is_met() {
    let rows: Vec<_> = series().into_iter().filter(|r| r.1 >= 0.05).collect();
    assert_eq!(rows.len(), 42);
    let (mut coarse, mut fine) = (0.0_f64, 0.0_f64);
    for (biot, fo, exact) in rows {
        coarse = coarse.max((left::<20>(biot, fo, 400) - exact).abs());
        fine = fine.max((left::<80>(biot, fo, 6400) - exact).abs());
    }
    assert!(coarse < 7e-3, "{coarse:e}");
    assert!(fine < 4.5e-4, "{fine:e}");
}

/// Worked values of the Robin series, L = 2: .866372 .539616 .302159 at Fo = .1 .5 1, and the largest errors of four meshes for
/// L = .5, 2 and 10 over Fo = .02 to 2.
#[test]
fn the_error_of_four_meshes_under_a_surface_resistance() {
    let exact = |biot: f64, fo: f64| {
        // Roots of b tan b = Bi by halving, one in every half period.
        (0..200)
            .map(|k| {
                let (mut low, mut high) = (
                    f64::from(k) * std::f64::consts::PI + 1e-12,
                    (f64::from(k) + 0.5) * std::f64::consts::PI - 1e-12,
                );
                for _ in 0..80 {
                    let b = 0.5 * (low + high);
                    if b * b.tan() < biot {
                        low = b
                    } else {
                        high = b
                    }
                }
                let b2 = low * low;
                2.0 * biot * biot * (-b2 * fo).exp() / (b2 * (b2 + biot * (biot + 1.0)))
            })
            .sum::<f64>()
    };
    for (fo, e) in [(0.1, 0.866372), (0.5, 0.539616), (1.0, 0.302159)] {
        assert!((exact(2.0, fo) - e).abs() < 1e-6);
    }
    for (biot, allowed) in [
        (0.5, [2.6e-3, 6.5e-4, 1.6e-4, 4.1e-5]),
        (2.0, [6.6e-3, 1.7e-3, 4.2e-4, 1.1e-4]),
        (10.0, [2.0e-2, 6.1e-3, 1.6e-3, 3.9e-4]),
    ] {
        let mut worst = [0.0_f64; 4];
        for fo in [0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0] {
            let e = exact(biot, fo);
            for (mesh, got) in [
                left::<10>(biot, fo, 100),
                left::<20>(biot, fo, 400),
                left::<40>(biot, fo, 1600),
                left::<80>(biot, fo, 6400),
            ]
            .into_iter()
            .enumerate()
            {
                worst[mesh] = worst[mesh].max((got - e).abs());
            }
        }
        for (got, allowed) in worst.iter().zip(allowed) {
            assert!(*got <= 1.1 * allowed, "L {biot}: {worst:?}");
        }
    }
}

/// Half the diffusivity over twice the time is the same curve, and half the wall takes a quarter of the time.
#[test]
fn time_scales_with_diffusivity_and_thickness_when_the_wall_alone_resists() {
    let at = |d: f64, thick: f64, seconds: f64| {
        let mut slab = Slab::<20>::even(0.45);
        let skin = Linear {
            settling: 0.11,
            conductance: f64::INFINITY,
        };
        for _ in 0..200 {
            slab.attempt(seconds / 200.0, thick, &Even(d), &skin);
            slab.accept();
        }
        slab.mean()
    };
    let once = at(8e-11, 0.010, 1e5);
    assert!((at(4e-11, 0.010, 2e5) - once).abs() < 1e-13);
    assert!((at(8e-11, 0.005, 2.5e4) - once).abs() < 1e-13);
    assert!((0.12..0.44).contains(&once));
}

#[test]
fn a_sealed_wall_keeps_its_water_and_the_flux_is_the_loss() {
    let skin = |conductance| Linear {
        settling: 0.1,
        conductance,
    };
    let mut sealed = Slab::<20>::even(0.45);
    sealed.attempt(3600.0, 0.01, &Even(1e-10), &skin(0.0));
    sealed.accept();
    assert!((sealed.mean() - 0.45).abs() < 1e-15);
    let mut slab = Slab::<20>::even(0.45);
    let mut out = 0.0;
    for _ in 0..300 {
        slab.attempt(10_800.0, 0.01, &Even(1e-10), &skin(3e-8));
        assert!((slab.tried_mean() + slab.leaving() - slab.mean()).abs() < 1e-14);
        out += slab.leaving();
        slab.accept();
        let [a, b] = slab.outer();
        assert!((a - b).abs() < 1e-14 && a < slab.mean());
    }
    assert!((0.45 - slab.mean() - out).abs() < 1e-12);
}
