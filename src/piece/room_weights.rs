//! Room weights: a piece's weights judged by their slope, plain and with the room's own changes taken out.
//!
//! The numbers are those of [`evenwall_wood::staying`] and [`evenwall_wood::room_air`]. A workshop that logs no air gets the plain
//! verdict only, and the trade's plain rule ([`crate::weights::staying_put`]) serves it better.

use evenwall_wood::moisture::settling_moisture;
use evenwall_wood::room_air::{LaggedAir, SetRight, lag_days};
use evenwall_wood::staying::{Drift, Staying, drift, staying};

use crate::piece::{Moment, Piece, StageVisit};
use crate::shop::Shop;
use crate::stage::Stage;
use crate::vocabulary::Room;
use crate::weights::run_at;

/// Weighings whose air must be known before a verdict on them is given.
const LEAST_IN_KNOWN_AIR: usize = 3;

/// What carrying a piece from one room to the other takes, days.
const A_MOVE_DAYS: f64 = 0.01;

/// Verdict on weights set right for the room.
#[derive(Debug, Clone, PartialEq)]
pub struct InItsAir {
    /// The verdict.
    pub staying: Staying,
    /// The weights as they would have been in unchanging air: (days since the first weighing of the run, g).
    pub weighings: Vec<(f64, f64)>,
    /// Weighings of the run for whose days the air is not known, or that were made in a closed bag, which has its own air.
    pub left_out: usize,
}

/// What the slope says of a piece's weights.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// Verdict on the weights as they are.
    pub plain: Staying,
    /// Verdict with the room taken out; `None` where the air of fewer than three weighings is known.
    pub in_its_air: Option<InItsAir>,
    /// The room's drift, where only the room moves.
    pub drift: Option<Drift>,
}

/// The room in which a piece stands in a stage: indoors is the heated house, everything else the shop.
#[must_use]
pub fn room_of(stage: Stage) -> Room {
    match stage {
        Stage::Indoors => Room::House,
        Stage::Shape
        | Stage::Hollow
        | Stage::Stabilise
        | Stage::Bag
        | Stage::Air
        | Stage::Settle
        | Stage::True
        | Stage::Finish => Room::Shop,
    }
}

/// The stage of a piece at a moment; the first stage before all of them.
fn stage_at(piece: &Piece, at: Moment) -> Stage {
    let begun = piece.visits.iter().rev().find(|v| v.since <= at);
    begun
        .or(piece.visits.first())
        .map_or(Stage::Shape, |v| v.stage)
}

/// Days from one moment to another.
fn days(from: Moment, to: Moment) -> f64 {
    to.signed_duration_since(from).num_seconds() as f64 / 86_400.0 // exact far beyond any diary
}

/// The settling moistures of the air a piece stood in, as (days since `zero`, fraction of the dry weight): the readings of the
/// shop while it stood there, of the house while it stood there, none dated after `now`. On the day of a move the last reading
/// of the old room and the first of the new one meet: the air jumps, it does not glide from one to the other.
#[must_use]
pub fn air_of(piece: &Piece, shop: &Shop, zero: Moment, now: Moment) -> Vec<(f64, f64)> {
    let readings = shop.climate.iter().filter_map(|(at, c)| {
        let there = *at <= now && room_of(stage_at(piece, *at)) == c.room;
        let settles = settling_moisture(c.temp_c, c.rh_pct / 100.0).ok()?;
        there.then_some((*at, c.room, settles))
    });
    let mut air: Vec<(f64, f64)> = Vec::new();
    let mut before: Option<(Moment, Room, f64)> = None;
    for reading in readings {
        let (at, room, settles) = reading;
        if let Some((last_at, last_room, last)) = before
            && last_room != room
        {
            let came = |v: &&StageVisit| room_of(v.stage) == room && v.since > last_at;
            if let Some(moved) = piece.visits.iter().find(came) {
                let day = days(zero, moved.since);
                air.push((day - A_MOVE_DAYS, last));
                air.push((day, settles));
            }
        }
        air.push((days(zero, at), settles));
        before = Some(reading);
    }
    air
}

/// Judges the run of weights in force at a moment, for a piece whose wall is about `wall_mm` thick (the thicker the slower it
/// follows the air; a wall outside the range of the lag gets the plain verdict only).
#[must_use]
pub fn judged(piece: &Piece, shop: &Shop, now: Moment, wall_mm: f64) -> Judged {
    let run = run_at(piece, shop, now);
    let Some(zero) = run.weighings.first().map(|w| w.at) else {
        return Judged {
            plain: staying(&[], run.step_g),
            in_its_air: None,
            drift: None,
        };
    };
    let all: Vec<(f64, f64)> = run
        .weighings
        .iter()
        .map(|w| (days(zero, w.at), w.net_g()))
        .collect();
    let open: Vec<(f64, f64)> = run
        .weighings
        .iter()
        .zip(&all)
        .filter(|(w, _)| w.stage != Stage::Bag)
        .map(|(_, dated)| *dated)
        .collect();
    let plain = staying(&all, run.step_g);
    let in_its_air = lag_days(wall_mm)
        .ok()
        .and_then(|lag| LaggedAir::new(&air_of(piece, shop, zero, now), lag))
        .map(|air| air.set_right(&open, run.step_g))
        .filter(|right: &SetRight| right.weighings.len() >= LEAST_IN_KNOWN_AIR)
        .map(|right| InItsAir {
            staying: staying(&right.weighings, right.scale_step_g),
            left_out: all.len() - right.weighings.len(),
            weighings: right.weighings,
        });
    let drift = in_its_air.as_ref().and_then(|i| drift(&plain, &i.staying));
    Judged {
        plain,
        in_its_air,
        drift,
    }
}
