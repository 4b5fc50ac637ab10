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
pub mod evenness;
pub mod fitted;
pub mod half_section;
pub mod humidity;
pub mod moisture;
pub mod outline;
pub mod outside;
pub mod own_shrinkage;
pub mod pchip;
pub mod profile;
pub mod quadrature;
pub mod range;
pub mod rough_wall;
pub mod section;
pub mod shrinkage;
pub mod side_grain;
pub mod speed;
pub mod spigot;
pub mod stations;
pub mod steady;
pub mod trueing;
pub mod uneven;
pub mod wall;
pub mod weight;
pub mod woods;
pub mod woods_search;
pub mod woods_table;

mod complex;

#[cfg(test)]
mod fixture_tests;
#[cfg(test)]
mod lathe_tests;
#[cfg(test)]
mod profile_tests;
#[cfg(test)]
mod section_tests;
#[cfg(test)]
mod trueing_tests;
