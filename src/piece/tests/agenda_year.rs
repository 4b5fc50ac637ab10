//! Over four hundred days of answers, slips and jumping clocks each missed look stays overdue until it is answered.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use chrono::{Duration, FixedOffset, NaiveDate};
use evenwall_piece::agenda::{Bench, Task, TaskKind, agenda, next_look, tasks_of};
use evenwall_piece::fact::{End, PieceFact};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::{BagFeel, Method};
use proptest::prelude::*;

/// What happens on a day.
#[derive(Debug, Clone, Copy)]
enum Deed {
    Nobody,
    Felt(BagFeel, bool),
    LookedOver,
    Weighed,
    NotFound,
    Noted,
    CrackSeen,
    Moved(Stage),
    Method(Method),
    HalfTurned,
    Resumed,
    Paused(i64),
    Unpaused,
    Ended,
    PutBack,
    /// The bag was felt, with the clock so many days ahead.
    FeltAhead(BagFeel, i64),
}

impl Deed {
    /// True where it says nothing about the piece: no look that is due may move.
    fn answers_nothing(self) -> bool {
        matches!(
            self,
            Self::Nobody | Self::Noted | Self::NotFound | Self::FeltAhead(..)
        )
    }
}

fn feel() -> impl Strategy<Value = BagFeel> {
    prop::sample::select(BagFeel::ALL)
}

fn deed() -> impl Strategy<Value = Deed> {
    prop_oneof![
        60 => Just(Deed::Nobody),
        25 => (feel(), prop::bool::weighted(0.1)).prop_map(|(f, m)| Deed::Felt(f, m)),
        6 => Just(Deed::LookedOver),
        6 => Just(Deed::Weighed),
        3 => Just(Deed::NotFound),
        3 => Just(Deed::Noted),
        3 => Just(Deed::CrackSeen),
        6 => prop::sample::select(Stage::ALL).prop_map(Deed::Moved),
        3 => prop::sample::select(Method::ALL).prop_map(Deed::Method),
        1 => Just(Deed::HalfTurned),
        3 => Just(Deed::Resumed),
        1 => (1i64..20).prop_map(Deed::Paused),
        3 => Just(Deed::Unpaused),
        1 => Just(Deed::Ended),
        4 => Just(Deed::PutBack),
        2 => (feel(), 500i64..900).prop_map(|(f, n)| Deed::FeltAhead(f, n)),
    ]
}

fn facts(deed: Deed, n: i64) -> Vec<PieceFact> {
    vec![match deed {
        Deed::Nobody => return Vec::new(),
        Deed::Felt(feel, mould) => look(Some(feel), mould),
        Deed::FeltAhead(feel, _) => look(Some(feel), false),
        Deed::LookedOver => look(None, false),
        Deed::Weighed => weight(900.0 - n as f64),
        Deed::NotFound => PieceFact::NotFound,
        Deed::Noted => PieceFact::Note("rain".to_owned()),
        Deed::CrackSeen => PieceFact::Look {
            feel: None,
            mould: false,
            crack: true,
        },
        Deed::Moved(stage) => PieceFact::StageMoved(stage),
        Deed::Method(method) => PieceFact::MethodChosen(method),
        Deed::HalfTurned => PieceFact::HalfTurned,
        Deed::Resumed => PieceFact::Resumed,
        Deed::Paused(days) => PieceFact::Paused {
            until: Some(date(n + days)),
        },
        Deed::Unpaused => PieceFact::Unpaused,
        Deed::Ended => PieceFact::Ended(End::GivenAway),
        Deed::PutBack => PieceFact::PutBack,
    }]
}

fn next_looks(piece: &Piece, bench: &Bench) -> Vec<Task> {
    let mut all = tasks_of(piece, bench);
    all.retain(|t| t.is_next_look);
    all
}

