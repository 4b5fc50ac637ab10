//! Climate log faults: what is wrong with a file or a line of it, in words: what was found, what is allowed, what to do.

use evenwall_piece::climate_log::{
    AIR_C, AIR_PCT, Column, Fault, LineFault, LogError, MOST_LINES, Unit,
};

use crate::app::App;
use crate::files::FileError;

impl App {
    fn column_in_words(&self, column: Column) -> String {
        self.words().text(match column {
            Column::Temperature => "log-column-temperature",
            Column::Humidity => "log-column-humidity",
        })
    }

    /// A temperature as the file has it: in its own unit, not the turner's.
    fn in_unit_of_file(&self, value: f64, unit: Unit) -> String {
        let id = match unit {
            Unit::Celsius => "log-degrees-celsius",
            Unit::Fahrenheit => "log-degrees-fahrenheit",
        };
        self.words()
            .with(id, &[("value", value.to_string().into())])
    }

    fn fault_in_words(&self, fault: &Fault) -> String {
        let words = self.words();
        match fault {
            Fault::TooFewColumns { found, needed } => words.with(
                "log-fault-too-few",
                &[("found", (*found).into()), ("needed", (*needed).into())],
            ),
            Fault::TooManyColumns { found, headings } => words.with(
                "log-fault-too-many",
                &[("found", (*found).into()), ("headings", (*headings).into())],
            ),
            Fault::NotATime { found } => words.with("log-fault-time", &[("found", found.into())]),
            Fault::NotANumber { column, found } => words.with(
                "log-fault-number",
                &[
                    ("found", found.into()),
                    ("column", self.column_in_words(*column).into()),
                ],
            ),
            Fault::Temperature { found, unit } => {
                let bound = |celsius: f64| match unit {
                    Unit::Celsius => celsius,
                    Unit::Fahrenheit => celsius * 1.8 + 32.0,
                };
                let shown = |value: f64| self.in_unit_of_file(value, *unit);
                words.with(
                    "log-fault-temperature",
                    &[
                        ("found", shown(*found).into()),
                        ("low", shown(bound(AIR_C.min)).into()),
                        ("high", shown(bound(AIR_C.max)).into()),
                    ],
                )
            }
            Fault::Humidity { found } => words.with(
                "log-fault-humidity",
                &[
                    ("found", found.to_string().into()),
                    ("low", AIR_PCT.min.to_string().into()),
                    ("high", AIR_PCT.max.to_string().into()),
                ],
            ),
            Fault::OpenQuote => words.text("log-fault-quote"),
        }
    }

    /// "Line 17: ...".
    pub(super) fn line_fault_in_words(&self, fault: &LineFault) -> String {
        self.words().with(
            "log-line",
            &[
                ("line", fault.line.to_string().into()),
                ("fault", self.fault_in_words(&fault.fault).into()),
            ],
        )
    }

    /// Why a file could not be read.
    pub(super) fn file_error_in_words(&self, path: &str, error: &FileError) -> String {
        let words = self.words();
        match error {
            FileError::NotThere => words.with("log-file-not-there", &[("path", path.into())]),
            FileError::Folder => words.with("log-file-folder", &[("path", path.into())]),
            FileError::TooLarge { most } => {
                let most = (most / 1_000_000).to_string();
                words.with(
                    "log-file-too-large",
                    &[("path", path.into()), ("most", most.into())],
                )
            }
            FileError::Refused(why) => words.with(
                "log-file-refused",
                &[("path", path.into()), ("why", why.into())],
            ),
        }
    }

    /// Why nothing can be kept of a file yet.
    pub(super) fn log_error_in_words(&self, error: &LogError) -> String {
        let words = self.words();
        match error {
            LogError::Empty => words.text("log-error-empty"),
            LogError::TooLong { lines } => words.with(
                "log-error-long",
                &[("lines", (*lines).into()), ("most", MOST_LINES.into())],
            ),
            LogError::NoColumns { found } => {
                words.with("log-error-columns", &[("found", found.into())])
            }
            LogError::OrderUnknown { line, found } => words.with(
                "log-error-order",
                &[("line", line.to_string().into()), ("found", found.into())],
            ),
            LogError::OrdersMixed {
                day_first_line,
                month_first_line,
            } => words.with(
                "log-error-mixed",
                &[
                    ("day", day_first_line.to_string().into()),
                    ("month", month_first_line.to_string().into()),
                ],
            ),
            LogError::HumidityAsFraction { most } => {
                words.with("log-error-fraction", &[("most", most.to_string().into())])
            }
            LogError::NothingRead { lines, first } => {
                let first = first
                    .as_ref()
                    .map_or_else(String::new, |f| self.line_fault_in_words(f));
                words.with(
                    "log-error-nothing",
                    &[("lines", (*lines).into()), ("first", first.into())],
                )
            }
        }
    }
}
