//! Where on a vessel the wall is read: five, seven or nine stations from rim to corner.
//!
//! Common practice, no source: five to 120 mm high, seven to 250, nine above.

use crate::range::RangeError;

/// The name of a station from mouth to corner; its words live elsewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum StationName {
    /// Just inside the mouth.
    Rim,
    /// Under the rim of a tall vessel.
    UnderRim,
    /// The shoulder.
    Shoulder,
    /// Between shoulder and middle.
    UpperMiddle,
    /// Half way down.
    Middle,
    /// Between middle and lower wall.
    LowerMiddle,
    /// The lower wall.
    Lower,
    /// Above the corner of a tall vessel.
    AboveCorner,
    /// Where the wall turns into the floor.
    Corner,
}

use StationName::{
    AboveCorner, Corner, Lower, LowerMiddle, Middle, Rim, Shoulder, UnderRim, UpperMiddle,
};

const FIVE: [StationName; 5] = [Rim, Shoulder, Middle, Lower, Corner];
const SEVEN: [StationName; 7] = [
    Rim,
    Shoulder,
    UpperMiddle,
    Middle,
    LowerMiddle,
    Lower,
    Corner,
];
const NINE: [StationName; 9] = [
    Rim,
    UnderRim,
    Shoulder,
    UpperMiddle,
    Middle,
    LowerMiddle,
    Lower,
    AboveCorner,
    Corner,
];

impl StationName {
    /// Every name, mouth to corner.
    pub const ALL: [StationName; 9] = NINE;

    /// A short key that never changes ("upper-middle").
    pub fn key(self) -> &'static str {
        match self {
            Rim => "rim",
            UnderRim => "under-rim",
            Shoulder => "shoulder",
            UpperMiddle => "upper-middle",
            Middle => "middle",
            LowerMiddle => "lower-middle",
            Lower => "lower",
            AboveCorner => "above-corner",
            Corner => "corner",
        }
    }

    /// The name with the key `key`.
    pub fn from_key(key: &str) -> Option<StationName> {
        NINE.into_iter().find(|name| name.key() == key)
    }
}

/// A station: its name and its depth from the rim along the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlacedStation {
    /// What it is called.
    pub name: StationName,
    /// Depth from the rim, mm.
    pub depth_mm: f64,
}

/// How many stations a vessel of `height_mm` gets: 5 to 120 mm, 7 to 250, 9 above.
pub fn station_count(height_mm: f64) -> usize {
    if height_mm <= 120.0 {
        5
    } else if height_mm <= 250.0 {
        7
    } else {
        9
    }
}

/// The stations of a vessel `height_mm` from rim to foot line with `floor_mm` of wood left under the hollow, rim to corner.
///
/// The first lies a twentieth of the height down (3 to 10 mm), the last a little above the floor; the rest are spread
/// evenly. Depths are whole millimetres on vessels of 60 mm and more. A floor thicker than half of the height is taken as
/// half.
///
/// # Errors
/// [`RangeError`] when the height is outside [`crate::profile::HEIGHT`].
pub fn place_stations(height_mm: f64, floor_mm: f64) -> Result<Vec<PlacedStation>, RangeError> {
    let height = crate::profile::HEIGHT.check(height_mm)?;
    let floor = if floor_mm.is_finite() {
        floor_mm.clamp(0.0, 0.5 * height)
    } else {
        0.0
    };
    let names: &[StationName] = match station_count(height) {
        5 => &FIVE,
        7 => &SEVEN,
        _ => &NINE,
    };
    let first = (0.05 * height).clamp(3.0_f64.min(0.1 * height), 10.0);
    let last = height - floor - (0.05 * height).min(10.0);
    let step = (last - first) / (names.len() - 1) as f64;
    let tidy = |depth: f64| if height >= 60.0 { depth.round() } else { depth };
    Ok(names
        .iter()
        .enumerate()
        .map(|(i, &name)| PlacedStation {
            name,
            depth_mm: tidy(first + step * i as f64),
        })
        .collect())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn five_seven_or_nine_by_height() {
        for (height, n) in [
            (80.0, 5),
            (120.0, 5),
            (121.0, 7),
            (250.0, 7),
            (251.0, 9),
            (600.0, 9),
        ] {
            assert_eq!(place_stations(height, 12.0).unwrap().len(), n);
        }
        assert!(place_stations(-1.0, 12.0).is_err());
    }

    #[test]
    fn every_key_leads_back_to_its_name() {
        for name in StationName::ALL {
            assert_eq!(StationName::from_key(name.key()), Some(name));
        }
        assert_eq!(StationName::from_key("belly"), None);
    }

    proptest! {
        #[test]
        fn stations_go_down_from_the_rim_and_end_above_the_floor(height in 5.0..2000.0_f64, floor in -5.0..80.0_f64) {
            let placed = place_stations(height, floor).unwrap();
            prop_assert!(placed[0].depth_mm > 0.0);
            for pair in placed.windows(2) {
                prop_assert!(pair[1].depth_mm > pair[0].depth_mm);
                prop_assert!(pair[1].name > pair[0].name);
            }
            let deepest = placed[placed.len() - 1].depth_mm;
            prop_assert!(deepest <= height - floor.clamp(0.0, 0.5 * height) + 0.5);
        }
    }
}
