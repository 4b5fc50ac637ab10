//! What comes in and what goes out: one list, errors per question, and no list at all where nothing could be read.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;
use evenwall_reckon::run::{MOST_QUESTIONS, Unreadable, run};
use serde_json::{Value, json};
use support::refusal;

fn through(input: &str) -> Result<Value, Unreadable> {
    let mut output = Vec::new();
    run(input.as_bytes(), &mut output)?;
    Ok(serde_json::from_slice(&output).unwrap())
}

const DRILL: &str = r#"{"id": 7, "ask": "drill_depth", "height_mm": 178, "floor_mm": 25}"#;

#[test]
fn one_question_a_list_and_an_object_of_questions_give_a_list() {
    let want = json!([{"id": 7, "ask": "drill_depth", "answer": {"depth_mm": 153.0}}]);
    assert_eq!(through(DRILL).unwrap(), want);
    assert_eq!(through(&format!("[{DRILL}]")).unwrap(), want);
    assert_eq!(
        through(&format!("\u{feff}{{\"questions\": [{DRILL}]}}")).unwrap(),
        want
    );
    assert_eq!(through("[]").unwrap(), json!([]));
}

#[test]
fn what_cannot_be_answered_leaves_the_rest_alone() {
    let got = through(&format!(
        r#"[{DRILL}, {{"id": {{"row": 2}}, "ask": "drill_depth", "height_mm": 20, "floor_mm": 25}}, 3, {{"ask": "lathe"}}, {{}}, {DRILL}]"#
    ))
    .unwrap();
    let got = got.as_array().unwrap();
    assert_eq!(got.len(), 6);
    assert_eq!(got[0], got[5]);
    assert_eq!(got[1]["id"], json!({"row": 2}));
    for refused in &got[1..5] {
        assert!(refused.get("answer").is_none());
        assert!(refused["error"].as_str().unwrap().len() > 30, "{refused}");
    }
    assert!(
        got[3]["error"]
            .as_str()
            .unwrap()
            .contains("settling_moisture")
    );
    assert!(
        got[4]["error"]
            .as_str()
            .unwrap()
            .contains("settling_moisture")
    );
}

#[test]
fn an_answer_a_line_in_order() {
    let mut output = Vec::new();
    run(format!("[{DRILL},{DRILL}]").as_bytes(), &mut output).unwrap();
    let text = String::from_utf8(output).unwrap();
    assert_eq!(text.lines().count(), 4, "{text}");
}

#[test]
fn no_questions_no_list() {
    for (input, word) in [
        ("", "JSON"),
        ("{\"ask\": ", "JSON"),
        ("drill", "JSON"),
        ("[1e999]", "JSON"),
        ("\"drill_depth\"", "the text"),
        ("{\"questions\": 3}", "3"),
        ("{\"questions\": [], \"more\": 1}", "more"),
    ] {
        let mut output = Vec::new();
        let sentence = run(input.as_bytes(), &mut output).unwrap_err().to_string();
        assert!(sentence.contains(word), "{input}: {sentence}");
        assert!(output.is_empty());
    }
    let many = format!("[{}3]", "3,".repeat(MOST_QUESTIONS));
    assert!(matches!(through(&many), Err(Unreadable::TooMany { .. })));
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert!(matches!(through(&deep), Err(Unreadable::NotJson(_))));
    let endless = std::io::repeat(b' ');
    assert!(matches!(run(endless, Vec::new()), Err(Unreadable::TooLong)));
}

/// A pipe that is closed at the other end is said, not thrown.
#[test]
fn an_output_that_cannot_be_written_is_an_error() {
    struct Closed;
    impl std::io::Write for Closed {
        fn write(&mut self, _: &[u8]) -> std::io::Result<usize> {
            Err(std::io::ErrorKind::BrokenPipe.into())
        }
        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }
    assert!(matches!(
        run(DRILL.as_bytes(), Closed),
        Err(Unreadable::Write(_))
    ));
}

#[test]
fn sentences_name_the_key_and_what_is_allowed() {
    for (question, words) in [
        (
            r#"{"ask": "drill_depth", "height": 178, "floor_mm": 25}"#,
            &["\"height\"", "`height_mm`", "`floor_mm`"][..],
        ),
        (
            r#"{"ask": "drill_depth", "floor_mm": null}"#,
            &["`height_mm`", "`floor_mm`", "5 to 2000 mm"],
        ),
        (
            r#"{"ask": "drill_depth", "height_mm": "178", "floor_mm": 25}"#,
            &["`height_mm`", "the text \"178\"", "number"],
        ),
        (
            r#"{"ask": "settling_moisture", "temp_c": 20, "rh_pct": 165}"#,
            &["`rh_pct`", "165", "0 and 100 %"],
        ),
        (
            r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 10}"#,
            &["`wood`", "`radial_pct`", "`shrunk_radial_pct`"],
        ),
        (
            r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 10, "radial_pct": 5}"#,
            &["`tangential_pct`"],
        ),
        (
            r#"{"ask": "wall_left", "diameter_mm": 140, "wall_mm": 80, "wood": "white-ash"}"#,
            &["80 mm", "70 mm", "thinner"],
        ),
        (
            r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "pith_mm": 90, "wood": "white-ash"}"#,
            &["90 mm", "60 mm"],
        ),
        (
            r#"{"ask": "closed_ring", "diameter_mm": 140, "wall_mm": 10, "wood": "white-ash", "at": [{"radius_mm": 70}, {"angle_deg": 3}]}"#,
            &["`at[1]`", "`radius_mm`"],
        ),
        (
            r#"{"ask": "rough_wall", "diameter_mm": 140, "wood": "white-ash", "grain": "cross"}"#,
            &["`grain`", "\"cross\"", "\"end\", \"side\""],
        ),
        (
            r#"{"ask": "rough_wall", "diameter_mm": 140, "wood": "white-ash", "grain": "side", "pith_mm": 90}"#,
            &["side grain", "`pith_mm`"],
        ),
        (
            r#"{"ask": "true_measured", "outer": {"radii_mm": [60, 60]}, "bore": {"diameters_mm": [110]}}"#,
            &["`outer.radii_mm`", "2", "3 to 360"],
        ),
        (
            r#"{"ask": "true_measured", "outer": {"radii_mm": [60, 60, 61], "semi_axes_mm": [60, 60]}, "bore": {"diameters_mm": [110]}}"#,
            &["`outer`", "several"],
        ),
        (
            r#"{"ask": "true_measured", "outer": {"semi_axes_mm": [60, 60]}}"#,
            &["`bore`"],
        ),
        (
            r#"{"ask": "profile", "stations": [{"depth_mm": 0, "diameter_mm": 90, "wall_mm": 9}, {"depth_mm": 80, "diameter_mm": 90, "wall_mm": 9}], "height_mm": 100, "floor_depth_mm": 120}"#,
            &["120.0 mm", "100.0 mm"],
        ),
        (
            r#"{"ask": "bar", "bar_mm": 16}"#,
            &["`reach_mm`", "`bend_mm`"],
        ),
    ] {
        let sentence = refusal(question);
        for word in words {
            assert!(sentence.contains(word), "{word} is not in: {sentence}");
        }
    }
}
