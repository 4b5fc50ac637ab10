//! The road to ready: days until a piece has settled where it stands, and until it has settled in the house after that.

use super::fit::Fit;
use super::prior::UNKNOWNS;
use super::record::ForecastError;
use crate::drying::{Case, Climate, Drier, Tuning, Way, ready};

/// Multiplier of a standard deviation for a range that holds four times of five.
pub const FOUR_IN_FIVE: f64 = 1.281_551_565_545;
/// Days after the first weighing beyond which nothing is looked for.
pub const HORIZON: f64 = 730.0;
/// The chord, in standard deviations of what was believed, over which the ready times are differenced.
const CHORD: f64 = 0.1;
/// Shortest time that has a logarithm worth taking, days.
const LEAST: f64 = 0.05;

/// A time as a range that should hold four times of five, days from the first weighing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadyRange {
    /// Early end.
    pub early: f64,
    /// Most probable time.
    pub middle: f64,
    /// Late end.
    pub late: f64,
    /// Standard deviation of its logarithm from the weighings alone, without the model's own discrepancy.
    pub spread: f64,
}

impl ReadyRange {
    /// About `middle` days, with the `spread` of its logarithm and the model's discrepancy `floor`.
    fn about(middle: f64, spread: f64, floor: f64) -> Self {
        let width = FOUR_IN_FIVE * spread.hypot(floor);
        ReadyRange {
            early: middle * (-width).exp(),
            middle,
            late: middle * width.exp(),
            spread,
        }
    }

    /// Early and late end cut at `today` (days from the first weighing): what lies behind is no forecast. `None` when the whole
    /// range does.
    pub fn ahead(&self, today: f64) -> Option<(f64, f64)> {
        (self.late > today).then(|| (self.early.max(today), self.late))
    }
}

/// When a piece is within a point of its settling moisture. `None`: not within two years.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Road {
    /// By the mean of the whole piece.
    pub mean: Option<ReadyRange>,
    /// By its slowest wall, floor and spigot included: what advice speaks of.
    pub slowest: Option<ReadyRange>,
}

/// Four ready times of one run, capped at the horizon: here by mean, by slowest, then in the house by mean, by slowest.
type Times = [f64; 4];

/// Where a run starts.
#[derive(Debug, Clone, Copy)]
struct Start {
    day: f64,
    moisture: f64,
    tuning: Tuning,
}

/// Runs `case` until it has settled where its last phase stands, then in `house` if given, moved there on the day it had
/// settled or `today` if later.
fn times(
    case: &Case,
    start: Start,
    today: f64,
    house: Option<&Climate>,
) -> Result<Times, ForecastError> {
    let horizon = start.day + HORIZON;
    let mut drier = Drier::new(case, start.tuning, start.day, start.moisture)?;
    // Ready where it now stands: not in an earlier place that it has left.
    let settled_from = case
        .phases
        .iter()
        .map(|p| p.from_day)
        .filter(|d| *d <= today)
        .fold(start.day, f64::max);
    while drier.day() < settled_from - 1e-9 {
        drier.step()?;
    }
    let mut at_house = drier.clone();
    let here = ready(&mut drier, horizon)?;
    let slowest = here.slowest_day.unwrap_or(f64::INFINITY);
    let mut out = [
        here.mean_day.unwrap_or(horizon) - start.day,
        slowest.min(horizon) - start.day,
        HORIZON,
        HORIZON,
    ];
    if let Some(house) = house
        && slowest.is_finite()
    {
        let move_day = slowest.max(today);
        while at_house.day() < move_day - 0.1 {
            at_house.step()?;
        }
        at_house.go_on(Way::Open, house.clone());
        let there = ready(&mut at_house, horizon)?;
        out[2] = there.mean_day.unwrap_or(horizon) - start.day;
        out[3] = there.slowest_day.unwrap_or(horizon) - start.day;
    }
    Ok(out)
}

/// Roads of a fitted piece: settled here, and settled in the house after that when `house` is given; and how the logarithm of the
/// slowest wall's time here follows the unknowns.
pub(crate) fn roads(
    case: &Case,
    fit: &Fit,
    today: f64,
    house: Option<&Climate>,
) -> Result<(Road, Option<Road>, [f64; UNKNOWNS]), ForecastError> {
    let at = |q: &[f64; UNKNOWNS]| {
        let guess = fit.unknowns.guess(q);
        let start = Start {
            day: fit.first_day,
            moisture: guess.moisture,
            tuning: guess.tuning,
        };
        times(case, start, today, house)
    };
    let middle = at(&fit.best)?;
    let mut gradient = [[0.0; UNKNOWNS]; 4];
    for k in 0..UNKNOWNS {
        let mut moved = fit.best;
        moved[k] += CHORD;
        let moved = at(&moved)?;
        for (g, (m, t)) in gradient.iter_mut().zip(moved.iter().zip(&middle)) {
            g[k] = (m.max(LEAST).ln() - t.max(LEAST).ln()) / CHORD;
        }
    }
    let range = |i: usize| {
        let spread = quadratic(&gradient[i], &fit.covariance).sqrt();
        (middle[i] < HORIZON).then(|| ReadyRange::about(middle[i], spread, fit.loose.floor()))
    };
    let road = |i: usize| Road {
        mean: range(i),
        slowest: range(i + 1),
    };
    Ok((road(0), house.map(|_| road(2)), gradient[1]))
}

/// Variance that a covariance gives to a sum with these weights.
pub(crate) fn quadratic(g: &[f64; UNKNOWNS], covariance: &[[f64; UNKNOWNS]; UNKNOWNS]) -> f64 {
    let mut sum = 0.0;
    for (gi, row) in g.iter().zip(covariance) {
        for (gj, c) in g.iter().zip(row) {
            sum += gi * c * gj;
        }
    }
    sum.max(0.0)
}

/// The whole road of a piece that was never weighed: `case` from `moisture` (fraction) on `day`, every speed as uncertain as
/// believed. Wide, and to be shown in weeks or as "two to three times as long as the other", never as a date.
///
/// # Errors
/// [`ForecastError`] when the case is refused.
pub fn unweighed_road(
    case: &Case,
    day: f64,
    moisture: f64,
    house: Option<&Climate>,
) -> Result<(Road, Option<Road>), ForecastError> {
    let dry_g = case.dry_mass_g();
    let record = super::Record {
        weighings: vec![super::Weighing {
            day,
            mass_g: dry_g * (1.0 + moisture),
        }],
        resets: vec![],
        step_g: 1.0,
    };
    let fit = super::fit(case, &record, super::Priors::usual(dry_g))?;
    let (here, finish, _) = roads(case, &fit, day, house)?;
    Ok((here, finish))
}
