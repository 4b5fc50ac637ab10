//! Promises of Shop: every page speaks, what is touched holds at once, can be taken back, and is not lost on a full disk.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_shop;

use evenwall_app::action::Action;
use evenwall_app::device::{LengthChoice, ThemeChoice, WordsChoice};
use evenwall_app::shop::pages::PAGES;
use evenwall_app::shop::view::RowKind;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::rhythm::{Rhythm, RhythmOf};
use support_piece::mm;
use support_shop::Shop;

#[test]
fn every_page_of_the_table_speaks_in_both_languages() {
    let mut shop = Shop::with(vec![]);
    for american in [false, true] {
        if american {
            shop.go("words");
            shop.touch("shop-words-en-US");
        }
        for page in PAGES {
            shop.go(page);
            let view = shop.page();
            assert_eq!(view.key, page);
            if page == "checklists" {
                continue;
            }
            assert!(!view.title.is_empty(), "{page}");
            assert!(
                view.primary.is_some() || !view.sections.is_empty(),
                "{page}"
            );
            let mut ids: Vec<String> = shop.rows().into_iter().map(|r| r.id).collect();
            let count = ids.len();
            ids.sort();
            ids.dedup();
            assert_eq!(ids.len(), count, "{page} has two rows with one id");
        }
        for row in shop.hub().sections.iter().flat_map(|s| &s.rows) {
            assert!(!row.title.is_empty() && !row.note.is_empty(), "{row:?}");
            assert!(row.touch.is_some(), "{row:?}");
        }
    }
    shop.hands.no_word_is_absent();
}

#[test]
fn every_page_is_reached_from_the_list_and_the_pages_do_not_pile_up() {
    let mut shop = Shop::with(vec![]);
    let listed: Vec<String> = shop
        .hub()
        .sections
        .into_iter()
        .flat_map(|s| s.rows)
        .map(|r| r.id)
        .collect();
    let of_the_list =
        |p: &&&str| !p.starts_with("rhythm-") && !["climate-log", "import-column"].contains(*p);
    for page in PAGES.iter().filter(of_the_list) {
        assert!(listed.iter().any(|l| l == page), "{page}");
    }
    for id in ["climate", "units", "about"] {
        let touch = shop.hub().touch(id).unwrap();
        shop.hands.act(touch);
        assert_eq!(shop.page().key, id);
    }
    shop.hands.act(Action::Back);
    assert_eq!(shop.hands.app.route().page(), None);
    let away = shop.hub().touch("away").unwrap();
    shop.hands.act(away);
    assert_eq!(shop.hands.app.route().page().unwrap().key(), "away");
}

#[test]
fn units_hold_at_once_for_pieces_and_for_shop() {
    let diameter = PieceFact::Detail {
        field: DetailField::Diameter,
        value: Some(mm(127.0)),
    };
    let mut shop = Shop::with(vec![diameter]);
    shop.go("units");
    assert!(shop.row("length-unit-millimetre").selected);
    assert_eq!(
        shop.row("length-unit-inch-fraction").note,
        "Shown as 3/8\u{a0}in"
    );
    shop.touch("length-unit-inch-decimal");
    assert!(shop.row("length-unit-inch-decimal").selected);
    assert!(!shop.row("length-unit-millimetre").selected);
    let app = &shop.hands.app;
    assert_eq!(app.device().length, LengthChoice::InchDecimal);
    assert_eq!(app.numbers().diameter(127.0).number, "5.00");
    // What is about this device is nothing to undo.
    assert!(app.undo().last_done().is_none());
    shop.go("walls");
    assert_eq!(shop.row("rough_tolerance_mm").value, "0.059\u{a0}in");
}

#[test]
fn words_and_look_hold_at_once_and_survive_the_next_start() {
    let mut shop = Shop::on("words");
    shop.touch("shop-words-en-US");
    assert!(shop.row("shop-words-en-US").note.starts_with("Tenon"));
    assert!(shop.row("shop-words-en-GB").note.starts_with("Spigot"));
    shop.go("look");
    for id in ["shop-theme-dark", "shop-text-huge", "shop-left-handed"] {
        shop.touch(id);
        assert!(shop.row(id).selected, "{id}");
    }
    shop.touch("shop-left-handed");
    assert!(!shop.row("shop-left-handed").selected);
    shop.hands.fact(PieceFact::Note("again".into()));
    let device = shop.hands.app.device();
    assert_eq!(device.words, WordsChoice::American);
    assert_eq!(device.theme, ThemeChoice::Dark);
    assert!((device.text_scale - 1.6).abs() < 1e-9);
}

