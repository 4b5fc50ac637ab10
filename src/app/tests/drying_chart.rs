//! Promises of the curve: where it stops, what lies on it, what a touch on it shows.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::action::Action;
use evenwall_app::drying::view::DotView;
use evenwall_app::drying::{DryingAction, Span};
use evenwall_app::route::Page;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::vocabulary::{BagFeel, MassChange};
use support_drying::{Loft, fortnights, id, noon, weighed};

#[test]
fn the_curve_stops_where_weights_are_not_compared() {
    let facts = vec![
        (noon("2026-01-15"), vec![weighed(1000.0)]),
        (noon("2026-01-29"), vec![weighed(950.0)]),
        (
            noon("2026-02-01"),
            vec![PieceFact::MassChanged(MassChange::BarkLost)],
        ),
        (noon("2026-02-02"), vec![weighed(900.0)]),
        (noon("2026-02-26"), vec![weighed(880.0)]),
        (noon("2026-03-05"), vec![weighed(875.2)]),
    ];
    let scale = [("2026-03-01", ShopFact::NewScale { step_g: 0.1 })];
    let view = Loft::with(facts, &scale, "{}").view();
    let chart = view.chart.unwrap();
    assert_eq!(chart.line.matches('M').count(), 3);
    let words: Vec<_> = chart.breaks.iter().map(|b| b.text.as_str()).collect();
    assert_eq!(words, ["bark lost", "new scale"]);
    assert!(chart.breaks[0].at < chart.breaks[1].at);
    assert_eq!(
        view.breaks,
        [
            "Sun 1: A new scale. Weights before and after are not compared.",
            "Sun 1 Feb: Bark came off. Weights before and after are not compared."
        ]
    );
    assert_eq!(
        (view.last.value.as_str(), view.last.unit.as_str()),
        ("875.2", "g")
    );
    assert!(
        view.last.note.contains("not compared"),
        "{}",
        view.last.note
    );
    assert!(
        view.figures.is_empty(),
        "one weight on the new scale loses nothing"
    );
}

#[test]
fn everything_drawn_lies_on_the_field() {
    let loft = fortnights(&[
        1240.0, 1100.0, 1000.0, 930.0, 880.0, 850.0, 836.0, 830.0, 829.0, 828.0,
    ]);
    let chart = loft.view().chart.unwrap();
    let inside = |v: f64| (0.0..=1.0).contains(&v);
    assert!(chart.dots.iter().all(|d| inside(d.x) && inside(d.y)));
    assert!(
        chart
            .y_ticks
            .iter()
            .chain(&chart.x_ticks)
            .all(|t| inside(t.at))
    );
    assert!(
        chart
            .dots
            .is_sorted_by(|a: &DotView, b| a.x < b.x && a.y <= b.y)
    );
    let phases: Vec<_> = chart
        .phases
        .iter()
        .map(|p| (p.text.as_str(), p.tone))
        .collect();
    assert_eq!(phases, [("Bag", 4), ("Air", 3), ("Settle", 2)]);
    assert!(
        chart
            .phases
            .iter()
            .all(|p| inside(p.from) && inside(p.to) && p.from < p.to)
    );
    assert!((chart.phases[2].to - chart.today).abs() < 1e-9);
    assert_eq!(chart.unit, "g");
    let days: Vec<_> = chart.x_ticks.iter().map(|t| t.text.as_str()).collect();
    assert_eq!(days, ["6 Nov", "8 Jan", "12 Mar"]);
    assert_eq!(
        chart.label,
        "Chart of 10 weights, from 1240\u{a0}g on Thu 6 Nov 2025 to 828\u{a0}g on Thu 12 Mar"
    );
}

#[test]
fn a_shorter_time_shows_the_end_of_the_curve_larger() {
    let mut loft = fortnights(&[
        1240.0, 1100.0, 1000.0, 930.0, 880.0, 850.0, 836.0, 830.0, 829.0, 828.0,
    ]);
    let keys: Vec<_> = loft.view().spans.into_iter().map(|s| s.key).collect();
    assert_eq!(keys, ["all", "90-days", "30-days"]);
    loft.drying(DryingAction::Show(Span::Days30));
    let chart = loft.view().chart.unwrap();
    assert_eq!(chart.dots.len(), 3);
    assert!(
        chart.line.starts_with("M0.0 "),
        "the curve comes in from the left: {}",
        chart.line
    );
    assert_eq!(chart.phases.len(), 1);
    loft.days(60);
    let chart = loft.view().chart.unwrap();
    assert!(chart.dots.is_empty() && chart.line.is_empty());
    assert_eq!(chart.note, "Not weighed in the days shown.");
    let two = fortnights(&[840.0, 830.0]);
    assert!(two.view().spans.is_empty(), "nothing to look at closer");
}

