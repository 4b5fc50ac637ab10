//! Truing: what True asks of a dried piece: whether a crack speaks against spinning it, what wall is left, and whether the
//! spigot still fits the jaws.
//!
//! Common practice, no source. Nothing here ever clears a piece to spin, and a filling never does.

use evenwall_wood::spigot::{USUAL_JAWS_MM, fits_the_jaws};

use crate::detail::DetailField;
use crate::fact::{Clock, StationRef};
use crate::glue::is_crack;
use crate::piece::{Flaw, Moment, OvalMeasured, Piece, SectionMeasured, StationReading};
use crate::shop::{Jaws, Shop};
use crate::stage::Stage;
use crate::vocabulary::{CrackAnswer, RoundHow};

/// Why a piece should not be spun.
#[derive(Debug, Clone, PartialEq)]
pub enum DoNotSpin {
    /// A crack at the rim or across the floor was answered.
    RimOrFloor,
    /// A crack that was noted goes through the wall and was not cut away, whatever was put into it.
    Through,
    /// A crack was noted in the floor and was not cut away.
    InFloor,
}

/// What speaks against spinning a piece; `None` says only that nothing was recorded that does.
#[must_use]
pub fn do_not_spin(piece: &Piece) -> Option<DoNotSpin> {
    if matches!(piece.finish.cracks, Some((_, CrackAnswer::RimOrFloor))) {
        return Some(DoNotSpin::RimOrFloor);
    }
    let cracks = || {
        piece
            .flaws
            .iter()
            .filter(|f| is_crack(f.note.kind) && !f.gone())
    };
    if cracks().any(|f| f.note.through) {
        return Some(DoNotSpin::Through);
    }
    cracks()
        .any(|f| f.note.station == Some(StationRef::Floor))
        .then_some(DoNotSpin::InFloor)
}

/// What is looked at first in True: every crack that was not cut away, glued or not, then all else that was glued.
#[must_use]
pub fn first_to_look_at(piece: &Piece) -> Vec<&Flaw> {
    let there = || piece.flaws.iter().filter(|f| !f.gone());
    let glued = |f: &&Flaw| {
        f.last_treatment()
            .is_some_and(|(_, t)| t.treatment.is_glue())
    };
    there()
        .filter(|f| is_crack(f.note.kind))
        .chain(there().filter(|f| !is_crack(f.note.kind)).filter(glued))
        .collect()
}

/// When an oval was last measured anywhere.
#[must_use]
pub fn last_oval(piece: &Piece) -> Option<Moment> {
    let at_stations = piece.finish.ovals.values().map(|o| o.at);
    let widest = piece.finish.oval.iter().map(|o| o.at);
    at_stations.chain(widest).max()
}

/// The last readings of the wall by station and position. Once an oval was measured only readings up to then count: later
/// ones are of a piece that is being trued, and half the difference is gone from them already.
fn last_walls(piece: &Piece) -> Vec<&StationReading> {
    let until = last_oval(piece);
    let mut last: Vec<&StationReading> = Vec::new();
    for r in piece.readings_now() {
        if until.is_some_and(|until| r.at > until) || r.reading.station == StationRef::Floor {
            continue;
        }
        let same = |o: &&StationReading| {
            o.reading.station == r.reading.station && o.reading.position == r.reading.position
        };
        last.retain(|o| !same(o));
        last.push(r);
    }
    last
}

/// A wall that is there to be trued.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallThere {
    /// Where round.
    pub position: Clock,
    /// The wall, mm.
    pub mm: f64,
    /// True where it was read dry, so that it shrinks no more; false where it was read before or while it dried.
    pub dry: bool,
}

/// The walls of a station as they were read last before truing, by position. Once it was read dry only those count. Read in
/// Indoors, True or Finish is dry; common practice, no source.
#[must_use]
pub fn walls_there(piece: &Piece, station: u8) -> Vec<WallThere> {
    let mut walls: Vec<WallThere> = last_walls(piece)
        .into_iter()
        .filter(|r| r.reading.station == StationRef::Wall(station))
        .filter_map(|r| {
            let mm = r.reading.wall_mm.as_ref()?.value;
            (mm.is_finite() && mm > 0.0).then_some(WallThere {
                position: r.reading.position,
                mm,
                dry: r.stage >= Stage::Indoors,
            })
        })
        .collect();
    if walls.iter().any(|w| w.dry) {
        walls.retain(|w| w.dry);
    }
    walls.sort_by_key(|w| w.position.hour() % 12);
    walls
}

