//! Fold: from the lines of a diary to the state of the piece.
//!
//! The order is `(seq, device, n)` and never a clock; what is shown by time is sorted by `at` afterwards. The fold is
//! total: any set of lines, in any order, with any duplicates, gives a state.
//!
//! What meets what:
//!
//! | case | rule |
//! |---|---|
//! | two corrections of one entry | the later in fold order shows, the earlier stays visible in the entry's history |
//! | correction of an entry that was taken back | kept; it shows when the entry is brought back |
//! | taking back a line twice (two devices) | taken back once; bringing it back needs both retractions taken back |
//! | taking back a retraction | the line counts again (redo) |
//! | a retraction that comes before its line in fold order | ignored: nobody can take back what they had not read |
//! | anything recorded on a deleted piece by a device that had not read the deletion | the piece comes back, with a note |
//! | readings at a station that is no longer laid out | kept in the diary and among the readings |
//! | a detail set on two devices | the later in fold order shows, both stay in the diary |
//! | stage moved on two devices | the later in fold order is the present stage, both are visits |
//! | two flaws with one id | the first in fold order names it, both stay in the diary |
//! | treatment of a flaw whose note is missing | stays in the diary, joins the flaw when its note arrives |
//! | ended on one device, looked after on another | stays ended, the look is in the diary |
//! | two living pieces with one mark | both kept; the agenda asks to rename one |

use std::collections::{HashMap, HashSet};

use crate::detail::Details;
use crate::diary::{DiaryEntry, Earlier};
use crate::fact::PieceFact;
use crate::ids::{EntryId, LineId, PieceId};
use crate::line::{Line, in_fold_order};
use crate::piece::{
    FinishRecord, Flaw, FlawEvent, Look, Moment, OvalMeasured, Piece, StageVisit, StationReading,
    Stations, Tick, Weighing,
};
use crate::stage::Stage;
use crate::vocabulary::Method;

/// Lines that count: those not taken back by a later line that itself counts.
#[must_use]
pub fn lines_that_count<F>(
    ordered: &[Line<F>],
    retracts: impl Fn(&F) -> Option<&LineId>,
) -> HashSet<LineId> {
    let place: HashMap<&LineId, usize> = ordered
        .iter()
        .enumerate()
        .map(|(i, l)| (&l.id, i))
        .collect();
    let mut taken_back: HashSet<usize> = HashSet::new();
    // From the last to the first: when a line's turn comes, all that could take it back is settled.
    for (i, line) in ordered.iter().enumerate().rev() {
        if taken_back.contains(&i) {
            continue;
        }
        for target in line.facts.iter().filter_map(&retracts) {
            if let Some(&t) = place.get(target)
                && t < i
            {
                taken_back.insert(t);
            }
        }
    }
    ordered
        .iter()
        .enumerate()
        .filter(|(i, _)| !taken_back.contains(i))
        .map(|(_, l)| l.id.clone())
        .collect()
}

fn piece_retracts(fact: &PieceFact) -> Option<&LineId> {
    match fact {
        PieceFact::Retracts(line) => Some(line),
        _ => None,
    }
}

type Amendment = (Option<Moment>, Option<PieceFact>);

fn amendments(
    ordered: &[Line<PieceFact>],
    counting: &HashSet<LineId>,
) -> HashMap<EntryId, Vec<Amendment>> {
    let mut found: HashMap<EntryId, Vec<Amendment>> = HashMap::new();
    for line in ordered.iter().filter(|l| counting.contains(&l.id)) {
        for fact in &line.facts {
            if let PieceFact::Amends { entry, at, fact } = fact {
                let new_fact = match fact.as_deref() {
                    Some(PieceFact::Amends { .. } | PieceFact::Retracts(_)) => None,
                    other => other.cloned(),
                };
                found
                    .entry(entry.clone())
                    .or_default()
                    .push((*at, new_fact));
            }
        }
    }
    found
}

