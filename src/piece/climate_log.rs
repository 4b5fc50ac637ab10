//! Climate log: the text of a logger's CSV file, read into readings of the air, with an error for every line that is wrong.
//!
//! Comma, semicolon or tab between columns; point or comma in numbers; the columns by their headings, or time, temperature and
//! humidity in this order where there are none. Times are the logger's own clock unless they say their offset. Humidity is per
//! cent from 0 to 100. A temperature is Celsius unless the heading, the cell or the caller says Fahrenheit.

mod columns;
mod decode;
mod fault;
mod number;
mod thin;
mod when;

use chrono::{FixedOffset, NaiveDateTime};
use evenwall_wood::range::Range;

pub use decode::decode;
pub use fault::{Column, Fault, LineFault, LogError};
pub use thin::{Per, means};
pub use when::DateOrder;

use columns::{Columns, FOR_HEADINGS};
use when::{Clue, Written};

/// Most lines that are read: more than twenty years of hourly readings.
pub const MOST_LINES: usize = 200_000;
/// Most faults that are kept with their text; the others are counted.
pub const MOST_FAULTS: usize = 100;
/// Temperature of a room's air, C.
pub const AIR_C: Range = Range::new("temperature", "C", -20.0, 60.0);
/// Relative humidity, per cent.
pub const AIR_PCT: Range = Range::new("humidity", "%", 0.0, 100.0);

/// A unit of temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// What the turner says about the file; all may be left open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Told {
    /// Order of day and month, for files that do not show it.
    pub order: Option<DateOrder>,
    /// Unit of the temperature, for files whose headings do not name it, or name it wrongly.
    pub unit: Option<Unit>,
}

/// One reading of the logger.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LogReading {
    /// When, on the logger's clock.
    pub at: NaiveDateTime,
    /// The offset, where the file says it.
    pub offset: Option<FixedOffset>,
    /// Temperature, C.
    pub temp_c: f64,
    /// Relative humidity, per cent.
    pub rh_pct: f64,
}

/// A log that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct ClimateLog {
    /// The readings by time; of several at one time the last in the file.
    pub readings: Vec<LogReading>,
    /// The first [`MOST_FAULTS`] lines that are wrong, by line.
    pub faults: Vec<LineFault>,
    /// All lines that are wrong.
    pub faulty_lines: usize,
    /// The order of day and month that was found or told; `None` where the times need none.
    pub order: Option<DateOrder>,
    /// The unit that temperatures were read in.
    pub unit: Unit,
    /// True when neither the file nor the turner named the unit.
    pub unit_assumed: bool,
}

/// A line whose cells were read, but whose day may be written either way.
struct Row {
    line: usize,
    when: Written,
    temp_c: f64,
    rh_pct: f64,
}

/// Reads the text of a logger's file.
///
/// # Errors
/// [`LogError`] when nothing can be read at all, or the file leaves something open that the turner has to say. Single lines that
/// are wrong are no error: they are in [`ClimateLog::faults`].
pub fn read_climate_log(text: &str, told: Told) -> Result<ClimateLog, LogError> {
    let mut faults = Faults::default();
    let (plain, lines) = plain_lines(text, &mut faults)?;
    let delimiter = columns::delimiter(&plain);
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter)
        .has_headers(false)
        .flexible(true)
        .from_reader(plain.as_bytes());
    let mut rows: Vec<Row> = Vec::new();
    let mut found: Option<Columns> = None;
    let mut before: Vec<(usize, csv::StringRecord)> = Vec::new();
    for record in reader.records() {
        // The text is UTF-8 and lines may differ in length, so the reader has nothing to refuse.
        let Ok(record) = record else { continue };
        let line = record.position().map_or(0, |p| p.line() as usize); // at most MOST_LINES
        let Some(columns) = &found else {
            if let Some(columns) = Columns::of_heading(&record) {
                // What stands above the headings is the logger's preamble.
                before.clear();
                found = Some(columns);
            } else {
                before.push((line, record));
                if before.len() >= FOR_HEADINGS {
                    let columns = Columns::without_heading(before.iter().map(|b| &b.1))
                        .ok_or_else(|| no_columns(&before))?;
                    for (line, record) in before.drain(..) {
                        read_line(&columns, told, line, &record, &mut rows, &mut faults);
                    }
                    found = Some(columns);
                }
            }
            continue;
        };
        read_line(columns, told, line, &record, &mut rows, &mut faults);
    }
    let columns = match found {
        Some(columns) => columns,
        None if before.is_empty() => return Err(LogError::Empty),
        None => {
            let columns = Columns::without_heading(before.iter().map(|b| &b.1))
                .ok_or_else(|| no_columns(&before))?;
            for (line, record) in before.drain(..) {
                read_line(&columns, told, line, &record, &mut rows, &mut faults);
            }
            columns
        }
    };
    let order = day_order(&rows, told.order)?;
    let readings = dated(rows, order, &mut faults);
    if readings.is_empty() {
        return Err(LogError::NothingRead {
            lines,
            first: faults.first().cloned(),
        });
    }
    // A logger that writes 0.55 for 55 %: no room is that dry all the time.
    if readings.iter().all(|r| r.rh_pct <= 1.0) {
        return Err(LogError::HumidityAsFraction {
            most: readings.iter().map(|r| r.rh_pct).fold(0.0, f64::max),
        });
    }
    faults.kept.sort_by_key(|f| f.line);
    Ok(ClimateLog {
        readings,
        faulty_lines: faults.count,
        faults: faults.kept,
        order,
        unit: told.unit.or(columns.unit).unwrap_or(Unit::Celsius),
        unit_assumed: told.unit.or(columns.unit).is_none(),
    })
}

