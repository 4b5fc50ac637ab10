//! Questions about a vessel measured at its stations: volume, capacity, area, centre, weight, and where more comes off.

use evenwall_wood::outline::DIAMETER;
use evenwall_wood::outside::DEPTH;
use evenwall_wood::profile::{DENSITY, FLOOR_DEPTH, HEIGHT, MASS, Profile, Station};
use evenwall_wood::range::Range;
use evenwall_wood::wall::WALL;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::evenness::{self, AT_STATION, ROUND, at_station, round};
use crate::key::{Count, Key, Kind, Limits, may, must};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::{MOISTURE_PCT, figures, find, whose};

/// An outside diameter at a station, mm: from a small foot up to the largest piece.
const ACROSS: Range = Range::new("outside diameter", "mm", 2.0, DIAMETER.max);

const STATION: &[Key] = &[
    may("name", Kind::Text, "what to call it"),
    must(
        "depth_mm",
        Kind::Number(Limits::of(DEPTH)),
        "depth of the outside from the rim along the axis, growing from station to station",
    ),
    must(
        "diameter_mm",
        Kind::Number(Limits::of(ACROSS)),
        "outside diameter there",
    ),
    must(
        "wall_mm",
        Kind::OneOrMore(Limits::of(WALL), Count::new(1, 64)),
        "wall square to the surface there, or the walls at several places round; the thinnest decides",
    ),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[Question {
    name: "profile",
    answers: "A hollow vessel from its stations, green sizes: the outside is a shape-keeping cubic (Fritsch and Butland 1984) through the \
              diameters, going on straight beyond the first and the last; the bore goes through the points a wall's thickness inward, \
              square to the surface, down to a flat floor. Weights are good to about 10 %, and the moisture from a green weight to \
              about 14 points, because a piece differs from its table. The spigot is left out.",
    inputs: &[
        &[
            must(
                "stations",
                Kind::Objects(STATION, Count::new(2, 60)),
                "stations from rim to foot",
            ),
            must(
                "height_mm",
                Kind::Number(Limits::of(HEIGHT)),
                "rim to foot line",
            ),
            may(
                "floor_depth_mm",
                Kind::Number(Limits::of(FLOOR_DEPTH)),
                "depth of the floor from the rim",
            ),
            may(
                "floor_mm",
                Kind::Number(Limits::new("mm", 0.1, 1000.0)),
                "instead of it: wood left under the hollow, above the foot line",
            ),
            may(
                "basic_density_kg_m3",
                Kind::Number(Limits::of(DENSITY)),
                "oven-dry mass over green volume, to know the weight",
            ),
            may(
                "wood",
                Kind::Text,
                "instead of the density: key or name of a wood in the table, or \"unknown\"",
            ),
            may(
                "moisture_pct",
                Kind::Number(MOISTURE_PCT),
                "moisture for the expected weight; left out with a `wood`: as felled",
            ),
            may(
                "mass_g",
                Kind::Number(Limits::of(MASS)),
                "a weight, to have the moisture it means",
            ),
        ],
        evenness::WANTED,
    ],
    outputs: &[
        &[
            gives("outer_volume_cm3", "inside the outside, rim to foot line"),
            gives("capacity_ml", "what the hollow holds to the rim"),
            gives("wood_volume_cm3", "wood, without the spigot"),
            gives(
                "centre_of_mass_mm",
                "depth of the wood's centre of mass below the rim",
            ),
            gives("outside_area_cm2", "outside without rim and base"),
            gives("inside_area_cm2", "bore with its floor"),
            gives("floor_mm", "wood left under the hollow"),
            gives(
                "basic_density_kg_m3",
                "density reckoned with, when there is one",
            ),
            gives("density_of", "with `wood`: whose it is"),
            gives(
                "moisture_pct",
                "moisture of the expected weight, when there is one",
            ),
            gives("expected_mass_g", "with a density and a moisture"),
            gives(
                "moisture_from_mass_pct",
                "with a density and `mass_g`; below 0 when lighter than its table",
            ),
        ],
        ROUND,
        &[
            gives("stations[].name", "as given"),
            gives("stations[].depth_mm", "as given"),
            gives(
                "stations[].slope",
                "mm of radius for each mm of depth of the outside",
            ),
            gives(
                "stations[].inner_depth_mm",
                "depth of the bore's point that belongs to it",
            ),
            gives("stations[].inner_radius_mm", "radius of the bore there"),
        ],
        AT_STATION,
    ],
    examples: &[
        r#"{"ask": "profile", "height_mm": 130, "floor_depth_mm": 112, "wood": "white-ash", "mass_g": 400, "wanted_mm": 9.5, "stations": [{"name": "rim", "depth_mm": 0, "diameter_mm": 70, "wall_mm": 9}, {"depth_mm": 60, "diameter_mm": 134, "wall_mm": [9.5, 10]}, {"depth_mm": 130, "diameter_mm": 78, "wall_mm": 14}]}"#,
    ],
    sum: profile,
}];

fn floor_depth(asked: &Asked<'_>) -> Result<f64, Refused> {
    match (asked.number("floor_depth_mm"), asked.number("floor_mm")) {
        (Some(depth), None) => Ok(depth),
        (None, Some(floor)) => Ok(asked.need("height_mm")? - floor),
        _ => Err(Refused::together(
            "`profile` needs the floor one way: `floor_depth_mm` from the rim or `floor_mm` above the foot line; give one",
        )),
    }
}

/// Density and moisture for the weight, as far as they are known.
struct Weight {
    density: Option<f64>,
    density_of: Option<String>,
    moisture: Option<f64>,
}

fn weight(asked: &Asked<'_>) -> Result<Weight, Refused> {
    let moisture = asked.fraction("moisture_pct");
    let density = asked.number("basic_density_kg_m3");
    match (asked.text("wood"), density) {
        (Some(_), Some(_)) => Err(Refused::together(
            "`wood` and `basic_density_kg_m3` both give a density; leave one of them out",
        )),
        (Some(name), None) => {
            let found = find(name)?;
            let figures = figures(found);
            let key = found.map_or("unknown", |w| w.key.as_str());
            Ok(Weight {
                density: Some(figures.density_kg_m3),
                density_of: Some(whose(&figures.density_from, key)),
                moisture: moisture.or(Some(figures.green_moisture)),
            })
        }
        (None, density) => {
            let idle = ["mass_g", "moisture_pct"]
                .into_iter()
                .find(|k| asked.has(k));
            match (density, idle) {
                (None, Some(key)) => Err(Refused::together(format!(
                    "`{key}` is of use only with a density; give `basic_density_kg_m3` or `wood` too"
                ))),
                _ => Ok(Weight {
                    density,
                    density_of: None,
                    moisture,
                }),
            }
        }
    }
}

fn profile(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let given = asked.objects("stations");
    let walls: Vec<Vec<f64>> = given.iter().map(|s| s.numbers("wall_mm")).collect();
    let walls = evenness::thinnest(&walls);
    let mut stations = Vec::with_capacity(given.len());
    for (station, wall_mm) in given.iter().zip(&walls) {
        stations.push(Station {
            depth_mm: station.need("depth_mm")?,
            diameter_mm: station.need("diameter_mm")?,
            wall_mm: *wall_mm,
        });
    }
    let weight = weight(asked)?;
    let vessel = Profile::through(&stations, asked.need("height_mm")?, floor_depth(asked)?)?;
    let mut answer = Answer::new()
        .with("outer_volume_cm3", vessel.outer_volume_cm3())
        .with("capacity_ml", vessel.capacity_ml())
        .with("wood_volume_cm3", vessel.wood_cm3())
        .with("centre_of_mass_mm", vessel.centre_of_mass_mm())
        .with("outside_area_cm2", vessel.outside_area_cm2())
        .with("inside_area_cm2", vessel.inside_area_cm2())
        .with("floor_mm", vessel.height_mm() - vessel.floor_depth_mm())
        .with_some("basic_density_kg_m3", weight.density)
        .with_some("density_of", weight.density_of);
    if let (Some(density), Some(moisture)) = (weight.density, weight.moisture) {
        answer = answer.pct("moisture_pct", moisture).with(
            "expected_mass_g",
            vessel.expected_mass_g(density, moisture)?,
        );
    }
    if let (Some(density), Some(mass)) = (weight.density, asked.number("mass_g")) {
        answer = answer.pct(
            "moisture_from_mass_pct",
            vessel.moisture_from_mass(mass, density)?,
        );
    }
    let bore = vessel.bore_points();
    let mut each = Vec::with_capacity(stations.len());
    for (i, station) in stations.iter().enumerate() {
        let at = Answer::new()
            .with_some("name", given[i].text("name"))
            .with("depth_mm", station.depth_mm)
            .with("slope", vessel.outside().slope(station.depth_mm))
            .with_some("inner_depth_mm", bore.get(i).map(|p| p.depth_mm))
            .with_some("inner_radius_mm", bore.get(i).map(|p| p.radius_mm));
        each.push(at_station(at, asked, station.wall_mm));
    }
    Ok(round(answer, asked, &walls)?.with("stations", each))
}
