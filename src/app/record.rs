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
        self.record_with_photos(piece, at, facts, &[], now)
    }

    /// The same, together with the photos that the facts name.
    ///
    /// # Errors
    /// As [`App::record`]; refused where this store keeps no photos.
    pub(crate) fn record_with_photos(
        &mut self,
        piece: &PieceId,
        at: Moment,
        facts: Vec<PieceFact>,
        photos: &[Vec<u8>],
        now: Moment,
    ) -> Result<LineId, AppError> {
        // Read before the write: what cannot be read back is not built upon.
        self.lines_of(piece)?;
        // Tried again after a write that was not confirmed but stands all the same: it is not written twice.
        if self.retry.is_some()
            && let Some((place, line)) = self.unconfirmed.take()
            && place == *piece
            && line.facts == facts
        {
            self.written
                .push((Scope::Piece(piece.clone()), line.id.clone()));
            return Ok(line.id);
        }
        let appended = if photos.is_empty() {
            self.store.append_piece(piece, at, now, facts.clone())
        } else {
            let nowhere = self.photos_nowhere();
            let store = self.store.photos_mut().ok_or(nowhere)?;
            store.append_with_photos(piece, at, now, facts.clone(), photos)
        };
        let line = match appended {
            Ok(line) => line,
            Err(error) => {
                // It may stand on disk all the same (a sync that failed): show what is there before it is tried again.
                self.lines.remove(piece);
                if let Ok(lines) = self.lines_of(piece).cloned() {
                    self.unconfirmed = lines
                        .iter()
                        .max_by_key(|l| l.seq)
                        .filter(|l| l.noted_at == now && l.facts == facts)
                        .map(|l| (piece.clone(), l.clone()));
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

    /// Takes the lines of a step back one by one, the last first: what was built on comes away first. Gives what was
    /// written, what is left of the step where a write failed, and the failure.
    fn retract_each(&mut self, step: &Step, now: Moment) -> (Step, Step, Result<(), AppError>) {
        let part = || Step {
            lines: Vec::new(),
            said: step.said.clone(),
        };
        let (mut written, mut left) = (part(), part());
        let mut outcome = Ok(());
        for (scope, line) in step.lines.iter().rev() {
            let retraction = match (&outcome, scope) {
                (Err(_), _) => {
                    left.lines.insert(0, (scope.clone(), line.clone()));
                    continue;
                }
                (Ok(()), Scope::Piece(id)) => {
                    self.record(id, now, vec![PieceFact::Retracts(line.clone())], now)
                }
                (Ok(()), Scope::Shop) => {
                    self.record_shop(now, vec![ShopFact::Retracts(line.clone())], now)
                }
            };
            match retraction {
                Ok(retraction) => written.lines.push((scope.clone(), retraction)),
                Err(error) => {
                    left.lines.insert(0, (scope.clone(), line.clone()));
                    outcome = Err(error);
                }
            }
        }
        self.written.clear();
        (written, left, outcome)
    }

    pub(crate) fn undo_last(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(step) = self.undo.last_done().cloned() else {
            return Ok(());
        };
        let (retraction, left, outcome) = self.retract_each(&step, now);
        // Where only a part could be taken back, the rest stays what undo takes back: trying again goes on with it.
        self.undo.took_back(retraction, left);
        self.leave_what_is_gone(now);
        outcome
    }

    pub(crate) fn redo_last(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(step) = self.undo.last_taken_back().cloned() else {
            return Ok(());
        };
        let (redo, left, outcome) = self.retract_each(&step, now);
        self.undo.did_again(redo, left);
        outcome
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
    pub(crate) fn leave_what_is_gone(&mut self, now: Moment) {
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
