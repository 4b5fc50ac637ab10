//! Questions about shrinkage along one direction.

use evenwall_wood::range::Range;
use evenwall_wood::shrinkage::{change_coefficient, shrinkage, total_from_partial};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::{MOISTURE_PCT, TOTAL_PCT, USED, USUAL, WOOD, strains};

/// A size of wood, mm.
const SIZE: Range = Range::new("size", "mm", 0.01, 20_000.0);
/// Moistures for which the Handbook's coefficients are meant, fractions. Wood Handbook FPL-GTR-190 equation 13-2.
const COEFFICIENT_HOLDS: Range = Range::new("moisture", "", 0.06, 0.14);

const TOTAL: Key = must(
    "total_pct",
    Kind::Number(TOTAL_PCT),
    "shrinkage from green to oven-dry in the direction asked about",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "shrinkage",
        answers: "Radial and tangential shrinkage from green to a moisture, linear below 30 %: S (30 - M) / 30. Wood Handbook \
                  FPL-GTR-190 equation 4-7.",
        inputs: &[
            WOOD,
            USUAL,
            &[
                may(
                    "total_pct",
                    Kind::Number(TOTAL_PCT),
                    "one direction only: its shrinkage from green to oven-dry, instead of the wood",
                ),
                may(
                    "size_mm",
                    Kind::Number(Limits::of(SIZE)),
                    "a green size, to have it after drying",
                ),
            ],
        ],
        outputs: &[
            &[
                gives("shrinkage_pct", "with `total_pct`: of the green size"),
                gives("size_after_mm", "with `total_pct` and `size_mm`"),
                gives("radial_size_after_mm", "with a wood and `size_mm`"),
                gives("tangential_size_after_mm", "with a wood and `size_mm`"),
            ],
            USED,
        ],
        examples: &[
            r#"{"ask": "shrinkage", "total_pct": 7.8, "moisture_pct": 8, "size_mm": 140}"#,
            r#"{"ask": "shrinkage", "wood": "white-ash", "moisture_pct": 8, "size_mm": 140}"#,
        ],
        sum: to_moisture,
    },
    Question {
        name: "total_shrinkage",
        answers: "The way back: shrinkage from green to oven-dry of wood that has shrunk so far on its way to a moisture below 30 %.",
        inputs: &[&[
            must(
                "shrunk_pct",
                Kind::Number(TOTAL_PCT),
                "shrinkage done, of the green size",
            ),
            must("moisture_pct", Kind::Number(MOISTURE_PCT), "moisture now"),
        ]],
        outputs: &[&[gives("total_pct", "green to oven-dry, of the green size")]],
        examples: &[r#"{"ask": "total_shrinkage", "shrunk_pct": 5.72, "moisture_pct": 8}"#],
        sum: whole,
    },
    Question {
        name: "change_coefficient",
        answers: "The Handbook's dimensional change coefficient for a shrinkage, C = S / (3000 - 20 S), which reproduces its table \
                  13-5; meant for 6 to 14 % of moisture.",
        inputs: &[&[TOTAL]],
        outputs: &[&[gives(
            "coefficient_per_pct",
            "change for each point of moisture, as a share of the size at 10 %",
        )]],
        examples: &[r#"{"ask": "change_coefficient", "total_pct": 7}"#],
        sum: coefficient,
    },
    Question {
        name: "dimension_change",
        answers: "How a size changes between two moistures: by the linear law from green, and beside it by the Handbook's coefficient \
                  (FPL-GTR-190 equation 13-2) where both moistures lie within 6 and 14 %.",
        inputs: &[&[
            must(
                "size_mm",
                Kind::Number(Limits::of(SIZE)),
                "size at the first moisture",
            ),
            TOTAL,
            must(
                "from_moisture_pct",
                Kind::Number(MOISTURE_PCT),
                "first moisture",
            ),
            must(
                "to_moisture_pct",
                Kind::Number(MOISTURE_PCT),
                "second moisture",
            ),
        ]],
        outputs: &[&[
            gives("size_after_mm", "size at the second moisture"),
            gives("change_mm", "by the linear law; negative when it shrinks"),
            gives("coefficient_per_pct", "the Handbook's coefficient"),
            gives(
                "change_by_coefficient_mm",
                "by the coefficient, when both moistures lie within 6 and 14 %",
            ),
        ]],
        examples: &[
            r#"{"ask": "dimension_change", "size_mm": 232, "total_pct": 7, "from_moisture_pct": 8, "to_moisture_pct": 11}"#,
        ],
        sum: between,
    },
];

fn to_moisture(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let size = asked.number("size_mm");
    let Some(total) = asked.fraction("total_pct") else {
        let used = strains(asked)?;
        let after = |s: f64| size.map(|v| v * (1.0 - s));
        let answer = Answer::new()
            .with_some("radial_size_after_mm", after(used.strains.radial))
            .with_some("tangential_size_after_mm", after(used.strains.tangential));
        return Ok(used.on(answer));
    };
    let also = [
        "wood",
        "radial_pct",
        "tangential_pct",
        "shrunk_radial_pct",
        "shrunk_tangential_pct",
    ];
    if let Some(also) = also.into_iter().find(|k| asked.has(k)) {
        return Err(Refused::together(format!(
            "`total_pct` and `{also}` both say how the wood shrinks; leave one of them out"
        )));
    }
    let s = shrinkage(total, asked.need_fraction("moisture_pct")?)?;
    Ok(Answer::new()
        .pct("shrinkage_pct", s)
        .with_some("size_after_mm", size.map(|v| v * (1.0 - s))))
}

fn whole(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (shrunk, moisture) = (
        asked.need_fraction("shrunk_pct")?,
        asked.need_fraction("moisture_pct")?,
    );
    let total = total_from_partial(shrunk, moisture).ok_or_else(|| {
        Refused::together(
            "wood at 30 % and above has not begun to shrink, and none shrinks by more than 30 % to oven-dry; check \
             `shrunk_pct` and `moisture_pct`",
        )
    })?;
    Ok(Answer::new().pct("total_pct", total))
}

fn coefficient(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let c = change_coefficient(asked.need("total_pct")?)?;
    Ok(Answer::new().with("coefficient_per_pct", c))
}

fn between(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (size, total) = (asked.need("size_mm")?, asked.need_fraction("total_pct")?);
    let (from, to) = (
        asked.need_fraction("from_moisture_pct")?,
        asked.need_fraction("to_moisture_pct")?,
    );
    let green = size / (1.0 - shrinkage(total, from)?);
    let after = green * (1.0 - shrinkage(total, to)?);
    let c = change_coefficient(asked.need("total_pct")?)?;
    let holds = COEFFICIENT_HOLDS.holds(from) && COEFFICIENT_HOLDS.holds(to);
    Ok(Answer::new()
        .with("size_after_mm", after)
        .with("change_mm", after - size)
        .with("coefficient_per_pct", c)
        .with_some(
            "change_by_coefficient_mm",
            holds.then_some(size * c * 100.0 * (to - from)),
        ))
}
