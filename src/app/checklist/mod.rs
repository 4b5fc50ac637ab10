//! Checklist: the editor of a stage's lines, for pieces to come. What older pieces recorded stays as it was.

pub mod view;

use evenwall_piece::checklist::{EditorLine, lines_of_stage, moved, own_line_id};
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{ChecklistChange, ShopFact};
use evenwall_piece::stage::Stage;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::route::Page;

/// The longest line, in characters: it has to fit a narrow screen.
pub const LONGEST_LINE: usize = 120;
/// The longest why, in characters.
pub const LONGEST_WHY: usize = 400;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum ChecklistAction {
    /// Chose the stage whose lines are shown.
    Stage(Stage),
    /// Touched a line.
    Open(String),
    /// Asked for a new line.
    New,
    /// Closed the sheet; nothing changes.
    Close,
    /// Typed the line.
    Text(String),
    /// Typed its why.
    Why(String),
    /// Saved the line that is open.
    Save,
    /// Moved a line up.
    Up(String),
    /// Moved a line down.
    Down(String),
    /// Hid a line or showed it again.
    Hide(String, bool),
    /// Went back to the built-in wording, place and visibility; an own line goes away.
    Reset(String),
    /// Keeps changes that are worked out already; for trying again.
    Keep(Vec<ChecklistChange>),
}

/// The line in the sheet.
#[derive(Debug, Default, Clone)]
pub(crate) struct Draft {
    /// Its id; `None` for a new one.
    pub(crate) id: Option<String>,
    pub(crate) text: String,
    pub(crate) why: String,
    pub(crate) error: Option<String>,
}

/// What the page remembers between two touches.
#[derive(Debug)]
pub struct ChecklistState {
    pub(crate) stage: Stage,
    pub(crate) draft: Option<Draft>,
}

impl Default for ChecklistState {
    fn default() -> Self {
        Self {
            stage: Stage::Shape,
            draft: None,
        }
    }
}

/// One line of plain text, cut from what was typed.
fn one_line(text: &str) -> String {
    text.split(|c: char| c.is_whitespace() || c.is_control())
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

impl App {
    pub(crate) fn enter_checklist(&mut self, page: Option<&Page>, _now: Moment) {
        if !matches!(page, Some(Page::ShopPage("checklists"))) {
            self.states.checklist = ChecklistState::default();
        }
        self.states.checklist.draft = None;
    }

    pub(crate) fn apply_checklist(
        &mut self,
        action: ChecklistAction,
        now: Moment,
    ) -> Result<(), AppError> {
        match action {
            ChecklistAction::Stage(stage) => {
                self.states.checklist = ChecklistState { stage, draft: None };
            }
            ChecklistAction::Open(id) => {
                let line = self.editor_lines().into_iter().find(|l| l.id == id);
                self.states.checklist.draft = line.map(|l| Draft {
                    text: self.line_words(&l.text),
                    why: l
                        .why
                        .as_ref()
                        .map_or_else(String::new, |w| self.line_words(w)),
                    id: Some(l.id),
                    error: None,
                });
            }
            ChecklistAction::New => self.states.checklist.draft = Some(Draft::default()),
            ChecklistAction::Close => self.states.checklist.draft = None,
            ChecklistAction::Text(text) => {
                if let Some(draft) = &mut self.states.checklist.draft {
                    draft.text = text;
                    draft.error = None;
                }
            }
            ChecklistAction::Why(text) => {
                if let Some(draft) = &mut self.states.checklist.draft {
                    draft.why = text;
                    draft.error = None;
                }
            }
            ChecklistAction::Save => return self.save_line(now),
            ChecklistAction::Up(id) => return self.move_line(&id, -1, now),
            ChecklistAction::Down(id) => return self.move_line(&id, 1, now),
            ChecklistAction::Hide(line, hidden) => {
                let id = if hidden {
                    "checklist-said-hidden"
                } else {
                    "checklist-said-shown"
                };
                let said = self.words().text(id);
                return self.keep_changes(
                    vec![ChecklistChange::Hidden { line, hidden }],
                    said,
                    now,
                );
            }
            ChecklistAction::Reset(line) => {
                let own = self
                    .editor_lines()
                    .iter()
                    .any(|l| l.id == line && !l.builtin);
                let id = if own {
                    "checklist-said-gone"
                } else {
                    "checklist-said-reset"
                };
                let said = self.words().text(id);
                return self.keep_changes(vec![ChecklistChange::Reset { line }], said, now);
            }
            ChecklistAction::Keep(changes) => {
                let said = self.words().text("checklist-said-changed");
                return self.keep_changes(changes, said, now);
            }
        }
        Ok(())
    }

    /// The lines of the stage on screen, hidden ones too.
    pub(crate) fn editor_lines(&self) -> Vec<EditorLine> {
        lines_of_stage(self.states.checklist.stage, self.shop(), true)
    }

    fn keep_changes(
        &mut self,
        changes: Vec<ChecklistChange>,
        said: String,
        now: Moment,
    ) -> Result<(), AppError> {
        if changes.is_empty() {
            return Ok(());
        }
        // The sheet may be closed before it is tried again.
        self.retry_with(Action::Checklist(ChecklistAction::Keep(changes.clone())));
        let facts = changes.into_iter().map(ShopFact::Checklist).collect();
        self.record_shop(now, facts, now)?;
        self.states.checklist.draft = None;
        self.say(said);
        Ok(())
    }

    fn move_line(&mut self, id: &str, by: i64, now: Moment) -> Result<(), AppError> {
        let lines = self.editor_lines();
        let Some(from) = lines.iter().position(|l| l.id == id) else {
            return Ok(());
        };
        let to = i64::try_from(from)
            .ok()
            .map(|f| f + by)
            .and_then(|t| usize::try_from(t).ok());
        let Some(to) = to.filter(|t| *t < lines.len()) else {
            return Ok(());
        };
        let said = self.words().text("checklist-said-moved");
        self.keep_changes(moved(&lines, id, to), said, now)
    }

    fn save_line(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(draft) = self.states.checklist.draft.clone() else {
            return Ok(());
        };
        let (text, why) = (one_line(&draft.text), one_line(&draft.why));
        let too_long = [(&text, LONGEST_LINE), (&why, LONGEST_WHY)]
            .into_iter()
            .find(|(t, most)| t.chars().count() > *most);
        let error = if text.is_empty() {
            Some(self.words().text("checklist-empty"))
        } else {
            too_long.map(|(t, most)| {
                self.words().with(
                    "checklist-too-long",
                    &[("count", t.chars().count().into()), ("most", most.into())],
                )
            })
        };
        if let (Some(error), Some(open)) = (error.clone(), &mut self.states.checklist.draft) {
            open.error = Some(error);
            return Ok(());
        }
        let stage = self.states.checklist.stage;
        let unchanged = draft.id.as_ref().is_some_and(|id| {
            self.editor_lines().iter().any(|l| {
                l.id == *id
                    && self.line_words(&l.text) == text
                    && l.why
                        .as_ref()
                        .map_or_else(String::new, |w| self.line_words(w))
                        == why
            })
        });
        if unchanged {
            self.states.checklist.draft = None;
            return Ok(());
        }
        let said = self.words().text(if draft.id.is_some() {
            "checklist-said-reworded"
        } else {
            "checklist-said-added"
        });
        let line = match draft.id {
            Some(id) => id,
            None => {
                let unique = self.new_slug(&text);
                own_line_id(stage, &unique)
            }
        };
        let change = ChecklistChange::Worded {
            line,
            stage,
            text,
            why,
        };
        self.keep_changes(vec![change], said, now)
    }
}
