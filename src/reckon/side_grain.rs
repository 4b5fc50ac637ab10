//! Questions about side grain: the rim that goes oval and leaves its plane.

use evenwall_wood::profile::HEIGHT;
use evenwall_wood::rough_wall::{FINISH_WALL, MARGIN, Wanted, affine_rough_wall};
use evenwall_wood::section::{Ring, SECTION_RADIUS, STRAIN};
use evenwall_wood::shrinkage::ALONG_THE_GRAIN;
use evenwall_wood::side_grain::{RIM_HEIGHT, Sawn, dried_rim, rim_rise_mm};
use evenwall_wood::trueing::affine_wall_mm;
use evenwall_wood::wall::WALL;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must, usually, word};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::rough_wall::along;
use crate::strains::{USED, USUAL, WOOD, strains};

const DIAMETER: Key = must(
    "diameter_mm",
    Kind::Number(Limits::twice(SECTION_RADIUS)),
    "outside diameter of the rim as turned green",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "side_grain",
        answers: "A side-grain rim after drying: D (1 - L) along the grain, D (1 - T) across it for a flat-sawn blank and D (1 - R) for \
                  a quarter-sawn one; what can be trued, and the rough wall needed. Exact for straight grain.",
        inputs: &[
            &[
                DIAMETER,
                may(
                    "height_mm",
                    Kind::Number(Limits::of(HEIGHT)),
                    "height as turned green",
                ),
                may(
                    "wall_mm",
                    Kind::Number(Limits::of(WALL)),
                    "wall as turned green, to know what can be trued",
                ),
                may(
                    "finish_mm",
                    Kind::Number(Limits::of(FINISH_WALL)),
                    "wall wanted at the finish, to know the rough wall needed",
                ),
                usually("margin_mm", Limits::of(MARGIN), 0.0, "margin on top of it"),
                word(
                    "sawn",
                    &["flat", "quarter"],
                    "flat",
                    "rings lying with the rim, or standing",
                ),
                usually(
                    "along_pct",
                    Limits::pct(STRAIN),
                    100.0 * ALONG_THE_GRAIN,
                    "shrinkage along the grain, green to oven-dry; with `shrunk_radial_pct`, the shrinkage done",
                ),
            ],
            WOOD,
            USUAL,
        ],
        outputs: &[
            &[
                gives("along_mm", "diameter along the grain"),
                gives("across_mm", "diameter across the grain"),
                gives("height_after_mm", "with `height_mm`"),
                gives("shrunk_along_pct", "shrinkage done along the grain"),
                gives(
                    "wall_left_mm",
                    "with `wall_mm`: largest even wall; below 0 when none is left",
                ),
                gives("needed_mm", "with `finish_mm`: rough wall needed"),
            ],
            USED,
        ],
        examples: &[
            r#"{"ask": "side_grain", "diameter_mm": 300, "height_mm": 120, "wall_mm": 30, "finish_mm": 8, "margin_mm": 2, "wood": "american-beech", "moisture_pct": 10}"#,
        ],
        sum: side,
    },
    Question {
        name: "rim_rise",
        answers: "How far the two cross-grain sides of a flat-sawn rim move away from the pith, against its end-grain ends: \
                  (1 - R) [r cos(k f) - h]. They stand high when the rim faces the bark, low when it faces the pith.",
        inputs: &[
            &[
                DIAMETER,
                must(
                    "height_mm",
                    Kind::Number(Limits::of(RIM_HEIGHT)),
                    "height of the rim over the plane of the pith",
                ),
            ],
            WOOD,
            USUAL,
        ],
        outputs: &[&[gives("rise_mm", "away from the pith")], USED],
        examples: &[
            r#"{"ask": "rim_rise", "diameter_mm": 300, "height_mm": 100, "wood": "white-ash"}"#,
        ],
        sum: rise,
    },
];

fn side(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let diameter = asked.need("diameter_mm")?;
    let sawn = if asked.text("sawn") == Some("quarter") {
        Sawn::Quarter
    } else {
        Sawn::Flat
    };
    let height = asked.number("height_mm");
    let along = along(asked)?;
    // The rim's plane does not depend on the height: without one, any legal height will do and is not given back.
    let rim = dried_rim(
        diameter,
        height.unwrap_or(HEIGHT.min),
        used.strains,
        along,
        sawn,
    )?;
    let mut answer = Answer::new()
        .with("along_mm", rim.along_mm)
        .with("across_mm", rim.across_mm)
        .with_some("height_after_mm", height.map(|_| rim.height_mm))
        .pct("shrunk_along_pct", along);
    if let Some(wall) = asked.number("wall_mm") {
        let ring = Ring::new(0.5 * diameter, wall)?;
        answer = answer.with("wall_left_mm", affine_wall_mm(&ring, rim.least, rim.most));
    }
    if let Some(finish_mm) = asked.number("finish_mm") {
        let wanted = Wanted {
            finish_mm,
            margin_mm: asked.need("margin_mm")?,
            off_centre_mm: 0.0,
        };
        let needed = affine_rough_wall(0.5 * diameter, rim.least, rim.most, wanted)?;
        answer = answer.with("needed_mm", needed.total_mm());
    }
    Ok(used.on(answer))
}

fn rise(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let rise = rim_rise_mm(
        0.5 * asked.need("diameter_mm")?,
        asked.need("height_mm")?,
        used.strains,
    )?;
    Ok(used.on(Answer::new().with("rise_mm", rise)))
}
