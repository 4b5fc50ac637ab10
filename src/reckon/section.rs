//! Questions about the dried shape of a section.

use evenwall_wood::closed_ring::ClosedRing;
use evenwall_wood::range::Range;
use evenwall_wood::section::{
    Dried, PITH_DISTANCE, Pith, Place, Ring, Xy, dried, free_point, tension, widths_mm,
};
use evenwall_wood::trueing::affine_wall_mm;
use serde_json::Value;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Count, Kind, Limits, may, must};
use crate::pith::{self, PITH, RING};
use crate::question::{Output, Question, gives};
use crate::refused::Refused;
use crate::strains::{USED, USUAL, Used, WOOD, strains};

/// Where a point may lie, mm.
const PLACE: Limits = Limits::of(Range::new("place", "mm", -2000.0, 2000.0));
/// Points of an outline that is measured out and not shown.
pub const FINE: usize = 2880;

/// The keys of a dried shape.
pub const SHAPE: &[Output] = &[
    gives(
        "place",
        "\"outside\", \"in the bore\", \"in the wall\" or \"unknown\"",
    ),
    gives("meaning", "the same in a sentence"),
    gives(
        "tension_side",
        "face left in tension: \"outside\", \"bore\", \"neither\" or \"not said\"",
    ),
    gives(
        "along_mm",
        "outside diameter along the pith's direction; none with the pith in the wall",
    ),
    gives(
        "across_mm",
        "outside diameter across it, the largest extent",
    ),
    gives(
        "longest_mm",
        "longest outside diameter, as a calliper finds it",
    ),
    gives("shortest_mm", "shortest outside diameter"),
    gives("oval_mm", "longest less shortest"),
    gives(
        "bore_along_mm",
        "diameter of the bore along the pith's direction",
    ),
    gives("bore_across_mm", "diameter of the bore across it"),
    gives(
        "allowance_wall_mm",
        "with the pith in the wall only: largest even wall if the full oval counts, never too much for shape",
    ),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "free_map",
        answers: "Where points of an end-grain section go when it dries freely, pith outside: (r, f) seen from the pith becomes \
                  ((1 - R) r, f (1 - T) / (1 - R)). The frame is the lathe's: axis at [0, 0], pith at [pith_mm, 0].",
        inputs: &[
            &[
                must(
                    "pith_mm",
                    Kind::Number(Limits::of(PITH_DISTANCE)),
                    "distance of the pith from the axis",
                ),
                must(
                    "points_mm",
                    Kind::Points(PLACE, Count::new(1, 5000)),
                    "green points, x towards the pith",
                ),
            ],
            WOOD,
            USUAL,
        ],
        outputs: &[
            &[gives("points_mm", "dried points `[x, y]`, in order")],
            USED,
        ],
        examples: &[
            r#"{"ask": "free_map", "wood": "white-ash", "pith_mm": 90, "points_mm": [[0, 60], [-70, 0], [0, 70]]}"#,
        ],
        sum: free_map,
    },
    Question {
        name: "section",
        answers: "The dried shape of a round end-grain section, wherever the pith: moving freely (pith outside), as a closed ring (pith \
                  in the bore), or none (pith in the wall). Sizes hold to about 20 %; whether it cracks is not said.",
        inputs: &[
            RING,
            PITH,
            WOOD,
            USUAL,
            &[
                may(
                    "points_mm",
                    Kind::Points(PLACE, Count::new(1, 5000)),
                    "green points of the wall to be followed; needs `pith_mm`",
                ),
                may(
                    "outline_points",
                    Kind::Number(Limits::new("", 8.0, 2880.0)),
                    "to have the outlines with so many points",
                ),
            ],
        ],
        outputs: &[
            SHAPE,
            &[
                gives(
                    "points_mm",
                    "with `points_mm`: where they go; none with the pith in the wall",
                ),
                gives(
                    "outer_mm",
                    "with `outline_points`: outside, counter-clockwise from the pith's side",
                ),
                gives("bore_mm", "with `outline_points`: bore, the same"),
            ],
            USED,
        ],
        examples: &[
            r#"{"ask": "section", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith_mm": 30, "points_mm": [[65, 0]]}"#,
            r#"{"ask": "section", "diameter_mm": 140, "wall_mm": 10, "radial_pct": 4.9, "tangential_pct": 7.8, "pith": "far", "outline_points": 8}"#,
            r#"{"ask": "section", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "pith_mm": 65}"#,
        ],
        sum: section,
    },
];

