//! Rounds, days away and months of silence.
#![allow(clippy::unwrap_used)]

mod agenda_history;

use agenda_history::*;
use evenwall_piece::agenda::{Bench, TaskKind, Urgency, next_look};
use evenwall_piece::away::{BeforeLeaving, before_leaving, catch_up, on_return, one_row_a_piece};
use evenwall_piece::bag::BagState;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::round::{WeighWhich, bag_round, weigh_round};
use evenwall_piece::shop::{Shop, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::BagFeel::{Damp, Nothing, Wet};
use evenwall_piece::vocabulary::Method;

fn folded(histories: &[&History]) -> Vec<Piece> {
    histories.iter().map(|h| h.piece()).collect()
}

fn with<T>(
    shop: &Shop,
    histories: &[&History],
    now: Moment,
    f: impl Fn(&[&Piece], &Bench) -> T,
) -> T {
    let pieces = folded(histories);
    let pieces: Vec<&Piece> = pieces.iter().collect();
    f(&pieces, &Bench::new(shop, now, &|_| false))
}

fn bag(mark: &str, felt: i64, feel: evenwall_piece::vocabulary::BagFeel) -> History {
    let mut h = History::since(mark, Stage::Bag, day(-30));
    h.felt(day(felt), feel);
    h
}

#[test]
fn a_bag_round_takes_every_bag_due_within_a_day_the_most_serious_first() {
    let open_late = bag("K01", 0, Nothing); // due day 3
    let very_late = bag("K10", 0, Wet); // due day 2
    let also_late = bag("K9", 0, Wet);
    let tomorrow = bag("K02", 7, Wet); // due day 9, felt before today
    let later = bag("K03", 7, Damp); // due day 10
    let mut warm = bag("K04", 8, Wet); // felt today, mould: due tomorrow
    warm.tell(day(8), vec![look(None, true)]);
    let new = History::since("K05", Stage::Bag, day(8)); // bagged today, due tomorrow
    let mut lost = bag("K06", 0, Damp);
    lost.tell(day(5), vec![PieceFact::NotFound]);
    let mut paper = History::new("K07", Stage::Bag);
    paper.method(day(0), Method::Paper);
    let airing = History::new("K08", Stage::Air);
    let all = [
        &open_late, &very_late, &also_late, &tomorrow, &later, &warm, &new, &lost, &paper, &airing,
    ];
    let round = with(&Shop::default(), &all, day(8), bag_round);
    let tasks: Vec<_> = round.bags.iter().map(|b| b.look.clone()).collect();
    assert_eq!(ids(&tasks), ["k9", "k10", "k01", "k02"]);
    assert_eq!(round.bags[0].look.urgency, Urgency::Serious);
    assert_eq!(round.bags[2].state, BagState::OpenOnce);
    assert_eq!(round.missing.len(), 1);
    assert_eq!(round.missing[0].as_str(), "p-k06");
}

#[test]
fn a_bag_answered_in_the_round_leaves_it() {
    let mut one = bag("K01", 0, Wet);
    one.felt(day(8), Damp);
    let two = bag("K02", 0, Wet);
    let round = with(&Shop::default(), &[&one, &two], day(8), bag_round);
    assert_eq!(round.bags.len(), 1);
    let mut gone = two.clone();
    gone.tell(day(8), vec![PieceFact::NotFound]);
    let round = with(&Shop::default(), &[&one, &gone], day(8), bag_round);
    assert_eq!((round.bags.len(), round.missing.len()), (0, 1));
}

#[test]
fn three_bag_days_a_week_reach_every_damp_bag_within_a_day_of_its_date() {
    let s = shop(&[setting("bag_days", "mon thu sat")]);
    let mut bags: Vec<History> = (0..7)
        .map(|n| History::since(&format!("K{n}"), Stage::Bag, day(n)))
        .collect();
    for n in 7..120 {
        let weekday = n % 7; // day 0 is a Monday
        if ![0, 3, 5].contains(&weekday) {
            continue;
        }
        let pieces: Vec<&History> = bags.iter().collect();
        let round = with(&s, &pieces, day(n), bag_round);
        for row in round.bags {
            assert!(row.look.days_late <= 1 || n < 10, "day {n}: {row:?}");
            let h = bags
                .iter_mut()
                .find(|h| h.piece().id == row.look.piece)
                .unwrap();
            h.felt(day(n), Damp);
        }
    }
    for h in &bags {
        assert!(next_in(&s, h, day(120)).days_late == 0);
    }
}

#[test]
fn a_weigh_round_has_one_row_a_piece_for_what_is_due_or_for_a_whole_stage() {
    let mut due = History::new("K10", Stage::Air);
    due.weighed(day(0), 800.0);
    let mut done = History::new("K02", Stage::Air);
    done.weighed(day(0), 700.0).weighed(day(8), 690.0);
    let mut settling = History::new("K9", Stage::Settle);
    settling.weighed(day(0), 650.0);
    let never = History::new("K04", Stage::Settle);
    let mut paused = History::new("K05", Stage::Settle);
    paused.tell(day(1), vec![PieceFact::Paused { until: None }]);
    let all = [&due, &done, &settling, &never, &paused];
    let marks = |which, now| {
        let rows = with(&Shop::default(), &all, now, |p, b| weigh_round(p, b, which));
        let ids = rows.iter().map(|r| r.piece.as_str()[2..].to_owned());
        ids.collect::<Vec<_>>()
    };
    assert_eq!(marks(WeighWhich::Due, day(8)), ["k04", "k10"]);
    assert_eq!(marks(WeighWhich::Due, day(14)), ["k02", "k04", "k9", "k10"]);
    let settle = WeighWhich::InStage(Stage::Settle);
    assert_eq!(marks(settle, day(8)), ["k04", "k9"]);
    // Weighed every day: what is on the scale today is not asked for again today.
    let daily = shop(&[setting("rhythm_air", "7/1/30")]);
    let rows = with(&daily, &[&done], day(8), |p, b| {
        weigh_round(p, b, WeighWhich::Due)
    });
    assert!(rows.is_empty());
    let rows = with(&Shop::default(), &all, day(8), |p, b| {
        weigh_round(p, b, WeighWhich::InStage(Stage::Air))
    });
    assert_eq!(rows[0].last, Some((day(8), 690.0)));
    assert_eq!(rows[1].due, Some(date(7)));
}

#[test]
fn before_leaving_closed_bags_due_meanwhile_are_opened_or_put_in_paper_and_the_rest_is_fine() {
    let damp = bag("K01", 0, Damp);
    let wet = bag("K02", 0, Wet);
    let never = History::since("K03", Stage::Bag, day(0));
    let open = bag("K04", 0, Nothing);
    let mut mouldy = bag("K05", -3, Damp);
    mouldy.tell(day(0), vec![look(Some(Damp), true)]);
    let mut settling = History::new("K06", Stage::Settle);
    settling.weighed(day(0), 600.0);
    let mut half = History::new("K07", Stage::Hollow);
    half.tell(day(0), vec![PieceFact::HalfTurned]);
    let all = [&damp, &wet, &never, &open, &mouldy, &settling, &half];
    let leaving = with(&Shop::default(), &all, day(0), |p, b| {
        before_leaving(p, b, date(10))
    });
    let acts: Vec<_> = leaving
        .act
        .iter()
        .map(|r| (&r.piece.as_str()[2..], r.act))
        .collect();
    assert_eq!(
        acts,
        [
            ("k01", BeforeLeaving::OpenNeck),
            ("k02", BeforeLeaving::PutInPaper),
            ("k03", BeforeLeaving::PutInPaper),
            ("k05", BeforeLeaving::PutInPaper),
            ("k07", BeforeLeaving::FinishOrBag),
        ]
    );
    assert_eq!(leaving.may_wait.len(), 1);
    assert_eq!(leaving.may_wait[0].as_str(), "p-k04");
    assert_eq!(leaving.fine.len(), 1);
    // Back before it falls due: nothing to do.
    let short = with(&Shop::default(), &[&damp], day(0), |p, b| {
        before_leaving(p, b, date(3))
    });
    assert_eq!((short.act.len(), short.fine.len()), (0, 1));
    // Saying so changes nothing in the list: it counts what would fall due.
    let away = shop(&[(day(0), ShopFact::Away { back_on: date(10) })]);
    assert_eq!(
        with(&away, &all, day(0), |p, b| before_leaving(p, b, date(10))),
        leaving
    );
}

#[test]
fn while_away_nothing_falls_due_and_the_return_has_one_list() {
    let s = shop(&[(day(0), ShopFact::Away { back_on: date(19) })]);
    let due_before = bag("K01", -5, Damp); // due day -2
    let due_meanwhile = bag("K02", 0, Damp); // due day 3
    let due_after = {
        let mut h = History::new("K03", Stage::Settle);
        h.weighed(day(6), 600.0); // due day 20
        h
    };
    let all = [due_before.clone(), due_meanwhile.clone(), due_after];
    let meanwhile = whole(&s, &all, day(10));
    assert_eq!(ids(&meanwhile.overdue), ["k01"], "due before leaving stays");
    assert!(meanwhile.today.is_empty());
    assert_eq!(next_in(&s, &due_meanwhile, day(10)).due, date(19));
    let bench = |n| Bench::new(&s, day(n), &|_| false);
    assert_eq!(on_return(&meanwhile, &bench(10)), None);
    let back = whole(&s, &all, day(19));
    let list = on_return(&back, &bench(19)).unwrap();
    assert_eq!((list.left, list.back), (date(0), date(19)));
    let rows: Vec<_> = list.rows.iter().map(|r| r.piece.as_str()).collect();
    assert_eq!(rows, ["p-k01", "p-k02"]);
    assert_eq!(list.rows[1].last, Some(date(0)));
    assert_eq!(
        next_in(&s, &due_meanwhile, day(21)).days_late,
        2,
        "late from the return on"
    );
    let mut answered = due_meanwhile.clone();
    answered.felt(day(19), Damp);
    let after = whole(&s, &[due_before, answered], day(19));
    assert_eq!(
        on_return(&after, &bench(19)),
        None,
        "nothing that fell due away is left"
    );
}

#[test]
fn what_is_due_on_the_day_of_leaving_is_due_until_the_evening() {
    let s = shop(&[(day(3), ShopFact::Away { back_on: date(9) })]);
    let h = bag("K01", 0, Damp);
    assert_eq!(next_in(&s, &h, day(3)).due, date(3));
    assert_eq!(next_in(&s, &h, day(4)).due, date(9));
}

#[test]
fn back_early_or_planned_anew_ends_the_days_away() {
    let away = |n, back| {
        (
            day(n),
            ShopFact::Away {
                back_on: date(back),
            },
        )
    };
    let h = bag("K01", 0, Damp); // due day 3
    let early = shop(&[away(1, 20), (day(8), ShopFact::Back)]);
    assert_eq!(next_in(&early, &h, day(8)).due, date(8));
    let longer = shop(&[away(1, 10), away(8, 15)]);
    assert_eq!(next_in(&longer, &h, day(12)).due, date(15));
    let too_late = shop(&[away(1, 10), away(12, 15)]);
    assert_eq!(
        next_in(&too_late, &h, day(14)).due,
        date(10),
        "it was overdue by then"
    );
}

#[test]
fn work_done_while_away_ends_the_days_away() {
    let s = shop(&[(day(0), ShopFact::Away { back_on: date(20) })]);
    let mut answered = bag("K01", 0, Damp); // due day 3
    answered.felt(day(10), Damp);
    let waiting = bag("K02", 0, Damp); // due day 3
    let all = [&answered, &waiting];
    let due = |now| {
        with(&s, &all, now, |pieces, bench| {
            let bench = Bench::new(bench.shop, now, bench.moulds_easily)
                .with_work_on(pieces.iter().copied());
            let due = |n: usize| next_look(pieces[n], &bench).unwrap();
            (due(0), due(1), bench.last_return())
        })
    };
    let back = Some(date(10));
    assert_eq!(due(day(10)), (date(13), date(10), back), "by its rhythm");
    assert_eq!(due(day(25)), (date(13), date(10), back), "and so it stays");
    // Before that nothing was known of it.
    assert_eq!(due(day(9)), (date(20), date(20), Some(date(20))));
}

#[test]
fn after_months_of_silence_there_is_one_list_without_lateness() {
    let mut settling = History::new("K02", Stage::Settle);
    settling.weighed(day(0), 600.0);
    let all = [bag("K01", 0, Damp), settling];
    let a = whole(&Shop::default(), &all, day(30));
    assert_eq!((a.silent_days, catch_up(&a)), (Some(30), None));
    let a = whole(&Shop::default(), &all, day(31));
    let list = catch_up(&a).unwrap();
    assert_eq!(list.silent_days, 31);
    let rows: Vec<_> = list
        .rows
        .iter()
        .map(|r| (r.piece.as_str(), r.kinds.clone()))
        .collect();
    assert_eq!(
        rows,
        [
            ("p-k01", vec![TaskKind::Look]),
            ("p-k02", vec![TaskKind::Weigh])
        ]
    );
    // One answer ends the silence; what is left can still be listed.
    let [first, second] = all;
    let mut answered = first;
    answered.felt(day(31), Damp);
    let a = whole(&Shop::default(), &[answered, second.clone()], day(31));
    assert_eq!(catch_up(&a), None);
    assert_eq!(one_row_a_piece(a.overdue.iter()).len(), 1);
    // Nothing overdue: nothing to catch up with.
    let shape = History::new("K03", Stage::Shape);
    assert_eq!(catch_up(&whole(&Shop::default(), &[shape], day(90))), None);
    // Away is not silence.
    let s = shop(&[(day(1), ShopFact::Away { back_on: date(60) })]);
    let a = whole(&s, &[second], day(65));
    assert_eq!(a.silent_days, Some(5));
}

#[test]
fn a_look_back_dated_by_months_still_ends_the_silence() {
    let mut h = bag("K01", 0, Damp);
    h.tell_noted(
        day(2),
        day(90),
        vec![PieceFact::Note("found the notebook".to_owned())],
    );
    assert_eq!(whole(&Shop::default(), &[h], day(91)).silent_days, Some(1));
    assert_eq!(whole(&Shop::default(), &[], day(91)).silent_days, None);
}
