//! Rounding to steps: what a tool can tell, in mm, decimals of an inch, 64ths, grams and ounces.

use super::ranges::Quantity;

/// The sign before a number below nought.
pub(super) const MINUS: char = '\u{2212}';

/// Which way a value is rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Rounded {
    /// To the nearest step.
    Nearest,
    /// To a step not below it, for a lower limit.
    Up,
    /// To a step not above it, for an upper limit.
    Down,
}

/// How finely a length is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fineness {
    /// 1 mm, 0.01 in, 1/32 in.
    Whole,
    /// 0.5 mm, 0.01 in, 1/64 in.
    Half,
    /// 0.1 mm, 0.001 in, 1/64 in.
    Tenth,
}

pub(super) fn fineness(quantity: Quantity) -> Fineness {
    match quantity {
        Quantity::WallReading
        | Quantity::WallWanted
        | Quantity::WallFinish
        | Quantity::FloorReading
        | Quantity::FloorWanted
        | Quantity::FromCentre
        | Quantity::SpigotDiameter
        | Quantity::SpigotLength
        | Quantity::BarDiameter => Fineness::Half,
        Quantity::Tolerance | Quantity::Allowance => Fineness::Tenth,
        _ => Fineness::Whole,
    }
}

pub(super) const fn inch_decimals(fine: Fineness) -> (f64, usize) {
    match fine {
        Fineness::Whole | Fineness::Half => (0.01, 2),
        Fineness::Tenth => (0.001, 3),
    }
}

pub(super) const fn inch_parts(fine: Fineness) -> u32 {
    match fine {
        Fineness::Whole => 32,
        Fineness::Half | Fineness::Tenth => 64,
    }
}

/// A scale that gives grams is matched by tenths of an ounce, a finer one by hundredths.
pub(super) fn ounce_step(step_g: f64) -> (f64, usize) {
    if step_g >= 1.0 { (0.1, 1) } else { (0.01, 2) }
}

/// The whole number of steps nearest to `value`; `None` for what is not a number. Never a negative nought.
pub(super) fn steps(value: f64, step: f64, rounded: Rounded) -> Option<f64> {
    // A limit that is on a step must stay on it although 0.5 / 0.1 is not exactly 5.
    const SLACK: f64 = 1e-6;
    let steps = match rounded {
        Rounded::Nearest => (value / step).round(),
        Rounded::Up => (value / step - SLACK).ceil(),
        Rounded::Down => (value / step + SLACK).floor(),
    };
    steps.is_finite().then_some(steps + 0.0)
}

/// `parts` over `under`, cut down: `1 3/8`, `3/8`, `2`, `0`. `under` is a power of two.
pub(super) fn fraction_text(parts: f64, under: u32) -> String {
    let minus = if parts < 0.0 {
        MINUS.to_string()
    } else {
        String::new()
    };
    let whole = (parts.abs() / f64::from(under)).floor();
    let (mut over, mut under) = (parts.abs() - whole * f64::from(under), under);
    while over != 0.0 && over % 2.0 == 0.0 {
        over /= 2.0;
        under /= 2;
    }
    match (whole > 0.0, over > 0.0) {
        (_, false) => format!("{minus}{whole}"),
        (false, true) => format!("{minus}{over}/{under}"),
        (true, true) => format!("{minus}{whole} {over}/{under}"),
    }
}
