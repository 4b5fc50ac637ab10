//! Acting: what a touch on a row or on one of its buttons does.

use evenwall_piece::detail::DetailField;
use evenwall_piece::ids::FlawId;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;

use super::TodayAction;
use super::row::parts;
use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::{DetailsAction, PieceAction};
use crate::route::Page;

impl App {
    /// A touch on a row: a folded look is opened, anything else leads to its piece.
    pub(super) fn touch_row(&mut self, row: &str, now: Moment) {
        let mut key = row.splitn(3, '/');
        let (group, kind) = (key.next().unwrap_or(""), key.next().unwrap_or(""));
        if kind == "more" {
            self.states.today.whole.push(group.to_owned());
            return;
        }
        let Some((_, _, piece)) = parts(row) else {
            return;
        };
        let folded = matches!(kind, "look" | "over")
            && group != "coming"
            && !self.is_done(row, now)
            && !self.is_open(row, now);
        if folded {
            self.states.today.open = Some(row.to_owned());
            self.states.today.more = false;
            return;
        }
        let page = match kind.strip_prefix("flaw-").and_then(|f| FlawId::new(f).ok()) {
            Some(flaw) => Page::Flaw(piece, Some(flaw)),
            None => Page::Piece(piece),
        };
        self.open_page(page, now);
    }

    fn is_done(&self, row: &str, now: Moment) -> bool {
        parts(row).is_some_and(|(group, ..)| {
            self.done_in(group, now.date_naive())
                .iter()
                .any(|d| d.row == row)
        })
    }

    fn is_open(&self, row: &str, now: Moment) -> bool {
        let lists = [
            self.today_view(now).list,
            self.catch_up_view(now).list,
            self.away_view(now).list,
        ];
        lists
            .iter()
            .flat_map(|l| &l.rows)
            .any(|r| r.id == row && r.shape == super::view::Shape::Card)
    }

    /// A touch on a button of a row.
    pub(super) fn touch_button(
        &mut self,
        row: &str,
        key: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some((_, kind, piece)) = parts(row) else {
            return Ok(());
        };
        match key {
            "looked" => return self.answer_row(row, "over", now),
            "weigh" => self.open_page(Page::Weigh(piece), now),
            "open" => self.open_page(Page::Piece(piece), now),
            "found" => return self.apply_today(TodayAction::Found(piece), now),
            "cant-find" => {
                self.retry_with(Action::Today(TodayAction::NotFound(piece.clone())));
                return self.apply_today(TodayAction::NotFound(piece), now);
            }
            "resume" => {
                return self.apply_piece(PieceAction::HalfTurned { piece, on: false }, now);
            }
            "move" => {
                if let Some(stage) = kind.strip_prefix("offer-").and_then(Stage::from_key) {
                    let action = PieceAction::MoveTo {
                        piece,
                        stage,
                        day: None,
                        sure: false,
                    };
                    return self.apply_piece(action, now);
                }
            }
            "rename" => {
                let field = DetailField::Mark;
                let action = PieceAction::Details(DetailsAction::OpenAt { piece, field });
                return self.apply_piece(action, now);
            }
            "keep" => return self.apply_piece(PieceAction::Keep(piece), now),
            "delete" => return self.apply_piece(PieceAction::Delete(piece), now),
            _ => {}
        }
        Ok(())
    }
}
