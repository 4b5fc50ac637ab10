//! Promises of the page of a piece: the next action of every stage, ticks, looks, cautions, banners and undo.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;

use evenwall_app::action::Action;
use evenwall_app::piece::PieceAction;
use evenwall_app::route::Page;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, End, FlawNote, FlawTreated, Measure, PieceFact, Reading, StationRef,
};
use evenwall_piece::ids::FlawId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{
    BagFeel, CrackAnswer, FlawKind, Method, Taken, Treatment, TrueDecision,
};
use support_piece::{Hands, detail, id, mm};

fn flaw(name: &str) -> PieceFact {
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

fn glued(name: &str) -> PieceFact {
    PieceFact::FlawTreated(FlawTreated {
        flaw: FlawId::new(name).unwrap(),
        treatment: Treatment::Thin,
        face: None,
        goes: None,
        look_again: None,
    })
}

fn read(station: u8, value: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station: StationRef::Wall(station),
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(value)),
        feel: None,
        taken: Taken::Callipers,
    })
}

fn next(hands: &Hands) -> (String, String) {
    let view = hands.page();
    (
        view.next.map_or_else(String::new, |n| n.text),
        view.then.map_or_else(String::new, |n| n.text),
    )
}

#[test]
fn each_stage_has_one_obvious_next_action_and_the_next_stage_beside_it() {
    let mut hands = Hands::with(vec![detail(DetailField::Mark, "K07")]);
    hands.open();
    assert_eq!(
        next(&hands),
        ("Record depth drilled".into(), "Next stage: Hollow".into())
    );
    hands.fact(PieceFact::Detail {
        field: DetailField::DepthDrilled,
        value: Some(mm(180.0)),
    });
    assert_eq!(next(&hands), ("Hollow it".into(), String::new()));
    hands.touch_next();
    assert_eq!(hands.piece().stage(), Stage::Hollow);
    assert_eq!(
        next(&hands),
        ("Measure the wall".into(), "Next stage: Stabilise".into())
    );
    hands.touch_then();
    assert_eq!(
        next(&hands),
        ("Note a flaw".into(), "Next stage: Bag".into())
    );
    hands.fact(flaw("a"));
    assert_eq!(next(&hands).0, "Decide 1 flaw");
    hands.fact(glued("a"));
    assert_eq!(next(&hands), ("Into the bag".into(), String::new()));
    hands.touch_next();
    assert_eq!(hands.piece().stage(), Stage::Bag);
    assert_eq!(
        next(&hands),
        ("Feel the bag".into(), "Next stage: Air".into())
    );
    hands.moved(Stage::Air);
    assert_eq!(
        next(&hands),
        ("Feel the bag".into(), "Next stage: Settle".into())
    );
    hands.moved(Stage::Settle);
    assert_eq!(
        next(&hands),
        ("Weigh it".into(), "Next stage: Indoors".into())
    );
    hands.moved(Stage::Indoors);
    assert_eq!(next(&hands).1, "Next stage: True");
    hands.moved(Stage::True);
    hands.act(Action::CloseQuestion);
    assert_eq!(
        next(&hands),
        ("Look for cracks first".into(), "Next stage: Finish".into())
    );
    hands.fact(PieceFact::Cracks(CrackAnswer::None));
    assert_eq!(next(&hands).0, "Measure the oval");
    hands.fact(PieceFact::Oval {
        longest_mm: Measure::plain(190.0),
        shortest_mm: Measure::plain(184.0),
    });
    hands.fact(PieceFact::TrueDecided {
        decision: TrueDecision::Go,
        reason: String::new(),
    });
    assert_eq!(next(&hands), ("Next stage: Finish".into(), String::new()));
    hands.moved(Stage::Finish);
    assert_eq!(
        next(&hands),
        ("Record the finish".into(), "Finished".into())
    );
    hands.fact(PieceFact::Coat("oil".into()));
    assert_eq!(next(&hands), ("Finished".into(), String::new()));
    hands.fact(PieceFact::Ended(End::Finished));
    assert_eq!(next(&hands), (String::new(), String::new()));
    assert_eq!(hands.page().ended.unwrap().title, "Finished");
    hands.no_word_is_absent();
}

#[test]
fn nothing_twice_on_the_bag_offers_air() {
    let mut hands = Hands::with(vec![
        detail(DetailField::Mark, "K07"),
        PieceFact::StageMoved(Stage::Bag),
    ]);
    hands.open();
    for _ in 0..2 {
        hands.days(3);
        hands.act(Action::Piece(PieceAction::Looked {
            piece: id(),
            feel: Some(BagFeel::Nothing),
            mould: false,
            crack: false,
        }));
    }
    assert_eq!(next(&hands).0, "Next stage: Air");
}

