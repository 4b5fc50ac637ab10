//! The planned piece as a half section at one true scale: rough as full lines, dried in dashes.

use evenwall_wood::half_section::{HalfSection, Sizes};
use evenwall_wood::outline::Outline;
use evenwall_wood::outside::{Outside, Point};
use evenwall_wood::wall::Walls;

use super::path::{Path, dashed};
use super::section::SectionDrawing;

/// What is planned, all mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlannedShape {
    /// The usual outline it is drawn with; `None`: a bowl.
    pub outline: Option<Outline>,
    /// Largest outside diameter.
    pub diameter: f64,
    /// Rim to foot line.
    pub height: f64,
    /// Wall to leave.
    pub wall: f64,
    /// Floor to leave.
    pub floor: f64,
    /// Spigot to cut; `None` is drawn narrower than the foot.
    pub spigot: Option<f64>,
    /// What is left of width the longest way, the shortest way, and of height, each as a share of the rough; `None` where the
    /// dried shape is not known.
    pub left: Option<(f64, f64, f64)>,
}

/// Points along the outside.
const POINTS: usize = 72;
/// Length of the spigot drawn, mm. Common practice, no source.
const SPIGOT_LONG: f64 = 8.0;

fn outside(shape: &PlannedShape) -> Option<(Outside, Option<f64>)> {
    match shape.outline {
        Some(outline) => {
            let drawn = outline.scaled(shape.diameter, shape.height, None, shape.wall);
            let mouth = outline.usual_mouth_mm(shape.diameter);
            Some((drawn.ok()?, Some(mouth)))
        }
        None => {
            // A bowl: widest at the rim, a quarter of an ellipse down to a foot of four tenths.
            let places: Vec<f64> = (0..=12).map(|i| f64::from(i) / 12.0).collect();
            let depths: Vec<f64> = places.iter().map(|u| u * shape.height).collect();
            let radii: Vec<f64> = places
                .iter()
                .map(|u| 0.5 * shape.diameter * (0.4 + 0.6 * (1.0 - u * u).max(0.0).sqrt()))
                .collect();
            Some((Outside::through(&depths, &radii).ok()?, None))
        }
    }
}

/// The drawing; empty for figures that make no vessel. The left half shows the outside and how it dries the longest way, the
/// right half is cut and shows how it dries the shortest way.
#[must_use]
pub fn plan_section(shape: &PlannedShape) -> SectionDrawing {
    drawn(shape).unwrap_or_default()
}

