//! Questions about whether a weight stays put: slope with interval, verdict, the room taken out, the trade's plain rule.

use evenwall_wood::drying::Climate;
use evenwall_wood::moisture::settling_moisture;
use evenwall_wood::room_air::{LAG_WALL, LaggedAir, SetRight, lag_days, set_right_by_witness};
use evenwall_wood::staying::{Because, Drift, Staying, Verdict, drift, staying as staying_of};
use evenwall_wood::steady::{Reason, steady_plain};
use evenwall_wood::trend::{LEVEL, Trend, trend as trend_of};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must, usually};
use crate::place::{AIR, DAY, climate};
use crate::question::{Output, Question, gives};
use crate::refused::Refused;
use crate::weighed::{EVERY, MASS_G, MOST, WEIGHINGS, pairs, run};

/// Level of an interval, per cent.
pub const LEVEL_PCT: Limits = Limits::new("%", 1.0, 99.9);

const WITNESS: &[Key] = &[
    may(
        "witness_masses_g",
        Kind::Numbers(MASS_G, MOST),
        "instead of the air: weights of a dry offcut of the same wood, kept and weighed beside it",
    ),
    may("witness_days", Kind::Numbers(DAY, MOST), "the day of each"),
    may(
        "witness_every_days",
        Kind::Number(EVERY),
        "instead of `witness_days`: one so often, the first on day 0",
    ),
    usually(
        "witness_step_g",
        Limits::new("g", 0.001, 100.0),
        1.0,
        "step of its scale",
    ),
];

