//! A cross-section of an end-grain vessel and what drying does to its shape.
//!
//! The section lies across the grain: growth rings are circles about the pith, the moisture is even at the end, radial and
//! tangential shrinkage are constant. Spiral grain, reaction wood and knots are left out. Direction and size of the oval
//! hold to about 20 %; whether it cracks is not said.

use std::f64::consts::TAU;
use std::fmt;

use crate::closed_ring::ClosedRing;
use crate::range::{Range, RangeError};

/// Outside radius of a section, mm.
pub const SECTION_RADIUS: Range = Range::new("outside radius", "mm", 1.0, 1000.0);
/// Distance of the pith from the lathe axis, mm.
pub const PITH_DISTANCE: Range = Range::new("distance of the pith from the axis", "mm", 0.0, 1.0e6);
/// Shrinkage already done, fraction of the green size.
pub const STRAIN: Range = Range::new("shrinkage", "", 0.0, 0.30);

/// A point of a section, mm: x towards the pith, y across.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Xy {
    /// Towards the pith, mm.
    pub x: f64,
    /// Across, mm.
    pub y: f64,
}

impl Xy {
    /// A point at (`x`, `y`), mm.
    pub const fn new(x: f64, y: f64) -> Self {
        Xy { x, y }
    }

    /// The point at distance `radius` from the origin and `angle` radians from the x axis.
    pub fn polar(radius: f64, angle: f64) -> Self {
        Xy::new(radius * angle.cos(), radius * angle.sin())
    }

    /// Distance to `other`, mm.
    pub fn distance(&self, other: &Xy) -> f64 {
        (self.x - other.x).hypot(self.y - other.y)
    }
}

/// A round section as turned green.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ring {
    radius_mm: f64,
    wall_mm: f64,
}

impl Ring {
    /// A ring with outside radius `radius_mm` and wall `wall_mm`.
    ///
    /// # Errors
    /// [`SectionError`] when the radius is outside [`SECTION_RADIUS`] or the wall is not between 0 and the radius.
    pub fn new(radius_mm: f64, wall_mm: f64) -> Result<Self, SectionError> {
        SECTION_RADIUS.check(radius_mm)?;
        crate::wall::WALL.check(wall_mm)?;
        if wall_mm >= radius_mm {
            return Err(SectionError::NoBore { wall_mm, radius_mm });
        }
        Ok(Ring { radius_mm, wall_mm })
    }

    /// Outside radius, mm.
    pub fn radius_mm(&self) -> f64 {
        self.radius_mm
    }

    /// Wall, mm.
    pub fn wall_mm(&self) -> f64 {
        self.wall_mm
    }

    /// Radius of the bore, mm.
    pub fn bore_mm(&self) -> f64 {
        self.radius_mm - self.wall_mm
    }
}

/// Shrinkage done since green, fractions of the green size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strains {
    /// Along the rays.
    pub radial: f64,
    /// Along the rings.
    pub tangential: f64,
}

impl Strains {
    /// Shrinkage `radial` and `tangential`, fractions.
    ///
    /// # Errors
    /// [`RangeError`] when one is outside [`STRAIN`].
    pub fn new(radial: f64, tangential: f64) -> Result<Self, RangeError> {
        Ok(Strains {
            radial: STRAIN.check(radial)?,
            tangential: STRAIN.check(tangential)?,
        })
    }

    /// Tangential less radial: what makes a round section oval.
    pub fn difference(&self) -> f64 {
        self.tangential - self.radial
    }

    /// The smaller of the two.
    pub fn least(&self) -> f64 {
        self.radial.min(self.tangential)
    }

    /// The larger of the two.
    pub fn most(&self) -> f64 {
        self.radial.max(self.tangential)
    }
}

/// Where the pith is, as far as the turner knows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pith {
    /// This far from the lathe axis, mm.
    At(f64),
    /// So far outside that the rings run straight.
    Far,
    /// Not known.
    Unknown,
}

/// Where the pith lies in a given ring.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Place {
    /// Outside the section: it moves freely and dries without stress.
    Outside,
    /// In the bore: a closed ring, which cannot move freely.
    InBore,
    /// In the wall: expect a split; there is no smooth shape and no figure.
    InWall,
    /// Not known.
    Unknown,
}

impl Pith {
    /// Where this pith lies in `ring`.
    ///
    /// # Errors
    /// [`RangeError`] when its distance is outside [`PITH_DISTANCE`].
    pub fn place(&self, ring: &Ring) -> Result<Place, RangeError> {
        Ok(match *self {
            Pith::Far => Place::Outside,
            Pith::Unknown => Place::Unknown,
            Pith::At(distance) => {
                let d = PITH_DISTANCE.check(distance)?;
                if d > ring.radius_mm {
                    Place::Outside
                } else if d < ring.bore_mm() {
                    Place::InBore
                } else {
                    Place::InWall
                }
            }
        })
    }
}

/// Which face of the wall the drying leaves in tension.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Tension {
    /// Neither: the section moved freely.
    None,
    /// The outside, the bore being pressed together.
    Outside,
    /// The bore, the outside being pressed together.
    Bore,
    /// Not to be said: the pith is in the wall or not known.
    NotSaid,
}

