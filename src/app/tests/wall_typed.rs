//! Promises of a wall that is typed: what is in doubt is asked about, and nothing is put in that was not said.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_wall;

use evenwall_app::wall::WallAction;
use evenwall_piece::fact::StationRef;
use support_wall::Wall;

#[test]
fn fraction_keys_read_three_eighths_and_one_and_three_eighths() {
    let mut w = Wall::with(&[], r#"{"length":"inch-fraction"}"#);
    w.wall(WallAction::Other(true));
    for key in ["3", "/8"] {
        w.wall(WallAction::Key(key.into()));
    }
    assert_eq!(w.view().number, "3/8");
    w.wall(WallAction::Key("next".into()));
    assert!((w.read("1")[0] - 9.525).abs() < 1e-9);
    for key in ["1", " ", "3", "/8"] {
        w.wall(WallAction::Key(key.into()));
    }
    assert_eq!(w.view().number, "1 3/8");
}

#[test]
fn callipers_that_type_like_a_keyboard_record_and_move_on() {
    let mut w = Wall::new();
    w.wall(WallAction::ToggleSection(StationRef::Wall(2)));
    w.wall(WallAction::ToggleSection(StationRef::Wall(3)));
    w.types("10.83\n");
    w.types("10,83\t");
    w.types("10.83 mm\r");
    for n in ["1", "2", "3"] {
        assert_eq!(w.read(n), [10.83], "{n}");
    }
    assert_eq!(w.view().station, "Station 1 of 7");
    assert_eq!(
        w.piece().readings[2]
            .reading
            .wall_mm
            .as_ref()
            .unwrap()
            .typed,
        "10.83 mm"
    );
}

#[test]
fn a_stray_touch_of_the_keypad_never_becomes_a_digit_of_a_burst() {
    let mut w = Wall::new();
    w.wall(WallAction::Other(true));
    w.wall(WallAction::Key("1".into()));
    assert_eq!(w.view().number, "1");
    w.types("10.83\n");
    assert_eq!(w.read("1"), [10.83]);
}

#[test]
fn enter_tab_and_letters_belong_to_the_keyboard_until_something_is_typed() {
    for key in [
        "\n", "\t", "\u{8}", "m", " ", "\u{f700}", "\u{1b}", "12", "",
    ] {
        assert_eq!(evenwall_app::wall::typed(key, false), None, "{key:?}");
    }
    for key in ["\u{f700}", "\u{1b}", "\u{7f}"] {
        assert_eq!(evenwall_app::wall::typed(key, true), None, "{key:?}");
    }
    assert!(evenwall_app::wall::typed("m", true).is_some());
    assert!(evenwall_app::wall::typed("7", false).is_some());
}

#[test]
fn a_lost_point_is_asked_about_and_never_put_in() {
    let mut w = Wall::new();
    w.types("118\n");
    let ask = w.view().ask.unwrap();
    assert_eq!(ask.title, "11.8 or 118?");
    assert_eq!(ask.answers[0].text, "11.8\u{a0}mm");
    assert!(w.piece().readings.is_empty());
    w.answer("0");
    assert_eq!(w.read("1"), [11.8]);
    assert!(w.view().ask.is_none());
    w.types("118\n");
    w.answer("again");
    assert_eq!(w.read("1"), [11.8]);
}

#[test]
fn thicker_than_before_is_asked_and_kept_only_when_said() {
    let mut w = Wall::new();
    w.tap("10");
    w.types("11.4\n");
    assert_eq!(w.read("1"), [10.0, 11.4], "within the tolerance");
    w.types("14\n");
    assert_eq!(w.view().ask.unwrap().title, "Thicker than before?");
    assert_eq!(w.read("1").len(), 2);
    w.answer("again");
    assert_eq!(w.read("1").len(), 2);
    w.types("14\n");
    w.answer("keep");
    assert_eq!(w.read("1"), [10.0, 11.4, 14.0]);
}

#[test]
fn over_three_times_the_wall_wanted_is_asked_once_while_it_comes_down() {
    let mut w = Wall::new();
    w.types("34\n");
    assert!(w.view().ask.unwrap().title.starts_with("34.0"));
    w.answer("keep");
    w.types("32\n");
    assert_eq!(w.read("1"), [34.0, 32.0]);
}

#[test]
fn measuring_again_answers_a_question_with_again() {
    let mut w = Wall::new();
    w.tap("10");
    w.types("14\n");
    w.types("10.5\n");
    assert_eq!(w.read("1"), [10.0, 10.5]);
    assert!(w.view().ask.is_none());
}

#[test]
fn while_a_number_is_typed_the_verdict_is_on_that_number() {
    let mut w = Wall::new();
    w.tap("10");
    w.types("13");
    let v = w.view();
    assert_eq!(
        (v.number.as_str(), v.verdict.as_str()),
        ("13", "heavy by 3")
    );
    w.types("..");
    assert!(w.view().verdict.is_empty());
}

#[test]
fn nonsense_gets_a_sentence_and_records_nothing() {
    let mut w = Wall::new();
    for bad in ["1-2\n", "1 banana\n", "0\n", "9999\n", "1..2\n", ".\n"] {
        w.types(bad);
        let ask = w.view().ask.unwrap_or_else(|| panic!("{bad:?} was taken"));
        assert!(ask.text.len() > 20, "{bad:?}: {}", ask.text);
        w.answer("again");
    }
    assert!(w.piece().readings.is_empty());
    assert!(!w.view().typing);
    w.wall(WallAction::Key("next".into()));
    assert!(w.view().ask.is_none(), "nothing typed is nothing to say");
}
