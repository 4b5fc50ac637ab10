//! Record: one action of the turner becomes lines on disk, and lines taken back.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{LineId, PieceId, Scope};
use evenwall_piece::line::Line;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{ShopFact, fold_shop};

use crate::app::{App, AppError};
use crate::route::Page;
use crate::undo::Step;

impl App {
    /// Records facts about a piece as one line: on disk before this returns.
    ///
    /// # Errors
    /// [`AppError::NotSaved`]; nothing of the state has changed then.
    pub(crate) fn record(
        &mut self,
        piece: &PieceId,
        at: Moment,
        facts: Vec<PieceFact>,
        now: Moment,
    ) -> Result<LineId, AppError> {
        // Read before the write: what cannot be read back is not built upon.
        self.lines_of(piece)?;
        let line = match self.store.append_piece(piece, at, now, facts) {
            Ok(line) => line,
            Err(error) => {
                // It may stand on disk all the same (a sync that failed): show what is there before it is tried again.
                self.lines.remove(piece);
                if let Ok(lines) = self.lines_of(piece).cloned() {
                    let folded = fold_piece(piece.clone(), lines);
                    self.pieces.insert(piece.clone(), folded);
                }
                return Err(error.into());
            }
        };
        let id = line.id.clone();
        let lines = self.lines.entry(piece.clone()).or_default();
        lines.push(line);
        self.pieces
            .insert(piece.clone(), fold_piece(piece.clone(), lines.clone()));
        self.written.push((Scope::Piece(piece.clone()), id.clone()));
        Ok(id)
    }

    /// The lines of a piece, read from the store when its turn comes.
    ///
    /// # Errors
    /// [`AppError::NotSaved`] where they cannot be read.
    pub(crate) fn lines_of(&mut self, piece: &PieceId) -> Result<&Vec<Line<PieceFact>>, AppError> {
        if !self.lines.contains_key(piece) {
            let lines = self.store.load_piece(piece)?;
            self.lines.insert(piece.clone(), lines);
        }
        Ok(self.lines.entry(piece.clone()).or_default())
    }

    /// Records facts about the workshop as one line.
    ///
    /// # Errors
    /// [`AppError::NotSaved`]; nothing of the state has changed then.
    pub(crate) fn record_shop(
        &mut self,
        at: Moment,
        facts: Vec<ShopFact>,
        now: Moment,
    ) -> Result<LineId, AppError> {
        let line = self.store.append_shop(at, now, facts)?;
        let id = line.id.clone();
        self.shop_lines.push(line);
        self.shop = fold_shop(self.shop_lines.clone());
        self.written.push((Scope::Shop, id.clone()));
        Ok(id)
    }

    fn retract_all(&mut self, step: &Step, now: Moment) -> Result<Step, AppError> {
        let mut lines = Vec::new();
        // Backwards: what was built on comes away first.
        for (scope, line) in step.lines.iter().rev() {
            let retraction = match scope {
                Scope::Piece(id) => {
                    self.record(id, now, vec![PieceFact::Retracts(line.clone())], now)?
                }
                Scope::Shop => {
                    self.record_shop(now, vec![ShopFact::Retracts(line.clone())], now)?
                }
            };
            lines.push((scope.clone(), retraction));
        }
        self.written.clear();
        Ok(Step {
            lines,
            said: step.said.clone(),
        })
    }

    pub(crate) fn undo_last(&mut self, now: Moment) -> Result<(), AppError> {
        if let Some(step) = self.undo.last_done().cloned() {
            let retraction = self.retract_all(&step, now);
            if retraction.is_err() {
                // What could be taken back is a step of its own, so that it can be brought back.
                let said = self
                    .words()
                    .with("undo-partly", &[("what", step.said.as_str().into())]);
                self.say(said);
            }
            self.undo.took_back(retraction?);
            self.leave_what_is_gone(now);
        }
        Ok(())
    }

    pub(crate) fn redo_last(&mut self, now: Moment) -> Result<(), AppError> {
        if let Some(step) = self.undo.last_taken_back().cloned() {
            let redo = self.retract_all(&step, now)?;
            self.undo.did_again(redo);
        }
        Ok(())
    }

    /// Says that what was written in this action is nothing to undo.
    pub(crate) fn nothing_to_undo(&mut self) {
        self.written.clear();
    }

    /// Leaves the pages about a piece that goes out of sight.
    pub(crate) fn leave_piece(&mut self, piece: &PieceId, now: Moment) {
        self.route.pages.retain(|p| p.piece() != Some(piece));
        self.entered(now);
    }

    /// Leaves the pages of a piece whose making was taken back.
    fn leave_what_is_gone(&mut self, now: Moment) {
        let gone = |p: &Page, app: &Self| p.piece().is_some_and(|id| app.piece(id).is_none());
        let before = self.route.pages.len();
        let mut pages = std::mem::take(&mut self.route.pages);
        pages.retain(|p| !gone(p, self));
        self.route.pages = pages;
        if self.route.pages.len() != before {
            self.entered(now);
        }
    }
}
