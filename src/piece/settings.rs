//! Settings: the workshop's rules, each with the default of common practice (no source).

use std::collections::BTreeMap;

use chrono::Weekday;

use crate::rhythm::{Rhythm, RhythmOf};

/// After how many days a bag is felt again, by the answer; each 1 to 30. Common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BagAfter {
    /// After it was put in the bag.
    pub first: u32,
    /// After *wet*.
    pub wet: u32,
    /// After *wet* where the wood moulds easily, mould was seen, or the shop is over 20 degrees C.
    pub wet_short: u32,
    /// After *damp*.
    pub damp: u32,
    /// After *nothing*.
    pub nothing: u32,
    /// After mould was seen.
    pub mould: u32,
}

impl Default for BagAfter {
    fn default() -> Self {
        Self {
            first: 1,
            wet: 2,
            wet_short: 1,
            damp: 3,
            nothing: 3,
            mould: 1,
        }
    }
}

/// The workshop's settings. All have defaults; a stored value that cannot be read leaves the default.
#[derive(Debug, Clone, PartialEq)]
pub struct Settings {
    /// How far a rough wall may be off either way and still be even, mm.
    pub rough_tolerance_mm: f64,
    /// The same at the finish, mm.
    pub finish_tolerance_mm: f64,
    /// Wood kept in hand for cleaning up, mm.
    pub margin_mm: f64,
    /// Wood kept in hand for remounting off centre, mm.
    pub remount_mm: f64,
    /// The step of the scale, g.
    pub scale_step_g: f64,
    /// After how many days a bag is felt again.
    pub bag_after: BagAfter,
    /// Weekdays on which bags are done; empty: any day.
    pub bag_days: Vec<Weekday>,
    /// The weekday on which pieces are weighed; `None`: any day.
    pub weigh_day: Option<Weekday>,
    /// Days of a steady weight before it counts as settled.
    pub steady_days: u32,
    /// True once the general cautions were read.
    pub cautions_read: bool,
    rhythms: BTreeMap<RhythmOf, Rhythm>,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            rough_tolerance_mm: 1.5,
            finish_tolerance_mm: 1.0,
            margin_mm: 1.5,
            remount_mm: 1.0,
            scale_step_g: 1.0,
            bag_after: BagAfter::default(),
            bag_days: Vec::new(),
            weigh_day: None,
            steady_days: 60,
            cautions_read: false,
            rhythms: BTreeMap::new(),
        }
    }
}

const WEEKDAYS: [(&str, Weekday); 7] = [
    ("mon", Weekday::Mon),
    ("tue", Weekday::Tue),
    ("wed", Weekday::Wed),
    ("thu", Weekday::Thu),
    ("fri", Weekday::Fri),
    ("sat", Weekday::Sat),
    ("sun", Weekday::Sun),
];

/// The three-letter key of a weekday, `mon` to `sun`.
#[must_use]
pub fn weekday_key(day: Weekday) -> &'static str {
    WEEKDAYS
        .iter()
        .find(|(_, d)| *d == day)
        .map_or("mon", |(k, _)| k)
}

/// The weekday of a three-letter key.
#[must_use]
pub fn weekday_from_key(key: &str) -> Option<Weekday> {
    WEEKDAYS.iter().find(|(k, _)| *k == key).map(|(_, d)| *d)
}

impl Settings {
    /// The settings from stored keys and values; what cannot be read keeps its default.
    #[must_use]
    pub fn from_stored(stored: &BTreeMap<String, String>) -> Self {
        let mut s = Self::default();
        for (key, value) in stored {
            s.apply(key, value);
        }
        s
    }

    /// Applies one stored setting. Returns false where key or value cannot be read; nothing changes then.
    pub fn apply(&mut self, key: &str, value: &str) -> bool {
        let within = |low: f64, high: f64| {
            value
                .parse::<f64>()
                .ok()
                .filter(|v| v.is_finite() && (low..=high).contains(v))
        };
        let days = || value.parse().ok().filter(|d| (1..=30).contains(d));
        match key {
            "bag_first_days" => set(&mut self.bag_after.first, days()),
            "bag_wet_days" => set(&mut self.bag_after.wet, days()),
            "bag_wet_short_days" => set(&mut self.bag_after.wet_short, days()),
            "bag_damp_days" => set(&mut self.bag_after.damp, days()),
            "bag_nothing_days" => set(&mut self.bag_after.nothing, days()),
            "bag_mould_days" => set(&mut self.bag_after.mould, days()),
            "rough_tolerance_mm" => set(&mut self.rough_tolerance_mm, within(0.1, 10.0)),
            "finish_tolerance_mm" => set(&mut self.finish_tolerance_mm, within(0.1, 10.0)),
            "margin_mm" => set(&mut self.margin_mm, within(0.0, 20.0)),
            "remount_mm" => set(&mut self.remount_mm, within(0.0, 20.0)),
            "scale_step_g" => set(&mut self.scale_step_g, within(0.01, 100.0)),
            "steady_days" => set(
                &mut self.steady_days,
                value.parse().ok().filter(|d| (14..=365).contains(d)),
            ),
            "cautions_read" => set(&mut self.cautions_read, value.parse().ok()),
            "bag_days" => {
                let days: Option<Vec<_>> = value.split_whitespace().map(weekday_from_key).collect();
                set(&mut self.bag_days, days)
            }
            "weigh_day" if value.is_empty() => {
                self.weigh_day = None;
                true
            }
            "weigh_day" => set(&mut self.weigh_day, weekday_from_key(value).map(Some)),
            _ => match key.strip_prefix("rhythm_").and_then(RhythmOf::from_key) {
                Some(of) => match Rhythm::parse(value) {
                    Some(rhythm) => {
                        self.rhythms.insert(of, rhythm);
                        true
                    }
                    None => false,
                },
                None => false,
            },
        }
    }

    /// The rhythm of a method or stage: the turner's own, or the default of common practice.
    #[must_use]
    pub fn rhythm(&self, of: RhythmOf) -> Rhythm {
        self.rhythms.get(&of).cloned().unwrap_or_else(|| of.usual())
    }
}

fn set<T>(place: &mut T, value: Option<T>) -> bool {
    match value {
        Some(value) => {
            *place = value;
            true
        }
        None => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_that_cannot_be_read_keeps_the_default() {
        let mut s = Settings::default();
        assert!(s.apply("rough_tolerance_mm", "2"));
        assert!(!s.apply("rough_tolerance_mm", "lots"));
        assert!(!s.apply("rough_tolerance_mm", "-3"));
        assert!((s.rough_tolerance_mm - 2.0).abs() < 1e-12);
        assert!(s.apply("bag_days", "mon thu sat"));
        assert!(!s.apply("bag_days", "mon someday"));
        assert_eq!(s.bag_days, [Weekday::Mon, Weekday::Thu, Weekday::Sat]);
        assert!(!s.apply("unheard_of", "1"));
        assert!(s.apply("bag_damp_days", "4"));
        assert!(!s.apply("bag_wet_days", "0"));
        assert_eq!((s.bag_after.damp, s.bag_after.wet), (4, 2));
    }
}
