//! Shop, touched as a turner would: units, the air by two bulbs, jaws, taking back, the dark theme, and every page seen.

use evenwall_app::action::Action;
use evenwall_app::device::ThemeChoice;
use evenwall_app::route::{Page, Tab};
use evenwall_app::shop::pages::PAGES;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::shop::{Bar, Climate, Jaws, OwnWood, ShopFact};
use evenwall_piece::vocabulary::Room;
use evenwall_ui::Theme;
use slint::ComponentHandle;

use crate::bench::{Bench, START, moment};

fn setting(key: &str, value: &str) -> ShopFact {
    ShopFact::Setting {
        key: key.into(),
        value: value.into(),
    }
}

fn air(room: Room, temp_c: f64, rh_pct: f64) -> ShopFact {
    ShopFact::Climate(Climate {
        room,
        temp_c,
        rh_pct,
    })
}

/// An invented workshop with one piece of 127 mm.
fn workshop() -> MemoryStore {
    let mut store = MemoryStore::default();
    let now = moment(START);
    let day = |n| now - chrono::Duration::days(n);
    let facts = [
        (40, setting("cautions_read", "true")),
        (31, air(Room::Shop, 9.0, 78.0)),
        (12, setting("rough_tolerance_mm", "2")),
        (
            12,
            ShopFact::Jaws(Jaws {
                id: "fifty".into(),
                name: "50 mm jaws".into(),
                smallest_mm: 48.0,
                largest_mm: 64.0,
            }),
        ),
        (
            11,
            ShopFact::Bar(Bar {
                id: "long".into(),
                name: "The long one".into(),
                diameter_mm: 19.0,
            }),
        ),
        (
            9,
            ShopFact::Wood(OwnWood {
                id: "lime".into(),
                name: "Churchyard lime".into(),
                radial_pct: Some(5.5),
                tangential_pct: Some(9.1),
                density_kg_m3: Some(420.0),
                green_mc_pct: None,
                moulds_easily: true,
            }),
        ),
        (8, setting("bag_days", "mon thu sat")),
        (8, setting("weigh_day", "sun")),
        (6, ShopFact::NewScale { step_g: 1.0 }),
        (5, setting("rhythm_air", "2<2 7/7/42")),
        (1, air(Room::House, 21.0, 44.0)),
        (0, air(Room::Shop, 16.0, 65.0)),
    ];
    for (ago, fact) in facts {
        store.append_shop(day(ago), day(ago), vec![fact]).unwrap();
    }
    let detail = |field, value| PieceFact::Detail {
        field,
        value: Some(value),
    };
    let piece = vec![
        PieceFact::Created,
        detail(DetailField::Mark, DetailValue::Text("K07".into())),
        detail(
            DetailField::Diameter,
            DetailValue::Length(Measure::plain(127.0)),
        ),
    ];
    let id = PieceId::new("k07").unwrap();
    store.append_piece(&id, now, now, piece).unwrap();
    store
}

fn undo(bench: &Bench) {
    let label = bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with("Undo: "))
        .expect("something to undo");
    bench.touch(&label);
}

fn in_shop() -> Bench {
    let bench = Bench::on(Box::new(workshop()));
    bench.touch("Shop");
    // A page that is scrolled away is not found by its label: a tall phone shows it whole.
    bench.resize(390.0, 2400.0, 1.0);
    bench
}

#[test]
fn units_changed_in_shop_show_a_pieces_diameter_in_inches() {
    let bench = in_shop();
    bench.touch("Units");
    bench.touch("inches, decimal");
    bench.touch("Back");
    assert!(bench.reads("Shop"));
    let id = PieceId::new("k07").unwrap();
    bench.screens.act(Action::Open(Page::Details(id)));
    let values: Vec<String> = bench
        .find("Outside diameter")
        .iter()
        .filter_map(|e| e.accessible_description())
        .map(|d| d.trim().to_owned())
        .collect();
    assert!(values.iter().any(|v| v == "5 in"), "{values:?}");
}

