//! Questions about what weighings say of a piece: moisture now, when it is ready and how sure, and why it is too early.

use evenwall_wood::drying::Climate;
use evenwall_wood::forecast::{
    FOUR_IN_FIVE, HORIZON, Loose, Outlook, Priors, ReadyRange, Record, Road, TooEarly, as_it_is,
    band, next_weighing, outlook, plain_fit, unweighed_road,
};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::case::{Given, OF_WALLS, PHASES, START, WAY, WOOD, case, start};
use crate::forecast_words::{ROAD_HERE, ROAD_HOUSE, SAID, reason};
use crate::key::{Count, Key, Kind, may};
use crate::place::{AIR, DAY, climate};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::slabs::{WALL, WALLS};
use crate::weighed::{MASS_G, WEIGHINGS, record};

/// Most of walls times days that a fit steps through, some hundred times over.
const MOST_FITTED: f64 = 2_500.0;
/// Most of walls times days that a road is followed through.
const MOST_ROAD: f64 = 24.0 * HORIZON;

const DRY: Key = may(
    "dry_mass_g",
    Kind::Number(MASS_G),
    "oven-dry weight believed before; left out, from areas, thickness and density",
);
const HOUSE: Key = may(
    "house",
    Kind::Object(AIR),
    "the place where it will live, when it is not there yet",
);

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "forecast",
        answers: "What the weighings of a piece allow to be said today: the drying model fitted with what is believed before \
                  (Levenberg-Marquardt, MINPACK), moisture now, and the days on which it has settled where it stands and in the house \
                  after that, each as a range that should hold four times of five, if the room stays as it is. Ranges are not to be \
                  shown while `too_early` has reasons.",
        inputs: &[
            WOOD,
            WALL,
            WALLS,
            WAY,
            AIR,
            PHASES,
            WEIGHINGS,
            &[
                DRY,
                may(
                    "today_day",
                    Kind::Number(DAY),
                    "today; left out, the day of the last weighing",
                ),
                HOUSE,
                may(
                    "show_days",
                    Kind::Numbers(DAY, Count::new(1, 200)),
                    "days to give the curve and its band for",
                ),
                may(
                    "weigh_days",
                    Kind::Numbers(DAY, Count::new(1, 60)),
                    "days to come on which it may be weighed next, to hear on which that would tell most",
                ),
            ],
        ],
        outputs: &[SAID, ROAD_HERE, ROAD_HOUSE, OF_WALLS],
        examples: &[
            r#"{"ask": "forecast", "basic_density_kg_m3": 550, "wall_mm": 10, "area_cm2": 545, "temp_c": 18, "rh_pct": 60, "masses_g": [435, 350.2, 339.8, 336.1, 334.5, 333.8], "every_days": 2, "step_g": 0.1, "house": {"temp_c": 20, "rh_pct": 45}, "show_days": [4, 20]}"#,
            r#"{"ask": "forecast", "basic_density_kg_m3": 550, "wall_mm": 10, "area_cm2": 545, "temp_c": 18, "rh_pct": 60, "masses_g": [435, 350.2, 339.8], "every_days": 2, "step_g": 0.1}"#,
            r#"{"ask": "forecast", "wood": "white-ash", "walls": [{"name": "wall", "wall_mm": 10, "area_cm2": 500}, {"name": "floor", "wall_mm": 20, "area_cm2": 60, "lean_deg": 90}], "way": "bag", "loses_g_day": 8, "temp_c": 17, "rh_pct": 62, "weighings": [{"day": 0, "mass_g": 492, "tare_g": 6}, {"day": 3, "mass_g": 468, "tare_g": 6}, {"day": 6, "mass_g": 444, "tare_g": 6}, {"day": 9, "mass_g": 420, "tare_g": 6}], "weigh_days": [12, 15, 18, 24]}"#,
        ],
        sum: forecast,
    },
    Question {
        name: "plain_fit",
        answers: "Oven-dry weight and a multiplier of the diffusivity that fit the weighings best by plain least squares, nothing believed \
                  before: for checks and comparing solvers. The multiplier belongs to this model and is no property of the wood.",
        inputs: &[WOOD, WALL, WALLS, WAY, AIR, PHASES, WEIGHINGS, &[DRY]],
        outputs: &[
            &[
                gives("dry_mass_g", "oven-dry weight"),
                gives("diffusion_ratio", "multiplier of the diffusivity"),
                gives("diffusivity_12_m2_s", "that at 12 % and 20 C"),
                gives("first_moisture_pct", "moisture at the first weighing"),
                gives("weighings", "how many were fitted"),
            ],
            OF_WALLS,
        ],
        examples: &[
            r#"{"ask": "plain_fit", "basic_density_kg_m3": 550, "walls": [{"name": "middle", "wall_mm": 10, "area_cm2": 545.45}], "temp_c": 18, "rh_pct": 60, "masses_g": [435, 350.2, 339.8, 336.1], "every_days": 2, "step_g": 0.1}"#,
        ],
        sum: plain,
    },
    Question {
        name: "whole_road",
        answers: "The whole road of a piece never weighed, every speed as uncertain as believed: for weeks, or \"two to three times as \
                  long as the other\", never for a date. Days from the start.",
        inputs: &[WOOD, WALL, WALLS, WAY, AIR, PHASES, START, &[HOUSE]],
        outputs: &[ROAD_HERE, ROAD_HOUSE, OF_WALLS],
        examples: &[
            r#"{"ask": "whole_road", "wood": "white-ash", "walls": [{"wall_mm": 10, "area_cm2": 400}, {"name": "floor", "wall_mm": 25, "area_cm2": 60, "lean_deg": 90}], "temp_c": 18, "rh_pct": 60, "house": {"temp_c": 20, "rh_pct": 45}}"#,
        ],
        sum: road,
    },
];

