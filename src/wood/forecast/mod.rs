//! Forecast from weighings: the drying model fitted to a handful of weights, and what may be said of it.
//!
//! - [`Record`]: the [`Weighing`]s (net, days on the count of the case's phases), resets of mass, step of the scale.
//! - [`Priors`]: what is believed before; `Priors::of(&case)` when the geometry gives the oven-dry mass.
//! - [`outlook()`]: everything in one call: the [`Fit`], moisture [`Now`] with its deviation, the [`Road`] to settled where it
//!   stands ("into the house") and to settled in the house after that ("to finish-turn"), each as a [`ReadyRange`] of four in
//!   five in days from the first weighing, by the mean and by the slowest wall; the reasons why it is [`TooEarly`]; the
//!   [`BagLine`] while the bag's straight part lasts. The room is held as it is.
//! - [`band()`]: the curve with its band, for a chart. [`as_it_is`] gives the case whose rooms stay as they are.
//! - [`next_weighing`]: when the next weighing would tell most.
//! - [`unweighed_road`]: the whole road of a piece never weighed, for relative words and weeks, never for a date.
//! - [`plain_fit`]: two unknowns by plain least squares, for checks.
//!
//! ```
//! use evenwall_wood::drying::{Case, Climate, Phase, Wall, Way, Wood};
//! use evenwall_wood::forecast::{Priors, Record, Weighing, outlook};
//! let case = Case {
//!     wood: Wood::of_density(550.0),
//!     walls: vec![Wall::plain(10.0, 545.0)],
//!     phases: vec![Phase { from_day: 0.0, way: Way::Open, climate: Climate::steady(18.0, 0.60)? }],
//! };
//! let weights = [435.0, 350.2, 339.8, 336.1, 334.5, 333.8];
//! let record = Record {
//!     weighings: weights.iter().enumerate().map(|(i, m)| Weighing { day: 2.0 * i as f64, mass_g: *m }).collect(),
//!     resets: vec![],
//!     step_g: 0.1,
//! };
//! let said = outlook(&case, &record, Priors::of(&case), 10.0, Some(&Climate::steady(20.0, 0.45)?))?;
//! assert!(said.too_early.is_empty());
//! assert!((said.now.mean - 0.113).abs() < 0.01);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! What may not be said: one date without its range, a moisture to the point before the weights have pinned the oven-dry mass,
//! the fitted diffusivity as a property of the wood.

mod band;
mod early;
mod fit;
mod next;
mod outlook;
mod prior;
mod record;
mod road;

#[cfg(test)]
mod fit_tests;
#[cfg(test)]
mod outlook_tests;
#[cfg(test)]
mod total_tests;

pub use band::{BandPoint, band};
pub use early::{BagLine, SHARE_LOST, SPREAD, STRAIGHT_ENDS, TooEarly, WEIGHINGS};
pub use fit::{Fit, fit, plain_fit};
pub use next::{Telling, next_weighing};
pub use outlook::{Now, Outlook, as_it_is, outlook};
pub use prior::{Loose, Priors};
pub use record::{ForecastError, Record, STEP, Weighing};
pub use road::{FOUR_IN_FIVE, HORIZON, ReadyRange, Road, unweighed_road};
