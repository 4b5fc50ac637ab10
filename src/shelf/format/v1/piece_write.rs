//! Piece facts into version 1. Frozen.

use evenwall_piece::detail::DetailValue;
use evenwall_piece::fact::{End, FlawNote, FlawTreated, PieceFact, Reading, RoundReading};
use serde_json::Value;

use super::photo;
use super::piece::{PieceFactV1 as V1, RoundReadingV1};
use super::{Number, StationV1, parts, parts_if};
use crate::format::{NotUnderstood, Shape};
use crate::line::written;

/// The shape of a fact.
pub fn fact(fact: &PieceFact) -> Result<Shape<'_, V1>, NotUnderstood> {
    Ok(Shape::Known(match fact {
        PieceFact::Created => V1::Created {},
        PieceFact::Detail { field, value } => {
            let field = field.key().to_owned();
            match value {
                None => V1::Detail {
                    field,
                    length_mm: None,
                    length_typed: String::new(),
                    text: None,
                },
                Some(DetailValue::Text(text)) => V1::Detail {
                    field,
                    length_mm: None,
                    length_typed: String::new(),
                    text: Some(text.clone()),
                },
                Some(DetailValue::Length(measure)) => {
                    let (length_mm, length_typed) = parts_if(Some(measure));
                    V1::Detail {
                        field,
                        length_mm,
                        length_typed,
                        text: None,
                    }
                }
            }
        }
        PieceFact::StageMoved(stage) => V1::StageMoved {
            stage: stage.key().to_owned(),
        },
        PieceFact::MethodChosen(method) => V1::MethodChosen {
            method: method.key().to_owned(),
        },
        PieceFact::HalfTurned => V1::HalfTurned {},
        PieceFact::Resumed => V1::Resumed {},
        PieceFact::Paused { until } => V1::Paused {
            until: until.map(|day| day.to_string()),
        },
        PieceFact::Unpaused => V1::Unpaused {},
        PieceFact::Ticked { line, text, on } => V1::Ticked {
            line: line.clone(),
            text: text.clone(),
            on: *on,
        },
        PieceFact::Stations { count, depths_mm } => V1::Stations {
            count: *count,
            depths_mm: depths_mm.iter().copied().map(Number).collect(),
        },
        PieceFact::Reading(reading) => write_reading(reading),
        PieceFact::OutsideDiameter {
            station,
            diameter_mm,
        } => {
            let (diameter_mm, diameter_typed) = parts_if(diameter_mm.as_ref());
            V1::OutsideDiameter {
                station: *station,
                diameter_mm,
                diameter_typed,
            }
        }
        PieceFact::FlawFound(note) => write_flaw(note),
        PieceFact::FlawTreated(treated) => write_treated(treated),
        PieceFact::FlawLooked {
            flaw,
            change,
            size_mm,
            look_again,
        } => {
            let (size_mm, size_typed) = parts_if(size_mm.as_ref());
            V1::FlawLooked {
                look_again: look_again.map(|d| d.to_string()),
                flaw: flaw.to_string(),
                change: change.key().to_owned(),
                size_mm,
                size_typed,
            }
        }
        PieceFact::Look { feel, mould, crack } => V1::Look {
            feel: feel.map(|f| f.key().to_owned()),
            mould: *mould,
            crack: *crack,
        },
        PieceFact::NotFound => V1::NotFound {},
        PieceFact::Weighed { mass_g, tare_g } => {
            let (mass_g, mass_typed) = parts(mass_g);
            V1::Weighed {
                mass_g,
                mass_typed,
                tare_g: Number(*tare_g),
            }
        }
        PieceFact::MassChanged(change) => V1::MassChanged {
            change: change.key().to_owned(),
        },
        PieceFact::ForecastMade(made) => {
            let days = |(from, to): (chrono::NaiveDate, chrono::NaiveDate)| {
                [from.to_string(), to.to_string()]
            };
            V1::ForecastMade {
                into_house: made.into_house.map(days),
                to_finish: made.to_finish.map(days),
                weighings: made.weighings,
            }
        }
        PieceFact::Cracks(answer) => V1::Cracks {
            answer: answer.key().to_owned(),
        },
        PieceFact::Oval {
            longest_mm,
            shortest_mm,
        } => {
            let (longest_mm, longest_typed) = parts(longest_mm);
            let (shortest_mm, shortest_typed) = parts(shortest_mm);
            V1::Oval {
                longest_mm,
                longest_typed,
                shortest_mm,
                shortest_typed,
            }
        }
        PieceFact::OvalAt {
            station,
            longest_mm,
            shortest_mm,
        } => {
            let (longest_mm, longest_typed) = parts(longest_mm);
            let (shortest_mm, shortest_typed) = parts(shortest_mm);
            V1::OvalAt {
                station: *station,
                longest_mm,
                longest_typed,
                shortest_mm,
                shortest_typed,
            }
        }
        PieceFact::OvalRound {
            station,
            how,
            readings,
        } => V1::OvalRound {
            station: *station,
            how: how.key().to_owned(),
            readings: readings.iter().map(write_round).collect(),
        },
        PieceFact::SpigotTrued(measure) => {
            let (diameter_mm, diameter_typed) = parts(measure);
            V1::SpigotTrued {
                diameter_mm,
                diameter_typed,
            }
        }
        PieceFact::TrueDecided { decision, reason } => V1::TrueDecided {
            decision: decision.key().to_owned(),
            reason: reason.clone(),
        },
        PieceFact::Grits(text) => V1::Grits { text: text.clone() },
        PieceFact::Coat(text) => V1::Coat { text: text.clone() },
        PieceFact::Signed(text) => V1::Signed { text: text.clone() },
        PieceFact::Note(text) => V1::Note { text: text.clone() },
        PieceFact::PhotoAdded(note) => V1::PhotoAdded {
            photo: note.photo.to_string(),
            stored: note.stored.to_string(),
            source: note.source.to_string(),
            taken: note.taken.map(photo::write_taken),
            width_px: note.width_px,
            height_px: note.height_px,
            on: (&note.on).into(),
        },
        PieceFact::PhotoRemoved(photo) => V1::PhotoRemoved {
            photo: photo.to_string(),
        },
        PieceFact::PhotoBack(photo) => V1::PhotoBack {
            photo: photo.to_string(),
        },
        PieceFact::PhotoMarked(marks) => V1::PhotoMarked {
            photo: marks.photo.to_string(),
            spot: marks.spot.map(Into::into),
            scale: marks.scale.as_ref().map(Into::into),
            crack: marks.crack.map(Into::into),
        },
        PieceFact::Ended(end) => write_end(end),
        PieceFact::PutBack => V1::PutBack {},
        PieceFact::Deleted => V1::Deleted {},
        PieceFact::Undeleted => V1::Undeleted {},
        PieceFact::Amends { entry, at, fact } => V1::Amends {
            entry: entry.into(),
            at: at.map(written),
            amended: fact.as_deref().map(amended).transpose()?,
        },
        PieceFact::Retracts(line) => V1::Retracts { line: line.into() },
        PieceFact::Unknown { raw, .. } => return Ok(Shape::AsFound(raw)),
    }))
}

