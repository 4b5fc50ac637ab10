//! Reminders: over simulated years every drying piece has exactly one next look, the same in app, calendar and `due`.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // one test reads a shelf on a real disk while it is open elsewhere

mod support_two_devices;

use std::collections::BTreeMap;

use chrono::{Duration, NaiveDate};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::records::due::{self, DUE, FAILED, NOTHING, OVERDUE};
use evenwall_app::records::{RecordsAction, calendar};
use evenwall_app::shop::ShopAction;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::agenda::{is_paused, tasks_of};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::{BagFeel, Method};
use evenwall_records::calendar::{Earlier, read};
use proptest::prelude::*;
use support_two_devices::{Device, moment};

fn day(n: i64) -> Moment {
    moment("2026-02-01T07:30:00+00:00") + Duration::days(n)
}

fn id(n: usize) -> PieceId {
    PieceId::new(&format!("k{n}")).unwrap()
}

/// What happens to a piece on a day.
fn deed() -> impl Strategy<Value = Vec<PieceFact>> {
    let look = |feel| PieceFact::Look {
        feel,
        mould: false,
        crack: false,
    };
    prop_oneof![
        20 => prop::sample::select(BagFeel::ALL).prop_map(move |f| vec![look(Some(f))]),
        6 => Just(vec![look(None)]),
        8 => (500_u32..900).prop_map(|g| vec![PieceFact::Weighed { mass_g: Measure::plain(f64::from(g)), tare_g: 0.0 }]),
        3 => Just(vec![PieceFact::NotFound]),
        6 => prop::sample::select(Stage::ALL).prop_map(|s| vec![PieceFact::StageMoved(s)]),
        3 => prop::sample::select(Method::ALL).prop_map(|m| vec![PieceFact::MethodChosen(m)]),
        2 => Just(vec![PieceFact::HalfTurned]),
        3 => Just(vec![PieceFact::Resumed]),
        2 => (0_i64..900).prop_map(|n| vec![PieceFact::Paused { until: Some(day(n).date_naive()) }]),
        2 => Just(vec![PieceFact::Paused { until: None }]),
        4 => Just(vec![PieceFact::Unpaused]),
        1 => Just(vec![PieceFact::Ended(End::Finished)]),
        3 => Just(vec![PieceFact::PutBack]),
    ]
}

fn looks_in_calendar(text: &str) -> BTreeMap<String, Earlier> {
    let mut events = read(text);
    events.retain(|uid, e| uid.ends_with("-look@evenwall") && !e.cancelled);
    events
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn over_years_app_calendar_and_due_have_the_same_one_next_look_of_every_drying_piece(
        deeds in prop::collection::vec((0_usize..5, 0_i64..800, deed()), 0..120),
        away in prop::collection::vec((0_i64..800, 1_i64..40), 0..4),
    ) {
        let mut deeds = deeds;
        deeds.sort_by_key(|d| d.1);
        let mut store = MemoryStore::default();
        for n in 0..5 {
            let mark = DetailValue::Text(format!("K{n}1"));
            let facts = vec![
                PieceFact::Created,
                PieceFact::Detail { field: DetailField::Mark, value: Some(mark) },
                PieceFact::StageMoved(Stage::ALL[n + 2]),
            ];
            store.append_piece(&id(n), day(0), day(0), facts).unwrap();
        }
        let mut away = away;
        away.sort_unstable();
        let mut earlier: Option<String> = None;
        let mut last: BTreeMap<String, Earlier> = BTreeMap::new();
        for today in (0..800).step_by(9) {
            for (n, when, facts) in deeds.iter().filter(|d| d.1 <= today && d.1 > today - 9) {
                store.append_piece(&id(*n), day(*when), day(*when), facts.clone()).unwrap();
            }
            for (when, days) in away.iter().filter(|a| a.0 <= today && a.0 > today - 9) {
                let back_on = day(when + days).date_naive();
                store.append_shop(day(*when), day(*when), vec![ShopFact::Away { back_on }]).unwrap();
            }
            let now = day(today);
            let app = App::open(Box::new(store.clone()), false, now).unwrap();

            let asks: Vec<(String, NaiveDate)> = app
                .pieces()
                .filter(|p| p.living() && p.stage().group() == Group::Drying && !is_paused(p, now.date_naive()))
                .map(|p| {
                    let looks: Vec<_> = app.with_bench(now, |b| tasks_of(p, b)).into_iter().filter(|t| t.is_next_look).collect();
                    assert_eq!(looks.len(), 1, "day {today}: {looks:?}");
                    (p.id.to_string(), looks[0].due)
                })
                .collect();
            // `due`: the same ones, each once, on the same day.
            let due = app.due(now, 10_000);
            let rows = || due.overdue.iter().chain(&due.today).chain(&due.coming);
            let mut listed: Vec<(String, String)> = rows().filter(|r| r.next_look).map(|r| (r.piece.clone(), r.due.clone())).collect();
            listed.sort();
            let wanted: Vec<(String, String)> = asks.iter().map(|(p, d)| (p.clone(), d.to_string())).collect();
            prop_assert_eq!(&listed, &wanted);
            // The calendar: the same ones, on the day they are due or, where that is past, the next morning to come.
            let text = app.calendar(earlier.as_deref(), now);
            let events = looks_in_calendar(&text);
            let named: Vec<String> = events.keys().map(|u| u.trim_end_matches("-look@evenwall").to_owned()).collect();
            prop_assert_eq!(&named, &asks.iter().map(|(p, _)| p.clone()).collect::<Vec<_>>());
            for (piece, due) in &asks {
                let event = &events[&format!("{piece}-look@evenwall")];
                prop_assert_eq!(event.start.date(), (*due).max(now.date_naive()));
            }
            // What was written before is written again, is cancelled, or its day is long past; never a lower sequence.
            let all = read(&text);
            for (uid, before) in &last {
                match all.get(uid) {
                    Some(after) => {
                        prop_assert!(after.sequence >= before.sequence);
                        let changed = (after.start, after.cancelled) != (before.start, before.cancelled);
                        prop_assert!(!changed || after.sequence > before.sequence);
                    }
                    None => prop_assert!(before.start.date() < now.date_naive() - Duration::days(60)),
                }
            }
            last = all;
            earlier = Some(text);
        }
    }
}

