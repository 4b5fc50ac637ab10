//! Five own outlines to pick from, scaled to the size of a piece, for drawing before diameters are measured.
//!
//! Each is drawn from scratch as two curves that meet at the widest place. They are pictures of a usual shape and no
//! measurement: weight and volume are never worked out from them.

use std::f64::consts::PI;

use crate::outside::Outside;
use crate::pchip::Pchip;
use crate::profile::{HEIGHT, ProfileError};
use crate::range::Range;

/// Largest outside diameter, mm.
pub const DIAMETER: Range = Range::new("outside diameter", "mm", 10.0, 1500.0);

/// A usual shape of hollow vessel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Outline {
    /// As round above as below.
    Ball,
    /// Widest above the middle, running in to a small foot.
    Egg,
    /// A neck above a low belly.
    Pear,
    /// A tight shoulder close under the mouth and a long straight run to the foot.
    HighShoulder,
    /// Slender, with a wide mouth.
    Tall,
}

/// How a curve leaves the widest place: 0 there, 1 at its end.
#[derive(Debug, Clone, Copy)]
enum Bend {
    /// An arc of an ellipse, cut off at this share of its half axis: the nearer 1, the flatter it ends.
    Arc(f64),
    /// A wave that ends parallel to the axis: a neck.
    Wave,
    /// A power: 2 is a parabola, 1.3 nearly straight.
    Power(f64),
}

impl Bend {
    fn at(self, u: f64) -> f64 {
        match self {
            Bend::Arc(k) => (1.0 - (1.0 - (k * u).powi(2)).sqrt()) / (1.0 - (1.0 - k * k).sqrt()),
            Bend::Wave => 0.5 - 0.5 * (PI * u).cos(),
            Bend::Power(p) => u.powf(p),
        }
    }
}

/// The figures of an outline, all as shares of the height or of the widest radius.
struct Shape {
    /// Depth of the widest place over the height.
    widest_at: f64,
    /// Mouth over the widest diameter when the mouth is not said.
    mouth: f64,
    /// Foot over the widest diameter.
    foot: f64,
    /// Width of the rim's flat over the wall.
    lip: f64,
    above: Bend,
    below: Bend,
}

impl Outline {
    /// All five, in the order in which they are offered.
    pub const ALL: [Outline; 5] = [
        Outline::Ball,
        Outline::Egg,
        Outline::Pear,
        Outline::HighShoulder,
        Outline::Tall,
    ];

    /// A short key that never changes ("high-shoulder").
    pub fn key(self) -> &'static str {
        match self {
            Outline::Ball => "ball",
            Outline::Egg => "egg",
            Outline::Pear => "pear",
            Outline::HighShoulder => "high-shoulder",
            Outline::Tall => "tall",
        }
    }

    /// The outline with the key `key`.
    pub fn from_key(key: &str) -> Option<Outline> {
        Outline::ALL.into_iter().find(|o| o.key() == key)
    }

    fn shape(self) -> Shape {
        match self {
            Outline::Ball => Shape {
                widest_at: 0.49,
                mouth: 0.34,
                foot: 0.40,
                lip: 0.35,
                above: Bend::Arc(0.93),
                below: Bend::Arc(0.92),
            },
            Outline::Egg => Shape {
                widest_at: 0.40,
                mouth: 0.40,
                foot: 0.36,
                lip: 0.35,
                above: Bend::Arc(0.91),
                below: Bend::Power(1.9),
            },
            Outline::Pear => Shape {
                widest_at: 0.64,
                mouth: 0.36,
                foot: 0.46,
                lip: 1.0,
                above: Bend::Wave,
                below: Bend::Arc(0.93),
            },
            Outline::HighShoulder => Shape {
                widest_at: 0.27,
                mouth: 0.38,
                foot: 0.40,
                lip: 0.35,
                above: Bend::Arc(0.965),
                below: Bend::Power(1.55),
            },
            Outline::Tall => Shape {
                widest_at: 0.40,
                mouth: 0.58,
                foot: 0.54,
                lip: 0.8,
                above: Bend::Arc(0.75),
                below: Bend::Power(2.1),
            },
        }
    }

    /// The opening of this outline at `diameter_mm` when it is not said, mm.
    pub fn usual_mouth_mm(self, diameter_mm: f64) -> f64 {
        self.shape().mouth * diameter_mm
    }

    /// The outside of this outline at a largest diameter, a height from rim to foot line, an opening (`None` for the usual
    /// one) and a wall at the rim, all mm. An opening too wide for the diameter and wall is drawn as wide as they allow.
    ///
    /// # Errors
    /// [`ProfileError::Range`] when diameter, height, opening or wall are out of range.
    pub fn scaled(
        self,
        diameter_mm: f64,
        height_mm: f64,
        mouth_mm: Option<f64>,
        wall_mm: f64,
    ) -> Result<Outside, ProfileError> {
        let shape = self.shape();
        let widest = 0.5 * DIAMETER.check(diameter_mm)?;
        let height = HEIGHT.check(height_mm)?;
        let wall = crate::wall::WALL.check(wall_mm)?;
        let mouth = match mouth_mm {
            Some(mouth) => Range::new("opening", "mm", 1.0, 1500.0).check(mouth)?,
            None => self.usual_mouth_mm(diameter_mm),
        };
        let rim = (0.5 * mouth + shape.lip * wall).clamp(0.05 * widest, 0.985 * widest);
        let foot = shape.foot * widest;
        let mut depth = Vec::with_capacity(2 * KNOTS + 1);
        let mut radius = Vec::with_capacity(2 * KNOTS + 1);
        // Knots lie closer where the curve bends most: at the rim and at the foot.
        for i in (0..=KNOTS).rev() {
            let u = (0.5 * PI * i as f64 / KNOTS as f64).sin();
            depth.push(height * shape.widest_at * (1.0 - u));
            radius.push(widest - (widest - rim) * shape.above.at(u));
        }
        for i in 1..=KNOTS {
            let u = (0.5 * PI * i as f64 / KNOTS as f64).sin();
            depth.push(height * (shape.widest_at + (1.0 - shape.widest_at) * u));
            radius.push(widest - (widest - foot) * shape.below.at(u));
        }
        Outside::through(
            &depth,
            &radius.iter().map(|r| r.max(1.0)).collect::<Vec<_>>(),
        )
    }
}