fn drawn(shape: &PlannedShape) -> Option<SectionDrawing> {
    let (outside, mouth_mm) = outside(shape)?;
    let h = shape.height;
    let walls = Walls::even(shape.wall).ok()?;
    let sizes = Sizes {
        height_mm: h,
        floor_depth_mm: h - shape.floor,
        mouth_mm,
    };
    let half = HalfSection::draw(&outside, &walls, sizes, POINTS).ok()?;
    let widest = outside.widest_mm(h);
    let margin = 0.02 * widest;
    let axis_x = widest + margin;
    let (width, height) = (2.0 * axis_x, h + SPIGOT_LONG + 2.0 * margin);
    let pair = |p: &Point| (p.radius_mm, p.depth_mm);
    let outer: Vec<(f64, f64)> = half.outer.iter().map(pair).collect();
    let inner: Vec<(f64, f64)> = half.inner.iter().map(pair).collect();
    let foot_r = outside.radius_mm(h);
    let spigot_r = shape.spigot.map_or(0.72 * foot_r, |d| 0.5 * d).min(foot_r);
    let foot = [
        (foot_r, h),
        (spigot_r, h),
        (spigot_r, h + SPIGOT_LONG),
        (0.0, h + SPIGOT_LONG),
    ];
    let right = |(r, z): (f64, f64)| (axis_x + r, z + margin);
    let left = |(r, z): (f64, f64)| (axis_x - r, z + margin);
    let line = |points: &[(f64, f64)], side: &dyn Fn((f64, f64)) -> (f64, f64)| {
        let mut path = Path::default();
        let mut places = points.iter().map(|q| side(*q));
        if let Some(first) = places.next() {
            path.move_to(first).through(places);
        }
        path.finish()
    };
    let mut path = Path::default();
    let skin = path
        .move_to(left((0.0, 0.0)))
        .through(outer.iter().chain(&foot).map(|q| left(*q)))
        .close()
        .finish();
    let wall = path
        .move_to(right(*inner.first()?))
        .through(outer.iter().chain(&foot).map(|q| right(*q)))
        .through(inner.iter().rev().map(|q| right(*q)))
        .close()
        .finish();
    let void = path
        .move_to(right((0.0, 0.0)))
        .through(inner.iter().map(|q| right(*q)))
        .close()
        .finish();
    let whole: Vec<(f64, f64)> = outer.iter().chain(&foot).copied().collect();
    let rim = path
        .move_to(left(outer[0]))
        .line_to(right(outer[0]))
        .finish();
    let dash = height / 300.0;
    let dried = shape
        .left
        .map_or_else(String::new, |(longest, shortest, up)| {
            // The foot line stays where it is: the rim comes down to it.
            let shrunk = |points: &[(f64, f64)], across: f64| -> Vec<(f64, f64)> {
                points
                    .iter()
                    .map(|(r, z)| (r * across, h - (h - z) * up))
                    .collect()
            };
            let broken = |points: Vec<(f64, f64)>, side: &dyn Fn((f64, f64)) -> (f64, f64)| {
                let placed: Vec<_> = points.into_iter().map(side).collect();
                dashed(&placed, &[5.0 * dash, 3.5 * dash])
            };
            [
                broken(shrunk(&outer, longest), &left),
                broken(shrunk(&outer, shortest), &right),
                broken(shrunk(&inner, shortest), &right),
            ]
            .join(" ")
        });
    Some(SectionDrawing {
        width,
        height,
        axis_x: 0.5,
        skin,
        wall,
        void,
        outline: [line(&whole, &left), line(&whole, &right), rim].join(" "),
        bore: line(&inner, &right),
        wanted: dried,
        axis: dashed(
            &[(axis_x, 0.0), (axis_x, height)],
            &[14.0, 4.0, 3.0, 4.0].map(|d| d * dash),
        ),
        ..SectionDrawing::default()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn vessel() -> PlannedShape {
        PlannedShape {
            outline: Some(Outline::Egg),
            diameter: 150.0,
            height: 165.0,
            wall: 10.0,
            floor: 12.0,
            spigot: Some(57.0),
            left: Some((0.964, 0.943, 0.999)),
        }
    }

    #[test]
    fn one_true_scale_holds_for_rough_and_dried() {
        let drawn = plan_section(&vessel());
        // Half the diameter with a margin of 2 % on either side; the spigot stands below the foot line.
        assert!((drawn.width - 153.0).abs() < 1e-6, "{}", drawn.width);
        assert!((drawn.height - 176.0).abs() < 1e-6, "{}", drawn.height);
        let right_most = |path: &str| {
            let numbers = path.split(' ').filter_map(|t| t.parse::<f64>().ok());
            numbers.step_by(2).fold(f64::MIN, f64::max)
        };
        // Rough 75 and dried 75 x 0.943 = 70.7 right of the axis at 76.5.
        assert!((right_most(&drawn.outline) - 151.5).abs() < 0.1);
        assert!((right_most(&drawn.wanted) - 147.2).abs() < 0.2);
    }

    #[test]
    fn without_a_dried_shape_nothing_is_dashed_and_absurd_figures_draw_nothing() {
        let rough = PlannedShape {
            left: None,
            ..vessel()
        };
        assert_eq!(plan_section(&rough).wanted, "");
        for bad in [
            PlannedShape {
                diameter: f64::NAN,
                ..vessel()
            },
            PlannedShape {
                floor: 400.0,
                ..vessel()
            },
            PlannedShape {
                outline: None,
                height: 0.0,
                ..vessel()
            },
        ] {
            assert_eq!(plan_section(&bad), SectionDrawing::default());
        }
        let bowl = PlannedShape {
            outline: None,
            height: 70.0,
            ..vessel()
        };
        assert!(!plan_section(&bowl).outline.is_empty());
    }
}
