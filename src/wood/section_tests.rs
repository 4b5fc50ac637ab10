//! Check values of the dried section, each worked out twice, independently, from the formulas, and the properties they keep.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::f64::consts::{PI, TAU};

use proptest::prelude::*;

use crate::closed_ring::{ClosedRing, orthotropic_hoop_mpa, solid_disc_mpa, thin_ring_mpa};
use crate::section::{
    Dried, Pith, Place, Ring, SectionError, Strains, Tension, Xy, dried, free_point, tension,
    widths_mm,
};
use crate::shrinkage::shrinkage;

/// White ash from green to 8 %.
fn ash() -> Strains {
    Strains::new(
        shrinkage(0.049, 0.08).unwrap(),
        shrinkage(0.078, 0.08).unwrap(),
    )
    .unwrap()
}

/// Within the larger of one part in a million and half a unit of the last printed digit.
#[track_caller]
fn near(got: f64, want: f64, digit: f64) {
    assert!(
        (got - want).abs() <= (1e-6 * want.abs()).max(0.501 * digit),
        "got {got}, want {want}"
    );
}

fn outlines(ring: &Ring, strains: Strains, pith: Pith, n: usize) -> (Vec<Xy>, Vec<Xy>) {
    match dried(ring, strains, pith, n).unwrap() {
        Dried::Shape { outer, inner } => (outer, inner),
        Dried::PithInWall => panic!("pith in the wall"),
    }
}

#[test]
fn free_map_of_six_points() {
    for (x, y, to_x, to_y) in [
        (0.0, 60.0, 2.491029, 56.713729),
        (-70.0, 0.0, -64.250667, 0.0),
        (70.0, 0.0, 70.718667, 0.0),
        (0.0, 70.0, 2.259187, 66.212300),
        (49.497475, 49.497475, 50.028762, 46.947513),
        (-65.0, 10.0, -59.443884, 9.428285),
    ] {
        let p = free_point(Xy::new(x, y), 90.0, ash());
        near(p.x, to_x, 1e-6);
        near(p.y, to_y, 1e-6);
    }
}

#[test]
fn stress_of_rings_about_their_pith() {
    for (wall, middle, outer, bore, radial) in [
        (10.0, 65.0, 1.555044, -1.723227, -0.062826),
        (20.0, 60.0, 3.179539, -3.976104, -0.293312),
    ] {
        let ring = Ring::new(70.0, wall).unwrap();
        let closed = ClosedRing::new(ring, ash(), 0.0).unwrap();
        near(closed.stress(70.0, 1.0, 1000.0).unwrap().hoop, outer, 1e-6);
        near(
            closed.stress(70.0 - wall, 2.0, 1000.0).unwrap().hoop,
            bore,
            1e-6,
        );
        near(
            closed.stress(middle, 3.0, 1000.0).unwrap().radial,
            radial,
            1e-6,
        );
    }
    for (a, t, outer, bore, thin) in [
        (70.0, 5.0, 0.7686, -0.8075, 0.7877),
        (70.0, 10.0, 1.5550, -1.7232, 1.6359),
        (70.0, 20.0, 3.1795, -3.9761, 3.5444),
        (40.0, 10.0, 2.7673, -3.3508, 3.0381),
        (150.0, 15.0, 1.0810, -1.1597, 1.1193),
    ] {
        let ring = Ring::new(a, t).unwrap();
        let closed = ClosedRing::new(ring, ash(), 0.0).unwrap();
        near(closed.stress(a, 0.0, 1000.0).unwrap().hoop, outer, 1e-4);
        near(closed.stress(a - t, 0.0, 1000.0).unwrap().hoop, bore, 1e-4);
        near(thin_ring_mpa(ring, ash(), 1000.0).unwrap(), thin, 1e-4);
    }
    near(solid_disc_mpa(ash(), 1000.0).unwrap(), 10.633, 1e-3);
}

#[test]
fn stress_of_a_ring_with_the_pith_off_its_axis() {
    let closed = ClosedRing::new(Ring::new(70.0, 10.0).unwrap(), ash(), 30.0).unwrap();
    let at = |r: f64, angle: f64| closed.stress(r, angle, 960.0).unwrap();
    near(at(70.0, 0.0).hoop, 2.831034, 1e-6);
    near(at(70.0, PI).hoop, 0.154651, 1e-6);
    near(at(60.0, 0.0).hoop, -3.215522, 1e-6);
    near(at(65.0, 0.5 * PI).hoop, 0.040167, 1e-6);
    near(at(65.0, 0.5 * PI).shear, -0.055346, 1e-6);
    let ring = Ring::new(70.0, 10.0).unwrap();
    for (d, peak) in [
        (0.0, 1.49),
        (10.0, 1.94),
        (20.0, 2.39),
        (30.0, 2.83),
        (40.0, 3.28),
        (50.0, 3.72),
        (58.0, 4.08),
    ] {
        near(
            ClosedRing::new(ring, ash(), d)
                .unwrap()
                .peak_outside_mpa(960.0)
                .unwrap(),
            peak,
            1.1e-2,
        );
    }
}

#[test]
fn shape_of_a_ring_with_the_pith_off_its_axis() {
    let ring = Ring::new(70.0, 10.0).unwrap();
    let (outer, inner) = outlines(&ring, ash(), Pith::At(30.0), 2880);
    let extent = |points: &[Xy], f: fn(&Xy) -> f64| {
        let values = points.iter().map(f);
        values.clone().fold(f64::MIN, f64::max) - values.fold(f64::MAX, f64::min)
    };
    let across = |points: &[Xy]| points[0].distance(&points[1440]);
    near(across(&outer), 132.2097, 1e-4);
    near(extent(&outer, |p| p.y), 132.7271, 1e-4);
    near(across(&inner), 112.9292, 1e-4);
    near(extent(&inner, |p| p.y), 113.5209, 1e-4);
    // The two ends of the cut meet: the outline is closed.
    assert!(outer[0].distance(&outer[2879]) < 0.5);
}

