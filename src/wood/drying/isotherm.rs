//! The isotherm at one temperature, made ready for a solver: settling moisture and its inverse by Newton's method.
//!
//! The law is that of [`crate::moisture`]. Written out, its inverse is the root of a cubic; from the last value of the same
//! wall face two or three Newton steps reach rounding, and bisection is the check (see the tests).

use crate::moisture::Constants;

/// Settling moisture and activity at one temperature.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Isotherm {
    constants: Constants,
    /// Moisture in saturated air, the end of the law.
    pub(crate) top: f64,
}

impl Isotherm {
    /// At `temp_c` degrees C, which the caller has checked.
    pub(crate) fn at(temp_c: f64) -> Self {
        let constants = Constants::at(temp_c);
        Isotherm {
            top: constants.moisture(1.0),
            constants,
        }
    }

    /// Settling moisture at humidity `rh` (0 to 1).
    #[inline]
    pub(crate) fn settling(&self, rh: f64) -> f64 {
        self.constants.moisture(rh)
    }

    /// Coefficients c0..c3 of the cubic in x = K h whose root belongs to the moisture `m`.
    #[inline]
    fn cubic(&self, m: f64) -> [f64; 4] {
        let Constants { w, k1, k2, .. } = self.constants;
        let s = m * w / 18.0;
        let kk = k1 * k2;
        [
            -s,
            1.0 + k1 - s * (k1 - 1.0),
            2.0 * kk - s * (kk - k1),
            kk * (s - 1.0),
        ]
    }

    /// Humidity in balance with the moisture `m`, 1 from the end of the law on, 0 for none. `start` is a guess.
    #[inline]
    pub(crate) fn activity(&self, m: f64, start: f64) -> f64 {
        if m >= self.top {
            return 1.0;
        }
        if m <= 0.0 {
            return 0.0;
        }
        let k = self.constants.k;
        let [c0, c1, c2, c3] = self.cubic(m);
        let mut x = k * start.clamp(0.02, 1.0);
        for _ in 0..12 {
            let value = ((c3 * x + c2) * x + c1) * x + c0;
            let slope = (3.0 * c3 * x + 2.0 * c2) * x + c1;
            let step = value / slope;
            x -= step;
            if step.abs() < 1e-12 {
                if x > 0.0 && x <= k {
                    return x / k;
                }
                break;
            }
        }
        self.bisected(m)
    }

    /// The slow sure way, for a start that leads Newton astray.
    fn bisected(&self, m: f64) -> f64 {
        let (mut low, mut high) = (0.0_f64, 1.0_f64);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if self.settling(middle) < m {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high)
    }

    /// How steeply the activity rises with moisture at humidity `rh`.
    pub(crate) fn slope(&self, rh: f64) -> f64 {
        let (low, high) = ((rh - 1e-5).max(0.0), (rh + 1e-5).min(1.0));
        (high - low) / (self.settling(high) - self.settling(low))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn newton_and_bisection_agree_from_any_start(t in -20.0..60.0_f64, m in 0.0..0.35_f64, start in 0.0..1.0_f64) {
            let newton = Isotherm::at(t).activity(m, start);
            let halved = crate::moisture::activity(m, t).unwrap();
            prop_assert!((newton - halved).abs() < 1e-11, "{newton} {halved}");
        }

        #[test]
        fn the_slope_is_that_of_the_inverse(t in -20.0..60.0_f64, h in 0.05..0.95_f64) {
            let iso = Isotherm::at(t);
            let m = iso.settling(h);
            let chord = (iso.activity(m + 1e-6, h) - iso.activity(m - 1e-6, h)) / 2e-6;
            prop_assert!((iso.slope(h) / chord - 1.0).abs() < 1e-4);
        }
    }
}
