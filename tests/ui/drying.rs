//! Drying and weighing through their screens: keys, a scale that types, questions, the curve, undo.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, MassChange, Room};

use i_slint_backend_testing::AccessibleRole;

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("m02").unwrap()
}

fn text(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    }
}

fn weighed(g: f64) -> PieceFact {
    PieceFact::Weighed {
        mass_g: Measure::plain(g),
        tare_g: 0.0,
    }
}

/// M02, in the bag since 4 November, in Settle since 8 January.
fn store(lines: &[(&str, PieceFact)]) -> MemoryStore {
    let mut store = MemoryStore::default();
    let mut line = |day: &str, facts| {
        let at = moment(&format!("{day}T10:00:00+00:00"));
        store.append_piece(&id(), at, at, facts).map(drop).unwrap();
    };
    let made = vec![
        PieceFact::Created,
        text(DetailField::Mark, "M02"),
        text(DetailField::Wood, "black-cherry"),
        PieceFact::StageMoved(Stage::Bag),
    ];
    line("2025-11-04", made);
    line("2025-11-28", vec![PieceFact::StageMoved(Stage::Air)]);
    line("2026-01-08", vec![PieceFact::StageMoved(Stage::Settle)]);
    for (day, fact) in lines {
        line(day, vec![fact.clone()]);
    }
    let at = moment("2026-03-10T10:00:00+00:00");
    for (room, temp_c, rh_pct) in [(Room::Shop, 15.0, 60.0), (Room::House, 20.0, 48.0)] {
        let climate = Climate {
            room,
            temp_c,
            rh_pct,
        };
        store
            .append_shop(at, at, vec![ShopFact::Climate(climate)])
            .unwrap();
    }
    store
}

fn bench(lines: &[(&str, PieceFact)]) -> Bench {
    let bench = Bench::at(Box::new(store(lines)), moment(START), false);
    bench.screens.act(Action::Open(Page::Drying(id())));
    bench
}

fn months() -> Vec<(&'static str, PieceFact)> {
    let mut lines: Vec<_> = [
        ("2025-11-04", 1240.0),
        ("2025-11-11", 1180.0),
        ("2025-11-18", 1130.0),
        ("2025-11-28", 1070.0),
        ("2025-12-08", 1020.0),
        ("2025-12-20", 975.0),
        ("2026-01-02", 930.0),
        ("2026-01-09", 936.0),
        ("2026-01-16", 912.0),
        ("2026-01-23", 900.0),
        ("2026-01-30", 894.0),
        ("2026-02-06", 892.0),
        ("2026-02-13", 891.0),
        ("2026-02-20", 891.0),
        ("2026-03-06", 890.0),
    ]
    .into_iter()
    .map(|(day, g)| (day, weighed(g)))
    .collect();
    lines.push(("2026-01-05", PieceFact::MassChanged(MassChange::Wax)));
    for (day, feel, mould) in [
        ("2025-11-05", BagFeel::Wet, false),
        ("2025-11-07", BagFeel::Wet, false),
        ("2025-11-09", BagFeel::Wet, false),
        ("2025-11-11", BagFeel::Damp, false),
        ("2025-11-14", BagFeel::Damp, true),
        ("2025-11-17", BagFeel::Damp, false),
        ("2025-11-20", BagFeel::Damp, false),
        ("2025-11-24", BagFeel::Nothing, false),
        ("2025-11-27", BagFeel::Nothing, false),
    ] {
        let feel = Some(feel);
        lines.push((
            day,
            PieceFact::Look {
                feel,
                mould,
                crack: false,
            },
        ));
    }
    lines
}

fn weights(bench: &Bench) -> Vec<f64> {
    bench.screens.read(|app| {
        let piece = app.piece(&id()).unwrap();
        piece.weighings.iter().map(|w| w.net_g()).collect()
    })
}

#[test]
fn three_weights_from_nothing_and_undo_brings_each_page_back() {
    let bench = bench(&[]);
    assert!(bench.reads("Not weighed yet"));
    bench.pictures_of("drying-empty");
    bench.touch("Weigh now");
    for key in ["8", "4", "0"] {
        bench.press(key);
    }
    bench.touch("Record");
    assert_eq!(weights(&bench), [840.0]);
    assert!(bench.reads("Weighed today"));
    bench.pictures_of("drying-one");
    bench.days(14);
    bench.touch("Weigh now");
    bench.keys("828 g");
    bench.enter();
    assert_eq!(weights(&bench), [840.0, 828.0]);
    assert!(bench.reads("M02: 828\u{a0}g, 12\u{a0}g less"));
    bench.days(14);
    let before = bench.labels();
    bench.touch("Weigh now");
    bench.keys("820");
    bench.enter();
    assert_eq!(weights(&bench), [840.0, 828.0, 820.0]);
    let after = bench.labels();
    bench.touch("Undo: M02: 820\u{a0}g, 8\u{a0}g less");
    assert_eq!(weights(&bench), [840.0, 828.0]);
    let without_bar = |labels: Vec<String>| -> Vec<String> {
        let bar = |l: &String| l.contains("M02:") || l == "Undo" || l == "Redo";
        labels.into_iter().filter(|l| !bar(l)).collect()
    };
    assert_eq!(without_bar(bench.labels()), without_bar(before));
    assert_ne!(without_bar(bench.labels()), without_bar(after));
}

