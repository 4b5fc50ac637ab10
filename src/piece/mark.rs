//! Mark: the short name pencilled on the spigot end, one that no other living piece has and that reads one way only.

use crate::detail::DetailField;
use crate::ids::PieceId;
use crate::piece::Piece;

/// The most characters of a mark: it has to fit on a spigot.
pub const LONGEST_MARK: usize = 12;

/// The mark that is suggested where no piece has one yet.
const FIRST: &str = "A01";

/// What is wrong with a mark.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum MarkProblem {
    /// It is blank.
    #[error("a mark is needed; write one, for example A01")]
    Blank,
    /// It has too many characters.
    #[error("{count} characters are too many for a mark; at most {LONGEST_MARK} fit")]
    TooLong {
        /// How many it has.
        count: usize,
    },
    /// A living piece has it.
    #[error("the mark is in use by another piece; choose another")]
    InUse(PieceId),
    /// On a round foot it reads as another mark; only a warning.
    #[error("upside down it reads as {reads_as}; choose another, or underline it")]
    UpsideDown {
        /// What it reads as.
        reads_as: String,
    },
}

impl MarkProblem {
    /// True where it is only a warning and the mark may be kept.
    #[must_use]
    pub const fn only_warns(&self) -> bool {
        matches!(self, Self::UpsideDown { .. })
    }
}

/// A mark as it is compared, wherever marks are: `k 07` and `K07` are one.
#[must_use]
pub fn compared(mark: &str) -> String {
    mark.chars()
        .filter(|c| !c.is_whitespace())
        .flat_map(char::to_uppercase)
        .collect()
}

/// What is wrong with a mark beside these pieces; leave the piece that is to have it out of them. Pieces that ended or
/// were deleted do not hold a mark.
pub fn mark_problem<'a>(
    mark: &str,
    pieces: impl IntoIterator<Item = &'a Piece>,
) -> Option<MarkProblem> {
    let mark = mark.trim();
    if mark.is_empty() {
        return Some(MarkProblem::Blank);
    }
    let count = mark.chars().count();
    if count > LONGEST_MARK {
        return Some(MarkProblem::TooLong { count });
    }
    let wanted = compared(mark);
    let holder = pieces
        .into_iter()
        .find(|p| p.living() && compared(p.mark()) == wanted);
    if let Some(piece) = holder {
        return Some(MarkProblem::InUse(piece.id.clone()));
    }
    upside_down(mark).map(|reads_as| MarkProblem::UpsideDown { reads_as })
}

/// A character turned by half a turn, where it then reads as one.
const fn turned(c: char) -> Option<char> {
    Some(match c {
        '0' | '1' | '8' | 'H' | 'I' | 'N' | 'O' | 'S' | 'X' | 'Z' => c,
        '6' => '9',
        '9' => '6',
        'M' => 'W',
        'W' => 'M',
        _ => return None,
    })
}

/// What a mark reads as when the foot is turned, where that can be taken for a mark: another than it is, or a lone letter
/// that does not show which way is up (a lone N turned a quarter is a Z, a lone H an I).
#[must_use]
pub fn upside_down(mark: &str) -> Option<String> {
    let letters = compared(mark);
    let other: Option<String> = letters.chars().rev().map(turned).collect();
    let other = other.filter(|o| !o.is_empty())?;
    let lone = letters.chars().count() == 1 && letters.chars().all(char::is_alphabetic);
    (other != letters || lone).then_some(other)
}

/// The next mark in the turner's own way of counting: K07, K08; after K99 the next letter, L01; a mark without figures
/// gets a 2. Not looked at: whether it is free.
fn following(mark: &str) -> String {
    let digits = mark.chars().rev().take_while(char::is_ascii_digit).count();
    let start = &mark[..mark.len() - digits];
    let figures = &mark[mark.len() - digits..];
    let Ok(number) = figures.parse::<u64>() else {
        return format!("{mark}2");
    };
    let next = (number + 1).to_string();
    if next.len() <= digits {
        return format!("{start}{next:0>digits$}");
    }
    // Two figures are full: the next letter of the alphabet, where one letter stands before them.
    match start.as_bytes() {
        [letter @ (b'A'..=b'Y' | b'a'..=b'y')] if digits == 2 => {
            format!("{}01", char::from(letter + 1))
        }
        _ => format!("{start}{next}"),
    }
}

/// So many marks that follow on each other, the first being `first` where it is free: none that a piece of any kind ever
/// had, none that reads upside down as another.
pub fn marks_from<'a>(
    first: &str,
    count: usize,
    pieces: impl IntoIterator<Item = &'a Piece>,
) -> Vec<String> {
    let taken: Vec<String> = pieces.into_iter().map(|p| compared(p.mark())).collect();
    let mut marks: Vec<String> = Vec::with_capacity(count);
    let mut mark = first.trim().to_owned();
    // Ends by itself: the figures grow. The bound keeps an absurd mark from counting for long.
    for _ in 0..10_000 {
        if marks.len() == count {
            break;
        }
        let free = !taken.contains(&compared(&mark));
        if free && upside_down(&mark).is_none() && mark.chars().count() <= LONGEST_MARK {
            marks.push(mark.clone());
        }
        mark = following(&mark);
    }
    marks
}

