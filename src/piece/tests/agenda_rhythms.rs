//! Rhythms: the looks and weighings of every stage and method, and how they join.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use evenwall_piece::agenda::{TaskKind, Why};
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Method};

/// The days on which something is asked for, up to a day of the stay, when all is done on its day: looks alone where the
/// piece is never weighed, looks and weighings where it was weighed on day 0.
fn walk(stage: Stage, method: Option<Method>, weighed: bool, until: i64) -> Vec<(i64, TaskKind)> {
    let mut h = History::new("K07", stage);
    if let Some(method) = method {
        h.method(day(0), method);
    }
    if weighed {
        h.weighed(day(0), 900.0);
    }
    let mut done = Vec::new();
    for n in 0..=until {
        for t in tasks(&h, day(n)).into_iter().filter(|t| t.due <= date(n)) {
            if matches!(t.kind, TaskKind::OfferStage(_)) {
                continue;
            }
            assert_eq!(t.due, date(n), "nothing is late when done on its day");
            if t.kind == TaskKind::LookOver {
                h.looked_over(day(n));
            }
            if t.kind == TaskKind::Weigh || weighed && t.also_weigh {
                h.weighed(day(n), 900.0);
            }
            done.push((n, t.kind));
        }
    }
    done
}

fn days_of(stage: Stage, method: Option<Method>, weighed: bool, until: i64) -> Vec<i64> {
    walk(stage, method, weighed, until)
        .iter()
        .map(|(n, _)| *n)
        .collect()
}

#[test]
fn every_stage_and_method_has_the_looks_of_the_table_of_defaults() {
    // Common practice, no source: the table of defaults.
    let looks = |stage, method, until| days_of(stage, method, false, until);
    assert_eq!(looks(Stage::Air, None, 31), [3, 10, 17, 24, 31]);
    assert_eq!(looks(Stage::Indoors, None, 21), [2, 7, 14, 21]);
    let other = |method, until| looks(Stage::Bag, Some(method), until);
    assert_eq!(other(Method::Paper, 50), [3, 10, 17, 24, 31, 45]);
    assert_eq!(other(Method::Shavings, 50), [3, 10, 17, 24, 31, 45]);
    assert_eq!(other(Method::Wax, 100), [3, 7, 21, 35, 49, 63, 93]);
    assert_eq!(other(Method::Cupboard, 10), [1, 2, 3, 6, 9]);
    assert_eq!(other(Method::Alcohol, 20), [2, 9, 16]);
    assert_eq!(other(Method::OnceThin, 14), [1, 2, 3, 6, 9, 12]);
}

#[test]
fn every_stage_and_method_is_weighed_by_the_table_of_defaults() {
    let mut settle: Vec<i64> = (1..=9).map(|n| 14 * n).collect();
    settle.extend([156, 186]);
    assert_eq!(days_of(Stage::Settle, None, true, 200), settle);
    assert_eq!(days_of(Stage::Air, None, true, 30), [3, 7, 14, 21, 28]);
    // Weighed on the day it came in, then after one week and two; looked at after two days.
    assert_eq!(days_of(Stage::Indoors, None, true, 14), [2, 7, 14]);
    let weighings = |method, until| {
        let done = walk(Stage::Bag, Some(method), true, until);
        let only = done.into_iter().filter(|(_, k)| *k == TaskKind::Weigh);
        only.map(|(n, _)| n).collect::<Vec<_>>()
    };
    assert_eq!(weighings(Method::Wax, 80), [30, 60]);
    assert_eq!(weighings(Method::OnceThin, 100), []);
    assert_eq!(weighings(Method::Paper, 20), [14]);
    assert_eq!(
        days_of(Stage::Bag, Some(Method::Cupboard), true, 17),
        [1, 2, 3, 6, 9, 10, 13, 16, 17]
    );
}

#[test]
fn a_piece_weighed_before_is_weighed_on_the_day_it_comes_into_the_house() {
    let mut h = History::new("K07", Stage::Settle);
    h.weighed(day(9), 700.0).moved(day(10), Stage::Indoors);
    let weigh = |h: &History, n| {
        let all = tasks(h, day(n));
        all.into_iter().find(|t| t.kind == TaskKind::Weigh).unwrap()
    };
    assert_eq!(
        (weigh(&h, 10).due, weigh(&h, 10).why),
        (date(10), Why::StartOfStage)
    );
    h.weighed(day(10), 700.0);
    assert_eq!(weigh(&h, 10).due, date(17));
}

