//! How much of an even wall is left when a dried section is trued round again: the closed forms.
//!
//! The wall left is the largest ring that fits between the dried outline and the dried bore. Geometry only: knots, spiral
//! grain, taper and a tilted remount come on top, which is what the margin is for. Plus or minus 20 % on both shrinkages moves
//! an ash vessel of 140 mm by 0.4 mm.

use std::f64::consts::PI;

use crate::range::{Range, RangeError};
use crate::section::{Pith, Place, Ring, SectionError, Strains};

/// Distance of the pith over the outside radius, for a pith outside the section.
pub const PITH_RATIO: Range = Range::new("distance of the pith over the radius", "", 1.0, 1.0e6);

/// The wall that can be trued.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallLeft {
    /// Largest even wall, mm; below 0 when none is left.
    pub wall_mm: f64,
    /// How much of the full ovality counts: 1 for a pith far away or not known, less for one near or inside.
    pub factor: f64,
    /// True when the formula is exact for the model, false when it is a bound on the safe side.
    pub exact: bool,
}

/// Largest even wall of a ring that shrinks by `least` one way and `most` square to it: t (1 - lo) - a (hi - lo), mm.
/// Exact for an affine change; below 0 when nothing is left.
pub fn affine_wall_mm(ring: &Ring, least: f64, most: f64) -> f64 {
    ring.wall_mm() * (1.0 - least) - ring.radius_mm() * (most - least)
}

/// The largest even wall of `ring` dried by `strains` with the pith at `pith`.
///
/// Far or not known, and in the wall: the affine form, which is never too much. Outside: the exact form about the lathe's own
/// axis carried along by the wood, which is the best axis. In the bore: a safe bound, c = (d / b)^2 up to t / a = 0.25 and 1
/// above; see [`crate::axis::closed_ring_wall`] for the figure itself.
///
/// # Errors
/// [`SectionError`] when the distance of the pith is out of range.
pub fn wall_left(ring: &Ring, strains: Strains, pith: Pith) -> Result<WallLeft, SectionError> {
    let full = affine_wall_mm(ring, strains.least(), strains.most());
    Ok(match (pith, pith.place(ring)?) {
        (Pith::At(d), Place::Outside) => {
            let wall_mm = free_reach(ring.radius_mm(), d, strains).0
                - free_reach(ring.bore_mm(), d, strains).1;
            let ovality = ring.radius_mm() * strains.difference().abs();
            let lost = ring.wall_mm() * (1.0 - strains.least()) - wall_mm;
            WallLeft {
                wall_mm,
                factor: if ovality > 0.0 { lost / ovality } else { 1.0 },
                exact: true,
            }
        }
        (Pith::At(d), Place::InBore) => {
            let factor = bore_factor(ring, d);
            let wall_mm = ring.wall_mm() * (1.0 - strains.least())
                - factor * ring.radius_mm() * (strains.most() - strains.least());
            WallLeft {
                wall_mm,
                factor,
                exact: false,
            }
        }
        (Pith::Far, _) => WallLeft {
            wall_mm: full,
            factor: 1.0,
            exact: true,
        },
        _ => WallLeft {
            wall_mm: full,
            factor: 1.0,
            exact: false,
        },
    })
}

/// The safe bound of c for a pith `d` from the axis, in the bore.
pub(crate) fn bore_factor(ring: &Ring, d: f64) -> f64 {
    if ring.wall_mm() <= 0.25 * ring.radius_mm() {
        (d / ring.bore_mm()).powi(2).min(1.0)
    } else {
        1.0
    }
}

/// Least and greatest distance of a circle of `radius` from its own centre, carried along, after drying with the pith at `d`.
///
/// Squared: (1 - R)^2 [a^2 + 2 r d (cos f - cos k f)] over the circle, with r and f the place seen from the pith and
/// k = (1 - T) / (1 - R).
pub(crate) fn free_reach(radius: f64, d: f64, strains: Strains) -> (f64, f64) {
    let k = (1.0 - strains.tangential) / (1.0 - strains.radial);
    let square = |beta: f64| {
        let (x, y) = (d - radius * beta.cos(), radius * beta.sin());
        let f = y.atan2(x);
        // cos f - cos kf = -2 sin((f + kf)/2) sin((f - kf)/2), which keeps its digits for a far pith.
        let bent = -2.0 * (0.5 * f * (1.0 + k)).sin() * (0.5 * f * (1.0 - k)).sin();
        radius * radius + 2.0 * x.hypot(y) * d * bent
    };
    let least = -greatest(0.0, PI, |beta| -square(beta));
    let most = greatest(0.0, PI, square);
    (
        (1.0 - strains.radial) * least.max(0.0).sqrt(),
        (1.0 - strains.radial) * most.sqrt(),
    )
}

/// Least distance of the dried outside from the lathe's own axis carried along by the wood, mm, for a section of `radius_mm` with
/// its pith `pith_mm` from the axis, outside: the largest round that can be turned from it, as a radius. Exact.
///
/// # Errors
/// [`SectionError`] when a figure is out of range or the pith is not outside.
pub fn outside_reach_mm(
    radius_mm: f64,
    pith_mm: f64,
    strains: Strains,
) -> Result<f64, SectionError> {
    let radius = crate::section::SECTION_RADIUS.check(radius_mm)?;
    let pith = Range::new(
        "distance of the pith, outside the section,",
        "mm",
        radius,
        crate::section::PITH_DISTANCE.max,
    );
    Ok(free_reach(radius, pith.check(pith_mm)?, strains).0)
}

/// Share of the full ovality that counts, first order, for a pith at `ratio` = d / a outside the section:
/// c(s) = max of s sin(b) atan2(sin b, s - cos b). 0.91 at the surface, rising to 1 far away.
///
/// # Errors
/// [`RangeError`] when the ratio is outside [`PITH_RATIO`].
pub fn free_factor(ratio: f64) -> Result<f64, RangeError> {
    let s = PITH_RATIO.check(ratio)?;
    Ok(greatest(0.0, PI, |b| {
        s * b.sin() * b.sin().atan2(s - b.cos())
    }))
}

/// Largest value of a smooth `f` with one peak wider than a ninetieth of the span: a scan, then golden section.
fn greatest(from: f64, to: f64, f: impl Fn(f64) -> f64) -> f64 {
    let step = (to - from) / 90.0;
    let best = (0..=90)
        .map(|i| f64::from(i) * step + from)
        .fold((from, f64::MIN), |best, x| {
            let value = f(x);
            if value > best.1 { (x, value) } else { best }
        });
    let (_, value) = golden(best.0 - step, best.0 + step, 1e-9, |x| f(x.clamp(from, to)));
    value.max(best.1)
}

/// Place and value of the largest `f` between `low` and `high` to within `tolerance` in place, for an `f` with one peak.
pub(crate) fn golden(
    mut low: f64,
    mut high: f64,
    tolerance: f64,
    mut f: impl FnMut(f64) -> f64,
) -> (f64, f64) {
    const SHARE: f64 = 0.618_033_988_749_894_9;
    let mut left = high - SHARE * (high - low);
    let mut right = low + SHARE * (high - low);
    let (mut f_left, mut f_right) = (f(left), f(right));
    while high - low > tolerance {
        if f_left < f_right {
            low = left;
            (left, f_left) = (right, f_right);
            right = low + SHARE * (high - low);
            f_right = f(right);
        } else {
            high = right;
            (right, f_right) = (left, f_left);
            left = high - SHARE * (high - low);
            f_left = f(left);
        }
    }
    if f_left > f_right {
        (left, f_left)
    } else {
        (right, f_right)
    }
}
