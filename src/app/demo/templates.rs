//! Templates of the demo shelf, embedded so that the demo works wherever the program is installed.

/// The workshop.
pub(super) const SHOP: &str = include_str!("../../../demo/shop.jsonl");

macro_rules! pieces {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../../../demo/pieces/", $name, ".jsonl")))),*]
    };
}

/// The pieces by the name of their file.
pub(super) const PIECES: &[(&str, &str)] = pieces![
    "f02", "f03", "f04", "f05", "f07", "f08", "f11", "f12", "f14", "f15", "f17", "f18", "j02",
    "j04", "j05", "j07", "j09", "j11", "j12", "j14", "j17", "j18", "j21", "j23", "j24", "j26",
    "j27", "j31", "j33", "j34", "j36", "j38", "j41", "k01", "k02", "k03", "k04", "k05", "k07",
    "k08", "k11", "k12", "k14", "k15", "k16", "k17", "k18",
];
