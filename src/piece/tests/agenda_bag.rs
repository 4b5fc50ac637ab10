//! The bag's rules, case by case: the table, what the answer keys say, mould, warm shops and bag days.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use chrono::Datelike;
use evenwall_piece::agenda::{Bench, TaskKind, Why, next_look, what_if};
use evenwall_piece::bag::{
    BagAct as Do, BagAnswer as A, BagState as S, Wait, rule, rule_with, table_as_markdown,
};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::settings::BagAfter;
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Method};
use proptest::prelude::*;

/// State, answer, done, state afterwards, days to the next look (where it is a number of days of the bag).
const CASES: &[(S, A, Do, S, Option<u32>)] = &[
    (S::Closed, A::Wet, Do::TurnAndClose, S::Closed, Some(2)),
    (S::Closed, A::Damp, Do::TurnAndClose, S::Closed, Some(3)),
    (S::Closed, A::Nothing, Do::LeaveOpen, S::OpenOnce, Some(3)),
    (S::Closed, A::Mould, Do::BrushAndAir, S::Closed, Some(1)),
    (S::Closed, A::LookedOver, Do::StillDue, S::Closed, None),
    (S::Closed, A::NotLooked, Do::StillDue, S::Closed, None),
    (S::Closed, A::CantFind, Do::LookForIt, S::Closed, None),
    (S::Closed, A::Paused, Do::Silent, S::Closed, None),
    (S::Closed, A::Away, Do::OpenOrPaper, S::Closed, None),
    (S::OpenOnce, A::Wet, Do::CloseAgain, S::Closed, Some(2)),
    (S::OpenOnce, A::Damp, Do::CloseAgain, S::Closed, Some(3)),
    (S::OpenOnce, A::Nothing, Do::OfferAir, S::OpenTwice, Some(3)),
    (S::OpenOnce, A::Mould, Do::BrushAndAir, S::OpenOnce, Some(1)),
    (S::OpenOnce, A::LookedOver, Do::StillDue, S::OpenOnce, None),
    (S::OpenOnce, A::NotLooked, Do::StillDue, S::OpenOnce, None),
    (S::OpenOnce, A::CantFind, Do::LookForIt, S::OpenOnce, None),
    (S::OpenOnce, A::Paused, Do::Silent, S::OpenOnce, None),
    (S::OpenOnce, A::Away, Do::LeaveOpen, S::OpenOnce, None),
    (S::OpenTwice, A::Wet, Do::CloseAgain, S::Closed, Some(2)),
    (S::OpenTwice, A::Damp, Do::CloseAgain, S::Closed, Some(3)),
    (
        S::OpenTwice,
        A::Nothing,
        Do::OfferAir,
        S::OpenTwice,
        Some(3),
    ),
    (
        S::OpenTwice,
        A::Mould,
        Do::BrushAndAir,
        S::OpenTwice,
        Some(1),
    ),
    (
        S::OpenTwice,
        A::LookedOver,
        Do::StillDue,
        S::OpenTwice,
        None,
    ),
    (S::OpenTwice, A::NotLooked, Do::StillDue, S::OpenTwice, None),
    (S::OpenTwice, A::CantFind, Do::LookForIt, S::OpenTwice, None),
    (S::OpenTwice, A::Paused, Do::Silent, S::OpenTwice, None),
    (S::OpenTwice, A::Away, Do::LeaveOpen, S::OpenTwice, None),
    (S::Airing, A::Wet, Do::CloseAgain, S::Closed, Some(2)),
    (S::Airing, A::Damp, Do::CloseAgain, S::Closed, Some(3)),
    (S::Airing, A::Nothing, Do::LeaveOpen, S::Airing, None),
    (S::Airing, A::Mould, Do::BrushAndAir, S::Airing, Some(1)),
    (S::Airing, A::LookedOver, Do::LeaveOpen, S::Airing, None),
    (S::Airing, A::NotLooked, Do::StillDue, S::Airing, None),
    (S::Airing, A::CantFind, Do::LookForIt, S::Airing, None),
    (S::Airing, A::Paused, Do::Silent, S::Airing, None),
    (S::Airing, A::Away, Do::LeaveOpen, S::Airing, None),
    (S::NoBag, A::Wet, Do::CarryOn, S::NoBag, None),
    (S::NoBag, A::Damp, Do::CarryOn, S::NoBag, None),
    (S::NoBag, A::Nothing, Do::CarryOn, S::NoBag, None),
    (S::NoBag, A::Mould, Do::BrushAndAir, S::NoBag, Some(1)),
    (S::NoBag, A::LookedOver, Do::CarryOn, S::NoBag, None),
    (S::NoBag, A::NotLooked, Do::StillDue, S::NoBag, None),
    (S::NoBag, A::CantFind, Do::LookForIt, S::NoBag, None),
    (S::NoBag, A::Paused, Do::Silent, S::NoBag, None),
    (S::NoBag, A::Away, Do::CarryOn, S::NoBag, None),
];

