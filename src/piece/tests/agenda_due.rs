//! Days: local dates, journeys, daylight saving, clocks set back, pauses, and what is graded how.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use chrono::NaiveDate;
use evenwall_piece::agenda::{Nudge, TaskKind, Urgency, Why};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, FlawNote, FlawTreated, PieceFact};
use evenwall_piece::ids::FlawId;
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, FlawChange, FlawKind, Treatment};

fn d(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

#[test]
fn a_missed_look_stays_overdue_until_it_is_answered() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Damp);
    for n in 5..60 {
        let a = whole(&Shop::default(), &[h.clone()], day(n));
        assert_eq!(ids(&a.overdue), ["k07"]);
        assert_eq!(a.overdue[0].days_late, n - 4);
        assert_eq!(a.overdue[0].urgency, Urgency::Serious);
    }
    h.felt(day(60), BagFeel::Damp);
    let a = whole(&Shop::default(), &[h], day(60));
    assert!(a.overdue.is_empty());
    assert_eq!(a.next.unwrap().due, date(63));
}

#[test]
fn lateness_is_graded_closed_bag_then_look_then_weighing() {
    let closed = History::new("A1", Stage::Bag);
    let mut open = History::new("A2", Stage::Bag);
    open.felt(day(1), BagFeel::Nothing);
    let mut airing = History::new("A3", Stage::Air);
    airing.weighed(day(0), 800.0).looked_over(day(19));
    airing.weighed(day(7), 800.0);
    let settling = History::new("A4", Stage::Settle);
    let a = whole(&Shop::default(), &[settling, airing, open, closed], day(20));
    let graded: Vec<_> = a
        .overdue
        .iter()
        .map(|t| (t.kind.clone(), t.urgency))
        .collect();
    assert_eq!(
        graded,
        [
            (TaskKind::Look, Urgency::Serious),
            (TaskKind::Look, Urgency::Soon),
            (TaskKind::Weigh, Urgency::WhenYouLike),
            (TaskKind::Weigh, Urgency::WhenYouLike),
        ]
    );
    assert_eq!(ids(&a.overdue), ["a1", "a2", "a4", "a3"]);
    let late = whole(&Shop::default(), &[History::new("A5", Stage::Air)], day(9));
    assert_eq!(late.overdue[0].urgency, Urgency::Soon);
}

#[test]
fn days_are_counted_over_the_hour_that_spring_takes_and_autumn_gives() {
    // Central European clocks went forward on 29 March 2026 and go back on 25 October 2026.
    for (felt, due, early, late) in [
        (
            "2026-03-27T23:30+01:00",
            "2026-03-30",
            "2026-03-30T00:10+02:00",
            "2026-03-31T00:10+02:00",
        ),
        (
            "2026-10-23T00:10+02:00",
            "2026-10-26",
            "2026-10-26T23:50+01:00",
            "2026-10-27T00:10+01:00",
        ),
    ] {
        let mut h = History::since("K07", Stage::Bag, at("2026-03-01T12:00+01:00"));
        h.felt(at(felt), BagFeel::Damp);
        assert_eq!(next(&h, at(early)).due, d(due));
        assert_eq!(next(&h, at(early)).days_late, 0);
        assert_eq!(next(&h, at(late)).days_late, 1);
        let a = whole(&Shop::default(), &[h.clone()], at(early));
        assert_eq!(ids(&a.today), ["k07"]);
    }
}

#[test]
fn a_journey_moves_today_and_never_the_due_day() {
    let mut h = History::since("K07", Stage::Bag, at("2026-06-01T12:00+02:00"));
    // Late in the evening at home: in Greenwich it is still the 2nd, in Auckland already the 3rd.
    h.felt(at("2026-06-02T23:30+02:00"), BagFeel::Wet);
    for (now, days_late) in [
        ("2026-06-03T20:00-08:00", 0),
        ("2026-06-04T20:00-08:00", 0),
        ("2026-06-05T01:00-08:00", 1),
        ("2026-06-05T01:00+12:00", 1),
        ("2026-06-04T23:59+12:00", 0),
    ] {
        let t = next(&h, at(now));
        assert_eq!((t.due, t.days_late), (d("2026-06-04"), days_late), "{now}");
    }
}

#[test]
fn a_look_dated_ahead_is_shown_and_never_postpones_the_next() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Damp);
    // The clock was a year ahead for one answer.
    h.felt(day(366), BagFeel::Wet);
    let t = next(&h, day(2));
    assert_eq!((t.due, t.dated_ahead), (date(4), Some(date(366))));
    assert_eq!(next(&h, day(9)).days_late, 5);
    // And an answer with the clock set right counts.
    h.felt(day(9), BagFeel::Damp);
    assert_eq!(next(&h, day(9)).due, date(12));
}

