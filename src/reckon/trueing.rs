//! Questions about how much of an even wall is left, by the closed forms.

use std::f64::consts::TAU;

use evenwall_wood::axis::{Station, best_axis, wall_about_mm};
use evenwall_wood::rough_wall::{FINISH_WALL, MARGIN, Wanted, affine_rough_wall};
use evenwall_wood::section::{Dried, Pith, Place, Ring, STRAIN, Xy, dried};
use evenwall_wood::trueing::{
    PITH_RATIO, affine_wall_mm, free_factor, outside_reach_mm, wall_left,
};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::closed_ring::{self, LEFT};
use crate::key::{Key, Kind, Limits, may, must, usually};
use crate::pith::{self, PITH, RING};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::section::FINE;
use crate::strains::{USED, USUAL, WOOD, strains};

/// How far off centre it is remounted, to see what that costs.
pub const OFF_CENTRE: Key = may(
    "off_centre_mm",
    Kind::Number(Limits::of(MARGIN)),
    "to see what remounting so far out of centre costs in the worst direction",
);

const PCT: Limits = Limits::pct(STRAIN);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "wall_left",
        answers: "The largest even wall that can be trued from a round end-grain section once it has dried. Far pith: \
                  t (1 - lo) - a (hi - lo), exact. Pith outside: exact, about the lathe's own axis carried along by the wood. Pith in \
                  the bore: a bound that is never too much, and beside it the best axis. Not known or in the wall: the full oval. \
                  Geometry only: knots, spiral grain, taper and tilt come on top.",
        inputs: &[RING, PITH, WOOD, USUAL, &[OFF_CENTRE]],
        outputs: &[
            &[
                gives("wall_mm", "largest even wall; below 0 when none is left"),
                gives(
                    "factor",
                    "share of the full oval that counts, c in t (1 - R) - c a (T - R)",
                ),
                gives(
                    "exact",
                    "true when exact for the model, false when a bound that is never too much",
                ),
                gives(
                    "place",
                    "\"outside\", \"in the bore\", \"in the wall\" or \"unknown\"",
                ),
                gives("meaning", "the same in a sentence"),
                gives(
                    "outside_reach_mm",
                    "`pith_mm` outside: least radius of the dried outside about the best axis",
                ),
                gives(
                    "axis_x_mm",
                    "where the best axis is, x towards the pith; none with the pith in the wall",
                ),
                gives(
                    "wall_off_centre_mm",
                    "with `off_centre_mm`: wall about an axis so far from the best one, worst direction",
                ),
            ],
            LEFT,
            USED,
        ],
        examples: &[
            r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith": "far", "off_centre_mm": 0.5}"#,
            r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith_mm": 77}"#,
            r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith_mm": 30}"#,
        ],
        sum: left,
    },
    Question {
        name: "affine_wall",
        answers: "The same for any round section that shrinks by one share one way and by another square to it, side grain included: \
                  t (1 - lo) - a (hi - lo); and with `finish_mm` the rough wall needed, (w + m + a (hi - lo)) / (1 - lo). Exact.",
        inputs: &[
            RING,
            &[
                must("least_pct", Kind::Number(PCT), "shrinkage done one way"),
                must("most_pct", Kind::Number(PCT), "shrinkage done square to it"),
                may(
                    "finish_mm",
                    Kind::Number(Limits::of(FINISH_WALL)),
                    "wall wanted at the finish, to have the rough wall needed",
                ),
                usually("margin_mm", Limits::of(MARGIN), 0.0, "margin on top of it"),
            ],
        ],
        outputs: &[&[
            gives("wall_mm", "largest even wall; below 0 when none is left"),
            gives("needed_mm", "with `finish_mm`: rough wall needed"),
        ]],
        examples: &[
            r#"{"ask": "affine_wall", "diameter_mm": 140, "wall_mm": 10, "least_pct": 3.5933333333, "most_pct": 5.72, "finish_mm": 5, "margin_mm": 1.5}"#,
        ],
        sum: affine,
    },
    Question {
        name: "free_factor",
        answers: "Share of the full oval that counts for a pith outside the section, to first order, by its distance over the radius: \
                  max of s sin(b) atan2(sin b, s - cos b).",
        inputs: &[&[must(
            "distance_ratio",
            Kind::Number(Limits::of(PITH_RATIO)),
            "distance of the pith over the outside radius",
        )]],
        outputs: &[&[gives("factor", "0.91 at the surface, 1 far away")]],
        examples: &[r#"{"ask": "free_factor", "distance_ratio": 1.1}"#],
        sum: factor,
    },
];

fn left(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let ring = pith::ring(asked)?;
    let at = pith::pith(asked)?;
    let place = at.place(&ring)?;
    let left = wall_left(&ring, used.strains, at)?;
    let mut answer = Answer::new()
        .with("wall_mm", left.wall_mm)
        .with("factor", left.factor)
        .with("exact", left.exact)
        .with("place", pith::place(place))
        .with("meaning", pith::meaning(place));
    if let (Pith::At(d), Place::Outside) = (at, place) {
        let reach = outside_reach_mm(ring.radius_mm(), d, used.strains)?;
        answer = answer.with("outside_reach_mm", reach);
    }
    if let Dried::Shape { outer, inner } = dried(&ring, used.strains, at, FINE)? {
        let station = Station {
            outer: &outer,
            inner: &inner,
            wanted_mm: 0.0,
        };
        let best = best_axis(&[station])?;
        let centre = best.centre;
        answer = answer.with("axis_x_mm", centre.x).with_some(
            "wall_off_centre_mm",
            asked
                .number("off_centre_mm")
                .map(|e| off_centre(&outer, &inner, centre, e)),
        );
        if place == Place::InBore {
            answer = closed_ring::left(answer, &ring, &used, best.to_spare_mm)?;
        }
    }
    Ok(used.on(answer))
}

/// The wall about an axis `off_mm` from `centre`, in the worst of 180 directions, mm.
pub fn off_centre(outer: &[Xy], inner: &[Xy], centre: Xy, off_mm: f64) -> f64 {
    (0..180)
        .map(|i| {
            let way = Xy::polar(off_mm, TAU * f64::from(i) / 180.0);
            wall_about_mm(outer, inner, Xy::new(centre.x + way.x, centre.y + way.y))
        })
        .fold(f64::INFINITY, f64::min)
}

fn affine(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let ring: Ring = pith::ring(asked)?;
    let (one, other) = (
        asked.need_fraction("least_pct")?,
        asked.need_fraction("most_pct")?,
    );
    let wall = affine_wall_mm(&ring, one.min(other), one.max(other));
    let mut answer = Answer::new().with("wall_mm", wall);
    if let Some(finish_mm) = asked.number("finish_mm") {
        let wanted = Wanted {
            finish_mm,
            margin_mm: asked.need("margin_mm")?,
            off_centre_mm: 0.0,
        };
        let needed = affine_rough_wall(ring.radius_mm(), one, other, wanted)?;
        answer = answer.with("needed_mm", needed.total_mm());
    }
    Ok(answer)
}

fn factor(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let c = free_factor(asked.need("distance_ratio")?)?;
    Ok(Answer::new().with("factor", c))
}
