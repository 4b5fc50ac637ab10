//! The generated screens and nothing else: a crate of its own so that a change in Rust does not rebuild them.
#![allow(
    missing_docs,
    clippy::all,
    clippy::pedantic,
    clippy::unwrap_used,
    clippy::expect_used
)]
slint::include_modules!();
