//! Promises of what dried well: own pieces are counted as they were, small numbers stay small, and nothing is foretold.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_dried;

use evenwall_piece::fact::End;
use evenwall_piece::vocabulary::LostHow;
use support_dried::{Shelf, counts, lost, plain, row, view};

#[test]
fn nothing_dried_yet_says_so_and_shows_nothing_else() {
    let app = Shelf::default().open();
    let view = view(&app);
    let (title, text) = view.empty.clone().unwrap();
    assert!(title.contains("Nothing has dried") && !text.is_empty());
    assert!(view.sections.is_empty() && view.shares.is_empty() && view.curve.is_none());
    assert_eq!(view.touch("twin-c01"), None);
}

#[test]
fn under_twenty_it_is_seven_of_nine_and_no_per_cent() {
    let mut shelf = Shelf::default();
    shelf.wood("sycamore", 9, 2);
    shelf.wood("yew", 3, 1);
    shelf.dried(vec![], 20, 0, None);
    let view = view(&shelf.open());
    assert_eq!(view.subtitle, "9 kept, 3 lost in drying");
    assert_eq!(
        counts(&view),
        [
            ("Sycamore".to_owned(), "7 of 9 kept".to_owned()),
            ("Yew".to_owned(), "2 of 3 kept".to_owned()),
        ]
    );
    let sycamore = &view.shares[0];
    assert!(sycamore.drawn && sycamore.low < sycamore.share && sycamore.share < sycamore.high);
    // Wilson 95 % of 7 in 9 is 0.45 to 0.94: outwards to tenths.
    assert_eq!(
        sycamore.note,
        "With so few, anything from 4 to 10 in ten would fit"
    );
    assert!(!view.shares[1].drawn && view.shares[1].note.contains("Too few"));
    assert!(
        view.verdict.contains("Too few of a kind"),
        "{}",
        view.verdict
    );
    // The curve is over all thirteen pieces: no per cent anywhere on the page.
    let page = format!("{view:?}");
    assert!(!page.contains('%'), "{page}");
    assert_eq!(view.curve.unwrap().y_ticks[0].text, "all");
}

#[test]
fn from_twenty_on_it_is_per_cent_with_the_range_beside_it() {
    let mut shelf = Shelf::default();
    shelf.wood("sycamore", 20, 1);
    shelf.wood("black-cherry", 20, 17);
    let view = view(&shelf.open());
    let sycamore = view.shares.iter().find(|s| s.label == "Sycamore").unwrap();
    // Wilson 95 % of 19 in 20: 76 to 99 %.
    assert_eq!(
        plain(&sycamore.note),
        "95 %; with this many, 76 to 99 % would fit as well"
    );
    let said = plain(&view.verdict);
    assert!(
        said.starts_with("Black cherry (3 of 20) and Sycamore (19 of 20)"),
        "{said}"
    );
    assert_eq!(plain(&view.curve.as_ref().unwrap().y_ticks[1].text), "50 %");
    assert!(row(&view, "step-40").contains("% whole"));
}

#[test]
fn what_luck_could_do_is_not_called_a_difference() {
    let mut shelf = Shelf::default();
    shelf.wood("sycamore", 9, 2);
    shelf.wood("yew", 9, 4);
    let view = view(&shelf.open());
    assert!(view.verdict.contains("Luck alone"), "{}", view.verdict);
}

#[test]
fn the_lathe_is_not_blamed_on_the_drying() {
    let mut shelf = Shelf::default();
    shelf.wood("yew", 6, 1);
    shelf.dried(vec![], 200, 90, Some(lost(LostHow::DigIn)));
    shelf.dried(vec![], 200, 90, Some(lost(LostHow::Mould)));
    shelf.dried(vec![], 200, 90, Some(End::GivenAway));
    shelf.dried(vec![], 30, 0, None);
    let view = view(&shelf.open());
    for (id, n) in [
        ("kept", "5"),
        ("lost", "2"),
        ("drying", "1"),
        ("lost-otherwise", "1"),
        ("gone", "1"),
    ] {
        assert_eq!(row(&view, id), n, "{id}");
    }
    assert_eq!(row(&view, "how-cracked-drying"), "1 piece");
    assert_eq!(row(&view, "where-rim"), "2 pieces");
    assert_eq!(row(&view, "why-too-fast"), "2 pieces");
    assert_eq!(row(&view, "others-dig-in"), "1 piece");
    let how = view.sections.iter().find(|s| s.key == "how").unwrap();
    assert!(how.rows.iter().all(|r| r.id != "how-dig-in"));
}

#[test]
fn the_curve_takes_losses_as_events_and_the_living_as_seen_so_far() {
    let mut shelf = Shelf::default();
    for days in [10, 30] {
        let end = Some(lost(LostHow::CrackedDrying));
        shelf.dried(vec![], 200, days, end);
    }
    shelf.dried(vec![], 200, 100, Some(End::Finished));
    shelf.dried(vec![], 20, 0, None);
    shelf.dried(vec![], 60, 0, None);
    let view = view(&shelf.open());
    // Five at risk on day 10; on day 30 the one that is on day 20 has left: 4/5, then 4/5 x 2/3.
    assert_eq!(row(&view, "step-10"), "1 of 5");
    assert_eq!(row(&view, "step-30"), "1 of 3");
    let curve = view.curve.unwrap();
    assert!(
        curve.line.starts_with("M0.0 0.0L100.0 0.0L100.0 200.0"),
        "{}",
        curve.line
    );
    assert!(
        curve.line.ends_with("L1000.0 466.7L1000.0 466.7"),
        "{}",
        curve.line
    );
    assert!(
        curve
            .label
            .contains("2 of 5 lost in drying within 100 days")
    );
    let days: Vec<&str> = curve.x_ticks.iter().map(|t| t.text.as_str()).collect();
    assert_eq!(days, ["day\u{a0}0", "30", "60", "90"]);
}

#[test]
fn few_pieces_or_no_loss_get_a_sentence_and_no_curve() {
    let mut shelf = Shelf::default();
    shelf.wood("yew", 3, 1);
    let few = view(&shelf.open());
    assert!(few.curve.is_none() && few.curve_note.contains("Too few"));
    assert_eq!(row(&few, "step-40"), "1 of 3");
    let mut shelf = Shelf::default();
    shelf.wood("yew", 7, 0);
    let whole = view(&shelf.open());
    assert!(whole.curve.is_none());
    assert_eq!(
        whole.curve_note,
        "None of 7 pieces was lost in drying so far."
    );
    let mut shelf = Shelf::default();
    shelf.dried(vec![], 30, 0, None);
    let drying = view(&shelf.open());
    assert!(drying.verdict.contains("nothing to compare"));
    assert_eq!(drying.subtitle, "None kept or lost yet");
}
