//! What meets what, in the table of the fold: photos, pair by pair; what is measured on them; what may be tidied away.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use chrono::Duration;
use evenwall_piece::fact::{Measure, PieceFact as F};
use evenwall_piece::ids::{FlawId, PhotoId};
use evenwall_piece::line::Line;
use evenwall_piece::photo::{
    PhotoHash, PhotoMarks, PhotoNote, PhotoOn, PhotoTaken, Scale, Span, Spot, length_by_scale,
};
use evenwall_piece::tidying::{TIDY_AFTER_DAYS, photos_to_tidy};
use evenwall_piece::vocabulary::FlawKind;
use proptest::prelude::*;

use support::words::{flaw, in_the_bag, with};
use support::{amends, entry, fold_both_ways, line, line_id, minutes, retracts, start};

fn id(text: &str) -> PhotoId {
    PhotoId::new(text).unwrap()
}

fn hash(digit: char) -> PhotoHash {
    PhotoHash::new(&digit.to_string().repeat(64)).unwrap()
}

fn on_flaw() -> PhotoOn {
    PhotoOn::Flaw(FlawId::new("f1").unwrap())
}

fn note(photo: &str, stored: char, on: PhotoOn) -> PhotoNote {
    PhotoNote {
        photo: id(photo),
        stored: hash(stored),
        source: hash('e'),
        taken: None,
        width_px: 1000,
        height_px: 500,
        on,
    }
}

fn added(photo: &str, stored: char) -> F {
    F::PhotoAdded(note(photo, stored, on_flaw()))
}

fn marked(photo: &str, x: f64) -> F {
    F::PhotoMarked(PhotoMarks {
        photo: id(photo),
        spot: Some(Spot { x, y: 0.5 }),
        scale: None,
        crack: None,
    })
}

#[test]
fn of_two_photos_with_one_id_the_first_names_it_and_both_stay_in_the_diary() {
    let piece = fold_both_ways(&with(vec![
        line("phone", 1, 3, vec![added("ph1", 'b')]),
        line("bench", 3, 3, vec![added("ph1", 'a')]),
    ]));
    assert_eq!(piece.photo(&id("ph1")).unwrap().note.stored, hash('a'));
    assert_eq!(piece.photos.len(), 1);
    let kept = piece
        .diary
        .iter()
        .filter(|e| matches!(e.fact, F::PhotoAdded(_)));
    assert_eq!(kept.count(), 2);
}

#[test]
fn what_befell_a_photo_joins_it_when_its_note_arrives() {
    let early = vec![
        line("bench", 3, 3, vec![marked("ph1", 0.25)]),
        line("bench", 4, 4, vec![F::PhotoRemoved(id("ph1"))]),
    ];
    assert!(fold_both_ways(&with(early.clone())).photos.is_empty());
    let mut all = early;
    all.push(line("phone", 1, 9, vec![added("ph1", 'a')]));
    let piece = fold_both_ways(&with(all));
    let photo = piece.photo(&id("ph1")).unwrap();
    assert_eq!(photo.removed, Some(minutes(4)));
    assert_eq!(photo.marks.as_ref().unwrap().spot.unwrap().x, 0.25);
}

#[test]
fn removed_here_and_brought_back_there_the_later_in_fold_order_shows() {
    let with_both = |removed: u64, back: u64| {
        fold_both_ways(&with(vec![
            line("bench", 3, 3, vec![added("ph1", 'a')]),
            line("phone", 1, removed, vec![F::PhotoRemoved(id("ph1"))]),
            line("tablet", 1, back, vec![F::PhotoBack(id("ph1"))]),
        ]))
    };
    assert_eq!(with_both(4, 5).photos_on(&on_flaw()).len(), 1);
    assert!(with_both(5, 4).photos_on(&on_flaw()).is_empty());
}

#[test]
fn removed_here_and_marked_there_it_stays_removed_with_its_marks() {
    let mut lines = with(vec![
        line("bench", 3, 3, vec![added("ph1", 'a')]),
        line("phone", 1, 4, vec![F::PhotoRemoved(id("ph1"))]),
        line("tablet", 1, 5, vec![marked("ph1", 0.75)]),
    ]);
    assert!(fold_both_ways(&lines).photos_on(&on_flaw()).is_empty());
    lines.push(line("phone", 2, 6, vec![F::PhotoBack(id("ph1"))]));
    let piece = fold_both_ways(&lines);
    assert!(piece.photos_on(&on_flaw())[0].marks.is_some());
}

