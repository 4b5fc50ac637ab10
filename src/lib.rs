//! Evenwall: the glue between the app and its screens. See `ui` for the way round.

pub mod desktop;
pub mod ui;
