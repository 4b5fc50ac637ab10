//! Invented pieces whose truth is richer than what is fitted, and their weighings.
//!
//! A vessel of four stations (8, 10, 12 mm and an end-grain floor of 22 mm, each off by what a calliper is off) whose wood, air
//! and habit are drawn at random; the climate has a season and weather. The one who fits knows the nominal walls and density, the
//! mean climate so far with an error, and weights to a gram. Truth and fit share their equations: what comes out is a ceiling.

use evenwall_wood::drying::case::USUAL_BAG;
use evenwall_wood::drying::{
    Case, Climate, Drier, DryingError, Phase, Reading, Tuning, Wall, Way, Wood, means, ready,
};
use evenwall_wood::forecast::{Record, Weighing};

/// Where the invented pieces dry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// On a shelf.
    Shelf,
    /// In a bag that is turned every three days until the end.
    Bag,
}

/// A log: what was weighed and what will have been true.
pub struct Log {
    /// What the one who fits knows, after the number of days given.
    seen: Case,
    truth: Climate,
    offset_t: f64,
    offset_h: f64,
    /// Days and weights, to a gram.
    pub weighings: Vec<Weighing>,
    /// The day the mean of the piece came within a point of where it settles.
    pub ready: f64,
}

/// Draws with a seed.
pub struct Dice(fastrand::Rng);

impl Dice {
    /// From a seed of choice.
    pub fn new(seed: u64) -> Self {
        Dice(fastrand::Rng::with_seed(seed))
    }

    fn even(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.0.f64()
    }

    /// A standard normal, by Box and Muller.
    fn normal(&mut self) -> f64 {
        let u = 1.0 - self.0.f64();
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * self.0.f64()).cos()
    }

    fn about(&mut self, middle: f64, log_sd: f64) -> f64 {
        middle * (log_sd * self.normal()).exp()
    }
}

/// Thickness, grain factor and area of the stations.
const STATIONS: [(f64, f64, f64); 4] = [
    (8.0, 1.0, 140.0),
    (10.0, 1.0, 160.0),
    (12.0, 1.0, 140.0),
    (22.0, 10.0, 60.0),
];
/// Days of climate made.
const DAYS: u32 = 400;

/// A year's swing and weather that lasts about three days, read every half day.
fn season(dice: &mut Dice) -> Result<Climate, DryingError> {
    let phase = dice.even(0.0, std::f64::consts::TAU);
    let (mean_h, mean_t) = (dice.even(0.55, 0.68), dice.even(14.0, 19.0));
    let mut weather = 0.04 * dice.normal();
    let keep = (-0.5_f64 / 3.0).exp();
    let readings = (0..2 * DAYS)
        .map(|i| {
            let day = 0.5 * f64::from(i);
            let year = (std::f64::consts::TAU * day / 365.25 + phase).sin();
            weather = keep * weather + 0.04 * (1.0 - keep * keep).sqrt() * dice.normal();
            Reading {
                day,
                temp_c: mean_t - 5.0 * year,
                rh: (mean_h + 0.08 * year + weather).clamp(0.25, 0.95),
            }
        })
        .collect();
    Ok(Climate::through(readings)?)
}

impl Log {
    /// Draws a piece and dries it; on a shelf it is weighed morning and evening, in a bag whenever that is turned.
    pub fn draw(dice: &mut Dice, place: Place) -> Result<Log, DryingError> {
        let truth = season(dice)?;
        let nominal = 550.0;
        let wood = Wood {
            density: nominal * (1.0 + 0.08 * dice.normal()).clamp(0.75, 1.25),
            diffusivity_12: dice.about(4.0e-11, 1.65_f64.ln()),
            rise: dice.even(8.0, 12.0),
        };
        let known: Vec<Wall> = STATIONS
            .iter()
            .map(|&(thickness, grain, area)| Wall {
                grain,
                ..Wall::plain(thickness, area)
            })
            .collect();
        let walls = known
            .iter()
            .map(|w| Wall {
                thickness_mm: w.thickness_mm + 0.3 * dice.normal(),
                grain: w.grain * dice.even(0.9, 1.15),
                ..*w
            })
            .collect();
        let habit = dice.about(0.5 * USUAL_BAG, 0.4);
        let phases = match place {
            Place::Shelf => vec![Phase {
                from_day: 0.0,
                way: Way::Open,
                climate: truth.clone(),
            }],
            // No two rounds of turning are alike.
            Place::Bag => (0..100)
                .map(|i| Phase {
                    from_day: 3.0 * f64::from(i),
                    way: Way::Bag(dice.about(habit, 0.25)),
                    climate: truth.clone(),
                })
                .collect(),
        };
        let case = Case {
            wood,
            walls,
            phases,
        };
        let tuning = Tuning {
            surface: dice.about(1.0, 0.3),
            ..Tuning::default()
        };
        let green = dice.even(0.40, 0.70);
        let mut drier = Drier::new(&case, tuning, 0.0, green)?;
        let ready = ready(&mut drier, 390.0)?.mean_day.unwrap_or(390.0);
        let every = match place {
            Place::Shelf => 0.5,
            Place::Bag => 3.0,
        };
        let days: Vec<f64> = (0..12).map(|i| every * f64::from(i)).collect();
        let dry_g = case.dry_mass_g();
        let weighings = means(&case, tuning, 0.0, green, &days)?
            .iter()
            .zip(&days)
            .map(|(m, day)| Weighing {
                day: *day,
                mass_g: (dry_g * (1.0 + m) + 0.05 * dice.normal()).round(),
            })
            .collect();
        let way = match place {
            Place::Shelf => Way::Open,
            Place::Bag => Way::Bag(USUAL_BAG),
        };
        let seen = Case {
            wood: Wood::of_density(nominal),
            walls: known,
            phases: vec![Phase {
                from_day: 0.0,
                way,
                climate: truth.clone(),
            }],
        };
        Ok(Log {
            seen,
            truth,
            offset_t: dice.normal(),
            offset_h: 0.03 * dice.normal(),
            weighings,
            ready,
        })
    }

    /// What is known after `n` weighings: the case with the mean climate so far, read with an error, and the record.
    pub fn known(&self, n: usize) -> Result<(Case, Record), DryingError> {
        let weighings = self.weighings[..n].to_vec();
        let last = weighings[n - 1].day;
        let (t, h) = self.truth.mean(0.0, last);
        let climate = Climate::steady(t + self.offset_t, (h + self.offset_h).clamp(0.05, 0.98))?;
        let mut case = self.seen.clone();
        for phase in &mut case.phases {
            phase.climate = climate.clone();
        }
        let record = Record {
            weighings,
            resets: vec![],
            step_g: 1.0,
        };
        Ok((case, record))
    }
}
