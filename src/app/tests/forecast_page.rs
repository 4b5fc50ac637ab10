//! Promises of what is foreseen: a range that holds, or why it is too early to say, and never a date without weights.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::drying::view::DryingView;
use evenwall_app::drying::{DryingAction, Measured};
use evenwall_app::forecasting::Stretch;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{MassChange, Room};
use evenwall_wood::drying::Tuning;
use support_drying::truth::{Truth, air, truth, vessel};
use support_drying::{Loft, id, noon, weighed};

/// Days of weighing while it stands in Settle since 10 January; today is 12 March.
const SETTLE: [&str; 8] = [
    "2025-12-20",
    "2026-01-03",
    "2026-01-10",
    "2026-01-20",
    "2026-01-30",
    "2026-02-09",
    "2026-02-20",
    "2026-03-05",
];

fn thick() -> Vec<(evenwall_piece::piece::Moment, Vec<PieceFact>)> {
    vec![(
        noon("2025-12-01"),
        vessel([22.0, 23.0, 24.0, 24.0, 25.0, 24.0, 26.0]),
    )]
}

/// A slow, thick piece: still on its way in March.
fn slow() -> Truth {
    let tuning = Tuning {
        diffusion: 0.5,
        ..Tuning::default()
    };
    truth(thick(), &air(), tuning, &SETTLE, 1.0)
}

fn values(view: &DryingView) -> Vec<(&str, &str)> {
    let ready = view.ahead.ready.iter();
    ready
        .map(|f| (f.label.as_str(), f.value.as_str()))
        .collect()
}

