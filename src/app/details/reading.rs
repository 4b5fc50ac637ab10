//! Reading: what was typed into a detail becomes a value, nothing, or a sentence that says what is wrong.

use chrono::NaiveDate;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::Measure;
use evenwall_piece::mark::LONGEST_MARK;
use evenwall_piece::piece::Moment;

use super::felled::{Day, DayError};
use super::{LONGEST_LINE, LONGEST_NOTE, choices, label, quantity};
use crate::app::App;
use crate::numbers::Parsed;

/// Reads what was typed into a detail. Blank is `None`: it clears the detail. A choice takes its key or its words.
///
/// # Errors
/// A sentence for below the field: what was found, what is allowed, what to do.
pub fn understand(
    app: &App,
    field: DetailField,
    typed: &str,
    now: Moment,
) -> Result<Option<DetailValue>, String> {
    if typed.trim().is_empty() {
        return Ok(None);
    }
    if let Some(quantity) = quantity(field) {
        let numbers = app.numbers();
        return match numbers.parse(quantity, typed) {
            Ok(Parsed::Value(entry)) => Ok(Some(DetailValue::Length(Measure {
                value: entry.value,
                typed: entry.typed,
            }))),
            Ok(Parsed::Ask {
                typed,
                readings,
                why,
            }) => Err(format!(
                "{} {}",
                numbers.reason(quantity, &typed, why),
                numbers.question(&readings)
            )),
            Err(error) => Err(error.message(&numbers, quantity)),
        };
    }
    let text = match field {
        DetailField::Notes => several_lines(typed),
        _ => one_line(typed),
    };
    let most = match field {
        DetailField::Notes => LONGEST_NOTE,
        DetailField::Mark => LONGEST_MARK,
        _ => LONGEST_LINE,
    };
    let count = text.chars().count();
    if count > most {
        return Err(app.words().with(
            "details-too-long",
            &[
                ("what", label(app, field).into()),
                ("count", count.into()),
                ("most", most.into()),
            ],
        ));
    }
    let stored = match field {
        DetailField::Felled => read_day(app, &text, now.date_naive())?.to_string(),
        DetailField::Wood => app
            .known_wood(&text)
            .map_or(text.clone(), |wood| wood.key().to_owned()),
        DetailField::Form | DetailField::Grain | DetailField::Pith | DetailField::Outline => {
            let lower = text.to_lowercase();
            let all = choices(app, field);
            match all
                .iter()
                .find(|(key, words)| *key == text || words.to_lowercase() == lower)
            {
                Some((key, _)) => (*key).to_owned(),
                None => {
                    let offered: Vec<String> = all.into_iter().map(|(_, words)| words).collect();
                    return Err(app.words().with(
                        "details-no-such-choice",
                        &[
                            ("found", text.into()),
                            ("what", label(app, field).into()),
                            ("choices", offered.join(", ").into()),
                        ],
                    ));
                }
            }
        }
        _ => text,
    };
    Ok(Some(DetailValue::Text(stored)))
}

/// Where a length can be read in two ways: texts to put into the field instead, each without any doubt. Empty else.
#[must_use]
pub fn ways_to_read(app: &App, field: DetailField, typed: &str) -> Vec<String> {
    let Some(quantity) = quantity(field) else {
        return Vec::new();
    };
    let numbers = app.numbers();
    match numbers.parse(quantity, typed) {
        Ok(Parsed::Ask { readings, .. }) => readings
            .iter()
            .filter(|r| r.allowed)
            .map(|r| {
                let label = numbers.label(r);
                // Without the unit, which stands behind the field, where that reads the same.
                let bare = label.rsplit_once('\u{a0}').map_or_else(
                    || label.clone(),
                    |(figures, _)| figures.replace('\u{a0}', " "),
                );
                let same = |p: &Parsed| p.value().is_some_and(|e| (e.value - r.value).abs() < 1e-9);
                if numbers.parse(quantity, &bare).is_ok_and(|p| same(&p)) {
                    bare
                } else {
                    label
                }
            })
            .collect(),
        _ => Vec::new(),
    }
}

/// Reads a day, a month or a year up to today.
///
/// # Errors
/// A sentence for below the field.
pub fn read_day(app: &App, typed: &str, today: NaiveDate) -> Result<Day, String> {
    let words = app.words();
    Day::read(typed, today, words).map_err(|error| {
        let found: String = typed.chars().take(40).collect();
        let found = || found.clone().into();
        match error {
            DayError::NotADay => words.with("details-not-a-day", &[("found", found())]),
            DayError::NoSuchDay => words.with("details-no-such-day", &[("found", found())]),
            DayError::Ahead => words.with("details-day-ahead", &[("found", found())]),
            DayError::TooEarly => words.with("details-day-early", &[("found", found())]),
        }
    })
}

/// One line: blanks of every kind become one plain blank, control characters go.
fn one_line(text: &str) -> String {
    text.split(|c: char| c.is_whitespace() || c.is_control())
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

/// Several lines: line ends of every kind become plain ones, other control characters go, blanks at the ends go.
fn several_lines(text: &str) -> String {
    text.replace("\r\n", "\n")
        .replace('\r', "\n")
        .chars()
        .map(|c| if c == '\t' { ' ' } else { c })
        .filter(|c| *c == '\n' || !c.is_control())
        .collect::<String>()
        .trim()
        .to_owned()
}