#[test]
fn the_answers_say_what_is_done_and_when_and_that_is_what_follows() {
    let mut hands = Hands::with(vec![
        detail(DetailField::Mark, "K07"),
        PieceFact::StageMoved(Stage::Bag),
    ]);
    hands.open();
    assert!(
        hands.page().look.is_none(),
        "nothing is due on the first day"
    );
    hands.act(Action::Piece(PieceAction::LookNow));
    let look = hands.page().look.expect("asked for");
    let notes: Vec<_> = look
        .answers
        .iter()
        .map(|a| (a.key, a.note.as_str()))
        .collect();
    // Thursday 12 March: wet 2, damp 3, nothing 3 days.
    assert_eq!(
        notes,
        [
            ("wet", "turn it\nSat 14"),
            ("damp", "turn it\nSun 15"),
            ("nothing", "neck open\nSun 15"),
        ]
    );
    hands.days(1);
    assert!(hands.page().look.expect("due").due.contains("today"));
    hands.act(Action::Piece(PieceAction::Looked {
        piece: id(),
        feel: Some(BagFeel::Damp),
        mould: false,
        crack: false,
    }));
    assert!(hands.page().look.is_none());
    assert_eq!(hands.said(), "K07: Damp, turn it, Mon 16");
    hands.undo_brings_back_the_page();
}

#[test]
fn ticks_are_optional_undoable_and_measured_lines_tick_themselves() {
    let mut hands = Hands::with(vec![detail(DetailField::Mark, "K07")]);
    hands.open();
    let before = hands.page();
    let line = before
        .lines
        .iter()
        .find(|l| !l.boxless && !l.checked)
        .unwrap()
        .clone();
    hands.act(Action::Piece(PieceAction::Tick {
        piece: id(),
        line: line.id.clone(),
        on: true,
    }));
    let view = hands.page();
    assert!(view.lines.iter().any(|l| l.id == line.id && l.checked));
    assert!(
        view.checklist_count.starts_with("1 of "),
        "{}",
        view.checklist_count
    );
    hands.act(Action::Undo);
    assert_eq!(hands.page(), before);
    hands.fact(PieceFact::Detail {
        field: DetailField::DepthDrilled,
        value: Some(mm(180.0)),
    });
    let drilled = hands
        .page()
        .lines
        .into_iter()
        .find(|l| l.by_itself)
        .unwrap();
    assert!(drilled.checked);
    assert_eq!(drilled.trailing, "180\u{a0}mm");
    // Standing rules have no box and cannot be ticked.
    let rule = hands.page().lines.into_iter().find(|l| l.boxless).unwrap();
    let lines = hands.piece().diary.len();
    hands.act(Action::Piece(PieceAction::Tick {
        piece: id(),
        line: rule.id,
        on: true,
    }));
    assert_eq!(hands.piece().diary.len(), lines);
}

#[test]
fn a_passed_stage_greys_what_is_left_and_every_line_has_its_why() {
    let mut hands = Hands::with(vec![detail(DetailField::Mark, "K07")]);
    hands.open();
    hands.moved(Stage::Hollow);
    assert!(hands.page().earlier.is_empty());
    hands.act(Action::Piece(PieceAction::Earlier));
    let view = hands.page();
    assert_eq!(view.earlier[0].title, "Shape");
    assert!(view.earlier[0].lines.iter().all(|l| l.faded));
    for line in view.lines.iter().chain(&view.earlier[0].lines) {
        assert!(line.has_why, "{line:?}");
        hands.act(Action::Piece(PieceAction::Why(line.id.clone())));
        let why = hands.page().why.expect("a why");
        assert!(!why.why.is_empty() && why.line == line.text);
        hands.act(Action::Piece(PieceAction::CloseSheet));
    }
    hands.no_word_is_absent();
}

#[test]
fn the_caution_of_every_stage_is_always_there() {
    let mut hands = Hands::with(vec![detail(DetailField::Mark, "K07")]);
    hands.open();
    for stage in Stage::ALL {
        hands.moved(*stage);
        let view = hands.page();
        assert!(
            view.caution.len() + view.caution_note.len() > 60,
            "{stage:?}"
        );
    }
    hands.no_word_is_absent();
}

