//! A drying piece as it is asked for: its wood, its walls, and how and where it dries, one way or through phases.

use evenwall_wood::drying::bag::{LOSS, conductance};
use evenwall_wood::drying::case::{
    BAG, COVER, EXCHANGE, FACE, OPEN_AIR, PAPER, SHAVINGS, STILL, WAX,
};
use evenwall_wood::drying::wood::{DENSITY, DIFFUSIVITY, RISE, USUAL_DIFFUSIVITY, USUAL_RISE};
use evenwall_wood::drying::{Case, Climate, Phase, Tuning, Way, Wood};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, usually, word};
use crate::place::{self, AIR, DAY};
use crate::question::{Output, gives};
use crate::refused::Refused;
use crate::slabs::walls;
use crate::strains::{MOISTURE_PCT, figures, find};

/// Most of walls times days that one question steps through.
const MOST_WALL_DAYS: f64 = 10_000.0;

/// The wood as drying sees it.
pub const WOOD: &[Key] = &[
    may(
        "wood",
        Kind::Text,
        "key or name of a wood in the table (ask `woods`), or \"unknown\": its density, and where asked for its green moisture and \
         tangential shrinkage",
    ),
    may(
        "basic_density_kg_m3",
        Kind::Number(Limits::of(DENSITY)),
        "oven-dry mass over green volume; instead of that of `wood`",
    ),
    usually(
        "diffusivity_12_m2_s",
        Limits::of(DIFFUSIVITY),
        USUAL_DIFFUSIVITY,
        "diffusivity across the grain at 12 % and 20 C; any wood lies a factor of 2 to 3 either side",
    ),
    usually(
        "rise_ratio",
        Limits::of(RISE),
        USUAL_RISE,
        "b of exp(b (M - 0.12)), M as a fraction and 0.30 at most: how the diffusivity rises with moisture",
    ),
    usually(
        "exchange_m_s",
        Limits::of(EXCHANGE),
        OPEN_AIR,
        "hm, exchange of a face with open air, in every phase; still air is about 0.001",
    ),
];

const WAYS: &[&str] = &["open", "still", "bag", "paper", "shavings", "wax", "cover"];

/// How it dries.
pub const WAY: &[Key] = &[
    word(
        "way",
        WAYS,
        "open",
        "on an open shelf; in still air (0.4 of the exchange), a paper bag (0.25), shavings (0.1), under wax (0.05), each from memory; \
         under a cover of `share_ratio`; or all walls together in one bag",
    ),
    may(
        "conductance_m3_s",
        Kind::Number(Limits::of(BAG)),
        "bag: leakage and turning together",
    ),
    may(
        "loses_g_day",
        Kind::Number(Limits::of(LOSS)),
        "bag, instead of `conductance_m3_s`: what it loses while its air is saturated, at the air of its first day",
    ),
    may(
        "share_ratio",
        Kind::Number(Limits::of(COVER)),
        "cover: share of the free air's exchange that it lets through",
    ),
];

const PHASE: &[Key] = &[
    usually(
        "from_day",
        DAY,
        0.0,
        "first day; it ends where the next begins",
    ),
    WAY[0],
    WAY[1],
    WAY[2],
    WAY[3],
    may(
        "exchange_m_s",
        Kind::Number(Limits::of(EXCHANGE)),
        "hm in this phase, for one that is open",
    ),
    AIR[0],
    AIR[1],
    AIR[2],
];

/// Several phases.
pub const PHASES: &[Key] = &[may(
    "phases",
    Kind::Objects(PHASE, Count::new(1, 60)),
    "instead of one way: phases in order of time; one that says nothing of the air has that of the question",
)];

/// Moisture at the start.
pub const START: &[Key] = &[
    may(
        "moisture_pct",
        Kind::Number(MOISTURE_PCT),
        "moisture at the start, even through the walls; left out, the green moisture of `wood`",
    ),
    usually("start_day", DAY, 0.0, "day of the start"),
];

/// What is said of each wall.
pub const OF_WALLS: &[Output] = &[
    gives("walls[].name", "as given"),
    gives("walls[].wall_mm", "thickness"),
    gives("walls[].grain_ratio", "grain factor F"),
];

/// A case that was asked for.
pub struct Given {
    /// The case.
    pub case: Case,
    /// The exchange, as tuning.
    pub tuning: Tuning,
    /// True when every area was given, so that weights mean something.
    pub weighs: bool,
    names: Vec<Option<String>>,
}

impl Given {
    /// `answer` with the walls.
    pub fn walls_on(&self, answer: Answer) -> Answer {
        let each: Vec<Answer> = (self.names.iter().zip(&self.case.walls))
            .map(|(name, wall)| {
                Answer::new()
                    .with_some("name", name.clone())
                    .with("wall_mm", wall.thickness_mm)
                    .with("grain_ratio", wall.grain)
            })
            .collect();
        answer.with("walls", each)
    }

    /// Puts an exchange other than the usual into the freedom of the faces, for sums that tune the exchange themselves.
    ///
    /// # Errors
    /// [`Refused`] when it is more than a face can have.
    pub fn exchange_into_faces(&mut self) -> Result<(), Refused> {
        for face in self.case.walls.iter_mut().flat_map(|w| &mut w.faces) {
            *face = FACE.check(*face * self.tuning.surface)?;
        }
        self.tuning.surface = 1.0;
        Ok(())
    }

