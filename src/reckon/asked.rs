//! A question as it was asked: checked against its keys once, then read without surprises.

use serde_json::{Map, Value};

use crate::key::{Key, Kind, Limits, Need};
use crate::refused::{Between, Refused};

/// The values of a question or of an object within it, checked against its keys.
#[derive(Debug, Clone)]
pub struct Asked<'a> {
    values: &'a Map<String, Value>,
    keys: Vec<&'static Key>,
    of: String,
}

impl<'a> Asked<'a> {
    /// Checks `values` of the question `name` against `keys`: none unknown, none missing, each of its kind and in its range.
    /// `ask` and `id` are always allowed; null counts as left out.
    ///
    /// # Errors
    /// [`Refused`] for the first thing that is wrong.
    pub fn check(
        values: &'a Map<String, Value>,
        keys: Vec<&'static Key>,
        name: &str,
    ) -> Result<Self, Refused> {
        check(values, &keys, &format!("`{name}`"), "", &["ask", "id"])?;
        Ok(Asked {
            values,
            keys,
            of: format!("`{name}`"),
        })
    }

    /// What was given at `name`, null counting as nothing.
    fn given(&self, name: &str) -> Option<&'a Value> {
        self.values.get(name).filter(|v| !v.is_null())
    }

    fn default(&self, name: &str) -> Option<Need> {
        self.keys.iter().find(|k| k.name == name).map(|k| k.need)
    }

    /// True when something was given at `name`; a default does not count.
    #[must_use]
    pub fn has(&self, name: &str) -> bool {
        self.given(name).is_some()
    }

    /// True when there is a key `name` here, given or not.
    #[must_use]
    pub fn knows(&self, name: &str) -> bool {
        self.default(name).is_some()
    }

    /// The number at `name`, or its default.
    #[must_use]
    pub fn number(&self, name: &str) -> Option<f64> {
        match (self.given(name), self.default(name)) {
            (Some(value), _) => value.as_f64(),
            (None, Some(Need::Number(default))) => Some(default),
            _ => None,
        }
    }

    /// The number at `name`, which must be there.
    ///
    /// # Errors
    /// [`Refused::Missing`] when it is not.
    pub fn need(&self, name: &str) -> Result<f64, Refused> {
        self.number(name).ok_or_else(|| self.missing(name))
    }

    /// The per cent at `name` as a fraction, or its default.
    #[must_use]
    pub fn fraction(&self, name: &str) -> Option<f64> {
        self.number(name).map(|pct| pct / 100.0)
    }

    /// The per cent at `name` as a fraction, which must be there.
    ///
    /// # Errors
    /// [`Refused::Missing`] when it is not.
    pub fn need_fraction(&self, name: &str) -> Result<f64, Refused> {
        Ok(self.need(name)? / 100.0)
    }

    /// The text or word at `name`, or its default.
    #[must_use]
    pub fn text(&self, name: &str) -> Option<&'a str> {
        match (self.given(name), self.default(name)) {
            (Some(value), _) => value.as_str(),
            (None, Some(Need::Word(default))) => Some(default),
            _ => None,
        }
    }

    /// True when `true` stands at `name`.
    #[must_use]
    pub fn flag(&self, name: &str) -> bool {
        self.given(name).and_then(Value::as_bool).unwrap_or(false)
    }

    /// The numbers at `name`, one or a list; empty when there is none.
    #[must_use]
    pub fn numbers(&self, name: &str) -> Vec<f64> {
        match self.given(name) {
            Some(Value::Array(list)) => list.iter().filter_map(Value::as_f64).collect(),
            Some(value) => value.as_f64().into_iter().collect(),
            None => Vec::new(),
        }
    }

    /// The pair at `name`.
    #[must_use]
    pub fn point(&self, name: &str) -> Option<(f64, f64)> {
        self.given(name).and_then(pair)
    }

    /// The pairs at `name`; empty when there is none.
    #[must_use]
    pub fn points(&self, name: &str) -> Vec<(f64, f64)> {
        let list = self.given(name).and_then(Value::as_array);
        list.into_iter().flatten().filter_map(pair).collect()
    }

    /// The object at `name`.
    #[must_use]
    pub fn object(&self, name: &str) -> Option<Asked<'a>> {
        let key = self.keys.iter().find(|k| k.name == name)?;
        match (key.kind, self.given(name)) {
            (Kind::Object(keys), Some(Value::Object(values))) => Some(Asked {
                values,
                keys: keys.iter().collect(),
                of: format!("`{name}`"),
            }),
            _ => None,
        }
    }

    /// The objects of the list at `name`; empty when there is none.
    #[must_use]
    pub fn objects(&self, name: &str) -> Vec<Asked<'a>> {
        let key = self.keys.iter().find(|k| k.name == name);
        let (Some(Kind::Objects(keys, _)), Some(Value::Array(list))) =
            (key.map(|k| k.kind), self.given(name))
        else {
            return Vec::new();
        };
        let each = list.iter().enumerate();
        each.filter_map(|(i, value)| {
            Some(Asked {
                values: value.as_object()?,
                keys: keys.iter().collect(),
                of: format!("`{name}[{i}]`"),
            })
        })
        .collect()
    }

    /// What this is, for a sentence.
    #[must_use]
    pub fn of(&self) -> &str {
        &self.of
    }

    /// The refusal that says that `name` is missing.
    #[must_use]
    pub fn missing(&self, name: &str) -> Refused {
        Refused::Missing {
            of: self.of.clone(),
            missing: format!("`{name}`"),
        }
    }
}