#[test]
fn the_general_cautions_come_up_once_and_reading_them_is_nothing_to_undo() {
    let mut hands = Hands::unread(vec![detail(DetailField::Mark, "K07")]);
    hands.act(Action::Open(Page::Piece(id())));
    let question = hands.app.question().expect("shown at first use").clone();
    assert!(question.caution && question.text.contains("Lathe:"));
    // Closed without an answer they come again.
    hands.act(Action::CloseQuestion);
    hands.act(Action::Back);
    hands.act(Action::Open(Page::Piece(id())));
    assert!(hands.app.question().is_some());
    // A full disk loses neither the answer nor the way to try again.
    hands.fail(true);
    hands.act(Action::Choose(0));
    assert!(hands.app.save_error().is_some() && !hands.app.shop().settings.cautions_read);
    hands.act(Action::TryAgain);
    assert!(hands.app.save_error().is_some());
    hands.fail(false);
    hands.act(Action::TryAgain);
    assert!(hands.app.save_error().is_none() && hands.app.shop().settings.cautions_read);
    assert!(hands.app.undo().last_done().is_none());
    hands.act(Action::Back);
    hands.act(Action::Open(Page::Piece(id())));
    assert!(hands.app.question().is_none());
}

#[test]
fn banners_say_what_is_out_of_the_ordinary_and_their_button_ends_it() {
    let mut hands = Hands::with(vec![detail(DetailField::Mark, "K07")]);
    hands.open();
    assert!(hands.page().banners.is_empty());
    for (fact, key) in [
        (PieceFact::HalfTurned, "resume"),
        (PieceFact::Paused { until: None }, "unpause"),
        (
            PieceFact::Paused {
                until: Some("2026-04-01".parse().unwrap()),
            },
            "unpause",
        ),
        (PieceFact::NotFound, "found"),
        (PieceFact::Deleted, "undelete"),
    ] {
        hands.fact(fact);
        let banner = hands.page().banners.into_iter().next().unwrap();
        assert_eq!(banner.key, key);
        let action = hands.app.way_action(key).unwrap();
        hands.act(action);
        assert!(hands.page().banners.is_empty(), "{key}");
    }
    hands.fact(PieceFact::Unknown {
        kind: "hologram".into(),
        raw: "{}".into(),
    });
    assert!(hands.page().banners[0].text.contains("newer version"));
    hands.no_word_is_absent();
}

#[test]
fn the_last_readings_stand_beside_the_section_with_their_verdict() {
    let mut hands = Hands::with(vec![
        detail(DetailField::Mark, "K07"),
        PieceFact::Detail {
            field: DetailField::Diameter,
            value: Some(mm(190.0)),
        },
        PieceFact::Detail {
            field: DetailField::Height,
            value: Some(mm(210.0)),
        },
        PieceFact::Detail {
            field: DetailField::WallWanted,
            value: Some(mm(10.0)),
        },
        PieceFact::StageMoved(Stage::Hollow),
    ]);
    hands.open();
    let empty = hands.page();
    assert_eq!(empty.stations.len(), 8, "seven stations and the floor");
    assert!(empty.legend.starts_with("No readings yet"));
    hands.fact(read(1, 10.5));
    hands.fact(read(2, 13.0));
    hands.fact(read(3, 8.0));
    let view = hands.page();
    let said: Vec<_> = view.stations[..4]
        .iter()
        .map(|s| (s.value.as_str(), s.verdict, s.verdict_text.as_str()))
        .collect();
    assert_eq!(
        said,
        [
            ("10.5", "even", "even"),
            ("13.0", "heavy", "3.0 heavy"),
            ("8.0", "thin", "2.0 thin"),
            ("", "", ""),
        ]
    );
    assert!(view.legend.ends_with("1 heavy, 1 thin"), "{}", view.legend);
    assert_eq!(view.head.subtitle, "190 × 210\u{a0}mm");
}

#[test]
fn another_method_is_named_and_has_no_bag_to_feel() {
    let mut hands = Hands::with(vec![
        detail(DetailField::Mark, "K07"),
        PieceFact::MethodChosen(Method::Paper),
        PieceFact::StageMoved(Stage::Bag),
    ]);
    hands.open();
    hands.days(3);
    let view = hands.page();
    assert_eq!(view.stage_in_words, "In paper, day 4");
    assert_eq!(view.look.unwrap().answers[0].key, "fine");
    let value = DetailValue::Text("white-ash".into());
    hands.act(Action::Piece(PieceAction::SetDetail {
        piece: id(),
        field: DetailField::Wood,
        value: Some(value),
    }));
    assert_eq!(hands.page().head.title, "White ash");
}
