//! Evenwall: glue between the app and its screens.