fn xy(points: &[(f64, f64)]) -> impl Iterator<Item = Xy> + '_ {
    points.iter().map(|&(x, y)| Xy::new(x, y))
}

/// Points as JSON pairs.
pub fn pairs(points: &[Xy]) -> Value {
    points.iter().map(|p| vec![p.x, p.y]).collect()
}

fn free_map(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let d = asked.need("pith_mm")?;
    let points: Vec<Xy> = xy(&asked.points("points_mm"))
        .map(|p| free_point(p, d, used.strains))
        .collect();
    Ok(used.on(Answer::new().with("points_mm", pairs(&points))))
}

/// Place, tension and dried sizes of `ring` added to `answer`.
///
/// # Errors
/// [`Refused`] when the distance of the pith is out of range.
pub fn shape(answer: Answer, ring: &Ring, used: &Used, at: Pith) -> Result<Answer, Refused> {
    let place = at.place(ring)?;
    let answer = answer
        .with("place", pith::place(place))
        .with("meaning", pith::meaning(place))
        .with("tension_side", pith::tension(tension(place, used.strains)));
    let Dried::Shape { outer, inner } = dried(ring, used.strains, at, FINE)? else {
        let (least, most) = (used.strains.least(), used.strains.most());
        return Ok(answer.with("allowance_wall_mm", affine_wall_mm(ring, least, most)));
    };
    let along = |row: &[Xy]| row[0].distance(&row[FINE / 2]);
    let across = |row: &[Xy]| {
        let ends = row
            .iter()
            .fold((f64::MAX, f64::MIN), |m, p| (m.0.min(p.y), m.1.max(p.y)));
        ends.1 - ends.0
    };
    let (longest, shortest) = widths_mm(&outer);
    Ok(answer
        .with("along_mm", along(&outer))
        .with("across_mm", across(&outer))
        .with("longest_mm", longest)
        .with("shortest_mm", shortest)
        .with("oval_mm", longest - shortest)
        .with("bore_along_mm", along(&inner))
        .with("bore_across_mm", across(&inner)))
}

fn section(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let used = strains(asked)?;
    let ring = pith::ring(asked)?;
    let at = pith::pith(asked)?;
    let mut answer = shape(Answer::new(), &ring, &used, at)?;
    let points = asked.points("points_mm");
    if !points.is_empty() {
        answer = match (at, at.place(&ring)?) {
            (Pith::At(d), Place::Outside) => {
                let moved: Vec<Xy> = xy(&points)
                    .map(|p| free_point(p, d, used.strains))
                    .collect();
                answer.with("points_mm", pairs(&moved))
            }
            (Pith::At(d), Place::InBore) => {
                in_wall(&points, &ring)?;
                let closed = ClosedRing::new(ring, used.strains, d)?;
                let moved: Vec<Xy> = xy(&points).map(|p| closed.dried_point(p)).collect();
                answer.with("points_mm", pairs(&moved))
            }
            (_, Place::InWall) => answer,
            _ => {
                return Err(Refused::together(
                    "`points_mm` can be followed only where the pith is known; give `pith_mm`",
                ));
            }
        };
    }
    if let Some(n) = asked.number("outline_points")
        && let Dried::Shape { outer, inner } = dried(&ring, used.strains, at, n as usize)?
    {
        answer = answer
            .with("outer_mm", pairs(&outer))
            .with("bore_mm", pairs(&inner));
    }
    Ok(used.on(answer))
}

fn in_wall(points: &[(f64, f64)], ring: &Ring) -> Result<(), Refused> {
    let slack = 1e-6 * ring.radius_mm();
    let outside = xy(points).find(|p| {
        let r = p.distance(&Xy::new(0.0, 0.0));
        r < ring.bore_mm() - slack || r > ring.radius_mm() + slack
    });
    match outside {
        Some(p) => Err(Refused::together(format!(
            "`points_mm` has [{}, {}], which is not in the wall; ask for points between {} and {} mm from the axis",
            p.x,
            p.y,
            ring.bore_mm(),
            ring.radius_mm()
        ))),
        None => Ok(()),
    }
}
