//! View: what the editor of a stage's checklist shows.

use evenwall_piece::checklist::LineWhen;
use evenwall_piece::stage::Stage;

use crate::app::App;
use crate::piece::stages_view::OptionView;

/// A line in the editor.
#[derive(Debug, Clone, PartialEq)]
pub struct EditorLineView {
    /// Stable id.
    pub id: String,
    /// Its words.
    pub text: String,
    /// "Your own line", "End grain only · hidden"...
    pub note: String,
    /// Hidden for pieces to come.
    pub hidden: bool,
    /// It can be moved up.
    pub up: bool,
    /// It can be moved down.
    pub down: bool,
}

/// The sheet in which a line is worded.
#[derive(Debug, Clone, PartialEq)]
pub struct LineSheetView {
    /// Its title.
    pub title: String,
    /// The line's id; empty for a new one.
    pub id: String,
    /// The line.
    pub text: String,
    /// Its why.
    pub why: String,
    /// What is wrong with it.
    pub error: String,
    /// It is hidden.
    pub hidden: bool,
    /// The word for hiding or showing; empty for a new line.
    pub hide: String,
    /// The word for going back to the built-in line, or for taking an own line away; empty where nothing was changed.
    pub reset: String,
    /// True where resetting takes the line away.
    pub reset_removes: bool,
}

/// The editor.
#[derive(Debug, Clone, PartialEq)]
pub struct ChecklistEditorView {
    /// Its title.
    pub title: String,
    /// That older pieces keep what they recorded.
    pub intro: String,
    /// The nine stages to choose from.
    pub stages: Vec<OptionView>,
    /// The lines.
    pub lines: Vec<EditorLineView>,
    /// The word for a new line.
    pub add: String,
    /// The words for up and down, before the line's text.
    pub up: String,
    /// See `up`.
    pub down: String,
    /// The label of the line's field.
    pub text_label: String,
    /// The label of the why's field.
    pub why_label: String,
    /// The word for saving.
    pub save: String,
    /// The word for closing.
    pub close: String,
    /// The word for going back.
    pub back: String,
    /// The sheet.
    pub sheet: Option<LineSheetView>,
}

impl App {
    /// The editor of the checklists.
    #[must_use]
    pub fn checklist_editor_view(&self) -> ChecklistEditorView {
        let words = self.words();
        let state = &self.states.checklist;
        let lines = self.editor_lines();
        let last = lines.len().saturating_sub(1);
        let sheet = state.draft.as_ref().map(|draft| {
            let line = draft
                .id
                .as_ref()
                .and_then(|id| lines.iter().find(|l| l.id == *id));
            let hidden = line.is_some_and(|l| l.hidden);
            LineSheetView {
                title: words.text(if line.is_some() {
                    "checklist-line"
                } else {
                    "checklist-new"
                }),
                id: draft.id.clone().unwrap_or_default(),
                text: draft.text.clone(),
                why: draft.why.clone(),
                error: draft.error.clone().unwrap_or_default(),
                hidden,
                hide: match (line.is_some(), hidden) {
                    (false, _) => String::new(),
                    (true, true) => words.text("checklist-show"),
                    (true, false) => words.text("checklist-hide"),
                },
                reset: match line {
                    Some(l) if !l.builtin => words.text("checklist-remove"),
                    Some(l) if l.changed => words.text("checklist-reset"),
                    _ => String::new(),
                },
                reset_removes: line.is_some_and(|l| !l.builtin),
            }
        });
        ChecklistEditorView {
            title: words.text("checklists-title"),
            intro: words.text("checklist-intro"),
            stages: Stage::ALL
                .iter()
                .map(|s| OptionView {
                    key: s.key(),
                    text: words.text(&format!("stage-{}", s.key())),
                    note: String::new(),
                    selected: *s == state.stage,
                })
                .collect(),
            lines: lines
                .iter()
                .enumerate()
                .map(|(place, line)| {
                    let mut notes = Vec::new();
                    if !line.builtin {
                        notes.push(words.text("checklist-own"));
                    } else if line.changed {
                        notes.push(words.text("checklist-changed"));
                    }
                    if line.when != LineWhen::Always {
                        notes.push(words.text(&format!("line-when-{}", line.when.key())));
                    }
                    if line.standing {
                        notes.push(words.text("checklist-standing"));
                    }
                    if line.hidden {
                        notes.push(words.text("checklist-hidden"));
                    }
                    EditorLineView {
                        id: line.id.clone(),
                        text: self.line_words(&line.text),
                        note: notes.join(", "),
                        hidden: line.hidden,
                        up: place > 0,
                        down: place < last,
                    }
                })
                .collect(),
            add: words.text("checklist-add"),
            up: words.text("checklist-up"),
            down: words.text("checklist-down"),
            text_label: words.text("checklist-text-label"),
            why_label: words.text("checklist-why-label"),
            save: words.text("action-save"),
            close: words.text("action-close"),
            back: words.text("action-back"),
            sheet,
        }
    }
}
