//! Summary: what can be done from the result.

use evenwall_piece::detail::DetailValue;
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;

use super::standing::standings;
use super::take_off::best_wall;
use super::wanted_field;
use crate::app::{App, AppError};
use crate::route::Page;

/// The stage that follows once the wall is even; `None` where the wall is not what the stage is about.
pub(super) fn stage_after(piece: &Piece) -> Option<Stage> {
    match piece.stage() {
        Stage::Shape | Stage::Hollow => Some(Stage::Stabilise),
        Stage::True => Some(Stage::Finish),
        _ => None,
    }
}

impl App {
    /// The best even wall of a piece, mm.
    pub(super) fn best_wall_mm(&self, piece: &Piece) -> Option<f64> {
        let step = self.numbers().wall_step_mm();
        best_wall(&standings(piece, &self.shop().settings), step)
    }

    pub(super) fn take_best_wall(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        let Some(piece) = self.piece(id) else {
            return Ok(());
        };
        let Some(mm) = self.best_wall_mm(piece) else {
            return Ok(());
        };
        let fact = PieceFact::Detail {
            field: wanted_field(piece),
            value: Some(DetailValue::Length(Measure::plain(mm))),
        };
        let said = self.words().with(
            "wall-said-wanted",
            &[("wall", self.numbers().wall(mm).short().text().into())],
        );
        self.record(id, now, vec![fact], now)?;
        self.say(said);
        Ok(())
    }

    /// To the page where what is lacking is entered.
    pub(super) fn supply(&mut self, id: &PieceId, now: Moment) {
        let Some((page, station)) = self.piece(id).map(Self::lacking_page) else {
            return;
        };
        if let Some(station) = station {
            self.jump_to(station);
        }
        self.open_page(page, now);
    }

    /// Even: on to the next stage.
    pub(super) fn go_on(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        let Some(next) = self.piece(id).and_then(stage_after) else {
            return Ok(());
        };
        let said = self.words().text(&format!("stage-{}", next.key()));
        self.record(id, now, vec![PieceFact::StageMoved(next)], now)?;
        self.open_page(Page::Piece(id.clone()), now);
        self.say(said);
        Ok(())
    }
}
