//! Where the pith is: the keys shared by the questions about sections, and a place in words.

use evenwall_wood::section::{PITH_DISTANCE, Pith, Place, Ring, SECTION_RADIUS, Tension};
use evenwall_wood::wall::WALL;

use crate::asked::Asked;
use crate::key::{Key, Kind, Limits, may, must};
use crate::refused::Refused;

/// The section as turned green.
pub const RING: &[Key] = &[
    must(
        "diameter_mm",
        Kind::Number(Limits::twice(SECTION_RADIUS)),
        "outside diameter as turned green",
    ),
    must(
        "wall_mm",
        Kind::Number(Limits::of(WALL)),
        "wall as turned green, thinner than the radius",
    ),
];

/// Where the pith is.
pub const PITH: &[Key] = &[
    may(
        "pith_mm",
        Kind::Number(Limits::of(PITH_DISTANCE)),
        "distance of the pith from the lathe axis; left out, `pith` counts",
    ),
    may(
        "pith",
        Kind::Word(&["far", "unknown"]),
        "\"far\": so far outside that the rings run straight; \"unknown\" when left out: reckoned as far",
    ),
];

/// The ring asked about.
///
/// # Errors
/// [`Refused`] when the wall leaves no hollow.
pub fn ring(asked: &Asked<'_>) -> Result<Ring, Refused> {
    Ok(Ring::new(
        0.5 * asked.need("diameter_mm")?,
        asked.need("wall_mm")?,
    )?)
}

/// The pith asked about.
///
/// # Errors
/// [`Refused`] when both a distance and a word are given.
pub fn pith(asked: &Asked<'_>) -> Result<Pith, Refused> {
    match (asked.number("pith_mm"), asked.text("pith")) {
        (Some(_), Some(_)) => Err(Refused::together(
            "`pith_mm` and `pith` both say where the pith is; leave one of them out",
        )),
        (Some(d), None) => Ok(Pith::At(d)),
        (None, Some("far")) => Ok(Pith::Far),
        _ => Ok(Pith::Unknown),
    }
}

/// A place as a word.
pub fn place(place: Place) -> &'static str {
    match place {
        Place::Outside => "outside",
        Place::InBore => "in the bore",
        Place::InWall => "in the wall",
        Place::Unknown => "unknown",
    }
}

/// What a place means, in a sentence.
pub fn meaning(place: Place) -> &'static str {
    match place {
        Place::Outside => {
            "The pith is outside the section: it moves freely and dries without stress."
        }
        Place::InBore => {
            "The pith is in the bore: a closed ring, which stays nearly round and dries under stress."
        }
        Place::InWall => {
            "The pith is in the wall: expect a split. There is no smooth shape and no stress to give; the wall allowance is \
             that of the full oval."
        }
        Place::Unknown => "The pith is not known: reckoned as far outside, the most oval.",
    }
}

/// The face in tension as a word.
pub fn tension(tension: Tension) -> &'static str {
    match tension {
        Tension::None => "neither",
        Tension::Outside => "outside",
        Tension::Bore => "bore",
        Tension::NotSaid => "not said",
    }
}
