//! Promises of the flaws: four taps note one, a glued crack stays a crack, nothing is lost when the disk is full.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;

use evenwall_app::action::Action;
use evenwall_app::flaws::{AgainChoice, FlawView, FlawsAction as F, FlawsView, FormView, SeenView};
use evenwall_app::piece::PieceAction;
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{PieceFact, StationRef};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Face, FlawChange, FlawKind, MassChange, Treatment};
use support_piece::{Hands, detail, id, mm};

fn hands() -> Hands {
    let diameter = PieceFact::Detail {
        field: DetailField::Diameter,
        value: Some(mm(140.0)),
    };
    let mut h = Hands::with(vec![
        detail(DetailField::Mark, "K07"),
        detail(DetailField::Wood, "white-ash"),
        diameter,
        PieceFact::StageMoved(Stage::Stabilise),
    ]);
    h.open();
    h
}

fn act(h: &mut Hands, action: F) {
    h.act(Action::Flaws(action));
}

fn list(h: &Hands) -> FlawsView {
    h.app.flaws_view(h.now()).unwrap()
}

fn one(h: &Hands) -> FlawView {
    h.app.flaw_view(h.now()).unwrap()
}

fn form(h: &Hands) -> FormView {
    one(h).form.expect("a form")
}

fn seen(h: &Hands) -> SeenView {
    one(h).seen.expect("a flaw that was noted")
}

fn begin(h: &mut Hands) {
    h.act(Action::Open(Page::Flaw(id(), None)));
}

fn note(h: &mut Hands, kind: FlawKind, done: Option<Treatment>) {
    begin(h);
    act(h, F::Kind(kind));
    act(h, F::Station(StationRef::Wall(3)));
    act(h, F::ClockAt(4.2));
    if let Some(done) = done {
        act(h, F::Treatment(done));
    }
    act(h, F::Save);
}

fn open_first(h: &mut Hands) {
    let flaw = h.piece().flaws[0].note.flaw.clone();
    h.act(Action::Open(Page::Flaw(id(), Some(flaw))));
}

fn cards(h: &Hands) -> Vec<(String, Vec<String>)> {
    list(h)
        .groups
        .into_iter()
        .map(|g| (g.title, g.cards.into_iter().map(|c| c.title).collect()))
        .collect()
}

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
fn a_glued_crack_reads_glued_and_still_a_crack() {
    let mut h = hands();
    note(&mut h, FlawKind::Check, Some(Treatment::Thin));
    h.days(3);
    let card = &list(&h).groups[0].cards[0];
    assert_eq!(card.lines[0], "Glued Thu 12 Mar, still a crack");
    // It was decided, so nothing is left to decide, and it can be looked at again.
    assert_eq!(list(&h).head.subtitle, "1 found, all decided");
}

#[test]
fn what_goes_through_says_treat_both_faces_until_both_are_recorded() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Knot));
    act(&mut h, F::Through(true));
    act(&mut h, F::Treatment(Treatment::Medium));
    act(&mut h, F::Face(Face::Outside));
    assert!(form(&h).advice.iter().any(|a| a.contains("both faces")));
    act(&mut h, F::Save);
    assert_eq!(list(&h).groups[0].cards[0].tag, "treat the inside too");
    open_first(&mut h);
    act(&mut h, F::TreatAgain);
    act(&mut h, F::Treatment(Treatment::Medium));
    act(&mut h, F::Face(Face::Inside));
    act(&mut h, F::Goes(1));
    act(&mut h, F::Save);
    assert_eq!(seen(&h).tag, "");
    assert!(
        seen(&h)
            .lines
            .iter()
            .any(|l| l == "Superglue medium, inside, 2 goes")
    );
    h.no_word_is_absent();
}

#[test]
fn left_until_dry_comes_back_on_its_day_and_a_look_answers_it() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::BarkInclusion));
    act(&mut h, F::Treatment(Treatment::Left));
    act(&mut h, F::Again(AgainChoice::ThreeDays));
    act(&mut h, F::Save);
    let card = &list(&h).groups[0].cards[0];
    assert_eq!(card.lines, ["Left until dry, look again Sun 15"]);
    assert_eq!(cards(&h)[0].0, "Decided");
    h.days(4);
    assert_eq!(cards(&h)[0].0, "Look again");
    let card = list(&h).groups[0].cards[0].clone();
    assert_eq!((card.tag.as_str(), card.tag_kind), ("1 day late", "late"));
    open_first(&mut h);
    act(&mut h, F::Looked(FlawChange::Same));
    h.act(Action::Back);
    h.act(Action::Open(Page::Flaws(id())));
    assert_eq!(cards(&h)[0].0, "Decided");
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
fn lengths_of_a_crack_are_told_one_after_the_other() {
    let mut h = hands();
    begin(&mut h);
    act(&mut h, F::Kind(FlawKind::Check));
    act(&mut h, F::Size("12".into()));
    act(&mut h, F::Save);
    open_first(&mut h);
    for (days, typed) in [(1, "15"), (2, "22")] {
        h.days(days);
        act(&mut h, F::Looked(FlawChange::Longer));
        act(&mut h, F::Length("lots".into()));
        act(&mut h, F::SaveLonger);
        assert!(
            one(&h)
                .longer
                .unwrap()
                .size
                .error
                .contains("cannot be read")
        );
        act(&mut h, F::Length(typed.into()));
        act(&mut h, F::SaveLonger);
        assert_eq!(one(&h).longer, None);
    }
    let seen = seen(&h);
    assert_eq!(seen.lengths, "Length: 12, then 15, then 22\u{a0}mm");
    assert_eq!(one(&h).head.title, "Check, 22\u{a0}mm");
    let days: Vec<&str> = seen.history.iter().map(|r| r.day.as_str()).collect();
    assert_eq!(days, ["Sun 15 Mar", "Fri 13 Mar", "Thu 12 Mar"]);
    h.no_word_is_absent();
}

