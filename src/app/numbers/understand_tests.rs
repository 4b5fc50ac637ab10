//! Promises of reading typed numbers.

use super::*;
use crate::words::Language;

fn metric() -> Numbers {
    Numbers::new(Units::default(), &Words::new(Language::EnGb))
}

fn inches() -> Numbers {
    let units = Units {
        length: LengthUnit::InchFraction,
        mass: MassUnit::OunceAndPound,
        temperature: TempUnit::Fahrenheit,
    };
    Numbers::new(units, &Words::new(Language::EnUs))
}

#[track_caller]
fn reads(numbers: &Numbers, quantity: Quantity, text: &str, value: f64) {
    match numbers.parse(quantity, text) {
        Ok(Parsed::Value(entry)) => assert!(
            (entry.value - value).abs() < 1e-9,
            "{text}: {}",
            entry.value
        ),
        other => panic!("{text}: {other:?}"),
    }
}

#[track_caller]
fn asks(numbers: &Numbers, quantity: Quantity, text: &str, question: &str) {
    match numbers.parse(quantity, text) {
        Ok(Parsed::Ask {
            readings, typed, ..
        }) => {
            assert_eq!(numbers.question(&readings).replace('\u{a0}', " "), question);
            assert_eq!(typed, text);
            assert!(readings.iter().any(|r| r.allowed));
        }
        other => panic!("{text}: {other:?}"),
    }
}

#[test]
fn walls_are_read_however_they_are_typed() {
    use Quantity::WallReading as Wall;
    for text in [
        "9.5",
        "9,5",
        " 9.5 ",
        "9.5mm",
        "9.5\u{a0}mm",
        "0.95 cm",
        "9½",
        "9 1/2",
        "\t9.50\r\n",
        "+9.5",
    ] {
        reads(&metric(), Wall, text, 9.5);
    }
    for text in [
        "3/8",
        "3/8\"",
        "⅜",
        "⅜ in",
        "3/8″",
        "0.375 in",
        "0,375 inch",
        ".375\"",
    ] {
        reads(&metric(), Wall, text, 9.525);
        reads(&inches(), Wall, text, 9.525);
    }
    for text in ["1 3/8", "1-3/8", "1⅜", "1\u{202f}3/8 in"] {
        reads(&inches(), Wall, text, 34.925);
        reads(&metric(), Wall, text, 34.925);
    }
    reads(&metric(), Wall, "10,83", 10.83);
    reads(&metric(), Wall, "10.83 mm", 10.83);
    reads(&inches(), Wall, "10.83 mm", 10.83);
    reads(&metric(), Wall, "0.5 in", 12.7);
}

#[test]
fn weights_are_read_however_they_are_typed() {
    use Quantity::Weight;
    for text in ["828", "828 g", "828g", "0.828 kg", "0,828 kg", "828.0"] {
        reads(&metric(), Weight, text, 828.0);
    }
    reads(&metric(), Weight, "0.8 kg", 800.0);
    reads(&metric(), Weight, "1 250 g", 1250.0);
    reads(&metric(), Weight, "1\u{202f}250", 1250.0);
    let pound_three = 453.592_37 * 19.0 / 16.0;
    for text in [
        "1 lb 3 oz",
        "1lb3oz",
        "1 lb 3",
        "1 lb. 3 oz.",
        "19 oz",
        "1 pound 3 ounces",
        "1.1875 lb",
    ] {
        reads(&metric(), Weight, text, pound_three);
        reads(&inches(), Weight, text, pound_three);
    }
    reads(&inches(), Weight, "19", pound_three);
    reads(&inches(), Weight, "1 lb 3 1/2 oz", 453.592_37 * 19.5 / 16.0);
}

