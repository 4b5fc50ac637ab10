//! Filter: which entries of a diary are shown.

/// A filter of the diary; every entry belongs to one besides All.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Filter {
    /// Everything but ticks, forecasts and what was taken back.
    #[default]
    All,
    /// Readings, stations, diameters.
    Wall,
    /// Bag checks and looks.
    Looks,
    /// Weighings and what changed the weight.
    Weights,
    /// Flaws and what was done to them.
    Flaws,
    /// Stages, methods, ends.
    Stages,
    /// True and Finish.
    Finish,
    /// Notes.
    Notes,
    /// Details.
    Details,
    /// Ticks of checklists.
    Ticks,
    /// Forecasts as they were made.
    Forecasts,
    /// What was taken back.
    TakenBack,
}

impl Filter {
    /// All filters in the order of the chips.
    pub const ALL: [Self; 12] = [
        Self::All,
        Self::Wall,
        Self::Looks,
        Self::Weights,
        Self::Flaws,
        Self::Stages,
        Self::Finish,
        Self::Notes,
        Self::Details,
        Self::Ticks,
        Self::Forecasts,
        Self::TakenBack,
    ];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::Wall => "wall",
            Self::Looks => "looks",
            Self::Weights => "weights",
            Self::Flaws => "flaws",
            Self::Stages => "stages",
            Self::Finish => "finish",
            Self::Notes => "notes",
            Self::Details => "details",
            Self::Ticks => "ticks",
            Self::Forecasts => "forecasts",
            Self::TakenBack => "taken-back",
        }
    }

    /// The filter with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|f| f.key() == key)
    }

    /// Whether it shows an entry that belongs to `own`.
    #[must_use]
    pub fn shows(self, own: Self, taken_back: bool) -> bool {
        match self {
            Self::TakenBack => taken_back,
            _ if taken_back => false,
            Self::All => !matches!(own, Self::Ticks | Self::Forecasts),
            _ => self == own,
        }
    }
}
