//! Phases: how and where a piece dried, from its stages, its method, the answers given at the bag, and the air of the rooms.

use std::collections::BTreeMap;

use evenwall_piece::bag::{BagAnswer, BagState, rule_with};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::room_weights::room_of;
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::{Method, Room};
use evenwall_wood::drying::case::{PAPER, SHAVINGS, STILL, USUAL_BAG, WAX};
use evenwall_wood::drying::{Climate, ClimateError, Phase, Reading, Way};

use crate::drying::local_days;
use crate::shop::climate::{HOUSE_RH_PCT, HOUSE_TEMP_C};

/// The air of a shop that was never read: temperature in degrees C and humidity in per cent. Own judgement, no source.
pub const SHOP_UNREAD: (f64, f64) = (18.0, 60.0);

/// The air of both rooms on the days of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Rooms {
    /// The shop.
    pub shop: Climate,
    /// The house.
    pub house: Climate,
    /// True where the shop was read.
    pub shop_read: bool,
    /// True where the house was read.
    pub house_read: bool,
}

/// One reading a day: the mean of the day's own. A logger's hours never reach the middle of a wall.
fn by_day(shop: &Shop, room: Room, zero: f64, now: Moment) -> Vec<Reading> {
    let mut days: BTreeMap<i64, (f64, f64, f64, f64)> = BTreeMap::new();
    for (at, c) in shop
        .climate
        .iter()
        .filter(|(at, c)| c.room == room && *at <= now)
    {
        let day = local_days(*at) - zero;
        // Days of a diary are far inside what an integer holds.
        let sum = days.entry(day.floor() as i64).or_default();
        sum.0 += 1.0;
        sum.1 += day;
        sum.2 += c.temp_c;
        sum.3 += 0.01 * c.rh_pct;
    }
    days.into_values()
        .map(|(n, day, temp, rh)| Reading {
            day: day / n,
            temp_c: temp / n,
            rh: rh / n,
        })
        .collect()
}

/// The rooms' air, days counted from `zero` (local days); what was not read is as usual.
///
/// # Errors
/// [`ClimateError`] where a reading is outside what the drying model knows.
pub fn rooms(shop: &Shop, zero: f64, now: Moment) -> Result<Rooms, ClimateError> {
    let room = |room: Room, (temp_c, rh_pct): (f64, f64)| {
        let read = by_day(shop, room, zero, now);
        if read.is_empty() {
            Climate::steady(temp_c, 0.01 * rh_pct).map(|c| (c, false))
        } else {
            Climate::through(read).map(|c| (c, true))
        }
    };
    let house = (HOUSE_TEMP_C, 0.5 * (HOUSE_RH_PCT.0 + HOUSE_RH_PCT.1));
    let (shop_air, shop_read) = room(Room::Shop, SHOP_UNREAD)?;
    let (house_air, house_read) = room(Room::House, house)?;
    Ok(Rooms {
        shop: shop_air,
        house: house_air,
        shop_read,
        house_read,
    })
}

/// Something that changes how a piece dries.
enum Change {
    Stage(Stage),
    Method(Method),
    Bag(BagAnswer, bool),
}

/// How a piece dries in a stage by a method, its bag in this state. An open neck leaves still air round it; own judgement.
fn way(stage: Stage, method: Method, bag: BagState) -> Way {
    if stage.group() != Group::Drying || matches!(stage, Stage::Settle | Stage::Indoors) {
        return Way::Open;
    }
    match (method, stage, bag) {
        (Method::Bag, _, BagState::Closed) => Way::Bag(USUAL_BAG),
        (Method::Bag, ..) | (Method::Cupboard, ..) => Way::Cover(STILL),
        (Method::Paper | Method::Alcohol, ..) => Way::Cover(PAPER),
        (Method::Shavings, ..) => Way::Cover(SHAVINGS),
        (Method::Wax, ..) => Way::Cover(WAX),
        (Method::OnceThin, ..) => Way::Open,
    }
}

/// The phases of a piece up to a moment, days counted from `zero` (local days).
#[must_use]
pub fn phases(piece: &Piece, rooms: &Rooms, zero: f64, now: Moment) -> Vec<Phase> {
    let mut changes: Vec<(Moment, Change)> = Vec::new();
    changes.extend(
        piece
            .visits
            .iter()
            .map(|v| (v.since, Change::Stage(v.stage))),
    );
    for entry in piece.diary.iter().filter(|e| !e.retracted) {
        if let PieceFact::MethodChosen(method) = entry.fact {
            changes.push((entry.at, Change::Method(method)));
        }
    }
    changes.extend(piece.looks.iter().map(|l| {
        let answer = BagAnswer::of_look(l.feel, l.mould);
        (l.at, Change::Bag(answer, l.mould))
    }));
    changes.retain(|(at, _)| *at <= now);
    changes.sort_by_key(|c| c.0);
    let (mut stage, mut method, mut bag) = (Stage::Shape, Method::Bag, BagState::NoBag);
    let mut phases: Vec<Phase> = Vec::new();
    for (at, change) in changes {
        match change {
            Change::Stage(to) => {
                stage = to;
                bag = match to {
                    Stage::Bag => BagState::Closed,
                    Stage::Air => BagState::Airing,
                    _ => BagState::NoBag,
                };
            }
            Change::Method(chosen) => method = chosen,
            Change::Bag(answer, mould) => bag = rule_with(bag, answer, mould).then,
        }
        let way = way(stage, method, bag);
        let climate = match room_of(stage) {
            Room::House => &rooms.house,
            Room::Shop => &rooms.shop,
        };
        if phases
            .last()
            .is_some_and(|p| p.way == way && p.climate == *climate)
        {
            continue;
        }
        phases.push(Phase {
            from_day: local_days(at) - zero,
            way,
            climate: climate.clone(),
        });
    }
    if phases.is_empty() {
        phases.push(Phase {
            from_day: 0.0,
            way: Way::Open,
            climate: rooms.shop.clone(),
        });
    }
    phases
}
