//! What the scale said: the weighings of one piece, net, in order of time.

use std::fmt;

use crate::drying::DryingError;
use crate::profile::MASS;
use crate::range::{Range, RangeError};

/// Step of the scale, g.
pub const STEP: Range = Range::new("step of the scale", "g", 0.0, 100.0);

/// One weighing, tare taken off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weighing {
    /// When, days on the piece's own count (that of the phases).
    pub day: f64,
    /// Net weight, g.
    pub mass_g: f64,
}

/// The weighings of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// All weighings, in order of time.
    pub weighings: Vec<Weighing>,
    /// Days on which mass was added or taken away (sealer, bark, re-turning), or the scale changed: what is fitted begins with
    /// the first weighing at or after the last of them.
    pub resets: Vec<f64>,
    /// Step of the scale, g, in [`STEP`].
    pub step_g: f64,
}

/// Why weighings give no fit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ForecastError {
    /// The drying model refuses its case.
    Drying(DryingError),
    /// A figure lies outside its range.
    Range(RangeError),
    /// There is no weighing since the last reset.
    NoWeighing,
    /// A weighing is earlier than the one before it.
    OutOfOrder {
        /// The day before.
        before: f64,
        /// The earlier day that follows.
        then: f64,
    },
    /// The fit did not come to rest.
    NoRest,
}

impl fmt::Display for ForecastError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ForecastError::Drying(e) => e.fmt(f),
            ForecastError::Range(e) => e.fmt(f),
            ForecastError::NoWeighing => write!(
                f,
                "there is no weighing since the last change of its mass; weigh it once more"
            ),
            ForecastError::OutOfOrder { before, then } => write!(
                f,
                "the weighing of day {then} follows that of day {before}; put the weighings in order of time"
            ),
            ForecastError::NoRest => write!(
                f,
                "no drying curve fits these weights; look for one that was taken with tare or on another scale"
            ),
        }
    }
}

impl std::error::Error for ForecastError {}

impl From<DryingError> for ForecastError {
    fn from(e: DryingError) -> Self {
        ForecastError::Drying(e)
    }
}

impl From<RangeError> for ForecastError {
    fn from(e: RangeError) -> Self {
        ForecastError::Range(e)
    }
}

impl Record {
    /// The weighings that are fitted: from the last reset on. At least one.
    ///
    /// # Errors
    /// [`ForecastError`] when there is none, they are out of order, or a figure is out of range.
    pub fn fitted(&self) -> Result<&[Weighing], ForecastError> {
        STEP.check(self.step_g)?;
        let mut last = f64::NEG_INFINITY;
        for w in &self.weighings {
            MASS.check(w.mass_g)?;
            if !w.day.is_finite() || w.day < last {
                return Err(ForecastError::OutOfOrder {
                    before: last,
                    then: w.day,
                });
            }
            last = w.day;
        }
        let from = self
            .resets
            .iter()
            .copied()
            .fold(f64::NEG_INFINITY, f64::max);
        let first = self.weighings.partition_point(|w| w.day < from);
        match &self.weighings[first..] {
            [] => Err(ForecastError::NoWeighing),
            rest => Ok(rest),
        }
    }

    /// Standard deviation (g) of each fitted weight about the model: rounding, handling, weather, and an error of the model in
    /// proportion to the water still to go. `dry_g` is the oven-dry mass. The shares are judgement, tuned on invented logs.
    pub(crate) fn deviations(&self, dry_g: f64) -> Result<Vec<f64>, ForecastError> {
        let fitted = self.fitted()?;
        let last = fitted.last().map_or(0.0, |w| w.mass_g);
        Ok(fitted
            .iter()
            .map(|w| {
                let model = 0.03 * (w.mass_g - last);
                (self.noise_g(dry_g).powi(2) + model * model).sqrt()
            })
            .collect())
    }

    /// Standard deviation (g) of a weight apart from the model's error: rounding, handling (0.05 g) and weather.
    pub(crate) fn noise_g(&self, dry_g: f64) -> f64 {
        let rounding = self.step_g * self.step_g / 12.0;
        (rounding + 0.05 * 0.05 + (0.0015 * dry_g).powi(2)).sqrt()
    }
}
