//! Undo: what was done in this session, newest last, each step as the lines it wrote.

use evenwall_piece::ids::{LineId, Scope};

/// One thing that was done: all the lines it wrote are taken back together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// The lines it wrote and where.
    pub lines: Vec<(Scope, LineId)>,
    /// What was done, as the undo bar says it.
    pub said: String,
}

/// What can be taken back, and what can be done again.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct UndoStack {
    done: Vec<Step>,
    taken_back: Vec<Step>,
    shown: bool,
}

impl UndoStack {
    /// Remembers a step; what was taken back before can no longer be done again.
    pub fn push(&mut self, step: Step) {
        self.taken_back.clear();
        self.done.push(step);
        self.shown = true;
    }

    /// The step that undo would take back.
    #[must_use]
    pub fn last_done(&self) -> Option<&Step> {
        self.done.last()
    }

    /// The step that redo would do again.
    #[must_use]
    pub fn last_taken_back(&self) -> Option<&Step> {
        self.taken_back.last()
    }

    /// How many steps could be taken back one after the other.
    #[must_use]
    pub const fn depth(&self) -> usize {
        self.done.len()
    }

    /// Moves the last step over: `retraction` are the lines that took it back, `left` what could not be taken back.
    pub fn took_back(&mut self, retraction: Step, left: Step) {
        self.done.pop();
        if !left.lines.is_empty() {
            self.done.push(left);
        }
        if !retraction.lines.is_empty() {
            self.taken_back.push(retraction);
        }
        self.shown = true;
    }

    /// Moves a step back: `redo` are the lines that did it again, `left` what could not be done again.
    pub fn did_again(&mut self, redo: Step, left: Step) {
        self.taken_back.pop();
        if !left.lines.is_empty() {
            self.taken_back.push(left);
        }
        if !redo.lines.is_empty() {
            self.done.push(redo);
        }
        self.shown = true;
    }

    /// Whether the bar is shown.
    #[must_use]
    pub const fn shown(&self) -> bool {
        self.shown
    }

    /// Puts the bar away; the steps stay.
    pub fn hide(&mut self) {
        self.shown = false;
    }
}
