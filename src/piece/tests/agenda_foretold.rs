//! What is foreseen, in the agenda: weighings later than the rhythm but never sooner, stages offered, and nothing without it.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use evenwall_piece::agenda::{Bench, Foretold, ForetoldOf, Task, TaskKind, Why, tasks_of};
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::Stage;
use evenwall_wood::weighing_days::{Loss, WorthBecause};

fn foretold(weighed_on: i64) -> Foretold {
    Foretold {
        weighed_on: date(weighed_on),
        loss: Loss {
            per_day_g: 0.1,
            slows_over_days: None,
        },
        step_g: 1.0,
        decides_in_days: None,
        weighings: 6,
        settled: false,
        stuck_days: None,
    }
}

fn tasks_with(shop: &Shop, h: &History, n: i64, foretold: Foretold) -> Vec<Task> {
    let piece = h.piece();
    let map: ForetoldOf = [(piece.id.clone(), foretold)].into();
    tasks_of(
        &piece,
        &Bench::new(shop, day(n), &|_| false).with_foretold(&map),
    )
}

fn weighing(tasks: &[Task]) -> &Task {
    tasks.iter().find(|t| t.kind == TaskKind::Weigh).unwrap()
}

fn offered(tasks: &[Task]) -> Option<(Stage, &Why)> {
    tasks.iter().find_map(|t| match t.kind {
        TaskKind::OfferStage(stage) => Some((stage, &t.why)),
        _ => None,
    })
}

#[test]
fn a_slow_loss_is_weighed_when_it_tells_and_never_sooner_than_the_rhythm() {
    let mut h = History::new("K07", Stage::Settle);
    h.weighed(day(10), 840.0);
    // Two steps of 1 g at 0.1 g a day.
    let slow = tasks_with(&Shop::default(), &h, 12, foretold(10));
    assert_eq!(weighing(&slow).due, date(30));
    let why = Why::TellsMost {
        days: 20,
        because: WorthBecause::TwoSteps,
    };
    assert_eq!(weighing(&slow).why, why);
    assert!(weighing(&slow).is_next_look);
    // A fast loss would tell tomorrow: the rhythm stands.
    let mut fast = foretold(10);
    fast.loss.per_day_g = 5.0;
    let fast = tasks_with(&Shop::default(), &h, 12, fast);
    assert_eq!(weighing(&fast).due, date(24));
    assert_eq!(weighing(&fast).why, Why::Rhythm { every: 14 });
    // At rest the plain rule wants its weighings.
    let mut still = foretold(10);
    still.loss.per_day_g = 0.0;
    let still = tasks_with(&Shop::default(), &h, 12, still);
    assert_eq!(weighing(&still).due, date(24));
}

#[test]
fn what_was_foreseen_before_the_last_weighing_does_not_count() {
    let mut h = History::new("K07", Stage::Settle);
    h.weighed(day(10), 840.0).weighed(day(20), 838.0);
    let tasks = tasks_with(&Shop::default(), &h, 21, foretold(10));
    assert_eq!(weighing(&tasks).due, date(34));
}

#[test]
fn indoors_keeps_its_days() {
    let mut h = History::new("K07", Stage::Indoors);
    h.weighed(day(0), 840.0);
    let tasks = tasks_with(&Shop::default(), &h, 1, foretold(0));
    assert_eq!(weighing(&tasks).due, date(7));
}

#[test]
fn what_has_probably_settled_is_offered_the_next_stage() {
    let mut settling = History::new("K07", Stage::Settle);
    settling.weighed(day(10), 840.0);
    let mut said = foretold(10);
    assert_eq!(
        offered(&tasks_with(&Shop::default(), &settling, 12, said)),
        None
    );
    said.settled = true;
    let tasks = tasks_with(&Shop::default(), &settling, 12, said);
    let why = Why::Foretold { weighings: 6 };
    assert_eq!(offered(&tasks), Some((Stage::Indoors, &why)));
    let mut indoors = History::new("K08", Stage::Indoors);
    indoors.weighed(day(3), 830.0);
    let mut said = foretold(3);
    said.settled = true;
    let tasks = tasks_with(&Shop::default(), &indoors, 4, said);
    assert_eq!(offered(&tasks), Some((Stage::True, &why)));
}

#[test]
fn a_wet_piece_that_hardly_loses_water_is_offered_an_open_neck() {
    let mut h = History::new("K07", Stage::Bag);
    h.weighed(day(0), 1200.0).weighed(day(14), 1199.0);
    let mut said = foretold(14);
    said.stuck_days = Some(14);
    let tasks = tasks_with(&Shop::default(), &h, 15, said);
    assert_eq!(
        offered(&tasks),
        Some((Stage::Air, &Why::Stuck { days: 14 }))
    );
}

#[test]
fn who_does_not_weigh_is_never_asked_for_a_weight_and_goes_by_days() {
    let shop = shop(&[setting("weighs", "false")]);
    assert!(!shop.weighs());
    let h = History::new("K07", Stage::Settle);
    for n in [0, 5, 14, 60, 90] {
        let tasks = tasks_in(&shop, &h, day(n));
        assert!(
            tasks
                .iter()
                .all(|t| t.kind != TaskKind::Weigh && !t.also_weigh),
            "{tasks:?}"
        );
        let looks = tasks.iter().filter(|t| t.is_next_look).count();
        assert_eq!(looks, 1, "looked over instead");
    }
    assert_eq!(offered(&tasks_in(&shop, &h, day(59))), None);
    let tasks = tasks_in(&shop, &h, day(60));
    assert_eq!(offered(&tasks).map(|o| o.0), Some(Stage::Indoors));
    let bag = History::new("K08", Stage::Bag);
    assert!(tasks_in(&shop, &bag, day(3)).iter().all(|t| !t.also_weigh));
}
