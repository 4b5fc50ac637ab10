//! Promises of the drying page: what it says of weights, days, the bag and the air.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::action::Action;
use evenwall_app::drying::view::DryingView;
use evenwall_app::route::Page;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Room};
use support_drying::{Loft, fortnights, id, noon, weighed};

fn look(feel: BagFeel) -> PieceFact {
    PieceFact::Look {
        feel: Some(feel),
        mould: false,
        crack: false,
    }
}

fn coming(view: &DryingView) -> Vec<(String, String, String)> {
    view.coming
        .iter()
        .map(|c| (c.title.clone(), c.day.clone(), c.why.clone()))
        .collect()
}

#[test]
fn a_piece_never_weighed_says_so_and_asks_for_two_weights() {
    let loft = Loft::weighed(&[]);
    let view = loft.view();
    assert_eq!(
        view.empty,
        Some((
            "Not weighed yet".into(),
            "Weigh it twice, a fortnight apart: that tells whether it still loses water. Bare, without bag or tray."
                .into()
        ))
    );
    assert!(view.chart.is_none() && view.figures.is_empty() && view.staying.is_none());
    assert_eq!(view.head.subtitle, "Settling in the shop, day 61");
    let mut green = Loft::weighed(&[]);
    green.act(Action::Open(Page::Piece(id())));
    green.act(Action::Piece(evenwall_app::piece::PieceAction::MoveTo {
        piece: id(),
        stage: Stage::Bag,
        day: None,
        sure: true,
    }));
    green.act(Action::Open(Page::Drying(id())));
    assert!(green.view().empty.unwrap().1.starts_with("Weigh it now"));
}

#[test]
fn one_weight_is_one_dot_and_no_conclusion() {
    let view = Loft::weighed(&[("2026-03-09", 840.0)]).view();
    assert_eq!(view.last.label, "Weighed 3 days ago");
    assert_eq!(
        (view.last.value.as_str(), view.last.unit.as_str()),
        ("840", "g")
    );
    assert!(view.last.note.contains("fortnight"));
    let chart = view.chart.unwrap();
    assert_eq!(chart.dots.len(), 1);
    assert_eq!(chart.dots[0].kind, "last");
    assert!(view.figures.is_empty());
    let staying = view.staying.unwrap();
    assert_eq!(staying.title, "Staying put 0 of 60 days");
    assert!(staying.reason.contains("One weight says nothing yet"));
}

#[test]
fn losses_are_in_weight_and_per_cent_and_by_the_week() {
    let view = Loft::weighed(&[
        ("2026-01-15", 1000.0),
        ("2026-02-12", 900.0),
        ("2026-03-05", 870.0),
        ("2026-03-11", 866.0),
    ])
    .view();
    assert_eq!(view.last.note, "4\u{a0}g less since Thu 5 Mar");
    let texts: Vec<_> = view
        .figures
        .iter()
        .map(|f| {
            (
                f.label.as_str(),
                f.value.as_str(),
                f.unit.as_str(),
                f.note.as_str(),
            )
        })
        .collect();
    // 134 of 1000 g; from 900 to 866 g over 27 days, as 5 March is only six days before.
    assert_eq!(
        texts,
        [
            ("Lost", "134", "g", "13\u{a0}% since Thu 15 Jan"),
            ("A week now", "9", "g", "1.0\u{a0}% of its weight"),
        ]
    );
}

#[test]
fn staying_put_is_counted_from_when_the_fall_stopped_and_says_why() {
    let falling = fortnights(&[900.0, 860.0, 840.0, 830.0])
        .view()
        .staying
        .unwrap();
    assert_eq!(falling.title, "Staying put 0 of 60 days");
    assert!(
        falling
            .reason
            .starts_with("Still falling over the last 3 weeks")
    );
    assert_eq!(falling.since, "");

    let not_yet = fortnights(&[900.0, 860.0, 841.0, 840.0, 840.0, 840.0]);
    let not_yet = not_yet.view().staying.unwrap();
    assert_eq!(not_yet.title, "Staying put 42 of 60 days");
    assert_eq!(not_yet.since, "since Thu 29 Jan");
    assert_eq!((not_yet.done, not_yet.count), (42, 60));
    assert!(
        not_yet.reason.contains("18 days more"),
        "{}",
        not_yet.reason
    );

    let steady = fortnights(&[860.0, 841.0, 840.0, 840.0, 839.0, 840.0, 840.0]);
    let steady = steady.view().staying.unwrap();
    assert_eq!(steady.title, "Staying put 60 of 60 days");
    assert!(steady.steady && steady.reason.contains("settled with the air"));

    let rose = fortnights(&[840.0, 840.0, 840.0, 855.0, 855.0])
        .view()
        .staying
        .unwrap();
    assert!(rose.reason.starts_with("It got heavier"), "{}", rose.reason);

    let few = Loft::weighed(&[
        ("2026-01-05", 840.0),
        ("2026-02-10", 840.0),
        ("2026-03-11", 840.0),
    ]);
    let few = few.view().staying.unwrap();
    assert!(
        few.reason.contains("on 3 weights. 5 are wanted"),
        "{}",
        few.reason
    );
    assert!(!few.steady);
}

