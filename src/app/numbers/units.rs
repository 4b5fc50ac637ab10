//! Units: which the turner sees, and how they turn into mm, g and °C.

/// How lengths are shown, and how a bare number typed as a length is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum LengthUnit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches with decimals.
    InchDecimal,
    /// Inches with fractions, down to 1/64.
    InchFraction,
}

/// How weights are shown, and how a bare number typed as a weight is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum MassUnit {
    /// Grams.
    #[default]
    Gram,
    /// Ounces, and pounds from 16 ounces up; a bare number is ounces.
    OunceAndPound,
}

/// How temperatures are shown, and how a bare number typed as a temperature is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum TempUnit {
    /// Degrees Celsius.
    #[default]
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

macro_rules! choices {
    ($name:ident { $($variant:ident = $key:literal),+ }) => {
        impl $name {
            /// All choices, in the order in which they are offered.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The stable key: stored in the settings, and the end of the choice's id in the catalogue of words.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key),+ }
            }

            /// The choice with this key, or `None`.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|choice| choice.key() == key)
            }
        }
    };
}
choices!(LengthUnit {
    Millimetre = "millimetre",
    InchDecimal = "inch-decimal",
    InchFraction = "inch-fraction"
});
choices!(MassUnit {
    Gram = "gram",
    OunceAndPound = "ounce-pound"
});
choices!(TempUnit {
    Celsius = "celsius",
    Fahrenheit = "fahrenheit"
});

/// The units the turner has chosen. Input takes all units whatever is chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Units {
    /// For lengths.
    pub length: LengthUnit,
    /// For weights.
    pub mass: MassUnit,
    /// For temperatures.
    pub temperature: TempUnit,
}

/// What kind of thing a number measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Dimension {
    /// A length, held in mm.
    Length,
    /// A mass, held in g.
    Mass,
    /// A temperature, held in °C.
    Temperature,
    /// A share, held in per cent.
    Percent,
    /// A speed of the lathe, held in turns a minute.
    Speed,
    /// A whole count.
    Count,
}

/// A unit that can be typed or shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Inch.
    Inch,
    /// Gram.
    Gram,
    /// Kilogram.
    Kilogram,
    /// Ounce, avoirdupois.
    Ounce,
    /// Pound, avoirdupois.
    Pound,
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Per cent.
    Percent,
    /// Turns a minute.
    Rpm,
    /// A plain count.
    One,
}

/// Millimetres in an inch, exact by definition (NIST Special Publication 811, appendix B; figure from memory).
pub const MM_PER_INCH: f64 = 25.4;
/// Grams in a pound avoirdupois, exact by definition (NIST Special Publication 811, appendix B; figure from memory).
pub const G_PER_POUND: f64 = 453.592_37;
/// Grams in an ounce avoirdupois, a sixteenth of a pound.
pub const G_PER_OUNCE: f64 = G_PER_POUND / 16.0;

impl Unit {
    /// What this unit measures.
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Millimetre | Self::Centimetre | Self::Inch => Dimension::Length,
            Self::Gram | Self::Kilogram | Self::Ounce | Self::Pound => Dimension::Mass,
            Self::Celsius | Self::Fahrenheit => Dimension::Temperature,
            Self::Percent => Dimension::Percent,
            Self::Rpm => Dimension::Speed,
            Self::One => Dimension::Count,
        }
    }

    /// Turns `value` in this unit into mm, g, °C, per cent, turns a minute or a count.
    #[must_use]
    pub fn to_base(self, value: f64) -> f64 {
        match self {
            Self::Fahrenheit => (value - 32.0) * 5.0 / 9.0,
            _ => value * self.factor(),
        }
    }

    /// Turns `base`, in mm, g, °C, per cent, turns a minute or a count, into this unit.
    #[must_use]
    pub fn from_base(self, base: f64) -> f64 {
        match self {
            Self::Fahrenheit => base * 9.0 / 5.0 + 32.0,
            _ => base / self.factor(),
        }
    }

    const fn factor(self) -> f64 {
        match self {
            Self::Centimetre => 10.0,
            Self::Inch => MM_PER_INCH,
            Self::Kilogram => 1000.0,
            Self::Ounce => G_PER_OUNCE,
            Self::Pound => G_PER_POUND,
            Self::Millimetre
            | Self::Gram
            | Self::Celsius
            | Self::Fahrenheit
            | Self::Percent
            | Self::Rpm
            | Self::One => 1.0,
        }
    }

    /// The unit that was typed, or `None`. Case, blanks and a full stop after it do not matter.
    #[must_use]
    pub fn from_typed(typed: &str) -> Option<Self> {
        let name: String = typed
            .chars()
            .filter(|c| !c.is_whitespace() && !matches!(c, '.' | '°' | 'º'))
            .flat_map(char::to_lowercase)
            .collect();
        Some(match name.as_str() {
            "mm" | "㎜" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => {
                Self::Millimetre
            }
            "cm" | "㎝" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => {
                Self::Centimetre
            }
            "in" | "inch" | "inches" | "\"" | "″" | "”" | "“" | "''" | "’’" | "′′" => {
                Self::Inch
            }
            "g" | "gr" | "gram" | "grams" | "gramme" | "grammes" => Self::Gram,
            "kg" | "㎏" | "kilo" | "kilos" | "kilogram" | "kilograms" => Self::Kilogram,
            "oz" | "ounce" | "ounces" => Self::Ounce,
            "lb" | "lbs" | "pound" | "pounds" => Self::Pound,
            "c" | "℃" | "degc" | "degreesc" | "celsius" | "degreescelsius" => Self::Celsius,
            "f" | "℉" | "degf" | "degreesf" | "fahrenheit" | "degreesfahrenheit" => {
                Self::Fahrenheit
            }
            "%" | "percent" | "rh" | "%rh" => Self::Percent,
            "rpm" => Self::Rpm,
            "d" | "day" | "days" => Self::One,
            _ => return None,
        })
    }
}

