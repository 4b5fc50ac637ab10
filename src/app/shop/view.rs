//! View: what a page of Shop shows: cards of rows, each row a sentence or something to touch, and a form over them.

use super::air_curve::AirChartView;
use crate::action::Action;

/// How a row looks and what it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowKind {
    /// Opens a page or a form.
    Open,
    /// A value that can be changed.
    Value,
    /// One of several of which one holds.
    Radio,
    /// One of several that may all hold.
    Check,
    /// On or off.
    Toggle,
    /// Adds something.
    Add,
    /// Something recorded, with a button at its end that takes it back.
    Entry,
    /// A label and its value, only to read.
    Plain,
    /// A paragraph.
    Text,
    /// A caution, with the triangle.
    Caution,
}

impl RowKind {
    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Value => "value",
            Self::Radio => "radio",
            Self::Check => "check",
            Self::Toggle => "toggle",
            Self::Add => "add",
            Self::Entry => "entry",
            Self::Plain => "plain",
            Self::Text => "text",
            Self::Caution => "caution",
        }
    }
}

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub struct RowView {
    /// Names the row on its page.
    pub id: String,
    /// What it looks like.
    pub kind: RowKind,
    /// Its title, label or paragraph.
    pub title: String,
    /// Smaller, below it.
    pub note: String,
    /// The present value, in words.
    pub value: String,
    /// The unit of the value.
    pub unit: String,
    /// The icon before it; empty for none.
    pub icon: &'static str,
    /// Chosen, ticked or on.
    pub selected: bool,
    /// What the button at the end of an entry does, in words; "on" or "off" of a switch.
    pub button: String,
    /// What a touch does; nothing where the row is only read.
    pub touch: Option<Action>,
}

impl RowView {
    fn new(kind: RowKind, id: impl Into<String>, title: String) -> Self {
        Self {
            id: id.into(),
            kind,
            title,
            note: String::new(),
            value: String::new(),
            unit: String::new(),
            icon: "",
            selected: false,
            button: String::new(),
            touch: None,
        }
    }

    /// A row that does something when it is touched.
    #[must_use]
    pub fn touching(
        kind: RowKind,
        id: impl Into<String>,
        title: String,
        touch: impl Into<Action>,
    ) -> Self {
        Self {
            touch: Some(touch.into()),
            ..Self::new(kind, id, title)
        }
    }

    /// A label and its value.
    #[must_use]
    pub fn plain(id: impl Into<String>, label: String, value: String) -> Self {
        Self {
            value,
            ..Self::new(RowKind::Plain, id, label)
        }
    }

    /// A paragraph.
    #[must_use]
    pub fn text(id: impl Into<String>, text: String) -> Self {
        Self::new(RowKind::Text, id, text)
    }

    /// A caution.
    #[must_use]
    pub fn caution(id: impl Into<String>, text: String) -> Self {
        Self::new(RowKind::Caution, id, text)
    }

    /// The same with a note below.
    #[must_use]
    pub fn note(self, note: String) -> Self {
        Self { note, ..self }
    }

    /// The same with a value.
    #[must_use]
    pub fn value(self, value: String) -> Self {
        Self { value, ..self }
    }

    /// The same with an icon.
    #[must_use]
    pub fn icon(self, icon: &'static str) -> Self {
        Self { icon, ..self }
    }

    /// The same chosen or not.
    #[must_use]
    pub fn selected(self, selected: bool) -> Self {
        Self { selected, ..self }
    }

    /// The same with words for the button at its end.
    #[must_use]
    pub fn button(self, button: String) -> Self {
        Self { button, ..self }
    }
}

/// Rows that belong together, in one card.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SectionView {
    /// Stable key; `toolkit` for the card of the toolkit.
    pub key: &'static str,
    /// Above the card; empty for none.
    pub title: String,
    /// Below the title; empty for none.
    pub note: String,
    /// A small chart above the rows.
    pub chart: Option<AirChartView>,
    /// The rows.
    pub rows: Vec<RowView>,
}

/// A choice of what the small charts show.
#[derive(Debug, Clone, PartialEq)]
pub struct CurveChoiceView {
    /// Stable key.
    pub key: String,
    /// Its word.
    pub text: String,
    /// Chosen.
    pub chosen: bool,
    /// What a touch does.
    pub touch: Action,
}

/// What a field of a form is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FieldKind {
    /// A line of text.
    Text,
    /// Several lines of text.
    Lines,
    /// A number as text.
    Number,
    /// One of a few.
    Choice,
    /// On or off.
    Toggle,
}

impl FieldKind {
    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Text => "text",
            Self::Lines => "lines",
            Self::Number => "number",
            Self::Choice => "choice",
            Self::Toggle => "toggle",
        }
    }
}

/// A choice of a field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceView {
    /// Stable key.
    pub key: String,
    /// Its words.
    pub text: String,
}

/// A field of a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FieldView {
    /// Stable key in its form.
    pub key: &'static str,
    /// What it is.
    pub kind: FieldKind,
    /// Its label.
    pub label: String,
    /// What stands in it; the key of a choice; `true` or `false` of a switch.
    pub text: String,
    /// Shown while it is empty.
    pub placeholder: String,
    /// What is wrong with it, in place of the note.
    pub error: String,
    /// Below it.
    pub note: String,
    /// The unit in which a bare number is read.
    pub unit: String,
    /// The choices.
    pub choices: Vec<ChoiceView>,
    /// Where a number can be read in two ways: what to put there instead.
    pub ways: Vec<String>,
}

/// A form over the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FormView {
    /// Its title.
    pub title: String,
    /// What the form is about; may be empty.
    pub note: String,
    /// What follows from what was typed so far; may be empty.
    pub follows: String,
    /// Its fields.
    pub fields: Vec<FieldView>,
    /// The word that saves it.
    pub save: String,
    /// The word that takes the thing off its list; empty where there is none yet.
    pub remove: String,
}

/// A page of Shop, or Shop itself.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ShopView {
    /// The key of the page; empty for Shop itself.
    pub key: &'static str,
    /// Its title.
    pub title: String,
    /// Below the title.
    pub subtitle: String,
    /// The first paragraph; empty for none.
    pub intro: String,
    /// What the small charts can show; empty where there is no chart.
    pub curves: Vec<CurveChoiceView>,
    /// The cards.
    pub sections: Vec<SectionView>,
    /// The one next action, at the bottom; `None` for none.
    pub primary: Option<RowView>,
    /// The form over it.
    pub form: Option<FormView>,
    /// The word for going back.
    pub back: String,
    /// The word for closing a form.
    pub close: String,
    /// The word for emptying a field.
    pub clear: String,
}

impl ShopView {
    /// What a touch of the row with this id does.
    #[must_use]
    pub fn touch(&self, id: &str) -> Option<Action> {
        self.sections
            .iter()
            .flat_map(|s| &s.rows)
            .chain(&self.primary)
            .find(|row| row.id == id)
            .and_then(|row| row.touch.clone())
    }

    /// What a touch of the curve with this key does.
    #[must_use]
    pub fn touch_curve(&self, key: &str) -> Option<Action> {
        let chosen = self.curves.iter().find(|c| c.key == key);
        chosen.map(|c| c.touch.clone())
    }
}
