//! Weights: a piece's weighings as runs that may be compared, whether they stay put, and when a weight is questioned.
//!
//! A run ends where something other than drying changed the weight, and where a new scale came. Weights are net of tare,
//! in grams. Days are local calendar days. All rules are common practice, no source; the plain rule of staying put is
//! [`evenwall_wood::steady::steady_plain`].

use chrono::NaiveDate;
use evenwall_wood::steady::{Reason, WEIGHINGS, steady_plain};

use crate::piece::{Moment, Piece, Weighing};
use crate::shop::Shop;
use crate::vocabulary::MassChange;

/// Below this weight a scale with steps of 1 g or more is called coarse, g.
pub const FINE_SCALE_BELOW_G: f64 = 200.0;
/// A gain above this in a week is questioned, per cent of the weight before.
pub const GAIN_A_WEEK_PCT: f64 = 1.0;
/// A change above this at once is questioned, per cent of the weight before.
pub const CHANGE_AT_ONCE_PCT: f64 = 3.0;
/// No wood loses more than this by drying between two weighings, per cent of the weight before: a slip of a digit.
const LOSS_BY_DRYING_PCT: f64 = 60.0;

/// Why a run of weights began.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Began {
    /// The first weights of the piece.
    First,
    /// Something other than drying changed the weight.
    MassChanged(MassChange),
    /// A new scale.
    NewScale,
}

/// Weighings that may be compared with each other.
#[derive(Debug, Clone, PartialEq)]
pub struct Run<'a> {
    /// Why it began.
    pub began: Began,
    /// When it began; `None` for the first.
    pub since: Option<Moment>,
    /// The step of the scale, g.
    pub step_g: f64,
    /// The weighings by time, each with a weight of the wood that is finite and above 0 g.
    pub weighings: Vec<&'a Weighing>,
}

impl Run<'_> {
    /// The run as (local day counted from its first weighing, net g), for charts and rules.
    #[must_use]
    pub fn by_day(&self) -> Vec<(f64, f64)> {
        let Some(first) = self.weighings.first().map(|w| w.at.date_naive()) else {
            return Vec::new();
        };
        self.weighings
            .iter()
            .map(|w| (days_between(first, w.at.date_naive()), w.net_g()))
            .collect()
    }
}

fn days_between(from: NaiveDate, to: NaiveDate) -> f64 {
    let days = to.signed_duration_since(from).num_days();
    i32::try_from(days).map_or(0.0, f64::from)
}

fn weighs(w: &Weighing) -> bool {
    w.net_g().is_finite() && w.net_g() > 0.0
}

/// The runs of a piece by time, later dates than now included so that they can be shown. Only the last may be empty: then
/// nothing was weighed since the change. A change at the very moment of a weighing comes before it.
#[must_use]
pub fn runs<'a>(piece: &'a Piece, shop: &Shop) -> Vec<Run<'a>> {
    let mut cuts: Vec<(Moment, Began)> = Vec::new();
    cuts.extend(
        piece
            .mass_changes
            .iter()
            .map(|(at, c)| (*at, Began::MassChanged(*c))),
    );
    cuts.extend(shop.scales.iter().map(|(at, _)| (*at, Began::NewScale)));
    cuts.sort_by_key(|c| c.0);
    let step_before = |at: Option<Moment>| match at {
        Some(at) => shop.scale_step_at(at),
        None => shop.settings.scale_step_g,
    };
    let mut runs = vec![Run {
        began: Began::First,
        since: None,
        step_g: step_before(piece.weighings.first().map(|w| w.at)),
        weighings: Vec::new(),
    }];
    let mut cuts = cuts.into_iter().peekable();
    let begin = |runs: &mut Vec<Run<'a>>, (at, began): (Moment, Began)| {
        // A scale bought before the first weighing parts nothing from nothing.
        let nothing_yet = runs.iter().all(|r| r.weighings.is_empty());
        if runs.last().is_some_and(|r| r.weighings.is_empty()) {
            runs.pop();
        }
        runs.push(Run {
            began: if nothing_yet { Began::First } else { began },
            since: (!nothing_yet).then_some(at),
            step_g: shop.scale_step_at(at),
            weighings: Vec::new(),
        });
    };
    for w in piece.weighings.iter().filter(|w| weighs(w)) {
        while let Some(cut) = cuts.next_if(|(at, _)| *at <= w.at) {
            begin(&mut runs, cut);
        }
        if let Some(run) = runs.last_mut() {
            run.weighings.push(w);
        }
    }
    for cut in cuts {
        begin(&mut runs, cut);
    }
    runs
}

/// The run in force at a moment: the weighings since the last change and scale, none dated after it.
#[must_use]
pub fn run_at<'a>(piece: &'a Piece, shop: &Shop, now: Moment) -> Run<'a> {
    let changed = piece.mass_changes.iter().rev().find(|(at, _)| *at <= now);
    let scaled = shop.scales.iter().rev().find(|(at, _)| *at <= now);
    let cut = changed
        .map(|(at, c)| (*at, Began::MassChanged(*c)))
        .into_iter()
        .chain(scaled.map(|(at, _)| (*at, Began::NewScale)))
        .max_by_key(|(at, _)| *at);
    let since = cut.map(|(at, _)| at);
    Run {
        began: cut.map_or(Began::First, |(_, began)| began),
        since,
        step_g: shop.scale_step_at(now),
        weighings: piece
            .weighings
            .iter()
            .filter(|w| weighs(w) && w.at <= now && since.is_none_or(|s| w.at >= s))
            .collect(),
    }
}

