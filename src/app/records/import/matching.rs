//! Matching: what a column of a spreadsheet holds, guessed from its name and chosen by the turner.

use chrono::NaiveDate;
use evenwall_piece::detail::DetailField;
use evenwall_records::separated::Separated;

use crate::app::App;
use crate::details::{self, FORM_ORDER};
use crate::numbers::Unit;

/// What a column can hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Target {
    /// A detail of the piece.
    Detail(DetailField),
    /// The stage it is in, by its name or key.
    Stage,
    /// Since when it is in that stage.
    Since,
    /// How it dries.
    Method,
    /// When it was begun.
    Begun,
    /// How it ended: finished, lost, given away.
    End,
    /// When it ended.
    Ended,
    /// A weight.
    Weight,
    /// What stood on the scale with it.
    Tare,
    /// When it was weighed.
    Weighed,
    /// The weight on a day that is the name of the column.
    WeightOn(NaiveDate),
    /// A note for the diary.
    Note,
}

const OTHERS: [Target; 10] = [
    Target::Stage,
    Target::Since,
    Target::Method,
    Target::Begun,
    Target::End,
    Target::Ended,
    Target::Weight,
    Target::Tare,
    Target::Weighed,
    Target::Note,
];

/// Names that spreadsheets give to columns, lower case, letters and figures only.
const NAMES: &[(&str, Target)] = &[
    ("no", Target::Detail(DetailField::Mark)),
    ("nr", Target::Detail(DetailField::Mark)),
    ("number", Target::Detail(DetailField::Mark)),
    ("id", Target::Detail(DetailField::Mark)),
    ("name", Target::Detail(DetailField::Mark)),
    ("label", Target::Detail(DetailField::Mark)),
    ("species", Target::Detail(DetailField::Wood)),
    ("timber", Target::Detail(DetailField::Wood)),
    ("woodname", Target::Detail(DetailField::Wood)),
    ("shape", Target::Detail(DetailField::Form)),
    ("type", Target::Detail(DetailField::Form)),
    ("cut", Target::Detail(DetailField::Felled)),
    ("cutdown", Target::Detail(DetailField::Felled)),
    ("origin", Target::Detail(DetailField::Source)),
    ("from", Target::Detail(DetailField::Source)),
    ("tree", Target::Detail(DetailField::Log)),
    ("dia", Target::Detail(DetailField::Diameter)),
    ("diam", Target::Detail(DetailField::Diameter)),
    ("width", Target::Detail(DetailField::Diameter)),
    ("h", Target::Detail(DetailField::Height)),
    ("d", Target::Detail(DetailField::Diameter)),
    ("opening", Target::Detail(DetailField::Mouth)),
    ("wall", Target::Detail(DetailField::WallWanted)),
    ("thickness", Target::Detail(DetailField::WallWanted)),
    ("wallthickness", Target::Detail(DetailField::WallWanted)),
    ("tenon", Target::Detail(DetailField::SpigotDiameter)),
    ("spigot", Target::Detail(DetailField::SpigotDiameter)),
    ("location", Target::Detail(DetailField::Place)),
    ("where", Target::Detail(DetailField::Place)),
    ("shelf", Target::Detail(DetailField::Place)),
    ("remarks", Target::Detail(DetailField::Notes)),
    ("comment", Target::Detail(DetailField::Notes)),
    ("comments", Target::Detail(DetailField::Notes)),
    ("note", Target::Note),
    ("status", Target::Stage),
    ("stage", Target::Stage),
    ("stagesince", Target::Since),
    ("since", Target::Since),
    ("method", Target::Method),
    ("drying", Target::Method),
    ("started", Target::Begun),
    ("begun", Target::Begun),
    ("turned", Target::Begun),
    ("roughed", Target::Begun),
    ("createdat", Target::Begun),
    ("end", Target::End),
    ("result", Target::End),
    ("endedat", Target::Ended),
    ("finishedon", Target::Ended),
    ("weight", Target::Weight),
    ("mass", Target::Weight),
    ("net", Target::Weight),
    ("scale", Target::Weight),
    ("tare", Target::Tare),
    ("weighed", Target::Weighed),
    ("weighedon", Target::Weighed),
    ("date", Target::Weighed),
    ("day", Target::Weighed),
    ("at", Target::Weighed),
];

impl Target {
    /// Stable key for the screens.
    #[must_use]
    pub fn key(self) -> String {
        match self {
            Self::Detail(field) => field.key().to_owned(),
            Self::Stage => "stage".into(),
            Self::Since => "since".into(),
            Self::Method => "method".into(),
            Self::Begun => "begun".into(),
            Self::End => "end".into(),
            Self::Ended => "ended".into(),
            Self::Weight => "weight".into(),
            Self::Tare => "tare".into(),
            Self::Weighed => "weighed".into(),
            Self::WeightOn(day) => format!("weight-{day}"),
            Self::Note => "note".into(),
        }
    }

    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        if let Some(day) = key.strip_prefix("weight-") {
            return day.parse().ok().map(Self::WeightOn);
        }
        OTHERS
            .into_iter()
            .find(|t| t.key() == key)
            .or_else(|| DetailField::from_key(key).map(Self::Detail))
    }

    /// All that is offered, in the order of a form.
    pub(super) fn offered() -> Vec<Self> {
        let details = FORM_ORDER.iter().map(|f| Self::Detail(*f));
        details.chain(OTHERS).collect()
    }

    /// True where several columns can hold it.
    pub(super) const fn may_repeat(self) -> bool {
        matches!(self, Self::Note | Self::WeightOn(_))
    }

    /// True where it is a length or a weight, so that the unit in the column's name counts.
    pub(super) fn is_measured(self) -> bool {
        match self {
            Self::Detail(field) => details::quantity(field).is_some(),
            Self::Weight | Self::Tare | Self::WeightOn(_) => true,
            _ => false,
        }
    }
}

