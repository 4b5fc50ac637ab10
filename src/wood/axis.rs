//! The axis about which the most even wall can be trued, for measured or computed outlines of one station or of a whole vessel.
//!
//! Wall about an axis c: least distance from c to the outside less greatest distance from c to the bore. Within a convex outside
//! the first is concave in c and the second convex, so there is one optimum and a nested golden section finds it. With an outside
//! that is not convex the search is the same and the result a good one, but no longer proven the best. Tilt is left out.

use std::fmt;

use crate::section::{Dried, Pith, Ring, SectionError, Strains, Xy, dried};
use crate::trueing::golden;

/// One station: its dried outside and bore, and the wall wanted of it.
#[derive(Debug, Clone, Copy)]
pub struct Station<'a> {
    /// Outside, a closed row of points, mm.
    pub outer: &'a [Xy],
    /// Bore, a closed row of points, mm.
    pub inner: &'a [Xy],
    /// Wall wanted, mm; 0 to ask for the largest.
    pub wanted_mm: f64,
}

/// The best axis and what it leaves.
#[derive(Debug, Clone, PartialEq)]
pub struct BestAxis {
    /// Where the axis goes, in the frame of the outlines, mm.
    pub centre: Xy,
    /// Wall left at each station about that axis, mm.
    pub walls_mm: Vec<f64>,
    /// The least of wall left less wall wanted over the stations, mm.
    pub to_spare_mm: f64,
    /// Index of the station where that is.
    pub tightest: usize,
}

/// Why there is no axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AxisError {
    /// No station was given.
    NoStations,
    /// An outline has fewer than three points or one that is no number.
    BadOutline {
        /// Index of the station.
        station: usize,
    },
}

impl fmt::Display for AxisError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            AxisError::NoStations => write!(
                f,
                "no station has both an outside and a bore; measure one at least"
            ),
            AxisError::BadOutline { station } => write!(
                f,
                "station {} has an outline of fewer than three points or with a point that is no number; measure it again",
                station + 1
            ),
        }
    }
}

impl std::error::Error for AxisError {}

/// An outside ready for many distances.
enum Outer {
    /// Convex: each edge as inward normal and offset, so that distance = offset + normal . c.
    Convex(Vec<[f64; 3]>),
    /// Any other: its corners.
    Any(Vec<Xy>),
    /// The edges of any other that matter near an axis well inside it.
    Edges(Vec<(Xy, Xy)>),
}

struct Prepared {
    outer: Outer,
    inner: Vec<Xy>,
    wanted: f64,
}

/// The wall left about the axis `centre`: least distance to the outside's edges less greatest distance to the bore's points,
/// mm. Negative when the axis lies outside or the ring does not fit.
///
/// An outline without points leaves no wall: minus infinity.
pub fn wall_about_mm(outer: &[Xy], inner: &[Xy], centre: Xy) -> f64 {
    if outer.is_empty() || inner.is_empty() {
        return f64::NEG_INFINITY;
    }
    inside_distance(outer, centre) - farthest(inner, centre)
}

