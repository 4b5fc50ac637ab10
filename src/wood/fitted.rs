//! Measured outlines, fitted before they are used: few readings are joined by a smooth curve, never by chords.
//!
//! Chords between eight points would cut off 5 mm of a 140 mm circle. Two diameters give an ellipse, more diameters even
//! harmonics, readings from the centre mark a periodic curve through every one of them. The fit does not smooth: a reading
//! that is wrong stays wrong.

use std::f64::consts::{PI, TAU};
use std::fmt;

use crate::range::{Range, RangeError};
use crate::section::Xy;

/// Points of a fitted outline: 720 are within 6e-4 mm of the curve.
pub const POINTS: usize = 720;
/// A distance from the centre mark, mm.
pub const FROM_CENTRE: Range = Range::new("distance from the centre mark", "mm", 0.5, 1000.0);

/// Why readings give no outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FitError {
    /// A reading is out of range.
    Range(RangeError),
    /// Too few readings.
    TooFew {
        /// How many there were.
        found: usize,
        /// How many it takes.
        needed: usize,
    },
    /// Two readings lie at the same angle, or so near that the curve between them is free.
    TooClose,
    /// The walls and the outside do not go together.
    NoBore {
        /// Where, radians from the first reading.
        angle: f64,
    },
}

impl fmt::Display for FitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FitError::Range(e) => e.fmt(f),
            FitError::TooFew { found, needed } => {
                write!(
                    f,
                    "{found} readings round, but it takes {needed} at least; measure more places"
                )
            }
            FitError::TooClose => {
                write!(
                    f,
                    "readings are too close together or too unevenly spread; spread them evenly round"
                )
            }
            FitError::NoBore { angle } => write!(
                f,
                "the wall is as thick as the radius at {:.0} degrees; check wall and outside there",
                angle.to_degrees()
            ),
        }
    }
}

impl std::error::Error for FitError {}

impl From<RangeError> for FitError {
    fn from(e: RangeError) -> Self {
        FitError::Range(e)
    }
}

/// A periodic curve over the angle through readings: mean and harmonics.
#[derive(Debug, Clone, PartialEq)]
pub struct Periodic {
    mean: f64,
    /// Cosine and sine parts of the harmonics `step`, 2 `step`, 3 `step`...
    harmonics: Vec<(f64, f64)>,
    step: f64,
}

impl Periodic {
    /// The curve of least wiggle through `values` at evenly spaced angles, the first at 0, once round a turn of `turn` radians.
    fn even(values: &[f64], turn: f64) -> Self {
        let n = values.len();
        let mean = values.iter().sum::<f64>() / n as f64;
        let part = |k: usize| {
            let each = values.iter().enumerate().map(|(j, v)| {
                let angle = TAU * (k * j) as f64 / n as f64;
                (v * angle.cos(), v * angle.sin())
            });
            let (c, s) = each.fold((0.0, 0.0), |sum, v| (sum.0 + v.0, sum.1 + v.1));
            // The harmonic at half the number of readings is seen at its crests only.
            let share = if 2 * k == n { 1.0 } else { 2.0 } / n as f64;
            (share * c, if 2 * k == n { 0.0 } else { share * s })
        };
        Periodic {
            mean,
            harmonics: (1..=n / 2).map(part).collect(),
            step: TAU / turn,
        }
    }

    /// The curve through (angle, value) readings anywhere round a turn of `turn` radians, with as many harmonics as they carry.
    fn through(readings: &[(f64, f64)], turn: f64) -> Result<Self, FitError> {
        let step = TAU / turn;
        let count = (readings.len() - 1) / 2;
        let size = 1 + 2 * count;
        let row = |angle: f64| {
            let mut row = vec![1.0];
            for k in 1..=count {
                let (s, c) = (step * k as f64 * angle).sin_cos();
                row.extend([c, s]);
            }
            row
        };
        // Normal equations, solved by elimination; the basis is near orthogonal for readings spread round.
        let mut system = vec![vec![0.0; size + 1]; size];
        for &(angle, value) in readings {
            let row = row(angle);
            for i in 0..size {
                for j in 0..size {
                    system[i][j] += row[i] * row[j];
                }
                system[i][size] += row[i] * value;
            }
        }
        let x = eliminate(system).ok_or(FitError::TooClose)?;
        let harmonics = (0..count).map(|k| (x[1 + 2 * k], x[2 + 2 * k])).collect();
        Ok(Periodic {
            mean: x[0],
            harmonics,
            step,
        })
    }

    /// Value at `angle` radians.
    pub fn at(&self, angle: f64) -> f64 {
        let (sin, cos) = (self.step * angle).sin_cos();
        // Each harmonic is the one before it turned on by the same angle.
        let (mut s, mut c) = (0.0, 1.0);
        let mut sum = self.mean;
        for (in_cos, in_sin) in &self.harmonics {
            (s, c) = (s * cos + c * sin, c * cos - s * sin);
            sum += in_cos * c + in_sin * s;
        }
        sum
    }

