//! Calendar: bag days, the weigh day and the days away, in local calendar days.

use chrono::{Datelike, Days, NaiveDate, Weekday};

use crate::piece::{Moment, Piece};
use crate::shop::{Shop, ShopFact};

/// Days away: nothing falls due from the first day to the day before the return; it waits for the return.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DaysAway {
    /// The day on which the turner left.
    pub from: NaiveDate,
    /// The day of the return: as planned, or earlier where they came back earlier.
    pub back: NaiveDate,
}

/// A day so many days after another; the last day of the calendar where there is none.
pub(crate) fn days_after(day: NaiveDate, days: u32) -> NaiveDate {
    day.checked_add_days(Days::new(u64::from(days)))
        .unwrap_or(NaiveDate::MAX)
}

/// Whole days from one day to another, negative backwards.
pub(crate) fn days_from_to(from: NaiveDate, to: NaiveDate) -> i64 {
    to.signed_duration_since(from).num_days()
}

/// All days away that the shop knows of, by their first day.
pub(crate) fn days_away(shop: &Shop) -> Vec<DaysAway> {
    let mut spans: Vec<DaysAway> = Vec::new();
    for entry in &shop.history {
        let day = entry.at.date_naive();
        match &entry.fact {
            ShopFact::Away { back_on } => {
                cut(&mut spans, day);
                spans.push(DaysAway {
                    from: day,
                    back: *back_on,
                });
            }
            ShopFact::Back => cut(&mut spans, day),
            _ => {}
        }
    }
    spans.retain(|s| s.from < s.back);
    spans
}

/// Whoever looks at a piece or weighs one is back, said or not: work done after the day of leaving ends the days away on its
/// day. What is dated after now does not count.
pub(crate) fn end_by_work<'a>(
    spans: &mut [DaysAway],
    pieces: impl IntoIterator<Item = &'a Piece>,
    now: Moment,
) {
    if spans.is_empty() {
        return;
    }
    for piece in pieces {
        let looks = piece.looks.iter().map(|l| l.at);
        let weighings = piece.weighings.iter().map(|w| w.at);
        for at in looks.chain(weighings).filter(|at| *at <= now) {
            end_on(spans, at.date_naive());
        }
    }
}

/// Work on a day ends the days away that began before it.
pub(crate) fn end_on(spans: &mut [DaysAway], day: NaiveDate) {
    for span in spans.iter_mut().filter(|s| s.from < day) {
        span.back = span.back.min(day);
    }
}

/// Whoever is back, or plans anew, ends the days away before.
fn cut(spans: &mut [DaysAway], day: NaiveDate) {
    if let Some(last) = spans.last_mut() {
        last.back = last.back.min(day).max(last.from);
    }
}

/// Where a due day falls into days away it waits for the return; what was due before leaving stays where it is, and so
/// does what is due on the day of leaving while that day lasts.
pub(crate) fn wait_for_return(due: NaiveDate, spans: &[DaysAway], today: NaiveDate) -> NaiveDate {
    spans.iter().fold(due, |due, span| {
        let leaving_today = due == span.from && today <= span.from;
        if due >= span.from && due < span.back && !leaving_today {
            span.back
        } else {
            due
        }
    })
}

/// A bag's look put on a bag day within a day of its plain date: that date, else the day before (but after the last look),
/// else the day after (unless it must not be put off). Without a bag day there it stays where it is.
pub(crate) fn on_bag_day(
    plain: NaiveDate,
    last: NaiveDate,
    bag_days: &[Weekday],
    may_wait: bool,
) -> NaiveDate {
    let named = |day: &NaiveDate| bag_days.contains(&day.weekday());
    let before = plain.pred_opt().filter(|d| *d > last);
    let after = plain.succ_opt().filter(|_| may_wait);
    [Some(plain), before, after]
        .into_iter()
        .flatten()
        .find(named)
        .unwrap_or(plain)
}

/// A weighing put on the weigh day nearest to its plain date: within three days for rhythms of a week or more, within one
/// for shorter ones, always after the last weighing.
pub(crate) fn on_weigh_day(
    plain: NaiveDate,
    last: NaiveDate,
    every: u32,
    weigh_day: Option<Weekday>,
) -> NaiveDate {
    let Some(weigh_day) = weigh_day else {
        return plain;
    };
    let reach = if every >= 7 { 3 } else { 1 };
    (0..=reach)
        .flat_map(|n| {
            [
                plain.checked_sub_days(Days::new(n)),
                plain.checked_add_days(Days::new(n)),
            ]
        })
        .flatten()
        .find(|d| d.weekday() == weigh_day && *d > last)
        .unwrap_or(plain)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn day(d: u32) -> NaiveDate {
        // 1 June 2026 is a Monday.
        NaiveDate::from_ymd_opt(2026, 6, d).unwrap()
    }

    #[test]
    fn a_look_lands_on_a_bag_day_within_a_day_either_way_or_stays() {
        let days = [Weekday::Mon, Weekday::Thu, Weekday::Sat];
        // Felt Monday the 1st: Wednesday has Thursday beside it, Tuesday has only today before it.
        assert_eq!(on_bag_day(day(3), day(1), &days, true), day(4));
        assert_eq!(on_bag_day(day(2), day(1), &days, true), day(2));
        assert_eq!(on_bag_day(day(5), day(2), &days, true), day(4));
        assert_eq!(on_bag_day(day(5), day(4), &days, true), day(6));
        assert_eq!(on_bag_day(day(5), day(4), &days, false), day(5));
        assert_eq!(on_bag_day(day(3), day(1), &[], true), day(3));
    }

    #[test]
    fn a_weighing_lands_on_the_nearest_weigh_day_after_the_last() {
        let sat = Some(Weekday::Sat);
        assert_eq!(on_weigh_day(day(8), day(1), 7, sat), day(6));
        assert_eq!(on_weigh_day(day(10), day(3), 7, sat), day(13));
        assert_eq!(on_weigh_day(day(4), day(1), 3, sat), day(4));
        assert_eq!(on_weigh_day(day(5), day(2), 3, sat), day(6));
        assert_eq!(on_weigh_day(day(8), day(6), 7, sat), day(8));
    }
}
