//! Outline: the dried outside of a station from its readings, and the bore that belongs to it. Models: `evenwall_wood::fitted`.
//!
//! Angles are those of the clock: 0 at the pencil line, on in the way of the clock as seen from the mouth.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use evenwall_piece::fact::RoundReading;
use evenwall_piece::piece::SectionMeasured;
use evenwall_piece::truing::WallThere;
use evenwall_piece::vocabulary::RoundHow;
use evenwall_wood::fitted::{FitError, bore_of, ellipse, from_angles, from_centre, from_diameters};
use evenwall_wood::section::Xy;

/// Where the longest diameter is drawn as long as nothing tells where it lies: across the picture.
pub(super) const ACROSS: f64 = FRAC_PI_2;

/// How far a reading may stand from its even place and still count as even, degrees: less than a pencil line's width at the
/// rim of a small piece.
const EVEN_DEG: f64 = 0.5;

/// The outline of readings taken round a station.
///
/// # Errors
/// [`FitError`] where there are too few, or a figure is out of range.
pub(super) fn round_outline(how: RoundHow, readings: &[RoundReading]) -> Result<Vec<Xy>, FitError> {
    let n = readings.len();
    let turn = match how {
        RoundHow::Diameters => 180.0,
        RoundHow::FromCentre => 360.0,
    };
    let even = readings
        .iter()
        .enumerate()
        .all(|(i, r)| (r.turn_deg - turn * i as f64 / n as f64).abs() < EVEN_DEG);
    let values: Vec<f64> = readings.iter().map(|r| r.mm.value).collect();
    if even {
        return Ok(match how {
            RoundHow::Diameters => from_diameters(&values)?,
            RoundHow::FromCentre => from_centre(&values)?,
        }
        .outline());
    }
    let anywhere: Vec<(f64, f64)> = readings
        .iter()
        .flat_map(|r| {
            let angle = r.turn_deg.to_radians();
            match how {
                RoundHow::FromCentre => vec![(angle, r.mm.value)],
                // A diameter is seen from both its ends.
                RoundHow::Diameters => {
                    let half = 0.5 * r.mm.value;
                    vec![(angle, half), (angle + PI, half)]
                }
            }
        })
        .collect();
    Ok(from_angles(&anywhere)?.outline())
}

/// The ellipse with two diameters, the longest at the angle `towards`.
///
/// # Errors
/// [`FitError`] where a figure is out of range.
pub(super) fn two_outline(
    longest_mm: f64,
    shortest_mm: f64,
    towards: f64,
) -> Result<Vec<Xy>, FitError> {
    Ok(turned(&ellipse(longest_mm, shortest_mm)?, towards))
}

/// An outline turned on by an angle.
pub(super) fn turned(outline: &[Xy], by: f64) -> Vec<Xy> {
    let (s, c) = by.sin_cos();
    outline
        .iter()
        .map(|p| Xy::new(p.x * c - p.y * s, p.x * s + p.y * c))
        .collect()
}

/// Twice-round part of an outline given at even angles: its angle is twice that of the longest diameter, its length how oval
/// it is.
fn twice_round(outline: &[Xy]) -> (f64, f64) {
    outline.iter().fold((0.0, 0.0), |(c, s), p| {
        let (r, twice) = (p.x.hypot(p.y), 2.0 * p.y.atan2(p.x));
        (c + r * twice.cos(), s + r * twice.sin())
    })
}

/// Where the longest diameter lies by what was read round, all stations together; [`ACROSS`] where nothing tells.
pub(super) fn longest_towards<'a>(round: impl Iterator<Item = &'a Vec<Xy>>) -> f64 {
    let sum = round
        .map(|o| twice_round(o))
        .fold((0.0, 0.0), |a: (f64, f64), b| (a.0 + b.0, a.1 + b.1));
    if sum.0.hypot(sum.1) > 1e-6 {
        0.5 * sum.1.atan2(sum.0)
    } else {
        ACROSS
    }
}

/// True where a station's readings say how it lies to the pencil line.
pub(super) fn tells_where(measured: &SectionMeasured) -> bool {
    matches!(measured, SectionMeasured::Round { .. })
}

/// True for walls read at two or more places evenly round, the first at the pencil line.
fn evenly_round(walls: &[WallThere]) -> bool {
    let n = walls.len();
    let at = |w: &WallThere| usize::from(w.position.hour() % 12);
    n > 1 && 12 % n == 0 && walls.iter().enumerate().all(|(i, w)| at(w) == i * 12 / n)
}