    /// The outline with this curve as its distance from the centre mark, [`POINTS`] points.
    pub fn outline(&self) -> Vec<Xy> {
        (0..POINTS)
            .map(|i| {
                let angle = TAU * i as f64 / POINTS as f64;
                Xy::polar(self.at(angle).max(0.0), angle)
            })
            .collect()
    }
}

/// Solves a square system with its right side as the last column; `None` when it is singular.
fn eliminate(mut m: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let n = m.len();
    let scale = m[0][0].abs();
    for i in 0..n {
        let pivot = (i..n).max_by(|a, b| m[*a][i].abs().total_cmp(&m[*b][i].abs()))?;
        m.swap(i, pivot);
        if m[i][i].abs() < 1e-4 * scale {
            return None;
        }
        let (upper, lower) = m.split_at_mut(i + 1);
        let row = &upper[i];
        for other in lower {
            let factor = other[i] / row[i];
            for (cell, top) in other.iter_mut().zip(row).skip(i) {
                *cell -= factor * top;
            }
        }
    }
    let mut x = vec![0.0; n];
    for i in (0..n).rev() {
        let sum: f64 = (i + 1..n).map(|k| m[i][k] * x[k]).sum();
        x[i] = (m[i][n] - sum) / m[i][i];
    }
    Some(x)
}

/// The ellipse with two diameters, the longest along x, mm.
///
/// # Errors
/// [`RangeError`] when a diameter is out of range.
pub fn ellipse(longest_mm: f64, shortest_mm: f64) -> Result<Vec<Xy>, RangeError> {
    let a = 0.5 * crate::own_shrinkage::MEASURED.check(longest_mm)?;
    let b = 0.5 * crate::own_shrinkage::MEASURED.check(shortest_mm)?;
    let point = |i: usize| TAU * i as f64 / POINTS as f64;
    Ok((0..POINTS)
        .map(|i| Xy::new(a * point(i).cos(), b * point(i).sin()))
        .collect())
}

/// The distance from the centre over the angle from three or more diameters at evenly spaced angles over half a turn, the first
/// along x: even harmonics. A calliper cannot see odd ones, which shift and skew without changing a diameter.
///
/// # Errors
/// [`FitError`] when there are fewer than three or one is out of range.
pub fn from_diameters(diameters_mm: &[f64]) -> Result<Periodic, FitError> {
    if diameters_mm.len() < 3 {
        return Err(FitError::TooFew {
            found: diameters_mm.len(),
            needed: 3,
        });
    }
    let mut radii = Vec::with_capacity(diameters_mm.len());
    for d in diameters_mm {
        radii.push(0.5 * crate::own_shrinkage::MEASURED.check(*d)?);
    }
    Ok(Periodic::even(&radii, PI))
}

/// The distance from the centre mark over the angle from three or more readings evenly spaced once round, the first along x, mm.
///
/// # Errors
/// [`FitError`] when there are fewer than three or one is out of range.
pub fn from_centre(radii_mm: &[f64]) -> Result<Periodic, FitError> {
    if radii_mm.len() < 3 {
        return Err(FitError::TooFew {
            found: radii_mm.len(),
            needed: 3,
        });
    }
    for r in radii_mm {
        FROM_CENTRE.check(*r)?;
    }
    Ok(Periodic::even(radii_mm, TAU))
}

/// The distance from the centre mark over the angle from (angle in radians, distance in mm) readings at any angles. With an even
/// number of readings it passes near them, with an odd number through them.
///
/// # Errors
/// [`FitError`] when there are fewer than three, one is out of range, or they lie too close together.
pub fn from_angles(readings: &[(f64, f64)]) -> Result<Periodic, FitError> {
    if readings.len() < 3 {
        return Err(FitError::TooFew {
            found: readings.len(),
            needed: 3,
        });
    }
    for (angle, r) in readings {
        FROM_CENTRE.check(*r)?;
        Range::new("angle", "radians", -100.0, 100.0).check(*angle)?;
    }
    Periodic::through(readings, TAU)
}

/// The dried bore that belongs to a dried `outer`, from the walls read green at evenly spaced angles (the first along x) on a
/// section turned to `green_radius_mm`: each point of the bore goes the way of the wood, along the same ray by the same share.
/// Exact for an affine change, to first order for a near pith.
///
/// # Errors
/// [`FitError`] when there is no wall, one is out of range, or one is as thick as the radius.
pub fn bore_of(
    outer: &[Xy],
    green_radius_mm: f64,
    green_walls_mm: &[f64],
) -> Result<Vec<Xy>, FitError> {
    let radius = crate::section::SECTION_RADIUS.check(green_radius_mm)?;
    for wall in green_walls_mm {
        crate::wall::WALL.check(*wall)?;
    }
    if green_walls_mm.is_empty() {
        return Err(FitError::TooFew {
            found: 0,
            needed: 1,
        });
    }
    let walls = Periodic::even(green_walls_mm, TAU);
    let mut inner = Vec::with_capacity(outer.len());
    for point in outer {
        let angle = point.y.atan2(point.x);
        let share = 1.0 - walls.at(angle) / radius;
        if share <= 0.0 {
            return Err(FitError::NoBore { angle });
        }
        inner.push(Xy::new(share * point.x, share * point.y));
    }
    Ok(inner)
}
