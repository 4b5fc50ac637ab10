//! Action: everything the turner can do, one enum a page.

use crate::checklist::ChecklistAction;
use crate::diary::DiaryAction;
use crate::dried_well::DriedWellAction;
use crate::drying::DryingAction;
use crate::flaws::FlawsAction;
use crate::new_piece::NewPieceAction;
use crate::photos::PhotosAction;
use crate::piece::PieceAction;
use crate::pieces::PiecesAction;
use crate::plan::PlanAction;
use crate::records::RecordsAction;
use crate::route::{Page, Tab};
use crate::shop::ShopAction;
use crate::today::TodayAction;
use crate::truing::TruingAction;
use crate::wall::WallAction;

/// Something the turner did.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// Went to a tab.
    GoTab(Tab),
    /// Opened a page.
    Open(Page),
    /// Went back one page.
    Back,
    /// Took back the last thing done.
    Undo,
    /// Did again what was taken back last.
    Redo,
    /// Put the undo bar away.
    HideUndo,
    /// Chose an answer of the question on screen, by its place.
    Choose(usize),
    /// Closed the question on screen.
    CloseQuestion,
    /// Tried again what could not be saved.
    TryAgain,
    /// Put the save error away.
    HideSaveError,
    /// Put the notice about the shelf away until the next start, or what other devices wrote.
    HideNotice,
    /// Something on Today, a round, Away or Catch-up.
    Today(TodayAction),
    /// Something on Pieces.
    Pieces(PiecesAction),
    /// Something on the page for a new piece.
    NewPiece(NewPieceAction),
    /// Something on a piece, its details, stages, checklist or ending.
    Piece(PieceAction),
    /// Something on the wall pages.
    Wall(WallAction),
    /// Something on the flaw pages.
    Flaws(FlawsAction),
    /// Something about photos.
    Photos(PhotosAction),
    /// Something on drying or weighing.
    Drying(DryingAction),
    /// Something on True or Finish.
    Truing(TruingAction),
    /// Something on Plan.
    Plan(PlanAction),
    /// Something on the diary.
    Diary(DiaryAction),
    /// Something on what dried well.
    DriedWell(DriedWellAction),
    /// Something on Shop.
    Shop(ShopAction),
    /// Something on the editor of the checklists.
    Checklist(ChecklistAction),
    /// Something that brings records in or out: backup, calendar, report, tables, tags, import, devices.
    Records(RecordsAction),
}
