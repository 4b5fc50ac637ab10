//! Legal ranges of everything that is entered, declared once for checks, messages and generators.
//!
//! The figures are judgement, made for sizing forms and not taken from a published source: wide enough for every piece
//! a turner of hollow vessels is likely to meet, narrow enough to catch a slipped point or a wrong unit. The usual
//! range inside the legal one is what passes without a question.

use super::units::Dimension;

/// The range of one quantity, in mm, g, °C, per cent, turns a minute or a plain count.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Smallest legal value.
    pub min: f64,
    /// Largest legal value.
    pub max: f64,
    /// Smallest value that passes without a second thought.
    pub usual_min: f64,
    /// Largest value that passes without a second thought.
    pub usual_max: f64,
    /// A typical value, for the example in messages.
    pub example: f64,
}

impl Range {
    const fn new(min: f64, max: f64, usual_min: f64, usual_max: f64, example: f64) -> Self {
        Self {
            min,
            max,
            usual_min,
            usual_max,
            example,
        }
    }

    /// A range that is usual all through.
    const fn even(min: f64, max: f64, example: f64) -> Self {
        Self::new(min, max, min, max, example)
    }

    /// True when `value` is legal; false for what is not a number.
    #[must_use]
    pub fn allows(&self, value: f64) -> bool {
        value >= self.min && value <= self.max
    }

    /// True when `value` is usual; false for what is not a number.
    #[must_use]
    pub fn is_usual(&self, value: f64) -> bool {
        value >= self.usual_min && value <= self.usual_max
    }
}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident = $key:literal, $dimension:ident, $range:expr;)+) => {
        /// Something that is entered as a number.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Quantity { $($(#[$doc])* $name),+ }

        impl Quantity {
            /// All quantities.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// The stable key, and the end of its id in the catalogue of words: `quantity-<key>`.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$name => $key),+ }
            }

            /// What it measures.
            #[must_use]
            pub const fn dimension(self) -> Dimension {
                match self { $(Self::$name => Dimension::$dimension),+ }
            }

            /// What is legal, what is usual, and an example.
            #[must_use]
            pub const fn range(self) -> Range {
                match self { $(Self::$name => $range),+ }
            }
        }
    };
}

