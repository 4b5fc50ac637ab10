//! The UI tests: one binary, because each is hundreds of megabytes. They touch by accessible label, as a turner or a
//! screen reader would, and draw the pictures with the renderer of the app.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)]

mod bench;
mod diary;
mod dried_well;
mod drying;
mod flaws;
mod forecast;
mod frame;
mod photos;
mod photos_desk;
mod photos_looks;
mod piece;
mod pieces;
mod plan;
mod records;
mod shop;
mod targets;
mod today;
mod truing;
mod walk;
mod wall;
mod wall_summary;
