//! Form parts: what the form about a flaw is put together from, with final text.

use super::list::ClockSpot;
use crate::drawing::SectionDrawing;
use crate::measured::Field;

/// One choice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OptionView {
    /// Stable key.
    pub key: &'static str,
    /// Its words.
    pub text: String,
    /// A line below it; often empty.
    pub note: String,
    /// Chosen.
    pub selected: bool,
}

/// A station on the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct SpotView {
    /// What stands in its circle.
    pub number: String,
    /// "Station 3", for a screen reader.
    pub label: String,
    /// Where its tick meets the bore, mm of the view box.
    pub inner: (f64, f64),
    /// Where it meets the outside.
    pub outer: (f64, f64),
    /// Height of its circle beside the drawing, 0 to 1.
    pub slot: f64,
    /// It is the one chosen.
    pub picked: bool,
}

/// How far round.
#[derive(Debug, Clone, PartialEq)]
pub struct ClockView {
    /// Where it was touched.
    pub spots: Vec<ClockSpot>,
    /// The mouth as a part of the diameter.
    pub mouth: f64,
    /// "4 o'clock"; a dash while it is not said.
    pub value: String,
    /// What a screen reader calls the steps.
    pub what: String,
    /// What a screen reader says of the face.
    pub label: String,
    /// The word for the hour after.
    pub more: String,
    /// The word for the hour before.
    pub less: String,
    /// The word for clearing; empty while nothing is there.
    pub clear: String,
}

/// A field that is typed into.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TypedView {
    /// Its label.
    pub label: String,
    /// What is in it.
    pub text: String,
    /// Shown while it is empty.
    pub hint: String,
    /// Its unit.
    pub unit: String,
    /// What is wrong with it.
    pub error: String,
    /// Texts to put into it instead.
    pub ways: Vec<String>,
}

impl TypedView {
    pub(crate) fn of(field: &Field, label: String) -> Self {
        Self {
            label,
            text: field.text.clone(),
            error: field.error.clone(),
            ways: field.ways.clone(),
            ..Self::default()
        }
    }

    pub(crate) fn in_unit(self, unit: String) -> Self {
        Self { unit, ..self }
    }

    pub(crate) fn hinted(self, hint: String) -> Self {
        Self { hint, ..self }
    }
}

/// A form about a flaw. Lists and texts are empty where they are not asked for.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FormView {
    /// Heads the kinds.
    pub kind_title: String,
    /// The six kinds.
    pub kinds: Vec<OptionView>,
    /// Heads the place; empty where the place is not asked for.
    pub place_title: String,
    /// Below it.
    pub place_note: String,
    /// The cut half.
    pub section: SectionDrawing,
    /// What a screen reader says of it.
    pub section_label: String,
    /// Its stations, the floor last.
    pub spots: Vec<SpotView>,
    /// "Station 3", or what to do.
    pub station: String,
    /// How far round.
    pub clock: Option<ClockView>,
    /// Heads what was done.
    pub treat_title: String,
    /// What can be done.
    pub treatments: Vec<OptionView>,
    /// Where the suggestion comes from.
    pub practice: String,
    /// What to do once it is glued; both faces.
    pub advice: Vec<String>,
    /// The cautions of superglue: the line and what is below it.
    pub caution: (String, String),
    /// Opens and closes what is folded away; empty where nothing is.
    pub more_text: String,
    /// It is open.
    pub more: bool,
    /// Its length.
    pub size: Option<TypedView>,
    /// Through the wall: label, note, and whether it is.
    pub through: Option<(String, String, bool)>,
    /// The words for on and off.
    pub on_off: (String, String),
    /// Heads the faces.
    pub face_title: String,
    /// The faces.
    pub faces: Vec<OptionView>,
    /// Goes: label and count, whether less and more are possible.
    pub goes: Option<(String, String, bool, bool)>,
    /// Heads the days to look again.
    pub again_title: String,
    /// The days to look again.
    pub agains: Vec<OptionView>,
    /// The day that is typed.
    pub again_day: Option<TypedView>,
    /// The label of own words.
    pub note_label: String,
    /// Own words.
    pub note: String,
    /// The button below.
    pub save: String,
    /// It can be pressed.
    pub save_active: bool,
}