#[test]
fn orthotropic_rings() {
    let ring = Ring::new(70.0, 10.0).unwrap();
    near(
        orthotropic_hoop_mpa(ring, ash(), 70.0, 1500.0, 960.0).unwrap(),
        1.493883,
        1e-6,
    );
    near(
        orthotropic_hoop_mpa(ring, ash(), 60.0, 1500.0, 960.0).unwrap(),
        -1.655499,
        1e-6,
    );
    near(solid_disc_mpa(ash(), 960.0).unwrap(), 10.208000, 1e-6);
    let equal = orthotropic_hoop_mpa(ring, ash(), 70.0, 1000.0, 1000.0).unwrap();
    assert!((equal - 1.555044).abs() < 1e-4);
}

#[test]
fn pith_in_the_wall_is_a_state_without_outline_or_stress() {
    let ring = Ring::new(70.0, 10.0).unwrap();
    assert_eq!(Pith::At(65.0).place(&ring), Ok(Place::InWall));
    assert_eq!(
        dried(&ring, ash(), Pith::At(65.0), 360),
        Ok(Dried::PithInWall)
    );
    assert!(matches!(
        ClosedRing::new(ring, ash(), 65.0),
        Err(SectionError::PithNotInBore { .. })
    ));
    assert_eq!(tension(Place::InWall, ash()), Tension::NotSaid);
    assert_eq!(tension(Place::InBore, ash()), Tension::Outside);
    assert_eq!(tension(Place::Outside, ash()), Tension::None);
    // The faces of the wall belong to it.
    assert_eq!(Pith::At(70.0).place(&ring), Ok(Place::InWall));
    assert_eq!(Pith::At(60.0).place(&ring), Ok(Place::InWall));
}

#[test]
fn nonsense_is_refused() {
    assert!(matches!(
        Ring::new(70.0, 70.0),
        Err(SectionError::NoBore { .. })
    ));
    assert!(Ring::new(-70.0, 10.0).is_err());
    assert!(Strains::new(0.05, f64::NAN).is_err());
    let ring = Ring::new(70.0, 10.0).unwrap();
    assert!(dried(&ring, ash(), Pith::At(-1.0), 360).is_err());
    let closed = ClosedRing::new(ring, ash(), 0.0).unwrap();
    assert!(matches!(
        closed.stress(50.0, 0.0, 1000.0),
        Err(SectionError::NotInWall { .. })
    ));
    assert!(matches!(
        closed.stress(f64::NAN, 0.0, 1000.0),
        Err(SectionError::NotInWall { .. })
    ));
}

#[test]
fn an_unknown_pith_is_drawn_as_the_most_oval() {
    let ring = Ring::new(70.0, 10.0).unwrap();
    let (outer, _) = outlines(&ring, ash(), Pith::Unknown, 720);
    let (longest, shortest) = widths_mm(&outer);
    assert!((longest - 140.0 * (1.0 - ash().radial)).abs() < 1e-9);
    assert!((shortest - 140.0 * (1.0 - ash().tangential)).abs() < 1e-9);
}

proptest! {
    #[test]
    fn the_faces_of_a_closed_ring_are_free_and_its_forces_balance(
        a in 30.0..150.0_f64, share in 0.05..0.4_f64, off in 0.0..0.95_f64
    ) {
        let ring = Ring::new(a, share * a).unwrap();
        let closed = ClosedRing::new(ring, ash(), off * ring.bore_mm()).unwrap();
        for angle in [0.0, 0.7, 2.0, 3.1] {
            for face in [a, ring.bore_mm()] {
                let s = closed.stress(face, angle, 1000.0).unwrap();
                prop_assert!(s.radial.abs() < 1e-9 && s.shear.abs() < 1e-9);
            }
        }
        // Across the cut through both walls along the pith line the hoop forces add up to nothing.
        let cut = |angle: f64| crate::quadrature::piecewise(ring.bore_mm(), a, &[], 16, |r| {
            closed.stress(r, angle, 1000.0).unwrap().hoop
        });
        prop_assert!((cut(0.0) + cut(PI)).abs() < 1e-6 * a);
    }

    #[test]
    fn a_pith_far_away_gives_the_ellipse(angle in 0.0..TAU) {
        let p = Xy::polar(70.0, angle);
        let far = free_point(p, 1.0e6, ash());
        let shift = 1.0e6 * ash().radial;
        prop_assert!((far.x - shift - p.x * (1.0 - ash().radial)).abs() < 1e-3);
        prop_assert!((far.y - p.y * (1.0 - ash().tangential)).abs() < 1e-3);
    }

    #[test]
    fn small_lengths_shrink_by_exactly_r_and_t(x in -60.0..60.0_f64, y in -60.0..60.0_f64) {
        let d = 90.0;
        let at = Xy::new(x, y);
        let phi = y.atan2(d - x);
        let ray = Xy::new(-phi.cos(), phi.sin());
        let round = Xy::new(phi.sin(), phi.cos());
        let h = 1e-4;
        let stretch = |way: Xy| {
            let one = free_point(Xy::new(at.x - h * way.x, at.y - h * way.y), d, ash());
            let two = free_point(Xy::new(at.x + h * way.x, at.y + h * way.y), d, ash());
            one.distance(&two) / (2.0 * h)
        };
        prop_assert!((stretch(ray) - (1.0 - ash().radial)).abs() < 1e-7);
        prop_assert!((stretch(round) - (1.0 - ash().tangential)).abs() < 1e-7);
    }
}
