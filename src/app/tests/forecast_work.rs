//! Promises of work beside the screens: old outcomes are dropped, a fault is a sentence, and the diary keeps what was foreseen.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::action::Action;
use evenwall_app::diary::{DiaryAction, Filter};
use evenwall_app::drying::{DryingAction, NewWeight};
use evenwall_app::route::Page;
use evenwall_app::work::{Done, Outcome};
use evenwall_piece::fact::{ForecastMade, Measure, PieceFact};
use evenwall_wood::drying::Tuning;
use support_drying::truth::{Truth, air, truth, vessel};
use support_drying::{Loft, id, noon, weighed};

const DAYS: [&str; 6] = [
    "2026-01-10",
    "2026-01-20",
    "2026-01-30",
    "2026-02-09",
    "2026-02-20",
    "2026-03-05",
];

fn slow() -> Truth {
    let facts = vec![(
        noon("2025-12-01"),
        vessel([22.0, 23.0, 24.0, 24.0, 25.0, 24.0, 26.0]),
    )];
    let tuning = Tuning {
        diffusion: 0.5,
        ..Tuning::default()
    };
    truth(facts, &air(), tuning, &DAYS, 1.0)
}

fn made(loft: &Loft) -> Vec<ForecastMade> {
    loft.piece()
        .diary
        .iter()
        .filter_map(|e| match &e.fact {
            PieceFact::ForecastMade(made) => Some(*made),
            _ => None,
        })
        .collect()
}

fn weigh(loft: &mut Loft, g: f64) {
    let at = loft.now;
    loft.drying(DryingAction::Weighed(NewWeight {
        piece: id(),
        mass_g: Measure::plain(g),
        tare_g: 0.0,
        at,
        change: None,
    }));
}

#[test]
fn each_weighing_leaves_one_forecast_in_the_diary_without_a_word() {
    let mut t = slow();
    let first = made(&t.loft);
    assert_eq!(first.len(), 1);
    assert_eq!(first[0].weighings, 6);
    let (from, to) = first[0].into_house.unwrap();
    assert!(from < to && first[0].to_finish.unwrap().1 > to);
    assert!(t.loft.app.undo().last_done().is_none(), "nothing to undo");
    // The next day the same weights give it anew, and nothing is written.
    t.loft.days(1);
    t.loft.settle();
    assert_eq!(made(&t.loft).len(), 1);
    let last = t.loft.weights().last().copied().unwrap();
    weigh(&mut t.loft, last - 2.0);
    let said = t.loft.said();
    t.loft.settle();
    assert_eq!(made(&t.loft).len(), 2);
    assert_eq!(
        t.loft.said(),
        said,
        "the undo bar still speaks of the weight"
    );
    t.loft.act(Action::Undo);
    assert_eq!(t.loft.weights().len(), 6, "undo takes the weight back");
}

#[test]
fn the_diary_shows_forecasts_only_where_they_are_asked_for() {
    let mut t = slow();
    t.loft.act(Action::Open(Page::Diary(id())));
    let titles = |loft: &Loft| -> Vec<String> {
        let view = loft.app.diary_view(&id(), loft.now).unwrap();
        view.entries.into_iter().map(|e| e.title).collect()
    };
    let forecast = |titles: &[String]| {
        titles
            .iter()
            .any(|t| t.starts_with("Forecast: into the house "))
    };
    assert!(!forecast(&titles(&t.loft)));
    t.loft
        .act(Action::Diary(DiaryAction::SetFilter(Filter::Forecasts)));
    let shown = titles(&t.loft);
    assert!(forecast(&shown) && shown.len() == 1, "{shown:?}");
    assert!(
        shown[0].contains("to finish-turn") && shown[0].contains("2026"),
        "{shown:?}"
    );
}

#[test]
fn a_disk_that_is_full_keeps_the_forecast_on_the_page() {
    let mut t = slow();
    let last = t.loft.weights().last().copied().unwrap();
    weigh(&mut t.loft, last - 2.0);
    t.loft.fail(true);
    t.loft.settle();
    assert_eq!(t.loft.view().ahead.ready.len(), 2);
    assert_eq!(made(&t.loft).len(), 1);
    assert!(t.loft.app.save_error().is_none(), "nobody asked for it");
    t.loft.fail(false);
    t.loft.days(1);
    t.loft.settle();
    assert_eq!(made(&t.loft).len(), 2, "kept a day later");
}

#[test]
fn an_outcome_of_older_weights_is_dropped() {
    let mut t = slow();
    let last = t.loft.weights().last().copied().unwrap();
    weigh(&mut t.loft, last - 1.0);
    let old = t.loft.app.next_work(t.loft.now).unwrap();
    let control = old.control();
    assert!(t.loft.app.next_work(t.loft.now).is_none(), "one at a time");
    assert_eq!(t.loft.app.work_progress(&old.key), Some((0, 0)));
    weigh(&mut t.loft, last - 2.0);
    let new = t.loft.app.next_work(t.loft.now).unwrap();
    assert!(control.cancelled() && new.generation > old.generation);
    assert!(!t.loft.app.work_done(old.run(), t.loft.now));
    assert!(t.loft.app.work_done(new.run(), t.loft.now));
    assert_eq!(t.loft.app.foreseen(&id()).unwrap().weighings, 8);
}

#[test]
fn a_fault_is_a_sentence_on_the_page_and_is_not_tried_again_by_itself() {
    let mut loft = Loft::weighed(&[("2026-02-12", 840.0), ("2026-03-05", 830.0)]);
    let work = loft.app.next_work(loft.now).unwrap();
    let done = Done {
        key: work.key.clone(),
        generation: work.generation,
        outcome: Outcome::Failed(String::new()),
    };
    assert!(loft.app.work_done(done, loft.now));
    assert_eq!(
        loft.view().ahead.note,
        "Looking ahead went wrong for this piece. Its weights are kept."
    );
    assert!(loft.app.next_work(loft.now).is_none());
    weigh(&mut loft, 829.0);
    loft.settle();
    assert_eq!(loft.view().ahead.note, "");
}

#[test]
fn weights_of_another_thing_give_a_sentence_and_no_day() {
    let mut loft = Loft::with(
        vec![
            (noon("2025-12-01"), vessel([10.0; 7])),
            (noon("2026-01-10"), vec![weighed(9.0)]),
            (noon("2026-01-20"), vec![weighed(12_000.0)]),
            (noon("2026-01-30"), vec![weighed(40.0)]),
            (noon("2026-03-05"), vec![weighed(5000.0)]),
        ],
        &air(),
        "{}",
    );
    loft.settle();
    let view = loft.view();
    assert!(view.ahead.ready.is_empty(), "{:?}", view.ahead);
    assert!(!view.ahead.reasons.is_empty() || !view.ahead.note.is_empty());
}

#[test]
fn the_piece_on_screen_comes_first() {
    let mut t = slow();
    t.loft.days(1);
    let work = t.loft.app.next_work(t.loft.now).unwrap();
    assert_eq!(work.key, format!("forecast/{}", id()));
}
