//! How good the forecasts are on invented logs whose truth is richer than the fit: error and coverage of the 80 % range.
//!
//! `cargo run --release -p evenwall-wood --example coverage -- --seed 7 --logs 300`
//!
//! Real wood will be worse: truth and fit share their equations.
#![allow(clippy::print_stdout)]

mod truth;

use std::error::Error;

use evenwall_wood::forecast::{Priors, outlook};
use truth::{Dice, Log, Place};

/// One forecast against what came.
struct Outcome {
    error: f64,
    covered: bool,
    width: f64,
    said: bool,
    ready: f64,
}

fn argument(name: &str, usual: u64) -> Result<u64, Box<dyn Error>> {
    let words: Vec<String> = std::env::args().collect();
    match words.iter().position(|w| w == name) {
        Some(i) => Ok(words
            .get(i + 1)
            .ok_or_else(|| format!("{name} needs a number after it"))?
            .parse()?),
        None => Ok(usual),
    }
}

fn quantile(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let at = share * (values.len().saturating_sub(1)) as f64;
    let (low, high) = (at.floor() as usize, at.ceil() as usize);
    values
        .get(low)
        .map_or(f64::NAN, |a| a + (values[high] - a) * at.fract())
}

fn row(place: Place, n: usize, day: f64, outcomes: &[Outcome]) {
    let share = |of: &[&Outcome]| of.iter().filter(|o| o.covered).count() as f64 / of.len() as f64;
    let all: Vec<&Outcome> = outcomes.iter().collect();
    let said: Vec<&Outcome> = outcomes.iter().filter(|o| o.said).collect();
    let mut sizes: Vec<f64> = all.iter().map(|o| o.error.abs()).collect();
    let mut signed: Vec<f64> = all.iter().map(|o| o.error).collect();
    let mut widths: Vec<f64> = all.iter().map(|o| o.width).collect();
    let mut readies: Vec<f64> = all.iter().map(|o| o.ready).collect();
    let mut said_sizes: Vec<f64> = said.iter().map(|o| o.error.abs()).collect();
    println!(
        "| {} | {n} (day {day:.1}) | {} | {:.0} | {:.2} | {:.2} | {:+.2} | {:.2} | {:.2} | {} | {:.2} | {:.2} |",
        match place {
            Place::Shelf => "shelf",
            Place::Bag => "bag",
        },
        all.len(),
        quantile(&mut readies, 0.5),
        quantile(&mut sizes, 0.5),
        quantile(&mut sizes, 0.9),
        quantile(&mut signed, 0.5),
        share(&all),
        quantile(&mut widths, 0.5),
        said.len(),
        quantile(&mut said_sizes, 0.5),
        share(&said),
    );
}

fn main() -> Result<(), Box<dyn Error>> {
    let (seed, logs) = (argument("--seed", 7)?, argument("--logs", 50)?);
    println!("seed {seed}, {logs} logs a place; only logs whose event is still ahead are counted");
    println!(
        "| where | weighings | logs | ready, days | median error | 90th | bias | in range | width | said | error | in range |"
    );
    println!("|---|---|---|---|---|---|---|---|---|---|---|---|");
    for place in [Place::Shelf, Place::Bag] {
        let mut dice = Dice::new(seed);
        let drawn = (0..logs)
            .map(|_| Log::draw(&mut dice, place))
            .collect::<Result<Vec<_>, _>>()?;
        for n in [4, 6, 10] {
            let mut outcomes = Vec::new();
            let mut day = 0.0;
            for log in &drawn {
                let (case, record) = log.known(n)?;
                day = log.weighings[n - 1].day;
                if log.ready <= day {
                    continue;
                }
                let said = outlook(&case, &record, Priors::of(&case), day, None)?;
                let Some(range) = said.here.mean else {
                    continue;
                };
                outcomes.push(Outcome {
                    error: range.middle / log.ready - 1.0,
                    covered: range.early <= log.ready && log.ready <= range.late,
                    width: (range.late - range.early) / log.ready,
                    said: said.too_early.is_empty(),
                    ready: log.ready,
                });
            }
            row(place, n, day, &outcomes);
        }
    }
    Ok(())
}
