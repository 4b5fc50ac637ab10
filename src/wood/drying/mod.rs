//! Drying of a piece: its walls as slabs that give water to the air they share, through its phases in bag, room and house.
//!
//! - [`Case`]: the [`Wood`], the [`Wall`]s (stations, floor and spigot) and the [`Phase`]s, each a [`Way`] (open, in a bag,
//!   under a cover) in a [`Climate`]. Days are counted by the caller, from whatever he likes.
//! - [`Tuning`]: what a fit of weighings has found; the default knows nothing.
//! - [`course()`]: [`Moment`]s on the days asked for: mean moisture of the piece and of each wall, the outer cells, the settling
//!   moisture, the humidity in the bag, spread and gradient. [`means()`] gives the mean alone, faster.
//! - [`Drier`]: the solver itself, a step at a time, can be cloned to try a future; [`ready()`] runs it until the piece is
//!   within a point of its settling moisture, by its mean and by its slowest wall.
//!
//! ```
//! use evenwall_wood::drying::{Case, Climate, Phase, Tuning, Wall, Way, Wood, course};
//! let room = Climate::steady(18.0, 0.60)?;
//! let case = Case {
//!     wood: Wood::of_density(550.0),
//!     walls: vec![Wall::plain(10.0, 275.0)],
//!     phases: vec![Phase { from_day: 0.0, way: Way::Open, climate: room }],
//! };
//! let moments = course(&case, Tuning::default(), 0.0, 0.45, &[7.0, 28.0])?;
//! assert!((moments[1].mean - 0.111).abs() < 0.002);
//! # Ok::<(), evenwall_wood::drying::DryingError>(())
//! ```
//!
//! [`bag`] turns grams a day into a conductance; [`series`] holds the solver's slab against Crank's series.
//!
//! [`uneven()`] gives the worst difference of thin and thick walls and of face and middle over a course, and the strain of it.
//!
//! The equations: diffusion through the wall with a diffusivity that rises with moisture ([`mod@wood`]), vapour from the face
//! to the air in proportion to the difference of its humidity from the air's, the isotherm of [`crate::moisture`].
//!
//! What may be said with it: thick against thin, bag against shelf, the shape of the curve, and dates once weighings have
//! calibrated it (see [`crate::forecast`]). What may not: a date without weighings, whether it will crack, knots, heart
//! against sap, mould.

pub mod bag;
pub mod case;
pub mod climate;
pub mod course;
pub mod drier;
pub mod series;
pub mod uneven;
pub mod wood;

mod isotherm;
mod slab;

#[cfg(test)]
mod oracle_tests;
#[cfg(test)]
mod practice_tests;
#[cfg(test)]
mod property_tests;
#[cfg(test)]
mod slab_tests;

pub use case::{Case, DryingError, Phase, Tuning, Wall, Way};
pub use climate::{Climate, ClimateError, Reading};
pub use course::{Moment, READY_WITHIN, Ready, course, means, ready};
pub use drier::Drier;
pub use uneven::{ELASTIC_LIMIT, Uneven, uneven};
pub use wood::Wood;
