//! Errors: why a picture was not taken, each a sentence that says what was found, what is allowed and what to do.

/// Why a file was not taken as a photo.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PhotoError {
    /// No bytes.
    #[error(
        "the file is empty: it may still be arriving, or its copy failed; take it from the camera again"
    )]
    Empty,
    /// Too many bytes.
    #[error("the file has {} MB, {} MB are allowed: save it smaller and take that one", megabytes(*found), megabytes(*allowed))]
    FileTooLarge {
        /// Its length, bytes.
        found: u64,
        /// The longest allowed, bytes.
        allowed: u64,
    },
    /// Too many pixels, or too much memory to decode them.
    #[error("the picture is {width} by {height} pixels, more than this program opens ({} million): save it smaller and take that one", allowed / 1_000_000)]
    TooManyPixels {
        /// Its width, pixels.
        width: u32,
        /// Its height, pixels.
        height: u32,
        /// The most pixels allowed for such a file.
        allowed: u64,
    },
    /// A JPEG that asks for far more passes than any camera makes.
    #[error(
        "the picture asks to be decoded in {found} passes, {allowed} are allowed: save it again as a plain JPEG"
    )]
    TooManyScans {
        /// Passes found.
        found: usize,
        /// Passes allowed.
        allowed: usize,
    },
    /// The high-efficiency format of some phones.
    #[error(
        "the photo is HEIC, which this program cannot open: set the camera to JPEG (iPhone: Settings, Camera, Formats, \
         Most Compatible; Android: camera settings, turn off HEIF or high efficiency pictures), or share it as a JPEG"
    )]
    Heic,
    /// A picture of another kind.
    #[error("the file is {found}; photos are taken as JPEG, PNG or WebP: save it as one of these")]
    OtherKind {
        /// What it is, with its article: "a GIF".
        found: &'static str,
    },
    /// Not a picture.
    #[error(
        "the file is no picture, whatever its name says: photos are taken as JPEG, PNG or WebP"
    )]
    NotAPicture,
    /// The end is missing.
    #[error("the end of the file is missing: it may still be arriving; wait or copy it again")]
    Truncated,
    /// It cannot be decoded.
    #[error("the file is damaged and cannot be opened ({why}): copy it from the camera again")]
    Broken {
        /// What the decoder said.
        why: String,
    },
    /// The turner stopped it.
    #[error("stopped: nothing was taken")]
    Cancelled,
}

impl PhotoError {
    /// A file that cannot be decoded, with the decoder's word in one short line.
    pub(crate) fn broken(why: impl std::fmt::Display) -> Self {
        let why: String = why
            .to_string()
            .chars()
            .filter(|c| !c.is_control())
            .take(80)
            .collect();
        Self::Broken { why }
    }
}

/// Whole megabytes, at least 1.
fn megabytes(bytes: u64) -> u64 {
    bytes.div_ceil(1_000_000).max(1)
}
