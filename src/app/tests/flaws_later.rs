//! Promises of what becomes of a flaw: a glued crack stays a crack, a look is asked for again, and undo leads back.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_flaws;
mod support_piece;

use evenwall_app::action::Action;
use evenwall_app::flaws::{AgainChoice, FlawsAction as F};
use evenwall_app::piece::PieceAction;
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Face, FlawChange, FlawKind, Treatment};
use support_flaws::{act, begin, cards, form, hands, list, note, one, open_first, seen};
use support_piece::{Hands, detail, id};

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
    h.act(Action::CloseQuestion);
    h.act(Action::Back);
    h.act(Action::Open(Page::Flaws(id())));
    assert_eq!(cards(&h)[0].0, "Decided");
}

#[test]
fn a_look_on_its_day_asks_for_the_next_day_and_glues_nothing_anew() {
    let mut h = hands();
    for treatment in [Treatment::Thin, Treatment::Left] {
        begin(&mut h);
        act(&mut h, F::Kind(FlawKind::Check));
        act(&mut h, F::Treatment(treatment));
        act(&mut h, F::Again(AgainChoice::ThreeDays));
        act(&mut h, F::Save);
        let flaw = h.piece().flaws.last().unwrap().note.flaw.clone();
        h.act(Action::Open(Page::Flaw(id(), Some(flaw.clone()))));
        h.days(3);
        act(&mut h, F::Looked(FlawChange::Same));
        let question = h.app.question().unwrap().clone();
        let labels: Vec<_> = question.choices.iter().map(|c| c.label.as_str()).collect();
        assert_eq!(labels, ["In 3 days", "In a week", "In 2 weeks", "Not said"]);
        h.act(Action::Choose(1));
        let day = h.now().date_naive() + chrono::Days::new(7);
        assert_eq!(h.piece().flaw(&flaw).unwrap().look_again(), Some(day));
        // *Not said* keeps none.
        h.days(7);
        act(&mut h, F::Looked(FlawChange::Longer));
        act(&mut h, F::SaveLonger);
        h.act(Action::Choose(3));
        assert_eq!(h.piece().flaw(&flaw).unwrap().look_again(), None);
        let events = &h.piece().flaw(&flaw).unwrap().events;
        assert_eq!(
            events.len(),
            3,
            "treated once, looked at twice: {treatment:?}"
        );
        h.act(Action::Open(Page::Flaws(id())));
    }
    h.no_word_is_absent();
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
