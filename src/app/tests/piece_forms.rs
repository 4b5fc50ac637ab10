//! Promises of the stages, details and ending of a piece, and of the editor of the checklists.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;

use chrono::NaiveDate;
use evenwall_app::action::Action;
use evenwall_app::checklist::ChecklistAction;
use evenwall_app::piece::ending::{EndKind, EndingAction};
use evenwall_app::piece::{DayChoice, DetailsAction, PauseChoice, PieceAction, StagesAction};
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, End, FlawNote, FlawTreated, PieceFact, StationRef};
use evenwall_piece::ids::FlawId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{FlawKind, LostHow, LostWhere, LostWhy, Method, Treatment};
use support_piece::{Hands, detail, id};

fn hands(facts: Vec<PieceFact>) -> Hands {
    Hands::with([vec![detail(DetailField::Mark, "K07")], facts].concat())
}

fn stages(action: StagesAction) -> Action {
    Action::Piece(PieceAction::Stages(action))
}

fn details(action: DetailsAction) -> Action {
    Action::Piece(PieceAction::Details(action))
}

fn ending(action: EndingAction) -> Action {
    Action::Piece(PieceAction::Ending(action))
}

fn check(name: &str) -> PieceFact {
    PieceFact::FlawFound(FlawNote {
        flaw: FlawId::new(name).unwrap(),
        kind: FlawKind::Check,
        station: Some(StationRef::Wall(3)),
        clock: Clock::new(4),
        size_mm: None,
        through: false,
        note: String::new(),
    })
}

#[test]
fn all_nine_stages_stand_in_four_groups_with_their_dates() {
    let mut h = hands(vec![PieceFact::StageMoved(Stage::Hollow)]);
    h.days(3);
    h.moved(Stage::Bag);
    h.act(Action::Open(Page::Stages(id())));
    let view = h.app.stages_view(h.now()).unwrap();
    assert_eq!(view.groups.len(), 4);
    let rows: Vec<_> = view.groups.iter().flat_map(|g| &g.rows).collect();
    let said: Vec<_> = rows
        .iter()
        .map(|r| (r.name.as_str(), r.state, r.note.as_str()))
        .collect();
    assert_eq!(said.len(), 9);
    assert_eq!(said[0].1, "skipped");
    assert_eq!(said[1], ("Hollow", "done", "Thu 12 to today"));
    assert_eq!(said[2].1, "skipped");
    assert_eq!(said[3], ("Bag", "now", "since today"));
    assert_eq!(said[8].1, "later");
    h.no_word_is_absent();
}

#[test]
fn a_piece_moves_anywhere_and_on_an_earlier_day_and_undo_takes_it_back() {
    let mut h = hands(Vec::new());
    h.act(Action::Open(Page::Stages(id())));
    for (stage, day, since) in [
        (Stage::Settle, DayChoice::TwoDaysAgo, "2026-03-10"),
        (Stage::Hollow, DayChoice::Yesterday, "2026-03-11"),
        (Stage::Finish, DayChoice::Today, "2026-03-12"),
    ] {
        let before = h.app.stages_view(h.now()).unwrap();
        h.act(stages(StagesAction::Open(stage)));
        h.act(stages(StagesAction::Day(day)));
        h.act(stages(StagesAction::Confirm(id())));
        assert_eq!(h.piece().stage(), stage);
        assert_eq!(
            h.piece().stage_since().unwrap().date_naive().to_string(),
            since
        );
        h.act(Action::Undo);
        assert_eq!(h.app.stages_view(h.now()).unwrap(), before);
        h.act(Action::Redo);
        assert_eq!(h.piece().stage(), stage);
    }
}

#[test]
fn a_day_that_cannot_be_is_refused_with_a_sentence_and_nothing_moves() {
    let mut h = hands(Vec::new());
    h.act(Action::Open(Page::Stages(id())));
    h.act(stages(StagesAction::Open(Stage::Bag)));
    h.act(stages(StagesAction::Day(DayChoice::Typed)));
    let long = "9".repeat(10_000);
    for (typed, part) in [
        ("", "Type a day"),
        ("soon", "cannot be read"),
        ("31 Feb", "cannot be read"),
        ("14 Mar", "lies ahead"),
        (long.as_str(), "cannot be read"),
    ] {
        h.act(stages(StagesAction::Typed(typed.into())));
        h.act(stages(StagesAction::Confirm(id())));
        let sheet = h.app.stages_view(h.now()).unwrap().sheet.unwrap();
        assert!(
            sheet.error.contains(part) && sheet.error.len() < 200,
            "{}",
            sheet.error
        );
        assert_eq!(h.piece().stage(), Stage::Shape);
    }
    h.act(stages(StagesAction::Typed("10 Mar".into())));
    h.act(stages(StagesAction::Confirm(id())));
    assert_eq!(h.piece().stage(), Stage::Bag);
    h.no_word_is_absent();
}

