//! Details view: all details in groups, and the sheet in which one is changed.

use evenwall_piece::detail::{DetailField, FieldKind};
use evenwall_piece::mark::{MarkProblem, upside_down};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_wood::woods_search::search;

use crate::app::App;
use crate::details::{FieldView, choices, field_view, label, unit, ways_to_read};
use crate::piece::view::HeadView;

/// How many woods are offered while one is looked for.
const MOST_WOODS: usize = 8;

const GROUPS: [(&str, &[DetailField]); 5] = [
    (
        "details-group-piece",
        &[
            DetailField::Mark,
            DetailField::Form,
            DetailField::Place,
            DetailField::Notes,
        ],
    ),
    (
        "details-group-wood",
        &[
            DetailField::Wood,
            DetailField::Grain,
            DetailField::Pith,
            DetailField::PithDistance,
            DetailField::Felled,
            DetailField::Source,
            DetailField::Log,
            DetailField::LogDiameter,
        ],
    ),
    (
        "details-group-size",
        &[
            DetailField::Diameter,
            DetailField::Height,
            DetailField::Mouth,
            DetailField::Outline,
            DetailField::WallWanted,
            DetailField::WallFinish,
            DetailField::FloorWanted,
        ],
    ),
    (
        "details-group-lathe",
        &[
            DetailField::SpigotDiameter,
            DetailField::SpigotLength,
            DetailField::Jaws,
            DetailField::DepthDrilled,
            DetailField::BarDiameter,
            DetailField::BarReach,
        ],
    ),
    ("details-group-finished", &[DetailField::FinishedSize]),
];

/// A group of details.
#[derive(Debug, Clone, PartialEq)]
pub struct DetailGroup {
    /// Its name.
    pub title: String,
    /// Its fields.
    pub fields: Vec<FieldView>,
}

/// A value that can be chosen with one touch.
#[derive(Debug, Clone, PartialEq)]
pub struct OfferView {
    /// What choosing it puts into the field.
    pub value: String,
    /// Its words.
    pub text: String,
    /// A line below it.
    pub note: String,
    /// It is what the field holds.
    pub selected: bool,
}

/// The sheet in which one detail is changed.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldSheetView {
    /// `text`, `lines`, `choice`, `length` or `wood`.
    pub kind: &'static str,
    /// The field's label.
    pub title: String,
    /// A line on what is meant, or what to mind about what was typed.
    pub about: String,
    /// What was typed.
    pub typed: String,
    /// The unit of a length.
    pub unit: String,
    /// An example.
    pub hint: String,
    /// What is wrong with it.
    pub error: String,
    /// Values to choose.
    pub offers: Vec<OfferView>,
    /// The word for saving.
    pub save: String,
    /// The word for clearing; empty where there is nothing to clear.
    pub clear: String,
}

/// The Details page.
#[derive(Debug, Clone, PartialEq)]
pub struct DetailsView {
    /// The head.
    pub head: HeadView,
    /// That nothing has to be filled in.
    pub intro: String,
    /// The groups.
    pub groups: Vec<DetailGroup>,
    /// The sheet.
    pub sheet: Option<FieldSheetView>,
    /// The word for closing.
    pub close: String,
}

impl App {
    /// The Details page of the piece on top; `None` where it is gone.
    #[must_use]
    pub fn details_view(&self, _now: Moment) -> Option<DetailsView> {
        let piece = self.piece_on_page()?;
        let words = self.words();
        Some(DetailsView {
            head: self.inner_head(piece, "piece-way-details"),
            intro: words.text("details-intro"),
            groups: GROUPS
                .iter()
                .map(|(title, fields)| DetailGroup {
                    title: words.text(title),
                    fields: fields.iter().map(|f| field_view(self, piece, *f)).collect(),
                })
                .collect(),
            sheet: self.field_sheet(piece),
            close: words.text("action-close"),
        })
    }

    fn field_sheet(&self, piece: &Piece) -> Option<FieldSheetView> {
        let state = &self.states.piece.details;
        let field = state.field?;
        let words = self.words();
        let kind = match (field, field.kind()) {
            (DetailField::Wood, _) => "wood",
            (DetailField::Notes, _) => "lines",
            (_, FieldKind::Choice) => "choice",
            (_, FieldKind::Length) => "length",
            (_, FieldKind::Text) => "text",
        };
        let about_id = format!("details-about-{}", field.key().replace('_', "-"));
        let offer = |value: String, text: String, note: String| OfferView {
            selected: value == state.typed,
            value,
            text,
            note,
        };
        let offers = match kind {
            "choice" => choices(self, field)
                .into_iter()
                .map(|(key, text)| offer(key.to_owned(), text, String::new()))
                .collect(),
            "length" => ways_to_read(self, field, &state.typed)
                .into_iter()
                .map(|text| offer(text.clone(), text, String::new()))
                .collect(),
            "wood" => self.woods_to_choose(&state.typed),
            _ => Vec::new(),
        };
        Some(FieldSheetView {
            kind,
            title: label(self, field),
            about: if let Some(warning) = self.mark_warning(field, &state.typed) {
                warning
            } else if words.has(&about_id) {
                words.text(&about_id)
            } else {
                field_view(self, piece, field).note
            },
            typed: state.typed.clone(),
            unit: unit(self, field),
            hint: match field {
                DetailField::Felled => words.text("details-hint-felled"),
                DetailField::Wood => words.text("details-hint-wood"),
                _ => String::new(),
            },
            error: state.error.clone().unwrap_or_default(),
            offers,
            save: words.text("action-save"),
            // A piece keeps a mark: it is written on the wood.
            clear: if field != DetailField::Mark && piece.details.get(field).is_some() {
                words.text("action-clear")
            } else {
                String::new()
            },
        })
    }

    /// That a mark reads upside down as another; `None` for other fields. It may be kept all the same.
    fn mark_warning(&self, field: DetailField, typed: &str) -> Option<String> {
        let reads_as = upside_down(typed).filter(|_| field == DetailField::Mark)?;
        Some(self.mark_problem_text(typed, &MarkProblem::UpsideDown { reads_as }))
    }

    /// The woods that answer to what was typed, own ones first.
    pub(crate) fn woods_to_choose(&self, typed: &str) -> Vec<OfferView> {
        let lower = typed.trim().to_lowercase();
        let selected = |name: &str| name.to_lowercase() == lower;
        let own = self
            .shop()
            .woods
            .iter()
            .filter(|w| lower.is_empty() || w.name.to_lowercase().contains(&lower))
            .map(|w| OfferView {
                value: w.name.clone(),
                text: w.name.clone(),
                note: self.words().text("details-own-wood"),
                selected: selected(&w.name),
            });
        let table = search(typed, &[]).into_iter().map(|w| {
            let name = self.wood_name(&w.key);
            OfferView {
                value: name.clone(),
                selected: selected(&name),
                text: name,
                note: w.botanical.clone(),
            }
        });
        own.chain(table).take(MOST_WOODS).collect()
    }
}
