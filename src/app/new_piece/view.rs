//! View: the form of a new piece as it is shown.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Method, Outline};
use evenwall_piece::wanted;

use super::draft::MOST_AT_ONCE;
use crate::app::App;
use crate::details;
use crate::drawing::{SectionDrawing, section_of};

/// A field to type in.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FieldBox {
    /// Stable key; comes back with what is typed.
    pub key: &'static str,
    /// Its label.
    pub label: String,
    /// What it holds.
    pub text: String,
    /// What it shows while it is empty.
    pub placeholder: String,
    /// What is wrong, in a sentence.
    pub error: String,
    /// A line below it.
    pub note: String,
    /// The unit behind it.
    pub unit: String,
    /// True where figures are typed.
    pub numeric: bool,
    /// Where a number can be read in two ways: texts to put there instead.
    pub ways: Vec<String>,
}

/// One of a few choices.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceView {
    /// Stable key.
    pub key: String,
    /// Its words.
    pub text: String,
    /// Chosen.
    pub chosen: bool,
}

/// An outline to pick, drawn in the sizes of the form.
#[derive(Debug, Clone, PartialEq)]
pub struct OutlineView {
    /// Stable key.
    pub key: &'static str,
    /// Its words.
    pub text: String,
    /// Chosen by the turner.
    pub chosen: bool,
    /// Taken where nothing is chosen.
    pub usual: bool,
    /// Its drawing.
    pub drawing: SectionDrawing,
}

/// A group of choices with its label.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ChoiceGroup {
    /// Its label.
    pub label: String,
    /// The choices.
    pub choices: Vec<ChoiceView>,
}

/// The form of a new piece.
#[derive(Debug, Clone, PartialEq)]
pub struct NewPieceView {
    /// Its title.
    pub title: String,
    /// "From the log of K07", or empty.
    pub subtitle: String,
    /// The word for going back.
    pub back: String,
    /// The word for wiping a field.
    pub clear: String,
    /// The mark.
    pub mark: FieldBox,
    /// Where it reads upside down as another; empty else. Only a warning.
    pub mark_warning: String,
    /// The wood.
    pub wood: FieldBox,
    /// Woods to pick; the last, with an empty key, is "don't know".
    pub woods: Vec<ChoiceView>,
    /// The forms.
    pub form: ChoiceGroup,
    /// How many: label, figure, the marks, and whether the steps go on.
    pub count_label: String,
    /// How many.
    pub count: String,
    /// The marks where there are several.
    pub count_note: String,
    /// One fewer can be had.
    pub can_less: bool,
    /// One more can be had.
    pub can_more: bool,
    /// The word that unfolds or folds the rest.
    pub more: String,
    /// What is in the rest.
    pub more_note: String,
    /// The rest is unfolded.
    pub more_open: bool,
    /// Heading of the stage it is in.
    pub now_title: String,
    /// The stages.
    pub stages: ChoiceGroup,
    /// How it dries, or will.
    pub methods: ChoiceGroup,
    /// Since when.
    pub since: FieldBox,
    /// Heading of wood and log.
    pub log_title: String,
    /// End or side grain.
    pub grain: ChoiceGroup,
    /// Where the pith lies.
    pub pith: ChoiceGroup,
    /// Felled, source, log.
    pub log_fields: Vec<FieldBox>,
    /// Heading of the sizes.
    pub size_title: String,
    /// Sizes that are often made.
    pub sizes: ChoiceGroup,
    /// Diameter, height, spigot, mouth.
    pub size_fields: Vec<FieldBox>,
    /// Label of the outlines.
    pub outline_label: String,
    /// The outlines.
    pub outlines: Vec<OutlineView>,
    /// Heading of the walls.
    pub wall_title: String,
    /// Wall now, wall at the finish, floor.
    pub wall_fields: Vec<FieldBox>,
    /// Heading of place and notes.
    pub place_title: String,
    /// Where it stands.
    pub place: FieldBox,
    /// Notes.
    pub notes: FieldBox,
    /// The word on the button that saves.
    pub save: String,
}

