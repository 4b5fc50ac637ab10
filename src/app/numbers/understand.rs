//! Understanding a typed number: which readings it has, and whether one of them can be taken without asking.
//!
//! A usual reading is taken. Otherwise another reading is looked for: thousands instead of decimals, a lost point,
//! another unit. If one is usual the turner is asked; if none is, a legal value is taken and an illegal one refused.

use super::decimal::{self, Decimal, Read};
use super::fraction;
use super::parsed::{AskWhy, Entry, Parsed, Reading};
use super::ranges::Quantity;
use super::typed::{self, MOST_CHARACTERS, Piece};
use super::units::{Dimension, Unit, Units};
use super::{InputError, Numbers};

/// How many characters of what was typed are quoted in a message.
const QUOTED: usize = 24;
/// Fractions down to this many parts are common in mm as well (9 1/2); finer ones belong to inches.
const FINEST_MM_FRACTION: u32 = 4;

/// The readings of what was typed, before their sizes are weighed.
enum Candidates {
    /// One reading, and what else could be tried.
    One {
        reading: Reading,
        thousands: Option<Reading>,
        bare_digits: bool,
        bare_unit: bool,
    },
    /// Decimals first, then thousands; only the turner can choose.
    Either(Reading, Reading),
    /// A bare fraction where mm are chosen: inches first, then mm.
    InchOrMm(Reading, Reading),
}

/// See [`Numbers::parse`].
pub(super) fn understand(
    numbers: &Numbers,
    quantity: Quantity,
    text: &str,
) -> Result<Parsed, InputError> {
    let text = typed::clean(text);
    let count = text.chars().count();
    if count == 0 {
        return Err(InputError::Empty);
    }
    if count > MOST_CHARACTERS {
        return Err(InputError::TooLong { count });
    }
    let candidates = candidates(numbers, quantity, &text)?;
    decide(numbers, quantity, text, candidates)
}

fn candidates(numbers: &Numbers, quantity: Quantity, text: &str) -> Result<Candidates, InputError> {
    let found = || typed::excerpt(text, QUOTED);
    let apart = typed::take_apart(text).ok_or_else(|| InputError::NotANumber { found: found() })?;
    let reading = |number: &str, unit: Unit, value: f64| {
        let value = if apart.negative { -value } else { value };
        // Adding nought turns a negative nought into nought.
        let base = unit.to_base(value) + 0.0;
        let number = if apart.negative && value != 0.0 {
            format!("-{number}")
        } else {
            number.to_owned()
        };
        weigh(quantity, number, unit, base)
    };
    let piece = match apart.pieces.as_slice() {
        [piece] => piece,
        [pounds, ounces] if is_pounds_and_ounces(quantity, pounds, ounces) => {
            let (whole, rest) = pounds_and_ounces(numbers, pounds, ounces)
                .ok_or_else(|| InputError::NotANumber { found: found() })?;
            let number = format!("{} lb {}", pounds.number, ounces.number);
            let reading = reading(&number, Unit::Ounce, whole * 16.0 + rest);
            return Ok(Candidates::One {
                reading,
                thousands: None,
                bare_digits: false,
                bare_unit: false,
            });
        }
        several
            if several
                .iter()
                .all(|p| p.unit.is_empty() || Unit::from_typed(&p.unit).is_some()) =>
        {
            return Err(InputError::Several { found: found() });
        }
        _ => return Err(InputError::NotANumber { found: found() }),
    };
    let dimension = quantity.dimension();
    let bare_unit = piece.unit.is_empty();
    let unit = if bare_unit {
        numbers.units().bare(dimension)
    } else {
        Unit::from_typed(&piece.unit)
            .filter(|unit| unit.dimension() == dimension)
            .ok_or_else(|| InputError::WrongUnit {
                unit: typed::excerpt(&piece.unit, QUOTED),
            })?
    };
    if fraction::looks_like_fraction(&piece.number) {
        let fraction = fraction::read(&piece.number)
            .ok_or_else(|| InputError::BadFraction { found: found() })?;
        let as_typed = reading(&fraction.text(), unit, fraction.value());
        if bare_unit && unit == Unit::Millimetre {
            let inches = reading(&fraction.text(), Unit::Inch, fraction.value());
            if fraction.under <= FINEST_MM_FRACTION {
                return Ok(Candidates::InchOrMm(inches, as_typed));
            }
            return Ok(Candidates::One {
                reading: inches,
                thousands: None,
                bare_digits: false,
                bare_unit: false,
            });
        }
        return Ok(Candidates::One {
            reading: as_typed,
            thousands: None,
            bare_digits: false,
            bare_unit,
        });
    }
    let one = |d: Decimal| reading(&d.plain, unit, d.value);
    let bare_digits = piece.number.bytes().all(|b| b.is_ascii_digit());
    match decimal::read(&piece.number, numbers.words().language().decimal_sign()) {
        Read::One(d) => Ok(Candidates::One {
            reading: one(d),
            thousands: None,
            bare_digits,
            bare_unit,
        }),
        Read::Likely(d, thousands) => Ok(Candidates::One {
            reading: one(d),
            thousands: Some(one(thousands)),
            bare_digits,
            bare_unit,
        }),
        Read::Either(d, thousands) => Ok(Candidates::Either(one(d), one(thousands))),
        Read::Several => Err(InputError::Several { found: found() }),
        Read::Nothing if piece.number.contains('-') => Err(InputError::Several { found: found() }),
        Read::Nothing => Err(InputError::NotANumber { found: found() }),
    }
}

