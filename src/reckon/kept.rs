//! Questions about many pieces: how many were kept, how long they stayed whole, and how forecasts held.

use evenwall_wood::forecast_score::{Outcome, score as score_of};
use evenwall_wood::kept::{plainly_different, share_kept};
use evenwall_wood::survival::{Seen, survival as survival_of};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must, usually};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::staying::LEVEL_PCT;

const PIECES: Limits = Limits::new("pieces", 0.0, 1.0e6);
const DAYS: Limits = Limits::new("days", 0.0, 36_500.0);
const MOST: Count = Count::new(1, 5000);

const fn level(default: f64) -> Key {
    usually("level_pct", LEVEL_PCT, default, "level of the interval")
}

const SEEN: &[Key] = &[
    must("days", Kind::Number(DAYS), "days of drying it was seen for"),
    may(
        "lost",
        Kind::Flag,
        "true when it was lost then; else it was whole then (still drying, or finished)",
    ),
];

const FORECAST: &[Key] = &[
    must(
        "early_days",
        Kind::Number(DAYS),
        "early end of the range, from the day it was made",
    ),
    must("middle_days", Kind::Number(DAYS), "middle"),
    must("late_days", Kind::Number(DAYS), "late end"),
    must("true_days", Kind::Number(DAYS), "when it came"),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "share_kept",
        answers: "How many pieces of a kind were kept, with the score interval of Wilson (1927), Journal of the American Statistical \
                  Association 22, 209.",
        inputs: &[&[
            must("kept", Kind::Number(PIECES), "pieces kept, whole number"),
            must("all", Kind::Number(PIECES), "all pieces, whole number"),
            level(95.0),
            may(
                "other_kept",
                Kind::Number(PIECES),
                "of another kind, to compare",
            ),
            may("other_all", Kind::Number(PIECES), "all of that kind"),
        ]],
        outputs: &[&[
            gives("kept_pct", "kept of all"),
            gives("low_pct", "low end"),
            gives("high_pct", "high end"),
            gives(
                "enough_for_per_cent",
                "false under 20 pieces: then say \"7 of 9\"",
            ),
            gives("other_low_pct", "of the other kind: low end"),
            gives("other_high_pct", "high end"),
            gives(
                "plainly_different",
                "true when the two intervals do not overlap",
            ),
        ]],
        examples: &[
            r#"{"ask": "share_kept", "kept": 7, "all": 9, "other_kept": 3, "other_all": 8}"#,
        ],
        sum: share,
    },
    Question {
        name: "survival",
        answers: "Share of pieces still whole against days of drying: Kaplan and Meier (1958), Journal of the American Statistical \
                  Association 53, 457; error by Greenwood (1926); interval on log(-log S), Kalbfleisch and Prentice (1980).",
        inputs: &[&[
            must("pieces", Kind::Objects(SEEN, MOST), "pieces, in any order"),
            level(95.0),
            may(
                "after_days",
                Kind::Number(DAYS),
                "a time to tell the share for",
            ),
        ]],
        outputs: &[&[
            gives("pieces", "how many"),
            gives("lost", "of them lost"),
            gives(
                "seen_days",
                "longest time one was seen for: the curve says nothing beyond",
            ),
            gives("steps[].days", "a day on which some were lost"),
            gives("steps[].at_risk", "drying and whole just before"),
            gives("steps[].lost", "lost on it"),
            gives("steps[].whole_pct", "share whole after it"),
            gives("steps[].error_pct", "its standard error"),
            gives(
                "steps[].low_pct",
                "low end of the interval; absent when none is left whole",
            ),
            gives("steps[].high_pct", "high end"),
            gives(
                "median_days",
                "first day after which half or fewer are whole; absent when never",
            ),
            gives("median_low_days", "low end of that; absent when never"),
            gives("median_high_days", "high end; absent when never"),
            gives(
                "whole_after_pct",
                "with `after_days`: share whole then; absent beyond `seen_days`",
            ),
        ]],
        examples: &[
            r#"{"ask": "survival", "after_days": 3, "level_pct": 80, "pieces": [{"days": 0.8, "lost": true}, {"days": 1}, {"days": 2.7}, {"days": 3.1, "lost": true}, {"days": 5.4, "lost": true}, {"days": 7}, {"days": 9.2, "lost": true}, {"days": 9.5, "lost": true}, {"days": 12.1}]}"#,
        ],
        sum: survival,
    },
    Question {
        name: "forecast_score",
        answers: "How forecasts held, once their outcomes are known. Those whose middle or outcome is 0, or whose range is upside down, are \
                  left out.",
        inputs: &[&[
            must(
                "forecasts",
                Kind::Objects(FORECAST, MOST),
                "forecasts with their outcomes",
            ),
            level(80.0),
        ]],
        outputs: &[&[
            gives("forecasts", "that could be scored"),
            gives("within", "whose range held what came"),
            gives("coverage_pct", "that share"),
            gives("coverage_low_pct", "low end of its interval, Wilson"),
            gives("coverage_high_pct", "high end"),
            gives("median_error_pct", "median of |middle - true| over true"),
            gives("ninetieth_error_pct", "ninetieth percentile of the same"),
            gives(
                "median_bias_pct",
                "median of (middle - true) over true: below 0 when they come too early",
            ),
            gives("log_spread_ratio", "root mean square of ln(true / middle)"),
            gives("median_width_pct", "median of (late - early) over true"),
        ]],
        examples: &[
            r#"{"ask": "forecast_score", "forecasts": [{"early_days": 8, "middle_days": 10, "late_days": 14, "true_days": 10}, {"early_days": 8, "middle_days": 12, "late_days": 20, "true_days": 10}, {"early_days": 5, "middle_days": 7, "late_days": 9, "true_days": 10}, {"early_days": 10, "middle_days": 20, "late_days": 40, "true_days": 10}]}"#,
        ],
        sum: score,
    },
];

