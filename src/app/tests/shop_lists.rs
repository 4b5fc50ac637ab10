//! Promises of the lists of Shop: readings of the air, jaws, bars, scales and own woods.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_shop;

use evenwall_app::action::Action;
use evenwall_app::shop::ShopAction;
use evenwall_app::shop::view::RowKind;
use evenwall_piece::vocabulary::Room;
use support_shop::Shop;

fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

#[test]
fn a_reading_of_the_air_says_what_wood_settles_at() {
    let mut shop = Shop::on("climate");
    let before = shop.page();
    assert_eq!(shop.row("shop-unread").title, "Not read yet");
    // A heated house that was never read: 20 degrees C and 45 to 50 %, common practice, no source.
    assert_eq!(plain(&shop.row("house-rh").value), "45 to 50 %");
    assert_eq!(plain(&shop.row("house-settles").value), "8 to 9 %");
    shop.touch("new-reading");
    shop.fill(&[("temp", "15,6"), ("rh", "65 %")]);
    // Wood Handbook FPL-GTR-190 table 4-2: 60 F and 65 % give 12.1 %.
    assert_eq!(
        plain(&shop.form().follows),
        "Wood settles at about 12 % here."
    );
    shop.save();
    assert!(shop.is_closed());
    assert_eq!(plain(&shop.row("shop-settles").value), "12 %");
    assert_eq!(plain(&shop.hands.said()), "Shop: 16 °C, 65 %");
    let (at, climate) = shop.hands.app.shop().last_climate(Room::Shop).unwrap();
    assert_eq!(*at, shop.hands.now());
    assert!((climate.temp_c - 15.6).abs() < 1e-9 && (climate.rh_pct - 65.0).abs() < 1e-9);
    shop.undo_brings_back(&before);
}

#[test]
fn two_bulbs_give_the_humidity() {
    let mut shop = Shop::on("climate");
    shop.touch("new-reading");
    shop.fill(&[
        ("way", "bulbs"),
        ("room", "house"),
        ("temp", "20"),
        ("wet", "15"),
    ]);
    // Worked by hand from WMO No. 8 with Sonntag's pressure: e = 17.05 - 0.000662 * 1013.25 * 5 = 13.70 hPa of 23.33 hPa.
    assert!(plain(&shop.form().follows).starts_with("That is about 59 % humidity."));
    shop.save();
    let (_, climate) = shop.hands.app.shop().last_climate(Room::House).unwrap();
    assert!((climate.rh_pct - 58.7).abs() < 0.15, "{climate:?}");
    shop.touch("new-reading");
    shop.fill(&[("way", "bulbs"), ("temp", "15"), ("wet", "20")]);
    shop.save();
    assert!(shop.field("wet").error.contains("swap them"));
    shop.fill(&[("wet", "-2")]);
    shop.save();
    assert!(
        shop.field("wet").error.contains("0"),
        "{}",
        shop.field("wet").error
    );
    shop.fill(&[("temp", "35"), ("wet", "4")]);
    shop.save();
    assert!(shop.field("wet").error.contains("stand still"));
    assert_eq!(shop.hands.app.shop().climate.len(), 1);
}

#[test]
fn a_reading_can_be_of_another_day_but_not_of_one_ahead() {
    let mut shop = Shop::on("climate");
    shop.touch("new-reading");
    shop.fill(&[
        ("temp", "10"),
        ("rh", "70"),
        ("when", "day"),
        ("day", "9 Mar"),
    ]);
    shop.save();
    assert!(shop.is_closed());
    let (at, _) = shop.hands.app.shop().last_climate(Room::Shop).unwrap();
    assert_eq!(at.to_rfc3339(), "2026-03-09T08:42:00+00:00");
    shop.touch("new-reading");
    shop.fill(&[("temp", "12"), ("rh", "60"), ("when", "yesterday")]);
    shop.save();
    let readings: Vec<String> = shop
        .rows()
        .into_iter()
        .filter(|r| r.kind == RowKind::Entry)
        .map(|r| plain(&r.title))
        .collect();
    assert_eq!(readings, ["Shop: 12 °C, 60 %", "Shop: 10 °C, 70 %"]);
    for text in ["14 Mar 2026", "March 2026", "soon", ""] {
        shop.touch("new-reading");
        shop.fill(&[("temp", "12"), ("rh", "60"), ("when", "day"), ("day", text)]);
        shop.save();
        assert_ne!(shop.field("day").error, "", "{text}");
    }
    assert_eq!(shop.hands.app.shop().climate.len(), 2);
    shop.act(ShopAction::Close);
    let id = shop
        .rows()
        .into_iter()
        .find(|r| r.kind == RowKind::Entry)
        .unwrap()
        .id;
    let before = shop.page();
    shop.touch(&id);
    assert_eq!(shop.hands.app.shop().climate.len(), 1);
    shop.undo_brings_back(&before);
}

