//! How often the verdict on staying put is right, on invented weights: `cargo run --release -p evenwall-wood --example verdicts
//! -- --seed 1 --runs 400`.
#![allow(clippy::print_stdout, clippy::print_stderr)] // it is a command: printing is what it is for

use evenwall_wood::invented_weights::{Setting, Verdicts, verdicts};

fn main() {
    let (mut seed, mut runs) = (1_u64, 400_u32);
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        let number = words.next().and_then(|n| n.parse().ok());
        match (word.as_str(), number) {
            ("--seed", Some(n)) => seed = n,
            ("--runs", Some(n)) => runs = u32::try_from(n).unwrap_or(u32::MAX),
            _ => {
                eprintln!("found {word}; allowed: --seed and --runs, each with a whole number");
                std::process::exit(2);
            }
        }
    }
    println!("seed {seed}, {runs} runs a row; stable / losing / gaining / undecided\n");
    the_season(runs, seed);
    the_instruments(runs, seed);
    how_short(runs, seed);
    last_weeks(runs, seed);
}

fn shares(v: &Verdicts) -> String {
    format!(
        "{:.2} / {:.2} / {:.2} / {:.2}",
        v.stable, v.losing, v.gaining, v.undecided
    )
}

/// 300 g on a scale of 1 g, every four days over eight weeks, the air known exactly.
fn the_season(runs: u32, seed: u64) {
    println!("| truth | season | plain weights | room taken out |\n|---|---|---|---|");
    for (truth, left, left_days, season_pts) in [
        ("at rest", 0.0, 30.0, 0.0),
        ("at rest", 0.0, 30.0, 8.0),
        ("at rest", 0.0, 30.0, 12.0),
        ("2 % left, 30 days", 0.02, 30.0, 8.0),
        ("4 % left, 60 days", 0.04, 60.0, 8.0),
    ] {
        let setting = Setting {
            left,
            left_days,
            season_pts,
            ..Setting::vessel()
        };
        let (plain, corrected) = verdicts(&setting, runs, seed);
        println!(
            "| {truth} | +-{season_pts} % | {} | {} |",
            shares(&plain),
            shares(&corrected)
        );
    }
}

/// A hygrometer 5 points out (one in three more) and a wrong lag.
fn the_instruments(runs: u32, seed: u64) {
    println!("\n| lag reckoned with | at rest | 2 % left, 30 days |\n|---|---|---|");
    for (words, lag_factor) in [
        ("right", 1.0),
        ("2 times too long", 2.0),
        ("2.5 times too short", 0.4),
    ] {
        let resting = Setting {
            lag_factor,
            bias_pts: 5.0,
            ..Setting::vessel()
        };
        let drying = Setting {
            left: 0.02,
            ..resting
        };
        let of = |setting| shares(&verdicts(setting, runs, seed).1);
        println!("| {words} | {} | {} |", of(&resting), of(&drying));
    }
}

/// Stable, room taken out / plain: every three days, hygrometer 3 points out, lag 30 % out.
fn how_short(runs: u32, seed: u64) {
    println!(
        "\n| days | at rest, 1 g: room out / plain | at rest, 0.1 g | 2 % left, 30 days, 1 g |\n|---|---|---|---|"
    );
    for days in [21, 28, 42, 56] {
        let one = Setting {
            every_days: 3,
            days,
            lag_spread: 0.3,
            bias_pts: 3.0,
            ..Setting::vessel()
        };
        let fine = Setting {
            scale_step_g: 0.1,
            ..one
        };
        let drying = Setting { left: 0.02, ..one };
        let of = |setting| {
            let (plain, corrected) = verdicts(setting, runs, seed);
            format!("{:.2} / {:.2}", corrected.stable, plain.stable)
        };
        println!(
            "| {days} | {} | {} | {} |",
            of(&one),
            of(&fine),
            of(&drying)
        );
    }
}

/// A window much longer than the drying: what the look at the last three weeks is for.
fn last_weeks(runs: u32, seed: u64) {
    let setting = Setting {
        left: 0.01,
        left_days: 20.0,
        every_days: 3,
        lag_spread: 0.3,
        bias_pts: 3.0,
        ..Setting::vessel()
    };
    let (plain, corrected) = verdicts(&setting, runs, seed);
    println!(
        "\n1 % left, 20 days, over 56 days, stable: {:.2} with the room taken out, {:.2} plain",
        corrected.stable, plain.stable
    );
}
