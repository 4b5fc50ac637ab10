//! Promises of the stages of a piece: moved anywhere and back-dated, half-turned, methods, pauses; advice, never a lock.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;

use chrono::NaiveDate;
use evenwall_app::action::Action;
use evenwall_app::piece::{DayChoice, PauseChoice, PieceAction, StagesAction};
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, FlawNote, FlawTreated, PieceFact, StationRef};
use evenwall_piece::ids::FlawId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{FlawKind, Method, Treatment};
use support_piece::{Hands, detail, id};

fn hands(facts: Vec<PieceFact>) -> Hands {
    Hands::with([vec![detail(DetailField::Mark, "K07")], facts].concat())
}

fn stages(action: StagesAction) -> Action {
    Action::Piece(PieceAction::Stages(action))
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
        ("12 Mar 0026", "before 1900"),
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
fn a_glued_knot_is_never_called_a_crack() {
    let mut knot = check("k");
    if let PieceFact::FlawFound(note) = &mut knot {
        note.kind = FlawKind::Knot;
    }
    let treated = |name: &str| {
        PieceFact::FlawTreated(FlawTreated {
            flaw: FlawId::new(name).unwrap(),
            treatment: Treatment::Medium,
            face: None,
            goes: None,
            look_again: None,
        })
    };
    let mut h = hands(vec![
        PieceFact::StageMoved(Stage::Indoors),
        knot,
        treated("k"),
    ]);
    h.open();
    h.moved(Stage::True);
    assert!(h.app.question().is_none());
    // Beside a glued check only the check is told.
    h.moved(Stage::Indoors);
    h.fact(check("a"));
    h.fact(treated("a"));
    h.moved(Stage::True);
    let told = h.app.question().expect("told").clone();
    assert!(told.text.contains("Check, station 3"), "{}", told.text);
    assert!(!told.text.contains("Knot"), "{}", told.text);
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
