//! Everything the weighings of a piece allow to be said, in one call.

use super::early::{BagLine, TooEarly, WEIGHINGS, bag_line, reasons};
use super::fit::{Fit, fit};
use super::prior::{Priors, UNKNOWNS};
use super::record::{ForecastError, Record};
use super::road::{FOUR_IN_FIVE, Road, roads};
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
    /// How the logarithm of the slowest wall's time follows the unknowns.
    pub(crate) towards: [f64; UNKNOWNS],
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
    let (here, finish, towards) = roads(&case, &fit, today, house.as_ref())?;
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
    let settling = match case.phase_at(today) {
        Some(phase) => phase
            .climate
            .settling(today, fit.tuning.humidity)
            .map_err(ForecastError::Range)?,
        None => 0.0,
    };
    let line = bag_line(&case, record, &fit);
    let too_early = reasons(&case, record, &fit, &here, line.is_some(), settling, today);
    // Before the curve bends, what was believed of the oven-dry mass is all there is.
    let (dry_g, dry_sd) = if line.is_some() || points.len() < WEIGHINGS {
        (priors.dry_g, priors.dry_sd)
    } else {
        (fit.dry_g, fit.dry_sd)
    };
    // The last weight says where it was; the model only what came after.
    let mean = (last.mass_g / dry_g - 1.0 + modelled[1] - modelled[0]).max(0.0);
    Ok(Outlook {
        now: Now {
            day: today,
            mean,
            sd: (1.0 + mean) * dry_sd,
            settling,
        },
        here,
        finish,
        too_early,
        bag_line: line,
        towards,
        fit,
    })
}
