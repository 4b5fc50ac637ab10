//! Questions about how even a wall is and where more comes off, and where its stations lie.

use evenwall_wood::evenness::{
    Advice, Evenness, Tolerance, Verdict, advice, best_even_wall_mm, short_stations, take_off_mm,
    thinnest_mm, verdict,
};
use evenwall_wood::profile::HEIGHT;
use evenwall_wood::range::Range;
use evenwall_wood::stations::place_stations;
use evenwall_wood::wall::WALL;

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Count, Key, Kind, Limits, may, must, word};
use crate::question::{Output, Question, gives};
use crate::refused::Refused;

/// A floor left under the hollow, mm.
const FLOOR: Range = Range::new("floor", "mm", 0.0, 1000.0);

/// The wall wanted and how far off it may be.
pub const WANTED: &[Key] = &[
    may(
        "wanted_mm",
        Kind::Number(Limits::of(WALL)),
        "wall wanted, to have what comes off",
    ),
    word(
        "tolerance",
        &["rough", "finish"],
        "rough",
        "called even within 1.5 mm of the wall wanted, or within 1; common practice",
    ),
];

/// What is said of the whole round.
pub const ROUND: &[Output] = &[
    gives("mean_mm", "mean of the walls"),
    gives("thickest_mm", "thickest wall"),
    gives("thinnest_mm", "thinnest wall"),
    gives("spread_mm", "thickest less thinnest"),
    gives(
        "variation_ratio",
        "population standard deviation over the mean",
    ),
    gives(
        "best_even_mm",
        "thickest wall that every station can still be brought to",
    ),
    gives(
        "short_stations",
        "with `wanted_mm`: numbers, from 1, of the stations below it",
    ),
];

/// What is said of a station.
pub const AT_STATION: &[Output] = &[
    gives("stations[].wall_mm", "its thinnest place"),
    gives(
        "stations[].take_off_mm",
        "with `wanted_mm`: what can come off, never below the wall wanted",
    ),
    gives(
        "stations[].verdict",
        "with `wanted_mm`: \"heavy\", \"even\" or \"thin\"",
    ),
    gives(
        "stations[].advice",
        "with `wanted_mm`: \"leave alone\", \"take about\", \"take half then measure\" or \"short\"",
    ),
    gives(
        "stations[].advice_mm",
        "with `advice`, but \"leave alone\": how much to take, or how much it is short",
    ),
];

const STATION: &[Key] = &[
    may("name", Kind::Text, "what to call it"),
    must(
        "wall_mm",
        Kind::OneOrMore(Limits::of(WALL), Count::new(1, 64)),
        "wall, or the walls read at several places round; the thinnest decides",
    ),
];

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "evenness",
        answers: "How even the wall is, and what comes off at each station against a wall wanted. Tolerances and advice are common \
                  practice, no source.",
        inputs: &[
            &[
                may(
                    "walls_mm",
                    Kind::Numbers(Limits::of(WALL), Count::new(1, 1000)),
                    "one wall a station, rim to foot",
                ),
                may(
                    "stations",
                    Kind::Objects(STATION, Count::new(1, 200)),
                    "instead of `walls_mm`: stations with names, or with several places round",
                ),
            ],
            WANTED,
        ],
        outputs: &[ROUND, &[gives("stations[].name", "as given")], AT_STATION],
        examples: &[
            r#"{"ask": "evenness", "walls_mm": [9, 10.5, 14], "wanted_mm": 9.5}"#,
            r#"{"ask": "evenness", "stations": [{"name": "rim", "wall_mm": [9, 9.5]}, {"name": "middle", "wall_mm": 11}]}"#,
        ],
        sum: evenness,
    },
    Question {
        name: "stations",
        answers: "Where the wall is read: five stations to 120 mm high, seven to 250, nine above, rim to corner. Common practice, no \
                  source.",
        inputs: &[&[
            must(
                "height_mm",
                Kind::Number(Limits::of(HEIGHT)),
                "rim to foot line",
            ),
            must(
                "floor_mm",
                Kind::Number(Limits::of(FLOOR)),
                "wood left under the hollow",
            ),
        ]],
        outputs: &[&[
            gives("stations[].name", "name of the station"),
            gives("stations[].depth_mm", "depth from the rim"),
        ]],
        examples: &[r#"{"ask": "stations", "height_mm": 120, "floor_mm": 14}"#],
        sum: placed,
    },
];