#[test]
fn marked_on_two_devices_the_later_shows_whole() {
    let first = F::PhotoMarked(PhotoMarks {
        photo: id("ph1"),
        spot: None,
        scale: Some(Scale {
            span: span((0.0, 0.0), (1.0, 0.0)),
            known_mm: Measure::plain(100.0),
        }),
        crack: None,
    });
    let piece = fold_both_ways(&with(vec![
        line("bench", 3, 3, vec![added("ph1", 'a')]),
        line("phone", 1, 4, vec![first]),
        line("tablet", 1, 4, vec![marked("ph1", 0.5)]),
    ]));
    let marks = piece.photos[0].marks.clone().unwrap();
    assert!(marks.spot.is_some() && marks.scale.is_none());
    let kept = piece
        .diary
        .iter()
        .filter(|e| matches!(e.fact, F::PhotoMarked(_)));
    assert_eq!(kept.count(), 2);
}

#[test]
fn one_picture_added_twice_to_one_thing_is_kept_twice_and_shown_once() {
    let piece = fold_both_ways(&with(vec![
        line("phone", 1, 3, vec![added("ph1", 'a')]),
        line("tablet", 1, 3, vec![added("ph2", 'a')]),
        line(
            "tablet",
            2,
            4,
            vec![F::PhotoAdded(note("ph3", 'a', PhotoOn::Portrait))],
        ),
    ]));
    assert_eq!(piece.photos.len(), 3);
    assert_eq!(piece.photos_on(&on_flaw()).len(), 1);
    assert_eq!(piece.portrait().unwrap().note.photo, id("ph3"));
    assert!(piece.same_photo(&hash('e'), &on_flaw()).is_some());
    assert!(piece.same_photo(&hash('e'), &PhotoOn::Finished).is_none());
}

#[test]
fn a_photo_of_a_flaw_that_was_taken_back_is_kept_until_the_flaw_returns() {
    let mut lines = with(vec![
        line("bench", 3, 3, vec![flaw("f1", FlawKind::Knot)]),
        line("bench", 4, 4, vec![added("ph1", 'a')]),
        retracts("bench", 5, 5, line_id("bench", 3)),
    ]);
    let piece = fold_both_ways(&lines);
    assert!(piece.flaws.is_empty() && piece.photos.len() == 1);
    lines.push(retracts("bench", 6, 6, line_id("bench", 5)));
    let piece = fold_both_ways(&lines);
    assert_eq!(
        (piece.flaws.len(), piece.photos_on(&on_flaw()).len()),
        (1, 1)
    );
}

#[test]
fn photos_stand_in_the_order_in_which_they_were_taken_and_a_correction_moves_one() {
    let mut early = note("ph2", 'b', on_flaw());
    early.taken = Some(PhotoTaken {
        local: start().naive_local() - Duration::days(30),
        offset: None,
    });
    let lines = with(vec![
        line("bench", 3, 3, vec![added("ph1", 'a')]),
        line("bench", 4, 4, vec![F::PhotoAdded(early)]),
    ]);
    let piece = fold_both_ways(&lines);
    let shown: Vec<_> = piece
        .photos_on(&on_flaw())
        .iter()
        .map(|p| p.note.photo.clone())
        .collect();
    assert_eq!(shown, [id("ph2"), id("ph1")]);
    let moved = F::PhotoAdded(note("ph1", 'a', PhotoOn::Finished));
    let lines = [lines, vec![amends("bench", 5, 5, entry("bench", 3), moved)]].concat();
    let piece = fold_both_ways(&lines);
    assert_eq!(piece.photos_on(&PhotoOn::Finished).len(), 1);
}

fn span(from: (f64, f64), to: (f64, f64)) -> Span {
    let spot = |(x, y)| Spot { x, y };
    Span {
        from: spot(from),
        to: spot(to),
    }
}

