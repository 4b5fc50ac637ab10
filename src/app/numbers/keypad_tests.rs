//! Promises of the keypad.

use super::keypad::{FractionPart, Key, Keypad, Outcome};
use super::*;
use crate::words::Language;

fn numbers(length: LengthUnit) -> Numbers {
    Numbers::new(
        Units {
            length,
            ..Units::default()
        },
        &Words::new(Language::EnGb),
    )
}

fn burst(pad: &mut Keypad, numbers: &Numbers, text: &str) -> Outcome {
    for c in text.chars() {
        assert_eq!(pad.press(Key::Char(c), numbers), Outcome::Editing);
    }
    pad.press(Key::Enter, numbers)
}

fn value(outcome: &Outcome) -> (f64, String) {
    match outcome {
        Outcome::Commit(Ok(Parsed::Value(entry))) => (entry.value, entry.typed.clone()),
        other => panic!("no value: {other:?}"),
    }
}

#[test]
fn callipers_that_type_record_their_reading_and_leave_the_keypad_empty() {
    let numbers = numbers(LengthUnit::Millimetre);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    for text in ["10.83", "10,83", "10.83 mm"] {
        let outcome = burst(&mut pad, &numbers, text);
        assert_eq!(value(&outcome), (10.83, text.to_owned()));
        assert!(pad.is_empty());
    }
    for c in "10,83".chars() {
        pad.press(Key::Char(c), &numbers);
    }
    assert_eq!(value(&pad.press(Key::Char('\t'), &numbers)).0, 10.83);
}

#[test]
fn a_scale_that_types_records_its_weight_and_its_second_line_end_does_nothing() {
    let numbers = numbers(LengthUnit::Millimetre);
    let mut pad = Keypad::new(Quantity::Weight, &numbers);
    for c in "  828 g".chars() {
        pad.press(Key::Char(c), &numbers);
    }
    assert_eq!(
        value(&pad.press(Key::Char('\r'), &numbers)),
        (828.0, "828 g".to_owned())
    );
    assert_eq!(pad.press(Key::Char('\n'), &numbers), Outcome::Nothing);
}

#[test]
fn a_burst_after_a_stray_touch_on_the_screen_starts_anew() {
    let numbers = numbers(LengthUnit::Millimetre);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    pad.press(Key::Digit(1), &numbers);
    assert_eq!(value(&burst(&mut pad, &numbers, "10.83")).0, 10.83);
    let inches = self::numbers(LengthUnit::InchFraction);
    let mut pad = Keypad::new(Quantity::WallReading, &inches);
    pad.press(Key::Digit(1), &inches);
    assert_eq!(value(&burst(&mut pad, &inches, "10.83 mm")).0, 10.83);
}

#[test]
fn screen_keys_build_a_number_and_backspace_takes_it_back() {
    let numbers = numbers(LengthUnit::Millimetre);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    assert_eq!(pad.press(Key::Enter, &numbers), Outcome::Nothing);
    assert_eq!(pad.press(Key::Backspace, &numbers), Outcome::Nothing);
    for key in [
        Key::Digit(9),
        Key::Point,
        Key::Digit(4),
        Key::Backspace,
        Key::Digit(5),
    ] {
        assert_eq!(pad.press(key, &numbers), Outcome::Editing);
    }
    assert_eq!(pad.text(), "9.5");
    assert_eq!(pad.press(Key::Digit(10), &numbers), Outcome::Nothing);
    assert_eq!(pad.press(Key::Under(8), &numbers), Outcome::Nothing);
    assert_eq!(
        value(&pad.press(Key::Enter, &numbers)),
        (9.5, "9.5".to_owned())
    );
}

