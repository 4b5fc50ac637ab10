//! Desktop: folders, files, reminders, clock, randomness, pictures and the system's libraries for the program in a window, files for the
//! one without.

pub mod files;
pub mod folders;
pub mod libraries;
pub mod notify;
pub mod pictures;
pub mod questions;
pub mod random;
pub mod verify;

use evenwall_piece::piece::Moment;

/// The present moment with the offset of the place where the computer thinks it is.
#[must_use]
pub fn now() -> Moment {
    chrono::Local::now().fixed_offset()
}
