//! What an uneven wall means while it dries: how far apart the moisture of its thick and thin places comes, and how that
//! compares with what wood stretches across the grain before it gives.
//!
//! A table worked out with a drying model of coupled slabs (ends of ash round a mean of 10 mm, from 45 % at 18 °C and 60 %
//! humidity, usual diffusion figures) and checked by a second implementation. The figures are upper bounds under full restraint:
//! they compare a bag with a shelf and thick with thin. They are no chance of cracking and no promise.

use crate::range::RangeError;
use crate::wall::WALL;

/// How a vessel dries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Dries {
    /// On an open shelf.
    Shelf,
    /// In a closed bag that is turned and loses about 8 g a day.
    Bag,
}

/// How uneven walls dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Apart {
    /// The most that the mean moistures of the thickest and the thinnest place come apart, points of moisture.
    pub moisture_points: f64,
    /// The difference in shrinkage that makes, fraction of the size across the grain.
    pub strain: f64,
    /// The most by which the face of a wall shrinks ahead of its middle, fraction.
    pub face_strain: f64,
}

/// What wood across the grain stretches before it gives, fraction: 6.5 MPa over 0.96 GPa for ash. From memory; wet wood that has
/// time stretches more.
pub const GIVES_AT: f64 = 0.007;

/// Mean wall of the table, mm.
const MEAN_MM: f64 = 10.0;

/// Thickest less thinnest (mm), points of moisture, strain and face strain in per cent.
type Row = [f64; 4];

const SHELF: [Row; 4] = [
    [0.0, 0.0, 0.0, 2.4],
    [2.0, 2.8, 0.72, 2.4],
    [4.0, 5.6, 1.45, 2.5],
    [8.0, 11.2, 2.9, 2.5],
];
const BAG: [Row; 3] = [
    [0.0, 0.0, 0.0, 0.43],
    [4.0, 3.0, 0.78, 0.58],
    [8.0, 4.7, 1.2, 0.74],
];

/// Thickest less thinnest wall as it would be round a mean of 10 mm, the walls being `thickest_mm` and `thinnest_mm`: what counts
/// is how much thicker, not by how much. Exact where only the wall holds the water back (a shelf), rough in a bag.
///
/// # Errors
/// [`RangeError`] outside [`WALL`].
pub fn spread_of_ten_mm(thickest_mm: f64, thinnest_mm: f64) -> Result<f64, RangeError> {
    let (thick, thin) = (WALL.check(thickest_mm)?, WALL.check(thinnest_mm)?);
    Ok((thick - thin).abs() * MEAN_MM / (0.5 * (thick + thin)))
}

/// How far apart walls come that differ by `spread_mm` round a mean of 10 mm, straight between the rows of the table. `None`
/// beyond it (above 8 mm) and for what is no number.
pub fn apart(dries: Dries, spread_mm: f64) -> Option<Apart> {
    let table: &[Row] = match dries {
        Dries::Shelf => &SHELF,
        Dries::Bag => &BAG,
    };
    let pair = table
        .windows(2)
        .find(|pair| (pair[0][0]..=pair[1][0]).contains(&spread_mm))?;
    let t = (spread_mm - pair[0][0]) / (pair[1][0] - pair[0][0]);
    let at = |column: usize| pair[0][column] + t * (pair[1][column] - pair[0][column]);
    Some(Apart {
        moisture_points: at(1),
        strain: at(2) / 100.0,
        face_strain: at(3) / 100.0,
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The rows themselves: 8 and 12 mm on a shelf and in a bag of 8 g a day.
    #[test]
    fn eight_and_twelve_is_twice_the_limit_on_a_shelf_and_at_it_in_a_bag() {
        let spread = spread_of_ten_mm(12.0, 8.0).unwrap();
        assert_eq!(spread, 4.0);
        let shelf = apart(Dries::Shelf, spread).unwrap();
        let bag = apart(Dries::Bag, spread).unwrap();
        assert!(
            (shelf.moisture_points - 5.6).abs() < 1e-12 && (shelf.strain - 0.0145).abs() < 1e-12
        );
        assert!((bag.moisture_points - 3.0).abs() < 1e-12 && (bag.strain - 0.0078).abs() < 1e-12);
        assert!(shelf.strain > 2.0 * GIVES_AT && bag.strain < 1.2 * GIVES_AT);
        assert!(shelf.face_strain > 4.0 * bag.face_strain);
    }

    #[test]
    fn a_thick_wall_bears_more_millimetres_and_beyond_the_table_nothing_is_said() {
        assert_eq!(spread_of_ten_mm(24.0, 16.0).unwrap(), 4.0);
        assert_eq!(apart(Dries::Bag, 8.5), None);
        assert_eq!(apart(Dries::Shelf, f64::NAN), None);
        assert_eq!(apart(Dries::Shelf, -1.0), None);
        assert!(spread_of_ten_mm(-3.0, 8.0).is_err());
    }

    proptest! {
        #[test]
        fn a_shelf_is_never_gentler_than_a_bag_and_more_spread_never_gentler_than_less(
            spread in 0.0..8.0_f64, more in 0.0..1.0_f64
        ) {
            let more = spread + more * (8.0 - spread);
            for dries in [Dries::Shelf, Dries::Bag] {
                prop_assert!(apart(dries, more).unwrap().strain >= apart(dries, spread).unwrap().strain - 1e-12);
            }
            prop_assert!(apart(Dries::Shelf, spread).unwrap().strain >= apart(Dries::Bag, spread).unwrap().strain - 1e-12);
        }
    }
}
