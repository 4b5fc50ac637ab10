//! Years: `years make DIR PIECES` writes an invented shelf of many years (one piece in ten living with 400 entries, the
//! others finished with 120), `years time DIR` opens it as the program does and prints how long what takes.
//!
//! Each size is timed by a process of its own, so that its memory is its own.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)] // a benchmark as a command
#![allow(clippy::disallowed_methods)] // it writes the shelf as files, and times

use std::fs;
use std::path::Path;
use std::time::Instant;

use chrono::{DateTime, Duration};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::diary::DiaryAction;
use evenwall_app::pieces::PiecesAction;
use evenwall_app::route::Page;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, End, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Taken};

const LIVING: usize = 400;
const FINISHED: usize = 120;

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
}

fn is_living(piece: usize) -> bool {
    piece.is_multiple_of(10)
}

/// The facts of entry `n` of `lines` of a piece: entered, shaped, hollowed and measured, bagged, aired, weighed, ended.
fn facts(piece: usize, n: usize, lines: usize) -> Vec<PieceFact> {
    let woods = ["white-ash", "european-beech", "wild-cherry", "sycamore"];
    let text = |field, text: String| PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text)),
    };
    let bagged = lines / 4;
    let aired = lines / 2;
    match n {
        0 => vec![
            PieceFact::Created,
            text(DetailField::Mark, format!("M{piece}")),
            text(DetailField::Wood, woods[piece % woods.len()].into()),
        ],
        1 => vec![PieceFact::StageMoved(Stage::Hollow)],
        _ if n + 1 == lines && !is_living(piece) => vec![PieceFact::Ended(End::Finished)],
        _ if n == bagged => vec![PieceFact::StageMoved(Stage::Bag)],
        _ if n == aired && !piece.is_multiple_of(20) => vec![PieceFact::StageMoved(Stage::Air)],
        _ if n < bagged => vec![PieceFact::Reading(Reading {
            station: StationRef::Wall((n % 7) as u8 + 1),
            position: Clock::TWELVE,
            wall_mm: Some(Measure {
                value: 10.0 + (n % 5) as f64 * 0.5,
                typed: "10.5".into(),
            }),
            feel: None,
            taken: Taken::Callipers,
        })],
        _ if n.is_multiple_of(3) => vec![PieceFact::Weighed {
            mass_g: Measure {
                value: 1_500.0 - n as f64,
                typed: format!("{}", 1_500 - n),
            },
            tare_g: 0.0,
        }],
        _ if n.is_multiple_of(17) => vec![PieceFact::Note(
            "The rim still looks sound, turned the bag".into(),
        )],
        _ => vec![PieceFact::Look {
            feel: Some(if n.is_multiple_of(2) {
                BagFeel::Damp
            } else {
                BagFeel::Nothing
            }),
            mould: false,
            crack: false,
        }],
    }
}

fn store(folder: &Path) -> ShelfStore {
    let mut state = 7_u64;
    let random = Box::new(move || {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1);
        state
    });
    ShelfStore::open(
        &folder.join("shelf"),
        &folder.join("device"),
        [9; 16],
        random,
    )
    .unwrap()
}

fn make(folder: &Path, pieces: usize) {
    fs::create_dir_all(folder).unwrap();
    drop(store(folder));
    let mut bytes = 0;
    for piece in 0..pieces {
        let lines = if is_living(piece) { LIVING } else { FINISHED };
        let end = if is_living(piece) {
            0
        } else {
            (piece as i64 % 3_000) + 10
        };
        let start = now() - Duration::days(lines as i64 + end + (piece % 3) as i64);
        let dir = folder.join(format!("shelf/pieces/m{piece}"));
        fs::create_dir_all(&dir).unwrap();
        let mut text = String::new();
        for n in 0..lines {
            let at = (start + Duration::days(n as i64)).to_rfc3339();
            let facts: Vec<_> = facts(piece, n, lines)
                .iter()
                .map(|f| evenwall_shelf::format::write(f).unwrap())
                .collect();
            let line = serde_json::json!({
                "device": "years", "n": n + 1, "seq": n + 1, "at": at, "noted_at": at, "v": 1, "facts": facts,
            });
            text.push_str(&line.to_string());
            text.push('\n');
        }
        bytes += text.len();
        fs::write(dir.join("years.jsonl"), text).unwrap();
    }
    println!("{pieces} pieces, {} MB", bytes / 1_000_000);
}

/// Memory of this process in MB: now, and the most so far. Nothing where the system does not say.
fn memory() -> (u64, u64) {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let of = |name: &str| {
        let line = status.lines().find(|l| l.starts_with(name));
        line.and_then(|l| l.split_whitespace().nth(1)?.parse::<u64>().ok())
            .unwrap_or(0)
            / 1024
    };
    (of("VmRSS"), of("VmHWM"))
}

/// The median of some runs in ms.
fn median(runs: usize, mut work: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..runs)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[runs / 2]
}

fn time(folder: &Path) {
    let start = Instant::now();
    let mut app = App::open(Box::new(store(folder)), false, now()).unwrap();
    let opened = start.elapsed().as_secs_f64() * 1e3;
    let (held, most) = memory();
    let pieces = app.pieces().count();
    let again = median(3, || {
        drop(App::open(Box::new(reader(folder)), false, now()).unwrap())
    });
    let today = median(9, || drop(app.today_view(now())));
    let list = median(9, || drop(app.pieces_view(now())));
    let search = median(9, || {
        for typed in ["M", "M4", "M44"] {
            app.apply(Action::Pieces(PiecesAction::Search(typed.into())), now());
            drop(app.pieces_view(now()));
        }
    }) / 3.0;
    let id = PieceId::new("m0").unwrap();
    let open_piece = median(9, || {
        app.apply(Action::Open(Page::Piece(id.clone())), now());
        drop(app.piece_view(now()));
        app.apply(Action::Back, now());
    });
    app.apply(Action::Open(Page::Diary(id)), now());
    let append = median(30, || {
        app.apply(
            Action::Diary(DiaryAction::EditNote("Rim looks sound".into())),
            now(),
        );
        app.apply(Action::Diary(DiaryAction::AddNote), now());
        assert!(app.save_error().is_none());
    });
    println!(
        "| {pieces} | {opened:.0} | {again:.0} | {held} | {most} | {today:.1} | {list:.1} | {search:.1} | {open_piece:.2} | {append:.2} |"
    );
}

/// The same shelf for another device, while the first still has it open.
fn reader(folder: &Path) -> ShelfStore {
    ShelfStore::open(
        &folder.join("shelf"),
        &folder.join("other"),
        [8; 16],
        Box::new(|| 5),
    )
    .unwrap()
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let folder = |at: usize| Path::new(&args[at]).to_owned();
    match args.first().map(String::as_str) {
        Some("make") => make(&folder(1), args[2].parse().unwrap()),
        Some("time") => time(&folder(1)),
        _ => println!("years make DIR PIECES | years time DIR"),
    }
}