/// The faults so far: the first in full, all counted.
#[derive(Default)]
struct Faults {
    kept: Vec<LineFault>,
    count: usize,
}

impl Faults {
    fn add(&mut self, line: usize, fault: Fault) {
        self.count += 1;
        if self.kept.len() < MOST_FAULTS {
            self.kept.push(LineFault { line, fault });
        }
    }

    fn first(&self) -> Option<&LineFault> {
        self.kept.iter().min_by_key(|f| f.line)
    }
}

/// The text with plain line ends, without its byte order mark, and with lines whose quotes do not close left empty: an open quote
/// would swallow all that follows. Also the number of lines that hold something.
fn plain_lines(text: &str, faults: &mut Faults) -> Result<(String, usize), LogError> {
    let text = text.trim_start_matches('\u{feff}');
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    let (mut plain, mut filled) = (String::with_capacity(text.len()), 0);
    for (i, line) in text.lines().enumerate() {
        if i >= MOST_LINES {
            return Err(LogError::TooLong {
                lines: text.lines().count(),
            });
        }
        filled += usize::from(!line.trim().is_empty());
        if line.matches('"').count() % 2 == 0 {
            plain.push_str(line);
        } else {
            faults.add(i + 1, Fault::OpenQuote);
        }
        plain.push('\n');
    }
    Ok((plain, filled))
}

fn no_columns(before: &[(usize, csv::StringRecord)]) -> LogError {
    let first = before.first().map(|(_, r)| r.iter().collect::<Vec<_>>());
    LogError::NoColumns {
        found: fault::shown(&first.unwrap_or_default().join(", ")),
    }
}

fn read_line(
    columns: &Columns,
    told: Told,
    line: usize,
    record: &csv::StringRecord,
    rows: &mut Vec<Row>,
    faults: &mut Faults,
) {
    // An empty row of delimiters, as spreadsheets leave at the end.
    if record.iter().all(|cell| cell.trim().is_empty()) {
        return;
    }
    match columns.read(record, told.unit) {
        Ok((when, temp_c, rh_pct)) => rows.push(Row {
            line,
            when,
            temp_c,
            rh_pct,
        }),
        Err(fault) => faults.add(line, fault),
    }
}

/// The order of day and month of the whole file, `None` where no line needs it.
fn day_order(rows: &[Row], told: Option<DateOrder>) -> Result<Option<DateOrder>, LogError> {
    let open = |r: &&Row| matches!(r.when.clue(), Some(Clue::Either));
    let shows = |order| {
        rows.iter()
            .find(|r| r.when.clue() == Some(Clue::Only(order)))
    };
    let (day, month) = (shows(DateOrder::DayFirst), shows(DateOrder::MonthFirst));
    let Some(example) = rows.iter().find(open) else {
        return Ok(match (day, month) {
            (Some(_), None) => Some(DateOrder::DayFirst),
            (None, Some(_)) => Some(DateOrder::MonthFirst),
            _ => told,
        });
    };
    if let Some(order) = told {
        return Ok(Some(order));
    }
    match (day, month) {
        (Some(_), None) => return Ok(Some(DateOrder::DayFirst)),
        (None, Some(_)) => return Ok(Some(DateOrder::MonthFirst)),
        (Some(a), Some(b)) => {
            return Err(LogError::OrdersMixed {
                day_first_line: a.line,
                month_first_line: b.line,
            });
        }
        (None, None) => {}
    }
    // A logger writes on and on: the order in which time never runs back.
    let runs = |order| {
        let times: Vec<_> = rows.iter().filter_map(|r| r.when.at(Some(order))).collect();
        times.windows(2).all(|w| w[0] <= w[1]) || times.windows(2).all(|w| w[0] >= w[1])
    };
    match (runs(DateOrder::DayFirst), runs(DateOrder::MonthFirst)) {
        (true, false) => Ok(Some(DateOrder::DayFirst)),
        (false, true) => Ok(Some(DateOrder::MonthFirst)),
        _ => Err(LogError::OrderUnknown {
            line: example.line,
            found: example.when.text().to_owned(),
        }),
    }
}

fn dated(rows: Vec<Row>, order: Option<DateOrder>, faults: &mut Faults) -> Vec<LogReading> {
    let mut readings: Vec<LogReading> = Vec::with_capacity(rows.len());
    for row in rows {
        match row.when.at(order) {
            Some(at) => readings.push(LogReading {
                at,
                offset: row.when.offset(),
                temp_c: row.temp_c,
                rh_pct: row.rh_pct,
            }),
            None => faults.add(
                row.line,
                Fault::NotATime {
                    found: fault::shown(row.when.text()),
                },
            ),
        }
    }
    // Stable, so that of one time the last in the file comes last, and stays.
    readings.sort_by_key(|r| r.at);
    readings.reverse();
    readings.dedup_by_key(|r| r.at);
    readings.reverse();
    readings
}
