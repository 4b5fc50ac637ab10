//! The page of questions is the registry's, its examples are answered as it shows, and it leaves no key out.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::collections::BTreeSet;

use evenwall_reckon::key::{Key, Kind, Need};
use evenwall_reckon::page::page;
use evenwall_reckon::registry;
use evenwall_reckon::run::answer;
use serde_json::Value;

const COMMITTED: &str = include_str!("../QUESTIONS.md");

/// The page without the numbers of its answers: their last digits belong to the machine.
fn words(page: &str) -> Vec<&str> {
    page.lines()
        .filter(|l| !l.starts_with("{\"ask\":\""))
        .collect()
}

#[test]
fn the_committed_page_is_the_registrys() {
    let page = page();
    let (committed, printed) = (words(COMMITTED), words(&page));
    let differs = committed.iter().zip(&printed).find(|(a, b)| a != b);
    assert!(
        committed == printed,
        "src/reckon/QUESTIONS.md has fallen behind at {differs:?}: cargo run -p evenwall-reckon --example page > src/reckon/QUESTIONS.md"
    );
}

/// Pairs of blocks: a question and the answer shown.
fn examples() -> Vec<(Value, Value)> {
    let blocks: Vec<Value> = COMMITTED
        .split("```json\n")
        .skip(1)
        .map(|b| serde_json::from_str(b.split("\n```").next().unwrap()).unwrap())
        .collect();
    blocks
        .chunks(2)
        .map(|p| (p[0].clone(), p[1].clone()))
        .collect()
}

fn same(shown: &Value, got: &Value) -> bool {
    match (shown, got) {
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().unwrap(), b.as_f64().unwrap());
            // The search for an axis ends within 1e-5 mm of it.
            (a - b).abs() <= (1e-5 * b.abs()).max(2e-5)
        }
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b))
        }
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len() && a.iter().all(|(k, v)| b.get(k).is_some_and(|w| same(v, w)))
        }
        _ => shown == got,
    }
}

#[test]
fn every_example_is_answered_as_the_page_shows() {
    let examples = examples();
    let of_registry: usize = registry::all().map(|q| q.examples.len()).sum();
    assert_eq!(examples.len(), of_registry);
    for (question, shown) in examples {
        let got = answer(&question);
        assert!(got.get("answer").is_some(), "{got}");
        assert!(same(&shown, &got), "{question}\nshown {shown}\ngot {got}");
    }
}

/// Every key of an answer with its path, entries of lists as `[]`; lists of numbers or pairs end at their key.
fn paths(value: &Value, path: &str, into: &mut BTreeSet<String>) {
    match value {
        Value::Object(map) => {
            for (key, value) in map {
                let path = if path.is_empty() {
                    key.clone()
                } else {
                    format!("{path}.{key}")
                };
                paths(value, &path, into);
            }
        }
        Value::Array(list) if list.iter().any(Value::is_object) => {
            for entry in list {
                paths(entry, &format!("{path}[]"), into);
            }
        }
        _ => {
            into.insert(path.to_owned());
        }
    }
}

/// What an answer may hold is documented, and what is documented is seen in an example.
#[test]
fn documented_and_given_keys_are_the_same() {
    let mut wrong = Vec::new();
    for question in registry::all() {
        let documented: BTreeSet<String> = question
            .outputs
            .iter()
            .flat_map(|o| o.iter())
            .map(|o| o.name.to_owned())
            .collect();
        let mut given = BTreeSet::new();
        for example in question.examples {
            let whole = answer(&serde_json::from_str(example).unwrap());
            paths(&whole["answer"], "", &mut given);
        }
        for key in given.symmetric_difference(&documented) {
            wrong.push(format!("{}: {key}", question.name));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

fn check_key(key: &Key, of: &str) {
    let units = [
        "_mm", "_cm2", "_cm3", "_g", "_kg_m3", "_mpa", "_hpa", "_n", "_c", "_deg", "_rpm", "_pct",
        "_per_k", "_ratio", "_g_day", "_m_s", "_m2_s", "_m3_s", "day", "days",
    ];
    let number = matches!(
        key.kind,
        Kind::Number(_)
            | Kind::Numbers(..)
            | Kind::OneOrMore(..)
            | Kind::Point(_)
            | Kind::Points(..)
    );
    let counts = [
        "most",
        "outline_points",
        "steps",
        "kept",
        "all",
        "other_kept",
        "other_all",
    ];
    assert!(
        !number || counts.contains(&key.name) || units.iter().any(|u| key.name.ends_with(u)),
        "{of}: {} has no unit",
        key.name
    );
    assert!(
        !key.says.is_empty() && !key.says.ends_with('.'),
        "{of}: {}",
        key.name
    );
    if let (Kind::Number(limits), Need::Number(default)) = (key.kind, key.need) {
        assert!(limits.holds(default), "{of}: {}", key.name);
    }
    if let Kind::Object(keys) | Kind::Objects(keys, _) = key.kind {
        keys.iter().for_each(|k| check_key(k, of));
    }
}

#[test]
fn every_question_is_named_once_and_every_quantity_has_its_unit() {
    let mut names = BTreeSet::new();
    for question in registry::all() {
        assert!(names.insert(question.name), "{} twice", question.name);
        let mut keys = BTreeSet::new();
        for key in question.keys() {
            assert!(
                keys.insert(key.name),
                "{}: {} twice",
                question.name,
                key.name
            );
            check_key(key, question.name);
        }
        assert!(!question.examples.is_empty(), "{}", question.name);
    }
}

/// No speed and no piece is ever called that.
#[test]
fn nothing_is_called_safe() {
    let page = page().to_lowercase();
    assert!(
        !page
            .split(|c: char| !c.is_alphabetic())
            .any(|w| w == "safe" || w == "safely")
    );
}
