//! Import: moves pieces and weights in from a spreadsheet.
//!
//! A file is read, its columns are matched with what Evenwall knows (suggested by their names), what would come of it is
//! shown with what is wrong line by line, and then it is recorded between an opening and a closing line of the workshop's
//! journal (`import_<id>`: `open`, then `done`). What is to be recorded is kept beside this device's settings first, so
//! that a start after a crash can offer to go on or to take it all back. Going on records only what is not there yet.
//!
//! | case | rule |
//! |---|---|
//! | a row without a mark, or with a cell that cannot be read | left out, said by line and column; the others come in |
//! | several rows with one mark | one piece; weights of all of them |
//! | the same, but what is known about the piece disagrees | the later row is left out and said; stage and end are the later row's |
//! | a mark that a living piece of the shelf has, or in a table of weights any piece | only the weights are taken, unless they are there already |
//! | a unit in a column's name (`wall_mm`, `Weight (g)`) | holds for its bare numbers, whatever units are set |
//! | a column whose name is a day | weights of that day |
//! | undo | takes back all lines of the import at once |
//! | taken back later | pieces that were worked on since stay, and are named |

mod matching;
mod plan;
mod reading;
mod running;
mod view;

use evenwall_piece::piece::Moment;
use evenwall_records::separated::{self, Separated};

use super::RecordsAction;
use crate::app::{App, AppError};

pub use matching::Target;
pub use plan::Plan;
pub use reading::{Fault, Planned};
pub use view::{ColumnView, ImportView, PlannedView, TargetView};

/// What can be done on the import page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ImportAction {
    /// Chose a file, by its whole path.
    Open(String),
    /// Matched a column, by its place, with something, by its key; `-` leaves it out.
    Match(usize, String),
    /// Brought in what the preview shows.
    Run,
    /// Goes on with an import that was cut off.
    GoOn,
    /// Takes the last import back.
    TakeBack,
    /// Left the page; the file is forgotten.
    Close,
}

impl From<ImportAction> for RecordsAction {
    fn from(action: ImportAction) -> Self {
        Self::Import(action)
    }
}

/// A table that is being matched.
#[derive(Debug, Clone)]
pub(crate) struct Matched {
    path: String,
    table: Separated,
    targets: Vec<Option<Target>>,
}

impl Matched {
    /// True where no column says anything but marks, stages, weights and their days.
    fn only_weights(&self) -> bool {
        use evenwall_piece::detail::DetailField;
        self.targets.iter().flatten().all(|t| {
            matches!(
                t,
                Target::Detail(DetailField::Mark)
                    | Target::Stage
                    | Target::Weight
                    | Target::Tare
                    | Target::Weighed
                    | Target::WeightOn(_)
            )
        })
    }
}

/// What the page remembers.
#[derive(Debug, Default)]
pub struct ImportState {
    matched: Option<Matched>,
    /// What came of the last import, in a sentence.
    outcome: Option<String>,
}

impl App {
    pub(crate) fn apply_import(
        &mut self,
        action: ImportAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            ImportAction::Open(path) => return self.import_open(path),
            ImportAction::Match(place, key) => self.import_match(place, &key),
            ImportAction::Run => return self.import_run(now),
            ImportAction::GoOn => return self.import_go_on(now),
            ImportAction::TakeBack => return self.import_take_back(now),
            ImportAction::Close => self.states.records.import = ImportState::default(),
        }
        Ok(())
    }

    fn import_open(&mut self, path: String) -> Result<(), AppError> {
        self.states.records.import.outcome = None;
        let Some(bytes) = self.store.read_outside(&path)? else {
            return Err(AppError::Refused(
                self.words()
                    .with("records-import-no-file", &[("path", path.into())]),
            ));
        };
        let table = separated::read(&bytes).map_err(|e| AppError::Refused(e.to_string()))?;
        let targets = self.import_suggestions(&table);
        self.states.records.import.matched = Some(Matched {
            path,
            table,
            targets,
        });
        Ok(())
    }

    fn import_match(&mut self, place: usize, key: &str) {
        let Some(matched) = &mut self.states.records.import.matched else {
            return;
        };
        let target = Target::from_key(key);
        // What only one column can hold goes to the one chosen last.
        for (n, other) in matched.targets.iter_mut().enumerate() {
            if n != place && *other == target && target.is_some_and(|t| !t.may_repeat()) {
                *other = None;
            }
        }
        if let Some(own) = matched.targets.get_mut(place) {
            *own = target;
        }
    }
}