/// A name as it is compared: lower case, letters and figures only.
fn bare(name: &str) -> String {
    name.chars()
        .filter(|c| c.is_alphanumeric())
        .flat_map(char::to_lowercase)
        .collect()
}

/// A column's name without its unit, and the unit: "Wall (mm)", "wall_mm", "Weight g", "net_g".
pub(super) fn name_and_unit(name: &str) -> (String, Option<Unit>) {
    let parts: Vec<&str> = name
        .split(|c: char| c.is_whitespace() || matches!(c, '_' | '(' | ')' | '[' | ']' | '/' | ','))
        .filter(|p| !p.is_empty())
        .collect();
    if let [rest @ .., last] = parts.as_slice()
        && !rest.is_empty()
        && let Some(unit) = Unit::from_typed(last)
        && matches!(
            unit,
            Unit::Millimetre
                | Unit::Centimetre
                | Unit::Inch
                | Unit::Gram
                | Unit::Kilogram
                | Unit::Ounce
                | Unit::Pound
        )
    {
        return (rest.join(" "), Some(unit));
    }
    (name.to_owned(), None)
}

impl App {
    /// What the columns hold by their names; each thing at most once.
    pub(super) fn import_suggestions(&self, table: &Separated) -> Vec<Option<Target>> {
        let mut taken: Vec<Target> = Vec::new();
        let mut targets: Vec<Option<Target>> = Vec::with_capacity(table.columns.len());
        for name in &table.columns {
            let found = self
                .import_suggestion(name)
                .filter(|t| t.may_repeat() || !taken.contains(t));
            taken.extend(found);
            targets.push(found);
        }
        // A day without any weight says when the piece was begun.
        let has = |t: &Target| taken.contains(t);
        if has(&Target::Weighed) && !has(&Target::Weight) && !has(&Target::Begun) {
            for target in &mut targets {
                if *target == Some(Target::Weighed) {
                    *target = Some(Target::Begun);
                }
            }
        }
        targets
    }

    fn import_suggestion(&self, column: &str) -> Option<Target> {
        if column.trim().is_empty() {
            return None;
        }
        let all = bare(column);
        let (name, _) = name_and_unit(column);
        let name = bare(&name);
        let is = |key: &str| {
            let key = bare(key);
            key == all || key == name
        };
        let by_key = FORM_ORDER.iter().find(|f| {
            let stem = f.key().trim_end_matches("_mm");
            is(f.key()) || is(stem) || is(&details::label(self, **f))
        });
        if let Some(field) = by_key {
            return Some(Target::Detail(*field));
        }
        if let Some((_, target)) = NAMES
            .iter()
            .find(|(known, _)| *known == name || *known == all)
        {
            return Some(*target);
        }
        let words = OTHERS.iter().find(|t| is(&self.import_target_words(**t)));
        words
            .copied()
            .or_else(|| self.import_day(column).map(Target::WeightOn))
    }

    /// The day that a column's name is: a whole day, never a month or a plain number.
    fn import_day(&self, column: &str) -> Option<NaiveDate> {
        if column.chars().filter(char::is_ascii_digit).count() < 4 {
            return None;
        }
        // Not later than the last day of the calendar: what lies ahead is found when the rows are read.
        match details::Day::read(column, NaiveDate::MAX, self.words()) {
            Ok(details::Day::Day(day)) => Some(day),
            _ => None,
        }
    }

    /// What a column can hold, in words.
    pub(super) fn import_target_words(&self, target: Target) -> String {
        let words = self.words();
        match target {
            Target::Detail(field) => details::label(self, field),
            Target::WeightOn(day) => {
                let day = crate::words::dates::Dates::new(words, day).full(day);
                words.with("records-import-to-weight-on", &[("day", day.into())])
            }
            other => words.text(&format!("records-import-to-{}", other.key())),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_in_names_are_found_and_other_words_are_not() {
        let unit = |name: &str| name_and_unit(name);
        assert_eq!(unit("Wall (mm)"), ("Wall".into(), Some(Unit::Millimetre)));
        assert_eq!(unit("net_g"), ("net".into(), Some(Unit::Gram)));
        assert_eq!(
            unit("Weight in oz"),
            ("Weight in".into(), Some(Unit::Ounce))
        );
        assert_eq!(unit("Height, in"), ("Height".into(), Some(Unit::Inch)));
        assert_eq!(unit("g"), ("g".into(), None));
        assert_eq!(unit("Put in the bag"), ("Put in the bag".into(), None));
    }

    #[test]
    fn every_key_leads_back() {
        for target in Target::offered() {
            assert_eq!(Target::from_key(&target.key()), Some(target));
        }
        let day = NaiveDate::from_ymd_opt(2026, 3, 14).map(Target::WeightOn);
        assert_eq!(day.and_then(|d| Target::from_key(&d.key())), day);
        assert_eq!(Target::from_key("-"), None);
    }
}
