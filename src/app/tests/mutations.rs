//! Mutations: a short run of the fuzzer, the same every time. The long one is a command,
//! `cargo run -p evenwall-app --example mutate -- 50000 1`.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod mutation;

#[test]
fn no_input_of_a_short_run_makes_the_program_panic() {
    for target in mutation::targets::all() {
        let executions = if target.name.ends_with("journal") {
            30
        } else {
            80
        };
        let report = mutation::fuzz(&target, executions, 11);
        assert!(
            report.panics.is_empty(),
            "{}: {:?}",
            report.name,
            report.panics[0].1
        );
        assert!(report.outcomes[2] > 0, "{report:?}");
    }
}