/// The thinnest place of each station's walls.
pub fn thinnest(walls: &[Vec<f64>]) -> Vec<f64> {
    walls.iter().filter_map(|w| thinnest_mm(w)).collect()
}

/// Evenness of the walls added to `answer`. A station counts by its thinnest place.
///
/// # Errors
/// [`Refused`] when a wall is out of range or there is none.
pub fn round(answer: Answer, asked: &Asked<'_>, walls: &[f64]) -> Result<Answer, Refused> {
    let even = Evenness::of(walls)?.ok_or_else(|| asked.missing("walls_mm"))?;
    let short: Option<Vec<usize>> = asked.number("wanted_mm").map(|wanted| {
        let short = short_stations(walls, wanted);
        short.into_iter().map(|i| i + 1).collect()
    });
    Ok(answer
        .with("mean_mm", even.mean_mm)
        .with("thickest_mm", even.thickest_mm)
        .with("thinnest_mm", even.thinnest_mm)
        .with("spread_mm", even.spread_mm())
        .with("variation_ratio", even.variation)
        .with_some("best_even_mm", best_even_wall_mm(walls))
        .with_some("short_stations", short))
}

/// What comes off at a station of `wall` mm, added to `answer`.
pub fn at_station(answer: Answer, asked: &Asked<'_>, wall: f64) -> Answer {
    let answer = answer.with("wall_mm", wall);
    let Some(wanted) = asked.number("wanted_mm") else {
        return answer;
    };
    let tolerance = if asked.text("tolerance") == Some("finish") {
        Tolerance::FINISH
    } else {
        Tolerance::ROUGH
    };
    let word = match verdict(wall, wanted, tolerance) {
        Verdict::Heavy => "heavy",
        Verdict::Even => "even",
        Verdict::Thin => "thin",
    };
    let (advice, mm) = match advice(wall, wanted, tolerance) {
        Advice::LeaveAlone => ("leave alone", None),
        Advice::About(mm) => ("take about", Some(mm)),
        Advice::HalfThenMeasure(mm) => ("take half then measure", Some(mm)),
        Advice::Short(mm) => ("short", Some(mm)),
    };
    answer
        .with("take_off_mm", take_off_mm(wall, wanted))
        .with("verdict", word)
        .with("advice", advice)
        .with_some("advice_mm", mm)
}

fn evenness(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let stations = asked.objects("stations");
    let plain = asked.numbers("walls_mm");
    if plain.is_empty() == stations.is_empty() {
        return Err(Refused::together(
            "`evenness` needs the walls one way: `walls_mm` or `stations`; give one of the two",
        ));
    }
    let walls: Vec<Vec<f64>> = if stations.is_empty() {
        plain.into_iter().map(|w| vec![w]).collect()
    } else {
        stations.iter().map(|s| s.numbers("wall_mm")).collect()
    };
    let walls = thinnest(&walls);
    let names = |i: usize| stations.get(i).and_then(|s| s.text("name"));
    let each: Vec<Answer> = walls
        .iter()
        .enumerate()
        .map(|(i, wall)| at_station(Answer::new().with_some("name", names(i)), asked, *wall))
        .collect();
    Ok(round(Answer::new(), asked, &walls)?.with("stations", each))
}

fn placed(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let stations = place_stations(asked.need("height_mm")?, asked.need("floor_mm")?)?;
    let each: Vec<Answer> = stations
        .iter()
        .map(|s| {
            Answer::new()
                .with("name", s.name.key())
                .with("depth_mm", s.depth_mm)
        })
        .collect();
    Ok(Answer::new().with("stations", each))
}
