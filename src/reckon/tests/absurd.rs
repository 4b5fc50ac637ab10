//! Absurd questions get an answer or a sentence, always in JSON, never a number that is none, never a panic.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_reckon::key::{Count, Key, Kind, Limits, Need};
use evenwall_reckon::registry;
use evenwall_reckon::run::{answer, run};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{TestRng, TestRunner};
use serde_json::{Map, Value};

/// Any JSON at all.
fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::Bool),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        "[a-z_ ]{0,12}".prop_map(Value::String),
    ];
    leaf.prop_recursive(4, 40, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::Array),
            prop::collection::vec(("[a-z_]{0,10}", inner), 0..6)
                .prop_map(|pairs| Value::Object(pairs.into_iter().collect())),
        ]
    })
}

/// A number within its limits, its ends and near misses of them now and then.
fn number(limits: Limits, rng: &mut TestRng) -> Value {
    let at = |share: f64| limits.min + share * (limits.max - limits.min);
    match rng.random_range(0..20) {
        0 => limits.min.into(),
        1 => limits.max.into(),
        2 => (limits.max + 1.0).into(),
        3 => at(rng.random_range(0.0..1.0)).into(),
        // Most legal ranges are wide and most vessels small.
        _ => at(rng.random_range(0.0_f64..1.0).powi(4)).into(),
    }
}

fn list(count: Count, rng: &mut TestRng, mut one: impl FnMut(&mut TestRng) -> Value) -> Value {
    let n = rng.random_range(count.min..=count.max.min(count.min + 8));
    (0..n).map(|_| one(rng)).collect()
}

fn pair(limits: Limits, rng: &mut TestRng) -> Value {
    vec![number(limits, rng), number(limits, rng)].into()
}

fn value(kind: Kind, rng: &mut TestRng) -> Value {
    match kind {
        Kind::Number(limits) => number(limits, rng),
        Kind::OneOrMore(limits, _) if rng.random_bool(0.5) => number(limits, rng),
        Kind::Numbers(limits, count) | Kind::OneOrMore(limits, count) => {
            list(count, rng, |rng| number(limits, rng))
        }
        Kind::Point(limits) => pair(limits, rng),
        Kind::Points(limits, count) => list(count, rng, |rng| pair(limits, rng)),
        Kind::Word(words) => words[rng.random_range(0..words.len())].into(),
        Kind::Text => ["white-ash", "sycamore", "unknown", "", "yew", "lightning"]
            [rng.random_range(0..6)]
        .into(),
        Kind::Flag => rng.random_bool(0.5).into(),
        Kind::Object(keys) => object(keys.iter(), rng).into(),
        Kind::Objects(keys, count) => list(count, rng, |rng| object(keys.iter(), rng).into()),
    }
}

fn object<'a>(keys: impl Iterator<Item = &'a Key>, rng: &mut TestRng) -> Map<String, Value> {
    let mut map = Map::new();
    // One way of saying an outline, or the wood, is enough: the others would only be refused.
    let keys: Vec<&Key> = keys.collect();
    let share = if keys.len() > 6 { 0.25 } else { 0.6 };
    for key in keys {
        if key.need == Need::Must || rng.random_bool(share) {
            map.insert(key.name.to_owned(), value(key.kind, rng));
        }
    }
    map
}

/// A question of the registry with keys of the right kind and figures anywhere in their range.
fn any_question() -> impl Strategy<Value = Value> {
    let n = registry::all().count();
    (0..n).prop_perturb(|i, mut rng| {
        let question = registry::all().nth(i).unwrap();
        let mut map = object(question.keys(), &mut rng);
        map.insert("ask".into(), question.name.into());
        if question.keys().any(|k| k.name == "shrunk_radial_pct") && rng.random_bool(0.8) {
            for key in [
                "wood",
                "radial_pct",
                "tangential_pct",
                "shrunk_radial_pct",
                "shrunk_tangential_pct",
            ] {
                map.remove(key);
            }
            map.insert("wood".into(), "white-ash".into());
        }
        Value::Object(map)
    })
}

