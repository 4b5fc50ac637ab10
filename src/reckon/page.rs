//! The page of all questions, `QUESTIONS.md`, printed from the registry so that it cannot fall behind it.

use std::fmt::Write;

use serde_json::Value;

use crate::key::{Figure, Key, Kind, Need};
use crate::question::Question;
use crate::registry::GROUPS;
use crate::run::{MOST_BYTES, MOST_QUESTIONS, answer};

/// What stands above the questions.
const HEAD: &str = r#"# Questions for `evenwall reckon`

This page is printed from the program's own registry (`src/reckon`); a test compares the two and runs every example.

    evenwall reckon questions.json
    echo '{"ask": "drill_depth", "height_mm": 178, "floor_mm": 25}' | evenwall reckon

**In**: one question, a list of questions, or `{"questions": [...]}`. A question is an object with `ask` (its name), the keys of that question, and an `id` of any kind if wanted.

**Out**: always one list, an answer a line, in the order of the questions: `{"id": ..., "ask": ..., "answer": {...}}`, or `{"id": ..., "ask": ..., "error": "..."}` with a sentence that says what was found, what is allowed and what to do. One question that cannot be answered leaves the others alone.

**Exit status**: 0 when the questions could be read, also when some could not be answered: look for `error`. 1 with a sentence on standard error, and no list, when the input is no JSON or holds no questions.

**Numbers**: the unit is at the end of the key: `_mm`, `_cm2`, `_cm3`, `_ml`, `_g`, `_kg_m3`, `_mpa`, `_pa`, `_hpa`, `_n`, `_c` (degrees C), `_deg`, `_rpm`, `_m_s`, `_m2_s`, `_m3_s`, `_g_day`, `_day` (a day on the piece's own count), `_days` (a span); `_ratio` is a plain number. Moisture, humidity and shrinkage are always per cent (`_pct`): moisture of the oven-dry mass, shrinkage of the green size. Whole numbers and fractions are both read; null counts as left out. Answers have all their digits; this page shows six.

**Frame**: a section lies in x and y, mm, the lathe axis at `[0, 0]` and the pith, where there is one, on the x axis at `[pith_mm, 0]`. Points go counter-clockwise.

**A drying piece** is one wall (`wall_mm`) or a list of `walls`, dried one way in one air (`way`, `temp_c`, `rh_pct` or `readings`) or through `phases`. Days are counted from where you like, the same for phases, readings and weighings. Weighings are `masses_g` with `days` or `every_days`, or a list of `weighings` with tare and changes of mass.

**A wood**, in questions about shape, is said one of three ways: `wood` (key or name), or `radial_pct` and `tangential_pct` from green to oven-dry, both with `moisture_pct`; or `shrunk_radial_pct` and `shrunk_tangential_pct`, the shrinkage already done.
"#;

/// The whole page.
#[must_use]
pub fn page() -> String {
    let mut page = HEAD.to_owned();
    // Writing to a string cannot fail.
    let _ = writeln!(
        page,
        "\nAt most {MOST_QUESTIONS} questions and {} MB are read at once.\n\n## Contents\n",
        MOST_BYTES / 1_000_000
    );
    for group in GROUPS {
        let names: Vec<String> = group
            .questions
            .iter()
            .map(|q| format!("[`{0}`](#{0})", q.name))
            .collect();
        let _ = writeln!(page, "- {}: {}", group.heading, names.join(", "));
    }
    for group in GROUPS {
        let _ = writeln!(page, "\n## {}", group.heading);
        for question in group.questions {
            section(&mut page, question);
        }
    }
    page
}

fn section(page: &mut String, question: &Question) {
    let _ = writeln!(page, "\n### {}\n\n{}\n", question.name, question.answers);
    let _ = writeln!(page, "| key | what may stand there | left out | meaning |");
    let _ = writeln!(page, "|---|---|---|---|");
    let mut shown = Vec::new();
    for key in question.keys() {
        row(page, key, "", &mut shown);
    }
    let _ = writeln!(page, "\n| answer | meaning |\n|---|---|");
    for output in question.outputs.iter().flat_map(|o| o.iter()) {
        let _ = writeln!(page, "| `{}` | {} |", output.name, output.says);
    }
    for example in question.examples {
        let _ = writeln!(
            page,
            "\n```json\n{example}\n```\n```json\n{}\n```",
            answered(example)
        );
    }
}

/// A row for `key` and one for each key within it; keys that were `shown` before are only pointed at.
fn row(page: &mut String, key: &Key, path: &str, shown: &mut Vec<(&'static [Key], String)>) {
    let left_out = match key.need {
        Need::Must => "required".to_owned(),
        Need::May => "optional".to_owned(),
        Need::Number(n) => Figure(n).to_string(),
        Need::Word(w) => format!("\"{w}\""),
    };
    let nested = match key.kind {
        Kind::Object(keys) => Some((keys, format!("{path}{}", key.name))),
        Kind::Objects(keys, _) => Some((keys, format!("{path}{}[]", key.name))),
        _ => None,
    };
    let before = nested
        .as_ref()
        .and_then(|(keys, _)| shown.iter().find(|(k, _)| k == keys));
    let as_before = before.map_or(String::new(), |(_, at)| format!("; keys as in `{at}`"));
    let _ = writeln!(
        page,
        "| `{path}{}` | {} | {left_out} | {}{as_before} |",
        key.name, key.kind, key.says
    );
    if let (Some((keys, at)), None) = (nested, before) {
        shown.push((keys, at.clone()));
        for key in keys {
            row(page, key, &format!("{at}."), shown);
        }
    }
}

/// The answer to an example as the page shows it, numbers to six digits.
fn answered(example: &str) -> String {
    match serde_json::from_str::<Value>(example) {
        Ok(question) => rounded(answer(&question)).to_string(),
        // An example that is no JSON is shown as what it gives: a test finds it.
        Err(e) => e.to_string(),
    }
}

fn rounded(value: Value) -> Value {
    match value {
        Value::Number(n) if n.is_f64() => six_digits(n.as_f64().unwrap_or(0.0)).into(),
        Value::Array(list) => list.into_iter().map(rounded).collect(),
        Value::Object(map) => map
            .into_iter()
            .map(|(k, v)| {
                // Figures in m2/s, m3/s and m/s are small by nature.
                let v = match v.as_f64() {
                    Some(n) if k.ends_with("_s") => to_six(n).into(),
                    _ => rounded(v),
                };
                (k, v)
            })
            .collect(),
        other => other,
    }
}

/// To six significant digits; what is nothing but the search's own tolerance becomes 0.
fn six_digits(value: f64) -> f64 {
    if value.abs() < 1e-6 {
        return 0.0;
    }
    to_six(value)
}

fn to_six(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap_or(value)
}
