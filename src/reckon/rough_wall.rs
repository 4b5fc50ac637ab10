//! Questions about the wall to leave when roughing.

use evenwall_wood::rough_wall::{
    FINISH_WALL, Grain, MARGIN, USUAL_MARGIN_MM, USUAL_OFF_CENTRE_MM, Wanted, advised_mm,
    affine_rough_wall, practice_finish_mm, practice_floor_mm, practice_rough_mm, rough_wall,
};
use evenwall_wood::section::{Ring, SECTION_RADIUS, STRAIN, Strains};
use evenwall_wood::shrinkage::{ALONG_THE_GRAIN, shrinkage};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must, usually, word};
use crate::pith::{self, PITH};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::{CAUTIOUS, USED, WOOD, strains};

/// What is wanted in the end.
pub const WANTED: &[Key] = &[
    may(
        "finish_mm",
        Kind::Number(Limits::of(FINISH_WALL)),
        "wall wanted at the finish; left out, the trade's (end grain 5 to 150 mm, 6 to 220, 8 above; side grain 8)",
    ),
    usually(
        "margin_mm",
        Limits::of(MARGIN),
        USUAL_MARGIN_MM,
        "margin for bumps and clean-up",
    ),
    usually(
        "off_centre_mm",
        Limits::of(MARGIN),
        USUAL_OFF_CENTRE_MM,
        "off-centre on remounting; twice this is left",
    ),
];

/// Grain, and what side grain needs besides.
pub const GRAIN: &[Key] = &[
    word(
        "grain",
        &["end", "side"],
        "end",
        "along the lathe axis, or across it",
    ),
    word(
        "sawn",
        &["flat", "quarter"],
        "flat",
        "side grain only: rings lying with the rim, or standing",
    ),
    usually(
        "along_pct",
        Limits::pct(STRAIN),
        100.0 * ALONG_THE_GRAIN,
        "side grain only: shrinkage along the grain, green to oven-dry",
    ),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[Question {
    name: "rough_wall",
    answers: "The wall to leave when roughing, as a sum: finish + oval + in hand (margin and twice the off-centre) + what the wall itself \
              shrinks; beside it the trade's practice, and the larger of the two in whole millimetres, rounded up. Common practice, \
              no source, for margin, off-centre and practice. Where two sources disagree about a wood it takes the one that leaves \
              more.",
    inputs: &[
        &[must(
            "diameter_mm",
            Kind::Number(Limits::twice(SECTION_RADIUS)),
            "outside diameter as turned green",
        )],
        WANTED,
        GRAIN,
        PITH,
        WOOD,
        CAUTIOUS,
    ],
    outputs: &[
        &[
            gives("total_mm", "wall to leave by the sum"),
            gives("finish_mm", "part: finish wall"),
            gives("oval_mm", "part: taken by the oval"),
            gives("in_hand_mm", "part: margin and twice the off-centre"),
            gives("shrinks_mm", "part: the wall's own shrinking"),
            gives("of_diameter_pct", "the total over the diameter"),
            gives(
                "practice_mm",
                "the trade's rough wall for this grain and diameter",
            ),
            gives(
                "advised_mm",
                "larger of sum and practice, whole mm, rounded up; none when that leaves no hollow",
            ),
            gives(
                "floor_mm",
                "floor by practice above the foot line: the wall advised plus 2",
            ),
            gives(
                "place",
                "end grain: where the pith is in a ring with this wall",
            ),
        ],
        USED,
    ],
    examples: &[
        r#"{"ask": "rough_wall", "diameter_mm": 140, "finish_mm": 5, "wood": "white-ash", "pith": "far"}"#,
        r#"{"ask": "rough_wall", "diameter_mm": 300, "finish_mm": 8, "margin_mm": 2, "off_centre_mm": 0, "grain": "side", "wood": "american-beech", "moisture_pct": 10}"#,
    ],
    sum: rough,
}];

/// The grain asked about.
pub fn grain(asked: &Asked<'_>) -> Grain {
    if asked.text("grain") == Some("side") {
        Grain::Side
    } else {
        Grain::End
    }
}

/// Shrinkage done in the plane across the lathe axis, one way and square to it.
///
/// # Errors
/// [`Refused`] when side grain is given with a pith, or a figure is out of range.
pub fn in_plane(asked: &Asked<'_>, across: Strains) -> Result<(f64, f64), Refused> {
    let side_only = ["sawn", "along_pct"].into_iter().find(|k| asked.has(k));
    match (grain(asked), side_only) {
        (Grain::End, None) => Ok((across.radial, across.tangential)),
        (Grain::End, Some(key)) => Err(Refused::together(format!(
            "`{key}` belongs to side grain, but `grain` is \"end\"; leave it out or say \"side\""
        ))),
        (Grain::Side, _) if asked.has("pith_mm") || asked.has("pith") => Err(Refused::together(
            "side grain has no pith in its section; leave `pith_mm` and `pith` out",
        )),
        (Grain::Side, _) => {
            let square = if asked.text("sawn") == Some("quarter") {
                across.radial
            } else {
                across.tangential
            };
            Ok((along(asked)?, square))
        }
    }
}

/// Shrinkage done along the grain: to the moisture asked about, or whole where only the shrinkage done is given.
///
/// # Errors
/// [`Refused`] when a figure is missing.
pub fn along(asked: &Asked<'_>) -> Result<f64, Refused> {
    let total = asked.need_fraction("along_pct")?;
    if asked.has("shrunk_radial_pct") {
        return Ok(total);
    }
    Ok(shrinkage(total, asked.need_fraction("moisture_pct")?)?)
}

fn rough(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let diameter = asked.need("diameter_mm")?;
    let grain = grain(asked);
    let wanted = Wanted {
        finish_mm: asked
            .number("finish_mm")
            .unwrap_or_else(|| practice_finish_mm(grain, diameter)),
        margin_mm: asked.need("margin_mm")?,
        off_centre_mm: asked.need("off_centre_mm")?,
    };
    let (one, other) = in_plane(asked, used.strains)?;
    let radius = 0.5 * diameter;
    let at = pith::pith(asked)?;
    let wall = match grain {
        Grain::End => rough_wall(radius, used.strains, at, wanted)?,
        Grain::Side => affine_rough_wall(radius, one, other, wanted)?,
    };
    let total = wall.total_mm();
    // A wall as thick as the radius is no wall to leave, whatever the grain.
    let ring = Ring::new(radius, total)?;
    let practice = practice_rough_mm(grain, diameter);
    let advised = Some(advised_mm(total, practice)).filter(|wall| Ring::new(radius, *wall).is_ok());
    let answer = Answer::new()
        .with("total_mm", total)
        .with("finish_mm", wall.finish_mm)
        .with("oval_mm", wall.oval_mm)
        .with("in_hand_mm", wall.in_hand_mm)
        .with("shrinks_mm", wall.shrinks_mm)
        .pct("of_diameter_pct", total / diameter)
        .with("practice_mm", practice)
        .with_some("advised_mm", advised)
        .with_some("floor_mm", advised.map(practice_floor_mm));
    let answer = match grain {
        Grain::End => answer.with("place", pith::place(at.place(&ring)?)),
        Grain::Side => answer,
    };
    Ok(used.on(answer))
}