const SLOPE: &[Output] = &[
    gives("slope_g_day", "slope; below 0 while it loses"),
    gives("slope_low_g_day", "low end of its interval"),
    gives("slope_high_g_day", "high end"),
    gives(
        "scatter_g",
        "about the line; never less than the rounding of the scale",
    ),
    gives("week_pct", "slope in per cent of the mean weight a week"),
    gives("week_low_pct", "low end"),
    gives("week_high_pct", "high end"),
    gives("mean_g", "mean weight"),
    gives("weighings", "used"),
    gives("span_days", "first to last"),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "weight_trend",
        answers: "Slope of the weights by least squares, with Student's t (any textbook of statistics). The scatter counts at least as \
                  step / sqrt 12.",
        inputs: &[
            WEIGHINGS,
            &[usually(
                "level_pct",
                LEVEL_PCT,
                100.0 * LEVEL,
                "level of the interval",
            )],
        ],
        outputs: &[SLOPE],
        examples: &[
            r#"{"ask": "weight_trend", "every_days": 4, "masses_g": [331, 331, 330, 331, 330, 330, 330, 330, 329, 330, 330, 329, 329, 330, 329]}"#,
        ],
        sum: trend,
    },
    Question {
        name: "staying_put",
        answers: "Whether a piece stays put: the slope's 90 % interval over the last eight weeks against 0.1 % of the weight a week (own \
                  judgement, no source), the last three weeks looked at too, the room's humidity taken out first when it is known, \
                  through a lag or by a witness. What would decide it, when undecided.",
        inputs: &[
            WEIGHINGS,
            AIR,
            &[
                may(
                    "wall_mm",
                    Kind::Number(Limits::of(LAG_WALL)),
                    "with the air: wall, for the lag behind it",
                ),
                may(
                    "lag_days",
                    Kind::Number(Limits::new("days", 0.05, 400.0)),
                    "the lag itself, instead of `wall_mm`",
                ),
            ],
            WITNESS,
        ],
        outputs: &[
            &[
                gives(
                    "verdict",
                    "\"stable\", \"losing\", \"gaining\" or \"undecided\"; corrected where the room is known",
                ),
                gives(
                    "because",
                    "\"too_few_weighings\", \"within_the_limit\", \"beyond_the_limit\", \"too_short\", \"too_wide\", \"near_the_limit\" or \
                     \"last_weeks_differ\"",
                ),
            ],
            SLOPE,
            &[
                gives(
                    "last_weeks_pct",
                    "slope over the last three weeks, per cent of the weight a week; with three weighings there",
                ),
                gives(
                    "decides_in_days",
                    "undecided: earliest days from the last weighing that would decide; absent when not within half a year",
                ),
                gives(
                    "finer_step_g",
                    "undecided: coarsest usual scale step that would have told; absent when none",
                ),
                gives(
                    "plain_verdict",
                    "with the air or a witness: what the weights say by themselves",
                ),
                gives(
                    "drift",
                    "with them: \"drier\" or \"damper\", when the room moves and the piece does not",
                ),
                gives(
                    "left_out",
                    "with them: weighings for whose days nothing is known of the room",
                ),
                gives("corrected[].day", "with them: the weights set right"),
                gives(
                    "corrected[].mass_g",
                    "as it would have weighed in unchanging air",
                ),
                gives("lag_days", "with the air: lag reckoned with"),
            ],
        ],
        examples: &[
            r#"{"ask": "staying_put", "every_days": 3, "masses_g": [150, 150, 150, 150, 150, 150, 150, 150]}"#,
            r#"{"ask": "staying_put", "step_g": 0.1, "wall_mm": 10, "days": [0, 7, 14, 21, 28, 35, 42], "masses_g": [330, 329.6, 329.1, 328.7, 328.2, 327.8, 327.4], "readings": [{"day": -14, "temp_c": 18, "rh_pct": 62}, {"day": -7, "temp_c": 18, "rh_pct": 62}, {"day": 0, "temp_c": 18, "rh_pct": 61.5}, {"day": 7, "temp_c": 18, "rh_pct": 60.8}, {"day": 14, "temp_c": 18, "rh_pct": 60.1}, {"day": 21, "temp_c": 18, "rh_pct": 59.4}, {"day": 28, "temp_c": 18, "rh_pct": 58.7}, {"day": 35, "temp_c": 18, "rh_pct": 58}, {"day": 42, "temp_c": 18, "rh_pct": 57.3}]}"#,
        ],
        sum: staying,
    },
    Question {
        name: "plain_rule",
        answers: "The trade's plain rule: steady within one per cent, or two scale steps if that is more, for sixty days on five weighings, \
                  the last three weeks not falling. Common practice, no source; it knows nothing of the season.",
        inputs: &[WEIGHINGS],
        outputs: &[&[
            gives("steady", "true when the rule holds"),
            gives(
                "reason",
                "\"steady\", \"not_weighed_twice\", \"still_falling\", \"rose\", \"not_long_enough\" or \"too_few_weighings\"",
            ),
            gives("steady_days", "days since the fall stopped"),
            gives("of_days", "days it must stay put"),
            gives("weighings", "within those"),
        ]],
        examples: &[
            r#"{"ask": "plain_rule", "days": [0, 10, 20, 30, 45, 60, 80], "masses_g": [360, 332, 331, 330, 330, 331, 330]}"#,
        ],
        sum: plain_rule,
    },
    Question {
        name: "room_lag",
        answers: "How many days a wall lags behind the air of an open shelf: 3 at 10 mm, 6 at 14, 12 at 20. Own computation with the \
                  drying model; out by a factor of two either way.",
        inputs: &[&[must("wall_mm", Kind::Number(Limits::of(LAG_WALL)), "wall")]],
        outputs: &[&[gives("lag_days", "63 % of the way after a step of the air")]],
        examples: &[r#"{"ask": "room_lag", "wall_mm": 12}"#],
        sum: lag,
    },
];

fn slope(answer: Answer, t: &Trend) -> Answer {
    let (week, low, high) = t.a_week();
    answer
        .with("slope_g_day", t.per_day_g)
        .with("slope_low_g_day", t.low_g)
        .with("slope_high_g_day", t.high_g)
        .with("scatter_g", t.scatter_g)
        .pct("week_pct", week)
        .pct("week_low_pct", low)
        .pct("week_high_pct", high)
        .with("mean_g", t.mean_g)
        .with("weighings", t.weighings)
        .with("span_days", t.span_days)
}

fn trend(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let run = run(asked)?;
    let found = trend_of(
        &run,
        asked.need("step_g")?,
        asked.need_fraction("level_pct")?,
    );
    let found = found.ok_or_else(|| {
        Refused::together(format!(
            "there are {} weighings since the last change of mass, but a slope needs three on different days; weigh it again",
            run.len()
        ))
    })?;
    Ok(slope(Answer::new(), &found))
}

fn verdict(of: Verdict) -> &'static str {
    match of {
        Verdict::Stable => "stable",
        Verdict::Losing => "losing",
        Verdict::Gaining => "gaining",
        Verdict::Undecided => "undecided",
    }
}

