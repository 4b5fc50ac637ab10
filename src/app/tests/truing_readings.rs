//! Promises of more readings: any station, two or many round, each typed once, nothing lost.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_truing;

use evenwall_app::action::Action;
use evenwall_app::diary::DiaryAction;
use evenwall_app::route::Page;
use evenwall_app::truing::{SheetView, TruingAction as T, TruingSheet};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::SectionMeasured;
use evenwall_piece::vocabulary::{CrackAnswer, RoundHow};
use support_piece::{Hands, id};
use support_truing::{act, answer, laid, measure, page};

fn sheet(h: &Hands) -> SheetView {
    page(h).sheet.expect("a sheet")
}

fn begin(h: &mut Hands, station: &str, way: &str) {
    act(h, T::Open(TruingSheet::Where));
    act(h, T::Choose(station.into()));
    act(h, T::Choose(way.into()));
    act(h, T::Save);
}

fn type_in(h: &mut Hands, value: &str) {
    act(h, T::First(value.into()));
    act(h, T::Save);
}

fn round(h: &Hands, station: u8) -> (RoundHow, Vec<(f64, f64)>) {
    let SectionMeasured::Round { how, readings } =
        h.piece().finish.ovals[&station].measured.clone()
    else {
        panic!("readings round");
    };
    let all = readings.iter().map(|r| (r.turn_deg, r.mm.value)).collect();
    (how, all)
}

#[test]
fn another_station_is_measured_by_longest_and_shortest() {
    let mut h = laid(vec![]);
    answer(&mut h, CrackAnswer::None);
    begin(&mut h, "2", "two");
    assert_eq!(sheet(&h).title, "Measure station 2");
    act(&mut h, T::First("182".into()));
    act(&mut h, T::Second("177".into()));
    act(&mut h, T::Save);
    assert!(h.piece().finish.oval.is_none());
    let two = &page(&h).places[1];
    assert!(
        two.note.starts_with("182.0 by 177.0\u{a0}mm. Leaves"),
        "{}",
        two.note
    );
    assert_eq!(page(&h).next.0, "Decide", "an oval is an oval");
    // The widest place by the same way is the oval as it always was.
    begin(&mut h, "3", "two");
    act(&mut h, T::First("195".into()));
    act(&mut h, T::Second("189".into()));
    act(&mut h, T::Save);
    assert!(h.piece().finish.oval.is_some());
    assert_eq!(page(&h).longest.1, "195");
    h.no_word_is_absent();
}

#[test]
fn four_diameters_are_typed_one_after_the_other_by_the_clock() {
    let mut h = laid(vec![]);
    answer(&mut h, CrackAnswer::None);
    begin(&mut h, "3", "diameters-4");
    let first = sheet(&h);
    assert_eq!(first.title, "Station 3, diameters");
    assert_eq!(first.first.unwrap().label, "At 12:00, reading 1 of 4");
    assert_eq!(first.save, "Next reading");
    assert!(first.note.contains("12:00 is the pencil line"));
    type_in(&mut h, "195");
    assert_eq!(sheet(&h).first.unwrap().label, "At 1:30, reading 2 of 4");
    type_in(&mut h, "nonsense");
    assert!(sheet(&h).first.unwrap().error.contains("cannot be read"));
    type_in(&mut h, "192");
    type_in(&mut h, "189");
    assert_eq!(sheet(&h).save, "Record");
    // One that was typed can be gone back to.
    act(&mut h, T::Choose("1".into()));
    assert_eq!(sheet(&h).first.unwrap().text, "192");
    act(&mut h, T::First("192.5".into()));
    act(&mut h, T::Save);
    assert_eq!(sheet(&h).first.unwrap().label, "At 4:30, reading 4 of 4");
    assert_eq!(
        h.piece().finish.ovals.len(),
        0,
        "nothing is recorded half-way"
    );
    type_in(&mut h, "191.5");
    assert!(page(&h).sheet.is_none());
    assert_eq!(
        round(&h, 3),
        (
            RoundHow::Diameters,
            vec![(0.0, 195.0), (45.0, 192.5), (90.0, 189.0), (135.0, 191.5)]
        )
    );
    act(&mut h, T::Show(3));
    assert!(page(&h).oval.unwrap().sum.starts_with("From 4 diameters."));
    assert_eq!(page(&h).longest.1, "195");
    h.no_word_is_absent();
}

