//! Thin against thick, face against middle: how far a piece's walls part in moisture while it dries, and what that strains.
//!
//! Upper bounds: everything taken as fully held, no creep, the outermost twentieth of a wall instead of its face, no cooling by
//! evaporation on the first day. Good for comparing a shelf with a bag and one wall with another; never a probability of a crack.

use super::case::{Case, DryingError, Tuning};
use super::course::Moment;
use super::drier::Drier;
use crate::shrinkage::{SHRINKING_BEGINS, TOTAL_SHRINKAGE};

/// Strain across the grain that wood bears without creep, fraction: 6.5 MPa over 0.96 GPa for ash, from memory.
pub const ELASTIC_LIMIT: f64 = 0.007;

/// The worst of a course.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uneven {
    /// Largest difference of the means of two walls, fraction of moisture, clipped at 30 %.
    pub spread: f64,
    /// Day of it.
    pub spread_day: f64,
    /// Largest difference of a wall's mean and its outermost twentieth, likewise.
    pub gradient: f64,
    /// Day of it.
    pub gradient_day: f64,
}

impl Uneven {
    /// Strain between two walls, fraction, for wood that shrinks by `tangential` from green to oven-dry (fraction).
    ///
    /// # Errors
    /// When the shrinkage is out of range.
    pub fn mismatch_strain(&self, tangential: f64) -> Result<f64, DryingError> {
        Ok(TOTAL_SHRINKAGE.check(tangential)? * self.spread / SHRINKING_BEGINS)
    }

    /// Strain of a face held by the wall behind it, likewise.
    ///
    /// # Errors
    /// When the shrinkage is out of range.
    pub fn face_strain(&self, tangential: f64) -> Result<f64, DryingError> {
        Ok(TOTAL_SHRINKAGE.check(tangential)? * self.gradient / SHRINKING_BEGINS)
    }
}

/// The worst of `case` from the even moisture `moisture` (fraction) on `start` until `until`, looked at after every step.
///
/// # Errors
/// [`DryingError`] when a figure of the case is out of range.
pub fn uneven(
    case: &Case,
    tuning: Tuning,
    start: f64,
    moisture: f64,
    until: f64,
) -> Result<Uneven, DryingError> {
    let mut drier = Drier::new(case, tuning, start, moisture)?;
    let mut worst = Uneven {
        spread: 0.0,
        spread_day: start,
        gradient: 0.0,
        gradient_day: start,
    };
    while drier.day() < until {
        drier.step()?;
        let moment = Moment::of(&drier)?;
        let (spread, gradient) = (moment.spread(), moment.gradient());
        if spread > worst.spread {
            (worst.spread, worst.spread_day) = (spread, moment.day);
        }
        if gradient > worst.gradient {
            (worst.gradient, worst.gradient_day) = (gradient, moment.day);
        }
    }
    Ok(worst)
}
