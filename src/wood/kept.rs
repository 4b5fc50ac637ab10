//! Kept: how many pieces of a kind were kept, with an interval that is honest about small numbers.

use crate::quantile::normal;

/// Under this many pieces the screens say "7 of 9" and no per cent.
pub const PER_CENT_FROM: u32 = 20;

/// A share with its interval, fractions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// Kept over all.
    pub share: f64,
    /// Low end.
    pub low: f64,
    /// High end.
    pub high: f64,
    /// True when there are enough to speak of per cent: [`PER_CENT_FROM`].
    pub enough_for_per_cent: bool,
}

/// The Wilson score interval of `level` (0.80 or 0.95, say) for `kept` of `all`. Source: Wilson (1927), Journal of the American
/// Statistical Association 22, 209. `None` when there are none, more kept than all, or the level is none.
#[must_use]
pub fn share_kept(kept: u32, all: u32, level: f64) -> Option<Share> {
    if all == 0 || kept > all {
        return None;
    }
    let z = normal(level)?;
    let (n, p) = (f64::from(all), f64::from(kept) / f64::from(all));
    let spread = z * z / n;
    let middle = (p + 0.5 * spread) / (1.0 + spread);
    let half = z / (1.0 + spread) * (p * (1.0 - p) / n + 0.25 * spread / n).sqrt();
    Some(Share {
        share: p,
        low: if kept == 0 { 0.0 } else { middle - half },
        high: if kept == all { 1.0 } else { middle + half },
        enough_for_per_cent: all >= PER_CENT_FROM,
    })
}

/// Whether two kinds differ beyond chance as far as their intervals of `level` tell: `true` when they do not overlap. Strict: it
/// calls fewer pairs different than a test of the difference would. `None` where an interval is missing.
#[must_use]
pub fn plainly_different(one: (u32, u32), other: (u32, u32), level: f64) -> Option<bool> {
    let (a, b) = (
        share_kept(one.0, one.1, level)?,
        share_kept(other.0, other.1, level)?,
    );
    Some(a.high < b.low || b.high < a.low)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn none_lost_is_no_certainty() {
        let s = share_kept(9, 9, 0.95).unwrap();
        // 1 / (1 + z^2 / n), the closed form for all kept.
        assert!((s.low - 1.0 / (1.0 + 1.959_964_f64.powi(2) / 9.0)).abs() < 1e-6);
        assert_eq!((s.share, s.high, s.enough_for_per_cent), (1.0, 1.0, false));
        assert!(share_kept(20, 20, 0.95).unwrap().enough_for_per_cent);
        assert_eq!(
            (share_kept(0, 0, 0.95), share_kept(3, 2, 0.95)),
            (None, None)
        );
        assert_eq!(share_kept(1, 2, 1.0), None);
    }

    #[test]
    fn seven_of_nine_against_five_of_nine_is_no_difference() {
        assert_eq!(plainly_different((7, 9), (5, 9), 0.80), Some(false));
        assert_eq!(plainly_different((19, 20), (2, 20), 0.95), Some(true));
        assert_eq!(plainly_different((0, 0), (2, 20), 0.95), None);
    }

    proptest! {
        #[test]
        fn the_ends_solve_wilsons_equation(all in 1_u32..400, part in 0.0..=1.0_f64, level in 0.5..0.99_f64) {
            let kept = (part * f64::from(all)).round() as u32;
            let s = share_kept(kept, all, level).unwrap();
            let z = normal(level).unwrap();
            // |p - share| = z sqrt(p (1 - p) / n) at both ends that are not at 0 or 1.
            for end in [s.low, s.high].into_iter().filter(|e| *e > 0.0 && *e < 1.0) {
                let distance = z * (end * (1.0 - end) / f64::from(all)).sqrt();
                prop_assert!(((end - s.share).abs() - distance).abs() < 1e-9);
            }
            prop_assert!(s.low <= s.share && s.share <= s.high && s.low >= 0.0 && s.high <= 1.0);
        }
    }
}
