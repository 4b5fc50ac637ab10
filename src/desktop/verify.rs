//! Verify: `evenwall verify`, every problem of a shelf on standard output with its file and line, and an exit status.

use std::io::{BufWriter, Write, stdout};
use std::path::PathBuf;
use std::process::ExitCode;

use evenwall_shelf::disk::RealDisk;
use evenwall_shelf::verify::{Looked, verify};

use super::folders;

/// Exit status where problems were found.
pub const PROBLEMS: u8 = 1;
/// Exit status where the shelf cannot be read, or the answer not written.
pub const CANNOT: u8 = 2;

/// Looks through the shelf in `shelf`, or the usual one. Ends with 0 where it is clean, [`PROBLEMS`] or [`CANNOT`].
#[must_use]
#[allow(clippy::print_stderr)] // a command says on standard error why it could not answer
pub fn run(shelf: Option<PathBuf>) -> ExitCode {
    let Some(path) = shelf.or_else(|| folders::usual().map(|f| f.shelf)) else {
        eprintln!(
            "The system names no home folder. Say where the shelf is: evenwall verify --shelf DIR"
        );
        return ExitCode::from(CANNOT);
    };
    let mut out = BufWriter::new(stdout().lock());
    let mut refused = None;
    let looked = verify(&RealDisk::new(), &path, &mut |problem| {
        if let Err(e) = writeln!(out, "{problem}") {
            refused.get_or_insert(e);
        }
    });
    let looked = match looked {
        Ok(looked) => looked,
        Err(e) => {
            eprintln!("{e}");
            return ExitCode::from(CANNOT);
        }
    };
    let last = writeln!(out, "{}", summary(&looked)).and_then(|()| out.flush());
    match refused.map_or(last, Err) {
        // Whoever reads the answer has enough of it: `evenwall verify | head`.
        Err(e) if e.kind() != std::io::ErrorKind::BrokenPipe => {
            eprintln!("The answer could not be written: {e}");
            ExitCode::from(CANNOT)
        }
        _ if looked.problems > 0 => ExitCode::from(PROBLEMS),
        _ => ExitCode::SUCCESS,
    }
}

fn summary(looked: &Looked) -> String {
    let Looked {
        pieces,
        journals,
        lines,
        photos,
        problems,
    } = looked;
    format!(
        "looked at: pieces {pieces}, journals {journals}, lines {lines}, photos {photos}; problems: {problems}"
    )
}
