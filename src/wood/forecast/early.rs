//! Too early to say: why a forecast is not shown as a date yet.

use super::fit::Fit;
use super::record::{Record, Weighing};
use super::road::{FOUR_IN_FIVE, Road};
use crate::drying::{Case, Way};

/// Weighings a forecast needs; tested on invented logs.
pub const WEIGHINGS: usize = 4;
/// Share of the water to go that must have left; rule of thumb.
pub const SHARE_LOST: f64 = 0.25;
/// Standard deviation of the logarithm of the ready time above which a range says nothing; judgement.
pub const SPREAD: f64 = 0.6;
/// Moisture (fraction) at which the straight part of drying in a bag ends.
pub const STRAIGHT_ENDS: f64 = 0.28;
/// How much rougher than its noise a straight line may lie and still count as straight (reduced chi square); judgement.
const ROUGH: f64 = 3.0;

/// Why it is too early.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TooEarly {
    /// Fewer than [`WEIGHINGS`] since the last reset.
    FewWeighings {
        /// How many there are.
        have: usize,
    },
    /// Less than [`SHARE_LOST`] of the water to go has gone.
    LittleLost {
        /// Share gone, fraction; may be below 0.
        share: f64,
    },
    /// In the bag, the weight still falls in a straight line: only the day it bends can be told, see [`BagLine`].
    StraightInBag,
    /// It was moved or put in another way of drying after the last weighing.
    MovedSince {
        /// Day of the move.
        day: f64,
    },
    /// The range is so wide that it says nothing.
    WideRange {
        /// Standard deviation of the logarithm of the ready time.
        spread: f64,
    },
    /// It does not get there within two years as things are.
    Never,
}

/// The straight part of drying in a bag: when it ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BagLine {
    /// Loss, g a day.
    pub rate_g_day: f64,
    /// Days from the first weighing until the mean moisture is 28 %: early end of four in five, most probable, late end.
    pub early: f64,
    /// Most probable.
    pub middle: f64,
    /// Late end.
    pub late: f64,
}

/// Slope (g a day, falling positive) and reduced chi square of the straight line through `points` with deviation `noise`.
fn line(points: &[Weighing], noise: f64) -> Option<(f64, f64)> {
    let n = points.len() as f64;
    if points.len() < 3 {
        return None;
    }
    let day = points.iter().map(|w| w.day).sum::<f64>() / n;
    let mass = points.iter().map(|w| w.mass_g).sum::<f64>() / n;
    let across: f64 = points.iter().map(|w| (w.day - day).powi(2)).sum();
    let along: f64 = points
        .iter()
        .map(|w| (w.day - day) * (w.mass_g - mass))
        .sum();
    let slope = along / across;
    let left: f64 = points
        .iter()
        .map(|w| (w.mass_g - mass - slope * (w.day - day)).powi(2))
        .sum();
    (across > 0.0).then(|| (-slope, left / (n - 2.0) / (noise * noise)))
}

/// The straight line of the bag, when all weighings lie in the present bag, on one line, and the wood is still wet.
pub(crate) fn bag_line(case: &Case, record: &Record, fit: &Fit) -> Option<BagLine> {
    let points = record.fitted().ok()?;
    let (first, last) = (points.first()?, points.last()?);
    let phase = case.phase_at(last.day)?;
    let one_bag = matches!(phase.way, Way::Bag(_))
        && case.phase_index(first.day) == case.phase_index(last.day);
    let moisture = last.mass_g / fit.dry_g - 1.0;
    if !one_bag || moisture < STRAIGHT_ENDS - 0.04 {
        return None;
    }
    let (rate, rough) = line(points, record.noise_g(fit.dry_g))?;
    if rate <= 0.0 || rough > ROUGH {
        return None;
    }
    let gone = last.day - first.day;
    let until = |dry_g: f64| gone + ((last.mass_g - (1.0 + STRAIGHT_ENDS) * dry_g) / rate).max(0.0);
    let width = (FOUR_IN_FIVE * fit.dry_sd).exp();
    Some(BagLine {
        rate_g_day: rate,
        early: until(fit.dry_g * width),
        middle: until(fit.dry_g),
        late: until(fit.dry_g / width),
    })
}

/// All reasons why it is too early, the plainest first; none when the road may be shown. `settling` is the settling moisture
/// where the piece stands.
pub(crate) fn reasons(
    case: &Case,
    record: &Record,
    fit: &Fit,
    road: &Road,
    straight: bool,
    settling: f64,
    today: f64,
) -> Vec<TooEarly> {
    let mut out = Vec::new();
    let Ok(points) = record.fitted() else {
        return out;
    };
    let (first, last) = (points[0], points[points.len() - 1]);
    if points.len() < WEIGHINGS {
        out.push(TooEarly::FewWeighings { have: points.len() });
    }
    let to_go = first.mass_g - fit.unknowns.priors.dry_g * (1.0 + settling);
    // A piece first weighed when nearly dry has no such share: its range alone decides.
    if to_go > 0.03 * first.mass_g {
        let share = (first.mass_g - last.mass_g) / to_go;
        if share < SHARE_LOST {
            out.push(TooEarly::LittleLost { share });
        }
    }
    if straight {
        out.push(TooEarly::StraightInBag);
    }
    let moved = case
        .phases
        .iter()
        .map(|p| p.from_day)
        .rfind(|d| *d > last.day && *d <= today);
    if let Some(day) = moved {
        out.push(TooEarly::MovedSince { day });
    }
    match road.slowest {
        None => out.push(TooEarly::Never),
        Some(range) if range.spread > SPREAD => out.push(TooEarly::WideRange {
            spread: range.spread,
        }),
        Some(_) => {}
    }
    out
}
