//! Asking a question in a test.
#![allow(dead_code)] // each test binary uses its part

use evenwall_reckon::run::answer;
use serde_json::Value;

/// The answer to a question that must have one.
#[track_caller]
pub fn ask(question: &str) -> Value {
    let question: Value = serde_json::from_str(question).unwrap();
    let whole = answer(&question);
    assert!(whole.get("error").is_none(), "{whole}");
    whole["answer"].clone()
}

/// The sentence of a question that must be refused.
#[track_caller]
pub fn refusal(question: &str) -> String {
    let question: Value = serde_json::from_str(question).unwrap();
    let whole = answer(&question);
    assert!(whole.get("answer").is_none(), "{whole}");
    whole["error"].as_str().unwrap().to_owned()
}

/// A number of an answer by its path, such as "/stations/0/wall_mm".
#[track_caller]
pub fn number(answer: &Value, path: &str) -> f64 {
    let path = if path.starts_with('/') {
        path.to_owned()
    } else {
        format!("/{path}")
    };
    let found = answer.pointer(&path).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("no number {path} in {answer}"))
}

/// The number at `path` is `want` within the larger of one part in a million and half a unit of the last digit, `digit`.
#[track_caller]
pub fn near(answer: &Value, path: &str, want: f64, digit: f64) {
    within(answer, path, want, (1e-6 * want.abs()).max(0.501 * digit));
}

/// The number at `path` is `want` within `tolerance`.
#[track_caller]
pub fn within(answer: &Value, path: &str, want: f64, tolerance: f64) {
    let got = number(answer, path);
    assert!(
        (got - want).abs() <= tolerance,
        "{path}: got {got}, want {want}"
    );
}
