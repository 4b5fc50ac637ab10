//! Saving: one line a piece, and another from the same log.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::mark::mark_problem;
use evenwall_piece::piece::Moment;

use super::draft::Draft;
use crate::app::{App, AppError};
use crate::details;
use crate::route::Page;

/// What pieces from one log share.
const COPIED: [DetailField; 14] = [
    DetailField::Form,
    DetailField::Wood,
    DetailField::Grain,
    DetailField::Felled,
    DetailField::Source,
    DetailField::Log,
    DetailField::Diameter,
    DetailField::Height,
    DetailField::SpigotLength,
    DetailField::Mouth,
    DetailField::WallWanted,
    DetailField::WallFinish,
    DetailField::FloorWanted,
    DetailField::Outline,
];

impl App {
    /// Fills the form from a piece of the same log: wood, log, source, felled, form and sizes; neither place nor notes.
    pub(super) fn another_like(&mut self, id: &PieceId) -> Result<(), AppError> {
        let Some(piece) = self.piece(id) else {
            let gone = self.words().text("new-piece-like-gone");
            return Err(AppError::Refused(gone));
        };
        let mut draft = Draft::default();
        draft.like = Some(id.clone());
        for field in COPIED {
            let text = match piece.details.get(field) {
                None => continue,
                // As it was typed where that still says the same, so that nothing is lost by rounding.
                Some(DetailValue::Length(m)) if self.reads_as(field, &m.typed, m.value) => {
                    m.typed.clone()
                }
                // Choices by their keys.
                Some(DetailValue::Text(key)) if !details::choices(self, field).is_empty() => {
                    key.clone()
                }
                Some(value) => details::value_text(self, field, value),
            };
            draft.copy(field, text);
        }
        if draft.text(DetailField::Log).is_empty() && !piece.mark().is_empty() {
            let log = self
                .words()
                .with("new-piece-log-of", &[("mark", piece.mark().into())]);
            draft.copy(DetailField::Log, log);
        }
        self.states.new_piece.draft = draft;
        Ok(())
    }

    fn reads_as(&self, field: DetailField, typed: &str, mm: f64) -> bool {
        let Some(quantity) = details::quantity(field) else {
            return false;
        };
        let parsed = self.numbers().parse(quantity, typed).ok();
        parsed
            .as_ref()
            .and_then(|p| p.value())
            .is_some_and(|entry| (entry.value - mm).abs() < 1e-9)
    }

    /// Saves the draft: one line a piece; several pieces are one step for undo. Where a write fails, what was saved stands
    /// and the form goes on with the rest.
    pub(super) fn save_new_piece(&mut self, now: Moment) -> Result<(), AppError> {
        self.states.new_piece.draft.searching_wood = false;
        let first = self.draft_mark();
        if let Some((problem, only_warns)) = self.draft_mark_problem()
            && !only_warns
        {
            return Err(AppError::Refused(problem));
        }
        let at = self.draft_since(now).map_err(|error| {
            self.states.new_piece.draft.more = true;
            AppError::Refused(error)
        })?;
        let marks = self.draft_marks();
        let wanted = self.states.new_piece.draft.count;
        if marks.len() < wanted {
            let sentence = self.words().with(
                "new-piece-no-marks",
                &[("mark", first.into()), ("n", wanted.into())],
            );
            return Err(AppError::Refused(sentence));
        }
        // All is read before anything is written.
        let mut lines = Vec::with_capacity(marks.len());
        for mark in &marks {
            let facts = self.draft_facts(mark, now).map_err(|(field, error)| {
                self.states.new_piece.draft.more = true;
                AppError::Refused(self.words().with(
                    "new-piece-at-fault",
                    &[
                        ("field", details::label(self, field).into()),
                        ("error", error.into()),
                    ],
                ))
            })?;
            lines.push(facts);
        }
        self.give_log_to_the_first(now)?;
        let mut saved: Vec<PieceId> = Vec::new();
        for (mark, facts) in marks.iter().zip(lines) {
            let id = match self.states.new_piece.draft.unsaved_id.take() {
                Some(id) => id,
                None => self.new_piece_id(mark)?,
            };
            if let Err(error) = self.record(&id, at, facts, now) {
                let draft = &mut self.states.new_piece.draft;
                draft.unsaved_id = Some(id);
                draft.type_into(DetailField::Mark, mark.clone());
                draft.count -= saved.len();
                return Err(error);
            }
            saved.push(id);
        }
        self.say_saved(&marks);
        self.states.new_piece.draft = Draft::default();
        self.back(now);
        if let [only] = saved.as_slice() {
            self.open_page(Page::Piece(only.clone()), now);
        }
        Ok(())
    }

    /// The piece that this one is like gets the log they share, where it has none yet.
    fn give_log_to_the_first(&mut self, now: Moment) -> Result<(), AppError> {
        let draft = &self.states.new_piece.draft;
        let Some(first) = draft.like.as_ref().and_then(|id| self.piece(id)) else {
            return Ok(());
        };
        if first.details.text(DetailField::Log).is_some() {
            return Ok(());
        }
        let typed = draft.text(DetailField::Log);
        let id = first.id.clone();
        if let Ok(value @ Some(_)) = details::understand(self, DetailField::Log, typed, now) {
            let field = DetailField::Log;
            self.record(&id, now, vec![PieceFact::Detail { field, value }], now)?;
        }
        Ok(())
    }

    fn new_piece_id(&mut self, mark: &str) -> Result<PieceId, AppError> {
        let slug = self.new_slug(mark);
        PieceId::new(&slug).map_err(|error| AppError::Refused(error.to_string()))
    }

    fn say_saved(&mut self, marks: &[String]) {
        let words = self.words();
        let said = match marks {
            [only] => words.with("new-piece-saved", &[("mark", only.into())]),
            [first, .., last] => words.with(
                "new-piece-saved-several",
                &[
                    ("n", marks.len().into()),
                    ("first", first.into()),
                    ("last", last.into()),
                ],
            ),
            [] => return,
        };
        self.say(said);
    }

    /// True where a mark can be taken by a piece: nobody living has it, and it is neither blank nor too long.
    #[must_use]
    pub fn mark_is_free(&self, mark: &str, but: Option<&PieceId>) -> bool {
        let others = self.pieces().filter(|p| Some(&p.id) != but);
        mark_problem(mark, others).is_none_or(|problem| problem.only_warns())
    }
}
