//! The solver: a case stepped through time, its walls coupled through the air they share.
//!
//! An hour a step for two days after a change of phase or a jump of the settling moisture by more than one point, three
//! hours otherwise. The air of a bag holds no water worth counting and follows within a minute: its humidity is the root of
//! "what the walls give off is what the bag lets out", solved together with each step. Lagging it by a step makes a piece
//! 3 to 40 % too late.

use super::case::{Case, DryingError, OPEN_AIR, Phase, Tuning, Wall, Way};
use super::climate::shifted;
use super::isotherm::Isotherm;
use super::slab::{CELLS, Medium, Skin, Slab};
use super::wood::{RiseTable, warmth};
use crate::humidity::saturation_density_kg_m3;
use crate::shrinkage::SHRINKING_BEGINS;

/// Seconds of a day.
pub(crate) const DAY: f64 = 86_400.0;
/// Short step, days.
const SHORT: f64 = 1.0 / 24.0;
/// Long step, days.
const LONG: f64 = 1.0 / 8.0;
/// Days of short steps after a change.
const CAREFUL: f64 = 2.0;
/// A jump of the settling moisture that asks for care, fraction.
const JUMP: f64 = 0.01;
/// A secant step of the humidity after which nothing is left to win: the root is far closer than its last step.
const CLOSE: f64 = 1e-9;
/// Tries for the humidity of a bag before halving would have done.
const TRIES: usize = 60;

/// A wall's wood at the step's temperature.
struct Within<'a> {
    rise: &'a RiseTable,
    factor: f64,
}

impl Medium for Within<'_> {
    #[inline]
    fn diffusivity(&self, moisture: f64) -> f64 {
        self.factor * self.rise.value(moisture)
    }
}

/// A wall's faces in the step's air.
struct Faces<'a> {
    isotherm: &'a Isotherm,
    rh: f64,
    settling: f64,
    exchange: [f64; 2],
}

impl Skin for Faces<'_> {
    #[inline]
    fn settling(&self) -> f64 {
        self.settling
    }

    #[inline]
    fn conductance(&self, face: usize, surface: f64, humidity: &mut f64) -> f64 {
        let exchange = self.exchange[face];
        if exchange <= 0.0 {
            return 0.0;
        }
        let away = surface - self.settling;
        if away.abs() < 1e-7 {
            return exchange * self.isotherm.slope(self.rh);
        }
        *humidity = self.isotherm.activity(surface, *humidity);
        (exchange * (*humidity - self.rh) / away).max(0.0)
    }
}

/// What a step needs of the temperature; kept while it stays the same.
struct Warm {
    temp_c: f64,
    isotherm: Isotherm,
    vapour: f64,
    warmth: f64,
}

impl Warm {
    fn at(temp_c: f64) -> Result<Self, DryingError> {
        Ok(Warm {
            temp_c,
            isotherm: Isotherm::at(temp_c),
            vapour: saturation_density_kg_m3(temp_c)?,
            warmth: warmth(temp_c),
        })
    }
}

/// A case on its way. Clone it to try a future.
#[derive(Clone)]
pub struct Drier {
    wood_density: f64,
    diffusivity: f64,
    rise: std::sync::Arc<RiseTable>,
    walls: Vec<Wall>,
    shares: Vec<f64>,
    phases: Vec<Phase>,
    tuning: Tuning,
    slabs: Vec<Slab<CELLS>>,
    day: f64,
    phase: usize,
    careful_until: f64,
    settling: Option<f64>,
    bag_rh: Option<f64>,
    bag_slope: f64,
    let_out: f64,
    warm: std::sync::Arc<Warm>,
}

