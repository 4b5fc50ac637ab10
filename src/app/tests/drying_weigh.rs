//! Promises of the weighing page: what is typed, what is asked, what is recorded, what undo brings back.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::action::Action;
use evenwall_app::drying::{DryingAction, When};
use evenwall_app::route::Page;
use support_drying::{Loft, id, noon};

#[test]
fn a_weight_from_the_keys_is_recorded_bare_and_leads_back() {
    let mut loft = Loft::weighed(&[("2026-02-26", 840.0)]);
    let before = loft.view();
    loft.scale();
    let view = loft.weigh();
    assert_eq!(view.number, "–");
    assert_eq!(view.unit, "g");
    assert_eq!(view.last, "Last 840\u{a0}g, 14 days ago.");
    assert_eq!(view.tare, "Weighed bare");
    assert!(!view.can_next);
    loft.keys(&["8", "2"]);
    assert_eq!(loft.weigh().difference, "", "82 g is not yet a weight");
    loft.keys(&["8"]);
    assert_eq!(loft.weigh().difference, "12\u{a0}g less");
    loft.keys(&["next"]);
    assert_eq!(loft.app.route().page(), Some(&Page::Drying(id())));
    assert_eq!(loft.weights(), [840.0, 828.0]);
    assert_eq!(loft.piece().weighings[1].tare_g, 0.0);
    assert_eq!(loft.piece().weighings[1].mass_g.typed, "828");
    assert_eq!(loft.said(), "K07: 828\u{a0}g, 12\u{a0}g less");
    loft.act(Action::Undo);
    assert_eq!(loft.view(), before);
}

#[test]
fn a_scale_that_types_is_read_with_its_unit_also_after_a_key_on_the_screen() {
    for (text, g) in [
        ("828 g\r", 828.0),
        ("+828.4 g\n", 828.4),
        ("0.828 kg\n", 828.0),
        ("29.2 oz\t", 827.806),
        ("1 lb 13.2 oz\n", 827.806),
    ] {
        let mut loft = Loft::weighed(&[("2026-02-26", 840.0)]);
        loft.scale();
        loft.keys(&["3"]);
        loft.types(text);
        assert_eq!(
            loft.weights().len(),
            2,
            "{text:?}: {:?}",
            loft.app.weigh_view(loft.now).map(|v| v.ask)
        );
        assert!(
            (loft.weights()[1] - g).abs() < 0.01,
            "{text:?}: {:?}",
            loft.weights()
        );
    }
}

#[test]
fn a_comma_that_may_part_thousands_is_asked_about_once() {
    let mut loft = Loft::weighed(&[]);
    loft.scale();
    loft.types("1,250\n");
    assert_eq!(loft.asked(), "1.25 or 1250?");
    assert!(loft.weights().is_empty());
    let ask = loft.weigh().ask.unwrap();
    let thousand = ask
        .answers
        .iter()
        .find(|a| a.text.starts_with("1250"))
        .unwrap()
        .key
        .clone();
    loft.answer(&thousand);
    assert_eq!(loft.weights(), [1250.0]);
    assert_eq!(loft.piece().weighings[0].mass_g.typed, "1,250");
}

#[test]
fn only_a_gain_that_drying_cannot_be_is_asked_about() {
    let mut loft = Loft::weighed(&[("2026-03-05", 800.0)]);
    loft.scale();
    // One per cent in a week is air and scale.
    loft.types("808\n");
    assert_eq!(loft.weights(), [800.0, 808.0]);
    loft.act(Action::Undo);
    loft.scale();
    loft.types("812\n");
    assert_eq!(loft.asked(), "812\u{a0}g: 12\u{a0}g more?");
    assert_eq!(
        loft.weights(),
        [800.0],
        "nothing is recorded before the answer"
    );
    // The number stays to be seen.
    assert_eq!(loft.weigh().number, "812");
    loft.answer("again");
    assert_eq!(loft.weigh().number, "–");
    loft.types("802\n");
    assert_eq!(loft.weights(), [800.0, 802.0]);
}

#[test]
fn a_gain_that_is_right_is_recorded_as_it_is() {
    let mut loft = Loft::weighed(&[("2026-03-05", 800.0)]);
    loft.scale();
    loft.types("830\n");
    loft.answer("right");
    assert_eq!(loft.weights(), [800.0, 830.0]);
    assert!(loft.piece().mass_changes.is_empty());
}

