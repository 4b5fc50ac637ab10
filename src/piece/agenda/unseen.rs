//! Unseen: how long since anybody looked at a piece, and how long since anything was recorded at all.

use chrono::NaiveDate;

use super::bench::Bench;
use super::calendar::days_from_to;
use crate::fact::PieceFact;
use crate::ids::PieceId;
use crate::piece::Piece;
use crate::stage::Group;

/// A drying piece with the time since it was last in somebody's hands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unseen {
    /// Which piece.
    pub piece: PieceId,
    /// The local day of the last look, weighing or reading; `None` where there was none yet.
    pub last: Option<NaiveDate>,
    /// Days since then, or since it came into its stage.
    pub days: i64,
}

/// How long since a piece was last in somebody's hands; `None` outside the drying stages. What is dated after now does not
/// count.
pub(crate) fn unseen(piece: &Piece, bench: &Bench) -> Option<Unseen> {
    if piece.stage().group() != Group::Drying {
        return None;
    }
    let before = |at: &chrono::DateTime<chrono::FixedOffset>| *at <= bench.now;
    let look = piece.looks.iter().rev().map(|l| l.at).find(before);
    let weighed = piece.weighings.iter().rev().map(|w| w.at).find(before);
    let read = piece.readings.iter().map(|r| r.at).filter(before).max();
    let last = look.into_iter().chain(weighed).chain(read).max();
    let since = last.or(piece.stage_since().filter(before));
    let last = last.map(|m| m.date_naive());
    Some(Unseen {
        piece: piece.id.clone(),
        last,
        days: since.map_or(0, |m| days_from_to(m.date_naive(), bench.today).max(0)),
    })
}

/// Whole days since anything was recorded, by the time at which it was written down; days away do not count as silence.
/// `None` where nothing was ever recorded.
pub(crate) fn silent_days<'a>(
    pieces: impl Iterator<Item = &'a Piece>,
    bench: &Bench,
) -> Option<i64> {
    let noted = pieces
        .flat_map(|p| p.diary.iter())
        .filter(|e| !matches!(e.fact, PieceFact::ForecastMade(_)))
        .map(|e| e.noted_at)
        .filter(|at| *at <= bench.now)
        .max();
    let shop = bench.shop.history.iter().map(|e| e.at);
    let shop = shop.filter(|at| *at <= bench.now).max();
    let mut last = noted.into_iter().chain(shop).max()?.date_naive();
    for away in bench.days_away() {
        if away.from <= bench.today {
            last = last.max(away.back.min(bench.today));
        }
    }
    Some(days_from_to(last, bench.today).max(0))
}
