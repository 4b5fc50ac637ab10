//! Properties of reading and showing numbers, over generated values and texts.

use proptest::prelude::*;

use super::*;
use crate::words::Language;

fn any_units() -> impl Strategy<Value = Units> {
    (
        prop::sample::select(LengthUnit::ALL),
        prop::sample::select(MassUnit::ALL),
        prop::sample::select(TempUnit::ALL),
    )
        .prop_map(|(length, mass, temperature)| Units {
            length,
            mass,
            temperature,
        })
}

fn any_quantity() -> impl Strategy<Value = Quantity> {
    prop::sample::select(Quantity::ALL)
}

fn numbers(units: Units) -> Numbers {
    Numbers::new(units, &Words::new(Language::EnGb))
}

proptest! {
    #[test]
    fn what_is_shown_reads_back_within_its_step(units in any_units(), quantity in any_quantity(), share in 0.0..1.0f64) {
        let numbers = numbers(units);
        let (range, step) = (quantity.range(), numbers.step(quantity));
        let value = range.usual_min + step + share * (range.usual_max - range.usual_min - 2.0 * step);
        let value = if quantity.dimension() == Dimension::Count { value.round() } else { value };
        let shown = numbers.quantity(quantity, value);
        for text in [shown.text(), shown.text().replace('\u{a0}', " "), shown.text().replace('.', ",")] {
            // With a comma, three decimals of an inch could be thousands: then the turner is asked, rightly.
            let read = numbers.parse(quantity, &text);
            let back = match &read {
                Ok(Parsed::Value(entry)) => entry.value,
                Ok(Parsed::Ask { readings, .. }) if text.contains(',') => readings[0].value,
                other => panic!("{quantity:?} {value} shown as {text}: {other:?}"),
            };
            prop_assert!((back - value).abs() <= step * 0.5 + 1e-9, "{value} shown as {text}, read as {back}");
        }
    }

    #[test]
    fn no_text_can_make_reading_panic_and_no_illegal_value_comes_out(
        units in any_units(), quantity in any_quantity(), text in ".*",
    ) {
        check_sound(&numbers(units), quantity, &text);
    }

    #[test]
    fn no_near_number_can_make_reading_panic_and_no_illegal_value_comes_out(
        units in any_units(), quantity in any_quantity(),
        text in "[-−+]?[0-9., /⁄½⅜-]{0,12}( ?(mm|cm|in|\"|g|kg|oz|lb|C|°F|%|rpm|x|e)){0,2}[0-9., ]{0,5}(oz|mm)?",
    ) {
        check_sound(&numbers(units), quantity, &text);
    }

    #[test]
    fn keys_in_any_order_never_panic(
        units in any_units(), quantity in any_quantity(), keys in prop::collection::vec(any_key(), 0..60),
    ) {
        let numbers = numbers(units);
        let mut pad = keypad::Keypad::new(quantity, &numbers);
        for key in keys {
            if let keypad::Outcome::Commit(Ok(Parsed::Value(entry))) = pad.press(key, &numbers) {
                prop_assert!(quantity.range().allows(entry.value));
                prop_assert!(pad.is_empty());
            }
        }
    }

    #[test]
    fn any_value_can_be_shown(units in any_units(), quantity in any_quantity(), value in any::<f64>()) {
        let numbers = numbers(units);
        prop_assert!(!numbers.quantity(quantity, value).text().is_empty());
        prop_assert!(!numbers.quantity(quantity, value).number.contains("NaN"));
    }
}

fn any_key() -> impl Strategy<Value = keypad::Key> {
    use keypad::{FractionPart, Key};
    prop_oneof![
        any::<u8>().prop_map(|n| Key::Digit(n % 11)),
        Just(Key::Point),
        Just(Key::Backspace),
        Just(Key::Clear),
        Just(Key::Enter),
        prop::sample::select(&[FractionPart::Whole, FractionPart::Over, FractionPart::Under][..])
            .prop_map(Key::Part),
        any::<u8>().prop_map(Key::Under),
        "[0-9.,/ mgin\"\t]".prop_map(|text| Key::Char(text.chars().next().unwrap_or(' '))),
        any::<char>().prop_map(Key::Char),
    ]
}

fn check_sound(numbers: &Numbers, quantity: Quantity, text: &str) {
    match numbers.parse(quantity, text) {
        Ok(Parsed::Value(entry)) => {
            assert!(quantity.range().allows(entry.value), "{text}: {entry:?}")
        }
        Ok(parsed @ Parsed::Ask { .. }) => {
            let Parsed::Ask { readings, .. } = &parsed else {
                unreachable!()
            };
            assert!(!numbers.question(readings).is_empty());
            let chosen: Vec<Entry> = (0..readings.len())
                .filter_map(|index| parsed.choose(index))
                .collect();
            assert!(
                !chosen.is_empty() && chosen.iter().all(|e| quantity.range().allows(e.value)),
                "{text}: {parsed:?}"
            );
        }
        Err(error) => {
            assert!(!error.message(numbers, quantity).contains('[') || text.contains('['))
        }
    }
}