/// Knots on either side of the widest place.
const KNOTS: usize = 12;

/// An outside bent to measured diameters: the outline between them, each place scaled by what the nearest measurements say.
///
/// `measured` are (depth from the rim, outside diameter), mm, depths rising; none leaves the outline as it is. For drawing:
/// the sums go through the measured stations alone.
///
/// # Errors
/// [`ProfileError`] when a figure is out of range or the depths are out of order.
pub fn bent_to(outside: &Outside, measured: &[(f64, f64)]) -> Result<Outside, ProfileError> {
    let Some(&(first, _)) = measured.first() else {
        return Ok(outside.clone());
    };
    let last = measured[measured.len() - 1].0;
    let depths: Vec<f64> = measured.iter().map(|m| m.0).collect();
    let mut ratios = Vec::with_capacity(measured.len());
    for &(depth, diameter) in measured {
        crate::outside::DEPTH.check(depth)?;
        let drawn = outside.radius_mm(depth).max(0.5);
        ratios.push(0.5 * DIAMETER.check(diameter)? / drawn);
    }
    let ratio = if measured.len() > 1 {
        Some(Pchip::through(&depths, &ratios)?)
    } else {
        None
    };
    let at = |z: f64| {
        ratio
            .as_ref()
            .map_or(ratios[0], |curve| curve.value(z.clamp(first, last)))
    };
    let mut knots: Vec<f64> = outside.depths_mm().to_vec();
    knots.extend(&depths);
    knots.sort_by(f64::total_cmp);
    knots.dedup_by(|a, b| *a - *b < 1e-6);
    let radii: Vec<f64> = knots
        .iter()
        .map(|&z| (outside.radius_mm(z) * at(z)).max(1.0))
        .collect();
    Outside::through(&knots, &radii)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn every_key_leads_back_to_its_outline() {
        for outline in Outline::ALL {
            assert_eq!(Outline::from_key(outline.key()), Some(outline));
        }
        assert_eq!(Outline::from_key("bottle"), None);
    }

    #[test]
    fn absurd_sizes_are_refused() {
        for (d, h, m, w) in [
            (0.0, 100.0, None, 10.0),
            (100.0, f64::NAN, None, 10.0),
            (100.0, 100.0, Some(-3.0), 10.0),
        ] {
            assert!(Outline::Ball.scaled(d, h, m, w).is_err());
        }
    }

    proptest! {
        #[test]
        fn the_size_asked_for_is_the_size_drawn(
            which in 0usize..5, d in 60.0..400.0_f64, h in 50.0..500.0_f64, wall in 4.0..12.0_f64
        ) {
            let outline = Outline::ALL[which];
            let outside = outline.scaled(d, h, None, wall).unwrap();
            prop_assert!((outside.widest_mm(h) - 0.5 * d).abs() < 1e-9);
            prop_assert!(outside.radius_mm(0.0) >= 0.5 * outline.usual_mouth_mm(d));
            let knots = outside.depths_mm();
            prop_assert!((knots[0], knots[knots.len() - 1]) == (0.0, h));
            for i in 0..=100 {
                prop_assert!(outside.radius_mm(h * f64::from(i) / 100.0) > 0.0);
            }
        }

        #[test]
        fn measured_diameters_are_met(which in 0usize..5, a in 100.0..150.0_f64, b in 120.0..170.0_f64) {
            let outside = Outline::ALL[which].scaled(150.0, 160.0, None, 10.0).unwrap();
            let bent = bent_to(&outside, &[(20.0, a), (80.0, b)]).unwrap();
            prop_assert!((2.0 * bent.radius_mm(20.0) - a).abs() < 1e-9);
            prop_assert!((2.0 * bent.radius_mm(80.0) - b).abs() < 1e-9);
            let one = bent_to(&outside, &[(80.0, b)]).unwrap();
            prop_assert!((one.radius_mm(40.0) / outside.radius_mm(40.0) - 0.5 * b / outside.radius_mm(80.0)).abs() < 0.02);
        }
    }
}
