//! What meets what, in the table of the fold: corrections and taking back, pair by pair.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use evenwall_piece::fact::PieceFact as F;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::BagFeel;

use support::words::{feels, look, with};
use support::{amends, entry, fold_both_ways, line, line_id, minutes, retracts};

#[test]
fn of_two_corrections_the_later_shows_and_the_earlier_stays_visible() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![look(BagFeel::Wet)]),
        amends("phone", 1, 4, entry("bench", 3), look(BagFeel::Damp)),
        amends("tablet", 1, 4, entry("bench", 3), look(BagFeel::Nothing)),
    ]));
    assert_eq!(feels(&piece), [BagFeel::Nothing]);
    let kept: Vec<_> = piece
        .diary
        .last()
        .unwrap()
        .earlier
        .iter()
        .map(|e| e.fact.clone())
        .collect();
    assert_eq!(kept, [look(BagFeel::Wet), look(BagFeel::Damp)]);
}

#[test]
fn a_correction_of_the_time_moves_the_entry_and_keeps_what_it_said() {
    let back_dated = F::Amends {
        entry: entry("bench", 4),
        at: Some(minutes(-1440)),
        fact: None,
    };
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![look(BagFeel::Wet)]),
        line("bench", 4, 4, vec![look(BagFeel::Damp)]),
        line("bench", 5, 5, vec![back_dated]),
    ]));
    assert_eq!(
        feels(&piece),
        [BagFeel::Damp, BagFeel::Wet],
        "looks stand in the order in which they happened"
    );
    let moved = &piece.diary[0];
    assert_eq!(
        (moved.at, moved.earlier[0].at),
        (minutes(-1440), minutes(4))
    );
    assert!(moved.back_dated());
}

#[test]
fn a_correction_of_an_entry_taken_back_waits_until_it_is_brought_back() {
    let taken_back = with(vec![
        line("bench", 3, 3, vec![look(BagFeel::Wet)]),
        retracts("bench", 4, 4, line_id("bench", 3)),
        amends("phone", 1, 4, entry("bench", 3), look(BagFeel::Damp)),
    ]);
    let piece = fold_both_ways(&taken_back);
    assert!(piece.looks.is_empty());
    let shown = piece.diary.last().unwrap();
    assert!(shown.retracted);
    assert_eq!(shown.fact, look(BagFeel::Damp));
    let mut redone = taken_back;
    redone.push(retracts("bench", 5, 5, line_id("bench", 4)));
    assert_eq!(feels(&fold_both_ways(&redone)), [BagFeel::Damp]);
}

#[test]
fn a_correction_taken_back_shows_what_was_said_before() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![look(BagFeel::Wet)]),
        amends("bench", 4, 4, entry("bench", 3), look(BagFeel::Damp)),
        retracts("bench", 5, 5, line_id("bench", 4)),
    ]));
    assert_eq!(feels(&piece), [BagFeel::Wet]);
    assert!(piece.diary.last().unwrap().earlier.is_empty());
}

#[test]
fn a_correction_before_its_entry_corrects_nothing() {
    let piece = fold_both_ways(&with(vec![
        amends("phone", 1, 3, entry("bench", 9), look(BagFeel::Damp)),
        line("bench", 9, 8, vec![look(BagFeel::Wet)]),
    ]));
    assert_eq!(feels(&piece), [BagFeel::Wet]);
}

#[test]
fn a_correction_neither_deletes_nor_unmakes_a_piece() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![F::Note("a note".into())]),
        amends("bench", 4, 4, entry("bench", 3), F::Deleted),
        amends(
            "bench",
            5,
            5,
            entry("bench", 1),
            F::Note("not created".into()),
        ),
    ]));
    assert_eq!((piece.deleted, piece.came_back), (None, false));
    assert_eq!(piece.created, Some(minutes(1)));
    assert!(piece.diary.iter().all(|e| e.earlier.is_empty()));
}

#[test]
fn a_corrected_stage_counts_from_where_it_stood() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![look(BagFeel::Damp)]),
        amends("bench", 4, 4, entry("bench", 2), F::StageMoved(Stage::Air)),
    ]));
    let walked: Vec<_> = piece.visits.iter().map(|v| v.stage).collect();
    assert_eq!(walked, [Stage::Shape, Stage::Air]);
    assert_eq!(piece.looks[0].stage, Stage::Air);
}

// Taking back.

#[test]
fn taken_back_on_two_devices_an_entry_needs_both_taken_back() {
    let mut lines = with(vec![
        line("bench", 3, 3, vec![look(BagFeel::Wet)]),
        retracts("phone", 1, 4, line_id("bench", 3)),
        retracts("tablet", 1, 4, line_id("bench", 3)),
    ]);
    assert!(fold_both_ways(&lines).looks.is_empty());
    lines.push(retracts("phone", 2, 5, line_id("phone", 1)));
    assert!(
        fold_both_ways(&lines).looks.is_empty(),
        "the tablet's still stands"
    );
    lines.push(retracts("phone", 3, 6, line_id("tablet", 1)));
    assert_eq!(feels(&fold_both_ways(&lines)), [BagFeel::Wet]);
}

#[test]
fn undo_redo_and_undo_again_follow_each_other() {
    let mut lines = with(vec![line(
        "bench",
        3,
        3,
        vec![look(BagFeel::Wet), F::Note("n".into())],
    )]);
    for (n, target, looks) in [(4, 3, 0), (5, 4, 1), (6, 5, 0), (7, 6, 1)] {
        lines.push(retracts("bench", n, n, line_id("bench", target)));
        let piece = fold_both_ways(&lines);
        assert_eq!(piece.looks.len(), looks, "after line {n}");
        let shown = piece.diary.iter().filter(|e| !e.retracted).count();
        assert_eq!(shown, 3 + 2 * looks, "a line stands or falls as a whole");
    }
}

#[test]
fn a_retraction_before_its_line_takes_nothing_back() {
    let piece = fold_both_ways(&with(vec![
        retracts("phone", 1, 3, line_id("bench", 9)),
        line("bench", 9, 8, vec![look(BagFeel::Wet)]),
        retracts("phone", 2, 4, line_id("phone", 2)),
    ]));
    assert_eq!(feels(&piece), [BagFeel::Wet]);
}
