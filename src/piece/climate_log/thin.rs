//! Thin: a log's readings as means, few enough to be kept.

use chrono::{Duration, NaiveDateTime, Timelike};

use super::LogReading;

/// Over what a mean is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Per {
    /// The hour.
    Hour,
    /// The day of the logger's clock.
    Day,
}

impl Per {
    fn start(self, at: NaiveDateTime) -> NaiveDateTime {
        let midnight = at.date().and_time(chrono::NaiveTime::MIN);
        match self {
            Per::Day => midnight,
            Per::Hour => midnight + Duration::hours(i64::from(at.hour())),
        }
    }

    fn half(self) -> Duration {
        match self {
            Per::Day => Duration::hours(12),
            Per::Hour => Duration::minutes(30),
        }
    }
}

/// Means of temperature and humidity, each at the middle of its hour or day, with the offset of its first reading. `readings` are
/// by time, as in [`super::ClimateLog`]; hours and days without a reading stay out.
#[must_use]
pub fn means(readings: &[LogReading], per: Per) -> Vec<LogReading> {
    readings
        .chunk_by(|a, b| per.start(a.at) == per.start(b.at))
        .map(|same| {
            let mean =
                |of: fn(&LogReading) -> f64| same.iter().map(of).sum::<f64>() / same.len() as f64;
            LogReading {
                at: per.start(same[0].at) + per.half(),
                offset: same[0].offset,
                temp_c: mean(|r| r.temp_c),
                rh_pct: mean(|r| r.rh_pct),
            }
        })
        .collect()
}