/// The last weighing not dated after now.
#[must_use]
pub fn last_weighing(piece: &Piece, now: Moment) -> Option<&Weighing> {
    piece
        .weighings
        .iter()
        .rev()
        .find(|w| w.at <= now && weighs(w))
}

/// How long a weight has stayed put: "day n of m".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StayingPut {
    /// Whole days since the fall stopped, up to the last weighing; 0 while it falls.
    pub day: u32,
    /// Days asked for, see [`crate::settings::Settings::steady_days`].
    pub of: u32,
    /// Weighings within those days.
    pub weighings: usize,
    /// True when the plain rule holds.
    pub steady: bool,
    /// Why or why not.
    pub reason: Reason,
}

/// The plain rule on the run in force at a moment.
#[must_use]
pub fn staying_put(piece: &Piece, shop: &Shop, now: Moment) -> StayingPut {
    let run = run_at(piece, shop, now);
    let said = steady_plain(&run.by_day(), run.step_g);
    let of = shop.settings.steady_days;
    let long_enough = said.days_steady >= f64::from(of);
    // The turner may ask for more or fewer days than sixty; the rest of the rule stands.
    let reason = match said.reason {
        Reason::Steady if !long_enough => Reason::NotLongEnough,
        Reason::NotLongEnough | Reason::Rose if long_enough && said.weighings < WEIGHINGS => {
            Reason::TooFewWeighings
        }
        Reason::NotLongEnough | Reason::Rose if long_enough => Reason::Steady,
        other => other,
    };
    StayingPut {
        day: said.days_steady.max(0.0) as u32, // whole days of calendar dates, at most some thousands
        of,
        weighings: said.weighings,
        steady: reason == Reason::Steady,
        reason,
    }
}

/// Whether a piece has caught up with the heated house since a day: its last weighing against one at least six days
/// before, no lower than by a scale step and within the larger of two steps and 1 %. `None` where it was not weighed
/// twice there, six days apart.
#[must_use]
pub fn caught_up_since(piece: &Piece, shop: &Shop, now: Moment, since: NaiveDate) -> Option<bool> {
    let run = run_at(piece, shop, now);
    let there: Vec<_> = run
        .weighings
        .iter()
        .filter(|w| w.at.date_naive() >= since)
        .collect();
    let last = there.last()?;
    let day = last.at.date_naive();
    let before = there
        .iter()
        .rev()
        .find(|w| day.signed_duration_since(w.at.date_naive()).num_days() >= 6)?;
    let fall = before.net_g() - last.net_g();
    let band = (2.0 * run.step_g).max(0.01 * last.net_g());
    Some(fall <= run.step_g + 1e-9 && fall.abs() <= band + 1e-9)
}

/// What is asked before a weight is recorded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeightQuestion {
    /// Heavier than drying allows: bag still on? Same scale?
    HeavierThanLast {
        /// The gain, per cent of the weight before.
        gain_pct: f64,
        /// The weight before, g.
        last_g: f64,
    },
    /// Lighter at once than drying allows: was the bag on last time? A digit short?
    LighterThanLast {
        /// The loss, per cent of the weight before.
        loss_pct: f64,
        /// The weight before, g.
        last_g: f64,
    },
}

/// The question, if any, that a new weight raises beside the previous one of the same run, both net g: a gain above 1 % in
/// a week (more weeks allow more), any gain above 3 %, a loss above 3 % within a day, or a loss no drying explains. What
/// one scale step can do is never questioned. Green wood that loses a tenth in a month is not questioned.
#[must_use]
pub fn question(
    previous: (Moment, f64),
    new: (Moment, f64),
    scale_step_g: f64,
) -> Option<WeightQuestion> {
    let (last_g, new_g) = (previous.1, new.1);
    let sound = last_g.is_finite() && new_g.is_finite() && last_g > 0.0;
    if !sound || (new_g - last_g).abs() <= scale_step_g.max(0.0) + 1e-9 {
        return None;
    }
    let change_pct = 100.0 * (new_g - last_g) / last_g;
    let apart = new.0.signed_duration_since(previous.0);
    let weeks = (apart.num_hours().max(0) as f64 / (7.0 * 24.0)).max(1.0);
    let allowed_gain = (GAIN_A_WEEK_PCT * weeks).min(CHANGE_AT_ONCE_PCT);
    let allowed_loss = if apart.num_hours().abs() < 24 {
        CHANGE_AT_ONCE_PCT
    } else {
        LOSS_BY_DRYING_PCT
    };
    if change_pct > allowed_gain + 1e-9 {
        Some(WeightQuestion::HeavierThanLast {
            gain_pct: change_pct,
            last_g,
        })
    } else if -change_pct > allowed_loss + 1e-9 {
        Some(WeightQuestion::LighterThanLast {
            loss_pct: -change_pct,
            last_g,
        })
    } else {
        None
    }
}

/// The question that a new net weight at a moment raises for a piece, against the weighing before it in the same run.
#[must_use]
pub fn question_for(piece: &Piece, shop: &Shop, at: Moment, net_g: f64) -> Option<WeightQuestion> {
    let run = run_at(piece, shop, at);
    let previous = run.weighings.last()?;
    question((previous.at, previous.net_g()), (at, net_g), run.step_g)
}

/// True where a finer scale is suggested: under 200 g on a scale with steps of 1 g or more.
#[must_use]
pub fn scale_too_coarse(net_g: f64, scale_step_g: f64) -> bool {
    net_g < FINE_SCALE_BELOW_G && scale_step_g >= 1.0
}