fn decide(
    numbers: &Numbers,
    quantity: Quantity,
    typed: String,
    candidates: Candidates,
) -> Result<Parsed, InputError> {
    match candidates {
        // A count is whole, so that only thousands can be meant.
        Candidates::Either(_, thousands) if quantity.dimension() == Dimension::Count => {
            take(numbers, quantity, typed, thousands)
        }
        Candidates::Either(decimals, thousands) => ask(
            numbers,
            quantity,
            typed,
            vec![decimals, thousands],
            AskWhy::Separator,
        ),
        Candidates::InchOrMm(inches, mm) => match (inches.usual, mm.usual) {
            (true, false) => take(numbers, quantity, typed, inches),
            (false, true) => take(numbers, quantity, typed, mm),
            _ => match (inches.allowed, mm.allowed) {
                (true, true) => ask(numbers, quantity, typed, vec![mm, inches], AskWhy::Unit),
                (false, true) => take(numbers, quantity, typed, mm),
                _ => take(numbers, quantity, typed, inches),
            },
        },
        Candidates::One {
            reading,
            thousands,
            bare_digits,
            bare_unit,
        } => {
            if reading.usual {
                return take(numbers, quantity, typed, reading);
            }
            if let Some(thousands) = thousands.filter(|r| r.usual) {
                return ask(
                    numbers,
                    quantity,
                    typed,
                    vec![reading, thousands],
                    AskWhy::Separator,
                );
            }
            if bare_digits
                && quantity.point_is_easily_lost()
                && let Some(with_point) = with_lost_point(quantity, &reading)
            {
                return ask(
                    numbers,
                    quantity,
                    typed,
                    vec![with_point, reading],
                    AskWhy::MissingPoint,
                );
            }
            if bare_unit && (!reading.allowed || reading.value > quantity.range().usual_max) {
                let other = Units::instead_of(reading.unit)
                    .iter()
                    .map(|unit| in_unit(quantity, &reading, *unit))
                    .find(|other| other.usual);
                if let Some(other) = other {
                    return ask(numbers, quantity, typed, vec![reading, other], AskWhy::Unit);
                }
            }
            take(numbers, quantity, typed, reading)
        }
    }
}

/// Takes a reading that is legal, and says why one that is not is refused.
fn take(
    numbers: &Numbers,
    quantity: Quantity,
    typed: String,
    reading: Reading,
) -> Result<Parsed, InputError> {
    if quantity.dimension() == Dimension::Count && reading.value.fract() != 0.0 {
        return Err(InputError::NotWhole {
            found: typed::excerpt(&typed, QUOTED),
        });
    }
    if reading.allowed {
        return Ok(Parsed::Value(Entry {
            value: reading.value,
            typed,
            usual: reading.usual,
        }));
    }
    if reading.number.starts_with('-') && quantity.range().min >= 0.0 {
        return Err(InputError::Negative {
            found: typed::excerpt(&typed, QUOTED),
        });
    }
    Err(InputError::OutOfRange {
        found: numbers.label(&reading),
    })
}

/// Asks, if one of the readings can be chosen at all.
fn ask(
    numbers: &Numbers,
    quantity: Quantity,
    typed: String,
    readings: Vec<Reading>,
    why: AskWhy,
) -> Result<Parsed, InputError> {
    if readings.iter().any(|reading| reading.allowed) {
        return Ok(Parsed::Ask {
            typed,
            readings,
            why,
        });
    }
    match readings.into_iter().next() {
        Some(first) => take(numbers, quantity, typed, first),
        None => Err(InputError::NotANumber {
            found: typed::excerpt(&typed, QUOTED),
        }),
    }
}

fn weigh(quantity: Quantity, number: String, unit: Unit, value: f64) -> Reading {
    let range = quantity.range();
    Reading {
        value,
        number,
        unit,
        allowed: range.allows(value),
        usual: range.is_usual(value),
    }
}

/// The same figures with a point before the last, or the last two, of them: the first that makes a usual value.
fn with_lost_point(quantity: Quantity, reading: &Reading) -> Option<Reading> {
    (1..=2).find_map(|places| {
        let length = reading.number.len().checked_sub(places)?;
        let (whole, decimals) = reading.number.split_at_checked(length)?;
        if whole.is_empty() {
            return None;
        }
        let number = format!("{whole}.{decimals}");
        let value = reading.unit.to_base(number.parse().ok()?);
        let number = number
            .trim_end_matches('0')
            .trim_end_matches('.')
            .to_owned();
        Some(weigh(quantity, number, reading.unit, value)).filter(|r| r.usual)
    })
}

/// The same figures in another unit.
fn in_unit(quantity: Quantity, reading: &Reading, unit: Unit) -> Reading {
    let value = unit.to_base(reading.unit.from_base(reading.value));
    weigh(quantity, reading.number.clone(), unit, value)
}

fn is_pounds_and_ounces(quantity: Quantity, pounds: &Piece, ounces: &Piece) -> bool {
    quantity.dimension() == Dimension::Mass
        && Unit::from_typed(&pounds.unit) == Some(Unit::Pound)
        && (ounces.unit.is_empty() || Unit::from_typed(&ounces.unit) == Some(Unit::Ounce))
}

/// Whole pounds and any ounces.
fn pounds_and_ounces(numbers: &Numbers, pounds: &Piece, ounces: &Piece) -> Option<(f64, f64)> {
    let sign = numbers.words().language().decimal_sign();
    let whole = pounds.number.parse::<u32>().ok()?;
    let rest = if fraction::looks_like_fraction(&ounces.number) {
        fraction::read(&ounces.number)?.value()
    } else {
        match decimal::read(&ounces.number, sign) {
            Read::One(d) | Read::Likely(d, _) => d.value,
            Read::Either(..) | Read::Several | Read::Nothing => return None,
        }
    };
    Some((f64::from(whole), rest))
}