/// An example with its numbers shaken, now and then out of all reason.
fn shaken(value: &Value, rng: &mut TestRng) -> Value {
    match value {
        Value::Number(n) => {
            let n = n.as_f64().unwrap();
            match rng.random_range(0..60) {
                0 => 0.0.into(),
                1 => (-n).into(),
                2 => (10.0 * n).into(),
                3 => (1e6 * n).into(),
                k if k < 30 => (n * rng.random_range(0.95..1.05)).into(),
                _ => n.into(),
            }
        }
        Value::Array(list) => list.iter().map(|v| shaken(v, rng)).collect(),
        Value::Object(map) => map
            .iter()
            .map(|(k, v)| (k.clone(), shaken(v, rng)))
            .collect(),
        other => other.clone(),
    }
}

/// An example of the registry, shaken.
fn shaken_example() -> impl Strategy<Value = Value> {
    let n = registry::all().count();
    (0..n).prop_perturb(|i, mut rng| {
        let question = registry::all().nth(i).unwrap();
        let example = question.examples[rng.random_range(0..question.examples.len())];
        shaken(&serde_json::from_str(example).unwrap(), &mut rng)
    })
}

fn has_null(value: &Value) -> bool {
    match value {
        Value::Null => true,
        Value::Array(list) => list.iter().any(has_null),
        Value::Object(map) => map.values().any(has_null),
        _ => false,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    #[test]
    fn questions_with_figures_anywhere_in_range(question in prop_oneof![any_question(), shaken_example()]) {
        let whole = answer(&question);
        match (whole.get("answer"), whole.get("error")) {
            (Some(answer), None) => prop_assert!(!has_null(answer), "{question} {answer}"),
            (None, Some(error)) => {
                let sentence = error.as_str().unwrap();
                prop_assert!(sentence.len() > 20 && !sentence.contains("NaN"), "{sentence}");
                prop_assert!(sentence.len() < 2000, "{sentence}");
            }
            _ => prop_assert!(false, "{whole}"),
        }
    }

    #[test]
    fn any_json_gives_a_list_or_a_sentence(input in any_json()) {
        let mut output = Vec::new();
        match run(input.to_string().as_bytes(), &mut output) {
            Ok(()) => {
                let list: Value = serde_json::from_slice(&output).unwrap();
                prop_assert!(list.is_array());
            }
            Err(e) => {
                prop_assert!(output.is_empty());
                prop_assert!(!e.to_string().is_empty());
            }
        }
    }

    #[test]
    fn any_bytes_give_a_list_or_a_sentence(input in prop::collection::vec(any::<u8>(), 0..200)) {
        let mut output = Vec::new();
        if run(input.as_slice(), &mut output).is_ok() {
            prop_assert!(serde_json::from_slice::<Value>(&output).is_ok());
        }
    }

    #[test]
    fn a_wrong_value_at_any_key_is_a_sentence(i in 0..60_usize, k in 0..20_usize, junk in any_json()) {
        let questions: Vec<_> = registry::all().collect();
        let question = questions[i % questions.len()];
        let mut map: Map<String, Value> = serde_json::from_str(question.examples[0]).unwrap();
        let keys: Vec<_> = question.keys().collect();
        map.insert(keys[k % keys.len()].name.to_owned(), junk);
        let whole = answer(&Value::Object(map));
        prop_assert!(whole.get("answer").is_some() != whole.get("error").is_some());
    }
}

/// The absurd questions above reach every sum, not only the checks in front of it.
#[test]
fn the_generator_gets_answers_of_every_question() {
    let mut runner = TestRunner::deterministic();
    let mut answered = std::collections::BTreeMap::new();
    for i in 0..3000 {
        let question = if i % 2 == 0 {
            any_question().new_tree(&mut runner).unwrap().current()
        } else {
            shaken_example().new_tree(&mut runner).unwrap().current()
        };
        let name = question["ask"].as_str().unwrap().to_owned();
        let count = answered.entry(name).or_insert((0, 0));
        count.1 += 1;
        if answer(&question).get("answer").is_some() {
            count.0 += 1;
        }
    }
    let never: Vec<_> = answered.iter().filter(|(_, n)| n.0 == 0).collect();
    assert_eq!(answered.len(), registry::all().count());
    assert!(
        never.is_empty(),
        "never answered: {never:?} of {answered:?}"
    );
}
