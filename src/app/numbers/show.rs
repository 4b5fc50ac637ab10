//! Showing numbers: rounded to what the tool can tell, in the turner's units.
//!
//! Walls felt with callipers down a bore are no better than half a millimetre, so they are shown to that or to 1/64 in;
//! diameters to 1 mm or 1/32 in. A value that is not a number shows as a dash.

use super::Numbers;
use super::ranges::Quantity;
use super::rounding::{
    Fineness, MINUS, Rounded, fineness, fraction_text, inch_decimals, inch_parts, ounce_step, steps,
};
use super::shown::Shown;
use super::units::{Dimension, LengthUnit, MassUnit, TempUnit, Unit};
use crate::words::DecimalSign;

impl Numbers {
    /// A wall, floor or other thickness in mm, to half a millimetre, 0.01 in or 1/64 in: "9.5", "10.0", "3/8".
    #[must_use]
    pub fn wall(&self, mm: f64) -> Shown {
        self.length(mm, Fineness::Half, Rounded::Nearest)
    }

    /// A diameter, height or depth in mm, to 1 mm, 0.01 in or 1/32 in.
    #[must_use]
    pub fn diameter(&self, mm: f64) -> Shown {
        self.length(mm, Fineness::Whole, Rounded::Nearest)
    }

    /// A diameter in mm where the difference counts (an oval, a spigot), to 0.5 mm, 0.01 in or 1/64 in.
    #[must_use]
    pub fn diameter_fine(&self, mm: f64) -> Shown {
        self.length(mm, Fineness::Half, Rounded::Nearest)
    }

    /// A reckoned length in mm, to 0.1 mm, 0.001 in or 1/64 in.
    #[must_use]
    pub fn length_fine(&self, mm: f64) -> Shown {
        self.length(mm, Fineness::Tenth, Rounded::Nearest)
    }

    /// A weight in g, to 1 g or 0.1 oz; pounds and ounces from 16 oz up.
    #[must_use]
    pub fn mass(&self, g: f64) -> Shown {
        self.mass_rounded(g, 1.0, Rounded::Nearest)
    }

    /// A weight in g from a scale whose step is `step_g` g: decimals as the scale gives them.
    #[must_use]
    pub fn mass_by_scale(&self, g: f64, step_g: f64) -> Shown {
        self.mass_rounded(g, step_g, Rounded::Nearest)
    }

    /// A temperature in °C, to a degree of the chosen scale.
    #[must_use]
    pub fn temperature(&self, celsius: f64) -> Shown {
        let unit = self.units.bare(Dimension::Temperature);
        self.stepped(unit.from_base(celsius), 1.0, 0, Rounded::Nearest, unit)
    }

    /// A moisture or humidity in per cent, to a whole per cent.
    #[must_use]
    pub fn percent(&self, percent: f64) -> Shown {
        self.stepped(percent, 1.0, 0, Rounded::Nearest, Unit::Percent)
    }

    /// A speed in turns a minute, whole.
    #[must_use]
    pub fn speed(&self, rpm: f64) -> Shown {
        self.stepped(rpm, 1.0, 0, Rounded::Nearest, Unit::Rpm)
    }

    /// `quantity` as it is entered and listed; `value` in mm, g, °C, per cent, turns a minute or a count.
    #[must_use]
    pub fn quantity(&self, quantity: Quantity, value: f64) -> Shown {
        self.quantity_rounded(quantity, value, Rounded::Nearest)
    }

    /// "500 to 750": both ends of a range, with one unit where they share it. One value when both read alike.
    #[must_use]
    pub fn range(&self, low: &Shown, high: &Shown) -> Shown {
        if low == high {
            return low.clone();
        }
        let first = if low.unit == high.unit {
            low.number.clone()
        } else {
            format!("{} {}", low.number, low.unit)
        };
        let number = self.words.with(
            "number-range",
            &[("low", first.into()), ("high", (&high.number).into())],
        );
        Shown::new(number, high.unit.clone())
    }

    /// One step of the wall entry keys, in mm: half a millimetre, 0.02 in or 1/64 in.
    #[must_use]
    pub fn wall_step_mm(&self) -> f64 {
        match self.units.length {
            LengthUnit::Millimetre => 0.5,
            LengthUnit::InchDecimal => Unit::Inch.to_base(0.02),
            LengthUnit::InchFraction => Unit::Inch.to_base(1.0 / 64.0),
        }
    }

    /// What is shown where there is no number: a dash.
    #[must_use]
    pub fn unknown(&self) -> Shown {
        Shown::new(self.words.text("number-unknown"), String::new())
    }

    pub(super) fn quantity_rounded(
        &self,
        quantity: Quantity,
        value: f64,
        rounded: Rounded,
    ) -> Shown {
        match quantity.dimension() {
            Dimension::Length => self
                .length(value, fineness(quantity), rounded)
                .short_unless(quantity),
            Dimension::Mass if quantity == Quantity::ScaleStep => {
                self.mass_rounded(value, 0.1, rounded).short()
            }
            Dimension::Mass => self.mass_rounded(value, 1.0, rounded),
            Dimension::Percent if quantity == Quantity::Shrinkage => self
                .stepped(value, 0.1, 1, rounded, Unit::Percent)
                .short(),
            dimension => {
                let unit = self.units.bare(dimension);
                self.stepped(unit.from_base(value), 1.0, 0, rounded, unit)
            }
        }
    }

