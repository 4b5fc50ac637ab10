//! Plan: the very lines that an import records, kept beside the device's settings until the next one.

use chrono::DateTime;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_shelf::format;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::reading::Planned;
use crate::app::{App, AppError};

/// The name of the file that holds it.
pub(super) const FILE: &str = "import.json";

/// One line to record.
#[derive(Debug, Clone, PartialEq)]
pub struct PlannedLine {
    /// The piece.
    pub piece: PieceId,
    /// When it happened.
    pub at: Moment,
    /// What happened.
    pub facts: Vec<PieceFact>,
}

/// All lines of an import.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// The import's own name.
    pub id: String,
    /// How many pieces come in.
    pub pieces: usize,
    /// The lines in the order in which they are recorded.
    pub lines: Vec<PlannedLine>,
}

#[derive(Serialize, Deserialize)]
struct Kept {
    id: String,
    pieces: usize,
    lines: Vec<KeptLine>,
}

#[derive(Serialize, Deserialize)]
struct KeptLine {
    piece: String,
    at: String,
    facts: Vec<Box<RawValue>>,
}

impl Plan {
    /// The plan as it is kept.
    ///
    /// # Errors
    /// A sentence where a fact holds a number that is none.
    pub(super) fn to_json(&self) -> Result<Vec<u8>, String> {
        let mut lines = Vec::with_capacity(self.lines.len());
        for line in &self.lines {
            let facts: Result<Vec<_>, _> = line.facts.iter().map(format::write).collect();
            lines.push(KeptLine {
                piece: line.piece.to_string(),
                at: line.at.to_rfc3339(),
                facts: facts.map_err(|e| e.to_string())?,
            });
        }
        let kept = Kept {
            id: self.id.clone(),
            pieces: self.pieces,
            lines,
        };
        serde_json::to_vec(&kept).map_err(|e| e.to_string())
    }

    /// The plan that was kept; `None` where it cannot be read.
    pub(super) fn from_json(bytes: &[u8]) -> Option<Self> {
        let kept: Kept = serde_json::from_slice(bytes).ok()?;
        let line = |line: KeptLine| {
            let mut rest = Vec::new();
            Some(PlannedLine {
                piece: PieceId::new(&line.piece).ok()?,
                at: DateTime::parse_from_rfc3339(&line.at).ok()?,
                facts: line
                    .facts
                    .iter()
                    .map(|raw| format::read(raw.get(), &mut rest))
                    .collect(),
            })
        };
        Some(Self {
            id: kept.id,
            pieces: kept.pieces,
            lines: kept.lines.into_iter().map(line).collect::<Option<_>>()?,
        })
    }
}

impl App {
    /// The lines that record these pieces and weights, with ids of their own.
    pub(super) fn import_plan(
        &mut self,
        planned: &[Planned],
        now: Moment,
    ) -> Result<Plan, AppError> {
        let id = self.new_slug("import");
        let mut lines = Vec::new();
        let mut pieces = 0;
        for piece in planned {
            let mut own = Vec::new();
            let piece_id = match &piece.existing {
                Some(id) => id.clone(),
                None => {
                    pieces += 1;
                    let slug = self.new_slug(&piece.mark);
                    let id = PieceId::new(&slug).map_err(|e| AppError::Refused(e.to_string()))?;
                    own.extend(lines_of_new(piece, &id, now));
                    id
                }
            };
            for (at, mass_g, tare_g) in &piece.weights {
                own.push(PlannedLine {
                    piece: piece_id.clone(),
                    at: *at,
                    facts: vec![PieceFact::Weighed {
                        mass_g: mass_g.clone(),
                        tare_g: *tare_g,
                    }],
                });
            }
            if let (None, Some(end)) = (&piece.existing, &piece.end) {
                own.push(PlannedLine {
                    piece: piece_id,
                    at: piece.ended.unwrap_or(now),
                    facts: vec![PieceFact::Ended(end.clone())],
                });
            }
            // As they happened, so that each weight belongs to the stage of its day; the making comes first in any case.
            let made = usize::from(piece.existing.is_none());
            own[made..].sort_by_key(|l| l.at);
            lines.extend(own);
        }
        Ok(Plan { id, pieces, lines })
    }
}

/// The lines that make a piece: what is known in one, its stage in a second where it came into it on another day.
fn lines_of_new(piece: &Planned, id: &PieceId, now: Moment) -> Vec<PlannedLine> {
    let first_weight = piece.weights.first().map(|w| w.0);
    let begun = piece
        .begun
        .or(piece.since.min(first_weight))
        .or(piece.since)
        .or(first_weight)
        .unwrap_or(now);
    let mark = PieceFact::Detail {
        field: DetailField::Mark,
        value: Some(DetailValue::Text(piece.mark.clone())),
    };
    let mut facts = vec![PieceFact::Created, mark];
    for (field, value) in piece
        .details
        .iter()
        .filter(|(f, _)| *f != DetailField::Mark)
    {
        facts.push(PieceFact::Detail {
            field: *field,
            value: Some(value.clone()),
        });
    }
    facts.extend(piece.method.map(PieceFact::MethodChosen));
    facts.extend(piece.notes.iter().cloned().map(PieceFact::Note));
    let moved = piece.stage.map(PieceFact::StageMoved);
    let line = |at: Moment, facts| PlannedLine {
        piece: id.clone(),
        at,
        facts,
    };
    match (moved, piece.since) {
        (Some(moved), Some(since)) if since != begun => {
            vec![line(begun, facts), line(since, vec![moved])]
        }
        (moved, _) => {
            facts.extend(moved);
            vec![line(begun, facts)]
        }
    }
}
