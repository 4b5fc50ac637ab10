//! Standing: where the looks of the present stage have brought a drying piece: the state of its bag, the last answer that
//! counts and what it waits for.
//!
//! What is dated after now is left out: a clock that was ahead never postpones a look.

use chrono::NaiveDate;

use super::bench::Bench;
use super::calendar::{days_after, days_from_to, on_bag_day};
use crate::bag::{BagAnswer, BagState, Wait, rule_with};
use crate::fact::PieceFact;
use crate::piece::{Moment, Piece, StageVisit};
use crate::rhythm::RhythmOf;
use crate::stage::{Group, Stage};
use crate::vocabulary::{BagFeel, Method};

/// Where a drying piece stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The state of its bag.
    pub state: BagState,
    /// Whose rhythm it follows.
    pub of: RhythmOf,
    /// The day on which the stay (or the other method) began; `None` where that is dated after now.
    pub start: Option<NaiveDate>,
    /// The last answer that counts, or the start: the look is due so many days after; `None` where only dates after now
    /// are known, then it is due now.
    pub anchor: Option<Moment>,
    /// True where the anchor is an answer, false where it is the start.
    pub answered: bool,
    /// What it waits for since the anchor.
    pub wait: Wait,
    /// How the bag felt last within this stay.
    pub feel: Option<BagFeel>,
    /// The day of the second dry look in a row.
    pub dry_twice_on: Option<NaiveDate>,
    /// True where a damp bag was found in Air and closed again.
    pub damp_in_air: bool,
    /// True where mould was seen within this stay.
    pub mouldy: bool,
}

/// The rhythm of a drying piece, `None` outside the drying stages.
fn rhythm_of(stage: Stage, method: Method) -> Option<RhythmOf> {
    if stage.group() != Group::Drying {
        return None;
    }
    Some(match (stage, method) {
        (Stage::Settle, _) => RhythmOf::Settle,
        (Stage::Indoors, _) => RhythmOf::Indoors,
        (_, Method::Paper) => RhythmOf::Paper,
        (_, Method::Shavings) => RhythmOf::Shavings,
        (_, Method::Wax) => RhythmOf::Wax,
        (_, Method::Cupboard) => RhythmOf::Cupboard,
        (_, Method::Alcohol) => RhythmOf::Alcohol,
        (_, Method::OnceThin) => RhythmOf::OnceThin,
        (Stage::Air, Method::Bag) => RhythmOf::Air,
        (_, Method::Bag) => RhythmOf::Bag,
    })
}

/// The present stay: where it begins among the visits, and the moment from which looks of its stage belong to it (an
/// earlier stay in the same stage keeps its own). Looks back-dated to before the stay count for it.
fn stay(visits: &[StageVisit]) -> Option<(&StageVisit, Option<Moment>)> {
    let stage = visits.last()?.stage;
    let first = visits
        .iter()
        .rposition(|v| v.stage != stage)
        .map_or(0, |i| i + 1);
    let earlier = visits[..first].iter().rposition(|v| v.stage == stage);
    let bound = earlier.map(|i| visits[i + 1].since);
    Some((visits.get(first)?, bound))
}

/// When the present method was last chosen in place of another, back to the bag included; `None` where the bag was never
/// left.
fn method_since(piece: &Piece) -> Option<Moment> {
    let (mut method, mut since) = (Method::Bag, None);
    for entry in piece.diary.iter().filter(|e| !e.retracted) {
        if let PieceFact::MethodChosen(chosen) = entry.fact {
            if chosen != method {
                since = Some(entry.at);
            }
            method = chosen;
        }
    }
    since
}

