//! Shop facts of version 1, both ways. Frozen.

use evenwall_piece::shop::{
    Bar, ChecklistChange, Climate, Jaws, LoggedAir, LoggedReading, OwnWood, ShopFact,
};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Room;
use serde::{Deserialize, Serialize};

use super::{LineV1, NotUnderstood, Number, day, key, line_id};
use crate::format::Shape;
use crate::line::{moment, written};

fn is_false(value: &bool) -> bool {
    !value
}

/// One fact of the workshop, as [`ShopFact`] of the same name.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "fact", rename_all = "snake_case", deny_unknown_fields)]
#[allow(missing_docs)] // The fields mirror the domain's, which are described there.
pub enum ShopFactV1 {
    Setting {
        key: String,
        value: String,
    },
    Climate {
        room: String,
        temp_c: Number,
        rh_pct: Number,
    },
    /// Each reading as time, temperature in degrees Celsius and humidity in per cent: a year of days stays short.
    ClimateLog {
        room: String,
        readings: Vec<(String, Number, Number)>,
    },
    Jaws {
        id: String,
        name: String,
        smallest_mm: Number,
        largest_mm: Number,
    },
    JawsRemoved {
        id: String,
    },
    Bar {
        id: String,
        name: String,
        diameter_mm: Number,
    },
    BarRemoved {
        id: String,
    },
    Wood {
        id: String,
        name: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        radial_pct: Option<Number>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tangential_pct: Option<Number>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        density_kg_m3: Option<Number>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        green_mc_pct: Option<Number>,
        #[serde(default, skip_serializing_if = "is_false")]
        moulds_easily: bool,
    },
    WoodRemoved {
        id: String,
    },
    ChecklistWorded {
        line: String,
        stage: String,
        text: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        why: String,
    },
    ChecklistHidden {
        line: String,
        hidden: bool,
    },
    ChecklistPlaced {
        line: String,
        order: i64,
    },
    ChecklistReset {
        line: String,
    },
    NewScale {
        step_g: Number,
    },
    Away {
        back_on: String,
    },
    Back {},
    Retracts {
        line: LineV1,
    },
}

use ShopFactV1 as V1;

/// The shape of a fact.
pub(in crate::format) fn write(fact: &ShopFact) -> Shape<'_, V1> {
    let number = |n: &Option<f64>| n.map(Number);
    Shape::Known(match fact {
        ShopFact::Setting { key, value } => V1::Setting {
            key: key.clone(),
            value: value.clone(),
        },
        ShopFact::Climate(Climate {
            room,
            temp_c,
            rh_pct,
        }) => V1::Climate {
            room: room.key().to_owned(),
            temp_c: Number(*temp_c),
            rh_pct: Number(*rh_pct),
        },
        ShopFact::ClimateLog(LoggedAir { room, readings }) => V1::ClimateLog {
            room: room.key().to_owned(),
            readings: readings
                .iter()
                .map(|r| (written(r.at), Number(r.temp_c), Number(r.rh_pct)))
                .collect(),
        },
        ShopFact::Jaws(Jaws {
            id,
            name,
            smallest_mm,
            largest_mm,
        }) => V1::Jaws {
            id: id.clone(),
            name: name.clone(),
            smallest_mm: Number(*smallest_mm),
            largest_mm: Number(*largest_mm),
        },
        ShopFact::JawsRemoved(id) => V1::JawsRemoved { id: id.clone() },
        ShopFact::Bar(Bar {
            id,
            name,
            diameter_mm,
        }) => V1::Bar {
            id: id.clone(),
            name: name.clone(),
            diameter_mm: Number(*diameter_mm),
        },
        ShopFact::BarRemoved(id) => V1::BarRemoved { id: id.clone() },
        ShopFact::Wood(OwnWood {
            id,
            name,
            radial_pct,
            tangential_pct,
            density_kg_m3,
            green_mc_pct,
            moulds_easily,
        }) => V1::Wood {
            id: id.clone(),
            name: name.clone(),
            radial_pct: number(radial_pct),
            tangential_pct: number(tangential_pct),
            density_kg_m3: number(density_kg_m3),
            green_mc_pct: number(green_mc_pct),
            moulds_easily: *moulds_easily,
        },
        ShopFact::WoodRemoved(id) => V1::WoodRemoved { id: id.clone() },
        ShopFact::Checklist(change) => match change.clone() {
            ChecklistChange::Worded {
                line,
                stage,
                text,
                why,
            } => V1::ChecklistWorded {
                line,
                stage: stage.key().to_owned(),
                text,
                why,
            },
            ChecklistChange::Hidden { line, hidden } => V1::ChecklistHidden { line, hidden },
            ChecklistChange::Placed { line, order } => V1::ChecklistPlaced { line, order },
            ChecklistChange::Reset { line } => V1::ChecklistReset { line },
        },
        ShopFact::NewScale { step_g } => V1::NewScale {
            step_g: Number(*step_g),
        },
        ShopFact::Away { back_on } => V1::Away {
            back_on: back_on.to_string(),
        },
        ShopFact::Back => V1::Back {},
        ShopFact::Retracts(line) => V1::Retracts { line: line.into() },
        ShopFact::Unknown { raw, .. } => return Shape::AsFound(raw),
    })
}

