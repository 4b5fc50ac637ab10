//! Offers: when the next stage is offered, and why.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use evenwall_piece::agenda::{TaskKind, Why};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Method, Taken};

fn offered(h: &History, n: i64) -> Option<(Stage, Why)> {
    tasks(h, day(n)).into_iter().find_map(|t| match t.kind {
        TaskKind::OfferStage(stage) => Some((stage, t.why)),
        _ => None,
    })
}

fn floor(mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station: StationRef::Floor,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::DepthRod,
    })
}

/// Weighed every so many days from a day on.
fn weigh(h: &mut History, from: i64, every: i64, grams: &[f64]) {
    for (i, g) in grams.iter().enumerate() {
        h.weighed(day(from + every * i as i64), *g);
    }
}

#[test]
fn settle_is_offered_after_30_days_of_air_and_42_with_a_thick_floor() {
    let thin = History::new("K07", Stage::Air);
    assert_eq!(offered(&thin, 29), None);
    let why = |thick_floor, days| Why::DaysRun {
        days,
        weighed: false,
        thick_floor,
    };
    assert_eq!(offered(&thin, 30), Some((Stage::Settle, why(false, 30))));
    let mut thick = History::new("K08", Stage::Air);
    thick.tell(day(0), vec![floor(15.5)]);
    assert_eq!(offered(&thick, 41), None);
    assert_eq!(offered(&thick, 42), Some((Stage::Settle, why(true, 42))));
    let mut exactly = History::new("K09", Stage::Air);
    exactly.tell(day(0), vec![floor(15.0)]);
    assert!(offered(&exactly, 30).is_some());
    // Without a reading the floor wanted counts, without that the wall wanted plus 2.
    let mut wanted = History::new("K10", Stage::Air);
    wanted.tell(day(0), vec![length(DetailField::WallWanted, 14.0)]);
    assert_eq!(offered(&wanted, 41), None);
    wanted.tell(day(0), vec![length(DetailField::FloorWanted, 12.0)]);
    assert!(offered(&wanted, 30).is_some());
}

#[test]
fn an_offer_is_among_the_probably_ready_and_never_among_the_overdue() {
    let mut h = History::new("K07", Stage::Air);
    h.looked_over(day(80));
    let a = whole(&Shop::default(), &[h], day(80));
    assert_eq!(ids(&a.probably_ready), ["k07"]);
    assert!(a.overdue.is_empty() && a.today.is_empty());
}

#[test]
fn the_house_is_offered_when_the_weight_has_stayed_put_for_sixty_days() {
    let mut h = History::new("K07", Stage::Settle);
    weigh(
        &mut h,
        0,
        14,
        &[520.0, 480.0, 460.0, 455.0, 454.0, 454.0, 453.0, 454.0],
    );
    assert_eq!(offered(&h, 98), None, "56 days from the fall's end");
    h.weighed(day(112), 454.0);
    assert_eq!(
        offered(&h, 112),
        Some((Stage::Indoors, Why::StayedPut { days: 70 }))
    );
    // Glue goes on: the weights before no longer compare.
    h.tell(
        day(113),
        vec![PieceFact::MassChanged(
            evenwall_piece::vocabulary::MassChange::Glue,
        )],
    );
    assert_eq!(offered(&h, 113), None);
}

#[test]
fn never_weighed_nothing_is_said_of_staying_put() {
    let h = History::new("K07", Stage::Settle);
    assert_eq!(offered(&h, 300), None);
}

#[test]
fn true_is_offered_after_14_days_indoors_and_steady_and_28_with_a_thick_floor() {
    let indoors = |grams: &[f64]| {
        let mut h = History::new("K07", Stage::Settle);
        h.weighed(day(-20), 520.0).moved(day(0), Stage::Indoors);
        weigh(&mut h, 0, 7, grams);
        h
    };
    assert_eq!(offered(&indoors(&[500.0, 490.0]), 13), None);
    assert_eq!(
        offered(&indoors(&[500.0, 490.0, 484.0]), 14),
        None,
        "still falling"
    );
    assert_eq!(
        offered(&indoors(&[500.0]), 14),
        None,
        "not weighed twice there"
    );
    let why = Why::DaysRun {
        days: 14,
        weighed: true,
        thick_floor: false,
    };
    assert_eq!(
        offered(&indoors(&[500.0, 490.0, 489.5]), 14),
        Some((Stage::True, why))
    );
    let mut thick = indoors(&[500.0, 490.0, 490.0, 490.0]);
    thick.tell(day(0), vec![floor(20.0)]);
    assert_eq!(offered(&thick, 27), None);
    assert!(offered(&thick, 28).is_some());
    // Never weighed at all: the days alone, and it says so.
    let plain = History::new("K08", Stage::Indoors);
    assert!(matches!(
        offered(&plain, 14),
        Some((Stage::True, Why::DaysRun { weighed: false, .. }))
    ));
}

#[test]
fn other_methods_are_offered_the_house_when_steady_and_once_turned_thin_the_finish() {
    let mut paper = History::new("K07", Stage::Bag);
    paper.method(day(0), Method::Paper);
    weigh(
        &mut paper,
        0,
        14,
        &[500.0, 440.0, 421.0, 420.0, 420.0, 420.0, 419.0, 420.0],
    );
    assert!(matches!(
        offered(&paper, 98),
        Some((Stage::Indoors, Why::StayedPut { .. }))
    ));
    let mut thin = History::new("K08", Stage::Bag);
    thin.method(day(2), Method::OnceThin);
    assert_eq!(offered(&thin, 15), None);
    assert!(matches!(offered(&thin, 16), Some((Stage::Finish, _))));
}