/// The best axis for one outline pair or for all stations together: the least (wall left less wall wanted) is as large as it
/// can be. Found to within 1e-5 mm of the best for outlines as given; a circle of 720 points is itself 6e-4 mm off.
///
/// # Errors
/// [`AxisError`] when there is no station or an outline is no outline.
pub fn best_axis(stations: &[Station<'_>]) -> Result<BestAxis, AxisError> {
    if stations.is_empty() {
        return Err(AxisError::NoStations);
    }
    for (station, s) in stations.iter().enumerate() {
        let good =
            |row: &[Xy]| row.len() >= 3 && row.iter().all(|p| p.x.is_finite() && p.y.is_finite());
        if !good(s.outer) || !good(s.inner) {
            return Err(AxisError::BadOutline { station });
        }
    }
    Ok(search(stations))
}

/// The search itself, for one or more stations with proper outlines.
fn search(stations: &[Station<'_>]) -> BestAxis {
    let coarse: Vec<Prepared> = stations
        .iter()
        .map(|s| prepare(&thinned(s.outer), &thinned(s.inner), s.wanted_mm))
        .collect();
    let fine: Vec<Prepared> = stations
        .iter()
        .map(|s| prepare(s.outer, s.inner, s.wanted_mm))
        .collect();
    let size = stations[0].outer.iter().fold(0.0_f64, |m, p| {
        m.max(p.distance(&middle(stations[0].outer)))
    });
    let start = middle(stations[0].inner);
    let rough = climb(&coarse, start, 0.15 * size, 2e-3 * size);
    let centre = climb(&fine, rough, 4e-3 * size, 1e-7 * size);
    let walls_mm: Vec<f64> = stations
        .iter()
        .map(|s| wall_about_mm(s.outer, s.inner, centre))
        .collect();
    let spare = walls_mm.iter().zip(stations).map(|(w, s)| w - s.wanted_mm);
    let (tightest, to_spare_mm) =
        spare.enumerate().fold(
            (0, f64::INFINITY),
            |best, (i, v)| if v < best.1 { (i, v) } else { best },
        );
    BestAxis {
        centre,
        walls_mm,
        to_spare_mm,
        tightest,
    }
}

/// The largest even wall of a ring with its pith in the bore, from its dried outlines and the best axis, mm; about 6e-4 mm low.
///
/// # Errors
/// [`SectionError`] when the pith is not in the bore or a figure is out of range.
pub fn closed_ring_wall(ring: &Ring, strains: Strains, pith_mm: f64) -> Result<f64, SectionError> {
    crate::closed_ring::ClosedRing::new(*ring, strains, pith_mm)?;
    let Dried::Shape { outer, inner } = dried(ring, strains, Pith::At(pith_mm), 720)? else {
        return Err(SectionError::PithNotInBore {
            distance_mm: pith_mm,
            bore_mm: ring.bore_mm(),
        });
    };
    let station = Station {
        outer: &outer,
        inner: &inner,
        wanted_mm: 0.0,
    };
    Ok(search(&[station]).to_spare_mm)
}

/// The centre of an outline's box.
fn middle(points: &[Xy]) -> Xy {
    let low = points.iter().fold(Xy::new(f64::MAX, f64::MAX), |m, p| {
        Xy::new(m.x.min(p.x), m.y.min(p.y))
    });
    let high = points.iter().fold(Xy::new(f64::MIN, f64::MIN), |m, p| {
        Xy::new(m.x.max(p.x), m.y.max(p.y))
    });
    Xy::new(0.5 * (low.x + high.x), 0.5 * (low.y + high.y))
}

/// Every so many-th point, about 90 of them.
fn thinned(points: &[Xy]) -> Vec<Xy> {
    points
        .iter()
        .step_by((points.len() / 90).max(1))
        .copied()
        .collect()
}

fn prepare(outer: &[Xy], inner: &[Xy], wanted: f64) -> Prepared {
    let n = outer.len();
    let area: f64 = (0..n)
        .map(|i| outer[i].x * outer[(i + 1) % n].y - outer[(i + 1) % n].x * outer[i].y)
        .sum();
    let sign = if area < 0.0 { -1.0 } else { 1.0 };
    let mut edges = Vec::with_capacity(n);
    let mut convex = true;
    for i in 0..n {
        let (p, q, r) = (outer[i], outer[(i + 1) % n], outer[(i + 2) % n]);
        let (dx, dy) = (sign * (q.x - p.x), sign * (q.y - p.y));
        let length = dx.hypot(dy);
        let turn = dx * sign * (r.y - q.y) - dy * sign * (r.x - q.x);
        convex &= turn >= -1e-9 * length * q.distance(&r);
        if length > 0.0 {
            let (nx, ny) = (-dy / length, dx / length);
            edges.push([nx, ny, -(nx * p.x + ny * p.y)]);
        }
    }
    let outer = if convex {
        Outer::Convex(edges)
    } else {
        Outer::Any(outer.to_vec())
    };
    Prepared {
        outer,
        inner: inner.to_vec(),
        wanted,
    }
}

impl Prepared {
    fn outer_distance(&self, c: Xy) -> f64 {
        match &self.outer {
            Outer::Convex(edges) => -greatest(edges, |e| -(e[0] * c.x + e[1] * c.y + e[2])),
            Outer::Any(points) => inside_distance(points, c),
            Outer::Edges(edges) => edges
                .iter()
                .fold(f64::INFINITY, |m, (p, q)| m.min(edge_distance(*p, *q, c))),
        }
    }

    fn spare(&self, c: Xy) -> f64 {
        self.outer_distance(c) - farthest(&self.inner, c) - self.wanted
    }

    /// Leaves out what cannot matter within `reach` of `c`: both distances change by no more than the way gone.
    fn near(&self, c: Xy, reach: f64) -> Prepared {
        let outer = match &self.outer {
            Outer::Convex(edges) => {
                let least = self.outer_distance(c);
                let keep = |e: &&[f64; 3]| e[0] * c.x + e[1] * c.y + e[2] <= least + 2.0 * reach;
                Outer::Convex(edges.iter().filter(keep).copied().collect())
            }
            Outer::Any(points) if self.outer_distance(c) > 2.0 * reach => {
                let least = self.outer_distance(c);
                let next = points.iter().cycle().skip(1);
                let edges = points.iter().zip(next).map(|(p, q)| (*p, *q));
                Outer::Edges(
                    edges
                        .filter(|(p, q)| edge_distance(*p, *q, c) <= least + 2.0 * reach)
                        .collect(),
                )
            }
            Outer::Any(points) => Outer::Any(points.clone()),
            Outer::Edges(edges) => Outer::Edges(edges.clone()),
        };
        let most = farthest(&self.inner, c);
        let inner = self
            .inner
            .iter()
            .filter(|p| p.distance(&c) >= most - 2.0 * reach)
            .copied()
            .collect();
        Prepared {
            outer,
            inner,
            wanted: self.wanted,
        }
    }
}

/// Nested golden section within `reach` of `start`, begun again where it ends at the edge of its box.
fn climb(stations: &[Prepared], start: Xy, reach: f64, tolerance: f64) -> Xy {
    let mut centre = start;
    for _ in 0..30 {
        let close: Vec<Prepared> = stations
            .iter()
            .map(|s| s.near(centre, 1.5 * reach))
            .collect();
        let least = |c: Xy| close.iter().fold(f64::INFINITY, |m, s| m.min(s.spare(c)));
        let best_y = |x: f64| {
            golden(centre.y - reach, centre.y + reach, tolerance, |y| {
                least(Xy::new(x, y))
            })
        };
        let (x, _) = golden(centre.x - reach, centre.x + reach, tolerance, |x| {
            best_y(x).1
        });
        let found = Xy::new(x, best_y(x).0);
        let edge = (found.x - centre.x).abs().max((found.y - centre.y).abs()) > 0.95 * reach;
        centre = found;
        if !edge {
            break;
        }
    }
    centre
}

/// Greatest distance from `c` to the points.
fn farthest(points: &[Xy], c: Xy) -> f64 {
    greatest(points, |p| {
        (p.x - c.x) * (p.x - c.x) + (p.y - c.y) * (p.y - c.y)
    })
    .max(0.0)
    .sqrt()
}

/// The greatest value of `f`, four side by side so that one comparison need not wait for the last.
fn greatest<T>(items: &[T], f: impl Fn(&T) -> f64) -> f64 {
    let larger = |m: f64, v: f64| if v > m { v } else { m };
    let (fours, rest) = items.as_chunks::<4>();
    let mut most = [f64::NEG_INFINITY; 4];
    for four in fours {
        for (m, item) in most.iter_mut().zip(four) {
            *m = larger(*m, f(item));
        }
    }
    rest.iter()
        .map(f)
        .chain(most)
        .fold(f64::NEG_INFINITY, larger)
}

/// Distance from `c` to the edge from `p` to `q`.
fn edge_distance(p: Xy, q: Xy, c: Xy) -> f64 {
    let (dx, dy) = (q.x - p.x, q.y - p.y);
    let square = dx * dx + dy * dy;
    let along = (c.x - p.x) * dx + (c.y - p.y) * dy;
    let t = if square > 0.0 {
        (along / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (p.x + t * dx - c.x).hypot(p.y + t * dy - c.y)
}

/// Distance from `c` to the nearest edge of a closed polygon, negative when `c` lies outside.
fn inside_distance(points: &[Xy], c: Xy) -> f64 {
    let mut least = f64::INFINITY;
    let mut inside = false;
    let mut p = points[points.len() - 1];
    for &q in points {
        least = least.min(edge_distance(p, q, c));
        if (p.y > c.y) != (q.y > c.y) && c.x < p.x + (c.y - p.y) / (q.y - p.y) * (q.x - p.x) {
            inside = !inside;
        }
        p = q;
    }
    if inside { least } else { -least }
}
