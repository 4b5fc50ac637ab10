//! Round: all bags, or all weighings, done in one go.
//!
//! A round takes every bag due within a day of it, so that named bag days need no other; what was felt or bagged today is
//! left alone until its day.

use chrono::NaiveDate;

use crate::agenda::{
    Bench, Task, TaskKind, by_mark, by_need, is_paused, standing, tasks_of, weighing,
};
use crate::agenda::{days_from_to, settled};
use crate::bag::BagState;
use crate::ids::PieceId;
use crate::piece::{Moment, Piece};
use crate::stage::Stage;
use crate::weights::last_weighing;

/// One bag of a round.
#[derive(Debug, Clone, PartialEq)]
pub struct BagRow {
    /// Its look.
    pub look: Task,
    /// The state of the bag, for [`crate::bag::rule`].
    pub state: BagState,
}

/// A bag round.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BagRound {
    /// The bags: what matters most first, then the latest, then by mark.
    pub bags: Vec<BagRow>,
    /// Bags due that could not be found last time, by mark.
    pub missing: Vec<PieceId>,
}

/// The bags due within a day of today.
#[must_use]
pub fn bag_round(pieces: &[&Piece], bench: &Bench) -> BagRound {
    let mut bags: Vec<(BagRow, &str)> = Vec::new();
    let mut missing: Vec<(PieceId, &str)> = Vec::new();
    for piece in pieces.iter().filter(|p| p.living()) {
        let Some(s) = standing(piece, bench).filter(|s| s.state.is_felt()) else {
            continue;
        };
        let done_today = s.anchor.is_some_and(|a| a.date_naive() >= bench.today);
        let reach = if done_today { 0 } else { 1 };
        for task in tasks_of(piece, bench) {
            if days_from_to(bench.today, task.due) > reach {
                continue;
            }
            match task.kind {
                TaskKind::Look => bags.push((
                    BagRow {
                        look: task,
                        state: s.state,
                    },
                    piece.mark(),
                )),
                TaskKind::Find => missing.push((task.piece, piece.mark())),
                _ => {}
            }
        }
    }
    bags.sort_by(|(a, m), (b, n)| by_need((&a.look, m), (&b.look, n)));
    missing.sort_by(|(a, m), (b, n)| by_mark(m, n).then_with(|| a.cmp(b)));
    BagRound {
        bags: bags.into_iter().map(|(row, _)| row).collect(),
        missing: missing.into_iter().map(|(id, _)| id).collect(),
    }
}

/// Which pieces a weigh round takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WeighWhich {
    /// Those due within a day of today and not weighed today.
    Due,
    /// All in a stage, due or not.
    InStage(Stage),
}

/// One piece of a weigh round.
#[derive(Debug, Clone, PartialEq)]
pub struct WeighRow {
    /// Which piece.
    pub piece: PieceId,
    /// The day on which its weighing is due, where one is asked for.
    pub due: Option<NaiveDate>,
    /// Its last weighing: when, and net in g.
    pub last: Option<(Moment, f64)>,
    /// The tare used last, g; 0 where it was weighed bare.
    pub tare_g: f64,
}

/// The pieces to weigh, one row a piece, by mark. Paused, half-turned and missing pieces are left out.
#[must_use]
pub fn weigh_round(pieces: &[&Piece], bench: &Bench, which: WeighWhich) -> Vec<WeighRow> {
    let here = |p: &&&Piece| {
        p.living() && p.not_found.is_none() && p.half_turned.is_none() && !is_paused(p, bench.today)
    };
    let mut rows: Vec<(WeighRow, &str)> = Vec::new();
    for piece in pieces.iter().filter(here) {
        let last = last_weighing(piece, bench.now);
        let due = standing(piece, bench)
            .and_then(|s| weighing(piece, bench, &s))
            .map(|w| settled(w.due, piece, bench).0);
        let takes = match which {
            WeighWhich::InStage(stage) => piece.stage() == stage,
            WeighWhich::Due => {
                let today_done = last.is_some_and(|w| w.at.date_naive() >= bench.today);
                !today_done && due.is_some_and(|d| days_from_to(bench.today, d) <= 1)
            }
        };
        if takes {
            let row = WeighRow {
                piece: piece.id.clone(),
                due,
                last: last.map(|w| (w.at, w.net_g())),
                tare_g: last.map_or(0.0, |w| w.tare_g),
            };
            rows.push((row, piece.mark()));
        }
    }
    rows.sort_by(|(a, m), (b, n)| by_mark(m, n).then_with(|| a.piece.cmp(&b.piece)));
    rows.into_iter().map(|(row, _)| row).collect()
}
