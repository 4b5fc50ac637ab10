//! Draft: what was typed and chosen for a piece that is not there yet.

use std::collections::BTreeMap;

use evenwall_piece::detail::{DetailField, FieldKind};
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

/// How many pieces can be entered in one go.
pub const MOST_AT_ONCE: usize = 20;

/// What was typed and chosen for a piece that is not there yet.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// Texts as typed and keys as chosen; a mark that is absent is the suggested one.
    texts: BTreeMap<DetailField, String>,
    /// How many pieces, 1 to [`MOST_AT_ONCE`].
    pub(super) count: usize,
    /// The rest of the form is unfolded.
    pub(super) more: bool,
    /// The stage in which it is entered.
    pub(super) stage: Stage,
    /// How it dries.
    pub(super) method: Method,
    /// Since when it is in that stage, as typed; blank: now.
    pub(super) since: String,
    /// The piece that it is like, which shares its log.
    pub(super) like: Option<PieceId>,
    /// True while a wood is searched for: from typing until one is picked.
    pub(super) searching_wood: bool,
    /// True where the turner said that the wood is not known.
    pub(super) wood_unknown: bool,
    /// The id of a piece that could not be saved: trying again goes on with it, so that nothing is entered twice.
    pub(super) unsaved_id: Option<PieceId>,
    touched: bool,
}

impl Default for Draft {
    fn default() -> Self {
        Self {
            texts: BTreeMap::new(),
            count: 1,
            more: false,
            stage: Stage::Shape,
            method: Method::Bag,
            since: String::new(),
            like: None,
            searching_wood: false,
            wood_unknown: false,
            unsaved_id: None,
            touched: false,
        }
    }
}

impl Draft {
    /// True where the turner typed or chose something: leaving asks first.
    pub(super) const fn touched(&self) -> bool {
        self.touched
    }

    /// What was typed into a field; empty where nothing was.
    pub(super) fn text(&self, field: DetailField) -> &str {
        self.texts.get(&field).map_or("", String::as_str)
    }

    /// The mark as typed; `None` while it is the suggested one.
    pub(super) fn typed_mark(&self) -> Option<&str> {
        self.texts.get(&DetailField::Mark).map(String::as_str)
    }

    /// All texts but the mark, in the order of the fields.
    pub(super) fn texts(&self) -> impl Iterator<Item = (DetailField, &str)> {
        self.texts
            .iter()
            .filter(|(field, _)| **field != DetailField::Mark)
            .map(|(field, text)| (*field, text.as_str()))
    }

    /// Copies a text from another piece.
    pub(super) fn copy(&mut self, field: DetailField, text: String) {
        if !text.is_empty() {
            self.texts.insert(field, text);
        }
    }

    pub(super) fn type_into(&mut self, field: DetailField, text: String) {
        self.touched = true;
        self.searching_wood = field == DetailField::Wood;
        self.wood_unknown &= field != DetailField::Wood;
        // A mark that was wiped out stays wiped out: the suggestion does not come back under the fingers.
        if text.is_empty() && field != DetailField::Mark {
            self.texts.remove(&field);
        } else {
            self.texts.insert(field, text);
        }
    }

    pub(super) fn choose(&mut self, field: DetailField, key: String) {
        self.touched = true;
        if field.kind() != FieldKind::Choice || self.text(field) == key {
            self.texts.remove(&field);
        } else {
            self.texts.insert(field, key);
        }
    }

    pub(super) fn pick_wood(&mut self, name: String) {
        let unknown = name.is_empty();
        self.type_into(DetailField::Wood, name);
        self.searching_wood = false;
        self.wood_unknown = unknown;
    }

    pub(super) fn step_count(&mut self, step: i32) {
        self.touched = true;
        let count = i32::try_from(self.count).unwrap_or(1).saturating_add(step);
        self.count = usize::try_from(count).unwrap_or(1).clamp(1, MOST_AT_ONCE);
    }

    pub(super) fn set_stage(&mut self, stage: Stage) {
        self.touched = true;
        self.stage = stage;
    }

    pub(super) fn set_method(&mut self, method: Method) {
        self.touched = true;
        self.method = method;
    }

    pub(super) fn set_since(&mut self, text: String) {
        self.touched = true;
        self.since = text;
    }
}
