//! How a case went over time: moistures on the days asked for, and when it was ready.

use super::case::{Case, DryingError, Tuning};
use super::drier::Drier;
use crate::shrinkage::SHRINKING_BEGINS;

/// Within so much of its settling moisture wood counts as ready, fraction.
pub const READY_WITHIN: f64 = 0.01;

/// One day of a course.
#[derive(Debug, Clone, PartialEq)]
pub struct Moment {
    /// The day.
    pub day: f64,
    /// Mean moisture of the piece, weighted by dry mass, fraction.
    pub mean: f64,
    /// Mean moisture of each wall.
    pub walls: Vec<f64>,
    /// Mean of each wall's cells, each clipped at 30 % as wetter wood has not shrunk.
    pub shrinking: Vec<f64>,
    /// Moisture of the outermost twentieth of each wall, outside and inside.
    pub outer: Vec<[f64; 2]>,
    /// Moisture the piece settles to where it is.
    pub settling: f64,
    /// Humidity in the bag, when in one.
    pub bag_rh: Option<f64>,
}

impl Moment {
    /// Weight, g, for wood of oven-dry mass `dry_g`.
    pub fn mass_g(&self, dry_g: f64) -> f64 {
        dry_g * (1.0 + self.mean)
    }

    /// Largest less smallest wall mean, fraction, each clipped at 30 % as wetter wood has not shrunk.
    pub fn spread(&self) -> f64 {
        let clipped = self.walls.iter().map(|m| m.min(SHRINKING_BEGINS));
        clipped.clone().fold(0.0, f64::max) - clipped.fold(f64::INFINITY, f64::min)
    }

    /// Largest difference within a wall, its mean against its outermost twentieth, fraction, all clipped at 30 %.
    pub fn gradient(&self) -> f64 {
        self.shrinking
            .iter()
            .zip(&self.outer)
            .map(|(mean, [a, b])| mean - a.min(*b).min(SHRINKING_BEGINS))
            .fold(0.0, f64::max)
    }

    pub(super) fn of(drier: &Drier) -> Result<Self, DryingError> {
        Ok(Moment {
            day: drier.day(),
            mean: drier.mean(),
            walls: drier.means().collect(),
            shrinking: drier.shrinking().collect(),
            outer: drier.outer().collect(),
            settling: drier.settling()?,
            bag_rh: drier.bag_rh(),
        })
    }

    /// Between `self` and `after`, at `day`.
    fn towards(&self, after: &Moment, day: f64) -> Moment {
        let span = after.day - self.day;
        let share = if span > 0.0 {
            (day - self.day) / span
        } else {
            1.0
        };
        let mix = |a: f64, b: f64| a + share * (b - a);
        let each = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| mix(*a, *b)).collect();
        Moment {
            day,
            mean: mix(self.mean, after.mean),
            walls: each(&self.walls, &after.walls),
            shrinking: each(&self.shrinking, &after.shrinking),
            outer: self
                .outer
                .iter()
                .zip(&after.outer)
                .map(|(a, b)| [mix(a[0], b[0]), mix(a[1], b[1])])
                .collect(),
            settling: mix(self.settling, after.settling),
            bag_rh: after.bag_rh,
        }
    }
}

/// Moments of `case` on the `days` asked for, from the even moisture `moisture` (fraction) on `start`; days before `start`
/// give the start.
///
/// # Errors
/// [`DryingError`] when a figure is out of range or the days are not in order.
pub fn course(
    case: &Case,
    tuning: Tuning,
    start: f64,
    moisture: f64,
    days: &[f64],
) -> Result<Vec<Moment>, DryingError> {
    in_order(days)?;
    let mut drier = Drier::new(case, tuning, start, moisture)?;
    let mut out = Vec::with_capacity(days.len());
    let mut before = Moment::of(&drier)?;
    for &day in days {
        if day <= before.day {
            out.push(Moment {
                day,
                ..before.clone()
            });
            continue;
        }
        let mut after = None;
        if day > drier.day() {
            while drier.day() < day {
                if drier.day() + 0.5 > day {
                    before = Moment::of(&drier)?;
                }
                drier.step()?;
            }
            after = Some(Moment::of(&drier)?);
        }
        let after = match after {
            Some(after) => after,
            None => Moment::of(&drier)?,
        };
        out.push(before.towards(&after, day));
    }
    Ok(out)
}

/// Mean moisture alone on the `days`, as [`course()`] but without the walls: what a fit needs.
///
/// # Errors
/// As [`course()`].
pub fn means(
    case: &Case,
    tuning: Tuning,
    start: f64,
    moisture: f64,
    days: &[f64],
) -> Result<Vec<f64>, DryingError> {
    in_order(days)?;
    let mut drier = Drier::new(case, tuning, start, moisture)?;
    let (mut day0, mut mean0) = (start, moisture);
    let (mut day1, mut mean1) = (start, moisture);
    let mut out = Vec::with_capacity(days.len());
    for &day in days {
        while day1 < day {
            (day0, mean0) = (day1, mean1);
            drier.step()?;
            (day1, mean1) = (drier.day(), drier.mean());
        }
        out.push(if day <= start {
            moisture
        } else {
            mean0 + (mean1 - mean0) * (day - day0) / (day1 - day0)
        });
    }
    Ok(out)
}

fn in_order(days: &[f64]) -> Result<(), DryingError> {
    let mut last = f64::NEG_INFINITY;
    for &day in days {
        if day < last || !day.is_finite() {
            return Err(DryingError::Days { day });
        }
        last = day;
    }
    Ok(())
}

/// When a piece came within a point of its settling moisture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ready {
    /// The day the mean of the whole piece did; the fit and its tables speak of this one.
    pub mean_day: Option<f64>,
    /// The day its slowest wall did, floor and spigot included; advice speaks of this one.
    pub slowest_day: Option<f64>,
}

/// First days at or after `drier`'s on which the piece, and its slowest wall, are within [`READY_WITHIN`] above the settling
/// moisture of where it then is; looked for up to `horizon`. The drier is left where it stopped.
///
/// # Errors
/// As [`Drier::step`].
pub fn ready(drier: &mut Drier, horizon: f64) -> Result<Ready, DryingError> {
    let over = |d: &Drier| -> Result<(f64, f64), DryingError> {
        let limit = d.settling()? + READY_WITHIN;
        Ok((
            d.mean() - limit,
            d.means().fold(f64::NEG_INFINITY, f64::max) - limit,
        ))
    };
    let mut before = over(drier)?;
    let mut found = Ready {
        mean_day: (before.0 <= 0.0).then(|| drier.day()),
        slowest_day: (before.1 <= 0.0).then(|| drier.day()),
    };
    while found.slowest_day.is_none() && drier.day() < horizon {
        let day = drier.day();
        drier.step()?;
        let now = over(drier)?;
        let crossed = |a: f64, b: f64| (b <= 0.0).then(|| day + (drier.day() - day) * a / (a - b));
        found.mean_day = found.mean_day.or_else(|| crossed(before.0, now.0));
        found.slowest_day = crossed(before.1, now.1);
        before = now;
    }
    Ok(found)
}