#[test]
fn a_digit_short_is_asked_about_and_never_taken_for_drying() {
    let mut loft = Loft::weighed(&[("2026-02-26", 840.0)]);
    loft.scale();
    loft.types("82\n");
    assert_eq!(loft.asked(), "82\u{a0}g: 758\u{a0}g less?");
    loft.answer("again");
    assert_eq!(loft.weights(), [840.0]);
}

#[test]
fn green_wood_that_loses_a_tenth_in_a_month_is_not_asked_about() {
    let mut loft = Loft::weighed(&[("2026-02-12", 1000.0)]);
    loft.scale();
    loft.types("900\n");
    assert_eq!(loft.weights(), [1000.0, 900.0]);
}

#[test]
fn a_tare_is_taken_off_and_offered_again_but_never_by_itself() {
    let mut loft = Loft::weighed(&[("2026-02-26", 840.0)]);
    loft.scale();
    loft.drying(DryingAction::ShowTare);
    let keys =
        |loft: &Loft| -> Vec<String> { loft.weigh().tares.into_iter().map(|t| t.key).collect() };
    assert_eq!(keys(&loft), ["bare", "other"]);
    loft.drying(DryingAction::Tare("other".into()));
    assert!(loft.weigh().entering_tare);
    loft.keys(&["2", "5", "next"]);
    assert!(!loft.weigh().entering_tare);
    assert_eq!(loft.weigh().tare, "Less 25\u{a0}g tare");
    loft.keys(&["8", "5", "3"]);
    assert_eq!(loft.weigh().net, "828\u{a0}g of wood");
    assert_eq!(loft.weigh().difference, "12\u{a0}g less");
    loft.keys(&["next"]);
    assert_eq!(loft.weights(), [840.0, 828.0]);
    loft.days(14);
    loft.scale();
    assert_eq!(loft.weigh().tare, "Weighed bare");
    loft.drying(DryingAction::ShowTare);
    assert_eq!(keys(&loft), ["bare", "last", "other"]);
    loft.drying(DryingAction::Tare("last".into()));
    loft.types("845\n");
    assert_eq!(loft.weights(), [840.0, 828.0, 820.0]);
}

#[test]
fn a_tare_heavier_than_the_whole_is_refused_in_a_sentence() {
    let mut loft = Loft::weighed(&[]);
    loft.scale();
    loft.drying(DryingAction::Tare("other".into()));
    loft.keys(&["9", "0", "0", "next"]);
    loft.types("828\n");
    let ask = loft.weigh().ask.unwrap();
    assert!(
        ask.text.contains("900\u{a0}g") && ask.text.contains("828\u{a0}g"),
        "{ask:?}"
    );
    assert!(loft.weights().is_empty());
    loft.answer("close");
    loft.drying(DryingAction::Tare("bare".into()));
    // The number is still in the hand.
    loft.keys(&["next"]);
    assert_eq!(loft.weights(), [828.0]);
}

#[test]
fn a_weight_of_yesterday_or_another_day_lands_on_its_day() {
    let mut loft = Loft::weighed(&[("2026-02-01", 860.0), ("2026-02-26", 840.0)]);
    loft.scale();
    loft.drying(DryingAction::When(When::Yesterday));
    loft.types("835\n");
    assert_eq!(loft.piece().weighings[2].at, noon("2026-03-11"));
    loft.scale();
    loft.drying(DryingAction::When(When::Typed));
    loft.drying(DryingAction::Day("14 Feb".into()));
    assert_eq!(loft.weigh().day_note, "Sat 14 Feb");
    // Beside the weight of 1 February, not of 26 February.
    assert_eq!(loft.weigh().last, "Last 860\u{a0}g, 5 weeks ago.");
    loft.types("849\n");
    assert_eq!(loft.weights(), [860.0, 849.0, 840.0, 835.0]);
    assert_eq!(loft.said(), "K07: 849\u{a0}g, 11\u{a0}g less");
}

#[test]
fn a_day_that_cannot_be_is_said_and_the_weight_is_kept() {
    for (day, part) in [
        ("", "Type a day"),
        ("32 Mar", "cannot be read as a day"),
        ("Sunday-ish", "cannot be read as a day"),
        ("20 Mar", "lies ahead"),
        ("2030-01-01", "lies ahead"),
    ] {
        let mut loft = Loft::weighed(&[]);
        loft.scale();
        loft.drying(DryingAction::When(When::Typed));
        loft.drying(DryingAction::Day(day.into()));
        loft.types("828\n");
        let view = loft.weigh();
        assert!(view.day_wrong.contains(part), "{day}: {}", view.day_wrong);
        assert_eq!(view.number, "828");
        assert!(loft.weights().is_empty());
        loft.drying(DryingAction::Day("12 Mar".into()));
        assert_eq!(loft.weigh().day_wrong, "");
        loft.keys(&["next"]);
        assert_eq!(loft.weights(), [828.0], "{day}");
    }
}

