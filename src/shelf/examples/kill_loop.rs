//! Kill loop: `kill_loop [ROUNDS] [SEED]` kills a recording process at random moments and prints the counts.
//!
//! Ends with a panic where anything acknowledged is missing afterwards.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)] // a test as a command

#[path = "../tests/kill_loop/mod.rs"]
mod kill_loop;

use std::process::Command;

fn main() {
    if std::env::var_os(kill_loop::FOLDER).is_some() {
        kill_loop::child();
    }
    let mut args = std::env::args().skip(1).map(|a| a.parse::<u64>().unwrap());
    let rounds = usize::try_from(args.next().unwrap_or(300)).unwrap();
    let seed = args.next().unwrap_or(7);
    // On the disk that is built on: a folder in memory would not be synced.
    let temp = tempfile::Builder::new()
        .prefix("evenwall-kill-")
        .tempdir_in(std::env::current_exe().unwrap().parent().unwrap())
        .unwrap();
    let command = || Command::new(std::env::current_exe().unwrap());
    let counts = kill_loop::rounds(temp.path(), &command, rounds, seed);
    println!("{counts:#?}");
}
