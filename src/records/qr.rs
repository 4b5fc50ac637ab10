//! QR: a code as a path of squares (ISO/IEC 18004), with medium error correction: a scratch on a tag does not matter.

use std::fmt::Write as _;

use qrcode::{Color, EcLevel, QrCode};
use thiserror::Error;

/// A text that no code can hold.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{found} letters are too many for a QR code on a tag; at most {MOST} fit")]
pub struct TooLong {
    /// How many.
    pub found: usize,
}

/// The most bytes of text: a code that a phone still reads from a small tag.
pub const MOST: usize = 200;

/// White round the code, in modules. ISO/IEC 18004 asks for four.
pub const QUIET: usize = 4;

/// A code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Code {
    /// Modules along a side, the white round it included.
    pub side: usize,
    /// The dark modules as a path, one unit a module.
    pub path: String,
}

/// The code of a text.
///
/// # Errors
/// [`TooLong`].
pub fn code(text: &str) -> Result<Code, TooLong> {
    let too_long = || TooLong { found: text.len() };
    if text.len() > MOST {
        return Err(too_long());
    }
    let code = QrCode::with_error_correction_level(text, EcLevel::M).map_err(|_| too_long())?;
    let width = code.width();
    let modules = code.to_colors();
    let mut path = String::new();
    for (y, row) in modules.chunks(width).enumerate() {
        let mut x = 0;
        while x < width {
            let run = row[x..].iter().take_while(|c| **c == Color::Dark).count();
            if run > 0 {
                // Writing to a string cannot fail.
                let _ = write!(path, "M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET);
            }
            x += run.max(1);
        }
    }
    Ok(Code {
        side: width + 2 * QUIET,
        path,
    })
}
