//! Prints figures: open a shelf of 1,000 pieces with 200 lines each, append one entry through the app, the agenda, and
//! the view of Today. Run with `cargo bench -p evenwall-app`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::disallowed_methods)]

use std::path::Path;
use std::sync::OnceLock;

use chrono::{DateTime, Duration};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::diary::DiaryAction;
use evenwall_app::route::Page;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::agenda::{self, Bench as AgendaBench};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::{DeviceId, PieceId};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Taken};

const PIECES: usize = 1_000;
const LINES: usize = 200;

fn main() {
    divan::main();
}

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
}

/// The facts of line `n` of piece `p`: entered, shaped, hollowed, bagged, aired and weighed, as a shop would.
fn facts(p: usize, n: usize) -> Vec<PieceFact> {
    let text = |field, text: String| PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text)),
    };
    match n {
        0 => vec![
            PieceFact::Created,
            text(DetailField::Mark, format!("M{p}")),
            text(DetailField::Wood, "ash-white".into()),
        ],
        1 => vec![PieceFact::StageMoved(Stage::Hollow)],
        2..=30 => vec![PieceFact::Reading(Reading {
            station: StationRef::Wall((n % 7) as u8 + 1),
            position: Clock::TWELVE,
            wall_mm: Some(Measure {
                value: 10.0 + (n % 5) as f64 * 0.5,
                typed: "10.5".into(),
            }),
            feel: None,
            taken: Taken::Callipers,
        })],
        31 => vec![PieceFact::StageMoved(Stage::Bag)],
        32..=90 => {
            let feel = if n < 70 {
                BagFeel::Damp
            } else {
                BagFeel::Nothing
            };
            vec![PieceFact::Look {
                feel: Some(feel),
                mould: false,
                crack: false,
            }]
        }
        91 if p.is_multiple_of(2) => vec![PieceFact::StageMoved(Stage::Air)],
        _ => vec![PieceFact::Weighed {
            mass_g: Measure {
                value: 900.0 - n as f64,
                typed: "800".into(),
            },
            tare_g: 0.0,
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

/// A shelf of another device's journals, written once as files and then only read.
fn shelf() -> &'static Path {
    static SHELF: OnceLock<tempfile::TempDir> = OnceLock::new();
    SHELF
        .get_or_init(|| {
            let folder = tempfile::tempdir().unwrap();
            drop(store(folder.path()));
            let device = DeviceId::new("bench").unwrap();
            for p in 0..PIECES {
                let start = now() - Duration::days(LINES as i64 + (p % 9) as i64);
                let dir = folder.path().join(format!("shelf/pieces/m{p}"));
                std::fs::create_dir_all(&dir).unwrap();
                let mut text = String::new();
                for n in 0..LINES {
                    let at = start + Duration::days(n as i64);
                    let facts: Vec<_> = facts(p, n)
                        .iter()
                        .map(|f| evenwall_shelf::format::write(f).unwrap())
                        .collect();
                    let line = serde_json::json!({
                        "device": device.as_str(), "n": n + 1, "seq": n + 1, "at": at.to_rfc3339(),
                        "noted_at": at.to_rfc3339(), "v": 1, "facts": facts,
                    });
                    text.push_str(&line.to_string());
                    text.push('\n');
                }
                std::fs::write(dir.join("bench.jsonl"), text).unwrap();
            }
            folder
        })
        .path()
}

fn app() -> App {
    App::open(Box::new(store(shelf())), false, now()).unwrap()
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn open_1000_pieces_of_200_lines(bencher: divan::Bencher) {
    shelf();
    bencher.bench_local(|| app().pieces().count());
}

#[divan::bench(sample_count = 50, sample_size = 1)]
fn append_one_entry_through_the_app(bencher: divan::Bencher) {
    let mut app = app();
    let id = PieceId::new("m7").unwrap();
    app.apply(Action::Open(Page::Diary(id)), now());
    bencher.bench_local(|| {
        app.apply(
            Action::Diary(DiaryAction::EditNote("Rim looks sound".into())),
            now(),
        );
        app.apply(Action::Diary(DiaryAction::AddNote), now());
        assert!(app.save_error().is_none());
    });
}

/// The same bytes by hand: what the disk alone costs.
#[divan::bench(sample_count = 50, sample_size = 1)]
fn bare_write_and_sync(bencher: divan::Bencher) {
    use std::io::Write as _;
    let folder = tempfile::tempdir().unwrap();
    let mut file = std::fs::File::create(folder.path().join("bare")).unwrap();
    let line = [b'x'; 200];
    bencher.bench_local(|| {
        file.write_all(&line).unwrap();
        file.sync_data().unwrap();
    });
}

#[divan::bench]
fn agenda_of_1000_pieces(bencher: divan::Bencher) {
    let mut store = store(shelf());
    let loaded = store.load().unwrap();
    let shop = evenwall_piece::shop::fold_shop(loaded.shop);
    let moulds = |_: &Piece| false;
    let pieces: Vec<&Piece> = loaded.pieces.iter().collect();
    bencher.bench_local(|| agenda::agenda(&pieces, &AgendaBench::new(&shop, now(), &moulds)));
}

/// The agenda and everything Today shows of it.
#[divan::bench(sample_count = 20, sample_size = 1)]
fn today_view_of_1000_pieces(bencher: divan::Bencher) {
    let app = app();
    bencher.bench_local(|| app.today_view(now()));
}

#[divan::bench(sample_count = 20, sample_size = 1)]
fn pieces_view_of_1000_pieces(bencher: divan::Bencher) {
    let app = app();
    bencher.bench_local(|| app.pieces_view(now()));
}

/// A vessel with seven stations read and measured, in memory.
fn vessel() -> App {
    let length = |field, mm| PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    };
    let read = |station, mm| {
        PieceFact::Reading(Reading {
            station,
            position: Clock::TWELVE,
            wall_mm: Some(Measure::plain(mm)),
            feel: None,
            taken: Taken::Callipers,
        })
    };
    let mut facts = vec![
        PieceFact::Created,
        length(DetailField::Diameter, 134.0),
        length(DetailField::Height, 130.0),
        PieceFact::StageMoved(Stage::Hollow),
        PieceFact::Stations {
            count: 7,
            depths_mm: vec![4.0, 15.0, 35.0, 60.0, 85.0, 110.0, 118.0],
        },
        read(StationRef::Floor, 12.0),
    ];
    let across = [76.0, 88.0, 116.0, 134.0, 128.0, 104.0, 95.0];
    let walls = [9.0, 10.5, 11.0, 9.5, 10.0, 12.0, 14.0];
    for (station, (diameter, wall)) in (1..).zip(across.into_iter().zip(walls)) {
        facts.push(read(StationRef::Wall(station), wall));
        facts.push(PieceFact::OutsideDiameter {
            station,
            diameter_mm: Some(Measure::plain(diameter)),
        });
    }
    let mut store = MemoryStore::default();
    let id = PieceId::new("k07").unwrap();
    store.append_piece(&id, now(), now(), facts).unwrap();
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    app.apply(Action::Open(Page::WallSummary(id)), now());
    app
}

/// What the wall screen shows, its section included: aim, with the drawing, 8 ms.
#[divan::bench]
fn wall_view(bencher: divan::Bencher) {
    let app = vessel();
    bencher.bench_local(|| app.wall_view(now()).unwrap());
}

/// What the result shows: section, take-off, volume and weight.
#[divan::bench]
fn wall_summary_view(bencher: divan::Bencher) {
    let app = vessel();
    assert!(
        !app.wall_summary_view(now())
            .unwrap()
            .measures
            .weight
            .is_empty()
    );
    bencher.bench_local(|| app.wall_summary_view(now()).unwrap());
}

/// The section alone, as on a card and as on the wall screen.
#[divan::bench]
fn section_of_a_measured_piece(bencher: divan::Bencher) {
    let app = vessel();
    let piece = app.pieces().next().unwrap();
    bencher.bench_local(|| evenwall_app::drawing::section(piece, true));
}

/// A vessel in True, 12 stations with 16 distances from the centre mark and 4 walls each.
fn vessel_in_true() -> Vec<PieceFact> {
    use evenwall_piece::fact::RoundReading;
    use evenwall_piece::vocabulary::RoundHow;
    let mm = |field, value| PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(value))),
    };
    let wood = PieceFact::Detail {
        field: DetailField::Wood,
        value: Some(DetailValue::Text("white-ash".into())),
    };
    let mut facts = vec![
        PieceFact::Created,
        wood,
        mm(DetailField::Diameter, 150.0),
        mm(DetailField::Height, 260.0),
        PieceFact::Stations {
            count: 12,
            depths_mm: (0..12).map(|i| 12.0 + 20.0 * f64::from(i)).collect(),
        },
    ];
    for station in 1..=12_u8 {
        let green = 150.0 - 4.0 * (f64::from(station) - 5.0).abs();
        facts.push(PieceFact::OutsideDiameter {
            station,
            diameter_mm: Some(Measure::plain(green)),
        });
        for hour in [12, 3, 6, 9] {
            facts.push(PieceFact::Reading(Reading {
                station: StationRef::Wall(station),
                position: Clock::new(hour).unwrap(),
                wall_mm: Some(Measure::plain(10.0 + 0.1 * f64::from(hour))),
                feel: None,
                taken: Taken::Callipers,
            }));
        }
        let readings = (0..16).map(|i| {
            let angle = std::f64::consts::TAU * f64::from(i) / 16.0;
            let shrunk = 0.036 * angle.cos().powi(2) + 0.057 * angle.sin().powi(2);
            RoundReading {
                turn_deg: angle.to_degrees(),
                mm: Measure::plain(0.5 * green * (1.0 - shrunk)),
            }
        });
        facts.push(PieceFact::OvalRound {
            station,
            how: RoundHow::FromCentre,
            readings: readings.collect(),
        });
    }
    facts.push(PieceFact::StageMoved(Stage::True));
    facts
}