impl App {
    /// The form of a new piece.
    #[must_use]
    pub fn new_piece_view(&self, now: Moment) -> NewPieceView {
        let words = self.words();
        let draft = &self.states.new_piece.draft;
        let piece = self.draft_piece(now);
        let field = |f: DetailField| self.field_box(f, piece.as_ref(), now);
        let fields = |list: &[DetailField]| list.iter().map(|f| field(*f)).collect();
        let problem = self.draft_mark_problem();
        let (warning, error) = match problem {
            Some((text, true)) => (text, String::new()),
            Some((text, false)) => (String::new(), text),
            None => (String::new(), String::new()),
        };
        let marks = self.draft_marks();
        let suggested = draft.typed_mark().is_none();
        NewPieceView {
            title: words.text("new-piece-title"),
            subtitle: self.like_text(),
            back: words.text("action-back"),
            clear: words.text("action-clear"),
            mark: FieldBox {
                text: draft
                    .typed_mark()
                    .map_or_else(|| marks.first().cloned().unwrap_or_default(), str::to_owned),
                error,
                note: if suggested {
                    words.text("new-piece-mark-note")
                } else {
                    String::new()
                },
                ..self.bare_box(DetailField::Mark)
            },
            mark_warning: warning,
            wood: FieldBox {
                placeholder: words.text("new-piece-wood-hint"),
                ..field(DetailField::Wood)
            },
            woods: self.wood_choices(),
            form: self.group(DetailField::Form),
            count_label: words.text("new-piece-count"),
            count: draft.count.to_string(),
            count_note: if draft.count > 1 {
                marks.join(", ")
            } else {
                String::new()
            },
            can_less: draft.count > 1,
            can_more: draft.count < MOST_AT_ONCE,
            more: words.text(if draft.more {
                "new-piece-less"
            } else {
                "new-piece-more"
            }),
            more_note: words.text("new-piece-more-note"),
            more_open: draft.more,
            now_title: words.text("new-piece-now-title"),
            stages: self.stage_group(),
            methods: self.method_group(),
            since: self.since_box(now),
            log_title: words.text("new-piece-log-title"),
            grain: self.group(DetailField::Grain),
            pith: self.group(DetailField::Pith),
            log_fields: fields(&[DetailField::Felled, DetailField::Source, DetailField::Log]),
            size_title: words.text("new-piece-size-title"),
            sizes: self.size_group(),
            size_fields: fields(&[
                DetailField::Diameter,
                DetailField::Height,
                DetailField::SpigotLength,
                DetailField::Mouth,
            ]),
            outline_label: details::label(self, DetailField::Outline),
            outlines: piece.as_ref().map(|p| self.outlines(p)).unwrap_or_default(),
            wall_title: words.text("new-piece-wall-title"),
            wall_fields: fields(&[
                DetailField::WallWanted,
                DetailField::WallFinish,
                DetailField::FloorWanted,
            ]),
            place_title: words.text("new-piece-place-title"),
            place: field(DetailField::Place),
            notes: field(DetailField::Notes),
            save: match marks.as_slice() {
                [only] if !only.is_empty() => {
                    words.with("new-piece-save", &[("mark", only.into())])
                }
                [_] | [] => words.text("action-save"),
                several => words.with("new-piece-save-several", &[("n", several.len().into())]),
            },
        }
    }

    fn like_text(&self) -> String {
        let like = self.states.new_piece.draft.like.as_ref();
        like.and_then(|id| self.piece(id))
            .map(|p| {
                self.words()
                    .with("new-piece-like", &[("mark", p.mark().into())])
            })
            .unwrap_or_default()
    }

    fn group(&self, field: DetailField) -> ChoiceGroup {
        let draft = &self.states.new_piece.draft;
        let chosen = draft.text(field);
        ChoiceGroup {
            label: details::label(self, field),
            choices: details::choices(self, field)
                .into_iter()
                .map(|(key, text)| ChoiceView {
                    chosen: key == chosen,
                    key: key.to_owned(),
                    text,
                })
                .collect(),
        }
    }

    fn stage_group(&self) -> ChoiceGroup {
        let words = self.words();
        ChoiceGroup {
            label: words.text("new-piece-stage"),
            choices: Stage::ALL
                .iter()
                .map(|stage| ChoiceView {
                    key: stage.key().to_owned(),
                    text: words.text(&format!("stage-{}", stage.key())),
                    chosen: *stage == self.states.new_piece.draft.stage,
                })
                .collect(),
        }
    }

    fn method_group(&self) -> ChoiceGroup {
        let words = self.words();
        let draft = &self.states.new_piece.draft;
        ChoiceGroup {
            label: words.text("new-piece-method"),
            choices: Method::ALL
                .iter()
                .map(|method| ChoiceView {
                    key: method.key().to_owned(),
                    text: words.text(&format!("method-{}", method.key())),
                    chosen: *method == draft.method,
                })
                .collect(),
        }
    }

    fn size_group(&self) -> ChoiceGroup {
        let draft = &self.states.new_piece.draft;
        let words = self.words();
        let typed = (
            draft.text(DetailField::Diameter),
            draft.text(DetailField::Height),
        );
        ChoiceGroup {
            label: words.text("new-piece-sizes"),
            choices: self
                .usual_sizes()
                .into_iter()
                .enumerate()
                .map(|(place, (d, h))| ChoiceView {
                    key: place.to_string(),
                    chosen: typed == (d.as_str(), h.as_str()),
                    text: words.with(
                        "new-piece-size",
                        &[("diameter", d.into()), ("height", h.into())],
                    ),
                })
                .collect(),
        }
    }

    fn outlines(&self, piece: &Piece) -> Vec<OutlineView> {
        let chosen = piece.details.outline();
        let usual = wanted::outline(piece);
        Outline::ALL
            .iter()
            .map(|outline| {
                let mut drawn = piece.clone();
                let key = outline.key();
                let value = evenwall_piece::detail::DetailValue::Text(key.to_owned());
                drawn.details.set(DetailField::Outline, Some(value));
                OutlineView {
                    key,
                    text: self.words().text(&format!("outline-{key}")),
                    chosen: chosen == Some(*outline),
                    usual: chosen.is_none() && usual == *outline,
                    drawing: section_of(&drawn),
                }
            })
            .collect()
    }
}
