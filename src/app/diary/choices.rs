//! Choices: entries whose value is one of a closed list, and the entry with another one picked.

use evenwall_piece::fact::{End, FlawTreated, PieceFact, Reading};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{
    BagFeel, CrackAnswer, FlawChange, LostHow, MassChange, Method, Treatment, TrueDecision,
    WallFeel,
};

/// A closed list that an entry's value is picked out of.
pub(super) struct Closed {
    /// What the ids of its words begin with.
    pub prefix: &'static str,
    /// The keys in the order in which they are offered.
    pub keys: Vec<&'static str>,
    /// The key of the present value.
    pub now: &'static str,
}

macro_rules! closed {
    ($list:ty, $prefix:literal, $now:expr) => {
        Some(Closed {
            prefix: $prefix,
            keys: <$list>::ALL.iter().map(|v| v.key()).collect(),
            now: $now.key(),
        })
    };
}

/// The list that the value of a fact is picked out of; `None` where it is typed or fixed.
pub(super) fn closed(fact: &PieceFact) -> Option<Closed> {
    match fact {
        PieceFact::Look {
            feel: Some(feel), ..
        } => closed!(BagFeel, "feel", feel),
        PieceFact::Reading(Reading {
            wall_mm: None,
            feel: Some(feel),
            ..
        }) => closed!(WallFeel, "feel", feel),
        PieceFact::StageMoved(stage) => closed!(Stage, "stage", stage),
        PieceFact::MethodChosen(method) => closed!(Method, "method", method),
        PieceFact::Cracks(answer) => closed!(CrackAnswer, "crack-answer", answer),
        PieceFact::TrueDecided { decision, .. } => {
            closed!(TrueDecision, "true-decision", decision)
        }
        PieceFact::FlawTreated(treated) => closed!(Treatment, "treatment", treated.treatment),
        PieceFact::FlawLooked { change, .. } => closed!(FlawChange, "flaw-change", change),
        PieceFact::MassChanged(change) => closed!(MassChange, "mass-change", change),
        PieceFact::Ended(End::Lost { how, .. }) => closed!(LostHow, "lost-how", how),
        _ => None,
    }
}

/// The fact with another value of its list; `None` where the key is none of the list.
pub(super) fn picked(fact: &PieceFact, key: &str) -> Option<PieceFact> {
    Some(match fact.clone() {
        PieceFact::Look { mould, crack, .. } => PieceFact::Look {
            feel: Some(BagFeel::from_key(key)?),
            mould,
            crack,
        },
        PieceFact::Reading(reading) => PieceFact::Reading(Reading {
            feel: Some(WallFeel::from_key(key)?),
            ..reading
        }),
        PieceFact::StageMoved(_) => PieceFact::StageMoved(Stage::from_key(key)?),
        PieceFact::MethodChosen(_) => PieceFact::MethodChosen(Method::from_key(key)?),
        PieceFact::Cracks(_) => PieceFact::Cracks(CrackAnswer::from_key(key)?),
        PieceFact::TrueDecided { reason, .. } => PieceFact::TrueDecided {
            decision: TrueDecision::from_key(key)?,
            reason,
        },
        PieceFact::FlawTreated(treated) => PieceFact::FlawTreated(FlawTreated {
            treatment: Treatment::from_key(key)?,
            ..treated
        }),
        PieceFact::FlawLooked {
            flaw,
            size_mm,
            look_again,
            ..
        } => PieceFact::FlawLooked {
            flaw,
            change: FlawChange::from_key(key)?,
            size_mm,
            look_again,
        },
        PieceFact::MassChanged(_) => PieceFact::MassChanged(MassChange::from_key(key)?),
        PieceFact::Ended(End::Lost {
            place, why, note, ..
        }) => PieceFact::Ended(End::Lost {
            place,
            how: LostHow::from_key(key)?,
            why,
            note,
        }),
        _ => return None,
    })
}
