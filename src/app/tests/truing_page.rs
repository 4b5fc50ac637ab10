//! Promises of True: cracks come first and filling clears nothing, and the sum is the trade's.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_truing;

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::truing::{SheetView, TruingAction as T, TruingSheet};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, FlawNote, FlawTreated, Measure, PieceFact, StationRef};
use evenwall_piece::ids::FlawId;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, FlawKind, Treatment, TrueDecision};
use support_piece::{Hands, detail, id};
use support_truing::{act, answer, hands, measure, page};

fn check(through: bool) -> PieceFact {
    PieceFact::FlawFound(FlawNote {
        flaw: FlawId::new("c1").unwrap(),
        kind: FlawKind::Check,
        station: Some(StationRef::Wall(2)),
        clock: Clock::new(1),
        size_mm: None,
        through,
        note: String::new(),
    })
}

fn glued() -> PieceFact {
    PieceFact::FlawTreated(FlawTreated {
        flaw: FlawId::new("c1").unwrap(),
        treatment: Treatment::Thin,
        face: None,
        goes: None,
        look_again: None,
    })
}

fn sheet(h: &Hands) -> SheetView {
    page(h).sheet.expect("a sheet")
}

fn decide(h: &mut Hands, key: &str, why: &str) {
    act(h, T::Open(TruingSheet::Decision));
    act(h, T::Choose(key.into()));
    act(h, T::First(why.into()));
    act(h, T::Save);
}

#[test]
fn cracks_come_first_and_nothing_else_is_offered_before_the_answer() {
    let mut h = hands(vec![check(false), glued()]);
    h.days(2);
    let view = page(&h);
    assert_eq!(view.crack_title, "Any crack?");
    assert_eq!(view.cracks[0].title, "Check, station 2, 1 o'clock");
    assert_eq!(view.cracks[0].note, "Glued Thu 12 Mar, still a crack");
    assert_eq!(view.next.0, "");
    answer(&mut h, CrackAnswer::None);
    assert_eq!(page(&h).next.0, "Measure the oval");
    assert_eq!(page(&h).answered, "Answered Sat 14 Mar");
    assert_eq!(page(&h).note_crack, "");
    answer(&mut h, CrackAnswer::Hairline);
    assert_eq!(page(&h).note_crack, "Note the crack");
    assert!(page(&h).caution.contains("in doubt"));
    h.no_word_is_absent();
}

#[test]
fn rim_or_floor_advises_not_to_spin_it_and_filling_never_takes_that_back() {
    let mut h = hands(vec![]);
    answer(&mut h, CrackAnswer::RimOrFloor);
    let said = |h: &Hands| (page(h).caution, page(h).caution_note);
    let (caution, note) = said(&h);
    assert!(caution.starts_with("Do not spin it."), "{caution}");
    assert!(note.contains("does not give the strength back"));
    decide(&mut h, "fill", "epoxy and dust");
    assert_eq!(said(&h), (caution.clone(), note));
    // It is advice, not a lock: going on is possible, with the caution in the sheet.
    act(&mut h, T::Open(TruingSheet::Decision));
    assert_eq!(sheet(&h).caution, caution);
}

#[test]
fn a_crack_through_the_wall_keeps_its_caution_once_it_is_glued() {
    let open = hands(vec![check(true)]);
    let filled = hands(vec![check(true), glued()]);
    assert!(page(&open).caution.contains("goes through the wall"));
    assert_eq!(page(&filled).caution, page(&open).caution);
}

#[test]
fn no_speed_stands_anywhere_in_true() {
    let mut h = hands(vec![check(false)]);
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "195", "187");
    let text = format!("{:?}", page(&h)).to_lowercase();
    assert!(!text.contains("rpm"), "{text}");
    assert!(!text.contains("speed "), "{text}");
}

#[test]
fn longest_and_shortest_the_wrong_way_round_are_asked_about() {
    let mut h = hands(vec![]);
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "186.4", "195.4");
    let question = h.app.question().unwrap().clone();
    assert_eq!(question.title, "Were the two swapped?");
    assert_eq!(h.piece().finish.oval, None);
    h.act(Action::CloseQuestion);
    assert!(page(&h).sheet.is_some(), "what was typed is still there");
    act(&mut h, T::Save);
    h.act(Action::Choose(0));
    let oval = h.piece().finish.oval.clone().unwrap();
    assert!((oval.longest_mm.value - 195.4).abs() < 1e-9);
    assert!((oval.shortest_mm.value - 186.4).abs() < 1e-9);
    assert_eq!(page(&h).sheet, None);
    h.no_word_is_absent();
}

#[test]
fn nonsense_is_refused_in_its_field_and_both_fields_are_read() {
    let mut h = hands(vec![]);
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "wide", "");
    let sheet = sheet(&h);
    assert!(sheet.first.unwrap().error.contains("cannot be read"));
    assert!(sheet.second.unwrap().error.contains("Nothing was typed"));
    for typed in ["-195", "19500", "195 187", "195 kg"] {
        act(&mut h, T::First(typed.into()));
        act(&mut h, T::Save);
        assert!(
            !page(&h).sheet.unwrap().first.unwrap().error.is_empty(),
            "{typed}"
        );
    }
    assert_eq!(h.piece().finish.oval, None);
}

#[test]
fn the_spigot_fits_or_does_not_and_never_holds() {
    let mut h = hands(vec![]);
    for (typed, kind, words) in [
        ("52", "even", "Fits the jaws"),
        ("48", "thin", "Too small for the jaws"),
    ] {
        act(&mut h, T::Open(TruingSheet::Spigot));
        act(&mut h, T::First(typed.into()));
        act(&mut h, T::Save);
        let fits = page(&h).fits.unwrap();
        assert_eq!((fits.0, fits.1.as_str()), (kind, words));
        assert_eq!(fits.2, "Jaws not said, 50\u{a0}mm assumed.");
        assert!(!format!("{fits:?}").contains("hold"));
    }
    h.no_word_is_absent();
}