/// Everything True-up shows over 12 stations with 16 readings each. Aim: under 10 ms.
#[divan::bench]
fn true_view_of_12_stations(bencher: divan::Bencher) {
    let id = PieceId::new("m1").unwrap();
    let mut store = evenwall_app::store::MemoryStore::default();
    store
        .append_piece(&id, now(), now(), vessel_in_true())
        .unwrap();
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    app.apply(Action::Open(Page::Truing(id)), now());
    assert_eq!(app.true_view(now()).unwrap().places.len(), 12);
    bencher.bench_local(|| app.true_view(now()));
}

/// Plan with all its results, its drawings and what another pith or size would change, the pith off centre in the bore: the
/// dearest case.
#[divan::bench]
fn all_results_of_plan(bencher: divan::Bencher) {
    use evenwall_app::plan::{PlanAction, PlanField};
    let mut app = App::open(Box::new(MemoryStore::default()), false, now()).unwrap();
    let mut plan = |action| app.apply(Action::Plan(action), now());
    plan(PlanAction::Chose("pith".into(), "bore".into()));
    plan(PlanAction::Wood("white-ash".into()));
    plan(PlanAction::Enter(PlanField::PithDistance));
    plan(PlanAction::Typed("30".into()));
    plan(PlanAction::Set);
    bencher.bench_local(|| app.plan_view(now()));
}
