//! Invented weights: made-up runs of weighings whose truth is known, to measure how often the verdict on staying put is right.
//!
//! A piece that follows the air of an invented room (a season, weather of some days) with the lag of its wall, and may have water
//! left to lose; weighed on a scale and judged with and without its room taken out. The truth follows the same lag law as the
//! correction, so the shares are a ceiling: real wood will be worse.

use std::f64::consts::TAU;

use crate::moisture::settling_moisture;
use crate::quantile::normal;
use crate::room_air::LaggedAir;
use crate::staying::{Verdict, staying};

/// Days of weather that hang together.
const WEATHER_DAYS: f64 = 3.0;
/// Spread of the weather about the season, points of humidity.
const WEATHER_PTS: f64 = 4.0;
/// Days of air before the first weighing that the wood remembers and the log has.
const BEFORE: u32 = 60;
/// Temperature of the room, C.
const ROOM_C: f64 = 18.0;
/// Mean humidity of the room, per cent.
const ROOM_PCT: f64 = 60.0;

/// What is invented.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// Oven-dry weight, g.
    pub dry_g: f64,
    /// Step of the scale, g.
    pub scale_step_g: f64,
    /// Days between weighings.
    pub every_days: u32,
    /// Days from the first weighing to the last.
    pub days: u32,
    /// Swing of the season to each side, points of humidity.
    pub season_pts: f64,
    /// Water still to lose at the first weighing, share of the dry weight.
    pub left: f64,
    /// Days in which that falls to 37 %.
    pub left_days: f64,
    /// The wood's true lag behind the air, days.
    pub lag_days: f64,
    /// The lag that is reckoned with over the true one.
    pub lag_factor: f64,
    /// Spread of ln of that factor from run to run.
    pub lag_spread: f64,
    /// Spread of the hygrometer's error from run to run, points of humidity.
    pub bias_pts: f64,
}

impl Setting {
    /// A vessel of 300 g at rest, weighed every four days over eight weeks on a scale of 1 g, its air known exactly.
    #[must_use]
    pub fn vessel() -> Self {
        Setting {
            dry_g: 300.0,
            scale_step_g: 1.0,
            every_days: 4,
            days: 56,
            season_pts: 8.0,
            left: 0.0,
            left_days: 30.0,
            lag_days: 3.0,
            lag_factor: 1.0,
            lag_spread: 0.0,
            bias_pts: 0.0,
        }
    }
}

/// How often each verdict was given, shares of all runs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Verdicts {
    /// Stable.
    pub stable: f64,
    /// Losing.
    pub losing: f64,
    /// Gaining.
    pub gaining: f64,
    /// Undecided.
    pub undecided: f64,
}

impl Verdicts {
    fn count(&mut self, verdict: Verdict, share: f64) {
        *match verdict {
            Verdict::Stable => &mut self.stable,
            Verdict::Losing => &mut self.losing,
            Verdict::Gaining => &mut self.gaining,
            Verdict::Undecided => &mut self.undecided,
        } += share;
    }
}

/// The verdicts over `runs` invented runs from `seed`: on the plain weights, and with the room taken out.
#[must_use]
pub fn verdicts(setting: &Setting, runs: u32, seed: u64) -> (Verdicts, Verdicts) {
    let mut chance = Chance(seed);
    let (mut plain, mut corrected) = (Verdicts::default(), Verdicts::default());
    let share = 1.0 / f64::from(runs.max(1));
    for _ in 0..runs {
        let (weights, log, lag) = one_run(setting, &mut chance);
        plain.count(staying(&weights, setting.scale_step_g).verdict, share);
        let right =
            LaggedAir::new(&log, lag).map(|air| air.set_right(&weights, setting.scale_step_g));
        let said = right.map_or(Verdict::Undecided, |r| {
            staying(&r.weighings, r.scale_step_g).verdict
        });
        corrected.count(said, share);
    }
    (plain, corrected)
}

/// Weights of (day, g), the log of (day, settling moisture), and the lag that is reckoned with.
type Run = (Vec<(f64, f64)>, Vec<(f64, f64)>, f64);

