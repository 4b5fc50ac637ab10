//! Cautions: the general ones, shown once at first use and reachable afterwards.

use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::PieceAction;
use crate::question::{Choice, ChoiceStyle, Question};

/// How many general cautions there are.
pub const GENERAL_CAUTIONS: usize = 6;

impl App {
    /// The general cautions, one paragraph each, in the order in which they are read.
    #[must_use]
    pub fn general_cautions(&self) -> Vec<String> {
        (1..=GENERAL_CAUTIONS)
            .map(|n| self.words().text(&format!("caution-general-{n}")))
            .collect()
    }

    /// Shows the general cautions over the page. While they were never read, one answer says that they were.
    pub fn show_general_cautions(&mut self) {
        let read = self.shop().settings.cautions_read;
        let words = self.words();
        let choice = Choice {
            label: words.text(if read {
                "action-close"
            } else {
                "piece-cautions-read"
            }),
            style: ChoiceStyle::Primary,
            action: (!read).then_some(Action::Piece(PieceAction::CautionsRead)),
        };
        let question = Question {
            title: words.text("caution-general-title"),
            text: self.general_cautions().join("\n\n"),
            choices: vec![choice],
            caution: true,
        };
        self.ask(question);
    }

    /// Shows them when the first piece is opened, unless something else is being asked.
    pub(crate) fn cautions_at_first_use(&mut self) {
        if !self.shop().settings.cautions_read && self.question().is_none() {
            self.show_general_cautions();
        }
    }

    /// Keeps that they were read. It is nothing to undo.
    pub(crate) fn cautions_read(&mut self, now: Moment) -> Result<(), AppError> {
        let fact = ShopFact::Setting {
            key: "cautions_read".into(),
            value: "true".into(),
        };
        self.record_shop(now, vec![fact], now)?;
        self.nothing_to_undo();
        Ok(())
    }
}
