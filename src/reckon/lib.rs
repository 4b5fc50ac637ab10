//! Reckon: the sums of the science layer as JSON questions and answers, for scripts and for checking.
//!
//! [`run`](run::run) reads questions and writes one list of answers. What can be asked stands in [`registry`], each question
//! with its keys, units and ranges; `QUESTIONS.md` is printed from it by [`page`]. Every sum is a public function of
//! `evenwall-wood`, the same that the screens use: this crate reads, checks, converts per cent and degrees, and names what it
//! gives back. One file a group of questions. No files, no clock, no screens.

pub mod answer;
pub mod asked;
pub mod key;
pub mod page;
pub mod question;
pub mod refused;
pub mod registry;
pub mod run;

mod air;
mod bar;
mod case;
mod closed_ring;
mod diffusion;
mod drying;
mod evenness;
mod forecast;
mod forecast_words;
mod kept;
mod measured;
mod outlines;
mod own_shrinkage;
mod pith;
mod place;
mod profile;
mod rough_wall;
mod scale;
mod section;
mod shrinkage;
mod side_grain;
mod slabs;
mod speed;
mod spigot;
mod staying;
mod strains;
mod trueing;
mod weighed;
mod weights;
mod woods;