fn one_run(s: &Setting, chance: &mut Chance) -> Run {
    let phase = TAU * chance.even();
    let keeps = (-1.0 / WEATHER_DAYS).exp();
    let bias = s.bias_pts * chance.normal();
    let lag = s.lag_days * s.lag_factor * (s.lag_spread * chance.normal()).exp();
    let mut weather = WEATHER_PTS * chance.normal();
    let (mut truth, mut log) = (Vec::new(), Vec::new());
    for i in 0..=BEFORE + s.days {
        let day = f64::from(i) - f64::from(BEFORE);
        let season = s.season_pts * (TAU * day / 365.25 + phase).sin();
        let humidity = ROOM_PCT + season + weather;
        truth.push((day, settled(humidity)));
        log.push((day, settled(humidity + bias)));
        weather = keeps * weather + WEATHER_PTS * (1.0 - keeps * keeps).sqrt() * chance.normal();
    }
    let wood = LaggedAir::new(&truth, s.lag_days);
    let weights = (0..=s.days / s.every_days.max(1)).filter_map(|i| {
        let day = f64::from(i * s.every_days);
        let moisture = wood.as_ref()?.at(day)? + s.left * (-day / s.left_days).exp();
        let exact = s.dry_g * (1.0 + moisture);
        Some((day, (exact / s.scale_step_g).round() * s.scale_step_g))
    });
    (weights.collect(), log, lag)
}

fn settled(humidity_pct: f64) -> f64 {
    // The clamp keeps it in range, so the fallback never shows.
    settling_moisture(ROOM_C, 0.01 * humidity_pct.clamp(5.0, 98.0)).unwrap_or(0.0)
}

/// Pseudo-random numbers, the same everywhere for a seed: SplitMix64 (Steele, Lea and Flood 2014).
struct Chance(u64);

impl Chance {
    /// Evenly spread above 0 and below 1.
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 12) as f64 / (1_u64 << 52) as f64 + f64::EPSILON / 2.0
    }

    /// From the normal law of mean 0 and spread 1.
    fn normal(&mut self) -> f64 {
        let side = 2.0 * self.even() - 1.0;
        normal(side.abs()).map_or(0.0, |z| z.copysign(side))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chance_is_normal_and_repeats() {
        let mut chance = Chance(3);
        let all: Vec<f64> = (0..4000).map(|_| chance.normal()).collect();
        let mean = all.iter().sum::<f64>() / 4000.0;
        let square = all.iter().map(|z| z * z).sum::<f64>() / 4000.0;
        assert!(
            mean.abs() < 0.05 && (square - 1.0).abs() < 0.07,
            "{mean} {square}"
        );
        assert_eq!(Chance(3).normal(), all[0]);
    }

    #[test]
    fn the_room_taken_out_a_piece_at_rest_is_stable_in_any_season_and_a_drying_one_never() {
        let (plain, corrected) = verdicts(&Setting::vessel(), 150, 1);
        assert!(corrected.stable >= 0.95, "{corrected:?}");
        assert!(plain.stable < 0.5, "{plain:?}");
        for (left, left_days) in [(0.02, 30.0), (0.04, 60.0)] {
            let drying = Setting {
                left,
                left_days,
                ..Setting::vessel()
            };
            let (_, corrected) = verdicts(&drying, 150, 2);
            assert!(
                corrected.losing >= 0.95 && corrected.stable <= 0.01,
                "{corrected:?}"
            );
        }
    }

    #[test]
    fn a_hygrometer_five_points_out_and_a_lag_a_third_out_still_never_call_a_drying_piece_stable() {
        let rough = Setting {
            lag_spread: 0.3,
            bias_pts: 5.0,
            left: 0.02,
            ..Setting::vessel()
        };
        assert!(verdicts(&rough, 150, 3).1.stable <= 0.02);
        let resting = Setting { left: 0.0, ..rough };
        assert!(verdicts(&resting, 150, 4).1.stable >= 0.85);
    }
}