fn asks_for_looks(piece: &Piece, today: NaiveDate) -> bool {
    let paused = piece
        .paused
        .is_some_and(|(_, u)| u.is_none_or(|d| d > today));
    piece.living() && !paused && piece.stage().group() == Group::Drying
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn each_missed_look_stays_overdue_until_answered_paused_or_ended(
        deeds in prop::collection::vec(deed(), 400),
        slips in prop::collection::vec((0usize..400, -400i64..400), 12),
        start in prop::sample::select(Stage::ALL),
        hour_east in -11i32..12,
    ) {
        let shop = Shop::default();
        let moulds = |_: &Piece| false;
        let mut h = History::new("K07", start);
        let mut yesterday: Option<(TaskKind, NaiveDate)> = None;
        for (n, &deed) in deeds.iter().enumerate() {
            let n = n as i64;
            let told = facts(deed, n);
            if !told.is_empty() {
                let ahead = match deed { Deed::FeltAhead(_, days) => days, _ => 0 };
                h.tell(day(n + ahead), told);
            }
            let piece = h.piece();
            let bench = Bench::new(&shop, day(n), &moulds);
            let looks = next_looks(&piece, &bench);

            // Exactly one next look for whatever is drying, none for anything else.
            prop_assert_eq!(looks.len(), usize::from(asks_for_looks(&piece, bench.today)), "day {}: {:?}", n, looks);

            // What nobody answered is where it was yesterday, and overdue where its day is past.
            let task = looks.into_iter().next();
            if let (Some(task), Some((kind, due))) = (&task, &yesterday) {
                let same_kind = std::mem::discriminant(&task.kind) == std::mem::discriminant(kind);
                if deed.answers_nothing() && same_kind {
                    let half_turned = matches!(kind, TaskKind::HalfTurned(_));
                    prop_assert!(task.due == *due || half_turned, "day {}: {:?} was due {}", n, task, due);
                }
            }
            if let Some(task) = &task {
                let a = agenda(&[&piece], &bench);
                let is_overdue = a.overdue.contains(task);
                prop_assert_eq!(is_overdue, task.due < bench.today);
                prop_assert_eq!(task.days_late, (bench.today - task.due).num_days().max(0));
            }

            // A journey: the same moment elsewhere moves no due day (a due day of today itself may be tomorrow there).
            if let Some(task) = &task {
                let elsewhere = FixedOffset::east_opt(hour_east * 3600).unwrap();
                let there = Bench::new(&shop, day(n).with_timezone(&elsewhere), &moulds);
                let moved = next_looks(&piece, &there);
                prop_assert_eq!(moved.len(), 1);
                let fixed = task.due != bench.today && piece.half_turned.is_none() && there.today == bench.today;
                prop_assert!(!fixed || moved[0].due == task.due);
            }
            yesterday = task.map(|t| (t.kind, t.due));

            // A clock that slips back or ahead and is set right again changes nothing.
            for (_, slip) in slips.iter().filter(|(on, _)| *on as i64 == n) {
                let slipped = Bench::new(&shop, day(n) + Duration::days(*slip), &moulds);
                let looks = next_looks(&piece, &slipped);
                prop_assert_eq!(looks.len(), usize::from(asks_for_looks(&piece, slipped.today)));
            }
            let again = next_looks(&piece, &bench).into_iter().next().map(|t| (t.kind, t.due));
            prop_assert_eq!(&again, &yesterday);
        }
    }

    #[test]
    fn a_bag_in_the_bag_is_due_by_the_days_of_the_table_whatever_is_missed(
        answers in prop::collection::vec((1i64..9, feel()), 1..60), missed in 0i64..400,
    ) {
        let shop = Shop::default();
        let mut h = History::new("K07", Stage::Bag);
        let mut n = 0;
        let mut due = 1;
        for (gap, feel) in answers {
            n += gap;
            h.felt(day(n), feel);
            due = n + if feel == BagFeel::Wet { 2 } else { 3 };
        }
        let now = day(n + missed);
        let t = next_in(&shop, &h, now);
        prop_assert_eq!((t.kind, t.due), (TaskKind::Look, date(due)));
        prop_assert_eq!(t.days_late, (n + missed - due).max(0));
    }

    #[test]
    fn what_is_dated_after_now_makes_no_difference_to_any_due_day(
        told in prop::collection::vec((0i64..60, deed()), 0..40), now in 0i64..60,
    ) {
        // Only looks and weighings: moving on, pausing and ending count whatever the clock said.
        let shop = Shop::default();
        let is_look = |d: &Deed| matches!(d, Deed::Felt(..) | Deed::LookedOver | Deed::Weighed | Deed::CrackSeen);
        let mut all = History::new("K07", Stage::Bag);
        let mut past = all.clone();
        for (n, deed) in told.iter().filter(|(_, d)| is_look(d)) {
            all.tell(day(*n), facts(*deed, *n));
            if *n <= now {
                past.tell(day(*n), facts(*deed, *n));
            }
        }
        let now: Moment = day(now);
        let bench = Bench::new(&shop, now, &|_| false);
        prop_assert_eq!(next_look(&all.piece(), &bench), next_look(&past.piece(), &bench));
    }
}