#[test]
fn temperatures_and_shares_are_read_however_they_are_typed() {
    reads(&metric(), Quantity::Temperature, "18", 18.0);
    reads(&metric(), Quantity::Temperature, "18 C", 18.0);
    reads(&metric(), Quantity::Temperature, "18 °C", 18.0);
    reads(&metric(), Quantity::Temperature, "64 F", 160.0 / 9.0);
    reads(&inches(), Quantity::Temperature, "64", 160.0 / 9.0);
    reads(&metric(), Quantity::Temperature, "-5", -5.0);
    reads(&metric(), Quantity::Temperature, "−5 °C", -5.0);
    reads(&metric(), Quantity::Temperature, "-0", 0.0);
    reads(&metric(), Quantity::Humidity, "65 %", 65.0);
    reads(&metric(), Quantity::Humidity, "65%RH", 65.0);
    reads(&metric(), Quantity::Days, "3", 3.0);
    reads(&metric(), Quantity::Days, "3 days", 3.0);
    reads(&metric(), Quantity::Pieces, "1,000", 1000.0);
}

#[test]
fn a_number_without_its_point_is_asked_about_and_never_changed() {
    use Quantity::WallReading as Wall;
    asks(&metric(), Wall, "118", "11.8 or 118?");
    asks(&metric(), Wall, "118 mm", "11.8 or 118?");
    asks(&metric(), Wall, "1083", "10.83 or 1083?");
    asks(&metric(), Quantity::WallFinish, "60", "6 or 60?");
    reads(&metric(), Wall, "118.0", 118.0);
    reads(&metric(), Wall, "50", 50.0);
    reads(&metric(), Quantity::OutsideDiameter, "450", 450.0);
}

#[test]
fn a_comma_before_three_digits_is_asked_about_once() {
    asks(&metric(), Quantity::Weight, "1,250", "1.25 or 1250?");
    asks(&metric(), Quantity::Weight, "1,250 g", "1.25 or 1250?");
    asks(&metric(), Quantity::Weight, "1.250", "1.25 or 1250?");
    asks(
        &metric(),
        Quantity::WallReading,
        "1,250 mm",
        "1.25 or 1250?",
    );
    asks(&metric(), Quantity::WallReading, "1,625", "1.625 or 1625?");
    let parsed = metric().parse(Quantity::Weight, "1,250").unwrap();
    assert_eq!(
        parsed.choose(0),
        None,
        "1.25 g is not a legal weight and cannot be chosen"
    );
    let chosen = parsed.choose(1).unwrap();
    assert_eq!((chosen.value, chosen.typed.as_str()), (1250.0, "1,250"));
    reads(&metric(), Quantity::WallReading, "9.125", 9.125);
}

#[test]
fn a_number_that_fits_another_unit_is_asked_about() {
    asks(
        &metric(),
        Quantity::WallReading,
        "0.427",
        "0.427 mm or 0.427 in?",
    );
    asks(
        &inches(),
        Quantity::WallReading,
        "10.83",
        "10.83 in or 10.83 mm?",
    );
    asks(&metric(), Quantity::Weight, "0.8", "0.8 g or 0.8 kg?");
    asks(&inches(), Quantity::Weight, "828", "828 oz or 828 g?");
    asks(&metric(), Quantity::Temperature, "64", "64 °C or 64 °F?");
    asks(
        &metric(),
        Quantity::Mouth,
        "10 1/2",
        "10 1/2 mm or 10 1/2 in?",
    );
    reads(&metric(), Quantity::Mouth, "30 1/2", 30.5);
    reads(&metric(), Quantity::Mouth, "2 1/2", 63.5);
}

