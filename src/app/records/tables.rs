//! Tables: everything that can be counted, as tables for a spreadsheet. Millimetres, grams, degrees Celsius and per cent
//! whatever units are shown; the names of the columns are fixed, so that a sheet of formulas goes on working.

use evenwall_piece::detail::{DetailField, DetailValue, FieldKind};
use evenwall_piece::fact::{End, Measure, StationRef};
use evenwall_piece::piece::{FlawEvent, Moment, Piece};
use evenwall_records::table::{self, Cell, Table};

use crate::app::{App, AppError};
use crate::details::FORM_ORDER;
use crate::whereabouts::end_key;

fn at(moment: Moment) -> Cell {
    moment.into()
}

fn mm(measure: Option<&Measure>) -> Cell {
    measure.map(|m| m.value).into()
}

fn station(station: StationRef) -> Cell {
    match station {
        StationRef::Wall(n) => Cell::Whole(i64::from(n)),
        StationRef::Floor => "floor".into(),
    }
}

fn detail(piece: &Piece, field: DetailField) -> Cell {
    match piece.details.get(field) {
        None => Cell::Empty,
        Some(DetailValue::Length(m)) => m.value.into(),
        Some(DetailValue::Text(text)) => text.as_str().into(),
    }
}

/// Piece id and mark, which begin every row about a piece.
fn who(piece: &Piece) -> [Cell; 2] {
    [piece.id.as_str().into(), piece.mark().into()]
}

fn row<const N: usize>(piece: &Piece, rest: [Cell; N]) -> Vec<Cell> {
    who(piece).into_iter().chain(rest).collect()
}

impl App {
    /// All tables: pieces, readings, weighings, bag checks, climate and flaws. Deleted pieces are left out.
    #[must_use]
    pub fn tables(&self) -> Vec<Table> {
        let mut pieces: Vec<&Piece> = self.pieces().collect();
        pieces.sort_by(|a, b| {
            evenwall_piece::agenda::by_mark(a.mark(), b.mark()).then_with(|| a.id.cmp(&b.id))
        });
        vec![
            self.pieces_table(&pieces),
            readings_table(&pieces),
            weighings_table(&pieces),
            checks_table(&pieces),
            self.climate_table(),
            flaws_table(&pieces),
        ]
    }

    fn pieces_table(&self, pieces: &[&Piece]) -> Table {
        let fields: Vec<DetailField> = FORM_ORDER
            .iter()
            .copied()
            .filter(|f| *f != DetailField::Mark)
            .collect();
        let mut columns = vec!["piece", "mark", "wood_name"];
        columns.extend(fields.iter().map(|f| f.key()));
        columns.extend([
            "created_at",
            "stage",
            "stage_since",
            "method",
            "end",
            "ended_at",
            "lost_where",
            "lost_how",
            "lost_why",
        ]);
        let rows = pieces.iter().map(|piece| {
            let mut cells: Vec<Cell> = who(piece).into();
            cells.push(self.wood_of(piece).into());
            cells.extend(fields.iter().map(|f| detail(piece, *f)));
            let lost = match &piece.end {
                Some((
                    _,
                    End::Lost {
                        place, how, why, ..
                    },
                )) => {
                    let why: Vec<&str> = why.iter().map(|w| w.key()).collect();
                    [place.key().into(), how.key().into(), why.join(" ").into()]
                }
                _ => [Cell::Empty, Cell::Empty, Cell::Empty],
            };
            cells.extend([
                piece.created.into(),
                piece.stage().key().into(),
                piece.stage_since().into(),
                piece.method.key().into(),
                piece.end.as_ref().map(|(_, end)| end_key(end)).into(),
                piece.end.as_ref().map(|(at, _)| *at).into(),
            ]);
            cells.extend(lost);
            cells
        });
        let rows = rows.collect();
        debug_assert!(
            fields
                .iter()
                .all(|f| f.kind() != FieldKind::Length || f.key().ends_with("_mm"))
        );
        Table {
            name: "pieces",
            columns,
            rows,
        }
    }

    fn climate_table(&self) -> Table {
        let rows = self.shop().climate.iter().map(|(when, air)| {
            vec![
                at(*when),
                air.room.key().into(),
                air.temp_c.into(),
                air.rh_pct.into(),
            ]
        });
        Table {
            name: "climate",
            columns: vec!["at", "room", "temp_c", "rh_pct"],
            rows: rows.collect(),
        }
    }

    /// Writes all tables into a folder, each as `evenwall-<name>.csv`.
    pub(crate) fn save_tables(&mut self, folder: &str) -> Result<(), AppError> {
        let folder = folder.trim();
        if folder.is_empty() {
            return Err(AppError::Refused(self.words().text("records-no-place")));
        }
        self.states.records.outcome = None;
        self.states.records.file = None;
        let mut written = 0_usize;
        for table in self.tables() {
            let bytes = table::write(&table).map_err(|e| AppError::NotSaved(e.to_string()))?;
            let path = super::backups::whole(folder, &format!("evenwall-{}.csv", table.name));
            self.store.save_outside(&path, &bytes)?;
            written += 1;
        }
        let said = self.words().with(
            "records-tables-saved",
            &[("n", written.into()), ("folder", folder.into())],
        );
        self.states.records.outcome = Some(said);
        Ok(())
    }
}

