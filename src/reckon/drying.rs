//! Questions about drying over time: moistures by day, when it is ready, and how far its walls part.

use evenwall_wood::drying::course::Moment;
use evenwall_wood::drying::{Drier, ELASTIC_LIMIT, course, ready as ready_of, uneven as worst_of};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::case::{Given, OF_WALLS, PHASES, START, WAY, WOOD, case, start};
use crate::key::{Count, Key, Kind, Limits, may, must, usually};
use crate::place::{AIR, DAY};
use crate::question::{Output, Question, gives};
use crate::refused::Refused;
use crate::slabs::{WALL, WALLS};
use crate::strains::{TOTAL_PCT, figures, find};

const SHOWN: Key = must(
    "days",
    Kind::OneOrMore(DAY, Count::new(1, 400)),
    "days to tell of, on the count of the phases, in any order",
);

const MOMENT: &[Output] = &[
    gives("moments[].day", "the day; they stand in order of time"),
    gives(
        "moments[].mean_pct",
        "mean moisture of the piece, by dry mass",
    ),
    gives(
        "moments[].walls_pct",
        "mean moisture of each wall, in their order",
    ),
    gives(
        "moments[].faces_pct",
        "moisture of the outermost twentieth of each wall, `[outside, inside]`",
    ),
    gives(
        "moments[].settling_pct",
        "moisture it settles to where it is, by the last fortnight",
    ),
    gives(
        "moments[].spread_pct",
        "wettest less driest wall, each taken as 30 % at most",
    ),
    gives(
        "moments[].gradient_pct",
        "largest difference of a wall's mean and its outermost twentieth, likewise",
    ),
    gives("moments[].bag_rh_pct", "in a bag: its humidity"),
    gives("moments[].mass_g", "with areas: weight"),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "drying",
        answers: "Moisture of a piece by day: each wall a slab of 20 cells, diffusivity rising with moisture, vapour from the faces to \
                  the air, steps of an hour for two days after a change and of three hours otherwise; in a bag all walls share air whose \
                  humidity is solved together with the step. Not calibrated by weighings: compare with it, take no date from it.",
        inputs: &[WOOD, WALL, WALLS, WAY, AIR, PHASES, START, &[SHOWN]],
        outputs: &[
            MOMENT,
            OF_WALLS,
            &[gives(
                "dry_mass_g",
                "with areas: oven-dry weight of all walls",
            )],
        ],
        examples: &[
            r#"{"ask": "drying", "basic_density_kg_m3": 550, "wall_mm": 10, "moisture_pct": 45, "temp_c": 18, "rh_pct": 60, "days": [1, 7, 28]}"#,
            r#"{"ask": "drying", "basic_density_kg_m3": 550, "walls": [{"name": "rim", "wall_mm": 8, "area_cm2": 275}, {"name": "corner", "wall_mm": 12, "area_cm2": 275}], "way": "bag", "conductance_m3_s": 1.510502e-5, "moisture_pct": 45, "temp_c": 18, "rh_pct": 60, "days": [7, 20]}"#,
            r#"{"ask": "drying", "wood": "white-ash", "wall_mm": 10, "phases": [{"way": "cover", "share_ratio": 0.03}, {"from_day": 15}, {"from_day": 30, "temp_c": 20, "rh_pct": 45}], "readings": [{"day": 0, "temp_c": 17, "rh_pct": 66}, {"day": 20, "temp_c": 19, "rh_pct": 58}], "days": [15, 30, 44]}"#,
        ],
        sum: drying,
    },
    Question {
        name: "ready_days",
        answers: "The days on which the piece as a whole, and its slowest wall, floor and spigot included, come within 1 point above the \
                  moisture they settle to. Not calibrated by weighings: compare with it, take no date from it.",
        inputs: &[
            WOOD,
            WALL,
            WALLS,
            WAY,
            AIR,
            PHASES,
            START,
            &[usually(
                "horizon_days",
                Limits::new("days", 1.0, 3650.0),
                365.0,
                "days from the start to look ahead",
            )],
        ],
        outputs: &[
            &[
                gives(
                    "mean_day",
                    "when the whole is; absent when not within the horizon",
                ),
                gives("slowest_day", "when the slowest wall is; likewise"),
            ],
            OF_WALLS,
        ],
        examples: &[
            r#"{"ask": "ready_days", "basic_density_kg_m3": 550, "walls": [{"name": "wall", "wall_mm": 10, "area_cm2": 400}, {"name": "floor", "wall_mm": 30, "area_cm2": 60, "lean_deg": 90, "outside_ratio": 0}], "moisture_pct": 45, "temp_c": 18, "rh_pct": 60}"#,
        ],
        sum: ready,
    },
    Question {
        name: "uneven_drying",
        answers: "The worst difference between thin and thick walls, and between face and middle, while it dries, and what that strains. \
                  Upper bounds, all taken as fully held and without creep: good for comparing a shelf with a bag, never a chance of a \
                  crack.",
        inputs: &[
            WOOD,
            &[may(
                "tangential_pct",
                Kind::Number(TOTAL_PCT),
                "tangential shrinkage, green to oven-dry, for the strains; left out, that of `wood`",
            )],
            WALL,
            WALLS,
            WAY,
            AIR,
            PHASES,
            START,
            &[must("until_day", Kind::Number(DAY), "last day looked at")],
        ],
        outputs: &[
            &[
                gives(
                    "spread_pct",
                    "largest difference of two walls' means, each taken as 30 % at most",
                ),
                gives("spread_day", "when"),
                gives(
                    "gradient_pct",
                    "largest difference of a wall's mean and its outermost twentieth, likewise",
                ),
                gives("gradient_day", "when"),
                gives(
                    "mismatch_strain_pct",
                    "with a shrinkage: strain between two walls",
                ),
                gives(
                    "face_strain_pct",
                    "with a shrinkage: strain of a face held by the wall behind it",
                ),
                gives(
                    "elastic_limit_pct",
                    "with a shrinkage: strain across the grain borne without creep, ash, from memory",
                ),
            ],
            OF_WALLS,
        ],
        examples: &[
            r#"{"ask": "uneven_drying", "wood": "white-ash", "walls": [{"name": "thin", "wall_mm": 8, "area_cm2": 275}, {"name": "thick", "wall_mm": 12, "area_cm2": 275}], "way": "bag", "loses_g_day": 8, "moisture_pct": 45, "temp_c": 18, "rh_pct": 60, "until_day": 60}"#,
        ],
        sum: uneven,
    },
];

