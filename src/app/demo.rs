//! Demo: an invented shelf whose days are relative to the day on which it is opened.
//!
//! The templates in `demo/` are journals whose lines carry a day counted from today (`"day": -12, "time": "09:10"`)
//! in place of a date. Text `@day+5` inside a fact stands for a date, `@month-40` for the month of a day, `@weekdays 0 3`
//! for the weekdays of days (so that bag days fall alike on whatever weekday it is opened), an object with
//! `template_line` for the id of an earlier line of the same file. Everything in them is invented, and their pictures are drawn
//! by the program; `demo/README.md` says more.

use chrono::{Datelike, Days, NaiveDate, NaiveTime, TimeZone};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::Moment;
use evenwall_piece::settings::weekday_key;
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::format::{Recorded, read};
use serde::Deserialize;
use serde_json::Value;

use crate::store::{Store, StoreError};

mod drawn;
mod templates;

/// One line of a template.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct TemplateLine {
    /// Days from today, 0 or less.
    day: i64,
    /// Local time of day, `09:10`.
    time: String,
    /// Facts in the form of the journals.
    facts: Vec<Value>,
    /// When it was written down, where that is another day.
    #[serde(default)]
    noted_day: Option<i64>,
}

fn bad(file: &str, line: usize, why: impl std::fmt::Display) -> StoreError {
    StoreError(format!("demo/{file}, line {line}: {why}"))
}

fn day(today: NaiveDate, days: i64) -> Option<NaiveDate> {
    let by = Days::new(days.unsigned_abs());
    if days < 0 {
        today.checked_sub_days(by)
    } else {
        today.checked_add_days(by)
    }
}

/// A local time of that day with the offset of `now`. A demo needs no better: its days are what matters.
fn moment(now: Moment, days: i64, time: &str) -> Option<Moment> {
    let time = NaiveTime::parse_from_str(time, "%H:%M").ok()?;
    let local = day(now.date_naive(), days)?.and_time(time);
    now.offset().from_local_datetime(&local).single()
}

/// What a text stands for; `None` where it stands for itself.
fn stands_for(text: &str, today: NaiveDate) -> Result<Option<String>, String> {
    let on = |days: &str| {
        let days: i64 = days
            .parse()
            .map_err(|_| format!("'{days}' is no number of days"))?;
        day(today, days).ok_or_else(|| format!("'{text}' is out of range"))
    };
    if let Some(list) = text.strip_prefix("@weekdays ") {
        let mut days: Vec<_> = list.split_whitespace().map(on).collect::<Result<_, _>>()?;
        days.sort_by_key(|d| d.weekday().num_days_from_monday());
        let keys: Vec<_> = days.iter().map(|d| weekday_key(d.weekday())).collect();
        return Ok(Some(keys.join(" ")));
    }
    if let Some(days) = text.strip_prefix("@month") {
        return on(days).map(|d| Some(d.format("%Y-%m").to_string()));
    }
    match text.strip_prefix("@day") {
        Some(days) => on(days).map(|d| Some(d.to_string())),
        None => Ok(None),
    }
}

/// Puts dates and line ids in place of their stand-ins.
fn fill_in(value: &mut Value, today: NaiveDate, written: &[LineId]) -> Result<(), String> {
    match value {
        Value::String(text) => {
            if let Some(meant) = stands_for(text, today)? {
                *text = meant;
            }
            Ok(())
        }
        Value::Array(items) => items
            .iter_mut()
            .try_for_each(|v| fill_in(v, today, written)),
        Value::Object(map) => {
            if let Some(line) = map.remove("template_line").and_then(|l| l.as_u64()) {
                let place = usize::try_from(line).ok().and_then(|l| l.checked_sub(1));
                let id = place
                    .and_then(|p| written.get(p))
                    .ok_or("no such earlier line")?;
                map.insert("device".into(), id.device.as_str().into());
                map.insert("n".into(), id.n.into());
            }
            map.values_mut()
                .try_for_each(|v| fill_in(v, today, written))
        }
        _ => Ok(()),
    }
}

/// Reads one template and hands each line to `write`, oldest first. Lines of days to come are left out: the demo is a
/// shelf as it is today.
fn lines<F: Recorded>(
    file: &str,
    text: &str,
    now: Moment,
    mut write: impl FnMut(Moment, Moment, Vec<F>) -> Result<LineId, StoreError>,
) -> Result<(), StoreError> {
    let mut written = Vec::new();
    for (n, line) in text
        .lines()
        .enumerate()
        .filter(|(_, l)| !l.trim().is_empty())
    {
        let n = n + 1;
        let mut line: TemplateLine = serde_json::from_str(line).map_err(|e| bad(file, n, e))?;
        let at = moment(now, line.day, &line.time).ok_or_else(|| bad(file, n, "no such moment"))?;
        let noted = line
            .noted_day
            .map_or(Some(at), |d| moment(now, d, &line.time));
        let noted = noted.ok_or_else(|| bad(file, n, "no such moment"))?;
        // What would be noted later today is noted now, so that nothing lies in the future.
        let (at, noted) = (at.min(now), noted.min(now));
        let mut facts = Vec::new();
        for fact in &mut line.facts {
            fill_in(fact, now.date_naive(), &written).map_err(|e| bad(file, n, e))?;
            let mut rest = Vec::new();
            facts.push(read::<F>(&fact.to_string(), &mut rest));
            facts.append(&mut rest);
        }
        written.push(write(at, noted, facts)?);
    }
    Ok(())
}

/// Fills a store with the invented shelf as of `now`.
///
/// # Errors
/// [`StoreError`] where the store cannot keep it, or a template is wrong (a test reads them all).
pub fn fill(store: &mut dyn Store, now: Moment) -> Result<(), StoreError> {
    lines::<ShopFact>("shop.jsonl", templates::SHOP, now, |at, noted, facts| {
        store.append_shop(at, noted, facts).map(|l| l.id)
    })?;
    for (name, text) in templates::PIECES {
        let id = PieceId::new(&format!("{name}-demo")).map_err(|e| StoreError(e.to_string()))?;
        lines::<PieceFact>(
            &format!("pieces/{name}.jsonl"),
            text,
            now,
            |at, noted, facts| store.append_piece(&id, at, noted, facts).map(|l| l.id),
        )?;
    }
    drawn::fill(store, now)
}