#[test]
fn the_air_is_recorded_by_wet_and_dry_bulb_and_taken_back() {
    let bench = in_shop();
    bench.touch("Climate");
    bench.touch("New reading");
    bench.touch("Two bulbs");
    bench.write("Dry bulb", "20");
    bench.write("Wet bulb", "15");
    assert!(bench.reads("That is about 59\u{a0}% humidity."));
    bench.touch("Save");
    assert!(!bench.sees("Wet bulb"));
    let read = "Shop: 20\u{a0}°C, 59\u{a0}%";
    assert!(bench.reads(read), "{:#?}", bench.labels());
    let count = |bench: &Bench| bench.screens.read(|app| app.shop().climate.len());
    assert_eq!(count(&bench), 4);
    bench.touch(&format!("Take back: {read}"));
    assert_eq!(count(&bench), 3);
    undo(&bench);
    assert_eq!(count(&bench), 4);
}

#[test]
fn a_wrong_figure_says_so_below_its_field() {
    let bench = in_shop();
    bench.touch("Walls");
    bench.touch("Rough wall");
    bench.write("Rough wall", "plenty");
    bench.touch("Save");
    let told = bench
        .find("Rough wall")
        .iter()
        .filter_map(|e| e.accessible_description())
        .any(|d| d.contains("cannot be read"));
    assert!(told, "{:#?}", bench.labels());
    bench.write("Rough wall", "1.8");
    bench.enter();
    bench.touch("Save");
    assert!(
        bench.reads("Rough wall: 1.8\u{a0}mm"),
        "{:#?}",
        bench.labels()
    );
}

#[test]
fn jaws_are_added_by_their_circles() {
    let bench = in_shop();
    bench.touch("Jaws");
    bench.touch("New jaws");
    bench.write("Name", "Big ones");
    bench.write("Smallest circle", "90");
    bench.write("Largest circle", "112");
    bench.touch("Save");
    assert!(bench.sees("Big ones"));
    bench.touch("Big ones");
    bench.touch("Take these jaws off the list");
    assert!(!bench.sees("Big ones"));
    undo(&bench);
    assert!(bench.sees("Big ones"));
}

#[test]
fn a_setting_is_taken_back_in_the_history() {
    let bench = in_shop();
    bench.touch("What was changed");
    bench.touch("Take back: Rough wall: 2\u{a0}mm");
    let tolerance = |b: &Bench| b.screens.read(|app| app.shop().settings.rough_tolerance_mm);
    assert!((tolerance(&bench) - 1.5).abs() < 1e-9);
    undo(&bench);
    assert!((tolerance(&bench) - 2.0).abs() < 1e-9);
}

#[test]
fn the_dark_theme_and_large_text_hold_at_once() {
    let bench = in_shop();
    bench.touch("Look");
    bench.touch("Dark");
    bench.touch("Very large text");
    bench.touch("Left-handed");
    let theme = bench.screens.window().global::<Theme>();
    assert!(theme.get_dark() && theme.get_left_handed());
    assert!((theme.get_text_scale() - 1.6).abs() < 1e-6);
    bench.touch("Light");
    assert!(!theme.get_dark());
    let device = bench.screens.read(|app| app.device().clone());
    assert_eq!(device.theme, ThemeChoice::Light);
}

#[test]
fn a_row_of_a_list_keeps_its_place_when_another_is_ticked() {
    let bench = in_shop();
    bench.touch("Bag days and weigh day");
    bench.touch("Tuesday");
    let days = bench.screens.read(|app| app.shop().settings.bag_days.len());
    assert_eq!(days, 4);
    bench.touch("Tuesday");
    bench.touch("On Wednesday");
    assert!(bench.reads("Weigh day: Wednesday"));
}

#[test]
fn every_page_of_shop_is_seen() {
    let bench = in_shop();
    bench.pictures_of("shop-hub");
    for page in PAGES {
        bench.screens.act(Action::GoTab(Tab::Shop));
        bench.screens.act(Action::Open(Page::ShopPage(page)));
        let form = match page {
            "climate" => "New reading",
            "woods" => "Churchyard lime",
            "rhythm-paper" => "Every 7 days until day 28",
            // Whole, as they are longer than a phone.
            _ => {
                bench.resize(390.0, 1700.0, 1.0);
                for (look, theme) in [("light", ThemeChoice::Light), ("dark", ThemeChoice::Dark)] {
                    bench.screens.look(theme, 1.0);
                    bench.picture(&format!("shop-{page}-whole-{look}"));
                }
                continue;
            }
        };
        bench.pictures_of(&format!("shop-{page}"));
        bench.resize(390.0, 2400.0, 1.0);
        bench.touch(form);
        bench.pictures_of(&format!("shop-{page}-form"));
        bench.touch("Close");
    }
    assert_eq!(bench.screens.read(|app| app.words().problems()), []);
}
