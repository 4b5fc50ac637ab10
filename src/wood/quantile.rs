//! Quantiles: how many standard deviations an interval of a wanted level reaches to each side.

use statrs::distribution::{ContinuousCDF, Normal, StudentsT};

/// Half width, in standard errors, of the two-sided interval of `level` (between 0 and 1) under Student's t with `freedom`
/// degrees of freedom (1 or more). `None` outside those ranges.
#[must_use]
pub fn student_t(level: f64, freedom: u32) -> Option<f64> {
    if !(level > 0.0 && level < 1.0) || freedom == 0 {
        return None;
    }
    let t = StudentsT::new(0.0, 1.0, f64::from(freedom)).ok()?;
    Some(t.inverse_cdf(0.5 + 0.5 * level))
}

/// Half width, in standard deviations, of the two-sided interval of `level` (between 0 and 1) under the normal law. `None`
/// outside that range.
#[must_use]
pub fn normal(level: f64) -> Option<f64> {
    if !(level > 0.0 && level < 1.0) {
        return None;
    }
    Some(Normal::new(0.0, 1.0).ok()?.inverse_cdf(0.5 + 0.5 * level))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    /// The tables of textbooks: 2.132 (4 degrees, 90 %), 1.771 (13, 90 %), 6.314 (1, 90 %), 1.960 and 1.2816 (normal).
    #[test]
    fn the_tables_of_textbooks() {
        assert!((student_t(0.90, 4).unwrap() - 2.132).abs() < 5e-4);
        assert!((student_t(0.90, 13).unwrap() - 1.771).abs() < 5e-4);
        assert!((student_t(0.90, 1).unwrap() - 6.314).abs() < 5e-4);
        assert!((normal(0.95).unwrap() - 1.960).abs() < 5e-4);
        assert!((normal(0.80).unwrap() - 1.2816).abs() < 5e-5);
    }

    #[test]
    fn a_level_that_is_none_gives_none() {
        for level in [0.0, 1.0, -0.5, f64::NAN] {
            assert_eq!((student_t(level, 5), normal(level)), (None, None));
        }
        assert_eq!(student_t(0.9, 0), None);
    }
}