quantities! {
    /// Largest or any outside diameter of the piece, mm.
    OutsideDiameter = "outside-diameter", Length, Range::even(40.0, 600.0, 180.0);
    /// From the centre mark to the outside of a dried piece, mm.
    FromCentre = "from-centre", Length, Range::even(5.0, 300.0, 90.0);
    /// Diameter of the log or blank before turning, mm.
    LogDiameter = "log-diameter", Length, Range::new(50.0, 1000.0, 50.0, 700.0, 220.0);
    /// Height from rim to foot line, without the spigot, mm.
    Height = "height", Length, Range::even(30.0, 600.0, 200.0);
    /// Diameter of the mouth, mm.
    Mouth = "mouth", Length, Range::even(10.0, 600.0, 50.0);
    /// A wall as measured, mm; far above the usual while a section is still to be hollowed.
    WallReading = "wall-reading", Length, Range::new(0.5, 150.0, 1.5, 50.0, 9.5);
    /// The rough wall wanted, mm.
    WallWanted = "wall-wanted", Length, Range::new(1.5, 60.0, 1.5, 50.0, 10.0);
    /// The wall wanted at the finish, mm.
    WallFinish = "wall-finish", Length, Range::even(1.5, 20.0, 6.0);
    /// The floor as measured above the foot line, mm.
    FloorReading = "floor-reading", Length, Range::new(1.0, 200.0, 3.0, 60.0, 12.0);
    /// The floor wanted above the foot line, mm.
    FloorWanted = "floor-wanted", Length, Range::even(3.0, 60.0, 12.0);
    /// Diameter of the spigot, mm.
    SpigotDiameter = "spigot-diameter", Length, Range::even(20.0, 150.0, 57.0);
    /// Length of the spigot below the foot line, mm.
    SpigotLength = "spigot-length", Length, Range::even(2.0, 50.0, 8.0);
    /// Depth drilled from the faced rim to the bit's point, mm.
    DepthDrilled = "depth-drilled", Length, Range::even(10.0, 600.0, 150.0);
    /// Depth that a rod finds from the rim to the floor, mm.
    RodDepth = "rod-depth", Length, Range::even(5.0, 600.0, 150.0);
    /// Diameter of the hollowing bar, mm.
    BarDiameter = "bar-diameter", Length, Range::even(6.0, 32.0, 16.0);
    /// Greatest reach of the bar past the rest, mm.
    BarReach = "bar-reach", Length, Range::even(20.0, 500.0, 150.0);
    /// Distance of the pith from the axis, mm.
    PithDistance = "pith-distance", Length, Range::even(0.0, 300.0, 20.0);
    /// Depth of a station below the rim, mm.
    StationDepth = "station-depth", Length, Range::even(0.0, 600.0, 60.0);
    /// Length of a flaw, mm.
    FlawSize = "flaw-size", Length, Range::even(1.0, 600.0, 15.0);
    /// How far a wall may be from the wall wanted and still be even, mm.
    Tolerance = "tolerance", Length, Range::new(0.2, 10.0, 0.2, 5.0, 1.5);
    /// Wood kept in hand for cleaning up or for remounting, mm.
    Allowance = "allowance", Length, Range::even(0.0, 20.0, 1.5);
    /// Smallest circle of a set of jaws, mm.
    JawCircle = "jaw-circle", Length, Range::even(10.0, 200.0, 50.0);
    /// Weight of a piece, g.
    Weight = "weight", Mass, Range::new(20.0, 25_000.0, 150.0, 6000.0, 828.0);
    /// Weight of what goes on the scale with the piece, g.
    Tare = "tare", Mass, Range::even(0.0, 5000.0, 25.0);
    /// Smallest step of the scale, g.
    ScaleStep = "scale-step", Mass, Range::even(0.1, 50.0, 1.0);
    /// Relative humidity of the air, per cent.
    Humidity = "humidity", Percent, Range::even(20.0, 95.0, 65.0);
    /// A moisture meter's reading, per cent of the dry weight; meters are little use above 30.
    MoistureMeter = "moisture-meter", Percent, Range::new(5.0, 60.0, 5.0, 30.0, 12.0);
    /// The moisture at which wood settles where it will live, per cent of the dry weight.
    SettledMoisture = "settled-moisture", Percent, Range::new(3.0, 28.0, 5.0, 20.0, 9.0);
    /// Shrinkage from green to oven-dry, per cent.
    Shrinkage = "shrinkage", Percent, Range::even(1.0, 25.0, 7.8);
    /// Moisture of green wood, per cent of the dry weight.
    GreenMoisture = "green-moisture", Percent, Range::even(25.0, 300.0, 75.0);
    /// Dry weight over green volume, kg/m3.
    BasicDensity = "basic-density", Count, Range::even(150.0, 1300.0, 560.0);
    /// Temperature of shop or house, °C.
    Temperature = "temperature", Temperature, Range::even(-10.0, 45.0, 18.0);
    /// Temperature of a wet bulb, °C; below 0 its wick freezes.
    WetBulb = "wet-bulb", Temperature, Range::even(0.0, 45.0, 14.0);
    /// Speed of the lathe, turns a minute.
    Speed = "speed", Speed, Range::even(50.0, 3500.0, 500.0);
    /// A number of days in a rhythm.
    Days = "days", Count, Range::even(1.0, 365.0, 3.0);
    /// Days until a bag is felt again.
    BagDays = "bag-days", Count, Range::even(1.0, 30.0, 3.0);
    /// Days of a steady weight before it counts as settled.
    SteadyDays = "steady-days", Count, Range::even(14.0, 365.0, 60.0);
    /// A number of pieces.
    Pieces = "pieces", Count, Range::even(1.0, 1000.0, 10.0);
}

impl Quantity {
    /// True where callipers give tenths and a point is easily lost, so that 118 may stand for 11.8.
    #[must_use]
    pub(super) const fn point_is_easily_lost(self) -> bool {
        matches!(
            self,
            Self::WallReading
                | Self::WallWanted
                | Self::WallFinish
                | Self::FloorReading
                | Self::FloorWanted
                | Self::Tolerance
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_lies_inside_the_legal_and_the_example_is_usual() {
        for quantity in Quantity::ALL {
            let range = quantity.range();
            assert!(range.min < range.max, "{quantity:?}");
            assert!(
                range.min <= range.usual_min && range.usual_max <= range.max,
                "{quantity:?}"
            );
            assert!(
                range.is_usual(range.example) && range.allows(range.example),
                "{quantity:?}"
            );
        }
    }

    #[test]
    fn what_is_not_a_number_is_never_legal() {
        for quantity in Quantity::ALL {
            for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                assert!(!quantity.range().allows(value) && !quantity.range().is_usual(value));
            }
        }
    }
}
