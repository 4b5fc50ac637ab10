//! Promises of how a piece fared in drying: what counts as kept, as lost by drying and as neither, over how many days.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use chrono::{DateTime, Duration};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::dried::{Dried, Fate, dried, rough_wall};
use evenwall_piece::fact::{Clock, End, Measure, PieceFact as F, Reading, StationRef};
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, LineId, PieceId};
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{LostHow, LostWhere, Taken};

fn day(n: i64) -> Moment {
    DateTime::parse_from_rfc3339("2026-01-01T10:00:00+00:00").unwrap() + Duration::days(n)
}

fn piece(facts: &[(i64, F)]) -> Piece {
    let lines = facts.iter().enumerate().map(|(n, (on, fact))| Line {
        id: LineId {
            device: DeviceId::new("bench").unwrap(),
            n: n as u64 + 1,
        },
        seq: n as u64 + 1,
        at: day(*on),
        noted_at: day(*on),
        facts: vec![fact.clone()],
    });
    fold_piece(PieceId::new("k07").unwrap(), lines.collect())
}

fn to(stage: Stage) -> F {
    F::StageMoved(stage)
}

fn lost(how: LostHow) -> F {
    F::Ended(End::Lost {
        place: LostWhere::Unknown,
        how,
        why: vec![],
        note: String::new(),
    })
}

fn fared(facts: &[(i64, F)], now: i64) -> Option<(Fate, i64)> {
    let all = [&[(0, F::Created)], facts].concat();
    dried(&piece(&all), day(now)).map(|Dried { fate, days, .. }| (fate, days))
}

#[test]
fn a_piece_that_was_never_set_to_dry_does_not_count() {
    assert_eq!(fared(&[(1, to(Stage::Hollow))], 90), None);
    assert_eq!(fared(&[(1, lost(LostHow::DigIn))], 90), None);
    assert_eq!(
        fared(&[(2, to(Stage::Bag)), (9, F::Deleted)], 90),
        None,
        "a deleted one neither"
    );
}

#[test]
fn kept_is_trued_or_finished_and_its_drying_ends_where_it_left_the_shelf() {
    let walk = [
        (2, to(Stage::Bag)),
        (32, to(Stage::Air)),
        (122, to(Stage::True)),
    ];
    let with = |more: &[(i64, F)]| [&walk[..], more].concat();
    assert_eq!(fared(&walk, 130), Some((Fate::Trueing, 120)));
    let finish = with(&[(125, to(Stage::Finish))]);
    assert_eq!(fared(&finish, 200), Some((Fate::Kept, 120)));
    let done = with(&[(140, F::Ended(End::Finished))]);
    assert_eq!(fared(&done, 400), Some((Fate::Kept, 120)));
    // Back into the bag and out again.
    let again = with(&[(125, to(Stage::Air)), (152, to(Stage::True))]);
    assert_eq!(fared(&again, 160), Some((Fate::Trueing, 150)));
}

#[test]
fn what_the_lathe_took_is_no_loss_of_drying() {
    let bag = (2, to(Stage::Bag));
    let trued = (102, to(Stage::True));
    for how in LostHow::ALL.iter().copied() {
        let got = fared(&[bag.clone(), trued.clone(), (112, lost(how))], 400);
        let by_drying = [
            LostHow::CrackedDrying,
            LostHow::TooOval,
            LostHow::Mould,
            LostHow::Worm,
            LostHow::Rot,
        ];
        let want = if by_drying.contains(&how) {
            (Fate::Lost, 110)
        } else {
            (Fate::LostOtherwise, 100)
        };
        assert_eq!(got, Some(want), "{how:?}");
    }
    // Not said how: drying is to blame where it dried.
    let unknown = [bag, (52, lost(LostHow::Unknown))];
    assert_eq!(fared(&unknown, 400), Some((Fate::Lost, 50)));
}

#[test]
fn what_went_or_still_dries_is_neither_and_counts_its_days() {
    let bag = (2, to(Stage::Bag));
    assert_eq!(
        fared(std::slice::from_ref(&bag), 47),
        Some((Fate::Drying, 45))
    );
    for end in [End::GivenAway, End::LeftAsIs, End::CantFind] {
        let went = fared(&[bag.clone(), (32, F::Ended(end))], 400);
        assert_eq!(went, Some((Fate::Gone, 30)));
    }
    // Dated ahead of now: no negative days.
    assert_eq!(fared(&[bag], 1), Some((Fate::Drying, 0)));
    assert!(Fate::ALL.iter().filter(|f| f.decided()).count() == 2);
}

fn read(station: u8, mm: f64) -> F {
    F::Reading(Reading {
        station: StationRef::Wall(station),
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::Callipers,
    })
}

#[test]
fn the_rough_wall_is_what_was_read_before_truing_else_what_was_wanted() {
    let wanted = F::Detail {
        field: DetailField::WallWanted,
        value: Some(DetailValue::Length(Measure::plain(12.0))),
    };
    let bare = rough_wall(&piece(&[(0, F::Created)]));
    assert_eq!(bare, None);
    let only = rough_wall(&piece(&[(0, F::Created), (0, wanted.clone())])).unwrap();
    assert_eq!(
        (only.wall_mm, only.spread_mm, only.read),
        (12.0, None, false)
    );
    let layout = |count| F::Stations {
        count,
        depths_mm: vec![],
    };
    let two = [
        (0, F::Created),
        (0, wanted),
        (1, layout(5)),
        (1, to(Stage::Hollow)),
        (1, read(1, 14.0)),
        (1, read(1, 10.0)),
        (1, read(2, 11.0)),
    ];
    let wall = rough_wall(&piece(&two)).unwrap();
    assert_eq!(
        (wall.wall_mm, wall.spread_mm, wall.read),
        (10.5, None, true)
    );
    let trued = [
        &two[..],
        &[
            (2, read(3, 12.0)),
            (3, to(Stage::Bag)),
            (90, to(Stage::True)),
            (90, layout(4)),
            (91, read(1, 6.0)),
        ],
    ]
    .concat();
    let wall = rough_wall(&piece(&trued)).unwrap();
    assert_eq!((wall.wall_mm, wall.spread_mm), (11.0, Some(2.0)));
}