impl Drier {
    /// Sets `case` up at `day` with the even moisture `moisture` (fraction) in every wall.
    ///
    /// # Errors
    /// [`DryingError`] when a figure of the case or the moisture is out of range.
    pub fn new(case: &Case, tuning: Tuning, day: f64, moisture: f64) -> Result<Self, DryingError> {
        case.check()?;
        Case::check_start(moisture)?;
        if !day.is_finite() {
            return Err(DryingError::Days { day });
        }
        let total: f64 = case.walls.iter().map(Wall::volume_cm3).sum();
        let phase = case.phase_index(day);
        Ok(Drier {
            wood_density: case.wood.density,
            diffusivity: case.wood.diffusivity_12 * tuning.diffusion,
            rise: std::sync::Arc::new(RiseTable::of(&case.wood)),
            shares: case.walls.iter().map(|w| w.volume_cm3() / total).collect(),
            slabs: vec![Slab::even(moisture); case.walls.len()],
            walls: case.walls.clone(),
            phases: case.phases.clone(),
            tuning,
            day,
            phase,
            careful_until: day + CAREFUL,
            settling: None,
            bag_rh: None,
            bag_slope: 0.0,
            let_out: 0.0,
            warm: std::sync::Arc::new(Warm::at(case.phases[phase].climate.at(day).0)?),
        })
    }

    /// Day reached.
    pub fn day(&self) -> f64 {
        self.day
    }

    /// Mean moisture of the whole piece, weighted by dry mass.
    pub fn mean(&self) -> f64 {
        self.slabs
            .iter()
            .zip(&self.shares)
            .map(|(slab, share)| share * slab.mean())
            .sum()
    }

