//! Promises of noting a flaw: four taps are enough, nothing is guessed, nothing is lost when the disk is full.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_flaws;
mod support_piece;

use evenwall_app::action::Action;
use evenwall_app::flaws::{AgainChoice, FlawsAction as F};
use evenwall_app::route::Page;
use evenwall_piece::fact::StationRef;
use evenwall_piece::vocabulary::{FlawKind, MassChange, Treatment};
use support_flaws::{act, begin, cards, form, hands, list, note, one, open_first};
use support_piece::{Hands, id};

#[test]
fn an_empty_page_says_what_to_look_for() {
    let mut h = hands();
    h.act(Action::Open(Page::Flaws(id())));
    let (title, text) = list(&h).empty.unwrap();
    assert_eq!(title, "No flaws noted");
    assert_eq!(
        text,
        "Turn it once by hand and look for knots, bark, cracks."
    );
    h.no_word_is_absent();
}

#[test]
fn four_taps_note_a_flaw_and_lead_to_the_list() {
    let mut h = hands();
    note(&mut h, FlawKind::Knot, Some(Treatment::Thin));
    assert_eq!(h.app.route().page(), Some(&Page::Flaws(id())));
    let flaw = &h.piece().flaws[0];
    assert_eq!(flaw.note.kind, FlawKind::Knot);
    assert_eq!(flaw.note.station, Some(StationRef::Wall(3)));
    assert_eq!(flaw.note.clock.unwrap().hour(), 4);
    assert_eq!(flaw.last_treatment().unwrap().1.treatment, Treatment::Thin);
    // Weights before and after the glue are not compared.
    assert_eq!(h.piece().mass_changes[0].1, MassChange::Glue);
    assert_eq!(h.said(), "K07: Knot. Superglue thin");
    let view = list(&h);
    let card = &view.groups[0].cards[0];
    assert_eq!(card.place, "Station 3, 4 o'clock");
    assert_eq!(card.lines, ["Glued Thu 12 Mar", "Superglue thin"]);
    assert_eq!(view.letters[0].text, "A");
    assert!(!view.letters[0].open);
    assert!(view.letters[0].x > 0.5, "4 o'clock lies at the right");
    assert_eq!(h.app.route().pages.len(), 2, "back leads to the piece");
    h.no_word_is_absent();
}

#[test]
fn everything_but_the_kind_may_be_left_out() {
    let mut h = hands();
    begin(&mut h);
    assert!(!form(&h).save_active);
    act(&mut h, F::Save);
    assert!(h.app.question().unwrap().text.contains("one of the six"));
    h.act(Action::CloseQuestion);
    act(&mut h, F::Kind(FlawKind::Pith));
    assert!(form(&h).save_active);
    act(&mut h, F::Save);
    assert_eq!(
        cards(&h),
        [("To decide".to_owned(), vec!["Pith".to_owned()])]
    );
    let card = &list(&h).groups[0].cards[0];
    assert_eq!(card.place, "Place not noted");
    assert!(list(&h).legend.contains("Without a place: A"));
}

#[test]
fn a_station_and_a_treatment_touched_again_are_cleared() {
    let mut h = hands();
    begin(&mut h);
    for _ in 0..2 {
        act(&mut h, F::Station(StationRef::Floor));
        act(&mut h, F::Treatment(Treatment::Wax));
    }
    assert!(form(&h).spots.iter().all(|s| !s.picked));
    assert!(form(&h).treatments.iter().all(|t| !t.selected));
    act(&mut h, F::ClockStep(1));
    assert_eq!(form(&h).clock.unwrap().value, "12 o'clock");
    act(&mut h, F::ClearClock);
    assert_eq!(form(&h).clock.unwrap().clear, "");
}

#[test]
fn the_suggestion_stands_at_its_grade_with_its_reason() {
    let mut h = hands();
    begin(&mut h);
    let suggested = |h: &Hands| -> (&'static str, String) {
        let form = form(h);
        let found: Vec<_> = form
            .treatments
            .iter()
            .filter(|t| t.note.starts_with("Suggested"))
            .collect();
        assert_eq!(found.len(), 1);
        (found[0].key, found[0].note.clone())
    };
    assert!(
        form(&h)
            .treatments
            .iter()
            .all(|t| !t.note.starts_with("Suggested"))
    );
    act(&mut h, F::Kind(FlawKind::Knot));
    let (key, why) = suggested(&h);
    assert_eq!(key, "thin");
    assert!(
        why.contains("2.5\u{a0}mm still comes off the outside"),
        "{why}"
    );
    act(&mut h, F::Through(true));
    let (key, why) = suggested(&h);
    assert_eq!(
        (key, why.contains("thin would run through")),
        ("medium", true)
    );
    // Leaving it is a sound decision, and what is said is common practice.
    let form = form(&h);
    assert_eq!(form.treatments[0].note, "A sound decision too.");
    assert_eq!(form.practice, "Common practice, no source.");
    assert!(form.caution.0.contains("Gloves") || form.caution.0.contains("gloves"));
    h.no_word_is_absent();
}

