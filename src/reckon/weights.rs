//! Questions about weights and moisture.

use evenwall_wood::profile::{DENSITY, MASS};
use evenwall_wood::weight::{
    dry_mass_g, moisture_before, moisture_from_masses, most_moisture, share_lost,
};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::MOISTURE_PCT;

const WEIGHT: Key = must("mass_g", Kind::Number(Limits::of(MASS)), "weight now");
const TO: Key = must(
    "to_moisture_pct",
    Kind::Number(MOISTURE_PCT),
    "moisture it dries to",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "moisture_from_weights",
        answers: "Moisture from a weight and the oven-dry weight, m / m_dry - 1 (Siau 1984 equation 1.1).",
        inputs: &[&[
            WEIGHT,
            must(
                "dry_mass_g",
                Kind::Number(Limits::of(MASS)),
                "oven-dry weight",
            ),
        ]],
        outputs: &[&[gives("moisture_pct", "of the oven-dry mass")]],
        examples: &[r#"{"ask": "moisture_from_weights", "mass_g": 435, "dry_mass_g": 300}"#],
        sum: from_weights,
    },
    Question {
        name: "dry_mass",
        answers: "Oven-dry weight from a weight and its moisture, m / (1 + M).",
        inputs: &[&[
            WEIGHT,
            must("moisture_pct", Kind::Number(MOISTURE_PCT), "moisture now"),
        ]],
        outputs: &[&[gives("dry_mass_g", "oven-dry weight")]],
        examples: &[r#"{"ask": "dry_mass", "mass_g": 435, "moisture_pct": 45}"#],
        sum: dry,
    },
    Question {
        name: "weight_loss",
        answers: "What share of its weight wood loses from one moisture to another, (from - to) / (1 + from); negative when it \
                  takes water up.",
        inputs: &[&[
            must(
                "from_moisture_pct",
                Kind::Number(MOISTURE_PCT),
                "moisture it begins at",
            ),
            TO,
            may(
                "mass_g",
                Kind::Number(Limits::of(MASS)),
                "weight at the beginning",
            ),
        ]],
        outputs: &[&[
            gives("lost_pct", "share lost, of the weight at the beginning"),
            gives("mass_after_g", "with `mass_g`: weight at the end"),
        ]],
        examples: &[
            r#"{"ask": "weight_loss", "from_moisture_pct": 58, "to_moisture_pct": 20, "mass_g": 1000}"#,
        ],
        sum: loss,
    },
    Question {
        name: "moisture_before",
        answers: "The moisture at which wood began that has lost a share of its weight on its way to a known moisture.",
        inputs: &[&[
            must(
                "lost_pct",
                Kind::Number(Limits::new("%", 0.0, 99.0)),
                "share lost, of the weight at the beginning",
            ),
            TO,
        ]],
        outputs: &[&[gives("moisture_pct", "moisture at the beginning")]],
        examples: &[r#"{"ask": "moisture_before", "lost_pct": 24, "to_moisture_pct": 20}"#],
        sum: before,
    },
    Question {
        name: "most_moisture",
        answers: "The most water a wood can hold, (1.54 - G) / (1.54 G), Wood Handbook FPL-GTR-282 equation 4-3.",
        inputs: &[&[must(
            "basic_density_kg_m3",
            Kind::Number(Limits::of(DENSITY)),
            "oven-dry mass over green volume",
        )]],
        outputs: &[&[gives("moisture_pct", "of the oven-dry mass")]],
        examples: &[r#"{"ask": "most_moisture", "basic_density_kg_m3": 300}"#],
        sum: most,
    },
];

fn from_weights(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let m = moisture_from_masses(asked.need("mass_g")?, asked.need("dry_mass_g")?)?;
    Ok(Answer::new().pct("moisture_pct", m))
}

fn dry(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let dry = dry_mass_g(asked.need("mass_g")?, asked.need_fraction("moisture_pct")?)?;
    Ok(Answer::new().with("dry_mass_g", dry))
}

fn loss(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let lost = share_lost(
        asked.need_fraction("from_moisture_pct")?,
        asked.need_fraction("to_moisture_pct")?,
    )?;
    let after = asked.number("mass_g").map(|m| m * (1.0 - lost));
    Ok(Answer::new()
        .pct("lost_pct", lost)
        .with_some("mass_after_g", after))
}

fn before(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let lost = asked.need_fraction("lost_pct")?;
    let began = moisture_before(lost, asked.need_fraction("to_moisture_pct")?).ok_or_else(|| {
        Refused::together(
            "`lost_pct` and `to_moisture_pct` together mean more than 400 % at the beginning; check both",
        )
    })?;
    Ok(Answer::new().pct("moisture_pct", began))
}

fn most(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let most = most_moisture(asked.need("basic_density_kg_m3")?)?;
    Ok(Answer::new().pct("moisture_pct", most))
}
