//! What was typed, made clean and taken apart into a sign, numbers and units, without yet judging it.

use super::fraction;

/// The most characters that are read as one number; blanks at the ends do not count.
pub const MOST_CHARACTERS: usize = 64;

/// A number and what follows it up to the next number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Piece {
    /// Digits, points, commas, strokes, and blanks between them; none at the ends.
    pub number: String,
    /// The unit as typed, trimmed; empty when there is none.
    pub unit: String,
}

/// A typed text taken apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Typed {
    /// True when a minus sign stands before the first number.
    pub negative: bool,
    /// The numbers with their units, at least one.
    pub pieces: Vec<Piece>,
}

/// Makes `text` clean: blanks of every width become plain blanks, invisible marks go, blanks at the ends go.
pub(super) fn clean(text: &str) -> String {
    let visible: String = text
        .chars()
        .filter(|c| !is_invisible(*c))
        .map(|c| if c.is_whitespace() { ' ' } else { c })
        .collect();
    visible.trim().to_owned()
}

/// At most `most` characters of `text`, with three points where it was cut, for quoting it in a message.
pub(super) fn excerpt(text: &str, most: usize) -> String {
    let shown: String = text
        .chars()
        .filter(|c| !c.is_control())
        .take(most)
        .collect();
    if text.chars().count() > most {
        shown + "..."
    } else {
        shown
    }
}

/// Takes a clean text apart. `None` when it does not start with a number.
pub(super) fn take_apart(text: &str) -> Option<Typed> {
    let (negative, text) = match text.strip_prefix(is_minus) {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let mut pieces: Vec<Piece> = Vec::new();
    let mut in_unit = false;
    for c in text.trim_start().chars() {
        if c.is_ascii_digit() || fraction::sign(c).is_some() || (is_inside(c) && !in_unit) {
            if in_unit || pieces.is_empty() {
                pieces.push(Piece {
                    number: String::new(),
                    unit: String::new(),
                });
                in_unit = false;
            }
            pieces.last_mut()?.number.push(c);
        } else if in_unit && matches!(c, '.' | ',') && starts_number_after(&pieces) {
            pieces.push(Piece {
                number: c.to_string(),
                unit: String::new(),
            });
            in_unit = false;
        } else {
            in_unit = true;
            pieces.last_mut()?.unit.push(c);
        }
    }
    for piece in &mut pieces {
        piece.number = piece.number.trim().replace(is_minus, "-");
        piece.unit = piece.unit.trim().to_owned();
    }
    let sound = pieces.iter().all(|p| {
        p.number
            .chars()
            .any(|c| c.is_ascii_digit() || fraction::sign(c).is_some())
    });
    (sound && !pieces.is_empty()).then_some(Typed { negative, pieces })
}

/// Signs that may stand inside a number once it has begun.
fn is_inside(c: char) -> bool {
    matches!(c, '.' | ',' | ' ') || fraction::is_stroke(c) || is_minus(c)
}

/// A point directly after a unit is a full stop ("3 oz. "), unless a blank parts them ("1 lb .5 oz").
fn starts_number_after(pieces: &[Piece]) -> bool {
    pieces.last().is_some_and(|piece| piece.unit.ends_with(' '))
}

fn is_minus(c: char) -> bool {
    matches!(c, '-' | '−' | '‐' | '‑' | '–')
}

/// Characters that show nothing: control characters other than blanks, joiners, marks of direction, the byte order mark.
fn is_invisible(c: char) -> bool {
    (c.is_control() && !c.is_whitespace())
        || matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FEFF}' | '\u{AD}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn apart(text: &str) -> Option<(bool, Vec<(String, String)>)> {
        take_apart(&clean(text)).map(|t| {
            (
                t.negative,
                t.pieces.into_iter().map(|p| (p.number, p.unit)).collect(),
            )
        })
    }

    fn pairs(pairs: &[(&str, &str)]) -> Vec<(String, String)> {
        pairs
            .iter()
            .map(|(n, u)| ((*n).to_owned(), (*u).to_owned()))
            .collect()
    }

    #[test]
    fn numbers_and_units_are_parted() {
        for (text, wanted) in [
            ("9.5", &[("9.5", "")][..]),
            ("  10.83\u{a0}mm\r\n", &[("10.83", "mm")]),
            ("10.83mm.", &[("10.83", "mm.")]),
            ("3/8\"", &[("3/8", "\"")]),
            ("1 lb. 3 oz", &[("1", "lb."), ("3", "oz")]),
            ("1 lb .5 oz", &[("1", "lb"), (".5", "oz")]),
            ("1lb3oz", &[("1", "lb"), ("3", "oz")]),
            ("+  828 g", &[("828", "g")]),
            ("\u{feff}18\u{202f}°C\u{200e}", &[("18", "°C")]),
            ("1‑3/8 in", &[("1-3/8", "in")]),
        ] {
            assert_eq!(apart(text), Some((false, pairs(wanted))), "{text}");
        }
        assert_eq!(apart("−5 C"), Some((true, pairs(&[("5", "C")]))));
    }

    #[test]
    fn what_does_not_start_with_a_number_is_refused() {
        for text in [
            "", "   ", "mm", "mm 9.5", "about 9", ".", "-", "+", ". mm", "--", "🙂",
        ] {
            assert_eq!(apart(text), None, "{text}");
        }
    }

    #[test]
    fn excerpts_are_short_and_say_that_they_are_cut() {
        assert_eq!(excerpt("9.5 bananas", 20), "9.5 bananas");
        assert_eq!(excerpt("abcdef", 3), "abc...");
    }
}