#[test]
fn a_day_that_cannot_be_read_or_lies_behind_is_refused_in_its_field() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Knot));
    act(&mut h, F::Treatment(Treatment::Left));
    act(&mut h, F::Again(AgainChoice::Typed));
    for (typed, part) in [
        ("", "Type a day"),
        ("someday", "cannot be read as a day"),
        ("1 Mar", "not ahead"),
    ] {
        act(&mut h, F::AgainDay(typed.into()));
        act(&mut h, F::Save);
        let day = form(&h).again_day.unwrap();
        assert!(day.error.contains(part), "{typed}: {}", day.error);
        assert!(h.piece().flaws.is_empty());
    }
    act(&mut h, F::AgainDay("14 Mar".into()));
    act(&mut h, F::Save);
    let again = h.piece().flaws[0].look_again().unwrap();
    assert_eq!(again.to_string(), "2026-03-14");
}

#[test]
fn a_length_is_read_or_refused_or_asked_about_and_never_guessed() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Check));
    for typed in ["long", "-3", "0", "9999", "12 kg"] {
        act(&mut h, F::Size(typed.into()));
        act(&mut h, F::Save);
        let size = form(&h).size.expect("opened where the fault is");
        assert!(!size.error.is_empty(), "{typed}");
        assert!(h.piece().flaws.is_empty(), "{typed}");
    }
    act(&mut h, F::Size("1,250".into()));
    act(&mut h, F::Save);
    let size = form(&h).size.unwrap();
    assert!(size.error.contains("two ways"), "{}", size.error);
    assert_eq!(size.ways, ["1.25\u{a0}mm"]);
    act(&mut h, F::Size("3/4\"".into()));
    act(&mut h, F::Save);
    let noted = h.piece().flaws[0].note.size_mm.clone().unwrap();
    assert!((noted.value - 19.05).abs() < 1e-9);
    assert_eq!(noted.typed, "3/4\"");
}

#[test]
fn a_long_note_is_kept_whole() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Punky));
    let long = "ż".repeat(10_000);
    act(&mut h, F::Note(format!("  {long}\n")));
    act(&mut h, F::Save);
    assert_eq!(h.piece().flaws[0].note.note, long);
}

#[test]
fn a_full_disk_loses_nothing_and_trying_again_writes_it_once() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Check));
    act(&mut h, F::Treatment(Treatment::Medium));
    h.fail(true);
    act(&mut h, F::Save);
    assert!(h.app.save_error().is_some());
    assert!(
        form(&h).kinds.iter().any(|k| k.selected),
        "the form is as it was"
    );
    assert!(h.piece().flaws.is_empty());
    // Elsewhere, later: what is tried again is what was to be saved.
    h.act(Action::Back);
    h.fail(false);
    h.act(Action::TryAgain);
    assert_eq!(h.app.save_error(), None);
    assert_eq!(h.piece().flaws.len(), 1);
    assert_eq!(
        h.piece().flaws[0].last_treatment().unwrap().1.treatment,
        Treatment::Medium
    );
    assert_eq!(h.app.route().page(), Some(&Page::Piece(id())));
}

#[test]
fn going_back_from_a_form_leads_to_the_flaw_and_then_to_the_page_before() {
    let mut h = hands();
    note(&mut h, FlawKind::Knot, None);
    open_first(&mut h);
    act(&mut h, F::TreatAgain);
    assert!(one(&h).form.is_some());
    act(&mut h, F::Leave);
    assert!(one(&h).seen.is_some());
    act(&mut h, F::Leave);
    assert_eq!(h.app.route().page(), Some(&Page::Flaws(id())));
}

#[test]
fn a_form_that_was_left_begins_afresh() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Knot));
    act(&mut h, F::Leave);
    begin(&mut h);
    assert!(form(&h).kinds.iter().all(|k| !k.selected));
}
