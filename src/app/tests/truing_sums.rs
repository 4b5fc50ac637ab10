//! Promises of the sums of True: expected before it is measured, told station by station, honest about what is not known.
//! The numbers behind them are checked beside the sums themselves.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_truing;

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::truing::{OvalPart, TruingAction as T, TruingSheet};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::CrackAnswer;
use support_piece::{Hands, detail, id};
use support_truing::{act, answer, laid, length, measure, page, wall};

fn part(h: &Hands) -> OvalPart {
    page(h).oval.expect("an oval")
}

fn notes(h: &Hands) -> String {
    let view = page(h);
    [view.moved, view.notes].concat().join("\n")
}

#[test]
fn before_measuring_the_oval_is_expected_as_about_with_whose_figures() {
    let h = laid(vec![wall(4, 12.0), wall(5, 12.0)]);
    let view = page(&h);
    let part = part(&h);
    assert_eq!(part.caption, "Even wall to be expected, about");
    assert!(part.difference.contains(": about "), "{}", part.difference);
    assert!(part.sum.starts_with("Not measured yet"), "{}", part.sum);
    let keys: Vec<_> = part.legend.iter().map(|(key, _)| *key).collect();
    assert_eq!(keys, ["turned", "reckoned"]);
    assert_eq!(view.places.len(), 5);
    assert!(view.places.iter().all(|p| p.note.starts_with("about ")));
    assert!(
        notes(&h).contains("Mean figures of White ash"),
        "{}",
        notes(&h)
    );
    assert!(notes(&h).contains("where wood settles in the house"));
    assert!(notes(&h).contains("Where the pith lies is not said"));
    // 200 mm of white ash at about 9 %: 4.9 and 7.8 % of the Wood Handbook times 0.7, so 193 by 189.
    let belly = &view.places[2];
    assert_eq!(belly.title, "Station 3, the widest");
    assert!(
        belly.note.starts_with("about 193.0 by 189.0"),
        "{}",
        belly.note
    );
    h.no_word_is_absent();
}

#[test]
fn a_pith_in_the_wall_is_a_state_in_words_without_an_outline() {
    let mut h = laid(vec![detail(DetailField::Pith, "wall"), wall(4, 12.0)]);
    act(&mut h, T::Show(3));
    let part = part(&h);
    assert!(part.sum.contains("expect a split"), "{}", part.sum);
    assert_eq!(part.drawing.reckoned, "");
    assert_eq!(part.drawing.outline, "");
    assert!(page(&h).places[2].note.contains("pith in the wall"));
    assert!(notes(&h).contains("No outline can be told beforehand"));
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "195", "189");
    assert!(page(&h).advice.1.contains("look for a split there first"));
    h.no_word_is_absent();
}

#[test]
fn a_pith_in_the_bore_stays_rounder_and_says_what_it_takes_to_tell_how_much() {
    let mut h = laid(vec![detail(DetailField::Pith, "bore")]);
    assert!(
        notes(&h).contains("stays rounder than this"),
        "{}",
        notes(&h)
    );
    h.fact(length(DetailField::PithDistance, 20.0));
    h.act(Action::Open(Page::Truing(id())));
    assert!(
        notes(&h).contains("its outside is in tension"),
        "{}",
        notes(&h)
    );
    act(&mut h, T::Show(3));
    // A closed ring of 200 mm with 12 mm of wall: far outside it would be oval by 4.
    assert!(
        part(&h).difference.contains("oval by 0."),
        "{}",
        part(&h).difference
    );
    h.no_word_is_absent();
}

#[test]
fn the_wall_that_can_be_trued_is_told_station_by_station_and_the_tightest_is_named() {
    let mut h = laid(vec![]);
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "195", "189");
    let view = page(&h);
    let told: Vec<_> = view
        .places
        .iter()
        .map(|p| (p.number, p.tag_kind, p.tag.as_str(), p.selected))
        .collect();
    // Station 3, 200 mm, wall 12: 12 (1 - 0.025) - 100 (0.055 - 0.025) - 0.12 x 0.03 x 97.5 = 8.3, models M2; 6 is wanted.
    assert_eq!(told[2], (3, "even", "2.0\u{a0}mm to spare", false));
    // Station 2 has the thinnest wall, 10, and is nearly as wide: it decides, and is drawn.
    assert_eq!((told[1].0, told[1].1, told[1].3), (2, "neutral", true));
    assert!(told[1].2.starts_with("tight, "), "{told:?}");
    let part = part(&h);
    assert_eq!(part.caption, "Largest even wall that can be trued");
    assert_eq!(part.wanted, "Finish wall wanted: 6\u{a0}mm");
    assert_eq!(part.tag, told[1].2);
    assert!(
        part.sum
            .contains("taken to have shrunk as the station that was")
    );
    assert!(
        view.advice.1.contains("Station 2 is tight"),
        "{:?}",
        view.advice
    );
    assert!(notes(&h).contains("Not counted: bumps at knots"));
    assert!(notes(&h).contains("callipers see too little of the oval"));
    act(&mut h, T::Show(3));
    let part = page(&h).oval.unwrap();
    assert_eq!((part.value.as_str(), part.unit.as_str()), ("8.0", "mm"));
    assert_eq!(
        part.difference,
        "Station 3, the widest: 195.0 by 189.0\u{a0}mm, oval by 6.0\u{a0}mm"
    );
    assert!(
        part.sum.contains("Wall 12.0\u{a0}mm as read green"),
        "{}",
        part.sum
    );
    let keys: Vec<_> = part.legend.iter().map(|(key, _)| *key).collect();
    assert_eq!(keys, ["turned", "reckoned", "dried", "finish"]);
    for figure in ["200.0", "193.0 by 189.0", "195.0 by 189.0", "8.0"] {
        assert!(part.label.contains(figure), "{figure} in {}", part.label);
    }
    h.no_word_is_absent();
}

