//! Tidying: which photos were deleted long enough ago that their files may go, when the turner asks.

use std::collections::{BTreeMap, BTreeSet};

use chrono::Duration;

use crate::fact::PieceFact;
use crate::ids::{LineId, PhotoId};
use crate::line::{Line, in_fold_order};
use crate::photo::PhotoHash;
use crate::piece::{Moment, Piece};

/// A photo that was deleted can be brought back for so many days, and longer until the turner tidies. Common practice of
/// recycle bins is 30; a piece dries for months.
pub const TIDY_AFTER_DAYS: i64 = 90;

type Hashes = BTreeSet<PhotoHash>;

/// Which hashes each photo id ever stood for; more than one only where two devices used one id.
fn hashes_by_id<'a>(facts: impl Iterator<Item = &'a PieceFact>) -> BTreeMap<PhotoId, Hashes> {
    let mut by_id: BTreeMap<PhotoId, Hashes> = BTreeMap::new();
    for fact in facts {
        let mut fact = fact;
        while let PieceFact::Amends {
            fact: Some(inner), ..
        } = fact
        {
            fact = inner;
        }
        if let PieceFact::PhotoAdded(note) = fact {
            by_id
                .entry(note.photo.clone())
                .or_default()
                .insert(note.stored.clone());
        }
    }
    by_id
}

/// The hashes that a fact has to do with. A correction and a retraction have to do with those of their line.
fn touched(
    fact: &PieceFact,
    by_id: &BTreeMap<PhotoId, Hashes>,
    by_line: &BTreeMap<LineId, Hashes>,
) -> Hashes {
    let of_id = |id: &PhotoId| by_id.get(id).cloned().unwrap_or_default();
    let of_line = |id: &LineId| by_line.get(id).cloned().unwrap_or_default();
    match fact {
        PieceFact::PhotoAdded(note) => {
            let mut hashes = of_id(&note.photo);
            hashes.insert(note.stored.clone());
            hashes
        }
        PieceFact::PhotoRemoved(id) | PieceFact::PhotoBack(id) => of_id(id),
        PieceFact::PhotoMarked(marks) => of_id(&marks.photo),
        PieceFact::Retracts(line) => of_line(line),
        PieceFact::Amends { entry, fact, .. } => {
            let mut hashes = of_line(&entry.line);
            if let Some(inner) = fact {
                hashes.extend(touched(inner, by_id, by_line));
            }
            hashes
        }
        _ => Hashes::new(),
    }
}

/// The photos of a piece whose files may go: deleted or undone wherever they were added, the last line that has to do with
/// them written [`TIDY_AFTER_DAYS`] ago or more. `piece` is the fold of `lines`.
///
/// Kept are those of a deleted piece, as it can be brought back with them; those that only a newer version may know of;
/// and files that no line names, as their line may still be arriving.
#[must_use]
pub fn photos_to_tidy(piece: &Piece, lines: &[Line<PieceFact>], now: Moment) -> Vec<PhotoHash> {
    let lines = in_fold_order(lines.to_vec());
    let by_id = hashes_by_id(lines.iter().flat_map(|l| &l.facts));
    let mut last: BTreeMap<PhotoHash, Moment> = BTreeMap::new();
    let mut by_line: BTreeMap<LineId, Hashes> = BTreeMap::new();
    let mut newer = Vec::new();
    for line in &lines {
        let mut hashes = Hashes::new();
        for fact in &line.facts {
            hashes.extend(touched(fact, &by_id, &by_line));
            if let PieceFact::Unknown { raw, .. } = fact {
                newer.push(raw);
            }
        }
        for hash in &hashes {
            let moment = last.entry(hash.clone()).or_insert(line.noted_at);
            *moment = line.noted_at.max(*moment);
        }
        by_line.insert(line.id.clone(), hashes);
    }
    let used: BTreeSet<&PhotoHash> = piece
        .photos
        .iter()
        .filter(|p| p.removed.is_none())
        .map(|p| &p.note.stored)
        .collect();
    let long_ago = |moment: Moment| now - moment >= Duration::days(TIDY_AFTER_DAYS);
    last.into_iter()
        .filter(|(hash, moment)| !used.contains(hash) && long_ago(*moment))
        .filter(|(hash, _)| !newer.iter().any(|raw| raw.contains(hash.as_str())))
        .map(|(hash, _)| hash)
        .collect()
}
