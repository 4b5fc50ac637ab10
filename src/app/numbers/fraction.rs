//! Reading fractions: `3/8`, `1 3/8`, `1-3/8`, `1⅜`, `½`.

/// The largest number under the stroke: a 64th is the finest division of a steel rule.
pub const LARGEST_DENOMINATOR: u32 = 64;

/// A fraction as it was typed: whole number, number over the stroke, number under it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fraction {
    /// The whole number before it; 0 when there is none.
    pub whole: u32,
    /// The number over the stroke.
    pub over: u32,
    /// The number under the stroke, 1 to 64.
    pub under: u32,
}

impl Fraction {
    /// Its value in whatever unit it was typed.
    #[must_use]
    pub fn value(self) -> f64 {
        f64::from(self.whole) + f64::from(self.over) / f64::from(self.under)
    }

    /// As it reads: `1 3/8`.
    #[must_use]
    pub fn text(self) -> String {
        match self.whole {
            0 => format!("{}/{}", self.over, self.under),
            whole => format!("{whole} {}/{}", self.over, self.under),
        }
    }
}

/// True when `text` holds a fraction stroke or a fraction sign, so that it must be read as a fraction or not at all.
pub(super) fn looks_like_fraction(text: &str) -> bool {
    text.chars().any(|c| is_stroke(c) || sign(c).is_some())
}

/// True for the strokes that part a fraction: `/`, `⁄`, `∕`.
pub(super) fn is_stroke(c: char) -> bool {
    matches!(c, '/' | '⁄' | '∕')
}

/// The two numbers of a fraction sign such as ⅜.
pub(super) fn sign(c: char) -> Option<(u32, u32)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    })
}

/// Reads a fraction; blanks at the ends must be gone. `None` when it is not one, or a doubtful one such as `1 9/8`.
pub(super) fn read(text: &str) -> Option<Fraction> {
    let fraction = if let Some(last) = text.chars().next_back().and_then(sign) {
        let before = &text[..text.char_indices().next_back()?.0];
        let whole = match before.trim_end_matches([' ', '-']) {
            "" if before.is_empty() => 0,
            digits if joined(&before[digits.len()..]) => number(digits)?,
            _ => return None,
        };
        Fraction {
            whole,
            over: last.0,
            under: last.1,
        }
    } else {
        let (left, under) = text.split_once(is_stroke)?;
        let (left, under) = (left.trim_end(), number(under.trim_start())?);
        match left.split_once([' ', '-']) {
            None => Fraction {
                whole: 0,
                over: number(left)?,
                under,
            },
            Some((whole, over)) => {
                let fraction = Fraction {
                    whole: number(whole)?,
                    over: number(over.trim_start())?,
                    under,
                };
                if fraction.over >= under {
                    return None;
                }
                fraction
            }
        }
    };
    (1..=LARGEST_DENOMINATOR)
        .contains(&fraction.under)
        .then_some(fraction)
}

/// True for what may stand between a whole number and its fraction sign: nothing, blanks, or one hyphen.
fn joined(between: &str) -> bool {
    between == "-" || between.chars().all(|c| c == ' ')
}

/// A run of one to six digits.
fn number(digits: &str) -> Option<u32> {
    let sound = (1..=6).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit());
    sound.then(|| digits.parse().ok()).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fractions_are_read_in_the_ways_they_are_typed() {
        for (text, value) in [
            ("3/8", 0.375),
            ("1 3/8", 1.375),
            ("1  3/8", 1.375),
            ("1-3/8", 1.375),
            ("3 / 8", 0.375),
            ("1 3⁄8", 1.375),
            ("½", 0.5),
            ("1½", 1.5),
            ("1 ⅜", 1.375),
            ("1-⅞", 1.875),
            ("9/8", 1.125),
            ("13/64", 0.203_125),
            ("0/8", 0.0),
            ("1 0/8", 1.0),
        ] {
            assert_eq!(read(text).map(Fraction::value), Some(value), "{text}");
        }
    }

    #[test]
    fn doubtful_fractions_are_not_guessed_at() {
        for text in [
            "",
            "/",
            "3/",
            "/8",
            "3/0",
            "3/8/2",
            "1 9/8",
            "1 8/8",
            "1.5 3/8",
            "1 - 3/8",
            "1 2 3/8",
            "3/128",
            "½½",
            "½1",
            "1½ 3/8",
            "-3/8",
            "1--½",
            "3/8a",
            "1234567/8",
            "x½",
            " ½",
            "-½",
            "1 -½",
        ] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