/// The fact of a shape.
pub(in crate::format) fn read(v1: V1) -> Result<ShopFact, NotUnderstood> {
    let number = |n: Option<Number>| n.map(|n| n.0);
    Ok(match v1 {
        V1::Setting { key, value } => ShopFact::Setting { key, value },
        V1::Climate {
            room,
            temp_c,
            rh_pct,
        } => ShopFact::Climate(Climate {
            room: key("room", &room, Room::from_key)?,
            temp_c: temp_c.0,
            rh_pct: rh_pct.0,
        }),
        V1::ClimateLog { room, readings } => ShopFact::ClimateLog(LoggedAir {
            room: key("room", &room, Room::from_key)?,
            readings: readings
                .into_iter()
                .map(|(at, temp_c, rh_pct)| {
                    Ok(LoggedReading {
                        at: moment(&at).map_err(NotUnderstood)?,
                        temp_c: temp_c.0,
                        rh_pct: rh_pct.0,
                    })
                })
                .collect::<Result<_, _>>()?,
        }),
        V1::Jaws {
            id,
            name,
            smallest_mm,
            largest_mm,
        } => ShopFact::Jaws(Jaws {
            id,
            name,
            smallest_mm: smallest_mm.0,
            largest_mm: largest_mm.0,
        }),
        V1::JawsRemoved { id } => ShopFact::JawsRemoved(id),
        V1::Bar {
            id,
            name,
            diameter_mm,
        } => ShopFact::Bar(Bar {
            id,
            name,
            diameter_mm: diameter_mm.0,
        }),
        V1::BarRemoved { id } => ShopFact::BarRemoved(id),
        V1::Wood {
            id,
            name,
            radial_pct,
            tangential_pct,
            density_kg_m3,
            green_mc_pct,
            moulds_easily,
        } => ShopFact::Wood(OwnWood {
            id,
            name,
            radial_pct: number(radial_pct),
            tangential_pct: number(tangential_pct),
            density_kg_m3: number(density_kg_m3),
            green_mc_pct: number(green_mc_pct),
            moulds_easily,
        }),
        V1::WoodRemoved { id } => ShopFact::WoodRemoved(id),
        V1::ChecklistWorded {
            line,
            stage,
            text,
            why,
        } => ShopFact::Checklist(ChecklistChange::Worded {
            line,
            stage: key("stage", &stage, Stage::from_key)?,
            text,
            why,
        }),
        V1::ChecklistHidden { line, hidden } => {
            ShopFact::Checklist(ChecklistChange::Hidden { line, hidden })
        }
        V1::ChecklistPlaced { line, order } => {
            ShopFact::Checklist(ChecklistChange::Placed { line, order })
        }
        V1::ChecklistReset { line } => ShopFact::Checklist(ChecklistChange::Reset { line }),
        V1::NewScale { step_g } => ShopFact::NewScale { step_g: step_g.0 },
        V1::Away { back_on } => ShopFact::Away {
            back_on: day(&back_on)?,
        },
        V1::Back {} => ShopFact::Back,
        V1::Retracts { line } => ShopFact::Retracts(line_id(&line.device, line.n)?),
    })
}
