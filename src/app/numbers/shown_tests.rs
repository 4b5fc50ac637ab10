//! Promises of showing numbers.

use super::*;
use crate::words::Language;

fn in_units(length: LengthUnit, mass: MassUnit, temperature: TempUnit) -> Numbers {
    Numbers::new(
        Units {
            length,
            mass,
            temperature,
        },
        &Words::new(Language::EnGb),
    )
}

fn metric() -> Numbers {
    in_units(LengthUnit::Millimetre, MassUnit::Gram, TempUnit::Celsius)
}

fn fractions() -> Numbers {
    in_units(
        LengthUnit::InchFraction,
        MassUnit::OunceAndPound,
        TempUnit::Fahrenheit,
    )
}

#[test]
fn walls_are_shown_to_half_a_millimetre_or_a_64th() {
    for (mm, shown) in [
        (9.5, "9.5"),
        (9.7, "9.5"),
        (9.8, "10.0"),
        (10.0, "10.0"),
        (0.1, "0.0"),
        (-0.8, "−1.0"),
    ] {
        assert_eq!(metric().wall(mm).number, shown, "{mm}");
    }
    for (mm, shown) in [
        (9.525, "3/8"),
        (34.925, "1 3/8"),
        (25.4, "1"),
        (0.1, "0"),
        (10.1, "25/64"),
        (-9.525, "−3/8"),
    ] {
        assert_eq!(fractions().wall(mm).number, shown, "{mm}");
    }
    let decimals = in_units(LengthUnit::InchDecimal, MassUnit::Gram, TempUnit::Celsius);
    assert_eq!(decimals.wall(9.525).number, "0.38");
    assert_eq!(metric().wall(10.0).short().number, "10");
    assert_eq!(metric().wall(9.5).short().number, "9.5");
}

#[test]
fn figures_and_unit_are_apart_and_stay_on_one_line_together() {
    let shown = metric().wall(9.5);
    assert_eq!((shown.number.as_str(), shown.unit.as_str()), ("9.5", "mm"));
    assert_eq!(shown.text(), "9.5\u{a0}mm");
    assert_eq!(fractions().wall(34.925).text(), "1\u{a0}3/8\u{a0}in");
}

#[test]
fn diameters_are_shown_to_a_millimetre_or_half_of_one() {
    assert_eq!(metric().diameter(181.6).number, "182");
    assert_eq!(metric().diameter_fine(181.6).number, "181.5");
    assert_eq!(metric().length_fine(6.83).number, "6.8");
    assert_eq!(fractions().diameter(181.6).number, "7 5/32");
}

#[test]
fn weights_are_whole_grams_or_pounds_and_ounces() {
    assert_eq!(metric().mass(828.4).text(), "828\u{a0}g");
    assert_eq!(metric().mass_by_scale(828.44, 0.1).number, "828.4");
    for (g, shown) in [
        (538.64, "1 lb 3 oz"),
        (453.592_37, "1 lb"),
        (453.5, "1 lb"),
        (100.0, "3.5 oz"),
        (0.0, "0 oz"),
        (-100.0, "−3.5 oz"),
        (907.0, "2 lb"),
    ] {
        assert_eq!(
            fractions().mass(g).text().replace('\u{a0}', " "),
            shown,
            "{g}"
        );
    }
}

#[test]
fn temperature_and_moisture_are_whole() {
    assert_eq!(metric().temperature(17.6).text(), "18\u{a0}°C");
    assert_eq!(metric().temperature(-0.2).number, "0");
    assert_eq!(metric().temperature(-3.0).number, "−3");
    assert_eq!(fractions().temperature(17.6).text(), "64\u{a0}°F");
    assert_eq!(metric().percent(12.4).text(), "12\u{a0}%");
    assert_eq!(metric().speed(500.0).text(), "500\u{a0}rpm");
}

#[test]
fn ranges_and_differences_read_as_words_and_signs() {
    let numbers = metric();
    assert_eq!(
        numbers
            .range(&numbers.speed(500.0), &numbers.speed(750.0))
            .number,
        "500 to 750"
    );
    assert_eq!(
        numbers
            .range(&numbers.speed(500.0), &numbers.speed(500.2))
            .number,
        "500"
    );
    let imperial = fractions();
    let range = imperial.range(&imperial.mass(100.0), &imperial.mass(453.6));
    assert_eq!(
        (range.number.as_str(), range.unit.as_str()),
        ("3.5 oz to 1", "lb")
    );
    assert_eq!(numbers.wall(1.5).with_plus().number, "+1.5");
    assert_eq!(numbers.wall(-1.5).with_plus().number, "−1.5");
    assert_eq!(numbers.wall(0.1).with_plus().number, "0.0");
}

#[test]
fn what_is_not_a_number_shows_as_a_dash() {
    for numbers in [metric(), fractions()] {
        for value in [f64::NAN, f64::INFINITY] {
            let dash = numbers.unknown();
            assert_eq!(dash.text(), "–");
            assert_eq!(numbers.wall(value), dash);
            assert_eq!(numbers.mass(value), dash);
            assert_eq!(numbers.temperature(value), dash);
            assert_eq!(numbers.wall(value).with_plus(), dash);
        }
    }
}

#[test]
fn one_entry_step_is_half_a_millimetre_or_a_64th() {
    assert_eq!(metric().wall_step_mm(), 0.5);
    assert_eq!(fractions().wall_step_mm(), 0.396_875);
}
