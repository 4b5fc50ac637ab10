//! Prepare: from the bytes of a file to what is stored.

use std::panic::{AssertUnwindSafe, catch_unwind};

use jpeg_encoder::{ColorType, Encoder, SamplingFactor};
use sha2::{Digest, Sha256};

use crate::error::PhotoError;
use crate::heads::Head;
use crate::kind::{self, Kind};
use crate::limits::{Limits, fitted};
use crate::pixels::{Channels, Pixels};
use crate::taken::Taken;
use crate::watch::Watch;
use crate::{jpeg, png_file, webp};

/// Quality of a thumbnail's JPEG.
const THUMB_QUALITY: u8 = 80;

/// A photo ready to be stored.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Prepared {
    /// What is stored: a JPEG, upright, without metadata.
    pub jpeg: Vec<u8>,
    /// Its width, pixels.
    pub width: u32,
    /// Its height, pixels.
    pub height: u32,
    /// A thumbnail of it, JPEG.
    pub thumbnail: Vec<u8>,
    /// When it was taken, where the file says so.
    pub taken: Option<Taken>,
    /// SHA-256 of the file it came from, 64 hex digits.
    pub source_sha256: String,
    /// SHA-256 of `jpeg`, 64 hex digits: its name in the shelf.
    pub stored_sha256: String,
}

/// SHA-256 of some bytes, 64 lower-case hex digits.
#[must_use]
pub fn sha256(bytes: &[u8]) -> String {
    use std::fmt::Write as _;
    let mut text = String::with_capacity(64);
    for byte in Sha256::digest(bytes) {
        // Writing to a String cannot fail.
        write!(text, "{byte:02x}").unwrap_or_default();
    }
    text
}

fn head_of(bytes: &[u8], limits: &Limits) -> Result<(Kind, Head), PhotoError> {
    let kind = kind::of(bytes)?;
    let found = bytes.len() as u64;
    if found > limits.file_bytes {
        return Err(PhotoError::FileTooLarge {
            found,
            allowed: limits.file_bytes,
        });
    }
    let head = match kind {
        Kind::Jpeg => jpeg::head(bytes, limits)?,
        Kind::Png => png_file::head(bytes, limits)?,
        Kind::Webp => webp::head(bytes)?,
    };
    head.allowed(limits)?;
    Ok((kind, head))
}

/// Decoders promise not to panic; should one, on a file made to break it, the file is broken and the turner goes on.
fn unbroken<T>(work: impl FnOnce() -> Result<T, PhotoError>) -> Result<T, PhotoError> {
    catch_unwind(AssertUnwindSafe(work))
        .unwrap_or_else(|_| Err(PhotoError::broken("the decoder gave up")))
}

/// The picture, upright, at most `longest` a side.
fn upright_pixels<'a>(
    bytes: &'a [u8],
    longest: u16,
    limits: &Limits,
    watch: &mut Watch<'a>,
) -> Result<(Pixels, Head), PhotoError> {
    let (kind, head) = head_of(bytes, limits)?;
    let memory = limits.memory_bytes;
    let pixels = match kind {
        Kind::Jpeg => jpeg::decode(bytes, &head, longest, memory, watch)?,
        Kind::Png => png_file::decode(bytes, memory, watch)?,
        Kind::Webp => webp::decode(bytes, memory, watch)?,
    };
    if pixels.bytes.len() as u64
        != u64::from(pixels.width) * u64::from(pixels.height) * pixels.channels.count() as u64
    {
        return Err(PhotoError::broken("it has fewer pixels than it says"));
    }
    watch.at(0.7)?;
    let (width, height) = fitted(head.width, head.height, longest);
    let pixels = pixels.resized(width, height)?;
    watch.at(0.8)?;
    Ok((pixels.on_white().upright(head.tags.turn), head))
}

/// A JPEG of these pixels, and nothing else in it.
fn encode(pixels: &Pixels, quality: u8) -> Result<Vec<u8>, PhotoError> {
    let mut jpeg = Vec::new();
    let mut encoder = Encoder::new(&mut jpeg, quality.clamp(1, 100));
    encoder.set_sampling_factor(SamplingFactor::F_2_2);
    encoder.set_optimized_huffman_tables(true);
    let colour = match pixels.channels {
        Channels::Grey => ColorType::Luma,
        _ => ColorType::Rgb,
    };
    let px = |n: u32| u16::try_from(n).unwrap_or(u16::MAX);
    encoder
        .encode(&pixels.bytes, px(pixels.width), px(pixels.height), colour)
        .map_err(PhotoError::broken)?;
    Ok(jpeg)
}

/// Makes a file's bytes ready to be stored: see [`crate`].
///
/// # Errors
/// [`PhotoError`] with a sentence; nothing was changed, as nothing here changes anything.
pub fn prepare<'a>(
    bytes: &'a [u8],
    limits: &Limits,
    watch: &mut Watch<'a>,
) -> Result<Prepared, PhotoError> {
    watch.at(0.0)?;
    unbroken(|| {
        let (pixels, head) = upright_pixels(bytes, limits.longest_px, limits, watch)?;
        let (width, height) = (pixels.width, pixels.height);
        let jpeg = encode(&pixels, limits.quality)?;
        watch.at(0.95)?;
        let (thumb_w, thumb_h) = fitted(width, height, limits.thumb_px);
        let thumbnail = encode(&pixels.resized(thumb_w, thumb_h)?, THUMB_QUALITY)?;
        let stored_sha256 = sha256(&jpeg);
        let source_sha256 = sha256(bytes);
        watch.at(1.0)?;
        Ok(Prepared {
            jpeg,
            width,
            height,
            thumbnail,
            taken: head.tags.taken,
            source_sha256,
            stored_sha256,
        })
    })
}

/// The pixels of a picture, to be put on a screen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shown {
    /// Its width, pixels.
    pub width: u32,
    /// Its height, pixels.
    pub height: u32,
    /// Red, green and blue of each pixel, line by line from the top.
    pub rgb: Vec<u8>,
}

/// The picture in a file, upright, at most `longest` a side.
///
/// # Errors
/// [`PhotoError`] where it is damaged, has not arrived as a whole, or is no picture.
pub fn shown<'a>(
    bytes: &'a [u8],
    longest: u16,
    limits: &Limits,
    watch: &mut Watch<'a>,
) -> Result<Shown, PhotoError> {
    unbroken(|| {
        let (pixels, _) = upright_pixels(bytes, longest, limits, watch)?;
        let rgb = match pixels.channels {
            Channels::Grey => pixels.bytes.iter().flat_map(|g| [*g; 3]).collect(),
            // What is behind a see-through picture was filled with white before.
            _ => pixels.bytes,
        };
        Ok(Shown {
            width: pixels.width,
            height: pixels.height,
            rgb,
        })
    })
}

/// A thumbnail of a stored photo, JPEG: to rebuild one that is missing.
///
/// # Errors
/// [`PhotoError`] where the stored file is damaged or has not arrived as a whole.
pub fn thumbnail<'a>(
    bytes: &'a [u8],
    limits: &Limits,
    watch: &mut Watch<'a>,
) -> Result<Vec<u8>, PhotoError> {
    watch.at(0.0)?;
    unbroken(|| {
        let (pixels, _) = upright_pixels(bytes, limits.thumb_px, limits, watch)?;
        encode(&pixels, THUMB_QUALITY)
    })
}