/// The state of a piece from its lines, in whatever order they were read.
#[must_use]
pub fn fold_piece(id: PieceId, lines: Vec<Line<PieceFact>>) -> Piece {
    let ordered = in_fold_order(lines);
    let counting = lines_that_count(&ordered, piece_retracts);
    let amended = amendments(&ordered, &counting);
    let mut fold = Fold::new(id);
    for line in ordered {
        let counts = counting.contains(&line.id);
        for (part, fact) in line.facts.into_iter().enumerate() {
            if matches!(fact, PieceFact::Amends { .. } | PieceFact::Retracts(_)) {
                continue;
            }
            let entry = EntryId {
                line: line.id.clone(),
                part: u16::try_from(part).unwrap_or(u16::MAX),
            };
            let mut at = line.at;
            let mut fact = fact;
            let mut earlier = Vec::new();
            for (new_at, new_fact) in amended.get(&entry).into_iter().flatten() {
                let old = Earlier {
                    fact: fact.clone(),
                    at,
                };
                fact = new_fact.clone().unwrap_or(fact);
                at = new_at.unwrap_or(at);
                earlier.push(old);
            }
            if counts {
                fold.apply(&entry, line.seq, at, &fact);
            }
            let stage = fold.piece.stage();
            fold.piece.diary.push(DiaryEntry {
                entry,
                at,
                noted_at: line.noted_at,
                fact,
                earlier,
                stage,
                retracted: !counts,
            });
        }
    }
    fold.finish()
}

struct Fold {
    piece: Piece,
    created_in: Option<LineId>,
    deletion: Option<(u64, LineId)>,
    /// The greatest `seq` at which each device recorded something, for the deletion rule.
    recorded: Vec<(u64, LineId)>,
    flaw_events: Vec<(crate::ids::FlawId, FlawEvent)>,
}

impl Fold {
    fn new(id: PieceId) -> Self {
        Self {
            piece: Piece {
                id,
                created: None,
                details: Details::default(),
                visits: Vec::new(),
                method: Method::Bag,
                half_turned: None,
                paused: None,
                not_found: None,
                ticks: Default::default(),
                stations: Stations::default(),
                readings: Vec::new(),
                diameters: Default::default(),
                flaws: Vec::new(),
                looks: Vec::new(),
                weighings: Vec::new(),
                mass_changes: Vec::new(),
                finish: FinishRecord::default(),
                end: None,
                deleted: None,
                came_back: false,
                diary: Vec::new(),
                unknown_facts: 0,
            },
            created_in: None,
            deletion: None,
            recorded: Vec::new(),
            flaw_events: Vec::new(),
        }
    }

    fn enter_stage(&mut self, stage: Stage, at: Moment, entry: &EntryId) {
        let visit = StageVisit {
            stage,
            since: at,
            entry: Some(entry.clone()),
        };
        let only_the_start = self.piece.visits.len() == 1 && self.piece.visits[0].entry.is_none();
        // Entered straight into a later stage: no empty stay in Shape before it.
        if only_the_start && self.created_in.as_ref() == Some(&entry.line) {
            self.piece.visits.clear();
        }
        self.piece.visits.push(visit);
        self.piece.half_turned = None;
    }

