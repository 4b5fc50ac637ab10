//! Which wood, and how far it has shrunk: the keys shared by every question about shape.

use evenwall_wood::moisture::MOISTURE;
use evenwall_wood::section::{STRAIN, Strains};
use evenwall_wood::shrinkage::{TOTAL_SHRINKAGE, shrinkage};
use evenwall_wood::woods::{
    Basis, Figures, Kind as WoodKind, Shrinkages, Whose, Wood, unknown_wood,
};
use evenwall_wood::{woods_search, woods_table};

use crate::answer::Answer;
use crate::asked::{Asked, quoted};
use crate::key::{Key, Kind, Limits, may, usually, word};
use crate::question::{Output, gives};
use crate::refused::Refused;

/// Moisture to which wood is dried when nothing is said, per cent: the tables of a heated house.
pub const DRIED_TO_PCT: f64 = 8.0;

/// Total shrinkage, per cent.
pub const TOTAL_PCT: Limits = Limits::pct(TOTAL_SHRINKAGE);
/// Moisture, per cent of the oven-dry mass.
pub const MOISTURE_PCT: Limits = Limits::pct(MOISTURE);

/// The wood, one of three ways.
pub const WOOD: &[Key] = &[
    may(
        "wood",
        Kind::Text,
        "key or name of a wood in the table (ask `woods`), or \"unknown\" for the middle of the hardwoods",
    ),
    may(
        "radial_pct",
        Kind::Number(TOTAL_PCT),
        "radial shrinkage from green to oven-dry; with `tangential_pct`, instead of `wood`",
    ),
    may(
        "tangential_pct",
        Kind::Number(TOTAL_PCT),
        "tangential shrinkage from green to oven-dry",
    ),
    usually(
        "moisture_pct",
        MOISTURE_PCT,
        DRIED_TO_PCT,
        "moisture it has dried to, of the oven-dry mass",
    ),
    may(
        "shrunk_radial_pct",
        Kind::Number(Limits::pct(STRAIN)),
        "radial shrinkage done since green; with `shrunk_tangential_pct`, instead of wood and moisture",
    ),
    may(
        "shrunk_tangential_pct",
        Kind::Number(Limits::pct(STRAIN)),
        "tangential shrinkage done since green",
    ),
];

/// Which source, the first unless said otherwise.
pub const USUAL: &[Key] = &[figures_key("usual")];
/// Which source, the one with the larger difference unless said otherwise: for a wall to leave.
pub const CAUTIOUS: &[Key] = &[figures_key("cautious")];

const fn figures_key(default: &'static str) -> Key {
    word(
        "figures",
        &["usual", "cautious"],
        default,
        "where two sources disagree about a `wood`: the first, or the one with the larger difference",
    )
}

/// What every answer about shape says of the wood.
pub const USED: &[Output] = &[
    gives(
        "shrunk_radial_pct",
        "radial shrinkage reckoned with, green to now",
    ),
    gives(
        "shrunk_tangential_pct",
        "tangential shrinkage reckoned with, green to now",
    ),
    gives(
        "figures_of",
        "with `wood`: whose figures, their source and how they were come by",
    ),
];

/// A wood's movement, with what it rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Used {
    /// Shrinkage done.
    pub strains: Strains,
    figures_of: Option<String>,
}

impl Used {
    /// `answer` with what it rests on.
    pub fn on(&self, answer: Answer) -> Answer {
        answer
            .pct("shrunk_radial_pct", self.strains.radial)
            .pct("shrunk_tangential_pct", self.strains.tangential)
            .with_some("figures_of", self.figures_of.clone())
    }
}

/// The movement asked for.
///
/// # Errors
/// [`Refused`] when none or more than one way is given, or the wood is not in the table.
pub fn strains(asked: &Asked<'_>) -> Result<Used, Refused> {
    let given = |a: &str, b: &str| asked.has(a) || asked.has(b);
    let ways = [
        asked.has("wood"),
        given("radial_pct", "tangential_pct"),
        given("shrunk_radial_pct", "shrunk_tangential_pct"),
    ];
    if ways.iter().filter(|w| **w).count() != 1 {
        return Err(Refused::together(format!(
            "{} needs the wood one way: {}`wood`, or `radial_pct` and `tangential_pct`, or `shrunk_radial_pct` and \
             `shrunk_tangential_pct`; give one of them",
            asked.of(),
            if asked.knows("total_pct") {
                "`total_pct`, or "
            } else {
                ""
            }
        )));
    }
    if ways[2] {
        if asked.has("moisture_pct") {
            return Err(Refused::together(
                "`moisture_pct` has no part where the shrinkage done is given; leave one of them out",
            ));
        }
        return Ok(Used {
            strains: Strains::new(
                asked.need_fraction("shrunk_radial_pct")?,
                asked.need_fraction("shrunk_tangential_pct")?,
            )?,
            figures_of: None,
        });
    }
    let (total, figures_of) = total(asked)?;
    let moisture = asked.need_fraction("moisture_pct")?;
    Ok(Used {
        strains: Strains::new(shrinkage(total.0, moisture)?, shrinkage(total.1, moisture)?)?,
        figures_of,
    })
}

