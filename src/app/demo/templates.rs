//! Templates of the demo shelf, embedded so that the demo works wherever the program is installed.

/// The workshop.
pub(super) const SHOP: &str = include_str!("../../../demo/shop.jsonl");

macro_rules! pieces {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../../../demo/pieces/", $name, ".jsonl")))),*]
    };
}

/// The pieces by the name of their file.
pub(super) const PIECES: &[(&str, &str)] = pieces!["k07"];
