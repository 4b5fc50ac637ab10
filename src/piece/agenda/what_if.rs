//! What if: what an answer would do and when the next look would fall due, for the words on the answer keys.

use chrono::NaiveDate;

use super::bench::Bench;
use super::due::next_look_due;
use super::standing::standing;
use crate::bag::{BagAct, BagAnswer, BagState, Wait, rule_with};
use crate::piece::Piece;
use crate::vocabulary::BagFeel;

/// What an answer does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Outcome {
    /// What is done.
    pub act: BagAct,
    /// The state of the bag afterwards.
    pub state: BagState,
    /// The local day of the next look, bag days and days away applied; `None` where there is none until reminders start
    /// again.
    pub next_look: Option<NaiveDate>,
    /// True where Air is offered: nothing on the bag twice running.
    pub offers_air: bool,
}

/// What an answer given now would do, with mould ticked or not; exactly what the agenda says once it is recorded. `None`
/// outside the drying stages.
#[must_use]
pub fn what_if(piece: &Piece, bench: &Bench, answer: BagAnswer, mould: bool) -> Option<Outcome> {
    let mut s = standing(piece, bench)?;
    let rule = rule_with(s.state, answer, mould);
    let feel = match answer {
        BagAnswer::Wet => Some(BagFeel::Wet),
        BagAnswer::Damp => Some(BagFeel::Damp),
        BagAnswer::Nothing => Some(BagFeel::Nothing),
        _ => None,
    };
    if answer.is_a_look() {
        s.look(bench.now, feel, mould || answer == BagAnswer::Mould);
    }
    // Whoever looks is back, so that days away no longer put off what comes next.
    let (due, _) = if answer.is_a_look() {
        next_look_due(piece, &bench.worked_today(), &s)
    } else {
        next_look_due(piece, bench, &s)
    };
    let next_look = match rule.next {
        Wait::Never => None,
        _ => Some(due),
    };
    Some(Outcome {
        act: rule.act,
        state: s.state,
        next_look,
        offers_air: rule.act == BagAct::OfferAir && s.dry_twice_on.is_some(),
    })
}

/// The day of the next look of a drying piece as it stands; `None` outside the drying stages.
#[must_use]
pub fn next_look(piece: &Piece, bench: &Bench) -> Option<NaiveDate> {
    let s = standing(piece, bench)?;
    Some(next_look_due(piece, bench, &s).0)
}
