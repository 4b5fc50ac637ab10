//! The wall pages: one tap records and moves on, callipers type straight in, nothing moves under the finger.

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::device::LengthChoice;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Stage;
use i_slint_backend_testing::ElementQuery;
use slint::platform::Key;

use crate::bench::{Bench, START, moment};

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn length(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

/// A vessel in Hollow, 150 across and 200 high, with its wall page open.
fn opened(settings: &str) -> Bench {
    let mut store = MemoryStore::default();
    let start = moment(START);
    let facts = vec![
        PieceFact::Created,
        PieceFact::Detail {
            field: DetailField::Mark,
            value: Some(DetailValue::Text("K07".into())),
        },
        length(DetailField::Diameter, 150.0),
        length(DetailField::Height, 200.0),
        PieceFact::StageMoved(Stage::Hollow),
    ];
    store.append_piece(&id(), start, start, facts).unwrap();
    store.save_device_settings(settings).unwrap();
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::Open(Page::Wall(id())));
    bench
}

fn walls(bench: &Bench, station: StationRef) -> Vec<f64> {
    bench.screens.read(|app: &App| {
        let piece = app.piece(&id()).unwrap();
        piece
            .readings
            .iter()
            .filter(|r| r.reading.station == station)
            .filter_map(|r| r.reading.wall_mm.as_ref().map(|m| m.value))
            .collect()
    })
}

/// Takes the pictures, and lets the page find its size again.
fn pictures(bench: &Bench, name: &str) {
    bench.pictures_of(name);
    i_slint_backend_testing::mock_elapsed_time(std::time::Duration::from_millis(50));
    slint::platform::update_timers_and_animations();
}

/// Where every touchable thing that has this label lies.
fn place(bench: &Bench, label: &str) -> (f32, f32, f32, f32) {
    let found = bench.find(label);
    let e = found.first().unwrap_or_else(|| panic!("no {label}"));
    let (p, s) = (e.absolute_position(), e.size());
    (p.x.round(), p.y.round(), s.width.round(), s.height.round())
}

#[test]
fn one_tap_records_and_moves_on_and_no_key_moves() {
    let bench = opened("{}");
    bench.touch("Section in work: Station 1");
    bench.touch("Station 2: shoulder, 38\u{a0}mm down");
    bench.touch("Done");
    let keys = ["8.5", "12", "Undo", "Heavy", "Skip", "Can't reach", "Other"];
    let before: Vec<_> = keys.iter().map(|k| place(&bench, k)).collect();
    bench.press("11.5");
    assert_eq!(walls(&bench, StationRef::Wall(1)), [11.5]);
    assert!(bench.sees("Station 2 of 7") && bench.sees("Station 1: 11.5, even"));
    bench.press("12");
    assert!(bench.sees("Station 2: 12.0, heavy by 2"));
    bench.press("Undo");
    assert!(walls(&bench, StationRef::Wall(2)).is_empty());
    assert!(bench.sees("Station 2 of 7"));
    bench.press("Heavy");
    bench.press("Can't reach");
    let after: Vec<_> = keys.iter().map(|k| place(&bench, k)).collect();
    assert_eq!(before, after, "keys never move under the finger");
    for (key, (_, _, width, height)) in keys.iter().zip(&after) {
        assert!(
            *height >= 64.0 && *width >= 56.0,
            "{key}: {width} x {height}"
        );
    }
}

#[test]
fn callipers_type_straight_in_also_after_a_key_on_the_screen_was_touched() {
    let bench = opened("{}");
    bench.touch("Section in work: Station 1");
    bench.touch("Station 2: shoulder, 38\u{a0}mm down");
    bench.touch("Station 3: upper middle, 66\u{a0}mm down");
    bench.touch("Done");
    bench.keys("10.83");
    bench.enter();
    assert_eq!(walls(&bench, StationRef::Wall(1)), [10.83]);
    bench.press("10");
    assert_eq!(walls(&bench, StationRef::Wall(2)), [10.0]);
    bench.keys("10,83");
    bench.tab();
    assert_eq!(walls(&bench, StationRef::Wall(3)), [10.83]);
    bench.press("Other");
    bench.press("1");
    bench.keys("10.83 mm");
    bench.enter();
    assert_eq!(walls(&bench, StationRef::Wall(1)), [10.83, 10.83]);
    bench.press("Skip");
    bench.press("Undo");
    bench.press("Keys");
    bench.press("Thin");
    bench.keys("9.5");
    bench.enter();
    let read: usize = (1..=3)
        .map(|n| walls(&bench, StationRef::Wall(n)).len())
        .sum();
    assert_eq!(read, 3 + 1 - 1 + 1, "one was undone, one more read");
}

#[test]
fn callipers_type_straight_in_after_a_sheet_and_after_a_question() {
    let bench = opened("{}");
    bench.press("Callipers");
    bench.press("Wire gauge");
    bench.keys("118");
    bench.enter();
    assert!(bench.sees("11.8 or 118?"));
    bench.press("11.8\u{a0}mm");
    assert_eq!(walls(&bench, StationRef::Wall(1)), [11.8]);
    bench.keys("15");
    bench.enter();
    assert!(bench.sees("Thicker than before?"));
    bench.press("Again");
    bench.keys("11.5");
    bench.enter();
    assert_eq!(walls(&bench, StationRef::Wall(1)), [11.8, 11.5]);
    bench.keys("15");
    bench.enter();
    bench.press("Keep");
    assert_eq!(walls(&bench, StationRef::Wall(1)), [11.8, 11.5, 15.0]);
}

