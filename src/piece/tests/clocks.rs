//! Clocks: promises of the agenda and the fold in every time zone, over daylight saving, leap days, the ends of the
//! calendar and clocks that jump either way.
#![allow(clippy::unwrap_used)]

mod agenda_history;
mod support;

use std::collections::BTreeSet;

use agenda_history::{History, whole};
use chrono::{DateTime, Datelike, Duration, FixedOffset, NaiveDate};
use evenwall_piece::agenda::{Agenda, Bench, Task, TaskKind, next_look, what_if};
use evenwall_piece::bag::BagAnswer;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{Shop, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::BagFeel;
use proptest::prelude::*;
use support::any::any_lines;

/// Days from the turn of 1970, by the Gregorian rule alone: every fourth year, not the hundredths, but the four-hundredths.
/// Calculated here without the calendar that the program uses. After the rule of ISO 8601 for the Gregorian calendar.
fn day_number(date: NaiveDate) -> i64 {
    let leap = |y: i64| (y % 4 == 0 && y % 100 != 0) || y % 400 == 0;
    let years: i64 = (1970..i64::from(date.year()))
        .map(|y| 365 + i64::from(leap(y)))
        .sum();
    let february = 28 + i64::from(leap(i64::from(date.year())));
    let months = [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let before: i64 = months[..date.month0() as usize].iter().sum();
    years + before + i64::from(date.day0())
}

/// Offsets of the world's clocks, from 12 hours west to 14 east by quarters of an hour.
fn offset() -> impl Strategy<Value = FixedOffset> {
    (-48..=56).prop_map(|quarters: i32| FixedOffset::east_opt(quarters * 900).unwrap())
}

/// Moments of 1970 to 2199, most of them near a leap day, a turn of the year or a change of the clocks.
fn moment() -> impl Strategy<Value = Moment> {
    let second = 1_000_000..7_000_000_000_i64;
    let odd = prop::sample::select(vec![
        "2024-02-29T00:00:00Z",
        "2100-02-28T12:00:00Z",
        "2000-02-29T23:59:59Z",
        "2026-03-29T01:00:00Z",
        "2026-10-25T01:00:00Z",
        "2026-11-01T06:00:00Z",
        "2027-01-01T00:00:00Z",
        "2038-01-19T03:14:07Z",
    ]);
    let near = (odd, -200_000..200_000_i64)
        .prop_map(|(t, by)| DateTime::parse_from_rfc3339(t).unwrap().timestamp() + by);
    (prop_oneof![second, near], offset()).prop_map(|(s, offset)| {
        DateTime::from_timestamp(s, 0)
            .unwrap()
            .with_timezone(&offset)
    })
}

/// Any moment that a file can hold, the years 0 and 9999 among them.
fn any_moment() -> impl Strategy<Value = Moment> {
    let ends = prop::sample::select(vec![
        "0000-01-01T00:00:00+23:59",
        "0000-12-31T23:59:59-23:59",
        "9999-12-31T23:59:59-23:59",
        "9999-01-01T00:00:00+12:00",
        "1969-12-31T23:59:59Z",
    ]);
    prop_oneof![
        moment(),
        ends.prop_map(|t| DateTime::parse_from_rfc3339(t).unwrap())
    ]
}

fn look_of(agenda: &Agenda) -> Task {
    let mut all = agenda
        .overdue
        .iter()
        .chain(&agenda.today)
        .chain(&agenda.coming);
    all.find(|t| t.is_next_look).unwrap().clone()
}

/// Each task stands in one list, that of its day.
fn check_lists(agenda: &Agenda, today: NaiveDate) -> Result<(), TestCaseError> {
    prop_assert!(
        agenda
            .overdue
            .iter()
            .all(|t| t.due < today && t.days_late > 0)
    );
    prop_assert!(
        agenda
            .today
            .iter()
            .all(|t| t.due == today && t.days_late == 0)
    );
    prop_assert!(agenda.coming.iter().all(|t| t.due > today));
    let key = |t: &Task| (t.piece.clone(), format!("{:?}", t.kind));
    let all: Vec<_> = agenda
        .overdue
        .iter()
        .chain(&agenda.today)
        .chain(&agenda.coming)
        .map(key)
        .collect();
    let once: BTreeSet<_> = all.iter().collect();
    prop_assert_eq!(once.len(), all.len(), "a task stands once: {:?}", all);
    Ok(())
}

proptest! {
    #[test]
    fn a_look_is_due_so_many_calendar_days_after_the_local_day_of_the_last(
        felt in moment(), later in 0..900_000_i64, here in offset()
    ) {
        let mut h = History::since("K07", Stage::Bag, felt);
        h.felt(felt, BagFeel::Damp);
        // Whoever asks may have travelled, or the clocks have changed: today is the day of the place and moment.
        let now = (felt + Duration::seconds(later)).with_timezone(&here);
        let agenda = whole(&Shop::default(), &[h], now);
        let due = look_of(&agenda);
        prop_assert_eq!(day_number(due.due) - day_number(felt.date_naive()), 3, "three days after damp, common practice");
        prop_assert_eq!(due.days_late, (day_number(now.date_naive()) - day_number(due.due)).max(0));
        check_lists(&agenda, now.date_naive())?;
    }

    #[test]
    fn one_hour_more_or_less_of_daylight_saving_moves_no_day(
        felt in moment(), days in 0..12_i64
    ) {
        let summer = FixedOffset::east_opt(felt.offset().local_minus_utc() + 3600).unwrap();
        let mut h = History::since("K07", Stage::Bag, felt);
        h.felt(felt, BagFeel::Wet);
        // The wall clock shows the same hour so many days later, with and without a change of the clocks between.
        let wall = felt.naive_local() + Duration::days(days);
        let plain = wall.and_local_timezone(*felt.offset()).unwrap();
        let changed = wall.and_local_timezone(summer).unwrap();
        prop_assert_eq!(plain - changed, Duration::hours(1));
        let bench = |now| look_of(&whole(&Shop::default(), std::slice::from_ref(&h), now));
        // Asked within the hour that spring takes, the last look would lie in the future: then nothing is postponed.
        if changed >= felt {
            let (a, b) = (bench(plain), bench(changed));
            prop_assert_eq!((a.due, a.days_late), (b.due, b.days_late));
        } else {
            prop_assert!(bench(changed).due <= bench(plain).due);
        }
    }

    #[test]
    fn a_clock_that_jumps_and_comes_back_leaves_the_agenda_as_it_was(
        felt in moment(), jump in any_moment(), later in 1..40_i64
    ) {
        let mut h = History::since("K07", Stage::Bag, felt);
        h.felt(felt, BagFeel::Damp);
        let now = felt + Duration::days(later);
        let before = whole(&Shop::default(), std::slice::from_ref(&h), now);
        // While it is wrong, whatever is shown is shown without a panic, in its list.
        let wrong = whole(&Shop::default(), std::slice::from_ref(&h), jump);
        check_lists(&wrong, jump.date_naive())?;
        prop_assert_eq!(whole(&Shop::default(), std::slice::from_ref(&h), now), before);
    }

    #[test]
    fn a_look_recorded_with_a_clock_ahead_never_postpones_one_recorded_with_the_right_one(
        felt in moment(), ahead in 1..40_000_i64, later in 0..20_i64
    ) {
        let mut right = History::since("K07", Stage::Bag, felt);
        right.felt(felt, BagFeel::Damp);
        let mut wrong = right.clone();
        let now = felt + Duration::days(later);
        wrong.felt(now + Duration::days(ahead), BagFeel::Nothing);
        let due = |h: &History| look_of(&whole(&Shop::default(), std::slice::from_ref(h), now)).due;
        prop_assert!(due(&wrong) <= due(&right));
    }

    #[test]
    fn a_look_recorded_with_a_clock_behind_is_taken_at_its_word_and_makes_nothing_later(
        felt in moment(), behind in 0..4_000_i64, later in 0..20_i64
    ) {
        let mut right = History::since("K07", Stage::Bag, felt);
        right.felt(felt, BagFeel::Damp);
        let mut wrong = right.clone();
        wrong.felt(felt - Duration::days(behind), BagFeel::Damp);
        let now = felt + Duration::days(later);
        let due = |h: &History| look_of(&whole(&Shop::default(), std::slice::from_ref(h), now)).due;
        prop_assert!(due(&wrong) <= due(&right));
    }

    #[test]
    fn any_diary_at_any_moment_gives_an_agenda_whose_days_are_right(
        lines in any_lines(), skew in any_moment(), now in any_moment(), which in any::<prop::sample::Index>(),
        back_on in any_moment(), away_at in any_moment()
    ) {
        let mut lines = lines;
        if !lines.is_empty() {
            let at = which.index(lines.len());
            (lines[at].at, lines[at].noted_at) = (skew, now);
        }
        let piece = support::fold(&lines);
        let away = support::line("a", 1, 1, vec![ShopFact::Away { back_on: back_on.date_naive() }]);
        let mut shop_lines = vec![away];
        shop_lines[0].at = away_at;
        let shop = evenwall_piece::shop::fold_shop(shop_lines);
        let moulds = |_: &evenwall_piece::piece::Piece| true;
        let bench = Bench::new(&shop, now, &moulds).with_work_on([&piece]);
        let agenda = evenwall_piece::agenda::agenda(&[&piece], &bench);
        check_lists(&agenda, now.date_naive())?;
        prop_assert_eq!(
            agenda.next.as_ref().map(|t| t.due),
            agenda.coming.iter().map(|t| t.due).min()
        );
        // What is asked beside the agenda answers too.
        let next = next_look(&piece, &bench);
        prop_assert_eq!(next_look(&piece, &bench), next, "asked twice it says the same");
        for answer in [BagAnswer::Wet, BagAnswer::Damp, BagAnswer::Nothing] {
            let outcome = what_if(&piece, &bench, answer, true);
            prop_assert_eq!(what_if(&piece, &bench, answer, true), outcome);
        }
    }

    #[test]
    fn a_pause_or_a_day_to_look_at_the_ends_of_the_calendar_breaks_nothing(
        at in any_moment(), until in any_moment(), now in any_moment()
    ) {
        let mut h = History::since("K07", Stage::Air, at);
        h.tell(at, vec![PieceFact::Paused { until: Some(until.date_naive()) }]);
        let agenda = whole(&Shop::default(), &[h], now);
        let asks = |t: &Task| !matches!(t.kind, TaskKind::OfferStage(_));
        let asked = agenda.overdue.iter().chain(&agenda.today).chain(&agenda.coming).any(asks);
        // Paused with a day: silent until that day, whatever the clock says.
        if at <= now && until.date_naive() > now.date_naive() {
            prop_assert!(!asked);
        }
        check_lists(&agenda, now.date_naive())?;
    }
}

#[test]
fn the_days_of_the_test_are_counted_right() {
    // Known days: the Unix time of 2000-02-29 is 951782400, of 2100-03-01 it is 4107542400 (POSIX, seconds since the Epoch).
    let number = |t: &str| day_number(t.parse().unwrap());
    assert_eq!(number("1970-01-01"), 0);
    assert_eq!(number("2000-02-29") * 86_400, 951_782_400);
    assert_eq!(number("2100-03-01") * 86_400, 4_107_542_400);
}
