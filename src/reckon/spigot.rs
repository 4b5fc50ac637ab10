//! Questions about the spigot: how oval it dries and whether its round still reaches the jaws.

use evenwall_wood::spigot::{
    ALLOWANCE, SPIGOT, USUAL_CLEAN_UP_MM, USUAL_JAWS_MM, dried_spigot, fits_the_jaws,
    practice_spigot_mm, spigot_needed_mm,
};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must, usually};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::rough_wall::{GRAIN, grain, in_plane};
use crate::strains::{USED, USUAL, WOOD, strains};

const JAWS: Key = usually(
    "jaws_mm",
    Limits::of(SPIGOT),
    USUAL_JAWS_MM,
    "smallest circle of the jaws",
);
const OFF_CENTRE: Key = usually(
    "off_centre_mm",
    Limits::of(ALLOWANCE),
    0.0,
    "out of centre when re-cut; twice this is lost",
);
const CLEAN_UP: Key = usually(
    "clean_up_mm",
    Limits::of(ALLOWANCE),
    USUAL_CLEAN_UP_MM,
    "taken per side when re-cut",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "spigot",
        answers: "How large to cut a spigot green so that its round still reaches the jaws after drying, (jaws + 2 e + 2 c) / (1 - most); \
                  and how a spigot cut at a diameter dries. Says whether it fits, never how well it holds.",
        inputs: &[
            &[
                may(
                    "diameter_mm",
                    Kind::Number(Limits::of(SPIGOT)),
                    "diameter as cut green, to know how it dries",
                ),
                JAWS,
                OFF_CENTRE,
                CLEAN_UP,
            ],
            GRAIN,
            WOOD,
            USUAL,
        ],
        outputs: &[
            &[
                gives("needed_mm", "diameter to cut green"),
                gives(
                    "practice_mm",
                    "the trade's: jaws plus 7 for end grain, plus 10 for side grain",
                ),
                gives("longest_mm", "with `diameter_mm`: longest diameter dry"),
                gives("shortest_mm", "with `diameter_mm`: shortest diameter dry"),
                gives("oval_mm", "with `diameter_mm`: longest less shortest"),
                gives(
                    "trued_mm",
                    "with `diameter_mm`: largest round that can be cut from it",
                ),
                gives(
                    "fits",
                    "with `diameter_mm`: true when that round is not smaller than the jaws",
                ),
            ],
            USED,
        ],
        examples: &[r#"{"ask": "spigot", "diameter_mm": 60, "jaws_mm": 50, "wood": "white-ash"}"#],
        sum: spigot,
    },
    Question {
        name: "measured_spigot",
        answers: "Whether a dried spigot's round still reaches the jaws, from its shortest diameter now.",
        inputs: &[&[
            must(
                "shortest_mm",
                Kind::Number(Limits::of(SPIGOT)),
                "shortest diameter now",
            ),
            JAWS,
            OFF_CENTRE,
            CLEAN_UP,
        ]],
        outputs: &[&[
            gives("trued_mm", "largest round that can be cut from it"),
            gives("fits", "true when that round is not smaller than the jaws"),
        ]],
        examples: &[r#"{"ask": "measured_spigot", "shortest_mm": 53.5, "off_centre_mm": 0.5}"#],
        sum: measured,
    },
];

fn spigot(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let (one, other) = in_plane(asked, used.strains)?;
    let jaws = asked.need("jaws_mm")?;
    let (off, clean) = (asked.need("off_centre_mm")?, asked.need("clean_up_mm")?);
    let needed = spigot_needed_mm(jaws, one.max(other), off, clean)?;
    let mut answer = Answer::new()
        .with("needed_mm", needed)
        .with("practice_mm", practice_spigot_mm(grain(asked), jaws));
    if let Some(diameter) = asked.number("diameter_mm") {
        let dry = dried_spigot(diameter, one, other, off, clean)?;
        answer = answer
            .with("longest_mm", dry.longest_mm)
            .with("shortest_mm", dry.shortest_mm)
            .with("oval_mm", dry.longest_mm - dry.shortest_mm)
            .with("trued_mm", dry.trued_mm)
            .with("fits", fits_the_jaws(dry.trued_mm, jaws));
    }
    Ok(used.on(answer))
}

fn measured(asked: &Asked<'_>) -> Result<Answer, Refused> {
    // What is measured dry shrinks no more: only truing takes from it.
    let dry = dried_spigot(
        asked.need("shortest_mm")?,
        0.0,
        0.0,
        asked.need("off_centre_mm")?,
        asked.need("clean_up_mm")?,
    )?;
    Ok(Answer::new()
        .with("trued_mm", dry.trued_mm)
        .with("fits", fits_the_jaws(dry.trued_mm, asked.need("jaws_mm")?)))
}
