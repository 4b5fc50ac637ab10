//! Any fact of the shop.

use evenwall_piece::shop::{
    Bar, ChecklistChange, Climate, Jaws, LoggedAir, LoggedReading, OwnWood, ShopFact,
};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Room;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

use super::{any_of, date, line, moment, number, text};

/// How many kinds [`shop_kind`] tells apart.
pub const SHOP_KINDS: usize = 18;

/// A number for each kind of fact.
pub fn shop_kind(fact: &ShopFact) -> usize {
    match fact {
        ShopFact::Setting { .. } => 0,
        ShopFact::Climate(_) => 1,
        ShopFact::Jaws(_) => 2,
        ShopFact::JawsRemoved(_) => 3,
        ShopFact::Bar(_) => 4,
        ShopFact::BarRemoved(_) => 5,
        ShopFact::Wood(_) => 6,
        ShopFact::WoodRemoved(_) => 7,
        ShopFact::Checklist(ChecklistChange::Worded { .. }) => 8,
        ShopFact::Checklist(ChecklistChange::Hidden { .. }) => 9,
        ShopFact::Checklist(ChecklistChange::Placed { .. }) => 10,
        ShopFact::Checklist(ChecklistChange::Reset { .. }) => 11,
        ShopFact::NewScale { .. } => 12,
        ShopFact::Away { .. } => 13,
        ShopFact::Back => 14,
        ShopFact::Retracts(_) => 15,
        ShopFact::ClimateLog(_) => 16,
        ShopFact::Unknown { .. } => 17,
    }
}

fn wood() -> impl Strategy<Value = OwnWood> {
    let pct = || option::of(number());
    (text(), text(), pct(), pct(), pct(), pct(), any::<bool>()).prop_map(
        |(id, name, radial_pct, tangential_pct, density_kg_m3, green_mc_pct, moulds_easily)| {
            OwnWood {
                id,
                name,
                radial_pct,
                tangential_pct,
                density_kg_m3,
                green_mc_pct,
                moulds_easily,
            }
        },
    )
}

fn checklist() -> impl Strategy<Value = ChecklistChange> {
    prop_oneof![
        (text(), any_of(Stage::ALL), text(), text()).prop_map(|(line, stage, text, why)| {
            ChecklistChange::Worded {
                line,
                stage,
                text,
                why,
            }
        }),
        (text(), any::<bool>()).prop_map(|(line, hidden)| ChecklistChange::Hidden { line, hidden }),
        (text(), any::<i64>()).prop_map(|(line, order)| ChecklistChange::Placed { line, order }),
        text().prop_map(|line| ChecklistChange::Reset { line }),
    ]
}

/// Any fact of the shop.
pub fn shop_facts() -> impl Strategy<Value = ShopFact> {
    prop_oneof![
        (text(), text()).prop_map(|(key, value)| ShopFact::Setting { key, value }),
        (any_of(Room::ALL), number(), number()).prop_map(|(room, temp_c, rh_pct)| {
            ShopFact::Climate(Climate {
                room,
                temp_c,
                rh_pct,
            })
        }),
        (any_of(Room::ALL), vec((moment(), number(), number()), 0..5)).prop_map(
            |(room, readings)| {
                let reading = |(at, temp_c, rh_pct)| LoggedReading { at, temp_c, rh_pct };
                let readings = readings.into_iter().map(reading).collect();
                ShopFact::ClimateLog(LoggedAir { room, readings })
            }
        ),
        (text(), text(), number(), number()).prop_map(|(id, name, smallest_mm, largest_mm)| {
            ShopFact::Jaws(Jaws {
                id,
                name,
                smallest_mm,
                largest_mm,
            })
        }),
        text().prop_map(ShopFact::JawsRemoved),
        (text(), text(), number()).prop_map(|(id, name, diameter_mm)| ShopFact::Bar(Bar {
            id,
            name,
            diameter_mm
        })),
        text().prop_map(ShopFact::BarRemoved),
        wood().prop_map(ShopFact::Wood),
        text().prop_map(ShopFact::WoodRemoved),
        checklist().prop_map(ShopFact::Checklist),
        checklist().prop_map(ShopFact::Checklist),
        number().prop_map(|step_g| ShopFact::NewScale { step_g }),
        date().prop_map(|back_on| ShopFact::Away { back_on }),
        Just(ShopFact::Back),
        line().prop_map(ShopFact::Retracts),
        Just(ShopFact::Unknown {
            kind: "dust".into(),
            raw: r#"{"fact":"dust","level":1.5}"#.into()
        }),
    ]
}
