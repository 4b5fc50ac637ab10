//! The walls of a drying piece as they are asked for: one, or a list of stations, floor and spigot.

use evenwall_wood::drying::Wall;
use evenwall_wood::drying::case::{AREA, FACE, GRAIN, THICKNESS};
use evenwall_wood::drying::wood::{LEAN, SIDE_GRAIN, grain_factor};

use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, usually};
use crate::refused::Refused;

/// Face area reckoned with when none is given: for one wall alone it changes nothing.
const ANY_AREA_CM2: f64 = 100.0;
/// Most walls of a piece.
pub const MOST_WALLS: usize = 24;

/// One wall.
pub const WALL: &[Key] = &[
    may(
        "wall_mm",
        Kind::Number(Limits::of(THICKNESS)),
        "thickness, green; a floor or spigot likewise",
    ),
    may(
        "area_cm2",
        Kind::Number(Limits::of(AREA)),
        "area of one face; its share of the wood is area times thickness. For several walls, for a bag and for weights",
    ),
    may(
        "lean_deg",
        Kind::Number(Limits::of(LEAN)),
        "lean of the wall's normal out of the plane across the grain: 0 the wall of an end-grain cylinder (as when left out), 90 \
         its flat floor",
    ),
    may(
        "grain",
        Kind::Word(&["end", "side"]),
        "\"side\" for a side-grain piece, 5.5 times as fast as across the grain, rough; instead of `lean_deg`",
    ),
    may(
        "grain_ratio",
        Kind::Number(Limits::of(GRAIN)),
        "F itself, instead of `lean_deg`",
    ),
    usually(
        "outside_ratio",
        Limits::of(FACE),
        1.0,
        "how freely the outside gives off water: 1 free, 0 sealed",
    ),
    usually(
        "inside_ratio",
        Limits::of(FACE),
        1.0,
        "the same of the inside; 0.2 for a bore the air hardly reaches",
    ),
];

const NAMED_WALL: &[Key] = &[
    may("name", Kind::Text, "what to call it"),
    WALL[0],
    WALL[1],
    WALL[2],
    WALL[3],
    WALL[4],
    WALL[5],
    WALL[6],
];

/// Several walls.
pub const WALLS: &[Key] = &[may(
    "walls",
    Kind::Objects(NAMED_WALL, Count::new(1, MOST_WALLS)),
    "instead of one wall: stations, floor and spigot, each with `wall_mm`",
)];

/// Walls, what they are called, and whether every area was given.
pub type Walls = (Vec<Wall>, Vec<Option<String>>, bool);

/// The walls asked for.
///
/// # Errors
/// [`Refused`] when none is given, or one is said two ways.
pub fn walls(asked: &Asked<'_>) -> Result<Walls, Refused> {
    let several = asked.objects("walls");
    let of_one = |k: &&Key| asked.has(k.name);
    if several.is_empty() {
        if !asked.has("wall_mm") {
            return Err(Refused::together(format!(
                "{} needs its wall: `wall_mm`, or a list of `walls`; give one of them",
                asked.of()
            )));
        }
        return Ok((vec![wall(asked)?], vec![None], asked.has("area_cm2")));
    }
    if let Some(key) = WALL.iter().find(of_one) {
        return Err(Refused::together(format!(
            "`{}` stands beside `walls`; put it into each of the walls it is meant for",
            key.name
        )));
    }
    let with_area = several.iter().filter(|w| w.has("area_cm2")).count();
    if with_area > 0 && with_area < several.len() {
        return Err(Refused::together(
            "some of `walls` have `area_cm2` and some have none; give it for all, or for none to take all faces as alike",
        ));
    }
    let names = several.iter().map(|w| w.text("name").map(str::to_owned));
    Ok((
        several.iter().map(wall).collect::<Result<_, _>>()?,
        names.collect(),
        with_area > 0,
    ))
}

fn wall(asked: &Asked<'_>) -> Result<Wall, Refused> {
    let ways = ["lean_deg", "grain", "grain_ratio"];
    if ways.iter().filter(|k| asked.has(k)).count() > 1 {
        return Err(Refused::together(format!(
            "{} has its grain said twice; give one of `lean_deg`, `grain` and `grain_ratio`",
            asked.of()
        )));
    }
    let grain = match (asked.number("grain_ratio"), asked.text("grain")) {
        (Some(ratio), _) => ratio,
        (None, Some("side")) => SIDE_GRAIN,
        _ => grain_factor(asked.number("lean_deg").unwrap_or(0.0))?,
    };
    Ok(Wall {
        thickness_mm: asked.need("wall_mm")?,
        area_cm2: asked.number("area_cm2").unwrap_or(ANY_AREA_CM2),
        grain,
        faces: [asked.need("outside_ratio")?, asked.need("inside_ratio")?],
    })
}
