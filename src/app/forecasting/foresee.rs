//! Foresee: everything that is reckoned ahead for one piece, in one go, on whatever thread.

use evenwall_wood::drying::{Case, Drier, Phase, Tuning, Way, course, means};
use evenwall_wood::forecast::{
    BandPoint, ForecastError, Outlook, Road, Telling, Weighing, as_it_is, band, next_weighing,
    outlook, unweighed_road,
};
use evenwall_wood::moisture::settling_moisture;
use evenwall_wood::shrinkage::SHRINKING_BEGINS;
use evenwall_wood::weighing_days::Loss;

use super::input::{Assumed, Input};
use crate::work::Control;

/// How far ahead a weighing is looked for that tells most, days.
const TOLD_DAYS: u32 = 30;
/// Points of the curve.
const POINTS: u32 = 90;
/// Days ahead that the curve goes at least and at most.
const AHEAD_DAYS: (f64, f64) = (21.0, 150.0);
/// Longest time over which thick and thin are compared on a shelf and in a bag, days.
const COMPARED_DAYS: f64 = 240.0;
/// So near its settling moisture walls come together again, fraction.
const SETTLED: f64 = 0.01;
/// How far a wall must differ to be called thick or thin beside another, mm.
const UNEVEN_MM: f64 = 0.5;

/// How thick and thin walls stand to each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Against {
    /// Which wall of the shape is the wettest now, and its moisture.
    pub wettest: (usize, f64),
    /// Which is the driest, and its moisture.
    pub driest: (usize, f64),
    /// Largest gap between two walls below 30 % now, fraction.
    pub spread: f64,
    /// The largest it would grow to, or would have grown to, on an open shelf from the start of these weights, fraction.
    pub on_shelf: f64,
    /// The same in a closed bag.
    pub in_bag: f64,
    /// Thinnest and thickest station, mm; `None` where all are as thick.
    pub walls_mm: Option<(f64, f64)>,
    /// How much wetter the middle of a wall is than its faces now, where most, fraction.
    pub gradient: f64,
}

/// What follows from weighings.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed {
    /// Moisture now, the roads, and why it is too early.
    pub outlook: Outlook,
    /// The curve with its band, from the first weighing into the days ahead.
    pub band: Vec<BandPoint>,
    /// What it loses now.
    pub loss: Loss,
    /// Day of the last weighing.
    pub last_day: f64,
    /// What the next weighing would tell; `None` where it would tell little.
    pub telling: Option<Telling>,
    /// Moisture it settles at in the house, fraction.
    pub settles_in_house: f64,
}

/// A fit that needs a wall this many times slower or faster than usual does not describe it. Own judgement: the widest spread of
/// measured woods is a factor of three either way.
const ODD: f64 = 8.0;
/// Weights that lie so much rougher about the best curve than they should (reduced chi square) are of no drying. Own judgement.
const ROUGH: f64 = 30.0;

/// Why weights do not look like those of such a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Odd {
    /// They fall far slower than its walls should let them.
    Slow,
    /// They fall far faster.
    Fast,
    /// They do not fall as drying does.
    Rough,
}

impl Weighed {
    /// Why the weights do not look like those of such a piece; `None` where they do.
    #[must_use]
    pub fn odd(&self) -> Option<Odd> {
        let fit = &self.outlook.fit;
        if fit.weighings < 4 {
            return None;
        }
        let freedom = (fit.weighings - 2) as f64; // some hundreds at most
        if fit.chi2.is_nan() || fit.chi2 / freedom > ROUGH {
            Some(Odd::Rough)
        } else if fit.tuning.diffusion < 1.0 / ODD {
            Some(Odd::Slow)
        } else if fit.tuning.diffusion > ODD {
            Some(Odd::Fast)
        } else {
            None
        }
    }
}

/// What is foreseen of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Foreseen {
    /// Local days since 1970 at which its days begin.
    pub zero: f64,
    /// The day it was reckoned for, on that count.
    pub today: f64,
    /// The day its drying began.
    pub began: f64,
    /// Weighings in the present run.
    pub weighings: usize,
    /// What its weights say; `None` where there is none in the present run.
    pub weighed: Option<Weighed>,
    /// The whole road without weights, from the day its drying began: to settled where it stands, and in the house after that.
    /// `None` where its weights tell more.
    pub road: Option<(Road, Option<Road>)>,
    /// Thick against thin.
    pub against: Against,
    /// What had to be assumed.
    pub assumed: Assumed,
    /// True where it is in a closed bag.
    pub in_bag: bool,
}

/// A weight older than this no longer says where a piece is, days. Own judgement, no source.
const LATELY_DAYS: f64 = 45.0;

impl Foreseen {
    /// True where it was weighed within the last six weeks.
    #[must_use]
    pub fn weighed_lately(&self) -> bool {
        self.weighed
            .as_ref()
            .is_some_and(|w| self.today - w.last_day <= LATELY_DAYS)
    }
}

