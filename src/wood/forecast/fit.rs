//! The fit: the drying model in the loop of Levenberg and Marquardt, what is believed as further residuals.
//!
//! The search is that of the crate `levenberg-marquardt`, a translation of MINPACK; the Jacobian is by differences, as the model
//! has no other.

use std::cell::RefCell;

use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::{DMatrix, DVector, Dyn, Owned};

use super::prior::{Loose, Priors, UNKNOWNS, Unknowns};
use super::record::{ForecastError, Record};
use crate::drying::{Case, Tuning, means};

/// Step of the differences, in standard deviations of what is believed.
const STEP: f64 = 1e-4;
/// Where the search stops: so small a part of its sum of squares and of a deviation.
const TOLERANCE: f64 = 1e-5;
/// A second start, for weights that fall more slowly than believed: a heavy piece that has dried and a light one that has not
/// weigh the same.
const SLOW: [f64; UNKNOWNS] = [0.0, -1.0, -1.5, 0.0];
/// From so many weighings on one start is enough when it fits.
const PINNED: usize = 6;

/// What the weighings say of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// Oven-dry mass, g.
    pub dry_g: f64,
    /// Standard deviation of its logarithm.
    pub dry_sd: f64,
    /// Multipliers for the drying model. The diffusivity is that of this model at its own step, not a property of the wood.
    pub tuning: Tuning,
    /// Which exchange was left open.
    pub loose: Loose,
    /// Day of the first fitted weighing.
    pub first_day: f64,
    /// Moisture on that day, taken as even through the walls, fraction.
    pub first_moisture: f64,
    /// Weighings fitted.
    pub weighings: usize,
    /// Sum of squares of the weighted residuals of the weights.
    pub chi2: f64,
    pub(crate) unknowns: Unknowns,
    pub(crate) best: [f64; UNKNOWNS],
    /// Covariance of the unknowns, in deviations of what was believed.
    pub(crate) covariance: [[f64; UNKNOWNS]; UNKNOWNS],
}

/// A least-squares problem over some of the unknowns.
struct Problem<'a> {
    case: &'a Case,
    unknowns: Unknowns,
    days: Vec<f64>,
    masses: Vec<f64>,
    deviations: Vec<f64>,
    free: Vec<usize>,
    believes: bool,
    tolerance: f64,
    q: DVector<f64>,
    /// Residuals at `q`, kept because search and Jacobian ask for the same ones.
    here: RefCell<Option<DVector<f64>>>,
}

impl Problem<'_> {
    fn whole(&self, q: &DVector<f64>) -> [f64; UNKNOWNS] {
        let mut whole = [0.0; UNKNOWNS];
        for (k, v) in self.free.iter().zip(q.iter()) {
            whole[*k] = *v;
        }
        whole
    }

    fn residuals_at(&self, q: &DVector<f64>) -> Option<DVector<f64>> {
        let guess = self.unknowns.guess(&self.whole(q));
        let moistures = means(
            self.case,
            guess.tuning,
            self.unknowns.first_day,
            guess.moisture,
            &self.days,
        )
        .ok()?;
        let mut out: Vec<f64> = moistures
            .iter()
            .zip(&self.masses)
            .zip(&self.deviations)
            .map(|((m, mass), s)| (guess.dry_g * (1.0 + m) - mass) / s)
            .collect();
        if self.believes {
            out.extend(q.iter());
        }
        Some(DVector::from_vec(out))
    }

    fn differenced(&self) -> Option<DMatrix<f64>> {
        let q = &self.q;
        let here = self.residuals()?;
        let mut out = DMatrix::zeros(here.len(), q.len());
        for k in 0..q.len() {
            let mut moved = q.clone();
            moved[k] += STEP;
            let column = (self.residuals_at(&moved)? - &here) / STEP;
            out.set_column(k, &column);
        }
        Some(out)
    }

    /// Searches from `start`; gives the problem at rest and half its sum of squares.
    fn solved(mut self, start: &[f64]) -> Result<(Self, f64), ForecastError> {
        self.set_params(&DVector::from_row_slice(start));
        // The unknowns are in deviations: a first step of one, and no other scaling.
        let search = LevenbergMarquardt::new()
            .with_stepbound(1.0)
            .with_scale_diag(false)
            .with_ftol(self.tolerance)
            .with_xtol(self.tolerance)
            .with_gtol(1e-9)
            .with_patience(30);
        let (problem, report) = search.minimize(self);
        if report.objective_function.is_finite() {
            Ok((problem, report.objective_function))
        } else {
            Err(ForecastError::NoRest)
        }
    }
}