#[test]
fn a_move_that_was_not_kept_is_tried_again_as_it_was_meant() {
    let mut h = hands(Vec::new());
    h.act(Action::Open(Page::Stages(id())));
    h.act(stages(StagesAction::Open(Stage::Bag)));
    h.act(stages(StagesAction::Day(DayChoice::Yesterday)));
    h.fail(true);
    h.act(stages(StagesAction::Confirm(id())));
    assert!(h.app.save_error().is_some());
    // The turner closes the sheet and goes away before the disk has room.
    h.act(stages(StagesAction::Close));
    h.act(Action::Back);
    h.fail(false);
    h.act(Action::TryAgain);
    assert_eq!(h.piece().stage(), Stage::Bag);
    assert_eq!(
        h.piece().stage_since().unwrap().date_naive().to_string(),
        "2026-03-11"
    );
}

#[test]
fn flaws_not_decided_are_advice_and_never_a_lock() {
    let mut h = hands(vec![
        PieceFact::StageMoved(Stage::Stabilise),
        check("a"),
        check("b"),
    ]);
    h.open();
    h.touch_then();
    let question = h.app.question().expect("advice").clone();
    assert_eq!(question.title, "2 flaws are not decided");
    assert_eq!(h.piece().stage(), Stage::Stabilise);
    h.act(Action::Choose(1));
    assert_eq!(h.piece().stage(), Stage::Bag);
    assert!(h.app.question().is_none());
}

#[test]
fn glued_cracks_are_told_on_the_way_into_true() {
    let mut h = hands(vec![
        PieceFact::StageMoved(Stage::Indoors),
        check("a"),
        PieceFact::FlawTreated(FlawTreated {
            flaw: FlawId::new("a").unwrap(),
            treatment: Treatment::Medium,
            face: None,
            goes: None,
            look_again: None,
        }),
    ]);
    h.open();
    h.moved(Stage::True);
    let told = h.app.question().expect("told").clone();
    assert!(told.caution);
    assert!(
        told.text
            .contains("Check, station 3, 4 o'clock: glued Thu 12 Mar, still a crack."),
        "{}",
        told.text
    );
    assert_eq!(h.piece().stage(), Stage::True);
}

#[test]
fn methods_say_their_rhythm_and_half_turned_and_pauses_are_undone_like_all_else() {
    let mut h = hands(vec![PieceFact::StageMoved(Stage::Bag)]);
    h.act(Action::Open(Page::Stages(id())));
    let before = h.app.stages_view(h.now()).unwrap();
    let rhythms: Vec<_> = before.methods.iter().map(|m| m.note.as_str()).collect();
    assert_eq!(
        rhythms[0],
        "Feel it after 1 day, then 2 when wet, 3 when damp."
    );
    assert_eq!(
        rhythms[1],
        "Look after 3 days, then every 7, then every 14. Weigh every 14 days."
    );
    assert_eq!(rhythms.len(), 7);
    let actions = [
        Action::Piece(PieceAction::Method {
            piece: id(),
            method: Method::Paper,
        }),
        Action::Piece(PieceAction::HalfTurned {
            piece: id(),
            on: true,
        }),
        Action::Piece(PieceAction::Pause {
            piece: id(),
            until: None,
        }),
    ];
    for action in actions {
        h.act(action);
        assert_ne!(h.app.stages_view(h.now()).unwrap(), before);
        h.act(Action::Undo);
        assert_eq!(h.app.stages_view(h.now()).unwrap(), before);
    }
    h.act(stages(StagesAction::OpenPause));
    h.act(stages(StagesAction::Until(PauseChoice::Typed)));
    h.act(stages(StagesAction::Typed("10 Mar".into())));
    h.act(stages(StagesAction::Confirm(id())));
    assert!(
        h.app
            .stages_view(h.now())
            .unwrap()
            .sheet
            .unwrap()
            .error
            .contains("not ahead")
    );
    h.act(stages(StagesAction::Until(PauseChoice::Week)));
    h.act(stages(StagesAction::Confirm(id())));
    let until: NaiveDate = "2026-03-19".parse().unwrap();
    assert_eq!(h.piece().paused.unwrap().1, Some(until));
    assert_eq!(
        h.app.stages_view(h.now()).unwrap().pause_note,
        "Off until Thu 19 Mar"
    );
    h.act(Action::Piece(PieceAction::Unpause(id())));
    assert!(h.piece().paused.is_none());
    h.no_word_is_absent();
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