#[test]
fn every_state_and_answer_of_the_table_does_what_is_written() {
    assert_eq!(CASES.len(), S::ALL.len() * A::ALL.len());
    let after = BagAfter::default();
    for &(state, answer, act, then, days) in CASES {
        let r = rule(state, answer);
        assert_eq!((r.act, r.then), (act, then), "{state:?} {answer:?}");
        assert_eq!(r.next.days(&after, false), days, "{state:?} {answer:?}");
    }
    assert_eq!(Wait::First.days(&after, false), Some(1));
    assert_eq!(Wait::Wet.days(&after, true), Some(1));
    assert_eq!(rule(S::Closed, A::Paused).next, Wait::Never);
    assert_eq!(rule(S::Closed, A::Away).next, Wait::WhenBack);
    assert_eq!(rule(S::NoBag, A::LookedOver).next, Wait::Rhythm);
    assert_eq!(rule(S::OpenOnce, A::CantFind).next, Wait::StaysDue);
}

#[test]
fn mould_beside_a_feel_brings_the_next_look_to_tomorrow_and_leaves_the_neck_to_the_feel() {
    for &state in S::ALL {
        for &answer in A::ALL {
            let (with, plain) = (rule_with(state, answer, true), rule(state, answer));
            assert_eq!(with.then, plain.then);
            if answer.is_a_look() {
                assert_eq!((with.act, with.next), (Do::BrushAndAir, Wait::Mould));
            } else {
                assert_eq!(with, plain, "nobody looked");
            }
        }
    }
}

#[test]
#[allow(clippy::disallowed_methods)] // a test may read the repository's own document
fn the_table_in_developers_md_is_the_one_in_the_code() {
    let table = table_as_markdown(&BagAfter::default());
    assert_eq!(table.lines().count(), 2 + CASES.len());
    let columns = |l: &str| l.matches('|').count();
    assert!(table.lines().all(|l| columns(l) == 8), "{table}");
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../DEVELOPERS.md");
    if let Ok(text) = std::fs::read_to_string(path) {
        let written = text
            .split_once("<!-- bag table -->")
            .and_then(|(_, rest)| rest.split_once("<!-- end of bag table -->"))
            .map(|(table, _)| table.trim());
        assert_eq!(
            written,
            Some(table.trim()),
            "DEVELOPERS.md wants this between <!-- bag table --> and <!-- end of bag table -->:\n{table}"
        );
    }
}

#[test]
fn wet_damp_nothing_and_nothing_again_walk_a_bag_to_air() {
    use BagFeel::{Damp, Nothing, Wet};
    let mut h = History::new("K07", Stage::Bag);
    let first = next(&h, day(0));
    assert_eq!((first.kind, first.due), (TaskKind::Look, date(1)));
    assert_eq!(first.why, Why::FirstLook);
    h.felt(day(1), Wet);
    assert_eq!(next(&h, day(1)).due, date(3));
    h.felt(day(3), Damp);
    assert_eq!(next(&h, day(3)).due, date(6));
    assert_eq!(next(&h, day(3)).why, Why::After(Damp));
    h.felt(day(6), Nothing);
    assert_eq!(next(&h, day(6)).due, date(9));
    assert!(!has(&tasks(&h, day(6)), &TaskKind::OfferStage(Stage::Air)));
    // Damp again closes it and the count begins anew.
    h.felt(day(9), Damp);
    h.felt(day(12), Nothing);
    assert!(!has(&tasks(&h, day(12)), &TaskKind::OfferStage(Stage::Air)));
    h.felt(day(15), Nothing);
    assert!(has(&tasks(&h, day(15)), &TaskKind::OfferStage(Stage::Air)));
    assert_eq!(
        next(&h, day(15)).due,
        date(18),
        "still looked at until it moves"
    );
    h.felt(day(18), Wet);
    assert!(!has(&tasks(&h, day(18)), &TaskKind::OfferStage(Stage::Air)));
    assert_eq!(next(&h, day(18)).due, date(20));
}

