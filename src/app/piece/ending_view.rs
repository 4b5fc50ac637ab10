//! Ending view: how a piece ended, or the choices for it.

use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{LostHow, LostWhere, LostWhy};

use crate::action::Action;
use crate::app::App;
use crate::piece::PieceAction;
use crate::piece::ending::EndKind;
use crate::piece::stages_view::OptionView;
use crate::piece::view::{EndedView, HeadView};

/// The Ending page.
#[derive(Debug, Clone, PartialEq)]
pub struct EndingView {
    /// The head.
    pub head: HeadView,
    /// How it ended, where it did.
    pub ended: Option<EndedView>,
    /// Heads the ways of ending.
    pub kind_title: String,
    /// The ways of ending.
    pub kinds: Vec<OptionView>,
    /// True where it was lost: the three questions are shown.
    pub lost: bool,
    /// A line above them.
    pub lost_note: String,
    /// Heads where it failed.
    pub where_title: String,
    /// Where it failed.
    pub places: Vec<OptionView>,
    /// Heads how it was lost.
    pub how_title: String,
    /// How it was lost.
    pub hows: Vec<OptionView>,
    /// Heads the guesses.
    pub why_title: String,
    /// That several may be named.
    pub why_note: String,
    /// The guesses.
    pub whys: Vec<OptionView>,
    /// The label of the own words.
    pub note_label: String,
    /// The own words.
    pub note: String,
    /// The word on the button; empty while nothing is chosen.
    pub record: String,
    /// The word for another piece from the same log.
    pub another: String,
    /// The word for deleting, or for bringing back.
    pub delete: String,
    /// A line below it.
    pub delete_note: String,
    /// True where it is deleted.
    pub deleted: bool,
}

impl App {
    /// The Ending page of the piece on top; `None` where it is gone.
    #[must_use]
    pub fn ending_view(&self, now: Moment) -> Option<EndingView> {
        let piece = self.piece_on_page()?;
        let words = self.words();
        let state = &self.states.piece.ending;
        let option = |prefix: &str, key: &'static str, selected| OptionView {
            key,
            text: words.text(&format!("{prefix}-{key}")),
            note: String::new(),
            selected,
        };
        let deleted = piece.deleted.is_some();
        Some(EndingView {
            head: self.inner_head(piece, "piece-way-ending"),
            ended: self.ended_view(piece, now),
            kind_title: words.text("ending-kind"),
            kinds: EndKind::ALL
                .iter()
                .map(|k| OptionView {
                    note: words.text(&format!("ending-about-{}", k.key())),
                    ..option("end", k.key(), state.kind == Some(*k))
                })
                .collect(),
            lost: state.kind == Some(EndKind::Lost),
            lost_note: words.text("ending-lost-note"),
            where_title: words.text("ending-where"),
            places: LostWhere::ALL
                .iter()
                .map(|w| option("lost-where", w.key(), state.place == Some(*w)))
                .collect(),
            how_title: words.text("ending-how"),
            hows: LostHow::ALL
                .iter()
                .map(|h| option("lost-how", h.key(), state.how == Some(*h)))
                .collect(),
            why_title: words.text("ending-why"),
            why_note: words.text("ending-why-note"),
            whys: LostWhy::ALL
                .iter()
                .map(|w| option("lost-why", w.key(), state.why.contains(w)))
                .collect(),
            note_label: words.text("ending-note"),
            note: state.note.clone(),
            record: state.kind.map_or_else(String::new, |kind| {
                let how = words.text(&format!("end-{}", kind.key()));
                words.with("ending-record", &[("how", how.into())])
            }),
            another: words.text("piece-another"),
            delete: words.text(if deleted {
                "piece-undelete"
            } else {
                "ending-delete"
            }),
            delete_note: words.text("piece-delete-text"),
            deleted,
        })
    }

    /// What the button of the Ending page records; `None` while nothing is chosen.
    #[must_use]
    pub fn ending_action(&self) -> Option<Action> {
        let piece = self.piece_on_page()?.id.clone();
        let end = self.states.piece.ending.end()?;
        Some(Action::Piece(PieceAction::End { piece, end }))
    }
}