fn pcts(fractions: impl IntoIterator<Item = f64>) -> Vec<f64> {
    fractions.into_iter().map(|f| 100.0 * f).collect()
}

fn moment(m: &Moment, dry_g: Option<f64>) -> Answer {
    let faces: Vec<Vec<f64>> = m.outer.iter().map(|f| pcts(*f)).collect();
    Answer::new()
        .with("day", m.day)
        .pct("mean_pct", m.mean)
        .with("walls_pct", pcts(m.walls.iter().copied()))
        .with("faces_pct", faces)
        .pct("settling_pct", m.settling)
        .pct("spread_pct", m.spread())
        .pct("gradient_pct", m.gradient())
        .with_some("bag_rh_pct", m.bag_rh.map(|h| 100.0 * h))
        .with_some("mass_g", dry_g.map(|dry| m.mass_g(dry)))
}

fn drying(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let given = case(asked)?;
    let (moisture, from) = start(asked)?;
    let mut days = asked.numbers("days");
    days.sort_by(f64::total_cmp);
    given.one_run(from, days.last().copied().unwrap_or(from))?;
    let moments = course(&given.case, given.tuning, from, moisture, &days)?;
    let dry_g = given.weighs.then(|| given.case.dry_mass_g());
    let each: Vec<Answer> = moments.iter().map(|m| moment(m, dry_g)).collect();
    Ok(given
        .walls_on(Answer::new().with("moments", each))
        .with_some("dry_mass_g", dry_g))
}

fn ready(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let given = case(asked)?;
    let (moisture, from) = start(asked)?;
    let horizon = from + asked.need("horizon_days")?;
    given.one_run(from, horizon)?;
    let mut drier = Drier::new(&given.case, given.tuning, from, moisture)?;
    let found = ready_of(&mut drier, horizon)?;
    Ok(given.walls_on(
        Answer::new()
            .with_some("mean_day", found.mean_day)
            .with_some("slowest_day", found.slowest_day),
    ))
}

fn tangential(asked: &Asked<'_>) -> Result<Option<f64>, Refused> {
    Ok(
        match (asked.fraction("tangential_pct"), asked.text("wood")) {
            (Some(given), _) => Some(given),
            (None, Some(name)) => Some(figures(find(name)?).shrinkages.tangential),
            (None, None) => None,
        },
    )
}

fn uneven(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let given: Given = case(asked)?;
    let (moisture, from) = start(asked)?;
    let until = asked.need("until_day")?;
    given.one_run(from, until)?;
    let worst = worst_of(&given.case, given.tuning, from, moisture, until)?;
    let mut answer = Answer::new()
        .pct("spread_pct", worst.spread)
        .with("spread_day", worst.spread_day)
        .pct("gradient_pct", worst.gradient)
        .with("gradient_day", worst.gradient_day);
    if let Some(tangential) = tangential(asked)? {
        answer = answer
            .pct("mismatch_strain_pct", worst.mismatch_strain(tangential)?)
            .pct("face_strain_pct", worst.face_strain(tangential)?)
            .pct("elastic_limit_pct", ELASTIC_LIMIT);
    }
    Ok(given.walls_on(answer))
}