    /// Refuses to step through more than `most` walls times days.
    ///
    /// # Errors
    /// [`Refused`] with what was asked for and what is allowed.
    pub fn affordable(&self, from: f64, to: f64, most: f64) -> Result<(), Refused> {
        let walls = self.case.walls.len();
        let days = (to - from).max(0.0);
        if walls as f64 * days <= most {
            return Ok(());
        }
        Err(Refused::together(format!(
            "{walls} walls over {days} days are asked for, but walls times days may be {most} at most; ask for fewer of either"
        )))
    }

    /// [`Given::affordable`] for one run of the model.
    ///
    /// # Errors
    /// As that.
    pub fn one_run(&self, from: f64, to: f64) -> Result<(), Refused> {
        self.affordable(from, to, MOST_WALL_DAYS)
    }
}

/// The case asked for.
///
/// # Errors
/// [`Refused`] when something is missing, said two ways, or out of range.
pub fn case(asked: &Asked<'_>) -> Result<Given, Refused> {
    let density = match (asked.number("basic_density_kg_m3"), asked.text("wood")) {
        (Some(density), _) => density,
        (None, Some(name)) => figures(find(name)?).density_kg_m3,
        (None, None) => {
            return Err(Refused::together(format!(
                "{} needs the wood: `wood` or `basic_density_kg_m3`; give one of them",
                asked.of()
            )));
        }
    };
    let exchange = asked.need("exchange_m_s")?;
    let (walls, names, weighs) = walls(asked)?;
    let phases = phases(asked, exchange)?;
    let bag = phases.iter().any(|p| matches!(p.way, Way::Bag(_)));
    if bag && !weighs {
        return Err(Refused::together(
            "a bag needs `area_cm2` of every wall: how damp it gets depends on how much wood shares it; give the areas",
        ));
    }
    let case = Case {
        wood: Wood {
            density,
            diffusivity_12: asked.need("diffusivity_12_m2_s")?,
            rise: asked.need("rise_ratio")?,
        },
        walls,
        phases,
    };
    case.check()?;
    Ok(Given {
        case,
        tuning: Tuning {
            surface: exchange / OPEN_AIR,
            ..Tuning::default()
        },
        weighs,
        names,
    })
}

/// Moisture at the start (fraction) and its day.
///
/// # Errors
/// [`Refused`] when neither moisture nor wood is given.
pub fn start(asked: &Asked<'_>) -> Result<(f64, f64), Refused> {
    let moisture = match (asked.fraction("moisture_pct"), asked.text("wood")) {
        (Some(moisture), _) => moisture,
        (None, Some(name)) => figures(find(name)?).green_moisture,
        (None, None) => return Err(asked.missing("moisture_pct")),
    };
    Ok((moisture, asked.need("start_day")?))
}

fn phases(asked: &Asked<'_>, exchange: f64) -> Result<Vec<Phase>, Refused> {
    let several = asked.objects("phases");
    if several.is_empty() {
        let climate = place::climate(asked)?;
        return Ok(vec![Phase {
            from_day: 0.0,
            way: way(asked, &climate, 0.0, exchange)?,
            climate,
        }]);
    }
    if let Some(key) = WAY.iter().find(|k| asked.has(k.name)) {
        return Err(Refused::together(format!(
            "`{}` stands beside `phases`; put it into the phase it is meant for",
            key.name
        )));
    }
    let shared = if place::given(asked) {
        Some(place::climate(asked)?)
    } else {
        None
    };
    let each = several.iter().map(|p| {
        let climate = match (&shared, place::given(p)) {
            (Some(shared), false) => shared.clone(),
            _ => place::climate(p)?,
        };
        let from_day = p.need("from_day")?;
        Ok(Phase {
            from_day,
            way: way(p, &climate, from_day, exchange)?,
            climate,
        })
    });
    each.collect()
}

fn way(asked: &Asked<'_>, climate: &Climate, day: f64, open_exchange: f64) -> Result<Way, Refused> {
    let word = asked.text("way").unwrap_or("open");
    let own = if asked.of().starts_with("`phases") {
        asked.number("exchange_m_s")
    } else {
        None
    };
    for (key, ways) in [
        ("conductance_m3_s", "bag"),
        ("loses_g_day", "bag"),
        ("share_ratio", "cover"),
    ] {
        if asked.has(key) && word != ways {
            return Err(Refused::together(format!(
                "`{key}` belongs to the way \"{ways}\", but {} has \"{word}\"; set `way`, or take it out",
                asked.of()
            )));
        }
    }
    if own.is_some() && word != "open" {
        return Err(Refused::together(format!(
            "`exchange_m_s` in {} is for an open phase, but its way is \"{word}\"; take it out",
            asked.of()
        )));
    }
    Ok(match word {
        "bag" => Way::Bag(
            match (
                asked.number("conductance_m3_s"),
                asked.number("loses_g_day"),
            ) {
                (Some(conductance), None) => conductance,
                (None, Some(loss)) => {
                    let (t, h) = climate.at(day);
                    conductance(loss, t, h)?
                }
                _ => {
                    return Err(Refused::together(
                        "a bag needs `conductance_m3_s` or `loses_g_day`; give one of them",
                    ));
                }
            },
        ),
        "cover" => Way::Cover(asked.need("share_ratio")?),
        "still" => Way::Cover(STILL),
        "paper" => Way::Cover(PAPER),
        "shavings" => Way::Cover(SHAVINGS),
        "wax" => Way::Cover(WAX),
        _ => match own {
            Some(own) => Way::Cover(COVER.check(own / open_exchange)?),
            None => Way::Open,
        },
    })
}
