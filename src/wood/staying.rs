//! Staying: whether a weight stays put, by the slope of the weighings and its interval, and what would decide it.
//!
//! The slope's 90 % interval over the last eight weeks is held against a limit of 0.1 % of the weight a week (own judgement, no
//! source: at that rate a whole point of moisture takes ten weeks). Weights that were not set right for the room's air
//! ([`crate::room_air`]) mostly show the season: a piece at rest then seems to lose in autumn or gain in spring. The last three
//! weeks are looked at by themselves too, because a long stretch averages a fresh fall, and a fresh rest, away.
//! [`crate::steady`] has the trade's plain rule.

use crate::quantile::student_t;
use crate::scale_step::{USUAL_STEPS_G, shortest_span_days};
use crate::steady::{LAST_DAYS, WEIGHINGS};
use crate::trend::{LEVEL, Trend, rounding_g, spread_of_days, trend};
use crate::weighings::{in_order, sound_step};

/// Loss or gain a week that still counts as staying put, share of the weight.
pub const LIMIT_A_WEEK: f64 = 0.001;
/// The longest stretch that is judged, days: eight weeks.
pub const WINDOW_DAYS: f64 = 56.0;
/// Shortest stretch that can be called stable, days (own judgement, no source).
pub const SHORTEST_DAYS: f64 = LAST_DAYS;
/// How far ahead a decision is looked for, days.
const AHEAD_DAYS: u32 = 182;

/// What the weights say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// It stays put.
    Stable,
    /// It loses weight.
    Losing,
    /// It gains weight.
    Gaining,
    /// They cannot tell.
    Undecided,
}

/// Why they say so.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Because {
    /// Fewer than three weighings in the stretch.
    TooFewWeighings,
    /// The whole interval lies within the limit.
    WithinTheLimit,
    /// The whole interval lies beyond the limit.
    BeyondTheLimit,
    /// The interval lies within the limit, but over fewer than three weeks or fewer than five weighings.
    TooShort,
    /// The interval is wider than the limit on both sides: the weights scatter too much for the time they cover.
    TooWide,
    /// The slope is near the limit: some more or less would tip it.
    NearTheLimit,
    /// The stretch as a whole and its last three weeks say different things.
    LastWeeksDiffer,
}

/// What would turn "undecided" into an answer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WouldDecide {
    /// Earliest days from the last weighing, weighed on as before: that the scatter stays and, where the interval reaches to
    /// both sides of no change, that the piece is at rest. `None`: not within half a year.
    pub more_days: Option<u32>,
    /// Coarsest usual scale step with which weighings on these days would have told, g. `None` where the scatter is more than
    /// rounding, the time too short, or no scale would do.
    pub finer_step_g: Option<f64>,
}

/// The verdict with its grounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Staying {
    /// What the weights say.
    pub verdict: Verdict,
    /// Why.
    pub because: Because,
    /// The line through the stretch; `None` with fewer than three weighings.
    pub trend: Option<Trend>,
    /// The line through the last three weeks; `None` with fewer than three weighings there.
    pub last_weeks: Option<Trend>,
    /// Days from the first weighing of the stretch to the last.
    pub stretch_days: f64,
    /// Weighings in the stretch.
    pub weighings: usize,
    /// What would decide it; `None` when it is decided.
    pub would_decide: Option<WouldDecide>,
}

