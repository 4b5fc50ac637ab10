//! A bag as one number: leakage and turning together, and what it loses in a day.
//!
//! The film itself lets a third of a gram a day through; turning and opening do the drying. The number is a habit of the
//! turner and no property of the wood: weighings find it, nothing foretells it.

use super::case::{AREA, BAG, EXCHANGE};
use super::climate::PLACE_TEMPERATURE;
use super::drier::DAY;
use crate::humidity::saturation_density_kg_m3;
use crate::moisture::HUMIDITY;
use crate::range::{Range, RangeError};

/// What a bag with wet wood in it loses, g a day.
pub const LOSS: Range = Range::new("loss of the bag", "g/day", 1.0e-3, 1.0e5);
/// Humidity of a room that takes water from a bag at all: not saturated.
const DRIER: Range = Range::new("relative humidity", "", HUMIDITY.min, 0.999);

/// Water, kg/s, that one m3/s takes out of a saturated bag into a room at `temp_c` degrees C and `rh` (fraction).
fn taken(temp_c: f64, rh: f64) -> Result<f64, RangeError> {
    let vapour = saturation_density_kg_m3(PLACE_TEMPERATURE.check(temp_c)?)?;
    Ok(vapour * (1.0 - DRIER.check(rh)?))
}

/// Conductance, m3/s, of a bag whose air is saturated and that loses `loss_g_day` into a room at `temp_c` degrees C and `rh`
/// (fraction): the mass balance G rho_v (1 - RH). 8 g a day at 18 C and 60 % is [`super::case::USUAL_BAG`].
///
/// # Errors
/// [`RangeError`] when a figure, or the conductance that follows, is out of range.
pub fn conductance(loss_g_day: f64, temp_c: f64, rh: f64) -> Result<f64, RangeError> {
    BAG.check(1e-3 * LOSS.check(loss_g_day)? / DAY / taken(temp_c, rh)?)
}

/// The way back: what a bag of `conductance` m3/s loses while its air is saturated, g a day.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn loss_g_day(conductance: f64, temp_c: f64, rh: f64) -> Result<f64, RangeError> {
    Ok(1e3 * DAY * BAG.check(conductance)? * taken(temp_c, rh)?)
}

/// What share of the free air's exchange a bag of `conductance` m3/s leaves a single wall with two faces of `area_cm2` each and
/// the exchange `exchange` m/s: G / (G + 2 A h), two resistances in series.
///
/// # Errors
/// [`RangeError`] when a figure is out of range.
pub fn share_for_one_wall(
    conductance: f64,
    area_cm2: f64,
    exchange: f64,
) -> Result<f64, RangeError> {
    let bag = BAG.check(conductance)?;
    let faces = 2.0 * 1e-4 * AREA.check(area_cm2)? * EXCHANGE.check(exchange)?;
    Ok(bag / (bag + faces))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::case::{OPEN_AIR, USUAL_BAG};
    use super::*;

    #[test]
    fn eight_grams_a_day_is_the_usual_bag_and_leads_back() {
        let g = conductance(8.0, 18.0, 0.60).unwrap();
        assert!((g / USUAL_BAG - 1.0).abs() < 1e-6, "{g:e}");
        assert!((loss_g_day(g, 18.0, 0.60).unwrap() - 8.0).abs() < 1e-12);
        // Half the deficit, half the loss.
        assert!((loss_g_day(g, 18.0, 0.80).unwrap() - 4.0).abs() < 1e-12);
        assert!(conductance(8.0, 18.0, 1.0).is_err());
        assert!(conductance(8.0, 18.0, 60.0).is_err());
    }

    #[test]
    fn a_bag_leaves_a_wall_some_hundredths_of_the_exchange() {
        // 2 A h = 2 * 0.055 m2 * 2.5e-3 m/s = 2.75e-4 m3/s.
        let share = share_for_one_wall(USUAL_BAG, 550.0, OPEN_AIR).unwrap();
        assert!(
            (share - 1.510_502e-5 / 2.901_050_2e-4).abs() < 1e-6,
            "{share}"
        );
        assert!(share_for_one_wall(USUAL_BAG, 550.0, 1e3).is_err());
    }
}