impl Units {
    /// The unit of a bare number.
    #[must_use]
    pub const fn bare(self, dimension: Dimension) -> Unit {
        match dimension {
            Dimension::Length => match self.length {
                LengthUnit::Millimetre => Unit::Millimetre,
                LengthUnit::InchDecimal | LengthUnit::InchFraction => Unit::Inch,
            },
            Dimension::Mass => match self.mass {
                MassUnit::Gram => Unit::Gram,
                MassUnit::OunceAndPound => Unit::Ounce,
            },
            Dimension::Temperature => match self.temperature {
                TempUnit::Celsius => Unit::Celsius,
                TempUnit::Fahrenheit => Unit::Fahrenheit,
            },
            Dimension::Percent => Unit::Percent,
            Dimension::Speed => Unit::Rpm,
            Dimension::Count => Unit::One,
        }
    }

    /// Units a bare number might have been meant in instead, likeliest first.
    pub(super) const fn instead_of(unit: Unit) -> &'static [Unit] {
        match unit {
            Unit::Millimetre => &[Unit::Inch],
            Unit::Inch => &[Unit::Millimetre],
            Unit::Gram => &[Unit::Kilogram],
            Unit::Ounce => &[Unit::Pound, Unit::Gram],
            Unit::Celsius => &[Unit::Fahrenheit],
            Unit::Fahrenheit => &[Unit::Celsius],
            _ => &[],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pound_is_sixteen_ounces_and_an_inch_is_25_4_mm() {
        assert_eq!(Unit::Inch.to_base(2.0), 50.8);
        assert!((Unit::Ounce.to_base(16.0) - Unit::Pound.to_base(1.0)).abs() < 1e-9);
        // One ounce is 28.349523125 g: NIST Special Publication 811, appendix B, from memory.
        assert!((Unit::Ounce.to_base(1.0) - 28.349_523_125).abs() < 1e-9);
    }

    #[test]
    fn water_freezes_at_32_f_and_boils_at_212_f() {
        // The two fixed points of the Fahrenheit scale at one atmosphere; from memory.
        assert_eq!(Unit::Fahrenheit.to_base(32.0), 0.0);
        assert_eq!(Unit::Fahrenheit.to_base(212.0), 100.0);
        assert_eq!(Unit::Fahrenheit.from_base(100.0), 212.0);
    }

    #[test]
    fn units_are_known_in_the_ways_they_are_typed() {
        for (typed, unit) in [
            ("mm", Unit::Millimetre),
            (" MM. ", Unit::Millimetre),
            ("\"", Unit::Inch),
            ("″", Unit::Inch),
            ("''", Unit::Inch),
            ("Inches", Unit::Inch),
            ("lbs", Unit::Pound),
            ("° C", Unit::Celsius),
            ("℉", Unit::Fahrenheit),
            ("% RH", Unit::Percent),
        ] {
            assert_eq!(Unit::from_typed(typed), Some(unit), "{typed}");
        }
        for typed in ["", "'", "ft", "m", "bananas", "k"] {
            assert_eq!(Unit::from_typed(typed), None, "{typed}");
        }
    }

    #[test]
    fn choices_lead_back_from_their_keys() {
        for choice in LengthUnit::ALL {
            assert_eq!(LengthUnit::from_key(choice.key()), Some(*choice));
        }
        for choice in MassUnit::ALL {
            assert_eq!(MassUnit::from_key(choice.key()), Some(*choice));
        }
        for choice in TempUnit::ALL {
            assert_eq!(TempUnit::from_key(choice.key()), Some(*choice));
        }
        assert_eq!(LengthUnit::from_key("furlong"), None);
    }
}