/// The dried bore inside `outer`: with the wall at each position where it lies to the pencil line and was read evenly round,
/// else with the thinnest all round. Walls read dry stand as they were read; those read green shrink with the wood.
/// `green_radius_mm` is the outside radius as turned.
///
/// # Errors
/// [`FitError`] where there is no wall, or one is as thick as the radius.
pub(super) fn bore(
    outer: &[Xy],
    green_radius_mm: f64,
    walls: &[WallThere],
    lies_to_the_line: bool,
) -> Result<Vec<Xy>, FitError> {
    let radius = |p: &Xy| p.x.hypot(p.y);
    let largest = outer.iter().map(radius).fold(0.0, f64::max);
    // A dry wall as it would have been on the section as turned: `bore_of` shrinks it again by the same share.
    let as_turned = |w: &WallThere, here: f64| {
        if w.dry && here > 0.0 {
            w.mm * green_radius_mm / here
        } else {
            w.mm
        }
    };
    let round: Vec<f64> = if lies_to_the_line && evenly_round(walls) {
        walls
            .iter()
            .map(|w| {
                let angle = TAU * f64::from(w.position.hour() % 12) / 12.0;
                as_turned(w, radius_at(outer, angle).unwrap_or(largest))
            })
            .collect()
    } else {
        let thinnest = walls.iter().map(|w| as_turned(w, largest));
        thinnest.reduce(f64::min).into_iter().collect()
    };
    bore_of(outer, green_radius_mm, &round)
}

/// The distance from the middle to the point of an outline that lies nearest to an angle.
fn radius_at(outline: &[Xy], angle: f64) -> Option<f64> {
    let off = |p: &Xy| {
        let by = (p.y.atan2(p.x) - angle).rem_euclid(TAU);
        by.min(TAU - by)
    };
    outline
        .iter()
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .map(|p| p.x.hypot(p.y))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use evenwall_piece::fact::{Clock, Measure};
    use evenwall_wood::section::widths_mm;

    fn round(values: &[f64], turn: f64) -> Vec<RoundReading> {
        let reading = |(i, v): (usize, &f64)| RoundReading {
            turn_deg: turn * i as f64 / values.len() as f64,
            mm: Measure::plain(*v),
        };
        values.iter().enumerate().map(reading).collect()
    }

    fn there(hour: u8, mm: f64, dry: bool) -> WallThere {
        let position = Clock::new(hour).unwrap();
        WallThere { position, mm, dry }
    }

    #[test]
    fn readings_round_say_where_the_longest_lies() {
        // Longest 12 to 6 o'clock.
        let upright = round_outline(
            RoundHow::Diameters,
            &round(&[140.0, 137.0, 134.0, 137.0], 180.0),
        )
        .unwrap();
        assert!(longest_towards([upright.clone()].iter()).abs() < 1e-6);
        // Longest at half past one: the second of four.
        let slanted = round_outline(
            RoundHow::Diameters,
            &round(&[137.0, 140.0, 137.0, 134.0], 180.0),
        )
        .unwrap();
        assert!((longest_towards([slanted].iter()) - PI / 4.0).abs() < 1e-6);
        assert!((longest_towards([].iter()) - ACROSS).abs() < 1e-12);
        let (longest, shortest) = widths_mm(&upright);
        assert!((longest - 140.0).abs() < 0.1 && (shortest - 134.0).abs() < 0.1);
    }

    #[test]
    fn uneven_readings_are_fitted_too() {
        let mut readings = round(&[140.0, 137.0, 134.0, 137.0], 180.0);
        readings[1].turn_deg = 40.0;
        readings[1].mm = Measure::plain(137.0 + 3.0 * (80.0_f64).to_radians().cos());
        let outline = round_outline(RoundHow::Diameters, &readings).unwrap();
        let (longest, shortest) = widths_mm(&outline);
        assert!((longest - 140.0).abs() < 0.2, "{longest}");
        assert!((shortest - 134.0).abs() < 0.2, "{shortest}");
        assert!(round_outline(RoundHow::FromCentre, &readings[..2]).is_err());
    }

    #[test]
    fn a_dry_wall_stands_as_it_was_read_and_a_green_one_shrinks() {
        let outer = two_outline(134.96, 131.992, 0.0).unwrap();
        let dry = bore(&outer, 70.0, &[there(12, 9.0, true)], false).unwrap();
        let (longest, _) = widths_mm(&dry);
        assert!((longest - (134.96 - 18.0)).abs() < 0.01, "{longest}");
        let green = bore(&outer, 70.0, &[there(12, 10.0, false)], false).unwrap();
        let (longest, shortest) = widths_mm(&green);
        assert!((longest - 134.96 * 60.0 / 70.0).abs() < 0.01);
        assert!((shortest - 131.992 * 60.0 / 70.0).abs() < 0.01);
    }

    #[test]
    fn the_wall_of_each_position_counts_where_the_outline_lies_to_the_line() {
        let outer = two_outline(140.0, 140.0, 0.0).unwrap();
        let walls = [there(12, 12.0, true), there(6, 9.0, true)];
        let placed = bore(&outer, 70.0, &walls, true).unwrap();
        // 12 o'clock is at angle 0.
        assert!((radius_at(&placed, 0.0).unwrap() - 58.0).abs() < 1e-6);
        assert!((radius_at(&placed, PI).unwrap() - 61.0).abs() < 1e-6);
        let loose = bore(&outer, 70.0, &walls, false).unwrap();
        assert!((radius_at(&loose, 0.0).unwrap() - 61.0).abs() < 1e-6);
        // Three readings that are not spread evenly: the thinnest.
        let uneven = [walls[0], there(1, 8.0, true), there(2, 8.5, true)];
        let thin = bore(&outer, 70.0, &uneven, true).unwrap();
        assert!((radius_at(&thin, PI).unwrap() - 62.0).abs() < 1e-6);
    }
}