#[test]
fn nonsense_about_the_air_is_asked_about_or_refused() {
    let mut shop = Shop::on("climate");
    shop.touch("new-reading");
    shop.fill(&[("temp", "64"), ("rh", "lots")]);
    shop.save();
    // Each field says its own.
    assert_ne!(shop.field("rh").error, "");
    assert_eq!(plain(&shop.field("temp").ways[0]), "64 °F");
    let way = shop.field("temp").ways[0].clone();
    shop.fill(&[("temp", &way), ("rh", "105")]);
    shop.save();
    assert_eq!(shop.field("temp").error, "");
    assert!(plain(&shop.field("rh").error).contains("20 % to 95 %"));
    shop.fill(&[("rh", "55")]);
    shop.save();
    let (_, climate) = shop.hands.app.shop().last_climate(Room::Shop).unwrap();
    assert!((climate.temp_c - 17.78).abs() < 0.01);
}

#[test]
fn jaws_are_added_changed_and_taken_off_the_list() {
    let mut shop = Shop::on("jaws");
    let before = shop.page();
    shop.enter(
        "add",
        &[
            ("name", " 50 mm\tjaws "),
            ("smallest", "48"),
            ("largest", "64"),
        ],
    );
    let row = shop.rows()[0].clone();
    assert_eq!(row.title, "50 mm jaws");
    assert_eq!(plain(&row.note), "48 to 64 mm");
    shop.undo_brings_back(&before);
    shop.enter(&row.id, &[("largest", "62")]);
    assert_eq!(shop.hands.app.shop().jaws.len(), 1);
    assert!((shop.hands.app.shop().jaws[0].largest_mm - 62.0).abs() < 1e-9);
    shop.touch(&row.id);
    shop.act(ShopAction::Remove);
    assert!(shop.hands.app.shop().jaws.is_empty());
    assert_eq!(shop.hands.said(), "Jaws taken off the list: 50 mm jaws");
    shop.go("history");
    assert_eq!(shop.rows()[0].title, "Jaws taken off the list: 50 mm jaws");
}

#[test]
fn jaws_without_a_name_are_called_by_their_circles_and_wrong_circles_are_refused() {
    let mut shop = Shop::on("jaws");
    shop.enter("add", &[("smallest", "64"), ("largest", "48")]);
    assert!(plain(&shop.field("largest").error).contains("48 mm"));
    shop.fill(&[("smallest", ""), ("name", &"x".repeat(10_000))]);
    shop.save();
    assert!(shop.field("name").error.contains("40"));
    assert_ne!(shop.field("smallest").error, "");
    shop.fill(&[
        ("name", ""),
        ("smallest", "1 7/8\""),
        ("largest", "2 1/2\""),
    ]);
    shop.save();
    assert!(shop.is_closed());
    assert_eq!(plain(&shop.hands.app.shop().jaws[0].name), "48 to 64 mm");
    assert!((shop.hands.app.shop().jaws[0].smallest_mm - 47.625).abs() < 1e-9);
    // Changing the name alone leaves the circles as they were to the last figure.
    let id = shop.rows()[0].id.clone();
    shop.enter(&id, &[("name", "Old ones")]);
    assert!((shop.hands.app.shop().jaws[0].smallest_mm - 47.625).abs() < 1e-9);
}