#[test]
fn nonsense_is_answered_with_a_sentence_and_nothing_is_recorded() {
    for text in [
        "-828\n",
        "0\n",
        "5\n",
        "30000\n",
        "8 2 8 1 1\n",
        "828 mm\n",
        "828 bananas\n",
        "1/0\n",
        "9.9.9\n",
        "--\n",
    ] {
        let mut loft = Loft::weighed(&[]);
        loft.scale();
        loft.types(text);
        let ask = loft.weigh().ask;
        assert!(ask.is_some_and(|a| !a.text.is_empty()), "{text:?}");
        assert!(loft.weights().is_empty(), "{text:?}");
    }
    let mut loft = Loft::weighed(&[]);
    loft.scale();
    loft.types(&"8".repeat(10_000));
    loft.types("\n");
    assert!(loft.weigh().ask.is_some());
    assert!(loft.weights().is_empty());
}

#[test]
fn enter_alone_records_nothing() {
    let mut loft = Loft::weighed(&[("2026-02-26", 840.0)]);
    loft.scale();
    loft.types("\n\r\t");
    loft.keys(&["next", "back", "."]);
    assert_eq!(loft.weights(), [840.0]);
}

#[test]
fn pounds_come_before_ounces_on_the_keys() {
    let pounds = r#"{"mass":"pound-ounce"}"#;
    let mut loft = Loft::with(Vec::new(), &[], pounds);
    loft.scale();
    assert_eq!(loft.weigh().pounds, "lb");
    assert!(!loft.weigh().can_pounds);
    loft.keys(&["1"]);
    assert!(loft.weigh().can_pounds);
    loft.keys(&["lb", "1", "3", ".", "2"]);
    assert_eq!(
        (loft.weigh().number.as_str(), loft.weigh().unit.as_str()),
        ("1 lb 13.2", "oz")
    );
    loft.keys(&["back", "back", "back", "back", "back"]);
    assert_eq!(loft.weigh().number, "1");
    loft.keys(&["lb", "1", "3", ".", "2", "next"]);
    // 29.2 oz at 28.349523125 g, the international avoirdupois ounce by definition.
    assert!(
        (loft.weights()[0] - 827.806).abs() < 0.001,
        "{:?}",
        loft.weights()
    );
    assert_eq!(loft.view().last.value, "1 lb 13.2");
    assert_eq!(loft.view().last.unit, "oz");
    // A scale that types begins anew after pounds on the keys.
    loft.scale();
    loft.keys(&["9", "lb"]);
    loft.types("29.1 oz\n");
    assert!(
        (loft.weights()[1] - 824.97).abs() < 0.01,
        "{:?}",
        loft.weights()
    );
}

#[test]
fn a_weight_that_cannot_be_kept_is_not_lost_and_is_recorded_once() {
    let mut loft = Loft::weighed(&[("2026-03-05", 800.0)]);
    loft.scale();
    loft.fail(true);
    loft.types("799\n");
    assert!(loft.app.save_error().is_some());
    assert_eq!(loft.weights(), [800.0]);
    assert_eq!(loft.weigh().number, "799", "the number stays on the page");
    loft.act(Action::TryAgain);
    assert!(loft.app.save_error().is_some());
    loft.fail(false);
    loft.act(Action::TryAgain);
    assert_eq!(loft.weights(), [800.0, 799.0]);
    assert_eq!(loft.app.route().page(), Some(&Page::Drying(id())));
    // The same for an answer that carries a change.
    loft.scale();
    loft.types("830\n");
    loft.answer("changed");
    loft.fail(true);
    loft.answer("glue");
    assert_eq!(loft.weights(), [800.0, 799.0]);
    assert!(loft.piece().mass_changes.is_empty());
    loft.days(1);
    loft.fail(false);
    loft.act(Action::TryAgain);
    assert_eq!(loft.weights(), [800.0, 799.0, 830.0]);
    // It was weighed yesterday, when it was typed.
    assert_eq!(
        loft.piece().weighings[2].at.date_naive().to_string(),
        "2026-03-12"
    );
}
