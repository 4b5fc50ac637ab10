//! Questions about the table of woods.

use evenwall_wood::woods::{Continent, Kind as WoodKind, Source, Whose, Wood};
use evenwall_wood::woods_search::search;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Kind, Limits, may, must, usually};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::{basis, figures, find, whose};

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "woods",
        answers: "Woods of the table that answer to a search, best first: by common, botanical or another name.",
        inputs: &[&[
            may(
                "query",
                Kind::Text,
                "what to look for, such as \"ash\" or \"Fraxinus\"; left out, all",
            ),
            usually(
                "most",
                Limits::new("", 1.0, 1000.0),
                1000.0,
                "how many to name at most",
            ),
        ]],
        outputs: &[&[
            gives("found", "how many there are"),
            gives("woods[].key", "key, to be used as `wood`"),
            gives("woods[].name", "common name"),
            gives("woods[].botanical", "botanical name"),
            gives("woods[].continent", "where it grows"),
        ]],
        examples: &[r#"{"ask": "woods", "query": "Fraxinus", "most": 2}"#],
        sum: list,
    },
    Question {
        name: "wood",
        answers: "Everything the table says of a wood, each figure with its source and how it was come by (\"read\", \"worked out\", \
                  \"from memory\"), and what stands in where a figure is missing. Means of a species: one piece lies 15 to 20 % either \
                  side (from memory).",
        inputs: &[&[must("wood", Kind::Text, "key or name")]],
        outputs: &[&[
            gives("key", "key, never changes; not for \"unknown\""),
            gives("name", "common name"),
            gives("botanical", "botanical name"),
            gives("other_names", "what else it is called"),
            gives("continent", "where it grows"),
            gives("kind", "\"hardwood\" or \"softwood\""),
            gives("moulds_easily", "in a bag; common practice"),
            gives(
                "falls_back_on",
                "key of the wood whose figures stand in, when there is one",
            ),
            gives(
                "radial_pct",
                "radial shrinkage to reckon with, green to oven-dry",
            ),
            gives("tangential_pct", "tangential shrinkage to reckon with"),
            gives("shrinkage_of", "whose these are"),
            gives("shrinkage_source", "where they were published"),
            gives("shrinkage_basis", "how they were come by"),
            gives(
                "other_radial_pct",
                "what another source says, when two disagree",
            ),
            gives("other_tangential_pct", "the same, tangential"),
            gives("other_source", "where that was published"),
            gives("other_basis", "how that was come by"),
            gives(
                "cautious_radial_pct",
                "of the pair with the larger difference: for a wall to leave",
            ),
            gives("cautious_tangential_pct", "the same, tangential"),
            gives(
                "basic_density_kg_m3",
                "oven-dry mass over green volume, to reckon with",
            ),
            gives("density_of", "whose it is"),
            gives(
                "density_source",
                "where it was published, when it is the wood's own",
            ),
            gives(
                "density_basis",
                "how it was come by, when it is the wood's own",
            ),
            gives("green_moisture_pct", "moisture when felled, to reckon with"),
            gives("green_of", "whose it is"),
            gives("green_heart_pct", "heartwood, where published"),
            gives("green_sap_pct", "sapwood, where published"),
            gives("green_whole_pct", "whole stem, where published"),
            gives("green_source", "where these were published"),
            gives("green_basis", "how they were come by"),
        ]],
        examples: &[
            r#"{"ask": "wood", "wood": "white ash"}"#,
            r#"{"ask": "wood", "wood": "sycamore"}"#,
            r#"{"ask": "wood", "wood": "yew"}"#,
            r#"{"ask": "wood", "wood": "unknown"}"#,
        ],
        sum: one,
    },
];

fn continent(of: Continent) -> &'static str {
    match of {
        Continent::NorthAmerica => "North America",
        Continent::Europe => "Europe",
        Continent::Both => "both",
    }
}

fn list(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let query: String = asked
        .text("query")
        .unwrap_or("")
        .chars()
        .take(200)
        .collect();
    let found = search(&query, &[]);
    let most = asked.need("most")?.floor() as usize;
    let named: Vec<Answer> = found
        .iter()
        .take(most)
        .map(|w| {
            Answer::new()
                .with("key", w.key.as_str())
                .with("name", w.name.as_str())
                .with("botanical", w.botanical.as_str())
                .with("continent", continent(w.continent))
        })
        .collect();
    Ok(Answer::new()
        .with("found", found.len())
        .with("woods", named))
}

fn named(answer: Answer, wood: &Wood) -> Answer {
    answer
        .with("key", wood.key.as_str())
        .with("name", wood.name.as_str())
        .with("botanical", wood.botanical.as_str())
        .with("other_names", wood.other_names.clone())
        .with("continent", continent(wood.continent))
        .with(
            "kind",
            match wood.kind {
                WoodKind::Hardwood => "hardwood",
                WoodKind::Softwood => "softwood",
            },
        )
        .with("moulds_easily", wood.moulds_easily)
        .with_some("falls_back_on", wood.falls_back_on.clone())
}

fn sourced(answer: Answer, key: &str, source: Option<Source>) -> Answer {
    let title = source.map(Source::title);
    let how = source.map(|s| basis(s.basis()));
    answer
        .with_some(&format!("{key}_source"), title)
        .with_some(&format!("{key}_basis"), how)
}

fn one(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let found = find(asked.text("wood").unwrap_or(""))?;
    let figures = figures(found);
    let key = found.map_or("unknown", |w| w.key.as_str());
    let mut answer = Answer::new();
    if let Some(wood) = found {
        answer = named(answer, wood);
    }
    answer = answer
        .pct("radial_pct", figures.shrinkages.radial)
        .pct("tangential_pct", figures.shrinkages.tangential)
        .with("shrinkage_of", whose(&figures.shrinkages_from, key));
    answer = sourced(answer, "shrinkage", Some(figures.shrinkages.source));
    if let Some(other) = found.and_then(|w| w.other_shrinkages) {
        answer = answer
            .pct("other_radial_pct", other.radial)
            .pct("other_tangential_pct", other.tangential);
        answer = sourced(answer, "other", Some(other.source));
    }
    answer = answer
        .pct("cautious_radial_pct", figures.cautious.radial)
        .pct("cautious_tangential_pct", figures.cautious.tangential)
        .with("basic_density_kg_m3", figures.density_kg_m3)
        .with("density_of", whose(&figures.density_from, key));
    let own_density = found.filter(|_| figures.density_from == Whose::Own);
    let density = own_density.and_then(|w| w.density).map(|d| d.source);
    answer = sourced(answer, "density", density)
        .pct("green_moisture_pct", figures.green_moisture)
        .with("green_of", whose(&figures.green_from, key));
    let green = found.and_then(|w| w.green);
    let pct = |v: Option<f64>| v.map(|v| 100.0 * v);
    answer = answer
        .with_some("green_heart_pct", pct(green.and_then(|g| g.heart)))
        .with_some("green_sap_pct", pct(green.and_then(|g| g.sap)))
        .with_some("green_whole_pct", pct(green.and_then(|g| g.whole)));
    Ok(sourced(answer, "green", green.map(|g| g.source)))
}
