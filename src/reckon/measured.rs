//! Questions about what can be trued from measured outlines, at one station or about one axis for all.

use evenwall_wood::axis::{Station, best_axis, wall_about_mm};
use evenwall_wood::range::Range;
use evenwall_wood::section::Xy;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must};
use crate::outlines::{BORE, OUTER, PLACE, pair};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::trueing::{OFF_CENTRE, off_centre};

/// A wall wanted when trueing, mm; 0 asks for the largest.
const WANTED: Range = Range::new("wall wanted", "mm", 0.0, 300.0);
/// Points of all outlines together: more would take seconds.
const MOST_POINTS: usize = 60_000;

const WANTED_KEY: Key = may(
    "wanted_mm",
    Kind::Number(Limits::of(WANTED)),
    "wall wanted there; 0 when left out: as much as there is",
);

const STATION: &[Key] = &[
    may("name", Kind::Text, "what to call it"),
    must(
        "outer",
        Kind::Object(OUTER),
        "dried outside, one way of several",
    ),
    must("bore", Kind::Object(BORE), "dried bore, one way of several"),
    WANTED_KEY,
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[Question {
    name: "true_measured",
    answers: "The largest even wall that can be trued from measured outlines, and the axis for it: least distance to the outside less \
              greatest distance to the bore is made as large as it can be. Several stations share one axis, for which the least \
              (wall less wall wanted) is as large as it can be; tilt is left out. Few readings are joined by a smooth curve before \
              they are used. All stations are in one frame, mm, such as the old centre mark at `[0, 0]`.",
    inputs: &[&[
        may(
            "stations",
            Kind::Objects(STATION, Count::new(1, 40)),
            "the stations; or `outer` and `bore` for a single one",
        ),
        may(
            "outer",
            Kind::Object(OUTER),
            "single station: dried outside",
        ),
        may("bore", Kind::Object(BORE), "single station: dried bore"),
        WANTED_KEY,
        may(
            "about_mm",
            Kind::Point(PLACE),
            "an axis `[x, y]`, to have the walls about it too",
        ),
        OFF_CENTRE,
    ]],
    outputs: &[&[
        gives(
            "wall_mm",
            "wall at the tightest station about the best axis; below 0 when none is left",
        ),
        gives("axis_mm", "best axis `[x, y]`"),
        gives(
            "to_spare_mm",
            "wall less wall wanted at the tightest station",
        ),
        gives("tightest", "number of that station, from 1"),
        gives("stations[].name", "as given"),
        gives("stations[].wall_mm", "wall about the best axis"),
        gives("stations[].to_spare_mm", "that less the wall wanted"),
        gives(
            "stations[].alone_mm",
            "wall this station would leave about its own best axis",
        ),
        gives(
            "stations[].wall_about_mm",
            "with `about_mm`: wall about that axis",
        ),
        gives(
            "stations[].wall_off_centre_mm",
            "with `off_centre_mm`: wall so far from the best axis, worst direction",
        ),
    ]],
    examples: &[
        r#"{"ask": "true_measured", "outer": {"semi_axes_mm": [67, 65]}, "bore": {"semi_axes_mm": [57, 56], "centre_mm": [1, -0.5]}, "about_mm": [0, 0]}"#,
        r#"{"ask": "true_measured", "outer": {"diameters_mm": [135, 132]}, "bore": {"green_diameter_mm": 140, "green_walls_mm": 10}, "off_centre_mm": 0.5}"#,
        r#"{"ask": "true_measured", "stations": [{"name": "rim", "outer": {"radii_mm": [45, 44, 43.5, 44, 45, 44, 43.5, 44]}, "bore": {"diameters_mm": [73, 71]}, "wanted_mm": 5}, {"name": "middle", "outer": {"diameters_mm": [135, 133.5, 132, 133.5]}, "bore": {"diameters_mm": [115, 113]}, "wanted_mm": 5}]}"#,
    ],
    sum: measured,
}];

struct Read {
    name: Option<String>,
    outer: Vec<Xy>,
    bore: Vec<Xy>,
    wanted_mm: f64,
}

fn read(asked: &Asked<'_>) -> Result<Read, Refused> {
    let outer = asked
        .object("outer")
        .ok_or_else(|| asked.missing("outer"))?;
    let bore = asked.object("bore").ok_or_else(|| asked.missing("bore"))?;
    let (outer, bore) = pair(&outer, &bore)?;
    Ok(Read {
        name: asked.text("name").map(str::to_owned),
        outer,
        bore,
        wanted_mm: asked.number("wanted_mm").unwrap_or(0.0),
    })
}

fn measured(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let mut read_all = Vec::new();
    let several = asked.objects("stations");
    if several.is_empty() {
        read_all.push(read(asked)?);
    } else {
        if let Some(key) = ["outer", "bore", "wanted_mm"]
            .into_iter()
            .find(|k| asked.has(k))
        {
            return Err(Refused::together(format!(
                "`stations` is given and also `{key}`; put it into its station"
            )));
        }
        for (i, station) in several.iter().enumerate() {
            read_all.push(
                read(station).map_err(|e| Refused::together(format!("station {}: {e}", i + 1)))?,
            );
        }
    }
    let points: usize = read_all.iter().map(|r| r.outer.len() + r.bore.len()).sum();
    if points > MOST_POINTS {
        return Err(Refused::together(format!(
            "the outlines come to {points} points, but at most {MOST_POINTS} are allowed; ask about fewer stations at once"
        )));
    }
    answer(asked, &read_all)
}

fn station(read: &Read) -> Station<'_> {
    Station {
        outer: &read.outer,
        inner: &read.bore,
        wanted_mm: read.wanted_mm,
    }
}

fn answer(asked: &Asked<'_>, read: &[Read]) -> Result<Answer, Refused> {
    let stations: Vec<Station<'_>> = read.iter().map(station).collect();
    let best = best_axis(&stations)?;
    let mut each = Vec::with_capacity(read.len());
    for (r, wall) in read.iter().zip(&best.walls_mm) {
        let alone = if read.len() == 1 {
            *wall
        } else {
            best_axis(&[station(r)])?.walls_mm[0]
        };
        let about = asked
            .point("about_mm")
            .map(|(x, y)| wall_about_mm(&r.outer, &r.bore, Xy::new(x, y)));
        let off = asked
            .number("off_centre_mm")
            .map(|e| off_centre(&r.outer, &r.bore, best.centre, e));
        each.push(
            Answer::new()
                .with_some("name", r.name.clone())
                .with("wall_mm", *wall)
                .with("to_spare_mm", wall - r.wanted_mm)
                .with("alone_mm", alone)
                .with_some("wall_about_mm", about)
                .with_some("wall_off_centre_mm", off),
        );
    }
    Ok(Answer::new()
        .with("wall_mm", best.walls_mm[best.tightest])
        .with("axis_mm", vec![best.centre.x, best.centre.y])
        .with("to_spare_mm", best.to_spare_mm)
        .with("tightest", best.tightest + 1)
        .with("stations", each))
}
