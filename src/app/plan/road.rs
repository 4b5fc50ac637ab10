//! Road: how long the whole road takes, in weeks and never as a date. Common practice, no source.

use evenwall_piece::agenda::THICK_FLOOR_MM;
use evenwall_piece::rhythm::RhythmOf;
use evenwall_piece::settings::Settings;

/// Days in the closed bag, from and to: weeks, until it stays dry twice running.
const BAG: (u32, u32) = (21, 56);

/// One stretch of the road.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Stretch {
    /// The stage's key.
    pub stage: &'static str,
    /// Days, from and to.
    pub days: (u32, u32),
}

/// The stretches from the closed bag to the heated house, by the rhythms of the shop. A thick floor asks for more days in the
/// same proportion as on Today: 42 for 30 of Air, 28 for 14 indoors.
pub(super) fn road(settings: &Settings, floor_mm: f64) -> [Stretch; 4] {
    let thick = floor_mm > THICK_FLOOR_MM;
    let days = |of: RhythmOf, usual: u32, parts: (u32, u32)| {
        let asked = settings.rhythm(of).offer_after.unwrap_or(usual);
        if thick {
            (asked * parts.0).div_ceil(parts.1)
        } else {
            asked
        }
    };
    let air = days(RhythmOf::Air, 30, (7, 5));
    let indoors = days(RhythmOf::Indoors, 14, (2, 1));
    let steady = settings.steady_days;
    [
        Stretch {
            stage: "bag",
            days: BAG,
        },
        Stretch {
            stage: "air",
            days: (air, air),
        },
        // The days of a steady weight begin once the fall has stopped.
        Stretch {
            stage: "settle",
            days: (steady, 2 * steady),
        },
        Stretch {
            stage: "indoors",
            days: (indoors, indoors),
        },
    ]
}

/// Whole weeks from and to.
pub(super) fn weeks((low, high): (u32, u32)) -> (u32, u32) {
    (low.div_ceil(7), high.div_ceil(7))
}

/// The whole of it in weeks.
pub(super) fn whole(road: &[Stretch]) -> (u32, u32) {
    let sum = |pick: fn(&Stretch) -> u32| road.iter().map(pick).sum();
    weeks((sum(|s| s.days.0), sum(|s| s.days.1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thick_floor_takes_longer_and_own_rhythms_count() {
        let settings = Settings::default();
        // 21 + 30 + 60 + 14 = 125 days and 56 + 30 + 120 + 14 = 220 days, in whole weeks.
        assert_eq!(whole(&road(&settings, 12.0)), (18, 32));
        // 12 days more of Air and 14 more indoors.
        assert_eq!(whole(&road(&settings, 17.0)), (22, 36));
        let mut own = Settings::default();
        assert!(own.apply("rhythm_air", "3<3 7/7/60"));
        assert_eq!(whole(&road(&own, 12.0)), (23, 36));
    }
}
