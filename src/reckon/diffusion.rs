//! Questions about how fast water moves: diffusivity, grain, bag, and the solver's slab against Crank's series.

use evenwall_wood::drying::Wood;
use evenwall_wood::drying::bag::{LOSS, conductance, loss_g_day, share_for_one_wall};
use evenwall_wood::drying::case::{AREA, BAG, EXCHANGE, OPEN_AIR, THICKNESS};
use evenwall_wood::drying::series::{
    BIOT, Cells, FOURIER, STEPS, biot_of, first_root, fourier_of, series_left, solver_left,
};
use evenwall_wood::drying::wood::{
    DIFFUSIVITY, LEAN, RISE, SIDE_GRAIN, USUAL_DIFFUSIVITY, USUAL_RISE, grain_factor,
};

use crate::answer::Answer;
use crate::asked::Asked;
use crate::key::{Kind, Limits, may, must, usually, word};
use crate::place::{RH_PCT, TEMP_C};
use crate::question::{Question, gives};
use crate::refused::Refused;
use crate::strains::MOISTURE_PCT;

/// The questions of this group.
pub const QUESTIONS: &[Question] = &[
    Question {
        name: "diffusivity",
        answers: "How fast water moves across the grain: D12 exp(b (min(M, 30 %) - 12 %)) exp(-5280 (1/T - 1/293.15 K)), the form of \
                  Simpson (1993) from memory. An order of magnitude.",
        inputs: &[&[
            must("moisture_pct", Kind::Number(MOISTURE_PCT), "moisture"),
            must("temp_c", Kind::Number(TEMP_C), "temperature"),
            usually(
                "diffusivity_12_m2_s",
                Limits::of(DIFFUSIVITY),
                USUAL_DIFFUSIVITY,
                "at 12 % and 20 C",
            ),
            usually("rise_ratio", Limits::of(RISE), USUAL_RISE, "b"),
        ]],
        outputs: &[&[gives("diffusivity_m2_s", "across the grain")]],
        examples: &[r#"{"ask": "diffusivity", "moisture_pct": 25, "temp_c": 20}"#],
        sum: diffusivity,
    },
    Question {
        name: "grain_factor",
        answers: "How much faster a wall dries for its grain: F = cos2 + 10 sin2 of the lean of its normal out of the plane across the \
                  grain (Crank 1975, chapter 1).",
        inputs: &[&[
            may(
                "lean_deg",
                Kind::Number(Limits::of(LEAN)),
                "0 the wall of an end-grain cylinder, 90 its flat floor",
            ),
            word(
                "grain",
                &["end", "side"],
                "end",
                "\"side\", without `lean_deg`: the mean over the round, rough",
            ),
        ]],
        outputs: &[&[gives("factor_ratio", "F")]],
        examples: &[
            r#"{"ask": "grain_factor", "lean_deg": 30}"#,
            r#"{"ask": "grain_factor", "grain": "side"}"#,
        ],
        sum: grain,
    },
    Question {
        name: "bag",
        answers: "A bag as one number, leakage and turning together, from what it loses in a day while its air is saturated, G rho_v \
                  (1 - RH), or the way back; and the share of the free air's exchange it leaves a single wall, G / (G + 2 A hm). A \
                  habit of the turner and no property of the wood.",
        inputs: &[&[
            may(
                "loses_g_day",
                Kind::Number(Limits::of(LOSS)),
                "what it loses; or `conductance_m3_s`",
            ),
            may("conductance_m3_s", Kind::Number(Limits::of(BAG)), "G"),
            must("temp_c", Kind::Number(TEMP_C), "temperature of the room"),
            must("rh_pct", Kind::Number(RH_PCT), "humidity of the room"),
            may(
                "area_cm2",
                Kind::Number(Limits::of(AREA)),
                "area of one face of a single wall in it",
            ),
            usually(
                "exchange_m_s",
                Limits::of(EXCHANGE),
                OPEN_AIR,
                "hm, exchange of a face with open air",
            ),
        ]],
        outputs: &[&[
            gives("conductance_m3_s", "G"),
            gives("loses_g_day", "while saturated"),
            gives("share_ratio", "with `area_cm2`: g"),
        ]],
        examples: &[
            r#"{"ask": "bag", "loses_g_day": 8, "temp_c": 18, "rh_pct": 60, "area_cm2": 550}"#,
        ],
        sum: bag,
    },
    Question {
        name: "slab_series",
        answers: "Mean share of the water still to go in a slab of constant diffusivity by Crank's series (The Mathematics of \
                  Diffusion, 1975, pp. 48 and 60), and by the program's own solver beside it. Fourier and Biot number on half the \
                  thickness.",
        inputs: &[&[
            may(
                "fourier_ratio",
                Kind::Number(Limits::of(FOURIER)),
                "Fo = D t / a2; or the three keys below",
            ),
            may(
                "biot_ratio",
                Kind::Number(Limits::of(BIOT)),
                "L = S a / D; left out, with `face_m_s` too, no resistance at the faces",
            ),
            may(
                "wall_mm",
                Kind::Number(Limits::of(THICKNESS)),
                "instead of `fourier_ratio`: thickness, both faces free",
            ),
            may(
                "diffusivity_m2_s",
                Kind::Number(Limits::of(DIFFUSIVITY)),
                "with `wall_mm`: D",
            ),
            may(
                "days",
                Kind::Number(Limits::new("days", 0.0, 3650.0)),
                "with `wall_mm`: time",
            ),
            may(
                "face_m_s",
                Kind::Number(Limits::new("m/s", 1.0e-12, 1.0)),
                "with `wall_mm`: S, conductance of the faces on a moisture scale",
            ),
            word(
                "cells",
                &["10", "20", "40", "80"],
                "20",
                "cells of the solver; 20 everywhere else",
            ),
            usually(
                "steps",
                Limits::of(STEPS),
                400.0,
                "even steps of the solver",
            ),
        ]],
        outputs: &[&[
            gives("left_ratio", "by the series: 1 at the start, 0 settled"),
            gives("solver_ratio", "by the solver"),
            gives("error_ratio", "solver less series"),
            gives("fourier_ratio", "Fo"),
            gives("biot_ratio", "L, when there is one"),
            gives(
                "first_root",
                "with a Biot number: smallest root of b tan b = L",
            ),
        ]],
        examples: &[
            r#"{"ask": "slab_series", "fourier_ratio": 0.5, "biot_ratio": 2}"#,
            r#"{"ask": "slab_series", "wall_mm": 10, "diffusivity_m2_s": 1e-10, "days": 3, "face_m_s": 1e-7, "cells": "40", "steps": 1600}"#,
        ],
        sum: series,
    },
];

fn diffusivity(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let wood = Wood {
        diffusivity_12: asked.need("diffusivity_12_m2_s")?,
        rise: asked.need("rise_ratio")?,
        // Has no part in it.
        ..Wood::of_density(550.0)
    };
    let d = wood.diffusivity(asked.need_fraction("moisture_pct")?, asked.need("temp_c")?);
    Ok(Answer::new().with("diffusivity_m2_s", d))
}

fn grain(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let side = asked.text("grain") == Some("side");
    let factor = match (asked.number("lean_deg"), side) {
        (Some(lean), false) => grain_factor(lean)?,
        (None, true) => SIDE_GRAIN,
        (None, false) => return Err(asked.missing("lean_deg")),
        (Some(_), true) => {
            return Err(Refused::together(
                "side grain has no one lean; take `lean_deg` or `grain` out",
            ));
        }
    };
    Ok(Answer::new().with("factor_ratio", factor))
}

fn bag(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let (t, h) = (asked.need("temp_c")?, asked.need_fraction("rh_pct")?);
    let given = (
        asked.number("loses_g_day"),
        asked.number("conductance_m3_s"),
    );
    let conductance = match given {
        (Some(loss), None) => conductance(loss, t, h)?,
        (None, Some(conductance)) => conductance,
        _ => {
            return Err(Refused::together(
                "a bag needs `loses_g_day` or `conductance_m3_s`; give one of them",
            ));
        }
    };
    let mut answer = Answer::new()
        .with("conductance_m3_s", conductance)
        .with("loses_g_day", loss_g_day(conductance, t, h)?);
    if let Some(area) = asked.number("area_cm2") {
        let share = share_for_one_wall(conductance, area, asked.need("exchange_m_s")?)?;
        answer = answer.with("share_ratio", share);
    }
    Ok(answer)
}

fn series(asked: &Asked<'_>) -> Result<Answer, Refused> {
    let measured = ["wall_mm", "diffusivity_m2_s", "days", "face_m_s"];
    let plain = ["fourier_ratio", "biot_ratio"];
    let has = |keys: &[&str]| keys.iter().any(|k| asked.has(k));
    let (fourier, biot) = match (has(&plain), has(&measured)) {
        (true, false) => (asked.need("fourier_ratio")?, asked.number("biot_ratio")),
        (false, true) => {
            let (wall, d) = (asked.need("wall_mm")?, asked.need("diffusivity_m2_s")?);
            (
                fourier_of(wall, d, asked.need("days")?),
                asked.number("face_m_s").map(|s| biot_of(wall, d, s)),
            )
        }
        _ => {
            return Err(Refused::together(
                "`slab_series` needs `fourier_ratio`, or `wall_mm`, `diffusivity_m2_s` and `days`; give one of them",
            ));
        }
    };
    let cells = match asked.text("cells") {
        Some("10") => Cells::Ten,
        Some("40") => Cells::Forty,
        Some("80") => Cells::Eighty,
        _ => Cells::Twenty,
    };
    let left = series_left(fourier, biot)?;
    let solver = solver_left(fourier, biot, cells, asked.need("steps")?)?;
    Ok(Answer::new()
        .with("left_ratio", left)
        .with("solver_ratio", solver)
        .with("error_ratio", solver - left)
        .with("fourier_ratio", fourier)
        .with_some("biot_ratio", biot)
        .with_some("first_root", biot.map(first_root).transpose()?))
}
