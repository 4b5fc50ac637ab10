//! Question: a sheet over the page that asks once and carries out what was chosen.

use crate::action::Action;

/// How a choice looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChoiceStyle {
    /// The obvious one.
    Primary,
    /// Another one.
    Plain,
    /// One that ends or deletes.
    Danger,
}

/// One choice of a question.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Its text.
    pub label: String,
    /// How it looks.
    pub style: ChoiceStyle,
    /// What it does; `None` only closes the question.
    pub action: Option<Action>,
}

/// A question, or a piece of information with one button.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// Its title.
    pub title: String,
    /// Its text; may hold several lines.
    pub text: String,
    /// Its choices from top to bottom.
    pub choices: Vec<Choice>,
    /// True where it is a caution, shown with the triangle.
    pub caution: bool,
}