#[test]
fn a_scale_types_straight_in_also_after_keys_tabs_and_touches() {
    let bench = bench(&[("2026-03-05", weighed(840.0))]);
    bench.touch("Weigh now");
    bench.press("7");
    bench.press("Delete the last digit");
    bench.press("Yesterday");
    bench.press("Now");
    bench.press("3");
    bench.keys("1 lb 13.2 oz");
    bench.tab();
    let weights = weights(&bench);
    assert_eq!(weights.len(), 2, "{:#?}", bench.labels());
    assert!((weights[1] - 827.8).abs() < 0.05, "{weights:?}");
}

#[test]
fn the_day_is_typed_into_its_field_and_then_the_scale_is_heard_again() {
    let bench = bench(&[("2026-02-05", weighed(860.0))]);
    bench.touch("Weigh now");
    bench.press("Another day");
    let field = bench
        .find("Day")
        .into_iter()
        .find(|e| e.accessible_role() == Some(AccessibleRole::TextInput))
        .expect("a field for the day");
    field.mock_single_click(slint::platform::PointerEventButton::Left);
    bench.keys("5 Mar");
    assert!(bench.reads("Thu 5 Mar"), "{:#?}", bench.labels());
    bench.pictures_of("weigh-day");
    bench.enter();
    bench.keys("840 g");
    bench.enter();
    assert_eq!(weights(&bench), [860.0, 840.0]);
    bench.screens.read(|app| {
        let at = app.piece(&id()).unwrap().weighings[1].at;
        assert_eq!(at.date_naive().to_string(), "2026-03-05");
    });
}

#[test]
fn a_question_is_answered_before_anything_is_recorded() {
    let bench = bench(&[("2026-03-05", weighed(840.0))]);
    bench.touch("Weigh now");
    bench.keys("866");
    bench.pictures_of("weigh-typing");
    bench.enter();
    assert_eq!(weights(&bench), [840.0]);
    assert!(bench.sees("866\u{a0}g: 26\u{a0}g more?"));
    bench.pictures_of("weigh-question");
    bench.touch("Something changed: glue, wax, re-cut, bark");
    bench.pictures_of("weigh-changed");
    bench.touch("Wax went on");
    assert_eq!(weights(&bench), [840.0, 866.0]);
    assert!(bench.reads("Wax went on. Weights before and after are not compared."));
    bench.pictures_of("drying-break");
    bench.touch("Undo: M02: 866\u{a0}g after wax. A new curve begins.");
    assert_eq!(weights(&bench), [840.0]);
    assert!(!bench.reads("Wax went on"));
    // The bag was on: weighed again, by the scale, while the question is still up.
    bench.touch("Weigh now");
    bench.keys("1,250");
    bench.enter();
    assert!(bench.sees("1.25 or 1250?"), "{:#?}", bench.labels());
    bench.keys("838 g");
    bench.enter();
    assert_eq!(weights(&bench), [840.0, 838.0]);
}

#[test]
fn the_curve_of_months_is_touched_and_leads_to_the_diary() {
    let bench = bench(&months());
    bench.pictures_of("drying-months");
    let chart = bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with("Chart of 15 weights"))
        .unwrap_or_else(|| panic!("{:#?}", bench.labels()));
    bench.find(&chart)[0].invoke_accessible_default_action();
    assert!(
        bench.reads("Fri 6 Mar, 6 days ago"),
        "{:#?}",
        bench.labels()
    );
    bench.touch("Earlier weight");
    assert!(bench.reads("Fri 20 Feb"));
    bench.pictures_of("drying-picked");
    bench.touch("Correct");
    assert!(
        bench.sees("Diary") || bench.reads("891"),
        "{:#?}",
        bench.labels()
    );
    bench.screens.act(Action::Back);
    bench.touch("Close: 891\u{a0}g");
    bench.touch("30 days");
    bench.pictures_of("drying-30-days");
    bench.touch("More");
    bench.pictures_of("drying-more");
    bench.touch("Glue went on");
    assert!(bench.reads("M02: Glue went on. A new curve begins."));
    bench.touch("Undo: M02: Glue went on. A new curve begins.");
}

#[test]
fn pounds_and_a_tare_fit_on_every_size() {
    let mut store = store(&[
        ("2026-02-05", weighed(860.0)),
        (
            "2026-02-26",
            PieceFact::Weighed {
                mass_g: Measure::plain(865.0),
                tare_g: 25.0,
            },
        ),
    ]);
    store
        .save_device_settings(r#"{"mass":"pound-ounce","words":"en-US"}"#)
        .unwrap();
    let bench = Bench::at(Box::new(store), moment(START), false);
    bench.screens.act(Action::Open(Page::Drying(id())));
    bench.pictures_of("drying-pounds");
    bench.touch("Weigh now");
    bench.touch("Tare");
    bench.touch("0.9\u{a0}oz as last time");
    for key in ["1", "lb", "1", "3", "Point", "2"] {
        bench.press(key);
    }
    bench.pictures_of("weigh-pounds");
    bench.touch("Record");
    let weights = weights(&bench);
    // 1 lb 13.2 oz is 827.81 g; 25 g of it is the tray.
    assert!((weights[2] - 802.81).abs() < 0.01, "{weights:?}");
}