/// `answer` with a range at `key`, its days counted from `first`; what lies behind `today` is no forecast.
fn range(answer: Answer, key: &str, range: Option<ReadyRange>, first: f64, today: f64) -> Answer {
    let Some(r) = range else { return answer };
    let ahead = r.ahead(today - first);
    let one = Answer::new()
        .with("early_day", first + r.early)
        .with("middle_day", first + r.middle)
        .with("late_day", first + r.late)
        .with("spread_ratio", r.spread)
        .with_some("ahead_early_day", ahead.map(|a| first + a.0))
        .with_some("ahead_late_day", ahead.map(|a| first + a.1));
    answer.with(key, one)
}

fn roads(answer: Answer, here: Road, house: Option<Road>, first: f64, today: f64) -> Answer {
    let mut answer = range(answer, "here_mean", here.mean, first, today);
    answer = range(answer, "here_slowest", here.slowest, first, today);
    if let Some(house) = house {
        answer = range(answer, "house_mean", house.mean, first, today);
        answer = range(answer, "house_slowest", house.slowest, first, today);
    }
    answer
}

fn house(asked: &Asked<'_>) -> Result<Option<Climate>, Refused> {
    asked.object("house").map(|h| climate(&h)).transpose()
}

/// The case, its weighings, and what is believed of its oven-dry weight.
fn weighed(asked: &Asked<'_>) -> Result<(Given, Record, Priors), Refused> {
    let mut given = case(asked)?;
    // The fit starts from the usual exchange: one that was given goes into the faces of every wall.
    given.exchange_into_faces()?;
    let record = record(asked)?;
    let priors = match asked.number("dry_mass_g") {
        Some(dry) => Priors::usual(dry),
        None if given.weighs => Priors::of(&given.case),
        None => {
            return Err(Refused::together(
                "the oven-dry weight is not known: give `area_cm2` of every wall, or `dry_mass_g`",
            ));
        }
    };
    Ok((given, record, priors))
}

