//! Typed: the shelf in the words of the domain.

use chrono::{DateTime, FixedOffset};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{PieceId, Scope};
use evenwall_piece::line::Line;
use evenwall_piece::shop::ShopFact;

use crate::error::ShelfError;
use crate::format::{Recorded, facts, write};
use crate::line::RawLine;
use crate::shelf::Shelf;

/// All diaries of a shelf.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Everything {
    /// The workshop's lines in the order of the fold.
    pub shop: Vec<Line<ShopFact>>,
    /// The pieces by id, each with its lines in the order of the fold.
    pub pieces: Vec<(PieceId, Vec<Line<PieceFact>>)>,
}

/// What one folder gives when everything is read.
enum Part<T> {
    Shop(Vec<Line<ShopFact>>),
    Piece(T),
}

impl Shelf {
    /// The diary of a piece in the order of the fold; empty where there is no such piece.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn load_piece(&mut self, id: &PieceId) -> Result<Vec<Line<PieceFact>>, ShelfError> {
        Ok(typed(self.load(&Scope::Piece(id.clone()))?))
    }

    /// The workshop's lines in the order of the fold.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn load_shop(&mut self) -> Result<Vec<Line<ShopFact>>, ShelfError> {
        Ok(typed(self.load(&Scope::Shop)?))
    }

    /// All diaries at once, read by several threads.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn load_everything(&mut self) -> Result<Everything, ShelfError> {
        let (shop, pieces) = self.load_and_fold(|_, lines| lines)?;
        Ok(Everything { shop, pieces })
    }

    /// As [`Shelf::load_everything`], but makes something of each piece's lines right where they were read, on several
    /// threads, so that the diaries of a long life need not all be held at once: a summary, a folded piece.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    #[allow(clippy::type_complexity)] // The shop's lines beside one value a piece.
    pub fn load_and_fold<T: Send>(
        &mut self,
        fold: impl Fn(&PieceId, Vec<Line<PieceFact>>) -> T + Sync,
    ) -> Result<(Vec<Line<ShopFact>>, Vec<(PieceId, T)>), ShelfError> {
        let all = self.load_all(|scope, lines| match scope {
            Scope::Shop => Part::Shop(typed(lines)),
            Scope::Piece(id) => Part::Piece(fold(id, typed(lines))),
        })?;
        let (mut shop, mut pieces) = (Vec::new(), Vec::new());
        for (scope, part) in all {
            match (scope, part) {
                (Scope::Piece(id), Part::Piece(value)) => pieces.push((id, value)),
                (_, Part::Shop(lines)) => shop = lines,
                (Scope::Shop, Part::Piece(_)) => {}
            }
        }
        Ok((shop, pieces))
    }

    /// Records one action on a piece as one line, durable when this returns. The first makes the piece.
    ///
    /// # Errors
    /// As [`Shelf::append`]; also where a fact holds a number that is none.
    pub fn append_piece(
        &mut self,
        id: &PieceId,
        at: DateTime<FixedOffset>,
        noted_at: DateTime<FixedOffset>,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, ShelfError> {
        self.append_typed(&Scope::Piece(id.clone()), at, noted_at, facts)
    }

    /// Records one action on the workshop as one line, durable when this returns.
    ///
    /// # Errors
    /// As [`Shelf::append`]; also where a fact holds a number that is none.
    pub fn append_shop(
        &mut self,
        at: DateTime<FixedOffset>,
        noted_at: DateTime<FixedOffset>,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, ShelfError> {
        self.append_typed(&Scope::Shop, at, noted_at, facts)
    }

    fn append_typed<F: Recorded>(
        &mut self,
        scope: &Scope,
        at: DateTime<FixedOffset>,
        noted_at: DateTime<FixedOffset>,
        facts: Vec<F>,
    ) -> Result<Line<F>, ShelfError> {
        let raw: Result<Vec<_>, _> = facts.iter().map(write).collect();
        let raw = raw.map_err(|source| ShelfError::NotRecordable { source })?;
        let appended = self.append_raw(scope, at, noted_at, raw)?;
        Ok(Line {
            id: appended.id,
            seq: appended.seq,
            at,
            noted_at,
            facts,
        })
    }
}

fn typed<F: Recorded>(lines: Vec<RawLine>) -> Vec<Line<F>> {
    let line = |raw: RawLine| Line {
        facts: facts(&raw),
        id: raw.id,
        seq: raw.seq,
        at: raw.at,
        noted_at: raw.noted_at,
    };
    lines.into_iter().map(line).collect()
}