    #[allow(clippy::too_many_lines)] // one arm a fact: splitting it would hide the table it is
    fn apply(&mut self, entry: &EntryId, seq: u64, at: Moment, fact: &PieceFact) {
        let piece = &mut self.piece;
        let stage = piece.stage();
        match fact {
            PieceFact::Created => {
                if piece.created.is_none() {
                    piece.created = Some(at);
                    self.created_in = Some(entry.line.clone());
                    if piece.visits.is_empty() {
                        piece.visits.push(StageVisit {
                            stage: Stage::Shape,
                            since: at,
                            entry: None,
                        });
                    }
                }
            }
            PieceFact::Detail { field, value } => piece.details.set(*field, value.clone()),
            PieceFact::StageMoved(to) => {
                piece.not_found = None;
                self.enter_stage(*to, at, entry);
            }
            PieceFact::MethodChosen(method) => piece.method = *method,
            PieceFact::HalfTurned => piece.half_turned = Some(at),
            PieceFact::Resumed => piece.half_turned = None,
            PieceFact::Paused { until } => piece.paused = Some((at, *until)),
            PieceFact::Unpaused => piece.paused = None,
            PieceFact::Ticked { line, text, on } => {
                if *on {
                    piece.ticks.insert(
                        line.clone(),
                        Tick {
                            text: text.clone(),
                            at,
                        },
                    );
                } else {
                    piece.ticks.remove(line);
                }
            }
            PieceFact::Stations { count, depths_mm } => {
                piece.stations = Stations {
                    count: *count,
                    depths_mm: depths_mm.clone(),
                };
            }
            PieceFact::Reading(reading) => {
                piece.half_turned = None;
                piece.not_found = None;
                piece.readings.push(StationReading {
                    entry: entry.clone(),
                    at,
                    stage,
                    reading: reading.clone(),
                });
            }
            PieceFact::OutsideDiameter {
                station,
                diameter_mm,
            } => {
                match diameter_mm {
                    Some(d) => piece.diameters.insert(*station, d.clone()),
                    None => piece.diameters.remove(station),
                };
            }
            PieceFact::FlawFound(note) => {
                if piece.flaws.iter().all(|f| f.note.flaw != note.flaw) {
                    piece.flaws.push(Flaw {
                        entry: entry.clone(),
                        found_at: at,
                        found_in: stage,
                        note: note.clone(),
                        events: Vec::new(),
                    });
                }
            }
            PieceFact::FlawTreated(t) => {
                self.flaw_events.push((
                    t.flaw.clone(),
                    FlawEvent::Treated {
                        at,
                        treated: t.clone(),
                    },
                ));
            }
            PieceFact::FlawLooked {
                flaw,
                change,
                size_mm,
            } => {
                let event = FlawEvent::Looked {
                    at,
                    change: *change,
                    size_mm: size_mm.clone(),
                };
                self.flaw_events.push((flaw.clone(), event));
            }
            PieceFact::Look { feel, mould, crack } => {
                piece.not_found = None;
                let look = Look {
                    entry: entry.clone(),
                    at,
                    stage,
                    feel: *feel,
                    mould: *mould,
                    crack: *crack,
                };
                piece.looks.push(look);
            }
            PieceFact::NotFound => piece.not_found = Some(at),
            PieceFact::Weighed { mass_g, tare_g } => {
                piece.not_found = None;
                let (mass_g, tare_g) = (mass_g.clone(), *tare_g);
                piece.weighings.push(Weighing {
                    entry: entry.clone(),
                    at,
                    stage,
                    mass_g,
                    tare_g,
                });
            }
            PieceFact::MassChanged(change) => piece.mass_changes.push((at, *change)),
            PieceFact::Cracks(answer) => piece.finish.cracks = Some((at, *answer)),
            PieceFact::Oval {
                longest_mm,
                shortest_mm,
            } => {
                let (longest_mm, shortest_mm) = (longest_mm.clone(), shortest_mm.clone());
                piece.finish.oval = Some(OvalMeasured {
                    at,
                    longest_mm,
                    shortest_mm,
                });
            }
            PieceFact::SpigotTrued(size) => piece.finish.spigot_mm = Some(size.clone()),
            PieceFact::TrueDecided { decision, reason } => {
                piece.finish.decision = Some((at, *decision, reason.clone()));
            }
            PieceFact::Grits(text) => piece.finish.grits.push((at, text.clone())),
            PieceFact::Coat(text) => piece.finish.coats.push((at, text.clone())),
            PieceFact::Signed(text) => piece.finish.signed = Some((at, text.clone())),
            PieceFact::Note(_) => {}
            PieceFact::Ended(end) => piece.end = Some((at, end.clone())),
            PieceFact::PutBack => piece.end = None,
            PieceFact::Deleted => {
                piece.deleted = Some(at);
                self.deletion = Some((seq, entry.line.clone()));
            }
            PieceFact::Undeleted => {
                piece.deleted = None;
                self.deletion = None;
            }
            PieceFact::Unknown { .. } => piece.unknown_facts += 1,
            PieceFact::Amends { .. } | PieceFact::Retracts(_) => {}
        }
        if !matches!(fact, PieceFact::Deleted | PieceFact::Undeleted) {
            self.recorded.push((seq, entry.line.clone()));
        }
    }

    fn finish(mut self) -> Piece {
        let piece = &mut self.piece;
        if let Some((seq, line)) = &self.deletion {
            // Whoever writes at or after the deletion's seq on another device had not read it (or ignored it):
            // work is never lost in a piece that is out of sight.
            let unread = self.recorded.iter().any(|(s, l)| {
                (l.device != line.device && s >= seq) || (l.device == line.device && l.n > line.n)
            });
            if unread {
                piece.deleted = None;
                piece.came_back = true;
            }
        }
        for (flaw, event) in self.flaw_events {
            if let Some(flaw) = piece.flaws.iter_mut().find(|f| f.note.flaw == flaw) {
                flaw.events.push(event);
            }
        }
        if piece.visits.is_empty() {
            let since = piece.diary.first().map(|e| e.at);
            piece.visits.extend(since.map(|since| StageVisit {
                stage: Stage::Shape,
                since,
                entry: None,
            }));
        }
        // Stable sorts: what happened at one moment stays in fold order.
        piece.looks.sort_by_key(|l| l.at);
        piece.weighings.sort_by_key(|w| w.at);
        piece.mass_changes.sort_by_key(|m| m.0);
        piece.diary.sort_by_key(|e| e.at);
        self.piece
    }
}