/// Judges `weighings` of (day, grams), in any order, all on a scale with steps of `scale_step_g` and since the last change of
/// mass. The stretch judged is the last eight weeks.
#[must_use]
pub fn staying(weighings: &[(f64, f64)], scale_step_g: f64) -> Staying {
    let run = in_order(weighings);
    let last = run.last().map_or(0.0, |w| w.0);
    let stretch = &run[run.partition_point(|w| w.0 < last - WINDOW_DAYS)..];
    let line = trend(stretch, scale_step_g, LEVEL);
    let recent = run.partition_point(|w| w.0 < last - LAST_DAYS);
    let last_weeks = trend(&run[recent..], scale_step_g, LEVEL);
    let (verdict, because) = match &line {
        None => (Verdict::Undecided, Because::TooFewWeighings),
        Some(t) => judged(t, last_weeks.as_ref()),
    };
    let undecided = verdict == Verdict::Undecided;
    Staying {
        verdict,
        because,
        trend: line,
        last_weeks,
        stretch_days: stretch.first().map_or(0.0, |w| last - w.0),
        weighings: stretch.len(),
        would_decide: undecided
            .then(|| would_decide(stretch, line.as_ref(), last_weeks.as_ref(), scale_step_g)),
    }
}

/// Limit of a line through weights of `mean_g`, g a day.
fn limit_g(mean_g: f64) -> f64 {
    LIMIT_A_WEEK * mean_g / 7.0
}

/// What one line says by itself; `None` where its interval straddles the limit.
fn of(t: &Trend) -> Option<Verdict> {
    let limit = limit_g(t.mean_g);
    if t.high_g < -limit {
        Some(Verdict::Losing)
    } else if t.low_g > limit {
        Some(Verdict::Gaining)
    } else if t.low_g > -limit && t.high_g < limit {
        Some(Verdict::Stable)
    } else {
        None
    }
}

fn judged(t: &Trend, last_weeks: Option<&Trend>) -> (Verdict, Because) {
    let limit = limit_g(t.mean_g);
    match of(t) {
        Some(Verdict::Stable) => match last_weeks.map(|l| (l, of(l))) {
            Some((_, Some(v @ (Verdict::Losing | Verdict::Gaining)))) => {
                (v, Because::LastWeeksDiffer)
            }
            // Three weeks that could tell, and whose slope is beyond the limit.
            Some((l, None)) if l.half_width_g() < limit && l.per_day_g.abs() > limit => {
                (Verdict::Undecided, Because::LastWeeksDiffer)
            }
            _ if t.span_days < SHORTEST_DAYS || t.weighings < WEIGHINGS => {
                (Verdict::Undecided, Because::TooShort)
            }
            _ => (Verdict::Stable, Because::WithinTheLimit),
        },
        // It moved, but has come to rest since.
        Some(_) if last_weeks.and_then(of) == Some(Verdict::Stable) => {
            (Verdict::Undecided, Because::LastWeeksDiffer)
        }
        Some(v) => (v, Because::BeyondTheLimit),
        None if t.half_width_g() < limit => (Verdict::Undecided, Because::NearTheLimit),
        None => (Verdict::Undecided, Because::TooWide),
    }
}

/// The usual days between weighings: the middle one of the gaps, a week where there is none.
fn usual_gap(days: &[f64]) -> u32 {
    let mut gaps: Vec<f64> = days.windows(2).map(|w| w[1] - w[0]).collect();
    gaps.sort_by(f64::total_cmp);
    gaps.get(gaps.len() / 2)
        .map_or(7, |g| g.round().clamp(1.0, 30.0) as u32)
}

fn would_decide(
    stretch: &[(f64, f64)],
    line: Option<&Trend>,
    last_weeks: Option<&Trend>,
    scale_step_g: f64,
) -> WouldDecide {
    let days: Vec<f64> = stretch.iter().map(|w| w.0).collect();
    let every = usual_gap(&days);
    let Some(t) = line else {
        return WouldDecide {
            more_days: first_days(stretch, every, scale_step_g),
            finer_step_g: None,
        };
    };
    // What is known of now: the last three weeks where they came to rest, the whole stretch otherwise.
    let now = last_weeks
        .filter(|l| of(l) == Some(Verdict::Stable))
        .unwrap_or(t);
    let at_rest = now.low_g < 0.0 && now.high_g > 0.0;
    let slope = if at_rest { 0.0 } else { now.per_day_g };
    WouldDecide {
        more_days: more_days(stretch, every, now, slope),
        finer_step_g: finer_step(&days, t, slope.abs(), sound_step(scale_step_g)),
    }
}