#[test]
fn no_point_is_put_in_and_the_question_keeps_the_text_until_the_next_digit() {
    let numbers = numbers(LengthUnit::Millimetre);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    let outcome = burst(&mut pad, &numbers, "118");
    let Outcome::Commit(Ok(parsed @ Parsed::Ask { .. })) = outcome else {
        panic!("{outcome:?}")
    };
    assert_eq!(
        parsed.choose(0).map(|e| (e.value, e.typed)),
        Some((11.8, "118".to_owned()))
    );
    assert_eq!(pad.text(), "118");
    let mut corrected = pad.clone();
    corrected.press(Key::Backspace, &numbers);
    assert_eq!(corrected.text(), "11");
    pad.press(Key::Digit(9), &numbers);
    assert_eq!(pad.text(), "9");
}

#[test]
fn fraction_keys_build_whole_over_and_under() {
    let numbers = numbers(LengthUnit::InchFraction);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    assert!(pad.has_fraction_keys());
    assert_eq!(pad.press(Key::Point, &numbers), Outcome::Nothing);
    for key in [
        Key::Digit(1),
        Key::Part(FractionPart::Over),
        Key::Digit(3),
        Key::Part(FractionPart::Under),
        Key::Digit(8),
    ] {
        assert_eq!(pad.press(key, &numbers), Outcome::Editing, "{key:?}");
    }
    assert_eq!(pad.text(), "1 3/8");
    assert_eq!(
        value(&pad.press(Key::Enter, &numbers)),
        (34.925, "1 3/8".to_owned())
    );
    assert_eq!(pad.part(), FractionPart::Whole);

    for key in [Key::Under(16), Key::Digit(5)] {
        pad.press(key, &numbers);
    }
    assert_eq!(pad.text(), "5/16");
    assert_eq!(value(&pad.press(Key::Enter, &numbers)).0, 25.4 * 5.0 / 16.0);
}

#[test]
fn what_is_over_the_stroke_alone_is_refused_and_waits_for_what_is_under_it() {
    let numbers = numbers(LengthUnit::InchFraction);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    for key in [Key::Part(FractionPart::Over), Key::Digit(2), Key::Digit(5)] {
        pad.press(key, &numbers);
    }
    assert_eq!(pad.text(), "25/");
    // Nobody typed 64ths.
    let refused = pad.press(Key::Enter, &numbers);
    assert!(
        matches!(
            refused,
            Outcome::Commit(Err(InputError::BadFraction { .. }))
        ),
        "{refused:?}"
    );
    assert_eq!(pad.text(), "25/", "what was typed is kept");
    pad.press(Key::Under(64), &numbers);
    assert_eq!(
        value(&pad.press(Key::Enter, &numbers)),
        (25.4 * 25.0 / 64.0, "25/64".to_owned())
    );
}

#[test]
fn backspace_walks_back_through_a_fraction_until_nothing_is_left() {
    let numbers = numbers(LengthUnit::InchFraction);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    for key in [
        Key::Digit(1),
        Key::Part(FractionPart::Over),
        Key::Digit(3),
        Key::Under(8),
    ] {
        pad.press(key, &numbers);
    }
    for text in ["1 /8", "/8", ""] {
        assert_eq!(pad.press(Key::Backspace, &numbers), Outcome::Editing);
        assert_eq!(pad.text(), text);
    }
    assert!(pad.is_empty());
    assert_eq!(pad.press(Key::Under(7), &numbers), Outcome::Nothing);
}

#[test]
fn a_flood_of_characters_is_refused_with_its_length_and_forgotten() {
    let numbers = numbers(LengthUnit::Millimetre);
    let mut pad = Keypad::new(Quantity::WallReading, &numbers);
    let outcome = burst(&mut pad, &numbers, &"9".repeat(10_000));
    assert_eq!(
        outcome,
        Outcome::Commit(Err(InputError::TooLong { count: 10_000 }))
    );
    assert_eq!(pad.text().len(), MOST_CHARACTERS);
    assert_eq!(value(&burst(&mut pad, &numbers, "9.5")).0, 9.5);
}
