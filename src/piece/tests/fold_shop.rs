//! Promises of the workshop's fold: the same lines give the same workshop, whoever wrote them and whichever was read
//! first.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::collections::HashSet;

use chrono::NaiveDate;
use evenwall_piece::line::Line;
use evenwall_piece::shop::{
    Bar, ChecklistChange, Climate, Jaws, LoggedAir, LoggedReading, OwnWood, Shop, ShopFact as F,
    fold_shop,
};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Room;
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use support::any::{moment, some_line};
use support::{line, line_id, minutes};

fn id() -> impl Strategy<Value = String> {
    select(vec!["a", "b", "c"]).prop_map(str::to_owned)
}

fn setting() -> impl Strategy<Value = F> {
    let keys = vec!["margin_mm", "bag_days", "weigh_day", "unheard_of"];
    let values = vec!["", "2", "mon thu", "nonsense"];
    (select(keys), select(values)).prop_map(|(key, value)| F::Setting {
        key: key.to_owned(),
        value: value.to_owned(),
    })
}

fn wood() -> impl Strategy<Value = F> {
    let figures = (of(0.0..20.0_f64), of(0.0..20.0_f64), of(300.0..900.0_f64));
    (id(), figures, any::<bool>()).prop_map(
        |(id, (radial_pct, tangential_pct, density_kg_m3), moulds_easily)| {
            F::Wood(OwnWood {
                name: id.clone(),
                id,
                radial_pct,
                tangential_pct,
                density_kg_m3,
                green_mc_pct: None,
                moulds_easily,
            })
        },
    )
}

fn checklist() -> impl Strategy<Value = F> {
    let worded =
        (id(), select(Stage::ALL), id()).prop_map(|(line, stage, text)| ChecklistChange::Worded {
            line,
            stage,
            text,
            why: String::new(),
        });
    prop_oneof![
        worded,
        (id(), any::<bool>()).prop_map(|(line, hidden)| ChecklistChange::Hidden { line, hidden }),
        (id(), any::<i64>()).prop_map(|(line, order)| ChecklistChange::Placed { line, order }),
        id().prop_map(|line| ChecklistChange::Reset { line }),
    ]
    .prop_map(F::Checklist)
}

fn logged() -> impl Strategy<Value = F> {
    let at = chrono::DateTime::parse_from_rfc3339("2026-05-01T12:00:00+01:00").unwrap();
    let reading =
        (0..40_i64, -10.0..40.0_f64, 20.0..95.0_f64).prop_map(move |(day, temp_c, rh_pct)| {
            LoggedReading {
                at: at + chrono::Duration::days(day),
                temp_c,
                rh_pct,
            }
        });
    let readings = proptest::collection::vec(reading, 0..4);
    (select(Room::ALL), readings)
        .prop_map(|(room, readings)| F::ClimateLog(LoggedAir { room, readings }))
}

fn shop_fact() -> impl Strategy<Value = F> {
    let day = (1..28_u32).prop_map(|d| NaiveDate::from_ymd_opt(2026, 5, d).unwrap());
    let air = (select(Room::ALL), -10.0..40.0_f64, 20.0..95.0_f64);
    prop_oneof![
        setting(),
        air.prop_map(|(room, temp_c, rh_pct)| F::Climate(Climate {
            room,
            temp_c,
            rh_pct
        })),
        logged(),
        (id(), 20.0..40.0_f64).prop_map(|(id, smallest_mm)| {
            F::Jaws(Jaws {
                name: id.clone(),
                id,
                smallest_mm,
                largest_mm: 60.0,
            })
        }),
        id().prop_map(F::JawsRemoved),
        (id(), 6.0..32.0_f64).prop_map(|(id, diameter_mm)| {
            F::Bar(Bar {
                name: id.clone(),
                id,
                diameter_mm,
            })
        }),
        id().prop_map(F::BarRemoved),
        wood(),
        id().prop_map(F::WoodRemoved),
        checklist(),
        (0.1..10.0_f64).prop_map(|step_g| F::NewScale { step_g }),
        day.prop_map(|back_on| F::Away { back_on }),
        Just(F::Back),
        some_line().prop_map(F::Retracts),
        (id(), id()).prop_map(|(kind, raw)| F::Unknown { kind, raw }),
    ]
}

/// The place of a fact's kind: a new kind does not compile here until it is named.
fn kind_index(fact: &F) -> usize {
    match fact {
        F::Setting { .. } => 0,
        F::Climate(_) => 1,
        F::Jaws(_) => 2,
        F::JawsRemoved(_) => 3,
        F::Bar(_) => 4,
        F::BarRemoved(_) => 5,
        F::Wood(_) => 6,
        F::WoodRemoved(_) => 7,
        F::Checklist(_) => 8,
        F::NewScale { .. } => 9,
        F::Away { .. } => 10,
        F::Back => 11,
        F::Retracts(_) => 12,
        F::ClimateLog(_) => 13,
        F::Unknown { .. } => 14,
    }
}

fn shop_lines() -> impl Strategy<Value = Vec<Line<F>>> {
    let one = ((some_line(), 0..15_u64, moment()), vec(shop_fact(), 0..3));
    let one = one.prop_map(|((id, seq, at), facts)| Line {
        id,
        seq,
        at,
        noted_at: at,
        facts,
    });
    vec(one, 0..25)
}

