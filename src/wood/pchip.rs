//! A shape-keeping cubic through points: it never swings past the readings it goes through.
//!
//! Piecewise cubic Hermite interpolation with Fritsch-Butland slopes: weighted harmonic mean inside, three-point limited
//! ends (Fritsch and Butland 1984; the same rules as SciPy's `PchipInterpolator`). Outside the knots it goes on as a
//! straight line, never as the cubic.

use std::fmt;

/// Why points give no curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PchipError {
    /// Fewer than two points, or unequal numbers of places and values.
    TooFew {
        /// How many pairs there were.
        found: usize,
    },
    /// A place does not lie after the one before it, or is not a number.
    NotInOrder {
        /// Index of the offending point, from 0.
        index: usize,
    },
    /// A value is not a finite number.
    NotANumber {
        /// Index of the offending point, from 0.
        index: usize,
    },
}

impl fmt::Display for PchipError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PchipError::TooFew { found } => {
                write!(
                    f,
                    "{found} points given, but a curve needs at least two pairs; add a station"
                )
            }
            PchipError::NotInOrder { index } => {
                write!(
                    f,
                    "point {} does not lie beyond the one before it; put the stations in order",
                    index + 1
                )
            }
            PchipError::NotANumber { index } => {
                write!(
                    f,
                    "point {} is not a finite number; enter it again",
                    index + 1
                )
            }
        }
    }
}

impl std::error::Error for PchipError {}

/// A shape-keeping cubic through points, in whatever units they were given.
#[derive(Debug, Clone, PartialEq)]
pub struct Pchip {
    x: Vec<f64>,
    y: Vec<f64>,
    slope: Vec<f64>,
}

impl Pchip {
    /// The curve through the points (`x[i]`, `y[i]`), places strictly rising.
    ///
    /// # Errors
    /// [`PchipError`] for fewer than two points, places out of order, or values that are not numbers.
    pub fn through(x: &[f64], y: &[f64]) -> Result<Self, PchipError> {
        if x.len() < 2 || x.len() != y.len() {
            return Err(PchipError::TooFew {
                found: x.len().min(y.len()),
            });
        }
        if let Some(index) =
            (0..x.len()).find(|&i| !x[i].is_finite() || (i > 0 && x[i] <= x[i - 1]))
        {
            return Err(PchipError::NotInOrder { index });
        }
        if let Some(index) = y.iter().position(|v| !v.is_finite()) {
            return Err(PchipError::NotANumber { index });
        }
        Ok(Pchip {
            x: x.to_vec(),
            y: y.to_vec(),
            slope: slopes(x, y),
        })
    }

    /// The places of the knots.
    pub fn knots(&self) -> &[f64] {
        &self.x
    }

    /// The values at the knots.
    pub fn values(&self) -> &[f64] {
        &self.y
    }

    /// The slopes at the knots, value per place.
    pub fn slopes(&self) -> &[f64] {
        &self.slope
    }

    /// The value at `at`; a straight line beyond either end.
    pub fn value(&self, at: f64) -> f64 {
        let last = self.x.len() - 1;
        if at <= self.x[0] {
            return self.y[0] + self.slope[0] * (at - self.x[0]);
        }
        if at >= self.x[last] {
            return self.y[last] + self.slope[last] * (at - self.x[last]);
        }
        let i = self.interval(at);
        let h = self.x[i + 1] - self.x[i];
        let t = (at - self.x[i]) / h;
        let u = 1.0 - t;
        u * u * (1.0 + 2.0 * t) * self.y[i]
            + t * t * (3.0 - 2.0 * t) * self.y[i + 1]
            + h * t * u * (u * self.slope[i] - t * self.slope[i + 1])
    }

    /// The slope at `at`; constant beyond either end.
    pub fn derivative(&self, at: f64) -> f64 {
        let last = self.x.len() - 1;
        if at <= self.x[0] {
            return self.slope[0];
        }
        if at >= self.x[last] {
            return self.slope[last];
        }
        let i = self.interval(at);
        let h = self.x[i + 1] - self.x[i];
        let t = (at - self.x[i]) / h;
        6.0 * t * (1.0 - t) * (self.y[i + 1] - self.y[i]) / h
            + (1.0 - t) * (1.0 - 3.0 * t) * self.slope[i]
            + t * (3.0 * t - 2.0) * self.slope[i + 1]
    }

    fn interval(&self, at: f64) -> usize {
        self.x
            .partition_point(|&x| x <= at)
            .clamp(1, self.x.len() - 1)
            - 1
    }
}

