//! Questions about a ring that holds its own pith and dries under stress.

use evenwall_wood::axis::{Station, best_axis};
use evenwall_wood::closed_ring::{
    ClosedRing, STIFFNESS, orthotropic_hoop_mpa, solid_disc_mpa, thin_ring_mpa,
};
use evenwall_wood::section::{Dried, PITH_DISTANCE, Pith, Place, Ring, SECTION_RADIUS, dried};
use evenwall_wood::trueing::wall_left;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must, usually};
use crate::pith::{self, RING};
use crate::question::{Output, Question, gives};
use crate::refused::Refused;
use crate::section::{FINE, SHAPE, shape};
use crate::strains::{USED, USUAL, Used, WOOD, strains};

const STIFF: Limits = Limits::of(STIFFNESS);
const STIFFNESS_KEY: Key = usually(
    "stiffness_mpa",
    STIFF,
    960.0,
    "stiffness across the grain; as given for white ash at 12 %, from memory",
);
const FROM_AXIS: Limits = Limits::of(SECTION_RADIUS);
const ANGLE: Limits = Limits::new("deg", -3600.0, 3600.0);

const AT: &[Key] = &[
    must(
        "radius_mm",
        Kind::Number(FROM_AXIS),
        "distance from the axis, green, within the wall",
    ),
    usually(
        "angle_deg",
        ANGLE,
        0.0,
        "angle from the direction of the pith",
    ),
];

/// What the best axis leaves of a ring.
pub const LEFT: &[Output] = &[
    gives(
        "best_wall_mm",
        "pith in the bore: largest even wall, by the best axis on the dried outlines",
    ),
    gives(
        "best_factor",
        "pith in the bore: share of the full oval that counts, c in t (1 - R) - c a (T - R)",
    ),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "closed_ring",
        answers: "Stress and shape of a ring with its pith in the bore: plane stress, wedge disclination and edge dislocation in closed \
                  form. Tension is positive. Call stress 20 % either way, creep relaxes it, and it never says whether the wood \
                  cracks. With the pith in the wall the answer is that state and no number of stress or shape.",
        inputs: &[
            RING,
            &[
                usually(
                    "pith_mm",
                    Limits::of(PITH_DISTANCE),
                    0.0,
                    "distance of the pith from the axis",
                ),
                STIFFNESS_KEY,
                may(
                    "at",
                    Kind::Objects(AT, Count::new(1, 2000)),
                    "places to give the stress at",
                ),
            ],
            WOOD,
            USUAL,
        ],
        outputs: &[
            SHAPE,
            &[
                gives("at[].radius_mm", "place, as asked"),
                gives("at[].angle_deg", "place, as asked"),
                gives("at[].sigma_theta_mpa", "stress round the ring"),
                gives("at[].sigma_r_mpa", "stress through the wall"),
                gives("at[].tau_mpa", "shear"),
                gives("peak_outside_mpa", "largest tension on the outside"),
                gives(
                    "thin_ring_mpa",
                    "thin ring with the pith on its axis, plus outside and minus in the bore: E (T - R) t / (2 r)",
                ),
            ],
            LEFT,
            USED,
        ],
        examples: &[
            r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "pith_mm": 30, "wood": "white-ash", "at": [{"radius_mm": 70}, {"radius_mm": 65, "angle_deg": 90}]}"#,
            r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "pith_mm": 65, "wood": "white-ash"}"#,
        ],
        sum: closed_ring,
    },
    Question {
        name: "orthotropic_ring",
        answers: "Stress round a ring with the pith on its axis in wood of different stiffness along the rays and along the rings: the \
                  polar-orthotropic closed form, for judging the isotropic one.",
        inputs: &[
            RING,
            &[
                must(
                    "stiffness_radial_mpa",
                    Kind::Number(STIFF),
                    "along the rays",
                ),
                must(
                    "stiffness_tangential_mpa",
                    Kind::Number(STIFF),
                    "along the rings",
                ),
                may(
                    "radii_mm",
                    Kind::Numbers(FROM_AXIS, Count::new(1, 2000)),
                    "distances from the axis; left out, outside and bore",
                ),
            ],
            WOOD,
            USUAL,
        ],
        outputs: &[
            &[
                gives("at[].radius_mm", "distance from the axis"),
                gives("at[].sigma_theta_mpa", "stress round the ring"),
            ],
            USED,
        ],
        examples: &[
            r#"{"ask": "orthotropic_ring", "diameter_mm": 140, "wall_mm": 10, "stiffness_radial_mpa": 1500, "stiffness_tangential_mpa": 960, "wood": "white-ash"}"#,
        ],
        sum: orthotropic,
    },
    Question {
        name: "solid_disc",
        answers: "Tension at the rim of a solid disc that holds its pith, a floor or a spigot: E (T - R) / 2. At the pith the formula \
                  has no limit.",
        inputs: &[&[STIFFNESS_KEY], WOOD, USUAL],
        outputs: &[&[gives("rim_tension_mpa", "tension at the rim")], USED],
        examples: &[r#"{"ask": "solid_disc", "stiffness_mpa": 960, "wood": "white-ash"}"#],
        sum: solid_disc,
    },
];

