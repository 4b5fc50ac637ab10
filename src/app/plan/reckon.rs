//! Reckon: what the science layer says for the figures of a plan. No words, and no formula of its own.

use evenwall_piece::vocabulary::{Form, Pith};
use evenwall_wood::drill_depth::{DrillDepth, DrillError, drill_depth};
use evenwall_wood::rough_wall::{
    Grain, RoughWall, Wanted, advised_mm, affine_rough_wall, practice_floor_mm, practice_rough_mm,
    rough_wall,
};
use evenwall_wood::section::{
    Dried, Pith as WoodPith, Place, Ring, SectionError, Strains, Tension, Xy, dried, tension,
    widths_mm,
};
use evenwall_wood::side_grain::{DriedRim, Sawn, dried_rim, rim_rise_mm};
use evenwall_wood::spigot::{USUAL_CLEAN_UP_MM, practice_spigot_mm, spigot_needed_mm};

use crate::sums::pith_of;

/// A piece can move this much more or less than the mean of its wood says: the size of an oval is honest to about +-20 %.
/// From memory: the scatter of radial and tangential shrinkage from piece to piece is of that order.
const SPREAD: f64 = 0.2;

/// Points of an outline: the widths are right to a hundredth of a millimetre.
const POINTS: usize = 240;

/// What is reckoned with, all mm and fractions.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Given {
    pub form: Form,
    pub grain: Grain,
    pub pith: Pith,
    pub pith_mm: Option<f64>,
    pub diameter: f64,
    pub height: f64,
    pub wanted: Wanted,
    /// Smallest circle of the jaws.
    pub jaws: f64,
    /// Their largest circle, where known.
    pub jaws_open_to: Option<f64>,
    /// For a wall to leave, dried to where it will live.
    pub cautious: Strains,
    /// For what to expect.
    pub usual: Strains,
    /// Along the grain.
    pub along: f64,
    /// What walls and spigots are rounded up to: whole mm, 1/16 in.
    pub up_to: f64,
}

/// Why something cannot be reckoned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Fault {
    /// The wall to leave would fill the piece: wall, radius.
    NoHollow(f64, f64),
    /// The floor takes the whole height: floor.
    NoDepth(f64),
    /// The pith's distance does not agree with its place: the radius or bore that it is measured by.
    PithElsewhere(f64),
    /// The spigot is larger than the jaws open: their largest circle.
    PastTheJaws(f64),
}

/// The wall to leave.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Wall {
    pub sum: RoughWall,
    pub practice: f64,
    pub advised: f64,
    pub ring: Ring,
    pub pith: WoodPith,
    pub place: Place,
}

/// By how much it goes oval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Oval {
    /// About this, from and to.
    About(f64, f64),
    /// Not more than about this: where the pith lies is not known.
    UpTo(f64),
    /// It stays rounder: the pith is in the bore, how far off is not said. Not more than about this.
    Rounder(f64),
    /// The pith is in the wall: expect a split, no figure.
    Split,
}

/// The dried shape: outlines for the drawing, and how much of its width is left the longest and the shortest way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Shape {
    pub outer: Vec<Xy>,
    pub inner: Vec<Xy>,
    pub longest: f64,
    pub shortest: f64,
}

/// The spigot to cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spigot {
    pub sum: f64,
    pub practice: f64,
    pub advised: f64,
}

fn no_hollow(error: SectionError, given: &Given) -> Fault {
    match error {
        SectionError::NoBore { wall_mm, radius_mm } => Fault::NoHollow(wall_mm, radius_mm),
        // The legal ranges of what is entered lie inside those of the sums: only a wall can be too thick.
        _ => Fault::NoHollow(given.wanted.finish_mm, 0.5 * given.diameter),
    }
}

impl Given {
    /// A figure rounded up to what is cut to.
    pub(super) fn round_up(&self, mm: f64) -> f64 {
        advised_mm(mm / self.up_to, 0.0) * self.up_to
    }

    fn radius(&self) -> f64 {
        0.5 * self.diameter
    }

    /// The wall to leave: the sum, the practice, and the larger rounded up.
    pub(super) fn wall(&self) -> Result<Wall, Fault> {
        let no = |e| no_hollow(e, self);
        let (least, most) = match self.grain {
            Grain::End => (self.cautious.least(), self.cautious.most()),
            Grain::Side => (self.along, self.cautious.tangential),
        };
        let full = affine_rough_wall(self.radius(), least, most, self.wanted)
            .map_err(|e| no(SectionError::Range(e)))?;
        let trial = Ring::new(self.radius(), full.total_mm()).map_err(no)?;
        let said = self.pith_in(&trial)?;
        let sum = match self.grain {
            Grain::End => {
                rough_wall(self.radius(), self.cautious, said, self.wanted).map_err(no)?
            }
            Grain::Side => full,
        };
        let practice = practice_rough_mm(self.grain, self.diameter);
        let advised = self.round_up(sum.total_mm().max(practice));
        let ring = Ring::new(self.radius(), advised).map_err(no)?;
        let pith = self.pith_in(&ring)?;
        let place = pith.place(&ring).map_err(|e| no(SectionError::Range(e)))?;
        Ok(Wall {
            sum,
            practice,
            advised,
            ring,
            pith,
            place,
        })
    }

