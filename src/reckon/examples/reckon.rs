//! The same as `evenwall reckon`, from standard input, without building the screens.

use evenwall_reckon::run::{Unreadable, run};

fn main() -> Result<(), Unreadable> {
    run(std::io::stdin().lock(), std::io::stdout().lock())
}