/// Where a piece stands; `None` outside the drying stages.
#[must_use]
pub fn standing(piece: &Piece, bench: &Bench) -> Option<Standing> {
    let stage = piece.stage();
    let of = rhythm_of(stage, piece.method)?;
    let (visit, mut bound) = stay(&piece.visits)?;
    let mut since = visit.since;
    // Settle and Indoors go on whatever the method; elsewhere a method begins anew, the bag chosen again too.
    let by_method = !matches!(of, RhythmOf::Settle | RhythmOf::Indoors);
    if by_method && let Some(chosen) = method_since(piece).filter(|m| *m > since) {
        since = chosen;
        bound = Some(chosen);
    }
    let known = (since <= bench.now).then_some(since);
    let state = match of {
        RhythmOf::Bag => BagState::Closed,
        RhythmOf::Air => BagState::Airing,
        _ => BagState::NoBag,
    };
    let mut s = Standing {
        state,
        of,
        start: known.map(|m| m.date_naive()),
        anchor: known,
        answered: false,
        wait: if state == BagState::Closed {
            Wait::First
        } else {
            Wait::Rhythm
        },
        feel: None,
        dry_twice_on: None,
        damp_in_air: false,
        mouldy: false,
    };
    let counts = |at: Moment, in_stage: Stage| {
        in_stage == stage && at <= bench.now && bound.is_none_or(|b| at >= b)
    };
    let mut weighings = piece
        .weighings
        .iter()
        .filter(|w| counts(w.at, w.stage))
        .peekable();
    for look in piece.looks.iter().filter(|l| counts(l.at, l.stage)) {
        while let Some(w) = weighings.next_if(|w| w.at <= look.at) {
            s.weighed(w.at);
        }
        s.look(look.at, look.feel, look.mould);
    }
    for w in weighings {
        s.weighed(w.at);
    }
    Some(s)
}

impl Standing {
    /// Goes on by a look.
    pub(crate) fn look(&mut self, at: Moment, feel: Option<BagFeel>, mould: bool) {
        self.mouldy |= mould;
        self.feel = feel.or(self.feel);
        self.step(at, BagAnswer::of_look(feel, mould), mould);
    }

    /// A piece is bare in the hand when it is weighed: that is a look over too (which a closed bag does not count, see the
    /// table), unless mould was seen last.
    fn weighed(&mut self, at: Moment) {
        if self.wait != Wait::Mould {
            self.step(at, BagAnswer::LookedOver, false);
        }
    }

    fn step(&mut self, at: Moment, answer: BagAnswer, mould: bool) {
        let rule = rule_with(self.state, answer, mould);
        let before = self.state;
        let in_air = self.of == RhythmOf::Air;
        self.state = match rule.then {
            BagState::OpenTwice if in_air => BagState::Airing,
            then => then,
        };
        match self.state {
            BagState::Closed => {
                self.dry_twice_on = None;
                self.damp_in_air |= in_air && before == BagState::Airing;
            }
            BagState::OpenTwice if before != BagState::OpenTwice => {
                self.dry_twice_on = Some(at.date_naive());
            }
            BagState::Airing => self.damp_in_air = false,
            _ => {}
        }
        if !matches!(rule.next, Wait::StaysDue | Wait::WhenBack | Wait::Never) {
            self.anchor = Some(at);
            self.answered = true;
            self.wait = rule.next;
        }
    }

    /// The day of the stay on a date, 0 on its first.
    #[must_use]
    pub fn day_of_stay(&self, date: NaiveDate) -> u32 {
        self.start
            .and_then(|start| u32::try_from(days_from_to(start, date)).ok())
            .unwrap_or(0)
    }

    /// True where the look is at the weighing: the rhythm asks for no looks of their own, and no mould was seen last.
    #[must_use]
    pub fn look_is_weighing(&self, bench: &Bench) -> bool {
        self.state == BagState::NoBag
            && self.wait != Wait::Mould
            && bench.shop.weighs()
            && bench.rhythm(self.of).looks.is_empty()
    }

    /// The days from the anchor to the next look.
    #[must_use]
    pub fn days(&self, piece: &Piece, bench: &Bench) -> u32 {
        let Some(anchor) = self.anchor else { return 0 };
        let short = self.wait == Wait::Wet && (self.mouldy || bench.short_round(piece, anchor));
        self.wait
            .days(&bench.shop.settings.bag_after, short)
            .unwrap_or_else(|| {
                let day = self.day_of_stay(anchor.date_naive());
                let rhythm = bench.rhythm(self.of);
                let usual = || self.of.usual().look_every(day);
                rhythm
                    .look_every(day)
                    .or_else(|| rhythm.weigh_every(day))
                    .or_else(usual)
                    .unwrap_or(7)
            })
    }

    /// The day of the next look with bag days applied, before pauses and days away.
    #[must_use]
    pub fn due(&self, piece: &Piece, bench: &Bench) -> NaiveDate {
        let Some(anchor) = self.anchor else {
            return bench.today;
        };
        let last = anchor.date_naive();
        let plain = days_after(last, self.days(piece, bench));
        if self.state == BagState::NoBag {
            plain
        } else {
            let bag_days = &bench.shop.settings.bag_days;
            on_bag_day(plain, last, bag_days, self.wait != Wait::Mould)
        }
    }
}