fn forecast(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (given, record, priors) = weighed(asked)?;
    let fitted = record.fitted()?;
    let (first, last) = (fitted[0].day, fitted[fitted.len() - 1].day);
    let today = asked.number("today_day").unwrap_or(last).max(last);
    given.affordable(first, last, MOST_FITTED)?;
    let sorted = |key: &str| {
        let mut days = asked.numbers(key);
        days.sort_by(f64::total_cmp);
        days
    };
    let (shown, may_weigh) = (sorted("show_days"), sorted("weigh_days"));
    let furthest = shown.iter().chain(&may_weigh).fold(today, |a, b| a.max(*b));
    given.one_run(first, furthest)?;
    given.affordable(0.0, HORIZON, MOST_ROAD)?;
    let said = outlook(&given.case, &record, priors, today, house(asked)?.as_ref())?;
    let mut answer = told(&said, priors);
    answer = roads(answer, said.here, said.finish, first, today);
    let case = as_it_is(&given.case, today);
    if !shown.is_empty() {
        let points = band(&case, &said.fit, last, &shown)?;
        let each: Vec<Answer> = points
            .iter()
            .map(|p| {
                Answer::new()
                    .with("day", p.day)
                    .with("moisture_pct", p.moisture.map(|m| 100.0 * m).to_vec())
                    .with("mass_g", p.mass_g.to_vec())
            })
            .collect();
        answer = answer.with("band", each);
    }
    if !may_weigh.is_empty()
        && let Some(next) = next_weighing(&given.case, &said, &record, &may_weigh)?
    {
        answer = answer
            .with("next_weighing_day", next.day)
            .with("spread_now_ratio", next.spread_now)
            .with("spread_then_ratio", next.spread_then);
    }
    Ok(given.walls_on(answer))
}

fn told(said: &Outlook, priors: Priors) -> Answer {
    let (low, high) = said.now.range();
    let fit = &said.fit;
    let words = |e: &TooEarly| reason(e);
    let (keys, sentences): (Vec<&str>, Vec<String>) = said.too_early.iter().map(words).unzip();
    let loose = match fit.loose {
        Loose::Surface => "surface",
        Loose::Habit => "habit",
    };
    let mut answer = Answer::new()
        .with("today_day", said.now.day)
        .pct("moisture_pct", said.now.mean)
        .pct("moisture_sd_pct", said.now.sd)
        .pct("moisture_low_pct", low)
        .pct("moisture_high_pct", high)
        .pct("settling_pct", said.now.settling)
        .with("too_early", keys)
        .with("too_early_says", sentences)
        .with("dry_mass_g", fit.dry_g)
        .with(
            "dry_mass_low_g",
            fit.dry_g * (-FOUR_IN_FIVE * fit.dry_sd).exp(),
        )
        .with(
            "dry_mass_high_g",
            fit.dry_g * (FOUR_IN_FIVE * fit.dry_sd).exp(),
        )
        .with("believed_dry_mass_g", priors.dry_g)
        .with("first_day", fit.first_day)
        .pct("first_moisture_pct", fit.first_moisture)
        .with("weighings", fit.weighings)
        .with("chi2", fit.chi2)
        .with("diffusion_ratio", fit.tuning.diffusion)
        .with("surface_ratio", fit.tuning.surface)
        .with("habit_ratio", fit.tuning.habit)
        .pct("humidity_shift_pct", fit.tuning.humidity)
        .with("loose", loose);
    if let Some(line) = said.bag_line {
        let day = |d: f64| fit.first_day + d;
        answer = answer
            .with("bag_loses_g_day", line.rate_g_day)
            .with("bag_bends_early_day", day(line.early))
            .with("bag_bends_middle_day", day(line.middle))
            .with("bag_bends_late_day", day(line.late));
    }
    answer
}

fn plain(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (given, record, priors) = weighed(asked)?;
    let fitted = record.fitted()?;
    given.affordable(fitted[0].day, fitted[fitted.len() - 1].day, MOST_FITTED)?;
    let (dry_g, diffusion) = plain_fit(&given.case, &record, priors.dry_g)?;
    let moisture = evenwall_wood::weight::moisture_from_masses(fitted[0].mass_g, dry_g)?;
    Ok(given.walls_on(
        Answer::new()
            .with("dry_mass_g", dry_g)
            .with("diffusion_ratio", diffusion)
            .with(
                "diffusivity_12_m2_s",
                diffusion * given.case.wood.diffusivity_12,
            )
            .pct("first_moisture_pct", moisture)
            .with("weighings", fitted.len()),
    ))
}

fn road(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let mut given = case(asked)?;
    given.exchange_into_faces()?;
    let (moisture, day) = start(asked)?;
    given.affordable(0.0, HORIZON, MOST_ROAD)?;
    let (here, finish) = unweighed_road(&given.case, day, moisture, house(asked)?.as_ref())?;
    Ok(given.walls_on(roads(Answer::new(), here, finish, day, day)))
}
