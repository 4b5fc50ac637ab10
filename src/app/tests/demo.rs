//! Promises of the demo shelf: it reads, it shows every stage and kind, and it is the same on whatever day it is opened.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)]
#![allow(clippy::disallowed_methods)] // this test lists the templates beside their embedded copies

use std::path::Path;

use chrono::{DateTime, NaiveDate};
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::agenda::{Agenda, Bench, Task, agenda};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::fold_shop;

#[path = "demo/figures.rs"]
mod figures;
#[path = "demo/pictures.rs"]
mod pictures;
#[path = "demo/shows.rs"]
mod shows;

/// Both sides of a clock change, the ends of a day, midsummer, a leap day and the turn of a year.
const DAYS: [&str; 8] = [
    "2026-03-28T14:00:00+00:00",
    "2026-03-30T14:00:00+01:00",
    "2026-07-01T00:05:00+01:00",
    "2026-07-01T23:50:00+01:00",
    "2026-10-25T09:00:00+00:00",
    "2027-01-01T00:05:00-05:00",
    "2028-02-29T23:50:00+13:00",
    "2028-03-01T12:00:00+05:30",
];

fn moment(text: &str) -> Moment {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn opened(now: Moment) -> App {
    let mut store = MemoryStore::default();
    demo::fill(&mut store, now).unwrap();
    App::open(Box::new(store), true, now).unwrap()
}

fn today() -> (App, Moment) {
    let now = moment(DAYS[0]);
    (opened(now), now)
}

fn with_bench<T>(app: &App, now: Moment, ask: impl FnOnce(&[&Piece], &Bench) -> T) -> T {
    let moulds = |piece: &Piece| app.moulds_easily(piece);
    let bench = Bench::new(app.shop(), now, &moulds);
    let pieces: Vec<&Piece> = app.pieces().collect();
    ask(&pieces, &bench)
}

fn agenda_of(app: &App, now: Moment) -> Agenda {
    with_bench(app, now, agenda)
}

fn by_mark<'a>(app: &'a App, mark: &str) -> &'a Piece {
    app.pieces().find(|p| p.mark() == mark).unwrap()
}

/// A task with its day counted from today.
fn relative(task: &Task, today: NaiveDate) -> String {
    let days = task.due.signed_duration_since(today).num_days();
    let last = task.last.map(|d| d.signed_duration_since(today).num_days());
    format!(
        "{} {:?} {days} late {} {:?} last {last:?} next {} weigh {}",
        task.piece, task.kind, task.days_late, task.urgency, task.is_next_look, task.also_weigh
    )
}

fn relative_agenda(app: &App, now: Moment) -> Vec<Vec<String>> {
    let a = agenda_of(app, now);
    let day = now.date_naive();
    let mut all: Vec<Vec<String>> = [&a.overdue, &a.today, &a.coming, &a.probably_ready]
        .iter()
        .map(|tasks| tasks.iter().map(|t| relative(t, day)).collect())
        .collect();
    all.push(
        a.longest_without_look
            .iter()
            .map(|u| format!("{} {}", u.piece, u.days))
            .collect(),
    );
    all
}

#[test]
fn every_line_of_every_template_is_understood() {
    let (app, _) = today();
    assert_eq!(app.shop().unknown_facts, 0);
    assert!(app.problems().is_empty());
    for piece in app.pieces() {
        assert_eq!(piece.unknown_facts, 0, "{}", piece.id);
        for entry in &piece.diary {
            let earlier = entry.earlier.iter().map(|e| format!("{e:?}"));
            let shown = format!("{:?}", entry.fact);
            for text in earlier.chain([shown]) {
                assert!(!text.contains("Unknown {"), "{}: {text}", piece.id);
                assert!(!text.contains("\"@"), "{}: {text}", piece.id);
            }
        }
    }
    for (key, value) in &app.shop().stored {
        let mut settings = app.shop().settings.clone();
        assert!(settings.apply(key, value), "{key} {value}");
    }
}

#[test]
fn every_template_is_built_in() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo/pieces");
    let mut files: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|f| f.unwrap().file_name().into_string().unwrap())
        .map(|name| name.replace(".jsonl", "-demo"))
        .collect();
    files.sort();
    let (app, _) = today();
    let built_in: Vec<String> = app.pieces().map(|p| p.id.to_string()).collect();
    assert_eq!(built_in, files);
    for piece in app.pieces() {
        let named = format!("{}-demo", piece.mark().to_lowercase());
        assert_eq!(piece.id.as_str(), named, "file and mark differ");
    }
}

#[test]
fn the_agenda_is_the_same_on_whatever_day_it_is_opened() {
    let (app, now) = today();
    let first = relative_agenda(&app, now);
    for day in DAYS {
        let now = moment(day);
        assert_eq!(relative_agenda(&opened(now), now), first, "{day}");
    }
}

#[test]
fn nothing_lies_in_the_future_and_nothing_has_no_day() {
    for day in DAYS {
        let now = moment(day);
        let app = opened(now);
        for piece in app.pieces() {
            for entry in &piece.diary {
                assert!(entry.at <= now, "{} {day} {entry:?}", piece.id);
                assert!(
                    entry.noted_at <= now && entry.at <= entry.noted_at,
                    "{entry:?}"
                );
                assert_eq!(entry.at.offset(), now.offset());
            }
            if let Some(felled) = piece.details.text(DetailField::Felled) {
                let first: NaiveDate = format!("{felled}-01").parse().unwrap();
                assert!(first <= now.date_naive());
            }
        }
        assert!(app.shop().history.iter().all(|e| e.at <= now), "{day}");
    }
}

/// A piece as text, with the device that wrote it left out.
fn told(piece: &Piece) -> String {
    let mut device = None;
    for entry in &piece.diary {
        let name = entry.entry.line.device.to_string();
        assert_eq!(*device.get_or_insert(name.clone()), name);
    }
    format!("{piece:#?}").replace(&format!("\"{}\"", device.unwrap()), "\"device\"")
}

#[test]
fn a_shelf_on_disk_opened_again_tells_the_same_from_any_working_folder() {
    let temp = tempfile::tempdir().unwrap();
    let (shelf, device) = (temp.path().join("shelf"), temp.path().join("device"));
    let open = || ShelfStore::open(&shelf, &device, [7; 16], Box::new(|| 7)).unwrap();
    let now = moment(DAYS[1]);
    let elsewhere = tempfile::tempdir().unwrap();
    let before = std::env::current_dir().unwrap();
    std::env::set_current_dir(elsewhere.path()).unwrap();
    let mut store = open();
    demo::fill(&mut store, now).unwrap();
    drop(store);
    let loaded = open().load().unwrap();
    std::env::set_current_dir(before).unwrap();
    assert!(loaded.problems.is_empty(), "{:?}", loaded.problems);
    let memory = opened(now);
    assert_eq!(loaded.pieces.len(), memory.pieces().count());
    for on_disk in &loaded.pieces {
        let id = &on_disk.id;
        assert_eq!(told(on_disk), told(memory.piece(id).unwrap()), "{id}");
    }
    let shop = fold_shop(loaded.shop);
    assert_eq!(shop.settings, memory.shop().settings);
    assert_eq!(shop.climate, memory.shop().climate);
    assert_eq!(shop.history.len(), memory.shop().history.len());
}
