//! Details: what is known about a piece, as the forms label it, show it and read it.
//!
//! Two forms use this: a new piece, and the details of one that is there. A field's text is always one that the same
//! field would read back.

mod felled;
mod reading;

use evenwall_piece::detail::{DetailField, DetailValue, FieldKind};
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::{Form, Grain, Outline, Pith};
use evenwall_piece::wanted;

use crate::app::App;
use crate::numbers::Quantity;

pub(crate) use felled::FIRST_YEAR;
pub use felled::{Day, DayError};
pub use reading::{read_day, understand, ways_to_read};

/// The longest text of one line, in characters.
pub const LONGEST_LINE: usize = 200;
/// The longest note, in characters.
pub const LONGEST_NOTE: usize = 20_000;

/// The details in the order of a form; the mark, the wood and the form come first, as they say most.
pub const FORM_ORDER: &[DetailField] = &[
    DetailField::Mark,
    DetailField::Wood,
    DetailField::Form,
    DetailField::Grain,
    DetailField::Pith,
    DetailField::PithDistance,
    DetailField::Felled,
    DetailField::Source,
    DetailField::Log,
    DetailField::LogDiameter,
    DetailField::Diameter,
    DetailField::Height,
    DetailField::SpigotLength,
    DetailField::SpigotDiameter,
    DetailField::Mouth,
    DetailField::WallWanted,
    DetailField::WallFinish,
    DetailField::FloorWanted,
    DetailField::DepthDrilled,
    DetailField::BarDiameter,
    DetailField::BarReach,
    DetailField::Outline,
    DetailField::Jaws,
    DetailField::Place,
    DetailField::Notes,
    DetailField::FinishedSize,
];

/// A detail as a form shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FieldView {
    /// Which.
    pub field: DetailField,
    /// Its label.
    pub label: String,
    /// Its value without the unit, as it can be typed again; empty where none is known.
    pub value_text: String,
    /// The unit of lengths.
    pub unit: String,
    /// A line below it: what is taken where it is not said, the botanical name of a wood; often empty.
    pub note: String,
}

/// The label of a detail: "Wall wanted now".
#[must_use]
pub fn label(app: &App, field: DetailField) -> String {
    let id = field.key().replace('_', "-");
    app.words().text(&format!("detail-{id}"))
}

/// What a length is entered as; `None` for texts and choices.
#[must_use]
pub const fn quantity(field: DetailField) -> Option<Quantity> {
    Some(match field {
        DetailField::PithDistance => Quantity::PithDistance,
        DetailField::LogDiameter => Quantity::LogDiameter,
        DetailField::Diameter => Quantity::OutsideDiameter,
        DetailField::Height => Quantity::Height,
        DetailField::SpigotLength => Quantity::SpigotLength,
        DetailField::SpigotDiameter => Quantity::SpigotDiameter,
        DetailField::Mouth => Quantity::Mouth,
        DetailField::WallWanted => Quantity::WallWanted,
        DetailField::WallFinish => Quantity::WallFinish,
        DetailField::FloorWanted => Quantity::FloorWanted,
        DetailField::DepthDrilled => Quantity::DepthDrilled,
        DetailField::BarDiameter => Quantity::BarDiameter,
        DetailField::BarReach => Quantity::BarReach,
        _ => return None,
    })
}

/// The values of a choice in the order in which they are offered, key and words; empty for texts and lengths.
#[must_use]
pub fn choices(app: &App, field: DetailField) -> Vec<(&'static str, String)> {
    let keys: Vec<&'static str> = match field {
        DetailField::Form => Form::ALL.iter().map(|v| v.key()).collect(),
        DetailField::Grain => Grain::ALL.iter().map(|v| v.key()).collect(),
        DetailField::Pith => Pith::ALL.iter().map(|v| v.key()).collect(),
        DetailField::Outline => Outline::ALL.iter().map(|v| v.key()).collect(),
        _ => Vec::new(),
    };
    keys.into_iter()
        .map(|key| (key, app.words().text(&format!("{}-{key}", field.key()))))
        .collect()
}

/// The unit in which a detail is typed and shown; empty for texts and choices.
#[must_use]
pub fn unit(app: &App, field: DetailField) -> String {
    quantity(field)
        .map(|q| app.numbers().quantity(q, q.range().example).unit)
        .unwrap_or_default()
}

/// A value as words, without its unit: "9.5", "White ash", "14 March 2026", "In the bore".
#[must_use]
pub fn value_text(app: &App, field: DetailField, value: &DetailValue) -> String {
    match (value, quantity(field)) {
        (DetailValue::Length(m), Some(q)) if m.value.is_finite() => {
            app.numbers().quantity(q, m.value).number
        }
        (DetailValue::Length(_), _) => app.numbers().unknown().number,
        (DetailValue::Text(text), _) => match field {
            DetailField::Wood => app.wood_name(text),
            DetailField::Felled => {
                Day::from_stored(text).map_or_else(|| text.clone(), |day| day.text(app.words()))
            }
            _ if field.kind() == FieldKind::Choice => choices(app, field)
                .into_iter()
                .find(|(key, _)| key == text)
                .map_or_else(|| text.clone(), |(_, words)| words),
            _ => text.clone(),
        },
    }
}

/// A detail of a piece as a form shows it.
#[must_use]
pub fn field_view(app: &App, piece: &Piece, field: DetailField) -> FieldView {
    let value = piece.details.get(field);
    FieldView {
        field,
        label: label(app, field),
        value_text: value.map_or_else(String::new, |v| value_text(app, field, v)),
        unit: unit(app, field),
        note: note(app, piece, field),
    }
}

/// What is taken where a length is not said, or what a list knows of what was said.
fn note(app: &App, piece: &Piece, field: DetailField) -> String {
    if field == DetailField::Wood {
        let known = piece
            .details
            .text(field)
            .and_then(|stored| app.known_wood(stored));
        return known.map_or_else(String::new, |w| w.botanical().to_owned());
    }
    if piece.details.get(field).is_some() {
        return String::new();
    }
    let drawn = |mm: f64| (mm, "details-drawn-with");
    let usual = |mm: f64| (mm, "details-usual");
    let (mm, id) = match field {
        DetailField::Diameter => drawn(wanted::diameter(piece).mm),
        DetailField::Height => drawn(wanted::height(piece).mm),
        DetailField::WallWanted => usual(wanted::rough_wall(piece).mm),
        DetailField::WallFinish => usual(wanted::finish_wall(piece).mm),
        DetailField::FloorWanted => usual(wanted::floor(piece).mm),
        DetailField::SpigotLength => usual(8.0),
        _ => return String::new(),
    };
    let Some(quantity) = quantity(field) else {
        return String::new();
    };
    let shown = app.numbers().quantity(quantity, mm).text();
    app.words().with(id, &[("value", shown.into())])
}
