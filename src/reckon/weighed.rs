//! Weighings as they are asked for: a list of masses with their days, or one object each with tare and resets.

use evenwall_wood::forecast::{Record, STEP, Weighing};
use evenwall_wood::profile::MASS;

use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must, usually};
use crate::place::DAY;
use crate::refused::Refused;

/// Most weighings of a piece.
pub const MOST: Count = Count::new(1, 400);
/// A weight.
pub const MASS_G: Limits = Limits::of(MASS);
/// Days between weighings.
pub const EVERY: Limits = Limits::new("days", 0.01, 365.0);

const ONE: &[Key] = &[
    must("day", Kind::Number(DAY), "when"),
    must("mass_g", Kind::Number(MASS_G), "what the scale said"),
    usually(
        "tare_g",
        Limits::new("g", 0.0, MASS.max),
        0.0,
        "what was weighed along, taken off",
    ),
    may(
        "reset",
        Kind::Flag,
        "true when its mass was changed before this weighing (sealer, bark, turned again, another scale): what is judged begins with \
         the last such one",
    ),
];

/// The weighings of a piece.
pub const WEIGHINGS: &[Key] = &[
    may(
        "masses_g",
        Kind::Numbers(MASS_G, MOST),
        "net weights; with `days` or `every_days`",
    ),
    may(
        "days",
        Kind::Numbers(DAY, MOST),
        "with `masses_g`: the day of each",
    ),
    may(
        "every_days",
        Kind::Number(EVERY),
        "with `masses_g`, instead of `days`: one so often, the first on day 0",
    ),
    may(
        "weighings",
        Kind::Objects(ONE, MOST),
        "instead of `masses_g`: weighings with tare and changes of mass",
    ),
    may(
        "reset_days",
        Kind::Numbers(DAY, Count::new(1, 100)),
        "days on which its mass was changed: what is judged begins with the first weighing at or after the last",
    ),
    usually("step_g", Limits::of(STEP), 1.0, "step of the scale"),
];

/// Pairs of day and mass from three keys: masses, their days, or a rhythm.
///
/// # Errors
/// [`Refused`] when the days are missing, given twice, or not as many.
pub fn pairs(
    asked: &Asked<'_>,
    masses: &str,
    days: &str,
    every: &str,
) -> Result<Vec<(f64, f64)>, Refused> {
    let grams = asked.numbers(masses);
    let on: Vec<f64> = match (asked.has(days), asked.number(every)) {
        (true, None) => asked.numbers(days),
        (false, Some(every)) => (0..grams.len()).map(|i| every * i as f64).collect(),
        _ => {
            return Err(Refused::together(format!(
                "`{masses}` needs `{days}` or `{every}`; give one of them"
            )));
        }
    };
    if on.len() != grams.len() {
        return Err(Refused::together(format!(
            "`{masses}` has {} entries and `{days}` {}, but each weight needs its day; make them as many",
            grams.len(),
            on.len()
        )));
    }
    let mut pairs: Vec<(f64, f64)> = on.into_iter().zip(grams).collect();
    pairs.sort_by(|a, b| a.0.total_cmp(&b.0));
    Ok(pairs)
}

/// The weighings asked for, by day.
///
/// # Errors
/// [`Refused`] when neither way or both are given.
pub fn record(asked: &Asked<'_>) -> Result<Record, Refused> {
    let each = asked.objects("weighings");
    if asked.has("masses_g") != each.is_empty() {
        return Err(Refused::together(format!(
            "{} needs the weighings one way: `masses_g` with their days, or `weighings`; give one of them",
            asked.of()
        )));
    }
    let mut resets = asked.numbers("reset_days");
    let mut weighings = Vec::with_capacity(each.len());
    if each.is_empty() {
        for (day, mass_g) in pairs(asked, "masses_g", "days", "every_days")? {
            weighings.push(Weighing { day, mass_g });
        }
    } else if asked.has("days") || asked.has("every_days") {
        return Err(Refused::together(
            "`weighings` have their days; take `days` and `every_days` out",
        ));
    }
    for one in &each {
        let day = one.need("day")?;
        if one.flag("reset") {
            resets.push(day);
        }
        weighings.push(Weighing {
            day,
            mass_g: one.need("mass_g")? - one.need("tare_g")?,
        });
    }
    weighings.sort_by(|a, b| a.day.total_cmp(&b.day));
    let record = Record {
        weighings,
        resets,
        step_g: asked.need("step_g")?,
    };
    record.fitted()?;
    Ok(record)
}

/// The weighings since the last change of mass as (day, grams).
///
/// # Errors
/// As [`record`], and when there is none since then.
pub fn run(asked: &Asked<'_>) -> Result<Vec<(f64, f64)>, Refused> {
    let record = record(asked)?;
    let fitted = record.fitted()?;
    Ok(fitted.iter().map(|w| (w.day, w.mass_g)).collect())
}
