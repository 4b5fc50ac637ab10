//! Promises of the fold that hold for every diary.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::collections::HashSet;

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::line::Line;
use evenwall_piece::piece::{FlawEvent, Piece};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use support::any::{KINDS, any_fact, any_lines, kind_index, moment};
use support::history::{history, parted, taken_back_one_by_one};
use support::{fold, line_id, retracts, start, without_taken_back};

/// The state with every shown time set to one moment, and what is sorted by time sorted by entry instead.
fn timeless(mut piece: Piece) -> Piece {
    let t = start();
    piece.created = piece.created.map(|_| t);
    piece.visits.iter_mut().for_each(|v| v.since = t);
    piece.half_turned = piece.half_turned.map(|_| t);
    piece.paused = piece.paused.map(|(_, until)| (t, until));
    piece.not_found = piece.not_found.map(|_| t);
    piece.ticks.values_mut().for_each(|tick| tick.at = t);
    piece.readings.iter_mut().for_each(|r| r.at = t);
    for flaw in &mut piece.flaws {
        flaw.found_at = t;
        for event in &mut flaw.events {
            match event {
                FlawEvent::Treated { at, .. } | FlawEvent::Looked { at, .. } => *at = t,
            }
        }
    }
    for photo in &mut piece.photos {
        photo.at = t;
        photo.removed = photo.removed.map(|_| t);
    }
    piece.looks.iter_mut().for_each(|l| l.at = t);
    piece.looks.sort_by(|a, b| a.entry.cmp(&b.entry));
    piece.weighings.iter_mut().for_each(|w| w.at = t);
    piece.weighings.sort_by(|a, b| a.entry.cmp(&b.entry));
    piece.mass_changes.iter_mut().for_each(|m| m.0 = t);
    piece.mass_changes.sort_by_key(|m| m.1);
    let finish = &mut piece.finish;
    finish.cracks = finish.cracks.map(|(_, c)| (t, c));
    finish.oval.iter_mut().for_each(|o| o.at = t);
    finish.ovals.values_mut().for_each(|o| o.at = t);
    finish.decision.iter_mut().for_each(|d| d.0 = t);
    for list in [&mut finish.grits, &mut finish.coats] {
        list.iter_mut().for_each(|g| g.0 = t);
        list.sort();
    }
    finish.signed.iter_mut().for_each(|s| s.0 = t);
    piece.end.iter_mut().for_each(|e| e.0 = t);
    piece.deleted = piece.deleted.map(|_| t);
    for entry in &mut piece.diary {
        (entry.at, entry.noted_at) = (t, t);
        entry.earlier.iter_mut().for_each(|e| e.at = t);
    }
    piece.diary.sort_by(|a, b| a.entry.cmp(&b.entry));
    piece
}

/// Facts that stand in the diary: all but corrections and retractions.
fn entries(lines: &[Line<PieceFact>]) -> usize {
    let stands = |f: &&PieceFact| !matches!(f, PieceFact::Amends { .. } | PieceFact::Retracts(_));
    lines.iter().flat_map(|l| &l.facts).filter(stands).count()
}