#[test]
fn a_crack_is_measured_by_the_known_length_whatever_the_shape_of_the_photo() {
    // 400 pixels across are 100 mm on a photo of 1000 by 500; 300 down are 75 mm.
    let scale = Scale {
        span: span((0.1, 0.5), (0.5, 0.5)),
        known_mm: Measure::plain(100.0),
    };
    let down = length_by_scale(&scale, span((0.2, 0.2), (0.2, 0.8)), 1000, 500).unwrap();
    assert!((down - 75.0).abs() < 1e-9);
    // 3-4-5: 120 across and 160 down are 200 pixels.
    let slanting = length_by_scale(&scale, span((0.0, 0.0), (0.12, 0.32)), 1000, 500).unwrap();
    assert!((slanting - 50.0).abs() < 1e-9);
    let short = Scale {
        span: span((0.1, 0.5), (0.11, 0.5)),
        ..scale.clone()
    };
    assert_eq!(
        length_by_scale(&short, span((0.0, 0.0), (1.0, 0.0)), 1000, 500),
        None
    );
    let nothing = Scale {
        known_mm: Measure::plain(0.0),
        ..scale
    };
    assert_eq!(
        length_by_scale(&nothing, span((0.0, 0.0), (1.0, 0.0)), 1000, 500),
        None
    );
}

proptest! {
    #[test]
    fn the_known_length_measured_by_itself_is_itself(
        ends in ((0.0..1.0_f64, 0.0..1.0_f64), (0.0..1.0_f64, 0.0..1.0_f64)),
        mm in 1.0..400.0_f64, width in 200..2560_u32, height in 200..2560_u32
    ) {
        let scale = Scale { span: span(ends.0, ends.1), known_mm: Measure::plain(mm) };
        prop_assume!(scale.span.px(width, height) >= 20.0);
        let itself = length_by_scale(&scale, scale.span, width, height).unwrap();
        prop_assert!((itself - mm).abs() < 1e-9 * mm);
    }
}

// Tidying.

fn to_tidy(lines: &[Line<F>], days: i64) -> Vec<PhotoHash> {
    photos_to_tidy(&support::fold(lines), lines, start() + Duration::days(days))
}

#[test]
fn only_what_was_deleted_or_undone_90_days_ago_may_be_tidied() {
    let lines = with(vec![
        line("bench", 3, 3, vec![added("ph1", 'a'), added("ph2", 'b')]),
        line("bench", 4, 4, vec![added("ph3", 'c')]),
        line("bench", 5, 5, vec![F::PhotoRemoved(id("ph1"))]),
        retracts("bench", 6, 6, line_id("bench", 4)),
    ]);
    // The lines stand minutes after the start.
    assert!(
        to_tidy(&lines, TIDY_AFTER_DAYS).is_empty(),
        "minutes short of 90 days"
    );
    assert_eq!(to_tidy(&lines, TIDY_AFTER_DAYS + 1), [hash('a'), hash('c')]);
    assert!(to_tidy(&in_the_bag(), 10_000).is_empty());
}

#[test]
fn what_is_shown_anywhere_or_was_touched_since_is_kept() {
    let base = with(vec![
        line("bench", 3, 3, vec![added("ph1", 'a')]),
        line("bench", 4, 4, vec![F::PhotoRemoved(id("ph1"))]),
    ]);
    let later = |n: u64, mut l: Line<F>| {
        l.noted_at = start() + Duration::days(60);
        l.id.n = n;
        [base.clone(), vec![l]].concat()
    };
    assert_eq!(to_tidy(&base, 100), [hash('a')]);
    let elsewhere = later(
        5,
        line(
            "bench",
            5,
            5,
            vec![F::PhotoAdded(note("ph9", 'a', PhotoOn::Portrait))],
        ),
    );
    assert!(
        to_tidy(&elsewhere, 10_000).is_empty(),
        "the same picture shows elsewhere"
    );
    let marked = later(5, line("bench", 5, 5, vec![marked("ph1", 0.5)]));
    assert!(to_tidy(&marked, 100).is_empty());
    assert_eq!(to_tidy(&marked, 151), [hash('a')]);
    let back = later(5, line("bench", 5, 5, vec![F::PhotoBack(id("ph1"))]));
    assert!(to_tidy(&back, 10_000).is_empty());
    let undone = later(5, retracts("bench", 5, 5, line_id("bench", 4)));
    assert!(
        to_tidy(&undone, 10_000).is_empty(),
        "its removal was undone"
    );
    let newer = F::Unknown {
        kind: "album".into(),
        raw: format!("{{\"photo\":\"{}\"}}", hash('a')),
    };
    assert!(to_tidy(&later(5, line("bench", 5, 5, vec![newer])), 10_000).is_empty());
    let deleted = with(vec![
        line("bench", 3, 3, vec![added("ph1", 'a')]),
        line("bench", 4, 4, vec![F::Deleted]),
    ]);
    assert!(
        to_tidy(&deleted, 10_000).is_empty(),
        "the piece can be brought back"
    );
}