/// Reckons everything; `None` where it was called off.
///
/// # Errors
/// [`ForecastError`] with what is wrong and what to do.
pub fn foresee(input: &Input, control: &Control) -> Result<Option<Foreseen>, ForecastError> {
    control.progress(0, 3);
    let case = as_it_is(&input.case, input.today);
    let weighed = if input.weighings > 0 {
        Some(weighed(input, &case)?)
    } else {
        None
    };
    if control.cancelled() {
        return Ok(None);
    }
    control.progress(1, 3);
    let told = weighed
        .as_ref()
        .is_some_and(|w| w.outlook.too_early.is_empty() && w.odd().is_none());
    let road = if told {
        None
    } else {
        let house = input.house.as_ref();
        Some(unweighed_road(&case, input.began, input.green, house)?)
    };
    if control.cancelled() {
        return Ok(None);
    }
    control.progress(2, 3);
    let start = weighed.as_ref().map_or(
        (Tuning::default(), input.began, input.green),
        |w: &Weighed| {
            let fit = &w.outlook.fit;
            (fit.tuning, fit.first_day, fit.first_moisture)
        },
    );
    Ok(Some(Foreseen {
        zero: input.zero,
        today: input.today,
        began: input.began,
        weighings: input.weighings,
        against: against(input, &case, start)?,
        weighed,
        road,
        assumed: input.assumed,
        in_bag: input.in_bag(),
    }))
}

fn weighed(input: &Input, case: &Case) -> Result<Weighed, ForecastError> {
    let said = outlook(
        &input.case,
        &input.record,
        input.priors,
        input.today,
        input.house.as_ref(),
    )?;
    let fitted = input.record.fitted()?;
    let last: Weighing = fitted[fitted.len() - 1];
    let first_day = said.first_day();
    let ready = [said.finish, Some(said.here)]
        .into_iter()
        .flatten()
        .find_map(|road| road.slowest);
    let wanted = ready.map_or(60.0, |r| first_day + r.late - input.today);
    let end = input.today + wanted.clamp(AHEAD_DAYS.0, AHEAD_DAYS.1);
    // The day of the last weight is a point of its own: the weight is told forward from there.
    let mut days: Vec<f64> = (0..=POINTS)
        .map(|i| first_day + (end - first_day) * f64::from(i) / f64::from(POINTS))
        .chain([last.day, input.today.max(last.day)])
        .collect();
    days.sort_by(f64::total_cmp);
    let band = band(case, &said.fit, last.day, &days)?;
    let then = means(
        case,
        said.fit.tuning,
        first_day,
        said.fit.first_moisture,
        &[last.day, last.day + 1.0],
    )?;
    let per_day_g = said.fit.dry_g * (then[0] - then[1]);
    let left_g = last.mass_g - said.fit.dry_g * (1.0 + said.now.settling);
    let slows_over_days = (!input.in_bag() && per_day_g > 0.0 && left_g > 0.0)
        .then(|| left_g / per_day_g)
        .filter(|days| *days >= 0.5);
    let soon: Vec<f64> = (0..=TOLD_DAYS / 2)
        .map(|i| input.today.max(last.day) + 2.0 * f64::from(i))
        .collect();
    let telling = next_weighing(&input.case, &said, &input.record, &soon)?;
    let (temp_c, rh) = input.rooms.house.mean(input.today - 14.0, input.today);
    Ok(Weighed {
        outlook: said,
        band,
        loss: Loss {
            per_day_g,
            slows_over_days,
        },
        last_day: last.day,
        telling,
        settles_in_house: settling_moisture(temp_c, rh)?,
    })
}

/// Thick against thin from a start of (tuning, day, moisture).
fn against(
    input: &Input,
    case: &Case,
    (tuning, day, moisture): (Tuning, f64, f64),
) -> Result<Against, ForecastError> {
    // Every wall by itself here.
    let case = Case {
        walls: input.shape.walls.clone(),
        ..case.clone()
    };
    let now = course(&case, tuning, day, moisture, &[input.today.max(day)])?;
    let now = &now[0];
    let by = |a: &(usize, f64), b: &(usize, f64)| a.1.total_cmp(&b.1);
    let each = || now.walls.iter().copied().enumerate();
    let widest = |way: Way| -> Result<f64, ForecastError> {
        let other = Case {
            phases: vec![Phase {
                from_day: day,
                way,
                climate: input.rooms.shop.clone(),
            }],
            ..case.clone()
        };
        let mut drier = Drier::new(&other, tuning, day, moisture)?;
        let mut widest = 0.0_f64;
        // Once it has settled nothing more comes apart.
        while drier.day() < day + COMPARED_DAYS && drier.mean() > drier.settling()? + SETTLED {
            let clipped = || drier.means().map(|m| m.min(SHRINKING_BEGINS));
            let low = clipped().fold(f64::INFINITY, f64::min);
            widest = widest.max(clipped().fold(0.0, f64::max) - low);
            drier.step()?;
        }
        Ok(widest)
    };
    let thickness = || input.shape.walls.iter().map(|w| w.thickness_mm);
    let stations = input
        .shape
        .stations
        .iter()
        .zip(thickness())
        .filter(|(s, _)| matches!(s, evenwall_piece::fact::StationRef::Wall(_)))
        .map(|(_, t)| t);
    let (thin, thick) = stations.fold((f64::INFINITY, 0.0_f64), |(a, b), t| (a.min(t), b.max(t)));
    Ok(Against {
        wettest: each().max_by(by).unwrap_or((0, now.mean)),
        driest: each().min_by(by).unwrap_or((0, now.mean)),
        spread: now.spread(),
        on_shelf: widest(Way::Open)?,
        in_bag: widest(Way::Bag(evenwall_wood::drying::case::USUAL_BAG))?,
        walls_mm: (thick - thin >= UNEVEN_MM).then_some((thin, thick)),
        gradient: now.gradient(),
    })
}
