//! Questions about air and the moisture wood settles at in it.

use evenwall_wood::humidity::{
    AIR_TEMPERATURE, PRESSURE, PSYCHROMETER, SEA_LEVEL_HPA, VENTILATED, WET_BULB,
    humidity_from_bulbs, saturation_density_kg_m3, saturation_pressure_pa,
};
use evenwall_wood::moisture::{HUMIDITY, TEMPERATURE, activity, settling_moisture, settling_slope};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, must, usually};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::MOISTURE_PCT;

const TEMP: Key = must(
    "temp_c",
    Kind::Number(Limits::of(TEMPERATURE)),
    "temperature of the air",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "settling_moisture",
        answers: "The moisture at which wood comes to rest in air. Hailwood-Horrobin, Wood Handbook FPL-GTR-190 equation 4-5.",
        inputs: &[&[
            TEMP,
            must(
                "rh_pct",
                Kind::Number(Limits::pct(HUMIDITY)),
                "relative humidity",
            ),
        ]],
        outputs: &[&[
            gives("moisture_pct", "settling moisture, of the oven-dry mass"),
            gives(
                "slope_pct_per_rh_pct",
                "points of moisture for each point of humidity",
            ),
        ]],
        examples: &[r#"{"ask": "settling_moisture", "temp_c": 21.1, "rh_pct": 65}"#],
        sum: settling,
    },
    Question {
        name: "humidity_for_moisture",
        answers: "The way back: the humidity of the air in which wood of a given moisture neither dries nor takes up water. \
                  Wood wetter than saturated air can hold it gives 100 %.",
        inputs: &[&[
            must(
                "moisture_pct",
                Kind::Number(MOISTURE_PCT),
                "moisture of the wood",
            ),
            TEMP,
        ]],
        outputs: &[&[gives("rh_pct", "relative humidity")]],
        examples: &[r#"{"ask": "humidity_for_moisture", "moisture_pct": 12, "temp_c": 20}"#],
        sum: back,
    },
    Question {
        name: "humidity_from_bulbs",
        answers: "Relative humidity from a dry and a wet bulb, WMO No. 8: e = es(Tw) - A p (T - Tw).",
        inputs: &[&[
            must(
                "dry_bulb_c",
                Kind::Number(Limits::of(AIR_TEMPERATURE)),
                "dry bulb",
            ),
            must("wet_bulb_c", Kind::Number(Limits::of(WET_BULB)), "wet bulb"),
            usually(
                "pressure_hpa",
                Limits::of(PRESSURE),
                SEA_LEVEL_HPA,
                "air pressure",
            ),
            usually(
                "psychrometer_per_k",
                Limits::of(PSYCHROMETER),
                VENTILATED,
                "the instrument's constant; as given for a ventilated one",
            ),
        ]],
        outputs: &[&[
            gives("rh_pct", "relative humidity"),
            gives(
                "vapour_pressure_pa",
                "pressure of the water vapour in the air",
            ),
        ]],
        examples: &[
            r#"{"ask": "humidity_from_bulbs", "dry_bulb_c": 25, "wet_bulb_c": 12, "pressure_hpa": 958, "psychrometer_per_k": 0.000621}"#,
        ],
        sum: bulbs,
    },
    Question {
        name: "vapour",
        answers: "Saturated water vapour over water, Sonntag (1990), recommended by WMO (2008).",
        inputs: &[&[must(
            "temp_c",
            Kind::Number(Limits::of(AIR_TEMPERATURE)),
            "temperature of the air",
        )]],
        outputs: &[&[
            gives("saturation_pressure_pa", "saturation pressure"),
            gives("saturation_density_kg_m3", "density of saturated vapour"),
        ]],
        examples: &[r#"{"ask": "vapour", "temp_c": 20}"#],
        sum: vapour,
    },
];

fn settling(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (t, h) = (asked.need("temp_c")?, asked.need_fraction("rh_pct")?);
    Ok(Answer::new()
        .pct("moisture_pct", settling_moisture(t, h)?)
        .with("slope_pct_per_rh_pct", settling_slope(t, h)?))
}

fn back(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let a = activity(asked.need_fraction("moisture_pct")?, asked.need("temp_c")?)?;
    Ok(Answer::new().pct("rh_pct", a))
}

fn bulbs(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let dry = asked.need("dry_bulb_c")?;
    let h = humidity_from_bulbs(
        dry,
        asked.need("wet_bulb_c")?,
        asked.need("pressure_hpa")?,
        asked.need("psychrometer_per_k")?,
    )?;
    Ok(Answer::new()
        .pct("rh_pct", h)
        .with("vapour_pressure_pa", h * saturation_pressure_pa(dry)?))
}

fn vapour(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let t = asked.need("temp_c")?;
    Ok(Answer::new()
        .with("saturation_pressure_pa", saturation_pressure_pa(t)?)
        .with("saturation_density_kg_m3", saturation_density_kg_m3(t)?))
}
