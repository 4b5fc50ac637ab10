//! A key of a question: its name, what may stand there, and whether it may be left out. Checks and the page both read it.

use std::fmt;

use evenwall_wood::range::Range;

/// The unit and the legal range of a number as it stands in the JSON.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Unit as printed after a number; empty for a plain ratio.
    pub unit: &'static str,
    /// Smallest legal number, in the unit.
    pub min: f64,
    /// Largest legal number, in the unit.
    pub max: f64,
}

impl Limits {
    /// From `min` to `max` inclusive, in `unit`.
    #[must_use]
    pub const fn new(unit: &'static str, min: f64, max: f64) -> Self {
        Limits { unit, min, max }
    }

    /// The range of the science layer, in its own unit.
    #[must_use]
    pub const fn of(range: Range) -> Self {
        Limits::new(range.unit, range.min, range.max)
    }

    /// Twice the range of the science layer: a diameter where it wants a radius.
    #[must_use]
    pub const fn twice(range: Range) -> Self {
        Limits::new(range.unit, 2.0 * range.min, 2.0 * range.max)
    }

    /// The range of the science layer, a fraction there and per cent here.
    #[must_use]
    pub const fn pct(range: Range) -> Self {
        Limits::new("%", 100.0 * range.min, 100.0 * range.max)
    }

    /// True when `value` is a number within the range.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        value >= self.min && value <= self.max
    }
}

impl fmt::Display for Limits {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let space = if self.unit.is_empty() { "" } else { " " };
        let (min, max) = (Figure(self.min), Figure(self.max));
        write!(f, "{min} to {max}{space}{}", self.unit)
    }
}

/// A figure of a limit in a sentence: very small ones with an exponent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure(pub f64);

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.0 != 0.0 && self.0.abs() < 1e-3 {
            write!(f, "{:e}", self.0)
        } else {
            write!(f, "{}", self.0)
        }
    }
}

/// How many entries a list may have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    /// Least.
    pub min: usize,
    /// Most.
    pub max: usize,
}

impl Count {
    /// From `min` to `max` inclusive.
    #[must_use]
    pub const fn new(min: usize, max: usize) -> Self {
        Count { min, max }
    }
}

impl fmt::Display for Count {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.min == self.max {
            write!(f, "{}", self.min)
        } else {
            write!(f, "{} to {}", self.min, self.max)
        }
    }
}

/// What may stand at a key.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// One number.
    Number(Limits),
    /// A list of numbers.
    Numbers(Limits, Count),
    /// One number, or a list of them.
    OneOrMore(Limits, Count),
    /// A pair of numbers `[x, y]`.
    Point(Limits),
    /// A list of pairs `[x, y]`.
    Points(Limits, Count),
    /// One of these words.
    Word(&'static [&'static str]),
    /// Any text.
    Text,
    /// `true` or `false`.
    Flag,
    /// An object with these keys.
    Object(&'static [Key]),
    /// A list of objects with these keys.
    Objects(&'static [Key], Count),
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Kind::Number(l) => write!(f, "number, {l}"),
            Kind::Numbers(l, n) => write!(f, "list of {n} numbers, {l}"),
            Kind::OneOrMore(l, n) => write!(f, "number or list of {n} numbers, {l}"),
            Kind::Point(l) => write!(f, "`[x, y]`, each {l}"),
            Kind::Points(l, n) => write!(f, "list of {n} pairs `[x, y]`, each {l}"),
            Kind::Word(words) => write!(f, "\"{}\"", words.join("\", \"")),
            Kind::Text => write!(f, "text"),
            Kind::Flag => write!(f, "true or false"),
            Kind::Object(_) => write!(f, "object"),
            Kind::Objects(_, n) => write!(f, "list of {n} objects"),
        }
    }
}

/// Whether a key may be left out, and what counts then.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Need {
    /// It must be there.
    Must,
    /// It may be left out; its text says what follows.
    May,
    /// Left out, this number counts.
    Number(f64),
    /// Left out, this word counts.
    Word(&'static str),
}

/// One key of a question.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Key {
    /// Its name, the unit at its end.
    pub name: &'static str,
    /// What may stand there.
    pub kind: Kind,
    /// Whether it may be left out.
    pub need: Need,
    /// What it means.
    pub says: &'static str,
}

/// A key that must be there.
#[must_use]
pub const fn must(name: &'static str, kind: Kind, says: &'static str) -> Key {
    Key {
        name,
        kind,
        need: Need::Must,
        says,
    }
}

/// A key that may be left out.
#[must_use]
pub const fn may(name: &'static str, kind: Kind, says: &'static str) -> Key {
    Key {
        name,
        kind,
        need: Need::May,
        says,
    }
}

/// A number that is `default` when left out.
#[must_use]
pub const fn usually(name: &'static str, limits: Limits, default: f64, says: &'static str) -> Key {
    Key {
        name,
        kind: Kind::Number(limits),
        need: Need::Number(default),
        says,
    }
}

/// A word that is `default` when left out.
#[must_use]
pub const fn word(
    name: &'static str,
    words: &'static [&'static str],
    default: &'static str,
    says: &'static str,
) -> Key {
    Key {
        name,
        kind: Kind::Word(words),
        need: Need::Word(default),
        says,
    }
}