fn because(of: Because) -> &'static str {
    match of {
        Because::TooFewWeighings => "too_few_weighings",
        Because::WithinTheLimit => "within_the_limit",
        Because::BeyondTheLimit => "beyond_the_limit",
        Because::TooShort => "too_short",
        Because::TooWide => "too_wide",
        Because::NearTheLimit => "near_the_limit",
        Because::LastWeeksDiffer => "last_weeks_differ",
    }
}

fn said(said: &Staying) -> Answer {
    let mut answer = Answer::new()
        .with("verdict", verdict(said.verdict))
        .with("because", because(said.because));
    match &said.trend {
        Some(t) => answer = slope(answer, t),
        None => {
            answer = answer
                .with("weighings", said.weighings)
                .with("span_days", said.stretch_days);
        }
    }
    let last = said.last_weeks.map(|t| 100.0 * t.a_week().0);
    answer = answer.with_some("last_weeks_pct", last);
    if let Some(would) = said.would_decide {
        answer = answer
            .with_some("decides_in_days", would.more_days)
            .with_some("finer_step_g", would.finer_step_g);
    }
    answer
}

/// (day, settling moisture) of the air: at its readings, or daily where it never changes.
fn settlings(air: &Climate, run: &[(f64, f64)]) -> Result<Vec<(f64, f64)>, Refused> {
    if let [one] = air.readings() {
        let m = settling_moisture(one.temp_c, one.rh)?;
        return Ok(run.iter().map(|w| (w.0, m)).collect());
    }
    let each = air.readings().iter();
    each.map(|r| Ok((r.day, settling_moisture(r.temp_c, r.rh)?)))
        .collect()
}

fn set_right(
    asked: &Asked<'_>,
    run: &[(f64, f64)],
) -> Result<Option<(SetRight, Option<f64>)>, Refused> {
    let step = asked.need("step_g")?;
    let air = crate::place::given(asked);
    if air && asked.has("witness_masses_g") {
        return Err(Refused::together(
            "the room is taken out by its air or by a witness, not by both; take one of them out",
        ));
    }
    if asked.has("witness_masses_g") {
        let beside = pairs(
            asked,
            "witness_masses_g",
            "witness_days",
            "witness_every_days",
        )?;
        let right = set_right_by_witness(run, step, &beside, asked.need("witness_step_g")?);
        return Ok(Some((right, None)));
    }
    if !air {
        return Ok(None);
    }
    let lag = match (asked.number("lag_days"), asked.number("wall_mm")) {
        (Some(lag), None) => lag,
        (None, Some(wall)) => lag_days(wall)?,
        _ => {
            return Err(Refused::together(
                "the air needs the wall's lag behind it: `wall_mm` or `lag_days`; give one of them",
            ));
        }
    };
    let lagged = LaggedAir::new(&settlings(&climate(asked)?, run)?, lag)
        .ok_or_else(|| asked.missing("readings"))?;
    Ok(Some((lagged.set_right(run, step), Some(lag))))
}

fn staying(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let run = run(asked)?;
    let plain = staying_of(&run, asked.need("step_g")?);
    let Some((right, lag)) = set_right(asked, &run)? else {
        return Ok(said(&plain));
    };
    let corrected = staying_of(&right.weighings, right.scale_step_g);
    let moves = drift(&plain, &corrected).map(|d| match d {
        Drift::Drier => "drier",
        Drift::Damper => "damper",
    });
    let one = |w: &(f64, f64)| Answer::new().with("day", w.0).with("mass_g", w.1);
    let each: Vec<Answer> = right.weighings.iter().map(one).collect();
    Ok(said(&corrected)
        .with("plain_verdict", verdict(plain.verdict))
        .with_some("drift", moves)
        .with("left_out", right.left_out)
        .with("corrected", each)
        .with_some("lag_days", lag))
}

fn plain_rule(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let said = steady_plain(&run(asked)?, asked.need("step_g")?);
    let reason = match said.reason {
        Reason::Steady => "steady",
        Reason::NotWeighedTwice => "not_weighed_twice",
        Reason::StillFalling => "still_falling",
        Reason::Rose => "rose",
        Reason::NotLongEnough => "not_long_enough",
        Reason::TooFewWeighings => "too_few_weighings",
    };
    Ok(Answer::new()
        .with("steady", said.steady)
        .with("reason", reason)
        .with("steady_days", said.days_steady)
        .with("of_days", said.of_days)
        .with("weighings", said.weighings))
}

fn lag(asked: &Asked<'_>) -> Result<Answer, Refused> {
    Ok(Answer::new().with("lag_days", lag_days(asked.need("wall_mm")?)?))
}
