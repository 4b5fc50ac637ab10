//! When the next weighing would tell most.
//!
//! A weighing to come narrows the range of the ready time by what it adds to the fit, and that can be worked out before it is
//! made: it depends on the day and the scale, not on what the scale will read (the linear update of a normal posterior).

use super::band::curve;
use super::outlook::{Outlook, as_it_is};
use super::prior::UNKNOWNS;
use super::record::{ForecastError, Record};
use super::road::quadratic;
use crate::drying::Case;

/// Share of the best narrowing that is good enough, so that it is not put off for little.
const ENOUGH: f64 = 0.8;
/// Narrowing of the spread below which another weighing tells nothing worth a walk to the scale.
const WORTH: f64 = 0.03;

/// What a weighing to come would tell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Telling {
    /// Day to weigh.
    pub day: f64,
    /// Spread of the logarithm of the ready time now.
    pub spread_now: f64,
    /// And after that weighing.
    pub spread_then: f64,
}

/// The first of the `days` to come on which a weighing tells nearly as much as on the best of them; `None` when no day would
/// narrow the range by 3 per cent. Never earlier than the first of `days`: the rhythm asked for is the caller's.
///
/// # Errors
/// [`ForecastError`] when the days are not in order.
pub fn next_weighing(
    case: &Case,
    said: &Outlook,
    record: &Record,
    days: &[f64],
) -> Result<Option<Telling>, ForecastError> {
    let case = as_it_is(case, said.now.day);
    let fit = &said.fit;
    let last = record.fitted()?.last().map_or(0.0, |w| w.mass_g);
    let noise = record.noise_g(fit.dry_g);
    let now = quadratic(&said.towards, &fit.covariance).sqrt();
    let tellings: Vec<Telling> = curve(&case, fit, days)?
        .iter()
        .map(|p| {
            let s = noise.hypot(0.03 * (last - p.mass_g));
            let gain = |g: &[f64; UNKNOWNS]| -> f64 {
                let mut sum = 0.0;
                for (gi, row) in g.iter().zip(&fit.covariance) {
                    for (hj, c) in p.heavy.iter().zip(row) {
                        sum += gi * c * hj / s;
                    }
                }
                sum
            };
            let own = quadratic(&p.heavy, &fit.covariance) / (s * s);
            let shed = gain(&said.towards).powi(2) / (1.0 + own);
            Telling {
                day: p.day,
                spread_now: now,
                spread_then: (now * now - shed).max(0.0).sqrt(),
            }
        })
        .collect();
    let least = tellings.iter().map(|t| t.spread_then).fold(now, f64::min);
    if now - least < WORTH * now {
        return Ok(None);
    }
    Ok(tellings
        .into_iter()
        .find(|t| now - t.spread_then >= ENOUGH * (now - least)))
}