#[test]
fn the_keyboard_walks_over_the_keys_while_nothing_is_typed() {
    let bench = opened("{}");
    bench.key(Key::DownArrow.into());
    assert!(bench.sees("Station 2 of 7"));
    bench.key(Key::UpArrow.into());
    assert!(bench.sees("Station 1 of 7"));
    // Tab reaches keys; Enter touches what has the focus, and records nothing by itself.
    bench.tab();
    bench.keys("10.5");
    bench.enter();
    assert_eq!(walls(&bench, StationRef::Wall(1)), [10.5]);
}

#[test]
fn a_touch_on_the_drawing_goes_to_the_nearest_station() {
    let bench = opened("{}");
    bench.press("Station 5");
    assert!(bench.sees("Station 5 of 7"));
    bench.press("Floor");
    assert!(bench.sees("The floor is 200\u{a0}mm less the rod."));
    bench.press("188");
    assert_eq!(walls(&bench, StationRef::Floor), [12.0]);
    bench.press("Depth of rod");
    assert!(bench.sees("Floor itself"));
    bench.keys("12.5");
    bench.enter();
    assert_eq!(walls(&bench, StationRef::Floor), [12.0, 12.5]);
}

#[test]
fn inch_fractions_have_keys_for_whole_over_and_under() {
    let bench = opened(r#"{"length":"inch-fraction"}"#);
    assert!(
        bench
            .screens
            .read(|a| a.device().length == LengthChoice::InchFraction)
    );
    bench.press("Other");
    for key in ["3", "/8"] {
        bench.press(key);
    }
    bench.picture("wall-fractions");
    let station = StationRef::Wall(1);
    assert!(walls(&bench, station).is_empty());
    bench.press("Next");
    bench.picture("wall-fractions-2");
}

#[test]
fn a_whole_round_ends_with_the_result_and_the_result_leads_back() {
    let bench = opened("{}");
    bench.touch("Section in work: Station 1");
    bench.touch("Whole round");
    for wall in ["10", "8.5", "12", "10.5", "11", "10", "9.5"] {
        bench.press(wall);
    }
    pictures(&bench, "wall-floor");
    bench.press("188");
    assert!(bench.sees("Take off"));
    assert!(bench.reads("half of it, about 1"));
    pictures(&bench, "wall-summary");
    bench.touch("Station 3, half of it, about 1\u{a0}mm, then measure");
    assert!(bench.sees("Station 3 of 7"));
    bench.press("10.5");
    bench.press("Finish");
    assert!(bench.sees("Even. On to Stabilise"));
    pictures(&bench, "wall-even");
}

#[test]
fn a_wall_too_thin_to_finish_offers_the_best_even_wall() {
    let bench = opened("{}");
    for (station, wall) in [("Station 1", "10"), ("Station 2", "7"), ("Station 3", "13")] {
        bench.press(station);
        bench.keys(wall);
        bench.enter();
    }
    bench.press("Station 4");
    bench.touch("Can't reach");
    pictures(&bench, "wall-measure");
    bench.press("Finish");
    assert!(bench.sees("Station 2 will not finish at 5\u{a0}mm"));
    pictures(&bench, "wall-thin");
    bench.touch("Make 7\u{a0}mm the wall wanted");
    assert!(!bench.sees("Station 2 will not finish at 5\u{a0}mm"));
    assert!(bench.reads("Wall wanted 7"));
}

#[test]
fn diameters_come_from_the_shape_until_they_are_measured() {
    let bench = opened("{}");
    bench.press("Finish");
    bench.resize(390.0, 1600.0, 1.0);
    bench.touch("Outline and stations");
    bench.resize(390.0, 844.0, 1.0);
    bench.touch("Pear");
    pictures(&bench, "wall-outline");
    bench.touch("Station 3");
    bench.keys("141");
    pictures(&bench, "wall-diameter");
    bench.enter();
    assert!(bench.reads("measured"));
    bench.touch("Station 3");
    bench.touch("Back to the shape");
    assert!(!bench.labels().iter().any(|l| l.ends_with("measured")));
}

#[test]
fn questions_sheets_and_the_keypad_look_right() {
    let bench = opened("{}");
    bench.press("10");
    bench.keys("14");
    bench.enter();
    pictures(&bench, "wall-ask");
    bench.press("Again");
    bench.touch("Section in work: Station 1");
    pictures(&bench, "wall-sheet");
    bench.touch("Done");
    bench.press("Other");
    bench.press("1");
    bench.press("1");
    pictures(&bench, "wall-keypad");
    three_stations_stay_choosable(&bench);
}

fn three_stations_stay_choosable(bench: &Bench) {
    bench.press("Keys");
    bench.touch("Section in work: Station 1");
    bench.touch("Station 2: shoulder, 38\u{a0}mm down");
    bench.touch("Station 3: upper middle, 66\u{a0}mm down");
    bench.touch("Done");
    assert!(bench.sees("Stations 1, 2, 3"));
}

#[test]
fn every_target_of_the_wall_page_is_large_enough() {
    use i_slint_backend_testing::AccessibleRole;
    let bench = opened("{}");
    let small: Vec<String> = ElementQuery::from_root(bench.screens.window())
        .find_all()
        .into_iter()
        .filter(|e| e.accessible_role() == Some(AccessibleRole::Button))
        .filter(|e| {
            let s = e.size();
            s.height > 0.0 && (s.width < 48.0 || s.height < 56.0)
        })
        .filter_map(|e| e.accessible_label())
        .map(|l| l.to_string())
        // The whole drawing is one target: the nearest station wins.
        .filter(|l| !l.starts_with("Station") && l != "Floor")
        .collect();
    assert!(small.is_empty(), "{small:?}");
}
