//! Promises of renaming a piece: one mark, one living piece, however it is written, and never none.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_today;

use evenwall_app::action::Action;
use evenwall_app::piece::details_view::FieldSheetView;
use evenwall_app::piece::{DetailsAction, PieceAction};
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::stage::Stage;
use support_today::{Hands, Shelf, id};

/// The sheet of the mark of K09, beside a K07.
fn renaming() -> Hands {
    let shelf = Shelf::new();
    shelf.piece("K07", "ash", Stage::Shape, 2);
    shelf.piece("K09", "yew", Stage::Shape, 1);
    let mut hands = shelf.open();
    hands.act(Action::Open(Page::Details(id("K09"))));
    details(&mut hands, DetailsAction::Open(DetailField::Mark));
    hands
}

fn details(hands: &mut Hands, action: DetailsAction) {
    hands.act(Action::Piece(PieceAction::Details(action)));
}

fn save(hands: &mut Hands, typed: &str) {
    details(hands, DetailsAction::Typed(typed.into()));
    details(hands, DetailsAction::Save(id("K09")));
}

fn sheet(hands: &Hands) -> Option<FieldSheetView> {
    hands.app.details_view(hands.now()).unwrap().sheet
}

#[test]
fn a_mark_in_use_is_refused_however_it_is_written() {
    let mut hands = renaming();
    for typed in ["K07", "k07", "K 07", " k 0 7 "] {
        save(&mut hands, typed);
        let error = sheet(&hands).unwrap().error;
        assert!(error.contains("is the mark of another piece"), "{error}");
        assert_eq!(hands.piece("K09").mark(), "K09", "{typed}");
    }
    // Its own mark may be written otherwise.
    save(&mut hands, "K 09");
    assert_eq!(hands.piece("K09").mark(), "K 09");
    assert!(sheet(&hands).is_none());
    hands.no_word_is_absent();
}

#[test]
fn a_mark_that_reads_upside_down_is_warned_of_while_typing_and_may_be_kept() {
    let mut hands = renaming();
    let usual = sheet(&hands).unwrap().about;
    details(&mut hands, DetailsAction::Typed("M06".into()));
    let warned = sheet(&hands).unwrap().about;
    assert_ne!(warned, usual);
    assert!(warned.contains("90W"), "{warned}");
    details(&mut hands, DetailsAction::Typed("M05".into()));
    assert_eq!(sheet(&hands).unwrap().about, usual);
    save(&mut hands, "M06");
    assert_eq!(hands.piece("K09").mark(), "M06");
    hands.no_word_is_absent();
}

#[test]
fn the_mark_cannot_be_cleared_and_a_sentence_says_what_to_do() {
    let mut hands = renaming();
    assert_eq!(sheet(&hands).unwrap().clear, "");
    let needed = "A mark is needed: write one, for example K08.";
    save(&mut hands, "  ");
    assert_eq!(sheet(&hands).unwrap().error, needed);
    details(&mut hands, DetailsAction::Typed("K09".into()));
    details(&mut hands, DetailsAction::Clear(id("K09")));
    assert_eq!(sheet(&hands).unwrap().error, needed);
    assert_eq!(hands.piece("K09").mark(), "K09");
    // Other details are cleared as before.
    details(&mut hands, DetailsAction::Open(DetailField::Wood));
    assert_ne!(sheet(&hands).unwrap().clear, "");
    details(&mut hands, DetailsAction::Clear(id("K09")));
    assert_eq!(hands.piece("K09").details.text(DetailField::Wood), None);
    hands.no_word_is_absent();
}
