//! Questions about boring: how far a bar bends over its reach, and how deep to drill.

use evenwall_wood::bar::{
    BAR, BEND, FORCE, REACH, ReachBand, STEADY_CUT_N, bend_mm, reach_band, reach_mm, stress_mpa,
};
use evenwall_wood::drill_depth::{FLOOR, drill_depth};
use evenwall_wood::profile::HEIGHT;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Kind, Limits, may, must, usually};
use crate::question::{Question, gives};
use crate::refused::Refused;

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "bar",
        answers: "A boring bar as a round steel cantilever (205 GPa) built in at the rest: bending 64 F L^3 / (3 pi E d^4), stress \
                  32 F L / (pi d^3), reach for a bending, and the trade's band of reach (common practice, no source: to 7 diameters \
                  usual, to 10 light cuts, above change it). A hand-held tool also pivots, a cranked one twists, a catch is several \
                  times a steady cut.",
        inputs: &[&[
            must(
                "bar_mm",
                Kind::Number(Limits::of(BAR)),
                "diameter of the bar",
            ),
            may(
                "reach_mm",
                Kind::Number(Limits::of(REACH)),
                "reach over the rest, to know how it bends",
            ),
            may(
                "bend_mm",
                Kind::Number(Limits::of(BEND)),
                "bending at the tip, to know the reach for it",
            ),
            usually(
                "force_n",
                Limits::of(FORCE),
                STEADY_CUT_N,
                "force at the tip; a steady cut is assumed to be 100 N",
            ),
        ]],
        outputs: &[&[
            gives("bending_mm", "with `reach_mm`: bending at the tip"),
            gives("stress_mpa", "with `reach_mm`: stress at the rest"),
            gives("reach_times", "with `reach_mm`: reach in bar diameters"),
            gives(
                "band",
                "with `reach_mm`: \"usual\", \"light cuts\" or \"change it\"",
            ),
            gives(
                "reach_for_bend_mm",
                "with `bend_mm`: reach at which it bends so far",
            ),
            gives("reach_for_bend_times", "the same in bar diameters"),
        ]],
        examples: &[
            r#"{"ask": "bar", "bar_mm": 16, "reach_mm": 200}"#,
            r#"{"ask": "bar", "bar_mm": 19, "bend_mm": 0.5}"#,
        ],
        sum: bar,
    },
    Question {
        name: "drill_depth",
        answers: "How deep to drill: rim to foot line less the floor, from the faced rim to the bit's point. Common practice.",
        inputs: &[&[
            must(
                "height_mm",
                Kind::Number(Limits::of(HEIGHT)),
                "faced rim to foot line",
            ),
            must(
                "floor_mm",
                Kind::Number(Limits::of(FLOOR)),
                "floor to be left above the foot line",
            ),
        ]],
        outputs: &[&[gives("depth_mm", "from the faced rim to the bit's point")]],
        examples: &[r#"{"ask": "drill_depth", "height_mm": 178, "floor_mm": 25}"#],
        sum: drill,
    },
];

fn bar(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (bar, force) = (asked.need("bar_mm")?, asked.need("force_n")?);
    let (reach, bend) = (asked.number("reach_mm"), asked.number("bend_mm"));
    if reach.is_none() && bend.is_none() {
        return Err(Refused::together(
            "`bar` needs `reach_mm` (how far does it bend?) or `bend_mm` (how far may it reach?); give one or both",
        ));
    }
    let mut answer = Answer::new();
    if let Some(reach) = reach {
        let (band, times) = reach_band(reach, bar)?;
        let band = match band {
            ReachBand::Usual => "usual",
            ReachBand::Long => "light cuts",
            ReachBand::ChangeIt => "change it",
        };
        answer = answer
            .with("bending_mm", bend_mm(force, reach, bar)?)
            .with("stress_mpa", stress_mpa(force, reach, bar)?)
            .with("reach_times", times)
            .with("band", band);
    }
    if let Some(bend) = bend {
        let reach = reach_mm(force, bar, bend)?;
        answer = answer
            .with("reach_for_bend_mm", reach)
            .with("reach_for_bend_times", reach / bar);
    }
    Ok(answer)
}

fn drill(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let sum = drill_depth(asked.need("height_mm")?, asked.need("floor_mm")?)?;
    Ok(Answer::new().with("depth_mm", sum.depth_mm()))
}