/// The shape of the fact inside a correction.
fn amended(inner: &PieceFact) -> Result<Value, NotUnderstood> {
    match fact(inner)? {
        Shape::Known(v1) => serde_json::to_value(v1),
        Shape::AsFound(raw) => serde_json::from_str(raw),
    }
    .map_err(|e| NotUnderstood(e.to_string()))
}

fn write_reading(reading: &Reading) -> V1 {
    let (wall_mm, wall_typed) = parts_if(reading.wall_mm.as_ref());
    V1::Reading {
        station: reading.station.into(),
        clock: reading.position.hour(),
        wall_mm,
        wall_typed,
        feel: reading.feel.map(|f| f.key().to_owned()),
        taken: reading.taken.key().to_owned(),
    }
}

fn write_round(reading: &RoundReading) -> RoundReadingV1 {
    let (mm, typed) = parts(&reading.mm);
    RoundReadingV1 {
        turn_deg: Number(reading.turn_deg),
        mm,
        typed,
    }
}

fn write_flaw(note: &FlawNote) -> V1 {
    let (size_mm, size_typed) = parts_if(note.size_mm.as_ref());
    V1::FlawFound {
        flaw: note.flaw.to_string(),
        kind: note.kind.key().to_owned(),
        station: note.station.map(StationV1::from),
        clock: note.clock.map(|c| c.hour()),
        size_mm,
        size_typed,
        through: note.through,
        note: note.note.clone(),
    }
}

fn write_treated(treated: &FlawTreated) -> V1 {
    V1::FlawTreated {
        flaw: treated.flaw.to_string(),
        treatment: treated.treatment.key().to_owned(),
        face: treated.face.map(|f| f.key().to_owned()),
        goes: treated.goes,
        look_again: treated.look_again.map(|day| day.to_string()),
    }
}

fn write_end(end: &End) -> V1 {
    let plain = |end: &str| V1::Ended {
        end: end.to_owned(),
        place: None,
        how: None,
        why: Vec::new(),
        note: String::new(),
    };
    match end {
        End::Finished => plain("finished"),
        End::GivenAway => plain("given-away"),
        End::LeftAsIs => plain("left-as-is"),
        End::CantFind => plain("cant-find"),
        End::Lost {
            place,
            how,
            why,
            note,
        } => V1::Ended {
            end: "lost".to_owned(),
            place: Some(place.key().to_owned()),
            how: Some(how.key().to_owned()),
            why: why.iter().map(|w| w.key().to_owned()).collect(),
            note: note.clone(),
        },
    }
}
