//! How long the fold takes: one piece of 200 lines, and a shelf of 1,000 of them.
//!
//! `cargo bench -p evenwall-piece --bench fold`. Aim on a two-core machine: the shelf well under 200 ms.

use chrono::{DateTime, Duration, FixedOffset};
use divan::{Bencher, black_box};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact as F, Reading, StationRef};
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, LineId, PieceId};
use evenwall_piece::line::Line;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Taken};

const PIECES: usize = 1000;
const LINES: u64 = 200;

fn main() {
    divan::main();
}

fn fact(n: u64) -> F {
    match n {
        1 => F::Created,
        2 => F::Detail {
            field: DetailField::Wood,
            value: Some(DetailValue::Text("beech".to_owned())),
        },
        60 => F::StageMoved(Stage::Bag),
        120 => F::StageMoved(Stage::Air),
        _ => match n % 4 {
            0 => F::Weighed {
                mass_g: Measure {
                    value: 1250.0,
                    typed: "1250".to_owned(),
                },
                tare_g: 0.0,
            },
            1 => F::Look {
                feel: Some(BagFeel::Damp),
                mould: false,
                crack: false,
            },
            2 => F::Note("turned, back on the second shelf".to_owned()),
            _ => F::Reading(Reading {
                station: StationRef::Wall(3),
                position: Clock::TWELVE,
                wall_mm: Some(Measure {
                    value: 9.5,
                    typed: "9.5".to_owned(),
                }),
                feel: None,
                taken: Taken::Callipers,
            }),
        },
    }
}

/// One piece's lines as two devices wrote them; with `corrections`, every tenth line corrects or takes back another.
fn lines(corrections: bool) -> Vec<Line<F>> {
    let devices = ["bench-3f2a", "phone-91cc"].map(|d| DeviceId::new(d).ok());
    let start = DateTime::<FixedOffset>::default();
    let line = |n: u64, device: &DeviceId| {
        let target = LineId {
            device: device.clone(),
            n: n.saturating_sub(2),
        };
        let facts = match n % 20 {
            10 if corrections => vec![F::Retracts(target)],
            0 if corrections => vec![F::Amends {
                entry: evenwall_piece::ids::EntryId {
                    line: target,
                    part: 0,
                },
                at: None,
                fact: Some(Box::new(fact(n - 2))),
            }],
            _ => vec![fact(n)],
        };
        let at = start + Duration::hours(12 * i64::try_from(n).unwrap_or(0));
        let id = LineId {
            device: device.clone(),
            n,
        };
        Line {
            id,
            seq: n,
            at,
            noted_at: at,
            facts,
        }
    };
    let writers = devices.iter().flatten().cycle();
    (1..=LINES)
        .zip(writers)
        .map(|(n, device)| line(n, device))
        .collect()
}

fn id() -> PieceId {
    PieceId::new("k07-3f2a").unwrap_or_else(|e| panic!("{e}"))
}

#[divan::bench(args = [false, true])]
fn one_piece(bencher: Bencher, corrections: bool) {
    let lines = lines(corrections);
    bencher
        .with_inputs(|| (id(), lines.clone()))
        .bench_values(|(id, lines)| fold_piece(black_box(id), lines));
}

#[divan::bench(args = [false, true], sample_count = 20)]
fn shelf_of_1000(bencher: Bencher, corrections: bool) {
    let lines = lines(corrections);
    bencher
        .with_inputs(|| vec![lines.clone(); PIECES])
        .bench_values(|shelf| {
            shelf
                .into_iter()
                .map(|l| fold_piece(id(), l))
                .collect::<Vec<_>>()
        });
}
