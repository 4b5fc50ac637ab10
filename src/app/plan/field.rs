//! Field: a size that is entered on Plan.

use evenwall_piece::detail::DetailField;

use crate::numbers::Quantity;

/// A size that is entered on Plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlanField {
    /// Distance of the pith from the axis.
    PithDistance,
    /// Largest outside diameter.
    Diameter,
    /// Rim to foot line.
    Height,
    /// Wall wanted at the finish.
    WallFinish,
    /// Diameter of the log or blank.
    Log,
    /// Smallest circle of the jaws.
    Jaws,
    /// Diameter of the hollowing bar.
    Bar,
    /// Moisture at which it settles where it will live, per cent.
    Moisture,
}

impl PlanField {
    /// All, in the order in which they stand.
    pub const ALL: [Self; 8] = [
        Self::PithDistance,
        Self::Diameter,
        Self::Height,
        Self::WallFinish,
        Self::Log,
        Self::Jaws,
        Self::Bar,
        Self::Moisture,
    ];

    /// Stable key, used by the screens and by what is kept.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::PithDistance => "pith-distance",
            Self::Diameter => "diameter",
            Self::Height => "height",
            Self::WallFinish => "wall-finish",
            Self::Log => "log-diameter",
            Self::Jaws => "jaws-circle",
            Self::Bar => "bar-diameter",
            Self::Moisture => "moisture",
        }
    }

    /// The field with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|f| f.key() == key)
    }

    /// What it is entered as.
    #[must_use]
    pub const fn quantity(self) -> Quantity {
        match self {
            Self::PithDistance => Quantity::PithDistance,
            Self::Diameter => Quantity::OutsideDiameter,
            Self::Height => Quantity::Height,
            Self::WallFinish => Quantity::WallFinish,
            Self::Log => Quantity::LogDiameter,
            Self::Jaws => Quantity::JawCircle,
            Self::Bar => Quantity::BarDiameter,
            Self::Moisture => Quantity::SettledMoisture,
        }
    }

    /// The detail of a piece that holds it; `None` for the jaws' circle and the moisture, which belong to the shop.
    #[must_use]
    pub const fn detail(self) -> Option<DetailField> {
        Some(match self {
            Self::PithDistance => DetailField::PithDistance,
            Self::Diameter => DetailField::Diameter,
            Self::Height => DetailField::Height,
            Self::WallFinish => DetailField::WallFinish,
            Self::Log => DetailField::LogDiameter,
            Self::Bar => DetailField::BarDiameter,
            Self::Jaws | Self::Moisture => return None,
        })
    }
}
