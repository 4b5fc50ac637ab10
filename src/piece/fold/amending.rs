//! Amending: corrections, gathered by the entry they correct and put on it in fold order.

use std::collections::HashMap;
use std::mem::discriminant;

use crate::diary::Earlier;
use crate::fact::PieceFact;
use crate::ids::EntryId;
use crate::line::Line;
use crate::piece::Moment;

struct Amendment {
    /// The place of the correcting line in fold order.
    place: usize,
    at: Option<Moment>,
    fact: Option<PieceFact>,
}

/// All corrections that count, by the entry they correct.
pub(super) struct Amendments(HashMap<EntryId, Vec<Amendment>>);

impl Amendments {
    /// Gathers the corrections of lines in fold order; `counts` says for each line whether it counts.
    pub(super) fn of(ordered: &[Line<PieceFact>], counts: &[bool]) -> Self {
        let mut found: HashMap<EntryId, Vec<Amendment>> = HashMap::new();
        for (place, line) in ordered.iter().enumerate().filter(|(i, _)| counts[*i]) {
            for fact in &line.facts {
                if let PieceFact::Amends { entry, at, fact } = fact {
                    let (at, fact) = (*at, fact.as_deref().cloned());
                    let amendment = Amendment { place, at, fact };
                    found.entry(entry.clone()).or_default().push(amendment);
                }
            }
        }
        Self(found)
    }

    /// Puts the corrections of an entry of the line at `place` on it; returns what it said before, oldest first.
    pub(super) fn correct(
        &self,
        entry: &EntryId,
        place: usize,
        at: &mut Moment,
        fact: &mut PieceFact,
    ) -> Vec<Earlier> {
        if self.0.is_empty() {
            return Vec::new();
        }
        let mut earlier = Vec::new();
        let later = self.0.get(entry).into_iter().flatten();
        for amendment in later.filter(|a| a.place > place) {
            let new = amendment.fact.as_ref().filter(|new| can_become(fact, new));
            if new.is_none() && amendment.at.is_none() {
                continue;
            }
            earlier.push(Earlier {
                fact: fact.clone(),
                at: *at,
            });
            if let Some(new) = new {
                *fact = new.clone();
            }
            if let Some(new) = amendment.at {
                *at = new;
            }
        }
        earlier
    }
}

/// A correction says what really happened to the piece. It cannot be a correction or a retraction, and it neither makes
/// nor unmakes the entries on which the piece's being there rests: of those only the time can be corrected.
fn can_become(old: &PieceFact, new: &PieceFact) -> bool {
    let fixed = |f: &PieceFact| {
        matches!(
            f,
            PieceFact::Created | PieceFact::Deleted | PieceFact::Undeleted
        )
    };
    match new {
        PieceFact::Amends { .. } | PieceFact::Retracts(_) => false,
        _ => discriminant(old) == discriminant(new) || !(fixed(old) || fixed(new)),
    }
}
