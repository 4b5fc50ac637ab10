//! Reading: rows become pieces and weights to record, or faults with their line and column. Nothing is recorded here.

use chrono::{NaiveDate, NaiveTime, TimeZone};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, Measure};
use evenwall_piece::mark::{compared, mark_problem};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{LostHow, LostWhere, Method};
use evenwall_records::separated::Row;

use super::Matched;
use super::matching::{Target, name_and_unit};
use crate::app::App;
use crate::details;
use crate::numbers::{Parsed, Quantity, Unit};

/// What is wrong with a row, which is left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The line of the file.
    pub line: u64,
    /// The name of the column; empty where the whole row is at fault.
    pub column: String,
    /// What was found, what is allowed, what to do.
    pub text: String,
}

/// A piece that would come in, or get weights.
#[derive(Debug, Clone, PartialEq)]
pub struct Planned {
    /// Its mark.
    pub mark: String,
    /// The piece of the shelf that gets the weights; `None` for a new one.
    pub existing: Option<evenwall_piece::ids::PieceId>,
    /// The line of the file on which it stands first.
    pub line: u64,
    /// What is known about it.
    pub details: Vec<(DetailField, DetailValue)>,
    /// How it dries.
    pub method: Option<Method>,
    /// The stage it is in.
    pub stage: Option<Stage>,
    /// When it was begun.
    pub begun: Option<Moment>,
    /// Since when it is in its stage.
    pub since: Option<Moment>,
    /// How it ended.
    pub end: Option<End>,
    /// When it ended.
    pub ended: Option<Moment>,
    /// Weights: when, on the scale, and the tare in g.
    pub weights: Vec<(Moment, Measure, f64)>,
    /// Notes.
    pub notes: Vec<String>,
}

/// A cell that cannot be read: its column and a sentence.
type Wrong = (String, String);

fn put<T: PartialEq>(place: &mut Option<T>, new: Option<T>) -> bool {
    match (&*place, new) {
        (_, None) => true,
        (None, Some(new)) => {
            *place = Some(new);
            true
        }
        (Some(old), Some(new)) => *old == new,
    }
}

impl Planned {
    /// Takes in another row of the same mark. False where they disagree; nothing of the row is taken then.
    fn join(&mut self, other: Self) -> bool {
        let mut joined = self.clone();
        for (field, value) in other.details {
            match joined.details.iter().find(|(f, _)| *f == field) {
                Some((_, DetailValue::Length(old))) => {
                    let same = matches!(&value, DetailValue::Length(new) if (new.value - old.value).abs() < 1e-9);
                    if !same {
                        return false;
                    }
                }
                Some((DetailField::Mark, _)) => {}
                Some((_, old)) if *old != value => return false,
                Some(_) => {}
                None => joined.details.push((field, value)),
            }
        }
        let agree = put(&mut joined.method, other.method) && put(&mut joined.begun, other.begun);
        // A later line of a notebook tells the later state.
        joined.stage = other.stage.or(joined.stage);
        joined.since = other.since.or(joined.since);
        joined.end = other.end.or(joined.end);
        joined.ended = other.ended.or(joined.ended);
        if agree {
            joined.weights.extend(other.weights);
            joined.notes.extend(other.notes);
            *self = joined;
        }
        agree
    }
}

impl App {
    /// What would come of the table as it is matched: pieces in the order of the file, and the rows at fault.
    pub(super) fn import_read(&self, matched: &Matched, now: Moment) -> (Vec<Planned>, Vec<Fault>) {
        let mut planned: Vec<Planned> = Vec::new();
        let mut faults = Vec::new();
        for row in &matched.table.rows {
            let read = match self.import_row(matched, row, now) {
                Ok(read) => read,
                Err(wrong) => {
                    faults.extend(wrong.into_iter().map(|(column, text)| Fault {
                        line: row.line,
                        column,
                        text,
                    }));
                    continue;
                }
            };
            let same = planned
                .iter_mut()
                .find(|p| compared(&p.mark) == compared(&read.mark));
            match same {
                None => planned.push(read),
                Some(first) => {
                    let mark = read.mark.clone();
                    if !first.join(read) {
                        faults.push(Fault {
                            line: row.line,
                            column: String::new(),
                            text: self.words().with(
                                "records-import-disagree",
                                &[("mark", mark.into()), ("line", first.line.into())],
                            ),
                        });
                    }
                }
            }
        }
        planned.retain_mut(|p| {
            p.weights.sort_by_key(|w| w.0);
            let Some(piece) = p.existing.as_ref().and_then(|id| self.piece(id)) else {
                return true;
            };
            // What stands on the shelf already is not taken twice.
            p.weights
                .retain(|(at, mass, _)| !weighed_already(piece, *at, mass.value));
            !p.weights.is_empty()
        });
        (planned, faults)
    }

