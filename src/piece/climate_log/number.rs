//! Number: a cell with a point or a comma and perhaps its unit.

use super::Unit;

/// The number in a cell, with the unit of temperature where the cell names it. `None` where it is no plain number.
pub(super) fn number(cell: &str) -> Option<(f64, Option<Unit>)> {
    let cell = cell.trim().replace('\u{2212}', "-");
    let end = cell
        .find(|c: char| !(c.is_ascii_digit() || "+-.,".contains(c)))
        .unwrap_or(cell.len());
    let (digits, rest) = cell.split_at(end);
    let unit = match rest.trim().to_lowercase().as_str() {
        "" | "%" | "%rh" | "% rh" | "rh" | "\u{b0}" => None,
        "c" | "\u{b0}c" | "\u{2103}" | "degc" | "deg c" => Some(Unit::Celsius),
        "f" | "\u{b0}f" | "\u{2109}" | "degf" | "deg f" => Some(Unit::Fahrenheit),
        _ => return None,
    };
    let commas = digits.matches(',').count();
    if commas > 1 || (commas == 1 && digits.contains('.')) {
        return None;
    }
    let value: f64 = digits.replace(',', ".").parse().ok()?;
    value.is_finite().then_some((value, unit))
}

/// A temperature in degrees Celsius.
pub(super) fn celsius(value: f64, unit: Unit) -> f64 {
    match unit {
        Unit::Celsius => value,
        Unit::Fahrenheit => (value - 32.0) / 1.8,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_commas_and_units() {
        for (cell, want) in [
            (" 21.5 ", Some((21.5, None))),
            ("21,5", Some((21.5, None))),
            ("-3", Some((-3.0, None))),
            ("\u{2212}3,25", Some((-3.25, None))),
            ("55 %", Some((55.0, None))),
            ("68\u{b0}F", Some((68.0, Some(Unit::Fahrenheit)))),
            ("20 \u{b0}C", Some((20.0, Some(Unit::Celsius)))),
            ("1,234.5", None),
            ("1,2,3", None),
            ("", None),
            ("--", None),
            ("nan", None),
            ("inf", None),
            ("1e5", None),
            ("20 mm", None),
        ] {
            assert_eq!(number(cell), want, "{cell}");
        }
        assert!((celsius(68.0, Unit::Fahrenheit) - 20.0).abs() < 1e-12);
    }
}