    /// The step to which `quantity` is shown, in mm, g, °C, per cent, turns a minute or a count.
    #[must_use]
    pub fn step(&self, quantity: Quantity) -> f64 {
        match quantity.dimension() {
            Dimension::Length => match (self.units.length, fineness(quantity)) {
                (LengthUnit::Millimetre, Fineness::Whole) => 1.0,
                (LengthUnit::Millimetre, Fineness::Half) => 0.5,
                (LengthUnit::Millimetre, Fineness::Tenth) => 0.1,
                (LengthUnit::InchDecimal, fine) => Unit::Inch.to_base(inch_decimals(fine).0),
                (LengthUnit::InchFraction, fine) => {
                    Unit::Inch.to_base(1.0 / f64::from(inch_parts(fine)))
                }
            },
            Dimension::Mass => {
                let step_g = if quantity == Quantity::ScaleStep {
                    0.1
                } else {
                    1.0
                };
                match self.units.mass {
                    MassUnit::Gram => step_g,
                    MassUnit::OunceAndPound => Unit::Ounce.to_base(ounce_step(step_g).0),
                }
            }
            Dimension::Temperature => match self.units.temperature {
                TempUnit::Celsius => 1.0,
                TempUnit::Fahrenheit => 5.0 / 9.0,
            },
            Dimension::Percent if quantity == Quantity::Shrinkage => 0.1,
            Dimension::Percent | Dimension::Speed | Dimension::Count => 1.0,
        }
    }

    pub(super) fn unit_text(&self, unit: Unit) -> String {
        match unit {
            Unit::Millimetre => self.words.text("unit-mm"),
            Unit::Centimetre => self.words.text("unit-cm"),
            Unit::Inch => self.words.text("unit-in"),
            Unit::Gram => self.words.text("unit-g"),
            Unit::Kilogram => self.words.text("unit-kg"),
            Unit::Ounce => self.words.text("unit-oz"),
            Unit::Pound => self.words.text("unit-lb"),
            Unit::Celsius => self.words.text("unit-celsius"),
            Unit::Fahrenheit => self.words.text("unit-fahrenheit"),
            Unit::Percent => self.words.text("unit-percent"),
            Unit::Rpm => self.words.text("unit-rpm"),
            Unit::One => String::new(),
        }
    }

    pub(super) fn with_decimal_sign(&self, plain: &str) -> String {
        match self.words.language().decimal_sign() {
            DecimalSign::Point => plain.to_owned(),
            DecimalSign::Comma => plain.replace('.', ","),
        }
    }

    fn length(&self, mm: f64, fine: Fineness, rounded: Rounded) -> Shown {
        match self.units.length {
            LengthUnit::Millimetre => {
                let (step, decimals) = match fine {
                    Fineness::Whole => (1.0, 0),
                    Fineness::Half => (0.5, 1),
                    Fineness::Tenth => (0.1, 1),
                };
                self.stepped(mm, step, decimals, rounded, Unit::Millimetre)
            }
            LengthUnit::InchDecimal => {
                let (step, decimals) = inch_decimals(fine);
                self.stepped(
                    Unit::Inch.from_base(mm),
                    step,
                    decimals,
                    rounded,
                    Unit::Inch,
                )
            }
            LengthUnit::InchFraction => {
                let Some(parts) = steps(
                    Unit::Inch.from_base(mm),
                    1.0 / f64::from(inch_parts(fine)),
                    rounded,
                ) else {
                    return self.unknown();
                };
                Shown::new(
                    fraction_text(parts, inch_parts(fine)),
                    self.unit_text(Unit::Inch),
                )
            }
        }
    }

    fn mass_rounded(&self, g: f64, step_g: f64, rounded: Rounded) -> Shown {
        match self.units.mass {
            MassUnit::Gram => {
                let (step, decimals) = match step_g {
                    s if s >= 1.0 => (1.0, 0),
                    s if s >= 0.1 => (0.1, 1),
                    _ => (0.01, 2),
                };
                self.stepped(g, step, decimals, rounded, Unit::Gram)
            }
            MassUnit::OunceAndPound => {
                let (step, decimals) = ounce_step(step_g);
                let Some(parts) = steps(Unit::Ounce.from_base(g), step, rounded) else {
                    return self.unknown();
                };
                let in_pound = (16.0 / step).round();
                let pounds = (parts.abs() / in_pound).floor();
                let ounces = format!("{:.*}", decimals, (parts.abs() - pounds * in_pound) * step);
                let ounces =
                    Shown::new(self.with_decimal_sign(&ounces), self.unit_text(Unit::Ounce))
                        .short();
                let minus = if parts < 0.0 {
                    MINUS.to_string()
                } else {
                    String::new()
                };
                match (pounds > 0.0, ounces.number.as_str()) {
                    (false, number) => Shown::new(format!("{minus}{number}"), ounces.unit),
                    (true, "0") => {
                        Shown::new(format!("{minus}{pounds}"), self.unit_text(Unit::Pound))
                    }
                    (true, number) => {
                        let pounds = pounds.to_string();
                        let both = self.words.with(
                            "number-pounds-ounces",
                            &[("pounds", pounds.into()), ("ounces", number.into())],
                        );
                        Shown::new(format!("{minus}{both}"), ounces.unit)
                    }
                }
            }
        }
    }

    fn stepped(
        &self,
        value: f64,
        step: f64,
        decimals: usize,
        rounded: Rounded,
        unit: Unit,
    ) -> Shown {
        let Some(steps) = steps(value, step, rounded) else {
            return self.unknown();
        };
        let plain = format!("{:.*}", decimals, steps.abs() * step);
        let minus = if steps < 0.0 {
            MINUS.to_string()
        } else {
            String::new()
        };
        Shown::new(
            minus + &self.with_decimal_sign(&plain),
            self.unit_text(unit),
        )
    }
}
