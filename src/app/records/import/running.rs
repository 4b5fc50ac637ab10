//! Running: records an import between its opening and closing line, goes on after a crash, takes it back.

use std::collections::BTreeSet;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::LineId;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;

use super::ImportAction;
use super::plan::{FILE, Plan, PlannedLine};
use crate::app::{App, AppError};
use crate::question::{Choice, ChoiceStyle, Question};
use crate::records::RecordsAction;

const OPEN: &str = "open";
const DONE: &str = "done";

fn key_of(id: &str) -> String {
    format!("import_{id}")
}

fn setting(key: String, value: &str) -> Vec<ShopFact> {
    vec![ShopFact::Setting {
        key,
        value: value.to_owned(),
    }]
}

impl App {
    /// Brings in what the preview shows.
    pub(super) fn import_run(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(matched) = self.states.records.import.matched.clone() else {
            return Ok(());
        };
        if self.import_is_open().is_some() {
            return Err(AppError::Refused(
                self.words().text("records-import-first-end"),
            ));
        }
        let (planned, _) = self.import_read(&matched, now);
        if planned.is_empty() {
            return Err(AppError::Refused(
                self.words().text("records-import-nothing"),
            ));
        }
        let plan = self.import_plan(&planned, now)?;
        let bytes = plan.to_json().map_err(AppError::Refused)?;
        self.store.save_private(FILE, &bytes)?;
        self.record_shop(now, setting(key_of(&plan.id), OPEN), now)?;
        // From here on trying again goes on with the rest.
        self.retry_with(RecordsAction::from(ImportAction::GoOn).into());
        self.import_lines(&plan, now)
    }

    /// The plan of the import that was not ended, where it is this device's.
    fn import_is_open(&self) -> Option<Plan> {
        let stored = &self.shop().stored;
        let open = |id: &str| stored.get(&key_of(id)).is_some_and(|v| v == OPEN);
        self.import_kept().filter(|plan| open(&plan.id))
    }

    /// The plan of this device's last import.
    fn import_kept(&self) -> Option<Plan> {
        let bytes = self.store.read_private(FILE)?;
        Plan::from_json(&bytes)
    }

    pub(super) fn import_go_on(&mut self, now: Moment) -> Result<(), AppError> {
        match self.import_is_open() {
            Some(plan) => {
                self.retry_with(RecordsAction::from(ImportAction::GoOn).into());
                self.import_lines(&plan, now)
            }
            None => Err(AppError::Refused(
                self.words().text("records-import-none-open"),
            )),
        }
    }

    /// Records what is not there yet, and the closing line.
    fn import_lines(&mut self, plan: &Plan, now: Moment) -> Result<(), AppError> {
        for line in &plan.lines {
            if self.import_find(line)?.is_none() {
                self.record(&line.piece, line.at, line.facts.clone(), now)?;
            }
        }
        self.record_shop(now, setting(key_of(&plan.id), DONE), now)?;
        let words = self.words();
        let said = words.with("records-import-done", &[("n", plan.pieces.into())]);
        self.states.records.import.matched = None;
        self.states.records.import.outcome = Some(said.clone());
        self.say(said);
        Ok(())
    }

    /// The line of a diary that records a planned line, where it stands and counts.
    fn import_find(&mut self, planned: &PlannedLine) -> Result<Option<LineId>, AppError> {
        let found: Vec<LineId> = self
            .lines_of(&planned.piece)?
            .iter()
            .filter(|l| l.at == planned.at && l.facts == planned.facts)
            .map(|l| l.id.clone())
            .collect();
        let Some(piece) = self.pieces.get(&planned.piece) else {
            return Ok(None);
        };
        let counts = |id: &LineId| {
            let mut entries = piece.diary.iter().filter(|e| e.entry.line == *id);
            entries.any(|e| !e.retracted)
        };
        Ok(found.into_iter().find(counts))
    }

    /// Takes back every line of the last import that counts. Pieces that were worked on since stay as they are.
    pub(super) fn import_take_back(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(plan) = self.import_kept() else {
            return Err(AppError::Refused(
                self.words().text("records-import-none-kept"),
            ));
        };
        self.retry_with(RecordsAction::from(ImportAction::TakeBack).into());
        let mut kept: BTreeSet<String> = BTreeSet::new();
        let ours: Vec<Option<LineId>> = plan
            .lines
            .iter()
            .map(|l| self.import_find(l))
            .collect::<Result<_, _>>()?;
        let mut taken = 0_usize;
        for (line, found) in plan.lines.iter().zip(&ours).rev() {
            let Some(found) = found else { continue };
            let made_here = plan
                .lines
                .iter()
                .any(|l| l.piece == line.piece && l.facts.contains(&PieceFact::Created));
            // A line's id is its own only within its piece.
            let of_import = |id: &LineId| {
                let mut all = plan.lines.iter().zip(&ours);
                all.any(|(l, found)| l.piece == line.piece && found.as_ref() == Some(id))
            };
            let worked_on = made_here
                && self.piece(&line.piece).is_some_and(|p| {
                    let mut counting = p.diary.iter().filter(|e| !e.retracted);
                    counting.any(|e| !of_import(&e.entry.line))
                });
            if worked_on {
                kept.insert(self.mark_of(&line.piece));
                continue;
            }
            self.record(
                &line.piece,
                now,
                vec![PieceFact::Retracts(found.clone())],
                now,
            )?;
            taken += 1;
        }
        let key = key_of(&plan.id);
        if self.shop().stored.contains_key(&key) {
            self.record_shop(now, setting(key, ""), now)?;
        }
        let words = self.words();
        let said = if kept.is_empty() {
            words.text("records-import-taken-back")
        } else {
            let marks = kept.into_iter().collect::<Vec<_>>().join(", ");
            words.with("records-import-kept", &[("marks", marks.into())])
        };
        self.states.records.import.outcome = Some(said.clone());
        if taken > 0 {
            self.say(said);
        }
        self.leave_what_is_gone(now);
        Ok(())
    }

    /// Asks what to do about an import that a crash cut off; called when the app opens.
    pub(crate) fn offer_import(&mut self) {
        let Some(plan) = self.import_is_open() else {
            return;
        };
        if self.store.read_only().is_some() {
            return;
        }
        let words = self.words();
        let choice = |id: &str, style, action: Option<ImportAction>| Choice {
            label: words.text(id),
            style,
            action: action.map(|a| RecordsAction::from(a).into()),
        };
        let question = Question {
            title: words.text("records-import-cut-off"),
            text: words.with("records-import-cut-off-text", &[("n", plan.pieces.into())]),
            choices: vec![
                choice(
                    "records-import-go-on",
                    ChoiceStyle::Primary,
                    Some(ImportAction::GoOn),
                ),
                choice(
                    "records-import-take-back",
                    ChoiceStyle::Danger,
                    Some(ImportAction::TakeBack),
                ),
                choice("records-import-later", ChoiceStyle::Plain, None),
            ],
            caution: false,
        };
        self.ask(question);
    }

    /// True where the last import of this device can be taken back: it is done, or was cut off.
    #[must_use]
    pub fn import_can_be_taken_back(&self) -> bool {
        self.import_kept()
            .is_some_and(|plan| self.shop().stored.contains_key(&key_of(&plan.id)))
    }
}