    /// The pith in a ring; a distance that does not agree with the place said is an error, not a guess.
    fn pith_in(&self, ring: &Ring) -> Result<WoodPith, Fault> {
        let pith = pith_of(self.pith, self.pith_mm, ring);
        if let Some(distance) = self.pith_mm
            && self.grain == Grain::End
            && self.pith != Pith::Unknown
            && pith != WoodPith::At(distance)
        {
            let by = match self.pith {
                Pith::Outside => ring.radius_mm(),
                Pith::Bore | Pith::Wall | Pith::Unknown => ring.bore_mm(),
            };
            return Err(Fault::PithElsewhere(by));
        }
        Ok(pith)
    }

    /// The shape it dries to, for the drawing; `None` with the pith in the wall. A pith in the bore whose distance is not said
    /// is drawn in the middle.
    pub(super) fn shape(&self, wall: &Wall) -> Option<Shape> {
        if self.grain == Grain::Side {
            let rim = self.rim()?;
            let (x, y) = (rim.along_mm / self.diameter, rim.across_mm / self.diameter);
            let ellipse = |r: f64| {
                (0..POINTS)
                    .map(|i| {
                        let turn = std::f64::consts::TAU * i as f64 / POINTS as f64;
                        let p = Xy::polar(r, turn);
                        Xy::new(p.x * x, p.y * y)
                    })
                    .collect()
            };
            return Some(Shape {
                outer: ellipse(wall.ring.radius_mm()),
                inner: ellipse(wall.ring.bore_mm()),
                longest: x.max(y),
                shortest: x.min(y),
            });
        }
        let pith = match (self.pith, wall.pith) {
            (Pith::Bore, WoodPith::Unknown) => WoodPith::At(0.0),
            (_, pith) => pith,
        };
        self.shape_at(&wall.ring, pith)
    }

    fn shape_at(&self, ring: &Ring, pith: WoodPith) -> Option<Shape> {
        match dried(ring, self.usual, pith, POINTS).ok()? {
            Dried::PithInWall => None,
            Dried::Shape { outer, inner } => {
                let (longest, shortest) = widths_mm(&outer);
                Some(Shape {
                    longest: longest / self.diameter,
                    shortest: shortest / self.diameter,
                    outer,
                    inner,
                })
            }
        }
    }

    /// By how much it goes oval, from its shape.
    pub(super) fn oval(&self, wall: &Wall, shape: Option<&Shape>) -> Oval {
        let Some(shape) = shape else {
            return Oval::Split;
        };
        let by = |s: &Shape| (s.longest - s.shortest) * self.diameter;
        match (self.grain, self.pith, wall.pith) {
            (Grain::End, Pith::Bore, WoodPith::Unknown) => {
                // As far off as it can be and still lie in the bore.
                let edge = self.shape_at(&wall.ring, WoodPith::At(0.95 * wall.ring.bore_mm()));
                Oval::Rounder((1.0 + SPREAD) * edge.as_ref().map_or(0.0, by))
            }
            (Grain::End, _, WoodPith::Unknown) => Oval::UpTo((1.0 + SPREAD) * by(shape)),
            _ => Oval::About((1.0 - SPREAD) * by(shape), (1.0 + SPREAD) * by(shape)),
        }
    }

    /// Which face the drying leaves in tension; nothing to say of side grain, which moves freely.
    pub(super) fn tension(&self, wall: &Wall) -> Tension {
        match self.grain {
            Grain::End => tension(wall.place, self.usual),
            Grain::Side => Tension::None,
        }
    }

    /// Side grain, sawn flat as bowl blanks usually are: the dried rim.
    pub(super) fn rim(&self) -> Option<DriedRim> {
        let rim = || {
            dried_rim(
                self.diameter,
                self.height,
                self.usual,
                self.along,
                Sawn::Flat,
            )
            .ok()
        };
        (self.grain == Grain::Side).then(rim).flatten()
    }

    /// Side grain: how far the rim leaves its plane with the pith at the foot.
    pub(super) fn rim_rise(&self) -> Option<f64> {
        let rise = || rim_rise_mm(self.radius(), self.height, self.usual).ok();
        (self.grain == Grain::Side).then(rise).flatten()
    }

    /// The floor above the foot line that goes with a wall.
    pub(super) fn floor(&self, wall: &Wall) -> f64 {
        self.round_up(practice_floor_mm(wall.advised))
    }

    /// The depth to drill, from the faced rim to the bit's point.
    pub(super) fn depth(&self, wall: &Wall) -> Result<DrillDepth, Fault> {
        let floor = self.floor(wall);
        drill_depth(self.height, floor).map_err(|error| match error {
            DrillError::NothingToDrill { floor_mm, .. } => Fault::NoDepth(floor_mm),
            DrillError::Range(_) => Fault::NoDepth(floor),
        })
    }

    /// The spigot to cut for the jaws.
    pub(super) fn spigot(&self) -> Result<Spigot, Fault> {
        let most = match self.grain {
            Grain::End => self.cautious.most(),
            Grain::Side => self.cautious.tangential.max(self.along),
        };
        let off = self.wanted.off_centre_mm;
        let sum = spigot_needed_mm(self.jaws, most, off, USUAL_CLEAN_UP_MM)
            .map_err(|_| Fault::PastTheJaws(self.jaws))?;
        let practice = practice_spigot_mm(self.grain, self.jaws);
        let advised = self.round_up(sum.max(practice));
        match self.jaws_open_to {
            Some(open) if advised > open => Err(Fault::PastTheJaws(open)),
            _ => Ok(Spigot {
                sum,
                practice,
                advised,
            }),
        }
    }
}