/// The thinnest wall as it was read last, mm, with its station.
#[must_use]
pub fn wall_to_true(piece: &Piece) -> Option<(StationRef, f64)> {
    last_walls(piece)
        .iter()
        .filter_map(|r| Some((r.reading.station, r.reading.wall_mm.as_ref()?.value)))
        .filter(|(_, mm)| mm.is_finite() && *mm > 0.0)
        .min_by(|a, b| a.1.total_cmp(&b.1))
}

/// Longest less shortest diameter, mm.
#[must_use]
pub fn ovality(oval: &OvalMeasured) -> f64 {
    oval.longest_mm.value - oval.shortest_mm.value
}

/// The most wall that can be left before cleaning up, mm: the wall less half the difference of the two diameters. Below 0
/// where none is left. Common practice, no source.
#[must_use]
pub fn most_left(wall_mm: f64, longest_mm: f64, shortest_mm: f64) -> f64 {
    wall_mm - 0.5 * (longest_mm - shortest_mm)
}

impl SectionMeasured {
    /// Longest and shortest diameter, mm, as far as the readings tell: of distances from the centre mark the sums of two
    /// opposite ones. `None` for no readings, or for one that is no number.
    #[must_use]
    pub fn span_mm(&self) -> Option<(f64, f64)> {
        let widths: Vec<f64> = match self {
            Self::Two {
                longest_mm,
                shortest_mm,
            } => vec![longest_mm.value, shortest_mm.value],
            Self::Round {
                how: RoundHow::Diameters,
                readings,
            } => readings.iter().map(|r| r.mm.value).collect(),
            Self::Round {
                how: RoundHow::FromCentre,
                readings,
            } => {
                let half = readings.len() / 2;
                let there = readings.iter().take(half);
                there
                    .zip(&readings[half..])
                    .map(|(a, b)| a.mm.value + b.mm.value)
                    .collect()
            }
        };
        let all_numbers = widths.iter().all(|w| w.is_finite());
        let most = widths.iter().copied().reduce(f64::max)?;
        let least = widths.iter().copied().reduce(f64::min)?;
        all_numbers.then_some((most, least))
    }
}

/// How a spigot goes into jaws.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fit {
    /// Between the smallest and the largest circle. It fits; whether it holds is not said.
    Fits,
    /// Smaller than the smallest circle.
    TooSmall,
    /// Larger than the largest circle.
    TooLarge,
}

/// Which jaws a spigot was tried against, and how it goes into them.
#[derive(Debug, Clone, PartialEq)]
pub struct SpigotFit {
    /// The jaws; `None` where none were said, or the piece names some that the shop does not list, and 50 mm is assumed.
    pub jaws: Option<Jaws>,
    /// Their smallest circle, mm.
    pub smallest_mm: f64,
    /// How it goes in.
    pub fit: Fit,
}

/// How a round spigot goes into the jaws of the piece; where the piece names none, into the jaws of the shop that come
/// closest; without any, against 50 mm.
#[must_use]
pub fn spigot_fit(piece: &Piece, shop: &Shop, spigot_mm: f64) -> SpigotFit {
    let of = |jaws: &Jaws| SpigotFit {
        jaws: Some(jaws.clone()),
        smallest_mm: jaws.smallest_mm,
        fit: fit(spigot_mm, jaws),
    };
    let named = piece.details.text(DetailField::Jaws).map(str::to_lowercase);
    let mine = named.as_ref().and_then(|name| {
        shop.jaws
            .iter()
            .find(|j| j.id == *name || j.name.to_lowercase() == *name)
    });
    if let Some(mine) = mine {
        return of(mine);
    }
    let off = |j: &Jaws| {
        (j.smallest_mm - spigot_mm)
            .max(spigot_mm - j.largest_mm)
            .max(0.0)
    };
    let nearest = shop
        .jaws
        .iter()
        .filter(|_| named.is_none())
        .min_by(|a, b| off(a).total_cmp(&off(b)));
    match nearest {
        Some(nearest) => of(nearest),
        None => SpigotFit {
            jaws: None,
            smallest_mm: USUAL_JAWS_MM,
            fit: if fits_the_jaws(spigot_mm, USUAL_JAWS_MM) {
                Fit::Fits
            } else {
                Fit::TooSmall
            },
        },
    }
}

fn fit(spigot_mm: f64, jaws: &Jaws) -> Fit {
    if !fits_the_jaws(spigot_mm, jaws.smallest_mm) {
        Fit::TooSmall
    } else if spigot_mm > jaws.largest_mm + 1e-6 {
        Fit::TooLarge
    } else {
        Fit::Fits
    }
}