/// The next free mark after the turner's last one: letter and two figures, none that any piece ever had, none that reads
/// upside down as another.
#[must_use]
pub fn suggested_mark<'a>(pieces: impl IntoIterator<Item = &'a Piece>) -> String {
    let pieces: Vec<&Piece> = pieces.into_iter().collect();
    let counted = |mark: &str| mark.ends_with(|c: char| c.is_ascii_digit());
    let last = pieces
        .iter()
        .filter(|p| p.details.text(DetailField::Mark).is_some_and(counted))
        .max_by_key(|p| (p.created, compared(p.mark())));
    let first = last.map_or_else(|| FIRST.to_owned(), |p| following(p.mark().trim()));
    marks_from(&first, 1, pieces.iter().copied())
        .pop()
        .unwrap_or(first)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use crate::detail::DetailValue;
    use crate::fact::{End, PieceFact};
    use crate::fold::fold_piece;
    use crate::ids::{DeviceId, LineId};
    use crate::line::Line;

    fn piece(mark: &str, day: u32, more: Vec<PieceFact>) -> Piece {
        let id = PieceId::new(&format!("p{day}")).unwrap();
        let at = chrono::DateTime::parse_from_rfc3339(&format!("2026-03-{day:02}T10:00:00+00:00"))
            .unwrap();
        let mut facts = vec![
            PieceFact::Created,
            PieceFact::Detail {
                field: DetailField::Mark,
                value: Some(DetailValue::Text(mark.to_owned())),
            },
        ];
        facts.extend(more);
        let device = DeviceId::new("d").unwrap();
        let id_of_line = LineId { device, n: 1 };
        let line = Line {
            id: id_of_line,
            seq: 1,
            at,
            noted_at: at,
            facts,
        };
        fold_piece(id, vec![line])
    }

    #[test]
    fn the_next_mark_follows_the_turners_last() {
        assert_eq!(suggested_mark(&[]), "A01");
        let pieces = [piece("K07", 2, vec![]), piece("B31", 1, vec![])];
        assert_eq!(suggested_mark(&pieces), "K08");
        let pieces = [piece("K99", 2, vec![])];
        assert_eq!(suggested_mark(&pieces), "L01");
        let pieces = [piece("Anna", 3, vec![]), piece("B09", 1, vec![])];
        assert_eq!(suggested_mark(&pieces), "B10");
    }

    #[test]
    fn a_mark_that_any_piece_had_is_not_suggested() {
        let pieces = [
            piece("K08", 1, vec![PieceFact::Ended(End::Finished)]),
            piece("K09", 2, vec![PieceFact::Deleted]),
            piece("K07", 3, vec![]),
        ];
        assert_eq!(suggested_mark(&pieces), "K10");
    }

    #[test]
    fn suggestions_never_read_upside_down_as_another() {
        let mut pieces = vec![piece("N04", 1, vec![])];
        for day in 2..28 {
            let next = suggested_mark(&pieces);
            assert_eq!(upside_down(&next), None, "{next}");
            pieces.push(piece(&next, day, vec![]));
        }
        assert_eq!(pieces[1].mark(), "N05");
        assert_eq!(pieces[2].mark(), "N07");
        assert_eq!(pieces[3].mark(), "N12");
    }

    #[test]
    fn marks_that_read_upside_down_are_known() {
        for (mark, other) in [
            ("06", "90"),
            ("09", "60"),
            ("60", "09"),
            ("66", "99"),
            ("99", "66"),
            ("68", "89"),
            ("89", "68"),
            ("M06", "90W"),
            ("6", "9"),
            ("H", "H"),
            ("i", "I"),
            ("N", "N"),
            ("O", "O"),
            ("S", "S"),
            ("X", "X"),
            ("Z", "Z"),
        ] {
            assert_eq!(upside_down(mark).as_deref(), Some(other), "{mark}");
        }
        for mark in ["K06", "K99", "A1", "88", "69", "B", "07", ""] {
            assert_eq!(upside_down(mark), None, "{mark}");
        }
    }

    #[test]
    fn only_a_living_piece_holds_its_mark_however_it_is_written() {
        let living = [piece("K07", 1, vec![])];
        let id = living[0].id.clone();
        assert_eq!(mark_problem(" k 07", &living), Some(MarkProblem::InUse(id)));
        assert_eq!(mark_problem("K08", &living), None);
        let gone = [piece("K07", 1, vec![PieceFact::Ended(End::GivenAway)])];
        assert_eq!(mark_problem("K07", &gone), None);
        assert_eq!(mark_problem("  ", &gone), Some(MarkProblem::Blank));
        let long = "K".repeat(13);
        assert_eq!(
            mark_problem(&long, &gone),
            Some(MarkProblem::TooLong { count: 13 })
        );
        let warning = mark_problem("06", &gone).unwrap();
        assert!(warning.only_warns());
    }

    #[test]
    fn a_batch_counts_on_and_leaves_out_what_is_taken() {
        let pieces = [piece("K09", 1, vec![])];
        assert_eq!(
            marks_from("K08", 3, &pieces),
            ["K08", "K10", "K11"].map(str::to_owned)
        );
        assert_eq!(
            marks_from("Ash", 2, &[]),
            ["Ash", "Ash2"].map(str::to_owned)
        );
        assert!(marks_from(&"9".repeat(12), 20, &[]).len() < 20);
        assert_eq!(marks_from("ÄÖ", 2, &[]), ["ÄÖ", "ÄÖ2"].map(str::to_owned));
    }
}