impl LeastSquaresProblem<f64, Dyn, Dyn> for Problem<'_> {
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;
    type ParameterStorage = Owned<f64, Dyn>;

    fn set_params(&mut self, x: &DVector<f64>) {
        self.q.copy_from(x);
        self.here.replace(None);
    }

    fn params(&self) -> DVector<f64> {
        self.q.clone()
    }

    fn residuals(&self) -> Option<DVector<f64>> {
        if let Some(here) = &*self.here.borrow() {
            return Some(here.clone());
        }
        let here = self.residuals_at(&self.q);
        self.here.replace(here.clone());
        here
    }

    fn jacobian(&self) -> Option<DMatrix<f64>> {
        self.differenced()
    }
}

fn problem<'a>(
    case: &'a Case,
    record: &Record,
    priors: Priors,
    free: Vec<usize>,
    believes: bool,
) -> Result<Problem<'a>, ForecastError> {
    case.check()?;
    let fitted = record.fitted()?;
    crate::profile::MASS.check(priors.dry_g)?;
    let (first, last) = (fitted[0], fitted[fitted.len() - 1]);
    Ok(Problem {
        case,
        unknowns: Unknowns {
            priors,
            loose: Loose::of(case, first.day, last.day),
            first_day: first.day,
            first_g: first.mass_g,
        },
        days: fitted.iter().map(|w| w.day).collect(),
        masses: fitted.iter().map(|w| w.mass_g).collect(),
        deviations: record.deviations(priors.dry_g)?,
        q: DVector::zeros(free.len()),
        free,
        believes,
        tolerance: TOLERANCE,
        here: RefCell::new(None),
    })
}

/// Fits the drying model to the weighings of `record` since its last reset: the most probable oven-dry mass, diffusivity,
/// exchange and humidity, and how sure they are.
///
/// # Errors
/// [`ForecastError`] when case or record are refused, or no curve fits.
pub fn fit(case: &Case, record: &Record, priors: Priors) -> Result<Fit, ForecastError> {
    let ask = || problem(case, record, priors, (0..UNKNOWNS).collect(), true);
    let (mut done, rest) = ask()?.solved(&[0.0; UNKNOWNS])?;
    if done.days.len() > 1 && (done.days.len() < PINNED || rest > done.days.len() as f64) {
        let (slow, slow_rest) = ask()?.solved(&SLOW)?;
        if slow_rest < rest {
            done = slow;
        }
    }
    let jacobian = done.jacobian().ok_or(ForecastError::NoRest)?;
    let residuals = done.residuals().ok_or(ForecastError::NoRest)?;
    let n = done.days.len();
    let chi2: f64 = residuals.iter().take(n).map(|r| r * r).sum();
    let excess = if n > 2 {
        (chi2 / (n - 2) as f64).max(1.0)
    } else {
        1.0
    };
    let inverse = (jacobian.transpose() * &jacobian)
        .try_inverse()
        .ok_or(ForecastError::NoRest)?;
    let mut covariance = [[0.0; UNKNOWNS]; UNKNOWNS];
    for (i, row) in covariance.iter_mut().enumerate() {
        for (j, cell) in row.iter_mut().enumerate() {
            *cell = inverse[(i, j)] * excess;
        }
    }
    let best = done.whole(&done.q);
    let guess = done.unknowns.guess(&best);
    Ok(Fit {
        dry_g: guess.dry_g,
        // However badly the curve fits, the weights cannot make the oven-dry mass less sure than it was.
        dry_sd: priors.dry_sd * covariance[0][0].sqrt().min(1.0),
        tuning: guess.tuning,
        loose: done.unknowns.loose,
        first_day: done.unknowns.first_day,
        first_moisture: guess.moisture,
        weighings: n,
        chi2,
        unknowns: done.unknowns,
        best,
        covariance,
    })
}

/// Oven-dry mass (g) and multiplier of the diffusivity that fit `record` best by plain least squares, with nothing believed and
/// everything else as usual; `guess_g` is a first guess of the oven-dry mass. For checks and for comparing solvers.
///
/// # Errors
/// As [`fit()`].
pub fn plain_fit(case: &Case, record: &Record, guess_g: f64) -> Result<(f64, f64), ForecastError> {
    let mut plain = problem(case, record, Priors::usual(guess_g), vec![0, 1], false)?;
    plain.deviations.fill(1.0);
    plain.tolerance = 1e-8;
    let (done, _) = plain.solved(&[0.0, 0.0])?;
    let guess = done.unknowns.guess(&done.whole(&done.q));
    Ok((guess.dry_g, guess.tuning.diffusion))
}
