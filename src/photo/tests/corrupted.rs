//! Corrupted files: no panic, no hang, memory bounded, whatever the bytes. One test, as it counts all that is held.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // it measures how long a file takes

mod counted;
mod pictures;

use std::time::{Duration, Instant};

use counted::{Counted, most_held};
use evenwall_photo::error::PhotoError;
use evenwall_photo::limits::Limits;
use pictures::{Picture, tags, take};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

#[global_allocator]
static ALLOCATOR: Counted = Counted;

/// One wound: where, as a share of the file, and what stands there then.
#[derive(Debug, Clone)]
enum Wound {
    Byte(f64, u8),
    Run(f64, u8, usize),
    Cut(f64),
    Doubled(f64, usize),
}

fn wound() -> impl Strategy<Value = Wound> {
    let place = || prop_oneof![0.0..1.0_f64, 0.0..0.05_f64];
    prop_oneof![
        4 => (place(), any::<u8>()).prop_map(|(p, b)| Wound::Byte(p, b)),
        1 => (place(), prop_oneof![Just(0), Just(255), any::<u8>()], 1..64_usize).prop_map(|(p, b, n)| Wound::Run(p, b, n)),
        1 => place().prop_map(Wound::Cut),
        1 => (place(), 1..300_usize).prop_map(|(p, n)| Wound::Doubled(p, n)),
    ]
}

fn wounded(mut bytes: Vec<u8>, wounds: &[Wound]) -> Vec<u8> {
    for wound in wounds {
        let at = |p: f64| ((p * bytes.len() as f64) as usize).min(bytes.len().saturating_sub(1));
        match *wound {
            _ if bytes.is_empty() => {}
            Wound::Byte(p, b) => {
                let at = at(p);
                bytes[at] = b;
            }
            Wound::Run(p, b, n) => {
                let at = at(p);
                let end = (at + n).min(bytes.len());
                bytes[at..end].fill(b);
            }
            Wound::Cut(p) => {
                let at = at(p);
                bytes.truncate(at);
            }
            Wound::Doubled(p, n) => {
                let at = at(p);
                let part = bytes[at..(at + n).min(bytes.len())].to_vec();
                bytes.splice(at..at, part);
            }
        }
    }
    bytes
}

fn in_passes(picture: &Picture) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 80);
    encoder.set_progressive(true);
    let (w, h) = (picture.width as u16, picture.height as u16);
    encoder
        .encode(&picture.rgb, w, h, jpeg_encoder::ColorType::Rgb)
        .unwrap();
    bytes
}

#[test]
fn no_corrupted_file_panics_hangs_or_takes_more_memory_than_allowed() {
    let picture = Picture::of(97, 61, |x, y| [(x * 3) as u8, (y * 5) as u8, (x * y) as u8]);
    let exif = tags(6, Some(("2026:03:11 09:12:05", Some("+01:00"))), false);
    let files = [
        picture.jpeg(Some(&exif)),
        in_passes(&picture),
        picture.png(Some(&exif)),
        picture.webp(Some(&exif)),
        include_bytes!("lossy.webp").to_vec(),
    ];
    for file in &files {
        take(file, &Limits::default()).unwrap();
    }
    let limits = Limits {
        memory_bytes: 40_000_000,
        ..Limits::default()
    };
    let cases = std::env::var("CORRUPTED_CASES")
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(3000);
    let mut runner = TestRunner::new(Config {
        cases,
        ..Config::default()
    });
    let strategy = (0..files.len(), vec(wound(), 1..12));
    let (mut taken, mut refused) = (0, 0);
    let outcome = runner.run(&strategy, |(which, wounds)| {
        let bytes = wounded(files[which].clone(), &wounds);
        let began = Instant::now();
        let (outcome, held) = most_held(|| take(&bytes, &limits));
        // What is decoded, what is reckoned beside it, and the stored picture with the encoder's own room.
        prop_assert!(
            held < 40_000_000 * 2 + 30_000_000,
            "{held} bytes held, {outcome:?}"
        );
        prop_assert!(
            began.elapsed() < Duration::from_secs(20),
            "{:?}",
            began.elapsed()
        );
        if let Err(PhotoError::Broken { why }) = &outcome {
            prop_assert!(why != "the decoder gave up", "a decoder panicked");
        }
        Ok(())
    });
    outcome.unwrap();
    // The wounds must leave some whole and break some, or nothing was tried.
    let mut runner = TestRunner::deterministic();
    for _ in 0..200 {
        use proptest::strategy::ValueTree;
        let (which, wounds) = strategy.new_tree(&mut runner).unwrap().current();
        match take(&wounded(files[which].clone(), &wounds), &limits) {
            Ok(_) => taken += 1,
            Err(_) => refused += 1,
        }
    }
    assert!(
        taken > 10 && refused > 50,
        "{taken} taken, {refused} refused"
    );
}