    fn import_row(&self, matched: &Matched, row: &Row, now: Moment) -> Result<Planned, Vec<Wrong>> {
        let mut wrong: Vec<Wrong> = Vec::new();
        let mut piece = Planned {
            mark: String::new(),
            existing: None,
            line: row.line,
            details: Vec::new(),
            method: None,
            stage: None,
            begun: None,
            since: None,
            end: None,
            ended: None,
            weights: Vec::new(),
            notes: Vec::new(),
        };
        let (mut weighed, mut tare) = (None, 0.0);
        let mut weights: Vec<(Option<Moment>, Measure)> = Vec::new();
        for ((name, target), cell) in matched
            .table
            .columns
            .iter()
            .zip(&matched.targets)
            .zip(&row.cells)
        {
            let Some(target) = target else { continue };
            if cell.trim().is_empty() {
                continue;
            }
            let cell = with_unit(cell, name, *target);
            let read = (|| -> Result<(), String> {
                match target {
                    Target::Detail(field) => {
                        if let Some(value) = details::understand(self, *field, &cell, now)? {
                            if let (DetailField::Mark, DetailValue::Text(mark)) = (field, &value) {
                                piece.mark.clone_from(mark);
                            }
                            piece.details.push((*field, value));
                        }
                    }
                    Target::Stage => piece.stage = Some(self.import_stage(&cell)?),
                    Target::Since => piece.since = Some(self.import_moment(&cell, now)?),
                    Target::Method => piece.method = Some(self.import_method(&cell)?),
                    Target::Begun => piece.begun = Some(self.import_moment(&cell, now)?),
                    Target::End => piece.end = Some(self.import_end(&cell)?),
                    Target::Ended => piece.ended = Some(self.import_moment(&cell, now)?),
                    Target::Weight => {
                        weights.push((None, self.import_weight(&cell, Quantity::Weight)?))
                    }
                    Target::Tare => tare = self.import_weight(&cell, Quantity::Tare)?.value,
                    Target::Weighed => weighed = Some(self.import_moment(&cell, now)?),
                    Target::WeightOn(day) => {
                        let at = self.import_moment(&day.to_string(), now)?;
                        weights.push((Some(at), self.import_weight(&cell, Quantity::Weight)?));
                    }
                    Target::Note => piece.notes.push(cell.clone()),
                }
                Ok(())
            })();
            if let Err(text) = read {
                wrong.push((name.clone(), text));
            }
        }
        let at = weighed.or(piece.since).or(piece.begun).unwrap_or(now);
        piece.weights = weights
            .into_iter()
            .map(|(on, mass)| (on.unwrap_or(at), mass, tare))
            .collect();
        if piece.mark.is_empty() && wrong.is_empty() {
            wrong.push((String::new(), self.words().text("records-import-no-mark")));
        }
        let has_it = |p: &&Piece| compared(p.mark()) == compared(&piece.mark);
        let living = self.pieces().find(|p| p.living() && has_it(p));
        // A table of weights is about the pieces that are there, those that ended too; other rows may use their marks anew.
        let ended = || {
            self.pieces()
                .find(has_it)
                .filter(|_| matched.only_weights())
        };
        if let Some(holder) = living.or_else(ended) {
            piece.existing = Some(holder.id.clone());
            // What is known about it is known.
            piece.details.clear();
            (piece.stage, piece.since, piece.method) = (None, None, None);
            (piece.begun, piece.end, piece.ended) = (None, None, None);
            piece.notes.clear();
            if piece.weights.is_empty() && wrong.is_empty() {
                let problem = evenwall_piece::mark::MarkProblem::InUse(holder.id.clone());
                wrong.push((String::new(), self.mark_problem_text(&piece.mark, &problem)));
            }
        } else if let Some(problem) =
            mark_problem(&piece.mark, std::iter::empty::<&Piece>()).filter(|p| !p.only_warns())
            && wrong.is_empty()
        {
            wrong.push((String::new(), self.mark_problem_text(&piece.mark, &problem)));
        }
        if wrong.is_empty() {
            Ok(piece)
        } else {
            Err(wrong)
        }
    }

