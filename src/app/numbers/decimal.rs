//! Reading decimal numbers with a point or a comma, and telling when a sign may part thousands instead.

use crate::words::DecimalSign;

/// A decimal number as it can be read.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Decimal {
    /// The digits, with a point for the decimals, nothing between thousands and no noughts at the end.
    pub plain: String,
    /// Its value.
    pub value: f64,
}

/// The ways in which a text can be read as a number.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Read {
    /// One way.
    One(Decimal),
    /// Decimals most likely; thousands when that makes no sense: `1.250` where the point is the decimal sign.
    Likely(Decimal, Decimal),
    /// As decimals or as thousands, and only the turner knows: `1,250`.
    Either(Decimal, Decimal),
    /// Several numbers, parted by blanks.
    Several,
    /// Not a number.
    Nothing,
}

/// Reads `text`, which holds no blanks at its ends and no sign before it. `sign` is the decimal sign of the language.
pub(super) fn read(text: &str, sign: DecimalSign) -> Read {
    if !text
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | ' '))
    {
        return Read::Nothing;
    }
    let spaced = text.contains(' ');
    let text = if spaced {
        match without_blanks(text) {
            Some(joined) => joined,
            None => return Read::Several,
        }
    } else {
        text.to_owned()
    };
    let marks: Vec<char> = text.chars().filter(|c| !c.is_ascii_digit()).collect();
    match marks.as_slice() {
        [] => one(decimal(&text, "")),
        [mark] => {
            let (left, right) = text.split_once(*mark).unwrap_or((&text, ""));
            let as_decimals = decimal(left, right);
            let may_be_thousands = !spaced
                && right.len() == 3
                && (1..=3).contains(&left.len())
                && !left.starts_with('0');
            let thousands = may_be_thousands
                .then(|| decimal(&format!("{left}{right}"), ""))
                .flatten();
            match (as_decimals, thousands) {
                (Some(decimals), Some(thousands)) if *mark == mark_of(sign) => {
                    Read::Likely(decimals, thousands)
                }
                (Some(decimals), Some(thousands)) => Read::Either(decimals, thousands),
                (decimals, _) => one(decimals),
            }
        }
        [first, .., last] => {
            let (head, decimals) = if first == last {
                (text.as_str(), "")
            } else {
                match text.rsplit_once(*last) {
                    Some(parts) => parts,
                    None => return Read::Nothing,
                }
            };
            match without_thousands(head, *first) {
                Some(whole) => one(decimal(&whole, decimals)),
                None => Read::Nothing,
            }
        }
    }
}

fn mark_of(sign: DecimalSign) -> char {
    match sign {
        DecimalSign::Point => '.',
        DecimalSign::Comma => ',',
    }
}

fn one(decimal: Option<Decimal>) -> Read {
    decimal.map_or(Read::Nothing, Read::One)
}

/// The number with these digits before and after its point; either side may be empty, not both.
fn decimal(whole: &str, decimals: &str) -> Option<Decimal> {
    if whole.is_empty() && decimals.is_empty() {
        return None;
    }
    let whole = match whole.trim_start_matches('0') {
        "" => "0",
        digits => digits,
    };
    let decimals = decimals.trim_end_matches('0');
    let plain = if decimals.is_empty() {
        whole.to_owned()
    } else {
        format!("{whole}.{decimals}")
    };
    let value = plain.parse().ok()?;
    Some(Decimal { plain, value })
}

/// Joins thousands parted by blanks: `1 250` and `1 250.5`, but not `12 7`.
fn without_blanks(text: &str) -> Option<String> {
    let end = text.find(['.', ',']).unwrap_or(text.len());
    let (whole, rest) = text.split_at(end);
    if rest.contains(' ') {
        return None;
    }
    Some(without_thousands(whole, ' ')? + rest)
}

/// Joins groups of three digits parted by `mark`; the first group has one to three digits and is not 0.
fn without_thousands(text: &str, mark: char) -> Option<String> {
    let digits = |group: &str| group.bytes().all(|b| b.is_ascii_digit());
    let mut groups = text.split(mark);
    let first = groups.next()?;
    let sound_first = (1..=3).contains(&first.len()) && digits(first) && !first.starts_with('0');
    if !sound_first || !groups.all(|group| group.len() == 3 && digits(group)) {
        return None;
    }
    Some(text.replace(mark, ""))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn values(text: &str) -> Vec<f64> {
        match read(text, DecimalSign::Point) {
            Read::One(d) => vec![d.value],
            Read::Likely(a, b) | Read::Either(a, b) => vec![a.value, b.value],
            Read::Several | Read::Nothing => vec![],
        }
    }

    #[test]
    fn point_and_comma_are_read_alike() {
        for (text, value) in [
            ("9.5", 9.5),
            ("9,5", 9.5),
            ("10,83", 10.83),
            ("10.8300", 10.83),
            ("118", 118.0),
            ("007", 7.0),
            (".5", 0.5),
            (",5", 0.5),
            ("5.", 5.0),
            ("0,250", 0.25),
            ("0.250", 0.25),
            ("1250,000", 1250.0),
        ] {
            assert_eq!(values(text), [value], "{text}");
        }
    }

    #[test]
    fn thousands_are_joined_where_only_thousands_can_be_meant() {
        for (text, value) in [
            ("1 250", 1250.0),
            ("1 250.5", 1250.5),
            ("1,250.5", 1250.5),
            ("1.250,5", 1250.5),
            ("1,250,000", 1_250_000.0),
        ] {
            assert_eq!(values(text), [value], "{text}");
        }
    }

    #[test]
    fn a_comma_before_three_digits_has_two_readings() {
        assert!(matches!(
            read("1,250", DecimalSign::Point),
            Read::Either(..)
        ));
        assert_eq!(values("1,250"), [1.25, 1250.0]);
        assert!(matches!(
            read("1.250", DecimalSign::Point),
            Read::Likely(..)
        ));
        assert!(matches!(
            read("1.250", DecimalSign::Comma),
            Read::Either(..)
        ));
        assert!(matches!(
            read("1,250", DecimalSign::Comma),
            Read::Likely(..)
        ));
    }

    #[test]
    fn what_is_not_one_number_is_not_guessed_at() {
        for text in [
            ".", ",", "1..5", "1.2.3", "1,25,0", "1.5,5.5", "1,2500,3", "1e3", "0x10", "inf",
            "0 250", "",
        ] {
            assert!(values(text).is_empty(), "{text}");
        }
        assert_eq!(read("12 7", DecimalSign::Point), Read::Several);
        assert_eq!(read("9.5 10.2", DecimalSign::Point), Read::Several);
    }
}