#[test]
fn damp_in_air_closes_the_bag_and_offers_to_go_back() {
    let mut h = History::new("K07", Stage::Bag);
    h.moved(day(10), Stage::Air);
    assert_eq!(next(&h, day(10)).kind, TaskKind::LookOver);
    h.felt(day(13), BagFeel::Damp);
    let t = next(&h, day(13));
    assert_eq!((t.kind, t.due), (TaskKind::Look, date(16)));
    let back = TaskKind::OfferStage(Stage::Bag);
    assert!(has(&tasks(&h, day(13)), &back));
    // Two dry looks and it airs again, without going back.
    h.felt(day(16), BagFeel::Nothing);
    h.felt(day(19), BagFeel::Nothing);
    assert_eq!(next(&h, day(19)).kind, TaskKind::LookOver);
    assert!(!has(&tasks(&h, day(19)), &back));
}

#[test]
fn a_crack_ticked_or_a_weight_taken_does_not_answer_for_the_water_on_the_film() {
    let mut h = History::new("K07", Stage::Bag);
    h.looked_over(day(1)).weighed(day(1), 900.0);
    assert_eq!(next(&h, day(2)).due, date(1));
    assert_eq!(next(&h, day(2)).days_late, 1);
}

#[test]
fn mould_alone_is_looked_at_tomorrow_and_shortens_the_round_after_wet() {
    let mut h = History::new("K07", Stage::Bag);
    h.tell(day(1), vec![look(None, true)]);
    assert_eq!(next(&h, day(1)).due, date(2));
    assert_eq!(next(&h, day(1)).why, Why::AfterMould);
    h.felt(day(2), BagFeel::Wet);
    assert_eq!(next(&h, day(2)).due, date(3), "a shorter round");
    h.felt(day(3), BagFeel::Damp);
    assert_eq!(next(&h, day(3)).due, date(6));
}

#[test]
fn woods_that_mould_easily_and_shops_over_20_degrees_are_felt_a_day_after_wet() {
    let mut h = History::new("K07", Stage::Bag);
    h.felt(day(1), BagFeel::Wet);
    let piece = h.piece();
    let plain = Shop::default();
    let due = |shop: &Shop, moulds: bool| {
        next_look(&piece, &Bench::new(shop, day(1), &|_| moulds)).unwrap()
    };
    assert_eq!(due(&plain, false), date(3));
    assert_eq!(due(&plain, true), date(2));
    assert_eq!(due(&shop(&[warmth(day(0), 20.5)]), false), date(2));
    assert_eq!(due(&shop(&[warmth(day(0), 20.0)]), false), date(3));
    assert_eq!(
        due(&shop(&[warmth(day(-9), 25.0), warmth(day(0), 15.0)]), false),
        date(3),
        "the last reading counts"
    );
    assert_eq!(
        due(&shop(&[warmth(day(0), 25.0), warmth(day(5), 15.0)]), false),
        date(2),
        "air read later does not put off what was due"
    );
}

#[test]
fn all_numbers_of_days_are_the_turners_to_set() {
    let s = shop(&[
        setting("bag_first_days", "2"),
        setting("bag_damp_days", "5"),
        setting("bag_nothing_days", "4"),
    ]);
    let mut h = History::new("K07", Stage::Bag);
    assert_eq!(next_in(&s, &h, day(0)).due, date(2));
    h.felt(day(2), BagFeel::Damp);
    assert_eq!(next_in(&s, &h, day(2)).due, date(7));
    h.felt(day(7), BagFeel::Nothing);
    assert_eq!(next_in(&s, &h, day(7)).due, date(11));
}

