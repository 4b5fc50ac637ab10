//! Boxes: the fields of the form, each with what was typed, what is wrong with it and what stands below it.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};

use super::view::{ChoiceView, FieldBox};
use crate::app::App;
use crate::details::{self, Day};

impl App {
    pub(super) fn bare_box(&self, field: DetailField) -> FieldBox {
        FieldBox {
            key: field.key(),
            label: details::label(self, field),
            text: self.states.new_piece.draft.text(field).to_owned(),
            unit: details::unit(self, field),
            numeric: details::quantity(field).is_some(),
            ..FieldBox::default()
        }
    }

    pub(super) fn field_box(
        &self,
        field: DetailField,
        piece: Option<&Piece>,
        now: Moment,
    ) -> FieldBox {
        let bare = self.bare_box(field);
        let note = match field {
            DetailField::Felled => self.day_note(&bare.text, now),
            DetailField::Wood => self.wood_note(),
            _ => piece
                .map(|p| details::field_view(self, p, field).note)
                .unwrap_or_default(),
        };
        FieldBox {
            placeholder: match field {
                DetailField::Felled => self.words().text("new-piece-felled-hint"),
                _ => String::new(),
            },
            error: self.draft_error(field, now).unwrap_or_default(),
            ways: details::ways_to_read(self, field, &bare.text),
            note,
            ..bare
        }
    }

    /// How a day can be written; once there is one, how it was understood where that is not what stands there.
    fn day_note(&self, typed: &str, now: Moment) -> String {
        if typed.trim().is_empty() {
            return self.words().text("new-piece-felled-note");
        }
        Day::read(typed, now.date_naive(), self.words())
            .map(|day| day.text(self.words()))
            .ok()
            .filter(|text| *text != typed.trim())
            .unwrap_or_default()
    }

    fn wood_note(&self) -> String {
        let typed = self.states.new_piece.draft.text(DetailField::Wood).trim();
        match self.known_wood(typed) {
            _ if typed.is_empty() => String::new(),
            Some(wood) => wood.botanical().to_owned(),
            None => self.words().text("new-piece-wood-own"),
        }
    }

    pub(super) fn wood_choices(&self) -> Vec<ChoiceView> {
        let draft = &self.states.new_piece.draft;
        let typed = draft.text(DetailField::Wood).trim();
        let chosen = self.known_wood(typed);
        let mut choices: Vec<ChoiceView> = self
            .woods_offered()
            .into_iter()
            .map(|stored| ChoiceView {
                text: self.wood_name(&stored),
                chosen: !typed.is_empty()
                    && (chosen.is_some_and(|w| w.key() == stored) || stored == typed),
                key: stored,
            })
            .collect();
        choices.push(ChoiceView {
            key: String::new(),
            text: self.words().text("answer-unknown"),
            chosen: draft.wood_unknown,
        });
        choices
    }

    pub(super) fn since_box(&self, now: Moment) -> FieldBox {
        let words = self.words();
        let typed = &self.states.new_piece.draft.since;
        let (error, note) = match self.draft_since(now) {
            Err(error) => (error, String::new()),
            Ok(_) if typed.trim().is_empty() => (String::new(), words.text("new-piece-since-note")),
            Ok(at) => {
                let day = self.dates(now).day_and_month(at.date_naive());
                let taken = words.with("new-piece-since-taken", &[("day", day.into())]);
                (String::new(), taken)
            }
        };
        FieldBox {
            key: "since",
            label: words.text("new-piece-since"),
            text: typed.clone(),
            placeholder: words.text("new-piece-felled-hint"),
            error,
            note,
            ..FieldBox::default()
        }
    }
}
