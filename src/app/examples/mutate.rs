//! Mutate: `mutate [EXECUTIONS] [SEED] [TARGET]` fuzzes what reads files and prints what was reached, and every input that
//! made it panic (into the folder of `EVENWALL_FINDINGS`, where that is set).
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)] // a test as a command
#![allow(clippy::disallowed_methods)] // it times itself and writes what it finds

#[path = "../tests/mutation/mod.rs"]
mod mutation;

use std::time::Instant;

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let number = |place: usize, usual: u64| args.get(place).map_or(usual, |a| a.parse().unwrap());
    let executions = usize::try_from(number(0, 2_000)).unwrap();
    // What panics is reported below, once.
    std::panic::set_hook(Box::new(|_| {}));
    println!(
        "| target | executions | seconds | distinct outcomes at a tenth, a half, the end | pool | panics |"
    );
    println!("|---|---|---|---|---|---|");
    for target in mutation::targets::all() {
        if args
            .get(2)
            .is_some_and(|t| !target.name.contains(t.as_str()))
        {
            continue;
        }
        let start = Instant::now();
        let report = mutation::fuzz(&target, executions, number(1, 1));
        println!(
            "| {} | {} | {:.0} | {:?} | {} | {} |",
            report.name,
            report.executions,
            start.elapsed().as_secs_f64(),
            report.outcomes,
            report.pool,
            report.panics.len()
        );
        for (n, (input, says)) in report.panics.iter().enumerate() {
            println!("panic {n}: {says}");
            if let Some(folder) = std::env::var_os("EVENWALL_FINDINGS") {
                let name = format!("{} {n}", report.name);
                std::fs::write(std::path::Path::new(&folder).join(name), input).unwrap();
            }
        }
    }
}
