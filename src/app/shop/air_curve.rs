//! Air curve: the air of a room over time as a small chart: what wood settles at there, the humidity, or the temperature.

use std::fmt::Write as _;

use chrono::NaiveDate;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::Climate;
use evenwall_piece::vocabulary::Room;

use super::ShopAction;
use super::view::CurveChoiceView;
use crate::app::App;
use crate::drying::view::TickView;
use crate::numbers::{Shown, TempUnit};

/// What the charts show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AirCurve {
    /// The moisture at which wood settles.
    #[default]
    Moisture,
    /// The humidity.
    Humidity,
    /// The temperature.
    Temperature,
}

impl AirCurve {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Moisture, Self::Humidity, Self::Temperature];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Moisture => "moisture",
            Self::Humidity => "humidity",
            Self::Temperature => "temperature",
        }
    }

    /// Less than this is not blown up to fill the height: per cent of moisture, per cent of humidity, degrees.
    const fn least_span(self) -> f64 {
        match self {
            Self::Moisture => 4.0,
            Self::Humidity => 20.0,
            Self::Temperature => 10.0,
        }
    }
}

/// A chart: the path on a field of 1000 x 1000, everything else as fractions, 0 left or top to 1 right or bottom.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AirChartView {
    /// The curve.
    pub line: String,
    /// Single readings, where there are few: from the left, from the top.
    pub dots: Vec<(f64, f64)>,
    /// Marks at the side.
    pub y_ticks: Vec<TickView>,
    /// Marks below.
    pub x_ticks: Vec<TickView>,
    /// What a screen reader says instead of the picture.
    pub label: String,
}

/// So many days are shown, up to the last reading.
const SHOWN_DAYS: f64 = 366.0;
/// No curve is drawn over a longer time without a reading.
const GAP_DAYS: f64 = 60.0;
/// A line of more points than pixels draws no better.
const MOST_POINTS: usize = 300;
/// More dots than this run together.
const MOST_DOTS: usize = 30;

/// One point: day of the local calendar, and the value in the unit shown.
type Point = (f64, f64);

fn local_day(at: Moment) -> f64 {
    at.naive_local().and_utc().timestamp() as f64 / 86_400.0 // seconds since 1970 are exact in a double
}

fn date_of(day: f64) -> Option<NaiveDate> {
    #[allow(clippy::cast_possible_truncation)] // days since 1970, some ten thousands
    NaiveDate::from_ymd_opt(1970, 1, 1)?
        .checked_add_signed(chrono::Duration::try_days(day.floor() as i64)?)
}

/// Means of as many neighbours as it takes to leave at most [`MOST_POINTS`].
fn fewer(points: Vec<Point>) -> Vec<Point> {
    let together = points.len().div_ceil(MOST_POINTS).max(1);
    if together == 1 {
        return points;
    }
    points
        .chunks(together)
        .map(|part| {
            let mean = |of: fn(&Point) -> f64| part.iter().map(of).sum::<f64>() / part.len() as f64;
            (mean(|p| p.0), mean(|p| p.1))
        })
        .collect()
}

/// Whole numbers along the side, at most five.
fn side_ticks(low: f64, high: f64) -> Vec<f64> {
    let step = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0]
        .into_iter()
        .find(|s| (high - low) / s <= 4.0)
        .unwrap_or(100.0);
    let first = (low / step).ceil();
    (0..6)
        .map(|n| (first + f64::from(n)) * step)
        .take_while(|v| *v <= high + 1e-9)
        .collect()
}

impl App {
    /// A value of the curve chosen, as shown.
    fn air_shown(&self, curve: AirCurve, value: f64) -> Shown {
        match curve {
            AirCurve::Temperature => self.numbers().temperature(value),
            AirCurve::Moisture | AirCurve::Humidity => self.numbers().percent(value),
        }
    }

    fn air_value(&self, curve: AirCurve, climate: &Climate) -> Option<f64> {
        match curve {
            AirCurve::Moisture => self.settles_at(climate.temp_c, climate.rh_pct),
            AirCurve::Humidity => Some(climate.rh_pct),
            AirCurve::Temperature => Some(climate.temp_c),
        }
    }

    /// The curves that can be chosen; none where no room was read twice.
    pub(super) fn air_curves(&self) -> Vec<CurveChoiceView> {
        let twice = |room: &Room| {
            let of_room = self.shop().climate.iter().filter(|(_, c)| c.room == *room);
            of_room.take(2).count() == 2
        };
        if !Room::ALL.iter().any(twice) {
            return Vec::new();
        }
        AirCurve::ALL
            .into_iter()
            .map(|curve| CurveChoiceView {
                key: curve.key().to_owned(),
                text: self.words().text(&format!("log-curve-{}", curve.key())),
                chosen: curve == self.states.shop.curve,
                touch: ShopAction::Curve(curve).into(),
            })
            .collect()
    }

