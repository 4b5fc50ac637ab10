//! What meets what, in the table of the fold: deleting, and two hands on one thing, pair by pair.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use evenwall_piece::fact::{Clock, End, Measure, PieceFact as F, Reading, StationRef};
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, FlawKind, Taken, Treatment};

use support::words::{feels, flaw, in_the_bag, look, mark, reading, treated, with};
use support::{amends, entry, fold_both_ways, line, line_id, minutes, retracts};

// Deleting.

#[test]
fn what_a_device_recorded_without_having_read_the_deletion_brings_the_piece_back() {
    for unread in [look(BagFeel::Wet), reading(3, 9.5), F::Note("n".into())] {
        // `alpha` comes before the bench in fold order at the same seq, `phone` after it.
        for device in ["alpha", "phone"] {
            let piece = fold_both_ways(&with(vec![
                line("bench", 3, 3, vec![F::Deleted]),
                line(device, 1, 3, vec![unread.clone()]),
            ]));
            assert_eq!(
                (piece.deleted, piece.came_back),
                (None, true),
                "{device} {unread:?}"
            );
        }
    }
}

#[test]
fn a_correction_of_a_deleted_piece_brings_it_back_too() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![F::Deleted]),
        amends("phone", 1, 3, entry("bench", 1), mark("K08")),
    ]));
    assert_eq!((piece.deleted, piece.came_back), (None, true));
}

#[test]
fn what_stood_before_the_deletion_stays_deleted_with_it_and_nothing_is_lost() {
    let lines = with(vec![
        line("phone", 1, 3, vec![look(BagFeel::Wet)]),
        line("bench", 3, 4, vec![F::Note("gone".into()), F::Deleted]),
    ]);
    let piece = fold_both_ways(&lines);
    assert_eq!((piece.deleted, piece.came_back), (Some(minutes(4)), false));
    assert_eq!(feels(&piece), [BagFeel::Wet]);
}

#[test]
fn deleted_on_both_devices_it_stays_deleted() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![F::Deleted]),
        line("phone", 1, 3, vec![F::Deleted]),
    ]));
    assert_eq!((piece.deleted, piece.came_back), (Some(minutes(3)), false));
}

#[test]
fn back_again_a_piece_can_be_kept_or_deleted_again() {
    let back = with(vec![
        line("bench", 3, 3, vec![F::Deleted]),
        line("phone", 1, 3, vec![look(BagFeel::Wet)]),
    ]);
    let mut kept = back.clone();
    kept.push(line("bench", 4, 4, vec![F::Undeleted]));
    let piece = fold_both_ways(&kept);
    assert_eq!(
        (piece.deleted, piece.came_back),
        (None, false),
        "the note goes once it is answered"
    );
    let mut deleted = back;
    deleted.push(line("bench", 4, 4, vec![F::Deleted]));
    let piece = fold_both_ways(&deleted);
    assert_eq!((piece.deleted, piece.came_back), (Some(minutes(4)), false));
}

#[test]
fn undoing_and_redoing_a_deletion_is_not_work_on_the_piece() {
    let mut lines = with(vec![line("bench", 3, 3, vec![F::Deleted])]);
    lines.push(retracts("bench", 4, 4, line_id("bench", 3)));
    assert_eq!(fold_both_ways(&lines).deleted, None);
    lines.push(retracts("phone", 1, 5, line_id("bench", 4)));
    let piece = fold_both_ways(&lines);
    assert_eq!((piece.deleted, piece.came_back), (Some(minutes(3)), false));
}

// Two hands on one thing.

#[test]
fn readings_at_a_station_no_longer_laid_out_are_kept() {
    let stations = |count| F::Stations {
        count,
        depths_mm: Vec::new(),
    };
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![stations(9)]),
        line("bench", 4, 4, vec![reading(9, 12.0)]),
        line("phone", 1, 4, vec![stations(5)]),
    ]));
    assert_eq!(piece.stations.count, 5);
    let kept = &piece.readings[0];
    assert_eq!(kept.reading.station, StationRef::Wall(9));
    assert_eq!(kept.reading.wall_mm, Some(Measure::plain(12.0)));
    assert!(piece.diary.iter().any(|e| e.fact == reading(9, 12.0)));
}