#[test]
fn another_method_starts_its_rhythm_on_the_day_it_was_chosen() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Wet).method(day(20), Method::Paper);
    let t = next(&h, day(20));
    assert_eq!((t.kind.clone(), t.due), (TaskKind::LookOver, date(23)));
    h.looked_over(day(23));
    assert_eq!(next(&h, day(23)).due, date(30));
}

#[test]
fn the_bag_chosen_again_after_another_method_starts_anew() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Nothing)
        .method(day(5), Method::Paper)
        .method(day(20), Method::Bag);
    let t = next(&h, day(20));
    assert_eq!(
        (t.kind.clone(), t.why, t.due, t.last),
        (TaskKind::Look, Why::FirstLook, date(21), None)
    );
    // A single dry bag since then is the first, not the second running.
    h.felt(day(21), BagFeel::Nothing);
    let offered = TaskKind::OfferStage(Stage::Air);
    assert!(!has(&tasks(&h, day(21)), &offered));
}

#[test]
fn the_bag_chosen_where_it_is_already_in_the_bag_changes_nothing() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Damp);
    let before = next(&h, day(2));
    h.method(day(2), Method::Bag);
    assert_eq!(next(&h, day(2)), before);
}

#[test]
fn absence_of_a_scale_is_never_nagged() {
    let mut air = History::new("K07", Stage::Air);
    for n in [3, 10, 17] {
        air.looked_over(day(n));
        let all = tasks(&air, day(n));
        assert!(!has(&all, &TaskKind::Weigh));
        assert!(all[0].also_weigh, "offered with the look");
    }
    // In Settle the weighing is the look; looking it over answers for who has no scale.
    let mut settle = History::new("K08", Stage::Settle);
    let t = next(&settle, day(0));
    assert_eq!(
        (t.kind, t.why, t.due),
        (TaskKind::Weigh, Why::NeverWeighed, date(0))
    );
    settle.looked_over(day(1));
    assert_eq!(next(&settle, day(1)).due, date(15));
}

#[test]
fn a_look_and_a_weighing_of_one_day_make_one_row() {
    let mut h = History::new("K07", Stage::Air);
    h.weighed(day(0), 800.0)
        .looked_over(day(3))
        .weighed(day(3), 780.0);
    let all = tasks(&h, day(10));
    assert_eq!(all.len(), 1);
    assert_eq!(
        (&all[0].kind, all[0].also_weigh),
        (&TaskKind::LookOver, true)
    );
    // Looked over but not weighed: the weighing stays.
    h.looked_over(day(10));
    let all = tasks(&h, day(10));
    assert!(
        all.iter()
            .any(|t| t.kind == TaskKind::Weigh && t.due == date(10))
    );
}

#[test]
fn weighings_gather_on_the_weigh_day() {
    // Day 5 is a Saturday.
    let s = shop(&[setting("weigh_day", "sat")]);
    let mut h = History::since("K07", Stage::Settle, day(-20));
    for (weighed, due) in [(2, 19), (0, 12), (5, 19)] {
        let mut one = h.clone();
        one.weighed(day(weighed), 700.0);
        assert_eq!(next_in(&s, &one, day(weighed)).due, date(due), "{weighed}");
    }
    h.weighed(day(5), 700.0);
    assert_eq!(next_in(&Shop::default(), &h, day(5)).due, date(19));
}

#[test]
fn a_look_and_a_weighing_both_late_make_one_row_whatever_their_days() {
    let mut h = History::new("K07", Stage::Indoors);
    h.weighed(day(0), 800.0).looked_over(day(2));
    // Looked over, so due on day 7 as the weighing is; looked over again on day 4 it is due on day 9.
    h.looked_over(day(4));
    let apart = tasks(&h, day(6));
    assert_eq!(
        apart.iter().map(|t| t.due).collect::<Vec<_>>(),
        [date(7), date(9)]
    );
    let late = tasks(&h, day(10));
    assert_eq!(late.len(), 1);
    assert_eq!(
        (&late[0].kind, late[0].also_weigh),
        (&TaskKind::LookOver, true)
    );
}

#[test]
fn mould_is_looked_at_tomorrow_in_every_drying_stage_and_a_weight_does_not_answer_for_it() {
    for stage in [Stage::Bag, Stage::Air, Stage::Settle, Stage::Indoors] {
        let mut h = History::new("K07", stage);
        h.weighed(day(0), 800.0);
        h.tell(day(4), vec![look(None, true)]);
        h.weighed(day(4) + chrono::Duration::hours(1), 790.0);
        let t = next(&h, day(5));
        assert_eq!((t.due, t.why), (date(5), Why::AfterMould), "{stage:?}");
        assert_ne!(t.kind, TaskKind::Weigh);
    }
}