    /// The chart of a room; `None` with fewer than two readings.
    pub(super) fn air_chart(&self, room: Room, now: Moment) -> Option<AirChartView> {
        let curve = self.states.shop.curve;
        let of_room = self.shop().climate.iter().filter(|(_, c)| c.room == room);
        let mut points: Vec<Point> = of_room
            .filter_map(|(at, c)| Some((local_day(*at), self.air_value(curve, c)?)))
            .collect();
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        let last = *points.last()?;
        points.retain(|p| p.0 >= last.0 - SHOWN_DAYS);
        let first = *points.first().filter(|_| points.len() > 1)?;
        let to = last.0.max(first.0 + 1.0);
        let low = points.iter().map(|p| p.1).fold(f64::INFINITY, f64::min);
        let high = points.iter().map(|p| p.1).fold(f64::NEG_INFINITY, f64::max);
        let label = self.air_label(room, curve, &points, (low, high), now);
        let room_above = (0.08 * (high - low)).max((curve.least_span() - (high - low)) / 2.0);
        let (bottom, top) = ((low - room_above), high + room_above);
        let bottom = if curve == AirCurve::Temperature {
            bottom
        } else {
            bottom.max(0.0)
        };
        let x = |day: f64| (day - first.0) / (to - first.0);
        let y = |value: f64| (top - value) / (top - bottom);
        let points = fewer(points);
        let mut line = String::new();
        let mut before: Option<f64> = None;
        for (day, value) in &points {
            let near = before.is_some_and(|b| day - b <= GAP_DAYS);
            let letter = if near { 'L' } else { 'M' };
            // Writing to a String cannot fail.
            let _ = write!(
                line,
                "{letter}{:.1} {:.1} ",
                1000.0 * x(*day),
                1000.0 * y(*value)
            );
            before = Some(*day);
        }
        let few = points.len() <= MOST_DOTS;
        // Marks are whole in the unit shown: degrees Fahrenheit have their own.
        let shown = |value: f64| self.air_in_unit(curve, value);
        let y_ticks = side_ticks(shown(bottom), shown(top))
            .into_iter()
            .map(|v| TickView {
                at: (shown(top) - v) / (shown(top) - shown(bottom)),
                text: self.air_shown(curve, self.air_of_unit(curve, v)).text(),
            });
        let long = to - first.0 > 330.0;
        let mut x_ticks: Vec<TickView> = Vec::new();
        for part in [0.0, 0.5, 1.0] {
            let Some(date) = date_of(first.0 + part * (to - first.0)) else {
                continue;
            };
            let text = self.axis_day(date, long);
            if x_ticks.last().is_none_or(|t| t.text != text) {
                x_ticks.push(TickView { at: part, text });
            }
        }
        Some(AirChartView {
            line: line.trim_end().to_owned(),
            dots: if few {
                points.iter().map(|p| (x(p.0), y(p.1))).collect()
            } else {
                Vec::new()
            },
            y_ticks: y_ticks.collect(),
            x_ticks,
            label,
        })
    }

    /// A value in the unit shown, not rounded.
    fn air_in_unit(&self, curve: AirCurve, value: f64) -> f64 {
        match (curve, self.numbers().units().temperature) {
            (AirCurve::Temperature, TempUnit::Fahrenheit) => value * 1.8 + 32.0,
            _ => value,
        }
    }

    /// A value from the unit shown.
    fn air_of_unit(&self, curve: AirCurve, shown: f64) -> f64 {
        match (curve, self.numbers().units().temperature) {
            (AirCurve::Temperature, TempUnit::Fahrenheit) => (shown - 32.0) / 1.8,
            _ => shown,
        }
    }

    fn air_label(
        &self,
        room: Room,
        curve: AirCurve,
        points: &[Point],
        (low, high): (f64, f64),
        now: Moment,
    ) -> String {
        let (words, dates) = (self.words(), self.dates(now));
        let shown = |value: f64| self.air_shown(curve, value).text();
        let day = |point: Option<&Point>| {
            point
                .and_then(|p| date_of(p.0))
                .map_or_else(String::new, |d| dates.day_and_month(d))
        };
        words.with(
            "log-curve-label",
            &[
                ("room", words.text(&format!("room-{}", room.key())).into()),
                (
                    "what",
                    words.text(&format!("log-curve-{}", curve.key())).into(),
                ),
                ("from", day(points.first()).into()),
                ("to", day(points.last()).into()),
                ("low", shown(low).into()),
                ("high", shown(high).into()),
                (
                    "last",
                    points
                        .last()
                        .map_or_else(String::new, |p| shown(p.1))
                        .into(),
                ),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_whole_and_few_and_points_thin_out_to_means() {
        assert_eq!(side_ticks(7.6, 12.4), [8.0, 10.0, 12.0]);
        assert_eq!(side_ticks(-4.0, 31.0), [0.0, 10.0, 20.0, 30.0]);
        for span in [0.5, 3.0, 11.0, 39.0, 120.0] {
            assert!(side_ticks(10.0, 10.0 + span).len() <= 5, "{span}");
        }
        let many: Vec<Point> = (0..1000)
            .map(|n| (f64::from(n), f64::from(n % 2)))
            .collect();
        let thin = fewer(many);
        assert_eq!(thin.len(), 250);
        assert_eq!(thin[0], (1.5, 0.5));
    }
}