fn pair(value: &Value) -> Option<(f64, f64)> {
    match value.as_array()?.as_slice() {
        [x, y] => Some((x.as_f64()?, y.as_f64()?)),
        _ => None,
    }
}

/// A value in the words of a sentence, never long.
#[must_use]
pub fn in_words(value: Option<&Value>) -> String {
    match value {
        None => "missing".into(),
        Some(Value::Null) => "null".into(),
        Some(Value::Bool(flag)) => flag.to_string(),
        Some(Value::Number(n)) => n.to_string(),
        Some(Value::String(text)) => format!("the text {}", quoted(text)),
        Some(Value::Array(list)) => format!("a list of {} entries", list.len()),
        Some(Value::Object(map)) => format!("an object of {} keys", map.len()),
    }
}

/// A text in quotation marks, cut after 40 characters.
#[must_use]
pub fn quoted(text: &str) -> String {
    let short: String = text.chars().take(40).collect();
    let dots = if short.len() < text.len() { "..." } else { "" };
    format!("\"{short}{dots}\"")
}

fn check(
    values: &Map<String, Value>,
    keys: &[&'static Key],
    of: &str,
    path: &str,
    also: &[&str],
) -> Result<(), Refused> {
    let known = |name: &str| also.contains(&name) || keys.iter().any(|k| k.name == name);
    let unknown: Vec<String> = values
        .keys()
        .filter(|name| !known(name))
        .take(8)
        .map(|name| quoted(name))
        .collect();
    if !unknown.is_empty() {
        let allowed: Vec<String> = keys.iter().map(|k| format!("`{}`", k.name)).collect();
        return Err(Refused::UnknownKeys {
            of: of.to_owned(),
            found: unknown.join(", "),
            allowed: allowed.join(", "),
        });
    }
    let absent = |key: &&&Key| values.get(key.name).is_none_or(Value::is_null);
    let missing: Vec<String> = keys
        .iter()
        .filter(|k| k.need == Need::Must)
        .filter(absent)
        .map(|k| format!("`{}` ({})", k.name, k.kind))
        .collect();
    if !missing.is_empty() {
        return Err(Refused::Missing {
            of: of.to_owned(),
            missing: missing.join(" and "),
        });
    }
    for key in keys {
        if let Some(value) = values.get(key.name).filter(|v| !v.is_null()) {
            check_value(value, key, &format!("{path}{}", key.name))?;
        }
    }
    Ok(())
}

fn check_value(value: &Value, key: &Key, path: &str) -> Result<(), Refused> {
    let wrong = || Refused::WrongKind {
        key: path.to_owned(),
        found: in_words(Some(value)),
        wanted: key.kind,
    };
    let number = |value: &Value, limits: Limits, path: &str| {
        let found = value.as_f64().ok_or_else(|| Refused::WrongKind {
            key: path.to_owned(),
            found: in_words(Some(value)),
            wanted: Kind::Number(limits),
        })?;
        if limits.holds(found) {
            Ok(())
        } else {
            Err(Refused::OutOfRange {
                key: path.to_owned(),
                found: value.to_string(),
                limits: Between(limits),
            })
        }
    };
    let point =
        |value: &Value, limits: Limits, path: &str| match value.as_array().map(Vec::as_slice) {
            Some([x, y]) => {
                number(x, limits, &format!("{path}[0]"))?;
                number(y, limits, &format!("{path}[1]"))
            }
            _ => Err(Refused::WrongKind {
                key: path.to_owned(),
                found: in_words(Some(value)),
                wanted: Kind::Point(limits),
            }),
        };
    match key.kind {
        Kind::Number(limits) => number(value, limits, path),
        Kind::OneOrMore(limits, _) if !value.is_array() => number(value, limits, path),
        Kind::Numbers(limits, count) | Kind::OneOrMore(limits, count) => {
            each(value, count, path, wrong, |v, path| number(v, limits, path))
        }
        Kind::Point(limits) => point(value, limits, path),
        Kind::Points(limits, count) => {
            each(value, count, path, wrong, |v, path| point(v, limits, path))
        }
        Kind::Word(words) if value.as_str().is_some_and(|w| words.contains(&w)) => Ok(()),
        Kind::Text if value.is_string() => Ok(()),
        Kind::Flag if value.is_boolean() => Ok(()),
        Kind::Word(_) | Kind::Text | Kind::Flag => Err(wrong()),
        Kind::Object(keys) => object(value, keys, path, wrong),
        Kind::Objects(keys, count) => each(value, count, path, wrong, |v, path| {
            object(v, keys, path, || Refused::WrongKind {
                key: path.to_owned(),
                found: in_words(Some(v)),
                wanted: Kind::Object(keys),
            })
        }),
    }
}

fn object(
    value: &Value,
    keys: &'static [Key],
    path: &str,
    wrong: impl Fn() -> Refused,
) -> Result<(), Refused> {
    let values = value.as_object().ok_or_else(wrong)?;
    let keys: Vec<&Key> = keys.iter().collect();
    check(
        values,
        &keys,
        &format!("`{path}`"),
        &format!("{path}."),
        &[],
    )
}

fn each(
    value: &Value,
    count: crate::key::Count,
    path: &str,
    wrong: impl Fn() -> Refused,
    one: impl Fn(&Value, &str) -> Result<(), Refused>,
) -> Result<(), Refused> {
    let list = value.as_array().ok_or_else(wrong)?;
    if list.len() < count.min || list.len() > count.max {
        return Err(Refused::Entries {
            key: path.to_owned(),
            found: list.len(),
            allowed: count,
        });
    }
    for (i, entry) in list.iter().enumerate() {
        one(entry, &format!("{path}[{i}]"))?;
    }
    Ok(())
}
