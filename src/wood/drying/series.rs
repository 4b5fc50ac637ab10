//! Crank's series for a slab of constant diffusivity, and the same slab by this crate's own solver: how far they part.
//!
//! J. Crank, The Mathematics of Diffusion, 2nd ed. 1975: p. 48 without resistance at the faces, p. 60 with. Time as Fourier
//! number D t / a2 and resistance as Biot number k a / D, both on the half thickness a.

use std::f64::consts::PI;

use super::slab::{Medium, Skin, Slab};
use crate::range::{Range, RangeError};

/// Fourier number.
pub const FOURIER: Range = Range::new("Fourier number", "", 1.0e-5, 100.0);
/// Biot number.
pub const BIOT: Range = Range::new("Biot number", "", 1.0e-4, 1.0e6);
/// Even steps of the solver.
pub const STEPS: Range = Range::new("number of steps", "", 1.0, 20_000.0);
/// Beyond this exponent a term of the series adds nothing.
const NOTHING: f64 = 45.0;

/// Cells of the solver's slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cells {
    /// 10.
    Ten,
    /// 20, as everywhere else in this crate.
    Twenty,
    /// 40.
    Forty,
    /// 80.
    Eighty,
}

/// The root of b tan b = `biot` between `k` pi and half a period on, by halving.
fn root(k: u32, biot: f64) -> f64 {
    let (mut low, mut high) = (f64::from(k) * PI, (f64::from(k) + 0.5) * PI);
    for _ in 0..60 {
        let b = 0.5 * (low + high);
        if b * b.tan() < biot {
            low = b;
        } else {
            high = b;
        }
    }
    0.5 * (low + high)
}

/// Smallest root of b tan b = `biot`.
///
/// # Errors
/// [`RangeError`] outside [`BIOT`].
pub fn first_root(biot: f64) -> Result<f64, RangeError> {
    Ok(root(0, BIOT.check(biot)?))
}

/// Mean share of the water still to go at the Fourier number `fourier`; `biot` `None` for faces held at their end.
///
/// # Errors
/// [`RangeError`] outside [`FOURIER`] or [`BIOT`].
pub fn series_left(fourier: f64, biot: Option<f64>) -> Result<f64, RangeError> {
    let fo = FOURIER.check(fourier)?;
    let mut left = 0.0;
    match biot {
        None => {
            for n in 0.. {
                let b = (f64::from(n) + 0.5) * PI;
                if b * b * fo > NOTHING {
                    break;
                }
                left += 2.0 / (b * b) * (-b * b * fo).exp();
            }
        }
        Some(biot) => {
            let bi = BIOT.check(biot)?;
            for k in 0.. {
                let b2 = root(k, bi).powi(2);
                left += 2.0 * bi * bi * (-b2 * fo).exp() / (b2 * (b2 + bi * (bi + 1.0)));
                if b2 * fo > NOTHING {
                    break;
                }
            }
        }
    }
    Ok(left)
}

/// The same diffusivity everywhere.
struct Even;

impl Medium for Even {
    fn diffusivity(&self, _: f64) -> f64 {
        1.0
    }
}

/// A linear resistance, the same at both faces.
struct Linear(f64);

impl Skin for Linear {
    fn settling(&self) -> f64 {
        0.0
    }
    fn conductance(&self, _: usize, _: f64, _: &mut f64) -> f64 {
        self.0
    }
}

fn run<const N: usize>(biot: f64, fo: f64, steps: u32) -> f64 {
    let mut slab = Slab::<N>::even(1.0);
    for _ in 0..steps {
        slab.attempt(fo / f64::from(steps), 2.0, &Even, &Linear(biot));
        slab.accept();
    }
    slab.mean()
}

