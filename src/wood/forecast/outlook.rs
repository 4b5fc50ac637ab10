//! Everything the weighings of a piece allow to be said, in one call.

use super::early::{BagLine, TooEarly, bag_line, reasons};
use super::fit::{Fit, fit};
use super::prior::{Priors, UNKNOWNS};
use super::record::{ForecastError, Record};
use super::road::{FOUR_IN_FIVE, Road, quadratic, roads};
use crate::drying::{Case, Climate, Phase, means};

/// Moisture of the whole piece and how sure it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Now {
    /// The day.
    pub day: f64,
    /// Mean moisture, fraction.
    pub mean: f64,
    /// Its standard deviation.
    pub sd: f64,
    /// Moisture it settles to where it stands, fraction.
    pub settling: f64,
}

impl Now {
    /// A range that should hold four times of five.
    pub fn range(&self) -> (f64, f64) {
        let half = FOUR_IN_FIVE * self.sd;
        ((self.mean - half).max(0.0), self.mean + half)
    }
}

/// What can be said of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Outlook {
    /// The fit itself.
    pub fit: Fit,
    /// Moisture now.
    pub now: Now,
    /// Settled where it stands, "if the room stays as it is": into the house.
    pub here: Road,
    /// Settled in the house after that: to finish-turn. None when no house was given.
    pub finish: Option<Road>,
    /// Why the roads must not be shown as dates; empty when they may.
    pub too_early: Vec<TooEarly>,
    /// When the straight part of the bag ends, while the piece is on it.
    pub bag_line: Option<BagLine>,
}

impl Outlook {
    /// Days of the roads count from here.
    pub fn first_day(&self) -> f64 {
        self.fit.first_day
    }
}

/// `case` with every climate held from `today` on at its mean over the last fortnight: "if the room stays as it is". Phases that
/// are planned for later stay.
pub fn as_it_is(case: &Case, today: f64) -> Case {
    Case {
        phases: case
            .phases
            .iter()
            .map(|p| Phase {
                climate: p.climate.held_from(today),
                ..p.clone()
            })
            .collect(),
        ..case.clone()
    }
}

/// Fits `record` and looks ahead from `today`. `house` is the climate of the place where it will live, when it is not there
/// yet. Days are those of the phases.
///
/// # Errors
/// [`ForecastError`] when case or record are refused, or no curve fits.
pub fn outlook(
    case: &Case,
    record: &Record,
    priors: Priors,
    today: f64,
    house: Option<&Climate>,
) -> Result<Outlook, ForecastError> {
    let case = as_it_is(case, today);
    let fit = fit(&case, record, priors)?;
    let house = house.map(|h| h.held_from(today));
    let (here, finish) = roads(&case, &fit, today, house.as_ref())?;
    let points = record.fitted()?;
    let last = points[points.len() - 1];
    let today = today.max(last.day);
    let modelled = means(
        &case,
        fit.tuning,
        fit.first_day,
        fit.first_moisture,
        &[last.day, today],
    )?;
    // The last weight says where it was; the model only what came after.
    let mean = (last.mass_g / fit.dry_g - 1.0 + modelled[1] - modelled[0]).max(0.0);
    let settling = match case.phase_at(today) {
        Some(phase) => phase
            .climate
            .settling(today, fit.tuning.humidity)
            .map_err(ForecastError::Range)?,
        None => 0.0,
    };
    let line = bag_line(&case, record, &fit);
    let too_early = reasons(&case, record, &fit, &here, line.is_some(), settling, today);
    Ok(Outlook {
        now: Now {
            day: today,
            mean,
            sd: (1.0 + mean) * fit.dry_sd,
            settling,
        },
        here,
        finish,
        too_early,
        bag_line: line,
        fit,
    })
}

/// One day of a forecast's band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandPoint {
    /// The day.
    pub day: f64,
    /// Mean moisture: early end of four in five, most probable, late end; fractions.
    pub moisture: [f64; 3],
    /// Weight likewise, g.
    pub mass_g: [f64; 3],
}

/// The curve of a fitted piece on the `days` with a band that should hold four times of five. Before the last weighing the band
/// is that of the fit, after it the model's discrepancy is added.
///
/// # Errors
/// [`ForecastError`] when the days are not in order.
pub fn band(
    case: &Case,
    fit: &Fit,
    last_day: f64,
    days: &[f64],
) -> Result<Vec<BandPoint>, ForecastError> {
    let at = |q: &[f64; UNKNOWNS]| -> Result<(f64, Vec<f64>), ForecastError> {
        let guess = fit.unknowns.guess(q);
        let curve = means(case, guess.tuning, fit.first_day, guess.moisture, days)?;
        Ok((guess.dry_g, curve))
    };
    let (dry, middle) = at(&fit.best)?;
    let step = 0.05;
    let moved = (0..UNKNOWNS)
        .map(|k| {
            let mut q = fit.best;
            q[k] += step;
            at(&q)
        })
        .collect::<Result<Vec<_>, _>>()?;
    let floor = fit.loose.floor();
    let point = |i: usize| {
        let mut wet = [0.0; UNKNOWNS];
        let mut heavy = [0.0; UNKNOWNS];
        for (k, (dry_k, curve)) in moved.iter().enumerate() {
            wet[k] = (curve[i] - middle[i]) / step;
            heavy[k] = (dry_k * (1.0 + curve[i]) - dry * (1.0 + middle[i])) / step;
        }
        let slope = if i == 0 || days[i] <= days[i - 1] {
            0.0
        } else {
            (middle[i] - middle[i - 1]) / (days[i] - days[i - 1])
        };
        let astray = floor * (days[i] - last_day).max(0.0) * slope;
        let half = |g: &[f64; UNKNOWNS], unit: f64| {
            FOUR_IN_FIVE * (quadratic(g, &fit.covariance) + (unit * astray).powi(2)).sqrt()
        };
        let (m, w) = (middle[i], dry * (1.0 + middle[i]));
        let (hm, hw) = (half(&wet, 1.0), half(&heavy, dry));
        BandPoint {
            day: days[i],
            moisture: [(m - hm).max(0.0), m, m + hm],
            mass_g: [w - hw, w, w + hw],
        }
    };
    Ok((0..days.len()).map(point).collect())
}
