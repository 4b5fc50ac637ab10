//! Kill: a process that records is killed, the shelf keeps what it acknowledged. A short run; the long one is a command,
//! `cargo run --release -p evenwall-shelf --example kill_loop`.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![cfg(unix)]

mod kill_loop;

use std::process::Command;

/// Not a test by itself: the process that is killed.
#[test]
#[ignore = "the process that is killed"]
fn child() {
    if std::env::var_os(kill_loop::FOLDER).is_some() {
        kill_loop::child();
    }
}

#[test]
fn twenty_kills_lose_nothing_that_was_acknowledged() {
    let temp = tempfile::tempdir().unwrap();
    let command = || {
        let mut command = Command::new(std::env::current_exe().unwrap());
        command.args(["--ignored", "--exact", "child", "--nocapture"]);
        command
    };
    let counts = kill_loop::rounds(temp.path(), &command, 20, 0x5eed);
    assert_eq!(counts.rounds, 20);
    assert!(counts.acknowledged >= 10, "{counts:?}");
    assert_eq!(counts.new_ids, 0, "{counts:?}");
}