fn readings_table(pieces: &[&Piece]) -> Table {
    let rows = pieces.iter().flat_map(|piece| {
        piece.readings.iter().map(|r| {
            row(
                piece,
                [
                    at(r.at),
                    r.stage.key().into(),
                    station(r.reading.station),
                    Cell::Whole(i64::from(r.reading.position.hour())),
                    mm(r.reading.wall_mm.as_ref()),
                    r.reading
                        .feel
                        .map(evenwall_piece::vocabulary::WallFeel::key)
                        .into(),
                    r.reading.taken.key().into(),
                ],
            )
        })
    });
    Table {
        name: "readings",
        columns: vec![
            "piece", "mark", "at", "stage", "station", "clock_h", "wall_mm", "feel", "taken",
        ],
        rows: rows.collect(),
    }
}

fn weighings_table(pieces: &[&Piece]) -> Table {
    let rows = pieces.iter().flat_map(|piece| {
        piece.weighings.iter().map(|w| {
            row(
                piece,
                [
                    at(w.at),
                    w.stage.key().into(),
                    w.mass_g.value.into(),
                    w.tare_g.into(),
                    w.net_g().into(),
                ],
            )
        })
    });
    Table {
        name: "weighings",
        columns: vec!["piece", "mark", "at", "stage", "scale_g", "tare_g", "net_g"],
        rows: rows.collect(),
    }
}

fn checks_table(pieces: &[&Piece]) -> Table {
    let rows = pieces.iter().flat_map(|piece| {
        piece.looks.iter().map(|l| {
            row(
                piece,
                [
                    at(l.at),
                    l.stage.key().into(),
                    l.feel.map(evenwall_piece::vocabulary::BagFeel::key).into(),
                    Cell::YesNo(l.mould),
                    Cell::YesNo(l.crack),
                ],
            )
        })
    });
    Table {
        name: "bag-checks",
        columns: vec!["piece", "mark", "at", "stage", "bag", "mould", "crack"],
        rows: rows.collect(),
    }
}

/// One row a flaw found, treated or looked at.
fn flaws_table(pieces: &[&Piece]) -> Table {
    let mut rows = Vec::new();
    for piece in pieces {
        for flaw in &piece.flaws {
            let note = &flaw.note;
            let about = |when: Moment, event: &'static str, size: Option<&Measure>| -> Vec<Cell> {
                row(
                    piece,
                    [
                        note.flaw.as_str().into(),
                        note.kind.key().into(),
                        note.station.map_or(Cell::Empty, station),
                        note.clock
                            .map_or(Cell::Empty, |c| Cell::Whole(i64::from(c.hour()))),
                        Cell::YesNo(note.through),
                        at(when),
                        event.into(),
                        mm(size),
                    ],
                )
            };
            let with = |mut cells: Vec<Cell>, rest: [Cell; 6]| {
                cells.extend(rest);
                cells
            };
            let none = || {
                [
                    Cell::Empty,
                    Cell::Empty,
                    Cell::Empty,
                    Cell::Empty,
                    Cell::Empty,
                ]
            };
            let [a, b, c, d, e] = none();
            rows.push(with(
                about(flaw.found_at, "found", note.size_mm.as_ref()),
                [a, b, c, d, e, note.note.as_str().into()],
            ));
            for event in &flaw.events {
                rows.push(match event {
                    FlawEvent::Treated { at, treated } => with(
                        about(*at, "treated", None),
                        [
                            treated.treatment.key().into(),
                            treated
                                .face
                                .map(evenwall_piece::vocabulary::Face::key)
                                .into(),
                            treated
                                .goes
                                .map_or(Cell::Empty, |g| Cell::Whole(i64::from(g))),
                            treated.look_again.map_or(Cell::Empty, Cell::Day),
                            Cell::Empty,
                            Cell::Empty,
                        ],
                    ),
                    FlawEvent::Looked {
                        at,
                        change,
                        size_mm,
                        look_again,
                    } => with(
                        about(*at, "looked", size_mm.as_ref()),
                        [
                            Cell::Empty,
                            Cell::Empty,
                            Cell::Empty,
                            look_again.map_or(Cell::Empty, Cell::Day),
                            change.key().into(),
                            Cell::Empty,
                        ],
                    ),
                });
            }
        }
    }
    Table {
        name: "flaws",
        columns: vec![
            "piece",
            "mark",
            "flaw",
            "kind",
            "station",
            "clock_h",
            "through",
            "at",
            "event",
            "size_mm",
            "treatment",
            "face",
            "goes",
            "look_again",
            "change",
            "note",
        ],
        rows,
    }
}
