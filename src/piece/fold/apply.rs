//! Apply: one fact put on the state of a piece.

use crate::detail::Details;
use crate::fact::PieceFact;
use crate::fold::deletion::Deletion;
use crate::fold::laying_out::lay_out;
use crate::fold::photos::Photos;
use crate::ids::{EntryId, FlawId, LineId, PieceId};
use crate::piece::{
    FinishRecord, Flaw, FlawEvent, Look, Moment, OvalMeasured, Piece, SectionMeasured, StageVisit,
    StationOval, StationReading, Stations, Tick, Weighing,
};
use crate::stage::{Group, Stage};
use crate::vocabulary::Method;

/// The state while its lines are read.
pub(super) struct Fold {
    pub(super) piece: Piece,
    pub(super) deletion: Deletion,
    created_in: Option<LineId>,
    flaw_events: Vec<(FlawId, FlawEvent)>,
    photos: Photos,
}

impl Fold {
    /// A piece of which nothing is known yet; room for as many diary entries as there are lines.
    pub(super) fn new(id: PieceId, lines: usize) -> Self {
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
                readings_from: 0,
                diameters: Default::default(),
                diameters_between: Vec::new(),
                flaws: Vec::new(),
                photos: Vec::new(),
                looks: Vec::new(),
                weighings: Vec::new(),
                mass_changes: Vec::new(),
                finish: FinishRecord::default(),
                end: None,
                deleted: None,
                came_back: false,
                diary: Vec::with_capacity(lines),
                unknown_facts: 0,
                lines: 0,
            },
            deletion: Deletion::default(),
            created_in: None,
            flaw_events: Vec::new(),
            photos: Photos::default(),
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
        if stage == Stage::True && dried_since_true(&self.piece.visits) {
            let finish = &mut self.piece.finish;
            finish.cracks = None;
            finish.oval = None;
            finish.ovals.clear();
            finish.spigot_mm = None;
            finish.decision = None;
        }
        self.piece.visits.push(visit);
        self.piece.half_turned = None;
    }

    /// Puts one fact of a line that counts on the state.
    #[allow(clippy::too_many_lines)] // one arm a fact: splitting it would hide the table it is
    pub(super) fn apply(&mut self, entry: &EntryId, seq: u64, at: Moment, fact: &PieceFact) {
        let piece = &mut self.piece;
        let stage = piece.stage();
        if in_hand(fact) {
            piece.not_found = None;
        }
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
            PieceFact::StageMoved(to) => self.enter_stage(*to, at, entry),
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
                let stations = Stations {
                    count: *count,
                    depths_mm: depths_mm.clone(),
                };
                if stations.moved_from(&piece.stations) {
                    piece.finish.ovals.clear();
                }
                lay_out(piece, stations);
            }
            PieceFact::Reading(reading) => {
                piece.half_turned = None;
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
                        depth_mm: None,
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
                look_again,
            } => {
                let event = FlawEvent::Looked {
                    at,
                    change: *change,
                    size_mm: size_mm.clone(),
                    look_again: *look_again,
                };
                self.flaw_events.push((flaw.clone(), event));
            }
            PieceFact::Look { feel, mould, crack } => {
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
            PieceFact::OvalAt {
                station,
                longest_mm,
                shortest_mm,
            } => {
                let measured = SectionMeasured::Two {
                    longest_mm: longest_mm.clone(),
                    shortest_mm: shortest_mm.clone(),
                };
                let oval = StationOval { at, measured };
                piece.finish.ovals.insert(*station, oval);
            }
            PieceFact::OvalRound {
                station,
                how,
                readings,
            } => {
                let measured = SectionMeasured::Round {
                    how: *how,
                    readings: readings.clone(),
                };
                let oval = StationOval { at, measured };
                piece.finish.ovals.insert(*station, oval);
            }
            PieceFact::SpigotTrued(size) => piece.finish.spigot_mm = Some(size.clone()),
            PieceFact::TrueDecided { decision, reason } => {
                piece.finish.decision = Some((at, *decision, reason.clone()));
            }
            PieceFact::Grits(text) => piece.finish.grits.push((at, text.clone())),
            PieceFact::Coat(text) => piece.finish.coats.push((at, text.clone())),
            PieceFact::Signed(text) => piece.finish.signed = Some((at, text.clone())),
            PieceFact::Note(_) | PieceFact::ForecastMade(_) => {}
            PieceFact::PhotoAdded(_)
            | PieceFact::PhotoRemoved(_)
            | PieceFact::PhotoBack(_)
            | PieceFact::PhotoMarked(_) => self.photos.apply(piece, entry, at, fact),
            PieceFact::Ended(end) => piece.end = Some((at, end.clone())),
            PieceFact::PutBack => piece.end = None,
            PieceFact::Deleted => {
                piece.deleted = Some(at);
                self.deletion.deleted(seq, &entry.line);
            }
            PieceFact::Undeleted => {
                piece.deleted = None;
                self.deletion.undeleted();
            }
            PieceFact::Unknown { .. } => piece.unknown_facts += 1,
            PieceFact::Amends { .. } | PieceFact::Retracts(_) => {}
        }
    }

    /// The state once all lines are read.
    pub(super) fn finish(mut self) -> Piece {
        let piece = &mut self.piece;
        // Work is never lost in a piece that is out of sight.
        if self.deletion.overtaken() {
            piece.deleted = None;
            piece.came_back = true;
        }
        for (flaw, event) in self.flaw_events {
            if let Some(flaw) = piece.flaws.iter_mut().find(|f| f.note.flaw == flaw) {
                flaw.events.push(event);
            }
        }
        self.photos.finish(piece);
        if piece.visits.is_empty() {
            let first = piece.diary.iter().find(|e| !e.retracted);
            let since = first.map(|e| e.at);
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
        piece.finish.grits.sort_by_key(|g| g.0);
        piece.finish.coats.sort_by_key(|c| c.0);
        piece.diary.sort_by_key(|e| e.at);
        self.piece
    }
}

/// True where a piece was in True before and dried since: it moved, and what True asked is asked anew.
fn dried_since_true(visits: &[StageVisit]) -> bool {
    let Some(last) = visits.iter().rposition(|v| v.stage == Stage::True) else {
        return false;
    };
    let mut since = visits[last..].iter();
    since.any(|v| v.stage.group() == Group::Drying)
}

/// True for what cannot be recorded without having the piece in hand.
fn in_hand(fact: &PieceFact) -> bool {
    matches!(
        fact,
        PieceFact::StageMoved(_)
            | PieceFact::HalfTurned
            | PieceFact::Resumed
            | PieceFact::Reading(_)
            | PieceFact::OutsideDiameter { .. }
            | PieceFact::FlawFound(_)
            | PieceFact::FlawTreated(_)
            | PieceFact::FlawLooked { .. }
            | PieceFact::Look { .. }
            | PieceFact::Weighed { .. }
            | PieceFact::Cracks(_)
            | PieceFact::Oval { .. }
            | PieceFact::OvalAt { .. }
            | PieceFact::OvalRound { .. }
            | PieceFact::SpigotTrued(_)
            | PieceFact::Grits(_)
            | PieceFact::Coat(_)
            | PieceFact::Signed(_)
    )
}