#[test]
fn a_clock_set_back_shows_the_look_that_was_due_then() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Damp).felt(day(4), BagFeel::Damp);
    assert_eq!(next(&h, day(4)).due, date(7));
    assert_eq!(next(&h, day(3)).due, date(4));
    assert_eq!(next(&h, day(8)).days_late, 1);
}

#[test]
fn a_piece_known_only_from_a_clock_ahead_is_due_at_once() {
    for stage in [Stage::Bag, Stage::Air, Stage::Settle, Stage::Indoors] {
        let mut h = History::since("K07", stage, day(366));
        let t = next(&h, day(2));
        assert_eq!((t.due, t.why), (date(2), Why::DatedAhead), "{stage:?}");
        h.looked_over(day(2)).felt(day(2), BagFeel::Damp);
        assert!(next(&h, day(2)).due > date(2), "{stage:?}");
    }
}

#[test]
fn a_look_done_yesterday_and_noted_today_counts_from_yesterday() {
    let mut h = History::new("K07", Stage::Bag);
    h.tell_noted(day(3), day(4), vec![look(Some(BagFeel::Damp), false)]);
    assert_eq!(next(&h, day(4)).due, date(6));
    // Also for a bag that was entered after it was felt.
    let mut new = History::since("K08", Stage::Bag, day(4));
    new.tell_noted(day(3), day(4), vec![look(Some(BagFeel::Damp), false)]);
    assert_eq!(next(&new, day(4)).due, date(6));
}

#[test]
fn looks_of_an_earlier_stay_in_the_bag_do_not_count_for_this_one() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Nothing)
        .felt(day(4), BagFeel::Nothing);
    h.moved(day(5), Stage::Air).moved(day(9), Stage::Bag);
    let t = next(&h, day(9));
    assert_eq!((t.due, t.why), (date(10), Why::FirstLook));
    assert!(!has(&tasks(&h, day(9)), &TaskKind::OfferStage(Stage::Air)));
}

#[test]
fn paused_pieces_ask_for_nothing_and_were_not_late_meanwhile() {
    let mut h = History::new("K07", Stage::Bag);
    h.tell(
        day(1),
        vec![PieceFact::Paused {
            until: Some(date(30)),
        }],
    );
    assert!(tasks(&h, day(29)).is_empty());
    assert!(
        whole(&Shop::default(), &[h.clone()], day(29))
            .longest_without_look
            .is_empty()
    );
    let t = next(&h, day(30));
    assert_eq!((t.due, t.days_late), (date(30), 0));
    assert_eq!(next(&h, day(33)).days_late, 3);
    h.tell(day(33), vec![PieceFact::Paused { until: None }]);
    assert!(tasks(&h, day(500)).is_empty());
    h.tell(day(40), vec![PieceFact::Unpaused]);
    assert_eq!(next(&h, day(40)).kind, TaskKind::Look);
}

#[test]
fn ended_and_deleted_pieces_ask_for_nothing_and_come_back_when_put_back() {
    let mut h = History::new("K07", Stage::Bag);
    h.tell(day(2), vec![PieceFact::Ended(End::LeftAsIs)]);
    assert!(tasks(&h, day(9)).is_empty());
    h.tell(day(9), vec![PieceFact::PutBack]);
    assert_eq!(next(&h, day(9)).due, date(1));
    h.tell(day(9), vec![PieceFact::Deleted]);
    assert!(tasks(&h, day(9)).is_empty());
    h.felt(day(10), BagFeel::Damp);
    let all = tasks(&h, day(10));
    assert!(has(&all, &TaskKind::CameBack));
    assert!(has(&all, &TaskKind::Look));
}

#[test]
fn half_turned_is_nudged_the_same_evening_and_from_the_next_morning_and_has_no_bag_looks() {
    for stage in [Stage::Hollow, Stage::Bag] {
        let mut h = History::new("K07", stage);
        h.tell(day(3), vec![PieceFact::HalfTurned]);
        let evening = tasks(&h, day(3));
        assert_eq!(evening.len(), 1);
        assert_eq!(evening[0].kind, TaskKind::HalfTurned(Nudge::Evening));
        assert_eq!(evening[0].due, date(3));
        for n in 4..20 {
            let morning = tasks(&h, day(n));
            assert_eq!(morning.len(), 1);
            assert_eq!(morning[0].kind, TaskKind::HalfTurned(Nudge::Morning));
            assert_eq!((morning[0].due, morning[0].days_late), (date(4), n - 4));
        }
        h.tell(day(20), vec![PieceFact::Resumed]);
        let after = tasks(&h, day(20));
        assert_eq!(after.len(), usize::from(stage == Stage::Bag));
    }
}

