//! How long a logger's file of the most lines that are read takes, and its means.

use std::fmt::Write as _;

use divan::{Bencher, black_box};
use evenwall_piece::climate_log::{MOST_LINES, Per, Told, decode, means, read_climate_log};

fn main() {
    divan::main();
}

/// A reading every ten minutes, invented.
fn file() -> Vec<u8> {
    let mut text = String::from("time;temperature °C;humidity %\n");
    let start = chrono::DateTime::UNIX_EPOCH.naive_utc();
    for n in 0..MOST_LINES as i64 - 1 {
        let at = start + chrono::Duration::minutes(10 * n);
        // Writing to a String cannot fail.
        let _ = writeln!(
            text,
            "{};{},{};{}",
            at.format("%d/%m/%Y %H:%M"),
            n % 20,
            n % 10,
            40 + n % 30
        );
    }
    text.into_bytes()
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn decode_read_and_thin_to_days(bencher: Bencher) {
    let bytes = file();
    bencher.bench(|| {
        let log = read_climate_log(&decode(black_box(&bytes)), Told::default());
        log.map(|log| means(&log.readings, Per::Day).len())
    });
}
