//! Fold: from the lines of a diary to the state of the piece.
//!
//! The order is `(seq, device, n)` and never a clock; what is shown by time is sorted by `at` afterwards. The fold is
//! total: any set of lines, in any order, with any duplicates, gives a state.
//!
//! What meets what:
//!
//! | case | rule |
//! |---|---|
//! | one line read twice | counts once |
//! | two different lines with one id (a copied disk) | the same one of them counts, whichever was read first |
//! | two corrections of one entry | the later in fold order shows, the earlier stays visible in the entry's history |
//! | correction of an entry that was taken back | kept; it shows when the entry is brought back |
//! | a correction into or out of created, deleted, brought back | only its time is corrected |
//! | taking back a line twice (two devices) | taken back once; bringing it back needs both retractions taken back |
//! | taking back a retraction | the line counts again (redo) |
//! | a retraction or correction that comes before its line in fold order | ignored: nobody can take back or correct what they had not read |
//! | anything recorded or corrected on a deleted piece, at the deletion's place in the fold order or after it | the piece comes back, with a note, until it is brought back or deleted again |
//! | recorded before the deletion's place, but unread by who deleted | stays with the deleted piece, which can be brought back |
//! | taking back a deletion, and taking that back | undo and redo: no work, so no coming back by itself |
//! | readings at a station that is no longer laid out | kept in the diary and among the readings |
//! | stations laid out anew at other depths, or another count | readings of the wall from before in fold order are kept, but count at no station; the floor's count on |
//! | the same, for outside diameters and flaws | they keep the depth at which they were noted; a diameter noted while no depth was known stays in the diary and counts no more |
//! | an oval measured at a station on two devices | the later in fold order counts, both stay in the diary |
//! | stations moved after ovals were measured at them | the ovals stay in the diary, but count at no station |
//! | a detail set on two devices | the later in fold order shows, both stay in the diary |
//! | stage moved on two devices | the later in fold order is the present stage, both are visits |
//! | entered straight into a later stage | that stage is the first visit; no empty stay in Shape |
//! | in True again after it dried again | cracks, oval, spigot and decision of the earlier True stay in the diary and are asked anew |
//! | two flaws with one id | the first in fold order names it, both stay in the diary |
//! | treatment of a flaw whose note is missing | stays in the diary, joins the flaw when its note arrives |
//! | two photos with one id | the first in fold order names it, both stay in the diary |
//! | removal, bringing back or marks of a photo whose note is missing | stay in the diary, join the photo when its note arrives |
//! | a photo removed on one device, brought back on another | the later in fold order shows |
//! | a photo removed on one device, marked on another | stays removed, with its marks, and can be brought back |
//! | a photo marked on two devices | the later in fold order shows, whole; both stay in the diary |
//! | one picture added to one thing on two devices | both kept, shown once |
//! | a photo of a flaw or an entry that was taken back | kept; it shows when the flaw or entry is brought back |
//! | ended on one device, looked after on another | stays ended, the look is in the diary |
//! | two living pieces with one mark | both kept; the agenda asks to rename one |

mod amending;
mod apply;
mod counting;
mod deletion;
mod laying_out;
mod photos;

use crate::diary::DiaryEntry;
use crate::fact::PieceFact;
use crate::ids::{EntryId, LineId, PieceId};
use crate::line::{Line, in_fold_order};
use crate::piece::Piece;

use amending::Amendments;
use apply::Fold;
pub(crate) use counting::counting_places;
pub use counting::lines_that_count;

fn piece_retracts(fact: &PieceFact) -> Option<&LineId> {
    match fact {
        PieceFact::Retracts(line) => Some(line),
        _ => None,
    }
}

/// The state of a piece from its lines, in whatever order they were read.
#[must_use]
pub fn fold_piece(id: PieceId, lines: Vec<Line<PieceFact>>) -> Piece {
    let ordered = in_fold_order(lines);
    let counts = counting_places(&ordered, piece_retracts);
    let amendments = Amendments::of(&ordered, &counts);
    let mut fold = Fold::new(id, ordered.len());
    fold.piece.lines = ordered.len();
    for (place, line) in ordered.into_iter().enumerate() {
        let counts = counts[place];
        if counts && line.facts.iter().any(deletion::is_work) {
            fold.deletion.recorded(line.seq, &line.id);
        }
        for (part, mut fact) in line.facts.into_iter().enumerate() {
            if matches!(fact, PieceFact::Amends { .. } | PieceFact::Retracts(_)) {
                continue;
            }
            let entry = EntryId {
                line: line.id.clone(),
                part: u16::try_from(part).unwrap_or(u16::MAX),
            };
            let mut at = line.at;
            let earlier = amendments.correct(&entry, place, &mut at, &mut fact);
            if counts {
                fold.apply(&entry, line.seq, at, &fact);
            }
            let stage = fold.piece.stage();
            fold.piece.diary.push(DiaryEntry {
                entry,
                at,
                noted_at: line.noted_at,
                fact,
                earlier,
                stage,
                retracted: !counts,
            });
        }
    }
    fold.finish()
}
