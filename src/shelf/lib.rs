//! The data folder of Evenwall: journals that lose nothing.

pub mod append;
pub mod device;
pub mod disk;
pub mod error;
pub mod faulty;
pub mod folder;
pub mod format;
pub mod journal;
pub mod line;
mod loading;
mod lock;
pub mod notice;
pub mod opening;
mod refresh;
pub mod shelf;