#[test]
fn a_scale_too_coarse_for_a_light_piece_is_said() {
    assert_eq!(
        Loft::weighed(&[("2026-03-09", 180.0)]).view().coarse,
        "Weighed once a fortnight, a scale in steps of 1\u{a0}g needs 8 weeks or more to show that 180\u{a0}g stays put. Steps of 0.5\u{a0}g show it within six weeks."
    );
    assert_eq!(Loft::weighed(&[("2026-03-09", 240.0)]).view().coarse, "");
}

#[test]
fn bag_checks_stand_in_a_row_with_mould_and_crack_in_words() {
    let mouldy = PieceFact::Look {
        feel: Some(BagFeel::Damp),
        mould: true,
        crack: false,
    };
    let facts = vec![
        (noon("2025-12-03"), vec![look(BagFeel::Wet)]),
        (noon("2025-12-06"), vec![mouldy]),
        (noon("2025-12-09"), vec![look(BagFeel::Nothing)]),
    ];
    let bag = Loft::with(facts, &[], "{}").view().bag.unwrap();
    assert_eq!(bag.drops, ["drop-full", "drop-half", "drop-empty"]);
    assert_eq!(bag.label, "Bag checks: Wet, Damp, Nothing");
    assert_eq!(bag.note, "Mould seen Sat 6 Dec 2025.");
    assert_eq!(bag.trailing, "felt 3 months ago");
    assert!(Loft::weighed(&[]).view().bag.is_none());
    let many: Vec<_> = (1..=20)
        .map(|d| (noon(&format!("2026-01-{d:02}")), vec![look(BagFeel::Wet)]))
        .collect();
    let bag = Loft::with(many, &[], "{}").view().bag.unwrap();
    assert_eq!(bag.drops.len(), 14);
    assert_eq!(bag.note, "The last 14 of 20.");
}

#[test]
fn the_next_look_and_weighing_say_when_and_why() {
    let view = Loft::weighed(&[("2026-03-05", 840.0)]).view();
    assert_eq!(
        coming(&view),
        [(
            "Weigh it".into(),
            "Thu 19".into(),
            "Every 14 days at this stage.".into()
        )]
    );
    let late = Loft::weighed(&[("2026-02-20", 840.0)]).view();
    assert_eq!(late.coming[0].day, "6 days late");
    assert!(late.coming[0].late);
    let never = Loft::weighed(&[]).view();
    assert_eq!(
        never.coming[0].why,
        "Twice, a fortnight apart, shows whether it still loses."
    );
    let damp = Loft::with(
        vec![
            (noon("2026-03-01"), vec![PieceFact::StageMoved(Stage::Bag)]),
            (noon("2026-03-10"), vec![look(BagFeel::Damp)]),
        ],
        &[],
        "{}",
    );
    assert_eq!(
        coming(&damp.view()),
        [(
            "Feel the bag".into(),
            "tomorrow".into(),
            "It was damp last time.".into()
        )]
    );
    let paused = Loft::with(
        vec![(noon("2026-03-01"), vec![PieceFact::Paused { until: None }])],
        &[],
        "{}",
    );
    assert_eq!(paused.view().coming[0].why, "Reminders are paused.");
}

#[test]
fn the_air_is_spoken_of_only_where_it_is_kept() {
    let air = |room, temp_c, rh_pct| {
        ShopFact::Climate(Climate {
            room,
            temp_c,
            rh_pct,
        })
    };
    assert!(Loft::weighed(&[]).view().air.is_empty());
    let kept = [
        ("2026-03-10", air(Room::Shop, 15.0, 60.0)),
        ("2026-01-10", air(Room::House, 20.0, 50.0)),
    ];
    // Wood Handbook FPL-GTR-190 equation 4-5: 15 C and 60 % settle at 11.1 %, 20 C and 50 % at 9.3 %.
    assert_eq!(
        Loft::with(Vec::new(), &kept, "{}").view().air,
        [
            "Wood settles at about 11\u{a0}% in this shop (15\u{a0}°C, 60\u{a0}%).",
            "In the house at about 9\u{a0}% (20\u{a0}°C, 50\u{a0}%). Read 8 weeks ago."
        ]
    );
}

#[test]
fn no_sentence_speaks_of_nothing_where_weights_are_in_ounces() {
    let facts = vec![
        (noon("2026-02-05"), vec![weighed(190.0)]),
        (noon("2026-03-05"), vec![weighed(180.0)]),
    ];
    let view = Loft::with(facts, &[], r#"{"mass":"pound-ounce"}"#).view();
    assert!(!view.coarse.contains(" 0\u{a0}oz"), "{}", view.coarse);
    assert!(view.coarse.contains("0.04\u{a0}oz"), "{}", view.coarse);
    let reason = view.staying.unwrap().reason;
    assert!(!reason.contains("0\u{a0}oz"), "{reason}");
}