#[test]
fn nonsense_is_refused_with_its_reason() {
    use InputError as E;
    let wall = |text: &str| metric().parse(Quantity::WallReading, text).unwrap_err();
    assert_eq!(wall(""), E::Empty);
    assert_eq!(wall(" \u{a0}\t\n"), E::Empty);
    assert_eq!(wall(&" ".repeat(10_000)), E::Empty);
    assert_eq!(wall(&"9".repeat(10_000)), E::TooLong { count: 10_000 });
    for text in [
        "thick", ".", "1..5", "1e3", "NaN", "inf", "0x10", "🙂", "mm 9", "10x12", "1.5.5",
    ] {
        assert!(
            matches!(wall(text), E::NotANumber { .. }),
            "{text}: {:?}",
            wall(text)
        );
    }
    for text in ["9.5 10.2", "10-12", "9.5 mm 10 mm", "12 7", "9.5\t10"] {
        assert!(
            matches!(wall(text), E::Several { .. }),
            "{text}: {:?}",
            wall(text)
        );
    }
    for text in ["-9.5", "−3/8", "- 5 mm"] {
        assert!(
            matches!(wall(text), E::Negative { .. }),
            "{text}: {:?}",
            wall(text)
        );
    }
    for text in ["3/0", "1 9/8", "1.5 3/8", "3/8/2", "3/100"] {
        assert!(
            matches!(wall(text), E::BadFraction { .. }),
            "{text}: {:?}",
            wall(text)
        );
    }
    for text in ["9.5 ft", "9.5 g", "9.5 bananas", "9'", "9 °C"] {
        assert!(
            matches!(wall(text), E::WrongUnit { .. }),
            "{text}: {:?}",
            wall(text)
        );
    }
    for text in [
        "0",
        "0.001",
        "99999",
        "1000.5 mm",
        "999999999999999999999",
        "60 in",
    ] {
        assert!(
            matches!(wall(text), E::OutOfRange { .. }),
            "{text}: {:?}",
            wall(text)
        );
    }
    let days = metric().parse(Quantity::Days, "2.5").unwrap_err();
    assert!(matches!(days, E::NotWhole { .. }), "{days:?}");
}

#[test]
fn an_unusual_value_that_can_be_meant_is_taken_and_marked() {
    let parsed = metric().parse(Quantity::WallReading, "1").unwrap();
    assert_eq!(
        parsed.value(),
        Some(&Entry {
            value: 1.0,
            typed: "1".to_owned(),
            usual: false
        })
    );
    assert_eq!(
        metric()
            .parse(Quantity::Weight, "8280")
            .unwrap()
            .value()
            .map(|e| e.usual),
        Some(false)
    );
}

#[test]
fn every_refusal_has_a_sentence_with_what_is_allowed_or_an_example() {
    for numbers in [metric(), inches()] {
        for quantity in Quantity::ALL {
            let found = || "x".to_owned();
            for error in [
                InputError::Empty,
                InputError::TooLong { count: 10_000 },
                InputError::NotANumber { found: found() },
                InputError::Several { found: found() },
                InputError::Negative { found: found() },
                InputError::OutOfRange { found: found() },
                InputError::WrongUnit { unit: found() },
                InputError::BadFraction { found: found() },
                InputError::NotWhole { found: found() },
            ] {
                let message = error.message(&numbers, *quantity);
                assert!(
                    message.ends_with('.') && message.contains(|c: char| c.is_ascii_digit()),
                    "{message}"
                );
            }
            for why in [AskWhy::Separator, AskWhy::MissingPoint, AskWhy::Unit] {
                assert!(numbers.reason(*quantity, "118", why).contains("118"));
            }
        }
        assert_eq!(numbers.words().problems(), []);
    }
    let error = metric()
        .parse(Quantity::WallReading, "1000.5 mm")
        .unwrap_err();
    assert_eq!(
        error
            .message(&metric(), Quantity::WallReading)
            .replace('\u{a0}', " "),
        "1000.5 mm was read. For the wall, 0.5 mm to 150.0 mm is allowed. Check the figure and its unit, then type it again."
    );
}

#[test]
fn the_limits_named_in_a_refusal_are_themselves_accepted() {
    use super::rounding::Rounded;
    for numbers in [metric(), inches()] {
        for quantity in Quantity::ALL {
            let range = quantity.range();
            for (limit, rounded) in [(range.min, Rounded::Up), (range.max, Rounded::Down)] {
                let text = numbers.quantity_rounded(*quantity, limit, rounded).text();
                let read = numbers.parse(*quantity, &text);
                assert!(read.is_ok(), "{quantity:?} {text}: {read:?}");
            }
        }
    }
}