/// Days still to come of the shortest span, with fewer than three weighings so far.
fn first_days(stretch: &[(f64, f64)], every: u32, scale_step_g: f64) -> Option<u32> {
    let (first, last) = (stretch.first()?, stretch.last()?);
    // Three weeks and five weighings at least.
    let span = shortest_span_days(last.1, scale_step_g, every)?
        .max(SHORTEST_DAYS as u32)
        .max(4 * every);
    let so_far = (last.0 - first.0).floor() as u32; // at most the eight weeks of a stretch
    Some(span.saturating_sub(so_far).max(1))
}

/// Earliest days from the last weighing after which the interval could lie clear of the limit, were every weight to come on a
/// line of `slope` g a day from the mean of `now`, with its scatter.
fn more_days(stretch: &[(f64, f64)], every: u32, now: &Trend, slope: f64) -> Option<u32> {
    let mut run = stretch.to_vec();
    let last = run.last()?.0;
    let middle = last - 0.5 * now.span_days;
    let limit = limit_g(now.mean_g);
    for ahead in (1..=AHEAD_DAYS / every).map(|i| i * every) {
        let day = last + f64::from(ahead);
        run.push((day, now.mean_g + slope * (day - middle)));
        run.retain(|w| w.0 >= day - WINDOW_DAYS);
        // No floor of rounding here: the scatter of now has it.
        let Some(t) = trend(&run, f64::MIN_POSITIVE, LEVEL) else {
            continue;
        };
        let scatter = now.scatter_g.max(t.scatter_g);
        let half = half_width(run.iter().map(|w| w.0), scatter);
        let moves = t.per_day_g.abs();
        let long = t.span_days >= SHORTEST_DAYS && t.weighings >= WEIGHINGS;
        let same_way = t.per_day_g * slope > 0.0;
        if (moves + half < limit && long) || (moves - half > limit && same_way) {
            return Some(ahead);
        }
    }
    None
}

/// Half width of the slope's interval over `days` with `scatter`, g a day.
fn half_width(days: impl ExactSizeIterator<Item = f64> + Clone, scatter: f64) -> f64 {
    let freedom = u32::try_from(days.len())
        .ok()
        .and_then(|n| n.checked_sub(2));
    let t = freedom.and_then(|f| student_t(LEVEL, f));
    t.map_or(f64::INFINITY, |t| t * scatter / spread_of_days(days).sqrt())
}

/// Coarsest usual step with which the same days would have told; only where the scatter may be rounding alone.
fn finer_step(days: &[f64], t: &Trend, slope: f64, step: f64) -> Option<f64> {
    let limit = limit_g(t.mean_g);
    let long = t.span_days >= SHORTEST_DAYS && t.weighings >= WEIGHINGS;
    // A weight that rests on the edge between two marks scatters by half a step: more than that is not rounding.
    if !long || t.scatter_g > 0.6 * step {
        return None;
    }
    USUAL_STEPS_G.into_iter().find(|s| {
        let half = half_width(days.iter().copied(), rounding_g(*s));
        *s < step && (slope + half < limit || slope - half > limit)
    })
}

/// How a room's air drifts while a piece stays put in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Drift {
    /// The air gets drier and takes weight with it.
    Drier,
    /// The air gets damper and gives weight.
    Damper,
}

/// The drift of the room: what the `plain` weights seem to say where those set right for the room, or for a witness, say that
/// the piece itself stays put. `None` where both agree or the corrected ones are undecided.
#[must_use]
pub fn drift(plain: &Staying, corrected: &Staying) -> Option<Drift> {
    match (corrected.verdict, plain.verdict) {
        (Verdict::Stable, Verdict::Losing) => Some(Drift::Drier),
        (Verdict::Stable, Verdict::Gaining) => Some(Drift::Damper),
        _ => None,
    }
}
