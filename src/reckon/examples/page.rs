//! Prints the page of all questions: `cargo run -p evenwall-reckon --example page > src/reckon/QUESTIONS.md`.

use std::io::Write;

fn main() -> std::io::Result<()> {
    std::io::stdout().write_all(evenwall_reckon::page::page().as_bytes())
}