#[test]
fn a_reading_from_before_the_stations_moved_counts_at_no_station_and_is_kept() {
    let at = |depths: [f64; 3]| F::Stations {
        count: 3,
        depths_mm: depths.to_vec(),
    };
    let floor = F::Reading(Reading {
        station: StationRef::Floor,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(14.0)),
        feel: None,
        taken: Taken::DepthRod,
    });
    let read = with(vec![
        line("bench", 3, 3, vec![at([10.0, 50.0, 90.0])]),
        line("bench", 4, 4, vec![reading(2, 12.0), floor]),
    ]);
    let laid_out = |depths| {
        let mut lines = read.clone();
        lines.push(line("bench", 5, 5, vec![at(depths)]));
        lines
    };
    let station = StationRef::Wall(2);
    let same = fold_both_ways(&laid_out([10.0, 50.2, 90.0]));
    assert!(same.last_reading(station, None).is_some(), "nothing moved");
    let mut lines = laid_out([10.0, 40.0, 70.0]);
    let moved = fold_both_ways(&lines);
    assert_eq!(moved.last_reading(station, None), None);
    assert!(moved.readings_round(station).is_empty());
    assert_eq!(moved.readings.len(), 2);
    assert!(moved.diary.iter().any(|e| e.fact == reading(2, 12.0)));
    assert!(
        moved.last_reading(StationRef::Floor, None).is_some(),
        "the floor stays where it is"
    );
    lines.push(line("bench", 6, 6, vec![reading(2, 9.0)]));
    let again = fold_both_ways(&lines);
    assert_eq!(again.readings_round(station), [&again.readings[2]]);
    lines.pop();
    lines.push(retracts("bench", 6, 6, line_id("bench", 5)));
    let back = fold_both_ways(&lines);
    assert!(back.last_reading(station, None).is_some(), "undo");
}

#[test]
fn diameters_and_flaws_keep_their_depth_when_the_stations_move() {
    let at = |depths: &[f64]| F::Stations {
        count: u8::try_from(depths.len()).unwrap(),
        depths_mm: depths.to_vec(),
    };
    let diameter = |station, mm| F::OutsideDiameter {
        station,
        diameter_mm: Some(Measure::plain(mm)),
    };
    let F::FlawFound(mut knot) = flaw("f", FlawKind::Knot) else {
        panic!("a flaw");
    };
    knot.station = Some(StationRef::Wall(2));
    let mut lines = with(vec![
        line("bench", 3, 3, vec![at(&[10.0, 50.0, 90.0])]),
        line("bench", 4, 4, vec![diameter(2, 120.0), diameter(3, 100.0)]),
        line("bench", 5, 5, vec![F::FlawFound(knot)]),
        line("bench", 6, 6, vec![at(&[10.0, 30.0, 70.0, 90.2])]),
    ]);
    let before = fold_both_ways(&lines[..lines.len() - 1]);
    let noted = Some(StationRef::Wall(2));
    assert_eq!(
        (before.flaws[0].depth_mm, before.diameters.len()),
        (None, 2)
    );
    let moved = fold_both_ways(&lines);
    assert_eq!(moved.diameters_between, [(50.0, Measure::plain(120.0))]);
    assert_eq!(
        moved.diameters[&4],
        Measure::plain(100.0),
        "its depth again"
    );
    assert_eq!(moved.diameters.len(), 1);
    assert_eq!(moved.flaws[0].note.station, noted, "as it was noted");
    assert_eq!(moved.flaws[0].depth_mm, Some(50.0));
    // 30 and 70 lie as near: the upper one.
    assert_eq!(
        moved.note_now(&moved.flaws[0]).station,
        Some(StationRef::Wall(2))
    );
    // A later diameter at the new station is another; back at the old depths the first counts there again.
    lines.push(line("bench", 7, 7, vec![diameter(2, 110.0)]));
    lines.push(line("bench", 8, 8, vec![at(&[10.0, 50.0, 90.0])]));
    let back = fold_both_ways(&lines);
    assert_eq!(back.diameters[&2], Measure::plain(120.0));
    assert_eq!(back.diameters[&3], Measure::plain(100.0));
    assert_eq!(back.diameters_between, [(30.0, Measure::plain(110.0))]);
    assert_eq!(back.station_of(&back.flaws[0]), noted);
    lines.truncate(lines.len() - 3);
    lines.push(retracts("bench", 7, 7, line_id("bench", 6)));
    let undone = fold_both_ways(&lines);
    assert_eq!(undone.diameters, before.diameters);
    assert_eq!(undone.flaws, before.flaws);
}

#[test]
fn of_a_detail_set_on_two_devices_the_later_shows_and_both_stay_in_the_diary() {
    let piece = fold_both_ways(&with(vec![
        line("phone", 1, 3, vec![mark("K08")]),
        line("tablet", 1, 3, vec![mark("K12")]),
    ]));
    assert_eq!(piece.mark(), "K12");
    let said = |m: &str| piece.diary.iter().any(|e| e.fact == mark(m));
    assert!(said("K07") && said("K08") && said("K12"));
}

#[test]
fn of_a_stage_moved_on_two_devices_the_later_is_present_and_both_are_visits() {
    let piece = fold_both_ways(&with(vec![
        line("phone", 1, 3, vec![F::StageMoved(Stage::Air)]),
        line("tablet", 1, 3, vec![F::StageMoved(Stage::Settle)]),
    ]));
    let walked: Vec<_> = piece.visits.iter().map(|v| v.stage).collect();
    assert_eq!(
        walked,
        [Stage::Shape, Stage::Bag, Stage::Air, Stage::Settle]
    );
    assert_eq!(piece.stage(), Stage::Settle);
}