/// Which face the drying leaves in tension: for a closed ring the outside, as long as wood shrinks more along its rings than
/// across them. Gradients of moisture while it dries come on top and are another matter.
pub fn tension(place: Place, strains: Strains) -> Tension {
    match place {
        Place::Outside => Tension::None,
        Place::InBore if strains.difference() > 0.0 => Tension::Outside,
        Place::InBore if strains.difference() < 0.0 => Tension::Bore,
        Place::InBore => Tension::None,
        Place::InWall | Place::Unknown => Tension::NotSaid,
    }
}

/// Why there is no section to reckon.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SectionError {
    /// A figure lies outside its range.
    Range(RangeError),
    /// The wall is as thick as the radius.
    NoBore {
        /// Wall, mm.
        wall_mm: f64,
        /// Outside radius, mm.
        radius_mm: f64,
    },
    /// The question needs the pith in the bore.
    PithNotInBore {
        /// Distance of the pith from the axis, mm.
        distance_mm: f64,
        /// Radius of the bore, mm.
        bore_mm: f64,
    },
    /// A place asked for lies outside the wall.
    NotInWall {
        /// Distance from the axis, mm.
        radius_mm: f64,
    },
}

impl fmt::Display for SectionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SectionError::Range(e) => e.fmt(f),
            SectionError::NoBore { wall_mm, radius_mm } => write!(
                f,
                "the wall is {wall_mm} mm and the radius {radius_mm} mm, which leaves no hollow; the wall must be thinner"
            ),
            SectionError::PithNotInBore {
                distance_mm,
                bore_mm,
            } => write!(
                f,
                "the pith is {distance_mm} mm from the axis, but a closed ring needs it within the bore of {bore_mm} mm radius; \
                 ask for the free section or the wall allowance instead"
            ),
            SectionError::NotInWall { radius_mm } => {
                write!(
                    f,
                    "{radius_mm} mm from the axis is not in the wall; ask for a place between bore and outside"
                )
            }
        }
    }
}

impl std::error::Error for SectionError {}

impl From<RangeError> for SectionError {
    fn from(e: RangeError) -> Self {
        SectionError::Range(e)
    }
}

/// Where a green point (`x`, `y`) goes when the pith lies freely at (`pith_mm`, 0), mm, lathe frame.
///
/// The finite map: a distance from the pith shrinks by the radial part, an angle about it by (1 - T) / (1 - R), so that lengths
/// along and across the rings shrink by exactly R and T. Exact for concentric rings; checked against finite elements to 4e-5 mm.
pub fn free_point(point: Xy, pith_mm: f64, strains: Strains) -> Xy {
    let from_pith = Xy::new(pith_mm - point.x, point.y);
    let r = from_pith.x.hypot(from_pith.y) * (1.0 - strains.radial);
    let phi = from_pith.y.atan2(from_pith.x) * (1.0 - strains.tangential) / (1.0 - strains.radial);
    Xy::new(pith_mm - r * phi.cos(), r * phi.sin())
}

/// The dried shape of a section.
#[derive(Debug, Clone, PartialEq)]
pub enum Dried {
    /// Outlines as closed rows of points, counter-clockwise, the pith on the x axis.
    Shape {
        /// Outside.
        outer: Vec<Xy>,
        /// Bore.
        inner: Vec<Xy>,
    },
    /// The pith is in the wall: expect a split; there is no outline.
    PithInWall,
}

/// The dried outlines of `ring` with `points` (8 to 20 000) points each. A pith not known is drawn as far outside, the most oval.
///
/// # Errors
/// [`SectionError`] when a figure is out of range.
pub fn dried(
    ring: &Ring,
    strains: Strains,
    pith: Pith,
    points: usize,
) -> Result<Dried, SectionError> {
    let n = points.clamp(8, 20_000);
    let circle = |radius: f64| (0..n).map(move |i| Xy::polar(radius, TAU * i as f64 / n as f64));
    let shape = |map: &dyn Fn(Xy) -> Xy| Dried::Shape {
        outer: circle(ring.radius_mm).map(map).collect(),
        inner: circle(ring.bore_mm()).map(map).collect(),
    };
    let ellipse = |p: Xy| {
        Xy::new(
            p.x * (1.0 - strains.radial),
            p.y * (1.0 - strains.tangential),
        )
    };
    Ok(match (pith, pith.place(ring)?) {
        (_, Place::InWall) => Dried::PithInWall,
        (Pith::At(d), Place::Outside) => shape(&|p| free_point(p, d, strains)),
        (Pith::At(d), Place::InBore) => {
            let closed = ClosedRing::new(*ring, strains, d)?;
            shape(&|p| closed.dried_point(p))
        }
        _ => shape(&ellipse),
    })
}

/// Longest and shortest width of an outline over all directions, mm, as a calliper finds them.
pub fn widths_mm(outline: &[Xy]) -> (f64, f64) {
    let width = |angle: f64| {
        let (s, c) = angle.sin_cos();
        let along = outline.iter().map(|p| p.x * c + p.y * s);
        let (low, high) = along.fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(v), h.max(v)));
        high - low
    };
    (0..180)
        .map(|i| width(TAU * f64::from(i) / 360.0))
        .fold((f64::MIN, f64::MAX), |(most, least), w| {
            (most.max(w), least.min(w))
        })
}