/// What does not show a time: everything but the readings of the air and the scales, which are kept by time.
fn timeless(shop: &Shop) -> String {
    let changes: Vec<_> = shop.checklist.iter().map(|c| &c.1).collect();
    let lists = (
        &shop.settings,
        &shop.stored,
        &shop.jaws,
        &shop.bars,
        &shop.woods,
    );
    let back_on = shop.away.map(|a| a.1);
    format!("{lists:?} {changes:?} {back_on:?} {}", shop.unknown_facts)
}

proptest! {
    #[test]
    fn any_lines_give_one_workshop_in_whatever_order_they_are_read(
        (lines, mixed) in shop_lines().prop_flat_map(|l| (Just(l.clone()), Just(l).prop_shuffle()))
    ) {
        prop_assert_eq!(fold_shop(lines), fold_shop(mixed));
    }

    #[test]
    fn clocks_change_nothing_but_what_is_kept_by_time(
        (lines, times) in shop_lines().prop_flat_map(|l| {
            let times = vec(moment(), l.len());
            // Ids that clash are told apart by their times: each line has its own here.
            let own = l.into_iter().zip(1..).map(|(l, n)| Line { id: line_id("bench", n), ..l });
            (Just(own.collect::<Vec<_>>()), times)
        })
    ) {
        let mut skewed = lines.clone();
        for (line, at) in skewed.iter_mut().zip(times) {
            line.at = at;
        }
        prop_assert_eq!(timeless(&fold_shop(lines)), timeless(&fold_shop(skewed)));
    }

    #[test]
    fn taking_back_and_taking_that_back_gives_the_workshop_before(
        lines in shop_lines(), which in any::<prop::sample::Index>()
    ) {
        prop_assume!(!lines.is_empty());
        let mut redone = lines.clone();
        let target = which.get(&lines).id.clone();
        redone.push(line("undoer", 1, 20, vec![F::Retracts(target)]));
        redone.push(line("undoer", 2, 21, vec![F::Retracts(line_id("undoer", 1))]));
        prop_assert_eq!(fold_shop(lines), fold_shop(redone));
    }
}

#[test]
fn the_strategies_invent_every_kind_of_fact() {
    let mut runner = TestRunner::deterministic();
    let facts = shop_fact();
    let kinds: HashSet<usize> = (0..2000)
        .map(|_| kind_index(&facts.new_tree(&mut runner).unwrap().current()))
        .collect();
    assert_eq!(kinds.len(), 15);
}

fn set(key: &str, value: &str) -> F {
    F::Setting {
        key: key.to_owned(),
        value: value.to_owned(),
    }
}

#[test]
fn of_a_setting_changed_on_both_sides_the_later_counts_and_the_earlier_stays_in_the_history() {
    let lines = vec![
        line("tablet", 1, 2, vec![set("margin_mm", "3")]),
        line("phone", 1, 2, vec![set("margin_mm", "2")]),
    ];
    let shop = fold_shop(lines);
    assert!((shop.settings.margin_mm - 3.0).abs() < 1e-12);
    assert_eq!(shop.history.len(), 2);
}

#[test]
fn a_setting_emptied_goes_back_to_the_default() {
    let lines = vec![
        line("bench", 1, 1, vec![set("margin_mm", "3")]),
        line("bench", 2, 2, vec![set("margin_mm", "")]),
    ];
    let shop = fold_shop(lines);
    assert!((shop.settings.margin_mm - 1.5).abs() < 1e-12);
    assert!(shop.stored.is_empty());
}

#[test]
fn jaws_changed_on_one_device_and_removed_on_another_follow_the_later() {
    let jaws = |name: &str| {
        F::Jaws(Jaws {
            id: "j1".into(),
            name: name.into(),
            smallest_mm: 45.0,
            largest_mm: 60.0,
        })
    };
    let removed = |device, seq| line(device, 1, seq, vec![F::JawsRemoved("j1".into())]);
    let base = || vec![line("bench", 1, 1, vec![jaws("small")])];
    let mut lines = base();
    lines.extend([
        line("phone", 1, 2, vec![jaws("50 mm")]),
        removed("tablet", 2),
    ]);
    assert!(fold_shop(lines).jaws.is_empty());
    let mut lines = base();
    lines.extend([
        removed("phone", 2),
        line("tablet", 1, 2, vec![jaws("50 mm")]),
    ]);
    assert_eq!(fold_shop(lines).jaws[0].name, "50 mm");
}

#[test]
fn weights_are_judged_by_the_scale_of_their_day_also_where_it_was_noted_late() {
    let scale = |n, minute, step_g| Line {
        at: minutes(minute),
        ..line("bench", n, n, vec![F::NewScale { step_g }])
    };
    let usual = line("bench", 1, 1, vec![set("scale_step_g", "2")]);
    let shop = fold_shop(vec![usual, scale(2, 20, 0.5), scale(3, 10, 5.0)]);
    let steps: Vec<f64> = [5, 15, 25].map(|m| shop.scale_step_at(minutes(m))).to_vec();
    assert_eq!(steps, [2.0, 5.0, 0.5]);
}