#[test]
fn a_rule_is_typed_and_blank_is_the_usual_again() {
    let mut shop = Shop::on("walls");
    let before = shop.page();
    shop.enter("rough_tolerance_mm", &[("value", "2")]);
    assert!(shop.is_closed());
    let row = shop.row("rough_tolerance_mm");
    assert_eq!(row.value, "2\u{a0}mm");
    assert_eq!(row.note, "Usual: 1.5\u{a0}mm");
    assert_eq!(shop.hands.said(), "Rough wall: 2\u{a0}mm");
    shop.undo_brings_back(&before);
    shop.enter("rough_tolerance_mm", &[("value", "")]);
    assert_eq!(shop.page(), before);
    // What is so already is not recorded again.
    let lines = shop.hands.app.shop().history.len();
    shop.enter("margin_mm", &[]);
    shop.enter("margin_mm", &[("value", "1.5")]);
    assert_eq!(shop.hands.app.shop().history.len(), lines);
}

#[test]
fn nonsense_in_a_rule_says_what_is_allowed_and_records_nothing() {
    let mut shop = Shop::on("bag");
    let lines = shop.hands.app.shop().history.len();
    for (text, part) in [
        ("lots", "cannot be read"),
        ("0", "1 to 30"),
        ("31", "1 to 30"),
        ("2.5", "whole number"),
        ("-2", "below nought"),
    ] {
        shop.enter("bag_damp_days", &[("value", text)]);
        let error = shop.field("value").error;
        assert!(error.contains(part), "{text}: {error}");
        shop.fill(&[("value", text)]);
        assert_eq!(shop.field("value").error, "");
    }
    assert_eq!(shop.hands.app.shop().history.len(), lines);
    shop.fill(&[("value", "4 days")]);
    shop.save();
    assert!(shop.is_closed());
    assert_eq!(shop.row("bag_damp_days").value, "4 days");
    assert_eq!(shop.hands.app.shop().settings.bag_after.damp, 4);
}

#[test]
fn bag_days_are_ticked_and_one_weigh_day_chosen() {
    let mut shop = Shop::on("days");
    let before = shop.page();
    for day in ["bag-thu", "bag-mon", "bag-sat", "bag-mon"] {
        shop.touch(day);
    }
    let ticked = |shop: &Shop| -> Vec<String> {
        let rows = shop.rows().into_iter();
        rows.filter(|r| r.kind == RowKind::Check && r.selected)
            .map(|r| r.title)
            .collect()
    };
    assert_eq!(ticked(&shop), ["Thursday", "Saturday"]);
    assert_eq!(shop.hands.said(), "Bag days: Thu, Sat");
    shop.touch("weigh-sun");
    assert!(shop.row("weigh-sun").selected && !shop.row("weigh-any").selected);
    assert_eq!(
        shop.hub().sections[2].rows[2].note,
        "Bags: Thu, Sat. Weighing: Sun"
    );
    shop.touch("weigh-any");
    shop.touch("bag-thu");
    shop.touch("bag-sat");
    assert_eq!(shop.page(), before);
    for _ in 0..8 {
        shop.hands.act(Action::Undo);
    }
    assert_eq!(shop.page(), before);
}

#[test]
fn a_rhythm_is_a_list_of_steps_in_plain_words() {
    let mut shop = Shop::on("rhythm-paper");
    let titles = |shop: &Shop, list: &str| -> Vec<String> {
        let rows = shop.rows().into_iter();
        rows.filter(|r| r.id.starts_with(list) && r.kind == RowKind::Open)
            .map(|r| r.title)
            .collect()
    };
    assert_eq!(
        titles(&shop, "look"),
        [
            "First after 3 days",
            "Every 7 days until day 28",
            "Then every 14 days"
        ]
    );
    let usual = shop.page();
    shop.enter("look-add", &[("every", "10"), ("until", "60")]);
    shop.enter("look-3", &[("every", "21")]);
    shop.enter("look-0", &[("every", "2"), ("until", "2")]);
    assert_eq!(
        titles(&shop, "look"),
        [
            "First after 2 days",
            "Every 7 days until day 28",
            "Every 10 days until day 60",
            "Then every 21 days"
        ]
    );
    let stored = |shop: &Shop| shop.hands.app.shop().settings.rhythm(RhythmOf::Paper);
    assert_eq!(Some(stored(&shop)), Rhythm::parse("2<2 7<28 10<60 21/14/"));
    // A step that is there already is not put there twice.
    shop.enter("look-add", &[("every", "5"), ("until", "28")]);
    assert!(shop.field("until").error.contains("day 28"));
    shop.act(evenwall_app::shop::ShopAction::Close);
    // Without its last step the one before goes on.
    shop.touch("look-3");
    shop.act(evenwall_app::shop::ShopAction::Remove);
    assert_eq!(titles(&shop, "look")[2], "Then every 10 days");
    shop.enter("offer", &[("day", "90")]);
    assert_eq!(shop.row("offer").value, "day 90");
    shop.touch("usual");
    assert_eq!(shop.page(), usual);
    assert_eq!(stored(&shop), RhythmOf::Paper.usual());
}