#[test]
fn a_piece_entered_straight_into_a_later_stage_was_never_in_shape() {
    for facts in [
        vec![F::Created, F::StageMoved(Stage::Air)],
        vec![F::StageMoved(Stage::Air), F::Created],
    ] {
        let piece = fold_both_ways(&[line("bench", 1, 1, facts)]);
        let walked: Vec<_> = piece.visits.iter().map(|v| v.stage).collect();
        assert_eq!(walked, [Stage::Air]);
        assert_eq!(piece.created, Some(minutes(1)));
    }
    let piece = fold_both_ways(&in_the_bag());
    assert_eq!(
        piece.visits.len(),
        2,
        "moved by a line of its own, it was in Shape before"
    );
}

#[test]
fn back_dating_the_creation_moves_the_start_of_the_first_stage() {
    let earlier = F::Amends {
        entry: entry("bench", 1),
        at: Some(minutes(-1440)),
        fact: None,
    };
    let piece = fold_both_ways(&with(vec![line("bench", 3, 3, vec![earlier])]));
    assert_eq!(piece.created, Some(minutes(-1440)));
    assert_eq!(piece.visits[0].since, minutes(-1440));
}

#[test]
fn without_the_line_that_creates_it_a_piece_still_has_a_stage() {
    let piece = fold_both_ways(&[line("phone", 1, 4, vec![mark("K07")])]);
    assert_eq!((piece.created, piece.stage()), (None, Stage::Shape));
    assert_eq!(piece.stage_since(), Some(minutes(4)));
}

#[test]
fn of_two_flaws_with_one_id_the_first_names_it_and_both_stay_in_the_diary() {
    let piece = fold_both_ways(&with(vec![
        line("phone", 1, 3, vec![flaw("f1", FlawKind::Knot)]),
        line("tablet", 1, 3, vec![flaw("f1", FlawKind::Check)]),
    ]));
    let kinds: Vec<_> = piece.flaws.iter().map(|f| f.note.kind).collect();
    assert_eq!(kinds, [FlawKind::Knot]);
    assert_eq!(piece.diary.len(), 5);
}

#[test]
fn a_treatment_joins_its_flaw_when_the_note_arrives() {
    let treatment = line("phone", 1, 3, vec![treated("f1", Treatment::Thin)]);
    let alone = fold_both_ways(&with(vec![treatment.clone()]));
    assert!(alone.flaws.is_empty());
    assert!(
        alone
            .diary
            .iter()
            .any(|e| matches!(e.fact, F::FlawTreated(_)))
    );
    let note = line("tablet", 1, 5, vec![flaw("f1", FlawKind::Knot)]);
    let joined = fold_both_ways(&with(vec![treatment, note]));
    assert!(joined.flaws[0].decided());
}

#[test]
fn ended_on_one_device_and_looked_after_on_another_it_stays_ended() {
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![F::Ended(End::GivenAway)]),
        line("phone", 1, 3, vec![look(BagFeel::Damp)]),
    ]));
    assert_eq!(piece.end, Some((minutes(3), End::GivenAway)));
    assert!(!piece.living());
    assert_eq!(feels(&piece), [BagFeel::Damp]);
}

#[test]
fn two_living_pieces_with_one_mark_are_both_kept() {
    let fold = |id: &str| fold_piece(PieceId::new(id).unwrap(), in_the_bag());
    let (one, other) = (fold("p1"), fold("p2"));
    assert_eq!((one.mark(), other.mark()), ("K07", "K07"));
    assert!(one.living() && other.living() && one.id != other.id);
}

#[test]
fn of_two_lines_with_one_id_the_same_one_counts_whichever_was_read_first() {
    let piece = fold_both_ways(&with(vec![
        line("phone", 1, 3, vec![look(BagFeel::Wet)]),
        line("phone", 1, 3, vec![look(BagFeel::Damp)]),
    ]));
    assert_eq!(piece.looks.len(), 1);
}

#[test]
fn anything_measured_finds_a_piece_that_could_not_be_found() {
    for seen in [
        look(BagFeel::Damp),
        reading(1, 9.0),
        flaw("f1", FlawKind::Check),
    ] {
        let piece = fold_both_ways(&with(vec![
            line("bench", 3, 3, vec![F::NotFound]),
            line("bench", 4, 4, vec![seen.clone()]),
        ]));
        assert_eq!(piece.not_found, None, "{seen:?}");
    }
}

// Ovals at stations.

#[test]
fn an_oval_measured_at_a_station_on_two_devices_counts_as_the_later_and_both_stay() {
    let oval = |longest| F::OvalAt {
        station: 2,
        longest_mm: Measure::plain(longest),
        shortest_mm: Measure::plain(170.0),
    };
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![oval(180.0)]),
        line("phone", 1, 3, vec![oval(179.0)]),
    ]));
    assert_eq!(piece.finish.ovals.len(), 1);
    // `phone` comes after the bench in fold order at the same seq.
    let span = piece.finish.ovals[&2].measured.span_mm();
    assert_eq!(span, Some((179.0, 170.0)));
    let told = piece
        .diary
        .iter()
        .filter(|e| matches!(e.fact, F::OvalAt { .. }) && !e.retracted);
    assert_eq!(told.count(), 2);
}
