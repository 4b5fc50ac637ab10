//! The curve of a fitted piece with its band, and how it follows the unknowns.

use super::fit::Fit;
use super::prior::UNKNOWNS;
use super::record::ForecastError;
use super::road::{FOUR_IN_FIVE, quadratic};
use crate::drying::{Case, means};

/// Step of the differences, in standard deviations of what was believed.
const STEP: f64 = 0.05;

/// One day of a forecast's band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandPoint {
    /// The day.
    pub day: f64,
    /// Mean moisture: low end of four in five, most probable, high end; fractions.
    pub moisture: [f64; 3],
    /// Weight likewise, g.
    pub mass_g: [f64; 3],
}

/// One day of the fitted curve and its slopes along the unknowns.
pub(crate) struct CurvePoint {
    pub(crate) day: f64,
    pub(crate) moisture: f64,
    pub(crate) mass_g: f64,
    pub(crate) wet: [f64; UNKNOWNS],
    pub(crate) heavy: [f64; UNKNOWNS],
}

/// The fitted curve on the `days`.
pub(crate) fn curve(
    case: &Case,
    fit: &Fit,
    days: &[f64],
) -> Result<Vec<CurvePoint>, ForecastError> {
    let at = |q: &[f64; UNKNOWNS]| -> Result<(f64, Vec<f64>), ForecastError> {
        let guess = fit.unknowns.guess(q);
        let curve = means(case, guess.tuning, fit.first_day, guess.moisture, days)?;
        Ok((guess.dry_g, curve))
    };
    let (dry, middle) = at(&fit.best)?;
    let mut points: Vec<CurvePoint> = days
        .iter()
        .zip(&middle)
        .map(|(day, m)| CurvePoint {
            day: *day,
            moisture: *m,
            mass_g: dry * (1.0 + m),
            wet: [0.0; UNKNOWNS],
            heavy: [0.0; UNKNOWNS],
        })
        .collect();
    for k in 0..UNKNOWNS {
        let mut q = fit.best;
        q[k] += STEP;
        let (dry, moved) = at(&q)?;
        for (p, m) in points.iter_mut().zip(moved) {
            p.wet[k] = (m - p.moisture) / STEP;
            p.heavy[k] = (dry * (1.0 + m) - p.mass_g) / STEP;
        }
    }
    Ok(points)
}

/// The curve of a fitted piece on the `days` with a band that should hold four times of five. Before the last weighing on
/// `last_day` the band is that of the fit, after it the model's discrepancy is added. Give the case the fit was made with, see
/// [`super::as_it_is`].
///
/// # Errors
/// [`ForecastError`] when the days are not in order.
pub fn band(
    case: &Case,
    fit: &Fit,
    last_day: f64,
    days: &[f64],
) -> Result<Vec<BandPoint>, ForecastError> {
    let points = curve(case, fit, days)?;
    let floor = fit.loose.floor();
    let mut before: Option<(f64, f64)> = None;
    let mut out = Vec::with_capacity(points.len());
    for p in &points {
        let slope = match before {
            Some((day, moisture)) if p.day > day => (p.moisture - moisture) / (p.day - day),
            _ => 0.0,
        };
        before = Some((p.day, p.moisture));
        let astray = floor * (p.day - last_day).max(0.0) * slope;
        let half = |g: &[f64; UNKNOWNS], unit: f64| {
            FOUR_IN_FIVE * (quadratic(g, &fit.covariance) + (unit * astray).powi(2)).sqrt()
        };
        let (hm, hw) = (half(&p.wet, 1.0), half(&p.heavy, fit.dry_g));
        out.push(BandPoint {
            day: p.day,
            moisture: [(p.moisture - hm).max(0.0), p.moisture, p.moisture + hm],
            mass_g: [p.mass_g - hw, p.mass_g, p.mass_g + hw],
        });
    }
    Ok(out)
}
