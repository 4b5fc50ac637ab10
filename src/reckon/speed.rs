//! Questions about lathe speed: the rim's speed, and the trade's upper bound, which is no promise.

use evenwall_wood::speed::{REVOLUTIONS, TURNING, not_above_rpm, practice_band_rpm, rim_speed_m_s};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Kind, Limits, may, must};
use crate::question::{Question, gives};
use crate::refused::Refused;

/// What goes with every bound.
const CAUTION: &str = "Common practice as an upper bound, no promise: start at the lathe's lowest speed and stand out of the line of \
                       the piece.";
/// What is said instead of a bound.
const NO_FIGURE: &str = "A crack or bark inclusion is noted: no speed is named for this piece.";

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "rim_speed",
        answers: "Speed of the rim of what turns, pi D n / 60000.",
        inputs: &[&[
            must(
                "diameter_mm",
                Kind::Number(Limits::of(TURNING)),
                "largest diameter of what turns",
            ),
            must(
                "speed_rpm",
                Kind::Number(Limits::of(REVOLUTIONS)),
                "revolutions a minute",
            ),
        ]],
        outputs: &[&[gives("speed_m_s", "speed of the rim")]],
        examples: &[r#"{"ask": "rim_speed", "diameter_mm": 120, "speed_rpm": 1500}"#],
        sum: rim,
    },
    Question {
        name: "speed_bound",
        answers: "The trade's rule, revolutions times diameter in inches between 6000 and 9000, as an upper bound: the lower figure for \
                  wet, unbalanced or out-of-round work, rounded down. Common practice, never a promise; no figure where a crack or \
                  bark inclusion is noted.",
        inputs: &[&[
            must(
                "diameter_mm",
                Kind::Number(Limits::of(TURNING)),
                "diameter of the log or of what turns",
            ),
            may(
                "crack_or_bark",
                Kind::Flag,
                "true when a crack or a bark inclusion is noted",
            ),
        ]],
        outputs: &[&[
            gives(
                "not_above_rpm",
                "not above about so many revolutions a minute",
            ),
            gives("practice_low_rpm", "lower figure of the rule"),
            gives(
                "practice_high_rpm",
                "upper figure of the rule, for dry round work",
            ),
            gives("practice_low_m_s", "rim speed at the lower figure"),
            gives("practice_high_m_s", "rim speed at the upper figure"),
            gives("caution", "what goes with it, or why there is no figure"),
        ]],
        examples: &[
            r#"{"ask": "speed_bound", "diameter_mm": 150}"#,
            r#"{"ask": "speed_bound", "diameter_mm": 150, "crack_or_bark": true}"#,
        ],
        sum: bound,
    },
];

fn rim(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let v = rim_speed_m_s(asked.need("diameter_mm")?, asked.need("speed_rpm")?)?;
    Ok(Answer::new().with("speed_m_s", v))
}

fn bound(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let diameter = asked.need("diameter_mm")?;
    if asked.flag("crack_or_bark") {
        return Ok(Answer::new().with("caution", NO_FIGURE));
    }
    let (low, high) = practice_band_rpm(diameter)?;
    let at = |rpm: f64| REVOLUTIONS.holds(rpm).then(|| rim_speed_m_s(diameter, rpm));
    Ok(Answer::new()
        .with("not_above_rpm", not_above_rpm(diameter)?)
        .with("practice_low_rpm", low)
        .with("practice_high_rpm", high)
        .with_some("practice_low_m_s", at(low).transpose()?)
        .with_some("practice_high_m_s", at(high).transpose()?)
        .with("caution", CAUTION))
}