    /// Mean moisture of each wall.
    pub fn means(&self) -> impl Iterator<Item = f64> + '_ {
        self.slabs.iter().map(Slab::mean)
    }

    /// Mean of each wall's cells, each clipped at 30 % as wetter wood has not shrunk.
    pub fn shrinking(&self) -> impl Iterator<Item = f64> + '_ {
        self.slabs.iter().map(|s| s.mean_below(SHRINKING_BEGINS))
    }

    /// Moisture of the outermost cell of each wall, outside and inside: near the face, not at it.
    pub fn outer(&self) -> impl Iterator<Item = [f64; 2]> + '_ {
        self.slabs.iter().map(Slab::outer)
    }

    /// Humidity in the bag after the last step; none out of a bag.
    pub fn bag_rh(&self) -> Option<f64> {
        self.bag_rh
    }

    /// Water that has left through the faces since the start, as mean moisture of the piece: the fluxes summed up.
    pub fn let_out(&self) -> f64 {
        self.let_out
    }

    /// Moisture the piece settles to where it is now: its room over the last fortnight.
    ///
    /// # Errors
    /// None in practice: the climate was checked.
    pub fn settling(&self) -> Result<f64, DryingError> {
        Ok(self.phases[self.phase]
            .climate
            .settling(self.day, self.tuning.humidity)?)
    }

    /// Leaves all later phases out and goes on as `way` in `climate` from now.
    pub fn go_on(&mut self, way: Way, climate: super::climate::Climate) {
        self.phases.truncate(self.phase + 1);
        self.phases.push(Phase {
            from_day: self.day,
            way,
            climate,
        });
        self.enter_phase();
    }

    /// Takes one step.
    ///
    /// # Errors
    /// [`DryingError`] for a temperature out of range, which a checked climate never has.
    pub fn step(&mut self) -> Result<(), DryingError> {
        let ends = self
            .phases
            .get(self.phase + 1)
            .map_or(f64::INFINITY, |p| p.from_day);
        let mut to = self.next_day(ends);
        let (mut temp, mut rh) = self.air(to);
        self.warm_to(temp)?;
        let mut settling = self.warm.isotherm.settling(rh);
        if self.settling.is_some_and(|s| (s - settling).abs() > JUMP)
            && self.day >= self.careful_until
        {
            self.careful_until = self.day + CAREFUL;
            to = self.next_day(ends);
            (temp, rh) = self.air(to);
            self.warm_to(temp)?;
            settling = self.warm.isotherm.settling(rh);
        }
        self.settling = Some(settling);
        let seconds = DAY * (to - self.day);
        match self.phases[self.phase].way {
            Way::Open => {
                self.bag_rh = None;
                self.attempt(seconds, rh, 1.0);
            }
            Way::Cover(share) => {
                self.bag_rh = None;
                self.attempt(seconds, rh, share * self.tuning.habit);
            }
            Way::Bag(conductance) => self.in_bag(seconds, rh, conductance * self.tuning.habit),
        }
        for (slab, share) in self.slabs.iter_mut().zip(&self.shares) {
            self.let_out += share * slab.leaving();
            slab.accept();
        }
        self.day = to;
        self.enter_phase();
        Ok(())
    }

    /// Goes over to the phase that holds now.
    fn enter_phase(&mut self) {
        while self
            .phases
            .get(self.phase + 1)
            .is_some_and(|p| p.from_day <= self.day + 1e-9)
        {
            self.phase += 1;
            self.careful_until = self.day + CAREFUL;
            self.settling = None;
        }
    }

    fn next_day(&self, ends: f64) -> f64 {
        let step = if self.day < self.careful_until - 1e-9 {
            SHORT
        } else {
            LONG
        };
        let to = self.day + step;
        if to > ends - 1e-6 { ends } else { to }
    }

    /// Temperature and shifted humidity of the room at `day`.
    fn air(&self, day: f64) -> (f64, f64) {
        let (t, h) = self.phases[self.phase].climate.at(day);
        (t, shifted(h, self.tuning.humidity))
    }

    fn warm_to(&mut self, temp_c: f64) -> Result<(), DryingError> {
        if temp_c != self.warm.temp_c {
            self.warm = std::sync::Arc::new(Warm::at(temp_c)?);
        }
        Ok(())
    }

    /// Tries the step of every wall in air of humidity `rh`, the exchange cut to `share`.
    fn attempt(&mut self, seconds: f64, rh: f64, share: f64) {
        let Warm {
            isotherm,
            vapour,
            warmth,
            ..
        } = &*self.warm;
        let settling = isotherm.settling(rh);
        let exchange = share * self.tuning.surface * OPEN_AIR * vapour / self.wood_density;
        for (slab, wall) in self.slabs.iter_mut().zip(&self.walls) {
            let medium = Within {
                rise: &self.rise,
                factor: self.diffusivity * warmth * wall.grain,
            };
            let skin = Faces {
                isotherm,
                rh,
                settling,
                exchange: [exchange * wall.faces[0], exchange * wall.faces[1]],
            };
            slab.attempt(seconds, 1e-3 * wall.thickness_mm, &medium, &skin);
        }
    }

    /// Tries the step in a bag and says what the walls give off, kg/s.
    fn given_off(&mut self, seconds: f64, rh: f64) -> f64 {
        self.attempt(seconds, rh, 1.0);
        self.slabs
            .iter()
            .zip(&self.walls)
            .map(|(slab, wall)| {
                let dry_kg = 1e-6 * self.wood_density * wall.volume_cm3();
                dry_kg * slab.leaving() / seconds
            })
            .sum()
    }

    /// Finds the humidity of the bag with the step: a secant from the last humidity, kept within its bracket.
    fn in_bag(&mut self, seconds: f64, room_rh: f64, conductance: f64) {
        let per_rh = conductance * self.warm.vapour;
        // Rises with the humidity: what goes out of the bag less what comes off the walls.
        let (mut low, mut high) = (0.0_f64, 1.0_f64);
        let mut rh = self.bag_rh.unwrap_or(1.0 - 1e-3);
        let mut slope = if self.bag_slope > per_rh {
            self.bag_slope
        } else {
            4.0 * per_rh
        };
        let mut last: Option<(f64, f64)> = None;
        for _ in 0..TRIES {
            let excess = per_rh * (rh - room_rh) - self.given_off(seconds, rh);
            if excess > 0.0 {
                high = rh;
            } else {
                low = rh;
            }
            if let Some((rh0, excess0)) = last
                && rh != rh0
                && (excess - excess0) / (rh - rh0) > 0.0
            {
                slope = (excess - excess0) / (rh - rh0);
            }
            last = Some((rh, excess));
            let aim = rh - excess / slope;
            if excess == 0.0 || (aim - rh).abs() < CLOSE || high - low < 1e-12 {
                break;
            }
            rh = if aim > low && aim < high {
                aim
            } else if aim >= high && high == 1.0 && rh < 1.0 {
                // Saturated, or nearly: the end itself is tried before halving towards it.
                1.0
            } else {
                0.5 * (low + high)
            };
            if rh == 1.0 && last.is_some_and(|(r, _)| r == 1.0) {
                break;
            }
        }
        self.bag_slope = slope;
        self.bag_rh = Some(last.map_or(1.0, |(rh, _)| rh));
    }
}