fn range_of(loft: &Loft) -> (f64, f64) {
    let seen = loft.app.foreseen(&id()).unwrap();
    let weighed = seen.weighed.as_ref().unwrap();
    match seen.stretch(&weighed.outlook.here).unwrap() {
        Stretch::Ahead(from, to) => {
            let day = |d: chrono::NaiveDate| {
                chrono::NaiveDateTime::from(d).and_utc().timestamp() as f64 / 86_400.0
            };
            (day(from), day(to) + 1.0)
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn two_ranges_hold_the_day_on_which_it_truly_settles() {
    let t = slow();
    let view = t.loft.view();
    let labels: Vec<_> = values(&view).iter().map(|v| v.0).collect();
    assert_eq!(
        labels,
        ["Into the house", "To finish-turn"],
        "{:?}",
        view.ahead
    );
    assert_eq!(view.ahead.ready[0].note, "If the room stays as it is.");
    let (from, to) = range_of(&t.loft);
    assert!(from < t.ready && t.ready < to, "{from} {} {to}", t.ready);
    assert!(view.ahead.early.is_empty() && view.ahead.road.is_none());
    let moisture = view.ahead.moisture.unwrap();
    let about = format!("about {:.0}\u{a0}%", 100.0 * t.moisture);
    assert_eq!(moisture.value, about, "{moisture:?}");
    assert!(!view.ahead.assumed.iter().any(|a| a.contains("air")));
}

#[test]
fn without_weights_only_the_whole_road_is_told_and_in_weeks() {
    let mut loft = Loft::with(thick(), &air(), "{}");
    loft.settle();
    let view = loft.view();
    assert!(view.ahead.ready.is_empty() && view.ahead.moisture.is_none());
    let road = view.ahead.road.unwrap();
    assert!(road.value.ends_with("weeks"), "{road:?}");
    assert!(road.note.contains("in the house after that"), "{road:?}");
    assert!(view.chart.is_none());
}

#[test]
fn three_weights_are_too_early_and_say_so() {
    let tuning = Tuning::default();
    let t = truth(thick(), &air(), tuning, &SETTLE[..3], 1.0);
    let view = t.loft.view();
    assert!(view.ahead.ready.is_empty(), "{:?}", view.ahead);
    assert_eq!(view.ahead.early, "Too early to say when");
    let reasons = view.ahead.reasons.join(" ");
    assert!(
        reasons.contains("3 weights so far; 4 are needed."),
        "{reasons}"
    );
    // Weighed in January, and it is March.
    assert!(reasons.contains("more than six weeks old"), "{reasons}");
    assert!(view.ahead.road.is_some());
    let ahead = view.chart.unwrap().ahead;
    assert!(ahead.line.is_empty() && ahead.band.is_empty() && ahead.ready.is_none());
}

#[test]
fn the_chart_looks_ahead_with_a_band_and_says_where_it_settles() {
    let t = slow();
    let chart = t.loft.view().chart.unwrap();
    assert!(chart.today < 0.9, "there is room ahead: {}", chart.today);
    assert!(chart.ahead.line.starts_with('M') && chart.ahead.line.contains("h1"));
    assert!(chart.ahead.band.ends_with('Z'));
    let settles = chart.ahead.settles.unwrap();
    assert!(
        settles.text.starts_with("Settles here at "),
        "{}",
        settles.text
    );
    assert!(
        chart.ahead.in_house.unwrap().at > settles.at,
        "drier lies lower"
    );
    let (from, to) = chart.ahead.ready.unwrap();
    assert!(chart.today <= from + 0.01 && from < to && to <= 1.0);
}

#[test]
fn moisture_stands_at_the_edge_where_the_dry_weight_is_known() {
    let mut t = slow();
    let by_weight = t.loft.view();
    assert_eq!(by_weight.measures.len(), 2);
    t.loft.drying(DryingAction::Measure(Measured::Moisture));
    let view = t.loft.view();
    let chart = view.chart.unwrap();
    assert_eq!(chart.unit, "%");
    // The scale at the edge changes and nothing else.
    assert_eq!(chart.line, by_weight.chart.unwrap().line);
    let last = chart.dots.last().unwrap();
    t.loft.drying(DryingAction::Pick(last.x, last.y));
    let note = t.loft.view().picked.unwrap().note;
    assert!(note.contains("% moist."), "{note}");
    assert!(
        Loft::weighed(&[("2026-03-05", 840.0)])
            .view()
            .measures
            .is_empty()
    );
}

#[test]
fn a_change_of_mass_starts_the_forecast_anew() {
    let mut t = slow();
    t.loft
        .drying(DryingAction::MassChanged(id(), MassChange::Wax));
    assert!(t.loft.app.is_reckoning(t.loft.piece(), t.loft.now));
    assert!(t.loft.view().ahead.note.contains("Looking ahead"));
    t.loft.settle();
    let view = t.loft.view();
    assert!(view.ahead.ready.is_empty() && view.ahead.moisture.is_none());
    assert!(view.ahead.road.is_some() && view.ahead.note.is_empty());
    t.loft.act(evenwall_app::action::Action::Undo);
    t.loft.settle();
    assert_eq!(t.loft.view().ahead.ready.len(), 2, "undo brings it back");
}

#[test]
fn a_new_scale_starts_it_anew_too_and_its_step_counts() {
    let mut shop = air();
    shop.push(("2026-02-01", ShopFact::NewScale { step_g: 0.1 }));
    let t = truth(thick(), &shop, Tuning::default(), &SETTLE, 0.1);
    let seen = t.loft.app.foreseen(&id()).unwrap();
    assert_eq!(seen.weighings, 3, "those since February");
    assert!(t.loft.view().ahead.ready.is_empty());
}

#[test]
fn while_it_is_in_the_bag_the_straight_line_is_told_and_no_day() {
    let mut facts = thick();
    facts.push((noon("2026-02-20"), vec![PieceFact::StageMoved(Stage::Bag)]));
    let days = [
        "2026-02-20",
        "2026-02-24",
        "2026-02-28",
        "2026-03-04",
        "2026-03-08",
        "2026-03-12",
    ];
    let mut loft = Loft::with(facts, &air(), "{}");
    // It fell by 8 g a day from green: nothing bends yet.
    let dry = loft
        .app
        .forecast_input(loft.piece(), loft.now)
        .unwrap()
        .case
        .dry_mass_g();
    for (n, day) in days.iter().enumerate() {
        let g = (1.75 * dry - 32.0 * n as f64).round();
        let at = noon(day).min(loft.now);
        let fact = evenwall_app::drying::NewWeight {
            piece: id(),
            mass_g: evenwall_piece::fact::Measure::plain(g),
            tare_g: 0.0,
            at,
            change: None,
        };
        loft.drying(DryingAction::Weighed(fact));
    }
    loft.settle();
    let view = loft.view();
    assert!(view.ahead.ready.is_empty(), "{:?}", view.ahead);
    let reasons = view.ahead.reasons.join(" ");
    assert!(reasons.contains("straight line"), "{reasons}");
}

#[test]
fn damper_air_makes_it_settle_wetter_and_the_forecast_is_made_anew() {
    let settling = |shop: &[(&str, ShopFact)]| {
        let mut facts = thick();
        facts.push((noon("2026-03-05"), vec![weighed(1500.0)]));
        let mut loft = Loft::with(facts, shop, "{}");
        loft.settle();
        let seen = loft.app.foreseen(&id()).unwrap();
        seen.weighed.as_ref().unwrap().outlook.now.settling
    };
    let damp: Vec<_> = air()
        .into_iter()
        .map(|(day, fact)| match fact {
            ShopFact::Climate(c) if c.room == Room::Shop => {
                (day, ShopFact::Climate(Climate { rh_pct: 80.0, ..c }))
            }
            other => (day, other),
        })
        .collect();
    assert!(settling(&damp) > settling(&air()) + 0.03);
    let mut t = slow();
    // Nothing changed: nothing is reckoned again. A day later the room is another one.
    assert!(t.loft.app.next_work(t.loft.now).is_none());
    t.loft.days(1);
    assert!(t.loft.app.next_work(t.loft.now).is_some());
}

#[test]
fn what_was_not_read_or_measured_is_said() {
    let mut loft = Loft::weighed(&[("2026-01-12", 840.0), ("2026-03-05", 800.0)]);
    loft.settle();
    let assumed = loft.view().ahead.assumed.join(" ");
    for part in [
        "shop was never read: 18\u{a0}°C and 60\u{a0}%",
        "house was never read",
        "No wall was read",
        "Height and diameter were not said",
    ] {
        assert!(assumed.contains(part), "{assumed}");
    }
    let settings = r#"{"temperature":"fahrenheit","mass":"pound-ounce","length":"inch"}"#;
    let mut us = Loft::with(
        vec![(noon("2026-03-05"), vec![weighed(800.0)])],
        &[],
        settings,
    );
    us.settle();
    let assumed = us.view().ahead.assumed.join(" ");
    assert!(assumed.contains("64\u{a0}°F"), "{assumed}");
}
