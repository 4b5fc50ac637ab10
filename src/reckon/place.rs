//! The air of a place as it is asked for: one reading for good, or several over time.

use evenwall_wood::drying::climate::PLACE_TEMPERATURE;
use evenwall_wood::drying::{Climate, Reading};
use evenwall_wood::moisture::HUMIDITY;

use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must};
use crate::refused::Refused;

/// A day on the piece's own count; days before its start are below 0.
pub const DAY: Limits = Limits::new("days", -3650.0, 3650.0);
/// Temperature of a place.
pub const TEMP_C: Limits = Limits::of(PLACE_TEMPERATURE);
/// Relative humidity.
pub const RH_PCT: Limits = Limits::pct(HUMIDITY);

const READING: &[Key] = &[
    must("day", Kind::Number(DAY), "when"),
    must("temp_c", Kind::Number(TEMP_C), "temperature then"),
    must("rh_pct", Kind::Number(RH_PCT), "relative humidity then"),
];

/// The air: for good, or over time.
pub const AIR: &[Key] = &[
    may(
        "temp_c",
        Kind::Number(TEMP_C),
        "temperature of the place, the same for good; with `rh_pct`",
    ),
    may(
        "rh_pct",
        Kind::Number(RH_PCT),
        "relative humidity of the place, the same for good",
    ),
    may(
        "readings",
        Kind::Objects(READING, Count::new(1, 2000)),
        "instead of these: the place over time, in order; straight lines between, as read before the first and after the last; two \
         of one day make a jump",
    ),
];

/// True when `asked` says anything of the air.
pub fn given(asked: &Asked<'_>) -> bool {
    AIR.iter().any(|k| asked.has(k.name))
}

/// The climate asked for.
///
/// # Errors
/// [`Refused`] when neither way or both are given, or the readings are out of order.
pub fn climate(asked: &Asked<'_>) -> Result<Climate, Refused> {
    let readings = asked.objects("readings");
    let steady = asked.has("temp_c") || asked.has("rh_pct");
    if steady != readings.is_empty() {
        return Err(Refused::together(format!(
            "{} needs the air one way: `temp_c` and `rh_pct`, or `readings`; give one of them",
            asked.of()
        )));
    }
    if steady {
        return Ok(Climate::steady(
            asked.need("temp_c")?,
            asked.need_fraction("rh_pct")?,
        )?);
    }
    let each = readings.iter().map(|r| {
        Ok(Reading {
            day: r.need("day")?,
            temp_c: r.need("temp_c")?,
            rh: r.need_fraction("rh_pct")?,
        })
    });
    Ok(Climate::through(each.collect::<Result<_, Refused>>()?)?)
}