#[test]
fn a_bar_has_a_name_of_its_own_or_its_diameter() {
    let mut shop = Shop::on("bars");
    shop.enter("add", &[("diameter", "19")]);
    shop.enter("add", &[("name", "Long one"), ("diameter", "1\"")]);
    let titles: Vec<String> = shop.rows().iter().map(|r| plain(&r.title)).collect();
    assert_eq!(titles, ["Bar of 19 mm", "Long one"]);
    shop.enter("add", &[("diameter", "190")]);
    assert_ne!(shop.field("diameter").error, "");
}

#[test]
fn a_new_scale_parts_the_weights_and_its_step_can_be_put_right() {
    let mut shop = Shop::on("scale");
    shop.enter("step", &[("step", "5")]);
    assert!((shop.hands.app.shop().settings.scale_step_g - 5.0).abs() < 1e-9);
    shop.enter("new-scale", &[("step", "2"), ("when", "yesterday")]);
    assert_eq!(plain(&shop.row("step").value), "2 g");
    let before = shop.page();
    shop.enter("step", &[("step", "0.1 g")]);
    let scales = &shop.hands.app.shop().scales;
    assert_eq!(scales.len(), 1);
    assert!((scales[0].1 - 0.1).abs() < 1e-9);
    assert_eq!(scales[0].0.to_rfc3339(), "2026-03-11T08:42:00+00:00");
    shop.undo_brings_back(&before);
    shop.touch("weighs");
    assert!(!shop.row("weighs").selected);
    assert_eq!(shop.hub().sections[1].rows[2].note, "You do not weigh");
    shop.touch("weighs");
    assert!(shop.row("weighs").selected);
}

#[test]
fn an_own_wood_takes_what_is_known_and_refuses_what_cannot_be() {
    let mut shop = Shop::on("woods");
    shop.enter(
        "add",
        &[("radial", "9"), ("tangential", "5"), ("density", "5600")],
    );
    assert!(shop.field("name").error.contains("needs a name"));
    assert!(shop.field("tangential").error.contains("Swap them"));
    assert!(shop.field("density").error.contains("1300"));
    shop.fill(&[
        ("name", "Churchyard lime"),
        ("radial", "5.5 %"),
        ("tangential", "9,1"),
        ("density", "0.42"),
        ("moulds", "true"),
    ]);
    shop.save();
    assert!(shop.is_closed());
    let wood = shop.hands.app.shop().woods[0].clone();
    assert_eq!(wood.density_kg_m3, Some(420.0));
    assert_eq!(wood.radial_pct, Some(5.5));
    assert_eq!(wood.green_mc_pct, None);
    assert!(wood.moulds_easily);
    assert_eq!(
        plain(&shop.rows()[0].note),
        "radial 5.5 %, tangential 9.1 %, 420 kg/m³, moulds easily"
    );
    assert!(
        shop.hands
            .app
            .known_wood("churchyard lime")
            .unwrap()
            .moulds_easily()
    );
    shop.enter("add", &[("name", "churchyard LIME")]);
    assert!(shop.field("name").error.contains("already"));
    shop.act(ShopAction::Close);
    // A name alone makes a wood.
    shop.enter("add", &[("name", "Hedge thorn")]);
    assert_eq!(shop.rows()[1].note, "No figures yet");
    shop.hands.no_word_is_absent();
}

#[test]
fn in_inches_an_untouched_figure_stays_what_it_is() {
    let mut shop = Shop::on("walls");
    shop.enter("rough_tolerance_mm", &[("value", "1.7")]);
    shop.go("units");
    shop.touch("length-unit-inch-fraction");
    shop.go("walls");
    shop.enter("rough_tolerance_mm", &[]);
    assert!(shop.is_closed());
    assert!((shop.hands.app.shop().settings.rough_tolerance_mm - 1.7).abs() < 1e-12);
    shop.hands.act(Action::Undo);
    assert!((shop.hands.app.shop().settings.rough_tolerance_mm - 1.5).abs() < 1e-12);
}