#[test]
fn distances_from_the_centre_mark_see_where_the_axis_is_best() {
    let mut h = laid(vec![]);
    answer(&mut h, CrackAnswer::None);
    begin(&mut h, "3", "centre-8");
    // A circle of 95 mm radius, 2 mm off the mark towards 3 o'clock.
    for i in 0..8 {
        let angle = std::f64::consts::TAU * f64::from(i) / 8.0;
        let across = 2.0 * angle.sin();
        let r = across + (95.0_f64.powi(2) - (2.0 * angle.cos()).powi(2)).sqrt();
        type_in(&mut h, &format!("{r:.2}"));
    }
    let (how, readings) = round(&h, 3);
    assert_eq!((how, readings.len()), (RoundHow::FromCentre, 8));
    assert!((readings[1].0 - 45.0).abs() < 1e-12);
    let notes = page(&h).notes.join(" ");
    assert!(
        notes.contains("mm from the centre mark, towards 3:00"),
        "{notes}"
    );
    assert!(!notes.contains("is taken off"), "{notes}");
    h.no_word_is_absent();
}

#[test]
fn undo_leads_back_and_a_full_disk_loses_no_reading() {
    let mut h = laid(vec![]);
    answer(&mut h, CrackAnswer::None);
    let before = page(&h);
    begin(&mut h, "2", "diameters-4");
    for value in ["180", "178", "176"] {
        type_in(&mut h, value);
    }
    h.fail(true);
    type_in(&mut h, "178");
    assert!(h.app.save_error().is_some());
    assert!(page(&h).sheet.is_some(), "what was typed is still there");
    h.fail(false);
    h.act(Action::TryAgain);
    assert_eq!(round(&h, 2).1.len(), 4);
    let after = page(&h);
    h.act(Action::Undo);
    assert_eq!(page(&h), before);
    h.act(Action::Redo);
    assert_eq!(page(&h), after);
    // Gone over again without a change, nothing is recorded.
    let entries = h.piece().diary.len();
    begin(&mut h, "2", "diameters-4");
    for _ in 0..4 {
        act(&mut h, T::Save);
    }
    assert!(page(&h).sheet.is_none());
    assert_eq!(h.piece().diary.len(), entries);
}

#[test]
fn the_diary_tells_ovals_and_corrects_them_in_place() {
    let mut h = laid(vec![]);
    measure(&mut h, "195", "189");
    begin(&mut h, "2", "diameters-4");
    for value in ["180", "178", "176", "178.5"] {
        type_in(&mut h, value);
    }
    h.act(Action::Open(Page::Diary(id())));
    let entries = |h: &Hands| h.app.diary_view(&id(), h.now()).unwrap().entries;
    let find = |h: &Hands, start: &str| {
        let found = entries(h).into_iter().find(|e| e.title.starts_with(start));
        found.unwrap_or_else(|| panic!("{start}"))
    };
    let round_entry = find(&h, "Station 2: 4 diameters round");
    assert_eq!(round_entry.note, "180.0 · 178.0 · 176.0 · 178.5\u{a0}mm");
    let oval = find(&h, "Longest 195.0, shortest 189.0");
    let correct = |h: &mut Hands, entry: &str, value: &str| {
        h.act(Action::Diary(DiaryAction::Toggle(entry.into())));
        h.act(Action::Diary(DiaryAction::EditValue(value.into())));
        h.act(Action::Diary(DiaryAction::Save));
        h.app.diary_view(&id(), h.now()).unwrap().editor.problem
    };
    assert_eq!(correct(&mut h, &oval.id, "195; 188"), "");
    assert_eq!(
        h.piece().finish.oval.as_ref().unwrap().shortest_mm.value,
        188.0
    );
    for (typed, problem) in [
        ("195", "1 numbers were found, and 2 are wanted"),
        ("188; 195", "The shortest is more than the longest"),
        ("195; wide", "cannot be read"),
    ] {
        let said = correct(&mut h, &oval.id, typed);
        assert!(said.contains(problem), "{typed}: {said}");
        h.act(Action::Diary(DiaryAction::Toggle(oval.id.clone())));
    }
    assert_eq!(
        correct(&mut h, &round_entry.id, "180.0; 178.0; 175; 178.5"),
        ""
    );
    assert_eq!(round(&h, 2).1[2], (90.0, 175.0));
    let amended = |e: &evenwall_piece::diary::DiaryEntry| {
        matches!(e.fact, PieceFact::OvalRound { .. }) && e.earlier.len() == 1
    };
    assert!(
        h.piece().diary.iter().any(amended),
        "the old value stays visible"
    );
    h.no_word_is_absent();
}
