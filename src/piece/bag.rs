//! Bag: the bag's rules as one table, from the state of the bag and the answer to what is done and when it is felt again.
//!
//! Common practice, no source. [`rule`] is the table, one line a state and answer; [`table_as_markdown`] writes it out as
//! it stands in DEVELOPERS.md, and a test compares the two. Days are those of [`BagAfter`], settable by the turner.

use crate::settings::BagAfter;
use crate::vocabulary::{BagFeel, keyed};

keyed!(
    /// The state of a piece's bag, as its looks have left it.
    BagState {
        /// Neck closed, no dry look so far.
        Closed = "closed",
        /// Neck open after one dry look.
        OpenOnce = "open-once",
        /// Neck open after two dry looks in a row: Air is offered.
        OpenTwice = "open-twice",
        /// The stage Air: neck open for about a month.
        Airing = "airing",
        /// Another drying method, or out of the bag in Settle and Indoors.
        NoBag = "no-bag",
    }
);
keyed!(
    /// The neck of the bag.
    Neck {
        /// Gathered and tucked under.
        Closed = "closed",
        /// Open.
        Open = "open",
    }
);
keyed!(
    /// What the turner says when the bag's turn comes.
    BagAnswer {
        /// Water on the film.
        Wet = "wet",
        /// Just moist.
        Damp = "damp",
        /// Nothing on the bag.
        Nothing = "nothing",
        /// Mould, without a word on how the bag feels.
        Mould = "mould",
        /// The piece was looked over or weighed, the bag was not felt.
        LookedOver = "looked-over",
        /// Not looked at.
        NotLooked = "not-looked",
        /// It cannot be found.
        CantFind = "cant-find",
        /// No reminders for now.
        Paused = "paused",
        /// The turner goes away.
        Away = "away",
    }
);
keyed!(
    /// What is done.
    BagAct {
        /// Turn the bag inside out, put the piece back, close the neck.
        TurnAndClose = "turn-and-close",
        /// It was opened too soon: turn the bag and close it again.
        CloseAgain = "close-again",
        /// Leave the neck open.
        LeaveOpen = "leave-open",
        /// Leave the neck open and go on to Air.
        OfferAir = "offer-air",
        /// Take it outside, brush it, air it; then a paper bag or a shorter round.
        BrushAndAir = "brush-and-air",
        /// Carry on as it is.
        CarryOn = "carry-on",
        /// Nothing was done: the look stays due.
        StillDue = "still-due",
        /// Look for it.
        LookForIt = "look-for-it",
        /// No reminders.
        Silent = "silent",
        /// Before leaving: open the neck or put it in paper, where its look falls due meanwhile.
        OpenOrPaper = "open-or-paper",
    }
);

/// When the next look falls due.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Wait {
    /// The days after it was put in the bag.
    First,
    /// The days after *wet*: fewer where it moulds easily or the shop is warm.
    Wet,
    /// The days after *damp*.
    Damp,
    /// The days after *nothing*.
    Nothing,
    /// The days after mould was seen.
    Mould,
    /// By the rhythm of the stage or method.
    Rhythm,
    /// As before: nothing was answered.
    StaysDue,
    /// On the day the turner is back, where it falls due before.
    WhenBack,
    /// None until reminders start again.
    Never,
}

/// One line of the table: what follows from a state and an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Rule {
    /// What is done.
    pub act: BagAct,
    /// The state afterwards.
    pub then: BagState,
    /// When the next look falls due.
    pub next: Wait,
}

impl BagState {
    /// The neck; `None` where there is no bag.
    #[must_use]
    pub const fn neck(self) -> Option<Neck> {
        match self {
            Self::Closed => Some(Neck::Closed),
            Self::OpenOnce | Self::OpenTwice | Self::Airing => Some(Neck::Open),
            Self::NoBag => None,
        }
    }

    /// Dry looks in a row that count, 0 to 2 ("two or more").
    #[must_use]
    pub const fn dry_looks(self) -> u8 {
        match self {
            Self::Closed | Self::NoBag => 0,
            Self::OpenOnce => 1,
            Self::OpenTwice | Self::Airing => 2,
        }
    }

    /// True where the bag is felt: closed, or opened within the stage Bag.
    #[must_use]
    pub const fn is_felt(self) -> bool {
        matches!(self, Self::Closed | Self::OpenOnce | Self::OpenTwice)
    }
}

impl BagAnswer {
    /// The answer that a look gives: the feel where there is one, else mould, else looked over.
    #[must_use]
    pub const fn of_look(feel: Option<BagFeel>, mould: bool) -> Self {
        match (feel, mould) {
            (Some(BagFeel::Wet), _) => Self::Wet,
            (Some(BagFeel::Damp), _) => Self::Damp,
            (Some(BagFeel::Nothing), _) => Self::Nothing,
            (None, true) => Self::Mould,
            (None, false) => Self::LookedOver,
        }
    }

    /// True where somebody looked: the answers that a [`crate::fact::PieceFact::Look`] can hold.
    #[must_use]
    pub const fn is_a_look(self) -> bool {
        matches!(
            self,
            Self::Wet | Self::Damp | Self::Nothing | Self::Mould | Self::LookedOver
        )
    }
}

