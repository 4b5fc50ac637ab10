//! Promises of the details and ending of a piece, and of the editor of the checklists.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;

use evenwall_app::action::Action;
use evenwall_app::checklist::ChecklistAction;
use evenwall_app::piece::ending::{EndKind, EndingAction};
use evenwall_app::piece::{DetailsAction, PieceAction};
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{End, PieceFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{LostHow, LostWhere, LostWhy};
use support_piece::{Hands, detail, id};

fn hands(facts: Vec<PieceFact>) -> Hands {
    Hands::with([vec![detail(DetailField::Mark, "K07")], facts].concat())
}

fn details(action: DetailsAction) -> Action {
    Action::Piece(PieceAction::Details(action))
}

fn ending(action: EndingAction) -> Action {
    Action::Piece(PieceAction::Ending(action))
}

#[test]
fn a_detail_keeps_what_was_typed_and_refuses_nonsense_with_a_sentence() {
    let mut h = hands(Vec::new());
    h.act(Action::Open(Page::Details(id())));
    let before = h.app.details_view(h.now()).unwrap();
    let long = "x".repeat(10_000);
    for bad in ["lots", "-5", "900000", "1 2 3", long.as_str()] {
        h.act(details(DetailsAction::Open(DetailField::Diameter)));
        h.act(details(DetailsAction::Typed(bad.into())));
        h.act(details(DetailsAction::Save(id())));
        let sheet = h.app.details_view(h.now()).unwrap().sheet.unwrap();
        assert!(!sheet.error.is_empty(), "{bad}");
        assert_eq!(h.piece().details.mm(DetailField::Diameter), None);
        h.act(details(DetailsAction::Close));
    }
    h.act(details(DetailsAction::Open(DetailField::Diameter)));
    h.act(details(DetailsAction::Typed("7 1/2\"".into())));
    h.act(details(DetailsAction::Save(id())));
    assert!((h.piece().details.mm(DetailField::Diameter).unwrap() - 190.5).abs() < 1e-9);
    let kept = h
        .piece()
        .details
        .get(DetailField::Diameter)
        .unwrap()
        .clone();
    assert!(format!("{kept:?}").contains("7 1/2"));
    // Looked at and saved again without a change: nothing is recorded, nothing is rounded.
    let entries = h.piece().diary.len();
    h.act(details(DetailsAction::Open(DetailField::Diameter)));
    h.act(details(DetailsAction::Save(id())));
    assert_eq!(h.piece().diary.len(), entries);
    h.act(Action::Undo);
    assert_eq!(h.app.details_view(h.now()).unwrap(), before);
    h.no_word_is_absent();
}

#[test]
fn every_detail_opens_saves_and_clears() {
    let mut h = hands(Vec::new());
    h.act(Action::Open(Page::Details(id())));
    let shown: Vec<_> = h
        .app
        .details_view(h.now())
        .unwrap()
        .groups
        .into_iter()
        .flat_map(|g| g.fields)
        .map(|f| f.field)
        .collect();
    for field in DetailField::ALL {
        assert!(shown.contains(field), "{field:?} is on no page");
        h.act(details(DetailsAction::Open(*field)));
        let sheet = h.app.details_view(h.now()).unwrap().sheet.unwrap();
        let typed = match sheet.kind {
            "choice" => sheet.offers[0].value.clone(),
            "length" => "20 mm".into(),
            _ if *field == DetailField::Felled => "March 2026".into(),
            _ => "K9".to_owned(),
        };
        h.act(details(DetailsAction::Chose(typed)));
        h.act(details(DetailsAction::Save(id())));
        let view = h.app.details_view(h.now()).unwrap();
        let error = view.sheet.map(|s| s.error).unwrap_or_default();
        if error.is_empty() {
            assert!(h.piece().details.get(*field).is_some(), "{field:?}");
            h.act(details(DetailsAction::Open(*field)));
            h.act(details(DetailsAction::Clear(id())));
            if *field == DetailField::Mark {
                // A piece keeps a mark.
                h.act(details(DetailsAction::Close));
                assert_eq!(h.piece().mark(), "K9");
                continue;
            }
            assert!(h.piece().details.get(*field).is_none(), "{field:?}");
        } else {
            // Twenty millimetres are outside the range of some lengths, and the sentence says so.
            assert!(error.contains("20"), "{field:?}: {error}");
            h.act(details(DetailsAction::Close));
        }
    }
    h.no_word_is_absent();
}

#[test]
fn a_detail_that_was_not_kept_stays_in_its_sheet() {
    let mut h = hands(Vec::new());
    h.act(Action::Open(Page::Details(id())));
    h.act(details(DetailsAction::Open(DetailField::Place)));
    h.act(details(DetailsAction::Typed("Loft".into())));
    h.fail(true);
    h.act(details(DetailsAction::Save(id())));
    let sheet = h
        .app
        .details_view(h.now())
        .unwrap()
        .sheet
        .expect("still open");
    assert_eq!(sheet.typed, "Loft");
    h.fail(false);
    h.act(Action::TryAgain);
    assert_eq!(h.piece().details.text(DetailField::Place), Some("Loft"));
    assert!(h.app.details_view(h.now()).unwrap().sheet.is_none());
}

#[test]
fn a_lost_piece_keeps_where_how_and_why_apart_and_each_may_stay_unknown() {
    let mut h = hands(vec![PieceFact::StageMoved(Stage::Air)]);
    h.act(Action::Open(Page::Ending(id())));
    assert!(h.app.ending_action().is_none(), "nothing is chosen yet");
    h.act(ending(EndingAction::Kind(EndKind::Lost)));
    h.act(ending(EndingAction::Where(LostWhere::Knot)));
    h.act(ending(EndingAction::Why(LostWhy::Unknown)));
    h.act(ending(EndingAction::Why(LostWhy::Pith)));
    h.act(ending(EndingAction::Why(LostWhy::TooFast)));
    h.act(ending(EndingAction::Note("  Łódź, ağaç  ".into())));
    let action = h.app.ending_action().unwrap();
    h.fail(true);
    h.act(action);
    assert!(h.piece().end.is_none() && h.app.save_error().is_some());
    h.fail(false);
    h.act(Action::TryAgain);
    let expected = End::Lost {
        place: LostWhere::Knot,
        how: LostHow::Unknown,
        why: vec![LostWhy::Pith, LostWhy::TooFast],
        note: "Łódź, ağaç".into(),
    };
    assert_eq!(h.piece().end.as_ref().unwrap().1, expected);
    let shown = h.page().ended.unwrap();
    assert_eq!(
        shown.lines,
        [
            "Where: Beside a knot",
            "My guess why: Pith, Dried too fast",
            "Łódź, ağaç"
        ]
    );
    h.undo_brings_back_the_page();
    h.no_word_is_absent();
}

#[test]
fn every_ending_is_recorded_and_put_back_and_deleting_asks_first() {
    let mut h = hands(Vec::new());
    for kind in EndKind::ALL {
        h.act(Action::Open(Page::Ending(id())));
        h.act(ending(EndingAction::Kind(kind)));
        let action = h.app.ending_action().unwrap();
        h.act(action);
        assert_eq!(
            h.piece().end.as_ref().map(|(_, e)| EndKind::of(e)),
            Some(kind)
        );
        assert!(h.page().next.is_none());
        h.act(Action::Piece(PieceAction::PutBack(id())));
        assert!(h.piece().living());
    }
    h.open();
    let delete = h.app.way_action("delete").unwrap();
    h.act(delete);
    assert!(h.app.question().is_some() && h.piece().deleted.is_none());
    h.act(Action::Choose(0));
    assert!(h.piece().deleted.is_some());
    assert!(h.app.route().page().is_none());
    h.act(Action::Piece(PieceAction::Undelete(id())));
    assert!(h.piece().deleted.is_none());
    h.no_word_is_absent();
}

#[test]
fn checklist_lines_are_added_reworded_hidden_moved_and_reset_for_pieces_to_come() {
    let mut h = hands(Vec::new());
    h.open();
    let tick = h.page().lines[0].clone();
    h.act(Action::Piece(PieceAction::Tick {
        piece: id(),
        line: tick.id.clone(),
        on: true,
    }));
    h.days(1);
    h.act(Action::Open(Page::ShopPage("checklists")));
    let act = |h: &mut Hands, action| h.act(Action::Checklist(action));
    let before = h.app.checklist_editor_view();
    let first = before.lines[0].clone();
    // An own line.
    act(&mut h, ChecklistAction::New);
    act(&mut h, ChecklistAction::Save);
    let sheet = h.app.checklist_editor_view().sheet.unwrap();
    assert!(sheet.error.contains("needs words"));
    act(&mut h, ChecklistAction::Text("x".repeat(500)));
    act(&mut h, ChecklistAction::Save);
    assert!(
        h.app
            .checklist_editor_view()
            .sheet
            .unwrap()
            .error
            .contains("120")
    );
    act(
        &mut h,
        ChecklistAction::Text("  Photo of\nthe log end ".into()),
    );
    act(
        &mut h,
        ChecklistAction::Why("It tells where the pith went.".into()),
    );
    h.fail(true);
    act(&mut h, ChecklistAction::Save);
    assert!(h.app.save_error().is_some());
    h.fail(false);
    h.act(Action::TryAgain);
    let added = h.app.checklist_editor_view();
    assert!(added.sheet.is_none());
    let own = added.lines.last().unwrap().clone();
    assert_eq!(
        (own.text.as_str(), own.note.as_str()),
        ("Photo of the log end", "Your own line")
    );
    h.act(Action::Undo);
    assert_eq!(h.app.checklist_editor_view(), before);
    h.act(Action::Redo);
    // Moved, reworded, hidden, and back.
    act(&mut h, ChecklistAction::Up(own.id.clone()));
    let lines = h.app.checklist_editor_view().lines;
    assert_eq!(lines[lines.len() - 2].id, own.id);
    act(&mut h, ChecklistAction::Open(first.id.clone()));
    act(&mut h, ChecklistAction::Text("Saw both ends back".into()));
    act(&mut h, ChecklistAction::Save);
    assert_eq!(
        h.app.checklist_editor_view().lines[0].text,
        "Saw both ends back"
    );
    act(&mut h, ChecklistAction::Hide(first.id.clone(), true));
    assert!(h.app.checklist_editor_view().lines[0].hidden);
    // What the older piece recorded stays as it was.
    h.act(Action::Back);
    h.open();
    let old = h.page().lines[0].clone();
    assert_eq!((old.text, old.checked), (tick.text, true));
    h.act(Action::Open(Page::ShopPage("checklists")));
    act(&mut h, ChecklistAction::Reset(first.id));
    act(&mut h, ChecklistAction::Reset(own.id));
    assert_eq!(h.app.checklist_editor_view(), before);
    h.no_word_is_absent();
}
