//! The science of green wood on the lathe: pure functions over plain numbers.
//!
//! Lengths in mm, masses in g, times in days, temperatures in degrees C; moisture and shrinkage as fractions of the
//! oven-dry mass and of the green size. No files, no clock, no piece records. Every public function is total: it gives a
//! value or an error that says what was found, what is allowed and what to do. Each formula names its published source
//! or says that it is common practice.

pub mod axis;
pub mod bar;
pub mod closed_ring;
pub mod drill_depth;
pub mod drying;
pub mod evenness;
pub mod exponential;
pub mod fitted;
pub mod forecast;
pub mod forecast_score;
pub mod half_section;
pub mod humidity;
pub mod invented_weights;
pub mod kept;
pub mod moisture;
pub mod outline;
pub mod outside;
pub mod own_shrinkage;
pub mod pchip;
pub mod profile;
pub mod quadrature;
pub mod quantile;
pub mod range;
pub mod room_air;
pub mod rough_wall;
pub mod scale_step;
pub mod section;
pub mod shrinkage;
pub mod side_grain;
pub mod speed;
pub mod spigot;
pub mod stations;
pub mod staying;
pub mod steady;
pub mod survival;
pub mod trend;
pub mod trueing;
pub mod uneven;
pub mod wall;
pub mod weighing_days;
pub mod weight;
pub mod woods;
pub mod woods_search;
pub mod woods_table;

mod complex;
mod weighings;

#[cfg(test)]
mod fixture_tests;
#[cfg(test)]
mod lathe_tests;
#[cfg(test)]
mod profile_tests;
#[cfg(test)]
mod section_tests;
#[cfg(test)]
mod statistics_fixture_tests;
#[cfg(test)]
mod staying_tests;
#[cfg(test)]
mod trueing_tests;