fn closed_ring(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let ring = pith::ring(asked)?;
    let d = asked.need("pith_mm")?;
    let e = asked.need("stiffness_mpa")?;
    let answer = shape(Answer::new(), &ring, &used, Pith::At(d))?;
    if Pith::At(d).place(&ring)? == Place::InWall {
        return Ok(used.on(answer));
    }
    let closed = ClosedRing::new(ring, used.strains, d)?;
    let mut at = Vec::new();
    for place in asked.objects("at") {
        let (radius, angle) = (place.need("radius_mm")?, place.need("angle_deg")?);
        let stress = closed.stress(radius, angle.to_radians(), e)?;
        at.push(
            Answer::new()
                .with("radius_mm", radius)
                .with("angle_deg", angle)
                .with("sigma_theta_mpa", stress.hoop)
                .with("sigma_r_mpa", stress.radial)
                .with("tau_mpa", stress.shear),
        );
    }
    let answer = answer
        .with_some("at", (!at.is_empty()).then_some(at))
        .with("peak_outside_mpa", closed.peak_outside_mpa(e)?)
        .with("thin_ring_mpa", thin_ring_mpa(ring, used.strains, e)?);
    Ok(used.on(best_left(answer, &ring, &used, d)?))
}

/// The best even wall of a ring with its pith `d` from the axis, in the bore, added to `answer`.
///
/// # Errors
/// [`Refused`] when the outlines are none.
fn best_left(answer: Answer, ring: &Ring, used: &Used, d: f64) -> Result<Answer, Refused> {
    let Dried::Shape { outer, inner } = dried(ring, used.strains, Pith::At(d), FINE)? else {
        return Ok(answer);
    };
    let best = best_axis(&[Station {
        outer: &outer,
        inner: &inner,
        wanted_mm: 0.0,
    }])?;
    left(answer, ring, used, best.to_spare_mm)
}

/// The best even wall `best_mm` of a ring with its pith in the bore and the share of the oval it means, added to `answer`.
///
/// # Errors
/// [`Refused`] as [`wall_left`].
pub fn left(answer: Answer, ring: &Ring, used: &Used, best_mm: f64) -> Result<Answer, Refused> {
    // What the wall would be if nothing of the oval counted, and if all of it did: the factor lies between.
    let none = ring.wall_mm() * (1.0 - used.strains.least());
    let all = wall_left(ring, used.strains, Pith::Far)?.wall_mm;
    let factor = (none > all).then(|| (none - best_mm) / (none - all));
    Ok(answer
        .with("best_wall_mm", best_mm)
        .with_some("best_factor", factor))
}

fn orthotropic(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let ring = pith::ring(asked)?;
    let (er, et) = (
        asked.need("stiffness_radial_mpa")?,
        asked.need("stiffness_tangential_mpa")?,
    );
    let mut radii = asked.numbers("radii_mm");
    if radii.is_empty() {
        radii = vec![ring.radius_mm(), ring.bore_mm()];
    }
    let mut at = Vec::with_capacity(radii.len());
    for radius in radii {
        let hoop = orthotropic_hoop_mpa(ring, used.strains, radius, er, et)?;
        at.push(
            Answer::new()
                .with("radius_mm", radius)
                .with("sigma_theta_mpa", hoop),
        );
    }
    Ok(used.on(Answer::new().with("at", at)))
}

fn solid_disc(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let rim = solid_disc_mpa(used.strains, asked.need("stiffness_mpa")?)?;
    Ok(used.on(Answer::new().with("rim_tension_mpa", rim)))
}
