//! Questions about a piece's own shrinkage, from two readings after drying.

use evenwall_wood::own_shrinkage::{MEASURED, Moved, calliper_doubt_mm, moved, own_shrinkage};
use evenwall_wood::section::{Pith, Ring};
use evenwall_wood::shrinkage::total_from_partial;
use evenwall_wood::trueing::wall_left;
use evenwall_wood::wall::WALL;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Kind, Limits, may, must};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::{USUAL, WOOD, strains};

const MM: Kind = Kind::Number(Limits::of(MEASURED));

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[Question {
    name: "own_shrinkage",
    answers: "A piece's own shrinkage at a station from its green diameter and the longest and shortest after drying: R = 1 - longest / \
              green, T = 1 - shortest / green, for a pith outside. With a wood beside it: whether it moved far more or far less than \
              the table says (more than 1.5 times and more than 1 mm: judgement, no source). With the green wall: what can be \
              trued. With `moisture_pct`: its shrinkage from green to oven-dry.",
    inputs: &[
        &[
            must("green_diameter_mm", MM, "diameter there as turned green"),
            must("longest_mm", MM, "longest diameter there now"),
            must("shortest_mm", MM, "shortest diameter there now"),
            may(
                "wall_mm",
                Kind::Number(Limits::of(WALL)),
                "wall there as turned green, to know what can be trued",
            ),
        ],
        WOOD,
        USUAL,
    ],
    outputs: &[&[
        gives(
            "own_radial_pct",
            "shrinkage done along the rays; below 0 when it swelled",
        ),
        gives("own_tangential_pct", "shrinkage done along the rings"),
        gives("oval_mm", "longest less shortest"),
        gives(
            "total_radial_pct",
            "with `moisture_pct` below 30: green to oven-dry; none when it swelled",
        ),
        gives("total_tangential_pct", "the same, tangential"),
        gives(
            "moved",
            "with a wood: \"as the table\", \"far less\" or \"far more\"",
        ),
        gives(
            "table_oval_mm",
            "with a wood: longest less shortest by the table",
        ),
        gives(
            "wall_left_mm",
            "with `wall_mm`: largest even wall that can be trued",
        ),
        gives(
            "doubt_mm",
            "with `wall_mm`: take this off when the pith may lie close outside, because callipers then show too little",
        ),
    ]],
    examples: &[
        r#"{"ask": "own_shrinkage", "green_diameter_mm": 140, "longest_mm": 135, "shortest_mm": 132, "wall_mm": 10, "wood": "white-ash", "moisture_pct": 8}"#,
    ],
    sum: own,
}];

fn own(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let green = asked.need("green_diameter_mm")?;
    let (longest, shortest) = (asked.need("longest_mm")?, asked.need("shortest_mm")?);
    let own = own_shrinkage(green, longest, shortest)?;
    let mut answer = Answer::new()
        .pct("own_radial_pct", own.radial)
        .pct("own_tangential_pct", own.tangential)
        .with("oval_mm", longest - shortest);
    if asked.has("moisture_pct") {
        let moisture = asked.need_fraction("moisture_pct")?;
        let total = |shrunk: f64| {
            (shrunk >= 0.0)
                .then(|| total_from_partial(shrunk, moisture))
                .flatten()
                .map(|s| 100.0 * s)
        };
        answer = answer
            .with_some("total_radial_pct", total(own.radial))
            .with_some("total_tangential_pct", total(own.tangential));
    }
    let table = [
        "wood",
        "radial_pct",
        "tangential_pct",
        "shrunk_radial_pct",
        "shrunk_tangential_pct",
    ];
    if table.into_iter().any(|k| asked.has(k)) {
        let table = strains(asked)?.strains;
        let word = match moved(green, longest, shortest, table) {
            Moved::AsTheTable => "as the table",
            Moved::FarLess => "far less",
            Moved::FarMore => "far more",
        };
        answer = answer
            .with("moved", word)
            .with("table_oval_mm", green * table.difference().abs());
    }
    if let Some(wall) = asked.number("wall_mm") {
        let ring = Ring::new(0.5 * green, wall)?;
        answer = answer
            .with(
                "wall_left_mm",
                wall_left(&ring, own.strains(), Pith::Far)?.wall_mm,
            )
            .with(
                "doubt_mm",
                calliper_doubt_mm(ring.radius_mm(), own.strains()),
            );
    }
    Ok(answer)
}