#[test]
fn looks_land_on_named_bag_days_as_the_keys_say() {
    // Day 0 is a Monday; bags are done Monday, Thursday and Saturday.
    let s = shop(&[setting("bag_days", "mon thu sat")]);
    let mut h = History::since("K07", Stage::Bag, day(-7));
    h.felt(day(0), BagFeel::Wet);
    assert_eq!(
        next_in(&s, &h, day(0)).due,
        date(3),
        "Thursday for Wednesday"
    );
    h.felt(day(3), BagFeel::Damp);
    assert_eq!(next_in(&s, &h, day(3)).due, date(5), "Saturday for Sunday");
    h.felt(day(5), BagFeel::Wet);
    assert_eq!(next_in(&s, &h, day(5)).due, date(7), "Monday itself");
    // Mould is not put off to a bag day.
    h.tell(day(10), vec![look(Some(BagFeel::Wet), true)]);
    assert_eq!(next_in(&s, &h, day(10)).due, date(11));
    // Other methods know no bag days.
    let mut paper = History::new("P1", Stage::Bag);
    paper.method(day(0), Method::Paper);
    let tuesday = shop(&[setting("bag_days", "tue")]);
    assert_eq!(next_in(&tuesday, &paper, day(0)).due, date(3));
}

fn feels() -> impl Strategy<Value = BagFeel> {
    prop_oneof![
        Just(BagFeel::Wet),
        Just(BagFeel::Damp),
        Just(BagFeel::Nothing)
    ]
}

proptest! {
    #[test]
    fn a_bag_day_moves_a_look_by_a_day_at_most_and_onto_a_named_day(
        felt in 1i64..15, feel in feels(), named in 1u8..127
    ) {
        let keys = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
        let days: Vec<_> = (0..7).filter(|i| named & (1 << i) != 0).map(|i| keys[i]).collect();
        let s = shop(&[setting("bag_days", &days.join(" "))]);
        let mut h = History::new("K07", Stage::Bag);
        h.felt(day(felt), feel);
        let plain = next(&h, day(felt)).due;
        let landed = next_in(&s, &h, day(felt)).due;
        let moved = (landed - plain).num_days();
        prop_assert!((-1..=1).contains(&moved));
        prop_assert!(landed > date(felt));
        let is_named = |d: chrono::NaiveDate| {
            days.contains(&keys[d.weekday().num_days_from_monday() as usize])
        };
        let reachable = (-1..=1).map(|n| plain + chrono::Duration::days(n)).any(|d| d > date(felt) && is_named(d));
        prop_assert_eq!(is_named(landed), reachable);
        prop_assert!(reachable || moved == 0);
    }

    #[test]
    fn the_words_on_the_keys_come_true(
        told in proptest::collection::vec((feels(), any::<bool>(), 1i64..5), 0..8),
        stage in prop_oneof![Just(Stage::Bag), Just(Stage::Air), Just(Stage::Settle), Just(Stage::Indoors)],
        paper in any::<bool>(), moulds in any::<bool>(), warm in any::<bool>(),
        answer in 0usize..5, mould in any::<bool>(), bag_days in any::<bool>(),
    ) {
        let mut facts = vec![warmth(day(-1), if warm { 22.0 } else { 15.0 })];
        if bag_days {
            facts.push(setting("bag_days", "tue fri"));
            facts.push(setting("weigh_day", "sun"));
        }
        let s = shop(&facts);
        let mut h = History::new("K07", stage);
        if paper {
            h.method(day(0), Method::Paper);
        }
        let mut when = 0;
        for (feel, mould, gap) in told {
            when += gap;
            h.tell(day(when), vec![look(Some(feel), mould)]);
        }
        let now = day(when + 2);
        let moulds_easily = |_: &_| moulds;
        let bench = Bench::new(&s, now, &moulds_easily);
        let answer = A::ALL[answer];
        prop_assume!(answer.is_a_look());
        let said = what_if(&h.piece(), &bench, answer, mould).unwrap();
        let feel = match answer {
            A::Wet => Some(BagFeel::Wet),
            A::Damp => Some(BagFeel::Damp),
            A::Nothing => Some(BagFeel::Nothing),
            _ => None,
        };
        h.tell(now, vec![PieceFact::Look { feel, mould: mould || answer == A::Mould, crack: false }]);
        prop_assert_eq!(said.next_look, next_look(&h.piece(), &bench));
        let offered = has(&evenwall_piece::agenda::tasks_of(&h.piece(), &bench), &TaskKind::OfferStage(Stage::Air));
        prop_assert!(!said.offers_air || offered);
    }
}