#[test]
fn short_is_said_to_be_short_with_what_is_left_to_choose() {
    let mut h = laid(vec![]);
    answer(&mut h, CrackAnswer::None);
    for (shortest, kind, id) in [
        ("186", "thin", "Finish at "),
        ("170", "thin", "No round wall is left"),
    ] {
        measure(&mut h, "195", shortest);
        let view = page(&h);
        assert_eq!(view.advice.0, kind, "{shortest}");
        assert!(view.advice.1.contains(id), "{:?}", view.advice);
        assert!(view.oval.unwrap().tag.ends_with("short"));
    }
    act(&mut h, T::Open(TruingSheet::Decision));
    let sheet = page(&h).sheet.unwrap();
    assert!(
        sheet.note.contains("No round wall is left"),
        "{}",
        sheet.note
    );
    h.no_word_is_absent();
}

#[test]
fn its_own_shrinkage_stands_against_the_table() {
    let mut h = laid(vec![detail(DetailField::Pith, "outside")]);
    answer(&mut h, CrackAnswer::None);
    measure(&mut h, "193", "189");
    assert!(
        notes(&h).contains("moved about as the table says"),
        "{}",
        notes(&h)
    );
    let own = "table 4.9 and 7.8\u{a0}%: across and along the rings";
    assert!(notes(&h).contains(own), "{}", notes(&h));
    measure(&mut h, "195", "184");
    assert!(
        notes(&h).contains("moved far more than the table"),
        "{}",
        notes(&h)
    );
    measure(&mut h, "191", "190.5");
    assert!(
        notes(&h).contains("moved far less than the table"),
        "{}",
        notes(&h)
    );
    assert!(notes(&h).contains("The pith may lie in the bore"));
    h.no_word_is_absent();
}

#[test]
fn without_a_wall_or_a_size_it_says_so_and_where_to_get_it() {
    let mut h = Hands::with(vec![PieceFact::StageMoved(Stage::True)]);
    h.open();
    h.act(Action::Open(Page::Truing(id())));
    answer(&mut h, CrackAnswer::None);
    let keys = |h: &Hands| page(h).lacks.iter().map(|l| l.key).collect::<Vec<_>>();
    assert_eq!(keys(&h), ["wall", "size"]);
    assert_eq!(page(&h).oval, None, "nothing is drawn of what is not known");
    measure(&mut h, "195", "189");
    let part = part(&h);
    assert_eq!((part.value.as_str(), part.tag.as_str()), ("", ""));
    assert!(part.sum.contains("not known"), "{}", part.sum);
    assert_eq!(
        part.legend.len(),
        1,
        "neither a rough circle nor a ring is drawn"
    );
    assert!(page(&h).advice.1.contains("no wall was read"));
    assert!(!notes(&h).contains("Expected"), "{}", notes(&h));
    h.no_word_is_absent();
}

#[test]
fn the_spigot_is_expected_before_it_is_round_and_measured_after() {
    let mut h = laid(vec![length(DetailField::SpigotDiameter, 57.0)]);
    let told = page(&h).spigot_expected;
    // 57 (1 - 0.7 x 0.078) = 53.9, less 1 for off centre and 1 to clean up: 51.9.
    assert!(
        told.contains("about 52.0\u{a0}mm once round: fits the jaws"),
        "{told}"
    );
    assert!(!told.contains("hold"));
    act(&mut h, T::Open(TruingSheet::Spigot));
    act(&mut h, T::First("52".into()));
    act(&mut h, T::Save);
    assert_eq!(page(&h).spigot_expected, "");
    let bare = laid(vec![]);
    assert!(page(&bare).spigot_expected.contains("is not recorded"));
    let boxed = laid(vec![
        length(DetailField::SpigotDiameter, 57.0),
        detail(DetailField::Pith, "bore"),
    ]);
    assert!(page(&boxed).spigot_expected.contains("likely to check"));
    h.no_word_is_absent();
}

#[test]
fn inches_are_shown_in_inches_everywhere() {
    let mut h = laid(vec![length(DetailField::SpigotDiameter, 57.0)]);
    answer(&mut h, CrackAnswer::None);
    h.act(Action::Open(Page::ShopPage("units")));
    let inches = h
        .app
        .shop_page_view(h.now())
        .touch("length-unit-inch-fraction");
    h.act(inches.unwrap());
    h.act(Action::Open(Page::Truing(id())));
    measure(&mut h, "7 5/8", "7 3/8");
    act(&mut h, T::Show(3));
    // A no-break space is written out in what is printed for the programmer.
    let text = format!("{:?}", page(&h));
    assert!(!text.contains("\\u{a0}mm"), "{text}");
    assert!(text.contains("\\u{a0}in"), "{text}");
    let told = part(&h).difference.replace('\u{a0}', " ");
    assert!(told.contains("7 5/8 by 7 3/8"), "{told}");
    h.no_word_is_absent();
}