/// The table. Mould ticked beside a feel is [`rule_with`].
#[must_use]
pub const fn rule(state: BagState, answer: BagAnswer) -> Rule {
    use {BagAct as Do, BagAnswer as A, BagState as S, Wait as W};
    const fn line(act: BagAct, then: BagState, next: Wait) -> Rule {
        Rule { act, then, next }
    }
    match (state, answer) {
        (S::Closed, A::Wet) => line(Do::TurnAndClose, S::Closed, W::Wet),
        (S::Closed, A::Damp) => line(Do::TurnAndClose, S::Closed, W::Damp),
        (S::Closed, A::Nothing) => line(Do::LeaveOpen, S::OpenOnce, W::Nothing),
        (S::OpenOnce | S::OpenTwice | S::Airing, A::Wet) => line(Do::CloseAgain, S::Closed, W::Wet),
        (S::OpenOnce | S::OpenTwice | S::Airing, A::Damp) => {
            line(Do::CloseAgain, S::Closed, W::Damp)
        }
        (S::OpenOnce | S::OpenTwice, A::Nothing) => line(Do::OfferAir, S::OpenTwice, W::Nothing),
        (S::Airing, A::Nothing | A::LookedOver) => line(Do::LeaveOpen, S::Airing, W::Rhythm),
        (S::NoBag, A::Wet | A::Damp | A::Nothing | A::LookedOver) => {
            line(Do::CarryOn, S::NoBag, W::Rhythm)
        }
        (state, A::Mould) => line(Do::BrushAndAir, state, W::Mould),
        // A crack ticked or a weight taken says nothing of the water on the film.
        (state, A::LookedOver | A::NotLooked) => line(Do::StillDue, state, W::StaysDue),
        (state, A::CantFind) => line(Do::LookForIt, state, W::StaysDue),
        (state, A::Paused) => line(Do::Silent, state, W::Never),
        (S::Closed, A::Away) => line(Do::OpenOrPaper, S::Closed, W::WhenBack),
        (S::NoBag, A::Away) => line(Do::CarryOn, S::NoBag, W::WhenBack),
        (state, A::Away) => line(Do::LeaveOpen, state, W::WhenBack),
    }
}

/// The table's line with mould ticked beside the answer: neck and count follow the feel, what is done and when follow the
/// mould.
#[must_use]
pub const fn rule_with(state: BagState, answer: BagAnswer, mould: bool) -> Rule {
    let plain = rule(state, answer);
    if mould && answer.is_a_look() {
        Rule {
            act: BagAct::BrushAndAir,
            then: plain.then,
            next: Wait::Mould,
        }
    } else {
        plain
    }
}

impl Wait {
    /// The days it stands for, or `None` where it is not a number of days of the bag. `short`: the wood moulds easily,
    /// mould was seen, or the shop is over 20 degrees C.
    #[must_use]
    pub const fn days(self, after: &BagAfter, short: bool) -> Option<u32> {
        match self {
            Self::First => Some(after.first),
            Self::Wet if short && after.wet_short < after.wet => Some(after.wet_short),
            Self::Wet => Some(after.wet),
            Self::Damp => Some(after.damp),
            Self::Nothing => Some(after.nothing),
            Self::Mould => Some(after.mould),
            Self::Rhythm | Self::StaysDue | Self::WhenBack | Self::Never => None,
        }
    }
}

fn state_words(state: BagState) -> &'static str {
    match state {
        BagState::Closed => "bag, closed",
        BagState::OpenOnce | BagState::OpenTwice => "bag, neck open",
        BagState::Airing => "Air, neck open",
        BagState::NoBag => "another method, Settle, Indoors",
    }
}

fn act_words(act: BagAct) -> &'static str {
    match act {
        BagAct::TurnAndClose => "turn it inside out, close it",
        BagAct::CloseAgain => "turn it, close it again",
        BagAct::LeaveOpen => "leave the neck open",
        BagAct::OfferAir => "leave the neck open, offer Air",
        BagAct::BrushAndAir => "take it out, brush it, air it; paper or a shorter round",
        BagAct::CarryOn => "carry on",
        BagAct::StillDue => "nothing done",
        BagAct::LookForIt => "look for it",
        BagAct::Silent => "no reminders",
        BagAct::OpenOrPaper => "open the neck or put it in paper, if due before the return",
    }
}

fn wait_words(next: Wait, after: &BagAfter) -> String {
    match next {
        Wait::Wet => format!(
            "{} (moulds easily, mould seen or over 20 C: {})",
            after.wet, after.wet_short
        ),
        Wait::Rhythm => "by its rhythm".to_owned(),
        Wait::StaysDue => "stays due".to_owned(),
        Wait::WhenBack => "on the return, if due before".to_owned(),
        Wait::Never => "none until taken up again".to_owned(),
        _ => next
            .days(after, false)
            .map(|d| d.to_string())
            .unwrap_or_default(),
    }
}

/// The whole table as Markdown, with the days given.
#[must_use]
pub fn table_as_markdown(after: &BagAfter) -> String {
    let mut out = String::from(
        "| state | dry looks | answer | done | neck then | dry looks then | next look, days |\n\
         |---|---|---|---|---|---|---|\n",
    );
    let neck = |s: BagState| s.neck().map_or("-", Neck::key);
    for &state in BagState::ALL {
        for &answer in BagAnswer::ALL {
            let r = rule(state, answer);
            out.push_str(&format!(
                "| {} | {} | {} | {} | {} | {} | {} |\n",
                state_words(state),
                state.dry_looks(),
                answer.key().replace('-', " "),
                act_words(r.act),
                neck(r.then),
                r.then.dry_looks(),
                wait_words(r.next, after),
            ));
        }
    }
    out
}
