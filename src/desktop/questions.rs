//! Questions: the file or standard input that `evenwall reckon` reads, and standard output for its answers.

use std::fs::File;
use std::io::{BufWriter, ErrorKind, stdin, stdout};
use std::path::Path;

use evenwall_reckon::run::{Unreadable, run};

/// Answers the questions in `file`, or on standard input when there is none or it is `-`, on standard output.
///
/// # Errors
/// A sentence when the file cannot be opened, holds no questions, or the answers cannot be written.
pub fn answer(file: Option<&Path>) -> Result<(), String> {
    let output = BufWriter::new(stdout().lock());
    let outcome = match file.filter(|f| *f != Path::new("-")) {
        Some(path) => {
            let questions = File::open(path).map_err(|e| {
                format!(
                    "{} cannot be opened: {e}. Check its name, or leave it out to ask on standard input.",
                    path.display()
                )
            })?;
            run(questions, output)
        }
        None => run(stdin().lock(), output),
    };
    match outcome {
        // Whoever reads the answers has enough of them: `evenwall reckon FILE | head`.
        Err(Unreadable::Write(e)) if e.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.map_err(|e| e.to_string()),
    }
}
