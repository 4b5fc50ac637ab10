//! Piece facts from version 1. Frozen.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, End, FlawNote, FlawTreated, ForecastMade, PieceFact, Reading, RoundReading,
};
use evenwall_piece::ids::EntryId;
use evenwall_piece::photo::{PhotoMarks, PhotoNote};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{
    BagFeel, CrackAnswer, Face, FlawChange, FlawKind, LostHow, LostWhere, LostWhy, MassChange,
    Method, RoundHow, Taken, Treatment, TrueDecision, WallFeel,
};

use super::photo;
use super::piece::PieceFactV1 as V1;
use super::{NotUnderstood, day, flaw_id, key, key_if, line_id, measure, measure_if, not};
use crate::line::moment;

/// The fact of a shape. Fields of a newer version in the fact of a correction go to `rest`.
pub fn fact(v1: V1, rest: &mut Vec<PieceFact>) -> Result<PieceFact, NotUnderstood> {
    Ok(match v1 {
        V1::Created {} => PieceFact::Created,
        V1::Detail {
            field,
            length_mm,
            length_typed,
            text,
        } => PieceFact::Detail {
            field: key("detail", &field, DetailField::from_key)?,
            value: match (measure_if(length_mm, length_typed)?, text) {
                (None, None) => None,
                (Some(length), None) => Some(DetailValue::Length(length)),
                (None, Some(text)) => Some(DetailValue::Text(text)),
                (Some(_), Some(text)) => return Err(not("text beside a length", &text)),
            },
        },
        V1::StageMoved { stage } => PieceFact::StageMoved(key("stage", &stage, Stage::from_key)?),
        V1::MethodChosen { method } => {
            PieceFact::MethodChosen(key("method", &method, Method::from_key)?)
        }
        V1::HalfTurned {} => PieceFact::HalfTurned,
        V1::Resumed {} => PieceFact::Resumed,
        V1::Paused { until } => PieceFact::Paused {
            until: until.as_deref().map(day).transpose()?,
        },
        V1::Unpaused {} => PieceFact::Unpaused,
        V1::Ticked { line, text, on } => PieceFact::Ticked { line, text, on },
        V1::Stations { count, depths_mm } => PieceFact::Stations {
            count,
            depths_mm: depths_mm.into_iter().map(|d| d.0).collect(),
        },
        V1::Reading {
            station,
            clock,
            wall_mm,
            wall_typed,
            feel,
            taken,
        } => PieceFact::Reading(Reading {
            station: station.into(),
            position: hour(clock)?,
            wall_mm: measure_if(wall_mm, wall_typed)?,
            feel: key_if("feel", feel, WallFeel::from_key)?,
            taken: key("way of measuring", &taken, Taken::from_key)?,
        }),
        V1::OutsideDiameter {
            station,
            diameter_mm,
            diameter_typed,
        } => PieceFact::OutsideDiameter {
            station,
            diameter_mm: measure_if(diameter_mm, diameter_typed)?,
        },
        V1::FlawFound {
            flaw,
            kind,
            station,
            clock,
            size_mm,
            size_typed,
            through,
            note,
        } => PieceFact::FlawFound(FlawNote {
            flaw: flaw_id(&flaw)?,
            kind: key("kind of flaw", &kind, FlawKind::from_key)?,
            station: station.map(Into::into),
            clock: clock.map(hour).transpose()?,
            size_mm: measure_if(size_mm, size_typed)?,
            through,
            note,
        }),
        V1::FlawTreated {
            flaw,
            treatment,
            face,
            goes,
            look_again,
        } => PieceFact::FlawTreated(FlawTreated {
            flaw: flaw_id(&flaw)?,
            treatment: key("treatment", &treatment, Treatment::from_key)?,
            face: key_if("face", face, Face::from_key)?,
            goes,
            look_again: look_again.as_deref().map(day).transpose()?,
        }),
        V1::FlawLooked {
            flaw,
            change,
            size_mm,
            size_typed,
            look_again,
        } => PieceFact::FlawLooked {
            look_again: look_again.as_deref().map(day).transpose()?,
            flaw: flaw_id(&flaw)?,
            change: key("change of a flaw", &change, FlawChange::from_key)?,
            size_mm: measure_if(size_mm, size_typed)?,
        },
        V1::Look { feel, mould, crack } => PieceFact::Look {
            feel: key_if("feel of a bag", feel, BagFeel::from_key)?,
            mould,
            crack,
        },
        V1::NotFound {} => PieceFact::NotFound,
        V1::Weighed {
            mass_g,
            mass_typed,
            tare_g,
        } => PieceFact::Weighed {
            mass_g: measure(mass_g, mass_typed),
            tare_g: tare_g.0,
        },
        V1::MassChanged { change } => {
            PieceFact::MassChanged(key("change of mass", &change, MassChange::from_key)?)
        }
        V1::ForecastMade {
            into_house,
            to_finish,
            weighings,
        } => {
            let days = |range: Option<[String; 2]>| {
                range
                    .map(|[from, to]| Ok::<_, NotUnderstood>((day(&from)?, day(&to)?)))
                    .transpose()
            };
            PieceFact::ForecastMade(ForecastMade {
                into_house: days(into_house)?,
                to_finish: days(to_finish)?,
                weighings,
            })
        }
        V1::Cracks { answer } => {
            PieceFact::Cracks(key("answer about cracks", &answer, CrackAnswer::from_key)?)
        }
        V1::Oval {
            longest_mm,
            longest_typed,
            shortest_mm,
            shortest_typed,
        } => PieceFact::Oval {
            longest_mm: measure(longest_mm, longest_typed),
            shortest_mm: measure(shortest_mm, shortest_typed),
        },
        V1::OvalAt {
            station,
            longest_mm,
            longest_typed,
            shortest_mm,
            shortest_typed,
        } => PieceFact::OvalAt {
            station,
            longest_mm: measure(longest_mm, longest_typed),
            shortest_mm: measure(shortest_mm, shortest_typed),
        },
        V1::OvalRound {
            station,
            how,
            readings,
        } => PieceFact::OvalRound {
            station,
            how: key("way of measuring round", &how, RoundHow::from_key)?,
            readings: readings
                .into_iter()
                .map(|r| RoundReading {
                    turn_deg: r.turn_deg.0,
                    mm: measure(r.mm, r.typed),
                })
                .collect(),
        },
        V1::SpigotTrued {
            diameter_mm,
            diameter_typed,
        } => PieceFact::SpigotTrued(measure(diameter_mm, diameter_typed)),
        V1::TrueDecided { decision, reason } => PieceFact::TrueDecided {
            decision: key("decision", &decision, TrueDecision::from_key)?,
            reason,
        },
        V1::Grits { text } => PieceFact::Grits(text),
        V1::Coat { text } => PieceFact::Coat(text),
        V1::Signed { text } => PieceFact::Signed(text),
        V1::Note { text } => PieceFact::Note(text),
        V1::PhotoAdded {
            photo,
            stored,
            source,
            taken,
            width_px,
            height_px,
            on,
        } => PieceFact::PhotoAdded(PhotoNote {
            photo: photo::photo_id(&photo)?,
            stored: photo::hash(&stored)?,
            source: photo::hash(&source)?,
            taken: taken.as_deref().map(photo::read_taken).transpose()?,
            width_px,
            height_px,
            on: photo::read_on(on)?,
        }),
        V1::PhotoRemoved { photo } => PieceFact::PhotoRemoved(photo::photo_id(&photo)?),
        V1::PhotoBack { photo } => PieceFact::PhotoBack(photo::photo_id(&photo)?),
        V1::PhotoMarked {
            photo,
            spot,
            scale,
            crack,
        } => PieceFact::PhotoMarked(PhotoMarks {
            photo: photo::photo_id(&photo)?,
            spot: spot.map(Into::into),
            scale: scale.map(Into::into),
            crack: crack.map(Into::into),
        }),
        V1::Ended {
            end,
            place,
            how,
            why,
            note,
        } => PieceFact::Ended(read_end(&end, place, how, &why, note)?),
        V1::PutBack {} => PieceFact::PutBack,
        V1::Deleted {} => PieceFact::Deleted,
        V1::Undeleted {} => PieceFact::Undeleted,
        V1::Amends { entry, at, amended } => PieceFact::Amends {
            entry: EntryId {
                line: line_id(&entry.device, entry.n)?,
                part: entry.part,
            },
            at: at
                .as_deref()
                .map(moment)
                .transpose()
                .map_err(NotUnderstood)?,
            fact: amended.map(|value| Box::new(super::super::read(&value.to_string(), rest))),
        },
        V1::Retracts { line } => PieceFact::Retracts(line_id(&line.device, line.n)?),
    })
}

fn hour(hour: u8) -> Result<Clock, NotUnderstood> {
    Clock::new(hour).ok_or_else(|| not("hour of 1 to 12", &hour.to_string()))
}

fn read_end(
    end: &str,
    place: Option<String>,
    how: Option<String>,
    why: &[String],
    note: String,
) -> Result<End, NotUnderstood> {
    if end == "lost" {
        let why: Result<_, _> = why
            .iter()
            .map(|w| key("guess why", w, LostWhy::from_key))
            .collect();
        return Ok(End::Lost {
            place: key_if("place", place, LostWhere::from_key)?.unwrap_or(LostWhere::Unknown),
            how: key_if("way of losing", how, LostHow::from_key)?.unwrap_or(LostHow::Unknown),
            why: why?,
            note,
        });
    }
    if place.is_some() || how.is_some() || !why.is_empty() || !note.is_empty() {
        return Err(not("end with circumstances", end));
    }
    match end {
        "finished" => Ok(End::Finished),
        "given-away" => Ok(End::GivenAway),
        "left-as-is" => Ok(End::LeftAsIs),
        "cant-find" => Ok(End::CantFind),
        _ => Err(not("end", end)),
    }
}
