//! Truth: weights of a piece that dries just so, made with the drying model from the piece's own walls. Invented.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::vocabulary::{Room, Taken};
use evenwall_wood::drying::{Drier, Tuning, means, ready};

use super::{Loft, noon, weighed};

pub fn mm(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

pub fn wall(station: StationRef, mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::Callipers,
    })
}

/// An ash vessel of 150 x 160 mm, seven stations as thick as given, floor 12 mm.
pub fn vessel(walls: [f64; 7]) -> Vec<PieceFact> {
    let mut facts = vec![
        PieceFact::Detail {
            field: DetailField::Wood,
            value: Some(DetailValue::Text("ash-white".into())),
        },
        mm(DetailField::Diameter, 150.0),
        mm(DetailField::Height, 160.0),
        PieceFact::Stations {
            count: 7,
            depths_mm: vec![8.0, 30.0, 52.0, 74.0, 96.0, 118.0, 140.0],
        },
        wall(StationRef::Floor, 12.0),
    ];
    for (n, mm) in (1..).zip(walls) {
        facts.push(wall(StationRef::Wall(n), mm));
    }
    facts
}

/// Shop and house read once a fortnight, always the same.
pub fn air() -> Vec<(&'static str, ShopFact)> {
    let read = |room, temp_c, rh_pct| {
        ShopFact::Climate(Climate {
            room,
            temp_c,
            rh_pct,
        })
    };
    let days = [
        "2025-11-20",
        "2025-12-03",
        "2025-12-17",
        "2025-12-31",
        "2026-01-14",
        "2026-01-28",
        "2026-02-11",
        "2026-02-25",
        "2026-03-11",
    ];
    days.into_iter()
        .flat_map(|day| {
            [
                (day, read(Room::Shop, 15.0, 62.0)),
                (day, read(Room::House, 20.0, 47.0)),
            ]
        })
        .collect()
}

/// What was true of a piece.
pub struct Truth {
    pub loft: Loft,
    /// Local days since 1970 on which it has settled where it stands, by its slowest wall.
    pub ready: f64,
    /// Its moisture now, fraction.
    pub moisture: f64,
    pub dry_g: f64,
}

/// A loft whose piece has these facts and truly dries with this tuning, weighed on these days to whole `step_g`.
pub fn truth(
    facts: Vec<(Moment, Vec<PieceFact>)>,
    shop: &[(&str, ShopFact)],
    tuning: Tuning,
    weighed_on: &[&str],
    step_g: f64,
) -> Truth {
    let plain = Loft::with(facts.clone(), shop, "{}");
    let now = plain.now;
    let input = plain.app.forecast_input(plain.piece(), now).unwrap();
    // Every wall by itself: the truth is richer than what is fitted.
    let case = evenwall_wood::drying::Case {
        walls: input.shape.walls.clone(),
        ..input.case.clone()
    };
    let dry_g = 1.04 * case.dry_mass_g();
    let local = |at: Moment| at.naive_local().and_utc().timestamp() as f64 / 86_400.0;
    let days: Vec<f64> = weighed_on
        .iter()
        .map(|d| local(noon(d)) - input.zero)
        .collect();
    let run = |days: &[f64]| means(&case, tuning, input.began, input.green, days).unwrap();
    let mut all = facts;
    for (day, m) in weighed_on.iter().zip(run(&days)) {
        let g = step_g * (dry_g * (1.0 + m) / step_g).round();
        all.push((noon(day), vec![weighed(g)]));
    }
    let mut drier = Drier::new(&case, tuning, input.began, input.green).unwrap();
    let last = case.phases.iter().map(|p| p.from_day);
    let last = last.fold(0.0, f64::max);
    while drier.day() < last {
        drier.step().unwrap();
    }
    let settled = ready(&mut drier, 900.0).unwrap().slowest_day.unwrap();
    let moisture = run(&[input.today])[0];
    let mut loft = Loft::with(all, shop, "{}");
    loft.settle();
    Truth {
        loft,
        ready: input.zero + settled,
        moisture,
        dry_g,
    }
}