#[test]
fn a_touched_weighing_shows_its_day_and_leads_to_its_correction() {
    let mut loft = fortnights(&[900.0, 860.0, 840.0, 830.0]);
    let dot = loft.view().chart.unwrap().dots[1].clone();
    loft.drying(DryingAction::Pick(dot.x + 0.02, dot.y - 0.05));
    let picked = loft.view().picked.unwrap();
    assert_eq!(picked.weight, "860\u{a0}g");
    assert_eq!(picked.day, "Thu 12 Feb, 4 weeks ago");
    assert_eq!(
        picked.note,
        "Since the one before, 14 days earlier: 40\u{a0}g less."
    );
    assert!(picked.has_before && picked.has_after && !picked.question);
    assert_eq!(loft.view().chart.unwrap().dots[1].kind, "picked");
    loft.drying(DryingAction::Step(-1));
    let first = loft.view().picked.unwrap();
    assert!(!first.has_before && first.weight.starts_with("900"));
    loft.drying(DryingAction::Step(-1));
    assert_eq!(loft.view().picked.unwrap(), first);
    loft.drying(DryingAction::Step(1));
    loft.drying(DryingAction::Correct);
    assert_eq!(loft.app.route().page(), Some(&Page::Diary(id())));
    let diary = loft.app.diary_view(&id(), loft.now).unwrap();
    assert_eq!(diary.editor.value, "860");
    loft.act(Action::Back);
    assert_eq!(loft.view().picked.unwrap().weight, "860\u{a0}g");
    loft.drying(DryingAction::Unpick);
    assert!(loft.view().picked.is_none());
}

#[test]
fn a_weight_that_drying_cannot_explain_is_marked_on_the_curve() {
    let view = fortnights(&[900.0, 860.0, 890.0, 850.0]).view();
    let kinds: Vec<_> = view.chart.unwrap().dots.iter().map(|d| d.kind).collect();
    assert_eq!(kinds, ["", "", "question", "last"]);
}

#[test]
fn a_weight_dated_ahead_is_shown_but_does_not_count() {
    let view = Loft::weighed(&[("2026-02-26", 840.0), ("2026-04-01", 830.0)]).view();
    assert_eq!(view.last.value, "840");
    let chart = view.chart.unwrap();
    assert_eq!(chart.dots.len(), 2);
    assert!(chart.today < chart.dots[1].x);
    let only = Loft::weighed(&[("2026-04-01", 830.0)]).view();
    assert_eq!(only.empty.unwrap().0, "Every weight is dated ahead");
}

#[test]
fn us_words_and_units_reach_every_line() {
    let settings = r#"{"mass":"pound-ounce","words":"en-US","temperature":"fahrenheit"}"#;
    let facts = vec![
        (noon("2026-01-15"), vec![weighed(1000.0)]),
        (noon("2026-03-05"), vec![weighed(870.0)]),
        (
            noon("2026-03-06"),
            vec![PieceFact::Look {
                feel: Some(BagFeel::Wet),
                mould: true,
                crack: true,
            }],
        ),
    ];
    let view = Loft::with(facts, &[], settings).view();
    assert_eq!(
        (view.last.value.as_str(), view.last.unit.as_str()),
        ("1 lb 14.7", "oz")
    );
    let chart = view.chart.unwrap();
    assert_eq!(chart.unit, "");
    assert!(
        chart.y_ticks.iter().all(|t| t.text.contains("lb")),
        "{:?}",
        chart.y_ticks
    );
    assert_eq!(chart.x_ticks[0].text, "Dec\u{a0}1");
    assert_eq!(view.bag.unwrap().note, "Mold seen Fri 6. Crack seen Fri 6.");
}