fn slopes(x: &[f64], y: &[f64]) -> Vec<f64> {
    let n = x.len();
    let h: Vec<f64> = x.windows(2).map(|w| w[1] - w[0]).collect();
    let d: Vec<f64> = (0..n - 1).map(|i| (y[i + 1] - y[i]) / h[i]).collect();
    if n == 2 {
        return vec![d[0]; 2];
    }
    let mut slope = vec![0.0; n];
    for i in 1..n - 1 {
        if d[i - 1] * d[i] > 0.0 {
            let before = 2.0 * h[i] + h[i - 1];
            let after = h[i] + 2.0 * h[i - 1];
            slope[i] = (before + after) / (before / d[i - 1] + after / d[i]);
        }
    }
    slope[0] = end_slope(h[0], h[1], d[0], d[1]);
    slope[n - 1] = end_slope(h[n - 2], h[n - 3], d[n - 2], d[n - 3]);
    slope
}

/// Three-point slope at an end, held back so that the curve does not swing past its first readings.
fn end_slope(h0: f64, h1: f64, d0: f64, d1: f64) -> f64 {
    let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if slope * d0 <= 0.0 {
        0.0
    } else if d0 * d1 < 0.0 && slope.abs() > 3.0 * d0.abs() {
        3.0 * d0
    } else {
        slope
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Slopes of a seven-station vessel, worked out twice, independently, from the rules above.
    #[test]
    fn slopes_of_a_seven_station_vessel() {
        let z = [0.0, 15.0, 35.0, 60.0, 85.0, 110.0, 130.0];
        let r = [35.0, 44.0, 58.0, 67.0, 64.0, 52.0, 39.0];
        let curve = Pchip::through(&z, &r).unwrap();
        let expected = [
            0.557143, 0.643796, 0.481188, 0.0, -0.192, -0.555307, -0.725556,
        ];
        for (got, want) in curve.slopes().iter().zip(expected) {
            assert!((got - want).abs() <= 0.6e-6, "{got} {want}");
        }
    }

    #[test]
    fn bad_points_are_named() {
        assert_eq!(
            Pchip::through(&[1.0], &[1.0]),
            Err(PchipError::TooFew { found: 1 })
        );
        assert_eq!(
            Pchip::through(&[0.0, 1.0, 1.0], &[1.0; 3]),
            Err(PchipError::NotInOrder { index: 2 })
        );
        assert_eq!(
            Pchip::through(&[0.0, 1.0], &[1.0, f64::NAN]),
            Err(PchipError::NotANumber { index: 1 })
        );
    }

    fn points() -> impl Strategy<Value = (Vec<f64>, Vec<f64>)> {
        proptest::collection::vec((0.5..30.0_f64, 5.0..100.0_f64), 2..12).prop_map(|steps| {
            let mut at = 0.0;
            steps
                .into_iter()
                .map(|(step, y)| {
                    at += step;
                    (at, y)
                })
                .unzip()
        })
    }

    proptest! {
        #[test]
        fn the_curve_goes_through_every_point_and_stays_between_neighbours((x, y) in points(), t in 0.0..1.0_f64) {
            let curve = Pchip::through(&x, &y).unwrap();
            for i in 0..x.len() {
                prop_assert!((curve.value(x[i]) - y[i]).abs() < 1e-9);
            }
            for i in 0..x.len() - 1 {
                let between = curve.value(x[i] + t * (x[i + 1] - x[i]));
                prop_assert!(between >= y[i].min(y[i + 1]) - 1e-9 && between <= y[i].max(y[i + 1]) + 1e-9);
            }
        }

        #[test]
        fn the_derivative_is_the_slope_of_the_value((x, y) in points(), t in 0.01..0.99_f64) {
            let curve = Pchip::through(&x, &y).unwrap();
            let at = x[0] + t * (x[x.len() - 1] - x[0]);
            let step = 1e-5;
            let inside = x.iter().all(|k| (k - at).abs() > 2.0 * step);
            prop_assume!(inside);
            let slope = (curve.value(at + step) - curve.value(at - step)) / (2.0 * step);
            prop_assert!((slope - curve.derivative(at)).abs() < 1e-4 * (1.0 + slope.abs()));
        }

        #[test]
        fn beyond_the_ends_it_goes_on_straight((x, y) in points(), far in 1.0..50.0_f64) {
            let curve = Pchip::through(&x, &y).unwrap();
            let end = x[x.len() - 1];
            let one = curve.value(end + far) - curve.value(end);
            let two = curve.value(end + 2.0 * far) - curve.value(end);
            prop_assert!((two - 2.0 * one).abs() < 1e-9 * (1.0 + two.abs()));
        }
    }
}