proptest! {
    #[test]
    fn any_lines_give_one_state_in_whatever_order_they_are_read(
        (lines, mixed) in any_lines().prop_flat_map(|l| (Just(l.clone()), Just(l).prop_shuffle()))
    ) {
        prop_assert_eq!(fold(&lines), fold(&mixed));
    }

    #[test]
    fn a_line_read_again_changes_nothing(
        lines in any_lines(), again in vec(any::<prop::sample::Index>(), 1..6)
    ) {
        let mut twice = lines.clone();
        for index in again.iter().filter(|_| !lines.is_empty()) {
            twice.insert(index.index(twice.len() + 1), index.get(&lines).clone());
        }
        prop_assert_eq!(fold(&lines), fold(&twice));
    }

    #[test]
    fn clocks_a_year_out_or_stepping_back_change_no_more_than_the_times_shown(
        (lines, clocks) in history().prop_flat_map(|l| {
            let times = vec((moment(), moment()), l.len());
            (Just(l), times)
        })
    ) {
        let mut skewed = lines.clone();
        for (line, (at, noted_at)) in skewed.iter_mut().zip(clocks) {
            (line.at, line.noted_at) = (at, noted_at);
        }
        prop_assert_eq!(timeless(fold(&lines)), timeless(fold(&skewed)));
    }

    #[test]
    fn what_two_devices_did_apart_is_one_whichever_is_read_first(p in parted()) {
        let here_first = [&p.known[..], &p.here, &p.there].concat();
        let there_first = [&p.known[..], &p.there, &p.here].concat();
        let between: Vec<_> = p.there.iter().chain(&p.known).chain(&p.here).cloned().collect();
        let merged = fold(&here_first);
        prop_assert_eq!(&merged, &fold(&there_first));
        prop_assert_eq!(&merged, &fold(&between));
        prop_assert_eq!(merged.diary.len(), entries(&here_first), "every entry is still in the diary");
    }

    #[test]
    fn taking_back_and_taking_that_back_gives_the_state_before(
        lines in history(), which in any::<prop::sample::Index>()
    ) {
        let before = fold(&lines);
        let top = lines.iter().map(|l| l.seq).max().unwrap_or(0);
        let mut redone = lines.clone();
        redone.push(retracts("undoer", 1, top + 1, which.get(&lines).id.clone()));
        redone.push(retracts("undoer", 2, top + 2, line_id("undoer", 1)));
        let mut after = fold(&redone);
        // Only the count of lines goes on: it is what tells a calendar that something was recorded.
        prop_assert_eq!(after.lines, before.lines + 2);
        after.lines = before.lines;
        prop_assert_eq!(before, after);
    }

    #[test]
    fn a_history_undone_line_by_line_passes_through_each_state_it_had(lines in history()) {
        let lines = support::history::ordered(&lines);
        for (i, undone) in taken_back_one_by_one(&lines).iter().enumerate() {
            let then = fold(&lines[..lines.len() - i]);
            prop_assert_eq!(without_taken_back(fold(undone)), without_taken_back(then), "step {}", i);
        }
    }

    #[test]
    fn numbers_that_are_none_and_counts_at_their_end_still_fold(
        mut lines in any_lines(), odd in any::<f64>(), seq in any::<u64>()
    ) {
        if let Some(first) = lines.first_mut() {
            first.seq = seq;
            first.id.n = u64::MAX;
            let mass_g = Measure::plain(odd);
            first.facts.push(PieceFact::Weighed { mass_g, tare_g: f64::NAN });
        }
        let piece = fold(&lines);
        prop_assert!(piece.diary.len() <= entries(&lines));
        let seen: HashSet<_> = piece.diary.iter().map(|e| &e.entry).collect();
        prop_assert_eq!(seen.len(), piece.diary.len(), "an entry stands once");
    }
}

#[test]
fn the_strategies_invent_every_kind_of_fact() {
    let mut runner = TestRunner::deterministic();
    let facts = any_fact();
    let kinds: HashSet<usize> = (0..6000)
        .map(|_| kind_index(&facts.new_tree(&mut runner).unwrap().current()))
        .collect();
    let missing: Vec<usize> = (0..KINDS).filter(|k| !kinds.contains(k)).collect();
    assert!(missing.is_empty(), "never invented: {missing:?}");
}

#[test]
fn the_histories_correct_take_back_and_delete() {
    let mut runner = TestRunner::deterministic();
    let histories = history();
    let (mut corrected, mut taken_back, mut deleted, mut back) = (0, 0, 0, 0);
    for _ in 0..500 {
        let piece = fold(&histories.new_tree(&mut runner).unwrap().current());
        corrected += piece.diary.iter().filter(|e| !e.earlier.is_empty()).count();
        taken_back += piece.diary.iter().filter(|e| e.retracted).count();
        deleted += usize::from(piece.deleted.is_some());
        back += usize::from(piece.came_back);
    }
    for (what, n) in [
        ("corrected", corrected),
        ("taken back", taken_back),
        ("deleted", deleted),
        ("came back", back),
    ] {
        assert!(
            n > 10,
            "the properties above would prove nothing: {n} {what}"
        );
    }
}