/// Radial and tangential shrinkage from green to oven-dry (fractions) by `wood` or the two figures, with what they rest on.
///
/// # Errors
/// [`Refused`] when a figure is missing or the wood is not in the table.
pub fn total(asked: &Asked<'_>) -> Result<((f64, f64), Option<String>), Refused> {
    let Some(name) = asked.text("wood") else {
        return Ok((
            (
                asked.need_fraction("radial_pct")?,
                asked.need_fraction("tangential_pct")?,
            ),
            None,
        ));
    };
    let found = find(name)?;
    let figures = figures(found);
    let of = if asked.text("figures") == Some("cautious") {
        figures.cautious
    } else {
        figures.shrinkages
    };
    let key = found.map_or("unknown", |w| w.key.as_str());
    let says = whose(&figures.shrinkages_from, key);
    let of_what = format!("{says}: {}", source(&of));
    Ok(((of.radial, of.tangential), Some(of_what)))
}

/// The figures of a wood found, or those of a middle hardwood.
pub fn figures(found: Option<&Wood>) -> Figures {
    found.map_or_else(unknown_wood, |w| w.figures(&[]))
}

/// Whose a figure is: the wood's own key, that of its stand-in, or the middle of a kind.
pub fn whose(whose: &Whose, own: &str) -> String {
    match whose {
        Whose::Own => own.to_owned(),
        Whose::StandIn(key) => format!("{key}, standing in"),
        Whose::General(WoodKind::Hardwood) => "middle of the hardwoods".to_owned(),
        Whose::General(WoodKind::Softwood) => "middle of the softwoods".to_owned(),
    }
}

fn source(of: &Shrinkages) -> String {
    format!("{} ({})", of.source.title(), basis(of.source.basis()))
}

/// How a figure was come by, in words.
pub fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Read => "read",
        Basis::WorkedOut => "worked out",
        Basis::Memory => "from memory",
        Basis::Own => "own figure",
    }
}

/// The wood of the table called `name`: its key, common, botanical or other name, case and `_` not minded. `None` for
/// "unknown".
///
/// # Errors
/// [`Refused`] with the nearest keys when there is none, or more than one.
pub fn find(name: &str) -> Result<Option<&'static Wood>, Refused> {
    let wanted = name.trim().to_lowercase();
    if wanted == "unknown" {
        return Ok(None);
    }
    let key = wanted.replace(['_', ' '], "-");
    if let Some(wood) = woods_table::find(&key, &[]) {
        return Ok(Some(wood));
    }
    let woods = woods_table::table();
    let same = |n: &String| n.to_lowercase() == wanted;
    let by_name = |w: &&Wood| same(&w.name) || same(&w.botanical);
    if let Some(wood) = woods.iter().find(by_name) {
        return Ok(Some(wood));
    }
    // "Beech" is one wood's other name but also what two are called by: then it names neither.
    let ending = format!(" {wanted}");
    let called =
        |w: &&Wood| w.other_names.iter().any(same) || w.name.to_lowercase().ends_with(&ending);
    let named: Vec<&Wood> = woods.iter().filter(called).collect();
    if let ([one], true) = (
        named.as_slice(),
        named.iter().any(|w| w.other_names.iter().any(same)),
    ) {
        return Ok(Some(one));
    }
    let near = if named.is_empty() && !wanted.is_empty() {
        woods_search::search(&wanted.chars().take(200).collect::<String>(), &[])
    } else {
        named
    };
    let near: Vec<&str> = near.iter().take(8).map(|w| w.key.as_str()).collect();
    let near = if near.is_empty() {
        "ask `woods` for the list".to_owned()
    } else {
        format!("nearest are {}", near.join(", "))
    };
    Err(Refused::together(format!(
        "`wood` is {}, which names no one wood of the table; {near}, or give `radial_pct` and `tangential_pct`",
        quoted(name)
    )))
}