    fn import_stage(&self, cell: &str) -> Result<Stage, String> {
        let words = self.words();
        let wanted = cell.trim().to_lowercase();
        let name = |s: &Stage| words.text(&format!("stage-{}", s.key()));
        Stage::ALL
            .iter()
            .find(|s| s.key() == wanted || name(s).to_lowercase() == wanted)
            .copied()
            .ok_or_else(|| self.import_none_of(cell, Stage::ALL.iter().map(name).collect()))
    }

    fn import_method(&self, cell: &str) -> Result<Method, String> {
        let words = self.words();
        let wanted = cell.trim().to_lowercase();
        let name = |m: &Method| words.text(&format!("method-{}", m.key()));
        Method::ALL
            .iter()
            .find(|m| m.key() == wanted || name(m).to_lowercase() == wanted)
            .copied()
            .ok_or_else(|| self.import_none_of(cell, Method::ALL.iter().map(name).collect()))
    }

    fn import_end(&self, cell: &str) -> Result<End, String> {
        let lost = End::Lost {
            place: LostWhere::Unknown,
            how: LostHow::Unknown,
            why: Vec::new(),
            note: String::new(),
        };
        let ends = [
            End::Finished,
            lost,
            End::GivenAway,
            End::LeftAsIs,
            End::CantFind,
        ];
        let wanted = cell.trim().to_lowercase().replace(' ', "-");
        let key = crate::whereabouts::end_key;
        ends.iter()
            .find(|e| key(e) == wanted)
            .cloned()
            .ok_or_else(|| {
                let all = ends.iter().map(|e| key(e).replace('-', " ")).collect();
                self.import_none_of(cell, all)
            })
    }

    fn import_none_of(&self, cell: &str, all: Vec<String>) -> String {
        let found: String = cell.chars().take(40).collect();
        self.words().with(
            "records-import-none-of",
            &[("found", found.into()), ("all", all.join(", ").into())],
        )
    }

    fn import_weight(&self, cell: &str, quantity: Quantity) -> Result<Measure, String> {
        let numbers = self.numbers();
        match numbers.parse(quantity, cell) {
            Ok(Parsed::Value(entry)) => Ok(Measure {
                value: entry.value,
                typed: entry.typed,
            }),
            Ok(Parsed::Ask {
                typed,
                readings,
                why,
            }) => Err(format!(
                "{} {}",
                numbers.reason(quantity, &typed, why),
                numbers.question(&readings)
            )),
            Err(error) => Err(error.message(&numbers, quantity)),
        }
    }

    /// A day as written, at noon of this place; today is now. A moment of ISO 8601 stays what it is.
    fn import_moment(&self, cell: &str, now: Moment) -> Result<Moment, String> {
        if let Ok(at) = chrono::DateTime::parse_from_rfc3339(cell.trim()) {
            if at <= now {
                return Ok(at);
            }
            return Err(self
                .words()
                .with("details-day-ahead", &[("found", cell.into())]));
        }
        let day = details::read_day(self, cell, now.date_naive())?;
        let first = day.first().unwrap_or(now.date_naive());
        Ok(if first == now.date_naive() {
            now
        } else {
            noon(first, now)
        })
    }
}

fn noon(day: NaiveDate, now: Moment) -> Moment {
    let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
    // A fixed offset has no gaps: every local time exists once.
    now.timezone()
        .from_local_datetime(&day.and_time(noon))
        .earliest()
        .unwrap_or(now)
}

fn weighed_already(piece: &Piece, at: Moment, mass_g: f64) -> bool {
    piece
        .weighings
        .iter()
        .any(|w| w.at.date_naive() == at.date_naive() && (w.mass_g.value - mass_g).abs() < 1e-6)
}

/// The cell with the unit of its column's name behind a bare number.
fn with_unit(cell: &str, column: &str, target: Target) -> String {
    let cell = cell.trim();
    let bare = cell
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | ' ' | '-'));
    let unit = name_and_unit(column)
        .1
        .filter(|_| bare && target.is_measured());
    let shown = match unit {
        Some(Unit::Millimetre) => "mm",
        Some(Unit::Centimetre) => "cm",
        Some(Unit::Inch) => "in",
        Some(Unit::Gram) => "g",
        Some(Unit::Kilogram) => "kg",
        Some(Unit::Ounce) => "oz",
        Some(Unit::Pound) => "lb",
        _ => return cell.to_owned(),
    };
    format!("{cell} {shown}")
}
