//! Questions about the scale and the rhythm of weighing: final weight, shortest span, next weighing.

use evenwall_wood::exponential::final_weight;
use evenwall_wood::scale_step::{moisture_of_a_step, scale_fit, step_needed_g};
use evenwall_wood::weighing_days::{Loss, WorthBecause, days_to_tell, next_weighing};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must, usually};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::weighed::{MASS_G, WEIGHINGS, run};

const WHOLE_DAYS: Limits = Limits::new("days", 1.0, 365.0);
const STEP: Key = usually(
    "step_g",
    Limits::new("g", 0.001, 100.0),
    1.0,
    "step of the scale",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "final_weight",
        answers: "Final weight of a piece late in drying on an open shelf by one falling exponential, m_final + A exp(-t / tau), plain least \
                  squares. No forecast of dates: wood dries ever more slowly, so it settles a quarter to a half too early on a shelf and \
                  is far out in a bag.",
        inputs: &[WEIGHINGS],
        outputs: &[&[
            gives("final_g", "final weight"),
            gives(
                "final_sd_g",
                "its standard deviation, from the scatter alone",
            ),
            gives("above_g", "A, weight above it at the first weighing"),
            gives("tau_days", "time constant"),
            gives("tau_sd_days", "its standard deviation"),
            gives(
                "left_pct",
                "share of the fall still to come after the last weighing",
            ),
        ]],
        examples: &[
            r#"{"ask": "final_weight", "every_days": 3, "masses_g": [520, 493, 473, 457, 444, 434, 427, 421, 416, 413]}"#,
        ],
        sum: last,
    },
    Question {
        name: "scale_fit",
        answers: "The shortest span of weighings that could ever show that a piece stays put, were rounding the only scatter, and the scale \
                  that could tell within six weeks. Own computation.",
        inputs: &[&[
            must("mass_g", Kind::Number(MASS_G), "weight of the piece"),
            STEP,
            usually(
                "every_days",
                WHOLE_DAYS,
                3.0,
                "days between weighings, whole",
            ),
            may("dry_mass_g", Kind::Number(MASS_G), "oven-dry weight"),
            may(
                "within_days",
                Kind::Number(Limits::new("days", 1.0, 3650.0)),
                "a time of your own in which it should tell, whole",
            ),
        ]],
        outputs: &[&[
            gives("shortest_days", "absent beyond ten years"),
            gives("too_coarse", "true when that is longer than six weeks"),
            gives(
                "step_needed_g",
                "coarsest usual step that could tell within six weeks; absent when none could",
            ),
            gives(
                "step_within_g",
                "with `within_days`: coarsest step, not rounded to a usual one; absent with fewer than three weighings",
            ),
            gives(
                "step_moisture_pct",
                "with `dry_mass_g`: points of moisture of one step",
            ),
        ]],
        examples: &[
            r#"{"ask": "scale_fit", "mass_g": 150, "step_g": 1, "every_days": 3, "dry_mass_g": 135, "within_days": 21}"#,
        ],
        sum: fit,
    },
    Question {
        name: "next_weighing",
        answers: "When the next weighing is worth it: once the weight has changed by two steps of the scale, never sooner than the rhythm \
                  asks.",
        inputs: &[&[
            must(
                "loses_g_day",
                Kind::Number(Limits::new("g/day", -1.0e4, 1.0e4)),
                "loss now; below 0 where it gains",
            ),
            may(
                "slows_over_days",
                Kind::Number(Limits::new("days", 0.01, 3650.0)),
                "days in which the loss falls to 37 %; left out, it goes on as it is",
            ),
            STEP,
            usually(
                "every_days",
                WHOLE_DAYS,
                3.0,
                "the rhythm asked for, whole days",
            ),
            usually("latest_days", WHOLE_DAYS, 30.0, "longest wait, whole days"),
            may(
                "decides_in_days",
                Kind::Number(WHOLE_DAYS),
                "days after which one more weighing could settle whether it stays put, whole",
            ),
        ]],
        outputs: &[&[
            gives("wait_days", "from the last weighing"),
            gives(
                "because",
                "\"rhythm\", \"two_steps\", \"staying_put\" or \"would_decide\"",
            ),
            gives(
                "tells_after_days",
                "when the loss has made two steps; absent when it never will",
            ),
        ]],
        examples: &[
            r#"{"ask": "next_weighing", "loses_g_day": 0.4, "slows_over_days": 12, "every_days": 3}"#,
        ],
        sum: next,
    },
];

fn last(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let e = final_weight(&run(asked)?)?;
    Ok(Answer::new()
        .with("final_g", e.final_g)
        .with("final_sd_g", e.final_sd_g)
        .with("above_g", e.above_g)
        .with("tau_days", e.days)
        .with("tau_sd_days", e.days_sd)
        .pct("left_pct", e.share_left))
}

/// The whole number of days at `key`, which its limits keep small.
fn whole(asked: &Asked<'_>, key: &str) -> Result<u32, Refused> {
    Ok(asked.need(key)?.round() as u32)
}

fn fit(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (mass, step, every) = (
        asked.need("mass_g")?,
        asked.need("step_g")?,
        whole(asked, "every_days")?,
    );
    let fit = scale_fit(mass, step, every);
    let within = match asked.has("within_days") {
        true => step_needed_g(mass, every, whole(asked, "within_days")?),
        false => None,
    };
    let of_step = asked
        .number("dry_mass_g")
        .and_then(|dry| moisture_of_a_step(dry, step));
    Ok(Answer::new()
        .with_some("shortest_days", fit.shortest_days)
        .with("too_coarse", fit.too_coarse)
        .with_some("step_needed_g", fit.step_needed_g)
        .with_some("step_within_g", within)
        .with_some("step_moisture_pct", of_step.map(|m| 100.0 * m)))
}

fn next(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let loss = Loss {
        per_day_g: asked.need("loses_g_day")?,
        slows_over_days: asked.number("slows_over_days"),
    };
    let step = asked.need("step_g")?;
    let decides = match asked.has("decides_in_days") {
        true => Some(whole(asked, "decides_in_days")?),
        false => None,
    };
    let next = next_weighing(
        loss,
        step,
        whole(asked, "every_days")?,
        whole(asked, "latest_days")?,
        decides,
    );
    let because = match next.because {
        WorthBecause::Rhythm => "rhythm",
        WorthBecause::TwoSteps => "two_steps",
        WorthBecause::StayingPut => "staying_put",
        WorthBecause::WouldDecide => "would_decide",
    };
    Ok(Answer::new()
        .with("wait_days", next.days)
        .with("because", because)
        .with_some("tells_after_days", days_to_tell(loss, step)))
}