fn one() -> (tempfile::TempDir, Device) {
    let temp = tempfile::tempdir().unwrap();
    let mut device = Device::new(temp.path(), "a", 1);
    device.setting("cautions_read", "true");
    device.new_piece("K07");
    (temp, device)
}

fn bagged(device: &mut Device) -> PieceId {
    let piece = device.id("K07");
    device.act(Action::Piece(evenwall_app::piece::PieceAction::MoveTo {
        piece: piece.clone(),
        stage: Stage::Bag,
        day: None,
        sure: true,
    }));
    piece
}

#[test]
fn an_event_is_at_the_same_hour_on_the_clock_on_both_sides_of_summer_time() {
    let (_temp, mut device) = one();
    let piece = bagged(&mut device);
    // Clocks go forward on 29 March 2026 in Europe: felt the day before, looked at two days after.
    device.now = moment("2026-03-28T18:00:00+00:00");
    device.felt(&piece, BagFeel::Wet);
    let text = device.seen().calendar(None, device.now);
    assert!(text.contains("DTSTART:20260330T090000\r\n"), "{text}");
    // Read from the other side, with the new offset: the same.
    let later = device
        .seen()
        .calendar(None, moment("2026-03-29T10:00:00+01:00"));
    assert!(later.contains("DTSTART:20260330T090000\r\n"), "{later}");
    assert!(!text.contains("T090000Z"));
}

#[test]
fn a_reminder_rings_each_morning_until_it_is_answered_and_is_then_one_event_still() {
    let (_temp, mut device) = one();
    let piece = bagged(&mut device);
    let first = device.seen().calendar(None, device.now);
    let uid = format!("{piece}-look@evenwall");
    assert_eq!(read(&first)[&uid].start.to_string(), "2026-03-13 09:00:00");
    // Three days later nobody has looked; it is ten o'clock.
    device.now = moment("2026-03-16T10:00:00+00:00");
    let second = device.seen().calendar(Some(&first), device.now);
    assert_eq!(read(&second)[&uid].start.to_string(), "2026-03-17 09:00:00");
    assert!(read(&second)[&uid].sequence > read(&first)[&uid].sequence);
    assert!(second.contains("Due 13 March 2026"), "{second}");
    device.felt(&piece, BagFeel::Damp);
    let third = device.seen().calendar(Some(&second), device.now);
    assert_eq!(read(&third)[&uid].start.to_string(), "2026-03-19 09:00:00");
    assert!(read(&third)[&uid].sequence > read(&second)[&uid].sequence);
    // Asked again with nothing changed it says the same.
    let again = device.seen().calendar(Some(&third), device.now);
    assert_eq!(read(&again), read(&third));
}

