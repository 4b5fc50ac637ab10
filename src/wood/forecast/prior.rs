//! What is believed before the weighings speak, and the unknowns they are asked for.

use crate::drying::{Case, Tuning, Way};

/// Smallest and largest moisture a fit may begin with: beyond them the weights are not of this piece.
const START: (f64, f64) = (0.01, 3.9);

/// Which exchange with the air is unknown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Loose {
    /// The exchange of the faces with open air.
    Surface,
    /// The habit of turning the bag, or what a cover lets through.
    Habit,
}

impl Loose {
    /// Of a case weighed between two days: the habit as soon as it stood in a bag or under a cover then.
    pub fn of(case: &Case, first_day: f64, last_day: f64) -> Self {
        let (from, to) = (case.phase_index(first_day), case.phase_index(last_day));
        let covered = case
            .phases
            .iter()
            .take(to + 1)
            .skip(from)
            .any(|p| p.way != Way::Open);
        if covered {
            Loose::Habit
        } else {
            Loose::Surface
        }
    }

    /// Discrepancy of the model that no number of weighings takes away, standard deviation of the logarithm of a ready time.
    /// Found on invented logs whose truth was richer than the model; real wood will want more.
    pub fn floor(self) -> f64 {
        match self {
            Loose::Surface => 0.30,
            Loose::Habit => 0.20,
        }
    }
}

/// Standard deviations of what is believed, and the oven-dry mass from the geometry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Priors {
    /// Oven-dry mass, g, from volume and density.
    pub dry_g: f64,
    /// Of its logarithm: the density of one piece lies about a tenth off its wood's.
    pub dry_sd: f64,
    /// Of the logarithm of the diffusivity's multiplier: a factor of two either way.
    pub diffusion_sd: f64,
    /// Of the logarithm of the exchange with open air.
    pub surface_sd: f64,
    /// Of the logarithm of the bag's or the cover's multiplier: a habit is hardly known.
    pub habit_sd: f64,
    /// Of the humidity, fraction: readings of a shop's instrument.
    pub humidity_sd: f64,
}

impl Priors {
    /// Usual beliefs about a piece of oven-dry mass `dry_g`, g.
    pub fn usual(dry_g: f64) -> Self {
        Priors {
            dry_g,
            dry_sd: 0.10,
            diffusion_sd: 0.7,
            surface_sd: 0.4,
            habit_sd: 1.0,
            humidity_sd: 0.05,
        }
    }

    /// Usual beliefs about `case`, its oven-dry mass from its walls.
    pub fn of(case: &Case) -> Self {
        Priors::usual(case.dry_mass_g())
    }
}

/// Number of unknowns: logarithm of the oven-dry mass, of the diffusivity, of the exchange; shift of the humidity.
pub(crate) const UNKNOWNS: usize = 4;

/// The unknowns counted in standard deviations from what is believed: all 0 at the start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Unknowns {
    pub(crate) priors: Priors,
    pub(crate) loose: Loose,
    /// Day and weight of the first weighing, which sets the moisture at the start.
    pub(crate) first_day: f64,
    pub(crate) first_g: f64,
}

/// A piece as one set of the unknowns makes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Guess {
    pub(crate) dry_g: f64,
    pub(crate) tuning: Tuning,
    pub(crate) moisture: f64,
}

impl Unknowns {
    pub(crate) fn guess(&self, q: &[f64; UNKNOWNS]) -> Guess {
        let p = &self.priors;
        // Five deviations bound what an early step of the fit may try.
        let scale = |q: f64, sd: f64| (sd * q.clamp(-5.0, 5.0)).exp();
        let dry_g = p.dry_g * scale(q[0], p.dry_sd);
        let (surface, habit) = match self.loose {
            Loose::Surface => (scale(q[2], p.surface_sd), 1.0),
            Loose::Habit => (1.0, scale(q[2], p.habit_sd)),
        };
        Guess {
            dry_g,
            tuning: Tuning {
                diffusion: scale(q[1], p.diffusion_sd),
                surface,
                habit,
                humidity: p.humidity_sd * q[3].clamp(-5.0, 5.0),
            },
            moisture: (self.first_g / dry_g - 1.0).clamp(START.0, START.1),
        }
    }
}