/// A whole number of pieces at `key`, which its limits keep small.
fn pieces(asked: &Asked<'_>, key: &str) -> Result<u32, Refused> {
    let found = asked.need(key)?;
    if found.fract() == 0.0 {
        Ok(found as u32)
    } else {
        Err(Refused::together(format!(
            "`{key}` is {found}, but pieces are counted whole; correct it"
        )))
    }
}

fn counted(asked: &Asked<'_>, kept: &str, all: &str) -> Result<(u32, u32), Refused> {
    let (k, n) = (pieces(asked, kept)?, pieces(asked, all)?);
    if n == 0 || k > n {
        return Err(Refused::together(format!(
            "`{kept}` is {k} of {n}, but there must be one piece at least and no more kept than all; correct one of them"
        )));
    }
    Ok((k, n))
}

fn share(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let level = asked.need_fraction("level_pct")?;
    let none = || Refused::NoNumber;
    let one = counted(asked, "kept", "all")?;
    let s = share_kept(one.0, one.1, level).ok_or_else(none)?;
    let mut answer = Answer::new()
        .pct("kept_pct", s.share)
        .pct("low_pct", s.low)
        .pct("high_pct", s.high)
        .with("enough_for_per_cent", s.enough_for_per_cent);
    if asked.has("other_kept") || asked.has("other_all") {
        let other = counted(asked, "other_kept", "other_all")?;
        let o = share_kept(other.0, other.1, level).ok_or_else(none)?;
        answer = answer
            .pct("other_low_pct", o.low)
            .pct("other_high_pct", o.high)
            .with_some("plainly_different", plainly_different(one, other, level));
    }
    Ok(answer)
}

fn survival(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let seen = asked.objects("pieces");
    let seen: Vec<Seen> = seen
        .iter()
        .map(|p| {
            Ok(Seen {
                days: p.need("days")?,
                lost: p.flag("lost"),
            })
        })
        .collect::<Result<_, Refused>>()?;
    let curve = survival_of(&seen, asked.need_fraction("level_pct")?).ok_or(Refused::NoNumber)?;
    let steps: Vec<Answer> = curve
        .steps
        .iter()
        .map(|s| {
            Answer::new()
                .with("days", s.days)
                .with("at_risk", s.at_risk)
                .with("lost", s.lost)
                .pct("whole_pct", s.whole)
                .pct("error_pct", s.standard_error)
                .with_some("low_pct", s.between.map(|b| 100.0 * b.0))
                .with_some("high_pct", s.between.map(|b| 100.0 * b.1))
        })
        .collect();
    let (low, high) = curve.median_between();
    let after = asked
        .number("after_days")
        .and_then(|d| curve.whole_after(d));
    Ok(Answer::new()
        .with("pieces", curve.pieces)
        .with("lost", curve.lost)
        .with("seen_days", curve.seen_days)
        .with("steps", steps)
        .with_some("median_days", curve.median_days())
        .with_some("median_low_days", low)
        .with_some("median_high_days", high)
        .with_some("whole_after_pct", after.map(|s| 100.0 * s)))
}

fn score(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let outcomes = asked.objects("forecasts");
    let outcomes: Vec<Outcome> = outcomes
        .iter()
        .map(|f| {
            Ok(Outcome {
                early_days: f.need("early_days")?,
                middle_days: f.need("middle_days")?,
                late_days: f.need("late_days")?,
                true_days: f.need("true_days")?,
            })
        })
        .collect::<Result<_, Refused>>()?;
    let s = score_of(&outcomes, asked.need_fraction("level_pct")?).ok_or_else(|| {
        Refused::together(
            "none of `forecasts` can be scored: middle and outcome must be above 0 days and the late end not before the early one; \
             correct them",
        )
    })?;
    Ok(Answer::new()
        .with("forecasts", s.forecasts)
        .with("within", s.within)
        .pct("coverage_pct", s.coverage.share)
        .pct("coverage_low_pct", s.coverage.low)
        .pct("coverage_high_pct", s.coverage.high)
        .pct("median_error_pct", s.median_error)
        .pct("ninetieth_error_pct", s.ninetieth_error)
        .pct("median_bias_pct", s.median_bias)
        .with("log_spread_ratio", s.log_spread)
        .pct("median_width_pct", s.median_width))
}
