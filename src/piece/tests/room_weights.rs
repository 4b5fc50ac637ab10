//! Weights with the room taken out: a piece at rest in an autumn, a drying one, a move, and rooms nobody reads.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use evenwall_piece::piece::Moment;
use evenwall_piece::room_weights::{air_of, judged, room_of};
use evenwall_piece::shop::{Climate, Shop, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Room;
use evenwall_wood::moisture::settling_moisture;
use evenwall_wood::room_air::LaggedAir;
use evenwall_wood::staying::{Because, Drift, Verdict};

fn air(n: i64, room: Room, rh_pct: f64) -> (Moment, ShopFact) {
    let temp_c = 18.0;
    (
        day(n),
        ShopFact::Climate(Climate {
            room,
            temp_c,
            rh_pct,
        }),
    )
}

/// A shop whose air dries by a point of humidity every three days.
fn drying_shop() -> Shop {
    let reading = |i: i64| air(3 * i - 15, Room::Shop, 75.0 - i as f64);
    shop(&(0..26).map(reading).collect::<Vec<_>>())
}

/// A vessel of 300 g dry with a 10 mm wall in that shop, weighed every four days, that still has `left` of its weight to lose.
fn weighed_in(shop: &Shop, left: f64) -> History {
    let readings: Vec<_> = shop
        .climate
        .iter()
        .map(|(at, c)| {
            let days = at.signed_duration_since(day(0)).num_hours() as f64 / 24.0;
            (days, settling_moisture(c.temp_c, c.rh_pct / 100.0).unwrap())
        })
        .collect();
    let wood = LaggedAir::new(&readings, 3.0).unwrap();
    let mut h = History::since("K07", Stage::Settle, day(-20));
    for i in 0..15 {
        let d = 4.0 * f64::from(i);
        let exact = 300.0 * (1.0 + wood.at(d).unwrap() + left * (-d / 30.0).exp());
        h.weighed(day(4 * i64::from(i)), exact.round());
    }
    h
}

#[test]
fn a_piece_at_rest_in_a_drying_shop_stays_put_and_the_room_is_named() {
    let shop = drying_shop();
    let said = judged(&weighed_in(&shop, 0.0).piece(), &shop, day(57), 10.0);
    assert_eq!(said.plain.verdict, Verdict::Losing);
    let right = said.in_its_air.unwrap();
    assert_eq!(
        (right.staying.verdict, right.left_out),
        (Verdict::Stable, 0)
    );
    assert_eq!(right.weighings.len(), 15);
    assert_eq!(said.drift, Some(Drift::Drier));
}

#[test]
fn a_piece_that_dries_is_losing_with_the_room_taken_out_too() {
    let shop = drying_shop();
    let said = judged(&weighed_in(&shop, 0.03).piece(), &shop, day(57), 10.0);
    assert_eq!(said.in_its_air.unwrap().staying.verdict, Verdict::Losing);
    assert_eq!(said.drift, None);
}

#[test]
fn without_readings_or_with_too_few_there_is_the_plain_verdict_only() {
    let known = drying_shop();
    let piece = weighed_in(&known, 0.0).piece();
    let none = judged(&piece, &Shop::default(), day(57), 10.0);
    assert_eq!(
        (none.plain.verdict, none.in_its_air),
        (Verdict::Losing, None)
    );
    // The house's air says nothing of a piece in the shop, nor does a wall that is none.
    let house = shop(&[air(0, Room::House, 45.0), air(14, Room::House, 45.0)]);
    assert_eq!(judged(&piece, &house, day(57), 10.0).in_its_air, None);
    assert_eq!(judged(&piece, &known, day(57), 0.0).in_its_air, None);
    let early = judged(&piece, &known, day(5), 10.0);
    assert_eq!(
        (early.plain.because, early.in_its_air),
        (Because::TooFewWeighings, None)
    );
    let new = History::new("K08", Stage::Air).piece();
    assert_eq!(judged(&new, &known, day(57), 10.0).plain.weighings, 0);
}

#[test]
fn a_piece_takes_the_air_of_the_room_it_stands_in_and_a_closed_bag_has_its_own() {
    let s = shop(&[
        air(0, Room::Shop, 65.0),
        air(0, Room::House, 45.0),
        air(10, Room::Shop, 65.0),
        air(10, Room::House, 45.0),
    ]);
    let mut h = History::new("K07", Stage::Bag);
    for n in 0..4 {
        h.weighed(day(n), 400.0);
    }
    h.moved(day(5), Stage::Indoors);
    for n in 6..10 {
        h.weighed(day(n), 390.0);
    }
    let piece = h.piece();
    let took = air_of(&piece, &s, day(0), day(20));
    let settles = |rh| settling_moisture(18.0, rh).unwrap();
    assert_eq!(
        took,
        [
            (0.0, settles(0.65)),
            (4.99, settles(0.65)),
            (5.0, settles(0.45)),
            (10.0, settles(0.45))
        ]
    );
    assert_eq!(air_of(&piece, &s, day(0), day(9)).len(), 1);
    assert_eq!(
        judged(&piece, &s, day(20), 10.0)
            .in_its_air
            .unwrap()
            .left_out,
        4
    );
    assert_eq!(
        (room_of(Stage::Indoors), room_of(Stage::Settle)),
        (Room::House, Room::Shop)
    );
}