#[test]
fn what_was_cut_away_is_decided_and_said_so() {
    let mut h = hands();
    note(&mut h, FlawKind::Knot, None);
    open_first(&mut h);
    act(&mut h, F::Looked(FlawChange::Gone));
    h.act(Action::Open(Page::Flaws(id())));
    assert_eq!(list(&h).groups[0].cards[0].lines, ["Cut away, Thu 12 Mar"]);
    assert_eq!(list(&h).head.subtitle, "1 found, all decided");
}

#[test]
fn a_correction_keeps_the_flaw_and_the_diary_keeps_what_it_said() {
    let mut h = hands();
    note(&mut h, FlawKind::Knot, Some(Treatment::Thin));
    open_first(&mut h);
    act(&mut h, F::Correct);
    assert_eq!(form(&h).kinds.iter().filter(|k| k.selected).count(), 1);
    assert!(
        form(&h).treatments.is_empty(),
        "what was done has the diary"
    );
    act(&mut h, F::Save);
    assert_eq!(
        h.app.undo().depth(),
        1,
        "nothing was changed, nothing is recorded"
    );
    act(&mut h, F::Correct);
    act(&mut h, F::Kind(FlawKind::BarkInclusion));
    act(&mut h, F::Size("14".into()));
    act(&mut h, F::Save);
    let flaw = &h.piece().flaws[0];
    assert_eq!(flaw.note.kind, FlawKind::BarkInclusion);
    assert!(flaw.decided(), "what was done stays");
    let entry = h
        .piece()
        .diary
        .iter()
        .find(|e| matches!(e.fact, PieceFact::FlawFound(_)))
        .unwrap();
    assert_eq!(entry.earlier.len(), 1);
    h.act(Action::Undo);
    assert_eq!(h.piece().flaws[0].note.kind, FlawKind::Knot);
}

#[test]
fn taken_back_a_flaw_is_gone_and_undo_brings_it_back() {
    let mut h = hands();
    note(&mut h, FlawKind::Knot, Some(Treatment::Thin));
    open_first(&mut h);
    assert_eq!(seen(&h).take_back, "Take it back");
    act(&mut h, F::AskTakeBack);
    assert!(h.app.question().unwrap().title.contains("Knot"));
    h.act(Action::Choose(0));
    assert!(h.piece().flaws.is_empty());
    assert_eq!(h.app.route().page(), Some(&Page::Flaws(id())));
    h.act(Action::Undo);
    assert_eq!(h.piece().flaws.len(), 1);
    assert!(h.piece().flaws[0].decided());
}

#[test]
fn a_flaw_that_stands_in_a_line_with_other_things_cannot_be_taken_back_alone() {
    use evenwall_piece::fact::FlawNote;
    use evenwall_piece::ids::FlawId;
    let noted = PieceFact::FlawFound(FlawNote {
        flaw: FlawId::new("f1").unwrap(),
        kind: FlawKind::Knot,
        station: None,
        clock: None,
        size_mm: None,
        through: false,
        note: String::new(),
    });
    let mut h = Hands::with(vec![detail(DetailField::Mark, "K07"), noted]);
    h.open();
    open_first(&mut h);
    assert_eq!(seen(&h).take_back, "");
}

#[test]
fn undo_and_redo_lead_to_the_same_views() {
    let mut h = hands();
    h.act(Action::Open(Page::Flaws(id())));
    let empty = list(&h);
    note(&mut h, FlawKind::RingShake, Some(Treatment::Left));
    let noted = list(&h);
    h.act(Action::Undo);
    assert_eq!(list(&h), empty);
    h.act(Action::Redo);
    assert_eq!(list(&h), noted);
    open_first(&mut h);
    let before = one(&h);
    act(&mut h, F::Looked(FlawChange::Same));
    let after = one(&h);
    assert_ne!(after, before);
    h.act(Action::Undo);
    assert_eq!(one(&h), before);
    h.act(Action::Redo);
    assert_eq!(one(&h), after);
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

#[test]
fn a_waxed_flaw_is_decided_and_the_piece_may_go_on() {
    let mut h = hands();
    note(&mut h, FlawKind::Check, Some(Treatment::Wax));
    // A glued or waxed check is asked about before it goes on.
    h.act(Action::Piece(PieceAction::MoveTo {
        piece: id(),
        stage: Stage::Bag,
        day: None,
        sure: false,
    }));
    assert_eq!(h.piece().stage(), Stage::Bag);
    assert_eq!(list_after(&mut h)[0], "Waxed Thu 12 Mar");
    h.no_word_is_absent();
}

fn list_after(h: &mut Hands) -> Vec<String> {
    h.act(Action::Open(Page::Flaws(id())));
    list(h).groups[0].cards[0].lines.clone()
}