/// The same share by the solver, over `steps` even steps (rounded).
///
/// # Errors
/// [`RangeError`] outside [`FOURIER`], [`BIOT`] or [`STEPS`].
pub fn solver_left(
    fourier: f64,
    biot: Option<f64>,
    cells: Cells,
    steps: f64,
) -> Result<f64, RangeError> {
    let fo = FOURIER.check(fourier)?;
    let biot = match biot {
        Some(biot) => BIOT.check(biot)?,
        None => f64::INFINITY,
    };
    let steps = STEPS.check(steps)?.round() as u32;
    Ok(match cells {
        Cells::Ten => run::<10>(biot, fo, steps),
        Cells::Twenty => run::<20>(biot, fo, steps),
        Cells::Forty => run::<40>(biot, fo, steps),
        Cells::Eighty => run::<80>(biot, fo, steps),
    })
}

/// Fourier number of a wall of `thickness_mm` with both faces free, of diffusivity `diffusivity` m2/s, after `days`.
#[must_use]
pub fn fourier_of(thickness_mm: f64, diffusivity: f64, days: f64) -> f64 {
    diffusivity * days * super::drier::DAY / (0.5e-3 * thickness_mm).powi(2)
}

/// Biot number of such a wall whose faces have the conductance `face` m/s on a moisture scale.
#[must_use]
pub fn biot_of(thickness_mm: f64, diffusivity: f64, face: f64) -> f64 {
    face * 0.5e-3 * thickness_mm / diffusivity
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    /// Every row of the table worked out from the book's two series.
    #[test]
    fn every_row_of_the_table() {
        let mut rows = 0;
        let table = include_str!("../tables/crank_slab.csv").lines();
        for line in table.filter(|l| !l.starts_with('#')).skip(1) {
            let c: Vec<f64> = line.split(',').map(|v| v.parse().unwrap()).collect();
            let got = series_left(c[1], c[0].is_finite().then_some(c[0])).unwrap();
            assert!((got - c[3]).abs() < 1e-6, "{line}: {got}");
            rows += 1;
        }
        assert!(rows > 40);
    }

    /// Worked values of the series, and the first root at a Biot number of 2.
    #[test]
    fn worked_values_and_the_solver_beside_them() {
        for (fo, held, resisted) in [
            (0.1, 0.643177, 0.866372),
            (0.5, 0.236050, 0.539616),
            (1.0, 0.068740, 0.302159),
        ] {
            assert!((series_left(fo, None).unwrap() - held).abs() < 6e-7);
            assert!((series_left(fo, Some(2.0)).unwrap() - resisted).abs() < 6e-7);
            let by_solver = solver_left(fo, Some(2.0), Cells::Twenty, 400.0).unwrap();
            assert!((by_solver - resisted).abs() < 1.8e-3);
            let fine = solver_left(fo, None, Cells::Eighty, 6400.0).unwrap();
            assert!((fine - held).abs() < 3e-4);
        }
        assert!((first_root(2.0).unwrap() - 1.076874).abs() < 6e-7);
        assert!((first_root(1e6).unwrap() - 0.5 * PI).abs() < 1e-5);
    }

    #[test]
    fn early_and_late_and_out_of_range() {
        // Early: 1 - 2 sqrt(Fo / pi), the half-infinite body (Crank p. 32).
        let early = series_left(1e-4, None).unwrap();
        assert!(
            (early - (1.0 - 2.0 * (1e-4 / PI).sqrt())).abs() < 1e-9,
            "{early}"
        );
        assert!(series_left(100.0, Some(1e-4)).unwrap() > 0.98);
        assert!(series_left(0.0, None).is_err() && series_left(0.1, Some(0.0)).is_err());
        assert!(solver_left(0.1, None, Cells::Ten, 0.0).is_err());
        // 10 mm, 1e-10 m2/s: a day is 8.64e-6 m2 over 25e-6 m2.
        assert!((fourier_of(10.0, 1e-10, 1.0) - 0.3456).abs() < 1e-12);
        assert!((biot_of(10.0, 1e-10, 4e-8) - 2.0).abs() < 1e-12);
    }
}
