//! Where the pith of a piece lies, as the sums name it.

use evenwall_piece::vocabulary::Pith;
use evenwall_wood::section::{Pith as WoodPith, Ring};

/// The pith in a section: by its distance from the axis where that is said and agrees with the place, else by the place
/// alone. In the bore without a distance stays unknown (the ring could be anything from round to oval), in the wall it is set
/// in the middle of the wall, outside without a distance it is far: the most oval, so nothing is promised too much.
#[must_use]
pub fn pith_of(place: Pith, distance_mm: Option<f64>, ring: &Ring) -> WoodPith {
    let bore = ring.bore_mm();
    match (place, distance_mm) {
        (Pith::Outside, Some(d)) if d > ring.radius_mm() => WoodPith::At(d),
        (Pith::Outside, _) => WoodPith::Far,
        (Pith::Bore, Some(d)) if d < bore => WoodPith::At(d),
        (Pith::Wall, Some(d)) if d >= bore && d <= ring.radius_mm() => WoodPith::At(d),
        (Pith::Wall, _) => WoodPith::At(ring.radius_mm() - 0.5 * ring.wall_mm()),
        (Pith::Bore | Pith::Unknown, _) => WoodPith::Unknown,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_distance_counts_where_it_agrees_with_the_place() {
        let ring = Ring::new(70.0, 10.0).unwrap();
        assert_eq!(
            pith_of(Pith::Outside, Some(90.0), &ring),
            WoodPith::At(90.0)
        );
        assert_eq!(pith_of(Pith::Outside, Some(20.0), &ring), WoodPith::Far);
        assert_eq!(pith_of(Pith::Bore, Some(20.0), &ring), WoodPith::At(20.0));
        assert_eq!(pith_of(Pith::Bore, Some(65.0), &ring), WoodPith::Unknown);
        assert_eq!(pith_of(Pith::Bore, None, &ring), WoodPith::Unknown);
        assert_eq!(pith_of(Pith::Wall, None, &ring), WoodPith::At(65.0));
        assert_eq!(pith_of(Pith::Unknown, Some(3.0), &ring), WoodPith::Unknown);
    }
}
