//! Span: how much of the time a chart shows, by buttons and by two fingers; weight or moisture at its edge.

use evenwall_piece::piece::{Moment, Piece, Weighing};
use evenwall_piece::stage::Group;

use super::chart::{Days, local_days};

/// How much of the time is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Span {
    /// From the first weighing or the first day of drying.
    #[default]
    All,
    /// The last 90 days.
    Days90,
    /// The last 30 days.
    Days30,
}

impl Span {
    /// All, the longest first.
    pub const ALL: [Self; 3] = [Self::All, Self::Days90, Self::Days30];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::Days90 => "90-days",
            Self::Days30 => "30-days",
        }
    }

    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|s| s.key() == key)
    }

    pub(super) const fn days(self) -> Option<f64> {
        match self {
            Self::All => None,
            Self::Days90 => Some(90.0),
            Self::Days30 => Some(30.0),
        }
    }
}

/// What the marks at the edge of the chart say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Measured {
    /// Weights.
    #[default]
    Weight,
    /// Moistures.
    Moisture,
}

impl Measured {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Weight, Self::Moisture];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Weight => "weight",
            Self::Moisture => "moisture",
        }
    }

    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|m| m.key() == key)
    }
}

/// The fewest days that two fingers can spread over the chart.
const CLOSEST_DAYS: f64 = 5.0;

/// The whole time from the first day of drying, or the first weighing, to now.
pub(super) fn whole(piece: &Piece, weighed: &[&Weighing], now: Moment) -> Option<Days> {
    let first = weighed.first()?;
    let last = weighed.last()?;
    let drying = piece
        .visits
        .iter()
        .find(|v| v.stage.group() == Group::Drying)
        .map(|v| local_days(v.since));
    let from = drying.map_or(local_days(first.at), |d| d.min(local_days(first.at)));
    let to = local_days(now).max(local_days(last.at));
    Some(Days {
        from,
        to: to.max(from + 7.0),
    })
}

impl Days {
    /// These days spread `by` times about the place `x` (0 left to 1 right), within `whole` and never closer than five days.
    pub(super) fn zoomed(self, by: f64, x: f64, whole: Self) -> Self {
        let most = whole.to - whole.from;
        let width = ((self.to - self.from) / by.max(1e-3)).clamp(CLOSEST_DAYS.min(most), most);
        let held = self.from + x.clamp(0.0, 1.0) * (self.to - self.from);
        let from = (held - x.clamp(0.0, 1.0) * width).clamp(whole.from, whole.to - width);
        Self {
            from,
            to: from + width,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_day_under_the_fingers_stays_there() {
        let whole = Days {
            from: 0.0,
            to: 100.0,
        };
        let close = whole.zoomed(4.0, 0.4, whole);
        assert_eq!((close.from, close.to), (30.0, 55.0));
        assert!((close.at(40.0) - 0.4).abs() < 1e-12);
        let back = close.zoomed(0.1, 0.4, whole);
        assert_eq!((back.from, back.to), (0.0, 100.0));
    }

    proptest! {
        #[test]
        fn nothing_outside_the_whole_time_is_ever_shown(
            by in 0.01..100.0_f64, x in -1.0..2.0_f64, more in 0.01..100.0_f64
        ) {
            let whole = Days { from: 20_000.0, to: 20_090.0 };
            let days = whole.zoomed(by, x, whole).zoomed(more, x, whole);
            prop_assert!(days.from >= whole.from - 1e-6 && days.to <= whole.to + 1e-6);
            prop_assert!(days.to - days.from >= 4.999);
        }
    }
}
