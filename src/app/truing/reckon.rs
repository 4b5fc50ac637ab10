//! Reckon: the sums of True for all stations of a piece. The formulas are those of `evenwall_wood`, which cites their sources.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Piece, SectionMeasured};
use evenwall_piece::vocabulary::{Pith as PithPlace, RoundHow};
use evenwall_piece::wanted;
use evenwall_wood::axis::{Station, best_axis};
use evenwall_wood::fitted::FitError;
use evenwall_wood::own_shrinkage::{Moved, calliper_doubt_mm, moved, own_shrinkage};
use evenwall_wood::rough_wall::Grain;
use evenwall_wood::section::{Dried, Pith, Ring, Strains, Xy, dried, widths_mm};
use evenwall_wood::shrinkage::shrinkage;
use evenwall_wood::trueing::wall_left;

use super::outline::{bore, longest_towards, round_outline, tells_where, turned, two_outline};
use super::place::{Place, places_of};
use super::reckoned::{Against, Basis, Foreseen, PlaceSum, Reckoned, Shape};
use crate::app::App;
use crate::sums::{ALONG, grain_of, pith_of};

/// Points of an outline that is only drawn.
const DRAWN_POINTS: usize = 180;
/// From this many radii on a pith counts as far, so that two callipers see all of the oval: at 2.1 radii they still see 6 % too
/// little of the movement along the rings (own sums). Judgement, no source.
const FAR_RADII: f64 = 3.0;

impl App {
    /// The sums of a piece.
    pub(super) fn truing_sums(&self, piece: &Piece) -> Reckoned {
        let moisture = self.settles_at_home();
        let figures = self.wood_figures(piece.details.text(DetailField::Wood));
        let usual = figures.usual_strains(moisture);
        let side = grain_of(piece) == Grain::Side;
        let strains = if side {
            Strains {
                radial: shrinkage(ALONG, moisture).unwrap_or(0.0),
                tangential: usual.tangential,
            }
        } else {
            usual
        };
        let sums = Sums {
            piece,
            strains,
            side,
            finish_mm: wanted::finish_wall(piece).mm,
        };
        sums.reckon(figures.whose, moisture)
    }
}

/// What every sum of a piece needs.
struct Sums<'a> {
    piece: &'a Piece,
    strains: Strains,
    side: bool,
    finish_mm: f64,
}