#[test]
fn a_piece_that_cannot_be_found_is_looked_for_until_it_is_seen() {
    let mut h = History::new("K07", Stage::Bag);
    h.tell(day(5), vec![PieceFact::NotFound]);
    let t = next(&h, day(8));
    assert_eq!(
        (t.kind, t.due, t.urgency),
        (TaskKind::Find, date(1), Urgency::Serious)
    );
    assert_eq!(t.why, Why::NotFoundOn(date(5)));
    h.felt(day(9), BagFeel::Damp);
    assert_eq!(next(&h, day(9)).kind, TaskKind::Look);
    let mut finishing = History::new("K08", Stage::Finish);
    finishing.tell(day(5), vec![PieceFact::NotFound]);
    assert_eq!(tasks(&finishing, day(6))[0].kind, TaskKind::Find);
}

#[test]
fn flaws_come_back_on_their_day_in_any_stage_until_they_are_looked_at() {
    for stage in [Stage::Stabilise, Stage::Bag, Stage::Finish] {
        let flaw = FlawId::new("f1").unwrap();
        let mut h = History::new("K07", stage);
        h.tell(
            day(0),
            vec![
                PieceFact::FlawFound(FlawNote {
                    flaw: flaw.clone(),
                    kind: FlawKind::Knot,
                    station: None,
                    clock: None,
                    size_mm: None,
                    through: false,
                    note: String::new(),
                }),
                PieceFact::FlawTreated(FlawTreated {
                    flaw: flaw.clone(),
                    treatment: Treatment::Thin,
                    face: None,
                    goes: Some(2),
                    look_again: Some(date(10)),
                }),
            ],
        );
        let of_flaw = |h: &History, n| {
            let mut all = tasks(h, day(n));
            all.retain(|t| t.kind == TaskKind::FlawLook(flaw.clone()));
            all
        };
        assert_eq!(of_flaw(&h, 0)[0].due, date(10));
        assert_eq!(of_flaw(&h, 15)[0].days_late, 5);
        assert_eq!(of_flaw(&h, 15)[0].urgency, Urgency::Soon);
        h.tell(
            day(15),
            vec![PieceFact::FlawLooked {
                flaw: flaw.clone(),
                change: FlawChange::Same,
                size_mm: None,
                look_again: None,
            }],
        );
        assert!(of_flaw(&h, 15).is_empty());
    }
}

#[test]
fn roughing_and_finishing_have_no_rhythm() {
    for stage in [
        Stage::Shape,
        Stage::Hollow,
        Stage::Stabilise,
        Stage::True,
        Stage::Finish,
    ] {
        assert!(
            tasks(&History::new("K07", stage), day(300)).is_empty(),
            "{stage:?}"
        );
    }
}

#[test]
fn of_two_living_pieces_with_one_mark_the_later_is_asked_to_be_renamed() {
    let first = History::new("K07", Stage::Shape);
    let second = History::since("k07", Stage::Shape, day(1)).with_id("p-other");
    let mut third = History::since("K07", Stage::Shape, day(2)).with_id("p-third");
    let a = whole(
        &Shop::default(),
        &[third.clone(), second.clone(), first.clone()],
        day(3),
    );
    assert_eq!(a.today.len(), 2);
    for t in &a.today {
        assert_eq!(t.kind, TaskKind::RenameMark);
        assert!(matches!(&t.why, Why::SameMarkAs(id) if id.as_str() == "p-k07"));
    }
    third.tell(day(3), vec![PieceFact::Ended(End::Finished)]);
    let a = whole(&Shop::default(), &[third, second, first], day(3));
    assert_eq!(ids(&a.today), ["other"]);
    // However it is written.
    let mut spaced = History::since("K08", Stage::Shape, day(1)).with_id("p-spaced");
    spaced.tell(
        day(2),
        vec![PieceFact::Detail {
            field: DetailField::Mark,
            value: Some(DetailValue::Text("K 07".to_owned())),
        }],
    );
    let plain = History::new("k07", Stage::Shape);
    let a = whole(&Shop::default(), &[spaced, plain], day(3));
    assert_eq!(ids(&a.today), ["spaced"]);
    // Pieces without a mark do not share one.
    let blank = |id: &str| History::new("", Stage::Shape).with_id(id);
    assert!(
        whole(&Shop::default(), &[blank("a"), blank("b")], day(3))
            .today
            .is_empty()
    );
}

#[test]
fn the_longest_without_a_look_leads_its_list() {
    let mut recent = History::new("K07", Stage::Bag);
    recent.felt(day(20), BagFeel::Damp);
    let mut ahead = History::new("K09", Stage::Air);
    ahead.looked_over(day(10)).looked_over(day(400));
    let never = History::new("K08", Stage::Settle);
    let rough = History::new("K10", Stage::Hollow);
    let a = whole(&Shop::default(), &[recent, ahead, never, rough], day(21));
    let list: Vec<_> = a
        .longest_without_look
        .iter()
        .map(|u| (u.piece.as_str(), u.last, u.days))
        .collect();
    assert_eq!(
        list,
        [
            ("p-k08", None, 21),
            ("p-k09", Some(date(10)), 11),
            ("p-k07", Some(date(20)), 1),
        ]
    );
}