#[test]
fn the_calendar_file_is_kept_up_to_date_where_the_turner_wants_it_and_cancels_what_ended() {
    let (temp, mut device) = one();
    let piece = bagged(&mut device);
    device.act(RecordsAction::SaveCalendar);
    assert!(
        device
            .seen()
            .question()
            .unwrap()
            .text
            .contains("Choose a file")
    );
    device.act(Action::CloseQuestion);
    let file = temp.path().join("bags.ics");
    let settings = evenwall_app::device::DeviceSettings {
        calendar_file: file.to_string_lossy().into_owned(),
        reminder_time: "07:15".into(),
        ..device.seen().device().clone()
    };
    device.act(ShopAction::Device(settings));
    device.act(RecordsAction::SaveCalendar);
    let uid = format!("{piece}-look@evenwall");
    let written = || read(&std::fs::read_to_string(&file).unwrap());
    assert_eq!(written()[&uid].start.to_string(), "2026-03-13 07:15:00");
    device.act(Action::Piece(evenwall_app::piece::PieceAction::End {
        piece: piece.clone(),
        end: End::GivenAway,
    }));
    device.act(RecordsAction::SaveCalendar);
    assert!(written()[&uid].cancelled);
    device.act(RecordsAction::SaveCalendar);
    let kept = written()[&uid].sequence;
    device.act(RecordsAction::SaveCalendar);
    assert_eq!(written()[&uid].sequence, kept, "cancelled once");
    device.now += Duration::days(70);
    device.act(RecordsAction::SaveCalendar);
    assert!(written().is_empty(), "and gone after two months");
    // Another program's calendar is left alone.
    std::fs::write(
        &file,
        "BEGIN:VCALENDAR\r\nPRODID:-//Other//EN\r\nEND:VCALENDAR\r\n",
    )
    .unwrap();
    device.act(RecordsAction::SaveCalendar);
    assert!(
        device
            .seen()
            .question()
            .unwrap()
            .text
            .contains("holds another calendar")
    );
    assert!(std::fs::read_to_string(&file).unwrap().contains("Other"));
}

#[test]
fn one_piece_by_hand_and_a_place_that_is_not_there() {
    let (temp, mut device) = one();
    let piece = bagged(&mut device);
    let path = temp.path().join("k07.ics").to_string_lossy().into_owned();
    device.act(RecordsAction::SavePieceCalendar(
        piece.clone(),
        path.clone(),
    ));
    assert_eq!(
        device.seen().records_outcome().unwrap(),
        format!("Written: {path}")
    );
    assert_eq!(read(&std::fs::read_to_string(&path).unwrap()).len(), 1);
    let now = device.now;
    let nowhere = RecordsAction::SavePieceCalendar(piece, "/nowhere/at/all.ics".into());
    device.app().apply(nowhere.into(), now);
    assert!(
        device
            .seen()
            .save_error()
            .unwrap()
            .contains("make it first")
    );
}

#[test]
fn due_says_what_is_due_with_a_status_while_the_shelf_is_open_elsewhere() {
    let (_temp, mut device) = one();
    let disk = || std::sync::Arc::new(evenwall_shelf::disk::RealDisk::new());
    let run = |device: &Device, now: Moment, json: bool| {
        due::run(disk(), &device.shelf, &device.data, now, 7, json)
    };
    let (text, status) = run(&device, device.now, false);
    assert_eq!(
        (text.as_str(), status),
        ("Nothing is due today.\n", NOTHING)
    );
    let piece = bagged(&mut device);
    let before = std::fs::read_dir(&device.data).unwrap().count();
    let (text, status) = run(&device, device.now, false);
    assert_eq!(status, NOTHING);
    assert!(
        text.contains("Coming up\n  K07 · Bag check · tomorrow"),
        "{text}"
    );
    assert_eq!(run(&device, device.now + Duration::days(1), false).1, DUE);
    let (json, status) = run(&device, device.now + Duration::days(4), true);
    assert_eq!(status, OVERDUE);
    let said: serde_json::Value = serde_json::from_str(&json).unwrap();
    let row = &said["overdue"][0];
    assert_eq!(
        (
            row["mark"].as_str(),
            row["kind"].as_str(),
            row["days_late"].as_i64()
        ),
        (Some("K07"), Some("look"), Some(3))
    );
    assert_eq!(
        (
            row["due"].as_str(),
            row["urgency"].as_str(),
            row["next_look"].as_bool()
        ),
        (Some("2026-03-13"), Some("serious"), Some(true))
    );
    assert_eq!(
        std::fs::read_dir(&device.data).unwrap().count(),
        before,
        "nothing is written"
    );
    assert_eq!(run(&device, device.now, false).1, NOTHING);
    device.shelf.push("nowhere");
    let (said, status) = run(&device, device.now, false);
    assert_eq!(status, FAILED);
    assert!(said.contains("there is no shelf at"), "{said}");
    assert_eq!(
        calendar::uid(
            &device.seen().with_bench(device.now, |b| tasks_of(
                device.seen().piece(&piece).unwrap(),
                b
            ))[0]
        )
        .unwrap(),
        format!("{piece}-look@evenwall")
    );
}