#[test]
fn the_bag_has_its_own_rules_and_only_weighings_here() {
    let mut shop = Shop::on("rhythm-bag");
    assert!(shop.rows().iter().all(|r| !r.id.starts_with("look")));
    shop.enter("weighing-add", &[("every", "7")]);
    assert_eq!(shop.row("weighing-0").title, "Every 7 days");
    let rhythm = shop.hands.app.shop().settings.rhythm(RhythmOf::Bag);
    assert_eq!(rhythm.looks, RhythmOf::Bag.usual().looks);
    assert_eq!(rhythm.weigh_every(3), Some(7));
}

#[test]
fn what_could_not_be_kept_is_not_lost_and_can_be_tried_again() {
    let mut shop = Shop::on("walls");
    shop.hands.fail(true);
    shop.enter("margin_mm", &[("value", "2")]);
    assert!(shop.hands.app.save_error().is_some());
    assert_eq!(shop.field("value").text, "2");
    assert_eq!(shop.row("margin_mm").value, "1.5\u{a0}mm");
    // Even after the form was closed.
    shop.act(evenwall_app::shop::ShopAction::Close);
    shop.hands.fail(false);
    shop.hands.act(Action::TryAgain);
    assert_eq!(shop.hands.app.save_error(), None);
    assert_eq!(shop.row("margin_mm").value, "2\u{a0}mm");
    shop.go("look");
    shop.hands.fail(true);
    shop.touch("shop-theme-dark");
    assert_eq!(shop.hands.app.device().theme, ThemeChoice::System);
    assert!(shop.hands.app.save_error().is_some());
    shop.hands.fail(false);
    shop.hands.act(Action::TryAgain);
    assert_eq!(shop.hands.app.device().theme, ThemeChoice::Dark);
}

#[test]
fn the_history_names_what_was_changed_and_takes_it_back() {
    let mut shop = Shop::on("walls");
    shop.enter("rough_tolerance_mm", &[("value", "2")]);
    shop.go("days");
    shop.touch("bag-mon");
    shop.go("history");
    let before = shop.page();
    let titles: Vec<String> = shop.rows().into_iter().map(|r| r.title).collect();
    assert_eq!(
        titles,
        [
            "Bag days: Mon",
            "Rough wall: 2\u{a0}mm",
            "General cautions read"
        ]
    );
    assert!(shop.rows()[0].note.starts_with("today, 08:42"));
    let id = shop.rows()[1].id.clone();
    shop.touch(&id);
    assert_eq!(shop.hands.said(), "Taken back: Rough wall: 2\u{a0}mm");
    assert_eq!(shop.rows().len(), 2);
    assert!((shop.hands.app.shop().settings.rough_tolerance_mm - 1.5).abs() < 1e-9);
    shop.undo_brings_back(&before);
}

#[test]
fn a_long_history_is_shown_by_and_by() {
    let mut shop = Shop::on("days");
    for _ in 0..35 {
        shop.touch("bag-mon");
    }
    shop.go("history");
    assert_eq!(shop.rows().len(), 31);
    shop.touch("older");
    assert_eq!(shop.rows().len(), 36);
    assert!(shop.rows().iter().all(|r| r.kind == RowKind::Entry));
}

#[test]
fn the_data_page_says_where_and_how_many_and_about_promises_nothing() {
    let mut shop = Shop::on("data");
    assert_eq!(shop.row("place").title, "memory");
    assert_eq!(shop.row("pieces").value, "1 piece");
    assert_eq!(shop.row("all-read").title, "All of it was read");
    shop.go("about");
    assert!(shop.page().subtitle.contains(env!("CARGO_PKG_VERSION")));
    assert!(shop.row("shop-about-never").title.contains("never clears"));
    shop.go("cautions");
    let cautions = shop.rows();
    assert_eq!(cautions.len(), 6 + 9);
    assert!(cautions.iter().all(|r| r.kind == RowKind::Caution));
}
