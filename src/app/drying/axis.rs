//! Axis: round steps for weights and days along the edge of a chart.

use crate::numbers::{MassUnit, Numbers, Unit};

/// Grams in the unit that the weights of a chart are counted in: grams, or ounces.
fn unit_g(numbers: &Numbers) -> f64 {
    match numbers.units().mass {
        MassUnit::Gram => 1.0,
        MassUnit::OunceAndPound => Unit::Ounce.to_base(1.0),
    }
}

/// The smallest round step of at least `least`: 1, 2, 5 and their tens in grams; halves, quarters and whole pounds in
/// ounces.
fn round_step(least: f64, pounds: bool) -> f64 {
    const OUNCES: [f64; 9] = [0.1, 0.2, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0];
    if pounds && least <= 32.0 {
        return OUNCES
            .into_iter()
            .find(|s| *s >= least - 1e-9)
            .unwrap_or(32.0);
    }
    let (base, least) = if pounds {
        (16.0, least / 16.0)
    } else {
        (1.0, least)
    };
    let tens = 10_f64.powf(least.max(1e-3).log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|s| s * tens)
        .find(|s| *s >= least - 1e-9);
    base * step.unwrap_or(10.0 * tens)
}

/// A range of weights with round steps across it, g.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct WeightAxis {
    /// The lowest weight drawn, g.
    pub low_g: f64,
    /// The highest weight drawn, g.
    pub high_g: f64,
    /// The steps, from low to high, g.
    pub ticks_g: Vec<f64>,
}

impl WeightAxis {
    /// An axis that holds the weights from `low_g` to `high_g` with some room. A weight that stays put is not blown up
    /// to fill the height: at least eight steps of the scale, or 4 %, are shown.
    pub fn over(low_g: f64, high_g: f64, scale_step_g: f64, numbers: &Numbers) -> Self {
        let middle = (low_g + high_g) / 2.0;
        let unit = unit_g(numbers);
        let pounds = numbers.units().mass == MassUnit::OunceAndPound;
        // From ten pounds up "12 lb 8" is too wide for the edge: whole pounds, and room for two of them.
        let whole_pounds = pounds && high_g / unit >= 150.0;
        let two_pounds = if whole_pounds { 2.2 * 16.0 * unit } else { 0.0 };
        let least = (8.0 * scale_step_g)
            .max(0.04 * middle)
            .max(1.0)
            .max(two_pounds);
        let room = (0.08 * (high_g - low_g)).max((least - (high_g - low_g)) / 2.0);
        let (low, high) = ((low_g - room).max(0.0), high_g + room);
        let least_step = if whole_pounds { 16.0 } else { 0.0 };
        let marks = |parts: f64| -> Vec<f64> {
            let step = unit * round_step(((high - low) / unit / parts).max(least_step), pounds);
            let first = (low / step).ceil();
            (0..8)
                .map(|i| (first + f64::from(i)) * step)
                .take_while(|g| *g <= high + 1e-6)
                .collect()
        };
        // Few marks read best; where they fall so that only one is left, the next finer step has more.
        let coarse = marks(4.5);
        let ticks_g = if coarse.len() < 2 { marks(5.6) } else { coarse };
        Self {
            low_g: low,
            high_g: high,
            ticks_g,
        }
    }

    /// How far a weight lies from the top, 0 to 1.
    pub fn at(&self, g: f64) -> f64 {
        ((self.high_g - g) / (self.high_g - self.low_g)).clamp(0.0, 1.0)
    }
}

/// Whole per cents of moisture along an axis of weights, for wood of this oven-dry mass, g.
pub(super) fn moisture_marks(axis: &WeightAxis, dry_g: f64) -> Vec<i32> {
    let percent = |g: f64| 100.0 * (g / dry_g - 1.0);
    let (low, high) = (percent(axis.low_g).max(0.0), percent(axis.high_g));
    let step = [1, 2, 5, 10, 20, 50, 100]
        .into_iter()
        .find(|s| (high - low) / f64::from(*s) <= 5.6)
        .unwrap_or(200);
    let first = (low / f64::from(step)).ceil() as i32; // per cents of moisture, some hundreds at most
    (first..)
        .map(|i| i * step)
        .take_while(|m| f64::from(*m) <= high)
        .collect()
}

/// A weight at the edge of a chart: "828"; "12 oz", "2 lb 8".
pub(super) fn tick_text(g: f64, step_g: f64, numbers: &Numbers) -> String {
    let shown = numbers.mass_by_scale(g, step_g);
    if numbers.units().mass == MassUnit::Gram || shown.number.contains(' ') {
        shown.number
    } else {
        shown.text()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numbers::Units;
    use crate::words::{Language, Words};
    use proptest::prelude::*;

    fn numbers(mass: MassUnit) -> Numbers {
        let units = Units {
            mass,
            ..Units::default()
        };
        Numbers::new(units, &Words::new(Language::EnGb))
    }

    #[test]
    fn grams_are_marked_in_ones_twos_and_fives() {
        let axis = WeightAxis::over(822.0, 1240.0, 1.0, &numbers(MassUnit::Gram));
        assert_eq!(axis.ticks_g, [800.0, 1000.0, 1200.0]);
        let still = WeightAxis::over(420.0, 421.0, 1.0, &numbers(MassUnit::Gram));
        assert_eq!(still.ticks_g, [415.0, 420.0, 425.0]);
    }

    #[test]
    fn pounds_are_marked_in_halves_and_quarters() {
        let numbers = numbers(MassUnit::OunceAndPound);
        let axis = WeightAxis::over(822.0, 1240.0, 1.0, &numbers);
        let texts: Vec<String> = axis
            .ticks_g
            .iter()
            .map(|g| tick_text(*g, 1.0, &numbers))
            .collect();
        assert_eq!(
            texts,
            ["1 lb 12", "2\u{a0}lb", "2 lb 4", "2 lb 8", "2 lb 12"]
        );
    }

    #[test]
    fn moisture_is_marked_in_whole_per_cents() {
        let axis = WeightAxis::over(330.0, 435.0, 0.1, &numbers(MassUnit::Gram));
        assert_eq!(moisture_marks(&axis, 300.0), [10, 20, 30, 40]);
        let still = WeightAxis::over(333.0, 336.0, 0.1, &numbers(MassUnit::Gram));
        assert_eq!(moisture_marks(&still, 300.0), [10, 11, 12, 13]);
    }

    proptest! {
        #[test]
        fn every_axis_holds_its_weights_and_has_some_marks(
            low in 20.0..20_000.0_f64, more in 0.0..5000.0_f64, pounds in proptest::bool::ANY
        ) {
            let unit = if pounds { MassUnit::OunceAndPound } else { MassUnit::Gram };
            let axis = WeightAxis::over(low, low + more, 1.0, &numbers(unit));
            prop_assert!(axis.low_g <= low && axis.high_g >= low + more);
            prop_assert!((2..=7).contains(&axis.ticks_g.len()), "{:?}", axis);
        }
    }
}