#[test]
fn jaws_that_are_named_but_not_listed_are_said_to_be_so() {
    let mut h = hands(vec![detail(DetailField::Jaws, "the old set")]);
    act(&mut h, T::Open(TruingSheet::Spigot));
    act(&mut h, T::First("52".into()));
    act(&mut h, T::Save);
    assert_eq!(
        page(&h).fits.unwrap().2,
        "“the old set” is not among the jaws of Shop, 50\u{a0}mm assumed."
    );
    h.no_word_is_absent();
}

#[test]
fn the_decision_leads_where_it_says_with_its_reason() {
    let mut h = hands(vec![]);
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "195", "189");
    assert_eq!(page(&h).next.0, "Decide");
    act(&mut h, T::Next);
    assert!(!sheet(&h).active, "nothing is chosen yet");
    act(&mut h, T::Save);
    assert_eq!(h.piece().finish.decision, None);
    act(&mut h, T::Close);

    decide(&mut h, "fill", "hairline at the rim");
    assert_eq!(page(&h).decision.1, "Fill it first");
    assert_eq!(page(&h).decision_note, "Thu 12 Mar: hairline at the rim");
    act(&mut h, T::Next);
    assert_eq!(h.app.route().page(), Some(&Page::Flaws(id())));
    h.act(Action::Back);

    decide(&mut h, "go", "");
    assert_eq!(page(&h).decision_note, "Thu 12 Mar");
    assert_eq!(page(&h).next.0, "Next stage: Finish");
    act(&mut h, T::Next);
    assert_eq!(h.piece().stage(), Stage::Finish);
    assert_eq!(h.app.route().page(), Some(&Page::Finishing(id())));
    h.act(Action::Undo);
    assert_eq!(h.piece().stage(), Stage::True);
    h.no_word_is_absent();
}

#[test]
fn scrap_leads_to_how_it_ended() {
    let mut h = hands(vec![]);
    answer(&mut h, CrackAnswer::RimOrFloor);
    decide(&mut h, "scrap", "crack half way across");
    assert_eq!(h.app.route().page(), Some(&Page::Ending(id())));
    let (_, decision, reason) = h.piece().finish.decision.clone().unwrap();
    assert_eq!(
        (decision, reason.as_str()),
        (TrueDecision::Scrap, "crack half way across")
    );
    assert!(h.piece().living(), "how it was lost is said there");
}

#[test]
fn undo_leads_back_to_the_same_view_after_each_thing_recorded() {
    let mut h = hands(vec![check(false)]);
    type Step = fn(&mut Hands);
    let steps: [Step; 4] = [
        |h| answer(h, CrackAnswer::Hairline),
        |h| measure(h, "195", "189"),
        |h| {
            act(h, T::Open(TruingSheet::Spigot));
            act(h, T::First("52.5".into()));
            act(h, T::Save);
        },
        |h| decide(h, "go", "sound"),
    ];
    for step in steps {
        let before = page(&h);
        step(&mut h);
        let after = page(&h);
        assert_ne!(after, before);
        h.act(Action::Undo);
        assert_eq!(page(&h), before);
        h.act(Action::Redo);
        assert_eq!(page(&h), after);
    }
}

#[test]
fn a_full_disk_loses_nothing_typed() {
    let mut h = hands(vec![]);
    answer(&mut h, CrackAnswer::None);
    h.fail(true);
    measure(&mut h, "195", "189");
    assert!(h.app.save_error().is_some());
    assert_eq!(sheet(&h).first.unwrap().text, "195");
    h.act(Action::Back);
    h.fail(false);
    h.act(Action::TryAgain);
    assert!(h.piece().finish.oval.is_some());
    assert_eq!(h.app.route().page(), Some(&Page::Piece(id())));
}

#[test]
fn a_sheet_that_is_saved_unchanged_records_nothing_and_rounds_nothing() {
    let mut h = hands(vec![
        PieceFact::SpigotTrued(Measure::plain(57.2)),
        PieceFact::Oval {
            longest_mm: Measure::plain(195.2),
            shortest_mm: Measure::plain(188.8),
        },
    ]);
    answer(&mut h, CrackAnswer::None);
    decide(&mut h, "go", "dry and sound");
    let before = h.piece().diary.len();
    for which in [
        TruingSheet::Spigot,
        TruingSheet::Oval,
        TruingSheet::Decision,
    ] {
        act(&mut h, T::Open(which));
        act(&mut h, T::Save);
        assert!(page(&h).sheet.is_none(), "{which:?} is closed");
        assert_eq!(h.piece().diary.len(), before, "{which:?}");
    }
    // One of two diameters changed: the other keeps its figure.
    act(&mut h, T::Open(TruingSheet::Oval));
    act(&mut h, T::Second("187".into()));
    act(&mut h, T::Save);
    let oval = h.piece().finish.oval.clone().unwrap();
    assert_eq!(
        (oval.longest_mm.value, oval.shortest_mm.value),
        (195.2, 187.0)
    );
    // A size is changed as it was typed, and a new one is recorded.
    act(&mut h, T::Open(TruingSheet::Spigot));
    act(&mut h, T::First("56.3".into()));
    act(&mut h, T::Save);
    act(&mut h, T::Open(TruingSheet::Spigot));
    assert_eq!(sheet(&h).first.unwrap().text, "56.3");
    assert_eq!(h.piece().finish.spigot_mm.clone().unwrap().value, 56.3);
}
