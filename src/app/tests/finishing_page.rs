//! Promises of Finish: what is not recorded is said once and never asked for again.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_truing;

use evenwall_app::action::Action;
use evenwall_app::flaws::FlawsAction;
use evenwall_app::route::Page;
use evenwall_app::truing::{FinishView, TruingAction as T, TruingSheet};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, Measure, PieceFact};
use evenwall_piece::stage::Stage;
use support_piece::{Hands, id};
use support_truing::{act, hands, page, wall};

fn finish(h: &Hands) -> FinishView {
    h.app.finish_view(h.now()).unwrap()
}

/// The same piece in Finish, on its page.
fn finishing(more: Vec<PieceFact>) -> Hands {
    let mut h = hands(vec![]);
    h.act(Action::Open(Page::Piece(id())));
    h.moved(Stage::Finish);
    for fact in more {
        h.fact(fact);
    }
    h.act(Action::Open(Page::Finishing(id())));
    h
}

fn coat(h: &mut Hands, text: &str, day: &str) {
    act(h, T::Open(TruingSheet::Coat));
    act(h, T::First(text.into()));
    act(h, T::Choose(day.into()));
}

#[test]
fn grits_are_chips_from_coarse_to_fine_and_own_words() {
    let mut h = finishing(vec![]);
    act(&mut h, T::Open(TruingSheet::Grits));
    assert!(!finish(&h).sheet.unwrap().active);
    for grit in ["240", "120", "600", "600"] {
        act(&mut h, T::Choose(grit.into()));
    }
    act(&mut h, T::First(" grey web ".into()));
    act(&mut h, T::Save);
    let grits = finish(&h).grits;
    assert_eq!(grits[0].title, "120, 240, grey web");
    assert_eq!(grits[0].note, "Thu 12 Mar");
    h.act(Action::Undo);
    assert!(finish(&h).grits.is_empty());
    h.no_word_is_absent();
}

#[test]
fn a_coat_goes_on_today_yesterday_or_on_a_day_that_is_typed() {
    let mut h = finishing(vec![]);
    coat(&mut h, "oil, first coat", "typed");
    for (typed, part) in [
        ("", "Type a day"),
        ("1 Apr", "lies ahead"),
        ("soon", "cannot be read"),
    ] {
        act(&mut h, T::Second(typed.into()));
        act(&mut h, T::Save);
        let error = finish(&h).sheet.unwrap().second.unwrap().error;
        assert!(error.contains(part), "{typed}: {error}");
    }
    act(&mut h, T::Second("9 Mar".into()));
    act(&mut h, T::Save);
    coat(&mut h, "oil", "today");
    act(&mut h, T::Save);
    coat(&mut h, "oil", "yesterday");
    act(&mut h, T::Save);
    let coats: Vec<_> = finish(&h)
        .coats
        .into_iter()
        .map(|c| (c.title, c.note))
        .collect();
    let row = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    assert_eq!(
        coats,
        [
            row("oil, first coat", "Mon 9 Mar"),
            row("oil", "Wed 11 Mar"),
            row("oil", "Thu 12 Mar"),
        ]
    );
    // What went on before is offered, each once.
    act(&mut h, T::Open(TruingSheet::Coat));
    let ways = finish(&h).sheet.unwrap().first.unwrap().ways;
    assert_eq!(ways, ["oil", "oil, first coat"]);
    act(&mut h, T::Save);
    let error = finish(&h).sheet.unwrap().first.unwrap().error;
    assert!(error.contains("Nothing was typed"));
    h.no_word_is_absent();
}

#[test]
fn finished_says_once_what_is_not_recorded_and_ends_the_piece() {
    let mut h = finishing(vec![]);
    act(&mut h, T::Finished);
    let question = h.app.question().unwrap().clone();
    assert_eq!(question.title, "Is K03 finished?");
    let missing = "final wall, grits, coats, size, weight, signature";
    assert!(question.text.contains(missing), "{}", question.text);
    h.act(Action::Choose(1));
    assert!(h.piece().living());
    act(&mut h, T::Finished);
    h.act(Action::Choose(0));
    assert_eq!(h.piece().end.as_ref().unwrap().1, End::Finished);
    assert_eq!(h.app.route().page(), Some(&Page::Piece(id())));
    h.act(Action::Undo);
    assert!(h.piece().living());
    h.no_word_is_absent();
}

#[test]
fn finished_on_the_page_of_a_piece_ends_nothing_before_it_was_asked() {
    let mut h = finishing(vec![PieceFact::Coat("oil".into())]);
    h.act(Action::Open(Page::Piece(id())));
    assert_eq!(h.page().next.unwrap().text, "Finished");
    h.touch_next();
    assert_eq!(h.app.route().page(), Some(&Page::Finishing(id())));
    assert!(h.piece().living());
    act(&mut h, T::Finished);
    let question = h.app.question().unwrap();
    assert!(question.text.contains("signature"), "{}", question.text);
}

#[test]
fn with_everything_recorded_finished_asks_nothing() {
    let mut h = finishing(vec![
        wall(1, 6.0),
        PieceFact::Grits("120, 240".into()),
        PieceFact::Coat("oil".into()),
        PieceFact::Detail {
            field: DetailField::FinishedSize,
            value: Some(DetailValue::Text("190 by 210".into())),
        },
        PieceFact::Weighed {
            mass_g: Measure::plain(412.0),
            tare_g: 0.0,
        },
    ]);
    // Signed: wood, year and mark are there to be kept or changed.
    act(&mut h, T::Open(TruingSheet::Signed));
    let offered = finish(&h).sheet.unwrap().first.unwrap().text;
    assert!(offered.ends_with(", 2026, K03"), "{offered}");
    act(&mut h, T::Save);
    let rows: Vec<String> = finish(&h).rows.into_iter().map(|r| r.note).collect();
    assert_eq!(rows[0], "1 of 8 read");
    assert_eq!(rows[1..3], ["190 by 210", "412\u{a0}g, today"]);
    assert_eq!(rows[3], offered);
    act(&mut h, T::Finished);
    assert_eq!(h.app.question(), None);
    assert!(h.piece().end.is_some());
    h.no_word_is_absent();
}

#[test]
fn a_piece_that_ended_offers_no_second_end() {
    let mut h = finishing(vec![PieceFact::Ended(End::Finished)]);
    assert_eq!(finish(&h).finished, "");
    h.act(Action::Open(Page::Truing(id())));
    assert_eq!(page(&h).next.0, "");
    // The flaw pages may still be opened from here.
    h.act(Action::Flaws(FlawsAction::Leave));
}
