//! Evenwall.
fn main() {}
