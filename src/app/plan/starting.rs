//! Starting: a plan becomes a piece with one tap, or is written to the piece it is of; as one step for undo.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::mark::suggested_mark;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Group;

use crate::app::{App, AppError};
use crate::details;
use crate::route::Page;

use super::PlanField;
use super::results::Results;
use super::view::WriteView;

impl App {
    /// What the plan says of a piece: all that was entered, and what was reckoned from it while it is still to be cut.
    fn plan_details(&self, results: &Results) -> Vec<(DetailField, DetailValue)> {
        let draft = self.plan_draft();
        let mut all: Vec<(DetailField, DetailValue)> = Vec::new();
        let mut text = |field, value: Option<&str>| {
            all.extend(value.map(|v| (field, DetailValue::Text(v.to_owned()))));
        };
        text(DetailField::Form, draft.chosen("form"));
        text(DetailField::Wood, draft.wood());
        text(DetailField::Grain, draft.chosen("grain"));
        text(DetailField::Pith, draft.chosen("pith"));
        text(DetailField::Jaws, self.plan_jaws().map(|j| j.name.as_str()));
        for field in PlanField::ALL {
            if let (Some(detail), Some(size)) = (field.detail(), draft.said(field)) {
                let measure = Measure {
                    value: size.value,
                    typed: size.typed.clone(),
                };
                all.push((detail, DetailValue::Length(measure)));
            }
        }
        let named = draft.chosen("bar");
        if let Some(bar) = self
            .shop()
            .bars
            .iter()
            .find(|b| Some(b.name.as_str()) == named)
        {
            all.push((
                DetailField::BarDiameter,
                self.plan_measure(DetailField::BarDiameter, bar.diameter_mm),
            ));
        }
        // What rests on a size that was only assumed is not recorded as if it were said.
        let still_to_cut = self.plan_piece().is_none_or(|p| {
            matches!(p.stage().group(), Group::Roughing | Group::Stabilising) && p.living()
        });
        if still_to_cut && draft.said(PlanField::Diameter).is_some() {
            let reckoned = [
                (
                    DetailField::WallWanted,
                    results.wall.as_ref().ok().map(|w| w.advised),
                ),
                (DetailField::FloorWanted, results.floor),
                (
                    DetailField::SpigotDiameter,
                    results.spigot.as_ref().ok().map(|s| s.advised),
                ),
            ];
            for (field, mm) in reckoned {
                all.extend(mm.map(|mm| (field, self.plan_measure(field, mm))));
            }
        }
        all
    }

    fn plan_measure(&self, field: DetailField, mm: f64) -> DetailValue {
        let typed = details::quantity(field)
            .map(|q| self.numbers().quantity(q, mm).number)
            .unwrap_or_default();
        DetailValue::Length(Measure { value: mm, typed })
    }

    /// What would be new to the piece whose plan is open.
    fn plan_new_to(&self, piece: &Piece, results: &Results) -> Vec<(DetailField, DetailValue)> {
        let same = |field: DetailField, value: &DetailValue| match (piece.details.get(field), value)
        {
            (Some(DetailValue::Length(a)), DetailValue::Length(b)) => {
                (a.value - b.value).abs() < 1e-6
            }
            (Some(old), new) => old == new,
            (None, _) => false,
        };
        let mut all = self.plan_details(results);
        all.retain(|(field, value)| !same(*field, value));
        all
    }

    /// What *Use for this piece* writes, as it is listed before.
    pub(super) fn plan_writes(&self, results: &Results) -> Vec<WriteView> {
        let Some(piece) = self.plan_piece() else {
            return Vec::new();
        };
        self.plan_new_to(piece, results)
            .into_iter()
            .map(|(field, value)| {
                let unit = details::unit(self, field);
                let text = details::value_text(self, field, &value);
                WriteView {
                    label: details::label(self, field),
                    value: if unit.is_empty() {
                        text
                    } else {
                        format!("{text}\u{a0}{unit}")
                    },
                }
            })
            .collect()
    }

    pub(super) fn plan_go(&mut self, now: Moment) -> Result<(), AppError> {
        let results = self.plan_results();
        match self.plan_piece() {
            Some(piece) => {
                let id = piece.id.clone();
                let said = self
                    .words()
                    .with("plan-written", &[("mark", piece.mark().into())]);
                let facts = as_facts(self.plan_new_to(piece, &results));
                if facts.is_empty() {
                    return Ok(());
                }
                self.record(&id, now, facts, now)?;
                self.say(said);
                Ok(())
            }
            None if self.states.plan.of.is_some() => Ok(()),
            None => self.plan_start(&results, now),
        }
    }

    fn plan_start(&mut self, results: &Results, now: Moment) -> Result<(), AppError> {
        let mark = suggested_mark(self.pieces().chain(self.deleted_pieces()));
        let mut facts = vec![
            PieceFact::Created,
            PieceFact::Detail {
                field: DetailField::Mark,
                value: Some(DetailValue::Text(mark.clone())),
            },
        ];
        facts.extend(as_facts(self.plan_details(results)));
        let id = match self.states.plan.unsaved.take() {
            Some(id) => id,
            None => {
                let slug = self.new_slug(&mark);
                PieceId::new(&slug).map_err(|error| AppError::Refused(error.to_string()))?
            }
        };
        if let Err(error) = self.record(&id, now, facts, now) {
            self.states.plan.unsaved = Some(id);
            return Err(error);
        }
        self.say(self.words().with("plan-started", &[("mark", mark.into())]));
        self.open_page(Page::Piece(id), now);
        Ok(())
    }
}

fn as_facts(details: Vec<(DetailField, DetailValue)>) -> Vec<PieceFact> {
    details
        .into_iter()
        .map(|(field, value)| PieceFact::Detail {
            field,
            value: Some(value),
        })
        .collect()
}