impl Sums<'_> {
    fn reckon(&self, whose: String, moisture: f64) -> Reckoned {
        let places = places_of(self.piece);
        let measured = places.iter().any(|p| p.measured.is_some());
        let against = self.against(&places);
        let fitted: Vec<_> = places.iter().map(round_of).collect();
        let towards = longest_towards(fitted.iter().flatten().flatten());
        let scale = self.scale(&places);
        let widest = places
            .iter()
            .find(|p| p.widest)
            .and_then(|p| p.measured.as_ref()?.span_mm());
        let mut sums: Vec<PlaceSum> = places
            .into_iter()
            .zip(fitted)
            .map(|(place, round)| {
                let foreseen = self.foreseen(&place, towards);
                let foreseen_wall_mm = self.foreseen_wall(&place);
                let made = self.shape(&place, round, towards, scale, widest);
                let (shape, fault) = match made {
                    Ok(shape) => (shape, None),
                    Err(fault) => (None, Some(fault)),
                };
                PlaceSum {
                    place,
                    foreseen,
                    foreseen_wall_mm,
                    shape,
                    fault,
                    left_mm: None,
                }
            })
            .collect();
        let axis = self.share_an_axis(&mut sums);
        let left = |s: &PlaceSum| {
            if measured {
                s.left_mm
            } else {
                s.foreseen_wall_mm
            }
        };
        let tightest = sums
            .iter()
            .enumerate()
            .filter_map(|(i, s)| Some((i, left(s)?)))
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .map(|(i, _)| i);
        let mut read = sums.iter().filter_map(|s| s.place.measured.as_ref());
        let from_the_mark = measured
            && read.all(
                |m| matches!(m, SectionMeasured::Round { how, .. } if *how == RoundHow::FromCentre),
            );
        Reckoned {
            places: sums,
            measured,
            strains: self.strains,
            whose,
            moisture,
            axis,
            from_the_mark,
            tightest,
            finish_mm: self.finish_mm,
            against,
        }
    }

    /// The ring of a station as turned: with its thinnest wall, else with the wall wanted, which only tells where the pith is.
    fn ring(&self, place: &Place) -> Option<Ring> {
        let radius = 0.5 * place.green?.mm;
        let wall = place
            .thinnest_mm()
            .unwrap_or_else(|| wanted::rough_wall(self.piece).mm);
        Ring::new(radius, wall).ok()
    }

    fn pith(&self, ring: &Ring) -> Pith {
        if self.side {
            return Pith::Far;
        }
        let details = &self.piece.details;
        pith_of(details.pith(), details.mm(DetailField::PithDistance), ring)
    }

    fn foreseen(&self, place: &Place, towards: f64) -> Option<Foreseen> {
        let ring = self.ring(place)?;
        match dried(&ring, self.strains, self.pith(&ring), DRAWN_POINTS).ok()? {
            Dried::PithInWall => Some(Foreseen::PithInWall),
            Dried::Shape { outer, .. } => {
                let (longest_mm, shortest_mm) = widths_mm(&outer);
                Some(Foreseen::Shape {
                    longest_mm,
                    shortest_mm,
                    outer: turned(&outer, towards),
                })
            }
        }
    }

    /// With the pith in the wall as if it were far: never too much of a wall.
    fn foreseen_wall(&self, place: &Place) -> Option<f64> {
        place.thinnest_mm()?;
        let ring = self.ring(place)?;
        let left = wall_left(&ring, self.strains, self.pith(&ring)).ok()?;
        let dry = place.walls.iter().all(|w| w.dry);
        // A wall that was read dry shrinks no more.
        let shrunk = if dry {
            ring.wall_mm() * self.strains.least()
        } else {
            0.0
        };
        Some(left.wall_mm + shrunk)
    }

    /// The station by which the piece is held against the table: the widest that was measured both green and dry.
    fn against(&self, places: &[Place]) -> Option<Against> {
        let (place, green, (longest, shortest)) = both_known(places)?;
        let moved = moved(green, longest, shortest, self.strains);
        let pith = self.piece.details.pith();
        let ring_may_be_closed = pith == PithPlace::Bore
            || moved == Moved::FarLess && pith != PithPlace::Outside && !self.side;
        let own = own_shrinkage(green, longest, shortest)
            .ok()
            .filter(|_| !ring_may_be_closed && !self.side);
        Some(Against {
            number: place.number,
            moved,
            own,
        })
    }

    /// By what share a section of this piece lost in its longest and its shortest diameter, for the stations that were not
    /// measured.
    fn scale(&self, places: &[Place]) -> Option<Strains> {
        let (_, green, (longest, shortest)) = both_known(places)?;
        Some(own_shrinkage(green, longest, shortest).ok()?.strains())
    }

    fn shape(
        &self,
        place: &Place,
        round: Option<Result<Vec<Xy>, FitError>>,
        towards: f64,
        scale: Option<Strains>,
        widest: Option<(f64, f64)>,
    ) -> Result<Option<Shape>, FitError> {
        let green = place.green.map(|g| g.mm);
        let (basis, outer) = match (&place.measured, round) {
            (Some(measured), Some(round)) => (Basis::of(measured), round?),
            (Some(measured), None) => {
                let Some((longest, shortest)) = measured.span_mm() else {
                    return Ok(None);
                };
                (Basis::Two, two_outline(longest, shortest, towards)?)
            }
            (None, _) if place.walls.is_empty() => return Ok(None),
            (None, _) => match (scale, green, widest) {
                (Some(own), Some(green), _) => {
                    let longest = green * (1.0 - own.radial);
                    let shortest = green * (1.0 - own.tangential);
                    let outer = two_outline(longest, shortest, towards)?;
                    (Basis::OwnShrinkage, outer)
                }
                (_, _, Some((longest, shortest))) => {
                    (Basis::AsWidest, two_outline(longest, shortest, towards)?)
                }
                _ => return Ok(None),
            },
        };
        let (longest_mm, shortest_mm) = match &place.measured {
            Some(two @ SectionMeasured::Two { .. }) => {
                two.span_mm().unwrap_or_else(|| widths_of(&outer))
            }
            _ => widths_of(&outer),
        };
        // As turned; where that is not known, by the figures of the wood from the longest diameter.
        let green_radius = match (basis, green) {
            (Basis::AsWidest, _) | (_, None) => 0.5 * longest_mm / (1.0 - self.strains.least()),
            (_, Some(green)) => 0.5 * green,
        };
        let lies = place.measured.as_ref().is_some_and(tells_where);
        let inner = bore(&outer, green_radius, &place.walls, lies).ok();
        let doubt_mm = match basis {
            Basis::FromCentre(_) => 0.0,
            _ if self.side || self.pith_is_far(0.5 * longest_mm) => 0.0,
            _ => {
                let radius = 0.5 * longest_mm;
                let seen = Strains {
                    radial: 0.0,
                    tangential: (longest_mm - shortest_mm) / longest_mm,
                };
                calliper_doubt_mm(radius, seen)
            }
        };
        Ok(Some(Shape {
            basis,
            outer,
            inner,
            longest_mm,
            shortest_mm,
            doubt_mm,
        }))
    }

    /// True only where the distance of the pith was said.
    fn pith_is_far(&self, radius: f64) -> bool {
        let details = &self.piece.details;
        details.pith() == PithPlace::Outside
            && details
                .mm(DetailField::PithDistance)
                .is_some_and(|d| d > FAR_RADII * radius)
    }

    /// One axis for all stations that have an outside and a bore; what it leaves is put into them.
    fn share_an_axis(&self, sums: &mut [PlaceSum]) -> Option<Xy> {
        let with: Vec<usize> = (0..sums.len())
            .filter(|i| {
                sums[*i]
                    .shape
                    .as_ref()
                    .is_some_and(|shape| shape.inner.is_some())
            })
            .collect();
        let stations: Vec<Station<'_>> = with
            .iter()
            .filter_map(|i| {
                let shape = sums[*i].shape.as_ref()?;
                Some(Station {
                    outer: &shape.outer,
                    inner: shape.inner.as_ref()?,
                    wanted_mm: self.finish_mm + shape.doubt_mm,
                })
            })
            .collect();
        let best = best_axis(&stations).ok()?;
        for (i, wall) in with.into_iter().zip(best.walls_mm) {
            let doubt = sums[i].shape.as_ref().map_or(0.0, |s| s.doubt_mm);
            sums[i].left_mm = Some(wall - doubt);
        }
        Some(best.centre)
    }
}

/// The outline of a station that was read round.
fn round_of(place: &Place) -> Option<Result<Vec<Xy>, FitError>> {
    match place.measured.as_ref()? {
        SectionMeasured::Two { .. } => None,
        SectionMeasured::Round { how, readings } => Some(round_outline(*how, readings)),
    }
}

/// The station whose size was measured green and dry, the widest where it is one of them: its green diameter, longest and
/// shortest, mm.
fn both_known(places: &[Place]) -> Option<(&Place, f64, (f64, f64))> {
    let both = |p: &&Place| p.measured.is_some() && p.green.is_some_and(|g| !g.drawn);
    let place = places.iter().filter(both).max_by_key(|p| p.widest)?;
    Some((place, place.green?.mm, place.measured.as_ref()?.span_mm()?))
}

/// Longest and shortest width of a fitted outline, mm, from every fourth of its points: 180 are within 0.02 % of the curve.
fn widths_of(outline: &[Xy]) -> (f64, f64) {
    let few: Vec<Xy> = outline.iter().step_by(4).copied().collect();
    widths_mm(&few)
}
